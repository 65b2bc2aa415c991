package state

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What a name calls a thing, whatever size, mark or lot stands around it.
func TestNounOfAName(t *testing.T) {
	for words, want := range map[string]string{
		"matched set of three V-belts SPB 2650": "belt", "V-belt B 62": "belt", "V-belt": "belt", "hub seal 45 × 72 × 10 mm": "seal", "pad-set": "pad",
		"brake pads": "pad", "O-ring 98 × 3 mm, nitrile": "ring", "locking nut M10": "nut", "knives": "knife", "batteries": "battery", "chipper knife, ground": "knife",
		"oil filter element": "filter", "band blade, sharpened and set": "blade", "glass": "glass", "": "", "M10": "", "-": "",
	} {
		assert.Equal(t, want, noun(words), words)
	}
	assert.True(t, kin("drive belts", "V-belt A 48"))
	assert.False(t, kin("M10", "M12"), "a size alone names nothing")
}
