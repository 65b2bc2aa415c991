package entry_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/entry"
)

func TestAFormIsToldFromAProcedure(t *testing.T) {
	for text, want := range map[string]bool{
		book:                                  true,
		"# filled in at the bench\n\n" + book: true,
		"benchleaf = 1\n\n" + book:            true,
		"\uFEFFbenchleaf = 1 # language\r\n[[entry]]\r\n": true,
		"[[entry]]\ndone = [1,\n 2]\nremarks = \"half\n":  true,
		"[entry]\ndate = 2026-01-01\n":                    true,
		"[[entry]]\n[[entry.left-out]]\nstep = 1\n":       true,
		"[[entry]]\nremarks = '''\n[procedure]\n'''\n":    true,
		"":                                 false,
		"# nothing\n":                      false,
		"benchleaf = 1\n":                  false,
		"benchleaf = 1\nuse = []\n" + book: false,
		"[[entry]]\n[procedure]\n":         false,
		"[[entrysheet]]\n":                 false,
		"[procedure]\ntitle = \"Oil\"\n":   false,
	} {
		assert.Equal(t, want, entry.Alone([]byte(text)), text)
	}
	entries, err := entry.Read(entry.Unversioned([]byte("# a form\nbenchleaf = 1\n" + book)))
	require.NoError(t, err)
	assert.Len(t, entries, 1)
	assert.Equal(t, "# a form\n\n[[entry]]\n", string(entry.Unversioned([]byte("# a form\nbenchleaf = 1\n[[entry]]\n"))))
	assert.Equal(t, book, string(entry.Unversioned([]byte(book))))
	assert.Equal(t, "[[entry]]\nbenchleaf = 1\n", string(entry.Unversioned([]byte("[[entry]]\nbenchleaf = 1\n"))))
}
