package schema

// stepTable joins the verbs and what a step may say besides its verb.
var stepTable = Table{
	Name: "step", Header: "[[prepare]], [[step]], [[close]]",
	Doc:  "One action. One key, a verb of the trade, says what is done and to what; or the step is text alone (say), and then only its words are checked.",
	Keys: append(verbKeys(), stepKeys...),
	Example: `[[step]]
tighten = "drain-plug"
torque = "42 to 48 N·m"
say = "Fit a **new** sealing washer first."
spares = ["drain-washer"]`,
}

var stepKeys = []Key{
	{Name: "id", Kind: Text, Doc: "Short name of the step, for other steps that speak of it.", Example: `"oil-out"`},
	{Name: "say", Kind: Words, Doc: "More words for the step, in CommonMark; or the whole step, when there is no verb.", Example: `"Turn the wrench **towards you**."`},
	{Name: "for", Kind: Names, Of: "variant", Doc: "Versions of the machine the step is for; all when left out.", Example: `["long"]`},
	{Name: "stage", Kind: Text, Doc: "Heading that begins with this step and goes on until the next stage.", Example: `"Drain the old oil"`},
	{Name: "count", Kind: Whole, Doc: "How many of the object, when not all of them.", Example: "3"},
	{Name: "torque", Kind: Amount, Of: "torque", Doc: "Torque at the fastener; the part's own when left out.", Example: `"42 to 48 N·m"`},
	{Name: "angle", Kind: Amount, Of: "angle", Doc: "Turn after the torque.", Example: `"90°"`},
	{Name: "passes", Kind: Wholes, Doc: "Share of the torque in each pass, in percent, rising to 100.", Example: "[30, 60, 100]"},
	{Name: "order", Kind: Choice, Doc: "Order on a bolt circle.", Example: `"cross"`, Choices: orders},
	{Name: "adapter", Kind: Sub, Of: "adapter", Doc: "Adapter that changes the lever of the torque wrench.", Example: `{ length = "50 mm", wrench = "400 mm" }`},
	{Name: "condition", Kind: Choice, Doc: "State of the thread the torque is meant for; the part's own when left out.", Example: `"dry"`, Choices: conditions},
	{Name: "by-hand", Kind: Text, Doc: "Why it is tightened by hand only, on purpose.", Example: `"The wheel must still turn for the alignment"`},
	{Name: "amount", Kind: Amount, Of: "volume mass count", Doc: "How much is filled, drained or greased; the cavity's or the point's own when left out.", Example: `"1.1 L"`},
	{Name: "fluid", Kind: Name, Of: "fluid", Doc: "What is filled or applied; the cavity's or the point's own when left out.", Example: `"gear-220"`},
	{Name: "into", Kind: Name, Of: "tool", Doc: "Container that catches what is drained.", Example: `"drain-pan"`},
	{Name: "set", Kind: Amount, Of: "any", Doc: "Value something is set to.", Example: `"3 to 5 mm"`},
	{Name: "limit", Kind: Amount, Of: "any", Doc: "Limit a reading or a look is held against.", Example: `"max 0.5 mm"`},
	{Name: "expect", Kind: Text, Doc: "What is seen when all is well, in words.", Example: `"no play, no noise"`},
	{Name: "outside", Kind: Text, Doc: "What to do when the limit is passed or the expected is not seen.", Example: `"Renew the bearing by its own card."`},
	{Name: "reading", Kind: Text, Doc: "Name of a value that is written down; makes a blank on the card.", Example: `"End play"`},
	{Name: "least", Kind: Amount, Of: "time", Doc: "Least time of a wait or a run.", Example: `"20 min"`},
	{Name: "most", Kind: Amount, Of: "time", Doc: "Most time of a wait or a run.", Example: `"45 min"`},
	{Name: "until", Kind: Text, Doc: "What ends a wait or a run.", Example: `"the oil only drips"`},
	{Name: "keep", Kind: Texts, Doc: "What must hold during a wait.", Example: `["Drain plug stays out"]`},
	{Name: "meanwhile", Kind: Flag, Doc: "The step is done while the wait before it runs, or the run that has a time or an end.", Example: "true"},
	{Name: "pose", Kind: Name, Of: "pose", Doc: "Position the machine is brought into by raise, lower, turn-over or support.", Example: `"raised"`},
	{Name: "tools", Kind: Names, Of: "tool", Doc: "Tools the step takes, besides those its fasteners and torques ask for.", Example: `["oil-pump"]`},
	{Name: "supplies", Kind: Quantity, Of: "fluid supply", Doc: "Fluids and consumables the step uses up, with how many or how much.", Example: `{ rags = 2 }`},
	{Name: "spares", Kind: Names, Of: "spare", Doc: "Parts the step renews, besides the seals of its fasteners.", Example: `["drain-washer"]`},
	{Name: "wear", Kind: Choices, Doc: "Protective equipment for this step.", Example: `["face-shield"]`, Choices: Protection},
	{Name: "cautions", Kind: Names, Of: "caution", Doc: "Safety messages that belong to the step, printed before it.", Example: `["hot"]`},
	{Name: "caution", Kind: Subs, Of: "step-caution", Doc: "A safety message written for this step alone."},
	{Name: "notes", Kind: Texts, Doc: "What is good to know. Notes inform; they never instruct.", Example: `["A little grey paste on the magnet is normal."]`},
	{Name: "time", Kind: Amount, Of: "time", Doc: "Time the step takes.", Example: `"5 min"`},
	{Name: "gate", Kind: Text, Doc: "What must have passed before the step may begin, where a wait was filled with other work.", Example: `"Not before 15 min have passed since step 11."`},
	{Name: "person", Kind: Whole, Doc: "Who does it, in a job for two: 1 or 2.", Example: "2"},
	{Name: "once", Kind: Texts, Doc: "Steps of the other person, by their id, that are done before it begins, in a job for two.", Example: `["oil-out"]`},
	{Name: "area", Kind: Names, Of: "area", Doc: "Areas in which the person works, where they are others than those of its objects.", Example: `["tail-end"]`},
	{Name: "origin", Kind: Text, Doc: "Where a step of a joined procedure comes from: the letter of its procedure and its number there; benchleaf join writes it.", Example: `"A 7"`},
	{Name: "people", Kind: Whole, Doc: "People the step takes, when more than one.", Example: "2"},
	{Name: "picture", Kind: Sub, Of: "picture", Doc: "Picture for the step.", Example: `{ file = "plug.png", title = "Drain plug" }`},
	{Name: "allow", Kind: Subs, Of: "allow", Doc: "Findings at this step the author stands by, each with the reason.", Example: `[{ rule = "torque/no-condition", reason = "maker gives none" }]`},
	{Name: "variant", Kind: Overrides, Of: "step", Doc: "What differs for a version of the machine.", Example: `{ long = { amount = "1.6 L" } }`},
}

