package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

// spareNouns are parts that are renewed, where a sentence calls them new.
var spareNouns = nouns(
	[3]string{"new (?:\\w+ )?gaskets?", "", "gasket"}, [3]string{"new (?:\\w+ )?o-rings?", "", "o ring"}, [3]string{"new (?:\\w+ )?(?:oil )?seals?", "", "seal"},
	[3]string{"new (?:\\w+ ){0,2}washers?", "", "washer|ring|gasket"}, [3]string{"new (?:\\w+ )?split pins?|new cotter pins?", "", "pin"}, [3]string{"new (?:\\w+ )?filters?(?: element)?", "", "filter"},
	[3]string{"new (?:\\w+ )?(?:v-)?belts?", "", "belt"}, [3]string{"new (?:\\w+ )?circlips?", "", "circlip"}, [3]string{"new (?:\\w+ )?bearings?", "", "bearing"},
	[3]string{"new (?:\\w+ )?spark plugs?", "", "plug"}, [3]string{"new (?:\\w+ )?bolts?", "", "bolt|screw"}, [3]string{"new (?:\\w+ )?(?:lock ?)?nuts?", "", "nut"},
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "spare/in-words", Severity: finding.Warning, Title: "A sentence fits a new part that is not on the list",
		Why:     "The old seal goes back in when the new one lies in the store.",
		Source:  "S1000D: spares stand in the list of the procedure; common practice",
		Setting: setting + "no-isolation = \"On the bench\"\nsupplies = []\ntools = []\nwear = []\n",
		Bad:     "spares = []\n[[step]]\nsay = \"Fit a new gasket.\"\n",
		Good:    "spares = []\n[[step]]\nsay = \"Fit the old gasket again.\"\n",
	},
	Job: func(p *Pass) {
		if !p.Job.Procedure.Spares.Given {
			return
		}
		listed := func(n noun) bool {
			for _, name := range p.Job.Procedure.Spares.Names() {
				words := []string{name}
				if spare := p.Job.Spare(name); spare != nil {
					words = append(words, spare.Words())
				}
				if holds(words, n.stem) {
					return true
				}
			}
			return false
		}
		p.named(spareNouns, listed, func(found finding.Finding, words string) {
			found.Summary += ", and no such part is on the list of spares"
			found.Help = fmt.Sprintf("Describe the %s in a table [spare.NAME], add it to spares of the procedure, and name it at the step with spares = [\"…\"].", words)
			p.Found(found)
		})
	},
})
