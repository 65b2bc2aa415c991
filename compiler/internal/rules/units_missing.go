package rules

import (
	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "units/missing", Severity: finding.Error, Title: "An amount has no unit",
		Why:     "A bare figure is read in whatever unit the reader is used to: 42 newton metres and 42 pound-feet differ by a third.",
		Source:  "NIST SP 811, 7.2: a value is a number and a unit",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\ntime = \"5\"\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\ntime = \"5 min\"\n",
	},
	Amount: onProblem(quantity.Missing),
})