var adapterTable = Table{
	Name: "adapter", Header: "adapter = { … }",
	Doc: "An adapter on a torque wrench. The setting that prints is T · L / (L + E · cos angle).",
	Keys: []Key{
		{Name: "length", Kind: Amount, Of: "length", Required: true, Doc: "From the centre of the drive to the centre of the fastener (E).", Example: `"50 mm"`},
		{Name: "wrench", Kind: Amount, Of: "length", Required: true, Doc: "From the centre of the drive to the centre of the hand (L).", Example: `"400 mm"`},
		{Name: "angle", Kind: Amount, Of: "angle", Doc: "Angle between adapter and handle; 0° lengthens, 180° shortens, 90° changes nothing. 0° when left out.", Example: `"90°"`},
	},
}

var stepCautionTable = Table{
	Name: "step-caution", Header: "[[step.caution]]",
	Doc:  "A safety message written for one step.",
	Keys: messageKeys,
}

var allowTable = Table{
	Name: "allow", Header: "allow = [{ … }]",
	Doc: "A finding the author stands by.",
	Keys: []Key{
		{Name: "rule", Kind: Text, Required: true, Doc: "The rule, as the finding names it.", Example: `"tool/never-used"`},
		{Name: "reason", Kind: Text, Required: true, Doc: "Why it is right here. Prints on the card.", Example: `"kept at hand for the tail shaft"`},
	},
}

var pictureTable = Table{
	Name: "picture", Header: "picture = { … }",
	Doc: "A picture from the shop folder.",
	Keys: []Key{
		{Name: "file", Kind: Text, Required: true, Doc: "PNG or JPEG, as a path from this file.", Example: `"pictures/plugs.png"`},
		{Name: "title", Kind: Text, Required: true, Doc: "What it shows.", Example: `"Plugs of the gearbox"`},
		{Name: "points", Kind: Points, Doc: "Places of the numbered call-outs, in parts of the width and height.", Example: "[[0.25, 0.5], [0.8, 0.5]]"},
		{Name: "shows", Kind: Texts, Doc: "What each call-out points at, in the order of the points: plain words, or names of things of the machine. Where all are names of things with a place, they carry their numbers on the map.", Example: `["fill-plug", "drain-plug"]`},
	},
}

var orders = []Option{
	{"cross", "opposite pairs, each pair half-way between the ones before"},
	{"circle", "one after the other round the circle"},
	{"inside-out", "from the middle to the ends"},
}

var conditions = []Option{
	{"dry", "clean and dry"},
	{"oiled", "a film of oil"},
	{"anti-seize", "anti-seize compound"},
	{"thread-lock", "thread-locking adhesive"},
	{"sealant", "thread sealant"},
	{"greased", "grease"},
	{"plated", "plated, as delivered"},
}

// Protection lists the protective equipment a card can ask for, with its sign of ISO 7010.
var Protection = []Option{
	{"eye-protection", "eye protection, M004"},
	{"face-shield", "face shield, M013"},
	{"gloves", "protective gloves, M009"},
	{"cut-resistant-gloves", "cut-resistant gloves, M009"},
	{"ear-protection", "ear protection, M003"},
	{"safety-shoes", "safety footwear, M008"},
	{"helmet", "head protection, M014"},
	{"high-visibility", "high-visibility clothing, M015"},
	{"clothing", "close-fitting protective clothing, M010"},
	{"apron", "protective apron, M026"},
	{"mask", "mask, M016"},
	{"respirator", "respiratory protection, M017"},
	{"harness", "safety harness, M018"},
}
