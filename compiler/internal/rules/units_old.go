package rules

import (
	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "units/old", Severity: finding.Warning, Title: "An amount is written in a way that misleads",
		Why:     "An old unit or a missing zero before the point is read as ten times as much, or as something else.",
		Source:  "NIST SP 811, 10.5.2 (zero before the point) and 5.2 (units outside the SI)",
		Setting: quiet,
		Bad:     "[[step]]\ncheck = \"gearbox\"\nset = \".5 mm\"\n[cavity.gearbox]\n",
		Good:    "[[step]]\ncheck = \"gearbox\"\nset = \"0.5 mm\"\n[cavity.gearbox]\n",
	},
	Amount: onProblem(quantity.Deprecated),
})
