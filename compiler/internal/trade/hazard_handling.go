package trade

// handling are the hazards of edges and tools in the hand.
func handling() []Hazard {
	return []Hazard{
		{Key: "edge", Title: "sharp edges", Level: Caution, Worst: Warning, WorstWhen: "it is a blade or knife of a machine",
			Words:  []string{"sharpen*|deburr*|hone|honing|whet|whetting ! barrel*|bore*|cylinder*|liner*", blades + "|reel + " + work + "|turn|turning|torque|put|putting|balanc*|hone|carry|carrying|handl*|hold|file|filing ! guard*|cover*|case|shield*", "sharp", "razor|utility knife|blade|scraper", "chainsaw chain|chains + file|filing|handl*|take|put|hang|fit|fitting|" + takeOff, "burr|burrs + remov*|file|filing|touch*|take"},
			Hazard: "Sharp edges", Consequence: "can cut your hands", many: true,
			Avoid: "Wear cut-resistant gloves and clamp the blade. Keep your fingers off the edge, worn or new.",
			Wear:  []string{"cut-resistant-gloves", "eye-protection"}, Signs: []string{"W022"}, Source: "ANSI B71.4", FromMemory: true},
		{Key: "air", Title: "compressed air", Level: Warning,
			Words: []string{"compressed|shop air", "air gun*|nozzle*|blowgun*", "blow gun*|nozzle*", "blowgun*|airgun*", "airline* + " + off + "|connect*|disconnect*", "air line*|hose* + " + off + "|connect*|disconnect*|blow*", "blow|blowing out|off|clean|dry|through|down",
				"blow|blowing & out|clean|dry|air|off|through"},
			Hazard: "Compressed air", Consequence: "can drive chips into eyes and air into a cut",
			Avoid: "Keep the nozzle below 30 psi (2 bar) and away from people. Wear eye protection under a face shield.",
			Wear:  []string{"eye-protection", "face-shield"}, Signs: []string{"W001"}, Source: "29 CFR 1910.242(b)", FromMemory: true},
		{Key: "chips", Title: "chips and pieces that fly", Level: Warning,
			Words: []string{"~ hammer|hammering|hammered the|it|them|a|an|out|in|off|on|down|against|at|both|each", "~ chisel|chiselling|chiseling|chiselled off|out|through|away", "~ drill|drilling|drilled a|an|it|them|out|through|two|three|four|six|eight|hole|holes", "~ drill|drilling the % drill bit|press",
				"pin|pins|bearing*|race|races|bush|bushing*|stud|studs|rivet* + knock*|drive|driving|hammer*|chisel* % soft|plastic|rubber|nylon|hand", "bearing*|bush|bushing*|race|races|sleeve* + press|pressing & off|out|on|onto|in|into|press % hand|thumb*|finger*|button|key", "gear|gears|pulley*|hub + press|pressing & off|out|on|onto|in|into % hand|thumb*|finger*|button|key|midway|between|span|strand|belt*", "gear|gears|pulley*|hub + press|pressing & the|a|arbor|hydraulic press"},
			Hazard: "Chips and pieces that fly", Consequence: "can blind you", many: true,
			Avoid: "Wear eye protection, and let nobody stand in line. Strike with a soft drift, not with steel on hardened steel.",
			Wear:  []string{"eye-protection"}, Signs: []string{"W001"}, Source: "29 CFR 1910.133", FromMemory: true},
		{Key: "reaction", Title: "a tool that jerks or slips", Level: Caution,
			Words:  []string{"impact wrench*|gun*|driver*", "breaker|cheater bar*|pipe*", "pipe extension*", "torque multiplier*", "multiplier", "bar|pipe & snipe|cheater|leverage"},
			Hazard: "Tool that jerks or slips", Consequence: "can sprain your wrist or throw you off balance",
			Avoid: "Brace yourself, and pull instead of push. Put no pipe on a torque wrench.",
			Wear:  []string{"gloves"}, Signs: []string{"W001"}, Source: "common practice, no source", FromMemory: true},
	}
}
