package compose

import (
	"slices"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
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

// places is a map of what the steps deal with, numbered as they come to it; nil where the
// machine has no outline or too few of the things have a place.
func (w *writer) places() *plan.Drawing {
	out := w.drawing()
	if out == nil {
		return nil
	}
	at := map[any]int{}
	for _, step := range w.job.Steps {
		for _, object := range step.Objects {
			thing, spot := placed(object)
			if len(spot) == 0 {
				continue
			}
			i, known := at[thing]
			if !known {
				i = len(out.Callouts)
				at[thing] = i
				out.Callouts = append(out.Callouts, plan.Callout{Spot: plan.Spot(spot[0]), Number: i + 1, Name: upper(object.Words())})
			}
			if steps := out.Callouts[i].Steps; !slices.Contains(steps, step.Number) {
				out.Callouts[i].Steps = append(steps, step.Number)
			}
		}
	}
	if len(out.Callouts) < fewestPlaces {
		return nil
	}
	return out
}

// whole is a map of all that has a place on the machine, in the order of its file; nil where
// it has no outline or too few places.
func (w *writer) whole() *plan.Drawing {
	out := w.drawing()
	if out == nil {
		return nil
	}
	put := func(name string, spot []model.Spot) {
		if len(spot) > 0 {
			out.Callouts = append(out.Callouts, plan.Callout{Spot: plan.Spot(spot[0]), Number: len(out.Callouts) + 1, Name: upper(name)})
		}
	}
	for _, energy := range w.job.Energies() {
		put(energy.Words(), energy.Spot)
	}
	for _, part := range append(w.job.Covers(), w.job.Parts()...) {
		put(part.Words(), part.Spot)
	}
	for _, cavity := range w.job.Cavities() {
		put(cavity.Words(), cavity.Spot)
	}
	for _, point := range w.job.Points() {
		put(point.Words(), point.Spot)
	}
	if len(out.Callouts) < fewestPlaces {
		return nil
	}
	return out
}

// placed is what an object is, and where it lies on the outline.
func placed(object model.Object) (thing any, spot []model.Spot) {
	switch {
	case object.Part != nil:
		return object.Part, object.Part.Spot
	case object.Cavity != nil:
		return object.Cavity, object.Cavity.Spot
	case object.Energy != nil:
		return object.Energy, object.Energy.Spot
	case object.Point != nil:
		return object.Point, object.Point.Spot
	case object.Limit != nil:
		return object.Limit, object.Limit.Spot
	}
	return nil, nil
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
		callout := plan.Callout{Spot: plan.Spot(point), Number: i + 1}
		if i < len(shown.Shows.Items) {
			callout.Name = upper(shown.Shows.Items[i].Text)
		}
		if !(point.X >= 0 && point.X <= 1 && point.Y >= 0 && point.Y <= 1) {
			continue // a rule tells of it
		}
		out.Callouts = append(out.Callouts, callout)
	}
	return out
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
		openings = append(openings, opening{part, one.kind})
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
			one.Text = w.shared(torque.Amount.Share(pass.N))
		}
		out = append(out, one)
	}
	return out
}

// shared writes an amount short, in one system.
func (w *writer) shared(amount quantity.Amount) string {
	if w.system == quantity.Both {
		return w.writing().Plain(amount)
	}
	return w.writing().Format(amount, w.system)
}
