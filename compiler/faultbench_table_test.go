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
- **again**: of those, what only a second reading of the figures tells, in the folders named second; without them it
  would be missed, or found elsewhere. No fault is put into the second readings themselves.
- **elsewhere**: there is a new finding, but it points to another place.
- **missed**: nothing new is found. Why stands below.
- False alarms, findings of the undamaged shop: **%d**. Changes that are no fault stand in the last table.

At least 95 %% are to be found at the right place and 99 %% found at all; the test holds that too.

`

const kindsHead = "| kind | what is done | places | tried | right | again | elsewhere | missed |\n|---|---|--:|--:|--:|--:|--:|--:|\n"

// drawFaults writes the page.
func drawFaults(scores []score, alarms int) string {
	var out strings.Builder
	fmt.Fprintf(&out, faultPreface, manyPlaces, fewPlaces, alarms)
	faults := scores[:len(faultKinds)]
	out.WriteString("## Every kind\n\n" + kindsHead)
	for _, one := range faults {
		row(&out, one.kind.family+": "+one.kind.name, one.kind.does, one)
	}
	all := sum(faults)
	row(&out, fmt.Sprintf("**all %d kinds**", len(faults)), fmt.Sprintf("%.1f %% at the right place, %.1f %% found; without the second readings %.1f %% at the right place",
		percent(all.right, all.tried), percent(all.right+all.elsewhere, all.tried), percent(all.right-all.again, all.tried)), all)
	out.WriteString("\n## By family\n\n")
	families(&out, faults)
	out.WriteString("\n## What is missed, and why\n\n| kind | missed | why |\n|---|--:|---|\n")
	for _, one := range faults {
		if one.missed > 0 {
			fmt.Fprintf(&out, "| %s | %d of %d | %s |\n", one.kind.name, one.missed, one.tried, reasons[one.kind.name])
		}
	}
	out.WriteString("\n## Changes that are no fault\n\nNothing new may be found.\n\n| kind | what is done | places | tried | false alarms |\n|---|---|--:|--:|--:|\n")
	for _, one := range scores[len(faultKinds):] {
		fmt.Fprintf(&out, "| %s | %s | %d | %d | %d |\n", one.kind.name, one.kind.does, one.places, one.tried, one.elsewhere)
	}
	return out.String()
}

func sum(scores []score) (all score) {
	for _, one := range scores {
		all.places, all.tried = all.places+one.places, all.tried+one.tried
		all.right, all.elsewhere, all.missed = all.right+one.right, all.elsewhere+one.elsewhere, all.missed+one.missed
		all.again += one.again
	}
	return all
}

func percent(part, whole int) float64 { return 100 * float64(part) / float64(max(1, whole)) }

// families sums the kinds up, family by family.
func families(out *strings.Builder, scores []score) {
	out.WriteString("| family | kinds | tried | right | again | elsewhere | missed |\n|---|--:|--:|--:|--:|--:|--:|\n")
	for from := 0; from < len(scores); {
		to := from
		for to < len(scores) && scores[to].kind.family == scores[from].kind.family {
			to++
		}
		all := sum(scores[from:to])
		fmt.Fprintf(out, "| %s | %d | %d | %d | %d | %d | %d |\n", scores[from].kind.family, to-from, all.tried, all.right, all.again, all.elsewhere, all.missed)
		from = to
	}
}

func row(out *strings.Builder, name, does string, s score) {
	fmt.Fprintf(out, "| %s | %s | %d | %d | %d | %d | %d | %d |\n", name, does, s.places, s.tried, s.right, s.again, s.elsewhere, s.missed)
}

var rowForm = regexp.MustCompile(`(?m)^\| (.+?): (.+?) \| .* \| \d+ \| (\d+) \| (\d+) \| \d+ \| (\d+) \| (\d+) \|$`)

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
			for _, line := range spread(list.lines, 40) {
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
