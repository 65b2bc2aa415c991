package plan

import (
	"strings"
	"testing"

	"benchleaf/schema"
	"benchleaf/templates"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestEveryLanguageHasAllItsWords(t *testing.T) {
	entries, err := templates.Files.ReadDir("words")
	require.NoError(t, err)
	require.NotEmpty(t, entries)
	for _, entry := range entries {
		lang := strings.TrimSuffix(entry.Name(), ".toml")
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
		"no object":       {`"Drain the {object}."`, `"Drain."`, "verbs.drain lacks {object}"},
		"no proved":       {`"Prove the {object} safe to touch."`, `"Prove it."`, "proofs.heat lacks {object}"},
		"side has no all": {`"Side {n} of {all}"`, `"Side {n}"`, "labels.side lacks"},
		"sheet has no n":  {`"Sheet {n}"`, `"Sheet"`, "labels.sheet lacks"},
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
