package draft

import "sync"

// toolRow is a tool by the names it goes under.
type toolRow struct {
	said string
	name string // what it is called here
	kind string // the language's kind of tool; "wear" for what is worn, "supply" for what is used up
	wear string // the language's word for what is worn
}

// toolRows are tools, what is worn, and what is used up, as they are called in workshops.
var toolRows = []toolRow{
	{"torque wrench|torque spanner|torque bar|click wrench|talk wrench|talk spanner", "torque wrench", "torque-wrench", ""},
	{"chain wrench", "chain wrench", "special", ""},
	{"strap wrench", "strap wrench", "special", ""},
	{"chain whip|sprocket remover", "chain whip", "special", ""},
	{"chain breaker|chain splitter|chain tool|chain riveter|link extractor", "chain tool", "special", ""},
	{"chain wear gauge|chain gauge|chain checker|chain wear tool", "chain gauge", "gauge", ""},
	{"lockring tool|lock ring tool|cassette tool|freewheel tool", "lockring tool", "special", ""},
	{"cone spanner|cone wrench|cone spanners", "cone wrench", "special", ""},
	{"spoke key|spoke wrench|nipple key", "spoke wrench", "special", ""},
	{"crank puller|crank extractor", "crank puller", "puller", ""},
	{"flywheel puller|flywheel extractor", "flywheel puller", "puller", ""},
	{"pulley puller|hub puller|impeller puller|slide hammer|slide puller|wheel puller|seal puller|bearing separator|bearing splitter|blind bearing puller|seal pick", "puller", "puller", ""},
	{"bearing heater|induction heater", "bearing heater", "other", ""},
	{"hydraulic press|shop press|arbor press|bench press|workshop press", "press", "other", ""},
	{"bearing driver|seal driver|drift set|bush driver|socket as a drift", "driver", "punch", ""},
	{"belt frequency gauge|frequency gauge|belt frequency meter|sonic gauge|sonic meter|belt tension meter|belt tension tester", "belt frequency gauge", "tester", ""},
	{"feeler gauges", "feeler gauge", "gauge", ""},
	{"compression tester|compression gauge", "compression tester", "tester", ""},
	{"leak detector|leak sniffer|sniffer|leak spray", "leak detector", "tester", ""},
	{"gauge set|manifold gauges|manifold set|gauge manifold", "manifold gauge set", "tester", ""},
	{"clamp meter|clip on meter|tong tester|amp clamp|amp meter|ammeter", "clamp meter", "tester", ""},
	{"megger|insulation tester|insulation resistance tester", "insulation tester", "tester", ""},
	{"vibration meter|vibration pen|vib meter", "vibration meter", "tester", ""},
	{"laser aligner|laser alignment|alignment laser|alignment tool|belt alignment tool", "alignment tool", "gauge", ""},
	{"flue gas analyser|flue gas analyzer|combustion analyser|combustion analyzer|gas analyser|analyser", "flue gas analyser", "tester", ""},
	{"manometer|u tube|u gauge", "manometer", "tester", ""},
	{"ph meter|ph strip|litmus paper|test strip", "test strip", "tester", ""},
	{"antifreeze tester", "antifreeze tester", "tester", ""},
	{"timing light|strobe", "strobe", "tester", ""},
	{"spark tester", "spark tester", "tester", ""},
	{"infrared gun|ir gun|laser thermometer|temperature gun|ir thermometer", "thermometer", "tester", ""},
	{"depth micrometer|height gauge", "height gauge", "measure", ""},
	{"plastigauge", "plastic gauge", "gauge", ""},
	{"pin gauge|go gauge|plug gauge", "pin gauge", "gauge", ""},
	{"set square|engineer's square|engineers square|try square|combination square", "square", "gauge", ""},
	{"plumb line|plumb bob|string line", "string line", "gauge", ""},
	{"piston ring compressor|ring compressor", "ring compressor", "special", ""},
	{"valve spring compressor|spring compressor|spring compressors", "spring compressor", "special", ""},
	{"pipe cutter|tube cutter", "pipe cutter", "other", ""},
	{"flaring tool|crimper|crimping tool|crimp tool|crimpers", "crimping tool", "other", ""},
	{"soldering iron", "soldering iron", "other", ""},
	{"wire stripper|wire strippers", "wire stripper", "pliers", ""},
	{"hacksaw|hack saw", "hacksaw", "other", ""},
	{"tin snips|shears|bolt cutter|bolt cutters|scissors", "snips", "pliers", ""},
	{"die nut|tap and die|thread chaser|thread tap", "thread tap", "other", ""},
	{"stud extractor|screw extractor|easy out|ezy out", "stud extractor", "special", ""},
	{"cordless drill|power drill|electric drill|battery drill|drill driver", "drill", "other", ""},
	{"gas torch|blow torch|blowlamp|blow lamp|heat gun|hot air gun", "heat gun", "other", ""},
	{"brake bleeder|bleed bottle|bleed kit|bleeding kit|bleed tube|bleed hose|bit of clear hose|clear hose|clear tube|length of hose", "bleed kit", "special", ""},
	{"hook and pick|pick set|o ring pick|o-ring pick", "hook", "special", ""},
	{"battery charger|trickle charger", "battery charger", "other", ""},
	{"welding blanket|fire blanket", "fire blanket", "other", ""},
	{"fire extinguisher|extinguisher", "fire extinguisher", "other", ""},
	{"spill tray|drip pan|oil tray", "drip tray", "container", ""},
	{"measuring jug|jug|measuring cup|graduated jug|measuring can", "jug", "container", ""},
	{"bowl of|old ice cream tub|ice cream tub|margarine tub|parts tray|magnetic tray|muffin tin", "tray", "container", ""},
	{"barrel for|waste barrel|oil barrel|waste oil tank|ibc", "drum", "container", ""},
	{"pallet truck|trolley|sack truck|dolly", "trolley", "other", ""},
	{"forklift forks|the forklift|telehandler", "forklift", "hoist", ""},
	{"engine hoist|gantry crane|overhead hoist|tripod|winch and strop|ratchet strap|ratchet straps|lifting frame", "hoist", "hoist", ""},
	{"eye bolt|lifting eyebolt|swivel eye", "lifting eye", "sling", ""},
	{"scaffold|scaffolding|mobile tower|tower|cherry picker|scissor lift platform|steps|step up|platform steps", "platform", "ladder", ""},
	{"creeper|crawler board", "creeper", "other", ""},
	{"barrier|barriers|cones|warning tape", "barrier", "other", ""},
	{"lock off kit|lockout kit|hasp|lock out hasp|lockout hasp", "lockout hasp", "lock", ""},
	{"prove dead kit|proving unit|voltage indicator|volt stick", "voltage indicator", "tester", ""},
	{"filter wrench|filter strap|filter cup", "filter wrench", "special", ""},
	{"cap wrench|oil filter wrench|oil filter cap wrench", "oil filter wrench", "special", ""},
	{"pipe wrench|stilson|stillson", "pipe wrench", "adjustable", ""},
	{"adjustable|adjustable wrench|adjustable spanner|shifter|crescent wrench|shifting spanner", "adjustable wrench", "adjustable", ""},
	{"c spanner|hook spanner|pin spanner|pin wrench|peg spanner", "pin spanner", "special", ""},
	{"spark plug socket|plug socket|plug spanner|plug wrench|sparkplug socket|spark plug wrench", "spark plug socket", "socket", ""},
	{"eight point socket|8 point socket", "eight-point socket", "socket", ""},
	{"socket|six point socket|twelve point socket", "socket", "socket", ""},
	{"deep socket|long socket|long reach socket|deep well socket", "deep socket", "socket", ""},
	{"impact socket", "impact socket", "socket", ""},
	{"wheel brace|wheelbrace|lug wrench|wheel wrench", "wheel brace", "wrench", ""},
	{"nut driver|nutdriver|nut spinner|nut runner", "nut driver", "screwdriver", ""},
	{"t bar|t handle|tee bar|tee handle", "T-handle", "hex-key", ""},
	{"chuck key", "chuck key", "special", ""},
	{"drain key|drain plug key|square key", "square key", "special", ""},
	{"bung wrench|drum key", "bung wrench", "special", ""},
	{"spanner|wrench|ring spanner|combination spanner|combination wrench|box end|box wrench|box end wrench|ring|flare nut wrench|line wrench", "wrench", "wrench", ""},
	{"open end|open ender|open ended spanner|open end wrench|open end spanner|open ended", "open-end wrench", "wrench", ""},
	{"hex key|ak|allen key|allen|hexagon key|allen wrench|hex wrench|allen head key|l key", "hex key", "hex-key", ""},
	{"hex bit|allen bit|allen socket|hex socket bit", "hex bit", "hex-bit", ""},
	{"torx|torx bit|torx key|star bit", "hexalobular bit", "bit", ""},
	{"screwdriver|screw driver|phillips screw driver|phillips screwdriver|cross head|jis screwdriver|flat screwdriver|flat blade|pozi|phillips|cross head screwdriver|flathead", "screwdriver", "screwdriver", ""},
	{"ratchet|ratchet handle", "ratchet", "ratchet", ""},
	{"breaker bar|knuckle bar|power bar|johnson bar", "breaker bar", "breaker-bar", ""},
	{"extension|extension bar", "extension", "extension", ""},
	{"crowfoot|crow foot|crows foot", "crowfoot", "crowfoot", ""},
	{"impact|impact gun|impact wrench|rattle gun|windy gun|air wrench|impact driver", "impact wrench", "impact-wrench", ""},
	{"pliers|plier|pincers|side cutter|snips|mole grips|vice grips|circlip plier|circlip pliers|snap ring plier|water pump plier|needle nose", "pliers", "pliers", ""},
	{"hammer|copper hammer|ball pein|dead blow|lump hammer", "hammer", "hammer", ""},
	{"mallet|soft mallet|rubber mallet|hide mallet", "mallet", "hammer", ""},
	{"punch|drift|pin punch|chisel|cold chisel|brass drift", "punch", "punch", ""},
	{"puller|gear puller|bearing puller|two leg puller|three leg puller", "puller", "puller", ""},
	{"spring puller|spring hook", "spring puller", "puller", ""},
	{"pry bar|prybar|tyre lever|tire iron|tommy bar|crowbar|crow bar|pinch bar|wrecking bar", "pry bar", "pry-bar", ""},
	{"scraper|gasket scraper|putty knife", "scraper", "scraper", ""},
	{"knife|stanley knife|utility knife", "knife", "scraper", ""},
	{"hook|pick|wire hook", "hook", "special", ""},
	{"brush|wire brush|brass brush|stiff brush|bristle brush|paint brush|parts brush|bottle brush", "brush", "brush", ""},
	{"broom", "broom", "brush", ""},
	{"vacuum|vacuum cleaner|shop vac|hoover|vac", "vacuum cleaner", "other", ""},
	{"file|flat file|bastard file|half round file|oil stone|oilstone|whetstone", "file", "file", ""},
	{"grinder|angle grinder|die grinder|bench grinder", "grinder", "grinder", ""},
	{"feel a gauge|feel a gage|feeler|feeler gauge|feeler gage|feelers|set of feelers|feeler blade", "feeler gauge", "gauge", ""},
	{"fin comb", "fin comb", "special", ""},
	{"straight edge|straightedge|laser alignment tool", "straight edge", "gauge", ""},
	{"dial gauge|dial indicator|dial gage|dti|clock gauge|test indicator|d t i|dial test indicator", "dial indicator", "indicator", ""},
	{"magnetic base|mag base|magnetic stand", "magnetic base", "other", ""},
	{"caliper|calliper|vernier|verniers|vernier caliper|digital caliper", "caliper", "measure", ""},
	{"micrometer|mike", "micrometer", "measure", ""},
	{"tape measure|steel rule|ruler|rule|measuring tape|tape rule", "rule", "measure", ""},
	{"depth gauge|tread gauge", "depth gauge", "gauge", ""},
	{"spirit level|bubble level|machinist level", "spirit level", "gauge", ""},
	{"spring scale|scale|pull scale|fish scale|spring balance|luggage scale|pull gauge|force gauge", "spring scale", "gauge", ""},
	{"belt clamp", "belt clamp", "clamp", ""},
	{"flushing muffs|flush muffs", "flushing muffs", "special", ""},
	{"belt tension gauge|tension gauge|tension meter|krikit", "tension gauge", "gauge", ""},
	{"pressure gauge|tyre gauge|tire gauge|gauge on the test point|test gauge|pressure gage", "pressure gauge", "tester", ""},
	{"multimeter|voltmeter|volt meter|multi meter|avo|meter across|meter on the|put a meter|put the meter|test lamp|test light|voltage tester|tester", "multimeter", "tester", ""},
	{"hydrometer", "hydrometer", "tester", ""},
	{"refractometer", "refractometer", "tester", ""},
	{"thermometer|infrared thermometer|heat gun thermometer|temp gun", "thermometer", "tester", ""},
	{"tachometer|tacho|rev counter", "tachometer", "tester", ""},
	{"stopwatch|stop watch", "stopwatch", "tester", ""},
	{"grease gun|greasegun|gun", "grease gun", "grease-gun", ""},
	{"oil can|oilcan|squeezy bottle|squeeze bottle|oiler bottle|drip can|pump can", "oil can", "oil-can", ""},
	{"oil pump|hand pump|transfer pump|suction pump|oil extractor|drum pump", "oil pump", "pump", ""},
	{"syringe|suction gun|oil syringe", "syringe", "pump", ""},
	{"funnel|filler funnel", "funnel", "funnel", ""},
	{"drip tray|drain tray|tray", "drip tray", "container", ""},
	{"drain pan|flat pan|oil pan under|pan|catch pan|oil tray|drainer", "drain pan", "container", ""},
	{"drain tub|tub|basin|washing up bowl", "drain tub", "container", ""},
	{"bucket|pail", "bucket", "container", ""},
	{"jerry can|drum for|empty can|catch can|waste can|waste drum|oil drum|waste oil drum", "can", "container", ""},
	{"jack|bottle jack|trolley jack|floor jack|high lift jack|hi lift", "jack", "jack", ""},
	{"hoist|chain hoist|chain block|engine crane|overhead crane|crane|lever hoist|come along|chain fall", "hoist", "hoist", ""},
	{"sling|strop|lifting strap|lifting chain|shackle|lifting eye", "sling", "sling", ""},
	{"axle stand|jack stand|stand|trestle|stand under the axle|stand under the frame|stand under the chassis", "stand", "stand", ""},
	{"block|wooden block|timber block|wood block|block of wood|blocks of wood|lump of wood|bit of timber|cribbing|packer|baulk", "block", "stand", ""},
	{"safety pin|transport pin|cylinder stop|cylinder lock|ram lock|ram stop", "safety pin", "stand", ""},
	{"wheel chock|chock", "wheel chock", "stand", ""},
	{"g clamp|c clamp|vice|vise", "clamp", "clamp", ""},
	{"padlock|red lock|yellow lock|lock on it|lock on|lock and key|safety lock|personal padlock|own padlock|own lock|your lock|my lock|lock and tag|lock out lock|lockout lock|personal lock", "padlock", "lock", ""},
	{"lockout tag|danger tag|warning tag|do not operate tag|own tag|your tag|my tag|tag on|with a tag", "tag", "tag", ""},
	{"torch|flashlight|lamp|inspection lamp|head torch|work light", "lamp", "light", ""},
	{"mirror|inspection mirror", "mirror", "mirror", ""},
	{"magnet on a stick|pick up magnet", "magnet", "mirror", ""},
	{"air line|airline|air gun|air hose|compressed air|blow gun|air nozzle", "air gun", "air-gun", ""},
	{"paint pen|paint marker|marker pen|marker|chalk", "marker", "marker", ""},
	{"ladder|step ladder|stepladder", "ladder", "ladder", ""},
	{"dip stick|put a stick in|stick in", "dip stick", "measure", ""},
	{"stethoscope|listening stick", "stethoscope", "other", ""},
	{"pressure washer|steam cleaner|jet wash|jetwash|hose pipe|garden hose", "pressure washer", "other", ""},

	{"glove|gloves|rubber gloves|rubber gl|leather gl|nitrile gl|long gloves|welding gloves|heat gloves|leather glove|rigger glove|nitrile glove|rubber glove|gauntlet|chemical glove", "gloves", "wear", "gloves"},
	{"cut resistant glove|cut proof glove|kevlar glove|chainsaw glove", "cut-resistant gloves", "wear", "cut-resistant-gloves"},
	{"goggles|goggle|safety goggles", "goggles", "wear", "eye-protection"},
	{"safety glasses|safety specs|specs|eye pro|safety spectacles|glasses on|specs on|eye protection", "safety glasses", "wear", "eye-protection"},
	{"face shield|visor|full face shield", "face shield", "wear", "face-shield"},
	{"ear muff|ear muffs|ears on|ear defender|ear defenders|ear protection|ear plugs|hearing protection|earmuffs|muffs|defenders", "ear muffs", "wear", "ear-protection"},
	{"dust mask|mask|p2 mask|p three mask|ffp2|f f p three|proper mask|face mask|ffp3|p3 mask", "mask", "wear", "mask"},
	{"respirator|breathing apparatus", "respirator", "wear", "respirator"},
	{"hard hat|helmet|bump cap", "hard hat", "wear", "helmet"},
	{"steel toe|steel toe boots|steel toecaps|safety boots|safety shoes", "safety shoes", "wear", "safety-shoes"},
	{"hi vis|high vis|hi viz", "high-visibility vest", "wear", "high-visibility"},
	{"apron|rubber apron", "apron", "wear", "apron"},
	{"harness", "harness", "wear", "harness"},

	{"rag|rags|lint free rag|lint free cloth|microfibre|blue roll|paper roll|shop roll|kitchen roll|old t shirt|clean rag|soft cloth|cloth|clean cloth|paper towel|shop towel|shop rag", "rag", "supply", ""},
	{"thread tape|ptfe tape|ptfe|plumber's tape|plumbers tape|teflon tape|bit of tape|seal tape|thread seal tape|turns of tape|turn of tape|wraps of tape|wrap of tape|white tape", "thread tape", "supply", ""},
	{"brake cleaner|degreaser|parts cleaner|solvent|contact cleaner|white spirit", "cleaner", "supply", ""},
	{"emery|emery cloth|emery paper|sandpaper|wet and dry|scotch brite|scotchbrite|scotch pad|sanding block", "emery cloth", "supply", ""},
	{"cable tie|zip tie|tie wrap|ty rap", "cable tie", "supply", ""},
	{"cardboard|bit of card|piece of card|bit of cardboard|sheet of card|card not hand", "cardboard", "supply", ""},
	{"insulating tape|electrical tape|duct tape|masking tape|gaffer tape|self amalgamating tape", "tape", "supply", ""},
	{"steel wool|wire wool|wirewool", "steel wool", "supply", ""},
	{"cotton bud|q tip|cotton swab", "cotton bud", "supply", ""},
	{"grinding paste|lapping paste|valve paste", "grinding paste", "supply", ""},
	{"pipe cleaner|bit of wire|piece of wire|length of wire", "wire", "supply", ""},
	{"plastic bag|freezer bag|polythene bag|cling film", "bag", "supply", ""},
	{"shim stock|shim steel", "shim stock", "supply", ""},
	{"old toothbrush|toothbrush|nylon brush|soft brush|hand brush", "brush", "brush", ""},
	{"locking wire|lockwire|lock wire", "locking wire", "supply", ""},
	{"absorbent|granules|oil dry|absorbent pads|oil pads|pig mat|absorbent mat|cat litter|spill kit|sawdust for", "absorbent", "supply", ""},
}

