package pages

import (
	"math"

	"benchleaf/compiler/internal/picture"
	"benchleaf/compiler/internal/plan"
)

// Image is one of the shop's pictures.
type Image struct {
	Rectangle
	Picture *picture.Picture
	Title   string // what it shows, for whoever cannot see it
}

func (i Image) moved(dx, dy float64) Mark {
	i.Rectangle = i.Rectangle.moved(dx, dy)
	return i
}

func (i Image) scaled(by float64) Mark {
	i.Rectangle = i.Rectangle.scaled(by)
	return i
}

func (i Image) extent() (float64, float64) { return i.Y, i.Bottom() }

// places is the machine as its description draws it, no wider and no taller than it may
// be, with its numbered places and their names below. It is false where there is no room
// for all the numbers.
func (s *setter) places(drawing plan.Drawing, width, tallest float64) ([]item, bool) {
	out, ok := s.mapped(drawing, width, tallest)
	if !ok {
		return nil, false
	}
	rows := s.legend(width, drawing.Callouts)
	if whole := column(s.size.small*0.3, append([]piece{out}, rows...)...); whole.height < s.look.Stock.safe(1).Height*0.7 {
		return []item{{piece: whole.named("places", ""), above: s.size.main * 0.4, stays: true, dear: costList}}, true
	}
	items := []item{{piece: out, above: s.size.main * 0.4, stays: true, dear: costList}}
	for i, row := range rows {
		items = append(items, item{piece: row, above: s.size.small * 0.3, part: s.words.Labels.Map, stays: i == 0, dear: costList})
	}
	return items, true
}

// mapped is the machine with the numbers of its places, without their names.
func (s *setter) mapped(drawing plan.Drawing, width, tallest float64) (piece, bool) {
	body, at := s.machine(drawing, width, tallest)
	out, ok := s.pinned(body, width, drawing.Callouts, at, upward(drawing, at))
	return out.named("map", ""), ok
}

// machine draws an outline with what is inside it, and gives where its places lie on it.
func (s *setter) machine(drawing plan.Drawing, width, tallest float64) (piece, func(plan.Spot) Point) {
	low, high := drawing.Outline[0], drawing.Outline[0]
	reach := func(spot plan.Spot, r float64) {
		low.X, low.Y = min(low.X, spot.X-r), min(low.Y, spot.Y-r)
		high.X, high.Y = max(high.X, spot.X+r), max(high.Y, spot.Y+r)
	}
	for _, spot := range drawing.Outline {
		reach(spot, 0)
	}
	for _, line := range drawing.Lines {
		for _, spot := range line {
			reach(spot, 0)
		}
	}
	for _, round := range drawing.Rounds {
		reach(round.Spot, round.Radius)
	}
	for _, one := range drawing.Callouts {
		reach(one.Spot, 0)
	}
	thick := s.size.small * 0.16
	wide, tall := max(high.X-low.X, tiny), max(high.Y-low.Y, tiny)
	scale := min((width-thick)/wide, (tallest-thick)/tall)
	at := func(spot plan.Spot) Point {
		return Point{(spot.X-low.X)*scale + thick/2, (spot.Y-low.Y)*scale + thick/2}
	}
	out := piece{width: wide*scale + thick, height: tall*scale + thick}
	corners := func(spots []plan.Spot) []Point {
		var points []Point
		for _, spot := range spots {
			points = append(points, at(spot))
		}
		return points
	}
	out.mark(polygon(Paint{tint, slate, thick}, corners(drawing.Outline)...))
	thin := thick * 0.5
	for _, line := range drawing.Lines {
		if len(line) < 2 {
			continue
		}
		path := polyline(grey, thin, corners(line)...)
		if n := len(line) - 1; n > 1 && line[0] == line[n] {
			path = polygon(Paint{Fill: white, Stroke: grey, Line: thin}, corners(line[:n])...)
		}
		out.mark(path)
	}
	for _, round := range drawing.Rounds {
		out.mark(circle(at(round.Spot), math.Abs(round.Radius)*scale, Paint{Fill: white, Stroke: grey, Line: thin}))
	}
	return out, at
}

// upward says of a point on a drawing whether less of the machine lies above it than below.
func upward(drawing plan.Drawing, at func(plan.Spot) Point) func(Point) bool {
	var outline []Point
	for _, spot := range drawing.Outline {
		outline = append(outline, at(spot))
	}
	return func(p Point) bool {
		top, bottom := p.Y, p.Y // the farthest edges of the machine over and under the point
		for i, a := range outline {
			b := outline[(i+1)%len(outline)]
			if (a.X <= p.X) == (b.X <= p.X) {
				continue
			}
			y := a.Y + (p.X-a.X)*(b.Y-a.Y)/(b.X-a.X)
			top, bottom = min(top, y), max(bottom, y)
		}
		return p.Y-top <= bottom-p.Y
	}
}

// photo is one of the shop's pictures with its call-outs and its title, and below it a piece
// for each row of their names. It is false where there is no room for all the numbers.
func (s *setter) photo(shown plan.Picture, width, tallest float64) ([]piece, bool) {
	body, ok := s.pictured(shown, width, tallest)
	if !ok {
		return nil, false
	}
	title := s.say(s.small().with(Bold), width, shown.Title)
	return append([]piece{column(s.size.small*0.35, body, title).named("picture", shown.Title)}, s.legend(width, shown.Callouts)...), true
}

