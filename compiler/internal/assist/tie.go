package assist

import (
	"fmt"
	"slices"

	"benchleaf/compiler/source"
)

// tie is a step that replaces a part and does not say with what: it takes the spare of the
// same name.
type tie struct {
	part, spare target
	at          source.Place
}

func (s *Shop) ties(name string) []tie {
	var out []tie
	for _, file := range s.set.Files {
		for _, step := range file.Steps {
			if step.Verb.Key != "replace" || step.Spares.Has(name) {
				continue
			}
			for _, object := range step.Objects {
				part, _ := file.Describing("part", name)
				spare, _ := file.Describing("spare", name)
				if object.Text.Name() == name && part != nil && spare != nil {
					out = append(out, tie{target{"part", name, part}, target{"spare", name, spare}, object.Text.At})
				}
			}
		}
	}
	return out
}

// together lists what is to be renamed with a thing: a part and the spare that goes in for it.
// It is an error where the parts of several machines take one spare.
func (s *Shop) together(t target) ([]target, error) {
	out := []target{t}
	if t.kind != "part" && t.kind != "spare" {
		return out, nil
	}
	ties := s.ties(t.name)
	for range ties { // each can bring another along
		for _, one := range ties {
			if slices.Contains(out, one.part) == slices.Contains(out, one.spare) {
				continue
			}
			for _, of := range []target{one.part, one.spare} {
				if !slices.Contains(out, of) {
					out = append(out, of)
				}
			}
		}
	}
	if len(out) > 2 {
		for _, one := range ties {
			if one.part == t || one.spare == t {
				return nil, fmt.Errorf("the spare %q goes in for parts of that name on several machines; write spares = [%q] into the step at %s:%d first", t.name, t.name, one.at.File.Path, one.at.Start().Line)
			}
		}
	}
	return out, nil
}
