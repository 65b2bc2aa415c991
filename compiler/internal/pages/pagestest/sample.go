// Package pagestest holds cards and lists for tests of pages and of what draws
// them. It must not be used outside tests.
package pagestest

import "benchleaf/compiler/internal/plan"

// Words are the English words; it panics when they cannot be read.
func Words() plan.Words {
	words, err := plan.LoadWords("en")
	if err != nil {
		panic(err)
	}
	return words
}

var (
	hotOil = plan.Caution{Signal: "caution", Word: "CAUTION", Hazard: "Hot gear oil", Consequence: "It can burn your hands.", Avoid: "Let the gearbox cool until you can hold a hand on it. Keep your face away from the plug.", Wear: []string{"Protective gloves", "Eye protection"}, Signs: []string{"W017"}}
	start  = plan.Caution{Signal: "danger", Word: "DANGER", Hazard: "Conveyor starts by itself", Consequence: "The chain will pull in and crush whoever is in reach.", Avoid: "Lock the isolator with your own lock and keep the key. Try the start button before you put a hand in.", Signs: []string{"W018"}}
)

// Card is the oil change of a worm gearbox: eighteen steps, five messages, two
// waits with work meanwhile.
func Card() plan.Card {
	return plan.Card{
		Words: Words(), Shop: "Harrow Lane Mill", Title: "Change the worm gearbox oil", Name: "log-deck-gearbox-oil",
		Machine: "Log-deck conveyor", Variant: "9 m, head drive", Revision: "C", Date: "2026-10-05", Author: "R. Aldous", Checked: "M. Brandvold",
		Summary: run("Drains the worn-in oil with its bronze dust while it is warm, cleans the breather, and fills synthetic oil to the sight glass."),
		Facts: []plan.Fact{{Label: "Who", Text: "Mechanic trained on lock-out"}, {Label: "People", Text: "1"}, {Label: "Hands-on", Text: "35 min"},
			{Label: "Elapsed", Text: "1 h 15 min"}, {Label: "Every", Text: "2000 h or 12 months, first at 300 h"}},
		Start:    []string{"The deck is empty of logs. The conveyor has run within the last hour, so the oil is warm."},
		End:      []string{"Guard on, lock off, no drip at either plug after five minutes of running."},
		Cautions: inFront(),
		Isolations: []plan.Isolation{
			{Energy: "Mains 400 V", How: "Isolator Q7 on the head post to OFF, own lock and tag", Prove: "Press START: nothing moves. Tester at the motor terminals: dead on all three phases"},
			{Energy: "Chain load", How: "Run the deck empty; set the chain stop at the head shaft", Prove: "Pull the chain by hand: it does not run back"},
		},
		Wear: []plan.Item{{Name: "Eye protection"}, {Name: "Protective gloves", Note: "nitrile, for used oil"}, {Name: "Safety footwear"}},
		Tools: []plan.Item{
			{Name: "Torque wrench 20 to 100 N·m, 1/2 in"}, {Name: "Socket 24 mm, 1/2 in", Note: "drain and fill plug"},
			{Name: "Spanner 13 mm", Note: "guard bolts", StandIns: []string{"socket 13 mm"}}, {Name: "Hex key 10 mm", Note: "breather"},
			{Name: "Drain pan, 5 L or more"}, {Name: "Funnel with sieve"}, {Name: "Lock and tag"}, {Name: "Voltage tester"},
		},
		Supplies: []plan.Item{{Name: "Gear oil PAG ISO VG 460", Quantity: "1.1 L", Note: "never mixed with mineral oil"}, {Name: "Cleaner, solvent-free", Quantity: "0.2 L"}, {Name: "Lint-free rags", Quantity: "4"}},
		Spares:   []plan.Item{{Name: "Sealing ring 22 × 27 mm, copper", Quantity: "2"}, {Name: "Breather filter", Quantity: "1"}},
		Map:      Drawing(),
		Sections: []plan.Section{makeSafe(), work(), closeUp()},
		Blanks: []plan.Blank{{Label: "Oil drained", Unit: "L", Limit: "0.9 to 1.2 L", Low: "0.9", High: "1.2"}, {Label: "Chain slack", Unit: "mm", Limit: "20 to 30 mm", Low: "20", High: "30"},
			{Label: "Housing temperature", Unit: "°C", Limit: "80 °C or less", High: "80"}, {Label: "Hour meter", Unit: "h", Of: plan.Meter}, {Label: "Date", Of: plan.Day}, {Label: "Initials", Of: plan.Worker}},
		Manual: "Log-deck conveyor, operator's manual, section 6.2, page 41",
	}
}

