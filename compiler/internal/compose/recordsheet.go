package compose

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
)

// RecordSheet composes the sheet on which the readings of a job are written down, time
// after time. It is an error when the shop's language has no words.
func RecordSheet(work Work, system quantity.System) (plan.RecordSheet, error) {
	card, err := Card(work, system, nil)
	if err != nil {
		return plan.RecordSheet{}, err
	}
	labels := card.Words.Labels
	out := plan.RecordSheet{Words: card.Words, Shop: card.Shop, Title: card.Title, Machine: card.Machine, Variant: card.Variant,
		Revision: card.Revision, Date: card.Date, Author: card.Author, Manual: card.Manual}
	var readings []plan.RecordRow
	for _, section := range card.Sections {
		for _, step := range section.Steps {
			for _, blank := range step.Readings {
				readings = append(readings, plan.RecordRow{Step: step.Number, Blank: blank, Outside: step.Otherwise.Text})
			}
		}
	}
	for _, blank := range card.Blanks {
		written := slices.ContainsFunc(readings, func(row plan.RecordRow) bool { return strings.EqualFold(row.Label, blank.Label) })
		if blank.Label != labels.Date && blank.Label != labels.Initials && !written {
			out.Rows = append(out.Rows, plan.RecordRow{Blank: blank})
		}
	}
	out.Rows = append(out.Rows, readings...)
	return out, nil
}
