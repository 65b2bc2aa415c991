package schema

// fastenerKeys describe how a part or a cover is held. They stand on both.
var fastenerKeys = []Key{
	{Name: "title", Kind: Text, Doc: "Name as it prints; the short name without hyphens when left out.", Example: `"drain plug"`},
	{Name: "for", Kind: Names, Of: "variant", Doc: "Versions of the machine that have it; all when left out.", Example: `["long"]`},
	{Name: "count", Kind: Whole, Doc: "How many there are; of a cover, how many fasteners hold it. One when left out.", Example: "4"},
	{Name: "thread", Kind: Text, Doc: "Thread of the fastener.", Example: `"M10"`},
	{Name: "head", Kind: Choice, Doc: "What the tool grips; hex when left out.", Example: `"hex"`, Choices: heads},
	{Name: "across", Kind: Amount, Of: "length", Doc: "Width across flats, where it is not the one the standard gives for thread and head.", Example: `"17 mm"`},
	{Name: "size", Kind: Text, Doc: "Number of a cross or hexalobular recess.", Example: `"T30"`},
	{Name: "class", Kind: Text, Doc: "Strength class of ISO 898-1 or grade of SAE J429.", Example: `"8.8"`},
	{Name: "torque", Kind: Amount, Of: "torque", Doc: "Tightening torque.", Example: `"42 to 48 N·m"`},
	{Name: "angle", Kind: Amount, Of: "angle", Doc: "Turn after the torque.", Example: `"90°"`},
	{Name: "passes", Kind: Wholes, Doc: "Share of the torque in each pass, in percent, rising to 100.", Example: "[30, 60, 100]"},
	{Name: "order", Kind: Choice, Doc: "Order on a bolt circle.", Example: `"cross"`, Choices: orders},
	{Name: "circles", Kind: Whole, Doc: "On how many bolt circles they sit, the same number on each, where it is more than one: ten nuts of two wheels.", Example: "2"},
	{Name: "condition", Kind: Choice, Doc: "State of the thread the torque is meant for.", Example: `"dry"`, Choices: conditions},
	{Name: "product", Kind: Name, Of: "supply fluid", Doc: "Thread-locker, sealant or anti-seize that goes on the thread each time.", Example: `"thread-locker"`},
	{Name: "left-hand", Kind: Flag, Doc: "The thread is left-hand.", Example: "true"},
	{Name: "seals", Kind: Names, Of: "spare", Doc: "Single-use parts renewed each time it comes off: one for each of a set of like parts, one for a whole cover.", Example: `["drain-washer"]`},
	{Name: "reach", Kind: Amount, Of: "length", Doc: "How deep the head sits; a socket needs an extension at least this long.", Example: `"150 mm"`},
	{Name: "access", Kind: Choice, Doc: "What goes on the head; any when left out, and wrench for the nut of a hose or pipe.", Example: `"socket"`, Choices: []Option{
		{"any", "socket or open wrench"}, {"socket", "only a socket"}, {"wrench", "only an open or ring wrench"}}},
	{Name: "tool", Kind: Names, Of: "tool", Doc: "Special tool it takes, instead of one worked out from the head.", Example: `["pin-spanner"]`},
	{Name: "held-by", Kind: Names, Of: "part", Doc: "Fasteners that hold it, where they are parts of their own.", Example: `["guard-bolts"]`},
	{Name: "behind", Kind: Names, Of: "cover part", Doc: "What must be off before it can be reached.", Example: `["belt-guard"]`},
	{Name: "loaded-by", Kind: Names, Of: "energy part", Doc: "What loads it: an energy, such as a spring or a pressure, that is let out before it comes loose or off; or a part, such as a tensioner, that is loosened before.", Example: `["chain-tension"]`},
	{Name: "mass", Kind: Amount, Of: "mass", Doc: "Mass, where it matters for lifting.", Example: `"38 kg"`},
	{Name: "material", Kind: Text, Doc: "Material, where a fluid or a torque depends on it.", Example: `"bronze"`},
	{Name: "hazards", Kind: Choices, Doc: "Hazards it brings whenever hands are on it.", Example: `["edge"]`, Choices: Hazards},
	{Name: "area", Kind: Names, Of: "area", Doc: "Areas in which a person works at it: all that it reaches through, of a chain or a belt.", Example: `["drive-end"]`},
	{Name: "at", Kind: Point, Doc: "Place on the outline.", Example: "[80, 22]"},
	{Name: "notes", Kind: Texts, Doc: "What is good to know.", Example: `["Magnetic."]`},
	{Name: "variant", Kind: Overrides, Of: "part", Doc: "What differs for a version of the machine.", Example: `{ long = { torque = "60 N·m" } }`},
}

var heads = []Option{
	{"hex", "hexagon head or nut"}, {"nut", "hexagon nut"}, {"castle-nut", "castle or slotted nut"}, {"hex-flange", "hexagon with flange, small series"}, {"hex-flange-heavy", "hexagon with flange, heavy series"},
	{"socket", "hexagon socket cap"}, {"button", "hexagon socket button"}, {"countersunk", "hexagon socket countersunk"}, {"set-screw", "hexagon socket set screw"},
	{"socket-plug", "plug with hexagon socket"}, {"square-plug", "plug with square head"},
	{"square", "square head"}, {"slotted", "slot"}, {"cross", "cross recess"}, {"hexalobular", "hexalobular recess, ISO 10664"},
	{"wing", "wing, knob or lever, turned by hand"}, {"none", "nothing a tool turns: clip, latch, push-on"},
}

