package model

import (
	"bytes"
	"fmt"
	"iter"
	"path"
	"slices"
	"strconv"
	"strings"
	"sync"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/trade"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

// Shopfile is the file whose names every file in its folder and below takes.
const Shopfile = "shop.toml"

// machineKinds are the kinds of thing that belong to a machine; from a file that
// describes a machine only that machine's procedures take them.
var machineKinds = []string{"part", "cover", "cavity", "energy", "pose", "area", "point", "limit"}

// Uses lists the files a text takes names from, as paths from the shop folder,
// with the files beside it that are called as the procedures it names, the other reading
// of its figures and the shop file above it last; * stands as written. With them come the
// pictures it shows.
func Uses(text *source.File) (files, pictures []string) {
	file := &File{Source: text}
	if leads(text.Text) {
		file, _ = read(text)
	}
	for _, use := range file.Uses.Items {
		files = append(files, path.Join(path.Dir(text.Path), use.Text))
	}
	for _, ref := range file.refs {
		if ref.Of == "procedure" && namePattern.MatchString(ref.Name.Name()) {
			files = append(files, path.Join(path.Dir(text.Path), ref.Name.Name()+".toml"))
		}
	}
	files = append(files, otherReading(text.Path))
	for _, picture := range file.Pictures() {
		pictures = append(pictures, picture.Place())
	}
	return append(files, shopfiles(text.Path)...), pictures
}

// leading are the keys that lead to other files: those that name files, procedures and pictures.
var leading = sync.OnceValue(func() []string {
	out := []string{"use"}
	for _, table := range schema.Tables() {
		for _, key := range table.Keys {
			names := key.Kind != schema.Sub && slices.Contains(strings.Fields(key.Of), "procedure")
			if (names || key.Of == "picture") && !slices.Contains(out, key.Name) {
				out = append(out, key.Name)
			}
		}
	}
	return out
})

// keyLetters are the letters of a key that is written without quotes.
const keyLetters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_"

// leads reports whether a text may hold a key that leads to another file, without reading it.
func leads(text []byte) bool {
	for _, key := range leading() {
		for rest := text; ; {
			at := bytes.Index(rest, []byte(key))
			if at < 0 {
				break
			}
			begins := at == 0 || !bytes.ContainsAny(rest[at-1:at], keyLetters)
			rest = rest[at+len(key):]
			if after := bytes.TrimLeft(rest, "\"' \t"); begins && len(after) > 0 && strings.IndexByte("=.]", after[0]) >= 0 {
				return true
			}
		}
	}
	return bytes.Contains(text, []byte(`\u`)) || bytes.Contains(text, []byte(`\U`)) // a key may be spelt so
}

// shopfiles are the places of a shop file above a path, nearest first.
func shopfiles(file string) []string {
	var out []string
	for folder := path.Dir(file); ; folder = path.Dir(folder) {
		if candidate := path.Join(folder, Shopfile); candidate != file {
			out = append(out, candidate)
		}
		if folder == "." || folder == "/" {
			return out
		}
	}
}

// Set is all the files of a compile, read and linked.
type Set struct {
	Files    []*File // in order of path
	Findings []finding.Finding
	byPath   map[string]*File
	matched  map[string][]*File // the files that a pattern stands for
	checked  map[string]bool    // the files that names are taken from, by their numbers, that were held against each other

	above    map[string]*shared // what the files below a shop file take names from, by its path
	register *register
}

// register are the procedures of a set by what they are called, each in the order of the files.
type register struct {
	made   sync.Once
	named  map[string][]*File
	titled map[titled][]*File // without the name
}

func newSet(files []*File, byPath map[string]*File) *Set {
	return &Set{Files: files, byPath: byPath, register: new(register)}
}

// registered is the register of a set.
func (s *Set) registered() *register {
	r := s.register
	r.made.Do(func() {
		r.named, r.titled = map[string][]*File{}, map[titled][]*File{}
		for _, file := range s.Files {
			if file.Procedure == nil {
				continue
			}
			called := file.title()
			r.named[called.name] = append(r.named[called.name], file)
			called.name = ""
			r.titled[called] = append(r.titled[called], file)
		}
	})
	return r
}

// shared are the files from which every file below a shop file takes names that uses none itself:
// the shop file with what it uses, and behind them the second readings of these.
type shared struct {
	files, seconds []*File
	among          map[*File]bool
	views          map[*File]*view // what such a file sees that describes nothing, by the file of its machine
	checked        bool            // they were held against each other

	saying sync.Once
	said   map[string]bool // how anything of them is said
}

// Read reads every file, links what they use and holds every name against what is
// there. each does n things, in any order or side by side.
func Read(texts []*source.File, each func(n int, do func(i int))) *Set {
	return new(Reader).Read(texts, each)
}

func (s *Set) fault(file *File, rule finding.Rule, at source.Place, summary, help string) {
	s.Findings = append(s.Findings, finding.Finding{Rule: rule.ID, Severity: rule.Severity, Place: at, Summary: summary, Why: rule.Why, Help: help})
	file.Broken = true
}

// link finds the files whose names a file takes: itself, the files it uses and
// theirs in turn, the shop file above it, and the second readings of all these.
func (s *Set) link(file *File) {
	layers, machine := file.layers, file.machine
	from := s.sharedBy(file)
	file.shares = from
	if from != nil {
		own := s.ownReading(file)
		file.layers = from.under(file, own)
		file.machine = file.machineOf()
		switch {
		case len(file.things) == 0 && (own == nil || len(own.things) == 0): // it sees what the others see
			if from.views[file.machine] == nil {
				from.views[file.machine] = &view{}
			}
			file.view = from.views[file.machine]
		case file.view == nil || file.machine != machine || !slices.Equal(file.layers, layers):
			file.view = &view{} // or else it sees what it saw
		}
		return
	}
	seen := map[*File]bool{file: true}
	file.layers = []*File{file}
	s.follow(file, file, Text{}, []*File{file}, seen)
	for _, candidate := range shopfiles(file.Source.Path) {
		if shop := s.byPath[candidate]; shop != nil {
			if !seen[shop] {
				seen[shop] = true
				file.layers = append(file.layers, shop)
				s.follow(file, shop, Text{}, []*File{shop}, seen)
			}
			break
		}
	}
	s.besides(file)
	file.machine = file.machineOf()
	if file.view == nil || file.machine != machine || !slices.Equal(file.layers, layers) {
		file.view = &view{} // or else it sees what it saw
	}
}

// sharedBy are the files that a file takes names from besides itself and its second reading, where
// it shares them with all that lie below the same shop file; nil where it uses files itself.
func (s *Set) sharedBy(file *File) *shared {
	if len(file.Uses.Items) > 0 {
		return nil
	}
	for _, candidate := range shopfiles(file.Source.Path) {
		shop := s.byPath[candidate]
		if shop == nil {
			continue
		}
		from := s.above[candidate]
		if from == nil {
			like := &File{Source: shop.Source, layers: []*File{shop}}
			s.follow(like, shop, Text{}, []*File{shop}, map[*File]bool{like: true, shop: true})
			n := len(like.layers)
			s.besides(like)
			from = &shared{files: like.layers[:n:n], seconds: like.layers[n:], among: map[*File]bool{}, views: map[*File]*view{}}
			for _, layer := range like.layers {
				from.among[layer] = true
			}
			if s.above == nil {
				s.above = map[string]*shared{}
			}
			s.above[candidate] = from
		}
		if from.among[file] {
			return nil
		}
		return from
	}
	return nil
}

// ownReading is the other reading of a file, where it does not share that with others.
func (s *Set) ownReading(file *File) *File {
	if own := s.besideOf(file); own != nil && !file.shares.among[own] {
		return own
	}
	return nil
}

// under are the files that a file takes names from which shares these, and has a reading of its own or nil.
func (s *shared) under(file, own *File) []*File {
	out := append(append(make([]*File, 0, len(s.files)+len(s.seconds)+2), file), s.files...)
	if own != nil {
		out = append(out, own)
	}
	return append(out, s.seconds...)
}

// Reach are some files, and those that they take names from.
func (s *Set) Reach(files []*File) map[*File]bool {
	out, known := map[*File]bool{}, map[*shared]bool{}
	for _, file := range files {
		out[file] = true
		layers := file.layers
		if from := file.shares; from != nil {
			if layers = nil; !known[from] {
				known[from], layers = true, slices.Concat(from.files, from.seconds)
			}
			if own := s.ownReading(file); own != nil {
				out[own] = true
			}
		}
		for _, layer := range layers {
			out[layer] = true
		}
	}
	return out
}

// follow adds the files that one of the layers of a file uses. Faults of a use
// are told once, when its own file is linked; first is the file's own use that
// led here.
func (s *Set) follow(owner, from *File, first Text, trail []*File, seen map[*File]bool) {
	for _, use := range from.Uses.Items {
		own := first
		if owner == from {
			own = use
		}
		for _, next := range s.match(from, use, owner == from) {
			if next == owner && own.Set() {
				s.fault(owner, useLoop, own.At, fmt.Sprintf("%q leads back to this file", own.Text), "Take one of the uses in the circle out.")
			}
			if seen[next] || slices.Contains(trail, next) {
				continue
			}
			seen[next] = true
			owner.layers = append(owner.layers, next)
			s.follow(owner, next, own, append(slices.Clone(trail), next), seen)
		}
	}
}

// match lists the files a use stands for, in order of path.
func (s *Set) match(from *File, use Text, tell bool) []*File {
	pattern := path.Join(path.Dir(from.Source.Path), use.Text)
	if strings.HasPrefix(pattern, "../") || path.IsAbs(use.Text) {
		if tell {
			s.fault(from, outsideShop, use.At, fmt.Sprintf("%q is outside the shop folder", use.Text), "Copy the file into the shop folder and use it there.")
		}
		return nil
	}
	if !strings.ContainsAny(use.Text, "*?[") {
		if file := s.byPath[pattern]; file != nil {
			return []*File{file}
		}
		if tell {
			s.missing(from, use, pattern)
		}
		return nil
	}
	all, known := s.matched[pattern]
	if !known {
		for _, file := range s.Files {
			if ok, err := path.Match(pattern, file.Source.Path); ok && err == nil {
				all = append(all, file)
			}
		}
		if s.matched == nil {
			s.matched = map[string][]*File{}
		}
		s.matched[pattern] = all
	}
	out := slices.DeleteFunc(slices.Clone(all), func(file *File) bool { return file == from })
	if len(out) == 0 && tell {
		s.missing(from, use, pattern)
	}
	return out
}

func (s *Set) missing(from *File, use Text, pattern string) {
	var paths []string
	for _, file := range s.Files {
		paths = append(paths, file.Source.Path)
	}
	help := "Write the path from this file, with forward slashes."
	near := Nearest(pattern, paths)
	if near != "" {
		help = fmt.Sprintf("The nearest file there is %s. %s", near, help)
	}
	s.fault(from, missingFile, use.At, fmt.Sprintf("there is no file %q", use.Text), help)
	if near != "" {
		s.Findings[len(s.Findings)-1].Fixes = writeName(use, relative(path.Dir(from.Source.Path), near))
	}
}

// relative is the path of a file of the shop as one from a folder of it.
func relative(folder, file string) string {
	up := ""
	for folder != "." && !strings.HasPrefix(file, folder+"/") {
		folder, up = path.Dir(folder), up+"../"
	}
	return up + strings.TrimPrefix(file, folder+"/")
}

// writeName is the fix that writes a name in the place of another, in quotes where that has some.
func writeName(written Text, name string) []finding.Fix {
	text := name
	if quote := written.At.Text(); strings.HasPrefix(quote, `"`) || strings.HasPrefix(quote, `'`) {
		text = strconv.Quote(name)
	}
	return []finding.Fix{{Title: fmt.Sprintf("Write %q", name), Edits: []finding.Edit{{Place: written.At, Text: text}}}}
}

// find looks a thing up by kind and name: first in the file, then in what it
// uses, and for the things of a machine also in that machine's file.
func (f *File) find(kind, name string) any {
	_, thing := f.Describing(kind, name)
	return thing
}

// machineOf finds the file that describes the machine of the file's procedure.
func (f *File) machineOf() *File {
	if f.Procedure == nil {
		return nil
	}
	for _, layer := range f.layers {
		if layer.Machine != nil && (layer.machineName() == f.Procedure.Machine.Name() || layer.Machine.Title.Text == f.Procedure.Machine.Text) {
			return layer
		}
	}
	if f.Machine != nil {
		return f // described beside the procedure, whatever it calls it
	}
	return nil
}

// names lists every name of a kind the file can see, sorted.
func (f *File) names(kind string) []string {
	var out []string
	switch kind {
	case "machine":
		for _, layer := range f.layers {
			if layer.Machine != nil {
				out = append(out, layer.machineName())
			}
		}
	case "variant":
		if machine := f.variantOwner(); machine != nil {
			out = machine.Variants.Names()
		}
	case "stock":
		out = append(out, schema.Stocks...)
	case "caution":
		for _, hazard := range trade.Hazards() {
			out = append(out, hazard.Key)
		}
	}
	seen := f.seen().names[kind]
	if len(out) == 0 {
		return slices.Clip(seen)
	}
	out = append(out, seen...)
	slices.Sort(out)
	return slices.Compact(out)
}

func (f *File) variantOwner() *Machine {
	if f.Machine != nil {
		return f.Machine
	}
	if owner := f.machine; owner != nil {
		return owner.Machine
	}
	return nil
}

// checkTwice tells of two files a file takes names from that describe one thing
// each in its own way: which of them counted would hang on the order of their
// names. What the file describes itself goes before both.
func (s *Set) checkTwice(file *File) {
	if s.checkedSame(file) {
		return
	}
	for here, other := range file.doubles() {
		s.twice(here, other)
	}
}

// clashes reports whether two files a file takes names from describe one thing.
func (f *File) clashes() bool {
	for range f.doubles() {
		return true
	}
	return false
}

// doubles are the things that two files a file takes names from describe, each with the first.
func (f *File) doubles() iter.Seq2[place, place] {
	return func(yield func(here, other place) bool) {
		first := map[key]place{}
		double := func(here place) bool {
			key := key{here.kind, here.name}
			other, again := first[key]
			if !again {
				first[key] = here
			}
			return again && other.file != here.file && !yield(here, other)
		}
		layers := slices.Clone(f.layers)
		slices.SortFunc(layers, func(a, b *File) int { return a.number - b.number }) // told alike whichever file takes names from them
		for _, layer := range layers {
			if layer == f {
				continue
			}
			if layer.Machine != nil && double(place{layer, "machine", layer.machineName(), layer.Machine.At}) {
				return
			}
			for _, thing := range layer.things {
				if (layer.Machine == nil || !slices.Contains(machineKinds, thing.kind)) && double(place{layer, thing.kind, thing.name, thing.at}) {
					return
				}
			}
		}
	}
}

// checkedSame reports whether another file was checked that takes names from the same files in
// the same order, with which all is told.
func (s *Set) checkedSame(file *File) bool {
	if from := file.shares; from != nil {
		if own := s.ownReading(file); own == nil || !own.describes() {
			checked := from.checked
			from.checked = true
			return checked
		}
	}
	var describe []byte
	for _, layer := range file.layers {
		if layer != file && (layer.Machine != nil || len(layer.things) > 0) {
			describe = append(strconv.AppendInt(describe, int64(layer.number), 36), ' ')
		}
	}
	if s.checked[string(describe)] {
		return true
	}
	if s.checked == nil {
		s.checked = map[string]bool{}
	}
	s.checked[string(describe)] = true
	return false
}

// place is where a file describes something.
type place struct {
	file       *File
	kind, name string
	at         source.Place
}

func (s *Set) twice(here, other place) {
	if slices.ContainsFunc(s.Findings, func(f finding.Finding) bool { return f.Rule == nameTwice.ID && f.Place == here.at }) {
		return // told at another file that takes names from both
	}
	s.fault(here.file, nameTwice, here.at, fmt.Sprintf("%s %q is described in %s too", Article(here.kind), here.name, other.file.Source.Path), "Give one of the two another name, or take it out.")
	s.Findings[len(s.Findings)-1].Related = []finding.Related{{Place: other.at, Text: "the other"}}
}

// Article puts a or an before a kind of thing.
func Article(kind string) string {
	if strings.ContainsAny(kind[:1], "aeiou") {
		return "an " + kind
	}
	return "a " + kind
}

// checkRefs holds every name a file mentions against what it can see.
func (s *Set) checkRefs(file *File) {
	if slices.ContainsFunc(file.layers, func(layer *File) bool { return layer.unread }) {
		return // the names of a file that could not be read are not known to be missing
	}
	lost := slices.ContainsFunc(file.refs, func(ref Ref) bool { return ref.Of == "machine" && !s.seen(file, ref, []string{"machine"}) })
	for _, ref := range file.refs {
		kinds := strings.Fields(ref.Of)
		if slices.Contains(kinds, "words") && strings.Contains(strings.TrimSpace(ref.Name.Text), " ") || s.seen(file, ref, kinds) {
			continue
		}
		if lost && slices.Contains(machineKinds, kinds[0]) {
			continue // it is described where the machine is, and that is told
		}
		s.tellRef(file, ref, kinds)
	}
}

func (s *Set) seen(file *File, ref Ref, kinds []string) bool {
	name := ref.Name.Name()
	for _, kind := range kinds {
		switch kind {
		case "machine":
			if file.machine != nil {
				return true
			}
			names := file.names("machine")
			if len(names) == 0 || slices.Contains(names, name) { // without any, the machine is said in words
				return true
			}
		case "procedure":
			if s.Procedure(name) != nil {
				return true
			}
		case "variant", "stock":
			if slices.Contains(file.names(kind), name) {
				return true
			}
		case "caution":
			if _, builtIn := trade.FindHazard(name); builtIn || file.find(kind, name) != nil {
				return true
			}
		default:
			if file.find(kind, name) != nil {
				return true
			}
		}
	}
	return false
}

// checkName tells of a procedure that has the name of another, as both would print the same card,
// or its title for the same machine, as nobody would know which card is meant: at each of the two,
// for either may be the copy.
func (s *Set) checkName(file *File) {
	if file.Procedure == nil {
		return
	}
	another := func(files []*File) *File {
		if i := slices.IndexFunc(files, func(other *File) bool { return other != file }); i >= 0 {
			return files[i]
		}
		return nil
	}
	called := file.title()
	if other := another(s.registered().named[called.name]); other != nil {
		at := file.Procedure.Short.At
		if !at.Known() {
			at = file.Procedure.Header
		}
		s.fault(file, nameTwice, at, fmt.Sprintf("another procedure is named %q: %s", called.name, other.Source.Path), "Give one of the two another name = \"…\".")
		return
	}
	called.name = ""
	if other := another(s.registered().titled[called]); other != nil && file.Procedure.Title.Set() {
		s.fault(file, nameTwice, file.Procedure.Title.At, fmt.Sprintf("another procedure has this title for the same machine: %s", other.Source.Path), "Give one of the two another title, or take the copy away.")
	}
}

// File finds a file by its path; nil where there is none.
func (s *Set) File(path string) *File { return s.byPath[path] }

// Layers lists the files whose names a file takes, itself first.
func (f *File) Layers() []*File { return f.layers }

// Procedure finds the file of a procedure by its short name.
func (s *Set) Procedure(name string) *File {
	if files := s.registered().named[name]; len(files) > 0 {
		return files[0]
	}
	return nil
}

func (s *Set) tellRef(file *File, ref Ref, kinds []string) {
	name := ref.Name.Name()
	for _, kind := range append(slices.Clone(machineKinds), "tool", "fluid", "supply", "spare") {
		if !slices.Contains(kinds, kind) && file.find(kind, name) != nil {
			s.fault(file, wrongThing, ref.Name.At, fmt.Sprintf("%q is %s, and %s is wanted here", ref.Name.Text, Article(kind), Article(wanted(kinds))),
				fmt.Sprintf("Name %s, or use the verb or key that takes %s.", Article(wanted(kinds)), Article(kind)))
			return
		}
	}
	var names []string
	for _, kind := range kinds {
		names = append(names, file.names(kind)...)
		if kind == "procedure" {
			for _, other := range s.Files {
				if other.Procedure != nil {
					names = append(names, other.Name())
				}
			}
		}
	}
	if list := several(ref.Name); list != "" {
		s.fault(file, unknownName, ref.Name.At, fmt.Sprintf("%q are several names in one pair of quotes", ref.Name.Text), "Write each in quotes of its own: "+list)
		s.Findings[len(s.Findings)-1].Fixes = []finding.Fix{{Title: "Write " + list, Edits: []finding.Edit{{Place: ref.Name.At, Text: list}}}}
		return
	}
	near := Nearest(name, names)
	s.fault(file, unknownName, ref.Name.At, fmt.Sprintf("no %s is named %q", wanted(kinds), ref.Name.Text), describe(kinds, name, near, names))
	if near != "" {
		s.Findings[len(s.Findings)-1].Fixes = writeName(ref.Name, near)
	}
}

// several are the names that stand in one pair of quotes, each in quotes of its own; empty where
// there is but one, or it is something else.
func several(written Text) string {
	if quote := written.At.Text(); !strings.HasPrefix(quote, `"`) && !strings.HasPrefix(quote, `'`) {
		return ""
	}
	var names []string
	for one := range strings.SplitSeq(written.Text, ",") {
		if one = strings.TrimSpace(one); !namePattern.MatchString(one) {
			return ""
		}
		names = append(names, strconv.Quote(one))
	}
	if len(names) < 2 {
		return ""
	}
	before := bytes.TrimRight(written.At.File.Text[:written.At.Span.Start], " \t\r\n")
	list := strings.Join(names, ", ")
	if bytes.HasSuffix(before, []byte("=")) {
		return "[" + list + "]"
	}
	return list
}

// describe says what to write for a name that nothing has.
func describe(kinds []string, name, near string, names []string) string {
	name = strings.ToLower(name)
	if !namePattern.MatchString(name) {
		name = "NAME"
	}
	help := fmt.Sprintf("describe it in a table [%s.%s]", kinds[0], name)
	switch kinds[0] {
	case "variant":
		help = "name it among the variants of the machine"
		if len(names) > 0 {
			help += ", which are: " + strings.Join(names, ", ")
		}
	case "machine":
		help = "write a file that describes it with [machine]; the machines here are: " + strings.Join(names, ", ")
	case "procedure":
		help = "write a file that describes it with [procedure]"
	}
	if slices.Contains(kinds, "words") {
		help += ", or say it in words with a space between them"
	}
	if near != "" {
		return fmt.Sprintf("Write %q if that is meant; or %s.", near, help)
	}
	return strings.ToUpper(help[:1]) + help[1:] + "."
}

func wanted(kinds []string) string {
	var out []string
	for _, kind := range kinds {
		if kind != "words" {
			out = append(out, kind)
		}
	}
	if len(out) < 2 {
		return strings.Join(out, "")
	}
	return strings.Join(out[:len(out)-1], ", ") + " or " + out[len(out)-1]
}
