package draft

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
		if body[t.words[at].lower] && t.near(clear, at, at+1, 0, 5) && !t.near(warnedOf, at, at+1, 3, 5) && t.movingNear(at+1) != "" {
			t.warn(t.movingNear(at+1), at, t.endAt(at+4))
		}
		if n := length(helpers, t.words, at); n > 0 && t.standings[at] == holds {
			t.warn("load", at, at+n)
			t.add(Count, "2", "people", at, at+n)
		}
	}
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
	return t.near(fuels, at, at+1, 4, 4)
}

// movingNear gives the hazard of a part that turns and is named close behind a word: one that
// draws in, or one that strikes and winds up.
func (t *taker) movingNear(at int) string {
	for i := at; i < min(at+8, len(t.words)) && t.words[i].sentence == t.words[at].sentence; i++ {
		p, n := partAt(t.words, i)
		switch {
		case n == 0 || p.class != movingPart && p.class != wheelPart:
			continue
		case drawsIn[p.head]:
			return "pinch"
		}
		return "rotation"
	}
	return ""
}

func (t *taker) endAt(at int) int { return min(at, len(t.words)) }

var (
	fuels    = cues("gas fumes|petrol|gasoline|fuel|diesel")
	handNear = cues("a hand near|hand near|hands near|hand in the|fingers in a|fingers in the")
	clear    = cues("away|clear|well back|off the|out of the")
	warnedOf = cues("a hand near|hand near|hands near")
	helpers  = cues("get somebody|get someone|two of you|two people|second person|another pair of hands|somebody to help|someone to help|get help|get a hand with|takes two to lift|two man lift")
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
	t.put(Hazard, key, t.section.name, from, to)
}

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
}

var warnings = func() (out phrases[warningRow]) {
	for _, row := range warningRows {
		out.addAll(row.said, row)
	}
	return out
}()
