package pages

import (
	"strings"

	"benchleaf/compiler/internal/plan"
)

// list lays one pick list out.
type list struct {
	sheet
	plan   plan.PickList
	amount float64 // width of the quantities
	keys   float64 // width of the keys at the right
}

// LayPick lays a pick list out. What could not be shown as it should comes back
// as problems; the document is whole all the same.
func LayPick(content plan.PickList, look Look) (Document, []Problem) {
	look, problems := look.settled()
	l := &list{sheet: sheet{setter: newSetter(look, content.Words, problems)}, plan: content}
	l.rule()
	items := []item{{piece: l.head()}}
	items = append(items, l.legend()...)
	items = append(items, l.warnings()...)
	for _, group := range content.Groups {
		items = append(items, l.group(group)...)
	}
	l.where = "pick list"
	labels := content.Words.Labels
	frame := frame{s: l.setter, width: l.width, height: look.Stock.safe(1).Height, again: l.again, what: content.Kind, end: labels.EndOfList, laws: []string{content.Kind},
		who: joined(" · ", content.Shop, content.Title, content.Date)}
	document := Document{Title: content.Title, Subject: content.Kind, Author: content.Shop, Language: content.Words.Language, Date: content.Date}
	document.Sides = frame.share(items)
	return document, distinct(l.problems)
}

// rule measures the columns: a box to tick, how much, what, and what for.
func (l *list) rule() {
	em := l.size.main
	style := l.main().with(Bold)
	l.width = l.look.Stock.safe(1).Width
	for _, group := range l.plan.Groups {
		for _, line := range group.Lines {
			l.amount = max(l.amount, l.wideAs(style, line.Quantity))
			l.keys = max(l.keys, l.keyRow(line.For, l.width*0.2).width)
		}
	}
	l.amount = min(l.amount, l.width*0.18)
	l.margin = tickSize*em + 0.5*em
	if l.amount > 0 {
		l.margin += l.amount + 0.6*em
	}
	l.column = l.width - l.margin
}

func (l *list) head() piece {
	stamp := piece{}
	if l.plan.Date != "" {
		stamp = l.stamp(l.plan.Date, l.plan.DateIs)
	}
	kind := l.plan.Kind
	if kind == l.plan.Title {
		kind = ""
	}
	return l.titleBand(joined(" · ", l.plan.Shop, kind), l.plan.Title, l.plan.Sum, stamp).named("head", "")
}

// legend says which procedure each key stands for.
func (l *list) legend() []item {
	em := l.size.main
	l.where = "legend"
	var items []item
	for i, served := range l.plan.Served {
		key := l.key(served.Key)
		left := max(key.width, tickSize*em) + 0.5*em
		spans := []span{{served.Title, Bold, black}, {" " + joined(" · ", served.Machine, prefixed(l.words.Labels.Revision, served.Revision)), Regular, black}}
		var row piece
		row.put(key, 0, 0)
		row.put(l.set(l.text(), l.width-left, spans), left, max(0, (key.height-l.text().line())/2))
		row.width = l.width
		it := item{piece: row.named("served", served.Key), above: em * 0.25, dear: costList}
		if i == 0 {
			label := l.say(l.small().with(Bold).inked(grey), l.width, l.words.Labels.Procedures)
			items = append(items, item{piece: label.named("heading", "served"), above: em * 0.7, dear: costStage})
			it.stays = true
		}
		items = append(items, it)
	}
	return items
}

// warnings stand in a frame before anything is fetched.
func (l *list) warnings() []item {
	em := l.size.main
	l.where = "warnings"
	var items []item
	for i, warning := range l.plan.Warnings {
		out := l.lacking(warning)
		it := item{piece: out.named("warning", ""), above: em * 0.3, dear: costList}
		if i == 0 {
			it.above = em * 0.8
		}
		items = append(items, it)
	}
	return items
}

// lacking is one thing nobody can fetch: a plate, its label on a dark tab.
func (l *list) lacking(warning string) piece {
	em := l.size.main
	pad, line, r := em*0.45, em*0.12, em*0.25
	tab := l.say(l.small().with(Bold).inked(white).lying(black), l.width*0.3, l.words.Labels.Missing)
	words := l.say(l.text().with(Bold), l.width-tab.width-4*pad, warning)
	out := piece{width: l.width, height: max(words.height, tab.height) + 1.3*pad}
	out.mark(Panel{Rectangle{0, 0, tab.width + 2*pad, out.height}, [4]float64{r, 0, 0, r}, Paint{Fill: black}})
	out.mark(Panel{Rectangle{line / 2, line / 2, l.width - line, out.height - line}, corners(r), Paint{Stroke: black, Line: line}})
	out.put(tab, pad, (out.height-tab.height)/2)
	out.put(words, tab.width+3*pad, (out.height-words.height)/2)
	return out
}

