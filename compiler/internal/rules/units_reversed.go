package rules

import (
	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "units/upside-down", Severity: finding.Error, Title: "A range begins above its end",
		Why:     "One of the two figures is mistyped, and nobody at the bench can tell which.",
		Source:  "the language itself: the lower figure of a range stands first",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\ntime = \"10 to 5 min\"\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\ntime = \"5 to 10 min\"\n",
	},
	Amount: onProblem(quantity.Reversed),
})
