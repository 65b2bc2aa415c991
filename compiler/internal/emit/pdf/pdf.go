// Package pdf draws a laid-out document as a PDF. It must not know what the marks
// mean, nor move any of them.
package pdf

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"time"
	"unicode/utf16"

	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/picture"

	"github.com/go-pdf/fpdf"
)

// points is the number of points in a millimetre.
const points = 72 / 25.4

// Draw makes the bytes of a PDF: the same bytes for the same document, always.
// The faces are embedded with the letters used. It is an error when the date of
// the document is no day, or when a face cannot be embedded.
func Draw(doc pages.Document) ([]byte, error) {
	day, err := dayOf(doc.Date)
	if err != nil {
		return nil, err
	}
	width, height := 210.0, 297.0
	if len(doc.Sides) > 0 {
		width, height = doc.Sides[0].Width, doc.Sides[0].Height
	}
	file := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: fpdf.SizeType{Wd: width, Ht: height}})
	describe(file, doc, day)
	faces := used(doc)
	for _, face := range slices.Sorted(maps.Keys(faces)) {
		file.AddFontFromBytes(standIn(face), "", standIns[face](), nil)
	}
	album := &album{map[print]string{}, map[int]bool{}}
	for _, side := range doc.Sides {
		file.AddPageFormat("P", fpdf.SizeType{Wd: side.Width, Ht: side.Height}) // as wide as it says, lying too
		if err := (&drawing{file: file, album: album}).marks(side.Marks); err != nil {
			return nil, fmt.Errorf("pdf: %w", err)
		}
		lead(file, side.Links)
		for _, entry := range doc.Outline {
			if entry.To.Side == side.Number {
				file.Bookmark(wide(entry.Title), entry.Level, entry.To.Y)
			}
		}
	}
	var out bytes.Buffer
	if err := file.Output(&out); err != nil {
		return nil, fmt.Errorf("pdf: %w", err)
	}
	return finish(out.Bytes(), doc, faces)
}

// lead makes places lead to others; links to one place share it.
func lead(file *fpdf.Fpdf, links []pages.Link) {
	known := map[pages.Target]int{}
	for _, link := range links {
		id, there := known[link.To]
		if !there {
			id = file.AddLink()
			file.SetLink(id, link.To.Y, link.To.Side)
			known[link.To] = id
		}
		file.Link(link.X, link.Y, link.Width, link.Height, id)
	}
}

// dayOf reads the document's day. A document without one carries the first day
// PDF's own clock can name, never today.
func dayOf(date string) (time.Time, error) {
	if date == "" {
		return time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC), nil
	}
	day, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return time.Time{}, fmt.Errorf("pdf: %q is no day as 2026-01-31", date)
	}
	return day.Add(1), nil // the library takes the first moment of the year 1 for today
}

func describe(file *fpdf.Fpdf, doc pages.Document, day time.Time) {
	file.SetCatalogSort(true)
	file.SetCompression(false) // finish does
	file.SetCreationDate(day)
	file.SetModificationDate(day)
	file.SetTitle(wide(doc.Title), false)
	file.SetSubject(wide(doc.Subject), false)
	file.SetAuthor(wide(doc.Author), false)
	file.SetCreator("benchleaf", true)
	file.SetLang(doc.Language)
	file.SetAutoPageBreak(false, 0)
	file.SetMargins(0, 0, 0)
	file.SetLineJoinStyle("round") // a sharp corner of a letter would throw a spike
}

// wide is a text about the document as a PDF tells it (ISO 32000-1, 7.9.2.2): UTF-16 with its mark. The
// library would make another letter of one beyond the first 65,536, and fails on what is no UTF-8.
func wide(text string) string {
	out := []byte{0xfe, 0xff}
	for _, unit := range utf16.Encode([]rune(text)) {
		out = binary.BigEndian.AppendUint16(out, unit)
	}
	return string(out)
}

// used are the faces with letters on the sides, and the groups of these letters.
func used(doc pages.Document) map[pages.Face]groups {
	out := map[pages.Face]groups{}
	for _, side := range doc.Sides {
		see(out, side.Marks)
	}
	return out
}

func see(seen map[pages.Face]groups, marks []pages.Mark) {
	for _, mark := range marks {
		switch mark := mark.(type) {
		case pages.Text:
			with := seen[mark.Face]
			for _, r := range mark.Text {
				with |= groupOf(r)
			}
			seen[mark.Face] = with | groupOf(firstLetter)
		case pages.Turned:
			see(seen, mark.Marks)
		}
	}
}

