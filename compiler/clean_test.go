package compiler_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
)

// What looks wrong and is right raises nothing: each file of testdata/clean is one
// such thing, and is named after it.
func TestWhatLooksWrongAndIsRightRaisesNothing(t *testing.T) {
	const folder = "../testdata/clean"
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(entries), 15)
	for _, entry := range entries {
		text, err := os.ReadFile(filepath.Join(folder, entry.Name()))
		require.NoError(t, err)
		result := compiler.Compile(compiler.Input{Files: []*source.File{source.New(entry.Name(), text)}})
		assert.Empty(t, result.Findings, describe(result.Findings))
		require.Len(t, result.Jobs, 1, entry.Name())
		assert.False(t, result.Jobs[0].Blocked, entry.Name())
	}
}
