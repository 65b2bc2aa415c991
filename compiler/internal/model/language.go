package model

import (
	"fmt"
	"slices"
	"strings"

	"github.com/hbollon/go-edlib"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

// Nearest finds the word that is closest to what was written, or nothing when
// none is close: at most a third of the letters apart, and one at least; a swap
// counts as one.
func Nearest(written string, words []string) string {
	best, distance := "", max(1, len([]rune(written))/3)+1
	for _, word := range words {
		apart := edlib.OSADamerauLevenshteinDistance(strings.ToLower(written), word)
		if apart < distance || apart == distance && best != "" && word < best {
			best, distance = word, apart
		}
	}
	if best != "" {
		return best
	}
	return begunAlike(strings.ToLower(written), words)
}

// leastBeginning is how many letters two words must share at their beginning to be taken for one.
const leastBeginning = 4

// begunAlike finds the one word that begins as what was written does, or is the end
// of it: "exhaust" for exhaust-gas, "closing" for close, "electric-shock" for shock.
func begunAlike(written string, words []string) string {
	best, longest, twice := "", leastBeginning-1, false
	for _, word := range words {
		n := 0
		for n < len(word) && n < len(written) && word[n] == written[n] {
			n++
		}
		whole := n == len(word) || n == len(written) || n >= len(word)-1
		if len(word) >= leastBeginning && strings.HasSuffix(written, "-"+word) {
			n, whole = len(word), true
		}
		switch {
		case !whole || n < longest:
		case n == longest && best != "":
			twice = true
		case n > longest:
			best, longest, twice = word, n, false
		}
	}
	if twice {
		return ""
	}
	return best
}

// say keeps a finding of the language with its summary and what to write.
func (d *decoder) say(rule finding.Rule, span source.Span, summary, help string) *finding.Finding {
	d.findings = append(d.findings, finding.Finding{
		Rule: rule.ID, Severity: rule.Severity, Place: d.place(span), Summary: summary, Why: rule.Why, Help: help,
	})
	return &d.findings[len(d.findings)-1]
}

// mostNear is how many findings of a file look for what may be meant: with more it is no file of a shop, and
// the looking takes longest.
const mostNear = 1000

// unknownKey tells of a key the table does not have. Where another one is meant,
// and not written besides, it gives that, so that the value is read all the same
// and one slip is told once.
func (d *decoder) unknownKey(table *tree.Table, entry *tree.Entry, layout schema.Table) (schema.Key, bool) {
	names := make([]string, 0, len(layout.Keys))
	for _, key := range layout.Keys {
		names = append(names, key.Name)
	}
	near := ""
	if len(d.findings) < mostNear {
		near = Nearest(entry.Key, names)
	}
	header := d.header(table, layout)
	if !strings.HasPrefix(header, "[") {
		header = The(header)
	}
	help := fmt.Sprintf("Take it out, or see the keys of %s on the reference page.", header)
	if near != "" {
		help = fmt.Sprintf("Write %q if that is what is meant.", near)
	} else if owner := owners(entry.Key); owner != "" {
		help = fmt.Sprintf("%q is a key of %s.", entry.Key, owner)
	}
	found := d.say(unknownKey, entry.KeySpan, fmt.Sprintf("%s has no key %q", header, entry.Key), help)
	if near != "" {
		found.Fixes = []finding.Fix{{
			Title: fmt.Sprintf("Write %q", near),
			Edits: []finding.Edit{{Place: d.place(entry.KeySpan), Text: near}},
		}}
	}
	meant, _ := layout.Key(near)
	if near == "" || table.Get(near) != nil && meant.Kind != schema.Named { // more names may stand beside the others
		return schema.Key{}, false
	}
	return meant, true
}

// header is the header of a table as it is written, or as the schema has it.
func (d *decoder) header(table *tree.Table, layout schema.Table) string {
	if written := d.place(table.Header).Text(); strings.HasPrefix(written, "[") && !strings.ContainsAny(written, "\n") {
		return written
	}
	return layout.Header
}

func owners(key string) string {
	var out []string
	for _, table := range schema.Tables() {
		if _, ok := table.Key(key); ok {
			out = append(out, table.Header)
		}
	}
	return strings.Join(out, ", ")
}

func (d *decoder) missingKey(table *tree.Table, layout schema.Table, key schema.Key) {
	d.say(missingKey, table.Header, fmt.Sprintf("%s has no %q", d.header(table, layout), key.Name),
		fmt.Sprintf("%s Write, for example: %s = %s", key.Doc, key.Name, key.Example))
}

func (d *decoder) emptyText(key schema.Key, text Text) {
	d.say(emptyText, text.Value.Span, fmt.Sprintf("%q is empty", key.Name), fmt.Sprintf("%s Write, for example: %s = %s", key.Doc, key.Name, key.Example))
}

func (d *decoder) choice(key schema.Key, text Text) bool {
	words := make([]string, len(key.Choices))
	for i, option := range key.Choices {
		words[i] = option.Word
	}
	if slices.Contains(words, text.Text) {
		return true
	}
	near := Nearest(text.Text, words)
	help := "Write one of: " + strings.Join(words, ", ") + "."
	if near != "" {
		help = fmt.Sprintf("Write %q, or another of: %s.", near, strings.Join(words, ", "))
	}
	found := d.say(unknownWord, text.Value.Span, fmt.Sprintf("%q is not a word that %q knows", text.Text, key.Name), help)
	if near != "" {
		found.Fixes = []finding.Fix{{
			Title: fmt.Sprintf("Write %q", near),
			Edits: []finding.Edit{{Place: text.At, Text: fmt.Sprintf("%q", near)}},
		}}
	}
	return false
}

var kindWords = map[tree.Kind]string{
	tree.StringKind: "a text", tree.IntegerKind: "a whole number", tree.FloatKind: "a number", tree.BooleanKind: "true or false",
	tree.DateTimeKind: "a date with a time", tree.LocalDateTimeKind: "a date with a time", tree.LocalDateKind: "a date", tree.LocalTimeKind: "a time of day",
	tree.ArrayKind: "a list", tree.TableKind: "a table", tree.TablesKind: "a list of tables",
}

// want reports whether a value is of the kind the key holds, and says so if not.
func (d *decoder) want(key schema.Key, value *tree.Value, kind tree.Kind) bool {
	if value.Kind == kind {
		return true
	}
	if d.second != nil && empty(value) {
		d.second.blanks++
		return false
	}
	found := d.say(wrongKind, value.Span, fmt.Sprintf("%q holds %s, and must be %s", key.Name, kindWords[value.Kind], kindWords[kind]),
		fmt.Sprintf("Write, for example: %s = %s", key.Name, key.Example))
	if fixed := mend(d.place(value.Span).Text(), value, kind); fixed != "" {
		found.Fixes = []finding.Fix{{
			Title: "Write " + fixed, Certain: true,
			Edits: []finding.Edit{{Place: d.place(value.Span), Text: fixed}},
		}}
	}
	return false
}

// mend writes a value of the wrong kind as the wanted kind where only one way is meant.
func mend(written string, value *tree.Value, kind tree.Kind) string {
	switch {
	case kind == tree.StringKind && (value.Kind == tree.IntegerKind || value.Kind == tree.FloatKind || value.Kind == tree.LocalDateKind):
		return `"` + written + `"`
	case kind == tree.ArrayKind && value.Kind == tree.StringKind:
		return "[" + written + "]"
	case kind == tree.LocalDateKind && value.Kind == tree.StringKind && dayPattern.MatchString(value.Text):
		return value.Text
	case kind == tree.BooleanKind && value.Kind == tree.StringKind && (value.Text == "true" || value.Text == "false"):
		return value.Text
	}
	return ""
}
