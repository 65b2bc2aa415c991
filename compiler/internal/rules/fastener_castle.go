package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

// pins are words for what keeps a castle nut from turning.
var pins = []string{"pin", "linchpin", "hairpin", "cotter", "clip", "lock wire", "locking wire", "safety wire", "wire lock"}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fastener/no-split-pin", Severity: finding.Warning, Title: "A castle nut goes on without its split pin",
		Why:     "The slots are there for the pin: without it the nut works loose and the wheel comes off.",
		Source:  "FAA AC 43.13-1B, par. 7-40: a castle nut is turned on to the cotter hole; that the pin is renewed is common practice, no source",
		Setting: setting + "no-isolation = \"On the bench\"\nsupplies = []\nwear = []\nspares = []\ntools = [\"spanner\"]\n[tool.spanner]\nkind = \"special\"\n[part.hub-nut]\nhead = \"castle-nut\"\nthread = \"M24x1.5\"\ntool = [\"spanner\"]\n",
		Bad:     "[[step]]\ntighten = \"hub-nut\"\nby-hand = \"Snug, then back to the next slot\"\n",
		Good:    "[[step]]\ntighten = \"hub-nut\"\nby-hand = \"Snug, then back to the next slot\"\n[[step]]\nsay = \"Put the old split pin back and bend both legs.\"\n",
	},
	Job: func(p *Pass) {
		told := map[*model.Part]bool{}
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				part := object.Part
				if part == nil || part.Head.Text != "castle-nut" || told[part] || !goesIn(step) || p.pinned(part) {
					continue
				}
				told[part] = true
				p.Found(finding.Finding{Place: object.Text.At, Summary: fmt.Sprintf("step %d puts the %s on, and no split pin is fitted", step.Number, part.Words()),
					Help:    "Write seals = [\"split-pin\"] at the part, or a step that says replace = \"split-pin\".",
					Related: []finding.Related{{Place: part.Head.At, Text: "a castle nut"}}})
			}
		}
	},
})

// pinned reports whether the job anywhere fits or speaks of what holds a castle nut.
func (p *Pass) pinned(nut *model.Part) bool {
	said := []string{partTells(nut)}
	said = append(said, spoken(nut.Seals, p.Job)...)
	said = append(said, spoken(p.Job.Procedure.Spares, p.Job)...)
	for _, step := range p.Job.Steps {
		said = append(said, p.tells(step))
		said = append(said, spoken(step.Spares, p.Job)...)
		for _, object := range step.Objects {
			said = append(said, object.Words())
		}
	}
	words := strings.Join(said, " ; ")
	return slices.ContainsFunc(pins, func(pin string) bool { return hasWord(words, pin) })
}

// spoken are names of parts that are renewed with their titles.
func spoken(list model.List, job *model.Job) []string {
	var out []string
	for _, name := range list.Names() {
		out = append(out, model.Spoken(name))
		if spare := job.Spare(name); spare != nil {
			out = append(out, spare.Title.Text)
		}
	}
	return out
}

// hasWord reports whether a word, or its plural, stands in a text by itself.
func hasWord(text, word string) bool {
	fields := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return (r < 'a' || r > 'z') && (r < '0' || r > '9') })
	plain := " " + strings.Join(fields, " ") + " "
	return strings.Contains(plain, " "+word+" ") || strings.Contains(plain, " "+word+"s ")
}
