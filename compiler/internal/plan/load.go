package plan

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"sync"

	"benchleaf/templates"

	"github.com/BurntSushi/toml"
)

// Signals are the levels of a safety message, worst first (ANSI Z535.4).
func Signals() []string { return []string{"danger", "warning", "caution", "notice"} }

// kept holds the words of each language once they were read; they never change,
// so that it cannot be told who read them first.
var kept sync.Map

// LoadWords reads the fixed words of a language, named as its file is ("en"). It
// is an error when there is no such language, when a word is missing or empty,
// when the file holds a word no page uses, and when a sentence lacks its place
// for the object.
func LoadWords(lang string) (Words, error) {
	if words, ok := kept.Load(lang); ok {
		return words.(Words), nil
	}
	text, err := templates.Files.ReadFile("words/" + lang + ".toml")
	if err != nil {
		return Words{}, fmt.Errorf("no words for language %q", lang)
	}
	words, err := decodeWords(string(text))
	if err != nil {
		return Words{}, fmt.Errorf("words/%s.toml: %w", lang, err)
	}
	kept.Store(lang, words)
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
	for _, check := range []func(Words) error{checkLabels, checkSignals, checkSentences} {
		if err := check(words); err != nil {
			return Words{}, err
		}
	}
	return words, nil
}

func checkLabels(words Words) error {
	labels := reflect.ValueOf(words.Labels)
	for i := range labels.NumField() {
		if strings.TrimSpace(labels.Field(i).String()) == "" {
			return fmt.Errorf("labels.%s is empty", labels.Type().Field(i).Tag.Get("toml"))
		}
	}
	if !strings.Contains(words.Labels.Side, "{n}") || !strings.Contains(words.Labels.Side, "{all}") {
		return fmt.Errorf("labels.side lacks {n} or {all}: %q", words.Labels.Side)
	}
	if !strings.Contains(words.Labels.Sheet, "{n}") {
		return fmt.Errorf("labels.sheet lacks {n}: %q", words.Labels.Sheet)
	}
	return nil
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
	}{{"protection", words.Protection}, {"heads", words.Heads}, {"conditions", words.Conditions}, {"orders", words.Orders}, {"kinds", words.Kinds}} {
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
		}
	}
	return nil
}

func sortedKeys(words map[string]string) []string {
	keys := make([]string, 0, len(words))
	for key := range words {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	return keys
}
