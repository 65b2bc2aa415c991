package pdf

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"hash/fnv"
	"strconv"
	"strings"
	"sync"

	"benchleaf/compiler/internal/pages"

	"golang.org/x/image/font/sfnt"
)

// The library reads and cuts a face anew for each document, which takes longer than all the
// rest of it. Here a face is cut once for the groups of letters that documents use, and what
// comes of it is shared. The library is told of a stand-in that weighs nothing; when the file is
// finished, the objects of the stand-in are replaced (finish.go). A text is written by the
// numbers of its letters in Unicode, in two bytes each.

// groups are groups of letters, by their bits. A face is cut to whole groups, so that many
// documents share what is cut, and a document has the same bytes whatever is printed beside it.
type groups uint64

// groupOf is the group of a letter: what is typed without accents; the signs of Latin-1; the
// letters of Western and Central Europe; punctuation; and further on by 1024 letters each.
func groupOf(r rune) groups {
	switch {
	case r < 0x80:
		return 1 << 0
	case r < 0xC0, r == '×', r == '÷':
		return 1 << 1
	case r < 0x180:
		return 1 << 2
	case r < 0x400:
		return 1 << 3
	case r >= 0x2000 && r < 0x2070:
		return 1 << 4
	}
	return 1 << (5 + min(r>>10, 58))
}

// firstLetter is the first with a glyph, beyond the one behind the last: the faces have none
// further on, and two bytes hold no more.
const firstLetter, beyond = ' ', 0x10000

// typeface is a face that was read.
type typeface struct {
	font    *trueType
	parsed  *sfnt.Font
	face    pages.Face
	name    string
	subsets sync.Map // groups → *embedded
}

var typefaces = func() (all [16]func() (*typeface, error)) {
	for face := range all {
		all[face] = sync.OnceValues(func() (*typeface, error) { return readFace(pages.Face(face)) })
	}
	return all
}()

func readFace(face pages.Face) (*typeface, error) {
	font, err := readTrueType(face.TrueType())
	if err != nil {
		return nil, err
	}
	parsed, err := sfnt.Parse(face.TrueType())
	if err != nil {
		return nil, err
	}
	name, err := parsed.Name(nil, sfnt.NameIDPostScript)
	if err != nil {
		return nil, err
	}
	return &typeface{font: font, parsed: parsed, face: face, name: strings.ReplaceAll(name, " ", "")}, nil
}

// embedded is what stands in a document of a face that is cut: the values of its objects.
type embedded struct {
	name       string // with the mark of a subset before it
	descriptor string // all but the file
	widths     string
	file       []byte // compressed
	length     int    // before
	glyphs     []byte // which glyph each letter up to the last has, compressed
}

// cut is a face with some groups of letters.
func (t *typeface) cut(with groups) (*embedded, error) {
	if known, ok := t.subsets.Load(with); ok {
		return known.(*embedded), nil
	}
	var buffer sfnt.Buffer
	var glyphs []int
	var widths strings.Builder
	chosen := make([]byte, 2*beyond)
	last := rune(0) // letter whose width was written
	for r := rune(firstLetter); r < beyond; r++ {
		if with&groupOf(r) == 0 {
			if r&0x3FF == 0 && r >= 0x2400 { // a whole group
				r += 0x3FF
			}
			continue
		}
		index, err := t.parsed.GlyphIndex(&buffer, r)
		if err != nil {
			return nil, err
		}
		glyph := int(index)
		if glyph == 0 {
			continue
		}
		glyphs = append(glyphs, glyph)
		binary.BigEndian.PutUint16(chosen[2*r:], uint16(glyph))
		switch {
		case last == 0:
			fmt.Fprintf(&widths, "%d [", r)
		case last != r-1:
			fmt.Fprintf(&widths, "] %d [", r)
		default:
			widths.WriteByte(' ')
		}
		widths.WriteString(strconv.Itoa(t.font.advance(glyph)))
		last = r
	}
	if last != 0 {
		widths.WriteByte(']')
	}
	file := t.font.subset(glyphs)
	out := &embedded{name: tag(with) + "+" + t.name, widths: widths.String(), file: deflated(file), length: len(file), glyphs: deflated(chosen[:2*(last+1)])}
	out.descriptor = t.describe(out.name)
	known, _ := t.subsets.LoadOrStore(with, out)
	return known.(*embedded), nil
}

