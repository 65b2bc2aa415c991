package compiler_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
)

// deckOf are the files of the demonstration shop that its log deck takes.
func deckOf(f *testing.F) []*source.File {
	return slices.DeleteFunc(compiler.ReadFolder(f, "../procedures"), func(file *source.File) bool {
		name := path.Base(file.Path)
		return strings.Contains(file.Path, "second/") || !strings.HasPrefix(file.Path, "shop") && !strings.HasPrefix(name, "log-deck")
	})
}

// with is the shop with another text in the place of a file.
func with(files []*source.File, name, text string) []*source.File {
	out := slices.Clone(files)
	for i, file := range out {
		if file.Path == name {
			out[i] = source.New(name, []byte(text))
		}
	}
	return out
}

// someEntries are the first entries of the book of the demonstration shop.
func someEntries(f *testing.F) string {
	text, err := os.ReadFile("../procedures/" + compiler.Bookfile)
	require.NoError(f, err)
	return strings.Join(strings.SplitAfter(string(text), "\n\n")[:12], "")
}

const (
	onDay = "2026-11-20"
	byDay = "2027-02-01"
)

// answersOf are all answers of a shop that rest on its service book, as they go to other programs.
func answersOf(t *testing.T, result *compiler.Result, book []byte) (out []string) {
	t.Helper()
	asked := compiler.Asked{On: onDay, By: byDay}
	due, err := result.Due(compiler.Look{}, asked, bytes.NewReader(book))
	require.NoError(t, err)
	calendar, err := due.Calendar()
	require.NoError(t, err)
	store, err := result.Store(compiler.Look{}, asked, bytes.NewReader(book))
	require.NoError(t, err)
	for _, text := range [][]byte{due.JSON(), store.JSON()} {
		assert.True(t, json.Valid(text), "%s", text)
		out = append(out, string(text))
	}
	for _, problem := range slices.Concat(due.Problems, store.Problems) {
		assert.NotEmpty(t, strings.TrimSpace(problem))
		out = append(out, problem)
	}
	for _, row := range due.Rows {
		assert.True(t, row.Day == "" || row.Day <= byDay || row.State == "overdue", "%s is not due by then", row.Day)
	}
	return append(out, string(calendar))
}

// Whatever stands in the service book, what is due and in store is told, the same twice, and what
// cannot be read is told with a line of the book.
func FuzzBook(f *testing.F) {
	shop := compiler.Compile(compiler.Input{Files: deckOf(f), Whole: true})
	book := someEntries(f)
	f.Add(book, []byte{})
	f.Add(book, []byte{1, 30, 3, 44, 0, 5})
	f.Add("[[entry]]\nunit = \"deck\"\ndate = 2026-02-01\nmeter = \"9e99 h\"\n", []byte{1, 0, 1, 1, 1, 2, 1, 3})
	f.Add("[[entry]]\nnumber = 9223372036854775807\ncorrects = 9223372036854775807\n[[entry]]\ncorrects = 1\n[[entry]]\ncorrects = 2\n", []byte{2, 3})
	f.Add("[[entry]]\nunit = \"deck\"\nprocedure = \"log-deck-bearing-grease\"\ndate = 2026-03-01\nmeter = \"1200 h\"\nnew-meter = \"0 h\"\ndone = [1, 1, -3, 99999999]\nused = [{ what = \"grease\", amount = \"-3 kg\" }]\n", []byte{3, 2})
	f.Fuzz(func(t *testing.T, text string, moves []byte) {
		text = moved(text, moves)
		assert.Equal(t, answersOf(t, shop, []byte(text)), answersOf(t, shop, []byte(text)))
		var entries []compiler.Entry
		last := 0
		err := compiler.ScanBook(strings.NewReader(text), func(e compiler.Entry, line int) error {
			assert.Greater(t, line, last)
			last = line - 1 // several entries of one list stand in a line
			entries = append(entries, e)
			return nil
		})
		var faults compiler.BookFaults
		require.True(t, err == nil || errors.As(err, &faults), err)
		for _, fault := range faults {
			assert.True(t, fault.Line > 0 && fault.Line <= strings.Count(text, "\n")+1, "%v", fault)
			assert.NotEmpty(t, fault.Help)
		}
		if len(entries) > 5 {
			entries = entries[:5]
		}
		taken, err := shop.Accept(nil, entries, onDay)
		if err != nil {
			return // a day that is none
		}
		var written []byte
		for i, e := range taken.Entries {
			e.Number = i + 1
			written = append(written, e.Text()...)
		}
		read := 0
		require.NoError(t, compiler.ScanBook(bytes.NewReader(written), func(compiler.Entry, int) error { read++; return nil }), "what is taken can be read again")
		assert.Equal(t, len(taken.Entries), read)
	})
}

