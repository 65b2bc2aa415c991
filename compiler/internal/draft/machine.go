package draft

import (
	"cmp"
	"slices"
	"strings"
)

// afloat reports whether notes are about a boat.
func afloat(words []word) bool {
	return wordIn(words, "outboard", "boat", "transom", "propeller", "sterndrive", "inboard")
}

// aboard takes the words of notes about a boat for what they are there: a prop is a propeller.
func aboard(words []word) []word {
	if !afloat(words) {
		return words
	}
	for i := range words {
		if w := &words[i]; w.lower == "prop" && !(i+1 < len(words) && (words[i+1].lower == "up" || words[i+1].lower == "it")) {
			w.lower, w.stem = "propeller", "propeller"
		}
	}
	return words
}

// vessel is what is drained or filled where it is not named: the cavity that is spoken of, or the
// machine named shortly before.
func (t *taker) vessel(at int) string {
	if t.cavity != "" {
		return t.cavity
	}
	for i := len(t.mentions) - 1; i >= 0 && at-t.mentions[i].from < 40; i-- {
		if m := t.mentions[i]; (m.class == machinePart && m.head != "machine" && (ownName.has(m.head) || !t.engined()) || m.class == cavityPart) && !m.many {
			return m.name
		}
	}
	return ""
}

// prime is what is started and run: the engine of a machine that has one, or the machine.
func (t *taker) prime() string {
	if t.primeName == "" {
		head := t.machineHead()
		t.primeName = cmp.Or(head, "machine")
		if !ownName.has(head) && t.engined() {
			t.primeName = "engine"
		}
	}
	return t.primeName
}

// engined reports whether the notes speak of an engine.
func (t *taker) engined() bool {
	return t.enginePart() || slices.ContainsFunc([]string{"spark", "petrol", "gasoline", "diesel", "carburettor", "carburetor", "outboard"}, func(said string) bool {
		for i, w := range t.words {
			if w.stem == said && t.standings[i] != story && t.standings[i] != denied {
				return true
			}
		}
		return false
	})
}

// enginePart reports whether an engine is named, and not only its oil.
func (t *taker) enginePart() bool {
	for i, w := range t.words {
		if w.stem == "engine" && t.standings[i] != denied && (i+1 >= len(t.words) || t.words[i+1].lower != "oil" || t.words[i+1].stop != 0) {
			return true
		}
	}
	return false
}

func wordIn(words []word, any ...string) bool {
	return slices.ContainsFunc(words, func(w word) bool { return slices.Contains(any, w.stem) })
}

// machineHead is the noun of the machine that the notes are about: that of "this is the …", or
// the first machine that is named.
func (t *taker) machineHead() string {
	if t.headKnown {
		return t.headName
	}
	t.headKnown = true
	if called := t.machine(); called != "" {
		words := strings.Fields(strings.ToLower(called))
		t.headName = words[len(words)-1]
		if t.headName == "screw" {
			t.headName = "compressor" // a rotary screw
		}
		return t.headName
	}
	for i := range t.words {
		if strokesOf(t.words, i) {
			continue // two pumps of grease
		}
		if p, n := partAt(t.words, i); n > 0 && p.class == machinePart && p.head != "machine" && p.head != "engine" && p.head != "motor" && p.head != "controller" && (t.words[i].sentence < 2 || !fitted.has(p.head)) {
			t.headName = lastWord(p.head)
			break
		}
	}
	return t.headName
}

// strokesOf reports whether a word is a stroke of a grease gun: two pumps of grease.
func strokesOf(words []word, at int) bool {
	if words[at].stem != "pump" || at == 0 || words[at].stop != 0 {
		return false
	}
	before := words[at-1].lower
	return (smalls()[before] > 0 || numeric(before) || before == "few") && (words[at].stem != words[at].lower || before == "one") && (endsHere(words, at+1) || words[at+1].lower == "of" || words[at+1].lower == "each")
}

// fitted are machines that others have as their parts.
var fitted = set("cooler dryer condenser feeder separator heater extractor filler sander blower fan washer press stacker burner vibrator jig drill hoist elevator ventilator")

// system is what is bled.
func (t *taker) system() string {
	switch about := t.section.name + " " + t.topic.name; {
	case strings.Contains(about, "fuel"):
		return "fuel system"
	case strings.Contains(about, "brake"):
		return "brakes"
	case strings.Contains(about, "cool") || strings.Contains(about, "radiator"):
		return "cooling system"
	}
	if !wordIn(t.words, "hydraulic", "hydraulics", "ram", "cylinder", "jack", "brake") {
		return ""
	}
	return "hydraulics"
}
