package pages

import (
	"math"
	"slices"
	"strconv"

	"benchleaf/compiler/internal/plan"
)

// axis is a stretch of numbers on a stretch of paper.
type axis struct {
	low, high float64 // numbers
	from, to  float64 // millimetres
	ticks     []float64
	texts     []string
}

func (a axis) at(value float64) float64 {
	return a.from + (a.to-a.from)*(value-a.low)/(a.high-a.low)
}

// holds makes an axis reach as far as a number.
func (a *axis) holds(value float64) {
	a.low, a.high = min(a.low, value), max(a.high, value)
}

// widened leaves a share of the axis blank beyond what it holds, but not across zero.
func (a *axis) widened(below, above float64) {
	span := a.high - a.low
	low, high := a.low-below*span, a.high+above*span
	if a.low >= 0 {
		low = max(low, 0)
	}
	if a.high <= 0 {
		high = min(high, 0)
	}
	a.low, a.high = low, high
}

// round gives an axis ends and ticks that are multiples of 1, 2 or 5 of a power of ten, in
// no more than so many steps (Heckbert, Nice Numbers for Graph Labels, Graphics Gems, 1990).
func (a *axis) round(steps int, written func(string) string) {
	if size := max(math.Abs(a.low), math.Abs(a.high)); a.high-a.low <= size*1e-6 { // all alike
		some := size * 0.05
		if size == 0 {
			some = 1
		}
		a.low, a.high = a.low-some, a.high+some
	}
	step, first, last := 0.0, 0.0, 0.0
	for power := math.Pow(10, math.Floor(math.Log10((a.high-a.low)/float64(steps)))); ; power *= 10 {
		for _, times := range []float64{1, 2, 5} {
			step = times * power
			first, last = math.Floor(a.low/step+1e-6), math.Ceil(a.high/step-1e-6)
			if last-first <= float64(steps) {
				break
			}
		}
		if last-first <= float64(steps) {
			break
		}
	}
	a.low, a.high, a.ticks, a.texts = first*step, last*step, nil, nil
	places := max(0, -int(math.Floor(math.Log10(step)+1e-6)))
	digits := int(math.Ceil(math.Log10(max(math.Abs(a.low), math.Abs(a.high)) / step)))
	long := len(strconv.FormatFloat(a.high, 'f', places, 64)) > 9 || len(strconv.FormatFloat(a.low, 'f', places, 64)) > 9
	for n := first; n <= last; n++ {
		text := strconv.FormatFloat(math.Abs(n*step), 'f', places, 64)
		if long {
			text = strconv.FormatFloat(math.Abs(n*step), 'e', digits, 64)
		}
		if n < 0 {
			text = "-" + text
		}
		a.ticks, a.texts = append(a.ticks, n*step), append(a.texts, written(text))
	}
}

// plot draws the readings of a trend sheet.
type plot struct {
	*trend
	height  float64
	points  []plan.TrendPoint // that are numbers
	band    []plan.TrendBand
	x, y    axis
	body    piece
	frame   Rectangle   // where the axes are
	blocked []Rectangle // where no label may stand
	legend  []piece
}

func finite(figures ...float64) bool {
	return !slices.ContainsFunc(figures, func(f float64) bool { return math.IsNaN(f) || math.IsInf(f, 0) })
}

// limits are the limits there are.
func (p *plot) limits() (out []float64) {
	for _, limit := range []*float64{p.plan.Low, p.plan.High} {
		if limit != nil && finite(*limit) {
			out = append(out, *limit)
		}
	}
	return out
}

// met is the limit that the line meets, and whether it is the upper one; the line itself
// where there is none.
func (p *plot) met() (y float64, upper bool) {
	y = p.plan.Line.A + p.plan.Line.B*p.plan.Meets.X
	low, high := p.plan.Low, p.plan.High
	switch {
	case high != nil && (low == nil || math.Abs(*high-y) <= math.Abs(*low-y)):
		return *high, true
	case low != nil:
		return *low, false
	}
	return y, true
}

