package model

import (
	"slices"

	"benchleaf/compiler/internal/pattern"
)

// notOwn are fasteners and the like that have "lock" in their name and lock nobody out.
var notOwn = pattern.MustCompile(`(?i)\block[- ]?(nut|pin|washer|plate|wire|lever|ring|screw|bolt)s?\b`)

// ofLock are the words for a lock or tag that a person puts on, in the languages of the cards.
var ofLock = pattern.MustCompile(`(?i)\b(padlock|lock|locked|locking|lock-?out|tag)s?\b|schl[oö]ss|\bcadenas|\bcandado`)

// TellsOfLock reports whether words speak of a lock or a tag that a person puts on or takes off.
func TellsOfLock(words string) bool { return ofLock.MatchString(notOwn.ReplaceAllString(words, "")) }

// IsLock reports whether a tool is what a person puts on so that nobody gives an energy back.
func (t *Tool) IsLock() bool { return t != nil && (t.Kind.Text == "lock" || t.Kind.Text == "tag") }

// Locked reports whether a lock or a tag is put on where an energy is cut off.
func (j *Job) Locked(energy *Energy) bool {
	return TellsOfLock(energy.Isolate.Text) || slices.ContainsFunc(energy.Tools.Names(), func(name string) bool { return j.Tool(name).IsLock() })
}

// LocksAt reports whether a lock or a tag is put on or taken off at a step: of one of its
// energies, or of those only that are named.
func (j *Job) LocksAt(step *Step, only []string) bool {
	if slices.ContainsFunc(step.Tools.Names(), func(name string) bool { return j.Tool(name).IsLock() }) {
		return true
	}
	return slices.ContainsFunc(step.Objects, func(object Object) bool {
		return object.Energy != nil && (len(only) == 0 || slices.Contains(only, object.Energy.Name)) && j.Locked(object.Energy)
	})
}

// ForTwo reports whether steps of the job say who does them.
func (j *Job) ForTwo() bool {
	return slices.ContainsFunc(j.Steps, func(step *Step) bool { return step.Person.N > 0 })
}
