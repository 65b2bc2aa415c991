package compose

import (
	"testing"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/tree"

	"github.com/stretchr/testify/assert"
)

func TestAGradeStandsOnceInAFluid(t *testing.T) {
	for _, c := range []struct{ title, grade, want string }{
		{"Gear oil 80W-90", "SAE 80W-90", "Gear oil 80W-90"},
		{"Gear oil, 80W-90, GL-5", "SAE 80W-90", "Gear oil, 80W-90, GL-5"},
		{"Polyglycol gear oil", "ISO VG 460", "Polyglycol gear oil ISO VG 460"},
		{"Hydraulic oil 46", "ISO VG 46", "Hydraulic oil 46"},
		{"Hydraulic oil 460", "ISO VG 46", "Hydraulic oil 460 ISO VG 46"},
		{"Grease 2 in 1", "NLGI 2", "Grease 2 in 1 NLGI 2"},
		{"Water", "", "Water"},
	} {
		fluid := &model.Fluid{Title: model.Text{Text: c.title, Value: new(tree.Value)}}
		if c.grade != "" {
			fluid.Grade = model.Text{Text: c.grade, Value: new(tree.Value)}
		}
		assert.Equal(t, c.want, fluidWords(fluid))
	}
}
