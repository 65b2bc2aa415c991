package model

import "slices"

// Area is an area of the machine by its name; nil where there is none.
func (j *Job) Area(name string) *Area { return library[Area](j, "area", name) }

// AllAreas are the areas of the machine, by name.
func (j *Job) AllAreas() []*Area {
	var out []*Area
	for _, name := range j.File.names("area") {
		if area := j.Area(name); area != nil {
			out = append(out, area)
		}
	}
	return out
}

// InUse reports whether anything is in an area: a thing of the machine, or a step of any of the
// procedures that are read.
func (j *Job) InUse(area *Area) bool {
	for _, file := range j.set.Files {
		for _, ref := range file.areas {
			if ref.Name.Name() != area.Name {
				continue
			}
			here, _ := file.find("area", area.Name).(*Area)
			if here != nil && here.Header == area.Header && !slices.ContainsFunc(file.names("area"), func(name string) bool {
				other, _ := file.find("area", name).(*Area)
				return other != nil && slices.ContainsFunc(other.Apart.Items, func(item Text) bool { return item.At == ref.Name.At })
			}) {
				return true
			}
		}
	}
	return false
}

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
		case object.Spare != nil:
			of = j.sealed(object.Spare)
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

// sealed are the areas of all parts that a spare seals; none where one of them has no area, or
// nothing says what it seals. What is replaced by the name of a part is that part.
func (j *Job) sealed(spare *Spare) List {
	var out List
	for _, part := range append(j.Parts(), j.Covers()...) {
		if !part.Seals.Has(spare.Name) {
			continue
		}
		if len(part.Area.Items) == 0 {
			return List{}
		}
		out.Items = append(out.Items, part.Area.Items...)
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
