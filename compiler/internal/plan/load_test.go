package plan

import (
	"strings"
	"testing"

	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/trade"
	"benchleaf/schema"
	"benchleaf/templates"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestEveryLanguageHasAllItsWords(t *testing.T) {
	var named []string
	for _, option := range schema.Languages {
		named = append(named, option.Word)
	}
	assert.ElementsMatch(t, named, Languages())
	for _, lang := range Languages() {
		t.Run(lang, func(t *testing.T) {
			words, err := LoadWords(lang)
			require.NoError(t, err)
			assert.Equal(t, lang, words.Language)
			for _, verb := range schema.Verbs() {
				assert.NotEmpty(t, words.Verbs[verb.Key], "sentence of %s", verb.Key)
			}
			assert.Len(t, words.Verbs, len(schema.Verbs()))
			for _, kind := range schema.Protection {
				assert.NotEmpty(t, words.Protection[kind.Word], "words for %s", kind.Word)
			}
			assert.Len(t, words.Protection, len(schema.Protection))
			for _, sign := range trade.Signs() {
				assert.NotEmpty(t, words.Signs[sign.Number], "words for the sign %s", sign.Number)
			}
			assert.Len(t, words.Signs, len(trade.Signs()))
			for _, kind := range schema.ToolKinds {
				assert.NotEmpty(t, words.Kinds[kind.Word], "word for %s", kind.Word)
			}
			energy, _ := schema.Find("energy")
			kinds, _ := energy.Key("kind")
			for _, kind := range kinds.Choices {
				assert.NotEmpty(t, words.Proofs[kind.Word], "proof of %s", kind.Word)
			}
			assert.Len(t, words.Proofs, len(kinds.Choices))
			part, _ := schema.Find("part")
			for key, group := range map[string]map[string]string{"head": words.Heads, "condition": words.Conditions, "order": words.Orders} {
				entry, _ := part.Key(key)
				for _, option := range entry.Choices {
					assert.NotEmpty(t, group[option.Word], "word for %s %s", key, option.Word)
				}
				assert.Len(t, group, len(entry.Choices))
			}
		})
	}
}

// English messages and units stand with the trade and the quantities; every other language
// has each of them, and no other.
func TestEveryLanguageHasEveryMessage(t *testing.T) {
	for _, lang := range Languages() {
		words, err := LoadWords(lang)
		require.NoError(t, err)
		if lang == "en" {
			assert.Empty(t, words.Hazards)
			assert.Empty(t, words.Units)
			continue
		}
		assert.Len(t, words.Hazards, len(trade.Hazards()), lang)
		for _, hazard := range trade.Hazards() {
			told, name := words.Hazards[hazard.Key], lang+" "+hazard.Key
			assert.NotEmpty(t, told.Hazard, name)
			assert.False(t, strings.HasSuffix(told.Hazard, "."), name)
			for _, text := range []string{told.Consequence, told.Avoid} {
				assert.True(t, strings.HasSuffix(text, "."), "%s: %q", name, text)
			}
			rises := hazard.Worst == trade.Danger && hazard.Level != trade.Danger
			assert.Equal(t, rises, told.Worst != "", "%s: what happens at a DANGER", name)
			assert.NotEqual(t, told.Worst, told.Consequence, name)
		}
		var units []string
		for dimension := quantity.Torque; dimension < quantity.Any; dimension++ {
			for _, unit := range quantity.Units(dimension) {
				if one, many := shown("1 "+unit.Symbol, dimension), shown("2 "+unit.Symbol, dimension); one != many {
					units = append(units, one, many)
				}
			}
		}
		for _, unit := range units {
			assert.NotEmpty(t, words.Units[unit], "%s: unit %s", lang, unit)
		}
		for unit := range words.Units {
			assert.Contains(t, units, unit, lang)
		}
	}
}

// shown is how the unit of an amount prints in English.
func shown(text string, dimension quantity.Dimension) string {
	amount, _ := quantity.Parse(text, dimension)
	return strings.TrimLeft(amount.Plain(), "12 ")
}

func TestDamagedWordsAreRefused(t *testing.T) {
	whole, err := templates.Files.ReadFile("words/en.toml")
	require.NoError(t, err)
	for name, c := range map[string]struct{ old, new, says string }{
		"unknown label":   {`card = "Bench card"`, "card = \"Bench card\"\nbord = \"x\"", `no page uses "labels.bord"`},
		"empty label":     {`card = "Bench card"`, `card = " "`, "labels.card is empty"},
		"missing label":   {`card = "Bench card"`, ``, "labels.card is empty"},
		"missing signal":  {`notice = "NOTICE"`, ``, "signals.notice is missing or empty"},
		"unknown signal":  {`notice = "NOTICE"`, "notice = \"NOTICE\"\nhint = \"HINT\"", `no page uses "signals.hint"`},
		"empty wear":      {`mask = "Mask"`, `mask = ""`, "protection.mask is empty"},
		"no object":       {`"**Drain** the {object}."`, `"**Drain**."`, "verbs.drain lacks {object}"},
		"no proved":       {`"**Prove** the {object} safe to touch."`, `"**Prove** it."`, "proofs.heat lacks {object}"},
		"no verb":         {`"**Drain** the {object}."`, `"Drain the {object}."`, "verbs.drain needs its verb between"},
		"no range":        {`to = "to"`, ``, "amounts.to is empty"},
		"half a message":  {`[heads]`, "[hazards.hot]\nhazard = \"x\"\n[heads]", "hazards.hot.consequence is empty"},
		"side has no all": {`"Side {n} of {all}"`, `"Side {n}"`, "labels.side lacks"},
		"sheet has no n":  {`"Sheet {n}"`, `"Sheet"`, "labels.sheet lacks"},
		"timer has no n":  {`"Timer of step {n}"`, `"Timer"`, "labels.timer lacks {n}"},
		"no language":     {`language = "en"`, ``, "language is empty"},
		"not TOML":        {`language = "en"`, `language = `, "toml"},
	} {
		damaged := strings.Replace(string(whole), c.old, c.new, 1)
		require.NotEqual(t, string(whole), damaged, name)
		_, err := decodeWords(damaged)
		assert.ErrorContains(t, err, c.says, name)
	}
	_, err = LoadWords("xx")
	assert.ErrorContains(t, err, `no words for language "xx"`)
}
