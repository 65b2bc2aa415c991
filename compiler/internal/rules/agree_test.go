package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAgree(t *testing.T) {
	for _, c := range []struct{ text, thing, want string }{
		{"the motor bolts is loosened at step 3", "motor bolts", "the motor bolts are loosened at step 3"},
		{"step 3 loosens the bolts of the lid, which is off", "bolts of the lid", "step 3 loosens the bolts of the lid, which are off"},
		{"the thread of the cover bolts is dry", "cover bolts", "the thread of the cover bolts is dry"},
		{"the mains is isolated at step 1", "mains", "the mains is isolated at step 1"},
		{"step 4 lets the the far end down", "the far end", "step 4 lets the far end down"},
		{"step 4 lets the both ends down", "both ends", "step 4 lets both ends down"},
		{"the chassis is raised", "chassis", "the chassis is raised"},
		{"the ring of the plugs does not fit", "ring of the plugs", "the ring of the plugs does not fit"},
		{"the chain length over 16 links is 12 in", "chain length over 16 links", "the chain length over 16 links is 12 in"},
		{"20 N·m is more than the clip nuts bears: look", "clip nuts", "20 N·m is more than the clip nuts bear: look"},
		{"the bolts issue", "bolts", "the bolts issue"},
		{"the count of the clips is 4, and the clips is off", "clips", "the count of the clips is 4, and the clips are off"},
	} {
		assert.Equal(t, c.want, agree(c.text, c.thing), c.text)
	}
}
