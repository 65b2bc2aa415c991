package pages

import (
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// contourWidth is how far a contour reaches beyond the letters, in ems: a quarter of a
// millimetre on a card, so that a copier resolves it.
const contourWidth = 0.09

// contoured draws a contour below the letters of a piece, where there is one, so that they
// stand out from it whatever a copy in black and white makes of the ground.
func contoured(p piece, contour Ink) piece {
	if !contour.On() {
		return p
	}
	out := piece{width: p.width, height: p.height, boxes: p.boxes}
	for _, mark := range p.marks {
		if text, ok := mark.(Text); ok {
			out.mark(outlines(text, Paint{Stroke: contour, Line: 2 * contourWidth * text.Size})...)
		}
	}
	out.mark(p.marks...)
	return out
}

// outlines are the outlines of the letters of a text, drawn with a paint.
func outlines(text Text, paint Paint) []Mark {
	metrics := text.Face.metrics()
	scale := text.Size / metrics.em
	var buffer sfnt.Buffer
	var out []Mark
	x := text.X
	for _, r := range text.Text {
		glyph, err := metrics.font.GlyphIndex(&buffer, r)
		if err != nil {
			continue
		}
		segments, err := metrics.font.LoadGlyph(&buffer, glyph, fixed.Int26_6(metrics.em), nil)
		if err != nil {
			continue
		}
		at := func(p fixed.Point26_6) Point { return Point{x + float64(p.X)*scale, text.Y + float64(p.Y)*scale} }
		var path Path
		var last Point
		for _, segment := range segments {
			to := at(segment.Args[0])
			switch segment.Op {
			case sfnt.SegmentOpMoveTo:
				if len(path.Steps) > 0 {
					out = append(out, path)
				}
				path = Path{From: to, Closed: true, Paint: paint}
			case sfnt.SegmentOpLineTo:
				path.Steps = append(path.Steps, Segment{To: to})
			case sfnt.SegmentOpQuadTo:
				control := to
				to = at(segment.Args[1])
				path.Steps = append(path.Steps, Segment{true, between(last, control, 2.0/3), between(to, control, 2.0/3), to})
			case sfnt.SegmentOpCubeTo:
				control := at(segment.Args[1])
				path.Steps = append(path.Steps, Segment{true, to, control, at(segment.Args[2])})
				to = at(segment.Args[2])
			}
			last = to
		}
		if len(path.Steps) > 0 {
			out = append(out, path)
		}
		x += float64(metrics.advance(r)) * scale
	}
	return out
}

// between is the point some part of the way from one to another.
func between(from, to Point, part float64) Point {
	return Point{from.X + (to.X-from.X)*part, from.Y + (to.Y-from.Y)*part}
}
