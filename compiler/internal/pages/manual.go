package pages

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/plan"
)

// manual lays one manual out. Its text begins with a page 1 of its own, behind what
// stands in front; so what stands in front can tell the pages without changing them.
type manual struct {
	sheet
	plan     plan.Manual
	digits   int              // room for the number of a page
	front    []Side           // cover, revisions, contents
	body     []Side           // everything behind them
	outline  []chapterLine    // of the text
	headings map[string]piece // of tables that go on overleaf
	goals    map[string]goal  // places that something leads to, by their keys
}

// goal is a place that something leads to.
type goal struct {
	front bool
	side  int // index
	y     float64
}

// chapterLine is a heading of the outline.
type chapterLine struct {
	number, title string
	level         int
	key           string
}

// LayManual lays a manual out. What could not be shown as it should comes back as
// problems; the document is whole all the same.
func LayManual(content plan.Manual, look Look) (Document, []Problem) {
	look = look.bound()
	for digits := 3; ; digits++ {
		_, common := begin(look, content.Words)
		m := &manual{sheet: common, plan: content, digits: digits, headings: map[string]piece{}, goals: map[string]goal{}}
		m.chapters()
		if len(m.body) < int(math.Pow10(digits)) {
			m.inFront()
			return m.document(), distinct(m.problems)
		}
	}
}

// holes is how far from the bound edge nothing stands: holes for a folder are 6 mm wide
// and 12 mm from the edge (ISO 838), and the punch may slip.
const holes = 12 + 3 + clear

// bound leaves room at the bound edge for the holes of a folder, where type for the
// distance still goes on what is left.
func (l Look) bound() Look {
	wider := l
	wider.Stock.Binding = max(l.Stock.Binding, holes-l.Stock.Border)
	if settled, problems := wider.settled(); len(problems) > 0 || settled.Stock.Name != l.Stock.Name {
		return l
	}
	return wider
}

// chapters lays out everything behind the contents.
func (m *manual) chapters() {
	labels := m.words.Labels
	number := 0
	opens := func(title string) item {
		number++
		key := "chapter/" + strconv.Itoa(number)
		m.outline = append(m.outline, chapterLine{strconv.Itoa(number), title, 0, key})
		return m.opener(strconv.Itoa(number), title)
	}
	if len(m.plan.Messages) > 0 {
		m.where = labels.Safety
		m.lay("", append([]item{opens(labels.Safety)}, m.safety()...), m.runs(labels.Safety, ""), m.again)
	}
	for i, machine := range m.plan.Machines {
		m.where = machine.Title
		opener := opens(machine.Title)
		prefix := m.key(plan.Mention{Machine: i + 1})
		m.lay(prefix, append([]item{opener}, m.figures(machine, i+1, number)...), m.runs(machine.Title, labels.Data), m.again)
		for k, card := range machine.Procedures {
			m.procedure(card, plan.Mention{Machine: i + 1, Procedure: k + 1}, joined(".", strconv.Itoa(number), strconv.Itoa(k+1)))
		}
	}
	if len(m.plan.Pick.Groups) > 0 {
		l := &list{sheet: sheet{setter: m.setter}, plan: m.plan.Pick}
		l.rule()
		items := append([]item{opens(labels.Pick)}, l.legend()...)
		items = append(items, l.warnings()...)
		for _, group := range l.plan.Groups {
			items = append(items, l.group(group)...)
		}
		m.lay("", items, m.runs(labels.Pick, ""), l.again)
	}
	if len(m.plan.Index) > 0 {
		m.where = labels.Index
		m.lay("", append([]item{opens(labels.Index)}, m.index()...), m.runs(labels.Index, ""), m.again)
	}
}

// lay puts items on sides of their own behind those that are there.
func (m *manual) lay(prefix string, items []item, run *running, again func(string) item) {
	frame := frame{s: m.setter, width: m.width, height: m.look.Stock.safe(1).Height, again: again, filled: true, before: len(m.body), run: run}
	sides := frame.share(items)
	for i, side := range sides {
		m.goalsOf(side.Boxes, prefix, goal{side: len(m.body) + i})
		sides[i].Label = strconv.Itoa(len(m.body) + i + 1)
	}
	m.body = append(m.body, sides...)
}

