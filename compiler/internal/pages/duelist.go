package pages

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/plan"
)

// dueList lays one due list out.
type dueList struct {
	sheet
	plan     plan.DueList
	headings sheet   // the same with the narrow margin of a heading
	big      kind    // type of the days
	day      float64 // width of their column
}

// dueStates are the groups of a due list, in their order.
var dueStates = []string{"overdue", "due", "soon", "later", "unknown", "on-condition"}

// LayDueList lays a due list out. What could not be shown as it should comes back as
// problems; the document is whole all the same.
func LayDueList(content plan.DueList, look Look) (Document, []Problem) {
	look, problems := look.settled()
	d := &dueList{sheet: sheet{setter: newSetter(look, content.Words, problems)}, plan: content}
	d.rule()
	labels := content.Words.Labels
	items := []item{{piece: d.head()}}
	states := slices.Clone(dueStates)
	for _, row := range content.Rows {
		if !slices.Contains(states, row.State) {
			states = append(states, row.State)
		}
	}
	for _, state := range states {
		items = append(items, d.group(state)...)
	}
	if len(content.Rows) == 0 {
		none := d.say(d.main(), d.width, labels.NothingDue)
		items = append(items, item{piece: none.named("none", ""), above: d.size.main * 0.8, stays: true})
	}
	items = append(items, d.faults()...)
	frame := frame{s: d.setter, width: d.width, height: look.Stock.safe(1).Height, again: d.headings.again, what: labels.DueList, end: labels.EndOfList, filled: true,
		laws: []string{labels.DueList}, who: joined(" · ", content.Shop, labels.DueList, content.On)}
	document := Document{Title: labels.DueList, Subject: labels.DueList, Author: content.Shop, Language: content.Words.Language, Date: content.On}
	document.Sides = frame.share(items)
	return document, distinct(d.problems)
}

// rule measures the columns: a box to tick, the day, and what is to be done.
func (d *dueList) rule() {
	d.width = d.look.Stock.safe(1).Width
	em := d.size.main
	widest := func() (out float64) {
		for _, row := range d.plan.Rows {
			out = max(out, d.wideAs(d.big, row.Day))
		}
		return out
	}
	const most = 0.22 // of the width, for the days
	d.big = kind{d.size.value, 1.1, Bold, black, white}
	for _, size := range []float64{em, d.size.text} {
		if widest() > d.width*most {
			d.big.size = size
		}
	}
	for _, row := range d.plan.Rows {
		d.day = max(d.day, d.wideAs(d.small(), d.span(row)))
	}
	pad := em * 0.6 // on both sides, for the ground of what is overdue
	d.day = min(max(d.day, widest())+pad, d.width*0.3)
	d.margin = d.inset() + tickSize*em + 0.4*em + d.day + 0.5*em
	d.column = d.width - d.margin
	d.headings = d.sheet
	d.headings.margin = em * 0.75
	d.headings.column = d.width - d.headings.margin
}

// inset is the room at the left for the bar along what is overdue.
func (d *dueList) inset() float64 { return d.size.main * 0.45 }

func (d *dueList) head() piece {
	labels := d.words.Labels
	d.where = "head"
	word := map[string]string{}
	for _, row := range d.plan.Rows {
		word[row.State] = row.Word
	}
	var sums []string
	for _, state := range dueStates[:3] {
		if n := d.count(state); n > 0 {
			sums = append(sums, word[state]+"\u00a0"+strconv.Itoa(n))
		}
	}
	stamp := piece{}
	if d.plan.On != "" {
		stamp = d.stamp(d.plan.On, labels.Date)
	}
	return d.titleBand(d.plan.Shop, labels.DueList, strings.Join(sums, " · "), stamp).named("head", "")
}

func (d *dueList) count(state string) (n int) {
	for _, row := range d.plan.Rows {
		if row.State == state {
			n++
		}
	}
	return n
}

// group is the rows of one state; nothing where it has none. The heading of what is
// overdue is dark, the others are pale.
func (d *dueList) group(state string) []item {
	em := d.size.main
	var items []item
	for i, row := range d.plan.Rows {
		if row.State != state {
			continue
		}
		d.where = row.Word
		if len(items) == 0 {
			heading := d.heading(row.Word)
			if state == "overdue" {
				heading = d.headings.bandOf(row.Word, strconv.Itoa(d.count(state)))
			}
			items = append(items, item{piece: heading.named("section", state), above: em * 0.9, dear: costPart})
		}
		items = append(items, item{piece: d.row(row).named("row", strconv.Itoa(i+1)), part: row.Word, above: em * 0.2, stays: len(items) == 1, dear: costList})
	}
	return items
}

func (d *dueList) heading(title string) piece {
	return d.headings.quietBand([]span{{title, Bold, slate}}, d.main())
}

