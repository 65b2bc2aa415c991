package draft

import (
	"strings"
	"sync"
)

// hazards takes what the notes warn of. What verbs and parts imply besides is told by lint.
func (t *taker) hazards() {
	for at := range t.words {
		if row, n := warnings.at(t.words, at); n > 0 && t.fuelled(at) && (row.key == "fire" || t.words[at].lower == "gas" || t.words[at].lower == "fumes") {
			t.warn("fuel", at, at+n)
		} else if n > 0 && row.key == "start" && length(handNear, t.words, at) > 0 && t.movingNear(at+n) == "pinch" {
			t.warn("pinch", at, at+n)
		} else if n > 0 && (row.beside == "" || t.near(cues(row.beside), at, at+n, 14, 14)) {
			t.warn(row.key, at, at+n)
		}
	}
	for at := range t.words {
		if body.has(t.words[at].lower) && t.near(clear, at, at+1, 0, 5) && !t.near(warnedOf, at, at+1, 3, 5) && t.movingNear(at+1) != "" {
			t.warn(t.movingNear(at+1), at, t.endAt(at+4))
		}
		if n := length(helpers, t.words, at); n > 0 && t.standings[at] == holds {
			t.warn("load", at, at+n)
			t.add(Count, "2", "people", at, at+n)
		}
	}
	t.bodies()
	t.minded()
	for _, m := range t.mentions {
		if m.class == springPart && t.standings[m.from] == holds {
			t.warn("spring", m.from, m.to)
		}
	}
	for _, it := range t.items {
		switch {
		case it.kind == toolItem && t.live(it.from, it.to) && it.tool.wear == "ear-protection" && !(afloat(t.words) && t.words[it.from].stem == "muff"):
			t.warn("noise", it.from, it.to)
		case it.kind == toolItem && t.live(it.from, it.to) && it.tool.name == "knife":
			t.warn("edge", it.from, it.to)
		case it.kind == amountItem && (it.amount.unit.symbol == "bar" && it.amount.low.int() >= 50 || it.amount.unit.symbol == "psi" && it.amount.low.int() >= 700) && t.near(cues("otherwise|mind|careful|in there|behind it"), it.from, it.to, 6, 6):
			t.warn("injection", it.from, it.to)
		}
	}
}

// fuelled reports whether fuel is named beside a word: gas fumes, petrol … no smoking.
func (t *taker) fuelled(at int) bool {
	return t.near(fuels, at, at+1, 4, 4) || t.near(gases, at, at+1, 30, 8)
}

// movingNear gives the hazard of a part that turns and is named close behind a word: one that
// draws in, or one that strikes and winds up.
func (t *taker) movingNear(at int) string {
	for i := at; i < min(at+8, len(t.words)) && t.words[i].sentence == t.words[at].sentence; i++ {
		p, n := partAt(t.words, i)
		switch {
		case n > 0 && strings.Contains(p.name, "shaft"):
			return "shaft"
		case n == 0 || p.class != movingPart && p.class != wheelPart:
			continue
		case drawsIn.has(p.head):
			return "pinch"
		}
		return "rotation"
	}
	return ""
}

func (t *taker) endAt(at int) int { return min(at, len(t.words)) }

var (
	fuels    = cues("gas fumes|petrol|gasoline|fuel|diesel|propane|lpg|l p g|butane")
	gases    = cues("propane|lpg|l p g|butane")
	handNear = cues("a hand near|hand near|hands near|hand in the|fingers in a|fingers in the")
	clear    = cues("away|clear|well back|off the|out of the")
	warnedOf = cues("a hand near|hand near|hands near")
	helpers  = cues("second man|2nd man|two man|2 man lift|or a mate|get a mate|second pair of hands|get somebody|get someone|two of you|two people|second person|another pair of hands|somebody to help|someone to help|get help|get a hand with|takes two to lift|two man lift")
	body     = set("hand hands hair sleeve sleeves finger fingers clothes clothing scarf")
	drawsIn  = set("roll roller belt chain sprocket pulley sheave gear pinion drum V-belt")
)