// goalsOf keeps where each box begins; of one that goes on overleaf, where it begins first.
func (m *manual) goalsOf(boxes []Box, prefix string, at goal) {
	for _, box := range boxes {
		key := box.Kind + "/" + box.ID
		if prefix != "" {
			key = prefix + "/" + key
		}
		if box.Kind == "chapter" {
			key = "chapter/" + box.ID
		}
		if _, known := m.goals[key]; !known {
			at.y = box.Place.Y
			m.goals[key] = at
		}
		m.goalsOf(box.Boxes, prefix, at)
	}
}

// key names the box that a mention means.
func (m *manual) key(at plan.Mention) string {
	machine := "machine" + strconv.Itoa(at.Machine)
	procedure := machine + "/procedure" + strconv.Itoa(at.Procedure)
	switch {
	case at.Table != "" && at.Row > 0:
		return machine + "/row/" + at.Table + " " + strconv.Itoa(at.Row)
	case at.Table != "":
		return machine + "/table/" + at.Table
	case at.Procedure == 0:
		return machine
	case at.Step > 0:
		return procedure + "/step/" + strconv.Itoa(at.Step)
	case at.List:
		return procedure + "/heading/" + m.words.Labels.Bring
	}
	return procedure + "/head/"
}

// opener is the band that a chapter begins with.
func (m *manual) opener(number, title string) item {
	stamp := piece{}
	if number != "" {
		stamp = m.stamp(number, "")
	}
	id := number
	if id == "" {
		id = title
	}
	return item{piece: m.titleBand(joined(" · ", m.plan.Shop, m.plan.Title), title, "", stamp).named("chapter", id)}
}

// again is the heading of a side that goes on with a table or a part of the text.
func (m *manual) again(part string) item {
	if heading, known := m.headings[part]; known {
		return item{piece: heading.named("again", part)}
	}
	return m.sheet.again(part)
}

// runs are the heads and feet of a chapter: what it is of at the left, what it is about at
// the right; below, the number of the page at the outer edge.
func (m *manual) runs(of, about string) *running {
	small := m.small()
	head := piece{width: m.width}
	if of == "" {
		return &running{head, func(number int) piece { return m.foot(number, strconv.Itoa(number)) }}
	}
	right := m.line(small.inked(grey), m.width*0.6, about)
	left := m.line(small.with(Bold).inked(slate), m.width-right.width-2*small.size, of)
	high := max(left.height, right.height)
	head.put(left, 0, high-left.height)
	head.put(right, m.width-right.width, high-right.height)
	head.height = high + small.size*0.25
	head.mark(band(0, head.height-0.3, m.width, 0.3, slate))
	return &running{head.named("running", ""), func(number int) piece { return m.foot(number, strconv.Itoa(number)) }}
}

func (m *manual) foot(number int, label string) piece {
	small := m.small()
	out := piece{width: m.width}
	page := m.say(m.text().with(Bold), m.width*0.2, label)
	text := m.line(small.inked(grey), m.width-page.width-2*small.size, joined(" · ", m.plan.Shop, m.plan.Title, m.plan.Date))
	out.mark(band(0, 0, m.width, 0.3, rule))
	high := max(page.height, text.height)
	top := small.size * 0.35
	outer, inner := m.width-page.width, 0.0
	if m.look.Stock.Sides == 2 && number%2 == 0 {
		outer, inner = 0, m.width-text.width
	}
	out.put(text, inner, top+high-text.height)
	out.put(page, outer, top+high-page.height)
	return out.named("foot", label)
}

// safety is every message, with the procedures it stands in, under its signal word.
func (m *manual) safety() []item {
	em := m.size.main
	labels := m.words.Labels
	items := []item{{piece: m.say(m.text(), m.width, labels.SafetyLead).named("lead", ""), above: em * 0.6},
		{piece: m.say(m.text(), m.width, labels.Local).named("lead", "local"), above: em * 0.2}}
	means := map[string]string{"danger": labels.DangerMeans, "warning": labels.WarningMeans, "caution": labels.CautionMeans, "notice": labels.NoticeMeans}
	before := ""
	for _, message := range m.plan.Messages {
		if message.Signal != before {
			items = append(items, item{piece: m.level(message.Caution, means[message.Signal]), above: em * 1.2, dear: costPart})
		}
		body := column(em*0.25, m.caution(message.Caution, m.width), m.standsIn(message.In).at(m.size.text*0.5, 0))
		body.width = m.width
		items = append(items, item{piece: body.named("message", message.Hazard), above: em * 0.75, part: message.Word, stays: message.Signal != before, dear: costTable})
		before = message.Signal
	}
	var numbers []string
	for _, message := range m.plan.Messages {
		numbers = append(numbers, message.Signs...)
	}
	for _, machine := range m.plan.Machines {
		for _, procedure := range machine.Procedures {
			numbers = append(numbers, Signs(procedure)...)
		}
	}
	for i, row := range m.meanings(numbers) {
		if i == 0 {
			items = append(items, item{piece: m.say(m.main().with(Bold).inked(slate), m.width, labels.Signs).named("section", labels.Signs), above: em * 1.2, dear: costPart})
		}
		items = append(items, item{piece: row, above: m.size.text * 0.4, part: labels.Signs, stays: i == 0, dear: costTable})
	}
	return items
}

