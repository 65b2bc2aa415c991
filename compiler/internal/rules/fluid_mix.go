package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/trade"
)

// meeting is two fluids that come together in one place without its being emptied between.
type meeting struct {
	step   *model.Step
	where  string
	there  *model.Fluid // what is in already
	comes  *model.Fluid
	inAt   model.Text // what tells of the one that is in
	nameAt model.Text // what names the one that comes
}

// meetings are the places of the job where a second fluid comes to a first one. Where
// a step fills a cavity with another fluid than its own, fluid/not-of-the-cavity says it.
func (p *Pass) meetings() []meeting {
	type content struct {
		fluid *model.Fluid
		at    model.Text
	}
	var out []meeting
	in, nothing := map[string]content{}, &model.Fluid{}
	for _, step := range p.Job.Steps {
		for _, object := range step.Objects {
			var key, where string
			var own model.Text
			switch {
			case object.Cavity != nil:
				key, where, own = "cavity "+object.Cavity.Name, object.Cavity.Words(), object.Cavity.Fluid
			case object.Point != nil:
				key, where, own = "point "+object.Point.Name, object.Point.Words(), object.Point.Fluid
			default:
				continue
			}
			switch step.Verb.Key {
			case "drain", "clean":
				in[key] = content{nothing, own}
				continue
			case "fill", "bleed", "grease", "lubricate":
			default:
				continue
			}
			name := own
			if step.Fluid.Set() {
				name = step.Fluid
			}
			comes := p.Job.Fluid(name.Name())
			there, known := in[key]
			if !known {
				there = content{p.Job.Fluid(own.Name()), own}
			}
			other := step.Verb.Key == "fill" && own.Set() && step.Fluid.Set() && step.Fluid.Name() != own.Name()
			if comes != nil && there.fluid != nil && there.fluid.Name != "" && there.fluid.Name != comes.Name && !other {
				out = append(out, meeting{step, where, there.fluid, comes, there.at, name})
			}
			if comes != nil {
				in[key] = content{comes, name}
			}
		}
	}
	return out
}

// looked is a look at the level of what the examples fill.
const looked = "[[step]]\ncheck = \"circuit\"\nexpect = \"fluid at the mark\"\n"

const brakes = setting + `no-isolation = "On the bench"
spares = []
wear = ["gloves", "eye-protection"]
tools = []
cautions = ["brake-fluid"]
`

