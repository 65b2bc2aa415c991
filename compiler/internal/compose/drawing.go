package compose

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
)

// drawing is the machine as its file draws it; nil where it has no outline.
func (w *writer) drawing() *plan.Drawing {
	machine := w.job.Machine
	if machine == nil || len(machine.Outline) < 3 {
		return nil
	}
	out := &plan.Drawing{Outline: spots(machine.Outline)}
	for _, line := range machine.Lines {
		out.Lines = append(out.Lines, spots(line))
	}
	for _, round := range machine.Rounds {
		out.Rounds = append(out.Rounds, plan.Round{Spot: plan.Spot(round.Spot), Radius: round.Radius})
	}
	return out
}

func spots(from []model.Spot) []plan.Spot {
	var out []plan.Spot
	for _, spot := range from {
		out = append(out, plan.Spot(spot))
	}
	return out
}

// fewestPlaces is how many places a map is drawn for: one is told in words.
const fewestPlaces = 2

// places is a map of what the steps deal with, each with its number on the machine; nil
// where the machine has no outline or too few of the things have a place.
func (w *writer) places() *plan.Drawing {
	out := w.drawing()
	if out == nil {
		return nil
	}
	steps := map[string][]int{}
	for _, step := range w.job.Steps {
		for _, object := range step.Objects {
			if key := object.Key(); !slices.Contains(steps[key], step.Number) {
				steps[key] = append(steps[key], step.Number)
			}
		}
	}
	for _, place := range w.placed() {
		if met := steps[place.Key]; len(met) > 0 {
			out.Callouts = append(out.Callouts, plan.Callout{Spot: plan.Spot(place.At), Number: place.Number, Placed: true, Name: upper(place.Title), Steps: met})
		}
	}
	if len(out.Callouts) < fewestPlaces {
		return nil
	}
	return out
}

// placed is what has a number on a map; none where the machine is not drawn.
func (w *writer) placed() []model.Place {
	if w.drawing() == nil {
		return nil
	}
	return w.job.Places()
}

// numbersAt are the numbers on the map of what a step deals with.
func (w *writer) numbersAt(step *model.Step) []int {
	var out []int
	for _, place := range w.placed() {
		if slices.ContainsFunc(step.Objects, func(object model.Object) bool { return object.Key() == place.Key }) {
			out = append(out, place.Number)
		}
	}
	return out
}

// whole is a map of all that has a place on the machine; nil where it has no outline or too
// few places.
func (w *writer) whole() *plan.Drawing {
	out := w.drawing()
	if out == nil {
		return nil
	}
	for _, place := range w.job.Places() {
		out.Callouts = append(out.Callouts, plan.Callout{Spot: plan.Spot(place.At), Number: place.Number, Placed: true, Name: upper(place.Title)})
	}
	if len(out.Callouts) < fewestPlaces {
		return nil
	}
	return out
}

// picture is one of the shop's pictures with its call-outs; nil where none was looked for,
// or where it cannot be read, which a rule tells.
func (w *writer) picture(shown *model.Picture) *plan.Picture {
	if shown == nil || w.pictures == nil {
		return nil
	}
	image, err := w.pictures(shown)
	if image == nil || err != nil {
		return nil
	}
	out := &plan.Picture{Title: shown.Title.Text, Image: image}
	for i, point := range shown.Points {
		if !(point.X >= 0 && point.X <= 1 && point.Y >= 0 && point.Y <= 1) {
			continue // a rule tells of it
		}
		callout := plan.Callout{Spot: plan.Spot(point), Number: i + 1}
		if i < len(shown.Shows.Items) {
			callout.Name = upper(shown.Shows.Items[i].Text)
		}
		out.Callouts = append(out.Callouts, callout)
	}
	w.known(out.Callouts, shown.Shows)
	return out
}

