package dita

import (
	"strconv"
	"strings"

	"benchleaf/compiler/internal/plan"
)

func number(n int) string { return strconv.Itoa(n) }

// step is one step: its safety messages, what is done, what more is said of it, and what is seen
// or read behind it.
func (d *drawing) step(step plan.Step) {
	d.hazards(step.Cautions)
	d.of("cmd", step.Action)
	var said, seen [][]plan.Run
	for _, text := range []string{step.Worker, step.Gate} {
		if text != "" {
			said = append(said, plain(text))
		}
	}
	labels := d.card.Words.Labels
	for _, block := range step.Say {
		runs := block.Runs
		if block.Bullet != "" {
			runs = append([]plan.Run{{Text: block.Bullet + " "}}, runs...)
		}
		if len(runs) > 0 && runs[0].Bold && runs[0].Text == labels.Expect+labels.Colon {
			seen = append(seen, runs)
		} else {
			said = append(said, runs)
		}
	}
	for _, value := range step.Values {
		text := value.Text
		if value.Also != "" {
			text += " (" + strings.Trim(value.Also, "()") + ")"
		}
		said = append(said, d.labelled(value.Label, text))
	}
	for _, detail := range step.Details {
		said = append(said, plain(detail))
	}
	for _, blank := range step.Readings {
		text := blank.Limit
		if text == "" {
			text = blank.Unit
		}
		seen = append(seen, d.labelled(blank.Label, text))
	}
	if step.Otherwise.Text != "" {
		seen = append(seen, d.labelled(step.Otherwise.Label, step.Otherwise.Text))
	}
	if len(said) > 0 || len(step.Notes) > 0 {
		d.in("info", func() {
			d.paragraphs(said)
			for _, note := range step.Notes {
				d.of("note", plain(note), "type", "note")
			}
		})
	}
	if len(seen) > 0 {
		d.in("stepresult", func() { d.paragraphs(seen) })
	}
}

func (d *drawing) paragraphs(list [][]plan.Run) {
	for _, runs := range list {
		d.of("p", runs)
	}
}
