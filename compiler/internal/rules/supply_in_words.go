package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
)

// supplyNouns are consumables by the names the trade has for them; common practice, no source.
var supplyNouns = nouns(
	[3]string{"thread-?lock(?:er|ing)?(?: compound)?", "", "lock"}, [3]string{"anti-?seize|copper (?:paste|grease)", "", "seize|copper"}, [3]string{"brake cleaner", "", "cleaner|solvent"},
	[3]string{"degreaser", "", "degreas|cleaner"}, [3]string{"penetrating oil", "", "penetrat"}, [3]string{"(?:thread )?sealant", "", "seal"}, [3]string{"ptfe tape", "", "tape"},
	[3]string{"contact spray", "", "contact"}, [3]string{"cable ties?|zip ties?", "", "tie"}, [3]string{"emery (?:cloth|paper)|sandpaper", "", "emery|sand|abrasive"},
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "supply/in-words", Severity: finding.Warning, Title: "A sentence names a consumable that is not on the list",
		Why:     "The bolt goes back dry when the thread-locker stands in the store.",
		Source:  "S1000D: consumables stand in the list of the procedure; common practice",
		Setting: setting + "no-isolation = \"On the bench\"\nspares = []\ntools = []\nwear = [\"gloves\", \"eye-protection\"]\ncautions = [\"adhesive\"]\n",
		Bad:     "supplies = []\n[[step]]\nsay = \"Put two drops of thread-locker on each bolt.\"\n",
		Good:    "supplies = [\"thread-locker\"]\n[supply.thread-locker]\n[[step]]\nsay = \"Put two drops of thread-locker on each bolt.\"\nsupplies = { thread-locker = 1 }\n",
	},
	Job: func(p *Pass) {
		if !p.Job.Procedure.Supplies.Given {
			return
		}
		listed := func(n noun) bool {
			for _, name := range p.Job.Procedure.Supplies.Names() {
				words := []string{name}
				if supply := p.Job.Supply(name); supply != nil {
					words = append(words, supply.Words())
				} else if fluid := p.Job.Fluid(name); fluid != nil {
					words = append(words, fluid.Words())
				}
				if holds(words, n.stem) {
					return true
				}
			}
			return false
		}
		p.named(supplyNouns, listed, func(found finding.Finding, words string) {
			found.Summary += ", and no such thing is on the list of supplies"
			found.Help = fmt.Sprintf("Describe the %s in a table [supply.NAME], add it to supplies of the procedure, and name it at the step.", words)
			p.Found(found)
		})
	},
})