// warn keeps a hazard once in a sentence, also where it is told as what happened once.
func (t *taker) warn(key string, from, to int) {
	sentence := t.words[from].sentence
	for _, one := range t.out {
		if one.Kind == Hazard && one.Value == key && one.sentence == sentence && t.words[from].start-one.End < 25 {
			return
		}
	}
	t.put(Hazard, key, t.spokenOf(from), from, to)
}

// spokenOf is what the notes are about at a word.
func (t *taker) spokenOf(at int) string {
	name := ""
	for _, s := range t.sections {
		if s.at <= at {
			name = s.name
		}
	}
	return name
}

// bodies takes warnings of a part of the body, by what it is warned of: mind your fingers, keep
// your hands out of the blades, mind your knuckles on that edge.
func (t *taker) bodies() {
	for at := range t.words {
		w := t.words[at]
		if !limbs.has(w.stem) || t.standings[at] == slip || (w.lower == "back" || w.stem == "arm") && wordBefore(t.words, at) != "your" {
			continue
		}
		from := -1
		for i := at - 1; i >= max(at-6, 0) && t.words[i].sentence == w.sentence; i-- {
			if length(minding, t.words, i) > 0 {
				from = i
				break
			}
		}
		alone := (w.stem == "finger" || w.stem == "hand" || w.stem == "eye") && (w.stop != 0 || at == 0) && endsHere(t.words, at+1) // Fingers.
		behind := t.near(lost, at, at+1, 0, 7)
		if from < 0 && !alone && !behind {
			continue
		}
		if from < 0 {
			from = at
		}
		t.warn(t.bodyHazard(at, w.stem), from, t.endAt(at+1))
	}
}

// minded takes what is warned of by its name: mind the teeth, watch that spring.
func (t *taker) minded() {
	for at := range t.words {
		if length(beware, t.words, at) == 0 {
			continue
		}
		for i := at + 1; i < min(at+5, len(t.words)) && t.words[i].stop == 0; i++ {
			key := dangers()[t.words[i].stem]
			if key == "" && cutting.has(t.words[i].stem) {
				key = "edge"
			}
			if key != "" {
				t.warn(key, at, i+1)
				break
			}
		}
	}
}

var (
	beware  = cues("mind|watch|careful of|careful with|beware|beware of|look out for|watch out for|respect")
	dangers = sync.OnceValue(func() map[string]string {
		return map[string]string{"spring": "spring", "exhaust": "hot", "manifold": "hot", "steam": "hot", "fan": "rotation", "shaft": "shaft", "belt": "pinch", "chain": "pinch", "gear": "pinch", "roller": "pinch", "acid": "corrosive", "dust": "dust", "fume": "exhaust-gas", "terminal": "shock", "wire": "shock", "capacitor": "shock", "weight": "load", "swarf": "edge"}
	})
)

// bodyHazard is the hazard that a part of the body is warned of at a word.
func (t *taker) bodyHazard(at int, limb string) string {
	from, to := max(at-12, 0), min(at+12, len(t.words))
	moving := ""
	for i := from; i < to; i++ {
		if s := t.words[i].sentence; s != t.words[at].sentence && s != t.words[at].sentence-1 {
			continue
		}
		switch w := t.words[i].lower; {
		case cutting.has(t.words[i].stem):
			return "edge"
		case heating.has(w):
			return "hot"
		case jets.has(w) || w == "leak" || w == "leaks" || w == "hoses" && limb != "toe":
			return "injection"
		case w == "running" || w == "turning" || w == "spinning" || w == "moving" || w == "rotating":
			moving = "rotation"
		}
	}
	if by := t.movingNear(at + 1); by != "" && t.near(clear, at, at+1, 0, 6) {
		return by
	}
	switch {
	case limb == "eye" || limb == "face":
		return "chips"
	case limb == "back":
		return "load"
	case limb == "toe" || limb == "foot":
		return "crushing"
	case moving != "":
		return moving
	}
	return "pinch"
}

