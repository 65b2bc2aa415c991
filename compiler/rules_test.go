package compiler_test

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// companions are rules that come with another by what they are.
var companions = map[string]string{"syntax/too-many": "syntax/no-equals", "safety/cannot-allow": "safety/missing-caution", notChecked: "language/unknown-key"}

// notChecked comes with whatever is wrong with the language of a procedure.
const notChecked = "language/not-checked"

// The examples of every rule are run: the bad one raises that rule and nothing
// else, the good one raises nothing. An example is short, so what other rules only
// note of it is let be.
func TestExamplesOfEveryRule(t *testing.T) {
	for _, rule := range compiler.Rules() {
		if rule.ID == "internal/rule-failed" {
			continue
		}
		t.Run(rule.ID, func(t *testing.T) {
			bad := compile(rule.Setting + rule.Bad)
			raised := 0
			for _, found := range bad {
				if found.Rule == rule.ID {
					raised++
				} else if found.Severity > finding.Note && found.Rule != notChecked {
					assert.Equal(t, companions[rule.ID], found.Rule, "the bad example raises more: %s", describe(bad))
				}
			}
			assert.Positive(t, raised, "the bad example does not raise it: %s", describe(bad))
			good := slices.DeleteFunc(compile(rule.Setting+rule.Good), func(found finding.Finding) bool {
				return found.Severity == finding.Note && found.Rule != rule.ID
			})
			assert.Empty(t, good, "the good example is not clean: %s", describe(good))
		})
	}
}

func compile(text string) []finding.Finding {
	files := []*source.File{source.New("bad.toml", []byte(text))}
	return compiler.Compile(compiler.Input{Files: files, Pictures: compiler.Imagined(files), Today: "2026-05-01"}).Findings
}

func TestEveryRuleIsDocumented(t *testing.T) {
	form := regexp.MustCompile(`^[a-z]+/[a-z0-9-]+$`)
	seen := map[string]bool{}
	for _, rule := range compiler.Rules() {
		assert.Regexp(t, form, rule.ID)
		assert.False(t, seen[rule.ID], "%s stands twice", rule.ID)
		seen[rule.ID] = true
		assert.NotEmpty(t, rule.Title, rule.ID)
		assert.NotEmpty(t, rule.Why, rule.ID)
		assert.NotEmpty(t, rule.Source, rule.ID)
		if rule.ID != "internal/rule-failed" {
			assert.NotEmpty(t, rule.Bad, rule.ID)
			assert.NotEmpty(t, rule.Good, rule.ID)
		}
	}
}

// Each certain fix, applied, takes its finding away, breaks nothing and keeps every comment.
func TestCertainFixesMendWhatTheyAreFor(t *testing.T) {
	texts := map[string]string{}
	for _, rule := range compiler.Rules() {
		texts[rule.ID] = rule.Setting + rule.Bad
	}
	broken, err := filepath.Glob("../testdata/broken/*.toml")
	require.NoError(t, err)
	for _, path := range broken {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		texts[path] = string(text)
	}
	tried := 0
	for name, text := range texts {
		before := compiler.Compile(compiler.Input{Files: []*source.File{source.New("bad.toml", []byte(text))}})
		outputs, mends := before.Fix()
		for _, output := range outputs {
			tried++
			after := compile(string(output.Bytes))
			assert.Less(t, len(after), len(before.Findings), "%s: after the fix:\n%s\n%s", name, output.Bytes, describe(after))
			assert.Equal(t, strings.Count(text, "# want"), strings.Count(string(output.Bytes), "# want"), "%s: a comment is lost", name)
			assert.NotEmpty(t, mends, name)
		}
	}
	assert.Greater(t, tried, 30, "too few certain fixes are tried")
}
