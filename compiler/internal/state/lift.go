package state

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

func isRaised(w *walk, step *model.Step, object model.Object) {
	h := &held{at: step, place: object.Text.At, name: object.Words(), supports: onItsStand.MatchString(step.Say.Text)}
	if pose := w.job.Pose(step.Pose.Name()); pose != nil {
		for _, name := range pose.Tools.Names() {
			if w.standTool(name) && strings.Contains(strings.ToLower(pose.How.Text), "stand") {
				h.supports = true
			}
		}
	}
	for _, name := range step.Tools.Names() {
		if tool := w.job.Tool(name); w.standTool(name) || tool != nil && (tool.Kind.Text == "hoist" || tool.Kind.Text == "sling") {
			h.supports = true // it hangs, or stands are set at the step
		}
	}
	w.raised = append(w.raised, h)
}

// onItsStand finds that a thing is raised onto a stand and not onto the jack alone.
var onItsStand = pattern.MustCompile(`(?i)\b(?:on|onto|over) (?:its|the|a|both|two|four) (?:(?:centre|center|paddock|work|repair|axle|jack|safety) )?stands?\b`)

// standTool reports whether a tool of that name is one that a raised machine rests on; chocks
// are kept with the stands, and hold nothing up.
func (w *walk) standTool(name string) bool {
	tool := w.job.Tool(name)
	return tool != nil && tool.Kind.Text == "stand" && !chock.MatchString(tool.Title.Text+" "+model.Spoken(name))
}

// higher are words by which a second raise goes on with the first.
var higher = []string{"higher", "further", "more", "off the stand", "off its stand"}

// raisedOnce wants what was raised and worked on let down before it is raised once more for
// other work, unless as many steps let it down as raise it.
func raisedOnce(w *walk, step *model.Step, object model.Object) {
	works := func(s *model.Step) bool {
		return !slices.Contains([]string{"raise", "support", "wait", ""}, s.Verb.Key)
	}
	i := slices.IndexFunc(w.raised, func(h *held) bool { return plain(h.name) == plain(object.Words()) })
	if i < 0 || has(strings.ToLower(step.Say.Text), higher) || !slices.ContainsFunc(w.job.Steps[w.raised[i].at.Number:step.Number-1], works) {
		return
	}
	rest := w.job.Steps[step.Number:]
	down := slices.IndexFunc(rest, func(s *model.Step) bool { return s.Verb.Key == "lower" })
	if down < 0 {
		down = len(rest)
	}
	up := 1 + w.raises(step, object)
	for _, h := range w.raised {
		if plain(h.name) == plain(object.Words()) {
			up++
		}
	}
	if up > 0 && slices.ContainsFunc(rest[:down], works) {
		w.breach(RaisedTwice, step, object.Text.At, object.Words(), "", w.raised[i].at)
		w.raised = slices.Delete(w.raised, i, i+1)
	}
}

func isSupported(w *walk, step *model.Step, object model.Object) {
	for _, h := range w.raised {
		h.supports, h.bareAt = true, nil
	}
	if len(w.raised) > 0 || w.said(w.job.Procedure.End, object.Words(), "stands", "stand", "supported", "blocks", "up") {
		return
	}
	if onStands.MatchString(object.Words() + ". " + step.Say.Text) {
		w.placed = append(w.placed, &placed{at: step, place: object.Text.At, name: "stands", under: true})
		return
	}
	for _, name := range step.Tools.Names() {
		if tool := w.job.Tool(name); w.standTool(name) || tool != nil && tool.Kind.Text == "jack" {
			w.placed = append(w.placed, &placed{at: step, place: object.Text.At, name: tool.Kind.Text, under: true})
			return
		}
	}
}

func isLowered(w *walk, step *model.Step, object model.Object) {
	w.stood()
	if len(w.raised) == 1 {
		w.raised = nil
		return
	}
	name, down := plain(object.Words()), 0
	stay := -w.raises(step, object) // of what was raised in as many steps as let it down
	w.raised = slices.DeleteFunc(w.raised, func(h *held) bool {
		if plain(h.name) != name && !w.kin(h.name, name) {
			return false
		}
		down++
		return down == 1 || down > 1+stay
	})
}

