package state

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"benchleaf/compiler/internal/model"
)

// said is a walk through steps of words alone.
func said(sentences ...string) []string {
	job := &model.Job{Procedure: &model.Procedure{}}
	w := &walk{job: job}
	for i, text := range sentences {
		step := &model.Step{Number: i + 1}
		step.Say.Text = text
		w.places(step)
	}
	var out []string
	for _, p := range w.placed {
		out = append(out, p.name)
	}
	return out
}

// What is put in or under in words, and what comes away again.
func TestPlacedInWords(t *testing.T) {
	for _, test := range []struct {
		say  []string
		left []string
	}{
		{[]string{"Set a chock before and behind the far wheel."}, []string{"chock"}},
		{[]string{"Chock both wheels."}, []string{"chocks"}},
		{[]string{"Chock both wheels.", "Take the chocks away."}, nil},
		{[]string{"Chock both wheels.", "Take them away."}, nil},
		{[]string{"Chock both wheels.", "Take both bolts out."}, []string{"chocks"}},
		{[]string{"Put the stands under the back axle."}, []string{"stands"}},
		{[]string{"Set axle stands under the frame.", "Take the stands out, and let it down."}, nil},
		{[]string{"Set axle stands under the frame.", "Let it down."}, nil},
		{[]string{"Push the locking pin into the drum."}, []string{"locking pin"}},
		{[]string{"Push the locking pin through the drawbar."}, nil},
		{[]string{"Set the stop bar to the mark."}, nil},
		{[]string{"Push the yoke onto the gearbox shaft until the lock pin snaps out."}, nil},
		{[]string{"Slide the coupling onto the shaft until its locking pin has clicked home."}, nil},
		{[]string{"Push the timing pin into the flywheel until it engages."}, []string{"timing pin"}},
		{[]string{"Drive a wedge between the blade and the deck."}, []string{"wedge"}},
		{[]string{"Drive the wedge into the handle."}, nil},
		{[]string{"Drive a wedge between the blade and the deck.", "Knock the wedge out."}, nil},
		{[]string{"Put the indicator on its stand."}, nil},
		{[]string{"Clean the valve block and put it back."}, nil},
		{[]string{"Set the jack on a block of wood."}, nil},
		{[]string{"Roll the platform under the far end."}, []string{"platform"}},
		{[]string{"Set the platform beside the far end."}, nil},
		{[]string{"Lay a plank under the frame.", "Let it down."}, []string{"plank"}},
		{[]string{"Lay a plank under the frame.", "Take the plank away.", "Let it down."}, nil},
		{[]string{"Lock the flywheel with the timing pin."}, []string{"timing pin"}},
		{[]string{"Wedge a block of wood between the blade and the deck."}, []string{"block"}},
		{[]string{"Wedge a block of wood between the blade and the deck.", "Take the block of wood out."}, nil},
	} {
		assert.Equal(t, test.left, said(test.say...), "%q", test.say)
	}
}
