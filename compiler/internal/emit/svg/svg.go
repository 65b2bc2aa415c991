// Package svg draws the sides of a laid-out document as pictures that any browser
// shows: letters are outlines, so that no font is needed. It must not know what the
// marks mean, nor move any of them.
package svg

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"fmt"
	"math"
	"strconv"

	"benchleaf/compiler/internal/pages"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Draw makes an SVG 1.1 picture of each side, in millimetres: the same bytes for the
// same document, always. Each box of a side is in it as a rectangle without ink that
// names its kind and its number. It is an error when a face cannot be read.
func Draw(doc pages.Document) ([][]byte, error) {
	var out [][]byte
	for _, side := range doc.Sides {
		d := &drawing{known: map[glyph]bool{}, faces: map[pages.Face]*sfnt.Font{}}
		d.marks(side.Marks)
		if d.fault != nil {
			return nil, fmt.Errorf("svg: %w", d.fault)
		}
		d.boxes(side.Boxes)
		out = append(out, d.whole(doc, side))
	}
	return out, nil
}

// glyph is one letter of one face.
type glyph struct {
	face pages.Face
	r    rune
}

// drawing gathers the outlines of the letters beside the marks that use them.
type drawing struct {
	outlines, body bytes.Buffer
	known          map[glyph]bool
	faces          map[pages.Face]*sfnt.Font
	buffer         sfnt.Buffer
	fault          error
}

func (d *drawing) whole(doc pages.Document, side pages.Side) []byte {
	var out bytes.Buffer
	width, height := number(side.Width), number(side.Height)
	fmt.Fprintf(&out, `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="%smm" height="%smm" viewBox="0 0 %s %s" stroke-linejoin="round"`, width, height, width, height)
	if doc.Language != "" {
		fmt.Fprintf(&out, ` xml:lang="%s"`, escaped(doc.Language))
	}
	fmt.Fprintf(&out, ">\n<title>%s</title>\n<defs>\n", escaped(fmt.Sprintf("%s, %d", doc.Title, side.Number)))
	out.Write(d.outlines.Bytes())
	fmt.Fprintf(&out, "</defs>\n<rect width=\"%s\" height=\"%s\" fill=\"#ffffff\"/>\n", width, height)
	out.Write(d.body.Bytes())
	out.WriteString("</svg>\n")
	return out.Bytes()
}

func escaped(text string) string {
	var out bytes.Buffer
	_ = xml.EscapeText(&out, []byte(text)) // a buffer takes everything
	return out.String()
}

// number writes millimetres to the thousandth.
func number(value float64) string {
	return strconv.FormatFloat(math.Round(value*1000)/1000, 'f', -1, 64)
}

func colour(ink pages.Ink) string {
	r, g, b := ink.RGB()
	return fmt.Sprintf("#%02x%02x%02x", r, g, b)
}

func (d *drawing) marks(marks []pages.Mark) {
	for _, mark := range marks {
		switch mark := mark.(type) {
		case pages.Text:
			d.text(mark)
		case pages.Panel:
			d.panel(mark)
		case pages.Path:
			d.path(mark)
		case pages.Image:
			d.image(mark)
		case pages.Turned:
			fmt.Fprintf(&d.body, "<g transform=\"rotate(180 %s %s)\">\n", number(mark.X+mark.Width/2), number(mark.Y+mark.Height/2))
			d.marks(mark.Marks)
			d.body.WriteString("</g>\n")
		}
	}
}

// pixels is how many pixels of a picture go to a millimetre: 200 to the inch.
const pixels = 200 / 25.4

func (d *drawing) image(image pages.Image) {
	format, data, err := image.Picture.Encoded(image.Picture.Fitted(int(math.Ceil(image.Width*pixels)), int(math.Ceil(image.Height*pixels))))
	if err != nil {
		d.fault = err
		return
	}
	kind := map[string]string{"jpg": "image/jpeg", "png": "image/png"}[format]
	fmt.Fprintf(&d.body, "<image x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" preserveAspectRatio=\"none\" xlink:href=\"data:%s;base64,%s\"><title>%s</title></image>\n",
		number(image.X), number(image.Y), number(image.Width), number(image.Height), kind, base64.StdEncoding.EncodeToString(data), escaped(image.Title))
}

// unit is how many units of an outline are an em.
const unit = 1000

func (d *drawing) text(text pages.Text) {
	if text.Text == "" {
		return
	}
	scale := strconv.FormatFloat(text.Size/unit, 'g', 6, 64)
	fmt.Fprintf(&d.body, `<g transform="translate(%s %s) scale(%s)" fill="%s">`, number(text.X), number(text.Y), scale, colour(text.Ink))
	before := ""
	for _, r := range text.Text {
		if at := text.Face.Width(before, unit); d.outline(text.Face, r) {
			fmt.Fprintf(&d.body, `<use xlink:href="#%s" x="%s"/>`, name(text.Face, r), number(at))
		}
		before += string(r)
	}
	d.body.WriteString("</g>\n")
}

