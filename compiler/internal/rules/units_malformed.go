package rules

import (
	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "units/unreadable", Severity: finding.Error, Title: "An amount cannot be read",
		Why:     "What is no plain amount is read differently by each who sees it, and nothing can be worked out from it.",
		Source:  "NIST SP 811, 10.5.3: the decimal marker",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\ntime = \"2,5 min\"\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\ntime = \"2.5 min\"\n",
	},
	Amount: onProblem(quantity.Malformed),
})
