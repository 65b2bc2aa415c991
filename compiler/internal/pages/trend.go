package pages

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/plan"
)

// trend lays one trend sheet out.
type trend struct {
	sheet
	plan   plan.Trend
	widths []float64  // columns of the table
	parts  [2]float64 // where the points of the figures stand in the second and third column
}

// Least and greatest share of a side that the picture of the readings takes, and how high it
// is at most for its width.
const (
	chartLeast = 0.3
	chartMost  = 0.6
	chartShape = 0.75
)

// LayTrend lays a trend sheet out. What could not be shown as it should comes back as
// problems; the document is whole all the same.
func LayTrend(content plan.Trend, look Look) (Document, []Problem) {
	look, common := begin(look, content.Words)
	t := &trend{sheet: common, plan: content}
	labels := content.Words.Labels
	t.plan.Points = slices.Clone(content.Points)
	slices.SortStableFunc(t.plan.Points, func(a, b plan.TrendPoint) int { // newest first
		return cmp.Or(cmp.Compare(b.Day, a.Day), cmp.Compare(b.X, a.X))
	})
	items := []item{{piece: t.head()}}
	if content.Verdict != "" {
		items = append(items, item{piece: t.verdict(), above: t.size.main * 0.5, stays: true})
	}
	rows := t.table()
	frame := frame{s: t.setter, width: t.width, height: look.Stock.safe(1).Height, again: t.onwards, what: labels.Trend, end: labels.EndOfSheet, filled: true,
		laws: []string{labels.Trend}, who: joined(" · ", content.Machine, content.What, content.Date)}
	document := Document{Title: content.What, Subject: labels.Trend, Author: content.Shop, Language: content.Words.Language, Date: content.Date}
	document.Sides = frame.share(slices.Concat(items, t.chart(chartLeast), rows))
	for share := chartMost; share > chartLeast; share -= 0.02 { // as large as costs no side
		if sides := frame.share(slices.Concat(items, t.chart(share), rows)); len(sides) <= len(document.Sides) {
			document.Sides = sides
			break
		}
	}
	return document, distinct(t.problems)
}

func (t *trend) head() piece {
	labels := t.words.Labels
	t.where = "head"
	stamp := piece{}
	if t.plan.Date != "" {
		stamp = t.stamp(t.plan.Date, labels.Date)
	}
	return t.titleBand(joined(" · ", t.plan.Shop, labels.Trend), t.plan.What, t.plan.Machine, stamp).named("head", "")
}

// verdict is what the readings say, in a frame.
func (t *trend) verdict() piece {
	em := t.size.main
	pad, line := em*0.5, em*0.08
	t.where = "verdict"
	words := t.say(t.main().with(Bold), t.width-2*pad, t.plan.Verdict)
	out := piece{width: t.width, height: words.height + 1.4*pad}
	out.mark(Panel{Rectangle{line / 2, line / 2, t.width - line, out.height - line}, corners(em * 0.3), Paint{Stroke: black, Line: line}})
	out.put(words, pad, 0.7*pad)
	return out.named("verdict", "")
}

// figure is a number as it was read, or with six digits where it was worked out.
func (t *trend) figure(value float64) string {
	text := strconv.FormatFloat(value, 'f', -1, 64)
	if len(text) > 9 {
		text = strconv.FormatFloat(value, 'g', 6, 64)
	}
	return t.written(text)
}

// written gives a number the marks of the language.
func (t *trend) written(text string) string {
	if t.words.Amounts.Comma {
		text = strings.ReplaceAll(text, ".", ",")
	}
	text = strings.NewReplacer("e+0", "e", "e+", "e", "e-0", "e-").Replace(text)
	return strings.ReplaceAll(text, "-", "−")
}

// unit is a text with the unit of the readings behind it.
func (t *trend) unit(text, mark string) string {
	if t.plan.Unit == "" {
		return text
	}
	return text + mark + t.plan.Unit
}

// onwards is the heading of a side that goes on, with the headings of the table again.
func (t *trend) onwards(part string) item {
	out := t.again(part).piece
	if columns := t.columns(); out.height+columns.height < t.look.Stock.safe(1).Height/3 { // or the rows would have no room
		out.put(columns, 0, out.height)
	}
	return item{piece: out.named("again", part)}
}

func (t *trend) heads() []string {
	out := []string{t.words.Labels.Date, t.plan.XTitle, cmp.Or(t.plan.Unit, t.plan.What)}
	if t.outside() {
		out = append(out, "")
	}
	return out
}

