package pages

import (
	"strconv"

	"benchleaf/compiler/internal/plan"
)

// approval lays one approval sheet out.
type approval struct {
	sheet
	plan plan.Approval
}

// LayApproval lays an approval sheet out. What could not be shown as it should comes
// back as problems; the document is whole all the same.
func LayApproval(content plan.Approval, look Look) (Document, []Problem) {
	look, common := begin(look, content.Words)
	a := &approval{sheet: common, plan: content}
	labels := content.Words.Labels
	items := []item{{piece: a.head()}, {piece: a.verdict(), above: a.size.main * 0.5}}
	items = append(items, a.chart()...)
	items = append(items, a.steps()...)
	items = append(items, a.remarks(labels.Findings, content.Found)...)
	items = append(items, a.remarks(labels.Allowed, content.Accepted)...)
	items = append(items, a.figures()...)
	items = append(items, a.signatures())
	frame := frame{s: a.setter, width: a.width, height: look.Stock.safe(1).Height, again: a.again, what: labels.Approval, end: labels.EndOfSheet, filled: true, laws: []string{labels.Approval},
		who: joined(" · ", content.Machine, content.Variant, content.Title, prefixed(labels.Revision, content.Revision), content.Date)}
	document := Document{Title: content.Title, Subject: labels.Approval, Author: content.Author, Language: content.Words.Language, Date: content.Date}
	document.Sides = frame.share(items)
	return document, distinct(a.problems)
}

func (a *approval) head() piece {
	labels := a.words.Labels
	below := joined(" · ", a.plan.Machine, prefixed(labels.Variant, a.plan.Variant), a.plan.Manual)
	stamp := a.stamp(prefixed(labels.Revision, a.plan.Revision), a.plan.Date)
	return a.titleBand(joined(" · ", a.plan.Shop, labels.Approval), a.plan.Title, below, stamp).named("head", "")
}

// verdict says on top whether a card may be printed, and how much there is to read.
func (a *approval) verdict() piece {
	em := a.size.main
	pad := em * 0.5
	line, sign := em*0.08, tick(em)
	if a.plan.Held {
		line, sign = em*0.16, alert(em*1.3, black, white, 0)
	} else {
		sign.mark(Path{From: Point{em * 0.2, em * 0.5}, Steps: []Segment{{To: Point{em * 0.42, em * 0.75}}, {To: Point{em * 0.85, em * 0.2}}}, Paint: Paint{Stroke: black, Line: em * 0.13}})
	}
	room := a.width - sign.width - 3*pad
	words := a.say(a.main().with(Bold), room, a.plan.Verdict)
	for _, line := range a.plan.Counts {
		words = column(em*0.1, words, a.say(a.text(), room, line))
	}
	out := piece{width: a.width, height: max(words.height, sign.height) + 1.4*pad}
	out.mark(Panel{Rectangle{line / 2, line / 2, a.width - line, out.height - line}, corners(em * 0.3), Paint{Stroke: black, Line: line}})
	out.put(sign, pad, (out.height-sign.height)/2)
	out.put(words, sign.width+2*pad, (out.height-words.height)/2)
	return out.named("verdict", "")
}

func (a *approval) heading(title string) item {
	return item{piece: a.bandOf(title, "").named("section", title), above: a.size.main * 0.9, dear: costPart}
}

func (a *approval) none() item {
	row := a.say(a.text(), a.column, a.words.Labels.NoFindings).at(a.margin, 0)
	return item{piece: row.named("none", ""), above: a.size.main * 0.3, stays: true}
}

// chartOf is the measure of the strip chart: names at the left, a cell a step.
type chartOf struct {
	first, last int // steps
	names       float64
	cell        float64
	row         float64
}

// Measures of the chart, in ems of the text.
const (
	chartCell  = 1.55 // least width of a step
	chartWide  = 3.2  // and most
	chartRow   = 1.9
	chartNames = 0.3 // of the width
)

