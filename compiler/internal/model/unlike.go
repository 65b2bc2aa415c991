package model

import (
	"slices"

	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

// Unlike is a key in which a step says something else than the one it is a copy of.
type Unlike struct {
	Key         string
	Here, There source.Place // the values; not set where there is none
}

// Unlike lists the keys in which a step says something else than another that it is a copy of,
// in the order of the language: every key that there is but the verbs, each as it is read for
// one version of the machine.
func (s *Step) Unlike(other *Step, variant string) []Unlike {
	c := comparison{first: s.File, second: other.File, copied: true}
	var out []Unlike
	for _, key := range layoutOfSteps().Keys {
		if _, verb := schema.FindVerb(key.Name); verb {
			continue
		}
		here, there := s.value(key.Name, variant), other.value(key.Name, variant)
		if here == nil && there == nil || here != nil && there != nil && c.same(key, here, there) {
			continue
		}
		one := Unlike{Key: key.Name}
		if here != nil {
			one.Here = source.Place{File: s.File.Source, Span: here.Span}
		}
		if there != nil {
			one.There = source.Place{File: other.File.Source, Span: there.Span}
		}
		out = append(out, one)
	}
	return out
}

// value is what a step says of a key for a version of the machine; nil where it says nothing, or
// that there is none.
func (s *Step) value(key, variant string) *tree.Value {
	entry := s.Table.Get(key)
	for _, override := range s.Variant {
		if override.Variant.Name() == variant && override.Table.Get(key) != nil {
			entry = override.Table.Get(key)
		}
	}
	if entry == nil {
		return nil
	}
	switch value := entry.Value; {
	case key == "people" && value.Int == 1, value.Kind == tree.ArrayKind && len(value.Items) == 0,
		value.Kind == tree.BooleanKind && !value.Bool, value.Kind == tree.TableKind && len(value.Table.Entries) == 0:
		return nil
	}
	return entry.Value
}

// UnlikeObjects reports where a step is done to other things than the one it is a copy of, or
// waits another time: its first object that is not the other's, or its verb where one of those
// is missing. some: it may be done to some of them only, in any order.
func (s *Step) UnlikeObjects(other *Step, some bool) (at source.Place, unlike bool) {
	if s.Wait.Set() || other.Wait.Set() {
		c := comparison{first: s.File, second: other.File, copied: true}
		return s.Wait.At, !s.Wait.Set() || !other.Wait.Set() || !c.sameAmount(s.Wait.Value, other.Wait.Value)
	}
	for i, object := range s.Objects {
		if some && !object.in(other.Objects) || !some && (i >= len(other.Objects) || !object.is(other.Objects[i])) {
			return object.Text.At, true
		}
	}
	if !some && len(s.Objects) < len(other.Objects) {
		return s.Verbs[0].At, true
	}
	return source.Place{}, false
}

// Shares reports whether two steps are done to one thing at least, or to nothing that is named.
func (s *Step) Shares(other *Step) bool {
	return len(s.Objects) == 0 || len(other.Objects) == 0 || slices.ContainsFunc(s.Objects, func(object Object) bool { return object.in(other.Objects) })
}

func (o Object) in(list []Object) bool { return slices.ContainsFunc(list, o.is) }

// is reports whether two objects are one thing, by name, or in words.
func (o Object) is(other Object) bool {
	if o.Kind != other.Kind {
		return false
	}
	key := schema.Key{Kind: schema.Names}
	if o.Kind == "words" {
		key.Kind = schema.Text
	}
	return copiedText(nil, key, o.Text.Value) == copiedText(nil, key, other.Text.Value)
}
