package rules

import (
	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "units/disagree", Severity: finding.Error, Title: "Two figures for one amount do not agree",
		Why:     "Whoever reads the other figure sets or fills something else.",
		Source:  "NIST SP 811 App. B.8, exact factors; MIL-STD-40051-2: metric equivalent in parentheses",
		Setting: quiet,
		Bad:     "[[step]]\ninspect = \"gearbox\"\n[cavity.gearbox]\ncapacity = \"1.1 L (2.2 US qt)\"\n",
		Good:    "[[step]]\ninspect = \"gearbox\"\n[cavity.gearbox]\ncapacity = \"1.1 L (1.2 US qt)\"\n",
	},
	Amount: onProblem(quantity.Disagree),
})
