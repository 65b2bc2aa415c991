package schema

var toolTable = Table{
	Name: "tool", Header: "[tool.NAME]", Doc: "A tool on the wall, or a set of like tools.",
	Keys: []Key{
		{Name: "title", Kind: Text, Doc: "Name as it prints; worked out from kind, size and drive when left out.", Example: `"Socket 16 mm"`},
		{Name: "kind", Kind: Choice, Required: true, Doc: "What it is.", Example: `"socket"`, Choices: ToolKinds},
		{Name: "sizes", Kind: Amounts, Of: "length", Doc: "Widths across flats it fits; several for a set or a double-ended wrench.", Example: `"16 mm"`},
		{Name: "points", Kind: Texts, Doc: "Numbers of the recesses a bit fits.", Example: `["T30", "PH2"]`},
		{Name: "drive", Kind: Choice, Doc: "Square drive, ISO 1174.", Example: `"1/2"`, Choices: drives},
		{Name: "drive-out", Kind: Choice, Doc: "Square an adapter drives.", Example: `"3/8"`, Choices: drives},
		{Name: "length", Kind: Amount, Of: "length", Doc: "Length of an extension, of a deep socket's reach, or of a handle.", Example: `"150 mm"`},
		{Name: "range", Kind: Amount, Of: "any", Doc: "Range of a torque wrench or an instrument, as marked.", Example: `"20 to 100 N·m"`},
		{Name: "holds", Kind: Amount, Of: "volume mass", Doc: "What a container holds or a lifting tool is rated for.", Example: `"8 L"`},
		{Name: "count", Kind: Whole, Doc: "How many hang on the wall; one when left out.", Example: "2"},
		{Name: "number", Kind: Text, Doc: "Part or inventory number.", Example: `"W-114"`},
		{Name: "where", Kind: Text, Doc: "Its place.", Example: `"Wall B, row 2"`},
		{Name: "hazards", Kind: Choices, Doc: "Hazards it brings when it is used.", Example: `["noise"]`, Choices: Hazards},
	},
}

var drives = []Option{{"1/4", "6.3 mm"}, {"3/8", "10 mm"}, {"1/2", "12.5 mm"}, {"3/4", "20 mm"}, {"1", "25 mm"}}

// ToolKinds lists what a tool can be. The ones a fastener can ask for come first.
var ToolKinds = []Option{
	{"socket", "socket for a square drive"}, {"wrench", "open, ring or combination wrench"}, {"adjustable", "adjustable wrench, for loose and low torques only"},
	{"hex-key", "hexagon key"}, {"hex-bit", "hexagon bit for a square drive"}, {"bit", "bit for a slot, cross or hexalobular recess, for a square drive"}, {"screwdriver", "screwdriver"},
	{"ratchet", "ratchet handle"}, {"breaker-bar", "long handle without ratchet"}, {"torque-wrench", "torque wrench"},
	{"extension", "extension for a square drive"}, {"drive-adapter", "adapter between two square drives"}, {"crowfoot", "open end for a torque wrench"},
	{"impact-wrench", "impact wrench"}, {"special", "special tool for one part"},
	{"pliers", "pliers or cutters"}, {"hammer", "hammer or mallet"}, {"punch", "punch, drift or chisel"}, {"puller", "puller or press"},
	{"pry-bar", "pry bar or lever"}, {"scraper", "scraper or knife"}, {"brush", "brush"}, {"file", "file or stone"}, {"grinder", "grinder or sander"},
	{"gauge", "feeler, depth or tension gauge, square or template"}, {"measure", "rule, tape, caliper or micrometer"}, {"indicator", "dial indicator"}, {"tester", "electric or pressure tester"},
	{"grease-gun", "grease gun"}, {"oil-can", "oil can"}, {"pump", "pump or syringe for fluids"}, {"funnel", "funnel"}, {"container", "container for what is drained"},
	{"jack", "jack"}, {"hoist", "hoist or crane"}, {"sling", "sling, chain or shackle"}, {"stand", "stand, block or wedge that holds"}, {"clamp", "clamp or vice"},
	{"lock", "lock for an isolating device"}, {"tag", "tag"}, {"light", "lamp"}, {"mirror", "mirror or magnet"}, {"air-gun", "air gun"}, {"marker", "marker"}, {"ladder", "ladder or step"}, {"other", "anything else"},
}

