package state

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
)

// Renews reports whether a step puts a new part in, or puts one back on.
func Renews(job *model.Job, step *model.Step, part *model.Part) bool {
	return slices.ContainsFunc(step.Objects, func(object model.Object) bool {
		own := object.Part != nil && object.Part.Name == part.Name
		switch step.Verb.Key {
		case "replace":
			return own || object.Spare != nil && GoesInFor(job, object.Spare, part)
		case "refit", "connect":
			return own
		case "close":
			return own && part.Cover
		}
		return false
	})
}

// Sets reports whether a step brings what a limit is for to its value; Measures, whether it
// finds the value.
func Sets(step *model.Step, limit *model.Limit) bool {
	return slices.Contains(sets, step.Verb.Key) && about(step, limit)
}

func Measures(step *model.Step, limit *model.Limit) bool {
	return slices.Contains([]string{"measure", "check", "inspect", "record"}, step.Verb.Key) && about(step, limit)
}

func about(step *model.Step, limit *model.Limit) bool {
	return slices.ContainsFunc(step.Objects, func(object model.Object) bool { return object.Limit != nil && object.Limit.Name == limit.Name })
}

// setAnew tells of the settings that want to be made anew after a part that was renewed or
// came back on, where no later step makes or measures them.
func (w *walk) setAnew() {
	for _, limit := range w.job.Limits() {
		for _, item := range limit.Anew.Items {
			part := w.job.Part(item.Name())
			if part == nil {
				continue
			}
			for i := len(w.job.Steps) - 1; i >= 0; i-- {
				step := w.job.Steps[i]
				if w.anew(step, limit) {
					break
				}
				if !Renews(w.job, step, part) {
					continue
				}
				breach := w.breach(NotAnew, step, step.Objects[0].Text.At, part.Words(), limit.Words(), nil)
				breach.Name = limit.Name
				break
			}
		}
	}
}

// anew reports whether a step makes or measures a setting: by its name, in its words, or by
// another procedure that it has done.
func (w *walk) anew(step *model.Step, limit *model.Limit) bool {
	if Sets(step, limit) || Measures(step, limit) {
		return true
	}
	said := plain(step.Say.Text)
	for _, object := range step.Objects {
		if object.Other != nil && w.doneElsewhere(object.Text.Name(), limit) {
			return true
		}
		if object.Kind == "words" {
			said += " " + plain(object.Words())
		}
	}
	return strings.Contains(" "+said+" ", " "+plain(limit.Words())+" ")
}

// doneElsewhere reports whether another procedure makes or measures a setting; one that
// cannot be read may.
func (w *walk) doneElsewhere(procedure string, limit *model.Limit) bool {
	jobs := w.job.Beside(procedure)
	return len(jobs) == 0 || slices.ContainsFunc(jobs, func(job *model.Job) bool {
		return slices.ContainsFunc(job.Steps, func(step *model.Step) bool { return Sets(step, limit) || Measures(step, limit) })
	})
}
