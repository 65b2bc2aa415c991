package join

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/tree"
)

// What several authors say of a step that is done once: the same words stand once, and what one
// says besides stands there too. Lists are united, and what only another gives is taken over.

// unitedKeys are written by unite where a step is that of several.
var unitedKeys = []string{"say", "expect", "outside", "tools", "spares", "supplies", "wear", "cautions", "keep", "caution", "allow", "people"}

// notTaken are the keys that are not taken over from another author: what the writer says
// itself, and what holds for his version or his step alone.
var notTaken = append([]string{"for", "variant", "time"}, ownKeys...)

// tightness are the keys that say together how something is tightened: one author's or
// another's, and no mixture.
var tightness = []string{"torque", "angle", "passes", "order", "adapter", "condition", "by-hand", "count"}

// unite writes what the authors of a step say of it, besides the keys that its own one has alone,
// and what is said more.
func (w *writer) unite(deed Deed, more string) {
	steps := append([]*model.Step{deed.Step}, deed.Also...)
	fresh := slices.DeleteFunc(slices.Clone(steps), func(step *model.Step) bool { return step != deed.Step && w.told[step] })
	texts := func(of []*model.Step, text func(*model.Step) model.Text) (out []string) {
		for _, step := range of {
			out = append(out, text(step).Text)
		}
		return out
	}
	if say := sentences(texts(fresh, func(s *model.Step) model.Text { return s.Say })); say+more != "" {
		w.line("say = %s", quote(besides(deed, say, more)))
	}
	// What one looks for, and what he does where it is not so, go by the letter of whose they are,
	// or nobody knows which answers which.
	expect := w.whose(steps, func(s *model.Step) string { return strings.TrimRight(s.Expect.Text, ".") })
	outside := w.whose(steps, func(s *model.Step) string { return s.Outside.Text })
	if text := byLetter(expect, len(expect)+len(outside) > 2, "; "); text != "" {
		w.line("expect = %s", quote(text))
	}
	if text := byLetter(outside, len(expect)+len(outside) > 2, " "); text != "" {
		w.line("outside = %s", quote(text))
	}
	for _, one := range []struct {
		key  string
		list func(*model.Step) model.List
		more []string
	}{
		{"tools", func(s *model.Step) model.List { return s.Tools }, nil},
		{"spares", func(s *model.Step) model.List { return s.Spares }, deed.Renew},
		{"wear", func(s *model.Step) model.List { return s.Wear }, nil},
		{"cautions", func(s *model.Step) model.List { return s.Cautions }, nil},
		{"keep", func(s *model.Step) model.List { return s.Keep }, nil},
	} {
		if all := append(allOf(steps, one.list), one.more...); len(all) > 0 {
			w.line("%s = %s", one.key, quotes(all))
		}
	}
	w.supplies(steps)
	for _, key := range []string{"caution", "allow"} {
		var tables []string
		for _, step := range steps {
			if entry := step.Table.Get(key); entry != nil {
				for _, item := range entry.Value.Items {
					if text := inline(step.File.Source, item.Table); !slices.Contains(tables, text) {
						tables = append(tables, text)
					}
				}
			}
		}
		if len(tables) > 0 {
			w.line("%s = [%s]", key, strings.Join(tables, ", "))
		}
	}
	people := 0
	for _, step := range steps {
		people = max(people, step.People.N)
	}
	if people > 0 {
		w.line("people = %d", people)
	}
	w.takeOver(deed)
	for _, step := range deed.Also {
		w.told[step] = true
	}
}

// allOf are the texts of a list of some steps, each once.
func allOf(steps []*model.Step, list func(*model.Step) model.List) (out []string) {
	for _, step := range steps {
		for _, item := range list(step).Items {
			if !slices.ContainsFunc(out, func(known string) bool { return sameWords(known, item.Text) }) {
				out = append(out, item.Text)
			}
		}
	}
	return out
}

// supplies writes what is used up: of each the most that one of the authors takes, since it is
// done once.
func (w *writer) supplies(steps []*model.Step) {
	type used struct {
		text string
		step *model.Step
		at   int
	}
	var names []string
	by := map[string]used{}
	for _, step := range steps {
		entry := step.Table.Get("supplies")
		if entry == nil || entry.Value.Table == nil {
			continue
		}
		for _, one := range entry.Value.Table.Entries {
			at := slices.IndexFunc(step.Supplies, func(u model.Used) bool { return u.Name.Name() == one.Key })
			next := used{valueText(step.File.Source, one.Value), step, at}
			before, known := by[one.Key]
			if !known {
				names = append(names, one.Key)
			}
			if !known || before.at >= 0 && at >= 0 && more(step.Supplies[at], before.step.Supplies[before.at]) {
				by[one.Key] = next
			}
		}
	}
	for i, name := range names {
		names[i] = keyText(name) + " = " + by[name].text
	}
	if len(names) > 0 {
		w.line("supplies = { %s }", strings.Join(names, ", "))
	}
}

