package pages

import (
	"strconv"

	"benchleaf/compiler/internal/plan"
)

// recordSheet lays one record sheet out.
type recordSheet struct {
	sheet
	plan  plan.RecordSheet
	times int     // columns to write in
	label float64 // width of what is written down
}

// Least measures of a place to write in by hand, millimetres; common practice, no source.
const (
	writeWide = 21.0
	writeHigh = 9.0
)

// LayRecordSheet lays a record sheet out. What could not be shown as it should comes
// back as problems; the document is whole all the same.
func LayRecordSheet(content plan.RecordSheet, look Look) (Document, []Problem) {
	look, common := begin(look, content.Words)
	r := &recordSheet{sheet: common, plan: content}
	r.times = max(2, int(r.width*0.64/writeWide))
	r.label = r.width - float64(r.times)*max(writeWide, r.width*0.64/float64(r.times))
	labels := content.Words.Labels
	items := []item{{piece: r.head()}, {piece: r.say(r.text(), r.width, labels.EachTime).named("legend", ""), above: r.size.main * 0.5, stays: true}}
	remarks := r.remarks()
	free := look.Stock.safe(1).Height - items[0].height - items[1].height - remarks.height - 6*r.size.main
	for again := range 4 { // the table stands as often as a side takes it whole
		block := r.table(again)
		high := 0.0
		for _, row := range block {
			high += row.height + row.above
		}
		if free -= high; again > 0 && free < 0 {
			break
		}
		items = append(items, block...)
	}
	items = append(items, item{piece: remarks.named("remarks", ""), above: r.size.main * 0.8, part: labels.RecordSheet, dear: costStage, low: true})
	frame := frame{s: r.setter, width: r.width, height: look.Stock.safe(1).Height, again: r.onwards, what: labels.RecordSheet, end: labels.EndOfSheet, filled: true,
		laws: []string{joined(" · ", labels.RecordSheet, content.Manual)},
		who:  joined(" · ", content.Machine, content.Variant, content.Title, prefixed(labels.Revision, content.Revision), content.Date)}
	document := Document{Title: content.Title, Subject: labels.RecordSheet, Author: content.Author, Language: content.Words.Language, Date: content.Date}
	document.Sides = frame.share(items)
	return document, distinct(r.problems)
}

// table is the rows with a column for each time.
func (r *recordSheet) table(again int) []item {
	labels := r.words.Labels
	row := func(p piece, kind, id string) item {
		return item{piece: p.named(kind, id), part: labels.RecordSheet, dear: costList}
	}
	id := func(text string) string { return strconv.Itoa(again+1) + "-" + text }
	dates := row(r.dates(), "dates", id(""))
	dates.above, dates.stays = r.size.main*0.6, again == 0
	items := []item{dates}
	for i, one := range r.plan.Rows {
		r.where = one.Label
		made := row(r.row(one), "reading", id(strconv.Itoa(i+1)))
		made.stays = i == 0
		items = append(items, made)
	}
	label := func(text string) piece {
		return r.cells(r.say(r.text().with(Bold).lying(tint), r.label-r.size.small, text), white)
	}
	signed := row(label(labels.Initials), "initials", id(""))
	signed.stays = true
	return append(items, row(label(labels.AllDone), "done", id("")), signed)
}

func (r *recordSheet) head() piece {
	labels := r.words.Labels
	stamp := r.stamp(prefixed(labels.Revision, r.plan.Revision), r.plan.Date)
	return r.titleBand(joined(" · ", r.plan.Shop, labels.RecordSheet), r.plan.Title, joined(" · ", r.plan.Machine, r.plan.Variant), stamp).named("head", "")
}

// onwards is the heading of a side that goes on, with the row of the dates again.
func (r *recordSheet) onwards(part string) item {
	out := r.again(part).piece
	out.put(r.dates(), 0, out.height+r.size.small*0.4)
	return item{piece: out.named("again", part)}
}

// dates is the row that begins each column.
func (r *recordSheet) dates() piece {
	return r.cells(r.say(r.text().with(Bold).lying(tint), r.label-r.size.small, r.words.Labels.Date), tint)
}

// row is one reading: what it is, its limit, and what to do outside it.
func (r *recordSheet) row(one plan.RecordRow) piece {
	labels := r.words.Labels
	room := r.label - r.size.small
	below := joined(" · ", one.Unit, prefixed(labels.Limit, one.Limit))
	if one.Step > 0 {
		below = joined(" · ", labels.AtStep+" "+strconv.Itoa(one.Step), below)
	}
	label := column(0, r.say(r.text().with(Bold).lying(tint), room, one.Label), r.say(r.small().lying(tint), room, below))
	if one.Outside != "" {
		label = column(r.size.small*0.15, label, r.say(r.small().inked(grey).lying(tint), room, labels.Outside+": "+one.Outside))
	}
	return r.cells(label, white)
}

// cells is a row of the table: a label and a place to write in for each time.
func (r *recordSheet) cells(label piece, ground Ink) piece {
	pad := r.size.small * 0.4
	out := piece{width: r.width, height: max(writeHigh, label.height+2*pad)}
	out.mark(Panel{Rectangle{0, 0, r.label, out.height}, [4]float64{}, Paint{tint, black, 0.3}})
	wide := (r.width - r.label) / float64(r.times)
	for i := range r.times {
		out.mark(Panel{Rectangle{r.label + float64(i)*wide, 0, wide, out.height}, [4]float64{}, Paint{ground, black, 0.3}})
	}
	out.put(label, pad, (out.height-label.height)/2)
	return out
}

// remarks is a field for what is to be said in words.
func (r *recordSheet) remarks() piece {
	title := r.say(r.small().with(Bold).inked(grey), r.width/2, r.words.Labels.Remarks)
	out := piece{width: r.width, height: title.height + 2.6*writeHigh}
	out.put(title, 0, 0)
	for i := range 3 {
		out.mark(band(0, title.height+float64(i+1)*0.85*writeHigh, r.width, 0.2, grey))
	}
	return out
}
