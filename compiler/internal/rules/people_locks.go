package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "people/locks", Severity: finding.Error, Title: "One of two people has no lock of their own",
		Why:     "Who has no lock on it is at the machine when the other gives the energy back.",
		Source:  "29 CFR 1910.147(f)(3)(ii)(D) and (e)(3)",
		Setting: gearbox + "people = 2\ntools = [\"padlock\"]\ncautions = [\"start\"]\n[tool.padlock]\nkind = \"lock\"\n[energy.mains]\nkind = \"electric\"\nisolate = \"Put the padlock on the switch.\"\nprove = \"Press START.\"\ntools = [\"padlock\"]\n",
		Bad:     "[[prepare]]\nisolate = \"mains\"\nperson = 1\n[[prepare]]\nprove = \"mains\"\nperson = 1\n[[step]]\nclean = \"the vent of the motor\"\n",
		Good:    "[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\nperson = 1\n[[step]]\nclean = \"the vent of the motor\"\n",
	},
	Job: func(p *Pass) {
		if !p.Job.ForTwo() {
			return
		}
		for _, step := range p.Job.Steps {
			verb := step.Verb.Key
			if verb != "isolate" && verb != "restore" {
				continue
			}
			locked := p.Job.LocksAt(step, nil)
			switch {
			case locked && step.Person.N > 0:
				what := "puts on"
				if verb == "restore" {
					what = "takes off"
				}
				p.Found(finding.Finding{Place: step.Person.At, Summary: fmt.Sprintf("step %d is for person %d alone, and each %s a lock of their own there", step.Number, step.Person.N, what),
					Help: "Leave person out: it is a step that both come to."})
			case !p.Job.Procedure.Joins.Given:
			case locked && !model.TellsOfLock(step.Say.Text):
				p.Found(finding.Finding{Place: at(step), Summary: fmt.Sprintf("step %d does not say that each of the two has a lock of their own", step.Number),
					Help: "Say so at the step, as join wrote it, or join the job anew: the procedures were for one, and their words are."})
			case verb == "restore" && !step.Say.Set():
				p.Found(finding.Finding{Place: at(step), Summary: fmt.Sprintf("step %d does not say to look first that the other is clear of the machine", step.Number),
					Help: "Say so at the step, as join wrote it, or join the job anew: the procedures were for one, and their words are."})
			}
		}
	},
})
