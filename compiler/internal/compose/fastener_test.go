package compose

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
)

// Ten nuts of two wheels are two circles of five, and go over each as five do.
func TestOrderIsOfOneCircle(t *testing.T) {
	w := &writer{words: plan.Words{Orders: map[string]string{"cross": "crosswise"}, Labels: plan.Labels{Colon: ":", EachCircle: "each circle by itself"}}}
	nuts := func(count, circles int) *model.Part {
		return &model.Part{Count: model.Whole{N: count}, Circles: model.Whole{N: circles}}
	}
	assert.Equal(t, "crosswise: 1-6-3-8-5-10-2-7-4-9", w.order("cross", nuts(10, 0), model.Whole{}))
	assert.Equal(t, "crosswise, each circle by itself: 1-3-5-2-4", w.order("cross", nuts(10, 2), model.Whole{}))
	assert.Equal(t, "crosswise: 1-3-5-2-4", w.order("cross", nuts(10, 2), model.Whole{N: 5}))
	assert.Equal(t, "crosswise, each circle by itself", w.order("cross", nuts(6, 2), model.Whole{}))
}

// The turns that are drawn are the published order read the other way round: the bolt
// at a place has its turn where the order names it (ASME PCC-1 legacy pattern for eight,
// from memory: 1, 5, 3, 7, 2, 6, 4, 8).
func TestTheCircleIsDrawnAsItIsTightened(t *testing.T) {
	part := &model.Part{Count: model.Whole{N: 8}}
	assert.Equal(t, []int{1, 5, 3, 7, 2, 6, 4, 8}, drawn("cross", part, model.Whole{}))
	assert.Nil(t, drawn("circle", part, model.Whole{}))
	assert.Nil(t, drawn("cross", &model.Part{Count: model.Whole{N: 3}}, model.Whole{}))
}
