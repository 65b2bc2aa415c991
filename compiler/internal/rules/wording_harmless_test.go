package rules_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
)

const lone = `benchleaf = 1
[procedure]
title = "Look over the chain oiler"
machine = "Log-deck conveyor"
revision = "A"
date = 2026-02-14
author = "R. Aldous"
who = "Anyone who runs the deck"
hands-on = "30 min"
every = "50 h"
no-isolation = "Nothing is touched"
no-close = "Nothing is opened"
tools = []
supplies = []
spares = []
wear = ["gloves"]
manual = "Operator's manual, section 4"
[part.hub-cap]
head = "none"
[[step]]
remove = "hub-cap"
`

// told are the findings of a family of rules on a procedure.
func told(text string, families ...string) []string {
	var out []string
	for _, found := range compiler.Compile(compiler.Input{Files: []*source.File{source.New("bad.toml", []byte(text))}}).Findings {
		family, _, _ := strings.Cut(found.Rule, "/")
		if slices.Contains(append(families, "language", "syntax"), family) {
			out = append(out, fmt.Sprintf("%s: %s", found.Rule, found.Summary))
		}
	}
	return out
}

// Words that only look like a fault raise nothing.
func TestHarmlessWordsStaySilent(t *testing.T) {
	step := func(words string) string { return lone + "[[step]]\nsay = " + strconv.Quote(words) + "\n" }
	for _, words := range []string{
		"Open and close the valve three times.", "Start and stop the engine twice.", "Raise and lower the head over its whole travel.",
		"Clean oil and grease off the rim.", "Remove dirt and grease from the fitting.", "Inspect the drain and fill plugs.", "Check the start and stop buttons.",
		"Run the pump and check the hose.", "Measure the gap and record it.", "Wipe the plug and the seat.", "Inspect the drain, fill and level plugs.",
		"Stop the engine and wait until the fan stands still.", "Check the bolts and mark on the shaft.", "Tighten the nut and washer together.",
		"Lay it flat. The old one is thrown away.", "When the oil is out, wipe the plug.", "If it weeps, renew the seal.", "On the left side, wipe the plug.",
		"Slowly turn the wheel.", "With both hands, lift the cover off.", "Starting at the top, clean the fins.", "Using the puller, draw the hub.",
		"A second person holds the bar.", "The same again on the other side until it is dry.", "Half a turn each while the wheel stands on the ground.",
		"Two people: one lifts, one guides.", "Bring the lever to 0.", "Swing the arm out.", "Do not turn it.", "Never stand below.", "No bar.",
		"Make sure the gap is 3 mm.", "Let whoever is near know.", "Bleeding screw: open it half a turn.", "Ask who must be told.", "Check that the plug is dry.",
		"Check if the plug weeps.", "See if it turns.", "Look whether and, if it is torn, renew it.", "Remove the cover if fitted.", "Pull as if it were glass.",
		"Look at the seal; if it is torn, renew it.", "Hold it even if it hums.", "The belt slips if oil gets on it.", "Push, and if it moves, chock it again.",
		"Stop when oil shows at the hole.", "Wait until the pump stops if this is the first fill, else go on.",
		"Grease it as required by the plate.", "Shim by 0.5 mm as needed.", "A properly seated ring shows no gap.", "Fill as needed for the grade.", "Set the gap as required in section 4.",
		"Secure the load with two straps.", "Adjust the screw until the pointer stands at 0.", "Secure it to the rail.", "Adjust the gap to the mark.", "Use a service cart.",
		"Should it leak, put the plug back.", "Turn it as it should be turned.", "Put it where it should stand.",
		"Replace the filter with a new one.", "If it is cracked, replace the hub cap.", "When the hub cap is worn, replace it.", "Replace the felt.", "Set the hub cap back in place.",
		"Torque the nuts to 40 to 48 N·m, then 90 to 92 N·m, then 120 to 124 N·m, then 150 to 154 N·m in a cross.",
		"Check hoses at: pump, valve block, cylinder. Check cables at: motor, panel, lamp. Look at each of them from both sides of the frame.",
		"- Wipe the plug\n- Wipe the seat under it\n- Wipe the edge of the cover\n- Wipe the lip of the pan and the tray below",
		"**Stop** the pump.", "Lift it (two people, one at each end, backs straight, knees bent, no rings, no loose sleeves, and nobody below) onto the bench.",
		"“Clear” is called before the lock comes off? No: call it twice.", "Étançons first.", "1. Wipe it.", "…", "?!",
		"Is it warm?", "Start and run the engine.", "Start at the top and clean the fins.", "Start with the left side and check the hose.", "Loosen, but do not remove, the four bolts.", "Press and hold the button for 5 s.",
		"Slacken the nuts and bolts on the left rail.", "Grease the pins and the bushes.", "Check that the pump runs and the light is on.", "Before removing the rod, clean the area around it.",
		"Turn the key on but do not start it.", "Never run it if the guard is off.", "Make sure it is tightened to 23 N·m.", "Clean the tubing and store in a safe place.", "Hook the spring in before the belt is tightened.",
		"All four tyres have the same pressure.", "Two screws hold the cover. Take both out.", "Pull up on the fuse to remove it from the socket.", "Take SAE, API, DIN Marked cans.", "PRESS START NOW please.", "Put it in the drum marked XXX-4.", "Type ... to go on.", "Press START, then STOP, then RESET.", "Turn Q11 to OFF and press LAMP TEST.", "Pour it into the drum marked USED OIL ONLY.",
		"Set SAE 80W-90 GL-5 oil out.", "Take DIN EN ISO 4762 screws.", "Repeat three times.", "Repeat on the other side.", "Repeat until dry.", "Repeat for each wheel.", "Repeat the last two steps twice.",
		"When it weeps, repeat.", "Climb step 3 of the ladder.", "Wipe it as in step 1.", "Do step 9 of the manual.", "Stand on the step 40 mm up.", "See step 2.", "Wipe plug and seat or rim.", "Jack it up. 50 mm is enough.",
	} {
		assert.Empty(t, told(step(words), "wording"), words)
	}
	for _, note := range []string{
		"Grease on the fitting draws grit.", "Drain plugs are magnetic.", "Check valves stick when cold.", "Start buttons are green.", "Clean oil is amber.", "Open valves hiss.",
		"Mark one stands for the left side.", "Never a drop came out of it.", "Close fits need heat.", "Run time is 4 h.", "Records stand in the office.", "Set screws are 5 mm.",
		"A properly set belt squeals for a second.", "Support bearings are greased for life.", "It should fog for a minute.", "The seal was replaced in 2024.", "Tighten means hand-tight here.",
	} {
		text := strings.Replace(step("Wipe the plug."), "say =", "notes = ["+strconv.Quote(note)+"]\nsay =", 1)
		assert.Empty(t, told(text, "wording"), note)
	}
	for _, seen := range []string{"no play", "a properly drawn thread with no gap at 3 mm", "it turns freely", "sufficient for 2 h", "the plug is dry", "dry if it was wiped", "in the green field"} {
		assert.Empty(t, told(lone+"[[step]]\ninspect = \"the oiler\"\nexpect = "+strconv.Quote(seen)+"\n", "wording"), seen)
	}
	for _, avoid := range []string{
		"Wear gloves.", "Keep clear.", "When it is hot, wait.", "Never reach in.", "Do not stand below.", "Both hands on the bar.", "Let nobody stand near; the load must be held.",
		"Two people lift it.", "Lock the switch. The key is in your pocket.", "Before you reach in, lock it.", "Stand aside while the line is under pressure.", "No flame within 3 m.",
	} {
		message := fmt.Sprintf("[[step.caution]]\nsignal = \"notice\"\nhazard = \"Open flame\"\nconsequence = \"Start of a fire. Stop buttons melt.\"\navoid = %q\n", avoid)
		assert.Empty(t, told(step("Wipe the plug.")+message, "wording"), avoid)
	}
}
