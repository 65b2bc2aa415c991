package compiler_test

import (
	"cmp"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
)

// draftFloor is what was found of the facts in all sets of a folder at the least, in percent, and
// what was wrong of all that was taken at the most. Whoever betters the rules moves it.
type draftFloor struct{ found, wrong float64 }

var draftFloors = map[string]draftFloor{"testdata/draft": {90, 5}, "testdata/draft/second": {78, 4}, "testdata/draft/third": {80, 6}, "testdata/draft/fourth": {70, 4}, "testdata/draft/fifth": {57, 20}}

// noted is one fact, one thing that is none, or one thing that draft took.
type noted struct {
	Kind, Text, Value, About, Why string
	start, end                    int // in the notes
}

func (n noted) over(other noted) bool { return n.start < other.end && other.start < n.end }

// A table of the facts of spoken notes: present, found, and wrong.
//
// A fact is found where draft took something of its kind, out of words that overlap its words,
// with its value. Values are the same where they are written the same but for capitals, the
// plural and the article. A part or the object of an action may be told with fewer or with more
// words, where the noun is the same and the one holds all words of the other: "plug" and "drain plug". Words
// for one and the same thing are the same (oneThing: a tire and a tyre, a jam nut and a lock nut), and verbs for one and the
// same deed (oneDeed: refit and fit, check and inspect, disconnect and remove, adjust and set); "power" is any supply that
// is isolated, and the words of a fluid may stand in another order. A torque, a size, a range or an amount has no such leave. The column exact counts without the leave for
// fewer or more words. A question is the same where it asks for what the fact says is missing. What overlaps a
// [[not]] of its kind with its value is wrong. All else that draft took and that is no fact is
// wrong too, but for what says again at another place what is a fact there (the same kind and
// value), for a part that the facts themselves name as what something is done to or told of
// (a draft has to describe it).
//
// The sets of the other folders were written later, by people who did not know the rules. How they
// were read first tells what to expect of notes that no rule was made for: the second 39 % found
// with 34 % wrong, the third 36 % with 34 %, the fourth 43 % with 30 %, the fifth 57 % with 19 %. The
// rules were bettered beside the first four, so their floors tell that no more; no rule knows the
// fifth.
func TestDraftFacts(t *testing.T) {
	for folder, floor := range draftFloors {
		t.Run(filepath.Base(folder), func(t *testing.T) { draftFacts(t, folder, floor) })
	}
}

func draftFacts(t *testing.T, folder string, floor draftFloor) {
	paths, err := filepath.Glob(filepath.Join("..", folder, "*.txt"))
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	rows, all := map[string]*draftRow{}, &draftRow{}
	var sets []string
	for _, path := range paths {
		name := strings.TrimSuffix(filepath.Base(path), ".txt")
		sets = append(sets, name)
		rows[name] = &draftRow{}
		notes, err := os.ReadFile(path)
		require.NoError(t, err)
		var facts struct{ Fact, Not []noted }
		_, err = toml.DecodeFile(strings.TrimSuffix(path, ".txt")+".facts.toml", &facts)
		require.NoError(t, err)
		taken := drafted(t, notes)
		place := func(list []noted) {
			for i := range list {
				list[i].start = strings.Index(string(notes), list[i].Text)
				list[i].end = list[i].start + len(list[i].Text)
			}
		}
		place(facts.Fact)
		place(facts.Not)
		right := make([]bool, len(taken))
		for _, fact := range facts.Fact {
			found, exact := false, false
			for i, one := range taken {
				if one.Kind == fact.Kind && one.over(fact) && sameNoted(fact, one) {
					found, right[i] = true, true
					exact = exact || sameWords(fact.Value, one.Value)
				}
			}
			for _, row := range []*draftRow{rows[name], all, kindRow(rows, fact.Kind)} {
				row.add(found, exact)
			}
			if !found && testing.Verbose() && os.Getenv("DRAFT_MISSED") != "" {
				t.Logf("%s: missed %s %q in %q; there: %s", name, fact.Kind, fact.Value, fact.Text, valuesOver(taken, fact))
			}
		}
		for i, one := range taken {
			for _, row := range []*draftRow{rows[name], all, kindRow(rows, one.Kind)} {
				row.taken++
			}
			not := slices.ContainsFunc(facts.Not, func(n noted) bool { return n.Kind == one.Kind && n.over(one) && sameNoted(n, one) })
			again := slices.ContainsFunc(facts.Fact, func(f noted) bool { return f.Kind == one.Kind && sameNoted(f, one) })
			again = again || one.Kind == "part" && slices.ContainsFunc(facts.Fact, func(f noted) bool { return namesPart(f, one.Value) })
			if !not && (right[i] || again) {
				continue
			}
			for _, row := range []*draftRow{rows[name], all, kindRow(rows, one.Kind)} {
				row.wrong++
			}
			if testing.Verbose() && os.Getenv("DRAFT_MISSED") != "" {
				t.Logf("%s: wrong %s %q in %q", name, one.Kind, one.Value, string(notes[max(0, one.start-20):min(len(notes), one.end+10)]))
			}
		}
	}
	var table strings.Builder
	write := func(name string, row *draftRow) {
		fmt.Fprintf(&table, "%-14s %5d facts  %5d found %5.1f %%  %5d exact %5.1f %%  %5d taken  %4d wrong %5.1f %%\n", name, row.facts, row.found, row.share(row.found, row.facts), row.exact, row.share(row.exact, row.facts), row.taken, row.wrong, row.share(row.wrong, row.taken))
	}
	for _, name := range append(sets, factKinds...) {
		write(name, cmp.Or(rows[name], &draftRow{}))
	}
	write("all", all)
	t.Log("\n" + table.String())
	assert.GreaterOrEqual(t, all.share(all.found, all.facts), floor.found, "fewer facts are found than were")
	assert.LessOrEqual(t, all.share(all.wrong, all.taken), floor.wrong, "more is wrong than was")
}

