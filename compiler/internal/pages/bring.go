package pages

import "benchleaf/compiler/internal/plan"

// bring lists what is fetched before the work begins, kind by kind. An empty kind
// is said to be empty.
func (c *card) bring() []item {
	labels := c.words.Labels
	var items []item
	for i, group := range []struct {
		label string
		items []plan.Item
	}{{labels.Wear, c.plan.Wear}, {labels.Tools, c.plan.Tools}, {labels.Supplies, c.plan.Supplies}, {labels.Spares, c.plan.Spares}} {
		rows := c.group(group.label, group.items)
		rows[0].above = c.size.main * 0.3
		for k := range rows {
			rows[k].part = labels.Bring
			if k > 0 {
				rows[k].part = group.label
			}
		}
		if i == 0 {
			items = append(items, item{piece: c.heading(labels.Bring), above: c.size.main * 0.7, dear: costStage})
			rows[0].stays = true
		}
		items = append(items, rows...)
	}
	return items
}

// group sets the items in two columns, row by row.
func (c *card) group(label string, list []plan.Item) []item {
	if len(list) == 0 {
		return []item{{piece: c.labelled(label, c.say(c.text().inked(grey), c.column, c.words.Labels.None)), dear: costBring}}
	}
	columns := 2
	if c.column < 24*c.size.text {
		columns = 1
	}
	gap := c.size.text
	width := (c.column - gap*float64(columns-1)) / float64(columns)
	var items []item
	for first := 0; first < len(list); first += columns {
		row := piece{width: c.column}
		for i := first; i < min(first+columns, len(list)); i++ {
			row.put(c.thing(list[i], width), float64(i-first)*(width+gap), 0)
		}
		name := ""
		if first == 0 {
			name = label
		}
		items = append(items, item{piece: c.labelled(name, row.named("row", list[first].Name)), above: c.size.text * 0.15, dear: costBring})
	}
	return items
}

// thing is one item to bring, with a box to tick.
func (c *card) thing(thing plan.Item, width float64) piece {
	size := c.size.text
	style := c.text()
	box := tick(size * 0.8)
	spans := []span{{thing.Name, Regular, black}}
	if thing.Quantity != "" {
		spans = []span{{thing.Quantity + "  ", Bold, black}, {thing.Name, Regular, black}}
	}
	left := size * 1.25
	words := c.set(style, width-left, spans)
	var rest []span
	if thing.Note != "" {
		rest = append(rest, span{thing.Note, Regular, grey})
	}
	for i, other := range thing.StandIns {
		before := c.words.Labels.Or + " "
		if i > 0 || len(rest) > 0 {
			before = " ·\u00a0" + before
		}
		rest = append(rest, span{before + other, Regular, grey})
	}
	words = column(0, words, c.set(c.small(), width-left, rest))
	out := piece{width: width}
	if drawn, ok := sign(thing.Sign, style.line()*1.45); ok {
		words = c.set(style, width-left-drawn.width-size*0.4, spans)
		tall := max(drawn.height, words.height)
		out.put(box, 0, (tall-box.height)/2)
		out.put(drawn, left, (tall-drawn.height)/2)
		out.put(words, left+drawn.width+size*0.4, (tall-words.height)/2)
		return out
	}
	out.put(box, 0, style.baseline()-style.face.CapHeight(size)/2-box.height/2)
	out.put(words, left, 0)
	return out
}
