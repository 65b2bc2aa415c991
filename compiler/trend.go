package compiler

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/standing"
)

// Trends draws a sheet for each thing that was read on a machine, by a service book: its
// readings against their limit, and when the limit comes if they go on as they did. What is
// no figure has none.
func (r *Result) Trends(look Look, asked Asked, book BookText) ([]Output, []Trouble, error) {
	f, err := r.fleet(asked, book)
	if err != nil {
		return nil, nil, err
	}
	series, err := standing.ReadAt(f.units, f.book, f.on, f.scan)
	if err != nil {
		return nil, nil, err
	}
	var outputs []Output
	var all []Trouble
	for _, one := range series {
		job := r.jobOf(one.Procedure, one.Unit)
		if job == nil {
			continue
		}
		settled, system, err := look.settleSheet(compose.WishesOf(job.work.Job))
		if err != nil {
			return nil, nil, err
		}
		card, err := r.card(job, look)
		if err != nil {
			return nil, nil, err
		}
		blank, known := blankOf(card, one.What)
		if !known {
			continue
		}
		content, told, err := compose.Trend(job.work.In(look.Language), one, blank, f.on.String(), system)
		if err != nil {
			return nil, nil, err
		}
		if !told {
			continue
		}
		document, problems := pages.LayTrend(content, settled)
		made, troubles, err := look.draw(fileName(one.Unit.Name+"-"+one.What)+"-trend.pdf", document, problems, []Job{*job})
		if err != nil {
			return nil, nil, err
		}
		outputs, all = append(outputs, made...), append(all, troubles...)
	}
	return outputs, all, nil
}

// blankOf is the place of a card at which something is written down.
func blankOf(card plan.Card, what string) (plan.Blank, bool) {
	blanks := slices.Clone(card.Blanks)
	for _, section := range card.Sections {
		for _, step := range section.Steps {
			blanks = append(blanks, step.Readings...)
		}
	}
	at := slices.IndexFunc(blanks, func(blank plan.Blank) bool { return blank.Label == what })
	if at < 0 {
		return plan.Blank{}, false
	}
	return blanks[at], true
}

// fileName makes a name of words: small letters, figures and hyphens.
func fileName(words string) string {
	name := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			return r
		case r >= 'A' && r <= 'Z':
			return r - 'A' + 'a'
		}
		return '-'
	}, words)
	return strings.Join(strings.FieldsFunc(name, func(r rune) bool { return r == '-' }), "-")
}
