package pages

import (
	"strconv"

	"benchleaf/compiler/internal/plan"
)

// Figure is one drawing or picture of a card by itself, on a side of its size.
type Figure struct {
	ID       string // map, picture-2, level-7, circle-9, photo-4: the number of the picture or the step
	Document Document
}

// LayFigures lays out what is drawn of a card, for pages that set its words themselves:
// the numbers stand on the drawings, their names do not. A drawing whose numbers have no
// room is left out.
func LayFigures(card plan.Card) ([]Figure, error) {
	stock, err := FindStock(DefaultStock)
	if err != nil {
		return nil, err
	}
	look, _ := Look{Stock: stock}.settled()
	s := newSetter(look, card.Words, nil)
	width := stock.Width * 0.65
	narrow := stock.Width * 0.45 // a telephone is narrower than a card, and its numbers are to be read all the same
	var out []Figure
	add := func(id string, drawn piece, ok bool) {
		if !ok || drawn.width == 0 {
			return
		}
		margin := s.size.small * 0.3
		side := Side{Width: drawn.width + 2*margin, Height: drawn.height + 2*margin, Number: 1, Sheet: 1}
		placed := drawn.at(margin, margin)
		side.Safe, side.Marks, side.Boxes = Rectangle{0, 0, side.Width, side.Height}, placed.marks, placed.boxes
		out = append(out, Figure{id, Document{Title: card.Title, Language: card.Words.Language, Sides: []Side{side}}})
	}
	if card.Map != nil {
		drawn, ok := s.mapped(*card.Map, narrow, narrow)
		if !ok {
			drawn, ok = s.mapped(*card.Map, width, width*0.75)
		}
		add("map", drawn, ok)
	}
	for i, shown := range card.Pictures {
		drawn, ok := s.pictured(shown, narrow, narrow)
		add("picture-"+strconv.Itoa(i+1), drawn, ok)
	}
	for _, section := range card.Sections {
		for _, step := range section.Steps {
			number := strconv.Itoa(step.Number)
			if len(step.Circle) > 0 {
				add("circle-"+number, s.circle(step.Circle), true)
			}
			if step.Level != nil {
				add("level-"+number, s.vessel(*step.Level, width), true)
			}
			if step.Picture != nil {
				drawn, ok := s.pictured(*step.Picture, narrow, narrow)
				add("photo-"+number, drawn, ok)
			}
		}
	}
	return out, nil
}
