package compiler_test

import (
	"bytes"
	"os"
	"slices"
	"strings"
	"testing"

	"benchleaf/compiler"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func named(outputs []compiler.Output) (out []string) {
	for _, output := range outputs {
		out = append(out, output.Name)
	}
	return out
}

// What is due comes as a list and a planner of each machine, the same for the same day.
func TestPagesOfWhatIsDue(t *testing.T) {
	asked := compiler.Asked{On: "2026-05-05", By: "2026-05-06"}
	due, err := compileShop(t).Due(compiler.Look{}, asked, nil)
	require.NoError(t, err)
	first, troubles, err := due.Pages(compiler.Look{})
	require.NoError(t, err)
	assert.Empty(t, troubles)
	assert.Equal(t, []string{"due-list.pdf", "chipper-planner.pdf", "compressor-planner.pdf", "deck-planner.pdf", "edger-planner.pdf", "long-deck-planner.pdf", "mill-planner.pdf", "power-pack-planner.pdf", "trailer-planner.pdf"}, named(first))
	again, _, err := due.Pages(compiler.Look{})
	require.NoError(t, err)
	assert.Equal(t, first, again)

	drawn, _, err := due.Pages(compiler.Look{Stock: "a3", Pictures: true, Language: "de"})
	require.NoError(t, err)
	assert.Contains(t, named(drawn), "due-list-1.svg")
	assert.Contains(t, named(drawn), "deck-planner-1.svg")
	_, _, err = due.Pages(compiler.Look{Stock: "bark"})
	assert.Error(t, err)
}

// Where nothing is due by a day, the list says so.
func TestADueListSaysThatNothingIsDue(t *testing.T) {
	due, err := compileShop(t).Due(compiler.Look{}, compiler.Asked{On: "1990-01-01", By: "1990-01-02"}, nil)
	require.NoError(t, err)
	assert.Empty(t, due.Rows)
	pages, _, err := due.Pages(compiler.Look{Pictures: true})
	require.NoError(t, err)
	assert.True(t, strings.Contains(string(pages[1].Bytes), `data-kind="none"`))
}

// What to bring is for what is due by a day, or presses, and for nothing else.
func TestWhatToBringIsForWhatIsDue(t *testing.T) {
	result := compileShop(t)
	book, err := os.ReadFile("../procedures/service-book.toml")
	require.NoError(t, err)
	bring := func(asked compiler.Asked) string {
		due, err := result.Due(compiler.Look{}, asked, bytes.NewReader(book))
		require.NoError(t, err)
		made, troubles, err := due.Bring(compiler.Look{})
		require.NoError(t, err)
		assert.Empty(t, troubles)
		if len(made) == 0 {
			return ""
		}
		assert.Equal(t, []string{"bring.pdf", "bring.csv"}, named(made))
		var titles []string
		for _, job := range made[0].Jobs {
			titles = append(titles, job.Name)
		}
		slices.Sort(titles)
		return strings.Join(titles, " ")
	}
	// By testdata/due/2026-05-01.txt.
	assert.Equal(t, "band-mill-blade-change band-mill-guide-rollers log-deck-chain-tension power-pack-return-filter", bring(compiler.Asked{On: "2026-05-01", By: "2026-05-02"}))
	assert.Contains(t, bring(compiler.Asked{On: "2026-05-01"}), "log-deck-bearing-grease log-deck-bearing-grease", "both decks want it soon")
	assert.Empty(t, bring(compiler.Asked{On: "1990-01-01", By: "1990-01-02"}))
}
