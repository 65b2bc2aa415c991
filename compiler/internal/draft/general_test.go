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
		"Sweeper.\nside brush bolts 4, M8, 20 Nm":                                       {"count 4", "size M8", "torque 20 N·m", "part side brush bolt", "!action clean side brush bolts"},
		"Sweeper, every 150 hrs or once a yr":                                           {"interval 150 h", "interval 1 year"},
		"Main broom: rpl if worn":                                                       {"action replace main broom"},
		"gearbox oil, top up w/ 80W-90, 0.4 qts":                                        {"amount 0.4 qt", "fluid 80W-90", "question imperial"},
		"grease caster pivots, 2 shots ea., #2 lithium":                                 {"action grease caster pivots", "amount 2 strokes", "fluid NLGI 2"},
		"rpl 5 mic fuel filter, hand tite + 3/4 turn":                                   {"action replace fuel filter", "size 5 µm", "range 3/4 turn"},
		"Magneto. Points gap .018":                                                      {"range 0.018", "question unit"},
		"Auger knives, ten of 'em, two bolts apiece, half inch thirteen.":               {"count 10", "size 1/2-13", "part auger knife bolt"},
		"Roller bearings get changed every five hundred hours.":                         {"action replace roller bearings", "interval 500 h"},
		"Tailgate chain, check the slack.":                                              {"action check tailgate chain slack"},
		"Hydraulic filter, replace every season.":                                       {"interval 1 year", "!action replace season"},
		"Fan belts. Eight pounds should move it three eighths.":                         {"range 8 lbf", "action check belt tension", "!amount 8 lb"},
		"Carriage lift chain, oil on the rollers.":                                      {"action lubricate rollers"},
		"Auger gearbox next. Drain plug's underneath.":                                  {"part auger gearbox", "action drain auger gearbox"},
		"Pump seal. Go slow, you'll split the housing.":                                 {"!part housing"},
		"Chaff cutter. The knives are fixed with bolts. Those knives are old":           {"!tool knife"},
		"It weighs ninety pounds, so get someone to help.":                              {"hazard load", "count 2"},
		"Keep your sleeves clear of the flywheel.":                                      {"hazard rotation"},
		"The engine of the quad is a 4 stroke, petrol.":                                 {"!amount 4 strokes"},
		"Number three press. Ram bolts, M12. It says 90 Nm.":                            {"torque 90 N·m", "!range 3"},
		"PRESS\n- relief v. sealed @ 180 bar, leave":                                    {"!range 180 bar"},
		"The descaling every 3 months, Sandra does that.":                               {"!interval 3 months"},
		"Steve runs his to ninety newton metres and the bolts snap.":                    {"!torque 90 N·m"},
		"The last engine had ten W thirty in it.":                                       {"!fluid 10W-30"},
		"Side panel: 6 screws. Tighten terminals 2 Nm":                                  {"torque 2 N·m", "action tighten terminals", "!action tighten side panel screws"},
		"Anchors. Check 110 ft-lb.":                                                     {"torque 110 lbf·ft", "action check anchor torque", "!action tighten anchors"},
		"Kit: spnrs 17 + 19, skt 24, rags, lamp":                                        {"size 17 mm", "size 19 mm", "size 24 mm"},
		"It shouldn't drop more than ten millimetres.":                                  {"range max 10 mm"},
		"It should read more than one megohm to earth.":                                 {"range min 1 MΩ"},
		"The pads, new under three millimetres.":                                        {"range min 3 mm", "!range max 3 mm"},
		"Half an inch of slack in the chain, give or take an eighth.":                   {"range 3/8 to 5/8 in"},
		"Burner pressure 8.5 mbar +/- 0.5":                                              {"range 8.0 to 9.0 mbar"},
		"Three strokes in the front bearing and two in the rear one.":                   {"amount 3 strokes", "amount 2 strokes"},
		"Wheel nuts, hundred and ten.":                                                  {"torque 110", "question unit"},
		"Pivot bolts M24 x 8, 650 Nm":                                                   {"size M24", "count 8", "!size M24x8"},
		"Close the main switch.":                                                        {"question energy", "!action isolate mains"},
		"Hit the emergency stop.":                                                       {"action press emergency stop"},
		"Motor plate. Four bolts. Wind the jack screw in till the drive belt is tight.": {"action tension drive belt", "!action refit jack screw"},
		"Gearbox. The oil level plug is on the left.":                                   {"!action lubricate level plug"},
		"Fish out the coins from the drain valve.":                                      {"action clean drain valve", "!action remove coins"},
		"Log the cycles in the book.":                                                   {"action record cycles"},
		"A drum out job, that one.":                                                     {"!action remove drum"},
		"Hydraulics. It takes hydraulic oil, thirty two.":                               {"fluid ISO VG 32"},
		"The 27 kilo washer extractor in the laundry.":                                  {"!amount 27 kg"},
		"Front cover, four torx screws, T thirty.":                                      {"size T30", "count 4"},
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
