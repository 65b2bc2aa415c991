package rules

import (
	"fmt"

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
			found.Help = agree(agree(found.Help, b.Thing), b.Other)
			found.Place = b.Place
			if b.Since != nil && len(found.Related) == 0 {
				found.Related = []finding.Related{{Place: since(b), Text: fmt.Sprintf("since step %d", b.Since.Number)}}
			}
			p.Found(found)
		}
	}
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
