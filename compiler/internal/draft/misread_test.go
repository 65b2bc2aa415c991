package draft

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Sentences that were once read wrong, by what is taken from them, what the draft says and what it
// asks: "!" stands before what must not be there.
var misread = []struct {
	notes                   string
	taken, written, queries []string
}{
	{notes: "It takes 1,4 litres.", taken: []string{"amount 1.4 L", "!amount 4 L"}},
	{notes: "Drain plug back in, 37,5 Nm.", taken: []string{"torque 37.5 N·m"}},
	{notes: "Valve clearance 0,3 to 0,5 mm.", taken: []string{"range 0.3 to 0.5 mm"}},
	{notes: "It weighs 3,5 kilo.", taken: []string{"amount 3.5 kg"}},
	{notes: "Washer 0,125 in, bolts M8x1,25.", taken: []string{"size M8x1.25"}},
	{notes: "Run it at 1,200 rpm.", taken: []string{"range 1200 rpm"}},
	{notes: "Gearbox oil, 1,4 litres. Tank holds 1,250 litres.", taken: []string{"amount 1.4 L", "!amount 1250 L", "!amount 1.25 L"}, queries: []string{"1,250"}},
	{notes: "Bring the 8,10 and 13 mm spanners.", taken: []string{"!size 8.10 mm"}},
	{notes: "Main switch off, my own padlock on it.\nFill with gear oil. Not the hydraulic oil.", taken: []string{"action isolate mains"}, written: []string{`isolate = "mains"`, "!hydraulics"}},
	{notes: "Turn the power off and fill it with gear oil, not the hydraulic oil.", written: []string{`isolate = "" # Which energy`, "[[prepare]]", "!hydraulic\""}, queries: []string{"Which energy"}},
	{notes: "Battery isolator off. Drain plug out.", written: []string{`isolate = "battery"`, `kind = "battery"`}},
	{notes: "Run the mill warm. Drain plug out, let it go ten to fifteen minutes.", taken: []string{"wait 10 to 15 min"}, written: []string{`wait = "10 to 15 min"`, "!least = \"10 to 15 min\""}},
	{notes: "Gearbox. Drain plug out. Let it run ten minutes.", taken: []string{"!action run machine"}, written: []string{`wait = "10 min"`, "!run ="}},
	{notes: "Engine. Drain plug back in, 30 Nm. Start it and let it run five minutes.", written: []string{`run = "the engine"`, `least = "5 min"`}},
	{notes: "Level plug in, twenty newton metres.\nGuard back on, twenty-four newton metres, the four of them.", written: []string{"[part.guard-bolt]", `torque = "24 N·m"`, `torque = "20 N·m"`, `tighten = "guard-bolt"`}},
	{notes: "Belt guard off, that's four M8 bolts. Level plug in, twenty newton metres. Mind the edge of the guard.\nGuard back on, twenty-four newton metres.", written: []string{`tighten = "belt-guard-bolt"`, `refit = "belt-guard"`, "!cover.guard]"}},
	{notes: "Level plug in, twenty newton metres. While it's off do the belt. If not slacken the four motor bolts, eighteen mil, shift the motor with the bar, and nip them up seventy-five newton metres.", written: []string{`tighten = "motor-bolt"`, `torque = "75 N·m"`, "count = 4"}},
	{notes: "Level plug in, twenty newton metres. Wipe it down. Then seventy-five newton metres.", written: []string{"!75 N·m\""}, queries: []string{"You said 75 N·m: which part"}},
	{notes: "If the belt's cracked swap it.", written: []string{"!loosen"}},
	{notes: "Gearbox oil.\nFive litre pan under, drain plug out. Comes out about one and a half litres, the book says one point four. Fill it with ISO VG 220.", taken: []string{"tool drain pan"}, written: []string{`holds = "5 L"`, `capacity = "" # You said 1.5 L and 1.4 L`, `into = "drain-pan"`, "!capacity = \"5 L"}, queries: []string{"1.5 L and 1.4 L for the gearbox"}},
	{notes: "Gearbox. Drain plug 35 Nm.\nFill it.\nDrain plug 60 Nm.", written: []string{`torque = "" # You said 35 N·m and 60 N·m for the drain plug`}, queries: []string{"which holds"}},
	{notes: "Gearbox. Drain plug 25 Nm, that's 18 foot pounds.", written: []string{`torque = "25 N·m"`}, queries: []string{"!which holds"}},
	{notes: "Pump head bolts, go across them, 20 Nm first and then 45 Nm.", written: []string{`torque = "45 N·m"`}, queries: []string{"!which holds"}},
	{notes: "Gearbox. Fill it.", written: []string{`fluid = "" # Which fluid goes into the gearbox`}, queries: []string{"Which fluid goes into the gearbox", "How much goes into the gearbox"}},
	{notes: "Fill the gearbox with ISO VG 220, 1 litre. Fill the crankcase with ISO VG 100, 2 litres.", written: []string{`kind = "gear-oil"`, `kind = "" # Which oil is the ISO VG 100`, "!hydraulic-oil"}, queries: []string{"ISO VG 100", "!ISO VG 220"}},
	{notes: "Gearbox: drain plug is a 17 mm hex. Takes 1.2 litres of EP 90. Let it drain ten minutes.\nFill it through the top plug.\nPump: check the oil in the sight glass, top up with SAE 30 if it's low. Change the diaphragms, there's three of them. Bolts are M10, 25 Nm.", taken: []string{"action fill pump"}, written: []string{`fill = "pump"`, `replace = "diaphragm"`, `tighten = "diaphragm-bolt"`}},
	{notes: "Wheels. Tires twenty-five psi.\nThen hook it up and run it with clean water at 20 bar.", written: []string{`limit = "25 psi"`, `set = "20 bar"`, `!limit = "20 bar"`}},
	{notes: "Take the belt off. Put the new belt on.", taken: []string{"action replace belt", "!action refit belt"}},
	{notes: "Mill. Drum runs on for a minute so give it that. Belt gives 8 to 12 mm.", written: []string{"(not written: wait 1 min (drum))"}},
	{notes: "Gearbox. Drain plug 35 Nm.", written: []string{"!not written"}},
	{notes: "Gearbox. Drain plug in, 35 Nm. Level plug in, 20 Nm, new washer, and the fill plug same as the drain.", taken: []string{"!action replace fill plug"}, written: []string{`tighten = "fill-plug"`}},
	{notes: "Torque the wheel nuts to one hundred and ten foot pounds, then again after fifty miles.", written: []string{`every = ""`, "(not written: interval 50 mi (wheel nut))"}},
	{notes: "Five litre pan under, drain plug out.", written: []string{`drain = "" # What is drained`, "!engine"}, queries: []string{"What is drained"}},
	{notes: "Jack it up under the axle, stands under, wheels off.", written: []string{`raise = "the machine"`, `support = "the machine"`}},
	{notes: "Zuerst Hauptschalter aus, dann Ablassschraube raus, 35 Newtonmeter.", queries: []string{"Only English is read"}},
	{notes: "Drain plug out, then the filter, and put it in the bin.", queries: []string{"!Only English"}},
	{notes: "Two pumps of grease in each bearing, there's two. Run it for a minute.", written: []string{"!the pump", `run = "the machine"`}},
	{notes: "Put the drain plug back.", written: []string{`refit = "drain-plug"`}},
	{notes: "Hydraulic lever both ways, then isolator off. Don't touch the air line.", written: []string{`isolate = "mains"`, "![energy.hydraulics]", "![energy.air]"}},
}

func TestMisread(t *testing.T) {
	for _, one := range misread {
		made, err := Of([]byte(one.notes))
		assert.NoError(t, err)
		var taken, queries []string
		for _, one := range made.Taken {
			taken = append(taken, one.Kind+" "+one.Value)
		}
		for _, q := range made.Questions() {
			queries = append(queries, q.Question)
		}
		for _, want := range one.taken {
			bare, not := strings.CutPrefix(want, "!")
			assert.Equal(t, !not, slices.Contains(taken, bare), "%q: %q of %q", one.notes, want, taken)
		}
		for text, wants := range map[string][]string{string(made.TOML): one.written, strings.Join(queries, "\n"): one.queries} {
			for _, want := range wants {
				bare, not := strings.CutPrefix(want, "!")
				assert.Equal(t, !not, strings.Contains(text, bare), "%q: %q in\n%s", one.notes, want, text)
			}
		}
	}
}