// level is the heading of the messages of one signal word, and what the word means.
func (m *manual) level(caution plan.Caution, means string) piece {
	word := m.signalPanel(caution, signalOf(caution.Signal))
	pad := m.size.text * 0.6
	text := m.say(m.text().with(Bold), m.width-word.width-pad, means)
	out := piece{width: m.width, height: max(word.height, text.height)}
	look := signalOf(caution.Signal)
	out.mark(Panel{Rectangle{0, (out.height - word.height) / 2, word.width, word.height}, corners(m.size.text * 0.3), Paint{Fill: look.ground}})
	out.put(word, 0, (out.height-word.height)/2)
	out.put(text, word.width+pad, (out.height-text.height)/2)
	out.height += m.size.text * 0.35
	out.mark(band(0, out.height-0.35, m.width, 0.35, slate))
	return out.named("section", caution.Word)
}

// standsIn names procedures with their pages, in two columns where there is room.
func (m *manual) standsIn(at []plan.Mention) piece {
	style := m.small()
	width := m.width - m.size.text
	label := m.say(style.inked(grey), width, m.words.Labels.StandsIn)
	left := label.width + style.size
	columns := 2
	if width-left < 2*20*style.size {
		columns = 1
	}
	if left > width/3 {
		left = 0
	}
	gap := 1.2 * style.size
	each := (width - left - gap*float64(columns-1)) / float64(columns)
	rows := (len(at) + columns - 1) / columns
	var list piece
	for row := range rows {
		var line piece
		for k := range columns {
			i := k*rows + row
			if i >= len(at) {
				continue
			}
			card := m.plan.Machines[at[i].Machine-1].Procedures[at[i].Procedure-1]
			words := m.set(style, each-m.room(style)-gap, []span{{joined(", ", card.Title, card.Variant), Regular, black}})
			words.width = each
			line.put(m.leading(words, m.key(at[i]), style), float64(k)*(each+gap), 0)
		}
		list.put(line, 0, list.height)
	}
	if left == 0 {
		return column(0, label, list)
	}
	label.put(list, left, 0)
	return label
}

// figures is the beginning of a machine's chapter: what it is, and its tables.
func (m *manual) figures(machine plan.Machine, n, number int) []item {
	var items []item
	if facts := m.facts(machine.Facts); facts.height > 0 {
		items = append(items, item{piece: facts.named("facts", "")})
	}
	if machine.Map != nil {
		made, ok := m.places(*machine.Map, m.width, m.look.Stock.safe(1).Height*0.4)
		if ok {
			title := m.say(m.main().with(Bold), m.width, m.words.Labels.Map)
			items = append(append(items, item{piece: title.named("heading", m.words.Labels.Map), above: m.size.main, dear: costPart}), made...)
		} else {
			m.crowded(m.words.Labels.Map, machine.Map.Callouts, m.width)
		}
	}
	for i, table := range machine.Tables {
		if i == 0 {
			key := m.key(plan.Mention{Machine: n, Table: table.Key})
			m.outline = append(m.outline, chapterLine{"", m.words.Labels.Data, 1, key})
		}
		m.outline = append(m.outline, chapterLine{"", table.Title, 2, m.key(plan.Mention{Machine: n, Table: table.Key})})
		items = append(items, m.table(table, strconv.Itoa(number)+" ")...)
	}
	return items
}

