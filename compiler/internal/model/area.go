package model

import "slices"

// Area is an area of the machine by its name; nil where there is none.
func (j *Job) Area(name string) *Area { return library[Area](j, "area", name) }

// Areas are the names of the areas in which a person works at a step: its own, or those of all
// its objects. They are nil where they are not known of each.
func (j *Job) Areas(step *Step) []string {
	if step.Area.Given {
		return step.Area.Names()
	}
	var out []string
	for _, object := range step.Objects {
		var of List
		switch {
		case object.Part != nil:
			of = object.Part.Area
		case object.Cavity != nil:
			of = object.Cavity.Area
		case object.Point != nil:
			of = object.Point.Area
		case object.Limit != nil:
			of = object.Limit.Area
		}
		if len(of.Items) == 0 {
			return nil
		}
		for _, name := range of.Names() {
			if !slices.Contains(out, name) {
				out = append(out, name)
			}
		}
	}
	return out
}

// Apart reports whether one person can work in some areas while another works in others: each
// is described as apart from each. Areas that are not known are apart from none.
func (j *Job) Apart(some, others []string) bool {
	if len(some) == 0 || len(others) == 0 {
		return false
	}
	for _, one := range some {
		for _, other := range others {
			a, b := j.Area(one), j.Area(other)
			if one == other || a == nil || b == nil || !a.Apart.Has(other) && !b.Apart.Has(one) {
				return false
			}
		}
	}
	return true
}

// StepOf is the step that has a short name; nil where none has.
func (j *Job) StepOf(id string) *Step {
	for _, step := range j.Steps {
		if step.ID.Set() && step.ID.Name() == id {
			return step
		}
	}
	return nil
}
