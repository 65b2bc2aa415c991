package plan

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"sync"

	"benchleaf/templates"

	"github.com/BurntSushi/toml"
)

// Signals are the levels of a safety message, worst first (ANSI Z535.4).
func Signals() []string { return []string{"danger", "warning", "caution", "notice"} }

// Languages lists the languages there are words for, by name.
func Languages() []string {
	entries, err := templates.Files.ReadDir("words")
	if err != nil {
		panic(err) // the words are part of the program
	}
	var out []string
	for _, entry := range entries {
		out = append(out, strings.TrimSuffix(entry.Name(), ".toml"))
	}
	return out
}

// Steps says at which steps something stands: "steps 4, 9".
func (l Labels) Steps(numbers []int) string {
	var said []string
	for _, number := range numbers {
		said = append(said, strconv.Itoa(number))
	}
	if len(said) == 1 {
		return l.AtStep + " " + said[0]
	}
	return l.AtSteps + " " + strings.Join(said, ", ")
}

// kept holds the words of each language once they were read; they never change,
// so that it cannot be told who read them first.
var kept sync.Map

// LoadWords reads the fixed words of a language, named as its file is ("en"). It
// is an error when there is no such language, when a word is missing or empty,
// when the file holds a word no page uses, and when a sentence lacks its place
// for the object.
func LoadWords(lang string) (Words, error) {
	load, _ := kept.LoadOrStore(lang, sync.OnceValues(func() (Words, error) { return readWords(lang) }))
	return load.(func() (Words, error))()
}

func readWords(lang string) (Words, error) {
	text, err := templates.Files.ReadFile("words/" + lang + ".toml")
	if err != nil {
		return Words{}, fmt.Errorf("no words for language %q; there are: %s", lang, strings.Join(Languages(), ", "))
	}
	words, err := decodeWords(string(text))
	if err != nil {
		return Words{}, fmt.Errorf("words/%s.toml: %w", lang, err)
	}
	return words, nil
}

func decodeWords(text string) (Words, error) {
	var words Words
	meta, err := toml.Decode(text, &words)
	if err != nil {
		return Words{}, err
	}
	if unknown := meta.Undecoded(); len(unknown) > 0 {
		return Words{}, fmt.Errorf("no page uses %q", unknown[0].String())
	}
	if words.Language == "" {
		return Words{}, fmt.Errorf("language is empty")
	}
	for _, check := range []func(Words) error{checkLabels, checkSignals, checkSentences, checkHazards} {
		if err := check(words); err != nil {
			return Words{}, err
		}
	}
	return words, nil
}

func checkLabels(words Words) error {
	if name := emptyField(words.Labels); name != "" {
		return fmt.Errorf("labels.%s is empty", name)
	}
	if name := emptyField(words.Amounts); name != "" {
		return fmt.Errorf("amounts.%s is empty", name)
	}
	if n := len(words.Labels.MonthNames()); n != 12 {
		return fmt.Errorf("labels.months has %d names, not 12", n)
	}
	for _, one := range []struct{ key, text, marks string }{
		{"at-meter", words.Labels.AtMeter, "{meter}"},
		{"other-meter", words.Labels.OtherMeter, "{unit}"},
		{"trend-ahead", words.Labels.TrendAhead, "{total} {shows}"},
		{"trend-renewed", words.Labels.TrendRenewed, "{day}"},
		{"trend-jumped", words.Labels.TrendJumped, "{day}"},
		{"side", words.Labels.Side, "{n} {all}"}, {"sheet", words.Labels.Sheet, "{n}"},
		{"step-of", words.Labels.StepOf, "{n} {all}"}, {"step-done", words.Labels.StepDone, "{n}"}, {"done-of", words.Labels.DoneOf, "{n} {all}"},
		{"timer", words.Labels.Timer, "{n}"}, {"over-by", words.Labels.OverBy, "{time}"},
	} {
		for mark := range strings.FieldsSeq(one.marks) {
			if !strings.Contains(one.text, mark) {
				return fmt.Errorf("labels.%s lacks %s: %q", one.key, mark, one.text)
			}
		}
	}
	return nil
}

// emptyField is the key of the first text of a table that is empty; empty where none is.
func emptyField(table any) string {
	fields := reflect.ValueOf(table)
	for i := range fields.NumField() {
		if field := fields.Field(i); field.Kind() == reflect.String && strings.TrimSpace(field.String()) == "" {
			return fields.Type().Field(i).Tag.Get("toml")
		}
	}
	return ""
}

func checkSignals(words Words) error {
	for _, signal := range Signals() {
		if words.Signals[signal] == "" {
			return fmt.Errorf("signals.%s is missing or empty", signal)
		}
	}
	for _, key := range sortedKeys(words.Signals) {
		if !slices.Contains(Signals(), key) {
			return fmt.Errorf("no page uses \"signals.%s\"", key)
		}
	}
	for _, group := range []struct {
		name  string
		words map[string]string
	}{{"signs", words.Signs}, {"protection", words.Protection}, {"heads", words.Heads}, {"conditions", words.Conditions}, {"orders", words.Orders}, {"kinds", words.Kinds}, {"units", words.Units}} {
		for _, key := range sortedKeys(group.words) {
			if strings.TrimSpace(group.words[key]) == "" {
				return fmt.Errorf("%s.%s is empty", group.name, key)
			}
		}
	}
	return nil
}

func checkSentences(words Words) error {
	for _, group := range []struct {
		name      string
		sentences map[string]string
	}{{"verbs", words.Verbs}, {"proofs", words.Proofs}} {
		for _, key := range sortedKeys(group.sentences) {
			if !strings.Contains(group.sentences[key], "{object}") {
				return fmt.Errorf("%s.%s lacks {object}: %q", group.name, key, group.sentences[key])
			}
			if strings.Count(group.sentences[key], "**") != 2 {
				return fmt.Errorf("%s.%s needs its verb between ** and **: %q", group.name, key, group.sentences[key])
			}
		}
	}
	return nil
}

func checkHazards(words Words) error {
	for _, key := range sortedKeys(words.Hazards) {
		told := words.Hazards[key]
		if told.Worst == "" {
			told.Worst = "not needed"
		}
		if name := emptyField(told); name != "" {
			return fmt.Errorf("hazards.%s.%s is empty", key, name)
		}
	}
	return nil
}

func sortedKeys[T any](words map[string]T) []string {
	return slices.Sorted(maps.Keys(words))
}
