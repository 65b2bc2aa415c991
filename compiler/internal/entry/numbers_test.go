package entry_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"benchleaf/compiler/internal/entry"
)

func TestTheNumbersOfABook(t *testing.T) {
	for name, c := range map[string]struct {
		numbers []int
		faults  entry.Faults
		want    []string
	}{
		"in order":     {[]int{1, 2, 3, 4}, nil, nil},
		"from later":   {[]int{501, 502}, nil, nil},
		"none":         {nil, nil, nil},
		"twice":        {[]int{1, 2, 3, 3, 4}, nil, []string{"there are several entries with the number 3; give all but the first a number that no other has"}},
		"three times":  {[]int{1, 1, 1, 2, 2}, nil, []string{"the numbers 1 and 2 each stand at several entries; give all but the first a number that no other has"}},
		"back":         {[]int{1, 3, 2, 4}, nil, []string{"entry 2 stands behind an entry with a higher number; a book grows at its end alone, so put it back as it was"}},
		"missing":      {[]int{1, 3, 9}, nil, []string{"entries 2 and 4 to 8 are missing; nothing is taken out of a book, so put back what is gone from a copy"}},
		"one missing":  {[]int{1, 3}, nil, []string{"entry 2 is missing; nothing is taken out of a book, so put back what is gone from a copy"}},
		"not readable": {[]int{1, 3}, entry.Faults{{Number: 2}}, nil},
	} {
		var numbers entry.Numbers
		for _, number := range c.numbers {
			numbers.Take(number)
		}
		assert.Equal(t, c.want, numbers.Problems(c.faults), name)
	}
}

// Whether a number is there twice comes out as by counting, in any order.
func TestNumbersAreCountedInAnyOrder(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 7))
	for range 300 {
		var numbers entry.Numbers
		count := map[int]int{}
		for range random.IntN(40) {
			number := 1 + random.IntN(30)
			numbers.Take(number)
			count[number]++
		}
		highest := 0
		for number := range 32 {
			assert.Equal(t, count[number] > 1, numbers.Twice(number))
			if count[number] > 0 {
				highest = number
			}
		}
		assert.Equal(t, highest, numbers.Last())
		missing := false
		for number := highest; number > 0; number-- {
			missing = missing || count[number] == 0 && slices.ContainsFunc(lower(count, number), func(n int) bool { return n > 0 })
		}
		told := slices.ContainsFunc(numbers.Problems(nil), func(text string) bool { return text[len(text)-6:] == "a copy" })
		assert.Equal(t, missing, told)
	}
}

// lower are the counts of the numbers below one.
func lower(count map[int]int, number int) []int {
	var out []int
	for n := 1; n < number; n++ {
		out = append(out, count[n])
	}
	return out
}
