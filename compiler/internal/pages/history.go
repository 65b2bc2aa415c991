package pages

import "benchleaf/compiler/internal/plan"

// LayHistory lays the history of one machine out. What could not be shown as it should comes
// back as problems; the document is whole all the same.
func LayHistory(content plan.History, look Look) (Document, []Problem) {
	look, common := begin(look, content.Words)
	h := &manual{sheet: common, headings: map[string]piece{}}
	labels := content.Words.Labels
	stamp := piece{}
	if content.To != "" {
		stamp = h.stamp(content.To, labels.Date)
	}
	items := []item{{piece: h.titleBand(joined(" · ", content.Shop, labels.History), content.Machine, "", stamp).named("head", "")}}
	if facts := h.facts(content.Facts); facts.height > 0 {
		items = append(items, item{piece: facts.named("facts", "")})
	}
	if len(content.Done.Rows) == 0 {
		items = append(items, item{piece: h.say(h.text(), h.width, labels.HistoryNone).named("none", ""), above: h.size.main})
	}
	for _, table := range []plan.Table{content.Done, content.Open} {
		if len(table.Rows) > 0 {
			items = append(items, h.table(table, "")...)
		}
	}
	frame := frame{s: h.setter, width: h.width, height: look.Stock.safe(1).Height, again: h.again, what: labels.History, end: labels.EndOfSheet, filled: true,
		laws: []string{labels.HistorySource}, who: joined(" · ", content.Shop, content.Machine, content.To)}
	document := Document{Title: content.Machine, Subject: labels.History, Author: content.Shop, Language: content.Words.Language, Date: content.To}
	document.Sides = frame.share(items)
	return document, distinct(h.problems)
}
