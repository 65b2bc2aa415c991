package compiler

import (
	"fmt"

	"benchleaf/compiler/internal/emit/html"
	"benchleaf/compiler/internal/emit/svg"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/plan"
)

// Phones writes a page for a phone or a tablet for each job that no error stands against,
// in order. Each version of a machine has its own, so that it is known on which the work
// was done.
func (r *Result) Phones(look Look) ([]Output, error) {
	composed, err := r.composeEach(look)
	if err != nil {
		return nil, err
	}
	outputs := make([]Output, len(composed))
	faults := make([]error, len(composed))
	inParallel(len(composed), func(i int) {
		var page []byte
		page, faults[i] = phone(composed[i].content)
		outputs[i] = Output{Name: composed[i].jobs[0].named() + ".html", Bytes: page, Jobs: composed[i].jobs}
	})
	for i, fault := range faults {
		if fault != nil {
			return nil, fmt.Errorf("%s: %w", outputs[i].Name, fault)
		}
	}
	return outputs, nil
}

// phone writes the page of one card with its drawings.
func phone(card plan.Card) ([]byte, error) {
	drawn, err := pages.LayFigures(card)
	if err != nil {
		return nil, err
	}
	figures := map[string][]byte{}
	for _, one := range drawn {
		sides, err := svg.Draw(one.Document)
		if err != nil {
			return nil, err
		}
		figures[one.ID] = sides[0]
	}
	for _, number := range pages.Signs(card) {
		if document, known := pages.SignDocument(number); known && figures[number] == nil {
			sides, err := svg.Draw(document)
			if err != nil {
				return nil, err
			}
			figures[number] = sides[0]
		}
	}
	return html.Draw(card, figures)
}

// named is the name of a file that serves one job.
func (job Job) named() string {
	if job.Variant == "" {
		return job.Name
	}
	return job.Name + "-" + job.Variant
}
