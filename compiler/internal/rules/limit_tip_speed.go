package rules

import (
	"fmt"
	"strconv"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/trade"
)

var (
	bladeWords  = pattern.MustCompile(`(?i)\b(?:blade|blades|cutter|cutters|flail|flails)\b`)
	bladeLength = pattern.MustCompile(`(?i)\b(\d+(?:\.\d+)?)\s*(mm|in)\b`)
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "limit/tip-speed", Severity: finding.Warning, Title: "A mower's blade runs faster at its tip than it may",
		Why:     "What the blade hits flies farther than the guards are made for, and a cracked blade comes apart.",
		Source:  "ANSI B71.1, A.22.4: 19 000 ft/min (96.5 m/s), read in a quotation of it",
		Setting: bench + "tools = [\"tachometer\"]\n[tool.tachometer]\nkind = \"tester\"\n[part.blade]\ntitle = \"mower blade 21 in\"\n",
		Bad:     "[limit.blade-speed]\nlimit = \"max 3600 rpm\"\noutside = \"Set the governor.\"\n[[step]]\nmeasure = \"blade-speed\"\nreading = \"Speed\"\ntools = [\"tachometer\"]\n",
		Good:    "[limit.blade-speed]\nlimit = \"max 3200 rpm\"\noutside = \"Set the governor.\"\n[[step]]\nmeasure = \"blade-speed\"\nreading = \"Speed\"\ntools = [\"tachometer\"]\n",
	},
	Job: func(p *Pass) {
		var speeds []model.Amount
		keep := func(amount model.Amount, of string) {
			if amount.OK && amount.Dimension == quantity.RotationalSpeed && bladeWords.MatchString(of) {
				speeds = append(speeds, amount)
			}
		}
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				if object.Limit != nil {
					keep(object.Limit.Limit, object.Limit.Words())
				}
				keep(step.Limit, object.Words())
				keep(step.SetTo, object.Words())
			}
		}
		if len(speeds) == 0 {
			return
		}
		longest, words := 0.0, ""
		for _, name := range p.Job.Things("part", "spare") {
			if length := bladeOf(name); length > longest {
				longest, words = length, name
			}
		}
		for _, amount := range speeds {
			high, ok := amount.Highest()
			if !ok {
				continue
			}
			turns, _ := high.Float64()
			if speed := trade.TipSpeed(longest, turns); speed > trade.MostTipSpeed {
				p.Found(finding.Finding{Place: amount.At, Summary: fmt.Sprintf("at %s the tip of the %s runs at %.0f m/s, and 96.5 m/s is the most", amount.Text.Text, words, speed),
					Help: "Look the speed and the length of the blade up again. Engine speed and blade speed differ by the pulleys."})
			}
		}
	},
})

// bladeOf is the length in mm that the name of a mower's blade gives, from tip to tip; 0
// for what is no blade or gives none.
func bladeOf(words string) float64 {
	lower := strings.ToLower(words)
	m := bladeLength.FindStringSubmatch(lower)
	if m == nil || !bladeWords.MatchString(lower) || strings.Contains(lower, "band") || strings.Contains(lower, "saw") {
		return 0
	}
	length, _ := strconv.ParseFloat(m[1], 64)
	if m[2] == "in" {
		length *= 25.4
	}
	if length < 200 || length > 2500 { // thickness, or no mower's
		return 0
	}
	return length
}
