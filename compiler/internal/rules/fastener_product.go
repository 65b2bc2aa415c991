package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

// stateOf are the words by which a product for threads tells the state it leaves them in.
var stateOf = []struct {
	state string
	words []string
}{
	{"thread-lock", []string{"lock", "adhesive", "anaerobic", "glue"}},
	{"anti-seize", []string{"seize", "copper paste", "copper grease", "ceramic paste", "moly paste", "graphite"}},
	{"sealant", []string{"seal", "ptfe", "pipe dope", "jointing", "hemp", "tape"}},
}

// wetting are the kinds of fluid that leave a thread in a state; thread-locker, sealant
// and anti-seize are fluids of another kind, and anti-seize may be a grease.
var wetting = map[string][]string{
	"oiled":       {"gear-oil", "engine-oil", "hydraulic-oil", "compressor-oil", "chain-oil", "other"},
	"greased":     {"grease", "other"},
	"anti-seize":  {"grease", "other"},
	"thread-lock": {"other"},
	"sealant":     {"other", "grease"},
}

// near are states that one product serves for as well: an adhesive also seals, anti-seize
// is often a grease. Common practice, no source.
var near = map[string]string{"thread-lock": "sealant", "sealant": "thread-lock", "greased": "anti-seize"}

const bolted = `tools = ["socket-16", "torque-wrench"]
`

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fastener/product-on-dry-thread", Severity: finding.Warning, Title: "A thread is dry and has a product on it",
		Why:     "The torque for a dry thread stretches a wet one by a third more.",
		Source:  "nut factor 0.20 dry and 0.15 lightly oiled (stripmetalcoilprocessing.com, bolt seating torques): the same torque gives a third more load",
		Setting: version + wall + procedure + "no-isolation = \"On the bench\"\nspares = []\nwear = [\"gloves\", \"eye-protection\"]\ncautions = [\"adhesive\"]\nsupplies = [\"thread-locker\"]\n" + bolted + "[supply.thread-locker]\n[part.plug]\nproduct = \"thread-locker\"\nacross = \"16 mm\"\ntorque = \"40 N·m\"\n",
		Bad:     "condition = \"dry\"\n[[step]]\ntighten = \"plug\"\n",
		Good:    "condition = \"thread-lock\"\n[[step]]\ntighten = \"plug\"\n",
	},
	Job: func(p *Pass) {
		p.wetted(func(step *model.Step, part *model.Part, state model.Text) {
			name := part.Product.Name()
			if state.Text != "dry" || p.cleans(name) || part.Cover && slices.Contains(p.leaves(name), "sealant") {
				return // a sealant of a cover goes on its face
			}
			p.Found(finding.Finding{Place: state.At, Summary: fmt.Sprintf("the thread of the %s is dry, and %q goes on it", part.Words(), part.Product.Text),
				Help:    "Write the condition the torque of the manual holds for, or leave the product out.",
				Related: []finding.Related{{Place: part.Product.At, Text: "what goes on it"}}})
		})
	},
})

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fastener/other-product", Severity: finding.Warning, Title: "The product on a thread is of another kind than its condition",
		Why:     "Grease where adhesive is meant lets the screw out; adhesive where oil is meant leaves it loose at its torque.",
		Source:  "common practice, no source",
		Setting: version + wall + procedure + "no-isolation = \"On the bench\"\nspares = []\nwear = [\"gloves\", \"eye-protection\"]\nsupplies = [\"paste\"]\n" + bolted + "[supply.paste]\ntitle = \"Anti-seize paste\"\n[part.plug]\nproduct = \"paste\"\nacross = \"16 mm\"\ntorque = \"40 N·m\"\n",
		Bad:     "condition = \"thread-lock\"\n[[step]]\ntighten = \"plug\"\n",
		Good:    "condition = \"anti-seize\"\n[[step]]\ntighten = \"plug\"\n",
	},
	Job: func(p *Pass) {
		p.wetted(func(_ *model.Step, part *model.Part, state model.Text) {
			kinds, wet := wetting[state.Text]
			fluid := p.Job.Fluid(part.Product.Name())
			meant := p.leaves(part.Product.Name())
			known := fluid != nil && fluid.Kind.Set()
			if !wet || slices.Contains(meant, state.Text) || slices.Contains(meant, near[state.Text]) || p.cleans(part.Product.Name()) {
				return
			}
			if len(meant) == 0 && (!known || slices.Contains(kinds, fluid.Kind.Text)) {
				return
			}
			p.Found(finding.Finding{Place: part.Product.At, Summary: fmt.Sprintf("the thread of the %s is %s, and %q is of another kind", part.Words(), stateWords[state.Text], part.Product.Text),
				Help:    "Name the product the machine's manual asks for, or write the condition it leaves the thread in.",
				Related: []finding.Related{{Place: state.At, Text: "the condition"}}})
		})
	},
})

