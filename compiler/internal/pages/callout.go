package pages

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"benchleaf/compiler/internal/plan"
)

// pin is a numbered point on a drawing, in the drawing's own millimetres, and the disc
// with its number above or below the drawing.
type pin struct {
	number int
	placed bool   // it is that of a thing on the map of its machine
	marks  []bool // intervals of a lubrication point, as a dial round the disc
	at     Point
	x      float64 // of the disc's middle
	above  bool
}

// discSize is the room a disc takes, in ems of the small type; a dial is drawn round it.
const (
	discSize = 1.9
	dialSize = 2.9
	pinPitch = 1.08 // from disc to disc, in discs
)

func (s *setter) disc(marks []bool) float64 {
	if len(marks) > 0 {
		return dialSize * s.size.small
	}
	return discSize * s.size.small
}

// pinned sets discs with the numbers of points above and below a drawing, a line from each
// to its point; above says whether the line goes up. Lines of one side never cross. It is false where there is no room for all
// the discs.
func (s *setter) pinned(body piece, width float64, callouts []plan.Callout, at func(plan.Spot) Point, above func(Point) bool) (piece, bool) {
	shift := (width - body.width) / 2
	if len(callouts) == 0 {
		return body.at(shift, 0), true
	}
	var pins []pin
	size := 0.0
	for _, one := range callouts {
		point := at(one.Spot)
		up := above(point)
		point.X += shift
		pins = append(pins, pin{number: one.Number, placed: one.Placed, marks: one.Marks, at: point, above: up})
		size = max(size, s.disc(one.Marks))
	}
	pitch := size * pinPitch
	most := int((width-size)/pitch) + 1
	if len(pins) > 2*most {
		return piece{}, false
	}
	share(pins, body.height, most)
	out := piece{width: width}
	reach := size * 0.55 // between the discs and the drawing, so that lines can spread
	top, low := 0.0, 0.0
	for _, above := range []bool{true, false} {
		var side []*pin
		for i := range pins {
			if pins[i].above == above {
				side = append(side, &pins[i])
			}
		}
		if len(side) == 0 {
			continue
		}
		middle := -reach - size/2
		if above {
			top = size + reach
		} else {
			low = size + reach
			middle = body.height + reach + size/2
		}
		spread(side, middle, size/2, width-size/2, pitch)
	}
	out.put(body, shift, top)
	out.height = top + body.height + low
	var lines, discs []Mark
	line := max(0.22, s.size.small*0.07)
	for _, one := range pins {
		y, edge := out.height-size/2, out.height-size
		if one.above {
			y, edge = size/2, size
		}
		dot := s.size.small * 0.24
		to := Point{min(max(one.at.X, dot), width-dot), one.at.Y + top}
		halo := polyline(white, line*4, Point{one.x, edge}, to)
		lines = append(lines, halo, polyline(black, line, Point{one.x, y}, to))
		discs = append(discs, circle(to, dot, Paint{black, white, line * 1.5}))
	}
	out.mark(lines...)
	out.mark(discs...)
	for _, one := range pins {
		y := out.height - size
		if one.above {
			y = 0
		}
		number := s.numbered(one.number, one.placed, one.marks)
		out.put(number, one.x-number.width/2, y+(size-number.height)/2)
	}
	return out, true
}

// crowded tells that so many numbers have no room round something that is width wide, and
// which stock takes them.
func (s *setter) crowded(what string, callouts []plan.Callout, width float64) {
	size := 0.0
	for _, one := range callouts {
		size = max(size, s.disc(one.Marks))
	}
	need := size + float64((len(callouts)+1)/2-1)*size*pinPitch
	better := "no stock takes so many"
	if larger, ok := forWidth(need+s.look.Stock.safe(1).Width-width, s.look.DistanceMM); ok {
		better = fmt.Sprintf("--stock %s takes it", larger.Name)
	}
	s.problem("%s has %d numbers, which have no room round it on this stock, so it is left out; %s", what, len(callouts), better)
}

