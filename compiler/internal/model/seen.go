package model

import (
	"slices"

	"benchleaf/compiler/internal/trade"
)

// Seen is a thing that a file can name; of a tool Sort is its kind, such as container.
type Seen struct{ Kind, Name, Words, Sort string }

// seenKinds are the kinds of things that keys of the language name.
var seenKinds = []string{"machine", "variant", "part", "cover", "cavity", "energy", "pose", "area", "point", "limit", "tool", "fluid", "supply", "spare", "caution", "stock"}

// Seen lists what the file can name by kind and name, and how each is said.
func (f *File) Seen() []Seen {
	var out []Seen
	for _, kind := range seenKinds {
		for _, name := range f.names(kind) {
			one := Seen{Kind: kind, Name: name, Words: f.saidAs(kind, name)}
			if tool, ok := f.find(kind, name).(*Tool); ok {
				one.Sort = tool.Kind.Text
			}
			out = append(out, one)
		}
	}
	return out
}

func (f *File) saidAs(kind, name string) string {
	switch kind {
	case "machine":
		for _, layer := range f.layers {
			if layer.Machine != nil && layer.machineName() == name && layer.Machine.Title.Set() {
				return layer.Machine.Title.Text
			}
		}
	case "caution":
		for _, hazard := range trade.Hazards() {
			if hazard.Key == name && f.find(kind, name) == nil {
				return hazard.Title
			}
		}
	}
	if thing, ok := f.find(kind, name).(interface{ Words() string }); ok {
		return thing.Words()
	}
	if tool, ok := f.find(kind, name).(*Tool); ok && tool.Title.Set() {
		return tool.Title.Text
	}
	return Spoken(name)
}

// Procedures lists the procedures of the files, by their short names.
func (s *Set) Procedures() []Seen {
	var out []Seen
	for _, file := range s.Files {
		if file.Procedure != nil && !slices.ContainsFunc(out, func(other Seen) bool { return other.Name == file.Name() }) {
			out = append(out, Seen{Kind: "procedure", Name: file.Name(), Words: file.Procedure.Title.Text})
		}
	}
	return out
}
