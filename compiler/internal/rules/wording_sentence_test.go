package rules

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"benchleaf/compiler/internal/model"
)

func wordsOf(text string) []string {
	var out []string
	for _, s := range sentences(model.Text{Text: text}) {
		out = append(out, s.words)
	}
	return out
}

func TestSentencesEndWhereReadersStop(t *testing.T) {
	for text, want := range map[string][]string{
		"Wipe it. Dry it.":                      {"Wipe it", "Dry it"},
		"Turn it by approx. 5 mm, no more":      {"Turn it by approx. 5 mm, no more"},
		"Set it to 0.5 mm. Stop!":               {"Set it to 0.5 mm", "Stop"},
		"Look at the seal; if it is torn, stop": {"Look at the seal", "if it is torn, stop"},
		"Call “clear”. Take the lock off.":      {"Call “clear”", "Take the lock off"},
		"Is it dry? Then go on.":                {"Is it dry", "Then go on"},
		"- Wipe it\n- Dry it":                   {"Wipe it", "Dry it"},
		"Wipe it\nwith a rag.\n\nDry it.":       {"Wipe it\nwith a rag", "Dry it"},
		"**Stop** the pump.":                    {"Stop   the pump"},
		"?!. ":                                  nil,
		"":                                      nil,
	} {
		assert.Equal(t, want, wordsOf(text), text)
	}
}

// The counts are ASD-STE100's way as a digest tells it: an amount is one word, and what
// stands in parentheses is a sentence of its own.
func TestAmountsCountAsOneWord(t *testing.T) {
	for text, want := range map[string]int{
		"Tighten the nut to 40 to 48 N·m in a cross": 8,
		"Fill 1.1 L of oil":                          4,
		"Lift it (two people, backs straight) off":   3,
		"Wear cut-resistant gloves":                  3,
		"Wait 1 h 15 min":                            3,
	} {
		assert.Equal(t, want, wordCount(text), text)
	}
}

// Whatever is written, sentences are parts of it in order.
func FuzzSentences(f *testing.F) {
	for _, text := range []string{"Wipe it. Dry it.", "- a\n- b", "1. Wipe it.\n2. Dry it.", "**…**: x; É.", "\n\n\n", "a.\" B", "\xff. A"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		end := 0
		plain := emphasis.Replace(text)
		for _, s := range sentences(model.Text{Text: text}) {
			assert.GreaterOrEqual(t, s.start, end)
			end = s.start + len(s.words)
			assert.LessOrEqual(t, end, len(plain))
			assert.True(t, strings.HasPrefix(plain[s.start:], s.words))
			core, skip := s.core()
			assert.Equal(t, s.words[skip:], core)
			s.states()
			wordCount(s.words)
		}
	})
}
