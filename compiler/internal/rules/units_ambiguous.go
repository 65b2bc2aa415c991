package rules

import (
	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "units/ambiguous", Severity: finding.Error, Title: "A unit can be read in two ways",
		Why:     "A US and an imperial gallon differ by a fifth: a gearbox filled by the wrong one runs short or blows its seals.",
		Source:  "NIST Handbook 44 App. C; imperial gallon 4.546 09 L, UK Weights and Measures Act 1985",
		Setting: quiet,
		Bad:     "[[step]]\ninspect = \"gearbox\"\n[cavity.gearbox]\ncapacity = \"1 qt\"\n",
		Good:    "[[step]]\ninspect = \"gearbox\"\n[cavity.gearbox]\ncapacity = \"1 US qt\"\n",
	},
	Amount: onProblem(quantity.Ambiguous),
})
