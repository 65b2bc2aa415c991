package trade

// handling are the hazards of edges and tools in the hand.
func handling() []Hazard {
	return []Hazard{
		{Key: "edge", Title: "sharp edges", Level: Caution, Worst: Warning, WorstWhen: "it is a blade or knife of a machine",
			Words:  []string{"sharpen*|deburr*|hone|honing|whet*", blades + "|reel + " + work + "|turn|turning|torque|put|putting|balanc*|hone|carry|carrying|handl*|hold|file|filing ! guard*|cover*|case|shield*", "sharp", "razor|utility knife|blade|scraper", "burr|burrs + remov*|file|filing|touch*|take"},
			Hazard: "Sharp edges", Consequence: "can cut your hands", many: true,
			Avoid: "Wear cut-resistant gloves and clamp the blade. Keep your fingers off the edge, worn or new.",
			Wear:  []string{"cut-resistant-gloves", "eye-protection"}, Signs: []string{"W022"}, Source: "ANSI B71.4", FromMemory: true},
		{Key: "air", Title: "compressed air", Level: Warning,
			Words: []string{"compressed|shop air", "air gun*|nozzle*|blowgun*", "blow gun*|nozzle*", "blowgun*|airgun*", "airline* + " + off + "|connect*|disconnect*", "air line*|hose* + " + off + "|connect*|disconnect*|blow*", "blow|blowing out|off|clean|dry|through|down",
				"blow|blowing & out|clean|dry|air|off|through"},
			Hazard: "Compressed air", Consequence: "can drive chips into eyes and air into a cut",
			Avoid: "Keep the nozzle below 30 psi (2 bar) and away from people. Wear eye protection under a face shield.",
			Wear:  []string{"eye-protection", "face-shield"}, Signs: []string{"W001"}, Source: "29 CFR 1910.242(b)", FromMemory: true},
		{Key: "reaction", Title: "a tool that jerks or slips", Level: Caution,
			Words:  []string{"impact wrench*|gun*|driver*", "breaker|cheater bar*|pipe*", "pipe extension*", "torque multiplier*", "multiplier", "bar|pipe & snipe|cheater|leverage"},
			Hazard: "Tool that jerks or slips", Consequence: "can sprain your wrist or throw you off balance",
			Avoid: "Brace yourself, and pull instead of push. Put no pipe on a torque wrench.",
			Wear:  []string{"gloves"}, Signs: []string{"W001"}, Source: "common practice, no source", FromMemory: true},
	}
}
