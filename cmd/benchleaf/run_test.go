package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// said is what a command wrote and ended with.
type said struct {
	out, err string
	status   int
}

// in runs a command in a folder.
func in(folder string, args ...string) said {
	var out, err bytes.Buffer
	status := run(args, caller{strings.NewReader(""), &out, &err, folder, func(string) string { return "" }})
	return said{out.String(), err.String(), status}
}

func write(t *testing.T, folder, name, text string) {
	t.Helper()
	path := filepath.Join(folder, filepath.FromSlash(name))
	require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o777))
	require.NoError(t, os.WriteFile(path, []byte(text), 0o666))
}

// job is a small procedure that is clean.
const job = `benchleaf = 1

[procedure]
title = "Look over the chain oiler"
machine = "Log-deck conveyor"
revision = "A"
date = 2026-02-14
author = "R. Aldous"
who = "Anyone who runs the deck"
hands-on = "5 min"
every = "50 h"
no-isolation = "Nothing is touched; look from outside the guard"
no-close = "Nothing is opened"
tools = []
supplies = []
spares = []
wear = ["eye-protection"]
manual = "Operator's manual, section 4"

[[step]]
inspect = "the oil level in the sight glass"
expect = "between the two marks"
outside = "Fill the oiler by its own card before the next shift."
`

var (
	wrongJob  = strings.Replace(job, `"5 min"`, `"5"`, 1)
	doubtful  = strings.Replace(job, "tools = []", "tools = [\"mallet\"]", 1) + "[tool.mallet]\nkind = \"hammer\"\n" // a tool no step uses
	libraries = "benchleaf = 1\n[tool.mallet]\nkind = \"hammer\"\n"
)

func TestStatus(t *testing.T) {
	folder := t.TempDir()
	write(t, folder, "good.toml", job)
	write(t, folder, "wrong.toml", wrongJob)
	write(t, folder, "doubtful.toml", doubtful)
	write(t, folder, "tools.toml", libraries)
	write(t, folder, "notes.txt", "oil")
	for _, c := range []struct {
		line string
		want int
	}{
		{"lint good.toml", statusClean},
		{"lint doubtful.toml", statusFindings},
		{"lint wrong.toml", statusFindings},
		{"lint --json wrong.toml", statusFindings},
		{"lint good.toml wrong.toml", statusFindings},
		{"lint", statusFindings},
		{"lint nowhere", statusFailed},
		{"lint good.toml nowhere", statusFailed},
		{"lint notes.txt", statusFailed},
		{"lint --nothing", statusFailed},
		{"lint -x", statusFailed},
		{"print good.toml", statusClean},
		{"print doubtful.toml", statusClean},
		{"print wrong.toml", statusFindings},
		{"print good.toml wrong.toml", statusFindings},
		{"print tools.toml", statusFailed},
		{"print good.toml --stock a7", statusFailed},
		{"print good.toml --out=", statusFailed},
		{"pick good.toml", statusClean},
		{"pick --csv wrong.toml", statusFindings},
		{"pick --csv --out there good.toml", statusFailed},
		{"new good.toml", statusFailed},
		{"new good", statusFailed},
		{"new shop.toml", statusFailed},
		{"new a b", statusFailed},
		{"why units/missing language/empty-text", statusClean},
		{"why nothing/known", statusFailed},
		{"reference more", statusFailed},
		{"help lint", statusClean},
		{"lint --help", statusClean},
		{"completion zsh", statusClean},
		{"", statusClean},
		{"wardrobe", statusFailed},
		{"wardrobe --json", statusFailed},
	} {
		got := in(folder, strings.Fields(c.line)...)
		assert.Equal(t, c.want, got.status, "benchleaf %s: %s%s", c.line, got.out, got.err)
		assert.Equal(t, got.status == statusFailed, strings.HasPrefix(got.err, "benchleaf: "), "benchleaf %s: %q", c.line, got.err)
	}
}

func TestEveryCommandTeachesByExample(t *testing.T) {
	root := command(&caller{})
	assert.NotEmpty(t, root.Example)
	for _, sub := range root.Commands() {
		assert.NotEmpty(t, sub.Example, sub.Name())
		assert.NotEmpty(t, sub.Long, sub.Name())
	}
}

func TestAFullDiskIsTold(t *testing.T) {
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Skip("/dev/full is not there")
	}
	defer full.Close()
	var told bytes.Buffer
	status := run([]string{"reference"}, caller{strings.NewReader(""), full, &told, t.TempDir(), os.Getenv})
	assert.Equal(t, statusFailed, status)
	assert.Contains(t, told.String(), "could not be written")
}

// breaking is a stream that fails in a way nobody thought of.
type breaking struct{}

func (breaking) Write([]byte) (int, error) { panic("no paper") }

func TestAFaultOfTheProgramIsToldAsOne(t *testing.T) {
	var told bytes.Buffer
	status := run([]string{"reference"}, caller{strings.NewReader(""), breaking{}, &told, t.TempDir(), os.Getenv})
	assert.Equal(t, statusFailed, status)
	assert.Contains(t, told.String(), "a fault of benchleaf, not of your files: no paper")
}

// Bad input is answered within moments; a second or two on a slow machine, ten here to be fair to a busy one.
func TestNoiseIsAnsweredSoon(t *testing.T) {
	folder := t.TempDir()
	write(t, folder, "nested.toml", "a = "+strings.Repeat("[", 4_000_000))
	write(t, folder, "dots.toml", strings.Repeat("a.", 500_000)+"a = 1")
	write(t, folder, "tables.toml", strings.Repeat("[[step]]\n", 400_000))
	write(t, folder, "line.toml", "a = \""+strings.Repeat("é", 1_900_000))
	for _, name := range []string{"nested", "dots", "tables", "line"} {
		begun := time.Now()
		got := in(folder, "lint", name+".toml")
		assert.Equal(t, statusFindings, got.status, name)
		assert.Less(t, time.Since(begun), 10*time.Second, name)
		assert.NotContains(t, got.err, "fault of benchleaf", name)
		assert.Less(t, len(got.out), 1<<20, "%s is answered with %d bytes", name, len(got.out))
		t.Logf("%s: %v, %d bytes, %s", name, time.Since(begun), len(got.out), regexp.MustCompile(`\n1 file.*`).FindString(got.out))
	}
}

// Every rule that help, the README and the reference name is there to be asked about.
func TestEveryRuleThatIsNamedIsThere(t *testing.T) {
	texts := ""
	for _, args := range [][]string{{"help"}, {"help", "why"}, {"help", "lint"}, {"reference"}} {
		got := in(t.TempDir(), args...)
		require.Zero(t, got.status)
		texts += got.out
	}
	for _, path := range []string{"../../README.md", "../../DEVELOPERS.md"} {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		texts += string(text)
	}
	named := regexp.MustCompile(`(?:why |\[|rule = ")((?:units|safety|tool|torque|fastener|language|reference|syntax|record|sequence|supply|spare|fluid)/[a-z-]+)`).FindAllStringSubmatch(texts, -1)
	require.Greater(t, len(named), 4)
	for _, name := range named {
		assert.Zero(t, in(t.TempDir(), "why", name[1]).status, "there is no rule %s", name[1])
	}
}
