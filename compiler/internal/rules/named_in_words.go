package rules

import (
	"fmt"
	"regexp"
	"regexp/syntax"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

// noun is a thing sentences of the trade name, by a pattern.
type noun struct {
	form *regexp.Regexp
	must []string // one of these stands in each text the form is found in; none where it is not known
	kind string   // kind of tool; empty for what is known by its words
	stem string   // what the words of a listed thing hold
}

func nouns(rows ...[3]string) []noun {
	out := make([]noun, len(rows))
	for i, row := range rows {
		form := `(?i)\b(?:` + row[0] + `)\b`
		out[i] = noun{regexp.MustCompile(form), literals(form), row[1], row[2]}
	}
	return out
}

// literals lists texts in small letters of which one stands in whatever a pattern
// finds, so that most texts need not be searched by it.
func literals(pattern string) []string {
	parsed, err := syntax.Parse(pattern, syntax.Perl)
	if err != nil {
		return nil
	}
	return literalsOf(parsed)
}

func literalsOf(r *syntax.Regexp) []string {
	switch r.Op {
	case syntax.OpLiteral:
		return []string{strings.ToLower(string(r.Rune))}
	case syntax.OpCapture, syntax.OpPlus:
		return literalsOf(r.Sub[0])
	case syntax.OpConcat: // the part whose shortest text is the longest
		var best []string
		for _, sub := range r.Sub {
			if found := literalsOf(sub); shortest(found) > shortest(best) {
				best = found
			}
		}
		return best
	case syntax.OpAlternate:
		var all []string
		for _, sub := range r.Sub {
			found := literalsOf(sub)
			if len(found) == 0 {
				return nil
			}
			all = append(all, found...)
		}
		return all
	}
	return nil
}

func shortest(list []string) int {
	least := 0
	for i, text := range list {
		if i == 0 || len(text) < least {
			least = len(text)
		}
	}
	return least
}

// may reports whether a text in small letters may hold the noun.
func (n noun) may(lower string) bool {
	return len(n.must) == 0 || slices.ContainsFunc(n.must, func(text string) bool { return strings.Contains(lower, text) })
}

// denial is what may stand before a noun that is not taken after all.
var denial = regexp.MustCompile(`(?i)\b(?:no|not|never|without|instead of|nor|than|like)(?: \w+)? ?(?:a |an |the |any )?$`)

// named tells of the things the words of the job's steps name that none of a list
// is: once a noun, at its first place.
func (p *Pass) named(table []noun, listed func(noun) bool, tell func(place finding.Finding, words string)) {
	told := map[*regexp.Regexp]bool{}
	for _, step := range p.Job.Steps {
		for _, text := range append([]model.Text{step.Say}, howOf(step)...) {
			lower := strings.ToLower(text.Text)
			for _, n := range table {
				if lower == "" || !n.may(lower) {
					continue
				}
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
