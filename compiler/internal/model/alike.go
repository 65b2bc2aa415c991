package model

import (
	"slices"
	"strings"
)

// Alike finds the thing that words of an object are likely meant for: of a kind the
// verb takes, with that name or title but for hyphens, articles and the plural.
func (j *Job) Alike(step *Step, words string) (kind, name string) {
	meant := bare(words)
	if meant == "" {
		return "", ""
	}
	for _, kind := range strings.Fields(step.Verb.Object) {
		if kind == "words" || kind == "procedure" {
			continue
		}
		for _, name := range j.File.names(kind) {
			title := ""
			if titled, ok := j.File.find(kind, name).(interface{ Words() string }); ok {
				title = titled.Words()
			}
			if bare(Spoken(name)) == meant || bare(title) == meant {
				return kind, name
			}
		}
	}
	return "", ""
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
