// Package pdftest draws a page by the library alone, as the floor of benchmarks.
// It must not be used outside tests.
package pdftest

import (
	"bytes"
	"fmt"
	"io"
	"time"

	"github.com/go-pdf/fpdf"

	"benchleaf/compiler/internal/pages"
)

const points = 72 / 25.4

// Bare draws a document with the library alone, in direct calls: its letters,
// panels and lines, each face embedded and cut down to what is used. It is the
// least any way through can cost that draws the same page.
func Bare(doc pages.Document) error {
	size := fpdf.SizeType{Wd: 148, Ht: 210}
	if len(doc.Sides) > 0 {
		size = fpdf.SizeType{Wd: doc.Sides[0].Width, Ht: doc.Sides[0].Height}
	}
	file := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: size})
	file.SetCreationDate(time.Unix(0, 0))
	known := map[pages.Face]string{}
	for _, side := range doc.Sides {
		file.AddPage()
		for _, mark := range side.Marks {
			switch mark := mark.(type) {
			case pages.Panel:
				file.RoundedRectExt(mark.X, mark.Y, mark.Width, mark.Height, mark.Radius[0], mark.Radius[1], mark.Radius[2], mark.Radius[3], ink(file, mark.Paint))
			case pages.Path:
				outline(file, mark)
			}
			text, ok := mark.(pages.Text)
			if !ok {
				continue
			}
			name, there := known[text.Face]
			if !there {
				name = fmt.Sprint("face", text.Face)
				known[text.Face] = name
				file.AddUTF8FontFromBytes(name, "", bytes.Clone(text.Face.TrueType()))
			}
			file.SetFont(name, "", text.Size*points)
			file.SetTextColor(text.Ink.RGB())
			file.Text(text.X, text.Y, text.Text)
		}
	}
	return file.Output(io.Discard)
}

func outline(file *fpdf.Fpdf, path pages.Path) {
	file.MoveTo(path.From.X, path.From.Y)
	for _, step := range path.Steps {
		if step.Curved {
			file.CurveBezierCubicTo(step.A.X, step.A.Y, step.B.X, step.B.Y, step.To.X, step.To.Y)
		} else {
			file.LineTo(step.To.X, step.To.Y)
		}
	}
	file.DrawPath(ink(file, path.Paint))
}

// ink sets the colours of a paint and names its way of painting.
func ink(file *fpdf.Fpdf, paint pages.Paint) string {
	style := ""
	if paint.Fill.On() {
		file.SetFillColor(paint.Fill.RGB())
		style = "F"
	}
	if paint.Stroke.On() && paint.Line > 0 {
		file.SetDrawColor(paint.Stroke.RGB())
		file.SetLineWidth(paint.Line)
		style += "D"
	}
	return style
}
