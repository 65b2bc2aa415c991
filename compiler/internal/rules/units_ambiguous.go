package rules

import (
	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "units/ambiguous", Severity: finding.Error, Title: "A unit can be read in two ways",
		Why:     "One reader takes it one way and the next another, and both set the machine by it: US and imperial gallons differ by a fifth, pound-feet and pound-inches by twelve.",
		Source:  "NIST Handbook 44 App. C; imperial gallon 4.546 09 L, UK Weights and Measures Act 1985",
		Setting: quiet,
		Bad:     "[[step]]\ninspect = \"gearbox\"\n[cavity.gearbox]\ncapacity = \"1 qt\"\n",
		Good:    "[[step]]\ninspect = \"gearbox\"\n[cavity.gearbox]\ncapacity = \"1 US qt\"\n",
	},
	Amount: onProblem(quantity.Ambiguous),
})
