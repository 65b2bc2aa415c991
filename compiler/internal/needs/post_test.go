package needs

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What has hands turn the works over is told from what turns a screw, a key or a page: each said
// as it would be on a card.
func TestWordsThatTurnTheWorks(t *testing.T) {
	for _, words := range []string{
		"both wheels, turned by hand",
		"Turn the top wheel by hand, three turns.",
		"Set the indicator on the rim, and turn the wheel once.",
		"Tighten while you turn the wheel, until it drags.",
		"Bar the engine over by the pulley.",
		"Spin the rotor round and listen.",
		"Take the block out, turn to the next knife.",
		"Crank it through two full strokes.",
		"Rotate the crankshaft to the mark.",
	} {
		assert.True(t, turnsByHand.MatchString(words), words)
	}
	for _, words := range []string{
		"Turn isolator Q9 on the pump frame to OFF.",
		"Crack the nut by a quarter turn, and wait until nothing weeps.",
		"No torque wrench goes in there: finger-tight, then a quarter turn with the wrench.",
		"Press the middle of the span down by 10 mm, each belt in turn.",
		"Clean the bar and the rollers.",
		"Screw it in by hand.",
		"Half a turn each; the blocks must slide without tilting.",
	} {
		assert.False(t, turnsByHand.MatchString(words), words)
	}
}
