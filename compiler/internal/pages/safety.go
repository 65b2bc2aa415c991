package pages

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/plan"
)

// safety is what is read before anything else: messages, worst first, then where
// the energy is cut off.
func (c *card) safety() []item {
	var items []item
	em := c.size.main
	sorted := plan.WorstFirst(c.plan.Cautions)
	for i, caution := range sorted {
		label := ""
		if i == 0 {
			label = c.words.Labels.Safety
		}
		made, above := c.caution(caution, c.column), em*0.4
		if caution.Brief() {
			made = c.announced(caution)
			if i > 0 && sorted[i-1].Brief() {
				above = em * 0.16
			}
		}
		it := item{piece: c.labelled(label, made), above: above, dear: costSafety}
		if i > 0 {
			it.part = c.words.Labels.Safety
		}
		if i == 0 {
			it.above = em * 0.75
		}
		items = append(items, it)
	}
	return append(items, c.isolations()...)
}

// announced is a message in front: signal word and hazard, with the steps at which it stands in full.
func (c *card) announced(caution plan.Caution) piece {
	look := signalOf(caution.Signal)
	line := look.frame * c.size.text / 3.4
	pad := c.size.text * 0.5
	word := c.signalPanel(caution, look)
	steps := c.say(c.small().inked(grey), c.column*0.4, c.words.Labels.Steps(caution.Steps))
	hazard := c.hazard(caution, c.column-word.width-steps.width-3*pad)
	height := max(word.height, hazard.height+pad*0.5, steps.height+pad*0.5)
	radius := c.size.text * 0.3
	out := piece{width: c.column, height: height}
	out.mark(Panel{Rectangle{line / 2, line / 2, c.column - line, height - line}, corners(radius), Paint{white, black, line}})
	out.mark(Panel{Rectangle{line / 2, line / 2, word.width, height - line}, [4]float64{radius, 0, 0, radius}, Paint{look.ground, black, line}})
	out.put(word, line/2, (height-word.height)/2)
	out.put(hazard, word.width+pad, (height-hazard.height)/2)
	out.put(steps, c.column-steps.width-pad, (height-steps.height)/2)
	return out.named("caution", caution.Signal)
}

// caution is a safety message in its frame: signal word and hazard, then what can
// happen and how to avoid it.
func (c *sheet) caution(caution plan.Caution, width float64) piece {
	look := signalOf(caution.Signal)
	line := look.frame * c.size.text / 3.4
	pad := c.size.text * 0.5
	word := c.signalPanel(caution, look)
	hazard := c.hazard(caution, width-word.width-2*pad)
	top := max(word.height, hazard.height+pad*0.5)
	signs := c.signsOf(caution, width)
	aside := pad
	if signs.width > 0 {
		aside += signs.width + pad*0.8
	}
	text := c.set(c.text(), width-aside-pad, c.warns(caution))
	body := piece{width: width}
	tall := max(text.height, signs.height)
	out := piece{width: width, height: top + pad*0.45 + tall + pad*0.7}
	radius := c.size.text * 0.3
	out.mark(Panel{Rectangle{line / 2, line / 2, width - line, out.height - line}, corners(radius), Paint{white, black, line}})
	out.mark(Panel{Rectangle{line / 2, line / 2, word.width, top}, [4]float64{radius, 0, radius, 0}, Paint{look.ground, black, line}})
	out.put(word, line/2, (top-word.height)/2)
	body.put(hazard, word.width+pad, (top-hazard.height)/2)
	body.put(signs, pad, top+pad*0.45+(tall-signs.height)/2)
	body.put(text, aside, top+pad*0.45+(tall-text.height)/2)
	out.put(body, 0, 0)
	return out.named("caution", caution.Signal)
}

// signSize is how high a sign stands: a hundredth of the distance it is read from (ISO
// 3864-1, distance factor for signs lit from outside, from memory), and no less than two
// lines of the text beside it.
func (c *sheet) signSize() float64 { return max(c.look.DistanceMM/100, 2*c.text().line()) }

// signsOf are the signs that stand in a message, where there is room for them.
func (c *sheet) signsOf(caution plan.Caution, width float64) piece {
	var out piece
	for _, number := range caution.Drawn() {
		drawn, ok := sign(number, c.signSize())
		x := 0.0
		if out.width > 0 {
			x = out.width + c.size.text*0.3
		}
		if !ok || x+drawn.width > width*0.3 {
			break
		}
		out.put(drawn, x, 0)
	}
	return out
}

// Signs are the numbers of the signs that are drawn on a card.
func Signs(card plan.Card) []string {
	var numbers []string
	see := func(cautions []plan.Caution) {
		for _, caution := range cautions {
			numbers = append(numbers, caution.Drawn()...)
		}
	}
	see(slices.DeleteFunc(slices.Clone(card.Cautions), plan.Caution.Brief))
	for _, section := range card.Sections {
		for _, step := range section.Steps {
			see(step.Cautions)
		}
	}
	for _, item := range card.Wear {
		if item.Sign != "" {
			numbers = append(numbers, item.Sign)
		}
	}
	return numbers
}

