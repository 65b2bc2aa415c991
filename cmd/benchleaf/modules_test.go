package main

import (
	"os"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The table of modules in DEVELOPERS.md names each module of go.mod in its version, and no other.
func TestTheTableOfModulesIsTrue(t *testing.T) {
	module, err := os.ReadFile("../../go.mod")
	require.NoError(t, err)
	table, err := os.ReadFile("../../DEVELOPERS.md")
	require.NoError(t, err)
	versions := func(form string, text []byte) map[string]string {
		out := map[string]string{}
		for _, found := range regexp.MustCompile(form).FindAllSubmatch(text, -1) {
			out[string(found[1])] = string(found[2])
		}
		return out
	}
	there := versions(`(?m)^\t(\S+\.\S+/\S+) (v\S+)`, module)
	require.Greater(t, len(there), 20)
	assert.Equal(t, there, versions(`(?m)^\| (\S+\.\S+/\S+) \| (v\S+) \| \d{4}-\d{2}-\d{2} \| [A-Z]\S+ \| \S`, table))
}