func name(face pages.Face, r rune) string { return fmt.Sprintf("f%d-%x", face, r) }

// outline keeps the outline of a letter; false for one that leaves no mark.
func (d *drawing) outline(face pages.Face, r rune) bool {
	key := glyph{face, r}
	drawn, known := d.known[key]
	if known {
		return drawn
	}
	segments, err := d.segments(face, r)
	if err != nil {
		d.fault = err
		return false
	}
	d.known[key] = len(segments) > 0
	if len(segments) == 0 {
		return false
	}
	fmt.Fprintf(&d.outlines, `<path id="%s" d="`, name(face, r))
	for _, segment := range segments {
		letter, points := "M", 1
		switch segment.Op {
		case sfnt.SegmentOpLineTo:
			letter = "L"
		case sfnt.SegmentOpQuadTo:
			letter, points = "Q", 2
		case sfnt.SegmentOpCubeTo:
			letter, points = "C", 3
		}
		d.outlines.WriteString(letter)
		for i, point := range segment.Args[:points] {
			if i > 0 {
				d.outlines.WriteByte(' ')
			}
			d.outlines.WriteString(number(float64(point.X)/64) + " " + number(float64(point.Y)/64))
		}
	}
	d.outlines.WriteString("Z\"/>\n")
	return true
}

func (d *drawing) segments(face pages.Face, r rune) (sfnt.Segments, error) {
	font := d.faces[face]
	if font == nil {
		var err error
		if font, err = sfnt.Parse(face.TrueType()); err != nil {
			return nil, err
		}
		d.faces[face] = font
	}
	index, err := font.GlyphIndex(&d.buffer, r)
	if err != nil {
		return nil, err
	}
	return font.LoadGlyph(&d.buffer, index, fixed.I(unit), nil)
}

// paint writes how a shape is filled and outlined; false where it leaves no mark.
func (d *drawing) paint(paint pages.Paint) (string, bool) {
	fill, stroke := "none", ""
	if paint.Fill.On() {
		fill = colour(paint.Fill)
	}
	if paint.Stroke.On() && paint.Line > 0 {
		stroke = fmt.Sprintf(` stroke="%s" stroke-width="%s"`, colour(paint.Stroke), number(paint.Line))
	}
	return fmt.Sprintf(` fill="%s"%s`, fill, stroke), fill != "none" || stroke != ""
}

func (d *drawing) panel(panel pages.Panel) {
	look, there := d.paint(panel.Paint)
	if !there {
		return
	}
	r := panel.Radius
	if r == [4]float64{} {
		fmt.Fprintf(&d.body, "<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\"%s/>\n", number(panel.X), number(panel.Y), number(panel.Width), number(panel.Height), look)
		return
	}
	arc := func(radius, x, y float64) string {
		if radius == 0 {
			return ""
		}
		return fmt.Sprintf("A%[1]s %[1]s 0 0 1 %[2]s %[3]s", number(radius), number(x), number(y))
	}
	left, top, right, bottom := panel.X, panel.Y, panel.Right(), panel.Bottom()
	fmt.Fprintf(&d.body, "<path d=\"M%s %sH%s%sV%s%sH%s%sV%s%sZ\"%s/>\n", number(left+r[0]), number(top),
		number(right-r[1]), arc(r[1], right, top+r[1]), number(bottom-r[2]), arc(r[2], right-r[2], bottom),
		number(left+r[3]), arc(r[3], left, bottom-r[3]), number(top+r[0]), arc(r[0], left+r[0], top), look)
}

func (d *drawing) path(path pages.Path) {
	look, there := d.paint(path.Paint)
	if !there {
		return
	}
	at := func(p pages.Point) string { return number(p.X) + " " + number(p.Y) }
	fmt.Fprintf(&d.body, `<path d="M%s`, at(path.From))
	for _, step := range path.Steps {
		if step.Curved {
			fmt.Fprintf(&d.body, "C%s %s %s", at(step.A), at(step.B), at(step.To))
		} else {
			d.body.WriteString("L" + at(step.To))
		}
	}
	if path.Closed {
		d.body.WriteByte('Z')
	}
	fmt.Fprintf(&d.body, "\"%s/>\n", look)
}

// boxes writes the places of a side, outer ones first, so that an inner one lies on top.
func (d *drawing) boxes(boxes []pages.Box) {
	for _, box := range boxes {
		p := box.Place
		fmt.Fprintf(&d.body, "<rect class=\"box\" data-kind=\"%s\" data-id=\"%s\" x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"none\"/>\n",
			escaped(box.Kind), escaped(box.ID), number(p.X), number(p.Y), number(p.Width), number(p.Height))
		d.boxes(box.Boxes)
	}
}
