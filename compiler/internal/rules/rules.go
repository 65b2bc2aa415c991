// Package rules holds the checks of the work, one file a rule, with its
// explanation and its examples beside it. It must not read files or print.
package rules

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/hazard"
	"benchleaf/compiler/internal/memo"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/state"
	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
)

// Rule is one check with its explanation.
type Rule struct {
	finding.Rule
	Amount     func(*Pass, model.Amount)     // looks at each amount of a file
	Reading    func(*Pass, model.Difference) // looks at each difference of a file from its second reading
	Part       func(*Pass, *model.Part)      // looks at each part that a file describes, whether a step uses it or not
	Job        func(*Pass)                   // looks at a whole job
	Words      bool                          // reads English words of the author's, and rests where the shop works in another language
	Excused    bool                          // English words of the author's may excuse what it finds; in another language it warns, and anybody may stand by it
	Everywhere bool                          // a finding counts only where it holds for every version of the machine
}

// Pass is what a rule may look at. File is always there; the rest only in a
// rule that looks at jobs.
type Pass struct {
	File    *model.File
	Job     *model.Job
	Needs   *needs.Needs
	Hazards []hazard.Implied
	State   *state.Walk

	rule *Rule
	out  *[]finding.Finding
	*shared
}

// shared is what several rules ask of one job, each made when it is first asked for.
type shared struct {
	known   map[int]lack               // what each fastener lacks
	split   map[*tree.Value][]sentence // texts in their sentences
	called  []thing                    // how the things of the job are called
	heard   []message                  // the messages of the job
	wrote   []*model.Caution           // the messages that the author wrote
	told    []told                     // what each step says
	words   []string                   // of the whole job
	hazards map[*model.Step][]hazard.Implied
	caught  map[*model.Step][]needs.Catch
}

// told is what a step says, as it is written and in small letters.
type told struct{ words, small string }

// tells is what a step says in words.
func (p *Pass) tells(step *model.Step) string { return p.toldAt(step).words }

// says reports whether any of some words stands in what a step says, whatever the case.
func (p *Pass) says(step *model.Step, words ...string) bool {
	small := p.toldAt(step).small
	return slices.ContainsFunc(words, func(word string) bool { return strings.Contains(small, word) })
}

func (p *Pass) toldAt(step *model.Step) told {
	if p.told == nil {
		p.told = make([]told, len(p.Job.Steps))
		for i, one := range p.Job.Steps {
			words := tells(one)
			p.told[i] = told{words, small.Of(p.Job.Memo, words)}
		}
	}
	if i := step.Number - 1; i >= 0 && i < len(p.told) && p.Job.Steps[i] == step {
		return p.told[i]
	}
	words := tells(step) // of another job
	return told{words, strings.ToLower(words)}
}

var small = memo.Of(strings.ToLower)

// hazardsAt are the hazards of one step.
func (p *Pass) hazardsAt(step *model.Step) []hazard.Implied {
	if p.hazards == nil {
		p.hazards = make(map[*model.Step][]hazard.Implied, len(p.Job.Steps))
		for i, one := range p.Hazards {
			if i > 0 && p.Hazards[i-1].Step == one.Step { // those of a step stand together
				continue
			}
			end := i + 1
			for end < len(p.Hazards) && p.Hazards[end].Step == one.Step {
				end++
			}
			if before := p.hazards[one.Step]; len(before) > 0 {
				p.hazards[one.Step] = append(before, p.Hazards[i:end]...)
			} else {
				p.hazards[one.Step] = p.Hazards[i:end:end]
			}
		}
	}
	return p.hazards[step]
}

// Found reports a fault of the pass's rule at a place. Severity and the reason
// are the rule's own where the finding gives none; what nobody can stand by is an
// error, since it holds the card back.
func (p *Pass) Found(f finding.Finding) {
	f.Rule = p.rule.ID
	f.Severity = p.rule.Severity
	if p.rule.Excused && p.foreign() {
		f.Severity, f.Firm = finding.Warning, false
	}
	if f.Firm {
		f.Severity = finding.Error
	}
	f.Why = cmp.Or(f.Why, p.rule.Why)
	f.Summary, f.Help = p.agreed(f.Summary), p.agreed(f.Help)
	if p.Job != nil {
		f.Variant = p.Job.Variant
	}
	*p.out = append(*p.out, f)
}