// share moves pins that lie nearest the middle to the other side, where one side has too many.
func share(pins []pin, height float64, most int) {
	for _, above := range []bool{true, false} {
		var side []int
		for i, one := range pins {
			if one.above == above {
				side = append(side, i)
			}
		}
		slices.SortStableFunc(side, func(a, b int) int {
			near := func(i int) float64 { return math.Abs(pins[i].at.Y - height/2) }
			return int(math.Copysign(1, near(a)-near(b)))
		})
		for n := len(side); n > most; n-- {
			pins[side[len(side)-n]].above = !above
		}
	}
}

// spread puts the discs of one side, whose middles stand at a height y, as near above or
// below their points as they go, from low to high and no nearer to each other than pitch,
// and then lets no lines cross.
func spread(side []*pin, y, low, high, pitch float64) {
	slices.SortStableFunc(side, func(a, b *pin) int {
		switch {
		case a.at.X < b.at.X:
			return -1
		case a.at.X > b.at.X:
			return 1
		}
		return a.number - b.number
	})
	want := make([]float64, len(side))
	for i, one := range side {
		want[i] = one.at.X
	}
	for i, x := range spaced(want, low, high, pitch) {
		side[i].x = x
	}
	// Two lines that cross are shorter in sum when they change their discs, so this ends.
	for crossed := true; crossed; {
		crossed = false
		for i := range side {
			for k := i + 1; k < len(side); k++ {
				if cross(side[i], side[k], y) {
					side[i].x, side[k].x = side[k].x, side[i].x
					crossed = true
				}
			}
		}
	}
}