var partTable = Table{
	Name: "part", Header: "[part.NAME]", Doc: "A part, or a set of like fasteners.", Keys: fastenerKeys,
	Example: `[part.drain-plug]
title = "drain plug"
thread = "M18x1.5"
head = "hex"
across = "24 mm"
torque = "42 to 48 N·m"
condition = "dry"
seals = ["drain-washer"]`,
}

var coverTable = Table{
	Name: "cover", Header: "[cover.NAME]", Doc: "A cover or a guard, with the keys of a part and these.",
	Keys: append([]Key{
		{Name: "guards", Kind: Names, Of: "energy", Doc: "Energies it keeps people from; each must be isolated before it comes off.", Example: `["mains"]`},
	}, fastenerKeys...),
}

var cavityTable = Table{
	Name: "cavity", Header: "[cavity.NAME]", Doc: "A place that holds a fluid.",
	Keys: []Key{
		{Name: "title", Kind: Text, Doc: "Name as it prints.", Example: `"worm gearbox"`},
		{Name: "for", Kind: Names, Of: "variant", Doc: "Versions of the machine that have it.", Example: `["long"]`},
		{Name: "fluid", Kind: Name, Of: "fluid", Doc: "What it holds.", Example: `"gear-220"`},
		{Name: "capacity", Kind: Amount, Of: "volume mass", Doc: "How much it takes.", Example: `"1.1 L"`},
		{Name: "drain", Kind: Name, Of: "part", Doc: "Where it is drained.", Example: `"drain-plug"`},
		{Name: "fill", Kind: Name, Of: "part cover", Doc: "Where it is filled.", Example: `"fill-plug"`},
		{Name: "level", Kind: Name, Of: "part cover", Doc: "Where the level shows.", Example: `"level-plug"`},
		{Name: "vent", Kind: Name, Of: "part", Doc: "Where it breathes.", Example: `"breather"`},
		{Name: "pressure", Kind: Amount, Of: "pressure", Doc: "Working pressure, if any.", Example: `"180 bar"`},
		{Name: "hazards", Kind: Choices, Doc: "Hazards it brings when it is opened.", Example: `["hot"]`, Choices: Hazards},
		{Name: "area", Kind: Names, Of: "area", Doc: "Areas in which a person works at it.", Example: `["drive-end"]`},
		{Name: "at", Kind: Point, Doc: "Place on the outline.", Example: "[80, 22]"},
		{Name: "notes", Kind: Texts, Doc: "What is good to know."},
		{Name: "variant", Kind: Overrides, Of: "cavity", Doc: "What differs for a version of the machine.", Example: `{ long = { capacity = "1.6 L" } }`},
	},
}

var energyTable = Table{
	Name: "energy", Header: "[energy.NAME]", Doc: "A source of energy.",
	Keys: []Key{
		{Name: "title", Kind: Text, Doc: "Name as it prints.", Example: `"mains, 400 V"`},
		{Name: "for", Kind: Names, Of: "variant", Doc: "Versions of the machine that have it.", Example: `["long"]`},
		{Name: "kind", Kind: Choice, Required: true, Doc: "What it is.", Example: `"electric"`, Choices: energies},
		{Name: "isolate", Kind: Text, Required: true, Doc: "How it is cut off and locked, in one or two sentences.", Example: `"Turn the main switch off and put your lock on it."`},
		{Name: "relieve", Kind: Text, Doc: "How what is stored is let out.", Example: `"Open the dump valve."`},
		{Name: "prove", Kind: Text, Required: true, Doc: "How it is shown to be gone.", Example: `"Press START. Nothing moves."`},
		{Name: "restore", Kind: Text, Doc: "How it is given back.", Example: `"Take your lock off and turn the main switch on."`},
		{Name: "voltage", Kind: Amount, Of: "voltage", Doc: "Voltage.", Example: `"400 V"`},
		{Name: "pressure", Kind: Amount, Of: "pressure", Doc: "Highest pressure.", Example: `"180 bar"`},
		{Name: "stops-in", Kind: Amount, Of: "time", Doc: "Time until what it moves stands still.", Example: `"90 s"`},
		{Name: "tools", Kind: Names, Of: "tool", Doc: "Locks, tags, testers it takes.", Example: `["padlock", "voltage-tester"]`},
		{Name: "at", Kind: Point, Doc: "Place on the outline.", Example: "[10, 5]"},
		{Name: "variant", Kind: Overrides, Of: "energy", Doc: "What differs for a version of the machine."},
	},
}

