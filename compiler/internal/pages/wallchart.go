package pages

import (
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/plan"
)

// wallChart lays one wall chart out.
type wallChart struct {
	sheet
	plan  plan.WallChart
	label float64   // width of what is done
	cells []float64 // width of each interval
}

// LayWallChart lays a wall chart out. What could not be shown as it should comes back
// as problems; the document is whole all the same.
func LayWallChart(content plan.WallChart, look Look) (Document, []Problem) {
	look, common := begin(look, content.Words)
	c := &wallChart{sheet: common, plan: content}
	c.rule()
	labels := content.Words.Labels
	rows := []item{{piece: c.head()}}
	rows = append(rows, c.part(labels.ChartJobs, content.Jobs)...)
	rows = append(rows, c.part(labels.ChartPoints, content.Points)...)
	note := item{piece: c.say(c.small().inked(grey), c.width, labels.ChartNote).named("legend", ""), above: c.size.main * 0.6, stays: true}
	frame := frame{s: c.setter, width: c.width, height: look.Stock.safe(1).Height, again: c.onwards, what: labels.WallChart, end: labels.EndOfSheet, filled: true,
		laws: []string{joined(" · ", labels.WallChart, content.Manual)}, who: joined(" · ", content.Shop, content.Machine, content.Date)}
	document := Document{Title: content.Machine, Subject: labels.WallChart, Author: content.Shop, Language: content.Words.Language, Date: content.Date}
	document.Sides = frame.share(append(slices.Clone(rows), note))
	if content.Map != nil {
		for share := 0.55; share > 0.12; share -= 0.03 { // as large as the side takes it
			sides := frame.share(slices.Concat(rows, c.drawing(share), []item{note}))
			if len(sides) == len(document.Sides) || share < 0.16 {
				document.Sides = sides
				break
			}
		}
	}
	return document, distinct(c.problems)
}

// drawing is the machine with its points, and round the number of each the intervals it is
// due at, as a dial that reads like the columns; no taller than its share of a side.
func (c *wallChart) drawing(share float64) []item {
	c.where = c.words.Labels.Map
	body, at := c.machine(*c.plan.Map, c.width*0.95, c.look.Stock.safe(1).Height*share)
	made, ok := c.pinned(body, c.width, c.plan.Map.Callouts, at, upward(*c.plan.Map, at))
	if !ok {
		c.crowded(c.words.Labels.ChartPoints, c.plan.Map.Callouts, c.width)
		return nil
	}
	return []item{{piece: made.named("map", ""), above: c.size.main * 0.8, part: c.words.Labels.ChartPoints, dear: costList}}
}

// rule measures the columns: each as wide as its words and a mark want.
func (c *wallChart) rule() {
	sum := 0.0
	for _, column := range c.plan.Columns {
		cell := c.size.main * 1.8
		for _, line := range c.lines(column) {
			cell = max(cell, c.wideAs(c.text().with(Bold), line)+c.size.text*0.5)
		}
		c.cells = append(c.cells, cell)
		sum += cell
	}
	share := 1.0
	switch most, least := c.width*0.68, c.width*0.35; {
	case sum > most:
		c.problems = append(c.problems, Problem{"intervals", "there are too many intervals for type of that size, so that their words are broken; a larger stock takes them"})
		share = most / sum
	case sum > 0 && sum < least: // a little air, but no more than makes them easy to follow
		share = min(least/sum, 1.6)
	}
	c.label = c.width
	for i := range c.cells {
		c.cells[i] *= share
		c.label -= c.cells[i]
	}
}

func (c *wallChart) head() piece {
	labels := c.words.Labels
	stamp := piece{}
	if c.plan.Date != "" {
		stamp = c.stamp(c.plan.Date, labels.Latest)
	}
	return c.titleBand(joined(" · ", c.plan.Shop, labels.WallChart), c.plan.Machine, c.plan.Manual, stamp).named("head", "")
}

// onwards is the heading of a side that goes on, with the intervals again.
func (c *wallChart) onwards(part string) item {
	return item{piece: c.intervals(part+" · "+c.words.Labels.Continued).named("again", part)}
}

