package rules

import (
	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "units/unknown", Severity: finding.Error, Title: "A unit is not known",
		Why:     "What cannot be read cannot be checked, and the reader at the bench has to guess as well.",
		Source:  "NIST SP 811; ISO 80000",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\ntime = \"5 mni\"\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\ntime = \"5 min\"\n",
	},
	Amount: onProblem(quantity.Unknown),
})
