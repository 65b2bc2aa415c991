package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/state"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "sequence/left-slack", Severity: finding.Warning, Title: "Something is slackened and never brought under tension",
		Why:     "The belt jumps off at the first start.",
		Source:  "OASIS DITA machinery task and S1000D: the machine is brought back to the state the closing section says",
		Setting: whole(setting + "no-isolation = \"On the bench\"\nsupplies = []\nspares = []\ntools = []\nwear = [\"eye-protection\", \"face-shield\"]\ncautions = [\"start\", \"pinch\", \"spring\"]\n"),
		Bad:     "[[step]]\nslacken = \"the drive belt\"\n",
		Good:    "[[step]]\nslacken = \"the drive belt\"\n[[step]]\ntension = \"the drive belt\"\nuntil = \"it gives way by a thumb\"\n",
	},
	Job: onBreach(state.LeftSlack, func(_ *Pass, b state.Breach) finding.Finding {
		return finding.Finding{Summary: fmt.Sprintf("the %s is slackened at step %d and never brought under tension", b.Thing, b.Step.Number),
			Help: "Write the step that tensions it, in the same words, or say in end that it stays slack."}
	}),
})
