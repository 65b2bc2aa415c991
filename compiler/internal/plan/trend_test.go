package plan

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The verdicts of a trend hold their figures in every language.
func TestVerdictsOfATrendHoldTheirFigures(t *testing.T) {
	for _, lang := range Languages() {
		words, err := LoadWords(lang)
		require.NoError(t, err)
		for text, marks := range map[string]string{
			words.Labels.TrendMeeting: "{limit} {at} {early} {late}", words.Labels.TrendFar: "{limit} {at}", words.Labels.TrendFew: "{n} {least}",
			words.Labels.TrendPast: "{limit}", words.Labels.TrendAway: "{limit}",
		} {
			for mark := range strings.FieldsSeq(marks) {
				assert.Contains(t, text, mark, lang)
			}
			assert.Equal(t, len(strings.Fields(marks)), strings.Count(text, "{"), "%s: %q", lang, text)
		}
	}
}
