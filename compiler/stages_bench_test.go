package compiler

import (
	"bytes"
	"html"
	"io"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/emit/csv"
	"benchleaf/compiler/internal/emit/pdf"
	"benchleaf/compiler/internal/emit/pdf/pdftest"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/tree"
)

// watch adds up the time of things that take turns.
type watch map[string]time.Duration

func (w watch) time(what string, run func()) {
	start := time.Now()
	run()
	w[what] += time.Since(start)
}

// each tells the time of a thing for each of so many, in microseconds.
func (w watch) each(b *testing.B, what, of string, n int) {
	b.ReportMetric(float64(w[what].Nanoseconds())/1000/float64(b.N*n), "µs-"+what+"/"+of)
}

// BenchmarkStages takes the demonstration shop through the stages of a compile one after the
// other, each on one core but for the check, and beside each the least that it could cost:
//
//   - parse: every file as TOML with places; decode: BurntSushi/toml makes a map of the same
//     texts, its floor;
//   - check: all files read, looked through and checked; its floor is parse;
//   - lay: every card put into words and on paper; draw: its PDF; bare: the marks of the same
//     pages drawn by the PDF library alone, the floor of both;
//   - phone: every phone page; escape: its bytes escaped once by the package html, its floor.
func BenchmarkStages(b *testing.B) {
	texts := shopTexts(b)
	files := fresh(texts)
	result := Compile(Input{Files: files})
	procedures := 0
	for _, job := range result.Jobs {
		if job.Variant == "" || job.Variant == result.Variants(job.Path)[0] {
			procedures++
		}
	}
	w := watch{}
	cards, phones := 0, 0
	for b.Loop() {
		w.time("decode", func() {
			for _, file := range files {
				var out map[string]any
				_, err := toml.Decode(string(file.Text), &out)
				require.NoError(b, err)
			}
		})
		w.time("parse", func() {
			for _, file := range files {
				_, found := tree.Parse(file)
				require.Empty(b, found)
			}
		})
		var made *Result
		w.time("check", func() { made = Compile(Input{Files: fresh(texts)}) })
		var documents []pages.Document
		w.time("lay", func() {
			composed, err := made.compose(Look{})
			require.NoError(b, err)
			for _, card := range composed {
				document, _ := pages.LayCard(card.content, card.look)
				documents = append(documents, document)
			}
		})
		cards = len(documents)
		w.time("draw", func() {
			for _, document := range documents {
				_, err := pdf.Draw(document)
				require.NoError(b, err)
			}
		})
		w.time("bare", func() {
			for _, document := range documents {
				require.NoError(b, pdftest.Bare(document))
			}
		})
		composed, err := made.composeEach(Look{})
		require.NoError(b, err)
		var written [][]byte
		w.time("phone", func() {
			for _, card := range composed {
				page, err := phone(card.content)
				require.NoError(b, err)
				written = append(written, page)
			}
		})
		phones = len(written)
		w.time("escape", func() {
			for _, page := range written {
				require.NotEmpty(b, html.EscapeString(string(page)))
			}
		})
	}
	b.ReportMetric(0, "ns/op")
	for _, what := range []string{"decode", "parse", "check"} {
		w.each(b, what, "procedure", procedures)
	}
	for _, what := range []string{"lay", "draw", "bare"} {
		w.each(b, what, "card", cards)
	}
	for _, what := range []string{"phone", "escape"} {
		w.each(b, what, "page", phones)
	}
}

// BenchmarkPick makes the pick list of all procedures of the demonstration shop, which is
// checked before the clock; its floor draws the marks of the same pages by the PDF library alone.
func BenchmarkPick(b *testing.B) {
	result := Compile(Input{Files: fresh(shopTexts(b))})
	composed, err := result.compose(Look{})
	require.NoError(b, err)
	var asked []compose.Asked
	for _, card := range composed {
		asked = append(asked, compose.Asked{Work: card.jobs[0].work, Variant: card.content.Variant})
	}
	settled, system, err := Look{}.settle(compose.WishesOf(asked[0].Job))
	require.NoError(b, err)
	content, err := compose.Pick(asked, system, nil)
	require.NoError(b, err)
	document, _ := pages.LayPick(content, settled)
	table, err := csv.Pick(content)
	require.NoError(b, err)
	w := watch{}
	for b.Loop() {
		w.time("pick", func() {
			made, _, err := result.Pick(Look{})
			require.NoError(b, err)
			require.Equal(b, string(table), string(made[1].Bytes))
		})
		w.time("bare", func() { require.NoError(b, pdftest.Bare(document)) })
	}
	b.ReportMetric(0, "ns/op")
	w.each(b, "pick", "list", 1)
	w.each(b, "bare", "list", 1)
}

// BenchmarkJoin makes one job out of three procedures of a machine, which compiles the shop with
// it; its floor is the check of the shop.
func BenchmarkJoin(b *testing.B) {
	texts := shopTexts(b)
	result := Compile(Input{Files: fresh(texts)})
	asked := Joining{Procedures: []string{"log-deck-chain-tension", "log-deck-gearbox-oil", "log-deck-bearing-grease"}, Unit: "deck", On: "2026-05-01"}
	w := watch{}
	for b.Loop() {
		w.time("join", func() {
			made, err := result.Join(Look{}, asked)
			require.NoError(b, err)
			require.NotEmpty(b, made.Source)
		})
		w.time("check", func() { require.NotEmpty(b, Compile(Input{Files: fresh(texts)}).Jobs) })
	}
	b.ReportMetric(0, "ns/op")
	w.each(b, "join", "job", 1)
	w.each(b, "check", "job", 1)
}

// BenchmarkCountingLines counts the lines of the book of BenchmarkDue: the least that anybody
// who reads it does.
func BenchmarkCountingLines(b *testing.B) {
	book := longBook(100_000)
	b.SetBytes(int64(len(book)))
	b.ResetTimer()
	for b.Loop() {
		lines, from, piece := 0, bytes.NewReader(book), make([]byte, 64<<10)
		for {
			n, err := from.Read(piece)
			lines += bytes.Count(piece[:n], []byte("\n"))
			if err == io.EOF {
				break
			}
			require.NoError(b, err)
		}
		require.Greater(b, lines, 100_000)
	}
}

// BenchmarkDecodingWhatIsTyped makes a map of the procedure that BenchmarkKeystroke types into,
// by BurntSushi/toml: what a program does after each key that keeps nothing from the key before
// and checks nothing.
func BenchmarkDecodingWhatIsTyped(b *testing.B) {
	text := string(grown(b, 1)["long.toml"])
	b.ResetTimer()
	for b.Loop() {
		var out map[string]any
		_, err := toml.Decode(text, &out)
		require.NoError(b, err)
	}
}
