package rules

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/trade"
)

// seen is a look at the level of the gearbox of an example.
const seen = "[[step]]\ncheck = \"gearbox\"\nexpect = \"oil at the middle of the glass\"\n"

const oily = setting + "no-isolation = \"On the bench\"\nspares = []\nwear = []\ntools = []\nsupplies = [\"oil\"]\n[cavity.gearbox]\nfluid = \"oil\"\ncapacity = \"1 L\"\n"

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/unknown-grade", Severity: finding.Error, Title: "A grade does not exist",
		Why:     "Nobody sells it, and whoever is at the oil store takes what looks nearest.",
		Source:  "SAE J300 (January 2015), SAE J306 (February 2019), ISO 3448, ASTM D217 for NLGI, FMVSS 116 for brake fluid, API 1560",
		Setting: oily,
		Bad:     "[fluid.oil]\nkind = \"hydraulic-oil\"\ngrade = \"ISO VG 47\"\n[[step]]\nfill = \"gearbox\"\n" + seen,
		Good:    "[fluid.oil]\nkind = \"hydraulic-oil\"\ngrade = \"ISO VG 46\"\n[[step]]\nfill = \"gearbox\"\n" + seen,
	},
	Job: func(p *Pass) {
		for _, fluid := range p.fluids() {
			if _, err := trade.WrongGrade(fluid.Grade.Text); err != nil {
				p.Found(finding.Finding{Place: fluid.Grade.At, Summary: err.Error(), Help: "Write the grade as it stands on the pack and in the machine's manual.", Fixes: meant(err, fluid.Grade.At)})
				continue
			}
			for _, text := range []model.Text{fluid.Grade, fluid.Service} {
				for _, number := range trade.GearServices(text.Text) {
					if known, _ := trade.GearServiceKnown(number); !known {
						p.Found(finding.Finding{Place: text.At, Summary: fmt.Sprintf("%q names a gear service that is not there: GL-%s", text.Text, number), Help: "Write one of GL-1 to GL-6 as it stands on the pack; GL-4 and GL-5 are the ones in use."})
					}
				}
			}
		}
	},
})

// fluids are the fluids the job uses, each once, in order of their first use.
func (p *Pass) fluids() []*model.Fluid {
	var out []*model.Fluid
	for _, use := range p.Needs.Supplies {
		if fluid := p.Job.Fluid(use.Name); fluid != nil && !slices.Contains(out, fluid) {
			out = append(out, fluid)
		}
	}
	return out
}

// certainly are scales that a kind of fluid never has: the two scales of SAE are no
// more alike than their figures, and grease, brake fluid and coolant are no oils.
var certainly = map[string][]trade.GradeKind{
	"engine-oil":     {trade.GearOil, trade.GearService, trade.NLGI, trade.GreaseCode, trade.BrakeFluid, trade.Coolant},
	"gear-oil":       {trade.BrakeFluid, trade.Coolant},
	"hydraulic-oil":  {trade.BrakeFluid, trade.Coolant, trade.NLGI, trade.GreaseCode},
	"compressor-oil": {trade.BrakeFluid, trade.Coolant, trade.NLGI, trade.GreaseCode},
	"chain-oil":      {trade.BrakeFluid, trade.Coolant},
	"grease":         {trade.EngineOil, trade.GearOil, trade.BrakeFluid, trade.Coolant},
	"brake-fluid":    {trade.EngineOil, trade.GearOil, trade.NLGI, trade.GreaseCode, trade.Coolant},
	"coolant":        {trade.EngineOil, trade.GearOil, trade.NLGI, trade.GreaseCode, trade.BrakeFluid, trade.Industrial},
}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/grade-of-another-kind", Severity: finding.Error, Title: "A grade belongs to another kind of fluid",
		Why:     "One of the two is wrong, and the pack that is bought by it goes into the machine.",
		Source:  "SAE J300 for engine oil, SAE J306 for gear oil, ISO 3448 for industrial oil, ASTM D217 for grease, FMVSS 116 for brake fluid; pairs that are met now and then are a warning: common practice, no source",
		Setting: oily,
		Bad:     "[fluid.oil]\nkind = \"engine-oil\"\ngrade = \"SAE 80W-90\"\n[[step]]\nfill = \"gearbox\"\n" + seen,
		Good:    "[fluid.oil]\nkind = \"gear-oil\"\ngrade = \"SAE 80W-90\"\n[[step]]\nfill = \"gearbox\"\n" + seen,
	},
	Job: func(p *Pass) {
		for _, fluid := range p.fluids() {
			grade, err := trade.WrongGrade(fluid.Grade.Text)
			if err != nil || grade.Kind == 0 || trade.GradesOf(fluid.Kind.Text, grade.Kind) && !fourSeasons(fluid, grade) {
				continue
			}
			found := finding.Finding{Place: fluid.Grade.At, Summary: fmt.Sprintf("%q is a grade of %s, and %q is %s", fluid.Grade.Text, grade.Kind, fluid.Name, kindWords(fluid.Kind.Text)),
				Help: "Write the kind as the pack has it, or the grade out of its own scale.", Related: []finding.Related{{Place: fluid.Kind.At, Text: "the kind"}}}
			if slices.Contains(certainly[fluid.Kind.Text], grade.Kind) {
				p.Found(found)
			} else {
				p.Milder(found)
			}
		}
	},
})

// fourSeasons reports whether a gear oil has a grade of two figures that only engine oil has.
func fourSeasons(fluid *model.Fluid, grade trade.Grade) bool {
	return fluid.Kind.Text == "gear-oil" && grade.Kind == trade.EngineOil && strings.Contains(grade.Canonical, "-") && !says(fluid.Title.Text+" "+fluid.Service.Text, "transmission", "gear", "utto", "tractor", "universal", "motorcycle")
}

// kindWords say a kind of fluid with its article.
func kindWords(kind string) string {
	words := model.Spoken(kind)
	return cmp.Or(map[string]string{"engine-oil": "an engine oil", "other": "another fluid"}[kind], "a "+words)
}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fluid/old-service", Severity: finding.Note, Title: "An oil is asked for by a service that is no longer in use",
		Why:     "The counter has no oil with that mark, and gives another that may not suit.",
		Source:  "API 1560: GL-2, GL-3 and GL-6 are inactive, as listed at oilspecifications.org",
		Setting: oily,
		Bad:     "[fluid.oil]\nkind = \"gear-oil\"\ngrade = \"SAE 90\"\nservice = \"API GL-6\"\n[[step]]\nfill = \"gearbox\"\n" + seen,
		Good:    "[fluid.oil]\nkind = \"gear-oil\"\ngrade = \"SAE 90\"\nservice = \"API GL-4\"\n[[step]]\nfill = \"gearbox\"\n" + seen,
	},
	Job: func(p *Pass) {
		for _, fluid := range p.fluids() {
			for _, text := range []model.Text{fluid.Grade, fluid.Service} {
				for _, number := range trade.GearServices(text.Text) {
					if known, inUse := trade.GearServiceKnown(number); known && !inUse {
						p.Found(finding.Finding{Place: text.At, Summary: fmt.Sprintf("%q names API GL-%s, which is no longer in use", text.Text, number), Help: "Ask the maker of the machine or of the oil which oil goes there today."})
					}
				}
			}
		}
	},
})
