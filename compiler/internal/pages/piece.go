package pages

// Problem is what a page could not show as it should.
type Problem struct {
	Where string // "step 4", "foot"
	Text  string
}

// piece is something laid out, from its own upper left corner.
type piece struct {
	width, height float64
	marks         []Mark
	boxes         []Box
}

func (p *piece) mark(marks ...Mark) { p.marks = append(p.marks, marks...) }

// put lays another piece into this one and grows to hold it.
func (p *piece) put(q piece, x, y float64) {
	for _, mark := range q.marks {
		p.marks = append(p.marks, mark.moved(x, y))
	}
	for _, box := range q.boxes {
		p.boxes = append(p.boxes, box.moved(x, y))
	}
	p.width = max(p.width, x+q.width)
	p.height = max(p.height, y+q.height)
}

// named makes the piece one box.
func (p piece) named(kind, id string) piece {
	p.boxes = []Box{{Kind: kind, ID: id, Place: Rectangle{0, 0, p.width, p.height}, Boxes: p.boxes}}
	return p
}

// column stacks pieces with a gap between.
func column(gap float64, pieces ...piece) piece {
	var out piece
	y := 0.0
	for _, p := range pieces {
		if p.height == 0 {
			continue
		}
		if y > 0 {
			y += gap
		}
		out.put(p, 0, y)
		y += p.height
	}
	return out
}

// flow sets pieces side by side and goes on below when the width is full.
func flow(width, gap float64, pieces []piece) piece {
	var out piece
	x, y, tallest := 0.0, 0.0, 0.0
	for _, p := range pieces {
		if x > 0 && x+p.width > width+tiny {
			x, y, tallest = 0, y+tallest+gap, 0
		}
		out.put(p, x, y)
		x += p.width + gap
		tallest = max(tallest, p.height)
	}
	return out
}

// tiny forgives rounding in comparisons of lengths.
const tiny = 1e-6

func (b Box) moved(dx, dy float64) Box {
	b.Place = b.Place.moved(dx, dy)
	inner := make([]Box, len(b.Boxes))
	for i, box := range b.Boxes {
		inner[i] = box.moved(dx, dy)
	}
	b.Boxes = inner
	return b
}

// cut parts a piece into one no taller than height and the rest. A line of type
// or a drawing that does not fit goes over whole; panels and boxes that reach
// over the cut are parted.
func (p piece) cut(height float64) (head, tail piece) {
	from := height // where the tail begins: above the cut, if a line there goes over
	for _, mark := range p.marks {
		top, bottom := mark.extent()
		if _, panel := mark.(Panel); !panel && bottom > height+tiny && top > 0 {
			from = min(from, top)
		}
	}
	head, tail = piece{width: p.width, height: height}, piece{width: p.width, height: p.height - from}
	for _, mark := range p.marks {
		top, bottom := mark.extent()
		panel, ok := mark.(Panel)
		switch {
		case bottom <= height+tiny:
			head.mark(mark)
		case ok && top < height-tiny:
			upper, lower := panel, panel
			upper.Height = height - top
			lower.Y, lower.Height = max(top, from)-from, bottom-max(top, from)
			head.mark(upper)
			tail.mark(lower)
		default:
			tail.mark(mark.moved(0, -from))
		}
	}
	head.boxes, tail.boxes = cutBoxes(p.boxes, height, from)
	return head, tail
}

func cutBoxes(boxes []Box, at, from float64) (head, tail []Box) {
	for _, box := range boxes {
		upper, lower := box, box
		upper.Boxes, lower.Boxes = cutBoxes(box.Boxes, at, from)
		top, bottom := box.Place.Y, box.Place.Bottom()
		if top < at-tiny {
			upper.Place.Height = min(bottom, at) - top
			head = append(head, upper)
		}
		if bottom > at+tiny {
			lower.Place.Y = max(top, from) - from
			lower.Place.Height = bottom - max(top, from)
			tail = append(tail, lower)
		}
	}
	return head, tail
}