// pictured is a picture with the numbers of its call-outs, without words.
func (s *setter) pictured(shown plan.Picture, width, tallest float64) (piece, bool) {
	w, h := float64(shown.Image.Width), float64(shown.Image.Height)
	scale := min(width/w, tallest/h)
	image := piece{width: w * scale, height: h * scale}
	image.mark(Image{Rectangle{0, 0, image.width, image.height}, shown.Image, shown.Title})
	line := s.size.small * 0.08
	image.mark(Panel{Rectangle{line / 2, line / 2, image.width - line, image.height - line}, [4]float64{}, Paint{Stroke: grey, Line: line}})
	image = image.named("image", shown.Title)
	at := func(spot plan.Spot) Point { return Point{spot.X * image.width, spot.Y * image.height} }
	return s.pinned(image, width, shown.Callouts, at, func(at Point) bool { return at.Y < image.height/2 })
}

// vessel is what holds a fluid, seen from the side: where it is filled and drained, and
// how high it stands.
func (s *setter) vessel(level plan.Level, width float64) piece {
	style := s.small()
	em := style.size
	high := max(float64(len(level.Ports))*style.line()*1.25, 6.5*em)
	wide := 5.2 * em
	line := em * 0.14
	top, bottom := em*0.9, high-em*0.9 // heights of the highest and the lowest opening
	height := func(share float64) float64 { return top + share*(bottom-top) }
	out := piece{height: high}
	out.mark(Panel{Rectangle{line / 2, line / 2, wide - line, high - line}, corners(em * 0.7), Paint{Fill: white}})
	oil := height(level.Height)
	out.mark(Panel{Rectangle{line, oil, wide - 2*line, high - line - oil}, [4]float64{0, 0, em * 0.6, em * 0.6}, Paint{Fill: rule}})
	out.mark(polyline(black, line*0.8, Point{line, oil}, Point{wide - line, oil}))
	out.mark(Panel{Rectangle{line / 2, line / 2, wide - line, high - line}, corners(em * 0.7), Paint{Stroke: black, Line: line}})
	tip := Point{wide * 0.36, oil - line} // the mark of a level on drawings (ISO 128-3, from memory): a triangle that stands on it
	out.mark(polygon(Paint{Fill: black}, tip, Point{tip.X - em*0.42, tip.Y - em*0.72}, Point{tip.X + em*0.42, tip.Y - em*0.72}))
	var want []float64
	for _, port := range level.Ports {
		want = append(want, height(port.Height))
	}
	half := style.line() / 2
	left := wide + em*1.5
	for i, y := range spaced(want, half, high-half, style.line()) {
		port := level.Ports[i]
		stub := height(port.Height)
		face, ink := Regular, grey
		if port.Kind == plan.LevelPort || port.Kind == plan.LevelPlug {
			face, ink = Bold, black
		}
		if port.Kind != plan.LevelPort {
			out.mark(Panel{Rectangle{wide - line, stub - em*0.28, em * 0.5, em * 0.56}, [4]float64{}, Paint{white, black, line * 0.8}})
		} else {
			out.mark(Panel{Rectangle{wide - em*0.75, stub - em*0.55, em * 0.55, em * 1.1}, corners(em * 0.27), Paint{white, black, line * 0.8}})
			out.mark(band(wide-em*0.69, stub, em*0.43, em*0.49, grey))
		}
		out.mark(polyline(black, line*0.5, Point{wide + em*0.5, stub}, Point{left - em*0.25, y}))
		words := s.line(style.with(face).inked(ink), width-left, port.Name)
		out.put(words, left, y-style.baseline()+style.face.CapHeight(em)/2)
	}
	out.width = min(width, out.width)
	return out.named("level", "")
}

// stairs is tightening in rounds: a step up for each, with its share of the torque.
func (s *setter) stairs(passes []plan.Pass, width float64) piece {
	style := s.small()
	em := style.size
	out := piece{}
	tall := 2.6 * em
	x := 0.0
	var heads []piece
	head := 0.0
	for _, pass := range passes {
		share := s.say(style.with(Bold), width, plan.Passes([]plan.Pass{{Share: pass.Share}}))
		torque := s.say(style, width, pass.Text)
		heads = append(heads, centred(share, torque, s.say(style.inked(grey), width, pass.Also)))
		head = max(head, heads[len(heads)-1].height)
	}
	for i, pass := range passes {
		wide := heads[i].width + em*1.1
		if x+wide > width+tiny {
			return s.say(style, width, s.words.Labels.Passes+s.words.Labels.Colon+" "+plan.Passes(passes)).named("passes", "")
		}
		step := tall * min(1, float64(pass.Share)/100)
		base := tall + head + em*0.2
		shade := rule
		if pass.Share >= 100 {
			shade = slate
		}
		out.mark(Panel{Rectangle{x, base - step, wide - em*0.12, step}, [4]float64{}, Paint{Fill: shade}})
		out.put(heads[i], x+(wide-em*0.12-heads[i].width)/2, base-step-heads[i].height-em*0.1)
		x += wide
	}
	out.mark(band(0, tall+head+em*0.2, x-em*0.12, em*0.12, black))
	out.width, out.height = x, tall+head+em*0.32
	return out.named("passes", "")
}

// centred stacks pieces about one middle.
func centred(pieces ...piece) piece {
	var out piece
	for _, one := range pieces {
		out.width = max(out.width, one.width)
	}
	y := 0.0
	for _, one := range pieces {
		out.put(one, (out.width-one.width)/2, y)
		y += one.height
	}
	return out
}
