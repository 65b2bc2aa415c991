package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/memo"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

// noun is a thing sentences of the trade name, by a pattern.
type noun struct {
	form *pattern.Pattern
	kind string // kind of tool; empty for what is known by its words
	stem string // what the words of a listed thing hold
}

// nounTable is several nouns, with a quick look whether any may stand in a text.
type nounTable struct {
	rows []noun
	may  *memo.Function[bool]
}

func nouns(rows ...[3]string) nounTable {
	out, forms := make([]noun, len(rows)), make([]*pattern.Pattern, len(rows))
	for i, row := range rows {
		forms[i] = pattern.MustCompile(`(?i)\b(?:` + row[0] + `)\b`)
		out[i] = noun{forms[i], row[1], row[2]}
	}
	return nounTable{out, memo.Of(pattern.Any(forms...))}
}

// denial is what may stand before a noun that is not taken after all.
var denial = pattern.MustCompile(`(?i)\b(?:no|not|never|without|instead of|nor|than|like)(?: \w+)? ?(?:a |an |the |any )?$`)

// named tells of the things the words of the job's steps name that none of a list
// is: once a noun, at its first place.
func (p *Pass) named(table nounTable, listed func(noun) bool, tell func(place finding.Finding, words string)) {
	told := map[*pattern.Pattern]bool{}
	for _, step := range p.Job.Steps {
		for _, text := range append([]model.Text{step.Say}, howOf(step)...) {
			if !table.may.Of(p.Job.Memo, text.Text) {
				continue
			}
			for _, n := range table.rows {
				at := n.form.FindStringIndex(text.Text)
				if at == nil || told[n.form] || denial.MatchString(text.Text[:at[0]]) || listed(n) {
					continue
				}
				told[n.form] = true
				words := text.Text[at[0]:at[1]]
				tell(finding.Finding{Place: text.Inside(at[0], at[1]), Summary: fmt.Sprintf("step %d names %q in its words", step.Number, words)}, words)
			}
		}
	}
}

// howOf are the words the things of a step bring along.
func howOf(step *model.Step) []model.Text {
	var out []model.Text
	for _, object := range step.Objects {
		if object.Limit != nil && step.Verb.Key != "record" {
			out = append(out, object.Limit.How)
		}
		if object.Energy != nil && step.Verb.Key == "isolate" {
			out = append(out, object.Energy.Isolate)
		}
	}
	return out
}

// holds reports whether some words hold a stem.
func holds(words []string, stem string) bool {
	for _, text := range words {
		for _, one := range strings.Split(stem, "|") {
			if strings.Contains(strings.ToLower(strings.ReplaceAll(text, "-", " ")), one) {
				return true
			}
		}
	}
	return false
}
