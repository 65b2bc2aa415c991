package assist

import (
	"cmp"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
)

func comparePlaces(a, b source.Place) int {
	return cmp.Or(cmp.Compare(a.File.Path, b.File.Path), cmp.Compare(a.Span.Start, b.Span.Start), cmp.Compare(a.Span.End, b.Span.End))
}

// Definition lists the places where the name at an offset is described, or, on a use of
// files, the files; nothing where nothing is.
func (s *Shop) Definition(path string, offset int) []source.Place {
	file := s.file(path)
	if file == nil {
		return nil
	}
	if m, ok := s.at(file, offset); ok {
		t := s.resolve(m)
		if !t.known() {
			return nil
		}
		var out []source.Place
		for _, one := range s.named[t] {
			if one.declares {
				out = append(out, place(one.file, one.span))
			}
		}
		return out
	}
	return s.used(file, offset)
}

// used lists the files that the use at an offset stands for.
func (s *Shop) used(file *model.File, offset int) []source.Place {
	entry := file.Document.Root.Get("use")
	if entry == nil {
		return nil
	}
	var out []source.Place
	for _, item := range append([]*tree.Value{entry.Value}, entry.Value.Items...) {
		if item.Kind != tree.StringKind || !within(item.Span, offset) {
			continue
		}
		for _, other := range s.set.Matches(file, model.Text{Text: item.Text, Value: item}) {
			out = append(out, place(other, source.Span{}))
		}
	}
	return sortPlaces(out)
}

// References lists all places where what is named at an offset is named, with the places
// where it is described or without them.
func (s *Shop) References(path string, offset int, declaration bool) []source.Place {
	file := s.file(path)
	if file == nil {
		return nil
	}
	m, ok := s.at(file, offset)
	if !ok {
		return nil
	}
	t := s.resolve(m)
	if !t.known() {
		return nil
	}
	var out []source.Place
	for _, one := range s.named[t] {
		if declaration || !one.declares {
			out = append(out, place(one.file, one.span))
		}
	}
	return sortPlaces(out)
}
