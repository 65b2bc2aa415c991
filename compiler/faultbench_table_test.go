package compiler_test

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

const faultTable = "../testdata/faults/table.md"

const faultPreface = `# Faults put into the demonstration shop, and what was found

` + "`go test ./compiler -run FaultBench`" + ` changes one thing at a time in the files of [procedures](../../procedures), as
people do by slip, checks the changed shop, and counts. It fails when a kind is found less often than stands here;
` + "`go test ./compiler -run FaultBench -update-faults`" + ` rewrites this page. Read what changed before you commit it.

- **places**: where in the shop this kind of fault can be made. Of more than %d (of language and of what is no
  fault: %d), so many are **tried**, taken evenly.
- **right**: a new finding stands at, or names as a related place, the step, table or list that was changed, a step that
  uses what was changed, or, for a list, a step that needs what is gone from it. It need not name the cause: half a
  torque may show because no listed wrench reaches so low.
- **elsewhere**: there is a new finding, but it points to another place.
- **missed**: nothing new is found.
- False alarms, findings of the undamaged shop: **%d**. Changes that are no fault stand in the last table.

Of what the files can tell, at least 95 %% are to be found at the right place and 99 %% found at all; the test holds
that too. Faults that nothing in the files speaks against have a table of their own, each with the reason.

`

const kindsHead = "\n| kind | what is done | places | tried | right | elsewhere | missed |\n|---|---|--:|--:|--:|--:|--:|\n"

// drawFaults writes the page.
func drawFaults(scores []score, alarms int) string {
	var out strings.Builder
	fmt.Fprintf(&out, faultPreface, manyPlaces, fewPlaces, alarms)
	told, once := apart(scores[:len(faultKinds)])
	out.WriteString("## What the files can tell\n\n" + kindsHead[1:])
	section(&out, told)
	out.WriteString("\n## What is said once\n\nOne figure, word or name in the place of another that nothing else in the files speaks against: only the machine's\n" +
		"manual knows. What is found of them is found by what happens to stand beside it.\n" + kindsHead)
	section(&out, once)
	out.WriteString("\n## All of them, by family\n\n")
	families(&out, scores[:len(faultKinds)])
	out.WriteString("\n## Changes that are no fault\n\nNothing new may be found.\n\n| kind | what is done | places | tried | false alarms |\n|---|---|--:|--:|--:|\n")
	for _, one := range scores[len(faultKinds):] {
		fmt.Fprintf(&out, "| %s | %s | %d | %d | %d |\n", one.kind.name, one.kind.does, one.places, one.tried, one.elsewhere)
	}
	return out.String()
}

// apart parts the kinds that other words of the files speak against from those that
// are said once.
func apart(scores []score) (told, once []score) {
	for _, one := range scores {
		if saidOnce[one.kind.name] == "" {
			told = append(told, one)
		} else {
			once = append(once, one)
		}
	}
	return told, once
}

func section(out *strings.Builder, scores []score) {
	for _, one := range scores {
		does := one.kind.does
		if reason := saidOnce[one.kind.name]; reason != "" {
			does += "; " + reason
		}
		row(out, one.kind.family+": "+one.kind.name, does, one)
	}
	all := sum(scores)
	row(out, fmt.Sprintf("**all %d kinds**", len(scores)), fmt.Sprintf("%.1f %% at the right place, %.1f %% found", percent(all.right, all.tried), percent(all.right+all.elsewhere, all.tried)), all)
}

func sum(scores []score) (all score) {
	for _, one := range scores {
		all.places, all.tried = all.places+one.places, all.tried+one.tried
		all.right, all.elsewhere, all.missed = all.right+one.right, all.elsewhere+one.elsewhere, all.missed+one.missed
	}
	return all
}

func percent(part, whole int) float64 { return 100 * float64(part) / float64(max(1, whole)) }

// families sums the kinds up, family by family.
func families(out *strings.Builder, scores []score) {
	out.WriteString("| family | kinds | tried | right | elsewhere | missed |\n|---|--:|--:|--:|--:|--:|\n")
	for i := 0; i < len(scores); {
		var sum score
		from := i
		for ; i < len(scores) && scores[i].kind.family == scores[from].kind.family; i++ {
			sum.tried, sum.right = sum.tried+scores[i].tried, sum.right+scores[i].right
			sum.elsewhere, sum.missed = sum.elsewhere+scores[i].elsewhere, sum.missed+scores[i].missed
		}
		fmt.Fprintf(out, "| %s | %d | %d | %d | %d | %d |\n", scores[from].kind.family, i-from, sum.tried, sum.right, sum.elsewhere, sum.missed)
	}
}