var tools = &phrases[toolRow]{fill: func(out *phrases[toolRow]) {
	for _, row := range toolRows {
		out.addAll(row.said, row)
	}
}}

// toolNames find a tool by what it is called here.
var toolNames = sync.OnceValue(func() map[string]toolRow {
	out := map[string]toolRow{}
	for _, row := range toolRows {
		out[row.name] = row
	}
	return out
})

// maybeTools are tools whose name is also another word; they are taken behind an article, a
// number or another word for the same tool, and in a list of tools.
var maybeTools = set("scale stand file clamp block hook pick punch brush hammer jack lamp ring gun vac vacuum pan can chock wedge rule mirror allen adjustable hoover knife tag tray lock vice drift")

// toolBefore are words that such a tool may follow.
var toolBefore = set("a an the my your with use and two three four axle jack using little big flat good some or get")

// headForms say what the head of a fastener is like, and name no tool.
var headForms = cues("hexagon socket|socket head|allen head|hex head|hex headed|socket cap|hexagon head|ring nut|ring gear")

// holdsBy are units of what a container holds: a five litre pan.
var holdsBy = set("litre liter l gallon quart pint")

// kitHere reports whether a word stands in a list of tools that is headed as one: Kit: …, Bring: ….
func kitHere(words []word, at int) bool {
	for i := at; i >= 0 && words[i].sentence == words[at].sentence; i-- {
		if words[i].stop == ':' {
			return i > 0 && kits.has(words[i-1].lower)
		}
	}
	return false
}

