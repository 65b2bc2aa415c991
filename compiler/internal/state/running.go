package state

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
)

// stops are words that say that what runs stands still again, or that nothing drives it.
var stops = []string{"stop", "switch off", "switch it off", "switched off", "shut down", "shut off", "shut it", "turn off", "turn it off", "key out", "take the key", "still", "unplug", "pull the plug", "isolate", "cut the engine"}

// isRunning keeps that the machine runs, until a step stops it.
func isRunning(w *walk, step *model.Step, object model.Object) {
	words := strings.ToLower(step.Told() + " " + object.Words())
	helper := slices.Contains(helpers, noun(object.Words())) && !w.kin(object.Words(), w.job.MachineTitle())
	if !has(words, stops) && !has(words, byHand) && !helper {
		w.running = step
	}
}

// helpers are what runs beside the machine for the work on it.
var helpers = []string{"grinder", "vacuum", "washer", "compressor", "charger", "extractor"}

func standsStill(w *walk, _ *model.Step, _ model.Object) { w.running = nil }

// has reports whether a text in small letters holds one of some words.
func has(text string, words []string) bool {
	return slices.ContainsFunc(words, func(word string) bool { return strings.Contains(text, word) })
}

var (
	// reaching are verbs that bring hands to their object, whatever it is.
	reaching = append([]string{"open", "align", "tension", "slacken"}, under...)
	// turning are things that turn when a machine runs.
	turning = []string{"belt", "chain", "pulley", "sprocket", "blade", "knife", "rotor", "drum", "spindle", "roller", "arbor", "flywheel", "fan", "impeller", "auger", "coupling", "saw", "cutter", "reel", "driveline", "driveshaft", "shaft"}
	// moved are hazards of a part by which it shows that it turns.
	moved = []string{"pinch", "rotation", "feed", "start", "shaft"}
	// knowing are words by which a step shows that it is meant to be done while it runs.
	knowing = []string{"while", "running", "runs", "idle", "idling", "turning", "outside", "through the slot"}
)

// handsRunning tells of hands that go to what turns after the machine was set going, with
// nothing that stops it between.
func (w *walk) handsRunning(step *model.Step) {
	words := strings.ToLower(step.Told())
	if has(words, stops) {
		w.running = nil
	}
	if w.running == nil || has(words, knowing) {
		return
	}
	place, in := w.hands(step)
	for _, object := range step.Objects {
		if in || !reachesIn(step, object) || !turns(object) {
			continue
		}
		place, in = object.Text.At, true
	}
	if in {
		w.breach(HandsRunning, step, place, "", "", w.running)
		w.running = nil // once is enough
	}
}

// reachesIn reports whether a step brings hands to its object, by its verb or by touch.
func reachesIn(step *model.Step, object model.Object) bool {
	return step.Touches(object) || slices.Contains(reaching, step.Verb.Key) && step.Verb.Key != "sharpen"
}

// turns reports whether a thing is one that turns when the machine runs.
func turns(object model.Object) bool {
	part := object.Part
	if part != nil && part.Cover {
		return false // of guards other rules tell
	}
	words := object.Words()
	for _, how := range []string{" by ", " with ", " at ", " on ", " from ", ","} { // the belt by hand
		words, _, _ = strings.Cut(words, how)
	}
	names := []string{words}
	if object.Limit != nil { // the slack of a chain
		names = strings.Fields(object.Words())
	}
	return slices.ContainsFunc(names, func(name string) bool { return slices.Contains(turning, noun(name)) }) ||
		part != nil && slices.ContainsFunc(part.Hazards.Items, func(hazard model.Text) bool { return slices.Contains(moved, hazard.Text) })
}

// runsClosed wants what was opened, loosened, parted or drained closed up and filled
// before the machine runs, unless the step says that it runs so on purpose.
func runsClosed(w *walk, step *model.Step, object model.Object) {
	words := strings.ToLower(step.Told() + " " + object.Words())
	if has(words, byHand) {
		return
	}
	tell := func(thing, how string, since *model.Step) {
		w.breach(RunsOpen, step, object.Text.At, object.Words(), thing, since).Name = how
	}
	meant := func(thing string) bool {
		return has(words, []string{"open", "loose", "crack", "dry", "empty", "without", noun(thing)}) || w.said(w.job.Procedure.End, thing, "open", "loose", "apart", "off", "empty", "drained", "dry")
	}
	for _, p := range w.known {
		switch at := w.parts[p]; {
		case meant(p.Words()):
		case at.open && at.openAt != nil && len(p.Guards.Items) == 0 && (p.Cover || w.plugs(p)):
			tell(p.Words(), "open", at.openAt)
			return
		case at.loose && at.looseAt != nil && tightens(p) && !w.setBy(p, at.looseAt) && !has(strings.ToLower(p.Words()), airs):
			tell(p.Words(), "loose", at.looseAt)
			return
		}
	}
	for _, t := range w.taps {
		if t.open && t.drains() && w.astray(t) && !meant(t.words) {
			tell(t.words, "open", t.at)
			return
		}
	}
	for _, c := range w.pools {
		if fluid := w.job.Fluid(c.Fluid.Name()); w.pool(c).drained && fluid != nil && strings.HasSuffix(fluid.Kind.Text, "-oil") && !meant(c.Words()) {
			tell(c.Words(), "empty", w.pool(c).drainedAt)
			return
		}
	}
	for _, h := range w.parted {
		if has(h.name, lines) && !meant(h.name) {
			tell(h.name, "apart", h.at)
			return
		}
	}
}

var (
	// airs are words of what is loosened to let air out while something turns.
	airs = []string{"bleed", "vent", "injector", "nipple", "union", "air"}
	// lines are words of what leads a fluid.
	lines = []string{"hose", "pipe", "line", "tube"}
)

// plugs reports whether a part closes a cavity.
func (w *walk) plugs(p *model.Part) bool {
	return slices.ContainsFunc(w.job.Cavities(), func(c *model.Cavity) bool { return w.plug(c.Drain) == p || w.plug(c.Fill) == p })
}
