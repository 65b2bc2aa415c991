package pdf

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/pages/pagestest"
	"benchleaf/compiler/internal/plan"

	"github.com/go-pdf/fpdf"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sound wants a file to end with a table that says of each object where it begins (ISO 32000-1, 7.5).
func sound(t *testing.T, file []byte) {
	t.Helper()
	at := bytes.LastIndex(file, []byte("startxref\n"))
	require.Positive(t, at)
	place, _, _ := strings.Cut(string(file[at+len("startxref\n"):]), "\n")
	table, err := strconv.Atoi(place)
	require.NoError(t, err)
	lines := strings.Split(string(file[table:at]), "\n")
	require.Equal(t, "xref", lines[0])
	_, count, _ := strings.Cut(lines[1], " ")
	objects, err := strconv.Atoi(count)
	require.NoError(t, err)
	for number := 1; number < objects; number++ {
		start, err := strconv.Atoi(lines[2+number][:10])
		require.NoError(t, err)
		require.True(t, bytes.HasPrefix(file[start:], fmt.Appendf(nil, "%d 0 obj\n", number)), "object %d", number)
	}
	assert.True(t, bytes.HasSuffix(file, []byte("%%EOF\n")))
}

// Whatever the words of a card are, those that a finished file is read by among them, its file is
// drawn, sound and the same bytes twice.
func FuzzDraw(f *testing.F) {
	f.Add(uint64(1), "Change the oil", "Turn it.", "A", "2026-02-14")
	f.Add(uint64(2), "startxref\n9\n%%EOF", "endstream\nendobj\n1 0 obj\n<</Type /Font\n/BaseFont /face3\n", "trailer", "")
	f.Add(uint64(3), "/Type /Catalog\n", ">>\nstream\n", "<</Length 7>>", "0001-01-01")
	f.Add(uint64(4), "\\(\\)) (", "\u2028給\U0001F527\x00\xff\u00ad", "", "9999-12-31")
	f.Fuzz(func(t *testing.T, seed uint64, title, words, name, day string) {
		if len(title)+len(words)+len(name) > 2000 {
			return
		}
		card := pagestest.Random(seed % 64)
		card.Title, card.Shop, card.Revision, card.Date, card.Author = title, words, name, day, title+words
		for i := range card.Sections {
			card.Sections[i].Title = title
			if len(card.Sections[i].Steps) > 3 {
				card.Sections[i].Steps = card.Sections[i].Steps[:3]
			}
			card.Sections[i].Lead = words
		}
		card.Summary = []plan.Run{{Text: words}, {Text: title, Code: true}}
		doc, _ := pages.LayCard(card, pages.Look{})
		doc.Outline = append(doc.Outline, pages.Entry{Title: words, To: pages.Target{Side: 1}})
		doc.Numbering = []pages.Numbering{{Side: 1, Roman: seed%2 == 0}}
		file, err := Draw(doc)
		if _, wrong := dayOf(doc.Date); wrong != nil {
			require.ErrorContains(t, err, "is no day")
			return
		}
		require.NoError(t, err)
		sound(t, file)
		again, err := Draw(doc)
		require.NoError(t, err)
		assert.True(t, bytes.Equal(file, again), "other bytes")
	})
}

// A file that is not as the library writes it is told of, or comes out sound.
func FuzzFinish(f *testing.F) {
	file := fpdf.New("P", "mm", "A5", "")
	file.SetCompression(false)
	file.AddPage()
	file.AddFontFromBytes(standIn(pages.Regular), "", standIns[pages.Regular](), nil)
	file.SetFont(standIn(pages.Regular), "", 12)
	file.Text(10, 10, letters("oil"))
	var out bytes.Buffer
	require.NoError(f, file.Output(&out))
	f.Add(out.Bytes(), true)
	f.Add(bytes.ReplaceAll(out.Bytes(), []byte("/face0"), []byte("/face9")), false)
	f.Add([]byte("startxref\n-1\n"), false)
	f.Add([]byte("xref\n0 2\n0000000000 65535 f \n-000000001 00000 n \ntrailer\nstartxref\n0\n"), true)
	f.Fuzz(func(t *testing.T, file []byte, counted bool) {
		doc := pages.Document{}
		if counted {
			doc.Numbering = []pages.Numbering{{Side: 1}}
		}
		done, err := finish(file, doc, map[pages.Face]groups{pages.Regular: 1})
		if err != nil {
			assert.ErrorContains(t, err, "the library wrote")
			return
		}
		sound(t, done)
	})
}

// A font file that is damaged is an error, or is cut into a file with the right sum.
func FuzzFont(f *testing.F) {
	whole := pages.Mono.TrueType()
	f.Add(uint32(0), []byte{}, uint32(len(whole)), uint16(40))
	f.Add(uint32(4), []byte{0, 3}, uint32(len(whole)), uint16(1))
	f.Add(uint32(5), []byte{0xff}, uint32(300), uint16(9))
	for at := uint32(12); at < 12+16*uint32(whole[5]); at += 4 {
		f.Add(at, []byte{0xff, 0xff}, uint32(len(whole)), uint16(3))
		f.Add(at+2, []byte{0, 1}, uint32(len(whole)), uint16(3))
	}
	f.Fuzz(func(t *testing.T, at uint32, patch []byte, length uint32, glyph uint16) {
		file := bytes.Clone(whole[:min(int(length), len(whole))])
		if int(at) < len(file) {
			copy(file[at:], patch)
		}
		font, err := readTrueType(file)
		if err != nil {
			assert.True(t, err == errFont || err == errComposed, err)
			return
		}
		cut := font.subset([]int{int(glyph)})
		assert.Equal(t, uint32(0xB1B0AFBA), sum(cut))
		assert.GreaterOrEqual(t, font.advance(int(glyph)), 0)
	})
}
