package compiler

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"benchleaf/compiler/internal/model"
)

// A step that a joined job leaves out is done when the next that it does is, or the one before
// where none comes.
func TestNearestStepThatIsDone(t *testing.T) {
	var steps []*model.Step
	for n := range 6 {
		steps = append(steps, &model.Step{Number: n + 1})
	}
	left := map[int]bool{1: true, 3: true, 4: true, 6: true}
	assert.Equal(t, 2, nearest(steps, 1, left))
	assert.Equal(t, 5, nearest(steps, 3, left))
	assert.Equal(t, 5, nearest(steps, 4, left))
	assert.Equal(t, 5, nearest(steps, 6, left))
	assert.Zero(t, nearest(steps[:1], 1, left))
}
