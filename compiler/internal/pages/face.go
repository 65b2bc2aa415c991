package pages

import (
	"fmt"
	"strings"
	"sync"
	"unicode"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/gobolditalic"
	"golang.org/x/image/font/gofont/goitalic"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/norm"
)

// Face is one of the type faces a page uses, all of the Go family.
type Face int

// The faces.
const (
	Regular Face = iota
	Bold
	Italic
	BoldItalic
	Mono
	faces // their number
)

// TrueType gives the face as a font file. The bytes are shared: read, never write.
func (f Face) TrueType() []byte {
	switch f {
	case Bold:
		return gobold.TTF
	case Italic:
		return goitalic.TTF
	case BoldItalic:
		return gobolditalic.TTF
	case Mono:
		return gomono.TTF
	}
	return goregular.TTF
}

// Width measures a text in this face, in millimetres, at a size in millimetres of the em.
func (f Face) Width(text string, size float64) float64 {
	metrics := f.metrics()
	sum := 0
	for _, r := range text {
		sum += metrics.advance(r)
	}
	return float64(sum) * size / metrics.em
}

// CapHeight is the height of a capital in millimetres at a size in millimetres of the em.
func (f Face) CapHeight(size float64) float64 { return f.metrics().cap * size }

// Covers says whether the face has a glyph for the rune.
func (f Face) Covers(r rune) bool { return f.metrics().advance(r) > 0 }

func (f Face) ascent() float64  { return f.metrics().ascent }
func (f Face) descent() float64 { return f.metrics().descent }

// table is what laying out needs to know of a face; advances are in font units,
// zero for a rune without a glyph. All of the Go faces lies below U+10000.
type table struct {
	font                 *sfnt.Font // for outlines
	em                   float64
	advances             []uint16
	ascent, descent, cap float64 // per em
}

func (t *table) advance(r rune) int {
	if r < 0 || int(r) >= len(t.advances) {
		return 0
	}
	return int(t.advances[r])
}

func (f Face) metrics() *table { return faceTables[f]() }

var faceTables = func() (all [faces]func() *table) {
	for f := range faces {
		all[f] = sync.OnceValue(func() *table { return measure(f.TrueType()) })
	}
	return all
}()

// Where the Go faces have no glyphs at all: looking there would take longer than
// laying out a card. A test looks there all the same.
const emptyFrom, emptyTo = 0x2700, 0xF000

// measure panics only if the fonts built into the program are broken, which the
// tests would show.
func measure(trueType []byte) *table {
	parsed, err := sfnt.Parse(trueType)
	if err != nil {
		panic(err)
	}
	var buffer sfnt.Buffer
	units := fixed.Int26_6(parsed.UnitsPerEm())
	metrics, err := parsed.Metrics(&buffer, units, font.HintingNone)
	if err != nil {
		panic(err)
	}
	em := float64(units)
	t := &table{font: parsed, em: em, advances: make([]uint16, 0x10000),
		ascent: float64(metrics.Ascent) / em, descent: float64(metrics.Descent) / em, cap: float64(metrics.CapHeight) / em}
	for r := rune(' '); r < 0x10000; r++ {
		if r == emptyFrom {
			r = emptyTo
		}
		glyph, err := parsed.GlyphIndex(&buffer, r)
		if err != nil || glyph == 0 {
			continue
		}
		if advance, err := parsed.GlyphAdvance(&buffer, glyph, units, font.HintingNone); err == nil {
			t.advances[r] = uint16(advance)
		}
	}
	return t
}

// likeness holds runes that differ from a covered one in width or in breaking only.
var likeness = strings.NewReplacer("\u2009", " ", "\u202f", "\u00a0", "\u2002", " ", "\u2003", " ", "\u2007", "\u00a0", "\u2011", "-", "\u00ad", "", "\u200b", "", "\ufeff", "")

// printable makes a text of covered runes: a rune without a glyph becomes its
// number in brackets, and is handed back.
func printable(face Face, text string) (string, []rune) {
	if plain(text) {
		return text, nil
	}
	text = likeness.Replace(norm.NFC.String(text))
	var missing []rune
	var out strings.Builder
	for _, r := range text {
		switch {
		case unicode.IsSpace(r) && r != '\u00a0':
			out.WriteByte(' ')
		case unicode.IsControl(r) || !face.Covers(r):
			missing = append(missing, r)
			fmt.Fprintf(&out, "[U+%04X]", r)
		default:
			out.WriteRune(r)
		}
	}
	return out.String(), missing
}

func plain(text string) bool {
	for i := range len(text) {
		if text[i] < ' ' || text[i] > '~' {
			return false
		}
	}
	return true
}