// row is one job at one machine.
func (d *dueList) row(row plan.DueRow) piece {
	em := d.size.main
	box := tick(tickSize * em)
	day := d.dayOf(row)
	face := Bold
	if row.State == "later" || row.State == "on-condition" {
		face = Regular
	}
	words := column(0,
		d.say(d.main().with(face), d.column, row.Title),
		d.say(d.text(), d.column, joined(" · ", row.Machine, row.Which)),
		d.set(d.small(), d.column, d.about(row)))
	if row.Note != "" {
		words = column(0, words, d.say(d.small().with(BoldItalic), d.column, row.Note))
	}
	out := piece{width: d.width}
	out.put(box, d.inset(), em*0.15)
	out.put(day, d.inset()+tickSize*em+0.4*em, em*0.15)
	out.put(words.named("words", ""), d.margin, em*0.05)
	out.height += em * 0.3
	if row.State == "overdue" {
		out.mark(band(0, 0, em*0.25, out.height-em*0.1, black))
	}
	out.mark(band(0, out.height-0.2, d.width, 0.2, rule))
	return out
}

// dayOf is the day and below it the days it may come on. It lies on black where it is past,
// and in a frame where it is due.
func (d *dueList) dayOf(row plan.DueRow) piece {
	em := d.size.main
	pad := em * 0.3
	style := d.big
	if row.State == "overdue" {
		style = style.inked(white).lying(black)
	}
	text := d.say(style, d.day-2*pad, cmp.Or(row.Day, "–"))
	plate := piece{width: d.day, height: max(text.height+em*0.1, tickSize*em)}
	line := em * 0.1
	switch row.State {
	case "overdue":
		plate.mark(Panel{Rectangle{0, 0, d.day, plate.height}, corners(em * 0.2), Paint{Fill: black}})
	case "due":
		plate.mark(Panel{Rectangle{line / 2, line / 2, d.day - line, plate.height - line}, corners(em * 0.2), Paint{Stroke: black, Line: line}})
	}
	plate.put(text, pad, (plate.height-text.height)/2)
	plate = plate.named("day", row.Day)
	if span := d.span(row); span != "" {
		plate = column(em*0.05, plate, d.say(d.small().inked(grey), d.day-2*pad, span).at(pad, 0))
	}
	return plate
}

// span is the days a job may come on, without the year where that is the same; empty
// where they are past or not told.
func (d *dueList) span(row plan.DueRow) string {
	if row.Early == "" && row.Late == "" || row.State == "overdue" {
		return ""
	}
	short := func(day string) string {
		if len(day) == len("2026-05-01") && len(row.Day) == len(day) && day[:5] == row.Day[:5] {
			return day[5:]
		}
		return day
	}
	return short(cmp.Or(row.Early, row.Day)) + " – " + short(cmp.Or(row.Late, row.Day))
}

// about says what the meter stands at then, how often it is done, and when it was last.
func (d *dueList) about(row plan.DueRow) []span {
	labels := d.words.Labels
	var spans []span
	put := func(label, text string, face Face) {
		if len(spans) > 0 {
			spans = append(spans, span{" ·\u00a0", Regular, grey})
		}
		if label != "" {
			spans = append(spans, span{label + " ", Regular, grey})
		}
		spans = append(spans, span{text, face, black})
	}
	if row.Meter != "" {
		put("", strings.ReplaceAll(labels.AtMeter, "{meter}", row.Meter), Bold)
	}
	if row.Every != "" {
		put(labels.Every, row.Every, Regular)
	}
	last := cmp.Or(row.LastDay, labels.Never)
	if row.LastDay != "" && row.LastMeter != "" {
		last += " " + strings.ReplaceAll(labels.AtMeter, "{meter}", row.LastMeter)
		if row.OldMeter {
			last += " (" + labels.OldMeter + ")"
		}
	}
	put(labels.LastDone+labels.Colon, joined(", ", last, row.LastWho), Regular)
	return spans
}

// faults is what could not be taken of the service book.
func (d *dueList) faults() []item {
	em := d.size.main
	title := d.words.Labels.BookFaults
	d.where = title
	var items []item
	for i, text := range d.plan.Problems {
		if i == 0 {
			items = append(items, item{piece: d.heading(title).named("section", "problems"), above: em * 0.9, dear: costPart})
		}
		out := d.say(d.text(), d.width-em*0.75, text).at(em*0.75, 0)
		out.mark(circle(Point{em * 0.3, d.text().line() / 2}, em*0.13, Paint{Fill: black}))
		out.width = d.width
		items = append(items, item{piece: out.named("problem", strconv.Itoa(i+1)), part: title, above: em * 0.25, stays: i == 0, dear: costList})
	}
	return items
}