// drawing remembers what it set on the side, so that nothing is set twice.
type drawing struct {
	file  *fpdf.Fpdf
	album *album
	face  pages.Face
	size  float64
	ink   pages.Ink
	word  bool // a text was drawn, so that face, size and ink are set
}

func (d *drawing) marks(marks []pages.Mark) error {
	for _, mark := range marks {
		switch mark := mark.(type) {
		case pages.Text:
			if !d.word || mark.Face != d.face || mark.Size != d.size {
				d.file.SetFont(standIn(mark.Face), "", mark.Size*points)
			}
			if !d.word || mark.Ink != d.ink {
				d.file.SetTextColor(mark.Ink.RGB())
			}
			d.face, d.size, d.ink, d.word = mark.Face, mark.Size, mark.Ink, true
			d.file.Text(mark.X, mark.Y, letters(mark.Text))
		case pages.Panel:
			d.panel(mark)
		case pages.Path:
			d.path(mark)
		case pages.Image:
			if err := d.image(mark); err != nil {
				return err
			}
		case pages.Turned:
			d.file.TransformBegin()
			d.file.TransformRotate(180, mark.X+mark.Width/2, mark.Y+mark.Height/2)
			d.word = false // what was set before holds only outside
			if err := d.marks(mark.Marks); err != nil {
				return err
			}
			d.word = false
			d.file.TransformEnd()
		}
	}
	return nil
}

// pixels is how many pixels of a picture go to a millimetre: 300 to the inch, as printers
// of books ask for.
const pixels = 300 / 25.4

// print is a picture in a size, in pixels.
type print struct {
	picture       *picture.Picture
	width, height int
}

// album holds the pictures that are in a document already.
type album struct {
	names  map[print]string
	widths map[int]bool
}

// image embeds a picture as large as it is printed; one that stands several times in a
// size is there once. No two are of one width, to the pixel: the library puts pictures in
// the order of their widths and those of one width in any order (fpdf 0.9.0, putimages).
func (d *drawing) image(image pages.Image) error {
	width, height := image.Picture.Fitted(int(math.Ceil(image.Width*pixels)), int(math.Ceil(image.Height*pixels)))
	one := print{image.Picture, width, height}
	options := fpdf.ImageOptions{ImageType: "png"}
	name, known := d.album.names[one]
	if !known {
		for step := 1; d.album.widths[width]; step++ { // the nearest that is free: one less, one more, two less …
			if width += step * (1 - 2*(step%2)); width < 1 {
				width = one.width + step
			}
		}
		format, data, err := image.Picture.Encoded(width, height)
		if err != nil {
			return err
		}
		name, options.ImageType = strconv.Itoa(width), format
		d.album.names[one], d.album.widths[width] = name, true
		d.file.RegisterImageOptionsReader(name, options, bytes.NewReader(data))
	}
	d.file.ImageOptions(name, image.X, image.Y, image.Width, image.Height, false, options, 0, "")
	return nil
}

func (d *drawing) panel(panel pages.Panel) {
	style := d.paint(panel.Paint)
	if style == "" {
		return
	}
	r := panel.Radius
	if r == [4]float64{} {
		d.file.Rect(panel.X, panel.Y, panel.Width, panel.Height, style)
		return
	}
	d.file.RoundedRectExt(panel.X, panel.Y, panel.Width, panel.Height, r[0], r[1], r[2], r[3], style)
}

func (d *drawing) path(path pages.Path) {
	style := d.paint(path.Paint)
	if style == "" {
		return
	}
	d.file.MoveTo(path.From.X, path.From.Y)
	for _, step := range path.Steps {
		if step.Curved {
			d.file.CurveBezierCubicTo(step.A.X, step.A.Y, step.B.X, step.B.Y, step.To.X, step.To.Y)
		} else {
			d.file.LineTo(step.To.X, step.To.Y)
		}
	}
	if path.Closed {
		d.file.ClosePath()
	}
	d.file.DrawPath(style)
}

// paint sets the colours and gives the library's name for the way of painting.
func (d *drawing) paint(paint pages.Paint) string {
	style := ""
	if paint.Fill.On() {
		d.file.SetFillColor(paint.Fill.RGB())
		style = "F"
	}
	if paint.Stroke.On() && paint.Line > 0 {
		d.file.SetDrawColor(paint.Stroke.RGB())
		d.file.SetLineWidth(paint.Line)
		style += "D"
	}
	return style
}
