package pdf

import (
	"testing"
	"time"

	"benchleaf/compiler/internal/emit/pdf/pdftest"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/pages/pagestest"

	"github.com/stretchr/testify/require"
)

func BenchmarkBareLibrary(b *testing.B) {
	doc, _ := pages.LayCard(pagestest.Card(), pages.Look{})
	for b.Loop() {
		require.NoError(b, pdftest.Bare(doc))
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
		require.NoError(b, pdftest.Bare(doc))
		floor += time.Since(start)
	}
	b.ReportMetric(float64(ours)/float64(floor), "×bare")
}
