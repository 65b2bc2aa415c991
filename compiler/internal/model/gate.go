package model

import (
	"strconv"

	"benchleaf/compiler/internal/pattern"
)

var digits = pattern.MustCompile(`\d+`)

// Figures are the whole numbers that stand in the gate of a step: a time, and the number of
// the step that it is counted from.
func (s *Step) Figures() []int {
	var out []int
	for _, text := range digits.FindAllString(s.Gate.Text, -1) {
		if n, err := strconv.Atoi(text); err == nil {
			out = append(out, n)
		}
	}
	return out
}

// times are amounts of time as they are written in a gate, in the languages of the fixed words.
var times = pattern.MustCompile(`(?i)\d+([.,]\d+)?\s*(s|min|h|d|std|seconds?|minutes?|hours?|days?|sekunden?|minuten?|stunden?|tagen?|segundos?|minutos?|horas?|d[ií]as?|secondes?|heures?|jours?)\b`)

// After are the numbers of the steps that the gate of a step is counted from: its figures but
// for the times.
func (s *Step) After() []int {
	var out []int
	for _, text := range digits.FindAllString(times.ReplaceAllString(s.Gate.Text, ""), -1) {
		if n, err := strconv.Atoi(text); err == nil {
			out = append(out, n)
		}
	}
	return out
}

// Behind is the number of the step that a wait begins behind; 0 where it is the first.
func (j *Job) Behind(wait *Step) int {
	before := wait.Number - 1
	for before > 0 && j.Steps[before-1].Verb.Key == "wait" {
		before--
	}
	return before
}
