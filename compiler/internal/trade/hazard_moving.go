package trade

// Verbs that bring hands onto a thing. Looking, checking and measuring do not.
const (
	takeOff = "remov*|replac*|change|changing|changed|unbolt*|undo|undone|unscrew*|loosen*|slacken*|detach*|dismantl*|strip|stripping|take|pull|lift|withdraw*"
	putOn   = "refit*|fit|fitting|fitted|install*|tighten*|tension*|adjust*|align*|thread|mount*|rout*"
	tend    = "clean|cleaning|cleaned|clear|clearing|cleared|free|freed|greas*|lubricat*|sharpen*|unclog*|unjam*|untangl*|cut|prise|pry|touch*|reach*"
	work    = takeOff + "|" + putOn + "|" + tend
	off     = takeOff + "|open|opening|opened|unhook*|unlatch*"
	covered = " ! guard*|cover*|case|shield*|lid"
	blades  = "blade|blades|knife|knives|cutterbar"
)

// moving are the hazards of parts that turn or draw in.
func moving() []Hazard {
	return []Hazard{
		{Key: "start", Title: "unexpected start", Level: Warning,
			Words: []string{"unclog*|unjam*|untangl*", "clear|free|dig + jam|jams|jammed|clog|clogged|blockage*|blocked|plugged", "jam|jams|clog|blockage* + clear|clearing|free|remov*|pull|dig",
				blades + "|auger*|rotor*|flail*|tines|impeller*|conveyor*|cutter + " + work + "|turn|turning|torque|spin" + covered, "belt*|chain|chains|sprocket*|pulley*|driveline + " + work + "|roll|slide|slip|oil|oiling" + covered,
				"reach* in|into|inside", "hand|hands|arm + put|putting|stick"},
			Hazard: "Machine that may start or turn by itself", Consequence: "can cut, crush or draw in your hands",
			Avoid: "Stop the machine, cut off every source of energy and lock it. Try the start control before you reach in.",
			Signs: []string{"W018", "M021"}, Source: "29 CFR 1910.147; 16 CFR 1205"},
		{Key: "rotation", Title: "a mass that runs on", Level: Warning,
			Words: []string{"flywheel*|rotor* + " + work + "|block*|stop|stopping|hold|holding" + covered, "chipper|cutter|cutting drum|disc|disk|head|reel + " + work + "|block*|stop|stopping|hold|holding" + covered, blades + " + " + takeOff + "|block*|turn|turning|torque|spin|" + tend + covered,
				"coast*|spin|spins|spinning|run|runs & down|standstill & stop|stops|stopped|blade*|rotor*|flywheel*|drum|cutter", "coast* down", "drum + turn|turning|block*|hold & knife|knives|blade*|chipper", "keeps turning|spinning|running"},
			Hazard: "Parts that run on after the stop", Consequence: "can cut off fingers or break bones", many: true,
			Avoid: "Wait until everything stands still. Block the rotor before you touch it.",
			Signs: []string{"W088"}, Source: "16 CFR 1205.5 (blade stop time); blocking is common practice, no source"},
		{Key: "shaft", Title: "a turning shaft that winds clothing up", Level: Danger,
			Words: []string{"pto|driveline*|driveshaft*|propshaft*|auger* + " + work + "|slide|sliding|push|engag*|connect*|coupl*|run|running|start|starting" + covered, "drive|universal|propeller shaft*|joint* + " + work + "|engag*|connect*|coupl*|run|running|start|starting" + covered,
				"shaft*|driveline* & turning|rotating|spinning|revolving"},
			Hazard: "Turning shaft", Consequence: "will wind clothing in and kill or maim whoever wears it",
			Avoid: "Disengage the drive, stop the engine, take the key and wait until the shaft stands still. Wear close-fitting clothing, no gloves.",
			Wear:  []string{"clothing"}, Signs: []string{"W001", "W018", "P028"}, Source: "29 CFR 1928.57"},
		{Key: "speed-mismatch", Title: "a shaft driven too fast", Level: Danger,
			Words:  []string{"pto|spline|splined|shaft adapter*|adaptor*|reducer*", "adapter*|adaptor* & spline|splined|pto", "540 & 1000 & pto|shaft|rpm|spline*|driveline"},
			Hazard: "Shaft driven faster than the machine is built for", Consequence: "will tear the machine apart and throw the pieces",
			Avoid: "Couple only a shaft that turns at the speed marked on the machine. Fit no adapter between different splines.",
			Signs: []string{"W001", "M002"}, Source: "ISO 500; tractor makers' manuals"},
		{Key: "pinch", Title: "pinch and nip points", Level: Warning,
			Words:  []string{"belt*|chain|chains|sprocket*|pulley*|roller*|gears|gearwheel*|track|tracks + " + work + "|turn|turning|rotate|rotating|roll|slide|slip|oil|oiling" + covered, "pinch|nip point*"},
			Hazard: "Pinch points at belts, chains, gears and rollers", Consequence: "can crush or tear off fingers", many: true,
			Avoid: "Turn them by hand only with the drive cut off. Keep fingers and rags away from where they run in.",
			Signs: []string{"W024", "W025", "W089"}, Source: "29 CFR 1910.212", FromMemory: true},
		{Key: "guard", Title: "a guard that is off", Level: Warning,
			Words: []string{"guard*|shield*|interlock* + " + off + "|bypass*|defeat*|bridge|tie|swing", "belt|blade|chain|pto|drive|knife|safety cover*|case + " + off, "without the guard*|shield*", "without guard*|shield*",
				"guard*|shield* & off"},
			Hazard: "Guard that is off", Consequence: "can let hands and clothing into moving parts",
			Avoid: "Keep the drive locked while the guard is off. Refit the guard before the machine runs.",
			Signs: []string{"M027", "P015"}, Source: "29 CFR 1928.57; 29 CFR 1910.212(a), from memory"},
		{Key: "feed", Title: "feed rollers that pull in", Level: Danger,
			Words: []string{"infeed + " + work + "|open|opening", "feed roller*|wheel*|chute*|rolls + " + work + "|open|opening", "chipper*|shredder* + " + work + "|open|opening|feed|feeding",
				"hopper|chute + reach*"},
			Hazard: "Feed rollers and cutting drum", Consequence: "will pull in and crush whoever touches them", many: true,
			Avoid: "Lock out the drive and block the drum before you open or reach into the infeed.",
			Signs: []string{"W025", "M021", "M068", "P015"}, Source: "ANSI Z133, EN 13525", FromMemory: true},
	}
}
