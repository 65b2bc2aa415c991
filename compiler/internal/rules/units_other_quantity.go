package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "units/other-quantity", Severity: finding.Warning, Title: "A limit is of another quantity than its name says",
		Why:     "A gap in newtons is a slip of the pen, and nobody at the machine can read it.",
		Source:  "the international system of units (BIPM, SI brochure): each quantity has its units",
		Setting: quiet,
		Bad:     "[limit.blade-gap]\nlimit = \"3 to 5 N\"\noutside = \"Set it again.\"\n[[step]]\nmeasure = \"blade-gap\"\nreading = \"Gap\"\n",
		Good:    "[limit.blade-gap]\nlimit = \"3 to 5 mm\"\noutside = \"Set it again.\"\n[[step]]\nmeasure = \"blade-gap\"\nreading = \"Gap\"\n",
	},
	Job: func(p *Pass) {
		tell := func(amount *model.Amount, of interface{ Words() string }) {
			if !amount.OK {
				return
			}
			words := of.Words()
			name := strings.Fields(strings.ToLower(apartWords.Replace(words)))
			for i := len(name) - 1; i >= 0; i-- { // the last word that names a quantity says which
				fits, known := measured[name[i]]
				if !known {
					continue
				}
				if !slices.Contains(fits, amount.Dimension) {
					p.Found(finding.Finding{Place: amount.At, Summary: fmt.Sprintf("the %s is given as a %s: %s", words, amount.Dimension, amount.Text.Text),
						Help: fmt.Sprintf("Write it as a %s, or name what is measured.", fits[0])})
				}
				return
			}
		}
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				if object.Limit != nil {
					tell(&object.Limit.Limit, object.Limit)
					tell(&object.Limit.New, object.Limit)
				}
				if step.Limit.OK || step.SetTo.OK {
					tell(&step.Limit, object)
					tell(&step.SetTo, object)
				}
			}
		}
	},
})

var apartWords = strings.NewReplacer("-", " ", ",", " ")

// measured are words for what is measured, with the quantities it can be given in; the
// usual one first.
var measured = func() map[string][]quantity.Dimension {
	out := map[string][]quantity.Dimension{}
	for _, one := range []struct {
		words string
		fits  []quantity.Dimension
	}{
		{"gap clearance depth thickness width height length diameter protrusion tread", []quantity.Dimension{quantity.Length, quantity.Ratio}},
		{"play slack runout out wear sag travel deflection backlash offset stretch line track", []quantity.Dimension{quantity.Length, quantity.Angle, quantity.Ratio, quantity.Count}},
		{"pressure", []quantity.Dimension{quantity.Pressure}},
		{"temperature", []quantity.Dimension{quantity.Temperature, quantity.TemperatureDifference}},
		{"force pull", []quantity.Dimension{quantity.Force, quantity.Mass}},
		{"tension", []quantity.Dimension{quantity.Force, quantity.Length, quantity.Frequency, quantity.Pressure, quantity.Mass, quantity.Angle, quantity.Count}},
		{"voltage", []quantity.Dimension{quantity.Voltage}},
		{"current", []quantity.Dimension{quantity.Current}},
		{"resistance", []quantity.Dimension{quantity.Resistance}},
		{"speed", []quantity.Dimension{quantity.RotationalSpeed, quantity.Speed, quantity.Frequency, quantity.Ratio}},
		{"weight mass", []quantity.Dimension{quantity.Mass}},
	} {
		for _, word := range strings.Fields(one.words) {
			out[word] = one.fits
		}
	}
	return out
}()