// meanings says what signs stand for, each with its number, row by row.
func (c *sheet) meanings(numbers []string) []piece {
	numbers = slices.DeleteFunc(slices.Clone(numbers), func(number string) bool { return c.words.Signs[number] == "" })
	slices.Sort(numbers)
	numbers = slices.Compact(numbers)
	style := c.small()
	high := style.line() * 1.5
	columns := max(1, int(c.column/(17*style.size)))
	each := c.column / float64(columns)
	var rows []piece
	for row := range slices.Chunk(numbers, columns) {
		line := piece{width: c.column}
		for k, number := range row {
			drawn, _ := sign(number, high)
			words := c.set(style, each-high*1.2-style.size, []span{{number, Bold, black}, {" " + c.words.Signs[number], Regular, black}})
			tall := max(high, words.height)
			line.put(drawn, float64(k)*each+(high*1.16-drawn.width)/2, (tall-drawn.height)/2)
			line.put(words, float64(k)*each+high*1.2+style.size*0.3, (tall-words.height)/2)
		}
		rows = append(rows, line.named("row", row[0]))
	}
	return rows
}

// key is what the signs of the card mean.
func (c *card) key() []item {
	if c.above != "" { // a manual says it once
		return nil
	}
	var items []item
	for i, row := range c.meanings(Signs(c.plan)) {
		label, above, part := "", c.size.small*0.35, c.words.Labels.Signs
		if i == 0 {
			label, above, part = part, c.size.main*0.7, ""
		}
		items = append(items, item{piece: c.labelled(label, row), above: above, part: part, stays: i > 0, dear: costList})
	}
	return items
}

// hazard is the hazard of a message, below it the same in the second language.
func (c *sheet) hazard(caution plan.Caution, width float64) piece {
	style := c.text().with(Bold)
	out := c.say(style, width, caution.Hazard)
	if caution.Second.Hazard == "" {
		return out
	}
	return column(c.size.text*0.1, out, c.say(style, width, caution.Second.Hazard))
}

func (c *sheet) warns(caution plan.Caution) []span {
	spans := []span{{joined(" ", caution.Consequence, caution.Avoid), Regular, black}}
	if len(caution.Wear) > 0 {
		spans = append(spans, span{" " + c.words.Labels.Wear + c.words.Labels.Colon, Bold, black}, span{" " + strings.Join(caution.Wear, ", ") + ".", Regular, black})
	}
	return spans
}

// signalPanel is the ground of a signal word; the word of a second language stands below
// it in the same size, where it is another (ANSI Z535.4 wants both to be read alike, from memory).
func (c *sheet) signalPanel(caution plan.Caution, look signal) piece {
	size := c.size.text * 1.12
	style := kind{size, 1.24, Bold, look.word, look.ground}
	if look.italic {
		style = style.with(BoldItalic)
	}
	name := caution.Word
	if name == "" {
		name = strings.ToUpper(caution.Signal)
	}
	word := c.say(style, c.column*0.5, name)
	if second := caution.Second.Word; second != "" && second != name {
		word = column(0, word, c.say(style, c.column*0.5, second))
	}
	pad := size * 0.5
	out := piece{height: word.height + pad*0.55}
	x := pad
	if look.alert {
		sign := alert(size*1.12, look.word, look.ground, look.contour)
		out.put(sign, x, (out.height-sign.height)/2-size*0.04)
		x += sign.width + size*0.35
	}
	out.put(contoured(word, look.contour), x, (out.height-word.height)/2)
	out.width = x + word.width + pad
	return out
}

// isolations is the table of energies: what, where it is cut off, how that is shown.
func (c *card) isolations() []item {
	labels := c.words.Labels
	if len(c.plan.Isolations) == 0 {
		if c.plan.NoEnergy == "" {
			return nil
		}
		text := c.set(c.text(), c.column, []span{{labels.NoEnergy + ".", Bold, black}, {" " + c.plan.NoEnergy, Regular, black}})
		return []item{{piece: c.labelled(labels.Isolate, text.named("isolation", "none")), above: c.size.main * 0.75, dear: costEnergy}}
	}
	widths := []float64{0.24 * c.column, 0.38 * c.column, 0.38 * c.column}
	head := c.cells(c.small().inked(grey), widths, []string{labels.Energy, labels.Isolate, labels.Prove}, true)
	items := []item{{piece: c.labelled(labels.Isolate, head), above: c.size.main * 0.75, dear: costEnergy}}
	for i, isolation := range c.plan.Isolations {
		how, prove := isolation.How, isolation.Prove
		if isolation.Cut > 0 && isolation.Proof > 0 {
			how, prove = c.words.Labels.Steps([]int{isolation.Cut}), c.words.Labels.Steps([]int{isolation.Proof})
		}
		row := c.cells(c.text(), widths, []string{isolation.Energy, how, prove}, false)
		items = append(items, item{piece: c.labelled("", row.named("isolation", isolation.Energy)), stays: i == 0, part: labels.Isolate, dear: costSafety})
	}
	return items
}

// cells is a row of a table over a hairline; its first cell is bold.
func (c *sheet) cells(style kind, widths []float64, texts []string, head bool) piece {
	gap := c.size.text * 0.7
	var out piece
	x := 0.0
	for i, text := range texts {
		face := style
		if i == 0 && !head {
			face = style.with(Bold)
		}
		out.put(c.say(face, widths[i]-gap, text), x, c.size.text*0.12)
		x += widths[i]
	}
	out.width = x
	out.height += c.size.text * 0.12
	if head {
		out.mark(band(0, out.height-0.35, x, 0.35, black))
	} else {
		out.mark(band(0, out.height-0.2, x, 0.2, rule))
	}
	return out
}

// conditions says how the machine stands at the start or at the end.
func (c *card) conditions(label string, texts []string, dear float64) []item {
	if len(texts) == 0 {
		return nil
	}
	var lines []piece
	for _, text := range texts {
		lines = append(lines, c.say(c.text(), c.column, text))
	}
	return []item{{piece: c.labelled(label, column(c.size.text*0.2, lines...)).named("condition", label), above: c.size.main * 0.7, dear: dear}}
}