// inFront are the messages with the steps at which some of them stand again.
func inFront() []plan.Caution {
	out := messages()
	out[0].Steps, out[1].Steps, out[3].Steps = []int{8}, []int{14}, []int{2}
	return out
}

func messages() []plan.Caution {
	return []plan.Caution{hotOil,
		{Signal: "notice", Word: "NOTICE", Hazard: "Oils that do not mix", Consequence: "Polyglycol and mineral oil turn to sludge and ruin the worm wheel.", Avoid: "Fill only what this card names."},
		{Signal: "warning", Word: "WARNING", Hazard: "Chain runs back under load", Consequence: "It could cut off fingers.", Avoid: "Empty the deck and set the chain stop before the guard comes off."},
		start,
		{Signal: "caution", Word: "CAUTION", Hazard: "Used oil on the skin", Consequence: "It could cause a rash that stays.", Avoid: "Wear gloves. Wash with soap, not with solvent."},
	}
}

func run(text string) []plan.Run { return []plan.Run{{Text: text}} }

// act makes the sentence of an action, its verb in bold.
func act(verb, rest string) []plan.Run {
	return []plan.Run{{Text: verb, Bold: true}, {Text: " " + rest}}
}

func makeSafe() plan.Section {
	return plan.Section{Title: "Make safe", Steps: []plan.Step{
		{Number: 1, Action: act("Run", "the conveyor empty."), Values: []plan.Value{{Label: "Time", Text: "10 min"}}, Details: []string{"until the deck is clear and the housing is hand-warm"}},
		{Number: 2, Cautions: []plan.Caution{start}, Action: act("Isolate", "the mains at Q7."), Say: []plan.Block{{Runs: run("Own lock, own tag, key in your pocket.")}}},
		{Number: 3, Action: act("Prove", "the mains dead."), Details: []string{"START pressed: nothing moves", "tester: 0 V between all three phases"}},
		{Number: 4, Action: act("Support", "the chain with the stop at the head shaft."), Notes: []string{"The stop is the red lever; it drops into the third tooth."}},
	}}
}

func work() plan.Section {
	return plan.Section{Title: "Work", Steps: []plan.Step{
		{Number: 5, Stage: "Open and drain", Action: act("Remove", "the chain guard."), Details: []string{"4 bolts M8, spanner 13 mm", "bolts go into the tray"}},
		{Number: 6, Action: act("Clean", "around the fill plug, the drain plug and the breather.")},
		{Number: 7, Action: act("Remove", "the fill plug."), Details: []string{"24 mm hex", "lets air in behind the oil"}},
		{Number: 8, Cautions: []plan.Caution{hotOil}, Action: act("Remove", "the drain plug and let the oil run into the pan."), Values: []plan.Value{{Label: "Amount", Text: "about 1.1 L", Also: "37 US fl oz"}}, Details: []string{"24 mm hex", "pan of 5 L below"}, Picture: Picture()},
		{Number: 9, Wait: true, Seconds: 900, Action: act("Wait", "until the last thread of oil breaks into drops."), Values: []plan.Value{{Label: "Time", Text: "15 to 20 min"}}},
		{Number: 10, Meanwhile: true, Action: act("Replace", "the breather filter."), Values: []plan.Value{{Label: "Torque", Text: "8 to 10 N·m", Also: "71 to 88 lbf·in"}}, Details: []string{"hex key 10 mm"}},
		{Number: 11, Meanwhile: true, Action: act("Measure", "the chain slack at mid span."), Readings: []plan.Blank{{Label: "Chain slack", Unit: "mm", Limit: "20 to 30 mm", Low: "20", High: "30"}}, Otherwise: plan.Fact{Label: "Outside the limit", Text: "Set the chain by its own card before the conveyor runs again."}},
		{Number: 12, Meanwhile: true, Action: act("Inspect", "the drained oil against the light."), Say: []plan.Block{{Bullet: "•", Runs: run("Bronze shimmer is normal wear.")}, {Bullet: "•", Runs: run("Flakes you can feel, or milky oil: tell the foreman before filling.")}}},
		{Number: 13, Stage: "Close and fill", Action: act("Refit", "the drain plug with a new sealing ring."), Values: []plan.Value{{Label: "Torque", Text: "42 to 48 N·m", Also: "31 to 35 lbf·ft"}}, Details: []string{"M22 × 1.5, 24 mm hex", "thread clean and dry"}},
		{Number: 14, Cautions: []plan.Caution{messages()[1]}, Action: act("Fill", "the gearbox with PAG ISO VG 460."), Values: []plan.Value{{Label: "Amount", Text: "1.1 L", Also: "37 US fl oz"}}, Say: []plan.Block{{Runs: run("Pour slowly through the sieve. The level stands at the middle of the sight glass.")}}, Level: Level()},
		{Number: 15, Action: act("Refit", "the fill plug with a new sealing ring."), Values: []plan.Value{{Label: "Torque", Text: "42 to 48 N·m", Also: "31 to 35 lbf·ft"}}, Details: []string{"24 mm hex"}},
	}}
}

