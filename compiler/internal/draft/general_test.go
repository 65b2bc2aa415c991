package draft

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Sentences about machines that stand in no set of notes, by what is taken from them and what is
// not: "!" stands before what must not be taken.
func TestNotesOfOtherMachines(t *testing.T) {
	for notes, want := range map[string][]string{
		"Sweeper.\nside brush bolts 4, M8, 20 Nm":                             {"count 4", "size M8", "torque 20 N·m", "part side brush bolt", "!action clean side brush bolts"},
		"Sweeper, every 150 hrs or once a yr":                                 {"interval 150 h", "interval 1 year"},
		"Main broom: rpl if worn":                                             {"action replace main broom"},
		"gearbox oil, top up w/ 80W-90, 0.4 qts":                              {"amount 0.4 qt", "fluid 80W-90", "question imperial"},
		"grease caster pivots, 2 shots ea., #2 lithium":                       {"action grease caster pivots", "amount 2 strokes", "fluid NLGI 2"},
		"rpl 5 mic fuel filter, hand tite + 3/4 turn":                         {"action replace fuel filter", "size 5 µm", "range 3/4 turn"},
		"Magneto. Points gap .018":                                            {"range 0.018", "question unit"},
		"Auger knives, ten of 'em, two bolts apiece, half inch thirteen.":     {"count 10", "size 1/2-13", "part auger knife bolt"},
		"Roller bearings get changed every five hundred hours.":               {"action replace roller bearings", "interval 500 h"},
		"Tailgate chain, check the slack.":                                    {"action check tailgate chain slack"},
		"Hydraulic filter, replace every season.":                             {"interval 1 year", "!action replace season"},
		"Fan belts. Eight pounds should move it three eighths.":               {"range 8 lbf", "action check belt tension", "!amount 8 lb"},
		"Carriage lift chain, oil on the rollers.":                            {"action lubricate rollers"},
		"Auger gearbox next. Drain plug's underneath.":                        {"part auger gearbox", "action drain auger gearbox"},
		"Pump seal. Go slow, you'll split the housing.":                       {"!part housing"},
		"Chaff cutter. The knives are fixed with bolts. Those knives are old": {"!tool knife"},
		"It weighs ninety pounds, so get someone to help.":                    {"hazard load", "count 2"},
		"Keep your sleeves clear of the flywheel.":                            {"hazard rotation"},
		"The engine of the quad is a 4 stroke, petrol.":                       {"!amount 4 strokes"},
		"Number three press. Ram bolts, M12. It says 90 Nm.":                  {"torque 90 N·m", "!range 3"},
	} {
		made, err := Of([]byte(notes))
		assert.NoError(t, err)
		var taken []string
		for _, one := range made.Taken {
			taken = append(taken, one.Kind+" "+one.Value)
		}
		for _, one := range want {
			if one[0] == '!' {
				assert.False(t, slices.Contains(taken, one[1:]), "%q: %q is taken of %q", notes, one[1:], taken)
			} else {
				assert.Contains(t, taken, one, notes)
			}
		}
	}
}
