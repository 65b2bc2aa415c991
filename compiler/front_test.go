package compiler

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/plan"
)

// What is only named in front stands in full where it says: a message word for word at its
// steps, an energy at the steps that cut it off and prove it.
func TestWhatIsOnlyNamedInFrontStandsAtItsStep(t *testing.T) {
	cards, err := Compile(Input{Files: shopFiles(t)}).compose(Look{})
	require.NoError(t, err)
	named := 0
	for _, card := range cards {
		steps := map[int]plan.Step{}
		for _, section := range card.content.Sections {
			for _, step := range section.Steps {
				steps[step.Number] = step
			}
		}
		for _, message := range card.content.Cautions {
			for _, number := range message.Steps {
				named++
				full := message
				full.Steps = nil
				assert.Contains(t, steps[number].Cautions, full, "%s, step %d", card.name(), number)
			}
		}
		for _, energy := range card.content.Isolations {
			for number, words := range map[int]string{energy.Cut: energy.How, energy.Proof: energy.Prove} {
				if number > 0 && words != "" {
					assert.True(t, slices.ContainsFunc(steps[number].Say, func(block plan.Block) bool {
						said := ""
						for _, run := range block.Runs {
							said += run.Text
						}
						return said != "" && (said == words || len(words) > len(said) && words[:len(said)] == said)
					}), "%s, step %d: %s", card.name(), number, words)
				}
			}
		}
	}
	assert.Greater(t, named, 50)
}
