package model

import (
	"slices"
	"strings"
)

// Alike finds the thing that words of an object are likely meant for: of a kind the
// verb takes, with that name or title but for hyphens, articles and the plural.
func (j *Job) Alike(step *Step, words string) (kind, name string) {
	if j.said == nil {
		j.said = j.saidOf()
	}
	for _, kind := range strings.Fields(step.Verb.Object) {
		if name := j.said[kind+"/"+bare(words)]; name != "" {
			return kind, name
		}
	}
	return "", ""
}

// saidOf lists the things the job can name by how they are said: "part/drain plug".
func (j *Job) saidOf() map[string]string {
	out := map[string]string{}
	for _, layer := range j.File.layers {
		for _, thing := range layer.things {
			found := j.File.find(thing.kind, thing.name)
			if found == nil {
				continue
			}
			out[thing.kind+"/"+bare(Spoken(thing.name))] = thing.name
			if titled, ok := found.(interface{ Words() string }); ok {
				out[thing.kind+"/"+bare(titled.Words())] = thing.name
			}
		}
	}
	return out
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
