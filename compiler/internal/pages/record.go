package pages

import "benchleaf/compiler/internal/plan"

// closing is how the machine is left, and the strip that is written on at the end.
func (c *card) closing() []item {
	labels := c.words.Labels
	items := c.conditions(labels.End, c.plan.End, costList)
	if len(c.plan.Allowed) > 0 {
		items = append(items, c.conditions(labels.Allowed, c.plan.Allowed, costList)...)
	}
	items = append(items, c.key()...)
	end := c.record()
	by := joined(" · ", prefixed(labels.Author, c.plan.Author), prefixed(labels.Checked, c.plan.Checked))
	if by != "" {
		end.put(c.say(c.small().inked(grey), c.width, by), 0, end.height+c.size.small*0.3)
	}
	if end.height > 0 {
		items = append(items, item{piece: end.named("record", ""), above: c.size.main * 0.8, dear: costStage, low: true})
	}
	return items
}

// record is a strip of cells to write in.
func (c *card) record() piece {
	if len(c.plan.Blanks) == 0 {
		return piece{}
	}
	em := c.size.main
	columns := max(1, min(4, int(c.width/(7.4*em)), len(c.plan.Blanks)))
	rows := (len(c.plan.Blanks) + columns - 1) / columns
	columns = (len(c.plan.Blanks) + rows - 1) / rows
	title := c.say(c.small().with(Bold).inked(white).lying(slate), c.width-em, c.words.Labels.Record)
	out := piece{width: c.width, height: title.height + 0.3*em}
	r := em * 0.25
	out.mark(Panel{Rectangle{0, 0, c.width, out.height}, [4]float64{r, r, 0, 0}, Paint{Fill: slate}})
	out.put(title, 0.4*em, 0.15*em)
	for row := range rows {
		blanks := c.plan.Blanks[row*columns : min((row+1)*columns, len(c.plan.Blanks))]
		out.put(c.recordRow(blanks), 0, out.height)
	}
	return out
}

func (c *card) recordRow(blanks []plan.Blank) piece {
	width := c.width / float64(len(blanks))
	pad := c.size.small * 0.45
	var cells []piece
	tallest := 0.0
	for _, blank := range blanks {
		limit := ""
		if blank.Limit != "" {
			limit = c.words.Labels.Limit + " " + blank.Limit
		}
		label := c.say(c.small().with(Bold), width-2*pad, blank.Label)
		cell := column(0, label, c.say(c.small(), width-2*pad, limit))
		cells = append(cells, cell)
		tallest = max(tallest, cell.height)
	}
	room := 1.7 * c.size.main // to write in, with the unit in its corner
	for _, blank := range blanks {
		room = max(room, c.say(c.small(), width-2*pad, blank.Unit).height+pad)
	}
	out := piece{width: c.width, height: tallest + room + pad}
	for i, blank := range blanks {
		x := float64(i) * width
		cell := piece{width: width, height: out.height}
		cell.mark(Panel{Rectangle{0, 0, width, out.height}, [4]float64{}, Paint{white, black, 0.3}})
		cell.put(cells[i], pad, pad*0.6)
		unit := c.say(c.small(), width-2*pad, blank.Unit)
		cell.put(unit, width-pad-unit.width, out.height-pad*0.6-unit.height)
		out.put(cell.named("blank", blank.Label), x, 0)
	}
	return out
}
