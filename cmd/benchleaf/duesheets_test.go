package main

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestDuePrintsPages(t *testing.T) {
	folder := t.TempDir()
	write(t, folder, "oiler.toml", job)
	got := in(folder, "due", "--on", "2026-05-05", "--print", "--out", "wall")
	assert.Contains(t, got.out, "wrote      wall/due-list.pdf")
	files, err := filepath.Glob(filepath.Join(folder, "wall", "*"))
	require.NoError(t, err)
	require.Len(t, files, 2)
	assert.Equal(t, "log-deck-conveyor-planner.pdf", filepath.Base(files[1]))
	got = in(folder, "due", "--on", "2026-05-05", "--print", "--out", "wall", "--json")
	assert.Contains(t, got.err, "unchanged  wall/due-list.pdf")
	assert.NotContains(t, got.out, "due-list.pdf")
}
