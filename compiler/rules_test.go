package compiler_test

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"

	"benchleaf/compiler"
	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// companions are rules that come with another by what they are.
var companions = map[string]string{"syntax/too-many": "syntax/no-equals", "safety/cannot-allow": "safety/missing-caution"}

// The examples of every rule are run: the bad one raises that rule and nothing
// else, the good one raises nothing.
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
				} else {
					assert.Equal(t, companions[rule.ID], found.Rule, "the bad example raises more: %s", describe(bad))
				}
			}
			assert.Positive(t, raised, "the bad example does not raise it: %s", describe(bad))
			good := compile(rule.Setting + rule.Good)
			assert.Empty(t, good, "the good example is not clean: %s", describe(good))
		})
	}
}

func compile(text string) []finding.Finding {
	return compiler.Compile(compiler.Input{Files: []*source.File{source.New("bad.toml", []byte(text))}}).Findings
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

// Each certain fix, applied, takes its finding away and breaks nothing.
func TestCertainFixesMendWhatTheyAreFor(t *testing.T) {
	tried := 0
	for _, rule := range compiler.Rules() {
		text := rule.Setting + rule.Bad
		before := compiler.Compile(compiler.Input{Files: []*source.File{source.New("bad.toml", []byte(text))}})
		for _, output := range before.Fix() {
			tried++
			after := compile(string(output.Bytes))
			assert.Less(t, len(after), len(before.Findings), "%s: after the fix:\n%s\n%s", rule.ID, output.Bytes, describe(after))
		}
	}
	assert.Greater(t, tried, 10, "too few certain fixes are tried")
}
