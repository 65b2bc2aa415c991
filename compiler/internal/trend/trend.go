// Package trend lays a straight line through readings and says where it meets a limit,
// or why that cannot be said. x is what the readings are spread over (hours of a meter,
// days), y is what was read; units are the caller's, and results are in the same ones.
// Nothing of the project is imported.
//
// The line is that of least squares. It takes the scatter about it to be normal, as wide
// everywhere, and one reading to owe nothing to the one before (NIST/SEMATECH e-Handbook of
// Statistical Methods, 4.2.1 and 4.4.3.1).
package trend

import (
	"cmp"
	"math"
	"slices"
)

// Level is the share of cases that intervals hold, and that a slope is tested at.
const Level = 0.90

// Least is the fewest readings that a line is laid through.
const Least = 4

// Point is one reading.
type Point struct{ X, Y float64 }

// Reason is why something cannot be said; None where it can.
type Reason int

// The reasons, in the order they are looked for.
const (
	None     Reason = iota
	Few             // there are fewer readings than Least
	NoFigure        // a reading or the limit is not a finite number, or too great to reckon with
	NoSpread        // all readings were taken at one x
	Flat            // the slope is not told apart from zero at Level (Student's t, both ways)
	Past            // at the last reading the line is at the limit or beyond it
	Away            // the line moves away from the limit
	Far             // the limit lies farther beyond the last reading than the readings span
)

// Line is a straight line through readings: y = Intercept + Slope·x.
type Line struct {
	Points         int
	Slope          float64 // of y for one x
	Intercept      float64 // y at x = 0
	Residual       float64 // standard deviation of the readings about the line, with Points - 2 degrees of freedom
	SlopeError     float64 // standard error of the slope
	InterceptError float64 // standard error of the intercept
	R2             float64 // share of the variance that the line accounts for, 0 to 1; 0 where all y are alike
	First, Last    float64 // least and greatest x of the readings

	x, y, sxx float64 // means, and the sum of squares of x about its mean
	t         float64 // quantile of Student's t that holds Level
}

// Fit lays a line through at least Least readings, in any order. The reason is None, Few,
// NoFigure or NoSpread; the line holds only where it is None.
func Fit(points []Point) (Line, Reason) {
	if len(points) < Least {
		return Line{}, Few
	}
	points = slices.Clone(points) // sorted, so that the order they come in never tells
	slices.SortFunc(points, func(a, b Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	n := float64(len(points))
	l := Line{Points: len(points), First: points[0].X, Last: points[len(points)-1].X}
	from := points[0]
	for _, p := range points { // means about one of the readings, which are exact where all are alike
		l.x += (p.X - from.X) / n
		l.y += (p.Y - from.Y) / n
	}
	l.x += from.X
	l.y += from.Y
	var sxy, syy, rest float64
	for _, p := range points {
		dx, dy := p.X-l.x, p.Y-l.y
		l.sxx += dx * dx
		sxy += dx * dy
		syy += dy * dy
	}
	if finite(l.sxx) && (l.sxx == 0 || l.First == l.Last) {
		return Line{}, NoSpread
	}
	l.Slope = sxy / l.sxx
	l.Intercept = l.y - l.Slope*l.x
	for _, p := range points {
		off := p.Y - l.y - l.Slope*(p.X-l.x)
		rest += off * off
	}
	l.Residual = math.Sqrt(rest / (n - 2))
	l.SlopeError = l.Residual / math.Sqrt(l.sxx)
	l.InterceptError = l.Residual * math.Sqrt(1/n+l.x*l.x/l.sxx)
	if syy > 0 {
		l.R2 = max(0, 1-rest/syy)
	}
	l.t = student(len(points)-2, Level)
	if !finite(l.Slope, l.Intercept, l.Residual, l.SlopeError, l.InterceptError, l.R2) {
		return Line{}, NoFigure
	}
	return l, None
}

func finite(figures ...float64) bool {
	return !slices.ContainsFunc(figures, func(f float64) bool { return math.IsNaN(f) || math.IsInf(f, 0) })
}

// At is y of the line at an x.
func (l Line) At(x float64) float64 { return l.y + l.Slope*(x-l.x) }

// Band holds one further reading at an x in Level of cases (e-Handbook 4.5.1.2): it is as
// wide as the scatter of one reading and the doubt about the line together.
func (l Line) Band(x float64) (low, high float64) {
	d := x - l.x
	half := l.t * l.Residual * math.Sqrt(1+1/float64(l.Points)+d*d/l.sxx)
	return l.At(x) - half, l.At(x) + half
}

// Slopes tells the slope apart from zero at Level.
func (l Line) Slopes() bool { return math.Abs(l.Slope) > l.t*l.SlopeError }

// Side is where a limit keeps the readings.
type Side int

// The sides.
const (
	Below Side = iota // the limit is the most a reading may be
	Above             // the limit is the least
)

// Meeting is where a line meets a limit.
type Meeting struct {
	X           float64 // where the line itself meets it
	Early, Late float64 // where the band meets it: one further reading is past the limit in (1 - Level)/2 of cases at Early, and not yet in as many at Late
}

// Meets is where the line meets a limit, beyond the last reading. The interval is that of
// inverse prediction, where the edges of Band meet the limit (e-Handbook 4.5.2.1); Early may
// lie before the last reading. The reason is None, NoFigure, Flat, Past, Away or Far. With
// Far, X is the greatest x of which more can be said with that certainty: the span of the
// readings beyond the last one, or Early where that is nearer; the others are zero.
func (l Line) Meets(limit float64, keeps Side) (Meeting, Reason) {
	room, slope := limit-l.At(l.Last), l.Slope
	if keeps == Above {
		room, slope = -room, -slope
	}
	switch {
	case !finite(limit) || l.Points < Least:
		return Meeting{}, NoFigure
	case !l.Slopes():
		return Meeting{}, Flat
	case room <= 0:
		return Meeting{}, Past
	case slope < 0:
		return Meeting{}, Away
	}
	// (Slope·d - c)² = k·(1 + 1/n + d²/sxx), with d = x - mean and c = limit - mean, solved for d.
	c, k, n := limit-l.y, l.t*l.t*l.Residual*l.Residual, float64(l.Points)
	a := l.Slope*l.Slope - k/l.sxx // above zero, since the slope is told apart from it
	root := math.Sqrt(k * (c*c/l.sxx + a*(1+1/n)))
	made := Meeting{
		X:     l.x + c/l.Slope,
		Early: l.x + (l.Slope*c-root)/a,
		Late:  l.x + (l.Slope*c+root)/a,
	}
	if !finite(made.X, made.Early, made.Late) {
		return Meeting{}, NoFigure
	}
	if most := l.Last + (l.Last - l.First); made.X > most {
		return Meeting{X: min(most, max(l.Last, made.Early))}, Far
	}
	return made, None
}
