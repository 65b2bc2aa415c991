package rules

import (
	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "units/wrong-dimension", Severity: finding.Error, Title: "An amount is of another kind than the key asks for",
		Why:     "What is written is another kind of thing, so whoever needs the figure has none.",
		Source:  "ISO 80000-1: quantities of different dimension do not compare",
		Setting: quiet,
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\ntime = \"5 mm\"\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\ntime = \"5 min\"\n",
	},
	Amount: onProblem(quantity.Wrong),
})
