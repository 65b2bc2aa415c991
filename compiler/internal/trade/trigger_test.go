package trade

import (
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

// Sentences as a mechanic would write them, each with all that it implies and nothing else.
var implied = map[string]string{
	"Remove the blade and set it on the bench.":                                 "edge rotation start",
	"Sharpen both edges to 30 degrees.":                                         "edge",
	"Balance the blade on a cone.":                                              "edge",
	"Unclog the discharge chute with a stick.":                                  "start",
	"Clear the jam from the chute.":                                             "start",
	"Slip the worn belt off; fit the new belt.":                                 "pinch start",
	"Replace the drive belt.":                                                   "pinch start",
	"Loosen the motor bolts and tension the chain.":                             "pinch start",
	"With the belt removed, spin the idler by hand.":                            "pinch start",
	"Turn the rollers by hand through one revolution.":                          "pinch",
	"Hold the flywheel with a strap wrench and block it.":                       "rotation",
	"Let the rotor coast down before you open the housing.":                     "rotation",
	"Grind the weld flush.":                                                     "grinding noise",
	"Dress the edge with an angle grinder.":                                     "grinding noise",
	"Clean the hub with a wire wheel.":                                          "grinding",
	"Jack up the front axle.":                                                   "crushing",
	"Raise the mower and set it on axle stands.":                                "crushing",
	"Lift the deck with the hoist.":                                             "crushing load",
	"Crawl under the trailer to reach the grease fitting.":                      "crushing",
	"Disconnect the hydraulic hose at the cylinder.":                            "injection",
	"Bleed the hydraulic circuit.":                                              "injection",
	"Look for a hydraulic leak with a piece of card.":                           "injection",
	"Crack the injector line at the pump.":                                      "injection",
	"Unhook the return spring.":                                                 "spring",
	"Remove the recoil starter.":                                                "spring",
	"Release the belt tensioner.":                                               "spring",
	"Spread the circlip and take it off the shaft.":                             "spring",
	"Remove the snap ring.":                                                     "spring",
	"Undo the gas strut at its upper ball.":                                     "spring",
	"Grease the PTO joint.":                                                     "shaft",
	"Engage the PTO at idle.":                                                   "shaft",
	"Connect the universal joint to the gearbox.":                               "shaft",
	"Keep clear of the shaft while it is turning.":                              "shaft",
	"Fit the PTO adapter to the tractor.":                                       "shaft speed-mismatch",
	"Slide the spline adapter on.":                                              "speed-mismatch",
	"Let the hot oil drain for ten minutes.":                                    "hot used-oil",
	"Open the radiator cap slowly.":                                             "hot",
	"Remove the muffler.":                                                       "hot",
	"Drain the oil while it is warm.":                                           "hot used-oil",
	"Heat the bearing with a heat gun.":                                         "hot",
	"Disconnect the fuel line from the tank.":                                   "fuel",
	"Drain the fuel into a can.":                                                "fuel",
	"Refuel the machine outdoors.":                                              "fuel",
	"Clean the carburettor.":                                                    "fuel",
	"Mop up spilled petrol at once.":                                            "fuel",
	"Charge the battery overnight.":                                             "battery-gas",
	"Disconnect the battery.":                                                   "battery-gas battery-order",
	"Reconnect the negative lead.":                                              "battery-order",
	"Jump-start the engine from a second battery.":                              "battery-gas",
	"Discharge the capacitor through a resistor.":                               "shock",
	"Open the terminal box and check for 230 V.":                                "shock",
	"Connect the mains to the new switch.":                                      "shock",
	"Run the chipper at full throttle.":                                         "noise",
	"Spin the nut off with an impact wrench.":                                   "noise reaction",
	"Scrape the old gasket off the cover.":                                      "dust",
	"Remove the brake shoes.":                                                   "dust",
	"Blow the dust out of the fins.":                                            "air dust",
	"Spray the disc with brake cleaner.":                                        "solvent",
	"Wash the parts in degreaser.":                                              "solvent",
	"Drain the gearbox.":                                                        "used-oil",
	"Remove the drain plug.":                                                    "used-oil",
	"Unscrew the oil filter.":                                                   "used-oil",
	"Drain the gear oil into the pan.":                                          "used-oil",
	"Dry the housing with compressed air.":                                      "air",
	"Blow out the air filter housing.":                                          "air",
	"Inflate the tyre to 1.4 bar.":                                              "burst",
	"Seat the bead on the rim.":                                                 "burst",
	"Remove the tire from the rim.":                                             "burst",
	"Lift the engine out with a sling.":                                         "load",
	"The cutter head is heavy.":                                                 "load",
	"Lift the 38 kg rotor with two people.":                                     "load rotation start",
	"Remove the belt guard.":                                                    "guard",
	"Never run the saw without the guard.":                                      "guard",
	"Reach into the infeed and clear it.":                                       "feed start",
	"Open the feed roller housing.":                                             "feed",
	"Rinse the sprayer with clean water.":                                       "spray",
	"Handle the herbicide container with the lid on.":                           "spray",
	"Break the nut loose with a breaker bar.":                                   "reaction",
	"Put one drop of thread-locker on the thread.":                              "adhesive",
	"Mix the epoxy.":                                                            "adhesive",
	"Charge the accumulator with dry nitrogen to 90 bar.":                       "burst gas",
	"HANDLE THE HOT EXHAUST WITH TONGS":                                         "hot",
	"Wipe the old oil from the sump.":                                           "used-oil",
	"Change the oil.":                                                           "used-oil",
	"Raise the rear wheels clear of the floor.":                                 "crushing",
	"Tip the mower on its side.":                                                "crushing",
	"Go under the deck only when it rests on blocks.":                           "crushing",
	"Weld the bracket to the frame.":                                            "hot",
	"Let the engine warm up, then drain the oil.":                               "hot used-oil",
	"Take the chain off the sprocket.":                                          "pinch start",
	"Remove the blade guard.":                                                   "guard",
	"Open the air tank at its drain.":                                           "burst",
	"Unclog the infeed of the chipper.":                                         "feed start",
	"Relieve the hydraulic pressure.":                                           "injection",
	"Tighten the cylinder head bolts crosswise.":                                "hot",
	"Remove the flywheel nut.":                                                  "rotation",
	"Turn the blade by hand and look for wobble.":                               "edge rotation start",
	"Torque the blade bolts to 90 N·m.":                                         "edge rotation start",
	"Unbolt the chipper knives one at a time.":                                  "edge feed rotation start",
	"Swing the idler away and roll the belt off.":                               "pinch spring start",
	"Heat the hub to 80 °C in the oven.":                                        "hot",
	"Let the oil run into the tray for 15 min.":                                 "used-oil",
	"Open the electrical cabinet.":                                              "shock",
	"Measure 400 V between the phases.":                                         "shock",
	"Hang the track roller on a sling.":                                         "load",
	"Slide the driveline onto the stub shaft.":                                  "shaft start",
	"Oil the chain.":                                                            "pinch start",
	"Put the old blade in the scrap bin.":                                       "edge",
	"Turn the drum by hand until the first knife is on top.":                    "rotation",
	"Warm the cylinder with a torch.":                                           "hot",
	"Slacken the belt by turning the idler bolt.":                               "pinch spring start",
	"Read the pressure with the engine at full throttle.":                       "noise",
	"If the belt slips, tension the belt. Do not touch the chain.":              "pinch start",
	"Take the cover of the chain case off, then take the sharp steel burr off.": "edge guard",
}

func TestTriggersImplied(t *testing.T) {
	for text, want := range implied {
		assert.Equal(t, want, strings.Join(found(text), " "), text)
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
	for _, text := range harmless {
		assert.Empty(t, found(text), text)
	}
}

func TestTriggersSayWhere(t *testing.T) {
	text := "Größe prüfen. Remove the drain plug, then blow the hole out with the air gun."
	var got []string
	for _, trigger := range Triggers(text) {
		got = append(got, trigger.Hazard+" "+text[trigger.Start:trigger.End])
	}
	assert.Equal(t, []string{"used-oil drain plug", "air blow", "air air gun"}, got)
}

func TestHazards(t *testing.T) {
	keys := keysOf(Hazards(), func(h Hazard) string { return h.Key })
	assert.ElementsMatch(t, []string{"start", "rotation", "edge", "grinding", "crushing", "injection", "spring", "shaft", "speed-mismatch", "hot", "fuel", "battery-gas", "battery-order", "shock",
		"noise", "dust", "solvent", "used-oil", "air", "burst", "load", "pinch", "guard", "feed", "spray", "reaction", "adhesive", "gas"}, keys)
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
	for _, text := range []string{"Remove the blade.", "battery-free", "38kg", "’.’", "1.", "\xff’\xff", "230 V", "--", "İ hot"} {
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

func BenchmarkTriggers(b *testing.B) {
	for b.Loop() {
		Triggers("Loosen the four bolts of the belt guard, lift it off and slacken the chain until it hangs free.")
	}
}
