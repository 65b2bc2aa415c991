package trade

// Verbs that bring hands onto a thing. Looking, checking and measuring do not.
const (
	takeOff  = "remov*|replac*|renew*|swap*|exchang*|unwrap*|unwind*|disassembl*|dismount*|change|changing|changed|unbolt*|undo|undone|unscrew*|loosen*|slacken*|detach*|dismantl*|strip|stripping|take|pull|lift|withdraw*"
	putOn    = "refit*|fit|fitting|fitted|install*|tighten*|tension*|adjust*|align*|thread|mount*|rout*"
	tend     = "clean|cleaning|cleaned|clear|clearing|cleared|free|freed|greas*|lubricat*|sharpen*|unclog*|unjam*|unblock*|untangl*|dislodg*|cut|prise|pry|touch*|feel|feeling|reach*"
	work     = takeOff + "|" + putOn + "|" + tend
	off      = takeOff + "|open|opening|opened|unhook*|unlatch*"
	covered  = " ! guard*|cover*|case|shield*|lid"
	driven   = "|engag*|connect*|coupl*|hook|hooking|hitch*|attach*|run|running|start|starting|drive|driving"
	blades   = "blade|blades|knife|knives|cutterbar"
	spun     = "|turn|turning|rotate|rotating|spin|spinning"
	shelved  = " % off|from the|its|a wall|rack|shelf|hook|peg|drawer|box|cabinet|store|cupboard|toolbox|van|stock|packaging|wrapper"
	laid     = " % bench|bin|box|floor|shelf|table|list|scrap|rack|wall|pallet"
	cropped  = "hay|straw|crop|twine|string|grass|weeds|netting|wire|rope|branch*|twigs|stalks|chips|brushwood|debris|roots|vines"
	machines = "engine*|motor|motors|mower|machine*|tractor|chipper*|shredder*|saw|saws|mill|pump|pumps|compressor*|fan|fans|drum|rotor*|baler*|header|conveyor*|deck|auger*|grinder*|spindle*|chuck|lathe|generator*|pto|shaft*|blade|blades|knives|belt*|chain|chains|roller*|knotter*|drive|implement|harvester*|tiller|flywheel*|impeller*|it|everything"
	// braked tells that a rotor is the disc of a wheel brake.
	braked = " % pad|pads|caliper*|runout"
	// quiet stands where nobody's hands are near: what is listened to, read, kept away from or only timed.
	quiet = " % listen*|read|reading|gauge*|clear|away|warm|warms|minute|minutes|min|hour*|lamp|clock"
)

