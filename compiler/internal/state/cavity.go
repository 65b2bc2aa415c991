package state

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

// plug is the part by which a cavity is drained or filled; nil where none is described.
func (w *walk) plug(name model.Text) *model.Part {
	if !name.Set() {
		return nil
	}
	return w.job.Part(name.Name())
}

// ajar reports whether a plug lets anything through: off, open, or loose.
func (w *walk) ajar(p *model.Part) bool {
	at := w.of(p)
	return at.off > 0 || at.open || at.loose
}

// opensBelow wants the drain out before anything is drained.
func opensBelow(w *walk, step *model.Step, object model.Object) {
	if object.Cavity == nil {
		return
	}
	if plug := w.plug(object.Cavity.Drain); plug != nil && !w.ajar(plug) {
		w.breach(DrainsShut, step, object.Text.At, object.Words(), plug.Words(), w.of(plug).onAt).Name = plug.Name
	}
}

// letsAirIn wants a way for air above what is drained.
func letsAirIn(w *walk, step *model.Step, object model.Object) {
	if object.Cavity == nil {
		return
	}
	if _, _, shut := w.ventShut(object.Cavity); object.Cavity.Vent.Set() && !shut {
		return
	}
	if plug := w.plug(object.Cavity.Fill); plug != nil && !w.ajar(plug) && object.Cavity.Drain.Set() {
		w.breach(NoAir, step, object.Text.At, object.Words(), plug.Words(), w.of(plug).onAt)
	}
}

// shutBelow wants the drain in and tight before anything is filled; a plug by which a
// cavity is drained and filled as well is out for both.
func shutBelow(w *walk, step *model.Step, object model.Object) {
	if object.Cavity == nil {
		return
	}
	plug := w.plug(object.Cavity.Drain)
	if plug == nil || plug == w.plug(object.Cavity.Fill) {
		return
	}
	at := w.of(plug)
	since := at.offAt
	switch {
	case at.off > 0:
	case at.open:
		since = at.openAt
	case at.loose:
		since = at.looseAt
	case at.hand:
		since = at.handAt
	default:
		return
	}
	w.breach(FillsOpen, step, object.Text.At, object.Words(), plug.Words(), since)
}

// opensAbove wants the filler open.
func opensAbove(w *walk, step *model.Step, object model.Object) {
	if object.Cavity == nil {
		return
	}
	if plug := w.plug(object.Cavity.Fill); plug != nil && !w.ajar(plug) {
		w.breach(FillsShut, step, object.Text.At, object.Words(), plug.Words(), w.of(plug).onAt)
	}
}

// closable are words of a vent that lets nothing through while it is in or shut; a
// breather and a vent plug always do.
var closable = []string{"screw", "cock", "tap", "bleed"}

// Words by which a step blocks a breather or a vent, and by which it frees it.
var (
	blocks = pattern.MustCompile(`(?i)\b(?:plug|cap|tape|block|cover|seal|close|stop)(?: up| over)? (?:the |its |both |every )?(?:\w+ )?(?:breather|vent)s?\b`)
	frees  = pattern.MustCompile(`(?i)\b(?:open|unplug|uncap|uncover|clear|free|clean|take|pull|remove|peel)\b.*\b(?:breather|vent)s?\b`)
)

// ventShut reports whether the vent of a cavity lets no air through, what shuts it and
// since when.
func (w *walk) ventShut(c *model.Cavity) (words string, since *model.Step, shut bool) {
	plug := w.plug(c.Vent)
	switch {
	case plug == nil || w.ajar(plug):
		return "breather", w.blockedAt, w.blockedAt != nil && plug == nil
	case w.blockedAt != nil:
		return plug.Words(), w.blockedAt, true
	}
	onAt := w.of(plug).onAt
	return plug.Words(), onAt, has(strings.ToLower(plug.Words()), closable) || onAt != nil && onAt.Verb.Key == "close"
}

// ventsAbove wants the vent open while a cavity is filled.
func ventsAbove(w *walk, step *model.Step, object model.Object) {
	if object.Cavity == nil {
		return
	}
	if vent, since, shut := w.ventShut(object.Cavity); shut {
		w.breach(VentShut, step, object.Text.At, object.Words(), vent, since)
	}
}

