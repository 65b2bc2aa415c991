package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/pattern"
)

// Words of what reaches high once it is raised, of sentences that raise it, of machines and
// places where it stays low or under a roof, and of the lines; common practice, no source.
var (
	reachesUp = pattern.MustCompile(`(?i)\b(?:tube|grain auger|unloading auger|swing auger|transport auger|spout|mast|derrick|boom|tipper|tipping (?:body|bed|trailer)|extension ladder|aerial)\b`)
	raisesUp  = pattern.MustCompile(`(?i)\b(?:raise|erect|extend|unfold|crank up|wind up|tip up) (?:the|its|your)\b[^.;,]*?\b(?:tube|mast|derrick|boom|tipper|tipping (?:body|bed|trailer)|ladder|auger)\b`)
	staysLow  = pattern.MustCompile(`(?i)\binner tube|\bcapillary|\b(?:fork ?lifts?|fork ?truck|lift truck|stacker|loader|digger|post.?hole|shop crane|engine crane|workshop|indoors?|mill|lathe|saw|drill press|bench|press)\b`)
	lines     = pattern.MustCompile(`(?i)\boverhead\b|\bpower ?lines?\b|\boverhead (?:wires?|cables?)\b|\b(?:wires?|lines?|cables?) (?:above|over)\b|\bhigh.voltage line`)
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/overhead-line", Severity: finding.Warning, Title: "Something tall is raised and no word says to look for power lines",
		Why:     "What touches a line, or only comes near it, kills whoever touches the machine.",
		Source:  "29 CFR 1910.333(c)(3)(iii), from memory: raised parts of machinery keep 10 ft from lines; that lines may be near is common practice, no source",
		Setting: setting + "no-isolation = \"Nothing on it is driven\"\nsupplies = []\nspares = []\ntools = []\nwear = [\"helmet\"]\ncautions = [\"crushing\"]\n",
		Bad:     "[[step]]\nraise = \"the light mast\"\n[[step]]\ninspect = \"the far end of the yard\"\n[[step]]\nlower = \"the light mast\"\n",
		Good:    "[[step]]\nraise = \"the light mast\"\nsay = \"Look up first, and keep away from overhead lines.\"\n[[step]]\ninspect = \"the far end of the yard\"\n[[step]]\nlower = \"the light mast\"\n",
	},
	Job: func(p *Pass) {
		words := p.allWords()
		if staysLow.MatchString(strings.Join(words[:2], " ")) || p.speaksOfLines(words) {
			return
		}
		tell := func(found finding.Finding, step int, what string) {
			found.Summary = fmt.Sprintf("step %d raises the %s, and no word of the job is about overhead power lines", step, what)
			found.Help = "Add a message with signal = \"danger\" and against = [\"shock\"] that says how far to keep from lines; or say in start that none is near."
			p.Found(found)
		}
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				if step.Verb.Key == "raise" && reachesUp.MatchString(object.Words()) && !staysLow.MatchString(object.Words()) {
					tell(finding.Finding{Place: object.Text.At}, step.Number, object.Words())
					return
				}
			}
			if at := raisesUp.FindStringIndex(step.Say.Text); at != nil && !staysLow.MatchString(step.Say.Text) {
				said := strings.Fields(step.Say.Text[at[0]:at[1]])
				tell(finding.Finding{Place: step.Say.Inside(at[0], at[1])}, step.Number, said[len(said)-1])
				return
			}
		}
	},
})

// speaksOfLines reports whether the words of the job or one of its messages speak of power lines.
func (p *Pass) speaksOfLines(words []string) bool {
	for _, m := range p.messages() {
		words = append(words, m.Hazard.Text, m.Consequence.Text, m.Avoid.Text)
	}
	for _, step := range p.Job.Steps {
		for _, keep := range step.Keep.Items {
			words = append(words, keep.Text)
		}
	}
	return lines.MatchString(strings.Join(words, ". "))
}
