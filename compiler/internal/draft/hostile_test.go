package draft

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/trade"
	"benchleaf/schema"
)

func TestNotesThatCannotBeReadAreToldWithTheirPlace(t *testing.T) {
	for notes, want := range map[string]string{
		"":                    "the notes are empty",
		" \n\t\n":             "the notes are empty",
		"\ufeff \n":           "the notes are empty",
		"one\ntwo \xff three": "line 2 holds bytes that are no text in UTF-8",
		"one\n\ntwo\x00":      "line 3 holds the control character U+0000",
		"one\x1b[31m":         "line 1 holds the control character U+001B",
		strings.Repeat("the drain plug ", Most/15+1): "notes are at most 128 KiB",
	} {
		_, err := Of([]byte(notes))
		require.Error(t, err)
		assert.Contains(t, err.Error(), want)
	}
}

func TestTheVocabularyGoesByTheLanguage(t *testing.T) {
	for _, row := range warningRows {
		_, ok := trade.FindHazard(row.key)
		assert.True(t, ok, "%s is no hazard", row.key)
	}
	for _, row := range toolRows {
		if row.wear != "" {
			_, ok := trade.FindWear(row.wear)
			assert.True(t, ok, "%s is nothing that is worn", row.wear)
		}
		if row.kind != "wear" && row.kind != "supply" {
			assert.True(t, isWord("tool", "kind", row.kind), "%s is no kind of tool", row.kind)
		}
	}
	for _, row := range energies {
		assert.True(t, isWord("energy", "kind", row.kind), "%s is no kind of energy", row.kind)
	}
	for _, row := range productRows {
		assert.True(t, isWord("fluid", "kind", row.kind), "%s is no kind of fluid", row.kind)
	}
	for _, thickener := range thickeners() {
		assert.True(t, isWord("fluid", "thickener", thickener), "%s is no thickener", thickener)
	}
}

// isWord reports whether a key of the language takes a word.
func isWord(table, key, word string) bool {
	found, _ := schema.Find(table)
	of, _ := found.Key(key)
	return slices.ContainsFunc(of.Choices, func(one schema.Option) bool { return one.Word == word })
}
