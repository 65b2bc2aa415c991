package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/internal/trade"
)

// What the title of a new part may say of its screw: "M8×1.25", "5/16-18", "grade 2", "8.8".
var (
	titledThread = pattern.MustCompile(`\bM\d+(?:\.\d+)?(?:[x×]\d\.\d+)?\b|(?:#\d+|\b(?:\d+-)?\d+/\d+)-\d\d?\b`)
	titledClass  = pattern.MustCompile(`(?i)\bgrade \d(?:\.\d)?\b|\b(?:4\.6|4\.8|5\.6|5\.8|6\.8|8\.8|9\.8|10\.9|12\.9)\b`)
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "part/other-spare", Severity: finding.Warning, Title: "A part and the new one that goes in for it differ",
		Why:     "A harder bolt does not shear where it is to, and one of another thread does not go in.",
		Source:  "the machine's own description",
		Setting: setting + "no-isolation = \"On the bench\"\ntools = []\nsupplies = []\nwear = []\nspares = [\"new-bolt\"]\n[spare.new-bolt]\ntitle = \"shear bolt M8 × 40 mm, 4.6\"\n",
		Bad:     "[part.bolt]\ntitle = \"shear bolt\"\nthread = \"M8\"\nclass = \"10.9\"\nhead = \"wing\"\n[[step]]\nreplace = \"bolt\"\nspares = [\"new-bolt\"]\n",
		Good:    "[part.bolt]\ntitle = \"shear bolt\"\nthread = \"M8\"\nclass = \"4.6\"\nhead = \"wing\"\n[[step]]\nreplace = \"bolt\"\nspares = [\"new-bolt\"]\n",
	},
	Job: func(p *Pass) {
		type pair struct {
			part  *model.Part
			spare *model.Spare
		}
		told, alike := map[*model.Part]bool{}, map[pair]bool{}
		for _, step := range p.Job.Steps {
			if step.Verb.Key != "replace" {
				continue
			}
			for _, object := range step.Objects {
				spares := p.newOnes(step, object)
				for _, part := range p.Job.Worked() {
					if told[part] || object.Part != nil && object.Part != part || object.Part == nil && object.Spare == nil {
						continue
					}
					for _, spare := range spares {
						if alike[pair{part, spare}] {
							continue
						}
						written := unlike(part, spare)
						if written == nil {
							alike[pair{part, spare}] = true
							continue
						}
						told[part] = true
						p.Found(finding.Finding{Place: written.At, Summary: fmt.Sprintf("%s of the %s is not what the new one has: %q", written.Text, part.Words(), spare.Words()),
							Help:    "Look both up again, and correct the one that is wrong.",
							Related: []finding.Related{{Place: spare.Header, Text: "the new one"}}})
						break
					}
				}
			}
		}
	},
})

// newOnes are the spares that a step puts in for an object.
func (p *Pass) newOnes(step *model.Step, object model.Object) []*model.Spare {
	var out []*model.Spare
	for _, name := range append(step.Spares.Names(), object.Text.Name()) {
		if spare := p.Job.Spare(name); spare != nil {
			out = append(out, spare)
		}
	}
	return out
}

// unlike gives the thread or the class of a part that the spare of its kind has otherwise;
// nil where none is.
func unlike(part *model.Part, spare *model.Spare) *model.Text {
	fields := strings.Fields(strings.TrimSuffix(strings.ToLower(part.Words()), "s"))
	title := spare.Words()
	if len(fields) == 0 || !strings.Contains(strings.ToLower(title), fields[len(fields)-1]) {
		return nil
	}
	if titled, err := trade.ParseThread(titledThread.FindString(title)); err == nil {
		if own, err := trade.ParseThread(part.Thread.Text); err == nil && own.Written != titled.Written && !(strings.Contains(own.Written, titled.Nominal+"×") && titled.Metric()) {
			return &part.Thread
		}
	}
	if titled, err := trade.ParseClass(titledClass.FindString(title)); err == nil {
		if own, err := trade.ParseClass(part.Class.Text); err == nil && own.Name != titled.Name {
			return &part.Class
		}
	}
	return nil
}
