package state

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/source"
)

// tap is how a valve, a cock or a tap stands that a step opens or closes.
type tap struct {
	of      *model.Part // nil of one in words
	key     string
	words   string
	usually bool // open while the machine works
	open    bool
	at      *model.Step // the step that turned it last
	place   source.Place
}

// Words for what shuts off a fluid; for one that stands shut while the machine works; for
// one that works by itself; for fuel, and for what feeds the machine. Common practice, no
// source.
var (
	cocks   = []string{"valve", "cock", "tap", "petcock", "stopcock", "spigot"}
	drained = []string{"drain", "bleed", "vent", "purge", "separator", "sample", "blow", "test", "bypass"}
	alone   = []string{"safety", "relief", "check", "tyre", "tire", "intake", "exhaust"}
	fuels   = []string{"fuel", "petrol", "diesel"}
	feeding = append([]string{"tank", "oil", "suction", "feed", "supply", "coolant", "water"}, fuels...)
)

// Sentences of a step that open a cock, or shut it.
var (
	opensCock = pattern.MustCompile(`(?i)\b(?:re-?open|open|turn on)\b[^.]*\b(?:valve|cock|tap|petcock|stopcock|spigot)s?\b|\b(?:valve|cock|tap|petcock|stopcock|spigot)s? (?:back )?on\b`)
	shutsCock = pattern.MustCompile(`(?i)\b(?:close|shut|turn off)\b[^.]*\b(?:valve|cock|tap|petcock|stopcock|spigot)s?\b|\b(?:valve|cock|tap|petcock|stopcock|spigot)s? off\b`)
	bareCock  = pattern.MustCompile(`(?i)\b(?:the|its|each|both|every|all) (?:valve|cock|tap|petcock|stopcock|spigot)s?\b`)
)

// cocked gives the tap that an object is; nil where it is none.
func (w *walk) cocked(object model.Object) *tap {
	words := plain(object.Words())
	if object.Part == nil && object.Kind != "words" || object.Part != nil && object.Part.Cover || has(words, alone) {
		return nil
	}
	key := strings.TrimPrefix(words, "the ")
	for _, where := range []string{" of ", " on ", " at ", " under ", " below ", " to ", " from ", " for ", " between ", " behind "} {
		words, _, _ = strings.Cut(words, where)
	}
	fields := strings.Fields(words)
	if len(fields) == 0 || !slices.Contains(cocks, strings.TrimSuffix(fields[len(fields)-1], "s")) {
		return nil
	}
	for _, known := range w.taps {
		if known.key == key {
			return known
		}
	}
	made := &tap{of: object.Part, key: key, words: strings.TrimPrefix(object.Words(), "the ")}
	w.taps = append(w.taps, made)
	return made
}

// drains reports whether a tap lets out what is not to run out while the machine works.
func (t *tap) drains() bool { return has(t.key, drained) }

// named reports whether a text may speak of the tap: of one by a word of its name, or of
// one without any.
func (t *tap) named(text string) bool {
	words := " " + plain(text) + " "
	return bareCock.MatchString(text) || slices.ContainsFunc(strings.Fields(t.key), func(word string) bool {
		return len(word) > 2 && !slices.Contains(cocks, word) && strings.Contains(words, " "+word+" ")
	})
}

func turnsOpen(w *walk, step *model.Step, object model.Object) {
	if t := w.cocked(object); t != nil {
		t.open, t.at, t.place = true, step, object.Text.At
	}
}

// turnsShut also tells from the first closing how the tap stands while the machine
// works: open, unless something before has opened it or the start says that it is shut.
func turnsShut(w *walk, step *model.Step, object model.Object) {
	t := w.cocked(object)
	if t == nil {
		return
	}
	if t.at == nil {
		before := slices.ContainsFunc(w.job.Steps[:step.Number-1], func(s *model.Step) bool { return opensCock.MatchString(worded(s)) && t.named(worded(s)) })
		t.usually = !t.drains() && !before && !w.said(w.job.Procedure.Start, t.words, "closed", "shut", "off")
	}
	t.open, t.at, t.place = false, step, object.Text.At
}