var energies = []Option{
	{"electric", "mains or another electric supply"}, {"engine", "a combustion engine that can start"}, {"battery", "a battery"},
	{"hydraulic", "pressurised liquid"}, {"pneumatic", "compressed air or gas"}, {"spring", "a spring or a tension"},
	{"gravity", "a raised load"}, {"rotation", "a mass that runs on"}, {"shaft", "a driven shaft from another machine"},
	{"heat", "heat or cold"}, {"fuel", "fuel or gas"}, {"chemical", "a substance that harms"},
}

var poseTable = Table{
	Name: "pose", Header: "[pose.NAME]", Doc: "A position the machine can be in.",
	Keys: []Key{
		{Name: "title", Kind: Text, Doc: "Name as it prints.", Example: `"on its side, outlet up"`},
		{Name: "how", Kind: Text, Doc: "How it gets there.", Example: `"Two people roll it onto the mat."`},
		{Name: "tools", Kind: Names, Of: "tool", Doc: "Lifting gear and stands it takes.", Example: `["stands"]`},
	},
}

var areaTable = Table{
	Name: "area", Header: "[area.NAME]", Doc: "A part of the machine at which one person works, so that a job can be planned for two.",
	Keys: []Key{
		{Name: "title", Kind: Text, Doc: "Name as it prints.", Example: `"drive end"`},
		{Name: "apart", Kind: Names, Of: "area", Doc: "Areas at which another person can work meanwhile: nothing that is done at one moves, loads, wets or throws anything at the other, and neither reaches or stands in the way of the other. It holds both ways.", Example: `["tail-end"]`},
	},
	Example: `[area.drive-end]
title = "drive end"
apart = ["tail-end"]

[area.tail-end]
title = "tail end"`,
}

var pointTable = Table{
	Name: "point", Header: "[point.NAME]", Doc: "A lubrication point, or a set of like points.",
	Keys: []Key{
		{Name: "title", Kind: Text, Doc: "Name as it prints.", Example: `"tail bearing"`},
		{Name: "for", Kind: Names, Of: "variant", Doc: "Versions of the machine that have it.", Example: `["long"]`},
		{Name: "count", Kind: Whole, Doc: "How many there are; one when left out.", Example: "2"},
		{Name: "fluid", Kind: Name, Of: "fluid", Required: true, Doc: "Oil or grease it takes.", Example: `"grease-2"`},
		{Name: "amount", Kind: Amount, Of: "volume mass count", Doc: "How much each takes.", Example: `"4 strokes"`},
		{Name: "until", Kind: Text, Doc: "What shows that it is enough.", Example: `"clean grease shows at the seal"`},
		{Name: "fitting", Kind: Text, Doc: "Kind of fitting.", Example: `"cone fitting, straight"`},
		{Name: "tool", Kind: Names, Of: "tool", Doc: "What it is lubricated with.", Example: `["grease-gun"]`},
		{Name: "every", Kind: Amounts, Of: "interval", Doc: "How often.", Example: `"50 h"`},
		{Name: "behind", Kind: Names, Of: "cover part", Doc: "What must be off before it can be reached.", Example: `["belt-guard"]`},
		{Name: "area", Kind: Names, Of: "area", Doc: "Areas in which a person works at it.", Example: `["drive-end"]`},
		{Name: "at", Kind: Point, Doc: "Place on the outline.", Example: "[110, 30]"},
		{Name: "notes", Kind: Texts, Doc: "What is good to know."},
		{Name: "variant", Kind: Overrides, Of: "point", Doc: "What differs for a version of the machine."},
	},
}

var limitTable = Table{
	Name: "limit", Header: "[limit.NAME]", Doc: "Something that is measured, with its limit.",
	Keys: []Key{
		{Name: "title", Kind: Text, Doc: "Name as it prints.", Example: `"chain stretch over 10 links"`},
		{Name: "for", Kind: Names, Of: "variant", Doc: "Versions of the machine that have it.", Example: `["long"]`},
		{Name: "how", Kind: Text, Doc: "How it is measured.", Example: `"Pull the chain tight and measure over ten links."`},
		{Name: "new", Kind: Amount, Of: "any", Doc: "Value when new.", Example: `"254 mm"`},
		{Name: "limit", Kind: Amount, Of: "any", Required: true, Doc: "Limit it is held against.", Example: `"max 261 mm"`},
		{Name: "outside", Kind: Text, Required: true, Doc: "What to do outside the limit.", Example: `"Renew chain and sprockets together."`},
		{Name: "tool", Kind: Names, Of: "tool", Doc: "Instrument it takes.", Example: `["caliper"]`},
		{Name: "held-by", Kind: Names, Of: "part", Doc: "Fasteners that hold what is set: loose while it is set, tight after it.", Example: `["motor-bolts"]`},
		{Name: "behind", Kind: Names, Of: "cover part", Doc: "What must be off before it can be reached."},
		{Name: "area", Kind: Names, Of: "area", Doc: "Areas in which a person works at it.", Example: `["drive-end"]`},
		{Name: "anew-after", Kind: Names, Of: "part cover", Doc: "Parts that, when they are renewed or come back on, want this setting made or measured anew.", Example: `["blade"]`},
		{Name: "at", Kind: Point, Doc: "Place on the outline."},
		{Name: "variant", Kind: Overrides, Of: "limit", Doc: "What differs for a version of the machine."},
	},
}
