package rules

import (
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/state"
	"benchleaf/compiler/source"
)

// onBreach makes the check of a rule on the machine's state: it tells of each breach
// of one kind, with the step that made the state so as the other place.
func onBreach(kind state.Kind, tell func(p *Pass, b state.Breach) finding.Finding) func(*Pass) {
	return func(p *Pass) {
		for _, b := range p.State.Breaches {
			if b.Kind != kind {
				continue
			}
			found := tell(p, b)
			found.Summary = agree(agree(found.Summary, b.Thing), b.Other)
			found.Place = b.Place
			if b.Since != nil && len(found.Related) == 0 {
				found.Related = []finding.Related{{Place: since(b), Text: fmt.Sprintf("since step %d", b.Since.Number)}}
			}
			p.Found(found)
		}
	}
}

// agree puts the verb after a thing in the plural where the thing is, "the motor
// bolts are loosened", and drops the article of one that brings its own.
func agree(text, thing string) string {
	text = strings.ReplaceAll(text, "the the ", "the ")
	if !strings.HasSuffix(thing, "s") || strings.HasSuffix(thing, "ss") || strings.HasSuffix(thing, "us") {
		return text
	}
	for _, verb := range [][2]string{{" is ", " are "}, {" comes ", " come "}, {" goes ", " go "}, {" hangs ", " hang "}} {
		text = strings.ReplaceAll(text, "the "+thing+verb[0], "the "+thing+verb[1])
	}
	return text
}

// since is where the step that made a state so names the thing.
func since(b state.Breach) source.Place {
	if len(b.Since.Objects) > 0 {
		return b.Since.Objects[0].Text.At
	}
	return at(b.Since)
}

// after says since when something stands as it does.
func after(step *model.Step, verb, never string) string {
	if step == nil {
		return never
	}
	return fmt.Sprintf("%s at step %d", verb, step.Number)
}
