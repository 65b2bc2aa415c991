package pages

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/plan"
)

// section is a part of the job: its band, then its steps. The band stays with the
// first step, a stage's heading with the step it begins with.
func (c *card) section(section plan.Section) []item {
	if len(section.Steps) == 0 && section.Lead == "" {
		return nil
	}
	em := c.size.main
	c.where = section.Title
	items := []item{{piece: c.sectionBand(section), above: em * 0.9, dear: costPart}}
	waited := false
	part := section.Title
	for i, step := range section.Steps {
		c.where = "step " + strconv.Itoa(step.Number)
		first := i == 0
		if step.Stage != "" {
			part = joined(" · ", section.Title, step.Stage)
			within := section.Title
			if first {
				within = "" // the band just above says it
			}
			items = append(items, item{piece: c.stage(step.Stage, within), above: em * 0.7, stays: first, dear: costStage})
			first = true
		}
		meanwhile := step.Meanwhile && waited
		made := c.step(step, meanwhile, meanwhile && !section.Steps[i-1].Meanwhile)
		switch {
		case meanwhile:
		case step.GoesOn:
			made[0].dear = costGoesOn
		case i > 0 && section.Steps[i-1].Wait:
			made[0].dear = costFree
		}
		made[0].stays = first
		for k := range made {
			made[k].part = part
		}
		items = append(items, made...)
		waited = step.Wait || meanwhile
	}
	return items
}

func (c *card) sectionBand(section plan.Section) piece {
	out := c.bandOf(section.Title, numbers(section))
	if section.Lead != "" {
		out.put(c.say(c.text(), c.column, section.Lead), c.margin, out.height+c.size.text*0.3)
	}
	return out.named("section", section.Title)
}

// numbers says which steps a section holds.
func numbers(section plan.Section) string {
	if len(section.Steps) == 0 {
		return ""
	}
	first, last := section.Steps[0].Number, section.Steps[len(section.Steps)-1].Number
	if first == last {
		return strconv.Itoa(first)
	}
	return strconv.Itoa(first) + "–" + strconv.Itoa(last)
}

// stage is a heading within a section; the section's name beside it tells where a
// side that begins here belongs.
func (c *card) stage(title, section string) piece {
	aside := c.say(c.small().inked(grey), c.column*0.4, section)
	text := c.say(c.text().with(Bold).inked(slate), c.column-aside.width-c.size.text, title)
	out := piece{width: c.width}
	out.put(text, c.margin, 0)
	out.put(aside, c.width-aside.width, max(0, c.text().baseline()-c.small().baseline()))
	out.height += c.size.text * 0.12
	out.mark(band(0, out.height-0.3, c.width, 0.3, slate))
	return out.named("stage", title)
}

// step makes one item of a step, or several when no side can hold it whole.
func (c *card) step(step plan.Step, meanwhile, begins bool) []item {
	em := c.size.main
	inset := 0.0
	if meanwhile {
		inset = c.indent
	}
	width := c.column - inset
	lead := c.warned(step, width, inset, begins)
	rows := c.rest(step, width)
	above, dear := em*0.7, costStep
	if len(step.Cautions) > 0 {
		above = em * 0.95
	}
	if meanwhile {
		dear = costMeanwhile
	}
	photo := c.taken(step, width)
	whole := column(em*0.22, append([]piece{lead}, c.hung(slices.Concat(rows, photo), inset)...)...)
	whole.width = c.width
	limit := c.look.Stock.safe(1).Height * 0.8
	if len(photo) > 0 { // a photograph may go overleaf before all else does
		limit *= 0.75
	}
	id := strconv.Itoa(step.Number)
	if whole.height <= limit {
		return []item{{piece: whole.named("step", id), above: above, dear: dear, bar: meanwhile}}
	}
	items := []item{{piece: lead.named("step", id), above: above, dear: dear, bar: meanwhile}}
	for _, row := range c.hung(slices.Concat(rows, photo), inset) {
		items = append(items, item{piece: row.named("step-part", id), above: em * 0.22, dear: costInside, bar: meanwhile})
	}
	return items
}

// hung puts rows under the words of the action.
func (c *card) hung(rows []piece, inset float64) []piece {
	out := make([]piece, 0, len(rows))
	for _, row := range rows {
		if row.height > 0 {
			out = append(out, row.at(c.margin+inset, 0))
		}
	}
	return out
}