var kits = set("kit tools tool bring need needs gear take get gather")

func toolAt(words []word, at int) (toolRow, int) {
	if at >= len(words) {
		return toolRow{}, 0
	}
	row, length := tools.at(words, at)
	if length == 0 {
		row, length = toolHeard(words, at)
	}
	if length == 0 || headForms.has(words, at) {
		return toolRow{}, 0
	}
	w := words[at]
	if length == 1 && (row.name == "block" || row.name == "hook" || row.name == "stand") && at > 0 && w.stop == 0 && (modifiers.has(words[at-1].stem) && words[at-1].lower != "axle" || isHead(words[at-1].stem)) {
		return toolRow{}, 0 // slide blocks
	}
	if length == 1 && row.name == "block" && at > 0 && w.stop == 0 && numeric(words[at-1].lower) && words[at-1].lower != "1" && words[at-1].lower != "2" && words[at-1].lower != "4" {
		return toolRow{}, 0 // 8 blocks
	}
	if length == 1 && w.lower == "brushes" && wordBefore(words, at) != "with" && wordBefore(words, at) != "wire" {
		return toolRow{}, 0
	}
	if length == 1 && w.lower == "knives" {
		return toolRow{}, 0 // those of a machine
	}
	if length == 1 && row.name == "hook" && at > 1 && words[at-1].lower == "the" && (words[at-2].lower == "off" || words[at-2].lower == "on") {
		return toolRow{}, 0 // it comes off the hooks
	}
	if length == 1 && maybeTools.has(w.stem) && w.stem == w.lower && !w.of && !kitHere(words, at) {
		if at == 0 || w.stop == '.' || w.stop == 0 && !toolBefore.has(words[at-1].lower) && !numeric(words[at-1].lower) && smalls()[words[at-1].lower] == 0 && denominators()[words[at-1].lower] == 0 && !sized.has(words[at-1].lower) && !holdsBy.has(words[at-1].stem) {
			return toolRow{}, 0
		}
		if w.stop == ',' {
			listed := false
			for back := 1; back <= 3 && back <= at; back++ {
				_, other := tools.at(words, at-back)
				listed = listed || other == back
			}
			if !listed {
				return toolRow{}, 0
			}
		}
		if at > 0 && words[at-1].lower == "and" && (!endsHere(words, at+1) && articles.has(words[at+1].lower)) {
			return toolRow{}, 0
		}
	}
	if length == 1 && !endsHere(words, at+length) {
		if _, more := heads()[words[at+length].stem]; more && row.kind != "wear" { // "lock nut", "clamp bolts", "ring gear"
			return toolRow{}, 0
		}
	}
	return row, length
}
