package trade

// substances are the hazards of what gets on the skin, in the eyes and in the lungs.
func substances() []Hazard {
	return []Hazard{
		{Key: "dust", Title: "harmful dust", Level: Warning,
			Words: []string{"asbestos", "brake|clutch lining*|shoe*|pad|pads|drum*|dust|plate*|disc*|disk* + " + work + "|blow*|scrap*|sand|sanding|brush*|wipe", "gasket* + scrap*|sand|sanding|grind*|wire", "dust & blow|blowing|sweep*|brush*|vacuum*", "blow|blowing & dust|chaff|soot",
				"sand|sanding & paint|lining*|filler|fibreglass|primer"},
			Hazard: "Harmful dust", Consequence: "can scar your lungs",
			Avoid: "Wet the dust or take it up with a fine-filter vacuum, and blow nothing clean. Wear a respirator.",
			Wear:  []string{"respirator", "eye-protection"}, Signs: []string{"W001"}, Source: "29 CFR 1910.1001", FromMemory: true},
		{Key: "solvent", Title: "solvents and cleaners", Level: Warning,
			Words:  []string{"brake|carb|carburettor|carburetor|contact|parts cleaner", "degreas*", "solvent*", "paint thinner*|stripper", "white|mineral spirit|spirits", "acetone|kerosene|isopropyl|thinners", "parts washer"},
			Hazard: "Solvent and its vapour", Consequence: "can burn, and can harm your lungs and skin",
			Avoid: "Work in fresh air, away from flame and hot parts. Wear the gloves that its safety data sheet names.",
			Wear:  []string{"gloves", "respirator"}, Signs: []string{"W021", "P003"}, Source: "safety data sheet, section 8 (29 CFR 1910.1200 App. D)", FromMemory: true},
		{Key: "used-oil", Title: "used oil on the skin", Level: Caution,
			Words:  []string{"oil|gearbox|sump|crankcase|gearcase|transmission|differential + drain|draining|drained|empty", "used|old|waste|dirty oil", "oil filter* + " + takeOff, "drain plug*|bolt* + " + off, "oil + change|changing|changed", "oil drain|drains|draining", "oil run|runs out|into|off|down"},
			Hazard: "Used oil on the skin", Consequence: "can harm your skin",
			Avoid: "Wear oil-proof gloves. Wash with soap, not with solvent.",
			Wear:  []string{"gloves"}, Signs: []string{"M011"}, Source: "common practice, no source", FromMemory: true},
		{Key: "spray", Title: "residues of sprayed chemicals", Level: Warning,
			Words:  []string{"pesticide*|herbicide*|insecticide*|fungicide*|weedkiller*", "sprayer* + " + work + "|rins*|flush*|drain*|empty|open|blow*", "spray|boom nozzle*|tank*|boom*|pump*|line* + " + work + "|rins*|flush*|drain*|empty|open|blow*"},
			Hazard: "Residue of sprayed chemicals", Consequence: "can poison you through skin and lungs",
			Avoid: "Rinse and drain before you open anything, and wear what the label asks for. Never blow a nozzle out by mouth.",
			Wear:  []string{"gloves", "face-shield", "apron"}, Signs: []string{"W016"}, Source: "directions on the label (US EPA rules)", FromMemory: true},
		{Key: "adhesive", Title: "adhesives on skin and eyes", Level: Caution,
			Words:  []string{"thread lock*|seal*|sealant", "threadlock*|threadseal*", "anaerobic*|epoxy|epoxies|superglue|cyanoacrylate", "super glue", "retaining|locking|bearing compound*|adhesive*", "adhesive* & appl*|drop*|bead|spread*|brush|put|coat"},
			Hazard: "Adhesive on the skin or in the eyes", Consequence: "can inflame skin and eyes and stick fingers together",
			Avoid: "Wear gloves and keep it off your face. Follow its safety data sheet.",
			Wear:  []string{"gloves", "eye-protection"}, Signs: []string{"W001"}, Source: "safety data sheet (29 CFR 1910.1200 App. D)", FromMemory: true},
		{Key: "noise", Title: "noise", Level: Caution,
			Words:  []string{"impact wrench*|gun*|driver*", "air hammer*|chisel*|ratchet*", "hammer drill*", "grinder*", "grind|grinding", "needle scaler*", "chipper|chainsaw|shredder|compressor|blower + run|running|start|starting", "full|wide throttle|open & engine|throttle|run", "cut off saw*|wheel*", "cutoff saw*|wheel*"},
			Hazard: "Loud noise", Consequence: "can damage your hearing for good",
			Avoid: "Wear ear protection, and see that people near you do too.",
			Wear:  []string{"ear-protection"}, Signs: []string{"W087"}, Source: "29 CFR 1910.95", FromMemory: true},
	}
}
