package trade

// stored are the hazards of energy that is stored: raised, pressed, tensed, charged.
func stored() []Hazard {
	const (
		frames  = "machine|mower|tractor|deck|trailer|chipper|axle|wheels|header|loader|boom|bucket|implement|vehicle|truck|frame|cab|cabin|baler"
		cooled  = "|charg*|recharg*|recover*|vent|venting|purg*|drain|draining|evacuat*|disconnect*|top"
		emptied = "|weld*|drain|draining|vent|venting|bleed*|empty*|blow|blowing|reliev*"
		letOut  = "|disconnect*|crack|bleed*|uncoupl*|reliev*|release|releasing|vent|venting"
		raise   = " + jack*|lift|lifting|lifted|rais*|hoist*|tilt*|tip|tipping|prop ! cover*|lid|panel*|flap|door*|guard*|shield*|hood"
	)
	return []Hazard{
		{Key: "crushing", Title: "a raised machine that comes down", Level: Warning, Worst: Danger, WorstWhen: "someone goes under or between",
			Words: []string{frames + raise, "cutter|mower head|deck" + raise, "front|rear|infeed|outfeed|left|right of|wheel|end|side" + raise, "jack|jacks|jacking up|under", "jack|jacks & lift|lifting|rais*|lower*|under ! bolt*|screw*|plug|socket|shaft|nut|stand|stands", "bucket|loader|boom|header|forks|implement|jib|mast|tailgate|grab|grapple + lower|lowering|lowered|drop|dropping", "cab|cabin + tilt*|tip|tipping|rais*",
				"turn|turning|roll|rolling|flip|flipping over the|a|your " + frames, "turn|turning|roll|rolling|flip|flipping the|a|your " + frames + " over|upside ! to|at", "tractor + split|splitting", "ramp|ramps + drive|driving|reverse|reversing|roll|rolling|winch*", "drive|driving|reverse|reversing on|onto|up & ramp|ramps",
				"jack|axle|rated stand*", "stands|blocks|cribbing & jack*|raised|lifted|lower|support*|rest|rests",
				"crawl*|lie|lying|reach*|work|working|go|going|get under|beneath|underneath & " + frames, "under|beneath|underneath & " + frames + " + crawl*|lie|lying|kneel*|work|working", "under|beneath|underneath & raised|jack*|hoist*|lifted|propped", "scissor|post|bench|vehicle lift & mower|tractor|machine|on|raise|up"},
			Hazard: "Raised machine that can come down", Consequence: "can crush you to death",
			Avoid: "Set rated stands on firm, level ground, and chock whatever can roll. Keep out from under anything held by a jack or a hoist alone.",
			Signs: []string{"W015", "W019"}, Source: "29 CFR 1910.244(a)(2)(iii)"},
		{Key: "injection", Title: "fluid under high pressure", Level: Warning, Worst: Danger, WorstWhen: "the pressure is above about 20 MPa",
			Words: []string{"hydraulic* + " + off + "|disconnect*|crack|bleed*|connect*|uncoupl*|cap|reliev*|release|releasing|vent|venting", "hydraulic* & leak|leaks|leaking|pinhole*|burst", "pinhole leak*", "injector|injection pipe*|line*|pump*|nozzle*|union*|nut|nuts|rail + " + off + "|disconnect*|crack|test|testing|bleed*",
				"injector|injectors + " + off + "|crack|test|testing|bleed*", "injector|injectors & spray|pop|pattern", "ram|rams|lift|loader|boom|grab|steering|tipping|tipper|clamp hose*|line|lines|pipe*|union*|fitting* + " + off + letOut,
				"hose*|pipe*|line|lines|union*|fitting*|port|ports + " + off + letOut + " & ram|rams", "hose*|pipe*|line|lines|union*|fitting*|port|ports + " + off + letOut + " & cylinder|cylinders % gas|air|pneumatic|brake|clutch|master|wheel|engine|oxygen|acetylene", "hose*|pipe*|line|lines|union*|fitting*|port|ports + " + off + letOut + " & loader|tipping|steering valve*|circuit*|pump", "lift|loader|steering|ram|boom|tipping|tipper circuit*|ram|rams|system + bleed*|reliev*|open|vent|venting", "feel|feeling & hose*|line|lines|pipe*|fitting*|union* & leak*|along|drip*|oil|hydraulic* % no",
				"hydraulic*|system|relief|pump pressure & port|ports|test|testing", "test port*|point* & pressure|hydraulic*|gauge|hose*", "track adjuster*|adjustment|tensioner* + " + off + letOut + "|adjust*|slack*|grease", "grease cylinder*|valve* & track|tracks|adjuster", "relief valve* + " + off + "|adjust*|set|setting|back|backing|screw|turn|turning",
				"high pressure water|washer*|cleaner*|jet*", "pressure|power|jet|steam washer*|wash|washing|cleaner*|lance", "water jet|lance",
				"high pressure hose*|line*|pipe*|fitting*"},
			Hazard: "Fluid under high pressure", Consequence: "can pierce your skin and cost you the hand",
			Avoid: "Let the pressure out before you loosen a line, and look for leaks with card. Go to a hospital at once if fluid breaks the skin.",
			Wear:  []string{"eye-protection", "gloves"}, Signs: []string{"W001"}, Source: "Colorado State University Extension, bulletin on hydraulic hazards 05017"},
		{Key: "spring", Title: "a spring or a tension let go", Level: Warning,
			Words: []string{"spring|springs|mainspring* + " + off + "|adjust*|reliev*|uncoil*|let|compress*|stretch*|release*|releasing|hook|refit*|install*|tension*|unload*|wind|winding", "recoil|rewind starter*|spring* + " + work + "|open|opening", "torsion spring*|bar*", "? spring|springs fly|flies|jump|jumps|whip|snap|shoot", "strut|struts|coilover*|damper* & apart|dismantl*|disassembl*|spring*", "shock absorber*|strut* & apart|dismantl*|disassembl*|compress*|spring*", "leaf spring*|pack + " + off + "|fit|fitting", "gas strut*|spring* + " + work + "|disconnect*",
				"tensioner*|pretensioner* + " + off + "|release*|releasing|swing|swinging", "idler + " + off + "|release*|releasing|swing|swinging ! bolt*|nut|nuts|screw*", "idler bolt*|nut|nuts|screw* & spring|loaded|tensioner*|tensioned + " + off, "idler bolt*|nut|nuts|screw* & slacken* the belt*|chain*", "circlip* + " + takeOff + "|fit|fitting|prise|pry|spread*|compress*|install*", "snap ring* + " + takeOff + "|fit|fitting|prise|pry|spread*|compress*|install*"},
			Hazard: "Spring or part under tension", Consequence: "can fly out and blind you",
			Avoid: "Let the tension off, or hold the part captive, before you undo the last fastener.",
			Wear:  []string{"eye-protection", "face-shield"}, Signs: []string{"W001"}, Source: "29 CFR 1910.147(d)(5)"},
		{Key: "burst", Title: "a vessel or tyre that bursts", Level: Danger,
			Words: []string{"inflate|inflating|inflated|overinflat*", "tyre*|tire|tires|rim|rims|tube + " + takeOff + "|fit|fitting|mount*|demount*|pump|split|seat|air|fill ! gauge*|chain*|lever*|pressure|inflator|marks|tracks|store|depth", "bead*|beads + seat|seating|break|breaking|pop", "split|divided rim*|wheel*", "two|three|multi piece rim*|wheel*",
				"accumulator* + charg*|recharg*|" + off, "air receiver*|tank*|reservoir*|vessel* + " + off + emptied, "air brake*|braking reservoir*|tank*|receiver* + " + off + emptied, "pressure vessel*|tank* + " + off + emptied,
				"receiver* & compress*|air|pressure + " + off + emptied, "safety|relief valve* & receiver*|vessel*|boiler*|tank*|compressor* + " + off + "|adjust*|plug|block*"},
			Hazard: "Tyre, rim or vessel under pressure", Consequence: "will burst if it is overfilled and kill whoever stands in front",
			Avoid: "Stand aside and fill through a clip-on chuck with a long hose. Stop at the marked pressure.",
			Wear:  []string{"eye-protection", "ear-protection"}, Signs: []string{"W029"}, Source: "29 CFR 1910.177", FromMemory: true},
		{Key: "load", Title: "a heavy part that falls or tips", Level: Warning,
			Words: []string{"hoist|hoisting|hoists|sling|slings|crane|gantry|shackle*", "lifting|engine hoist|eye|eyes|strap*|beam|gear|chain*|crane", "engine|gearbox|transmission|axle|rotor|drum|flywheel + lift|lifting|lower|lowering|carry|carrying ! jack|jacks|stand|stands",
				"heavy", "two people|persons|men & lift*|carry*|hold*|lower*|remov*", "<mass> & lift*|carry*|weigh*|lower*|hold*|remov*|heavy ! jack|jacks|hoist|crane|stand|stands|sling|slings|press",
				"forklift*|telehandler* & lift*|hang*|carry*|lower*|rais*|mast", "counterweight*|tailgate*|ballast|dozer|plough + lift|lifting|remov*|unbolt*|unhook*|take|unhitch*|detach*|carry*|hang|hanging ! lamp*|light*|latch*|resistor*|chain*|cable*", "cab|cabin + lift|lifting|unbolt*|detach*|hang|hanging % lamp*|mirror*|door*|seat|light* ! door*|light*|lamp*|roof|floor|filter*|heater|glass|latch*", "cab|cabin off + lift|take|taking|pull"},
			Hazard: "Heavy part that can fall or tip", Consequence: "can crush you",
			Avoid: "Lift with gear rated for the mass, and guide the part with a line or bar. Keep clear of the space below.",
			Wear:  []string{"helmet", "safety-shoes"}, Signs: []string{"W015"}, Source: "29 CFR 1910.184; NIOSH lifting equation, load constant 23 kg", FromMemory: true},
		{Key: "gas", Title: "gas charges", Level: Warning,
			Words: []string{"nitrogen", "refrigerant*|freon|r134a|r22|r32|r290|r404a|r407c|r410a|r507|r600a|r744|r1234yf + " + off + cooled, "r 134a|404a|407c|410a|1234yf + " + off + cooled, "ammonia + " + off + cooled, "aircon + " + off + cooled + " ! filter*|belt|switch|button", "air con|conditioner|conditioning + " + off + cooled + " ! filter*|belt|switch|button", "aircon hose*|line*|pipe*|compressor|condenser|system|circuit|unit + " + off + cooled, "air con|conditioner|conditioning hose*|line*|pipe*|compressor|condenser|system|circuit|unit + " + off + cooled,
				"gas strut*|spring* + cut|drill|open|weld*|charg*", "accumulator* + " + off + "|charg*|recharg*", "gas|propane|butane|lpg|acetylene|oxygen|argon|helium|co2|nitrogen bottle*|cylinder*|tank* + " + off + "|connect*|chang*|move",
				"oxygen|acetylene|co2 + connect*|open|opening|charg*|vent|chang*"},
			Hazard: "Gas under pressure", Consequence: "can burst its vessel or throw parts",
			Avoid: "Charge with dry nitrogen only, never with oxygen or air. Keep the vessel closed until its charge is out.",
			Wear:  []string{"eye-protection"}, Signs: []string{"W029"}, Source: "common practice, no source", FromMemory: true},
		{Key: "explosive", Title: "a charge that goes off", Level: Warning,
			Words:  []string{"airbag*|pretensioner* + " + off + "|disconnect*|fit|fitting|test|cut ! light|lamp", "air bag|bags + " + off + "|disconnect*|fit|fitting|test|cut", "explosive charge*", "nail|stud gun & load*|clear*|" + "unjam*|cartridge*", "blasting cap*", "detonator*"},
			Hazard: "Charge that goes off", Consequence: "can blind you or break bones",
			Avoid: "Cut off the battery and wait as long as the maker says. Carry the part with its face away from you.",
			Wear:  []string{"eye-protection", "ear-protection"}, Signs: []string{"W002"}, Source: "common practice, no source", FromMemory: true},
	}
}