// outside says whether any reading is outside its limit.
func (t *trend) outside() bool {
	return slices.ContainsFunc(t.plan.Points, func(point plan.TrendPoint) bool { return point.Outside })
}

func (t *trend) cells(point plan.TrendPoint) []string {
	out := []string{point.Day, t.figure(point.X), t.figure(point.Y)}
	switch {
	case point.Outside:
		out = append(out, "■\u00a0"+t.words.Labels.TrendOutside)
	case t.outside():
		out = append(out, "")
	}
	return out
}

// table is every reading, the newest first.
func (t *trend) table() []item {
	labels, em := t.words.Labels, t.size.main
	t.where = labels.TrendReadings
	items := []item{{piece: t.bandOf(labels.TrendReadings, strconv.Itoa(len(t.plan.Points))).named("section", labels.TrendReadings), above: em * 0.8, dear: costPart}}
	if len(t.plan.Points) == 0 {
		none := t.say(t.text(), t.column, labels.NoFindings).at(t.margin, 0)
		return append(items, item{piece: none.named("none", ""), above: em * 0.3, stays: true})
	}
	rows := make([]plan.Row, len(t.plan.Points))
	for i, point := range t.plan.Points {
		rows[i].Cells = t.cells(point)
	}
	t.widths = t.columnsOf(t.width, t.heads(), rows)
	for column := range t.parts { // figures stand with their points below each other
		before, behind := 0.0, 0.0
		for _, row := range rows {
			whole, part := t.parted(row.Cells[column+1])
			before, behind = max(before, whole), max(behind, part)
		}
		t.parts[column] = min(before+max(0, t.widths[column+1]-before-behind)*0.3, t.widths[column+1]-behind)
	}
	items = append(items, item{piece: t.columns().named("columns", ""), stays: true})
	for i, row := range rows {
		made := t.row(row.Cells, i%2 == 1)
		items = append(items, item{piece: made.named("row", strconv.Itoa(i+1)), part: labels.TrendReadings, stays: i == 0, dear: costTable})
	}
	keepTogether(items[2:])
	return items
}

// parted is how wide a figure is before its point and from there on.
func (t *trend) parted(text string) (whole, part float64) {
	at := strings.IndexAny(text, ".,e")
	if at < 0 {
		at = len(text)
	}
	return t.wideAs(t.text(), text[:at]), Regular.Width(text[at:], t.size.text)
}

func (t *trend) columns() piece {
	style := t.small().inked(grey)
	out := piece{width: t.width}
	x := 0.0
	for i, text := range t.heads() {
		out.put(t.say(style, t.widths[i]-t.size.text*0.6, text), x+t.size.text*0.3, t.size.text*0.2)
		x += t.widths[i]
	}
	out.height += t.size.text * 0.15
	out.mark(band(0, out.height-0.3, t.width, 0.3, black))
	return out
}

func (t *trend) row(cells []string, shaded bool) piece {
	em, ground := t.size.text, white
	if shaded {
		ground = tint
	}
	style := t.text().lying(ground)
	var texts []piece
	tallest, x := 0.0, 0.0
	for i, text := range cells {
		face := Regular
		if i == 0 {
			face = Bold
		}
		texts = append(texts, t.say(style.with(face), t.widths[i]-em*0.6, text))
		tallest = max(tallest, texts[i].height)
	}
	out := piece{width: t.width, height: tallest + em*0.2}
	if shaded {
		out.mark(band(0, 0, t.width, out.height, tint))
	}
	for i, text := range texts {
		left := x + em*0.3
		if i == 1 || i == 2 {
			whole, _ := t.parted(cells[i])
			if text.width <= t.widths[i] {
				left = min(max(x, x+t.parts[i-1]-whole), x+t.widths[i]-text.width)
			}
		}
		out.put(text, left, em*0.1)
		x += t.widths[i]
	}
	return out
}

// chart is the picture of the readings, as high as a share of a side, and below it what its
// marks mean; nothing where there are no readings.
func (t *trend) chart(share float64) []item {
	t.where = t.words.Labels.Trend
	p := plot{trend: t, height: min(t.look.Stock.safe(1).Height*share, t.width*chartShape)}
	if !p.measure() {
		return nil
	}
	drawn := p.draw()
	return []item{
		{piece: drawn.named("plot", ""), above: t.size.main * 0.7, dear: costStage},
		{piece: flow(t.width, t.size.small*1.3, p.legend).named("legend", ""), above: t.size.small * 0.5, stays: true},
	}
}
