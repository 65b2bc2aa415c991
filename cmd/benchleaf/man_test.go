package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTheManualPageNamesEveryCommandAndFlag(t *testing.T) {
	got := in(t.TempDir(), "man", "--date", "2026-05-01")
	require.Equal(t, statusClean, got.status, got.err)
	assert.Equal(t, got.out, in(t.TempDir(), "man", "--date", "2026-05-01").out)
	assert.Contains(t, got.out, `.TH BENCHLEAF 1 "2026-05-01"`)
	assert.Equal(t, statusFailed, in(t.TempDir(), "man", "--date", "May").status)
	for _, cmd := range command(&caller{}).Commands() {
		assert.Contains(t, got.out, ".SS benchleaf "+roff(cmd.Name()), cmd.Name())
	}
	for _, r := range got.out {
		require.True(t, r < 127, "%q is beyond ASCII", r)
	}
}

// Judges from outside: mandoc, which knows man(7) strictly, and man itself.
func TestTheManualPageByMandoc(t *testing.T) {
	judge, err := exec.LookPath("mandoc")
	if err != nil {
		t.Skip("mandoc is not installed")
	}
	page := filepath.Join(t.TempDir(), "benchleaf.1")
	lint := func(level, text string) (string, error) {
		require.NoError(t, os.WriteFile(page, []byte(text), 0o600))
		said, err := exec.Command(judge, "-Tlint", "-W"+level, page).CombinedOutput()
		return string(said), err
	}
	said, err := lint("warning", in(t.TempDir(), "man", "--date", "2026-05-01").out)
	assert.NoError(t, err, said)
	assert.Empty(t, said)
	said, err = lint("warning", ".TH A 1 2026-05-01\n.TP\n.nope\n")
	assert.Error(t, err, said)
	said, err = lint("error", in(t.TempDir(), "man").out)
	assert.NoError(t, err, said)

	text, err := exec.Command(judge, "-Tascii", page).Output()
	require.NoError(t, err)
	plain := string(text)
	for letter := range strings.SplitSeq("benchleaf lint --fix", "") {
		plain = strings.ReplaceAll(plain, letter+"\b"+letter, letter) // bold is a letter struck twice
	}
	assert.Contains(t, plain, "--sarif")
	assert.Contains(t, plain, "benchleaf lint --fix")
}

func TestCompletion(t *testing.T) {
	folder := t.TempDir()
	write(t, folder, "shop.toml", "benchleaf = 1\n[shop]\ntitle = \"Yard\"\n[unit.north]\nmachine = \"oiler\"\n")
	write(t, folder, "oiler.toml", "benchleaf = 1\n[machine]\ntitle = \"Chain oiler\"\nmanual = \"Manual\"\nvariants = [\"long\", \"short\"]\n")
	write(t, folder, "saw.toml", "benchleaf = 1\n[machine]\ntitle = \"Saw\"\nmanual = \"Manual\"\n")
	write(t, folder, "look.toml", job)
	for line, want := range map[string]string{
		"log --procedure \x00":           "look\tLook over the chain oiler\n",
		"log --unit \x00":                "north\toiler\nsaw\tSaw\n",
		"print --variant \x00":           "long\tChain oiler\nshort\tChain oiler\n",
		"manual --machine \x00":          "oiler\tChain oiler\nsaw\tSaw\n",
		"lint \x00":                      "toml\n",
		"why units/missing \x00":         "units/missing\t",
		"print --stock a\x00":            "a4\n",
		"print --language \x00":          "de\n",
		"log --shop nowhere --unit \x00": ":4\n",
	} {
		args := append([]string{"__complete"}, strings.Split(strings.TrimSuffix(line, "\x00"), " ")...)
		got := in(folder, args...)
		assert.Equal(t, statusClean, got.status, line)
		assert.Contains(t, got.out, want, line)
	}
	for _, shell := range []string{"bash", "zsh", "fish", "powershell"} {
		assert.Contains(t, in(folder, "completion", shell).out, "benchleaf", shell)
	}
	got := in(folder, "completion", "tcsh")
	assert.Equal(t, statusFailed, got.status)
	assert.Contains(t, got.err, "bash, zsh, fish and powershell")
}