type draftRow struct{ facts, found, exact, taken, wrong int }

func (r *draftRow) add(found, exact bool) {
	r.facts++
	if found {
		r.found++
	}
	if exact {
		r.exact++
	}
}

func (r *draftRow) share(n, of int) float64 { return 100 * float64(n) / float64(max(of, 1)) }

func kindRow(rows map[string]*draftRow, kind string) *draftRow {
	if rows[kind] == nil {
		rows[kind] = &draftRow{}
	}
	return rows[kind]
}

// drafted gives what draft takes from notes.
func drafted(t *testing.T, notes []byte) []noted {
	made, err := compiler.Draft(notes)
	require.NoError(t, err)
	var read struct {
		Taken []struct {
			Kind, Value, About string
			Start, End         int
		}
	}
	require.NoError(t, json.Unmarshal(made.JSON(), &read))
	var out []noted
	for _, one := range read.Taken {
		out = append(out, noted{Kind: one.Kind, Value: one.Value, About: one.About, start: one.Start, end: one.End})
	}
	return out
}

func valuesOver(taken []noted, fact noted) string {
	var out []string
	for _, one := range taken {
		if one.Kind == fact.Kind && one.over(fact) {
			out = append(out, one.Value)
		}
	}
	return strings.Join(out, " | ")
}

// oneThing are words of the trade for one and the same thing. Words that only come near ("wrench"
// for "torque wrench", "BSPP" for "BSP") are none.
var oneThing = strings.NewReplacer("tire", "tyre", "jam nut", "lock nut", "zerk", "grease nipple", "grease fitting", "grease nipple",
	"wheel chock", "chock", "frequency gauge", "frequency meter", "slack", "tension", "sae 10w", "10w", "sae 15w", "15w", " for leaks", "")

// oneDeed are verbs for one and the same deed, as wordsOf gives them.
var oneDeed = [][]string{{"fit", "refit"}, {"check", "inspect"}, {"remov", "disconnect"}, {"set", "adjust"}, {"fill", "top"}}

func sameVerb(a, b string) bool {
	return a == b || slices.ContainsFunc(oneDeed, func(all []string) bool { return slices.Contains(all, a) && slices.Contains(all, b) })
}

// oilOrTank calls a fluid and what holds it by one word: hydraulic oil, hydraulic tank.
func oilOrTank(words []string) []string {
	words = slices.DeleteFunc(words, func(word string) bool { return word == "up" })
	if last := &words[len(words)-1]; *last == "tank" || *last == "reservoir" {
		*last = "oil"
	}
	return words
}

var betweenWords = regexp.MustCompile(`[^\pL\pN.·°/×'-]+`)

// wordsOf gives the words of a value in lower case and in the singular, without articles.
func wordsOf(value string) []string {
	var out []string
	for _, word := range betweenWords.Split(oneThing.Replace(strings.ToLower(value)), -1) {
		if word == "" || word == "the" {
			continue
		}
		if bare, ok := strings.CutSuffix(word, "ies"); ok {
			word = bare + "y"
		}
		for _, end := range []string{"es", "s"} {
			if bare, ok := strings.CutSuffix(word, end); ok && len(bare) > 2 && !strings.HasSuffix(bare, "s") {
				word = bare
				break
			}
		}
		out = append(out, strings.TrimSuffix(word, "e"))
	}
	return out
}

func sameWords(a, b string) bool { return slices.Equal(wordsOf(a), wordsOf(b)) }

// sameNoted reports whether what was taken has the value of a fact.
func sameNoted(fact, one noted) bool {
	if sameWords(fact.Value, one.Value) {
		return true
	}
	a, b := wordsOf(fact.Value), wordsOf(one.Value)
	switch fact.Kind {
	case "action":
		if len(a) < 2 || len(b) < 2 || !sameVerb(a[0], b[0]) {
			return false
		}
		if supply := a[0] == "isolat" || a[0] == "restor" || a[0] == "prov"; supply && slices.Equal(b[1:], []string{"power"}) {
			return true // the supply, that no word of the notes names
		}
		if a[0] == "fill" || a[0] == "top" { // an oil is topped up, and what holds it is filled
			a, b = oilOrTank(a), oilOrTank(b)
		}
		return oneHoldsOther(a[1:], b[1:])
	case "part":
		return oneHoldsOther(a, b)
	case "fluid": // "thread-locker, medium"
		slices.Sort(a)
		slices.Sort(b)
		return slices.Equal(a, b)
	case "question":
		return slices.Contains(a, b[0])
	}
	return false
}

// namesPart reports whether a fact names a part as what something is done to or told of.
func namesPart(fact noted, called string) bool {
	want := wordsOf(called)
	slices.Sort(want)
	names := strings.Split(fact.About, ",")
	if fact.Kind == "action" {
		_, object, _ := strings.Cut(fact.Value, " ")
		names = append(names, object)
	}
	return slices.ContainsFunc(names, func(name string) bool {
		words := slices.DeleteFunc(wordsOf(name), func(word string) bool { return word == "of" || word == "and" })
		slices.Sort(words)
		return slices.Equal(words, want)
	})
}

// oneHoldsOther reports whether two names end in the same noun, and one has all words of the other.
func oneHoldsOther(a, b []string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	if len(a) == 0 || a[len(a)-1] != b[len(b)-1] {
		return false
	}
	return !slices.ContainsFunc(a, func(word string) bool { return !slices.Contains(b, word) })
}
