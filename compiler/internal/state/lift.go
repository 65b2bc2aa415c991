package state

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
)

func isRaised(w *walk, step *model.Step, object model.Object) {
	h := &held{at: step, place: object.Text.At, name: object.Words()}
	if pose := w.job.Pose(step.Pose.Name()); pose != nil {
		for _, name := range pose.Tools.Names() {
			if tool := w.job.Tool(name); tool != nil && tool.Kind.Text == "stand" && strings.Contains(strings.ToLower(pose.How.Text), "stand") {
				h.supports = true
			}
		}
	}
	for _, name := range step.Tools.Names() {
		if tool := w.job.Tool(name); tool != nil && (tool.Kind.Text == "stand" || tool.Kind.Text == "hoist" || tool.Kind.Text == "sling") {
			h.supports = true // it hangs, or stands are set at the step
		}
	}
	w.raised = append(w.raised, h)
}

func isSupported(w *walk, step *model.Step, object model.Object) {
	for _, h := range w.raised {
		h.supports, h.bareAt = true, nil
	}
	if len(w.raised) > 0 || w.said(w.job.Procedure.End, object.Words(), "stands", "stand", "supported", "blocks", "up") {
		return
	}
	if onStands.MatchString(object.Words() + ". " + step.Say.Text) {
		w.placed = append(w.placed, &placed{step, object.Text.At, "stands", true})
		return
	}
	for _, name := range step.Tools.Names() {
		if tool := w.job.Tool(name); tool != nil && (tool.Kind.Text == "stand" || tool.Kind.Text == "jack") {
			w.placed = append(w.placed, &placed{step, object.Text.At, tool.Kind.Text, true})
			return
		}
	}
}

func isLowered(w *walk, _ *model.Step, object model.Object) {
	w.stood()
	if len(w.raised) == 1 {
		w.raised = nil
		return
	}
	name := plain(object.Words())
	w.raised = slices.DeleteFunc(w.raised, func(h *held) bool { return plain(h.name) == name || kin(h.name, name) })
}

// under are verbs that bring hands or body to what is raised.
var under = []string{"remove", "refit", "replace", "loosen", "tighten", "drain", "clean", "grease", "lubricate", "disconnect", "connect", "adjust", "sharpen"}

// unsupported tells of work on what is raised before it stands on anything.
func (w *walk) unsupported(step *model.Step) {
	if !slices.Contains(under, step.Verb.Key) || len(step.Objects) == 0 {
		return
	}
	for _, h := range w.raised {
		if !h.supports && h.bareAt != nil {
			w.breach(SupportOut, step, step.Objects[0].Text.At, step.Objects[0].Words(), h.name, h.bareAt)
			h.supports = true
		} else if !h.supports {
			w.breach(RaisedBare, step, step.Objects[0].Text.At, step.Objects[0].Words(), h.name, h.at)
			h.supports = true // once is enough
		}
	}
}

// wheels are words by which a fastener or what it holds shows that it turns freely
// once it is off the ground.
var wheels = []string{"wheel nut", "wheel bolt", "wheel stud", "lug nut", "lug bolt"}

// OfWheel reports whether a part is the fasteners of a wheel.
func OfWheel(p *model.Part) bool { return has(plain(p.Words()), wheels) }

// held are words by which a step says that what hangs free is held.
var heldFast = []string{"hold", "brake", "lock", "block", "by hand", "snug", "first", "lightly", "chock", "wedge", "pin"}

// onTheGround wants the fasteners of a wheel turned hard only while it stands.
func onTheGround(w *walk, step *model.Step, object model.Object) {
	p := object.Part
	if p == nil || len(w.raised) == 0 || step.ByHand.Set() {
		return
	}
	said := strings.ToLower(step.Say.Text)
	if slices.ContainsFunc(heldFast, func(word string) bool { return strings.Contains(said, word) }) {
		return
	}
	if OfWheel(p) {
		w.breach(InTheAir, step, object.Text.At, object.Words(), w.raised[0].name, w.raised[0].at)
	}
}

