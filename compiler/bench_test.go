package compiler

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/emit/pdf/pdftest"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/source"
)

// texts are the files of the demonstration shop: path and bytes.
func shopTexts(b testing.TB) map[string][]byte {
	out := map[string][]byte{}
	root := "../procedures"
	require.NoError(b, filepath.WalkDir(root, func(path string, entry os.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(path, ".toml") || entry.Name() == Bookfile {
			return err
		}
		name, err := filepath.Rel(root, path)
		require.NoError(b, err)
		out[filepath.ToSlash(name)], err = os.ReadFile(path)
		return err
	}))
	return out
}

func fresh(texts map[string][]byte) []*source.File {
	var out []*source.File
	for path, text := range texts {
		out = append(out, source.New(path, text))
	}
	return out
}

// needed keeps the files one procedure takes names from, as the command loads them.
func needed(texts map[string][]byte, target string) map[string][]byte {
	out := map[string][]byte{}
	var follow func(path string)
	follow = func(path string) {
		text, there := texts[path]
		if _, seen := out[path]; seen || !there {
			return
		}
		out[path] = text
		uses, _ := Uses(source.New(path, text))
		for _, pattern := range uses {
			for other := range texts {
				if ok, _ := filepath.Match(pattern, other); ok {
					follow(other)
				}
			}
		}
	}
	follow(target)
	return out
}

// BenchmarkOneCardAgainstBareLibrary compiles the card of the gearbox, whole: read,
// check, lay out, PDF; and draws the same page by the library alone in the same run.
func BenchmarkOneCardAgainstBareLibrary(b *testing.B) {
	const target = "log-deck-gearbox-oil.toml"
	texts := needed(shopTexts(b), target)
	against(b, texts, target)
}

// BenchmarkOneFileAgainstBareLibrary is the same for a short procedure in a file of its own.
func BenchmarkOneFileAgainstBareLibrary(b *testing.B) {
	const text = "benchleaf = 1\n[procedure]\ntitle = \"Look over the chain oiler\"\nmachine = \"Log-deck conveyor\"\nrevision = \"A\"\ndate = 2026-02-14\n" +
		"author = \"R. Aldous\"\nwho = \"Anyone who runs the deck\"\nhands-on = \"5 min\"\nevery = \"50 h\"\nno-isolation = \"Look from outside the guard\"\n" +
		"no-close = \"Nothing is opened\"\ntools = []\nsupplies = []\nspares = []\nwear = [\"eye-protection\"]\nmanual = \"Section 4\"\n" +
		"[[step]]\ninspect = \"the oil level in the sight glass\"\nexpect = \"between the two marks\"\noutside = \"Fill the oiler by its own card.\"\n"
	against(b, map[string][]byte{"oiler.toml": []byte(text)})
}

// BenchmarkShopAgainstBareLibrary is the same for every card of the demonstration shop.
func BenchmarkShopAgainstBareLibrary(b *testing.B) {
	against(b, shopTexts(b))
}

func against(b *testing.B, texts map[string][]byte, targets ...string) {
	composed, err := Compile(Input{Files: fresh(texts), Targets: targets}).compose(Look{})
	require.NoError(b, err)
	var documents []pages.Document
	for _, card := range composed {
		document, _ := pages.LayCard(card.content, card.look)
		documents = append(documents, document)
	}
	require.NotEmpty(b, documents)
	var ours, floor time.Duration
	for b.Loop() {
		start := time.Now()
		cards, _, err := Compile(Input{Files: fresh(texts), Targets: targets}).Cards(Look{}, nil)
		ours += time.Since(start)
		require.NoError(b, err)
		require.Len(b, cards, len(documents))
		start = time.Now()
		inParallel(len(documents), func(i int) { require.NoError(b, pdftest.Bare(documents[i])) })
		floor += time.Since(start)
	}
	b.ReportMetric(float64(ours)/float64(floor), "×bare")
	b.ReportMetric(float64(ours.Microseconds())/float64(b.N*len(documents)), "µs/card")
}

// BenchmarkManualAgainstBareLibrary puts the manual of the demonstration shop into words,
// lays it out and draws it, and draws the same marks by the library alone in the same run.
// Reading and checking, which every command does, stand before the clock.
func BenchmarkManualAgainstBareLibrary(b *testing.B) {
	result := Compile(Input{Files: fresh(shopTexts(b))})
	content, look, _, err := result.bind(Look{})
	require.NoError(b, err)
	document, _ := pages.LayManual(content, look)
	var ours, floor time.Duration
	for b.Loop() {
		start := time.Now()
		made, _, err := result.Manual(Look{})
		ours += time.Since(start)
		require.NoError(b, err)
		require.Len(b, made, 1)
		start = time.Now()
		require.NoError(b, pdftest.Bare(document))
		floor += time.Since(start)
	}
	sides := float64(b.N * len(document.Sides))
	b.ReportMetric(float64(ours)/float64(floor), "×bare")
	b.ReportMetric(sides/ours.Seconds(), "pages/s")
	b.ReportMetric(sides/floor.Seconds(), "bare-pages/s")
}