var (
	limbs   = set("finger hand knuckle thumb eye face back toe foot arm wrist")
	minding = cues("mind|watch|careful of|careful with|keep your|keep them|keep|never put|don't put|do not put|never your|not your|don't stick|never stick|don't get your|trap|traps|trapped|pinch|pinches|nip|nips|crush|crushes|catch|catches|lose|take|takes|took|have|have your|it'll have|cost")
	lost    = cues("clear|out of the way|out of there|out of it|well clear|off before|will go|gets pinched|gets trapped|gets caught")
	cutting = set("blade knife edge burr tooth sharp razor cutter swarf shard glass jagged file saw")
	heating = set("hot exhaust manifold muffler silencer scald boiling steam burner oven")
	jets    = set("pinhole jet injector leak spray")
)

type warningRow struct {
	said   string
	key    string // of the language
	beside string // what stands near it; "" for anything
}

// warningRows are words of warning, by the hazard they warn of.
var warningRows = []warningRow{
	{"starts by itself|starts itself|start by itself|cuts in by itself|comes on by itself|kicks in by itself|will come round|come round and|comes round on you|a hand near|hand near|hands near|hand in the|fingers in a|fingers in the|hand in there|switch one on|switched it on|switched one on|somebody starts it|someone starts it|starts it on you|run backwards|runs backwards|run backward|rolls backwards|wants to run back|creeps by itself|jump back over on you|turn over on you|fire up on you", "start", ""},
	{"before you get under|get underneath it|before you go under|under it while it|under a raised|let go all at once|drops all at once|arm come down|arm came down|come down on|came down on|coming down on|comes down on|drop on you|fall on you|fell on|nobody under it|nobody under|no one under|never get under|don't get under|not get under|arms under it|under it with just|handlebar tied down|only on the jack|just on the jack|on a jack alone|came off the jack|slips off the jack|roll back on you", "crushing", ""},
	{"mind your eyes|sharp edge|sharp edges|razor sharp|like a razor|sharp as|they're sharp|it's sharp|they are sharp|cut yourself|cut you|slice you|take your finger|have your finger|burrs on", "edge", ""},
	{"mind your fingers|mind your hands|watch your hands|your hands between|hands between|reach across|watch your fingers|trap your fingers|trap your hand|nip your fingers|pinch your|catch your fingers|fingers clear|crush your finger|lose a finger|fingers out of", "pinch", ""},
	{"feeling for a leak|feel for a leak|feel for leaks|feeling for leaks|inject|injects|through your skin|under your skin|pinhole|hand over a leak|hand over the leak", "injection", ""},
	{"under load that|it's under load|under load so|under tension|spring loaded|spring loaded so|will fly|flies off|fly off|it'll fly|ping off|pings off|let go on you|jump out at you", "spring", ""},
	{"guard is cracked|guard's cracked|guard is split|wind you up|winds you up|wrap you up|wraps round|catch your sleeve|loose sleeves|loose clothing|loose clothes|with it running and you do|drops a minute with it running|drops per minute with it running|drags you in|pull you in", "shaft", ""},
	{"fling|flings|chips fly|bits fly|fly out|goggles|flying", "chips", "trial|run|speed|revs|start|isolator|goggles|stand"},
	{"stand to the side|stand to one side|stand well clear of the|throw a stone|throws a stone|throws stones|throw stones", "chips", ""},
	{"never the thousand|not the thousand|wrong speed|never on the thousand", "speed-mismatch", ""},
	{"fine dust|dust mask|good for your chest|good for your lungs|bad for your chest|on your chest|don't breathe|breathe it in|breathing that in|wood dust|brake dust", "dust", ""},
	{"something falling off|falls off the|falling off the|stuff falling|things falling|drops under its own weight|drop under its own weight|under its own weight|it's heavy|heavy so|weighs a ton|weight of it|mind your back|two man lift|two people to lift|get a hand with it|keep a hand under it", "load", ""},
	{"across the posts|across the top of the posts|across the terminals|across the battery|short the battery|short it out|welded a", "battery-order", ""},
	{"acid|battery gas|batteries gas|gassing", "battery-gas", "battery|batteries"},
	{"cooks|off hot|scald|scalds|burn yourself|burn you|burns you|it'll burn|it's hot|they're hot|will be hot|boiling|take your face off|red hot|stinking hot|hot oil|steam", "hot", ""},
	{"gas you|gassed|fumes|carbon monoxide|outside to run|not in the shed|doors open|door open|choke you", "exhaust-gas", "start|run|engine|doors|door|gas|fumes"},
	{"start outside|run outside|not inside the|not in a closed|never indoors|not indoors|start it outside|start it outdoors|run it outside|run it outdoors|started outside|started outdoors|outdoors to start|outside to start", "exhaust-gas", ""},
	{"deafen|deafening|loud|your ears|hearing", "noise", ""},
	{"go up in flames|catch fire|set fire|fire extinguisher|extinguisher|near a flame|no smoking|no fag|sparks near", "fire", ""},
	{"petrol fumes|fuel vapour|spilt petrol|petrol everywhere|petrol on the", "fuel", ""},
	{"live wire|it's live|still live|electrocute|give you a belt|shock|belt off it|kill you", "shock", "wire|live|mains|shock|electric|capacitor|terminals"},
	{"bursts|blow up in your face|explode|over inflate|overinflate|rim will", "burst", ""},
	{"keeps spinning|still turning|still spinning|runs on|wait till it stops|until it stops dead|coasts", "rotation", ""},
	{"no warning|starts up with it|starts up with no|without warning|kicks in any time|cut in any time|could start|might start|can start|it'll start|it will start|will start up|start up on you|starts up on you|with the engine going|with the engine running|with the motor running|with the power on|switches it on|switch it on while|turns it on|turn it on while|hits the button|presses the button|knocks the switch|bumps the switch|auto start|auto restart|restarts|remote start|on a timer|while you're in there|while you're working on it|hand is in there|hand's in there|hands are in there|your arm in there", "start", ""},
	{"by itself|by themselves|on its own accord|of its own accord", "start", "start|starts|starting|turn|turns|run|runs|comes|kick|kicks|cut|cuts|moves|creep|creeps|auto|switch|switches"},
	{"don't trust that cylinder|don't trust the cylinder|don't trust that jack|never trust a jack|don't trust the ram|don't trust that ram|never trust the hydraulics|don't trust the hydraulics|don't trust hydraulics|what's under it|whatever is under it|nobody underneath|no one underneath|anyone underneath|don't stand under|never stand under|stand under|go under it|get under it|underneath it while|before going under|creeps down|it creeps|it sinks|it'll sink|comes down fast|drops like a stone|falls on|if it falls|if the jack|jack goes|jack slips|hydraulics fail|hose bursts|hose lets go|a hose goes|squash|squashed|squashes|flatten you|crush you|crushes you|crushed|roll away|rolls away|roll on you|topple|tip over|tips over|tip on you|won't hold it|never trust the jack|don't trust the jack|not on the jack", "crushing", ""},
	{"shave with it|shave with that|wire snags|snags your|snag your|broken strands|broken wires|wires stick out|sharp|like razors|razor blades|cut you to|slice your|slices|slice you|open you up|it'll cut you|will cut you|they'll cut you|take the skin off|jagged|splinters|splinter|burrs|nicks you|have your hand off|edges are|edge is like", "edge", ""},
	{"have your fingers|have them off|have your fingers off|take your fingers|take your hand|fingers in between|pinch point|pinch points|nip point|nip points|traps your|it'll trap|will trap|catch your fingers|it'll nip|it'll bite you|guillotine", "pinch", ""},
	{"go straight through|straight through your|through the skin|high pressure jet|fine jet|jet of oil|jet of fuel|spray of oil|under your skin|into your skin|into your blood|leak with your|leaks with your|hand along the hose|fingers along|with your bare hand|bar in there|bar in the|pressure behind|pressure in there|still got pressure|still under pressure|under pressure still", "injection", "hydraulic|hydraulics|oil|diesel|hose|hoses|injector|ram|jet|grease|pinhole|leak|leaks|line"},
	{"under tension|wound up|loaded spring|spring tension|shoots out|shoot out|fires out|fire out|flies out|fly out at|pops out|whips|whip back|lash|recoil|lets go with|under a lot of tension|got some force|force in it|it'll kick|kick back at", "spring", "spring|springs|tension|gas strut|recoil|cable|chain|belt|rope|tensioner"},
	{"compressed air|air gun|air line|airline|blow it out|blow them out|blowing it out|blowing out|blow down|blow off|high pressure air", "air", "skin|eyes|eye|ears|yourself|careful|mind|goggles|glasses|specs"},
	{"could burst|can burst|will burst|it'll burst|burst|explode|explodes|blow apart|vessel|inflating|overpressure|over pressure|go off like a|like a bomb|let the pressure off first|pressure in the tank|pressure in the receiver|pressure in the vessel|still pressure|residual pressure|pressure gauge reads zero|gauge to zero|gauge reads zero|gauge at zero|down to zero|stays on zero|hisses", "burst", "tank|receiver|vessel|tyre|tire|air|pressure|cap|cylinder|rim|boiler|inflate|inflating|gauge|sump"},
	{"on your foot|on your feet|on your toes|hang on to it|heavy|weighs|it's a lump|a fair lump|awkward|it's a weight|a bit of weight|two people|two of you|second pair of hands|second man|2nd man|a mate to help|bad back|your back|lift with your|don't lift it|too heavy|help lifting|hoist or|engine hoist|with the hoist|on the hoist|with a sling|under its own weight", "load", ""},
	{"asbestos|silica|dust mask|fine dust|dusty|the dust is|don't breathe|breathe that|breathe it|breathing it|breathing that|lungs|wheeze|flour dust|grain dust|mould|mouse droppings|fibreglass|brake dust|ffp3|ffp2|respirator|mask on|wear a mask|put a mask on", "dust", ""},
	{"take the skin right off|takes the skin right off|skin right off|leave some skin|leave your skin|skin on it|leave skin|burns you|burn you|burn your|scald|scalding|red hot|still hot|too hot|hot enough|piping hot|boiling|hot when|while it's hot|when it's hot|when hot|hot as|melt|takes the skin|cool down first|let it cool|let her cool|until it's cool|till it's cool|cool before|stays hot|gets hot|very hot|it's roasting|steam|hot water|hot oil|let it go cold", "hot", ""},
	{"carbon monoxide|fumes|doors open|door open|ventilate|ventilated|ventilation|open the doors|extraction on|exhaust extraction|gas you|not indoors|outside the shed|outdoors|in the open|start it outside|run it outside|fresh air|headache", "exhaust-gas", "start|run|engine|exhaust|running|idle|petrol|diesel"},
	{"decibels|db|loud|deafening|ear plugs|ear defenders|ear muffs|earmuffs|hearing protection|ears on|ear protection|defenders", "noise", ""},
	{"naked flame|naked flames|no flames|no sparks|spark near|sparks near|flammable|inflammable|no smoking|don't smoke|cigarette|catch fire|catches fire|set light|fire risk|go up like|whoosh|hot work|extinguisher|flash back|flashback|full of vapour|vapour|vapors|vapours", "fire", ""},
	{"live terminals|live parts|electrocuted|electrocute|electric shock|shock you|a shock|bite you|bites|belt off|kick off it|high voltage|four hundred volts|stays charged|still charged|hold a charge|holds a charge|hold charge|holds its charge|capacitors|capacitor|caps discharge|discharge the|stay live|still live|dead before|prove it dead|prove dead|mains in there|volts in there|drive caps", "shock", "capacitor|capacitors|charge|charged|mains|live|volts|electric|terminals|wire|wires|dead|voltage|shock|panel|drive|insulated|screwdriver|caps"},
	{"hydrogen|gives off gas|gas off|acid on your|acid in your|acid|batteries gas|off the battery|gassing", "battery-gas", "battery|batteries|charging|cells|acid|sparks|terminals"},
	{"acid|caustic|caustic soda|corrosive|lye|alkali|bleach|descaler|battery acid|it'll burn your skin|strip your skin|detergent|chemical|chemicals|eat your skin|eats your", "corrosive", "acid|caustic|corrosive|lye|alkali|bleach|chemical|chemicals|descaler|goggles|gloves"},
	{"solvent|solvents|thinners|brake cleaner|degreaser|white spirit fumes|vapour off the", "solvent", "fumes|breathe|vapour|ventilate|skin|gloves|head|headache|outside"},
	{"refrigerant|f gas|frostbite|frost burn|freeze your|asphyxiate|asphyxiating|nitrogen charge|nitrogen|gas charge", "gas", "refrigerant|frost|freeze|gas|nitrogen|accumulator|gloves|valve"},
	{"keeps turning|keep turning|coasts|coasting|run down|runs down|spins on|carries on turning|keeps spinning|wait till it stops|wait until it stops|wait for it to stop|until it's stopped|till it's stopped|still turning|clear of the fan|clear of fan|clear of the blade|clear of the blades|clear of the shaft|clear of the belt|away from the fan|away from fan|loose clothing|loose sleeves|long hair|hair tied|tie your hair|sleeves rolled|rolled up sleeves|no gloves|rings off|jewellery|ties off", "rotation", ""},
	{"drag you in|drags you in|pull you in|pulls you in|draw you in|draws you in|wrap round|wraps around|wrap you|wind you in|winds you in|took his tie|took his sleeve|catch your sleeve|catch a sleeve|grab your sleeve", "shaft", ""},
	{"fly off|flies off|bits flying|bits fly|chips fly|chips flying|throws bits|throw bits|throws stones|sparks fly|eye protection|in your eyes|in your eye|in the eyes|in your face|safety glasses|face shield|stand to one side|stand to the side|stand clear|out of line|not in line with|stand back|don't stand in front|don't stand behind", "chips", "fly|flying|chips|bits|stone|stones|stand|grinding|grinder|wheel|eyes|eye|face|swarf|sparks|grit|start"},
	{"the second rung|the 2nd rung|the top rung|the third rung|the 3rd rung|ladder footed|foot the ladder|footing the ladder|ladder tied|tie the ladder|hold the ladder", "fall", ""},
	{"off the ladder|off a ladder|fall off|falls off|up the ladder|from the ladder|step ladder|stepladder|harness|clip on|edge of the roof|off the roof|at height|working platform|slippery|slip on|slips on|don't climb|never climb|climb on|come off it|handrail", "fall", "ladder|roof|height|harness|platform|fall|step|climb|slippery|come|rail|edge"},
	{"confined space|gas test|oxygen level|tank entry|don't go in the tank|never go in the|get in the tank|bad air|gas monitor|someone outside|man outside", "confined", ""},
	{"old oil on your|dermatitis|oil on your skin|oil on your hands|skin cancer|barrier cream", "used-oil", ""},
	{"strips paint|strip the paint|takes the paint off|eats paint|off the paint|off your hands|wash it off", "brake-fluid", "brake|fluid|clutch"},
	{"petrol fumes|petrol vapour|fuel vapour|spilt fuel|spilled fuel|spill any|petrol everywhere|fuel everywhere|fuel drips|drips of petrol|hot engine|near a hot", "fuel", "petrol|fuel|gas|gasoline|diesel|carb|tank"},
	{"negative first|negative off first|earth off first|earth first|negative last|positive first|red first|black off first|black first|short it|short across|short between|spanner across|wrench across", "battery-order", "battery|terminal|terminals|negative|positive|spanner|wrench|posts|lead|clamps"},
}

var warnings = &phrases[warningRow]{fill: func(out *phrases[warningRow]) {
	for _, row := range warningRows {
		out.addAll(row.said, row)
	}
}}