// measure finds the axes; false where there is nothing to draw.
func (p *plot) measure() bool {
	for _, point := range p.plan.Points {
		if finite(point.X, point.Y) {
			p.points = append(p.points, point)
		} else {
			p.problem("a reading that is no number is left out of the picture")
		}
	}
	if len(p.points) == 0 {
		return false
	}
	if line := p.plan.Line; line != nil && !finite(line.A, line.B) {
		p.plan.Line = nil
	}
	if meets := p.plan.Meets; p.plan.Line == nil || meets != nil && !finite(meets.X, meets.Early, meets.Late) {
		p.plan.Meets = nil
	}
	for _, at := range p.plan.Band {
		if finite(at.X, at.Low, at.High) {
			p.band = append(p.band, at)
		}
	}
	p.x = axis{low: p.points[0].X, high: p.points[0].X}
	p.y = axis{low: p.points[0].Y, high: p.points[0].Y}
	for _, point := range p.points {
		p.x.holds(point.X)
		p.y.holds(point.Y)
	}
	for _, limit := range p.limits() {
		p.y.holds(limit)
	}
	if meets := p.plan.Meets; meets != nil {
		p.x.holds(meets.X)
		p.x.holds(min(max(meets.Late, meets.X), meets.X+0.4*(meets.X-p.x.low))) // no farther, or the readings are squeezed
		y, _ := p.met()
		p.y.holds(y)
	}
	style := p.small()
	em := style.size
	top, bottom := style.line()+em*0.7, 2*style.line()+em*0.55
	room := max(p.height-top-bottom, 6*em)
	p.height = top + room + bottom
	p.x.widened(0.02, 0.02)
	p.y.widened(2.8*em/room, 2.8*em/room) // for a label beyond a limit
	p.y.round(max(2, int(room/(style.line()*2.2))), p.written)
	left := 0.0
	for _, text := range p.y.texts {
		left = max(left, style.face.Width(text, em))
	}
	left = min(left, p.width/3) + em*0.6
	for steps, exact := 10, p.x; ; steps-- {
		p.x = exact
		p.x.round(steps, p.written)
		widest := 0.0
		for _, text := range p.x.texts {
			widest = max(widest, style.face.Width(text, em))
		}
		right := max(em*0.5, widest/2)
		left := max(left, widest/2)
		p.frame = Rectangle{left, top, p.width - left - right, room}
		if steps == 2 || widest+em <= p.frame.Width/float64(len(p.x.ticks)-1) {
			break
		}
	}
	p.x.from, p.x.to = p.frame.X, p.frame.Right()
	p.y.from, p.y.to = p.frame.Bottom(), p.frame.Y
	return true
}

func (p *plot) at(x, y float64) Point { return Point{p.x.at(x), p.y.at(y)} }

// within is the part of a line that lies in the frame; false where none does
// (Liang and Barsky, A New Concept and Method for Line Clipping, 1984).
func (p *plot) within(from, to Point) (Point, Point, bool) {
	begin, end := 0.0, 1.0
	for _, edge := range [][2]float64{
		{from.X - to.X, from.X - p.frame.X}, {to.X - from.X, p.frame.Right() - from.X},
		{from.Y - to.Y, from.Y - p.frame.Y}, {to.Y - from.Y, p.frame.Bottom() - from.Y},
	} {
		switch way, room := edge[0], edge[1]; {
		case way == 0 && room < 0:
			return from, to, false
		case way < 0:
			begin = max(begin, room/way)
		case way > 0:
			end = min(end, room/way)
		}
	}
	return between(from, to, begin), between(from, to, end), begin < end
}

// stroke draws the part of a line that lies in the frame, and keeps labels off it.
func (p *plot) stroke(ink Ink, line float64, from, to Point) {
	from, to, ok := p.within(from, to)
	if !ok {
		return
	}
	p.body.mark(polyline(ink, line, from, to))
	const apart = 0.5 // ems between the places kept
	em := p.size.small
	n := int(math.Hypot(to.X-from.X, to.Y-from.Y)/(apart*em)) + 1
	for i := range n + 1 {
		at := between(from, to, float64(i)/float64(n))
		p.blocked = append(p.blocked, Rectangle{at.X - line/2, at.Y - line/2, line, line})
	}
}

// dashed draws a line in dashes.
func (p *plot) dashed(line, dash, gap float64, from, to Point) {
	p.body.mark(dashes(line, dash, gap, from, to)...)
	p.blocked = append(p.blocked, Rectangle{min(from.X, to.X) - line/2, min(from.Y, to.Y) - line/2, math.Abs(to.X-from.X) + line, math.Abs(to.Y-from.Y) + line})
}

func dashes(line, dash, gap float64, from, to Point) (out []Mark) {
	long := math.Hypot(to.X-from.X, to.Y-from.Y)
	for at := 0.0; at < long; at += dash + gap {
		out = append(out, polyline(black, line, between(from, to, at/long), between(from, to, min(1, (at+dash)/long))))
	}
	return out
}