// warned is what never parts: the messages and the action they are for.
func (c *card) warned(step plan.Step, width, inset float64, begins bool) piece {
	em := c.size.main
	var out piece
	if begins {
		style := c.small().with(Bold).inked(slate)
		out.put(c.say(style, width, c.words.Labels.Meanwhile), c.margin+inset, 0)
	}
	for _, caution := range plan.WorstFirst(step.Cautions) {
		out.put(c.caution(caution, width), c.margin+inset, out.height)
		out.height += em * 0.35
	}
	if step.Gate != "" {
		gate := c.gate(step.Gate, width)
		out.put(gate, c.margin+inset, out.height)
		out.height += em * 0.35
	}
	top := out.height
	style := c.main()
	middle := style.baseline() - style.face.CapHeight(em)/2
	tags, tall := c.tags(step), false                                  // tall: two lines, the first beside the action
	if whose := joined(" · ", step.Worker, step.Origin); whose != "" { // it stands before the numbers on the map
		origin := c.say(c.small().inked(grey), width*0.3, step.Origin)
		if step.Worker != "" { // who does it is read from further off
			who := c.say(c.main().with(Bold), width*0.4, step.Worker)
			both := piece{width: max(who.width, origin.width)}
			both.put(who, both.width-who.width, 0)
			both.put(origin, both.width-origin.width, who.height)
			origin, tall = both, true
		}
		gap := 0.0
		if tags.width > 0 {
			gap = c.size.small * 0.4
		}
		both := piece{}
		height := max(tags.height, origin.height)
		if tall {
			both.put(origin.named("origin", whose), 0, 0)
			both.put(tags, origin.width+gap, middle-tags.height/2)
		} else {
			both.put(origin.named("origin", whose), 0, (height-origin.height)/2)
			both.put(tags, origin.width+gap, (height-tags.height)/2)
		}
		tags = both
	}
	room := width
	if tags.width > 0 {
		room -= tags.width + c.size.text*0.5
	}
	action := c.set(style, room, style.spans(step.Action))
	box := tick(tickSize * em)
	lift := max(0, box.height/2-middle)
	number := kind{numberSize * em, 1.1, Bold, black, white}
	digits := c.say(number, c.margin, strconv.Itoa(step.Number))
	out.put(box, inset, top+lift+middle-box.height/2)
	out.put(digits.named("number", strconv.Itoa(step.Number)), inset+box.width+0.3*em, top+lift+style.baseline()-number.baseline())
	out.put(action.named("action", strconv.Itoa(step.Number)), c.margin+inset, top+lift)
	right := top + lift
	if !tall {
		right += middle - tags.height/2
	}
	out.put(tags, c.margin+inset+width-tags.width, right)
	return out
}

// gate is what must have passed before a step: a dark plate with a clock.
func (c *card) gate(words string, width float64) piece {
	em := c.size.main
	pad := em * 0.35
	sign := clock(c.size.text*1.05, white)
	text := c.say(c.text().with(Bold).inked(white).lying(black), width-sign.width-4*pad, words)
	out := piece{height: text.height + pad}
	out.width = sign.width + text.width + 3*pad
	out.mark(Panel{Rectangle{0, 0, out.width, out.height}, corners(em * 0.25), Paint{Fill: black}})
	out.put(sign, pad, (out.height-sign.height)/2)
	out.put(text, sign.width+2*pad, pad/2)
	return out.named("gate", words)
}

// rest is what a step says below its action.
func (c *card) rest(step plan.Step, width float64) []piece {
	rows := c.blocks(step.Say, width)
	rows = append(rows, c.drawn(step, width))
	if len(step.Passes) > 0 {
		rows = append(rows, c.stairs(step.Passes, width))
	}
	for _, reading := range step.Readings {
		rows = append(rows, c.reading(reading, width))
	}
	if step.Otherwise.Text != "" {
		rows = append(rows, c.signed(branch(c.size.text*0.95, black), width, []span{{step.Otherwise.Label + c.words.Labels.Colon, Bold, black}, {" " + step.Otherwise.Text, Regular, black}}, c.text()).named("outside", ""))
	}
	for _, note := range step.Notes {
		rows = append(rows, c.note(note, width))
	}
	return rows
}