// cross reports whether the lines of two pins cross, whose discs stand at a height y.
func cross(a, b *pin, y float64) bool {
	side := func(p, q, r Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	da, db := Point{a.x, y}, Point{b.x, y}
	return side(da, a.at, db)*side(da, a.at, b.at) < -tiny && side(db, b.at, da)*side(db, b.at, a.at) < -tiny
}

// spaced moves places in rising order as little as possible, by the sum of squares, so that
// they lie between low and high and no nearer than pitch (isotonic regression: pools of
// adjacent violators).
func spaced(want []float64, low, high, pitch float64) []float64 {
	type pool struct {
		sum float64
		n   int
	}
	var pools []pool
	for i, x := range want {
		pools = append(pools, pool{x - float64(i)*pitch, 1})
		for n := len(pools); n > 1 && pools[n-2].sum/float64(pools[n-2].n) > pools[n-1].sum/float64(pools[n-1].n); n-- {
			pools[n-2] = pool{pools[n-2].sum + pools[n-1].sum, pools[n-2].n + pools[n-1].n}
			pools = pools[:n-1]
		}
	}
	var out []float64
	for _, p := range pools {
		for range p.n {
			i := len(out)
			x := min(max(p.sum/float64(p.n), low), high-float64(len(want)-1)*pitch)
			out = append(out, x+float64(i)*pitch)
		}
	}
	return out
}

// numbered is a disc with a number, and round it the dial of its intervals. The number of a
// thing on the map of its machine stands white on dark, in a square where there is no dial,
// so that it is the same to the eye wherever it is met and no other number is taken for it.
func (s *setter) numbered(number int, placed bool, marks []bool) piece {
	size := s.disc(marks)
	out := piece{width: size, height: size}
	line := s.size.small * 0.1
	disc := discSize * s.size.small
	if len(marks) > 0 {
		out.mark(dial(Point{size / 2, size / 2}, size/2, disc/2, marks)...)
		disc -= 2 * line
	}
	ground, ink, round := white, black, 0.5
	if placed {
		ground, ink = slate, white
		if len(marks) == 0 {
			round, disc = 0.22, disc*0.94
		}
	}
	edge := (size - disc) / 2
	out.mark(Panel{Rectangle{edge + line/2, edge + line/2, disc - line, disc - line}, corners((disc - line) * round), Paint{ground, black, line}})
	style := s.small().with(Bold).inked(ink).lying(ground)
	text := s.say(style, 2*size, strconv.Itoa(number))
	out.put(text, (size-text.width)/2, size/2-style.baseline()+style.face.CapHeight(style.size)/2)
	return out.named("number", strconv.Itoa(number))
}

// dial is a ring with a part for each interval, clockwise from the top; the parts that are
// marked are dark.
func dial(middle Point, outer, inner float64, marks []bool) []Mark {
	var out []Mark
	turn := 2 * math.Pi / float64(len(marks))
	gap := 0.1
	if len(marks) == 1 {
		gap = 0
	}
	line := (outer - inner) * 0.12
	for i, marked := range marks {
		paint := Paint{white, grey, line}
		if marked {
			paint = Paint{black, black, line}
		}
		begin := float64(i)*turn - math.Pi/2 + gap/2
		out = append(out, sector(middle, inner+line, outer-line, begin, begin+turn-gap, paint))
	}
	return out
}

// sector is a part of a ring between two radii and two angles, clockwise from the right.
func sector(middle Point, inner, outer, begin, end float64, paint Paint) Path {
	at := func(r, angle float64) Point { return Point{middle.X + r*math.Cos(angle), middle.Y + r*math.Sin(angle)} }
	path := Path{From: at(outer, begin), Closed: true, Paint: paint}
	path.Steps = append(path.Steps, arc(middle, outer, begin, end)...)
	path.Steps = append(path.Steps, Segment{To: at(inner, end)})
	path.Steps = append(path.Steps, arc(middle, inner, end, begin)...)
	return path
}

// arc goes round a middle from one angle to another, in curves of at most a quarter turn.
func arc(middle Point, r, begin, end float64) []Segment {
	n := int(math.Ceil(math.Abs(end-begin)/(math.Pi/2) - tiny))
	step := (end - begin) / float64(max(1, n))
	arm := r * 4 / 3 * math.Tan(step/4)
	var out []Segment
	for i := range max(1, n) {
		a, b := begin+float64(i)*step, begin+float64(i+1)*step
		from := Point{middle.X + r*math.Cos(a), middle.Y + r*math.Sin(a)}
		to := Point{middle.X + r*math.Cos(b), middle.Y + r*math.Sin(b)}
		out = append(out, Segment{true, Point{from.X - arm*math.Sin(a), from.Y + arm*math.Cos(a)}, Point{to.X + arm*math.Sin(b), to.Y - arm*math.Cos(b)}, to})
	}
	return out
}

// legend names the numbers of call-outs, row by row, in columns where there is room.
func (s *setter) legend(width float64, callouts []plan.Callout) []piece {
	style := s.small()
	gap := style.size * 1.2
	columns := 1
	for columns < 3 && (width-gap*float64(columns))/float64(columns+1) > 19*style.size {
		columns++
	}
	each := (width - gap*float64(columns-1)) / float64(columns)
	var named []plan.Callout
	for _, one := range callouts {
		if one.Name != "" {
			named = append(named, one)
		}
	}
	var out []piece
	for row := range slices.Chunk(named, columns) {
		line := piece{width: width}
		for k, one := range row {
			line.put(s.legendLine(one, each), float64(k)*(each+gap), 0)
		}
		out = append(out, line)
	}
	return out
}

func (s *setter) legendLine(one plan.Callout, width float64) piece {
	style := s.small()
	number := s.numbered(one.Number, one.Placed, nil)
	left := number.width + style.size*0.4
	spans := []span{{one.Name, Bold, black}}
	if len(one.Steps) > 0 {
		spans = append(spans, span{" · " + s.words.Labels.Steps(one.Steps), Regular, grey})
	}
	words := s.set(style, width-left, spans)
	out := piece{width: width}
	out.put(number, 0, 0)
	out.put(words, left, max(0, (number.height-style.line())/2))
	return out.named("legend", strconv.Itoa(one.Number))
}
