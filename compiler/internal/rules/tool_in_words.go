package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
)

// brakeStem is of a tool that has its name in common with a part of a brake.
const brakeStem = "calip|callip"

// toolNouns are tools by the names the trade has for them; common practice, no source.
var toolNouns = nouns(
	[3]string{"torque wrench", "torque-wrench", "torque wrench"}, [3]string{"grease gun", "grease-gun", "grease gun"}, [3]string{"feeler gauges?|feelers", "gauge", "feeler"},
	[3]string{"breaker bar", "breaker-bar", "bar"}, [3]string{"impact (?:wrench|gun|driver)", "impact-wrench", "impact"}, [3]string{"dial (?:indicator|gauge)", "indicator", "indicator|dial"},
	[3]string{"pry ?bars?|crowbar", "pry-bar", "bar"}, [3]string{"multimeter|voltmeter|voltage tester", "tester", "tester|meter"}, [3]string{"(?:axle|jack) stands?", "stand", "stand"},
	[3]string{"chain hoist|hoist", "hoist", "hoist"}, [3]string{"puller", "puller", "puller"}, [3]string{"circlip pliers|pliers", "pliers", "pliers"}, [3]string{"funnel", "funnel", "funnel"},
	[3]string{"drain pan|drip tray|bucket|tray", "container", "pan|tray|bucket|drum|can"}, [3]string{"wire brush", "brush", "brush"}, [3]string{"scraper", "scraper", "scraper"},
	[3]string{"straight-?edge", "measure", "straight"}, [3]string{"callipers?|calipers?", "measure", brakeStem}, [3]string{"tape measure|steel rule", "measure", "rule|tape"},
	[3]string{"hand lamp|torch|flashlight|lamp", "light", "lamp|torch|light"}, [3]string{"padlocks?|(?:your|your own|each own|own) lock", "lock", "lock"}, [3]string{"lock and tag|(?:your|lock-?out|danger) tag", "tag", "tag"}, [3]string{"strap wrench", "special", "strap"},
	[3]string{"air gun|blow gun", "air-gun", "air"}, [3]string{"(?:soft-?face |rubber |copper )?mallet", "hammer", "mallet"}, [3]string{"step ?ladder|ladder", "ladder", "ladder"},
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "tool/in-words", Severity: finding.Warning, Title: "A sentence names a tool that is not on the list",
		Why:     "The walk back to the tool wall is made with the machine open.",
		Source:  "S1000D: every support item used in a step stands in the list; the names of tools are common practice",
		Setting: bench,
		Bad:     "tools = []\n[[step]]\nsay = \"Go over all four again with the torque wrench.\"\n",
		Good:    "tools = []\n[[step]]\nsay = \"Go over all four again, without a torque wrench.\"\n",
	},
	Job: func(p *Pass) {
		if !p.Job.Procedure.Tools.Given {
			return
		}
		listed := func(n noun) bool {
			if n.stem == brakeStem && says(strings.Join(p.allWords(), " "), "brake") {
				return true // the part of a brake, and no instrument
			}
			for _, tool := range p.Job.Listed() {
				if tool.Kind.Text == n.kind || holds([]string{tool.Name, tool.Title.Text}, n.stem) {
					return true
				}
			}
			return false
		}
		p.named(toolNouns, listed, func(found finding.Finding, words string) {
			found.Summary += ", and no such tool is on the list"
			for _, own := range []string{"your ", "each ", "own "} {
				words = strings.TrimPrefix(words, own)
			}
			found.Help = fmt.Sprintf("Add the %s to tools of the procedure, and name it at the step with tools = [\"…\"].", words)
			p.Found(found)
		})
	},
})
