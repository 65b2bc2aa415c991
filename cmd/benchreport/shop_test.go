package main

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
)

func compiled(files map[string]string) *compiler.Result {
	var in compiler.Input
	for _, path := range slices.Sorted(maps.Keys(files)) {
		in.Files = append(in.Files, source.New(path, []byte(files[path])))
	}
	in.Whole = true
	return compiler.Compile(in)
}

// What is measured is a shop in which all is well: nothing is found in any of its machines and
// stations, and there is a card of each procedure.
func TestAShopThatIsMadeIsInOrder(t *testing.T) {
	for _, shape := range shapes {
		for seed, procedures := range map[uint64]int{1: 160, 2: 20} { // the first has every machine and station
			result := compiled(shape.files(procedures, seed))
			for _, found := range result.Findings {
				t.Errorf("%s, seed %d: %s: %s [%s]", shape.name, seed, found.Place.File.Path, found.Summary, found.Rule)
			}
			assert.Len(t, result.Jobs, procedures, shape.name)
			if procedures > 20 {
				continue
			}
			cards, troubles, err := result.Cards(compiler.Look{}, nil)
			require.NoError(t, err)
			assert.Empty(t, troubles)
			assert.Equal(t, procedures, len(cards), shape.name)
		}
	}
}

// The same seed makes the same shop, another seed another, and no two procedures of a shop are
// the same but for a number.
func TestAShopIsMadeOfItsSeed(t *testing.T) {
	for _, shape := range shapes {
		first := shape.files(60, 7)
		assert.Equal(t, first, shape.files(60, 7))
		assert.NotEqual(t, first, shape.files(60, 8))
		seen := map[string]bool{}
		for path, text := range first {
			if strings.Contains(text, "[procedure]") {
				_, steps, _ := strings.Cut(text, "[[step]]")
				seen[steps] = true
			}
			assert.NotContains(t, text, "%!", path)
		}
		assert.Greater(t, len(seen), 45, shape.name)
	}
}
