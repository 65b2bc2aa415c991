// Package pages lays what a plan says out on paper: every letter, line and box in
// its place, in millimetres. It must not know any file format.
package pages

// Document is a set of sides ready to be drawn.
type Document struct {
	Title, Subject, Author string
	Language               string // BCP 47
	Date                   string // ISO 8601 day the document carries; empty when it has none
	Sides                  []Side
	Outline                []Entry     // headings to go to, in order of their sides
	Numbering              []Numbering // how sides are counted, from the first on; empty where they count from 1
}

// Entry is a line of an outline.
type Entry struct {
	Title string
	Level int // 0 for a chapter
	To    Target
}

// Target is a height on a side.
type Target struct {
	Side int // number of the side, from 1
	Y    float64
}

// Link is a place that leads to another when it is touched.
type Link struct {
	Rectangle
	To Target
}

// Numbering is how the sides are counted from one on, beginning with 1.
type Numbering struct {
	Side  int // number of the side, from 1
	Roman bool
}

// Side is one side of a sheet. Lengths are millimetres from its upper left corner.
type Side struct {
	Width, Height float64
	Safe          Rectangle // nothing is printed outside
	Number, Sheet int       // from 1
	Marks         []Mark    // in reading order; later ones lie on top
	Boxes         []Box
	Links         []Link
	Label         string // its number as printed; empty where it is the number
}

// Box names a place on a side, so that a test, or a page one can click, finds it
// again. Boxes beside each other never overlap; a box lies inside its parent.
type Box struct {
	Kind  string // caution, step, row, head …
	ID    string // "3" for step 3
	Place Rectangle
	Boxes []Box
}

// Rectangle is a place on a side, in millimetres.
type Rectangle struct{ X, Y, Width, Height float64 }

// Right is the rectangle's right edge.
func (r Rectangle) Right() float64 { return r.X + r.Width }

// Bottom is the rectangle's lower edge.
func (r Rectangle) Bottom() float64 { return r.Y + r.Height }

func (r Rectangle) moved(dx, dy float64) Rectangle {
	r.X += dx
	r.Y += dy
	return r
}

func (r Rectangle) scaled(by float64) Rectangle {
	return Rectangle{r.X * by, r.Y * by, r.Width * by, r.Height * by}
}

// Mark is one thing drawn: Text, Panel or Path.
type Mark interface {
	moved(dx, dy float64) Mark
	// scaled is the mark so many times as large, about the upper left corner.
	scaled(by float64) Mark
	// extent is the least and the greatest height the mark reaches.
	extent() (top, bottom float64)
}

// Text is a run of letters of one face on one line.
type Text struct {
	X, Y float64 // of the first letter, on the base line
	Face Face
	Size float64 // of the em, millimetres
	Ink  Ink
	Text string // only runes the face covers
	On   Ink    // what lies below, for whoever checks the contrast
}

// Panel is a rectangle, filled, outlined or both.
type Panel struct {
	Rectangle
	Radius [4]float64 // of the corners: upper left, upper right, lower right, lower left
	Paint
}

// Path is a line, a polygon or a curve.
type Path struct {
	From   Point
	Steps  []Segment
	Closed bool
	Paint
}

// Segment goes on to a point: straight, or as a cubic curve with two controls.
type Segment struct {
	Curved bool
	A, B   Point // controls
	To     Point
}

// Point is a place in millimetres.
type Point struct{ X, Y float64 }

// Paint is how a shape is filled and outlined.
type Paint struct {
	Fill   Ink
	Stroke Ink
	Line   float64 // width of the outline, millimetres
}

func (t Text) moved(dx, dy float64) Mark {
	t.X += dx
	t.Y += dy
	return t
}

func (t Text) scaled(by float64) Mark {
	t.X, t.Y, t.Size = t.X*by, t.Y*by, t.Size*by
	return t
}

func (t Text) extent() (float64, float64) {
	return t.Y - t.Face.ascent()*t.Size, t.Y + t.Face.descent()*t.Size
}

func (p Panel) moved(dx, dy float64) Mark {
	p.Rectangle = p.Rectangle.moved(dx, dy)
	return p
}

func (p Panel) scaled(by float64) Mark {
	p.Rectangle, p.Line = p.Rectangle.scaled(by), p.Line*by
	for i := range p.Radius {
		p.Radius[i] *= by
	}
	return p
}

func (p Panel) extent() (float64, float64) { return p.Y, p.Bottom() }

func (p Path) moved(dx, dy float64) Mark {
	shift := func(at Point) Point { return Point{at.X + dx, at.Y + dy} }
	steps := make([]Segment, len(p.Steps))
	for i, step := range p.Steps {
		steps[i] = Segment{step.Curved, shift(step.A), shift(step.B), shift(step.To)}
	}
	p.From, p.Steps = shift(p.From), steps
	return p
}

func (p Path) scaled(by float64) Mark {
	scale := func(at Point) Point { return Point{at.X * by, at.Y * by} }
	steps := make([]Segment, len(p.Steps))
	for i, step := range p.Steps {
		steps[i] = Segment{step.Curved, scale(step.A), scale(step.B), scale(step.To)}
	}
	p.From, p.Steps, p.Line = scale(p.From), steps, p.Line*by
	return p
}

func (p Path) extent() (float64, float64) {
	top, bottom := p.From.Y, p.From.Y
	for _, step := range p.Steps {
		top, bottom = min(top, step.To.Y), max(bottom, step.To.Y)
	}
	return top, bottom
}
