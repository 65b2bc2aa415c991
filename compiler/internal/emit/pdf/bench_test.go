package pdf

import (
	"bytes"
	"io"
	"testing"
	"time"

	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/pages/pagestest"

	"github.com/go-pdf/fpdf"
	"github.com/stretchr/testify/require"
)

// bare sets the letters of a document with the library alone: the least any way
// through can cost.
func bare(b *testing.B, doc pages.Document) {
	file := fpdf.New("P", "mm", "A5", "")
	file.SetCreationDate(time.Unix(0, 0))
	for _, face := range used(doc) {
		file.AddUTF8FontFromBytes(family(face), "", bytes.Clone(face.TrueType()))
	}
	for _, side := range doc.Sides {
		file.AddPage()
		for _, mark := range side.Marks {
			if text, ok := mark.(pages.Text); ok {
				file.SetFont(family(text.Face), "", text.Size*points)
				file.Text(text.X, text.Y, text.Text)
			}
		}
	}
	require.NoError(b, file.Output(io.Discard))
}

func BenchmarkBareLibrary(b *testing.B) {
	doc, _ := pages.LayCard(pagestest.Card(), pages.Look{})
	for b.Loop() {
		bare(b, doc)
	}
}

func BenchmarkCard(b *testing.B) {
	card := pagestest.Card()
	for b.Loop() {
		doc, _ := pages.LayCard(card, pages.Look{})
		_, err := Draw(doc)
		require.NoError(b, err)
	}
}

func BenchmarkLayingOut(b *testing.B) {
	card := pagestest.Card()
	for b.Loop() {
		pages.LayCard(card, pages.Look{})
	}
}

// BenchmarkAgainstBareLibrary takes both in turn, so that the ratio does not hang
// on what else the machine does.
func BenchmarkAgainstBareLibrary(b *testing.B) {
	card := pagestest.Card()
	doc, _ := pages.LayCard(card, pages.Look{})
	var ours, floor time.Duration
	for b.Loop() {
		start := time.Now()
		made, _ := pages.LayCard(card, pages.Look{})
		_, err := Draw(made)
		ours += time.Since(start)
		require.NoError(b, err)
		start = time.Now()
		bare(b, doc)
		floor += time.Since(start)
	}
	b.ReportMetric(float64(ours)/float64(floor), "×bare")
}
