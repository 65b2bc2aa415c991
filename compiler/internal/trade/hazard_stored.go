package trade

// stored are the hazards of energy that is stored: raised, pressed, tensed, charged.
func stored() []Hazard {
	const (
		frames = "machine|mower|tractor|deck|trailer|chipper|axle|wheels|header|loader|boom|bucket|implement|vehicle|truck|frame"
		raise  = " + jack*|lift|lifting|lifted|rais*|hoist*|tilt*|tip|tipping|prop ! cover*|lid|panel*|flap|door*|guard*|shield*|hood"
	)
	return []Hazard{
		{Key: "crushing", Title: "a raised machine that comes down", Level: Warning, Worst: Danger, WorstWhen: "someone goes under or between",
			Words: []string{frames + raise, "cutter|mower head|deck" + raise, "front|rear|infeed|outfeed|left|right of|wheel|end|side" + raise, "jack|jacks|jacking up|under", "jack|axle|rated stand*", "stands|blocks|cribbing & jack*|raised|lifted|lower|support*|rest|rests",
				"crawl*|lie|lying|reach*|work|working|go|going|get under|beneath|underneath & " + frames, "under|beneath|underneath & raised|jack*|hoist*|lifted|propped", "scissor|post|bench|vehicle lift & mower|tractor|machine|on|raise|up"},
			Hazard: "Raised machine that can come down", Consequence: "can crush you to death",
			Avoid: "Set rated stands on firm, level ground and chock the wheels. Keep out from under anything held by a jack alone.",
			Wear:  []string{"helmet"}, Signs: []string{"W015", "W019"}, Source: "29 CFR 1910.244(a)(2)(iii)"},
		{Key: "injection", Title: "fluid under high pressure", Level: Warning, Worst: Danger, WorstWhen: "the pressure is above about 20 MPa",
			Words: []string{"hydraulic* + " + off + "|disconnect*|crack|bleed*|connect*|uncoupl*|cap|reliev*|release|releasing|vent|venting", "hydraulic* & leak|leaks|leaking|pinhole*|burst", "pinhole leak*", "injector|injection pipe*|line*|pump*|nozzle* + " + off + "|disconnect*|crack|test|testing",
				"high pressure hose*|line*|pipe*|fitting*"},
			Hazard: "Fluid under high pressure", Consequence: "can pierce your skin and cost you the hand",
			Avoid: "Let the pressure out before you loosen a line, and look for leaks with card. Go to a hospital at once if fluid breaks the skin.",
			Wear:  []string{"eye-protection", "gloves"}, Signs: []string{"W001"}, Source: "Colorado State University Extension, bulletin on hydraulic hazards 05017"},
		{Key: "spring", Title: "a spring or a tension let go", Level: Warning,
			Words: []string{"spring|springs + " + off + "|compress*|stretch*|release*|releasing|hook|refit*|install*|tension*|unload*|wind|winding", "recoil|rewind starter*|spring* + " + work + "|open|opening", "torsion spring*|bar*", "gas strut*|spring* + " + work + "|disconnect*",
				"tensioner*|idler + " + off + "|release*|releasing|swing|swinging", "circlip* + " + takeOff + "|fit|fitting|prise|pry|spread*|compress*|install*", "snap ring* + " + takeOff + "|fit|fitting|prise|pry|spread*|compress*|install*"},
			Hazard: "Spring or part under tension", Consequence: "can fly out and blind you",
			Avoid: "Let the tension off, or hold the part captive, before you undo the last fastener.",
			Wear:  []string{"eye-protection", "face-shield"}, Signs: []string{"W001"}, Source: "29 CFR 1910.147(d)(5)"},
		{Key: "burst", Title: "a vessel or tyre that bursts", Level: Danger,
			Words: []string{"inflate|inflating|inflated|overinflat*", "tyre*|tire|tires|rim|rims|tube + " + takeOff + "|fit|fitting|mount*|demount*|pump|split|seat|air|fill", "bead*|beads + seat|seating|break|breaking|pop", "split rim*",
				"accumulator* + charg*|recharg*|" + off, "air receiver*|tank* + " + off + "|weld*", "pressure vessel* + " + off + "|weld*"},
			Hazard: "Tyre, rim or vessel under pressure", Consequence: "will burst if it is overfilled and kill whoever stands in front",
			Avoid: "Stand aside and fill through a clip-on chuck with a long hose. Stop at the marked pressure.",
			Wear:  []string{"eye-protection", "ear-protection"}, Signs: []string{"W029"}, Source: "29 CFR 1910.177", FromMemory: true},
		{Key: "load", Title: "a heavy part that falls or tips", Level: Warning,
			Words: []string{"hoist|hoisting|hoists|sling|slings|crane|gantry|shackle*", "lifting|engine hoist|eye|eyes|strap*|beam|gear|chain*|crane", "engine|gearbox|transmission|axle|rotor|drum|flywheel + lift|lifting|lower|lowering|carry|carrying",
				"heavy", "two people|persons|men & lift*|carry*|hold*|lower*|remov*", "<mass> & lift*|carry*|weigh*|lower*|hold*|remov*|heavy"},
			Hazard: "Heavy part that can fall or tip", Consequence: "can crush you",
			Avoid: "Lift with gear rated for the mass, and guide the part with a line or bar. Keep clear of the space below.",
			Wear:  []string{"helmet", "safety-shoes"}, Signs: []string{"W015"}, Source: "29 CFR 1910.184; NIOSH lifting equation, load constant 23 kg", FromMemory: true},
		{Key: "gas", Title: "gas charges", Level: Warning,
			Words: []string{"nitrogen", "refrigerant* + " + off + "|charg*|recharg*|recover*|vent", "gas strut*|spring* + cut|drill|open|weld*|charg*", "accumulator* + " + off + "|charg*|recharg*", "gas bottle*|cylinder* + " + off + "|connect*|chang*|move",
				"oxygen|acetylene|co2 + connect*|open|opening|charg*|vent|chang*"},
			Hazard: "Gas under pressure", Consequence: "can burst its vessel or throw parts",
			Avoid: "Charge with dry nitrogen only, never with oxygen or air. Keep the vessel closed until its charge is out.",
			Wear:  []string{"eye-protection"}, Signs: []string{"W029"}, Source: "common practice, no source", FromMemory: true},
	}
}
