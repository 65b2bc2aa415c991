package draft

import (
	"cmp"
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"
)

// typed are words as they are written short in notes that somebody typed, and what they stand
// for. They are looked up as they are and without the s of a plural. What keeps its consonants
// in order ("gskt", "brg", "cplg") needs no row: skeleton finds it.
var typed = sync.OnceValue(func() map[string]string {
	return map[string]string{
		"yr": "year", "yrly": "yearly", "hrly": "hourly", "qts": "quarts", "gals": "gallons", "pts": "pints", "mo": "month", "mth": "month", "wk": "week", "wkly": "weekly", "mthly": "monthly", "qtr": "quarter", "qtrly": "quarterly", "ann": "annual",
		"ea": "each", "dn": "down", "med": "medium", "veh": "vehicle", "ev": "every", "evry": "every", "abt": "about", "aprox": "approx", "w/o": "without", "betw": "between", "btwn": "between", "til": "till", "thru": "through", "b4": "before", "bef": "before", "aft": "after", "incl": "including", "exc": "except", "excl": "except", "tho": "though", "em": "'em", "u": "you", "ur": "your", "oughta": "ought", "gotta": "must", "outta": "out", "thro'": "through", "thro": "through", "nxt": "next", "cust": "customer", "req": "required", "reqd": "required", "poss": "possible", "prev": "previous", "orig": "original", "spec": "specified",
		"chk": "check", "ck": "check", "chng": "change", "chg": "change", "rpl": "replace", "repl": "replace", "rplc": "replace", "rmv": "remove", "rem": "remove", "inst": "install", "adj": "adjust", "insp": "inspect", "tghtn": "tighten", "tq": "torque", "trq": "torque", "lub": "lube", "grs": "grease", "cln": "clean", "discon": "disconnect", "disco": "disconnect", "recon": "reconnect", "meas": "measure", "lsn": "loosen", "lkn": "loosen", "svc": "service", "serv": "service", "svce": "service", "isol": "isolate", "tens": "tension", "lubr": "lubricate", "reasm": "reassemble", "reassy": "reassemble", "retq": "retorque", "dismtl": "dismantle", "refil": "refill", "rnw": "renew", "renw": "renew", "ovhl": "overhaul", "tst": "test", "rec": "record",
		"prk": "park", "str": "stroke", "cu": "copper", "terms": "terminals", "defl": "deflection", "extr": "extraction", "filt": "filter", "lith": "lithium", "neg": "negative", "pos": "positive", "batt": "battery", "bat": "battery", "alu": "aluminium", "alum": "aluminium", "stbd": "starboard", "btm": "bottom", "bot": "bottom", "rh": "right", "lh": "left", "frt": "front", "fr": "front", "rr": "rear", "hyd": "hydraulic", "hydr": "hydraulic", "pneu": "pneumatic", "elec": "electric", "temp": "temperature", "lvl": "level", "qty": "quantity", "dia": "diameter", "assy": "assembly", "asm": "assembly", "mtg": "mounting", "lite": "light", "tite": "tight", "ctr": "centre", "cntr": "centre", "ext": "exhaust", "inl": "inlet", "outl": "outlet", "suct": "suction", "disch": "discharge", "ret": "return", "aux": "auxiliary", "mech": "mechanical", "vert": "vertical", "horiz": "horizontal", "synth": "synthetic", "min'l": "mineral", "cond": "condition", "clr": "clearance", "clrnce": "clearance", "vib": "vibration", "freq": "frequency", "press": "press", "scav": "scavenge", "sep": "separator",
		"skt": "socket", "spnr": "spanner", "thk": "thickness", "thd": "thread", "blk": "block", "carr": "carriage", "hd": "head", "brg": "bearing", "wshr": "washer", "gskt": "gasket", "fltr": "filter", "cvr": "cover", "scr": "screw", "blt": "bolt", "shft": "shaft", "cyl": "cylinder", "vlv": "valve", "mtr": "motor", "gbox": "gearbox", "gbx": "gearbox", "g'box": "gearbox", "trans": "transmission", "eng": "engine", "conn": "connector", "clnt": "coolant", "spkr": "spark", "drv": "drive", "elem": "element", "elmt": "element", "cplg": "coupling", "thermo": "thermostat", "reg": "regulator", "sol": "solenoid", "press'r": "pressure", "spdl": "spindle", "carb": "carburettor", "diff": "differential", "alt": "alternator", "accu": "accumulator", "comp": "compressor", "evap": "evaporator", "rad": "radiator", "imp": "impeller", "instr": "instrument", "isltr": "isolator", "sw": "switch", "cct": "circuit", "sqr": "square", "sq": "square", "nip": "nip", "cond'r": "condenser",
	}
})