// procedure is what the card of a procedure says, on sides of its own.
func (m *manual) procedure(content plan.Card, at plan.Mention, number string) {
	machine := joined(", ", content.Machine, content.Variant)
	c := &card{sheet: sheet{setter: m.setter}, plan: content, above: joined(" · ", number, machine)}
	c.plan.Machine, c.plan.Variant = "", "" // the line above says them
	c.grid = c.rule()
	told := len(m.problems)
	m.outline = append(m.outline, chapterLine{number, joined(", ", content.Title, content.Variant), 1, m.key(at)})
	items := c.items()
	if content.Manual != "" {
		items = slices.Insert(items, 1, c.conditions(m.words.Labels.Manual, []string{content.Manual}, costSafety)...)
	}
	prefix := strings.TrimSuffix(m.key(at), "/head/")
	m.where = "page"
	m.lay(prefix, items, m.runs(machine, joined(" · ", number+" "+content.Title, prefixed(m.words.Labels.Revision, content.Revision))), c.again)
	for i := told; i < len(m.problems); i++ {
		m.problems[i].Where = joined(", ", content.Name, m.problems[i].Where)
	}
}

// room is what is kept for the number of a page.
func (m *manual) room(style kind) float64 {
	return Bold.Width(strings.Repeat("8", m.digits), style.size)
}

// leading makes a line lead to a place, with the page of the place at its right edge.
func (m *manual) leading(line piece, key string, style kind) piece {
	line.mark(pageOf{line.width, style.baseline(), key, style.with(Bold)})
	return line.named("to", key)
}

// pageOf stands for the number of a page until all pages are there; x is its right edge.
type pageOf struct {
	x, y  float64
	key   string
	style kind
}

func (p pageOf) moved(dx, dy float64) Mark {
	p.x += dx
	p.y += dy
	return p
}

// scaled is not asked of what no side holds when it is done.
func (p pageOf) scaled(float64) Mark { return p }

func (p pageOf) extent() (float64, float64) {
	return Text{Y: p.y, Face: p.style.face, Size: p.style.size}.extent()
}

// document puts front and text together, writes the pages' numbers and draws the links.
func (m *manual) document() Document {
	doc := Document{Title: joined(" · ", m.plan.Shop, m.plan.Title), Subject: m.plan.Title, Author: m.plan.Shop, Language: m.words.Language, Date: m.plan.Date,
		Numbering: []Numbering{{Side: 1, Roman: true}, {Side: len(m.front) + 1}}}
	doc.Sides = append(doc.Sides, m.front...)
	doc.Sides = append(doc.Sides, m.body...)
	for i := range doc.Sides {
		side := &doc.Sides[i]
		side.Number, side.Sheet = i+1, i/m.look.Stock.Sides+1
		for k, mark := range side.Marks {
			if page, ok := mark.(pageOf); ok {
				side.Marks[k] = m.numbered(page)
			}
		}
		side.Links = m.links(side.Boxes, nil)
	}
	for _, line := range m.outline {
		if to, ok := m.target(line.key); ok {
			doc.Outline = append(doc.Outline, Entry{Title: joined(" ", line.number, line.title), Level: line.level, To: to})
		}
	}
	return doc
}

func (m *manual) numbered(page pageOf) Text {
	label := ""
	if at, known := m.goals[page.key]; known {
		label = m.label(at)
	}
	style := page.style
	return Text{page.x - style.face.Width(label, style.size), page.y, style.face, style.size, style.ink, label, style.on}
}

func (m *manual) label(at goal) string {
	if at.front {
		return roman(at.side + 1)
	}
	return strconv.Itoa(at.side + 1)
}

// target is where a key leads.
func (m *manual) target(key string) (Target, bool) {
	at, known := m.goals[key]
	side := at.side + 1
	if !at.front {
		side += len(m.front)
	}
	return Target{side, max(0, at.y-m.size.main*0.5)}, known
}

func (m *manual) links(boxes []Box, out []Link) []Link {
	for _, box := range boxes {
		if box.Kind == "to" {
			if to, ok := m.target(box.ID); ok {
				out = append(out, Link{box.Place, to})
			}
		}
		out = m.links(box.Boxes, out)
	}
	return out
}

// roman writes a number as the pages in front are counted.
func roman(n int) string {
	var out strings.Builder
	for _, one := range []struct {
		n    int
		text string
	}{{100, "c"}, {90, "xc"}, {50, "l"}, {40, "xl"}, {10, "x"}, {9, "ix"}, {5, "v"}, {4, "iv"}, {1, "i"}} {
		for ; n >= one.n; n -= one.n {
			out.WriteString(one.text)
		}
	}
	return out.String()
}
