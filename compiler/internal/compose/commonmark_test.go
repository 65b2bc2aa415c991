package compose

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
)

// A text without marks reads the same with the parser and without.
func FuzzUnmarkedReadsAsParsed(f *testing.F) {
	for _, text := range []string{"Turn it by hand.", "a. b", "Lift (by two) 12 × 3 mm – slowly; then stop: \"clear\"", "x=1", "http://a.b", "é½°", "a |b| c", "&amp", ":-", "1. one", "- one", "====", "a $b$ {c}", "'q' ^x^", "\u00a0x", "x "} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if strings.TrimSpace(text) == "" || !unmarked(text) {
			return
		}
		assert.Equal(t, parsed(text), blocks(text), "%q", text)
	})
}

// However a text is marked, reading it twice gives the same, nothing empty comes out of it, and no
// letter comes out that did not stand in it. Where nothing in it can be a link, HTML, an entity or
// the name of a language of code, every letter is kept.
func FuzzMarkdown(f *testing.F) {
	for _, text := range []string{"Turn it **by hand**.", "- one\n- two\n  1. three\n  2. four", "# Head\n\ntext\n===", "> quoted\n> - in a list", "a\\\nb  \nc", "```\ncode *is* code\n```", "    code", "*a **b* c**", "[a](b \"c\") <b>d</b> &amp; <http://a.b>",
		"[a]: b\n[a]", "1) one\n\n   more\n2) two", "_x__y_", strings.Repeat("> ", 50) + "deep", strings.Repeat("*a **b ", 20), "\x00\xff", "a\tb", "***", "![p](q)"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		made := blocks(text)
		assert.Equal(t, made, blocks(text))
		var out strings.Builder
		for _, block := range made {
			assert.NotEmpty(t, block.Runs)
			for _, run := range block.Runs {
				out.WriteString(run.Text)
			}
		}
		if !utf8.ValidString(text) || strings.Contains(text, "&") { // an entity is a letter that did not stand there
			return
		}
		stood, came := lettersOf(text), lettersOf(out.String())
		assert.True(t, within(came, stood), "%q out of %q", came, stood)
		if !strings.ContainsAny(text, "<[`~") {
			assert.Equal(t, string(stood), string(came), "%q", text)
		}
	})
}

func lettersOf(text string) (out []rune) {
	for _, r := range text {
		if unicode.IsLetter(r) {
			out = append(out, r)
		}
	}
	return out
}

// within reports whether letters stand among others in their order.
func within(some, all []rune) bool {
	for _, r := range all {
		if len(some) > 0 && some[0] == r {
			some = some[1:]
		}
	}
	return len(some) == 0
}
