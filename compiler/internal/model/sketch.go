package model

import (
	"slices"

	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
)

// Sketch is the same files read as far as they can be, whatever faults stand in them: for
// help while they are written. Nothing is held against it, and no job is made of a file with
// a fault. Where every file could be read it is the set itself.
func (s *Set) Sketch() *Set {
	if !slices.ContainsFunc(s.Files, func(f *File) bool { return f.bare }) {
		return s
	}
	out := newSet(nil, map[string]*File{})
	for _, file := range s.Files {
		drawn := sketch(file.Source, file.Document)
		drawn.unread = file.unread
		out.Files = append(out.Files, drawn)
		out.byPath[file.Source.Path] = drawn
	}
	for _, file := range out.Files {
		out.link(file)
		out.besides(file)
	}
	return out
}

func sketch(text *source.File, document *tree.Document) *File {
	file := &File{Source: text, Document: document, index: map[key]any{}, view: &view{}}
	d := &decoder{file: file}
	d.root(document.Root)
	file.Amounts, file.refs = d.amounts, d.refs
	file.Broken = true
	return file
}

// Sees reports whether a file takes names of a kind from one of its layers: the things of a
// machine only from its own machine.
func (f *File) Sees(layer *File, kind string) bool {
	return slices.Contains(f.layers, layer) && f.takes(layer, kind)
}

func (f *File) takes(layer *File, kind string) bool {
	return layer == f || layer.Machine == nil || layer == f.machine || !slices.Contains(machineKinds, kind)
}

// Describing is the file from which a file takes the thing of a kind and name, and the thing;
// nil where there is none.
func (f *File) Describing(kind, name string) (*File, any) {
	one := f.seen().things[key{kind, name}]
	return one.from, one.thing
}

// Own is the thing of a kind and name that the file describes itself; nil where there is none.
func (f *File) Own(kind, name string) any { return f.index[key{kind, name}] }

// Names lists every name of a kind that the file can see, sorted.
func (f *File) Names(kind string) []string { return f.names(kind) }

// Of is the file that describes the machine of the file's procedure, or the file itself where
// it describes a machine; nil where none is described.
func (f *File) Of() *File {
	if f.Machine != nil {
		return f
	}
	return f.machine
}

// Matches lists the files that a use of the file stands for, in order of path.
func (s *Set) Matches(from *File, use Text) []*File { return s.match(from, use, false) }

// Dimensions are what an amount may measure by a key of the schema, the likeliest first.
func Dimensions(of string) []quantity.Dimension { return dimensions(of) }

// Conditional reports whether a thing is of every version but the one, by its list of versions.
func Conditional(list List, variant string) bool { return !serves(list, variant) }
