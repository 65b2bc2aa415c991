package model

import (
	"bytes"
	"maps"
	"path"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
)

// Reader reads sets of files one after the other, and does not read again what has not changed
// since the one before. A set that it read is no longer to be used once it reads the next.
type Reader struct {
	set  *Set
	kept map[*File]*kept
}

// kept is what was found in a file when it was read, and when it was linked.
type kept struct {
	broken       bool // when it was read
	read, linked []finding.Finding
}

// Read reads every file, links what they use and holds every name against what is
// there. each does n things, in any order or side by side.
func (r *Reader) Read(texts []*source.File, each func(n int, do func(i int))) *Set {
	texts = slices.Clone(texts)
	slices.SortFunc(texts, func(a, b *source.File) int { return strings.Compare(a.Path, b.Path) })
	if changed, same := r.changed(texts); same && r.patch(changed) {
		return r.gather()
	}
	before, was := r.set, r.kept
	r.set, r.kept = newSet(make([]*File, len(texts)), map[string]*File{}), map[*File]*kept{}
	found := make([]*kept, len(texts))
	each(len(texts), func(i int) {
		if before != nil {
			if file := before.byPath[texts[i].Path]; file != nil && bytes.Equal(file.Source.Text, texts[i].Text) {
				r.set.Files[i], found[i] = file, &kept{broken: was[file].broken, read: was[file].read}
				file.Broken, file.Differences = was[file].broken, nil
				return
			}
		}
		file, findings := read(texts[i])
		r.set.Files[i], found[i] = file, &kept{broken: file.Broken, read: findings}
	})
	for i, file := range r.set.Files {
		r.set.byPath[file.Source.Path], r.kept[file], file.number = file, found[i], i
	}
	r.forget()
	for _, stage := range stages {
		for _, file := range r.set.Files {
			r.stage(file, stage)
		}
	}
	return r.gather()
}

// stages are what is done to each file once all are read, one after the other.
var stages = []func(*Set, *File){
	(*Set).link,
	(*Set).readAgain,
	func(s *Set, file *File) { s.checkTwice(file); s.check(file) },
}

// check holds the names that a file mentions, and its own, against what is there.
func (s *Set) check(file *File) { s.checkRefs(file); s.checkName(file) }

// stage does one of them to a file, and keeps what it finds.
func (r *Reader) stage(file *File, do func(*Set, *File)) { r.set.keep(r.kept, file, do) }

// keep does something to a file, and keeps what it finds with what was found in it before.
func (s *Set) keep(of map[*File]*kept, file *File, do func(*Set, *File)) {
	n := len(s.Findings)
	do(s, file)
	of[file].linked = append(of[file].linked, s.Findings[n:]...)
}

// gather puts what was found into the set.
func (r *Reader) gather() *Set {
	out := newSet(r.set.Files, r.set.byPath)
	out.Findings = gathered(r.set.Files, r.kept)
	out.renamed()
	r.set = out
	return out
}

// changed are the texts that are not as they were in the set before; false where there was none,
// or it had other files.
func (r *Reader) changed(texts []*source.File) (out []*source.File, same bool) {
	if r.set == nil || len(texts) != len(r.set.Files) {
		return nil, false
	}
	for i, text := range texts {
		file := r.set.Files[i]
		if file.Source.Path != text.Path {
			return nil, false
		}
		if file.Source != text && !bytes.Equal(file.Source.Text, text.Text) {
			out = append(out, text)
		}
	}
	return out, true
}

