package model

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/internal/quantity"
)

// Told is what a step says in the author's words, but not what to do when it went wrong.
func (s *Step) Told() string {
	text := s.Say.Text + " " + s.Until.Text + " " + s.Expect.Text
	for _, keep := range s.Keep.Items {
		text += " " + keep.Text
	}
	return text
}

// touches are words by which a look is one with the fingers.
var touches = []string{"by hand", "feel", "touch", "finger", "thumb", "press", "pull", "push", "rock", "lift"}

// Touches reports whether a look or a measuring brings hands to its object: by its words, or
// by what is measured with a tool held against it.
func (s *Step) Touches(object Object) bool {
	switch s.Verb.Key {
	case "measure":
		figure := s.Limit
		if !figure.OK && object.Limit != nil {
			figure = object.Limit.Limit
		}
		return figure.OK && (figure.Dimension == quantity.Length || figure.Dimension == quantity.Force)
	case "inspect", "check":
		words := strings.ToLower(s.Told() + " " + object.Words())
		return slices.ContainsFunc(touches, func(word string) bool { return strings.Contains(words, word) })
	}
	return false
}

// watched are words by which a wait wants somebody with it, or nobody at the machine, or nothing
// of it moved; common practice, no source.
var watched = pattern.MustCompile(`(?i)\b(stay(s)? (with|at|by|beside|clear)|watch(ed)?|keep (away|clear)|hands off|clear of|without|still|not|nothing|nobody|no|no-one|never|mov\w*|turn\w*|rotat\w*|touch\w*|disturb\w*|alone)\b|n't\b`)

// held are words for what a plan keeps by itself while a wait runs: what is off stays off, what
// is cut off stays so, and the machine as it lies.
var held = pattern.MustCompile(`(?i)\b(stays?|remains?|keeps?|kept|is|are|be|hangs?|stands?|lies?|leave|left)\b.*\b(out|off|open|locked|isolated|cut off|dead|up|raised|lowered|down|level|upright|tilted|side|removed|disconnected|unplugged|loose|slack|vented|stands|stops|blocks)\b`)

// Watched reports whether what must hold during a wait leaves nobody free for other work: its
// words say so, or say what no plan is known to keep. Words are read in English only, so that in
// another language no wait with such a condition is filled.
func (s *Step) Watched() bool {
	return slices.ContainsFunc(s.Keep.Items, func(keep Text) bool {
		return watched.MatchString(keep.Text) || !held.MatchString(keep.Text)
	})
}