// wetted calls tell for each part of the job whose thread has a state and a product, once a part.
func (p *Pass) wetted(tell func(step *model.Step, part *model.Part, state model.Text)) {
	told := map[*model.Part]bool{}
	for _, step := range p.Job.Steps {
		for _, object := range step.Objects {
			part := object.Part
			if part == nil || told[part] || !part.Product.Set() || !goesIn(step) {
				continue
			}
			if state := conditionOf(step, part); state.Set() {
				told[part] = true
				tell(step, part, state)
			}
		}
	}
}

// goesIn reports whether a step puts a part in or tightens it, so that what goes on its thread goes on.
func goesIn(step *model.Step) bool {
	return slices.Contains([]string{"tighten", "refit", "replace", "connect"}, step.Verb.Key)
}

// productWords is what a fluid or a consumable is called.
func (p *Pass) productWords(name string) string {
	out := name
	if supply := p.Job.Supply(name); supply != nil {
		out += " " + supply.Title.Text
	}
	if fluid := p.Job.Fluid(name); fluid != nil {
		out += " " + fluid.Title.Text + " " + fluid.Service.Text
	}
	return model.Spoken(out)
}

// leaves are the states a product's name says it leaves a thread in; none where it says nothing.
func (p *Pass) leaves(name string) []string {
	var out []string
	for _, one := range stateOf {
		if says(p.productWords(name), one.words...) {
			out = append(out, one.state)
		}
	}
	return out
}

// cleans reports whether a product cleans or primes a thread, and leaves it dry.
func (p *Pass) cleans(name string) bool {
	fluid := p.Job.Fluid(name)
	return fluid != nil && fluid.Kind.Text == "cleaner" || says(p.productWords(name), "clean", "degreas", "primer", "activator")
}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fastener/no-product", Severity: finding.Warning, Title: "A thread takes a product and nothing says which",
		Why:     "A high-strength adhesive needs heat to come off again, a weak one lets go: the one at hand is taken.",
		Source:  "MIL-STD-40051-2, from memory: a material has a name",
		Setting: version + wall + procedure + "no-isolation = \"On the bench\"\nspares = []\nwear = [\"gloves\", \"eye-protection\"]\ncautions = [\"adhesive\"]\n" + bolted,
		Bad:     "supplies = []\n[part.plug]\nacross = \"16 mm\"\ntorque = \"40 N·m\"\ncondition = \"thread-lock\"\n[[step]]\ntighten = \"plug\"\n",
		Good:    "supplies = [\"locker\"]\n[supply.locker]\n[part.plug]\nacross = \"16 mm\"\ntorque = \"40 N·m\"\ncondition = \"thread-lock\"\nproduct = \"locker\"\n[[step]]\ntighten = \"plug\"\n",
	},
	Job: func(p *Pass) {
		told := map[*model.Part]bool{}
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				part := object.Part
				if part == nil || told[part] || !goesIn(step) || part.Product.Set() {
					continue
				}
				state := conditionOf(step, part)
				if !slices.Contains([]string{"thread-lock", "sealant", "anti-seize"}, state.Text) || p.brought(part, state.Text) {
					continue
				}
				told[part] = true
				p.Found(finding.Finding{Place: state.At, Summary: fmt.Sprintf("the thread of the %s is %s, and nothing says with which product", part.Words(), stateWords[state.Text]),
					Help: "Write product = \"…\" at the part, and describe it in a table [supply.NAME]; where the screw comes coated, say so in its notes."})
			}
		}
	},
})

// coated are words for screws that bring their product with them; common practice, no source.
var coated = []string{"coated", "patch", "pre-applied", "encapsul", "micro", "tape", "comes with", "as delivered", "self-lock", "nylon"}

// brought reports whether the job says what goes on the thread of a part: by what a step
// uses, by words, or because the screw brings it along.
func (p *Pass) brought(part *model.Part, state string) bool {
	if says(partTells(part), coated...) {
		return true
	}
	for _, seal := range part.Seals.Names() {
		if spare := p.Job.Spare(seal); spare != nil && says(spare.Name+" "+spare.Title.Text, append([]string{"screw", "bolt", "stud", "nut", "plug"}, coated...)...) {
			return true
		}
	}
	for _, use := range p.Needs.Supplies {
		if slices.Contains(p.leaves(use.Name), state) {
			return true
		}
	}
	for _, step := range p.Job.Steps {
		for _, object := range step.Objects {
			if object.Part == part && (len(step.Supplies) > 0 || step.Fluid.Set()) {
				return true
			}
		}
		if p.says(step, coated...) {
			return true
		}
	}
	return false
}
