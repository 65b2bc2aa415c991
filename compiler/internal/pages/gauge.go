package pages

import (
	"math"
	"strconv"

	"benchleaf/compiler/internal/plan"
)

// gauge lays the page of true sizes out.
type gauge struct {
	sheet
	plan plan.Gauge
}

// LayGauge lays the page of true sizes out. What could not be shown as it should comes
// back as problems; the document is whole all the same.
func LayGauge(content plan.Gauge, look Look) (Document, []Problem) {
	look, common := begin(look, content.Words)
	g := &gauge{sheet: common, plan: content}
	labels, em := content.Words.Labels, g.size.main
	items := []item{
		{piece: g.titleBand(content.Shop, labels.Gauge, "", piece{}).named("head", "")},
		{piece: g.warning(labels.GaugeTrue).named("warning", ""), above: em * 0.6, stays: true},
		{piece: g.ruler(1, 10, 5).named("ruler", "mm"), above: em * 0.8, stays: true},
		{piece: g.ruler(25.4/16, 16, 8).named("ruler", "in"), above: em * 0.8, stays: true},
	}
	if len(content.Widths) > 0 {
		items = append(items, item{piece: g.say(g.text(), g.width, labels.GaugeWidth).named("legend", ""), above: em * 0.9})
		var row []piece
		wide := 0.0
		flush := func() {
			if len(row) > 0 {
				items = append(items, item{piece: flow(g.width, em*0.4, row).named("widths", strconv.Itoa(len(items))), above: em * 0.5, stays: len(items) == 5})
			}
			row, wide = nil, 0
		}
		for _, width := range content.Widths {
			p := g.hexagon(width).named("width", width.Label)
			if wide+p.width > g.width {
				flush()
			}
			row, wide = append(row, p), wide+p.width+em*0.4
		}
		flush()
	}
	frame := frame{s: g.setter, width: g.width, height: look.Stock.safe(1).Height, again: g.again, what: labels.Gauge, end: labels.EndOfSheet, filled: true,
		laws: []string{labels.Gauge}, who: joined(" · ", content.Shop, labels.Gauge)}
	document := Document{Title: labels.Gauge, Subject: labels.Gauge, Author: content.Shop, Language: content.Words.Language}
	document.Sides = frame.share(items)
	return document, distinct(g.problems)
}

// warning is a line in a frame.
func (g *gauge) warning(text string) piece {
	em := g.size.main
	pad, line := em*0.4, em*0.1
	words := g.say(g.text().with(Bold), g.width-2*pad, text)
	out := piece{width: g.width, height: words.height + 2*pad}
	out.mark(Panel{Rectangle{line / 2, line / 2, g.width - line, out.height - line}, corners(em * 0.25), Paint{Stroke: black, Line: line}})
	out.put(words, pad, pad)
	return out
}

// ruler is a rule with a tick every step millimetres, numbered where a unit is full;
// half a unit has a tick of its own height.
func (g *gauge) ruler(step float64, unit, half int) piece {
	style := g.small()
	left := g.wideAs(style, "000")/2 + 0.5
	n := int((g.width-2*left)/step/float64(unit)) * unit
	high := g.size.main * 1.1
	out := piece{width: g.width}
	for i := range n + 1 {
		x, length := left+float64(i)*step, high*0.45
		switch {
		case i%unit == 0:
			length = high
			figure := i / unit
			if unit == 10 {
				figure = i
			}
			number := g.say(style, g.width, strconv.Itoa(figure))
			out.put(number, x-number.width/2, high+0.3)
		case i%half == 0:
			length = high * 0.7
		}
		out.mark(Path{From: Point{x, 0}, Steps: []Segment{{To: Point{x, length}}}, Paint: Paint{Stroke: black, Line: 0.15}})
	}
	name := "mm"
	if unit != 10 {
		name = "in"
	}
	text := g.say(style.with(Bold), g.width, name)
	out.put(text, left, out.height)
	return out
}

// hexagon is a head true to size, flats at the top and the bottom, with its width in it
// or below it.
func (g *gauge) hexagon(width plan.Width) piece {
	line := 0.25
	radius := width.MM / math.Sqrt(3)
	label := g.say(g.small().with(Bold), 40, width.Label)
	out := piece{width: max(2*radius+line, label.width)}
	middle := Point{out.width / 2, width.MM/2 + line/2}
	var points []Point
	for i := range 6 {
		angle := float64(i) * math.Pi / 3
		points = append(points, Point{middle.X + radius*math.Cos(angle), middle.Y + radius*math.Sin(angle)})
	}
	out.mark(polygon(Paint{Stroke: black, Line: line}, points...))
	out.height = width.MM + line
	if label.width < radius*1.5 && label.height < width.MM*0.8 {
		out.put(label, middle.X-label.width/2, middle.Y-label.height/2)
	} else {
		out.put(label, middle.X-label.width/2, out.height+0.4)
	}
	return out
}