func (p *plot) draw() piece {
	em := p.size.small
	p.body = piece{width: p.width, height: p.height}
	p.legend = append(p.legend, p.key(p.disc(Point{em * 0.7, em * 0.6}, false), p.words.Labels.TrendReading))
	if slices.ContainsFunc(p.points, func(point plan.TrendPoint) bool { return point.Before }) {
		p.legend = append(p.legend, p.key(p.disc(Point{em * 0.7, em * 0.6}, true), p.words.Labels.TrendBefore))
	}
	if p.outside() {
		p.legend = append(p.legend, p.key(p.square(Point{em * 0.7, em * 0.6}, false), p.words.Labels.TrendOutside))
	}
	if p.plan.Line != nil {
		p.legend = append(p.legend, p.key(polyline(black, em*0.16, Point{0, em * 0.6}, Point{em * 1.4, em * 0.6}), p.words.Labels.TrendLine))
	}
	p.expectation()
	p.axes()
	p.fitted()
	for _, limit := range p.limits() {
		p.dashed(em*0.14, em*0.9, em*0.45, Point{p.frame.X, p.y.at(limit)}, Point{p.frame.Right(), p.y.at(limit)})
	}
	tip := p.meeting()
	for _, point := range p.points {
		at, mark := p.at(point.X, point.Y), p.disc
		if point.Outside {
			mark = p.square
		}
		p.body.mark(mark(at, point.Before))
		p.blocked = append(p.blocked, Rectangle{at.X - em*0.55, at.Y - em*0.55, em * 1.1, em * 1.1})
	}
	if tip != nil {
		p.labelMeeting(*tip)
	}
	p.labelLimits()
	p.labelOutside()
	return p.body
}

func (p *plot) disc(at Point, before bool) Mark {
	return circle(at, p.size.small*0.42, p.dot(slate, before))
}

// dot is filled, or hollow where the line does not count it.
func (p *plot) dot(ink Ink, before bool) Paint {
	if before {
		return Paint{white, ink, p.size.small * 0.14}
	}
	return Paint{ink, white, p.size.small * 0.08}
}

func (p *plot) square(at Point, before bool) Mark {
	half := p.size.small * 0.5
	return polygon(p.dot(black, before), Point{at.X - half, at.Y - half}, Point{at.X + half, at.Y - half}, Point{at.X + half, at.Y + half}, Point{at.X - half, at.Y + half})
}

// key is a mark of the plot, on an em and a fifth, with what it means.
func (p *plot) key(mark Mark, text string) piece {
	style := p.small()
	em := style.size
	words := p.say(style, p.width-2.1*em, text)
	out := piece{}
	out.mark(mark.moved(em*0.2, style.line()/2-em*0.6))
	out.put(words, em*2.1, 0)
	return out.named("key", text)
}

// axes draws the frame, the ticks with their figures, and what the axes are.
func (p *plot) axes() {
	style := p.small()
	em := style.size
	for i, tick := range p.y.ticks {
		y := p.y.at(tick)
		p.body.mark(polyline(rule, 0.2, Point{p.frame.X, y}, Point{p.frame.Right(), y}))
		text := p.line(style, p.width/3, p.y.texts[i])
		p.body.put(text, p.frame.X-em*0.4-text.width, y-style.baseline()+style.face.CapHeight(em)/2)
	}
	for i, tick := range p.x.ticks {
		x := p.x.at(tick)
		p.body.mark(polyline(rule, 0.2, Point{x, p.frame.Y}, Point{x, p.frame.Bottom()}))
		p.body.mark(polyline(black, 0.3, Point{x, p.frame.Bottom()}, Point{x, p.frame.Bottom() + em*0.3}))
		text := p.line(style, p.width/3, p.x.texts[i])
		p.body.put(text, x-text.width/2, p.frame.Bottom()+em*0.35)
	}
	p.body.mark(polyline(black, 0.3, Point{p.frame.X, p.frame.Y}, Point{p.frame.X, p.frame.Bottom()}, Point{p.frame.Right(), p.frame.Bottom()}))
	p.body.put(p.line(style.with(Bold), p.width, p.unit(p.plan.What, ", ")), 0, 0)
	below := p.line(style.with(Bold), p.width, p.plan.XTitle)
	p.body.put(below, p.width-below.width, p.frame.Bottom()+em*0.4+style.line())
}

