package compiler

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/join"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/state"
)

// fights is what the walk of the states finds in a joined job: one of its procedures leaves, or
// wants to find, the machine otherwise than the others can bear. It is told as the rule tells
// it, by the steps as their authors count them, with what they can do about it as one job. Nil
// where nothing is found.
func (j *Joined) fights(shop *Result, inputs []join.Input) *Conflict {
	for _, job := range j.Result.Jobs {
		for _, breach := range job.walk.Breaches {
			at := slices.IndexFunc(j.Result.Findings, func(found finding.Finding) bool { return found.Place == breach.Place })
			if at < 0 {
				continue // an author stands by it
			}
			f := fought{shop: shop, inputs: inputs, joined: job.work.Job, breach: breach}
			return f.conflict(j.Result.Findings[at])
		}
	}
	return nil
}

// fought is one place at which a joined job does not fit the state of its machine.
type fought struct {
	shop   *Result
	inputs []join.Input
	joined *model.Job
	breach state.Breach
}

func (f *fought) conflict(found finding.Finding) *Conflict {
	own := func(text string) string { return ownNumbers(f.inputs, f.joined, text) }
	out := &Conflict{Text: "as one job: " + own(found.Summary)}
	place := func(step *model.Step) string {
		if step == nil {
			return ""
		}
		own, name := ownStep(f.inputs, step)
		if own == nil {
			return ""
		}
		text := fmt.Sprintf("step %d of %s", own.Number, name)
		if !slices.ContainsFunc(out.Related, func(one finding.Related) bool { return one.Place == own.Header }) {
			out.Related = append(out.Related, finding.Related{Place: own.Header, Text: text})
		}
		return text
	}
	step := place(f.breach.Step)
	if name := f.alone(); name != "" {
		place(f.breach.Since)
		out.Text = fmt.Sprintf("%s, and that is so in %s by itself", own(found.Summary), name)
		out.Help = own(found.Help)
		return out
	}
	const apart = "Do them one after the other, each by its own card"
	if since := place(f.breach.Since); since != "" && since != step {
		out.Help = apart + ", or change one of these steps."
		if f.breach.Kind == state.WaitBroken {
			out.Help = fmt.Sprintf("%s; or write most = \"…\" at %s, with how long that wait may last: then nobody fills it.", apart, since)
		}
		return out
	}
	if name, text := f.begins(); name != "" {
		out.Text += fmt.Sprintf(", and %s begins with %q", name, text.Text)
		out.Related = append(out.Related, finding.Related{Place: text.At, Text: "this condition"})
		out.Help = "Do them one after the other, each when what it begins with is so; or take the condition out of start where the work does not need it."
		return out
	}
	if other := f.other(); other != nil {
		out.Text += ", and " + place(other) + " is done before it"
	}
	out.Help = apart + ", or change one of these steps."
	return out
}

// alone is the name of the procedure in which the same is found by itself; empty for none.
func (f *fought) alone() string {
	own, name := ownStep(f.inputs, f.breach.Step)
	for i := range f.shop.Jobs {
		job := &f.shop.Jobs[i]
		if own == nil || !slices.ContainsFunc(f.inputs, func(input join.Input) bool { return input.Job == job.work.Job }) || job.Name != name {
			continue
		}
		if slices.ContainsFunc(job.walk.Breaches, func(b state.Breach) bool {
			return b.Kind == f.breach.Kind && b.Step.Number == own.Number && b.Thing == f.breach.Thing
		}) {
			return name
		}
	}
	return ""
}

// begins is the condition of the start that speaks of the thing, and whose it is: of another
// procedure than the step at fault where there is one.
func (f *fought) begins() (name string, text model.Text) {
	_, faulty := ownStep(f.inputs, f.breach.Step)
	words := strings.Fields(strings.ToLower(f.breach.Thing))
	if len(words) == 0 {
		return "", text
	}
	for _, input := range f.inputs {
		for _, item := range input.Job.Procedure.Start.Items {
			if strings.Contains(strings.ToLower(item.Text), words[len(words)-1]) && (name == "" || name == faulty) {
				name, text = input.Job.File.Name(), item
			}
		}
	}
	return name, text
}

// other is the step of another procedure before the one at fault: the last that is about the
// thing, or the last of all.
func (f *fought) other() *model.Step {
	_, faulty := ownStep(f.inputs, f.breach.Step)
	var last, about *model.Step
	for _, step := range f.joined.Steps[:f.breach.Step.Number-1] {
		if _, name := ownStep(f.inputs, step); name == "" || name == faulty {
			continue
		}
		last = step
		if slices.ContainsFunc(step.Objects, func(o model.Object) bool { return o.Words() == f.breach.Thing || o.Words() == f.breach.Other }) {
			about = step
		}
	}
	if about != nil {
		return about
	}
	return last
}
