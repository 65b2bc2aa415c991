package trade

// places are the hazards of where a job takes somebody: up, in, or into bad air.
func places() []Hazard {
	const (
		closed   = "tank|tanks|silo|silos|pit|pits|bin|bins|boiler*|manhole*|sewer*|hopper*|vat|vats|cistern*|duct|ducts|tanker*|bunker*|culvert*|cesspit|furnace*|vessel*|chimney*|digester*"
		indoor   = "indoors|shed|sheds|garage|barn|cellar|basement|building|workshop|hall|tent|greenhouse|glasshouse|pumphouse|hangar"
		high     = "roof|roofs|scaffold*|ladder*|stepladder*|mast|boom|gantry|catwalk|silo|tank|hopper|load|stack|bale|bales|bonnet|canopy|loft|rafters"
		entering = "crawl|crawling|climb|climbing|go|going|get|getting|step|stepping|lean|leaning|work|working|stand|standing|descend"
		outward  = " % out|outside|outdoors|drive|driving|tow|bring|stops|stands % to|from the"
		write    = " % list|log|book|sheet|number|reading|level|hours|name|date|value|form|table|card|screen|display|menu"
	)
	return []Hazard{
		{Key: "fall", Title: "a fall from height", Level: Warning,
			Words: []string{"ladder|ladders|stepladder* % away|back|van|store|rack|wall|hook|hooks ! frame|chassis|logic|diagram", "scaffold*", "cherry picker*", "aerial|work|lift|lifting|elevating platform*", "bucket truck*", "man basket|cage|lift", "boom lift",
				"climb|climbing|climbs on|onto|up|over|to % cab|seat|down|cabin", "climb|climbing the|a " + high, "get|getting|go|going|step|stepping|stand|standing|walk|walking|kneel|sit|work|working|clamber on|onto the|a|its " + high + " ! ratchet|rack|rails", "work|working|reach|reaching|hang from the|a|your roof*|scaffold*|ladder*|mast|gantry|catwalk|bonnet",
				"get|getting|go|going|step|stepping|stand|standing|walk|walking|kneel|sit|work|working|clamber|up on|onto top of", "get|getting|go|going|clamber on|onto|up the|a baler|trailer|harvester|header|machine|mill|deck|chipper", "work|working|works at height|heights", "fall|safety arrest|harness", "roof|gantry + climb|climbing|access|walk|cross|reach*"},
			Hazard: "Fall from height", Consequence: "can break your back or kill you",
			Avoid: "Stand on a firm platform with a rail, or tie yourself on. Come down to move a ladder.",
			Wear:  []string{"helmet", "safety-shoes"}, Signs: []string{"W008"}, Source: "29 CFR 1910 subpart D", FromMemory: true},
		{Key: "confined", Title: "a closed space with bad air", Level: Danger,
			Words: []string{closed + " + enter|entering" + write, entering + " into|inside|in the|a|an|this|that " + closed + write, entering + " into|inside|in the|a|an|this|that * " + closed + write, entering + " into|inside|in " + closed + write,
				entering + " down into|inside|in the|a|an " + closed, entering + " down into|inside|in the|a|an * " + closed, entering + " down the|a|an " + closed, "confined space*",
				"descend|lower & yourself|person|somebody|someone|man & " + closed, "slurry|manure|sewage pit|pits|tank|tanks|store|lagoon + empty|emptying|open|opening", "grain|corn|slurry|manure|silage|feed|sewage bin|bins|silo|silos|pit|pits|tank|tanks|store|lagoon + " + "clean|cleaning|clear|clearing|enter|entering|stir*|agitat*|mix|mixing|muck|sweep*|scrape|free|unblock*",
				"silo|silos|slurry + clean|cleaning|clear|clearing|sweep*|unblock*|stir*|agitat*"},
			Hazard: "Closed space with bad air", Consequence: "will choke or bury you before you can climb out",
			Avoid: "Stay out until it is locked off, aired and the air is measured. Go in on a lifeline, with somebody outside who watches.",
			Wear:  []string{"harness"}, Signs: []string{"W041", "M057"}, Source: "29 CFR 1910.146", FromMemory: true},
		{Key: "exhaust-gas", Title: "exhaust gas indoors", Level: Warning, Worst: Danger, WorstWhen: "doors and windows are shut",
			Words: []string{"engine*|tractor|mower|generator*|chainsaw*|petrol|diesel + run|running|start|starting|idle|idling|warm*|test & " + indoor + outward, "engine*|tractor|mower|generator*|chainsaw* run|runs|running|idles|idling|idle & " + indoor + outward,
				"carbon monoxide", "exhaust gas|gases|fumes ! temperature|recirculation|analys*|sensor*|cooler|valve|hose*"},
			Hazard: "Exhaust gas in a room", Consequence: "can make you faint and kill you unnoticed",
			Avoid: "Run the engine outdoors, or lead its exhaust out and open doors and vents. Go out at the first headache.",
			Signs: []string{"W016", "M057"}, Source: "common practice, no source", FromMemory: true},
	}
}
