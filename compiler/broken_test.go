package compiler_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// wanted is a finding a broken procedure must raise: # want: rule "part of the
// summary" on its line, or # want-1: on the line after, # want+1: on the line before.
type wanted struct {
	file, rule, text string
	line             int
}

var wantForm = regexp.MustCompile(`# want([+-]\d+)?: (\S+) "([^"]*)"`)

func readWanted(file *source.File) []wanted {
	var out []wanted
	for line := 1; line <= file.Lines(); line++ {
		for _, m := range wantForm.FindAllStringSubmatch(file.Line(line), -1) {
			offset := 0
			if m[1] != "" {
				offset, _ = strconv.Atoi(m[1])
			}
			out = append(out, wanted{file.Path, m[2], m[3], line + offset})
		}
	}
	return out
}

// cases are the files of testdata/broken: a file is a case, and so is a folder.
func cases(t *testing.T) map[string][]*source.File {
	const folder = "../testdata/broken"
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	out := map[string][]*source.File{}
	for _, entry := range entries {
		path := filepath.Join(folder, entry.Name())
		if entry.IsDir() {
			out[entry.Name()] = compiler.ReadFolder(t, path)
			continue
		}
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		out[entry.Name()] = []*source.File{source.New(entry.Name(), text)}
	}
	return out
}

func TestEachBrokenProcedureRaisesItsFindingAndNothingElse(t *testing.T) {
	all := cases(t)
	require.GreaterOrEqual(t, len(all), 60, "broken procedures in testdata")
	rules := map[string]bool{}
	for name, files := range all {
		var want []wanted
		for _, file := range files {
			want = append(want, readWanted(file)...)
		}
		for _, one := range want {
			rules[one.rule] = true
		}
		t.Run(name, func(t *testing.T) {
			require.NotEmpty(t, want, "the case expects nothing")
			result := compiler.Compile(compiler.Input{Files: files, Pictures: compiler.Imagined(files), Today: "2026-05-01"})
			left := result.Findings
			for _, one := range want {
				i := matching(left, one)
				if !assert.GreaterOrEqual(t, i, 0, "%s:%d: no %s with %q; found %s", one.file, one.line, one.rule, one.text, describe(left)) {
					continue
				}
				left = append(left[:i:i], left[i+1:]...)
			}
			assert.Empty(t, left, "more is found than is wanted: %s", describe(left))
		})
	}
	var missing []string
	for _, rule := range compiler.Rules() {
		if !rules[rule.ID] && rule.ID != "internal/rule-failed" {
			missing = append(missing, rule.ID)
		}
	}
	assert.Empty(t, missing, "rules no broken procedure raises")
}

func matching(list []finding.Finding, want wanted) int {
	for i, found := range list {
		if found.Rule == want.rule && found.Place.File.Path == want.file && found.Place.Start().Line == want.line && strings.Contains(found.Summary, want.text) {
			return i
		}
	}
	return -1
}

func describe(list []finding.Finding) string {
	var out strings.Builder
	for _, found := range list {
		start := found.Place.Start()
		out.WriteString("\n  " + found.Place.File.Path + ":" + strconv.Itoa(start.Line) + ":" + strconv.Itoa(start.Column) + ": " + found.Severity.String() + ": " + found.Summary + " [" + found.Rule + "]")
	}
	return out.String()
}