// more reports whether one takes more of a supply than another.
func more(one, other model.Used) bool {
	if one.Count > 0 || other.Count > 0 {
		return one.Count > other.Count
	}
	order, known := one.Amount.Compare(other.Amount.Amount)
	return known && order > 0
}

// takeOver writes the keys that only another author gives.
func (w *writer) takeOver(deed Deed) {
	given := map[string]bool{}
	tight := func(key string) bool { return slices.Contains(tightness, key) }
	give := func(table *tree.Table) {
		for _, entry := range table.Entries {
			given[entry.Key] = true
			if tight(entry.Key) {
				for _, key := range tightness {
					given[key] = true
				}
			}
		}
	}
	give(deed.Step.Table)
	for _, step := range deed.Also {
		for _, entry := range step.Table.Entries {
			if entry.Key != step.Verb.Key && !given[entry.Key] && !slices.Contains(unitedKeys, entry.Key) && !slices.Contains(notTaken, entry.Key) {
				w.line("%s = %s", keyText(entry.Key), valueText(step.File.Source, entry.Value))
			}
		}
		give(step.Table)
	}
}

// lettered is a text with the letters of those who say it.
type lettered struct {
	letters []string
	text    string
}

// whose are the texts of some steps, each once, with the letters of whose they are.
func (w *writer) whose(steps []*model.Step, text func(*model.Step) string) (out []lettered) {
	for _, step := range steps {
		said := strings.TrimSpace(text(step))
		if said == "" {
			continue
		}
		at := slices.IndexFunc(out, func(known lettered) bool { return sameWords(known.text, said) })
		if at < 0 {
			at = len(out)
			out = append(out, lettered{text: said})
		}
		if input := slices.IndexFunc(w.plan.Inputs, func(input Input) bool { return slices.Contains(input.Job.Steps, step) }); input >= 0 {
			out[at].letters = append(out[at].letters, model.Letter(input))
		}
	}
	return out
}

// byLetter joins texts, each with its letters before it where they are told.
func byLetter(said []lettered, told bool, between string) string {
	var out []string
	for i, one := range said {
		text := one.text
		if told {
			text = strings.Join(one.letters, ", ") + ": " + text
		}
		if between == " " && i+1 < len(said) && !ends(text) {
			text += "."
		}
		out = append(out, text)
	}
	return strings.Join(out, between)
}

// sentences joins texts by their sentences: each stands once, where it is said first. A text of
// several lines is one sentence.
func sentences(texts []string) string {
	var out []string
	for _, text := range texts {
		for _, sentence := range split(text) {
			if slices.ContainsFunc(out, func(known string) bool { return sameWords(known, sentence) }) {
				continue
			}
			if n := len(out); n > 0 && !ends(out[n-1]) {
				out[n-1] += "."
			}
			out = append(out, sentence)
		}
	}
	return strings.Join(out, " ")
}

// split cuts a text behind each full stop that a capital follows.
func split(text string) []string {
	if text = strings.TrimSpace(text); text == "" {
		return nil
	}
	if strings.Contains(text, "\n") {
		return []string{text}
	}
	var out []string
	begin := 0
	for at := 0; at < len(text); at++ {
		if text[at] != ' ' || !ends(text[begin:at]) {
			continue
		}
		if next, _ := utf8.DecodeRuneInString(text[at+1:]); unicode.IsUpper(next) {
			out = append(out, text[begin:at])
			begin = at + 1
		}
	}
	return append(out, text[begin:])
}

// ends reports whether a text ends as a sentence does, or as one that is set bold.
func ends(text string) bool {
	text = strings.TrimRight(text, `*_")”’`)
	return strings.HasSuffix(text, ".") || strings.HasSuffix(text, "!") || strings.HasSuffix(text, "?")
}

// sameWords reports whether two texts are the same but for capitals, spaces and the full stop.
func sameWords(one, other string) bool {
	plain := func(text string) string {
		return strings.TrimRight(strings.Join(strings.Fields(strings.ToLower(text)), " "), ".")
	}
	return plain(one) == plain(other)
}