func (l *list) group(group plan.PickGroup) []item {
	em := l.size.main
	l.where = group.Title
	heading := l.quietBand([]span{{group.Title, Bold, slate}}, l.main())
	if group.Note != "" {
		heading.put(l.say(l.small().inked(grey), l.column, group.Note), l.margin, heading.height+0.2*em)
	}
	items := []item{{piece: heading.named("section", group.Title), above: em * 0.9, dear: costPart}}
	if len(group.Lines) == 0 {
		none := group.None
		if none == "" {
			none = l.words.Labels.None
		}
		row := l.say(l.text(), l.column, none).at(l.margin, 0)
		return append(items, item{piece: row.named("none", ""), above: em * 0.4, stays: true})
	}
	for i, line := range group.Lines {
		items = append(items, item{piece: l.line(line), part: group.Title, above: em * 0.22, stays: i == 0, dear: costList})
	}
	return items
}

// line is one thing to take.
func (l *list) line(line plan.Pick) piece {
	em := l.size.main
	style := l.main()
	words := l.column - l.keys - 0.6*em
	name := l.say(style, words, line.Name)
	body := column(0, name, l.set(l.small(), words, l.about(line)))
	box := tick(tickSize * em)
	lift := max(0, box.height/2-(style.baseline()-style.face.CapHeight(em)/2))
	out := piece{width: l.width}
	out.put(box, 0, 0)
	amount := l.say(style.with(Bold), l.amount, line.Quantity)
	out.put(amount, tickSize*em+0.5*em+l.amount-amount.width, lift)
	out.put(body.named("words", ""), l.margin, lift)
	wanted := line.For
	if len(wanted) == len(l.plan.Served) && len(wanted) > 3 {
		wanted = []string{l.words.Labels.All}
	}
	keys := l.keyRow(wanted, l.keys)
	out.put(keys, l.width-keys.width, max(0, (box.height-l.key("A").height)/2))
	out.height += em * 0.22
	out.mark(band(0, out.height-0.2, l.width, 0.2, rule))
	return out.named("row", line.Name)
}

// about says where a thing is kept, in what packs, what it serves and what may stand in.
func (l *list) about(line plan.Pick) []span {
	labels := l.words.Labels
	var spans []span
	for _, part := range []struct{ label, text string }{
		{labels.BuyNow, line.Missing}, {labels.Take, line.Take}, {labels.Costs, line.Cost}, {labels.OnHand, line.OnHand}, {labels.ToKeep, line.Keep}, {"", line.RunsOut}, {labels.Where, line.Where}, {labels.Caught, line.Into}, {labels.Serves, strings.Join(line.Serves, "; ")}, {labels.StandIn, strings.Join(line.StandIns, ", ")}, {labels.Instead, strings.Join(line.Instead, "; ")},
	} {
		if part.text == "" {
			continue
		}
		if len(spans) > 0 {
			spans = append(spans, span{" ·\u00a0", Regular, grey})
		}
		if part.label != "" {
			spans = append(spans, span{part.label + "\u00a0", Regular, grey})
		}
		face := Regular
		if part.label == labels.BuyNow {
			face = Bold
		}
		spans = append(spans, span{part.text, face, black})
	}
	return spans
}

// key is the letter of a procedure on a dark ground.
func (l *list) key(key string) piece {
	em := l.size.main
	style := l.text().with(Bold).inked(white).lying(slate)
	text := l.say(style, l.width*0.2, key)
	out := piece{height: text.height + 0.1*em}
	out.width = max(out.height, text.width+0.5*em)
	out.mark(Panel{Rectangle{0, 0, out.width, out.height}, corners(em * 0.2), Paint{Fill: slate}})
	out.put(text, (out.width-text.width)/2, 0.05*em)
	return out.named("key", key)
}

func (l *list) keyRow(keys []string, width float64) piece {
	var row []piece
	for _, key := range keys {
		row = append(row, l.key(key))
	}
	return flow(width, l.size.main*0.18, row)
}