// raises is how many more steps after one raise a thing than let it down.
func (w *walk) raises(step *model.Step, object model.Object) int {
	more, name := 0, plain(object.Words())
	for _, later := range w.job.Steps[step.Number:] {
		switch same := slices.ContainsFunc(later.Objects, func(o model.Object) bool { return plain(o.Words()) == name }); {
		case same && later.Verb.Key == "raise":
			more++
		case same && later.Verb.Key == "lower":
			more--
		}
	}
	return more
}

// under are verbs that bring hands or body to what is raised.
var under = []string{"remove", "refit", "replace", "loosen", "tighten", "drain", "clean", "grease", "lubricate", "disconnect", "connect", "adjust", "sharpen"}

// unsupported tells of work on what is raised before it stands on anything, and of a look or
// a measuring that brings hands to it.
func (w *walk) unsupported(step *model.Step) {
	for _, h := range w.raised {
		i := slices.IndexFunc(step.Objects, func(o model.Object) bool { return slices.Contains(under, step.Verb.Key) || handlesRaised(step, o, h) })
		if i < 0 || h.supports {
			continue
		}
		kind, since := RaisedBare, h.at
		if h.bareAt != nil {
			kind, since = SupportOut, h.bareAt
		}
		w.breach(kind, step, step.Objects[i].Text.At, step.Objects[i].Words(), h.name, since).Looked = !slices.Contains(under, step.Verb.Key)
		h.supports = true // once is enough
	}
}

// Words by which a thing shows that it is looked at from beneath, of what hangs or turns on a
// raised axle, of how a jack shows in words, and of what is only seen to be well raised.
var (
	beneath = pattern.MustCompile(`(?i)\b(?:under(?:side|neath)?|beneath|belly)\b`)
	onAxle  = pattern.MustCompile(`(?i)\b(?:wheels?|hubs?|ty[rie]+s?|axles?|brakes?|calipers?|tracks?|idlers?|king ?pins?|(?:wheel|hub) bearings?|tie rods?|track rods?|ball joints?)\b`)
	wellUp  = pattern.MustCompile(`(?i)\b(?:clears?|free|hangs?|chocks?|stands?|jacks?)\b`)
	jacked  = pattern.MustCompile(`(?i)\bjack|\b(?:axles?|wheels?)\b`)
)

// handlesRaised reports whether a look or a measuring is done beneath what is raised, or by
// hand on what a jack holds up.
func handlesRaised(step *model.Step, object model.Object, h *held) bool {
	if !slices.Contains([]string{"inspect", "check", "measure"}, step.Verb.Key) {
		return false
	}
	if beneath.MatchString(object.Words()) {
		return true
	}
	lifted := h.name + " " + h.at.Say.Text
	for _, name := range h.at.Tools.Names() {
		lifted += " " + model.Spoken(name)
	}
	seen := plain(object.Words()) == plain(h.name) || wellUp.MatchString(object.Words()+" "+step.Expect.Text)
	return jacked.MatchString(lifted) && (step.Touches(object) || onAxle.MatchString(object.Words()) && !seen)
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
			if at.off == 0 || at.offAt == nil || at.offAt.Number <= h.at.Number || w.endsOff(p) || w.kin(p.Words(), h.name) || !has(strings.ToLower(p.Words()+" "+at.offAt.Say.Text), underneath) {
				continue
			}
			for _, later := range w.job.Steps[step.Number:] {
				if later.Verb.Key == "raise" {
					break
				}
				if slices.ContainsFunc(later.Objects, func(o model.Object) bool {
					return (later.Verb.Key == "refit" || later.Verb.Key == "replace") && (o.Part == p || o.Spare != nil && w.kin(p.Words(), o.Words()))
				}) {
					w.breach(LoweredEarly, step, object.Text.At, object.Words(), p.Words(), at.offAt).of = p
					return
				}
			}
		}
	}
}

// isClear wants what was set under a thing in words out from under it before it comes down.
func isClear(w *walk, step *model.Step, object model.Object) {
	said := strings.ToLower(step.Say.Text)
	for i, p := range w.placed {
		thing := noun(object.Words())
		onto := thing != "" && strings.Contains(p.said, thing) || slices.ContainsFunc(w.raised, func(h *held) bool { return h.at.Number < p.at.Number })
		if p.stays && onto && !strings.Contains(said, noun(p.name)) {
			w.breach(LoweredOnto, step, object.Text.At, object.Words(), p.name, p.at)
			w.placed = slices.Delete(w.placed, i, i+1)
			return
		}
	}
}
