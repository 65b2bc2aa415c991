package compiler_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"benchleaf/compiler"
	"benchleaf/compiler/finding"
)

// An error rests on a publication, on the language or on what the author wrote: not on
// common practice alone.
func TestErrorsRestOnMoreThanCommonPractice(t *testing.T) {
	for _, rule := range compiler.Rules() {
		source := strings.ToLower(rule.Source)
		alone := strings.HasPrefix(source, "common practice") || strings.HasPrefix(source, "from memory")
		assert.False(t, alone && rule.Severity == finding.Error, "%s is an error and rests on: %s", rule.ID, rule.Source)
	}
}
