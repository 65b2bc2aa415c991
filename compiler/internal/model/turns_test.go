package model

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/source"
)

// A text of which the keys that lead elsewhere are not even looked for has none: every file of the
// project that is left out so uses nothing, names no procedure and shows no picture.
func TestATextThatLeadsNowhereHasNoUses(t *testing.T) {
	passed, looked := 0, 0
	for _, folder := range []string{"../../../procedures", "../../../testdata/broken", "../../../testdata/clean"} {
		require.NoError(t, filepath.Walk(folder, func(path string, _ os.FileInfo, err error) error {
			if err != nil || !strings.HasSuffix(path, ".toml") {
				return err
			}
			text, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			file, _ := read(source.New(path, text))
			leading := len(file.Uses.Items) + len(file.Pictures())
			for _, ref := range file.refs {
				if strings.Contains(ref.Of, "procedure") {
					leading++
				}
			}
			if leads(text) {
				looked++
			} else {
				passed++
				assert.Zero(t, leading, path)
			}
			return nil
		}))
	}
	require.Greater(t, passed, looked, "files that need not be read")
	for _, text := range []string{"use = []", "\"use\"=[]", "'use' = []", "picture.file = \"a.png\"", "[[ picture ]]", "[picture]\n", "follow = \"a\"", "sooner = [{ of = \"a\" }]", "\"\\u0075se\" = []", "a=1\nuse\t= [1]"} {
		assert.True(t, leads([]byte(text)), text)
	}
	for _, text := range []string{"used = 1", "reuse = 1", "re-use = 1", "say = \"use the jack\"", "out-of = 1"} {
		assert.False(t, leads([]byte(text)), text)
	}
}
