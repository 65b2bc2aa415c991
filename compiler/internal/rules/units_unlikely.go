package rules

import (
	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/quantity"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "units/unlikely", Severity: finding.Warning, Title: "A torque is so low or so high in its unit that the other is likely meant",
		Why:     "Pound-inches read as pound-feet are twelve times too much: the commonest over-torque there is.",
		Source:  "common practice, no source",
		Setting: bench + "tools = [\"key-6\", \"wrench-lbf\"]\n[tool.key-6]\nkind = \"hex-bit\"\nsizes = \"5/16 in\"\ndrive = \"1/4\"\n[tool.wrench-lbf]\nkind = \"torque-wrench\"\ndrive = \"1/4\"\nrange = \"20 to 200 lbf·in\"\n[part.clamp]\nhead = \"socket\"\nthread = \"3/8-16 UNC\"\n",
		Bad:     "[[step]]\ntighten = \"clamp\"\ntorque = \"4 lbf·ft\"\ncondition = \"dry\"\n",
		Good:    "[[step]]\ntighten = \"clamp\"\ntorque = \"48 lbf·in\"\ncondition = \"dry\"\n",
	},
	Amount: onProblem(quantity.Unusual),
})
