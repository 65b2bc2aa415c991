package pages

import (
	"fmt"

	"benchleaf/compiler/internal/plan"
)

// Laid is what was laid out on one stock.
type Laid struct {
	Stock     Stock
	Documents []Document
}

// LayContact puts every side of some documents, small, on sheets to look over: stock by
// stock, with the edge, the corners and the hole of the stock. The sheets are A3, lying.
func LayContact(groups []Laid, shop string, words plan.Words) (Document, error) {
	sheet, err := FindStock("a3")
	if err != nil {
		return Document{}, err
	}
	c := &contact{setter: &setter{words: words}, wide: sheet.Height, high: sheet.Width, edge: sheet.Border}
	c.size = sizes{main: 4.5, text: 3.2, small: 2.6}
	out := Document{Title: words.Labels.Contact, Subject: words.Labels.Contact, Author: shop, Language: words.Language}
	for _, group := range groups {
		c.open(joined(" · ", shop, words.Labels.Contact, group.Stock.Title))
		for _, document := range group.Documents {
			out.Date = max(out.Date, document.Date)
			c.document(document, group.Stock)
		}
	}
	out.Sides = c.sides
	return out, nil
}

// contact fills sheets with small sides, row by row.
type contact struct {
	*setter
	wide, high, edge float64
	title            string
	x, y             float64 // where the next small side goes
	sides            []Side
}

// thumb is how high a small side is, and slot how high the row it stands in.
const (
	thumb = 80.0
	slot  = thumb + 7
	space = 3.0
)

func (c *contact) open(title string) {
	c.title = title
	number := len(c.sides) + 1
	side := Side{Width: c.wide, Height: c.high, Number: number, Sheet: number, Safe: Rectangle{c.edge, c.edge, c.wide - 2*c.edge, c.high - 2*c.edge}}
	head := c.say(c.main().with(Bold), side.Safe.Width, title)
	placed := head.named("head", title).at(c.edge, c.edge)
	side.Marks, side.Boxes = placed.marks, placed.boxes
	c.sides = append(c.sides, side)
	c.x, c.y = c.edge, c.edge+head.height+2
}

// document puts the sides of a document one after the other, its title over the first.
func (c *contact) document(document Document, stock Stock) {
	for i, side := range document.Sides {
		by := min(thumb/side.Height, thumb*1.5/side.Width)
		wide := side.Width * by
		if c.x+wide > c.wide-c.edge {
			c.x, c.y = c.edge, c.y+slot
		}
		if c.y+slot > c.high-c.edge {
			c.open(c.title)
		}
		title := fmt.Sprintf("%d", i+1)
		if i == 0 {
			title = document.Title
		}
		small := piece{width: wide, height: side.Height * by}
		small.mark(Panel{Rectangle{0, 0, wide, small.height}, corners(stock.Corner * by), Paint{white, grey, 0.15}})
		for _, mark := range side.Marks {
			small.mark(mark.scaled(by))
		}
		if len(stock.Hole) == 3 && i%max(1, stock.Sides) == 0 {
			small.mark(circle(Point{stock.Hole[0] * by, stock.Hole[1] * by}, stock.Hole[2]/2*by, Paint{Stroke: grey, Line: 0.15}))
		}
		var place piece
		place.put(c.line(c.small(), wide, title), 0, 0)
		place.put(small, 0, c.small().line()+0.6)
		placed := place.named("side", fmt.Sprintf("%s %d", document.Title, i+1)).at(c.x, c.y)
		last := &c.sides[len(c.sides)-1]
		last.Marks, last.Boxes = append(last.Marks, placed.marks...), append(last.Boxes, placed.boxes...)
		c.x += wide + space
	}
}