// expectation is the ground that holds further readings, with its edges.
func (p *plot) expectation() {
	if len(p.band) < 2 || p.band[0].X >= p.band[len(p.band)-1].X {
		return
	}
	const parts = 120
	from, to := max(p.band[0].X, p.x.low), min(p.band[len(p.band)-1].X, p.x.high)
	var upper, lower []Point
	for i := range parts + 1 {
		x := from + (to-from)*float64(i)/parts
		low, high := p.expected(x)
		if from >= to {
			return
		}
		upper = append(upper, p.at(x, min(max(high, p.y.low), p.y.high)))
		lower = append(lower, p.at(x, min(max(low, p.y.low), p.y.high)))
	}
	slices.Reverse(lower)
	p.body.mark(polygon(Paint{Fill: pale}, append(upper, lower...)...))
	for i, next := range p.band[1:] {
		last := p.band[i]
		for _, y := range [][2]float64{{last.Low, next.Low}, {last.High, next.High}} {
			if from, to, ok := p.within(p.at(last.X, y[0]), p.at(next.X, y[1])); ok {
				p.body.mark(polyline(grey, 0.15, from, to))
			}
		}
	}
	em := p.size.small
	p.legend = append(p.legend, p.key(Panel{Rectangle{0, em * 0.15, em * 1.4, em * 0.9}, corners(0), Paint{pale, grey, 0.15}}, p.words.Labels.TrendBand))
}

// pale is the ground of what is expected.
const pale = InkOn | 0xDCE1E5

// expected is the band at an x, straight between the places that are given.
func (p *plot) expected(x float64) (low, high float64) {
	i, _ := slices.BinarySearchFunc(p.band, x, func(at plan.TrendBand, x float64) int {
		if at.X < x {
			return -1
		}
		return 1
	})
	if i == 0 || i == len(p.band) {
		at := p.band[min(i, len(p.band)-1)]
		return at.Low, at.High
	}
	a, b := p.band[i-1], p.band[i]
	share := (x - a.X) / (b.X - a.X)
	return a.Low + (b.Low-a.Low)*share, a.High + (b.High-a.High)*share
}

// fitted is the line through the readings: bold as far as they go, thin beyond.
func (p *plot) fitted() {
	if p.plan.Line == nil {
		return
	}
	em := p.size.small
	counts := slices.DeleteFunc(slices.Clone(p.points), func(point plan.TrendPoint) bool { return point.Before })
	if len(counts) == 0 {
		return
	}
	first, last := counts[0].X, counts[0].X
	for _, point := range counts {
		first, last = min(first, point.X), max(last, point.X)
	}
	end := last
	if p.plan.Meets != nil {
		end = max(end, p.plan.Meets.X)
	}
	on := func(x float64) Point { return p.at(x, p.plan.Line.A+p.plan.Line.B*x) }
	p.stroke(black, em*0.16, on(first), on(last))
	if end > last {
		p.stroke(black, em*0.08, on(last), on(end))
	}
}

// meeting marks where the line meets the limit: a triangle with its tip there, a line down
// to the axis, and a bar as long as that is uncertain.
func (p *plot) meeting() *Point {
	meets := p.plan.Meets
	if meets == nil {
		return nil
	}
	em := p.size.small
	y, upper := p.met()
	tip := p.at(meets.X, y)
	p.dashed(em*0.09, em*0.25, em*0.3, tip, Point{tip.X, p.frame.Bottom()})
	ends := [2]float64{min(meets.Early, meets.X), max(meets.Late, meets.X)}
	if from, to, ok := p.within(p.at(ends[0], y), p.at(ends[1], y)); ok {
		p.body.mark(polyline(black, em*0.3, from, to))
		for i, at := range []Point{from, to} {
			if whole := p.at(ends[i], y); math.Abs(whole.X-at.X) < tiny { // its end is in the picture
				p.body.mark(polyline(black, em*0.16, Point{at.X, max(p.frame.Y, at.Y-em*0.4)}, Point{at.X, min(p.frame.Bottom(), at.Y+em*0.4)}))
			}
		}
		p.blocked = append(p.blocked, Rectangle{from.X - em*0.1, from.Y - em*0.4, to.X - from.X + em*0.2, em * 0.8})
	}
	p.body.mark(p.triangle(tip, upper))
	base := tip.Y - em*1.1
	if !upper {
		base = tip.Y
	}
	p.blocked = append(p.blocked, Rectangle{tip.X - em*0.65, base, em * 1.3, em * 1.1})
	return &tip
}

// triangle has its tip at a place, and lies above it or below.
func (p *plot) triangle(tip Point, above bool) Mark {
	em := p.size.small
	base := tip.Y - em*1.1
	if !above {
		base = tip.Y + em*1.1
	}
	return polygon(Paint{black, white, em * 0.08}, tip, Point{tip.X - em*0.65, base}, Point{tip.X + em*0.65, base})
}

