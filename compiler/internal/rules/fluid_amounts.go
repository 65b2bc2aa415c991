package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

// Part of a change that may be missing: what stays in the corners when a cavity is
// drained. Common practice, no source.
const (
	stays     = 0.20
	leastFull = 0.80
	aSlip     = 0.10 // less than this is a slip of the pen, also where a mark tells when it is full
)

// change is one emptying of a cavity, with what is filled in after it.
type change struct {
	cavity  *model.Cavity
	drain   *model.Step
	fills   []*model.Step
	out, in float64 // base unit; out is 0 where the step gives no amount
	written float64 // what the fills say, also of one that goes on until a mark; -1 where one gives no amount
	open    bool    // something is filled or drained until a mark, or by an amount that cannot be told
}

// changes are the emptyings of cavities in the job that are followed by a filling, and of
// which the figures tell all.
func (p *Pass) changes() []*change {
	return slices.DeleteFunc(p.emptied(), func(c *change) bool { return c.open })
}

// emptied are the emptyings of cavities in the job that are followed by a filling.
func (p *Pass) emptied() []*change {
	last := map[string]*change{}
	var all []*change
	for _, step := range p.Job.Steps {
		for _, object := range step.Objects {
			cavity := object.Cavity
			if cavity == nil {
				continue
			}
			now := last[cavity.Name]
			switch step.Verb.Key {
			case "drain":
				if now == nil || len(now.fills) > 0 {
					now = &change{cavity: cavity, drain: step}
					last[cavity.Name], all = now, append(all, now)
				}
				if now.out += now.amount(step, step.Amount); !now.drain.Amount.Set() {
					now.drain = step
				}
			case "fill":
				if now == nil {
					continue
				}
				amount := step.Amount
				if !amount.Set() {
					amount = cavity.Capacity
				}
				now.fills = append(now.fills, step)
				now.writes(step.Amount)
				now.in += now.amount(step, amount)
			case "check", "inspect", "measure", "adjust", "run":
				now = last[cavity.Name]
			}
			if now != nil && len(now.fills) > 0 && p.says(step, "top up", "top it up", "topped up", "add oil", "rest") {
				now.open = true
			}
		}
	}
	var out []*change
	for _, one := range all {
		if len(one.fills) > 0 {
			out = append(out, one)
		}
	}
	return out
}

// writes adds what a filling says it takes.
func (c *change) writes(amount model.Amount) {
	_, high, ok := between(amount)
	if !ok || c.written < 0 || c.cavity.Capacity.OK && amount.Dimension != c.cavity.Capacity.Dimension {
		c.written = -1
		return
	}
	c.written += high
}

// amount reads how much a step moves; the change is open where that cannot be told.
func (c *change) amount(step *model.Step, amount model.Amount) float64 {
	if step.Until.Set() && !(step.Verb.Key == "drain" && ranOut.MatchString(step.Until.Text)) || len(step.Objects) > 1 {
		c.open = true
		return 0
	}
	if !amount.Set() {
		return 0
	}
	low, high, ok := between(amount)
	_, from := amount.Lowest()
	_, to := amount.Highest()
	if !ok || !from || !to || c.cavity.Capacity.OK && amount.Dimension != c.cavity.Capacity.Dimension {
		c.open = true
	}
	return (low + high) / 2
}

// ranOut are words by which all of it is drained.
var ranOut = pattern.MustCompile(`(?i)drip|drop|empty|runs? out|stops|dry|thread`)

const changed = setting + "no-isolation = \"On the bench\"\nspares = []\nwear = [\"gloves\"]\ncautions = [\"used-oil\"]\ntools = [\"pan\"]\nsupplies = [\"oil\"]\n[tool.pan]\nkind = \"container\"\n[fluid.oil]\nkind = \"gear-oil\"\n[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"2 L\"\n"

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/out-and-in-differ", Severity: finding.Warning, Title: "More or less is filled in than was drained",
		Why:     "One of the two figures is wrong: the gearbox runs short of oil, or blows its seals.",
		Source:  "common practice, no source: up to a fifth stays in the corners",
		Setting: changed,
		Bad:     "[[step]]\ndrain = \"gearbox\"\namount = \"2 L\"\ninto = \"pan\"\n[[step]]\nfill = \"gearbox\"\namount = \"1.2 L\"\n" + seen,
		Good:    "[[step]]\ndrain = \"gearbox\"\namount = \"2 L\"\ninto = \"pan\"\n[[step]]\nfill = \"gearbox\"\namount = \"1.9 L\"\n" + seen,
	},
	Job: func(p *Pass) {
		for _, c := range p.changes() {
			fill := c.fills[len(c.fills)-1]
			if c.out == 0 || c.in == 0 || !fill.Amount.Set() || c.in > c.out && p.opensMore() || c.in <= c.out*(1+stays)+1e-9 && c.in >= c.out*(1-stays)-1e-9 {
				continue
			}
			p.Found(finding.Finding{Place: fill.Amount.At, Summary: fmt.Sprintf("%s runs out of the %s, and %s is filled in", c.drain.Amount.Text.Text, c.cavity.Words(), inWords(c.fills)),
				Help:    "Look both figures up again; where the level decides, write until = \"…\" at the filling.",
				Related: []finding.Related{{Place: c.drain.Amount.At, Text: "what runs out"}}})
		}
	},
})

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/under-capacity", Severity: finding.Warning, Title: "Much less is filled in than the cavity holds",
		Why:     "A gearbox that is short of oil runs hot and dry at the top.",
		Source:  "the machine's own description; that up to a fifth stays in the corners: common practice, no source",
		Setting: changed,
		Bad:     "[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\nfill = \"gearbox\"\namount = \"1.2 L\"\n" + seen,
		Good:    "[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\nfill = \"gearbox\"\namount = \"1.2 L\"\nuntil = \"the level stands at the plug\"\n" + seen,
	},
	Job: func(p *Pass) {
		for _, c := range p.emptied() {
			low, _, ok := between(c.cavity.Capacity)
			fill := c.fills[len(c.fills)-1]
			little := c.in > 0 && c.in < low*leastFull-1e-9
			if c.open {
				little = c.written > 0 && c.written < low*aSlip
			}
			if c.out > 0 || c.drain.Amount.Set() || !ok || !fill.Amount.Set() || !little {
				continue
			}
			p.Found(finding.Finding{Place: fill.Amount.At, Summary: fmt.Sprintf("the %s is drained, and %s is filled into what holds %s", c.cavity.Words(), inWords(c.fills), c.cavity.Capacity.Text.Text),
				Help:    "Look both figures up again; where only a part runs out, write amount = \"…\" at the draining, and where the level decides, until = \"…\" at the filling.",
				Related: []finding.Related{{Place: c.cavity.Capacity.At, Text: "what it holds"}}})
		}
	},
})

// opensMore reports whether the job renews something that takes fluid as well.
func (p *Pass) opensMore() bool {
	for _, step := range p.Job.Steps {
		for _, object := range step.Objects {
			if step.Verb.Key == "replace" && says(object.Words()+" "+object.Text.Text, "filter", "element", "cooler", "hose", "cylinder", "pump", "strainer", "radiator") {
				return true
			}
		}
	}
	return false
}

// inWords says what several steps fill in.
func inWords(fills []*model.Step) string {
	var out []string
	for _, step := range fills {
		if step.Amount.Set() {
			out = append(out, step.Amount.Text.Text)
		}
	}
	return names(out)
}