func (c *card) blocks(blocks []plan.Block, width float64) []piece {
	style := c.text()
	var rows []piece
	for _, block := range blocks {
		if block.Bullet == "" {
			rows = append(rows, c.set(style, width, style.spans(block.Runs)))
			continue
		}
		mark := c.say(style, width/2, block.Bullet)
		left := max(c.size.text*0.9, mark.width+c.size.text*0.4)
		var row piece
		row.put(mark, 0, 0)
		row.put(c.set(style, width-left, style.spans(block.Runs)), left, 0)
		rows = append(rows, row)
	}
	return rows
}

// drawn is the values to hold with what is drawn of them at their right: the order on a
// bolt circle, or how high something is filled.
func (c *card) drawn(step plan.Step, width float64) piece {
	var drawing piece
	switch {
	case len(step.Circle) > 0:
		drawing = c.circle(step.Circle).named("circle", strconv.Itoa(step.Number))
	case step.Level != nil:
		drawing = c.vessel(*step.Level, width)
	}
	if drawing.width == 0 || drawing.width > width*0.55 {
		return column(c.size.text*0.3, c.figures(step, width), drawing)
	}
	figures := c.figures(step, width-drawing.width-c.size.text)
	out := piece{width: width, height: max(figures.height, drawing.height)}
	out.put(figures, 0, 0)
	out.put(drawing, width-drawing.width, 0)
	return out
}

// taken is the photograph of a step, and a piece for each row of its names.
func (c *card) taken(step plan.Step, width float64) []piece {
	if step.Picture == nil {
		return nil
	}
	photo, ok := c.photo(*step.Picture, width, c.look.Stock.safe(1).Height*0.32)
	if !ok {
		c.crowded(step.Picture.Title, step.Picture.Callouts, width)
	}
	return photo
}

// tags are the numbers that a step's things have on the map.
func (c *card) tags(step plan.Step) piece {
	const most = 3
	var out piece
	for _, number := range step.Places[:min(len(step.Places), most)] {
		x := 0.0
		if out.width > 0 {
			x = out.width + c.size.small*0.25
		}
		out.put(c.numbered(number, true, nil), x, 0)
	}
	return out
}

// circle draws fasteners on their circle, each with the number of its turn; the first
// is dark, so that the eye finds where to begin.
func (c *setter) circle(turns []int) piece {
	style := c.text().with(Bold)
	if len(turns) > 12 {
		style = c.small().with(Bold)
	}
	disc := max(c.wideAs(style, "24"), style.line()) * 1.05
	radius := max(disc*1.35, float64(len(turns))*disc*1.45/(2*math.Pi))
	size := 2*radius + disc
	out := piece{width: size, height: size}
	line := c.size.small * 0.06
	out.mark(Panel{Rectangle{disc / 2, disc / 2, 2 * radius, 2 * radius}, corners(radius), Paint{Stroke: grey, Line: line}})
	for i, turn := range turns {
		angle := 2*math.Pi*float64(i)/float64(len(turns)) - math.Pi/2
		x, y := size/2+radius*math.Cos(angle)-disc/2, size/2+radius*math.Sin(angle)-disc/2
		ground, ink := white, black
		if turn == 1 {
			ground, ink = black, white
		}
		out.mark(Panel{Rectangle{x + line, y + line, disc - 2*line, disc - 2*line}, corners(disc/2 - line), Paint{ground, black, 1.5 * line}})
		number := c.say(style.inked(ink).lying(ground), 2*disc, strconv.Itoa(turn))
		out.put(number, x+(disc-number.width)/2, y+(disc-number.height)/2)
	}
	return out
}

// figures sets the values to hold as plates, and beside them, where there is room,
// the details they depend on.
func (c *card) figures(step plan.Step, width float64) piece {
	gap := c.size.text * 0.6
	var plates []piece
	for _, value := range step.Values {
		plates = append(plates, c.plate(value, step.Wait, width))
	}
	values := flow(width, gap, plates)
	left := width - values.width - gap*1.3
	if values.height == 0 || left < 15*c.size.small {
		return column(c.size.text*0.25, values, c.details(step.Details, width))
	}
	beside := c.details(step.Details, left)
	if beside.height > values.height*1.6 {
		return column(c.size.text*0.25, values, c.details(step.Details, width))
	}
	var out piece
	out.put(values, 0, 0)
	if beside.height > 0 {
		out.put(beside, values.width+gap*1.3, max(0, (values.height-beside.height)/2))
	}
	return out
}