// label sets words at the first of some places, of their upper left corner, where nothing
// else is drawn; false where there is none.
func (p *plot) label(words piece, places []Point) bool {
	pad := p.size.small * 0.15
	for _, at := range places {
		place := Rectangle{at.X - pad, at.Y, words.width + 2*pad, words.height}
		inside := place.X >= p.frame.X+pad && place.Right() <= p.frame.Right()-pad && place.Y >= p.frame.Y+pad && place.Bottom() <= p.frame.Bottom()-pad
		free := !slices.ContainsFunc(p.blocked, func(other Rectangle) bool {
			return place.X < other.Right() && other.X < place.Right() && place.Y < other.Bottom() && other.Y < place.Bottom()
		})
		if inside && free {
			made := piece{width: place.Width, height: place.Height}
			made.mark(Panel{Rectangle{0, 0, made.width, made.height}, corners(pad), Paint{Fill: white}})
			made.put(words, pad, 0)
			p.body.put(made.named("label", ""), place.X, place.Y)
			p.blocked = append(p.blocked, place)
			return true
		}
	}
	return false
}

// labelMeeting says where the line meets the limit, beside the triangle or else below the plot.
func (p *plot) labelMeeting(tip Point) {
	em := p.size.small
	_, upper := p.met()
	key := p.words.Labels.TrendMeets
	if words := p.say(p.text().with(Bold), p.frame.Width*0.45, p.plan.Meets.Text); p.plan.Meets.Text != "" {
		var places []Point
		for _, off := range []float64{0.25, 0.6, 1.2, 1.8, 2.4, 3} {
			above, below := tip.Y-em*(1.1+off)-words.height, tip.Y+em*off
			if !upper {
				above, below = tip.Y+em*(1.1+off), tip.Y-em*off-words.height
			}
			for _, y := range []float64{above, below} {
				for _, share := range []float64{0.5, 0.75, 0.25, 1, 0} {
					places = append(places, Point{tip.X - words.width*share + em*(1-2*share)*0.4, y})
				}
			}
			side := tip.Y - em*0.55 - words.height/2
			places = append(places, Point{tip.X - words.width - em*(0.8+off), side}, Point{tip.X + em*(0.8+off), side})
		}
		if !p.label(words, places) {
			key += p.words.Labels.Colon + " " + p.plan.Meets.Text
		}
	}
	p.legend = append(p.legend, p.key(p.triangle(Point{em * 0.7, em * 1.15}, true), key))
}

// labelLimits writes the figure of each limit on it, on the side where no reading should be.
func (p *plot) labelLimits() {
	style, em := p.text().with(Bold), p.size.small
	for _, limit := range []struct {
		value *float64
		word  string
	}{{p.plan.High, p.words.Amounts.AtMost}, {p.plan.Low, p.words.Amounts.AtLeast}} {
		if limit.value == nil || !finite(*limit.value) {
			continue
		}
		text := p.unit(limit.word+" "+p.figure(*limit.value), "\u00a0")
		words := p.say(style, p.frame.Width, text)
		y := p.y.at(*limit.value)
		sides := []float64{y - words.height - em*0.1, y + em*0.1}
		if limit.value == p.plan.Low {
			slices.Reverse(sides)
		}
		var places []Point
		for _, y := range sides {
			for x := p.frame.X + em*0.4; x < p.frame.Right(); x += em * 2 {
				places = append(places, Point{x, y})
			}
		}
		if !p.label(words, places) {
			var sign piece
			sign.mark(dashes(em*0.14, em*0.55, em*0.3, Point{0, p.small().line() / 2}, Point{em * 1.4, p.small().line() / 2})...)
			sign.put(p.say(p.small(), p.width-2.1*em, p.words.Labels.Limit+p.words.Labels.Colon+" "+text), em*2.1, 0)
			p.legend = append(p.legend, sign.named("key", text))
		}
	}
}

// labelOutside writes beside the latest readings outside their limit that they are.
func (p *plot) labelOutside() {
	const most = 3
	em := p.size.small
	words := p.say(p.small().with(Bold), p.frame.Width, p.words.Labels.TrendOutside)
	said := 0
	for _, point := range p.points {
		if !point.Outside || said == most {
			continue
		}
		at := p.at(point.X, point.Y)
		if p.label(words, []Point{
			{at.X + em*0.9, at.Y - words.height/2}, {at.X - em*0.9 - words.width, at.Y - words.height/2},
			{at.X - words.width/2, at.Y - em*0.6 - words.height}, {at.X - words.width/2, at.Y + em*0.6},
		}) {
			said++
		}
	}
}
