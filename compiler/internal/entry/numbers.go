package entry

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
)

// mostNumbers is how many numbers are named in one message.
const mostNumbers = 12

// Numbers watches the numbers of a book while it is read. It keeps runs of numbers that
// follow each other, so that a book in order takes no room however long it is.
type Numbers struct {
	last  int
	runs  []numberRun // rising, apart from each other
	twice []int
	back  []int // stand behind a higher one
}

type numberRun struct{ from, to int }

// Take takes the number of the next entry.
func (n *Numbers) Take(number int) {
	if number <= 0 {
		return
	}
	switch at, there := n.find(number); {
	case there:
		n.twice = append(n.twice, number)
	default:
		n.put(at, number)
		if number < n.last {
			n.back = append(n.back, number)
		}
	}
	n.last = max(n.last, number)
}

// find is the run that holds a number, or else the place for one of its own.
func (n *Numbers) find(number int) (at int, there bool) {
	return slices.BinarySearchFunc(n.runs, number, func(run numberRun, number int) int {
		if run.from <= number && number <= run.to {
			return 0
		}
		return cmp.Compare(run.from, number)
	})
}

func (n *Numbers) put(at, number int) {
	below := at > 0 && n.runs[at-1].to == number-1
	above := at < len(n.runs) && n.runs[at].from == number+1
	switch {
	case below && above:
		n.runs[at-1].to = n.runs[at].to
		n.runs = slices.Delete(n.runs, at, at+1)
	case below:
		n.runs[at-1].to = number
	case above:
		n.runs[at].from = number
	default:
		n.runs = slices.Insert(n.runs, at, numberRun{number, number})
	}
}

// Twice reports whether several entries have a number.
func (n *Numbers) Twice(number int) bool { return slices.Contains(n.twice, number) }

// Last is the highest number there is.
func (n *Numbers) Last() int { return n.last }

// Problems says what is wrong with the numbers, a line for each kind. faults are the entries
// that cannot be read, which have their numbers all the same.
func (n *Numbers) Problems(faults Faults) []string {
	var out []string
	say := func(numbers []int, one, several, help string) {
		numbers = slices.Compact(slices.Sorted(slices.Values(numbers)))
		switch len(numbers) {
		case 0:
		case 1:
			out = append(out, fmt.Sprintf(one, numbers[0])+"; "+help)
		default:
			out = append(out, fmt.Sprintf(several, someOf(numbers))+"; "+help)
		}
	}
	say(n.twice, "there are several entries with the number %d", "the numbers %s each stand at several entries", "give all but the first a number that no other has")
	say(n.back, "entry %d stands behind an entry with a higher number", "entries %s stand behind an entry with a higher number", "a book grows at its end alone, so put it back as it was")
	read := &Numbers{runs: slices.Clone(n.runs)}
	for _, fault := range faults {
		if at, there := read.find(fault.Number); !there && fault.Number > 0 {
			read.put(at, fault.Number)
		}
	}
	if len(read.runs) < 2 {
		return out
	}
	var gaps []string
	several := len(read.runs) > 2
	for i, run := range read.runs[1:] {
		from, to := read.runs[i].to+1, run.from-1
		several = several || from < to
		switch {
		case len(gaps) == mostNumbers:
			gaps = append(gaps, "more")
		case len(gaps) > mostNumbers:
		case from == to:
			gaps = append(gaps, strconv.Itoa(from))
		default:
			gaps = append(gaps, fmt.Sprintf("%d to %d", from, to))
		}
	}
	const help = "; nothing is taken out of a book, so put back what is gone from a copy"
	if !several {
		return append(out, "entry "+gaps[0]+" is missing"+help)
	}
	return append(out, "entries "+listed(gaps)+" are missing"+help)
}

// someOf writes rising numbers, the first of them where there are many.
func someOf(numbers []int) string {
	if len(numbers) <= mostNumbers {
		return runs(numbers)
	}
	return fmt.Sprintf("%s and %d more", runs(numbers[:mostNumbers]), len(numbers)-mostNumbers)
}