// tag is the mark of a subset, six capitals that are others for other letters (ISO 32000-1,
// 9.6.4).
func tag(with groups) string {
	mark := fnv.New64a()
	_ = binary.Write(mark, binary.BigEndian, uint64(with))
	var out [6]byte
	for i, left := 0, mark.Sum64(); i < len(out); i, left = i+1, left/26 {
		out[i] = 'A' + byte(left%26)
	}
	return string(out[:])
}

// What the flags of a font say (ISO 32000-1, table 123).
const (
	fixedPitch = 1 << 0
	symbolic   = 1 << 2 // its letters are chosen by their numbers
	italic     = 1 << 6
)

// describe writes the measures of a face, in thousandths of an em (ISO 32000-1, 9.8).
func (t *typeface) describe(name string) string {
	flags, stem := symbolic, 80 // how thick a stem is: of the regular faces about, common practice, no source
	if t.face == pages.Mono {
		flags |= fixedPitch
	}
	if t.face == pages.Bold || t.face == pages.BoldItalic {
		stem = 140
	}
	slant := t.font.signed("post", 4) // whole degrees
	if slant != 0 {
		flags |= italic
	}
	of := func(table string, at int) int { return t.font.thousandths(t.font.signed(table, at)) }
	return fmt.Sprintf("<</Type /FontDescriptor /FontName /%s /Flags %d /FontBBox [%d %d %d %d] /ItalicAngle %d /Ascent %d /Descent %d /CapHeight %.0f /StemV %d /FontFile2 ",
		name, flags, of("head", 36), of("head", 38), of("head", 40), of("head", 42), slant, of("hhea", 4), of("hhea", 6), t.face.CapHeight(1000), stem)
}

// unicode says that what a letter is written by is its number in Unicode (ISO 32000-1, 9.10.3).
const unicode = `/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <FFFF>
endcodespacerange
1 beginbfrange
<0000> <FFFF> <0000>
endbfrange
endcmap
CMapName currentdict /CMap defineresource pop
end
end`

// standIn is the name under which the library knows a face.
func standIn(face pages.Face) string { return "face" + strconv.Itoa(int(face)) }

// standIns are the definitions of fonts that the library reads: no file, and no widths, since
// it is never asked how wide a text is.
var standIns = func() (all [16]func() []byte) {
	for face := range all {
		all[face] = sync.OnceValue(func() []byte {
			text, err := json.Marshal(map[string]any{"Tp": "TrueType", "Name": standIn(pages.Face(face)), "Cw": make([]int, 256)})
			if err != nil {
				panic(err) // numbers and words that are written here
			}
			return text
		})
	}
	return all
}()

// letters are how a text is written: two bytes for each letter. The faces have none that would
// take four, and what has no glyph does not come this far.
func letters(text string) string {
	out := make([]byte, 0, 2*len(text))
	for _, r := range text {
		out = binary.BigEndian.AppendUint16(out, uint16(r))
	}
	return string(out)
}

// compressors keep their memory, which takes longer to get than a page to compress.
var compressors = sync.Pool{New: func() any {
	out, err := zlib.NewWriterLevel(nil, zlib.BestSpeed)
	if err != nil {
		panic(err) // a level there is not
	}
	return out
}}

// deflated compresses bytes.
func deflated(text []byte) []byte {
	var out bytes.Buffer
	writer := compressors.Get().(*zlib.Writer)
	defer compressors.Put(writer)
	writer.Reset(&out)
	_, _ = writer.Write(text) // a buffer takes all
	_ = writer.Close()
	return out.Bytes()
}
