package pages

import "benchleaf/compiler/internal/plan"

// head is the band on top of the first side: what is done, to which machine, by
// which revision; then the facts, and what the job is.
func (c *card) head() piece {
	c.where = "head"
	out := c.title()
	if facts := c.facts(c.plan.Facts); facts.height > 0 {
		out.put(facts, 0, out.height)
	}
	if len(c.plan.Summary) > 0 {
		style := c.text()
		summary := c.set(style, c.width, style.spans(c.plan.Summary))
		out.put(summary, 0, out.height+c.size.main*0.55)
	}
	for i, one := range c.plan.Joins {
		style := c.text()
		words := []span{{one.Key + "  ", Bold, black}, {one.Title, Regular, black}, {"  " + prefixed(c.words.Labels.Revision, one.Revision), Regular, grey}}
		above := c.size.text * 0.1
		if i == 0 {
			above = c.size.text * 0.5
		}
		out.put(c.set(style, c.width, words), 0, out.height+above)
	}
	out.width = c.width
	return out.named("head", "")
}

func (c *card) title() piece {
	labels := c.words.Labels
	mark := c.stamp(prefixed(labels.Revision, c.plan.Revision), c.plan.Date)
	above := c.above
	if above == "" {
		above = joined(" · ", c.plan.Shop, labels.Card)
	}
	return c.titleBand(above, c.plan.Title, joined(" · ", c.plan.Machine, c.plan.Variant), mark)
}

// facts are cells in rows, each as wide as it needs; in one row, if folding the
// longer ones in two lets them stand in one.
func (c *sheet) facts(facts []plan.Fact) piece {
	pad := c.factPad()
	cells := c.cellsOf(facts, pad)
	out := piece{width: c.width}
	for len(cells) > 0 {
		n, x := 0, 0.0
		for n < len(cells) && (n == 0 || x+cells[n].width+2*pad <= c.width) {
			x += cells[n].width + 2*pad
			n++
		}
		out.put(c.factRow(cells[:n], pad), 0, out.height)
		cells = cells[n:]
	}
	return out
}

func (c *sheet) factPad() float64 { return c.size.small * 0.55 }

// cellsOf folds the widest facts until all stand in one row; if that does not
// help, none is folded.
func (c *sheet) cellsOf(facts []plan.Fact, pad float64) []piece {
	cells, folded := make([]piece, len(facts)), make([]piece, len(facts))
	wide, narrow := 0.0, 0.0
	for i, fact := range facts {
		cells[i] = c.fact(fact, c.width-2*pad)
		folded[i] = c.fact(fact, c.foldedWidth(fact.Text))
		wide += cells[i].width + 2*pad
		narrow += folded[i].width + 2*pad
	}
	if narrow > c.width {
		return cells
	}
	for wide > c.width {
		widest := 0
		for i := range cells {
			if cells[i].width-folded[i].width > cells[widest].width-folded[widest].width {
				widest = i
			}
		}
		wide -= cells[widest].width - folded[widest].width
		cells[widest] = folded[widest]
	}
	return cells
}

// foldedWidth is the least width at which a text takes two lines.
func (c *sheet) foldedWidth(text string) float64 {
	style := c.text().with(Bold)
	words := c.split([]span{{text, Bold, black}})
	width := style.wide(words)
	for n := 1; n < len(words); n++ {
		if !words[n-1].glued {
			width = min(width, max(style.wide(words[:n]), style.wide(words[n:])))
		}
	}
	return width
}

func (c *sheet) factRow(cells []piece, pad float64) piece {
	used, tallest := 0.0, 0.0
	for _, cell := range cells {
		used += cell.width + 2*pad
		tallest = max(tallest, cell.height)
	}
	out := piece{width: c.width, height: tallest + 1.5*pad}
	out.mark(band(0, 0, c.width, out.height, tint))
	spare, x := (c.width-used)/float64(len(cells)), 0.0
	for i, cell := range cells {
		if i > 0 {
			out.mark(band(x, pad*0.7, 0.25, out.height-1.4*pad, rule))
		}
		out.put(cell, x+pad, pad*0.75)
		x += cell.width + 2*pad + spare
	}
	out.mark(band(0, out.height-0.25, c.width, 0.25, rule))
	return out
}

func (c *sheet) fact(fact plan.Fact, most float64) piece {
	most = min(max(most, c.foldedWidth(fact.Label)), c.width-2*c.factPad())
	label := c.say(c.small().inked(grey).lying(tint), most, fact.Label)
	text := c.say(c.text().with(Bold).lying(tint), most, fact.Text)
	return column(0, label, text).named("fact", fact.Label)
}