var fluidTable = Table{
	Name: "fluid", Header: "[fluid.NAME]", Doc: "An oil, a grease or another fluid.",
	Keys: []Key{
		{Name: "title", Kind: Text, Doc: "Name as it prints.", Example: `"Gear oil, mineral"`},
		{Name: "kind", Kind: Choice, Required: true, Doc: "What it is.", Example: `"gear-oil"`, Choices: []Option{
			{"gear-oil", "gear oil"}, {"engine-oil", "engine oil"}, {"hydraulic-oil", "hydraulic oil"}, {"compressor-oil", "compressor oil"}, {"chain-oil", "chain or way oil"},
			{"grease", "grease"}, {"coolant", "coolant"}, {"brake-fluid", "brake fluid"}, {"fuel", "fuel"}, {"cleaner", "cleaner or solvent"}, {"water", "water"}, {"other", "another fluid"}}},
		{Name: "grade", Kind: Text, Doc: "Grade: SAE, ISO VG, NLGI, DOT.", Example: `"ISO VG 220"`},
		{Name: "service", Kind: Text, Doc: "Service or specification.", Example: `"CLP, DIN 51517-3"`},
		{Name: "thickener", Kind: Choice, Doc: "Thickener of a grease.", Example: `"lithium"`, Choices: []Option{
			{"lithium", "lithium"}, {"lithium-complex", "lithium complex"}, {"calcium", "calcium"}, {"calcium-complex", "calcium complex"}, {"calcium-sulfonate", "calcium sulfonate"},
			{"aluminium-complex", "aluminium complex"}, {"barium", "barium"}, {"sodium", "sodium"}, {"clay", "clay"}, {"polyurea", "polyurea"}}},
		{Name: "packs", Kind: Amounts, Of: "volume mass", Doc: "Packs it comes in.", Example: `["1 L", "20 L"]`},
		{Name: "stroke", Kind: Amount, Of: "volume mass", Doc: "What one stroke of the shop's gun gives.", Example: `"1.2 g"`},
		{Name: "number", Kind: Text, Doc: "Order number.", Example: `"G-220-20"`},
		{Name: "where", Kind: Text, Doc: "Its place.", Example: `"Oil store, shelf 1"`},
		{Name: "sheet", Kind: Text, Doc: "Safety data sheet.", Example: `"SDS folder, tab 4"`},
		{Name: "hazards", Kind: Choices, Doc: "Hazards it brings when it is handled.", Example: `["used-oil"]`, Choices: Hazards},
	},
}

var supplyTable = Table{
	Name: "supply", Header: "[supply.NAME]", Doc: "A consumable that is not a lubricant of the machine.",
	Keys: []Key{
		{Name: "title", Kind: Text, Doc: "Name as it prints.", Example: `"Rags, lint-free"`},
		{Name: "packs", Kind: Amounts, Of: "volume mass count length", Doc: "Packs it comes in.", Example: `"50 mL"`},
		{Name: "number", Kind: Text, Doc: "Order number.", Example: `"C-07"`},
		{Name: "where", Kind: Text, Doc: "Its place.", Example: `"Bench drawer 3"`},
		{Name: "sheet", Kind: Text, Doc: "Safety data sheet.", Example: `"SDS folder, tab 9"`},
		{Name: "hazards", Kind: Choices, Doc: "Hazards it brings when it is used.", Example: `["solvent"]`, Choices: Hazards},
	},
}

