package compose

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A text without marks reads the same with the parser and without.
func FuzzUnmarkedReadsAsParsed(f *testing.F) {
	for _, text := range []string{"Turn it by hand.", "a. b", "Lift (by two) 12 × 3 mm – slowly; then stop: \"clear\"", "x=1", "http://a.b", "é½°", "a |b| c", "&amp", ":-", "1. one", "- one", "====", "a $b$ {c}", "'q' ^x^", "\u00a0x", "x "} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if strings.TrimSpace(text) == "" || !unmarked(text) {
			return
		}
		assert.Equal(t, parsed(text), blocks(text), "%q", text)
	})
}
