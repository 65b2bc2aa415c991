package pages_test

import (
	"reflect"
	"testing"

	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/pages/pagestest"
	"benchleaf/compiler/internal/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestNothingCollidesInAnyLanguage(t *testing.T) {
	for _, language := range plan.Languages() {
		words, err := plan.LoadWords(language)
		require.NoError(t, err)
		for name, look := range looks(t, 500) {
			name = language + ", " + name
			card, list, sheet := spoken(pagestest.Card(), words), pagestest.PickList(), pagestest.RandomApproval(3)
			list.Words, sheet.Words = words, words
			doc, problems := pages.LayCard(card, look)
			assert.Empty(t, problems, name)
			report(t, name, append(pagestest.Walk(doc, look), pagestest.Every(doc, card)...))
			doc, problems = pages.LayPick(list, look)
			assert.Empty(t, problems, name)
			report(t, name+", list", pagestest.Walk(doc, look))
			doc, problems = pages.LayApproval(sheet, look)
			report(t, name+", sheet", pagestest.Walk(doc, effective(look, problems)))
		}
	}
}

// spoken is a card with the fixed words of a language and built-in messages in it, the
// longest at the steps, beside the same in the next language.
func spoken(card plan.Card, words plan.Words) plan.Card {
	card.Words = words
	second, _ := plan.LoadWords(map[string]string{"en": "es", "es": "de", "de": "fr", "fr": "de"}[words.Language])
	say := func(list []plan.Caution) {
		for i := range list {
			list[i].Word = words.Signals[list[i].Signal]
			list[i].Second = plan.Second{Language: second.Language, Word: second.Signals[list[i].Signal], Hazard: second.Hazards["pinch"].Hazard}
			if told, ok := words.Hazards["pinch"]; ok {
				list[i].Hazard, list[i].Consequence, list[i].Avoid = told.Hazard, told.Consequence, told.Avoid
			}
		}
	}
	say(card.Cautions)
	for _, section := range card.Sections {
		for _, step := range section.Steps {
			say(step.Cautions)
		}
	}
	return card
}

// Every letter of every language is in the type a page may set it in.
func TestTheTypeCoversEveryLanguage(t *testing.T) {
	var texts func(value reflect.Value, use func(string))
	texts = func(value reflect.Value, use func(string)) {
		switch value.Kind() {
		case reflect.String:
			use(value.String())
		case reflect.Struct:
			for i := range value.NumField() {
				texts(value.Field(i), use)
			}
		case reflect.Map:
			for _, key := range value.MapKeys() {
				texts(value.MapIndex(key), use)
			}
		}
	}
	for _, language := range plan.Languages() {
		words, err := plan.LoadWords(language)
		require.NoError(t, err)
		texts(reflect.ValueOf(words), func(text string) {
			for _, face := range []pages.Face{pages.Regular, pages.Bold, pages.Italic, pages.BoldItalic} {
				for _, r := range text {
					assert.True(t, face.Covers(r), "%s: %q has no type for %q", language, text, r)
				}
			}
		})
	}
}
