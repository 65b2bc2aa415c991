package compiler

import (
	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/plan"
)

// Contact draws every side of every card, small, on sheets to look over, for each of some
// stocks; for all of them, and the shop's own, where none is named. There is none where
// no job can be printed.
func (r *Result) Contact(look Look, stocks []string) ([]Output, []Trouble, error) {
	composed, err := r.compose(look)
	if err != nil || len(composed) == 0 {
		return nil, nil, err
	}
	wishes := compose.WishesOf(composed[0].jobs[0].work.Job)
	if len(stocks) == 0 {
		stocks = Stocks()
		for _, own := range wishes.Own {
			stocks = append(stocks, own.Name)
		}
	}
	var groups []pages.Laid
	var troubles []Trouble
	for _, stock := range stocks {
		own := look
		own.Stock = stock
		settled, _, err := own.settle(wishes)
		if err != nil {
			return nil, nil, err
		}
		group := pages.Laid{Stock: settled.Stock, Documents: make([]pages.Document, len(composed))}
		problems := make([][]pages.Problem, len(composed))
		inParallel(len(composed), func(i int) {
			group.Documents[i], problems[i] = pages.LayCard(composed[i].content, settled)
		})
		for i, card := range composed {
			for _, problem := range problems[i] {
				troubles = append(troubles, Trouble{stock + ": " + card.name(), problem.Where, problem.Text})
			}
		}
		groups = append(groups, group)
	}
	words, err := plan.LoadWords(composed[0].content.Words.Language)
	if err != nil {
		return nil, nil, err
	}
	document, err := pages.LayContact(groups, composed[0].content.Shop, words)
	if err != nil {
		return nil, nil, err
	}
	made, _, err := look.draw("contact.pdf", document, nil, jobsOf(composed))
	return made, troubles, err
}
