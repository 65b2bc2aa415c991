package join

import (
	"slices"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/pattern"
)

// raises are kinds of tools that make dirt fly, and dirty the words for it; common practice,
// no source.
var (
	raisesDirt = []string{"brush", "scraper", "file", "grinder", "air-gun", "punch"}
	dirty      = pattern.MustCompile(`(?i)\b(sweep|blow|blast|brush|grind|scrape|sand down)\b`)
)

// shutFromDirt lets a vessel be shut while others make dirt: a cover that guards against
// nothing is on for the tasks of other procedures that clean, grind, blow or sweep.
func (p *problem) shutFromDirt() {
	p.lids = make([]uint64, len(p.inputs))
	for input := range p.inputs {
		p.lids[input] = p.vessels(p.inputs[input].Job)
		for c, acts := range p.machine.on {
			if len(acts) == 0 { // nobody says how it is shut
				p.lids[input] &^= 1 << c
			}
		}
	}
	for t := range p.tasks {
		one := &p.tasks[t]
		if !slices.ContainsFunc(one.steps, func(step *model.Step) bool { return makesDirt(p.inputs[one.input].Job, step) }) {
			continue
		}
		for input, lids := range p.lids {
			if input != one.input {
				one.need.on |= lids &^ one.need.off
			}
		}
	}
}

// guardFromTurning lets a guard be on while others turn the works over by hand: it is off for its
// own procedure, and who turns has had it on. Only a guard that somebody says how to put back.
func (p *problem) guardFromTurning() {
	guards := uint64(0)
	for c, against := range p.machine.guards {
		if against != 0 && len(p.machine.on[c]) > 0 {
			guards |= 1 << c
		}
	}
	for t := range p.tasks {
		one := &p.tasks[t]
		job := p.inputs[one.input].Job
		if slices.ContainsFunc(one.steps, func(step *model.Step) bool { return needs.TurnsByHand(job, step) }) {
			one.need.on |= guards &^ one.need.off
		}
	}
}

// makesDirt reports whether a step makes dirt: by its verb, its tools or its words.
func makesDirt(job *model.Job, step *model.Step) bool {
	switch step.Verb.Key {
	case "clean", "sharpen":
		return true
	}
	if slices.ContainsFunc(step.Tools.Names(), func(name string) bool {
		tool := job.Tool(name)
		return tool != nil && slices.Contains(raisesDirt, tool.Kind.Text)
	}) {
		return true
	}
	return dirty.MatchString(step.Say.Text)
}

// shuts reports whether a change shuts a vessel that its own procedure has open while a wait
// of it runs: air goes in through it, and somebody looks in.
func (p *problem) shuts(w wait, from, to vector) bool {
	return to.input != w.input+1 && from.off&^to.off&p.lids[w.input] != 0
}