// slashedForms are forms that are written short with a stroke between letters.
var slashedForms = sync.OnceValue(func() map[string]string {
	return map[string]string{
		"o/head": "overhead", "lock/tag": "lock and tag", "v/v": "valve", "v/vs": "valves", "s/v": "safety valve", "r/v": "relief valve", "m/c": "machine", "m/cs": "machines", "t/wrench": "torque wrench", "tq/wrench": "torque wrench", "t/w": "torque wrench", "h/tight": "hand tight", "f/tight": "finger tight", "u/side": "underside", "o/side": "outside", "i/side": "inside", "o/s": "offside", "n/s": "nearside", "l/h": "left", "r/h": "right", "f/wheel": "flywheel", "g/box": "gearbox", "c/shaft": "crankshaft", "a/f": "af", "n/a": "not applicable", "n/t": "not touched", "n/d": "not due", "c/w": "with", "w/o": "without", "w/out": "without", "w/shop": "workshop", "b/w": "between", "d/plug": "drain plug", "s/plug": "spark plug", "p/s": "power steering", "a/c": "air conditioning", "h/brake": "handbrake", "c/clamp": "clamp", "o/haul": "overhaul", "s/driver": "screwdriver", "w/screen": "windscreen", "t/stat": "thermostat", "b/plate": "backplate", "d/shaft": "drive shaft", "p/shaft": "propeller shaft", "h/lamp": "headlamp", "i/gear": "idler gear", "g/gun": "grease gun", "f/belt": "fan belt", "d/belt": "drive belt", "v/belt": "vee belt", "o/ring": "o-ring", "a/filter": "air filter", "o/filter": "oil filter", "f/filter": "fuel filter", "h/oil": "hydraulic oil", "e/oil": "engine oil", "g/oil": "gear oil", "e/stop": "emergency stop",
	}
})

// slashed reads a form with a stroke that begins at a place, with the place of its end.
func slashed(text string, at int) (string, int) {
	end := at
	for end < len(text) && (unicode.IsLetter(rune(text[end])) || text[end] == '/') {
		end++
	}
	if before, _ := utf8.DecodeLastRuneInString(text[:at]); at > 0 && wordRune(before) || !strings.Contains(text[at:end], "/") {
		return "", at
	}
	if whole, ok := slashedForms()[strings.ToLower(text[at:end])]; ok {
		return whole, end
	}
	return "", at
}

// signs stand for words where they stand alone in typed notes.
var signs = sync.OnceValue(func() map[rune]string {
	return map[rune]string{'+': "and", '&': "and", '=': "is", '@': "at", '#': "number", '×': "x"}
})

// unabridged gives the word that a typed short form stands for.
func unabridged(text string) string {
	if whole, ok := typed()[text]; ok {
		return whole
	}
	if len(text) > 2 && text[len(text)-1] == 's' {
		if whole, ok := typed()[text[:len(text)-1]]; ok && whole != "'em" {
			return whole + "s"
		}
	}
	return skeleton(text)
}

