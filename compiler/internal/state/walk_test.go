package state

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"benchleaf/compiler/internal/model"
)

// A valve that is open while the machine works stands otherwise while it is closed; a
// drain cock, while it is open.
func TestTheChartTellsHowValvesStand(t *testing.T) {
	fuel, drain := &model.Part{Thing: model.Thing{Name: "fuel-valve"}}, &model.Part{Thing: model.Thing{Name: "drain-cock"}}
	w := &walk{job: &model.Job{}, known: []*model.Part{fuel, drain}, parts: map[*model.Part]*part{fuel: {}, drain: {}}}
	w.taps = []*tap{{of: fuel, usually: true}, {of: drain, open: true}}
	w.parts[drain].open = true
	w.record()
	w.taps[0].open, w.parts[fuel].open = true, true
	w.taps[1].open, w.parts[drain].open = false, false
	w.record()
	if assert.Len(t, w.out.Tracks, 2) {
		assert.Equal(t, []Level{Shut, AsBefore}, w.out.Tracks[0].Levels)
		assert.Equal(t, []Level{Open, AsBefore}, w.out.Tracks[1].Levels)
	}
}

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