func row(out *strings.Builder, name, does string, s score) {
	fmt.Fprintf(out, "| %s | %s | %d | %d | %d | %d | %d |\n", name, does, s.places, s.tried, s.right, s.elsewhere, s.missed)
}

var rowForm = regexp.MustCompile(`(?m)^\| (.+?): (.+?) \| .* \| \d+ \| (\d+) \| (\d+) \| (\d+) \| (\d+) \|$`)

var harmlessForm = regexp.MustCompile(`(?m)^\| ([^|:]+) \| [^|]* \| \d+ \| \d+ \| (\d+) \|$`)

// holdFaults says which kinds are found less often than the page has it. Where
// the shop has grown or shrunk, as many or as large a share will do.
func holdFaults(scores []score, page string) []string {
	var out []string
	rows := map[string][]string{}
	for _, m := range rowForm.FindAllStringSubmatch(page, -1) {
		rows[m[2]] = m
	}
	for _, m := range harmlessForm.FindAllStringSubmatch(page, -1) {
		rows[m[1]] = m
	}
	for _, one := range scores[len(faultKinds):] {
		m, ok := rows[one.kind.name]
		if !ok {
			out = append(out, fmt.Sprintf("%s stands not in the table; run with -update-faults", one.kind.name))
		} else if one.elsewhere > number(m[2]) {
			out = append(out, fmt.Sprintf("%s: %d false alarms: %s", one.kind.name, one.elsewhere, firstOf(one.astray, 5)))
		}
		delete(rows, one.kind.name)
	}
	for _, one := range scores[:len(faultKinds)] {
		m, ok := rows[one.kind.name]
		if !ok {
			out = append(out, fmt.Sprintf("%s stands not in the table; run with -update-faults", one.kind.name))
			continue
		}
		delete(rows, one.kind.name)
		tried, right, elsewhere := number(m[3]), number(m[4]), number(m[5])
		if fewer(one.right, one.tried, right, tried) {
			out = append(out, fmt.Sprintf("%s: found at the right place %d times of %d, and %d of %d in the table; now elsewhere or missed: %s",
				one.kind.name, one.right, one.tried, right, tried, firstOf(append(one.astray, one.examples...), 5)))
		}
		if fewer(one.right+one.elsewhere, one.tried, right+elsewhere, tried) {
			out = append(out, fmt.Sprintf("%s: found %d times of %d, and %d of %d in the table; now missed: %s",
				one.kind.name, one.right+one.elsewhere, one.tried, right+elsewhere, tried, firstOf(one.examples, 5)))
		}
	}
	for _, name := range slices.Sorted(maps.Keys(rows)) {
		out = append(out, name+" stands in the table, and the bench has it no more; run with -update-faults")
	}
	return out
}

func fewer(found, tried, foundBefore, triedBefore int) bool {
	return found < foundBefore && found*triedBefore < foundBefore*tried
}

func number(digits string) int {
	value, _ := strconv.Atoi(digits)
	return value
}

func firstOf(list []string, n int) string {
	var out strings.Builder
	for i := range min(n, len(list)) {
		out.WriteString("\n  " + list[i])
	}
	return out.String()
}

// missedList names for each kind what was missed, and what was found at another place.
func missedList(scores []score) string {
	var out strings.Builder
	for _, one := range scores[len(faultKinds):] {
		for _, line := range one.astray {
			fmt.Fprintf(&out, "- FALSE ALARM: %s: %s\n", one.kind.name, line)
		}
	}
	for _, one := range scores[:len(faultKinds)] {
		if one.missed+one.elsewhere == 0 {
			continue
		}
		fmt.Fprintf(&out, "## %s: %s\n\n%s. Of %d tried: %d right, %d elsewhere, %d missed.\n\n", one.kind.family, one.kind.name, one.kind.does, one.tried, one.right, one.elsewhere, one.missed)
		for _, list := range []struct {
			title string
			lines []string
		}{{"missed", one.examples}, {"elsewhere", one.astray}} {
			for _, line := range spread(list.lines, 9) {
				fmt.Fprintf(&out, "- %s: %s\n", list.title, line)
			}
		}
		out.WriteString("\n")
	}
	return out.String()
}

// spread takes at most n of a list, evenly.
func spread(list []string, n int) []string {
	if len(list) <= n {
		return list
	}
	var out []string
	for i := range n {
		out = append(out, list[i*len(list)/n])
	}
	return out
}