// shortened reports whether the dot behind a word only tells that it is written short: "w. oil".
func shortened(w word, behind string) bool {
	next, _ := utf8.DecodeRuneInString(strings.TrimLeft(behind, " "))
	if behind == "" || !unicode.IsLower(next) && !unicode.IsDigit(next) && !unicode.IsUpper(next) || behind[0] != ' ' && !unicode.IsLower(next) {
		return false
	}
	if len(w.raw) == 1 && w.raw >= "A" && w.raw <= "Z" && unicode.IsLower(next) {
		return true // D. put lube on the rail
	}
	bare := strings.ToLower(w.raw)
	if word, _, _ := strings.Cut(strings.TrimLeft(behind, " "), " "); unicode.IsUpper(next) && typed()[bare] != "" {
		return strings.ContainsAny(word, "0123456789") // cap scr. M8
	}
	return !unicode.IsUpper(next) && bare != "" && (typed()[bare] != "" || bare != w.lower && w.lower != "" && !w.of && bareMarks()[bare] == "" || cutShort.has(bare)) && !fullWord.has(bare)
}

// cutShort are words that stay as they are with a dot behind them; fullWord are whole words
// that look as if they were cut short.
var (
	cutShort = set("w q approx max min fig ref incl ca")
	fullWord = set("press temp carb alt trans comp rec rem inst sol bat spec u em nip min max no")
)

// skeleton gives the word of the trade whose consonants a short form keeps: "gskts" are gaskets,
// "cplg" is a coupling. Forms with a vowel are no skeletons.
func skeleton(text string) string {
	bare, many := text, ""
	if len(text) > 3 && strings.HasSuffix(text, "s") {
		bare, many = text[:len(text)-1], "s"
	}
	if len(bare) < 3 || strings.ContainsAny(bare, "aeiouy0123456789'·°%µ./\"") || noSkeleton.has(text) {
		return text
	}
	best := ""
	for _, whole := range skeletons()[bare[0]] {
		if len(whole) <= 2*len(bare)+1 && keepsOrder(bare, whole) && (best == "" || cmp.Or(cmp.Compare(len(whole), len(best)), cmp.Compare(whole, best)) < 0) {
			best = whole
		}
	}
	if best == "" {
		return text
	}
	return best + many
}

// keepsOrder reports whether the letters of a short form stand in a word in their order, from its
// first to its last consonant.
func keepsOrder(short, whole string) bool {
	at := 0
	for i := 0; i < len(whole) && at < len(short); i++ {
		if whole[i] == short[at] {
			at++
		}
	}
	end := strings.TrimRight(whole, "aeiouy")
	return at == len(short) && end != "" && end[len(end)-1] == short[len(short)-1]
}

// skeletons are the words that short forms may stand for, by their first letter.
var skeletons = sync.OnceValue(func() map[byte][]string {
	out := map[byte][]string{}
	keep := func(word string) {
		if len(word) > 4 && lettersOnly(word) && !slices.Contains(out[word[0]], word) {
			out[word[0]] = append(out[word[0]], word)
		}
	}
	for noun := range heads() {
		keep(noun)
	}
	for _, row := range deedRows {
		for verb := range strings.FieldsSeq(row.verbs) {
			if !strings.HasSuffix(verb, "s") && !strings.HasSuffix(verb, "ing") && !strings.HasSuffix(verb, "ed") {
				keep(verb)
			}
		}
	}
	for list := range out {
		slices.Sort(out[list])
	}
	return out
})

// noSkeleton are forms without a vowel that stand for themselves.
var noSkeleton = set("mm cm km kg lb lbs ft hrs hr mins psi rpm nlgi npt bsp bspp pvc ptfe atf vg gl mph kph hvac tv nth hmm mr mrs dr ltr ml qts pts nm mpa kpa ccw cw dc ac sae xl rh lh llb lbft ftlb ftlbs inlb inlbs kgm tdc bdc pto ptfs lcd led fd dtc nhs spb spz spa tps mth nps std nt")