// chart shows how the machine stands: a strip a thing, a cell a step. More steps
// than the page is wide go on in a second chart below.
func (a *approval) chart() []item {
	labels := a.words.Labels
	if len(a.plan.Steps) == 0 {
		return nil
	}
	a.where = labels.Stands
	items := []item{a.heading(labels.Stands)}
	if len(a.plan.Strips) == 0 {
		return append(items, a.none())
	}
	em := a.size.text
	names := 0.0
	for _, strip := range a.plan.Strips {
		names = max(names, a.wideAs(a.text(), strip.Name))
	}
	names = min(names+0.6*em, a.width*chartNames)
	room := a.width - names
	fit := max(1, int(room/(chartCell*em)))
	parts := (len(a.plan.Steps) + fit - 1) / fit
	each := (len(a.plan.Steps) + parts - 1) / parts
	for part := range parts {
		c := chartOf{first: part*each + 1, last: min((part+1)*each, len(a.plan.Steps)), names: names, row: chartRow * em}
		c.cell = min(room/float64(each), chartWide*em)
		items = append(items, item{piece: a.chartPart(c).named("chart", strconv.Itoa(part+1)), above: em * 0.7, stays: part == 0, part: labels.Stands, dear: costList})
	}
	legend := a.say(a.small().inked(grey), a.width, labels.LiveOn)
	return append(items, item{piece: legend.named("legend", ""), above: em * 0.3, stays: true})
}

// x is where a step's cell begins.
func (c chartOf) x(step int) float64 { return c.names + float64(step-c.first)*c.cell }

func (a *approval) chartPart(c chartOf) piece {
	out := a.phases(c)
	out.put(a.numbers(c), 0, out.height)
	for i, strip := range a.plan.Strips {
		ground := white
		if i%2 == 0 {
			ground = tint
		}
		row := a.strip(c, strip, ground)
		if ground == tint {
			out.mark(band(0, out.height, c.x(c.last+1), row.height, tint))
		}
		out.put(row, 0, out.height)
	}
	if flags := a.flags(c); flags.height > 0 {
		out.put(flags, 0, out.height)
	}
	top := a.phases(c).height
	for i, phase := range a.plan.Phases { // a line where the next part of the job begins
		if i > 0 && phase.From > c.first && phase.From <= c.last {
			out.mark(band(c.x(phase.From)-0.15, top, 0.3, out.height-top, slate))
		}
	}
	out.width = a.width
	return out
}

// phases names the parts of the job above the steps.
func (a *approval) phases(c chartOf) piece {
	var out piece
	style := a.small().with(Bold).inked(slate)
	for _, phase := range a.plan.Phases {
		from, to := max(phase.From, c.first), min(phase.To, c.last)
		if from > to {
			continue
		}
		wide := a.wideAs(style, phase.Title)
		x := c.x(from) + 0.2*style.size
		if over := x + wide - c.x(c.last+1); over > 0 {
			x -= over // the last part is short: its name ends with it
		}
		if x < out.width || x+wide > c.x(to+1) && to < c.last {
			continue // its line stands all the same
		}
		out.put(a.say(style, wide+style.size, phase.Title), x, 0)
		out.width += 0.5 * style.size
	}
	out.height = max(out.height, style.line())
	return out
}

func (a *approval) numbers(c chartOf) piece {
	style := a.small().with(Bold).inked(white).lying(slate)
	out := piece{height: style.line() + style.size*0.3}
	out.mark(band(0, 0, c.x(c.last+1), out.height, slate))
	out.put(a.say(style, c.names, a.words.Labels.Step), style.size*0.3, style.size*0.15)
	for step := c.first; step <= c.last; step++ {
		number := a.say(style, c.cell+style.size, strconv.Itoa(step))
		out.put(number, c.x(step)+(c.cell-number.width)/2, style.size*0.15)
	}
	return out
}