// blocksVent keeps that the words of a step block a breather, until others free it.
func (w *walk) blocksVent(step *model.Step) {
	switch said := step.Say.Text; {
	case frees.MatchString(said):
		w.blockedAt = nil
	case blocks.MatchString(said):
		w.blockedAt = step
	}
}

// levelWords are how the trade speaks of a level; common practice, no source.
var levelWords = []string{"level", "mark", "sight", "dipstick", "glass", "brim", "overflow", "runs out", "full", "middle", "half", "spoon", "shows", "stands"}

// showsLevel wants something that tells how far to fill: at the step, at a step
// after it, or a plug that overflows.
func showsLevel(w *walk, step *model.Step, object model.Object) {
	cavity := object.Cavity
	if cavity == nil || step.Until.Set() || cavity.Fill.Set() && cavity.Fill.Name() == cavity.Level.Name() {
		return
	}
	for _, later := range w.job.Steps {
		if later.Number < step.Number {
			continue
		}
		words := strings.ToLower(later.Say.Text + " " + later.Expect.Text + " " + later.Until.Text)
		for _, other := range later.Objects {
			if other.Cavity == cavity && later != step || other.Part != nil && cavity.Level.Set() && other.Part.Name == cavity.Level.Name() {
				return
			}
			words += " " + strings.ToLower(other.Text.Text)
			if other.Limit != nil {
				words += " " + strings.ToLower(other.Words())
			}
		}
		for _, word := range levelWords {
			if strings.Contains(words, word) {
				return
			}
		}
	}
	for _, end := range w.job.Procedure.End.Items {
		for _, word := range levelWords {
			if strings.Contains(strings.ToLower(end.Text), word) {
				return
			}
		}
	}
	w.breach(NoLevelCheck, step, object.Text.At, object.Words(), "", nil)
}

// wasDrained wants what came open below, or takes all it holds, drained before it is
// filled.
func wasDrained(w *walk, step *model.Step, object model.Object) {
	c := object.Cavity
	if c == nil || w.pool(c).drained || w.pool(c).drainedAt != nil || w.said(w.job.Procedure.Start, c.Words(), "empty", "drained", "dry", "new") {
		return
	}
	if plug := w.plug(c.Drain); plug != nil && w.of(plug).out > 0 {
		w.breach(FillsUndrained, step, object.Text.At, c.Words(), plug.Words(), w.of(plug).offAt)
	}
}

func isDrained(w *walk, step *model.Step, object model.Object) {
	if object.Cavity != nil {
		c := w.pool(object.Cavity)
		c.drained, c.drainedAt, c.place = true, step, object.Text.At
	}
}

// runsOut empties a cavity whose drain comes out over a container.
func runsOut(w *walk, step *model.Step, object model.Object) {
	if c := w.job.Emptied(step); c != nil && object.Part == w.plug(c.Drain) {
		isDrained(w, step, model.Object{Text: object.Text, Cavity: c})
	}
}

func isFilled(w *walk, _ *model.Step, object model.Object) {
	if object.Cavity != nil {
		w.pool(object.Cavity).drained = false
	}
}

// isShut wants no cavity open when the machine is turned over.
func isShut(w *walk, step *model.Step, object model.Object) {
	for _, name := range w.job.Cavities() {
		for _, plug := range []*model.Part{w.plug(name.Drain), w.plug(name.Fill)} {
			if plug == nil || !w.ajar(plug) || w.cavities[name] != nil && w.cavities[name].drained || w.tippedOut(step, name) {
				continue
			}
			since := w.of(plug).offAt
			if since == nil {
				since = w.of(plug).looseAt
			}
			w.breach(TiltedOpen, step, object.Text.At, name.Words(), plug.Words(), since)
			return
		}
	}
}

// tippedOut reports whether the machine is turned to let the cavity run out: it is held
// at most, and then drained.
func (w *walk) tippedOut(turned *model.Step, c *model.Cavity) bool {
	for _, step := range w.job.Steps {
		switch {
		case step.Number <= turned.Number || step.Verb.Key == "support" || step.Verb.Key == "chock":
		case step.Verb.Key != "drain":
			return false
		default:
			return slices.ContainsFunc(step.Objects, func(o model.Object) bool { return o.Cavity == c })
		}
	}
	return false
}
