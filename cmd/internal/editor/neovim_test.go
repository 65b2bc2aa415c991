package editor

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Neovim, as an editor of other people's, starts the service and is helped by it.
func TestNeovimIsHelped(t *testing.T) {
	editor, err := exec.LookPath("nvim")
	if err != nil {
		t.Skip("Neovim is not installed")
	}
	command, shop := commandAndShop(t)
	folder := t.TempDir()
	script, err := filepath.Abs("../../../testdata/editor/neovim.lua")
	require.NoError(t, err)
	run := exec.Command(editor, "--headless", "-u", "NONE", "-i", "NONE", "-n", "-c", "luafile "+script)
	run.Env = append(os.Environ(), "BENCHLEAF="+command, "SHOP="+shop, "SAW="+filepath.Join(folder, "saw.json"), "HOME="+folder, "XDG_STATE_HOME="+folder, "XDG_DATA_HOME="+folder)
	said, err := run.CombinedOutput()
	require.NoError(t, err, "%s", said)
	text, err := os.ReadFile(filepath.Join(folder, "saw.json"))
	require.NoError(t, err, "%s", said)
	var saw struct {
		Error, Found, Fix, Mended, Hover, Defined string
		Offered                                   []string
		Renamed                                   bool
		Laid                                      int
	}
	require.NoError(t, json.Unmarshal(text, &saw), "%s", text)
	require.Empty(t, saw.Error)
	assert.Contains(t, saw.Found, `"drain-plux"`)
	assert.Equal(t, `Write "drain-plug"`, saw.Fix)
	assert.Equal(t, `remove = "drain-plug"`, saw.Mended)
	assert.Contains(t, saw.Offered, "fill-plug")
	assert.Contains(t, saw.Hover, "M22")
	assert.Contains(t, saw.Defined, "machines/log-deck.toml")
	assert.True(t, saw.Renamed)
	assert.Positive(t, saw.Laid)
}

// commandAndShop are the command, built, and a copy of the demonstration shop.
func commandAndShop(t *testing.T) (command, shop string) {
	folder := t.TempDir()
	command, shop = filepath.Join(folder, "benchleaf"), filepath.Join(folder, "shop")
	require.NoError(t, os.CopyFS(shop, os.DirFS("../../../procedures")))
	built, err := exec.Command("go", "build", "-o", command, "benchleaf/cmd/benchleaf").CombinedOutput()
	require.NoError(t, err, "%s", built)
	return command, shop
}