// staysOnWheel wants the nuts of a wheel broken loose before it is raised: to take
// them off in one go is to break them loose in the air.
func staysOnWheel(w *walk, step *model.Step, object model.Object) {
	p := object.Part
	if p == nil || len(w.raised) == 0 {
		return
	}
	holders := []*model.Part{p}
	for _, name := range p.HeldBy.Names() {
		if fastener := w.job.Part(name); fastener != nil {
			holders = append(holders, fastener)
		}
	}
	for _, fastener := range holders {
		if at := w.of(fastener); at.off == 0 && !at.loose && !at.hand {
			onTheGround(w, step, model.Object{Text: object.Text, Part: fastener})
		}
	}
}

// wasRaised wants what is let down a second time, or off its stands, to have been
// raised; what is let down once may stand up by itself, as a boom or a blade does.
func wasRaised(w *walk, step *model.Step, object model.Object) {
	if len(w.raised) > 0 || w.said(w.job.Procedure.Start, object.Words(), "raised", "up", "stands", "jacked", "lifted") {
		return
	}
	stood := false
	for _, before := range w.job.Steps[:step.Number-1] {
		switch before.Verb.Key {
		case "raise":
			stood = false
		case "support":
			stood = true
		case "lower":
			stood = stood || len(before.Objects) > 0 && plain(before.Objects[0].Words()) == plain(object.Words())
		case "":
			if strings.Contains(strings.ToLower(before.Say.Text), "raise") || before.Pose.Set() {
				return
			}
		}
	}
	if stood {
		w.breach(LowersNothing, step, object.Text.At, object.Words(), "", nil)
	}
}

// hadWork wants something done between raising and letting down.
func hadWork(w *walk, step *model.Step, object model.Object) {
	for _, h := range w.raised {
		between := w.job.Steps[h.at.Number : step.Number-1]
		if !slices.ContainsFunc(between, func(s *model.Step) bool { return s.Verb.Key != "support" && s.Verb.Key != "wait" }) {
			w.breach(RaisedForNothing, step, object.Text.At, object.Words(), h.name, h.at)
			return
		}
	}
}

// feet are words of what a machine stands on once it is let down.
var feet = []string{"wheel", "wheels", "tyre", "tyres", "tire", "tires", "track", "tracks", "skid", "skids", "leg", "legs", "axle", "foot", "feet", "caster", "casters", "roller", "rollers", "runner", "runners", "hub"}

func standsOn(p *model.Part) bool {
	return !p.Cover && slices.ContainsFunc(strings.Fields(plain(p.Words())), func(word string) bool { return slices.Contains(feet, word) })
}

// isWhole wants back on what came off since it was raised, before it is let down.
func isWhole(w *walk, step *model.Step, object model.Object) {
	for _, h := range w.raised {
		for _, p := range w.known {
			if at := w.parts[p]; standsOn(p) && at.off > 0 && at.offAt != nil && at.offAt.Number > h.at.Number && !w.endsOff(p) {
				w.breach(LoweredApart, step, object.Text.At, object.Words(), p.Words(), at.offAt).of = p
				return
			}
		}
	}
	w.loweredEarly(step, object)
}

// underneath are words by which a thing shows that it is reached from below.
var underneath = []string{"under", "beneath", "below", "belly", "skid plate", "sump"}

// loweredEarly tells of what is let down while a part that came off under it goes back
// only later, with nothing raised between.
func (w *walk) loweredEarly(step *model.Step, object model.Object) {
	for _, h := range w.raised {
		for _, p := range w.known {
			at := w.parts[p]
			if at.off == 0 || at.offAt == nil || at.offAt.Number <= h.at.Number || w.endsOff(p) || kin(p.Words(), h.name) || !has(strings.ToLower(p.Words()+" "+at.offAt.Say.Text), underneath) {
				continue
			}
			for _, later := range w.job.Steps[step.Number:] {
				if later.Verb.Key == "raise" {
					break
				}
				if slices.ContainsFunc(later.Objects, func(o model.Object) bool {
					return (later.Verb.Key == "refit" || later.Verb.Key == "replace") && (o.Part == p || o.Spare != nil && kin(p.Words(), o.Words()))
				}) {
					w.breach(LoweredEarly, step, object.Text.At, object.Words(), p.Words(), at.offAt).of = p
					return
				}
			}
		}
	}
}
