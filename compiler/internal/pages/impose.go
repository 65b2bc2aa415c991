package pages

import (
	"fmt"
	"slices"
)

// Turned is a group of marks upside down in its place: what is printed on the back of
// a sheet for a card that is turned over its short edge.
type Turned struct {
	Rectangle
	Marks []Mark // as they lie before they are turned about the middle of the rectangle
}

func (t Turned) moved(dx, dy float64) Mark {
	t.Rectangle = t.Rectangle.moved(dx, dy)
	return t.each(func(mark Mark) Mark { return mark.moved(dx, dy) })
}

func (t Turned) scaled(by float64) Mark {
	t.Rectangle = t.Rectangle.scaled(by)
	return t.each(func(mark Mark) Mark { return mark.scaled(by) })
}

func (t Turned) each(change func(Mark) Mark) Mark {
	marks := make([]Mark, len(t.Marks))
	for i, mark := range t.Marks {
		marks[i] = change(mark)
	}
	t.Marks = marks
	return t
}

func (t Turned) extent() (float64, float64) { return t.Y, t.Bottom() }

// Impose places the sides of documents that were laid out on one stock several to a
// sheet, with cut marks. Front and back meet when the sheet is printed on both sides
// and turned over its long edge: the columns of the back run the other way. It is an
// error when not one card fits on the sheet.
func Impose(documents []Document, card, sheet Stock) (Document, error) {
	columns, rows, width, height := upTo(card, sheet)
	if columns*rows == 0 {
		return Document{}, fmt.Errorf("%s does not fit on %s", card.Title, sheet.Title)
	}
	type leaf struct{ front, back *Side }
	var leaves []leaf
	out := Document{}
	for _, document := range documents {
		if out.Title == "" {
			out = Document{Title: document.Title, Subject: document.Subject, Author: document.Author, Language: document.Language, Date: document.Date}
		}
		for i := 0; i < len(document.Sides); i += card.Sides {
			one := leaf{front: &document.Sides[i]}
			if card.Sides == 2 && i+1 < len(document.Sides) {
				one.back = &document.Sides[i+1]
			}
			leaves = append(leaves, one)
		}
	}
	left, top := (width-float64(columns)*card.Width)/2, (height-float64(rows)*card.Height)/2
	at := func(place, column int) Rectangle {
		return Rectangle{left + float64(column)*card.Width, top + float64(place/columns)*card.Height, card.Width, card.Height}
	}
	for batch := range slices.Chunk(leaves, columns*rows) {
		number := len(out.Sides) + 1
		blank := Side{Width: width, Height: height, Safe: Rectangle{0, 0, width, height}, Sheet: (number-1)/card.Sides + 1, Marks: cuts(card, columns, rows, left, top)}
		front, back := blank, blank
		front.Number, back.Number = number, number+1
		front.Marks, back.Marks = slices.Clone(blank.Marks), slices.Clone(blank.Marks)
		for i, one := range batch {
			place := at(i, i%columns)
			front.Marks = append(front.Marks, placed(*one.front, place)...)
			front.Boxes = append(front.Boxes, Box{Kind: "card", ID: fmt.Sprint(i + 1), Place: place})
			if one.back == nil {
				continue
			}
			place = at(i, columns-1-i%columns)
			marks := placed(*one.back, place)
			if card.Turn == "short" {
				marks = []Mark{Turned{place, marks}}
			}
			back.Marks = append(back.Marks, marks...)
			back.Boxes = append(back.Boxes, Box{Kind: "card", ID: fmt.Sprint(i + 1), Place: place})
		}
		out.Sides = append(out.Sides, front)
		if card.Sides == 2 {
			out.Sides = append(out.Sides, back)
		}
	}
	return out, nil
}

// upTo is how many cards go on a sheet, upright or lying, whichever takes more. The
// cards' own borders are what a printer leaves blank.
func upTo(card, sheet Stock) (columns, rows int, width, height float64) {
	fit := func(w, h float64) (int, int) { return int((w + 1e-9) / card.Width), int((h + 1e-9) / card.Height) }
	columns, rows = fit(sheet.Width, sheet.Height)
	if c, r := fit(sheet.Height, sheet.Width); c*r > columns*rows {
		return c, r, sheet.Height, sheet.Width
	}
	return columns, rows, sheet.Width, sheet.Height
}

func placed(side Side, at Rectangle) []Mark {
	out := make([]Mark, len(side.Marks))
	for i, mark := range side.Marks {
		out[i] = mark.moved(at.X, at.Y)
	}
	return out
}

// cuts are small crosses where the lines of the knife meet; they lie on the lines and
// in the borders of the cards.
func cuts(card Stock, columns, rows int, left, top float64) []Mark {
	arm := min(3, card.Border-1)
	var out []Mark
	line := func(x, y, dx, dy float64) {
		out = append(out, Path{From: Point{x - dx, y - dy}, Steps: []Segment{{To: Point{x + dx, y + dy}}}, Paint: Paint{Stroke: black, Line: 0.2}})
	}
	for i := range columns + 1 {
		for k := range rows + 1 {
			x, y := left+float64(i)*card.Width, top+float64(k)*card.Height
			line(x, y, arm, 0)
			line(x, y, 0, arm)
		}
	}
	return out
}