func (c *card) details(details []string, width float64) piece {
	return c.say(c.small(), width, strings.Join(details, " · "))
}

// plate is a value to set: its label on a dark tab, its figure big beside it.
func (c *card) plate(value plan.Value, wait bool, width float64) piece {
	em := c.size.main
	pad, line := em*0.35, em*0.12
	label := c.small().with(Bold).inked(white).lying(black)
	tab := c.say(label, width*0.3, value.Label)
	if wait {
		sign := clock(c.size.small*1.05, white)
		var both piece
		both.put(sign, 0, (label.line()-sign.height)/2)
		both.put(tab, sign.width+c.size.small*0.35, 0)
		tab = both
	}
	big := kind{c.size.value, 1.2, Bold, black, white}
	room := width - tab.width - 4*pad
	figure := c.say(big, room, value.Text)
	also := c.say(c.small(), room, value.Also)
	beside := also.height > 0 && figure.height < 1.5*big.line() && figure.width+also.width+pad <= room*0.8
	body := column(0, figure, also)
	if beside {
		body = figure
		body.put(also, figure.width+pad, big.baseline()-c.small().baseline())
	}
	out := piece{width: tab.width + body.width + 4*pad, height: max(body.height, tab.height) + pad*0.5}
	r := em * 0.25
	out.mark(Panel{Rectangle{0, 0, tab.width + 2*pad, out.height}, [4]float64{r, 0, 0, r}, Paint{Fill: black}})
	out.mark(Panel{Rectangle{line / 2, line / 2, out.width - line, out.height - line}, corners(r), Paint{Stroke: black, Line: line}})
	out.put(tab, pad, (out.height-tab.height)/2)
	out.put(body, tab.width+3*pad, (out.height-body.height)/2)
	return out.named("value", value.Label)
}

// reading is a place to write a value down, with its limit.
func (c *card) reading(blank plan.Blank, width float64) piece {
	em := c.size.main
	style := c.text()
	height := 1.75 * em
	label := c.say(style, width*0.45, blank.Label)
	unit := c.say(style, width*0.2, blank.Unit)
	room := piece{width: 5.5 * em, height: height}
	room.mark(Panel{Rectangle{0.15, 0.15, room.width - 0.3, height - 0.3}, corners(em * 0.15), Paint{white, black, 0.3}})
	limit := ""
	if blank.Limit != "" {
		limit = c.words.Labels.Limit + " " + blank.Limit
	}
	parts := []piece{label, room.named("blank", blank.Label), unit, c.say(style.with(Bold), width*0.5, limit)}
	row := piece{}
	x := 0.0
	for _, part := range parts {
		if part.width == 0 {
			continue
		}
		if x > 0 && x+part.width > width+tiny {
			return c.stackedReading(parts)
		}
		row.put(part, x, max(0, (max(height, label.height)-part.height)/2))
		x += part.width + c.size.text*0.55
	}
	return row.named("reading", blank.Label)
}

func (c *card) stackedReading(parts []piece) piece {
	var second piece
	second.put(parts[1], 0, 0)
	second.put(parts[2], parts[1].width+c.size.text*0.4, max(0, (parts[1].height-parts[2].height)/2))
	return column(c.size.text*0.15, parts[0], second, parts[3]).named("reading", "")
}

// signed sets words beside a symbol.
func (c *card) signed(sign piece, width float64, words []span, style kind) piece {
	left := sign.width + c.size.text*0.4
	var out piece
	out.put(sign, 0, style.baseline()-style.face.CapHeight(style.size)/2-sign.height/2)
	out.put(c.set(style, width-left, words), left, 0)
	return out
}

func (c *card) note(note string, width float64) piece {
	left := c.size.text * 0.55
	text := c.set(c.small(), width-left, []span{{c.words.Labels.Note + c.words.Labels.Colon, Bold, grey}, {" " + note, Regular, black}})
	out := piece{}
	out.put(text, left, 0)
	out.mark(band(0, 0.2, 0.45, text.height-0.4, rule))
	return out.named("note", "")
}
