// Package treetest gives tests the files of the TOML project's own tests.
package treetest

import (
	"io/fs"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	tomltest "github.com/toml-lang/toml-test/v2"
)

// Corpus is the files of the TOML project's own tests for version 1.0, by their paths: valid/…
// and invalid/….
func Corpus(t testing.TB) map[string]string {
	t.Helper()
	cases := tomltest.TestCases()
	list, err := fs.ReadFile(cases, "files-toml-1.0.0")
	require.NoError(t, err)
	out := map[string]string{}
	for _, name := range strings.Fields(string(list)) {
		if strings.HasSuffix(name, ".toml") {
			text, err := fs.ReadFile(cases, name)
			require.NoError(t, err)
			out[name] = string(text)
		}
	}
	return out
}
