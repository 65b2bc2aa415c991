package pages

import "math"

// Symbols are drawn, not set: the faces have no glyphs for them.

func polygon(paint Paint, points ...Point) Path {
	path := Path{From: points[0], Closed: true, Paint: paint}
	for _, p := range points[1:] {
		path.Steps = append(path.Steps, Segment{To: p})
	}
	return path
}

func polyline(stroke Ink, line float64, points ...Point) Path {
	path := polygon(Paint{Stroke: stroke, Line: line}, points...)
	path.Closed = false
	return path
}

// quarter is the length of a control arm that makes a cubic curve a quarter circle.
const quarter = 0.5522847498

func circle(at Point, r float64, paint Paint) Path {
	k := r * quarter
	return Path{From: Point{at.X + r, at.Y}, Closed: true, Paint: paint, Steps: []Segment{
		{true, Point{at.X + r, at.Y + k}, Point{at.X + k, at.Y + r}, Point{at.X, at.Y + r}},
		{true, Point{at.X - k, at.Y + r}, Point{at.X - r, at.Y + k}, Point{at.X - r, at.Y}},
		{true, Point{at.X - r, at.Y - k}, Point{at.X - k, at.Y - r}, Point{at.X, at.Y - r}},
		{true, Point{at.X + k, at.Y - r}, Point{at.X + r, at.Y - k}, Point{at.X + r, at.Y}},
	}}
}

// alert is the safety alert symbol (ANSI Z535.4): a triangle with a mark of
// exclamation in it, size high; each lies on a contour, where there is one.
func alert(size float64, triangle, mark, contour Ink) piece {
	side := size * 2 / math.Sqrt(3)
	out := piece{width: side, height: size}
	mid, stem := side/2, size*0.075
	body := roundedTriangle(side, size, size*0.09, triangle)
	bar := polygon(Paint{Fill: mark}, Point{mid - stem, size * 0.32}, Point{mid + stem, size * 0.32}, Point{mid + stem*0.6, size * 0.66}, Point{mid - stem*0.6, size * 0.66})
	dot := circle(Point{mid, size * 0.78}, stem, Paint{Fill: mark})
	if !contour.On() {
		out.mark(body, bar, dot)
		return out
	}
	around := func(path Path, width float64) Path {
		path.Paint = Paint{Stroke: contour, Line: 2 * width * size}
		return path
	}
	out.mark(around(body, contourWidth), body, around(bar, contourWidth/2), around(dot, contourWidth/2), bar, dot)
	return out
}

// roundedTriangle stands on its base; r is how far from a corner the rounding begins.
func roundedTriangle(side, height, r float64, fill Ink) Path {
	corners := []Point{{side / 2, 0}, {side, height}, {0, height}}
	path := Path{Closed: true, Paint: Paint{Fill: fill}}
	for i, corner := range corners {
		before, after := toward(corner, corners[(i+2)%3], r), toward(corner, corners[(i+1)%3], r)
		if i == 0 {
			path.From = before
		} else {
			path.Steps = append(path.Steps, Segment{To: before})
		}
		path.Steps = append(path.Steps, Segment{true, toward(before, corner, r*2/3), toward(after, corner, r*2/3), after})
	}
	return path
}

func toward(from, to Point, length float64) Point {
	d := math.Hypot(to.X-from.X, to.Y-from.Y)
	return Point{from.X + (to.X-from.X)*length/d, from.Y + (to.Y-from.Y)*length/d}
}

// tick is an empty box to tick.
func tick(size float64) piece {
	line := max(0.3, size*0.075)
	out := piece{width: size, height: size}
	out.mark(Panel{Rectangle{line / 2, line / 2, size - line, size - line}, corners(size * 0.14), Paint{white, black, line}})
	return out.named("tick", "")
}

func corners(r float64) [4]float64 { return [4]float64{r, r, r, r} }

// onward is a triangle that points to what comes next.
func onward(size float64, ink Ink) piece {
	out := piece{width: size * 0.8, height: size}
	out.mark(polygon(Paint{Fill: ink}, Point{0, size * 0.06}, Point{size * 0.8, size / 2}, Point{0, size * 0.94}))
	return out
}

// turned is an arrow that bends back, for turning the sheet over.
func turned(size float64, ink Ink) piece {
	out := piece{width: size * 1.15, height: size}
	line := size * 0.13
	out.mark(Path{From: Point{size * 0.08, size * 0.80}, Paint: Paint{Stroke: ink, Line: line}, Steps: []Segment{
		{To: Point{size * 0.62, size * 0.80}},
		{true, Point{size * 1.14, size * 0.80}, Point{size * 1.14, size * 0.22}, Point{size * 0.62, size * 0.22}},
		{To: Point{size * 0.36, size * 0.22}},
	}})
	out.mark(polygon(Paint{Fill: ink}, Point{size * 0.40, size * -0.02}, Point{size * 0.04, size * 0.22}, Point{size * 0.40, size * 0.46}))
	return out
}

// clock stands beside a time to wait.
func clock(size float64, ink Ink) piece {
	out := piece{width: size, height: size}
	line, mid := size*0.11, Point{size / 2, size / 2}
	out.mark(circle(mid, size/2-line/2, Paint{Stroke: ink, Line: line}))
	out.mark(polyline(ink, line, Point{mid.X, size * 0.22}, mid, Point{size * 0.70, size * 0.62}))
	return out
}

// branch is an arrow that leaves the straight way.
func branch(size float64, ink Ink) piece {
	out := piece{width: size, height: size}
	line := size * 0.13
	out.mark(polyline(ink, line, Point{size * 0.12, size * 0.08}, Point{size * 0.12, size * 0.60}, Point{size * 0.62, size * 0.60}))
	out.mark(polygon(Paint{Fill: ink}, Point{size * 0.58, size * 0.34}, Point{size * 0.98, size * 0.60}, Point{size * 0.58, size * 0.86}))
	return out
}

// band is a filled rectangle without an outline; thin ones serve as rules.
func band(x, y, width, height float64, fill Ink) Panel {
	return Panel{Rectangle: Rectangle{x, y, width, height}, Paint: Paint{Fill: fill}}
}
