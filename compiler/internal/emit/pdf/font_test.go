package pdf

import (
	"bytes"
	"encoding/binary"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"benchleaf/compiler/internal/pages"

	"github.com/go-pdf/fpdf"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/sfnt"
)

var allFaces = []pages.Face{pages.Regular, pages.Bold, pages.Italic, pages.BoldItalic, pages.Mono}

// A face that is cut has the outlines of the letters asked for, byte for byte and under their own
// numbers, and no others; its sums are right (OpenType 1.9:
// all words of a file add up to 0xB1B0AFBA). Which glyph a letter has is told by x/image/font/sfnt.
func TestAFaceIsCutToItsLetters(t *testing.T) {
	for _, face := range allFaces {
		whole, err := readTrueType(face.TrueType())
		require.NoError(t, err)
		parsed, err := sfnt.Parse(face.TrueType())
		require.NoError(t, err)
		var buffer sfnt.Buffer
		var glyphs []int
		for _, r := range "Ärger µ 42 ± ½" {
			glyph, err := parsed.GlyphIndex(&buffer, r)
			require.NoError(t, err)
			require.NotZero(t, glyph, "%c", r)
			glyphs = append(glyphs, int(glyph))
			advance, err := parsed.GlyphAdvance(&buffer, glyph, 1000<<6, 0)
			require.NoError(t, err)
			assert.InDelta(t, advance.Round(), whole.advance(int(glyph)), 1, "%c", r)
		}
		file := whole.subset(glyphs)
		assert.Less(t, len(file), len(face.TrueType())/3)
		assert.Equal(t, uint32(0xB1B0AFBA), sum(file))
		for i := range int(binary.BigEndian.Uint16(file[4:])) {
			entry := file[12+16*i:]
			start, length := binary.BigEndian.Uint32(entry[8:]), binary.BigEndian.Uint32(entry[12:])
			table := bytes.Clone(file[start : start+length])
			if string(entry[:4]) == "head" {
				clear(table[8:12])
			}
			assert.Equal(t, binary.BigEndian.Uint32(entry[4:]), sum(table), "%s", entry[:4])
		}
		cut := &trueType{tables: map[string][]byte{}, long: whole.long, glyphs: whole.glyphs, em: whole.em}
		for i := range int(binary.BigEndian.Uint16(file[4:])) {
			entry := file[12+16*i:]
			start, length := binary.BigEndian.Uint32(entry[8:]), binary.BigEndian.Uint32(entry[12:])
			cut.tables[string(entry[:4])] = file[start : start+length]
		}
		wanted := map[int]bool{0: true}
		for _, glyph := range glyphs {
			wanted[glyph] = true
		}
		for glyph := range whole.glyphs {
			if !wanted[glyph] {
				assert.Empty(t, cut.outline(glyph), "%d", glyph)
				continue
			}
			assert.True(t, bytes.HasPrefix(cut.outline(glyph), whole.outline(glyph)), "%d", glyph)
		}
	}
}

// A font file that is cut short or says what is not there is an error, and no panic.
func TestADamagedFaceIsAnError(t *testing.T) {
	file := pages.Mono.TrueType()
	for length := 0; length < len(file); length += 1 + length/3 {
		_, err := readTrueType(file[:length])
		assert.ErrorIs(t, err, errFont, "%d bytes", length)
	}
	for at := 0; at < 12+16*int(file[5]); at++ {
		damaged := bytes.Clone(file)
		damaged[at] ^= 0xFF
		if font, err := readTrueType(damaged); err == nil {
			font.subset([]int{0})
		}
	}
}

// What is drawn with a face that is shared looks, to the pixel, as what the library draws with
// the face that it embeds itself, and reads the same; poppler draws and reads both.
func TestLettersLookAsTheLibraryDrawsThem(t *testing.T) {
	texts := []string{"The quick brown fox (jumps) over \\ the lazy dog 0123456789", "ÄÖÜäöüß éèêëñç ŁŽşőů", "42 to 48 N·m ± ½ × 3/8 in, 80 °C – “so” – 5 µm ≤ Ω → ▲", "\u00a0no break\u00a0", "[]{}<>|~^"}
	dir := t.TempDir()
	theirs := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: fpdf.SizeType{Wd: 210, Ht: 297}})
	theirs.AddPage()
	doc := pages.Document{Sides: []pages.Side{{Number: 1, Width: 210, Height: 297}}}
	y := 10.0
	for _, face := range allFaces {
		theirs.AddUTF8FontFromBytes(standIn(face), "", bytes.Clone(face.TrueType()))
		for _, text := range texts {
			for _, size := range []float64{3, 4.75} {
				theirs.SetFont(standIn(face), "", size*points)
				theirs.Text(10, y, text)
				doc.Sides[0].Marks = append(doc.Sides[0].Marks, pages.Text{X: 10, Y: y, Text: text, Face: face, Size: size})
				y += 5.3
			}
		}
	}
	ours := drawn(t, doc)
	library := filepath.Join(dir, "library.pdf")
	require.NoError(t, theirs.OutputFileAndClose(library))
	assert.Equal(t, outside(t, "pdftotext", "-layout", library, "-"), outside(t, "pdftotext", "-layout", ours, "-"))
	var pictures [2][]byte
	for i, name := range []string{library, ours} {
		picture := strings.TrimSuffix(name, ".pdf")
		outside(t, "pdftoppm", "-r", "150", "-singlefile", name, picture)
		bytes, err := os.ReadFile(picture + ".ppm")
		require.NoError(t, err)
		pictures[i] = bytes
	}
	require.NotEmpty(t, pictures[0])
	assert.True(t, bytes.Equal(pictures[0], pictures[1]), "other pixels")
}

// What the library would have to write otherwise for a file to be read wrongly is told.
func TestAFileThatIsReadOtherwiseIsToldOf(t *testing.T) {
	file := fpdf.New("P", "mm", "A5", "")
	file.SetCompression(false)
	file.AddPage()
	file.Rect(10, 10, 20, 20, "D")
	var out bytes.Buffer
	require.NoError(t, file.Output(&out))
	text := out.String()
	_, err := finish([]byte(text), pages.Document{}, nil)
	require.NoError(t, err)
	for _, other := range []string{"", "%PDF-1.3\n", strings.ReplaceAll(text, "startxref", "startxreg"), strings.ReplaceAll(text, "startxref\n", "startxref\n9"), strings.Replace(text, "/Length ", "/Length 9", 1),
		strings.Replace(text, "xref\n0 ", "yref\n0 ", 1), text[:len(text)/2]} {
		_, err := finish([]byte(other), pages.Document{}, nil)
		assert.ErrorContains(t, err, "the library wrote", "%.30q", other)
	}
}