// strip is one thing over the steps: a thin line where it stands as before, a low
// bar where it is on the way, a high one where it is as the word says.
func (a *approval) strip(c chartOf, strip plan.Strip, under Ink) piece {
	em := a.size.text
	name := a.say(a.text().lying(under), c.names-0.6*em, strip.Name)
	out := piece{width: c.x(c.last + 1), height: max(c.row, name.height+0.3*em)}
	middle := out.height / 2
	at := c.x(c.first) // how far the strip is drawn
	thin := func(to float64) {
		if to > at+tiny {
			out.mark(band(at, middle-0.1, to-at, 0.2, grey))
		}
	}
	for _, bar := range strip.Bars {
		from, to := max(bar.From, c.first), min(bar.To, c.last)
		if from > to {
			continue
		}
		high, ink, ground := c.row*0.74, white, slate
		if bar.Half {
			high, ink, ground = c.row*0.5, black, white
		}
		x, wide := c.x(from)+0.2, float64(to-from+1)*c.cell-0.4
		thin(x)
		at = x + wide
		out.mark(Panel{Rectangle{x, middle - high/2, wide, high}, corners(em * 0.12), Paint{Fill: ground, Stroke: slate, Line: em * 0.08}})
		style := a.small().with(Bold).inked(ink).lying(ground)
		if a.wideAs(style, bar.Word) <= wide-0.3*em && style.line() <= high+tiny {
			word := a.say(style, wide, bar.Word)
			out.put(word, x+(wide-word.width)/2, middle-word.height/2)
		}
	}
	thin(c.x(c.last + 1))
	out.put(name, 0.3*em, (out.height-name.height)/2)
	return out.named("strip", strip.Name)
}

// flags marks the steps that something was found at.
func (a *approval) flags(c chartOf) piece {
	em := a.size.text
	var out piece
	told := map[int]bool{}
	for _, remark := range append(a.plan.Found[:len(a.plan.Found):len(a.plan.Found)], a.plan.Accepted...) {
		if remark.Step < c.first || remark.Step > c.last || told[remark.Step] {
			continue
		}
		told[remark.Step] = true
		sign := alert(min(em, c.cell*0.9), black, white, 0)
		out.put(sign, c.x(remark.Step)+(c.cell-sign.width)/2, em*0.35)
	}
	if len(told) == 0 {
		return piece{}
	}
	out.put(a.say(a.text(), c.names, a.words.Labels.Findings), 0.3*em, em*0.2)
	out.height += em * 0.35
	return out.named("flags", "")
}

// steps lists the actions in two columns, so that the numbers of the chart can be read.
func (a *approval) steps() []item {
	em := a.size.text
	a.where = a.words.Labels.StepsOf
	items := []item{a.heading(a.words.Labels.StepsOf)}
	gap := em
	wide := (a.width - gap) / 2
	rows := (len(a.plan.Steps) + 1) / 2
	for row := range rows {
		out := a.stepLine(row+1, wide)
		if other := row + rows; other < len(a.plan.Steps) {
			out.put(a.stepLine(other+1, wide), wide+gap, 0)
		}
		out.width = a.width
		items = append(items, item{piece: out.named("row", strconv.Itoa(row+1)), above: em * 0.18, stays: row == 0, part: a.words.Labels.StepsOf, dear: costList})
	}
	return items
}

func (a *approval) stepLine(number int, wide float64) piece {
	em := a.size.text
	left := 1.9 * em
	var out piece
	n := a.say(a.small().with(Bold), left, strconv.Itoa(number))
	out.put(n, left-0.5*em-n.width, 0)
	out.put(a.set(a.small(), wide-left, a.small().spans(a.plan.Steps[number-1])), left, 0)
	return out
}