// known gives call-outs that are the names of things the titles of these and, where all of
// them have a place on the machine, their numbers on the map.
func (w *writer) known(callouts []plan.Callout, shows model.List) {
	numbers := map[string]int{}
	for _, place := range w.placed() {
		_, name, _ := strings.Cut(place.Key, "/")
		numbers[name] = place.Number
	}
	all := len(callouts) > 0 && len(shows.Items) == len(callouts)
	for i := range callouts {
		if i >= len(shows.Items) {
			continue
		}
		name := shows.Items[i].Text
		if title := w.titleOf(name); title != "" {
			callouts[i].Name = upper(title)
		}
		all = all && numbers[name] > 0
	}
	for i := range callouts {
		if all {
			callouts[i].Number, callouts[i].Placed = numbers[shows.Items[i].Text], true
		}
	}
}

// titleOf is what a thing of the machine is called; empty where nothing has the name.
func (w *writer) titleOf(name string) string {
	switch {
	case w.job.Part(name) != nil:
		return w.job.Part(name).Words()
	case w.job.Cavity(name) != nil:
		return w.job.Cavity(name).Words()
	case w.job.Point(name) != nil:
		return w.job.Point(name).Words()
	case w.job.Limit(name) != nil:
		return w.job.Limit(name).Words()
	}
	return ""
}

// filledTo is how high a step fills something, where the file says where it is filled and
// where its level shows; nil where it does not.
func (w *writer) filledTo(step *model.Step) *plan.Level {
	if step.Verb.Key != "fill" {
		return nil
	}
	for _, object := range step.Objects {
		if object.Cavity != nil {
			return w.levelOf(object.Cavity)
		}
	}
	return nil
}

func (w *writer) levelOf(cavity *model.Cavity) *plan.Level {
	shows := w.job.Part(cavity.Level.Name())
	if shows == nil || len(shows.Spot) == 0 {
		return nil
	}
	type opening struct {
		part *model.Part
		kind plan.PortKind
	}
	var openings []opening
	for _, one := range []struct {
		name string
		kind plan.PortKind
	}{{cavity.Vent.Name(), plan.VentPort}, {cavity.Fill.Name(), plan.FillPort}, {cavity.Level.Name(), plan.LevelPort}, {cavity.Drain.Name(), plan.DrainPort}} {
		part := w.job.Part(one.name)
		if part == nil || len(part.Spot) == 0 || slices.ContainsFunc(openings, func(other opening) bool { return other.part == part && other.kind != plan.FillPort }) {
			continue
		}
		kind := one.kind
		if kind == plan.LevelPort && part.Head.Text != "none" && (part.Thread.Set() || part.Head.Set() || part.Across.Set()) {
			kind = plan.LevelPlug
		}
		openings = append(openings, opening{part, kind})
	}
	top, bottom := shows.Spot[0].Y, shows.Spot[0].Y
	for _, one := range openings {
		top, bottom = min(top, one.part.Spot[0].Y), max(bottom, one.part.Spot[0].Y)
	}
	if len(openings) < 2 || bottom <= top {
		return nil
	}
	out := &plan.Level{Height: (shows.Spot[0].Y - top) / (bottom - top)}
	for _, one := range openings {
		out.Ports = append(out.Ports, plan.Port{Name: upper(one.part.Words()), Kind: one.kind, Height: (one.part.Spot[0].Y - top) / (bottom - top)})
	}
	slices.SortStableFunc(out.Ports, func(a, b plan.Port) int {
		switch {
		case a.Height < b.Height:
			return -1
		case a.Height > b.Height:
			return 1
		}
		return 0
	})
	return out
}

// rounds are the passes a fastener is tightened in, with the torque of each.
func (w *writer) rounds(passes []model.Whole, torque model.Amount) []plan.Pass {
	var out []plan.Pass
	for _, pass := range passes {
		one := plan.Pass{Share: pass.N}
		if torque.Set() && torque.OK {
			value := w.value("", model.Amount{Amount: torque.Amount.Share(pass.N), OK: true})
			one.Text, one.Also = value.Text, value.Also
		}
		out = append(out, one)
	}
	return out
}