// foreign reports whether the author's words are in a language that is not read.
func (p *Pass) foreign() bool { return p.Job != nil && p.Job.Language() != model.English }

// Milder reports like Found, one step milder; what nobody can stand by stays an error.
func (p *Pass) Milder(f finding.Finding) {
	p.Found(f)
	if last := &(*p.out)[len(*p.out)-1]; !f.Firm {
		last.Severity = max(finding.Note, last.Severity-1)
	}
}

var all []*Rule

// add puts a rule into the catalogue; called once a rule, when the program starts.
func add(rule Rule) *Rule {
	all = append(all, &rule)
	slices.SortFunc(all, func(a, b *Rule) int { return cmp.Compare(a.ID, b.ID) })
	return &rule
}

// Catalogue lists every rule there is, of the syntax, the language and the work, by name.
func Catalogue() []finding.Rule {
	out := append(tree.Rules(), model.Rules()...)
	out = append(out, broken)
	for _, rule := range all {
		out = append(out, rule.Rule)
	}
	slices.SortFunc(out, func(a, b finding.Rule) int { return cmp.Compare(a.ID, b.ID) })
	return out
}

// broken is reported when a rule itself fails; the others go on.
var broken = finding.Rule{ID: "internal/rule-failed", Severity: finding.Error, Title: "A rule of the compiler failed",
	Why: "The rule could not be applied to this file, so nothing is known of what it checks.", Source: "the compiler itself"}

// OfPart reports whether a rule looks at the parts of a file. Such a finding holds the cards back whose
// steps use the part, which the rule tells at the job, and no others.
func OfPart(id string) bool {
	return slices.ContainsFunc(all, func(rule *Rule) bool { return rule.ID == id && rule.Part != nil })
}

// File runs the rules on the amounts and the parts of one file, and on where its second reading
// differs. A part that is another for some versions is left to the jobs.
func File(file *model.File) []finding.Finding {
	var out []finding.Finding
	for _, rule := range all {
		if rule.Amount == nil && rule.Reading == nil && rule.Part == nil {
			continue
		}
		pass := &Pass{File: file, rule: rule, out: &out, shared: &shared{}}
		guard(pass, source.Place{File: file.Source}, func() {
			if rule.Amount != nil {
				for _, amount := range file.Amounts {
					rule.Amount(pass, amount)
				}
			}
			if rule.Part != nil && !(rule.Words && file.Language() != model.English) {
				for _, part := range file.Parts() {
					if len(part.Variant) == 0 {
						pass.called = []thing{thingOf(part.Words())}
						rule.Part(pass, part)
					}
				}
			}
			if rule.Reading != nil {
				for _, difference := range file.Differences {
					rule.Reading(pass, difference)
				}
			}
		})
	}
	return out
}

// Job runs the rules on one job, with what it takes, what can hurt in it and how the machine stands after each step.
func Job(job *model.Job, needed *needs.Needs, implied []hazard.Implied, walked *state.Walk) []finding.Finding {
	out := slices.Clone(job.Faults)
	together := &shared{known: map[int]lack{}, split: map[*tree.Value][]sentence{}}
	pass := &Pass{File: job.File, Job: job, Needs: needed, Hazards: implied, State: walked, out: &out, shared: together}
	for _, rule := range all {
		if rule.Job == nil || rule.Words && job.Language() != model.English {
			continue
		}
		pass.rule = rule
		guard(pass, job.Procedure.Header, func() { rule.Job(pass) })
	}
	return out
}

// guard turns a panic of a rule into a finding, so that the rest goes on.
func guard(pass *Pass, at source.Place, run func()) {
	defer func() {
		if failure := recover(); failure != nil {
			*pass.out = append(*pass.out, finding.Finding{
				Rule: broken.ID, Severity: broken.Severity, Place: at, Why: broken.Why,
				Summary: fmt.Sprintf("the rule %s failed: %v", pass.rule.ID, failure),
				Help:    "Please send the file to the people who carry on benchleaf; the other rules were applied.",
			})
		}
	}()
	run()
}