// remarks lists findings: how much each weighs on a tab, what it says, where.
func (a *approval) remarks(title string, remarks []plan.Remark) []item {
	em := a.size.text
	a.where = title
	items := []item{a.heading(title)}
	if len(remarks) == 0 {
		return append(items, a.none())
	}
	labels := a.words.Labels
	tabs := 0.0
	for _, remark := range remarks {
		tabs = max(tabs, a.wideAs(a.small().with(Bold), remark.Word)+0.8*em)
	}
	tabs = min(tabs, a.width*0.25)
	for i, remark := range remarks {
		tab := a.say(a.small().with(Bold).inked(white).lying(slate), tabs-0.6*em, remark.Word)
		var out piece
		out.mark(Panel{Rectangle{0, 0, tabs, tab.height + 0.2*em}, corners(em * 0.2), Paint{Fill: slate}})
		out.put(tab, (tabs-tab.width)/2, 0.1*em)
		at := ""
		if remark.Step > 0 {
			at = labels.Step + " " + strconv.Itoa(remark.Step)
		}
		where := a.say(a.small().inked(grey), a.width-tabs-0.5*em, joined(" · ", at, remark.Where, remark.Rule))
		body := column(0.1*em, a.say(a.text(), a.width-tabs-0.5*em, remark.Text), where)
		if remark.Reason != "" {
			body = column(0.1*em, body, a.set(a.text(), a.width-tabs-0.5*em, []span{{labels.Reason + labels.Colon + " ", Bold, black}, {remark.Reason, Regular, black}}))
		}
		out.put(body, tabs+0.5*em, 0)
		items = append(items, item{piece: out.named("remark", remark.Rule), above: em * 0.45, stays: i == 0, part: title, dear: costList})
	}
	return items
}

// figures is the table of values with where each comes from.
func (a *approval) figures() []item {
	labels := a.words.Labels
	em := a.size.small
	a.where = labels.Figures
	items := []item{a.heading(labels.Figures)}
	if len(a.plan.Figures) == 0 {
		return append(items, a.none())
	}
	gap := 0.8 * em
	widths := [...]float64{0.26, 0.18, 0.3, 0.26}
	for i, figure := range a.plan.Figures {
		source := span{figure.Source, Regular, black}
		if figure.Source == "" {
			source = span{"— " + labels.NoSource, Italic, grey}
		}
		var out piece
		told := []span{source}
		if figure.Again != "" {
			told = append(told, span{" · " + figure.Again, Regular, grey})
		}
		x := 0.0
		for n, cell := range []span{{figure.What, Regular, black}, {figure.Text, Bold, black}, source, {figure.Where, Regular, grey}} {
			wide := widths[n] * a.width
			spans := []span{cell}
			if n == 2 {
				spans = told
			}
			out.put(a.set(a.small(), wide-gap, spans), x, 0)
			x += wide
		}
		out.width = a.width
		out.height += 0.25 * em
		out.mark(band(0, out.height-0.2, a.width, 0.2, rule))
		items = append(items, item{piece: out.named("figure", figure.What), above: em * 0.25, stays: i == 0, part: labels.Figures, dear: costTable})
	}
	keepTogether(items[1:])
	return items
}

// keepTogether makes it dear to leave one row of a table alone at the foot of a side, or
// fewer than three at the head of the next.
func keepTogether(rows []item) {
	for i := range rows {
		if i == 1 || i > len(rows)-3 {
			rows[i].dear = costList
		}
	}
}

// signatures are the cells where people put their names to it.
func (a *approval) signatures() item {
	labels := a.words.Labels
	em := a.size.main
	pad := a.size.small * 0.45
	out := piece{width: a.width}
	for _, by := range []struct{ who, name string }{{labels.Author, a.plan.Author}, {labels.Checked, a.plan.Checked}, {labels.Approved, ""}} {
		row := piece{width: a.width, height: 2.3 * em}
		x := 0.0
		for _, cell := range []struct {
			label, text string
			share       float64
		}{{by.who, by.name, 0.4}, {labels.Signature, "", 0.38}, {labels.Date, "", 0.22}} {
			wide := cell.share * a.width
			body := column(0, a.say(a.small().with(Bold).inked(grey), wide-2*pad, cell.label), a.say(a.main(), wide-2*pad, cell.text))
			row.height = max(row.height, body.height+2*pad)
			row.put(body, x+pad, pad*0.6)
			x += wide
		}
		x = 0
		for _, share := range []float64{0.4, 0.38, 0.22} {
			row.mark(Panel{Rectangle{x, 0, share * a.width, row.height}, [4]float64{}, Paint{Stroke: black, Line: 0.3}})
			x += share * a.width
		}
		out.put(row, 0, out.height)
	}
	return item{piece: out.named("record", ""), above: em * 0.9, dear: costStage, low: true}
}
