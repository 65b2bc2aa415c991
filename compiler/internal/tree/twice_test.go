package tree

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/source"
)

// A key that stands twice below a header of a list may have lost the next header.
func TestALostHeaderIsThoughtOf(t *testing.T) {
	for text, help := range map[string]string{
		"[[step]]\nremove = \"lid\"\ninto = \"pan\"\ninto = \"drum\"\n": "write [[step]] above it",
		"[part.lid]\ncount = 2\ncount = 3\n":                            "Keep one of the two.",
	} {
		_, found := Parse(source.New("a.toml", []byte(text)))
		require.Len(t, found, 1)
		assert.Contains(t, found[0].Help, help)
	}
}
