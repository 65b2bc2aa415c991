package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "part/behind-itself", Severity: finding.Error, Title: "A part must be off before it can be reached",
		Why:     "Nobody can begin: each part waits for another to come off first.",
		Source:  "the language itself: behind names what must be off before",
		Setting: quiet,
		Bad:     "[part.chain]\nbehind = [\"guard\"]\n[part.guard]\nbehind = [\"chain\"]\n[[step]]\nstop = \"chain\"\n",
		Good:    "[part.chain]\nbehind = [\"guard\"]\n[part.guard]\n[[step]]\nstop = \"chain\"\n",
	},
	Job: func(p *Pass) {
		told := map[string]bool{}
		for _, part := range p.parts() {
			way := p.behind(part, []string{part.Name})
			if len(way) == 0 || slices.ContainsFunc(way, func(name string) bool { return told[name] }) {
				continue
			}
			for _, name := range way {
				told[name] = true
			}
			summary := fmt.Sprintf("the %s is behind itself", part.Words())
			if len(way) > 1 {
				var others []string
				for _, name := range way[1:] {
					others = append(others, p.Job.Part(name).Words())
				}
				summary = fmt.Sprintf("the %s is behind the %s, which is behind the %s again", part.Words(), names(others), part.Words())
			}
			p.Found(finding.Finding{Place: part.Behind.At, Summary: summary, Help: "Name in behind only what comes off before it."})
		}
	},
})

// behind follows what a part is behind until it comes back to where it began; the
// names on that way, or none.
func (p *Pass) behind(part *model.Part, way []string) []string {
	for _, name := range part.Behind.Names() {
		if name == way[0] {
			return way
		}
		next := p.Job.Part(name)
		if next == nil || slices.Contains(way, name) {
			continue
		}
		if found := p.behind(next, append(slices.Clone(way), name)); found != nil {
			return found
		}
	}
	return nil
}

// handy are words for what holds a part without a tool; common practice, no source.
var handy = []string{"clip", "latch", "pin", "strap", "tie", "wedge", "band", "magnet", "hook", "lever", "knob", "spring", "snap", "circlip", "key", "bayonet", "velcro", "rope", "chain", "wire"}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "part/held-by-nothing", Severity: finding.Warning, Title: "A part is held by something no tool is known for",
		Why:     "No tool is found for it, so none is on the list when it is to come off.",
		Source:  "the language itself: held-by names fasteners",
		Setting: quiet,
		Bad:     "[part.plate]\nheld-by = [\"bolts\"]\n[part.bolts]\ncount = 4\n[[step]]\ninspect = \"plate\"\n",
		Good:    "[part.plate]\nheld-by = [\"clips\"]\n[part.clips]\ncount = 4\nhead = \"none\"\n[[step]]\ninspect = \"plate\"\n",
	},
	Job: func(p *Pass) {
		told := map[string]bool{}
		for _, part := range p.parts() {
			for _, name := range part.HeldBy.Items {
				holder := p.Job.Part(name.Name())
				if holder == nil || told[holder.Name] || holder.Head.Set() || holder.Thread.Set() || holder.Across.Set() || holder.Tool.Given || len(holder.HeldBy.Items) > 0 || says(partTells(holder), handy...) {
					continue
				}
				told[holder.Name] = true
				p.Found(finding.Finding{Place: name.At, Summary: fmt.Sprintf("the %s is held by the %s, and nothing says which tool turns the %s", part.Words(), holder.Words(), holder.Words()),
					Help:    "Write thread = \"…\" or across = \"…\" at the fastener, tool = [\"…\"] for a special one, or head = \"none\" where no tool turns it.",
					Related: []finding.Related{{Place: holder.At, Text: "what holds it"}}})
			}
		}
	},
})