// intervals is the row of headings: a part of the chart, and the intervals over their columns.
func (c *wallChart) intervals(title string) piece {
	em := c.size.text
	style := c.text().with(Bold).inked(white).lying(slate)
	pad := em * 0.4
	name := c.say(c.main().with(Bold).inked(white).lying(slate), c.label-2*pad, title)
	var heads []piece
	tallest := name.height
	for i, column := range c.plan.Columns {
		head := piece{width: c.cells[i]}
		if c.plan.Map != nil {
			head = c.dialOf(i)
		}
		for _, line := range c.lines(column) {
			words := c.say(style, c.cells[i], line)
			head.put(words, (c.cells[i]-words.width)/2, head.height)
		}
		tallest = max(tallest, head.height)
		heads = append(heads, head)
	}
	out := piece{width: c.width, height: tallest + 2*pad}
	out.mark(Panel{Rectangle{0, 0, c.width, out.height}, corners(em * 0.25), Paint{Fill: slate}})
	out.put(name, pad, (out.height-name.height)/2)
	left := c.label
	for i, head := range heads {
		out.put(head, left, (out.height-head.height)/2)
		left += c.cells[i]
	}
	return out
}

// dialOf is a dial that shows one of the intervals, in the middle of its column.
func (c *wallChart) dialOf(column int) piece {
	marks := make([]bool, len(c.plan.Columns))
	marks[column] = true
	size := c.size.text * 1.7
	out := piece{width: c.cells[column], height: size * 1.15}
	out.mark(circle(Point{c.cells[column] / 2, size / 2}, size/2, Paint{Fill: white}))
	out.mark(dial(Point{c.cells[column] / 2, size / 2}, size/2, size*0.28, marks)...)
	return out
}

// lines are the figure of an interval, its unit and what stands behind in parentheses,
// each on a line of its own.
func (c *wallChart) lines(interval string) []string {
	figure, rest, _ := strings.Cut(strings.ReplaceAll(interval, "\u00a0", " "), " ")
	unit, also, more := strings.Cut(rest, " (")
	if !more {
		return []string{figure, rest}
	}
	return []string{figure, unit, "(" + also}
}

// part is one half of the chart; nothing where it has no rows.
func (c *wallChart) part(title string, rows []plan.ChartRow) []item {
	if len(rows) == 0 {
		return nil
	}
	em := c.size.main
	c.where = title
	items := []item{{piece: c.intervals(title).named("section", title), above: em * 0.9, dear: costPart}}
	for i, row := range rows {
		ground := white
		if i%2 == 1 {
			ground = tint
		}
		items = append(items, item{piece: c.row(row, ground).named("row", title+" "+strconv.Itoa(i+1)), part: title, stays: i == 0, dear: costList})
	}
	return items
}

func (c *wallChart) row(row plan.ChartRow, ground Ink) piece {
	em := c.size.main
	pad := c.size.text * 0.4
	var number piece
	aside := pad
	if c.plan.Map != nil && row.Number > 0 {
		number = c.numbered(row.Number, true, nil)
		aside += number.width + pad
	}
	words := c.say(c.text().with(Bold).lying(ground), c.label-aside-pad, row.Name)
	if row.Note != "" {
		words = column(0, words, c.say(c.small().lying(ground), c.label-aside-pad, row.Note))
	}
	out := piece{width: c.width, height: max(words.height+1.6*pad, em*1.5)}
	if ground == tint {
		out.mark(band(0, 0, c.width, out.height, tint))
	}
	out.mark(band(0, out.height-0.3, c.width, 0.3, rule))
	out.put(number, pad, (out.height-number.height)/2)
	out.put(words, aside, (out.height-words.height)/2)
	left := c.label
	for i, marked := range row.Marks {
		out.mark(band(left, 0, 0.3, out.height, rule))
		if marked {
			size := em * 0.62
			out.mark(Panel{Rectangle{left + (c.cells[i]-size)/2, (out.height - size) / 2, size, size}, corners(size / 2), Paint{Fill: black}})
		}
		left += c.cells[i]
	}
	return out
}