// Whatever a form holds, it is a form alone or none, and its entries are read the same when they are written.
func FuzzForm(f *testing.F) {
	f.Add("benchleaf = 1\n\n[[entry]]\nprocedure = \"log-deck-bearing-grease\"\ndate = 2026-03-01\ndone = [1, 2]\n")
	f.Add("\uFEFFbenchleaf=1\r\n[[entry]]\r\nwho=\"\"\r\n")
	f.Add("entry = [{ who = \"R. A.\" }]\nbenchleaf = 1\n")
	f.Add("benchleaf = 1\n[tool.pan]\n[[entry]]\n")
	f.Fuzz(func(t *testing.T, text string) {
		alone, count := compiler.IsForm([]byte(text)), 0
		err := compiler.ScanForm([]byte(text), func(e compiler.Entry, _ int) error {
			count++
			e.Number = 7
			var again []compiler.Entry
			require.NoError(t, compiler.ScanForm(e.Text(), func(e compiler.Entry, _ int) error {
				again = append(again, e)
				return nil
			}), "%s", e.Text())
			require.Len(t, again, 1)
			assert.Equal(t, e.Text(), again[0].Text())
			return nil
		})
		if alone && err == nil {
			assert.Positive(t, count, "a form without an entry")
		}
	})
}

// Whatever stands in the files that tell of machines and shelves, what is due and in store is told,
// the same by another compile.
func FuzzStock(f *testing.F) {
	files := deckOf(f)
	book := []byte(someEntries(f))
	names := []string{"shop/store.toml", "shop/units.toml", "log-deck-bearing-grease.toml"}
	for _, file := range files {
		if at := slices.Index(names, file.Path); at >= 0 {
			f.Add(uint8(at), string(file.Text), []byte{1, 30, 3, 44})
			f.Add(uint8(at), string(file.Text), []byte{3, 11, 3, 12, 3, 13, 0, 2})
		}
	}
	f.Fuzz(func(t *testing.T, which uint8, text string, moves []byte) {
		shop := with(files, names[int(which)%len(names)], moved(text, moves))
		first := compiler.Compile(compiler.Input{Files: shop, Whole: true})
		for _, found := range first.Findings {
			assert.NotEqual(t, "internal/rule-failed", found.Rule, found.Summary)
		}
		assert.Equal(t, answersOf(t, first, book), answersOf(t, compiler.Compile(compiler.Input{Files: shop, Whole: true}), book))
	})
}

// Whatever stands in two procedures of one machine, they are one job that is tidy and written in the
// language, the same twice, or it is said why not, with places that are in the files.
func FuzzJoin(f *testing.F) {
	files := deckOf(f)
	texts := map[string]string{}
	for _, file := range files {
		texts[file.Path] = string(file.Text)
	}
	names := []string{"log-deck-bearing-grease", "log-deck-chain-tension", "log-deck-gearbox-oil"}
	for i, name := range names {
		f.Add(uint8(i), texts[name+".toml"], []byte{}, uint8(i))
		f.Add(uint8(i), texts[name+".toml"], []byte{2, 60, 2, 61, 1, 70}, uint8(i+1))
		f.Add(uint8(i), texts[name+".toml"], []byte{0, 90, 3, 44, 2, 80, 1, 100}, uint8(i+2))
	}
	f.Fuzz(func(t *testing.T, which uint8, text string, moves []byte, people uint8) {
		name := names[int(which)%len(names)]
		shop := with(files, name+".toml", moved(text, moves))
		result := compiler.Compile(compiler.Input{Files: shop, Whole: true})
		asked := compiler.Joining{Procedures: []string{name, names[(int(which)+1)%len(names)]}, On: onDay, People: 1 + int(people%2)}
		made, err := result.Join(compiler.Look{}, asked)
		again, twice := result.Join(compiler.Look{}, asked)
		var fight *compiler.Conflict
		if errors.As(err, &fight) {
			assert.Equal(t, err.Error(), twice.Error())
			for _, one := range fight.Related {
				assert.True(t, slices.Contains(shop, one.Place.File), one.Text)
				assert.LessOrEqual(t, one.Place.Span.End, len(one.Place.File.Text))
			}
			return
		}
		if err != nil {
			assert.EqualError(t, twice, err.Error())
			return
		}
		assert.Equal(t, string(made.Source), string(again.Source))
		assert.LessOrEqual(t, made.Bound, made.Length)
		file := source.New("joined.toml", made.Source)
		tidied, faults := compiler.Tidy(file)
		assert.Empty(t, faults)
		assert.Equal(t, string(tidied), string(made.Source))
		for _, found := range made.Result.Findings {
			family, _, _ := strings.Cut(found.Rule, "/")
			assert.False(t, family == "syntax" || family == "internal", "%s: %s\n%s", found.Rule, found.Summary, made.Source)
		}
		assert.True(t, json.Valid(made.JSON()))
	})
}
