package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
)

// caught is what a container holds while the job goes on.
type caught struct {
	amount float64 // base unit
	from   []string
	fluid  *model.Fluid
}

// catches calls tell for each draining into a named container with what is in it already;
// a step that disposes of something, or speaks of emptying, empties every container.
func (p *Pass) catches(tell func(step *model.Step, cavity *model.Cavity, tool *model.Tool, amount model.Amount, before caught)) {
	held := map[string]caught{}
	dry := map[string]bool{} // cavities that ran out and were not filled since
	for _, step := range p.Job.Steps {
		if step.Verb.Key == "dispose" || p.says(step, "empty", "tip out", "pour ", "another pan", "second pan", "decant") {
			clear(held)
		}
		for _, object := range step.Objects {
			if object.Cavity != nil && step.Verb.Key == "fill" {
				delete(dry, object.Cavity.Name)
			}
		}
		for _, catch := range p.catchesAt(step) {
			tool := p.Job.Tool(step.Into.Name())
			if tool == nil || tool.Count.Or(1) > 1 {
				continue
			}
			amount := catch.Amount
			if dry[catch.Cavity.Name] && !step.Amount.Set() {
				amount = model.Amount{} // the rest out of another plug
			}
			dry[catch.Cavity.Name] = true
			before := held[tool.Name]
			tell(step, catch.Cavity, tool, amount, before)
			_, high, _ := between(amount)
			fluid := p.fluidIn(step, catch.Cavity)
			held[tool.Name] = caught{before.amount + high, append(before.from, catch.Cavity.Words()), fluid}
		}
	}
}

// catchesAt are what is drained and caught at one step.
func (p *Pass) catchesAt(step *model.Step) []needs.Catch {
	if p.caught == nil {
		p.caught = map[*model.Step][]needs.Catch{}
		for _, one := range p.Needs.Catch {
			p.caught[one.Step] = append(p.caught[one.Step], one)
		}
	}
	return p.caught[step]
}

// filled fills the two cavities of an example again.
const filled = "[[step]]\nfill = \"gearbox\"\n" + seen + "[[step]]\nfill = \"tank\"\n[[step]]\ncheck = \"tank\"\nexpect = \"oil at the mark\"\n"

const twoCavities = setting + "no-isolation = \"On the bench\"\nsupplies = [\"oil\"]\nspares = []\nwear = [\"gloves\"]\ncautions = [\"used-oil\"]\ntools = [\"pan\"]\n[tool.pan]\nkind = \"container\"\nholds = \"8 L\"\n[fluid.oil]\nkind = \"hydraulic-oil\"\n"

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/container-runs-over", Severity: finding.Error, Title: "Two cavities are drained into one container that holds only one",
		Why:     "The pan that took the first runs over at the second, under your feet and into the ground.",
		Source:  "40 CFR 279.22: used oil is kept in containers and not released",
		Setting: twoCavities,
		Bad:     "[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"5 L\"\n[cavity.tank]\nfluid = \"oil\"\ncapacity = \"5 L\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\ndrain = \"tank\"\ninto = \"pan\"\n" + filled,
		Good:    "[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"5 L\"\n[cavity.tank]\nfluid = \"oil\"\ncapacity = \"5 L\"\n[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\ndispose = \"the used oil\"\n[[step]]\ndrain = \"tank\"\ninto = \"pan\"\n" + filled,
	},
	Job: func(p *Pass) {
		p.catches(func(step *model.Step, cavity *model.Cavity, tool *model.Tool, amount model.Amount, before caught) {
			_, room, ok := between(tool.Holds)
			_, runs, known := between(amount)
			if !ok || !known || before.amount == 0 || tool.Holds.Dimension != amount.Dimension || runs > room || before.amount+runs <= room*1.001 {
				return
			}
			p.Found(finding.Finding{Place: step.Into.At, Summary: fmt.Sprintf("%q holds %s, and %s of the %s come to what ran out of the %s", tool.Name, tool.Holds.Text.Text, amount.Text.Text, cavity.Words(), names(before.from)),
				Help:    "Name a second container, or write a step that empties the first: dispose = \"the used oil\".",
				Related: []finding.Related{{Place: tool.Holds.At, Text: "what it holds"}}})
		})
	},
})

const twoFluids = `[cavity.gearbox]
capacity = "1 L"
fluid = "oil"
[cavity.tank]
capacity = "1 L"
fluid = "coolant"
[fluid.oil]
kind = "gear-oil"
[fluid.coolant]
kind = "coolant"
[tool.pan]
kind = "container"
[tool.bucket]
kind = "container"
`

// waste is which used fluids go into one container: oils and grease together, each other kind by itself.
var waste = map[string]string{"gear-oil": "oil", "engine-oil": "oil", "hydraulic-oil": "oil", "compressor-oil": "oil", "chain-oil": "oil", "grease": "oil",
	"coolant": "coolant", "brake-fluid": "brake fluid", "fuel": "fuel", "cleaner": "cleaner"}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/waste-mixed", Severity: finding.Warning, Title: "Used oil and another fluid are drained into one container",
		Why:     "Used oil with coolant, brake fluid or solvent in it is hazardous waste, and nobody takes it with the oil.",
		Source:  "40 CFR 279.10 and 279.11, from memory",
		Setting: setting + "no-isolation = \"On the bench\"\nsupplies = [\"oil\", \"coolant\"]\nspares = []\nwear = [\"gloves\"]\ncautions = [\"used-oil\"]\n",
		Bad:     "tools = [\"pan\"]\n" + twoFluids + "[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\ndrain = \"tank\"\ninto = \"pan\"\n" + filled,
		Good:    "tools = [\"pan\", \"bucket\"]\n" + twoFluids + "[[step]]\ndrain = \"gearbox\"\ninto = \"pan\"\n[[step]]\ndrain = \"tank\"\ninto = \"bucket\"\n" + filled,
	},
	Job: func(p *Pass) {
		p.catches(func(step *model.Step, cavity *model.Cavity, tool *model.Tool, _ model.Amount, before caught) {
			fluid := p.fluidIn(step, cavity)
			if fluid == nil || before.fluid == nil {
				return
			}
			one, other := waste[before.fluid.Kind.Text], waste[fluid.Kind.Text]
			if one == "" || other == "" || one == other {
				return
			}
			p.Found(finding.Finding{Place: step.Into.At, Summary: fmt.Sprintf("step %d drains %s into %q, where %s out of the %s is", step.Number, other, tool.Name, one, names(before.from)),
				Help: "Name a container of its own, or write a step that empties the first: dispose = \"the used oil\"."})
		})
	},
})