func closeUp() plan.Section {
	return plan.Section{Title: "Close up and test", Steps: []plan.Step{
		{Number: 16, Action: act("Refit", "the chain guard."), Values: []plan.Value{{Label: "Torque", Text: "23 to 27 N·m"}, {Label: "Set", Text: "gap 10 ± 2 mm"}}, Details: []string{"4 bolts M8-8.8 crosswise", "13 mm"}, Circle: []int{1, 3, 2, 4}, Passes: []plan.Pass{{Share: 50, Text: "11.5 to 13.5 N·m"}, {Share: 100, Text: "23 to 27 N·m"}}},
		{Number: 17, Cautions: []plan.Caution{{Signal: "warning", Word: "WARNING", Hazard: "People in reach of the chain", Consequence: "They could be drawn in.", Avoid: "Look, call “clear”, and wait for the answer."}}, Action: act("Restore", "the mains and start the conveyor.")},
		{Number: 18, Seconds: 300, Action: act("Check", "both plugs and the housing after running."), Values: []plan.Value{{Label: "Time", Text: "5 min"}}, Readings: []plan.Blank{{Label: "Housing temperature", Unit: "°C", Limit: "80 °C or less", High: "80"}}, Otherwise: plan.Fact{Label: "Outside the limit", Text: "Stop, isolate, and look at the oil level again."}},
	}}
}

// RecordSheet is a sheet with a reading of each kind, and one with much to say.
func RecordSheet() plan.RecordSheet {
	card := Card()
	return plan.RecordSheet{Words: card.Words, Shop: card.Shop, Title: card.Title, Machine: card.Machine, Variant: card.Variant, Revision: card.Revision,
		Date: card.Date, Author: card.Author, Manual: card.Manual, Rows: []plan.RecordRow{
			{Blank: plan.Blank{Label: "Hour meter", Unit: "h"}},
			{Step: 11, Blank: plan.Blank{Label: "Chain slack", Unit: "mm", Limit: "20 to 30 mm"}, Outside: "Set the chain by its own card before the conveyor runs again."},
			{Step: 23, Blank: plan.Blank{Label: "Temperature of the housing over the worm, at its hottest", Unit: "°C", Limit: "80 °C or less"}, Outside: "Stop, isolate, look at the oil level again, and keep a sample of the oil for the foreman before anything is filled or opened."},
		}}
}

// WallChart is a chart with rows of each kind.
func WallChart() plan.WallChart {
	card := Card()
	machine := Drawing()
	machine.Callouts = []plan.Callout{{Spot: plan.Spot{X: 6, Y: 15}, Number: 1, Marks: []bool{true, false, false}}}
	return plan.WallChart{Map: machine, Words: card.Words, Shop: card.Shop, Machine: card.Machine, Manual: card.Manual, Date: card.Date, Columns: []string{"50 h", "10000 km (6210 mi)", "12 months"},
		Jobs: []plan.ChartRow{
			{Name: "Change the worm gearbox oil", Note: "First at 300 h", Marks: []bool{false, true, true}},
			{Name: "Look over the conveyor", Note: "Or when the chain climbs on the head sprocket and nobody has set it for a season", Marks: []bool{true, false, false}},
		},
		Points: []plan.ChartRow{{Name: "2 × tail bearings", Note: "Lithium grease · 4 strokes", Marks: []bool{true, false, false}, Number: 1}}}
}

// Gauge is a page of true sizes with widths small and large.
func Gauge() plan.Gauge {
	return plan.Gauge{Words: Card().Words, Shop: "Harrow Lane Mill", Widths: []plan.Width{{Label: "8 mm", MM: 8}, {Label: "13 mm", MM: 13}, {Label: "36 mm", MM: 36}, {Label: "1/2 in", MM: 12.7}}}
}
