package trade

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func found(text string) []string {
	var out []string
	for _, trigger := range Triggers(text) {
		out = append(out, trigger.Hazard)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func TestTriggersImplied(t *testing.T) {
	for _, table := range []map[string]string{implied, foremanImplied, moreImplied} {
		for text, want := range table {
			assert.Equal(t, want, strings.Join(found(text), " "), text)
		}
	}
}

// Sentences that hold a word of a hazard, and not the hazard.
var harmless = []string{
	"Line up the marks on the pulley.",
	"Fasten the seat belt.",
	"Check the seat belt for cuts.",
	"Take a shot of grease on a rag.",
	"Do this check each spring.",
	"Book the spring service with the dealer.",
	"Clean the windscreen.",
	"Note the number under the label.",
	"Wear a tank top or a shirt with short sleeves.",
	"Use a battery-free indicator.",
	"Use a battery-operated lamp.",
	"See that there is no fuel in the pan.",
	"Do not remove the guard.",
	"Check the chain for stiff links.",
	"Inspect the drive belt for cracks.",
	"Measure the deflection of the belt.",
	"Check the belt tension with a gauge.",
	"Check the tyre pressure.",
	"Read the fuel gauge.",
	"Check the hydraulic oil level in the sight glass.",
	"Look at the drain plug for drips.",
	"Compare the filter with the old one.",
	"Record the hours on the hour meter.",
	"Fit a new spring washer.",
	"Refit the guard and tighten its bolts.",
	"Put on the face shield.",
	"Refit the belt guard.",
	"Use a dead blow hammer.",
	"Pull the dust cap off the hub.",
	"Check the motor for hum.",
	"Listen for a grinding noise.",
	"Fit the blade fuse in the panel.",
	"Set the gear lever to neutral.",
	"Fill the gearbox with 0.85 L of gear oil.",
	"Close the fuel tap.",
	"Check the battery terminals for white powder.",
	"Write the date on the tag.",
	"Let the engine cool until it is no longer hot.",
	"Do not use compressed air.",
	"Use water instead of solvent.",
	"Wash with a solvent-free soap.",
	"Keep track of the shims.",
	"Tighten the nuts in the tightening order.",
	"Open the drain valve by a quarter turn.",
	"Raise the idle speed by 50 rev/min.",
	"Lift the lid.",
	"Remove the valve cover.",
	"Tighten the wheel nuts.",
	"Open the window to let air in.",
	"The photo shows the plug and the lead.",
	"Remove the seat and check the fuel hose for cracks.",
	"Lay a bead of sealer along the joint.",
	"Use the jack plug of the headset.",
	"Remove the air filter element.",
	"Wear gloves.",
	"Charge 14.4 V or less.",
	"Screw the lift arm pin in.",
	"Stand the part on the bench.",
	"A shop supplies the bolts.",
	"Check that the machine is free of fuel and oil.",
	"Check the free play of the chain.",
	"Put the blades of the feeler gauge back.",
	"Photograph the chain before the wear check.",
	"The supply chain for this part is slow.",
	"Engine, gearbox and hoses are dry.",
	"Check the guard for cracks.",
	"Tighten the guard bolts.",
	"Turn the key off and put it in your pocket.",
	"Stop the engine and disengage the PTO.",
	"Put the drain pan under the gearbox.",
	"Slide the oil drain pan under the mower.",
	"Work under good light.",
	"Do not work under the trailer.",
	"Remove the spark plug lead.",
	"Tighten the terminal screws to 1.2 N·m.",
	"Use a torch to see the mark.",
	"Clear the work area of people.",
	"Free the seized bolt with penetrating oil.",
	"Hang the chain on the hook.",
	"Loosen the hose clamp.",
	"Set the track width to 1.2 m.",
	"The fuse can blow.",
	"Lift the front cover.",
	"Check the hoist for a valid tag.",
	"Check the grinder.",
	"Twist the heavy-gauge wire round the post.",
	"Lubricate the pivot pins.",
	"Measure the chain over ten links and record the length.",
	"Check the oil level in the sight glass.",
	"Tighten the drain bolt cover.",
	"Wait 20 min.",
	"Mark the direction of travel of the belt.",
	"Hold a straight edge against the pulleys.",
	"Remove the four screws of the top panel.",
	"Wedge the sawmill carriage so that it cannot roll.",
	"Lower the deck to the lowest notch.",
	"Set the knife gap to 0.5 mm.",
	"Tap the roll pin out with a punch.",
	"Shake the can of chain lubricant.",
	"Check the guard switch.",
	"Record the battery voltage.",
	"Check the tension of the chain: 5 mm at the middle.",
	"Cut the old hose with a knife.",
	"Adjust the valve clearance.",
	"Clean the threads with a wire brush.",
	"Turn the shaft by hand.",
	"Fill the hopper with seed.",
	"Apply anti-seize to the thread.",
	"Push the switch to off.",
	"Tighten the hydraulic tank bracket.",
	"Turn the adjusting screw of the brake by half a turn.",
	"",
}

func TestTriggersNotImplied(t *testing.T) {
	for _, text := range slices.Concat(harmless, moreHarmless) {
		assert.Empty(t, found(text), text)
	}
}

// What is quoted goes from the deed to what it is done to where they stand near, and takes
// the unit to a figure.
func TestTriggersSayWhere(t *testing.T) {
	for text, want := range map[string][]string{
		"Größe prüfen. Remove the drain plug, then blow the hole out with the air gun.": {"used-oil Remove the drain plug", "air blow the hole out", "air air gun"},
		"Tilt the machine and lift the machine carefully.":                              {"crushing Tilt the machine", "crushing lift the machine"},
		"Carry it: the drum weighs 38 kg.":                                              {"load weighs 38 kg"},
		"It needs 500 V to run.":                                                        {"shock 500 V"},
		"It needs 500V to run.":                                                         {"shock 500V"},
		"Free the jam of chips.":                                                        {"start Free the jam"},
		"Work only under the deck.":                                                     {"crushing Work only under the deck"},
		"Put one finger or one hand in.":                                                {"start hand"},
		"Put a hand in.":                                                                {"start Put a hand"},
		"Remove, with all its nuts and washers, the chain.":                             nil,
		"The belt is removed by two turns.":                                             {"start belt is removed", "pinch belt is removed"},
	} {
		var got []string
		for _, trigger := range Triggers(text) {
			got = append(got, trigger.Hazard+" "+text[trigger.Start:trigger.End])
		}
		assert.Equal(t, want, got, text)
	}
}

func TestHazards(t *testing.T) {
	keys := keysOf(Hazards(), func(h Hazard) string { return h.Key })
	assert.ElementsMatch(t, []string{"start", "rotation", "edge", "grinding", "crushing", "injection", "spring", "shaft", "speed-mismatch", "hot", "fuel", "battery-gas", "battery-order", "shock",
		"noise", "dust", "solvent", "used-oil", "air", "burst", "load", "pinch", "guard", "feed", "spray", "reaction", "adhesive", "gas", "fall", "confined", "exhaust-gas", "corrosive", "chips", "explosive", "brake-fluid", "fire"}, keys)
	for _, hazard := range Hazards() {
		assert.NotEmpty(t, hazard.Title)
		assert.NotEmpty(t, hazard.Source)
		assert.NotEmpty(t, hazard.Words)
		assert.True(t, hazard.Level <= Caution && hazard.Worst.Covers(hazard.Level), hazard.Key)
		verb := "can "
		if hazard.Level == Danger {
			verb = "will " // ANSI Z535.6: DANGER is for what will happen
		}
		assert.True(t, strings.HasPrefix(hazard.Consequence, verb), hazard.Consequence)
		assert.False(t, strings.HasSuffix(hazard.Consequence, "."))
		sentences := strings.Split(strings.TrimSuffix(hazard.Avoid, "."), ". ")
		assert.LessOrEqual(t, len(sentences), 2, hazard.Avoid)
		for _, sentence := range sentences {
			assert.LessOrEqual(t, len(strings.Fields(sentence)), 20, sentence)
			assert.Equal(t, strings.ToUpper(sentence[:1]), sentence[:1])
		}
		for _, key := range hazard.Wear {
			_, ok := FindWear(key)
			assert.True(t, ok, "%s: %s", hazard.Key, key)
		}
		for _, number := range hazard.Signs {
			_, ok := FindSign(number)
			assert.True(t, ok, "%s: %s", hazard.Key, number)
		}
		for _, cue := range hazard.Words {
			assert.Equal(t, strings.ToLower(cue), cue)
			assert.NotContains(t, cue, "-", "hyphens part words")
			assert.NotContains(t, cue, "||")
		}
	}
	_, err := ParseHazard("injecton")
	assert.ErrorContains(t, err, `"injection"`)
	hot, err := ParseHazard("hot")
	assert.NoError(t, err)
	assert.Equal(t, "They can burn your skin.", hot.Sentence())
}

// Gloves are caught by what turns, so no message about turning parts asks for them (ISO 7010 has P028 against it).
func TestNoGlovesAtTurningParts(t *testing.T) {
	for _, key := range []string{"start", "rotation", "shaft", "pinch", "feed"} {
		hazard, ok := FindHazard(key)
		assert.True(t, ok)
		assert.NotContains(t, hazard.Wear, "gloves")
	}
}

func FuzzTriggers(f *testing.F) {
	for _, text := range []string{"Remove the blade.", "battery-free", "38kg", "’.’", "1.", "\xff’\xff", "230 V", "--", "İ hot", "power take", "not", "60", "pick-up", "no need", "not needed to", "500 V", "2 t", "of of of", "never until"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		last := 0
		for _, trigger := range Triggers(text) {
			assert.True(t, last <= trigger.Start && trigger.Start < trigger.End && trigger.End <= len(text))
			last = trigger.Start
		}
	})
}

func BenchmarkTriggersOfTheTables(b *testing.B) {
	texts := slices.Concat(slices.Sorted(maps.Keys(implied)), harmless)
	for b.Loop() {
		for _, text := range texts {
			Triggers(text)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*len(texts)), "ns/sentence")
}

func BenchmarkTriggers(b *testing.B) {
	for b.Loop() {
		Triggers("Loosen the four bolts of the belt guard, lift it off and slacken the chain until it hangs free.")
	}
}