var spareTable = Table{
	Name: "spare", Header: "[spare.NAME]", Doc: "A part that is renewed.",
	Keys: []Key{
		{Name: "title", Kind: Text, Doc: "Name as it prints.", Example: `"Sealing washer 18 × 22, copper"`},
		{Name: "number", Kind: Text, Doc: "Part number.", Example: `"LD-0418"`},
		{Name: "pack", Kind: Whole, Doc: "How many come in a pack; one when left out.", Example: "10"},
		{Name: "reusable", Kind: Flag, Doc: "It may go back in when it is good. Without this it is single-use.", Example: "true"},
		{Name: "where", Kind: Text, Doc: "Its place.", Example: `"Seal cabinet, tray 12"`},
		{Name: "hazards", Kind: Choices, Doc: "Hazards it brings when it is handled.", Example: `["edge"]`, Choices: Hazards},
	},
}

var cautionTable = Table{
	Name: "caution", Header: "[caution.NAME]", Doc: "A safety message. Its parts print in the order of ANSI Z535.6.",
	Keys: messageKeys,
	Example: `[caution.hot-gear-oil]
signal = "warning"
against = ["hot"]
hazard = "Hot gear oil"
consequence = "It can scald your hands and arms."
avoid = "Let the gearbox cool to hand-warm. Keep your arms out of the stream."
wear = ["gloves", "eye-protection"]`,
}

var messageKeys = []Key{
	{Name: "signal", Kind: Choice, Required: true, Doc: "Signal word, by ANSI Z535.6: what happens if the message is not heeded.", Example: `"warning"`, Choices: []Option{
		{"danger", "death or serious injury will result"}, {"warning", "death or serious injury could result"}, {"caution", "minor or moderate injury could result"}, {"notice", "damage, not injury"}}},
	{Name: "against", Kind: Choices, Doc: "Hazards it speaks for.", Example: `["hot"]`, Choices: Hazards},
	{Name: "hazard", Kind: Text, Required: true, Doc: "The hazard, as a short noun phrase.", Example: `"Hot gear oil"`},
	{Name: "second-hazard", Kind: Text, Doc: "The hazard in the second language of the shop's signal panels.", Example: `"Aceite caliente"`},
	{Name: "consequence", Kind: Text, Required: true, Doc: "What it can do.", Example: `"It can scald your hands and arms."`},
	{Name: "avoid", Kind: Text, Required: true, Doc: "How to avoid it, beginning with a verb.", Example: `"Let the gearbox cool to hand-warm."`},
	{Name: "wear", Kind: Choices, Doc: "Protective equipment it asks for.", Example: `["gloves"]`, Choices: Protection},
	{Name: "signs", Kind: Texts, Doc: "Signs of ISO 7010 that go with it.", Example: `["W017"]`},
}

// Hazards lists the kinds of hazard that verbs, parts, energies and words imply.
var Hazards = []Option{
	{"start", "unexpected start"}, {"rotation", "a mass that runs on"}, {"edge", "sharp edges"}, {"grinding", "sparks and broken wheels"},
	{"crushing", "a raised machine that comes down"}, {"injection", "fluid under high pressure"}, {"spring", "a spring or a tension let go"}, {"shaft", "a turning shaft that winds clothing up"},
	{"speed-mismatch", "a shaft driven too fast"}, {"hot", "hot parts and fluids"}, {"fuel", "fuel and its vapour"}, {"fire", "fire from heat or sparks"}, {"battery-gas", "battery gas and acid"}, {"battery-order", "a short circuit at the battery"},
	{"shock", "electric shock"}, {"noise", "noise"}, {"dust", "harmful dust"}, {"solvent", "solvents and cleaners"}, {"used-oil", "used oil on the skin"}, {"brake-fluid", "brake fluid on skin, eyes and paint"}, {"air", "compressed air"},
	{"burst", "a vessel or tyre that bursts"}, {"load", "a heavy part that falls or tips"}, {"pinch", "pinch and nip points"}, {"guard", "a guard that is off"}, {"feed", "feed rollers that pull in"},
	{"spray", "residues of sprayed chemicals"}, {"reaction", "a tool that jerks or slips"}, {"adhesive", "adhesives on skin and eyes"}, {"gas", "gas charges"},
	{"fall", "a fall from height"}, {"confined", "a closed space with bad air"}, {"exhaust-gas", "exhaust gas indoors"}, {"corrosive", "acids and lyes"}, {"chips", "chips and pieces that fly"}, {"explosive", "a charge that goes off"},
}
