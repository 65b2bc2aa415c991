package rules

import (
	"slices"
	"strings"
	"unicode"

	"benchleaf/compiler/internal/model"
)

// agreed is a sentence of a finding with its verbs after the things of the job.
func (p *Pass) agreed(text string) string {
	if p.Job == nil && (p.shared == nil || p.called == nil) || !strings.Contains(text, "the ") {
		return text
	}
	for _, thing := range p.spoken() {
		text = thing.agree(text)
	}
	return text
}

// thing is how a thing is called, with its article and without.
type thing struct {
	words, subject string
	many, own      bool // several; with an article or a number of its own
}

func thingOf(words string) thing {
	return thing{words, "the " + words, plural(words), model.Determined(words)}
}

// spoken is how the things of the job and the objects of its steps are called, each once.
func (p *Pass) spoken() []thing {
	if p.called == nil {
		p.called = []thing{}
		seen := map[string]bool{}
		keep := func(words string) {
			if words != "" && !seen[words] {
				seen[words] = true
				if thing := thingOf(words); thing.many || thing.own { // of others nothing changes
					p.called = append(p.called, thing)
				}
			}
		}
		for _, thing := range p.Job.Things("part", "cover", "energy", "cavity", "point", "limit", "spare") {
			keep(thing)
		}
		for _, step := range p.Job.Steps {
			for _, object := range step.Objects {
				keep(object.Words())
			}
		}
	}
	return p.called
}

// manyOf are verbs of the findings, for one thing and for several.
var manyOf = [][2]string{{" is", " are"}, {", which is", ", which are"}, {" has", " have"}, {" does", " do"}, {" comes", " come"}, {" goes", " go"}, {" hangs", " hang"},
	{" sits", " sit"}, {" bears", " bear"}, {" takes", " take"}, {" weighs", " weigh"}, {" holds", " hold"}}

// agree puts the verb after a thing in the plural where the thing is, "the motor bolts are
// loosened", and drops the article of one that brings its own.
func agree(text, words string) string {
	if words == "" || !strings.Contains(text, "the "+words) {
		return text
	}
	return thingOf(words).agree(text)
}

func (t thing) agree(text string) string {
	if !strings.Contains(text, t.subject) {
		return text
	}
	subject := t.subject
	if t.own {
		text = strings.ReplaceAll(text, subject, t.words)
		subject = t.words
	}
	if !t.many {
		return text
	}
	for _, verb := range manyOf {
		text = swap(text, subject+verb[0], subject+verb[1])
	}
	return text
}

// swap replaces a subject with its verb, but not where it stands behind "of", the thread of
// the bolts is one, and not within a longer word.
func swap(text, old, with string) string {
	out := ""
	for {
		at := strings.Index(text, old)
		if at < 0 {
			return out + text
		}
		if rest := text[at+len(old):]; strings.HasSuffix(out+text[:at], "of ") || rest != "" && unicode.IsLetter([]rune(rest)[0]) {
			out += text[:at] + old
		} else {
			out += text[:at] + with
		}
		text = text[at+len(old):]
	}
}

// plural reports whether words name several things: by the noun before the first preposition.
func plural(words string) bool {
	fields := strings.Fields(strings.ToLower(words))
	for i, field := range fields {
		if i > 0 && slices.Contains([]string{"of", "at", "on", "in", "for", "to", "from", "with", "behind", "between", "over", "under", "above", "below", "across", "along", "around", "through", "after", "before", "against", "per", "by"}, field) {
			fields = fields[:i]
			break
		}
	}
	if len(fields) == 0 {
		return false
	}
	noun := fields[len(fields)-1]
	return strings.HasSuffix(noun, "s") && !slices.ContainsFunc([]string{"ss", "us", "is"}, func(end string) bool { return strings.HasSuffix(noun, end) }) &&
		!slices.Contains([]string{"mains", "gas", "lens", "bias", "chassis", "series"}, noun)
}