const brakeFluids = `[fluid.dot-4]
kind = "brake-fluid"
grade = "DOT 4"
[fluid.dot-5]
kind = "brake-fluid"
grade = "DOT 5"
[fluid.dot-5-1]
kind = "brake-fluid"
grade = "DOT 5.1"
[cavity.circuit]
capacity = "0.5 L"
`

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/brake-fluids-mix", Severity: finding.Error, Title: "Brake fluid of silicone comes to one of glycol",
		Why:     "The two do not mix: water collects in the low places, seals swell, and the pedal goes soft.",
		Source:  "FMVSS 116, 49 CFR 571.116: DOT 5 is of silicone and mixes only with itself, DOT 3, 4 and 5.1 with each other",
		Setting: brakes,
		Bad:     "supplies = [\"dot-4\", \"dot-5\"]\n" + brakeFluids + "[[step]]\nfill = \"circuit\"\nfluid = \"dot-4\"\namount = \"0.3 L\"\n[[step]]\nrun = \"the pump\"\nleast = \"1 min\"\n[[step]]\nfill = \"circuit\"\nfluid = \"dot-5\"\namount = \"0.2 L\"\n" + looked,
		Good:    "supplies = [\"dot-4\", \"dot-5-1\"]\n" + brakeFluids + "[[step]]\nfill = \"circuit\"\nfluid = \"dot-4\"\namount = \"0.3 L\"\n[[step]]\nrun = \"the pump\"\nleast = \"1 min\"\n[[step]]\nfill = \"circuit\"\nfluid = \"dot-5-1\"\namount = \"0.2 L\"\n" + looked,
	},
	Job: func(p *Pass) {
		for _, m := range p.meetings() {
			if trade.BrakeFluidsMix(m.there.Grade.Text, m.comes.Grade.Text) == trade.DoesNotMix {
				p.Found(finding.Finding{Place: m.nameAt.At, Summary: fmt.Sprintf("step %d brings %s into the %s, where %s is", m.step.Number, m.comes.Grade.Text, m.where, m.there.Grade.Text),
					Help:    "Name the fluid the machine's manual asks for. DOT 5 and DOT 5.1 are different fluids.",
					Related: []finding.Related{{Place: m.inAt.At, Text: "what is in it"}}})
			}
		}
	},
})

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/coolants-mix", Severity: finding.Warning, Title: "Two kinds of coolant come together",
		Why:     "Inhibitors of two kinds can drop out as gel, and the radiator clogs. Their colour tells nothing.",
		Source:  "from memory of ASTM D3306 and D6210: organic, hybrid and inorganic inhibitors are not mixed",
		Setting: setting + "no-isolation = \"On the bench\"\nspares = []\nwear = [\"gloves\", \"eye-protection\"]\ntools = []\nsupplies = [\"blue\", \"red\"]\n[fluid.blue]\nkind = \"coolant\"\nservice = \"IAT\"\n[fluid.red]\nkind = \"coolant\"\nservice = \"OAT\"\n[cavity.circuit]\ncapacity = \"6 L\"\n",
		Bad:     "[[step]]\nfill = \"circuit\"\nfluid = \"blue\"\namount = \"3 L\"\n[[step]]\nrun = \"the pump\"\nleast = \"1 min\"\n[[step]]\nfill = \"circuit\"\nfluid = \"red\"\namount = \"3 L\"\n" + looked,
		Good:    "[[step]]\nfill = \"circuit\"\nfluid = \"blue\"\namount = \"6 L\"\n[[step]]\nclean = \"circuit\"\n[[step]]\nfill = \"circuit\"\nfluid = \"red\"\namount = \"6 L\"\n" + looked,
	},
	Job: func(p *Pass) {
		for _, m := range p.meetings() {
			one, okOne := trade.CoolantKind(m.there.Title.Text + " " + m.there.Service.Text + " " + m.there.Grade.Text)
			other, okOther := trade.CoolantKind(m.comes.Title.Text + " " + m.comes.Service.Text + " " + m.comes.Grade.Text)
			if okOne && okOther && one != other && m.there.Kind.Text == "coolant" && m.comes.Kind.Text == "coolant" {
				p.Found(finding.Finding{Place: m.nameAt.At, Summary: fmt.Sprintf("step %d brings coolant of the kind %s into the %s, where %s is", m.step.Number, other, m.where, one),
					Help:    "Drain and rinse first, or top up with what is in.",
					Related: []finding.Related{{Place: m.inAt.At, Text: "what is in it"}}})
			}
		}
	},
})

// flushed are words for old grease that is pressed or washed out first.
var flushed = []string{"purge", "wash", "old grease", "rinse", "flush", "until only new", "until only fresh"}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/greases-mix", Severity: finding.Warning, Title: "A point is greased with another thickener than it has",
		Why:     "Greases that do not get on go thin and run out, or go hard, and the bearing runs dry.",
		Source:  "US Bureau of Reclamation, FIST 2-4, table 2; published charts contradict each other, and ASTM D6185 makes it a test of the two products, so that it is never an error",
		Setting: setting + "no-isolation = \"On the bench\"\nspares = []\nwear = [\"gloves\"]\ntools = []\nsupplies = [\"poly\"]\n[fluid.lithium]\nkind = \"grease\"\nthickener = \"lithium\"\n[fluid.poly]\nkind = \"grease\"\nthickener = \"polyurea\"\n[point.bearing]\n",
		Bad:     "fluid = \"lithium\"\n[[step]]\ngrease = \"bearing\"\nfluid = \"poly\"\namount = \"20 g\"\n",
		Good:    "fluid = \"poly\"\n[[step]]\ngrease = \"bearing\"\namount = \"20 g\"\n",
	},
	Job: func(p *Pass) {
		for _, m := range p.meetings() {
			one, other := m.there.Thickener.Text, m.comes.Thickener.Text
			if one == "" || other == "" || p.says(m.step, flushed...) {
				continue
			}
			found := finding.Finding{Place: m.nameAt.At,
				Help:    "Take the grease the point has. To change over, clean the bearing first, or press grease through until only the new one comes, and say so at the step.",
				Related: []finding.Related{{Place: m.inAt.At, Text: "the grease of the point"}}}
			switch trade.ThickenersMix(one, other) {
			case trade.DoesNotMix:
				found.Summary = fmt.Sprintf("step %d brings %s grease to the %s, which has %s: the two do not mix", m.step.Number, model.Spoken(other), m.where, model.Spoken(one))
				p.Found(found)
			case trade.Borderline, trade.Unknown:
				found.Summary = fmt.Sprintf("step %d brings %s grease to the %s, which has %s: it is not certain that they mix", m.step.Number, model.Spoken(other), m.where, model.Spoken(one))
				p.Milder(found)
			}
		}
	},
})