// worded is what a step says, with what its energies say of the deed.
func worded(step *model.Step) string {
	text := step.Say.Text
	for _, object := range step.Objects {
		if object.Kind == "words" {
			text += ". " + step.Verb.Key + " " + object.Text.Text
		}
		if object.Energy == nil {
			continue
		}
		switch step.Verb.Key {
		case "isolate":
			text += " " + object.Energy.Isolate.Text
		case "relieve":
			text += " " + object.Energy.Relieve.Text
		case "restore":
			text += " " + object.Energy.Restore.Text
		}
	}
	return text
}

// turnsTaps follows the taps that the words of a step open or shut.
func (w *walk) turnsTaps(step *model.Step) {
	for _, t := range w.taps {
		switch text := worded(step); {
		case !t.named(text):
		case !t.open && opensCock.MatchString(text):
			t.open, t.at = true, step
		case t.open && shutsCock.MatchString(text):
			t.open, t.at = false, step
		}
	}
}

// astray reports whether a tap does not stand as it does while the machine works.
func (w *walk) astray(t *tap) bool {
	if t.at == nil || t.of != nil && w.of(t.of).out > 0 || has(strings.ToLower(t.at.Told()), []string{"leave", "stays", "stay "}) {
		return false
	}
	if t.open {
		return t.drains() && !w.said(w.job.Procedure.End, t.words, "open")
	}
	return t.usually && !w.said(w.job.Procedure.End, t.words, "closed", "shut", "off")
}

// runsFed wants what feeds the machine open before it runs, unless the step says that it
// runs dry on purpose.
func runsFed(w *walk, step *model.Step, object model.Object) {
	words := strings.ToLower(step.Told() + " " + object.Words())
	if has(words, append([]string{"closed", "shut", "dry", "dies", "stops", "stalls", "empty", "without"}, byHand...)) {
		return
	}
	for _, t := range w.taps {
		if !t.open && has(t.key, feeding) && w.astray(t) {
			w.breach(RunsShut, step, object.Text.At, object.Words(), t.words, t.at)
			return
		}
	}
}

// draining reports whether another breach tells that a tap is open: something is filled
// above it, or what it drains is left empty.
func (w *walk) draining(t *tap) bool {
	return slices.ContainsFunc(w.out.Breaches, func(b Breach) bool { return b.Kind == FillsOpen && b.Other == t.words }) ||
		slices.ContainsFunc(w.pools, func(c *model.Cavity) bool { return t.of != nil && w.plug(c.Drain) == t.of && w.pool(c).drained })
}

// bleedsFed wants what feeds a circuit open before it is bled.
func bleedsFed(w *walk, step *model.Step, object model.Object) {
	for _, t := range w.taps {
		if !t.open && (has(t.key, fuels) || has(t.key, []string{"tank"})) && has(strings.ToLower(object.Words()), fuels) && w.astray(t) {
			w.breach(RunsShut, step, object.Text.At, object.Words(), t.words, t.at)
		}
	}
}

// leavesTaps tells of taps that stand otherwise than before; what ran meanwhile is then
// told with them.
func (w *walk) leavesTaps() {
	for _, t := range w.taps {
		runs := func(s *model.Step) bool { return s.Verb.Key == "run" || s.Verb.Key == "start" }
		if t.open && w.draining(t) {
			continue // told by what is filled, or left empty
		}
		if !w.astray(t) || t.at.Section == "close" && !slices.ContainsFunc(w.job.Steps[t.at.Number:], runs) && !t.open {
			continue
		}
		w.out.Breaches = slices.DeleteFunc(w.out.Breaches, func(b Breach) bool {
			return (b.Kind == RunsShut || b.Kind == RunsOpen) && b.Other == t.words
		})
		kind := LeftShut
		if t.open {
			kind = LeftOpen
		}
		breach := w.breach(kind, t.at, t.place, t.words, "", nil)
		breach.Name = t.key
		if t.of != nil {
			breach.Name = t.of.Name
		}
	}
}