// patch reads one changed file in the place of what it was, where nothing of it that others look
// at has changed: what it uses, which names it has. It reports whether that was enough.
func (r *Reader) patch(changed []*source.File) bool {
	if len(changed) == 0 {
		return true
	}
	if len(changed) > 1 {
		return false
	}
	file := r.set.byPath[changed[0].Path]
	for other, found := range r.kept { // what was found elsewhere and points here has moved
		if other != file && slices.ContainsFunc(found.linked, func(f finding.Finding) bool { return pointsTo(f, file.Source) }) {
			return false
		}
	}
	if slices.ContainsFunc(r.kept[file].linked, func(f finding.Finding) bool { return f.Place.File != file.Source }) {
		return false // it broke another
	}
	lone := !slices.ContainsFunc(r.set.Files, func(other *File) bool { return other != file && slices.Contains(other.layers, file) })
	was, layers, seen, machine, shares := file.outline(lone), file.layers, file.view, file.machine, file.shares
	title, second := file.title(), file.Second != nil
	linked := !slices.ContainsFunc(r.kept[file].linked, func(f finding.Finding) bool {
		return f.Rule == useLoop.ID || f.Rule == outsideShop.ID || f.Rule == missingFile.ID
	})
	findings := file.read(changed[0])
	file.number, r.set.register = slices.Index(r.set.Files, file), new(register) // it may be called otherwise now
	r.kept[file] = &kept{broken: file.Broken, read: findings}
	describes := file.describes()
	same := slices.Equal(was, file.outline(lone))
	if !same && !(lone && !second && file.Second == nil && r.unmentioned(file, title, file.title())) {
		for _, other := range r.set.Files {
			if slices.Contains(other.layers, file) {
				other.view = nil
			}
		}
		r.forget()
		return false
	}
	for _, other := range r.set.Files {
		if describes && other != file && slices.Contains(other.layers, file) {
			other.view, other.shares = &view{}, nil
		}
	}
	if linked && same { // it uses what it did, and that is what it was
		file.layers, file.shares = layers, shares
		file.machine = file.machineOf()
		if !describes && file.machine == machine {
			file.view = seen
		}
	} else {
		r.stage(file, stages[0])
		if !same && file.clashes() {
			return false // which file tells of it hangs on the order of all
		}
	}
	if second {
		r.forget()
	}
	read := []*File{file} // what is read a second time anew
	if first := r.set.First(file); file.Second != nil && first != nil && first != file {
		read = append(read, first)
	}
	for _, first := range read {
		first.Differences = nil
	}
	name := path.Base(file.Source.Path)
	for _, other := range r.set.Files {
		if !strings.HasSuffix(other.Source.Path, name) { // a file and its second reading are called alike
			continue
		}
		if other.Second != nil && (other == file || slices.Contains(read, r.set.First(other))) {
			r.kept[other].linked = slices.DeleteFunc(r.kept[other].linked, func(f finding.Finding) bool { return f.Rule == nothingRead.ID })
			r.stage(other, stages[1])
		}
	}
	r.stage(file, (*Set).check) // what others describe twice stands as it did
	return true
}

// forget drops what was compared with second readings that are no longer so.
func (r *Reader) forget() {
	alive := func(second *File) bool { return r.set.byPath[second.Source.Path] == second }
	for _, file := range r.set.Files {
		for second, one := range file.rereadings {
			if !alive(second) || second.Second != one.of {
				delete(file.rereadings, second)
			}
		}
		maps.DeleteFunc(file.twice, func(_ *tree.Value, reader *SecondReading) bool {
			return !alive(reader.File) || reader.File.Second != reader
		})
	}
}

// pointsTo reports whether a finding stands in a text, or names a place there.
func pointsTo(f finding.Finding, text *source.File) bool {
	return f.Place.File == text || slices.ContainsFunc(f.Related, func(one finding.Related) bool { return one.Place.File == text })
}

// describes reports whether a file has something that others take from it.
func (f *File) describes() bool { return len(f.things) > 0 || f.Machine != nil }

// outline is what other files look at in a file when they are linked. Where a file is lone, nobody
// takes anything from it, and whether it can be read is nothing to them.
func (f *File) outline(lone bool) []string {
	out := []string{"uses"}
	for _, use := range f.Uses.Items {
		out = append(out, use.Text)
	}
	if f.Machine != nil {
		out = append(out, "machine", f.machineName(), f.Machine.Title.Text)
		out = append(out, f.Machine.Variants.Names()...)
	}
	if f.Procedure != nil {
		out = append(out, "procedure", f.Name(), f.Procedure.Title.Text, f.Procedure.Machine.Text)
	}
	for _, thing := range f.things {
		out = append(out, thing.kind+"/"+thing.name)
	}
	for what, is := range map[string]bool{"unread": f.unread && !lone, "bare": f.bare && !lone, "broken": f.Broken && !lone, "shop": f.Shop != nil, "second": f.Second != nil} {
		if is {
			out = append(out, what)
		}
	}
	slices.Sort(out)
	return out
}

// titled is by what other files know a procedure: its name, its title and its machine. The zero
// titled is of a file without one.
type titled struct{ name, title, machine string }

func (f *File) title() titled {
	if f.Procedure == nil {
		return titled{}
	}
	return titled{f.Name(), f.Procedure.Title.Text, f.Procedure.Machine.Text}
}

// unmentioned reports whether what is found in the other files is the same whichever of two titles
// a file has from which nobody takes anything: none of them has a procedure of that name or that
// title, or names it, or asks for one that is nowhere, since that is told with the nearest name.
func (r *Reader) unmentioned(file *File, was, is titled) bool {
	if was == is {
		return true
	}
	for _, other := range r.set.Files {
		if other == file {
			continue
		}
		if title := other.title(); title.name != "" && (title.name == was.name || title.name == is.name ||
			title.title != "" && title.machine == was.machine && title.title == was.title || title.title != "" && title.machine == is.machine && title.title == is.title) {
			return false
		}
		for _, ref := range other.refs {
			if !strings.Contains(ref.Of, "procedure") {
				continue
			}
			if name := ref.Name.Name(); name == is.name || r.set.Procedure(name) == nil {
				return false
			}
		}
	}
	return true
}
