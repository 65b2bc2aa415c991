package model

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/memo"
)

// Alike finds the thing that words of an object are likely meant for: of a kind the
// verb takes, with that name or title but for hyphens, articles and the plural.
func (j *Job) Alike(step *Step, words string) (kind, name string) {
	meant := bareOf.Of(j.Memo, words)
	if !j.File.saysAny(meant) {
		return "", ""
	}
	for kind := range strings.FieldsSeq(step.Verb.Object) {
		for _, layer := range j.File.layers {
			if name := layer.saidOf()[key{kind, meant}]; name != "" && j.File.find(kind, name) != nil {
				return kind, name
			}
		}
	}
	return "", ""
}

var bareOf = memo.Of(bare)

// saysAny reports whether anything that a file can see may be said in such words.
func (f *File) saysAny(words string) bool {
	if f.shares != nil && f.shares.says(words) {
		return true
	}
	v := f.seen()
	v.saying.Do(func() {
		v.said = saidIn(f.layers, func(layer *File) bool { return f.shares == nil || !f.shares.among[layer] })
	})
	return v.said[words]
}

// says reports whether anything in the files may be said in such words.
func (s *shared) says(words string) bool {
	s.saying.Do(func() {
		s.said = saidIn(slices.Concat(s.files, s.seconds), func(*File) bool { return true })
	})
	return s.said[words]
}

// saidIn is how the things of some files are said.
func saidIn(files []*File, wanted func(file *File) bool) map[string]bool {
	out := map[string]bool{}
	for _, file := range files {
		if wanted(file) {
			for key := range file.saidOf() {
				out[key.name] = true
			}
		}
	}
	return out
}

// saidOf lists the things of a file by how they are said. It is
// made when it is first asked for, and once.
func (f *File) saidOf() map[key]string {
	f.saying.Do(func() {
		f.said = map[key]string{}
		for _, thing := range f.things {
			f.said[key{thing.kind, bare(Spoken(thing.name))}] = thing.name
			if titled, ok := f.index[key{thing.kind, thing.name}].(interface{ Words() string }); ok {
				f.said[key{thing.kind, bare(titled.Words())}] = thing.name
			}
		}
	})
	return f.said
}

// bare takes off what does not tell things apart: an article before the words and a
// plural at their end.
func bare(words string) string {
	fields := strings.Fields(strings.ToLower(strings.ReplaceAll(words, "-", " ")))
	if len(fields) > 1 && slices.Contains([]string{"the", "a", "an"}, fields[0]) {
		fields = fields[1:]
	}
	return strings.TrimSuffix(strings.Join(fields, " "), "s")
}