// moving are the hazards of parts that turn or draw in.
func moving() []Hazard {
	return []Hazard{
		{Key: "start", Title: "unexpected start", Level: Warning,
			Words: []string{"unclog*|unjam*|untangl*|unblock*|dislodg* % nozzle*|jet|jets|breather|vent|drain|sink", "clear|free|dig + jam|jams|jammed|clog|clogged|blockage*|blocked|plugged", "jam|jams|clog|blockage* + clear|clearing|free|remov*|pull|dig",
				blades + "|auger*|flail*|tines|impeller*|conveyor*|cutter + " + work + spun + "|torque" + covered + shelved, "rotor* + " + work + spun + "|torque" + covered + "|brake*|disc*|caliper*" + shelved + braked, "belt*|chain|chains|sprocket*|pulley*|driveline + " + work + "|roll|slide|slip|oil|oiling|spray|spraying" + covered + shelved,
				"belt*|chain|chains + put|putting & on|onto|over|round|around" + laid + covered, "flywheel*" + " + " + spun[1:] + covered, "pickup|pickups + " + tend + "|" + "unwrap*", "baler*|knotter*|harvester*|header|headers|spreader*|tiller* + " + work + " ! tank*|bolt*|hose*|pipe*|tyre*|cover*",
				cropped + " + clear|clearing|kick|kicking|pull|pulling|unwrap*|unwind*|remov*|cut|cutting|poke|push|dig|rake|free & pickup|header|reel|rotor*|shaft|shafts|auger*|baler|knotter*|infeed|spindle*|axle|blade*|drum|deck|roller*|chute|tines & off|from|out|of|clear|round|around",
				"inside|within|behind|through|past the|a|its guard|guards|guarding|fence|grille + reset*|" + work,
				"reach* in|into|inside % bin|drawer|bag|pocket", "hand|hands|arm + put|putting|stick"},
			Hazard: "Machine that may start or turn by itself", Consequence: "can cut, crush or draw in your hands",
			Avoid: "Stop the machine, cut off every source of energy and lock it. Try the start control before you reach in.",
			Signs: []string{"W018", "M021"}, Source: "29 CFR 1910.147; 16 CFR 1205"},
		{Key: "rotation", Title: "a mass that runs on", Level: Warning,
			Words: []string{"flywheel*|rotor* + " + work + spun + "|block*|stop|stopping|hold|holding" + covered + "|brake*|caliper*" + braked, "chipper|cutter|cutting drum|disc|disk|head|reel + " + work + "|block*|stop|stopping|hold|holding" + covered, blades + " + " + takeOff + "|block*|torque" + spun + "|" + tend + covered + shelved,
				"coast*|spin|spins|spinning|run|runs & down|standstill & stop|stops|stopped|blade*|rotor*|flywheel*|drum|cutter", "coast* down", "drum + turn|turning|rotate|rotating|block*|hold & knife|knives|blade*|chipper", "keeps turning|spinning|running",
				machines + " running|turning|rotating|spinning|revolving|idling & with|keep|keeping|leave|leaving|while|whilst" + quiet + " ! hours|the|it|a|an|by|on|clockwise|backwards",
				machines + " runs|turns|rotates|spins|revolves|idles & while|whilst" + quiet, machines + " is|are|still running|turning|rotating|spinning|revolving|idling & while|whilst" + quiet,
				"? do not stop the|your|its|this " + machines + " ! until|before|at|hot|suddenly|abruptly|from", "? don't|never|without stop|stopping the|your|its|this " + machines + " ! until|before|at|hot|suddenly|abruptly|from",
				"running|moving|rotating|spinning|revolving belt*|chain|chains|blade*|knives|roller*|drum|rotor*|shaft*|saw|cutter|spindle|chuck|engine|machine|fan + " + work + "|oil|oiling|spray|spraying|brush|wipe|adjust*" + quiet},
			Hazard: "Parts that turn, or run on after the stop", Consequence: "can cut off fingers or break bones", many: true,
			Avoid: "Keep hands, hair and cloth away, and wait until everything stands still. Block the rotor before you touch it.",
			Signs: []string{"W088"}, Source: "16 CFR 1205.5 (blade stop time); blocking is common practice, no source"},
		{Key: "shaft", Title: "a turning shaft that winds clothing up", Level: Danger,
			Words: []string{"pto|driveline*|driveshaft*|propshaft*|auger* + " + work + driven + "|slide|sliding|push" + covered, "drive|universal|propeller|cardan shaft*|joint* + " + work + driven + covered,
				"shaft*|driveline* & turning|rotating|spinning|revolving"},
			Hazard: "Turning shaft", Consequence: "will wind clothing in and kill or maim whoever wears it",
			Avoid: "Disengage the drive, stop what drives it, keep its key or lock and wait until the shaft stands still. Wear close-fitting clothing, no gloves.",
			Wear:  []string{"clothing"}, Signs: []string{"W025", "P028"}, Source: "29 CFR 1928.57"},
		{Key: "speed-mismatch", Title: "a shaft driven too fast", Level: Danger,
			Words:  []string{"pto|spline|splined|shaft adapter*|adaptor*|reducer*", "adapter*|adaptor* & spline|splined|pto", "540 & 1000 & pto|shaft|rpm|spline*|driveline"},
			Hazard: "Shaft driven faster than the machine is built for", Consequence: "will tear the machine apart and throw the pieces",
			Avoid: "Couple only a shaft that turns at the speed marked on the machine. Fit no adapter between different splines.",
			Signs: []string{"W001", "M002"}, Source: "ISO 500; tractor makers' manuals"},
		{Key: "pinch", Title: "pinch and nip points", Level: Warning,
			Words: []string{"belt*|chain|chains|sprocket*|pulley*|roller*|gears|gearwheel*|track|tracks + " + work + spun + "|roll|slide|slip|oil|oiling|spray|spraying" + covered + shelved,
				"belt*|chain|chains|track|tracks + put|putting & on|onto|over|round|around" + laid + covered, "pinch|nip point*"},
			Hazard: "Pinch points at belts, chains, gears and rollers", Consequence: "can crush or tear off fingers", many: true,
			Avoid: "Turn them by hand only with the drive cut off. Keep fingers and rags away from where they run in.",
			Signs: []string{"W024", "W025", "W089"}, Source: "29 CFR 1910.212", FromMemory: true},
		{Key: "guard", Title: "a guard that is off", Level: Warning,
			Words: []string{"guard*|shield*|interlock* + " + off + "|bypass*|defeat*|bridge|tie|swing", "belt|blade|chain|pto|drive|knife|safety cover*|case + " + off, "? without the|a|its|any guard|guards|shield|shields", "? without guard|guards|shield|shields",
				"guard|guards|shield|shields off", "guard|guards|shield|shields is|are|being|still off",
				"safety|limit|interlock|seat|door|guard|kill|deadman|stop switch*|interlock*|contact*|button + bridg*|bypass*|defeat*|tie|tying|overrid*|jumper|short|disabl*|wedge|wedging|tape|taping"},
			Hazard: "Guard that is off", Consequence: "can let hands and clothing into moving parts",
			Avoid: "Keep the drive locked while the guard is off. Refit the guard before the machine runs.",
			Signs: []string{"M027", "P015"}, Source: "29 CFR 1928.57; 29 CFR 1910.212(a), from memory"},
		{Key: "feed", Title: "feed rollers that pull in", Level: Danger,
			Words: []string{"infeed + " + work + "|open|opening", "feed roller*|wheel*|chute*|rolls + " + work + "|open|opening", "chipper*|shredder* + " + work + "|open|opening|feed|feeding",
				"hopper|chute + reach*", "log|logs|branch*|trunk*|timber|limb|limbs|stem|stems|slab|slabs + push|pushing|feed|feeding & through", "board|boards|wood through + push|pushing|feed|feeding"},
			Hazard: "Feed rollers and cutting drum", Consequence: "will pull in and crush whoever touches them", many: true,
			Avoid: "Lock out the drive and block the drum before you open or reach into the infeed.",
			Signs: []string{"W025", "M021", "M068", "P015"}, Source: "ANSI Z133, EN 13525", FromMemory: true},
	}
}
