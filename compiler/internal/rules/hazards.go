package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/internal/hazard"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/trade"
)

// Message is a safety message in force: for the whole job, or at a step.
type message struct {
	*model.Caution
	step  *model.Step // nil where it stands for the whole job
	level trade.Signal
}

// messages lists the safety messages of a job in the order in which they are read.
func (p *Pass) messages() []message {
	if p.heard == nil {
		p.heard = p.read()
	}
	return p.heard
}

func (p *Pass) read() []message {
	out := []message{}
	add := func(caution *model.Caution, step *model.Step) {
		if caution == nil {
			return
		}
		caution = hazard.Message(caution, p.Hazards)
		if level, err := trade.ParseSignal(caution.Signal.Text); err == nil {
			out = append(out, message{caution, step, level})
		}
	}
	for _, name := range p.Job.Procedure.Cautions.Names() {
		add(p.Job.Caution(name), nil)
	}
	for _, step := range p.Job.Steps {
		for _, name := range step.Cautions.Names() {
			add(p.Job.Caution(name), step)
		}
		for _, own := range step.Own {
			add(own, step)
		}
	}
	return out
}

// before reports whether a message is read before or at a step.
func (m message) before(step *model.Step) bool { return m.step == nil || m.step.Number <= step.Number }

func (m message) against(hazard string) bool { return m.Against.Has(hazard) }

// covered tells how a hazard of a step is covered.
type covered int

const (
	enough covered = iota
	tooLow
	tooLate
	missing
)

// cover finds the message that speaks for a hazard: the gravest before the step,
// or else one after it.
func cover(messages []message, implied hazard.Implied) (covered, message) {
	var best, late message
	for _, m := range messages {
		switch {
		case !m.against(implied.Hazard.Key):
		case m.before(implied.Step) && (best.Caution == nil || m.level < best.level):
			best = m
		case !m.before(implied.Step) && late.Caution == nil:
			late = m
		}
	}
	switch {
	case best.Caution != nil && best.level.Covers(implied.Level):
		return enough, best
	case best.Caution != nil:
		return tooLow, best
	case late.Caution != nil:
		return tooLate, late
	default:
		return missing, message{}
	}
}

// uncovered calls tell once a hazard that is covered in one way, with the first
// step it is met at and the numbers of the others.
func (p *Pass) uncovered(want covered, tell func(implied hazard.Implied, m message, steps string)) {
	messages := p.messages()
	var first []hazard.Implied
	steps := map[string][]string{}
	with := map[string]message{}
	for _, implied := range p.Hazards {
		how, m := cover(messages, implied)
		if how != want {
			continue
		}
		key := implied.Hazard.Key
		if i := slices.IndexFunc(first, func(other hazard.Implied) bool { return other.Hazard.Key == key }); i < 0 {
			first = append(first, implied)
			with[key] = m
		} else if implied.Level < first[i].Level {
			first[i].Level, first[i].Raised = implied.Level, implied.Raised // one message has to do for all
		}
		steps[key] = append(steps[key], fmt.Sprint(implied.Step.Number))
	}
	for _, implied := range first {
		numbers := steps[implied.Hazard.Key]
		text := "step " + numbers[0]
		if len(numbers) > 1 {
			text = fmt.Sprintf("step %s (and %s)", numbers[0], names(numbers[1:]))
		}
		tell(implied, with[implied.Hazard.Key], text)
	}
}

// ownMessage is a message for a hazard at its level, as it stands under its step.
func ownMessage(implied hazard.Implied) string {
	known, can := implied.Hazard, "It "+implied.Hazard.Consequence+"."
	if implied.Level == trade.Danger {
		can = strings.Replace(can, "It can ", "It will ", 1)
	}
	lines := []string{
		fmt.Sprintf("[[%s.caution]]", implied.Step.Section),
		fmt.Sprintf("signal = %q", implied.Level),
		fmt.Sprintf("against = [%q]", known.Key),
		fmt.Sprintf("hazard = %q", known.Hazard),
		fmt.Sprintf("consequence = %q", can),
		fmt.Sprintf("avoid = %q", known.Avoid),
	}
	return strings.Join(lines, "\n")
}

// onList reports whether some equipment asked for is on a list or is served by what is.
func onList(list model.List, asked string) bool {
	return slices.ContainsFunc(list.Items, func(item model.Text) bool { return trade.Satisfies(item.Text, asked) })
}
