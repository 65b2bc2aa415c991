package model

import (
	"regexp"
	"slices"
	"strings"

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

// watched are words by which a wait wants somebody with it, or nobody at the machine; common
// practice, no source.
var watched = regexp.MustCompile(`(?i)\b(nobody|no one|no-one|stay(s)? (with|at|by|beside|clear)|watch(ed)?|keep (away|clear)|hands off|do not touch|touch nothing|clear of|without a break)\b`)

// Watched reports whether what must hold during a wait leaves nobody free for other work.
func (s *Step) Watched() bool {
	return slices.ContainsFunc(s.Keep.Items, func(keep Text) bool { return watched.MatchString(keep.Text) })
}
