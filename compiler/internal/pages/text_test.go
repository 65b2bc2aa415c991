package pages

import (
	"strings"
	"testing"

	"benchleaf/compiler/internal/plan"

	"github.com/stretchr/testify/assert"
	"golang.org/x/image/font/sfnt"
)

func plainWords() plan.Words { return plan.Words{} }

func linesOf(width float64, spans ...span) []string {
	s := newSetter(Look{DistanceMM: 500}, plainWords(), nil)
	var out []string
	y := -1.0
	for _, mark := range s.set(s.text(), width, spans).marks {
		text := mark.(Text)
		if text.Y > y {
			out = append(out, "")
		}
		y = text.Y
		out[len(out)-1] += text.Text
	}
	return out
}

func TestLinesHoldEveryLetterWithinTheWidth(t *testing.T) {
	text := "Refit the drain plug with a new sealing ring 22 × 27 mm and tighten to 42 to 48 N·m in two passes."
	for width := 8.0; width < 200; width += 3.7 {
		s := newSetter(Look{DistanceMM: 500}, plainWords(), nil)
		set := s.set(s.text(), width, []span{{text, Regular, black}})
		assert.LessOrEqual(t, set.width, width+0.001)
		assert.Equal(t, strings.ReplaceAll(text, " ", ""), strings.ReplaceAll(strings.Join(linesOf(width, span{text, Regular, black}), ""), " ", ""))
	}
}

func TestNumbersKeepToTheirUnits(t *testing.T) {
	for text, whole := range map[string]string{
		"Sealing ring made of copper 22 × 27 mm": "22 × 27 mm", "Wait for the oil to run, 15 to 20 min": "15 to 20 min", "It takes a good while: 1 h 15 min": "1 h 15 min",
	} {
		for width := 30.0; width < 80; width += 1.3 {
			lines := linesOf(width, span{text, Regular, black})
			assert.Contains(t, strings.Join(lines, "|"), whole, "width %.1f", width)
		}
	}
}

func TestStylesOfOneWordDoNotPart(t *testing.T) {
	assert.Equal(t, []string{"Press START."}, linesOf(100, span{"Press ", Regular, black}, span{"START", Bold, black}, span{".", Regular, black}))
}

func TestPrintable(t *testing.T) {
	for text, want := range map[string]string{
		"plain": "plain", "42\u202fN·m": "42\u00a0N·m", "hex\u2011key": "hex-key", "e\u0301": "é", "tab\tline\nend": "tab line end", "a\u200bb": "ab",
		"× · – ± ° ² ½ ≥ − • … “ ” Ω µ €": "× · – ± ° ² ½ ≥ − • … “ ” Ω µ €",
	} {
		got, missing := printable(Regular, text)
		assert.Equal(t, want, got)
		assert.Empty(t, missing, text)
	}
	got, missing := printable(Bold, "ok \u2713 \x00")
	assert.Equal(t, "ok [U+2713] [U+0000]", got)
	assert.Equal(t, []rune{'\u2713', 0}, missing)
}

// The tables are asked rune by rune against the font file itself, also where
// measure does not look.
func TestCoverageIsTheFontFiles(t *testing.T) {
	for face := range faces {
		parsed, err := sfnt.Parse(face.TrueType())
		assert.NoError(t, err)
		var buffer sfnt.Buffer
		for r := rune(' '); r <= 0xFFFF; r++ {
			glyph, err := parsed.GlyphIndex(&buffer, r)
			assert.NoError(t, err)
			if (glyph != 0) != face.Covers(r) {
				t.Fatalf("face %d, %U: glyph %d, covered %v", face, r, glyph, face.Covers(r))
			}
		}
	}
}
