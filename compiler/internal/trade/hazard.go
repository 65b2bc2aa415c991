package trade

import (
	"slices"
	"strings"
)

// Hazard is a kind of hazard with its message in the parts of ANSI Z535.6.
type Hazard struct {
	Key       string // short word of the trade: "injection"
	Title     string // what it is, in a few words
	Level     Signal // least level its message may have
	Worst     Signal // level it rises to when WorstWhen holds; Level where it never rises
	WorstWhen string // goes on from "when": "someone goes under or between"; empty where it never rises

	// Words are what in a step implies the hazard, lower case. A word ends in * where any
	// ending may follow; | separates words of which one is meant; a list after + must act
	// on the phrase before it ("Remove the belt", "the belt is removed"); a list after &
	// need only stand in the same sentence; a list after % must not stand there; after ! stand
	// words of which none may follow at once. <mass>, <volts> and <heat> are figures that are
	// heavy, live or hot. A cue that begins with ? holds even
	// where it is ruled out; one that begins with ~ is a deed and no thing ("the hammer").
	Words []string

	Hazard      string   // noun phrase: "Fluid under high pressure"
	Consequence string   // goes on from the hazard: "can pierce your skin"
	Avoid       string   // one or two sentences that begin with a verb
	Wear        []string // keys of protective equipment
	Signs       []string // ISO 7010 numbers: W, M, P, E; those of the equipment are in Wear
	Source      string
	FromMemory  bool // the source was not seen in print

	many bool // Hazard is a plural
}

// Sentence is the consequence as a sentence that may follow the hazard as a heading:
// "It can pierce your skin."
func (h Hazard) Sentence() string {
	if h.many {
		return "They " + h.Consequence + "."
	}
	return "It " + h.Consequence + "."
}

// FindHazard looks a hazard up by its key.
func FindHazard(key string) (Hazard, bool) {
	at, ok := hazardAt[key]
	if !ok {
		return Hazard{}, false
	}
	return hazards[at], true
}

// ParseHazard is FindHazard for what somebody wrote; the error names the nearest key.
func ParseHazard(text string) (Hazard, error) {
	if hazard, ok := FindHazard(strings.ReplaceAll(squeeze(text), " ", "-")); ok {
		return hazard, nil
	}
	return Hazard{}, unknown("kind of hazard", text, keysOf(Hazards(), func(h Hazard) string { return h.Key }))
}

// Hazards lists every kind of hazard, always in the same order. Words and messages are
// our own; the sources say what the hazard is and how it is avoided.
func Hazards() []Hazard { return slices.Clone(hazards) }

// hazards and their index are made once, when the program starts, and never change.
var (
	hazards  = allHazards()
	hazardAt = func() map[string]int {
		out := map[string]int{}
		for i, hazard := range hazards {
			out[hazard.Key] = i
		}
		return out
	}()
)

func allHazards() []Hazard {
	var out []Hazard
	for _, list := range [][]Hazard{moving(), stored(), hotAndBurning(), substances(), handling(), places()} {
		out = append(out, list...)
	}
	for i, hazard := range out {
		if hazard.WorstWhen == "" {
			out[i].Worst = hazard.Level
		}
	}
	return out
}
