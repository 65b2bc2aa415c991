package draft

import (
	"strings"
	"sync"
)

// sounds are the letters by how they sound, for words that were written as they were heard. What
// is not among them is not heard.
var sounds = sync.OnceValue(func() map[byte]byte {
	return map[byte]byte{
		'b': '1', 'p': '1', 'f': '1', 'v': '1',
		'c': '2', 'g': '2', 'j': '2', 'k': '2', 'q': '2', 's': '2', 'x': '2', 'z': '2',
		'd': '3', 't': '3', 'l': '4', 'm': '5', 'n': '5', 'r': '6',
	}
})

// sound gives how words sound together: the classes of their consonants, none twice in a row.
func sound(words ...string) string {
	out := []byte{}
	last := byte(0)
	for _, word := range words {
		for i := 0; i < len(word); i++ {
			class, ok := sounds()[word[i]]
			if !ok {
				if word[i] != 'h' && word[i] != 'w' {
					last = 0
				}
				continue
			}
			if class != last {
				out = append(out, class)
			}
			last = class
		}
		last = 0
	}
	return string(out)
}

// unitHeard reads a unit that was misheard behind a figure: "nuton meeters", "mill a meters". It
// has to sound like a long unit, and its words must mean nothing else.
func unitHeard(words []word, at int) (unit, int) {
	if at == 0 || words[at].stop != 0 {
		return unit{}, 0
	}
	if before := words[at-1].lower; !numeric(before) && smalls()[before] == 0 && scales()[before] == 0 {
		return unit{}, 0
	}
	var heard []string
	for n := 1; n <= 3 && at+n <= len(words); n++ {
		w := words[at+n-1]
		if n > 1 && w.stop != 0 || !lettersOnly(w.lower) && len(w.lower) > 2 {
			break
		}
		if _, head := heads()[w.stem]; head || n == 1 && (stopWords.has(w.lower) && w.lower != "new" || actionWords()[w.lower] || modifiers.has(w.lower)) {
			break
		}
		if _, tool := tools.at(words, at+n-1); tool > 0 {
			break
		}
		heard = append(heard, w.stem)
		if u, ok := unitSounds()[sound(heard...)]; ok && heard[0][0] == u.first {
			return u.unit, n
		}
	}
	return unit{}, 0
}

type heardUnit struct {
	unit
	first byte
}

// unitSounds are the units that are long enough to be told by their sound.
var unitSounds = sync.OnceValue(func() map[string]heardUnit {
	out := map[string]heardUnit{}
	for symbol, all := range map[string]string{
		"N·m": "newton metre|new to metre|newton leader|new to leader|neutron metre", "lbf·ft": "foot pound", "lbf·in": "inch pound", "mm": "millimetre", "mL": "millilitre",
		"kg": "kilogram", "L": "litre", "gal": "gallon", "kPa": "kilopascal", "°C": "degree celsius", "°F": "degree fahrenheit",
	} {
		for _, row := range unitWords {
			if row.symbol != symbol {
				continue
			}
			for said := range strings.SplitSeq(all, "|") {
				out[sound(strings.Fields(said)...)] = heardUnit{unit{row.symbol, row.kind, row.open}, said[0]}
			}
			break
		}
	}
	return out
})

// heardAs are words that sound like a number, and are one where only a number can stand.
var heardAs = sync.OnceValue(func() map[string]string {
	return map[string]string{"for": "four", "fore": "four", "ate": "eight", "to": "two", "too": "two", "tu": "two", "won": "one", "wan": "one", "tree": "three", "free": "three", "sicks": "six", "sex": "six", "sics": "six", "nein": "nine", "tin": "ten", "tenn": "ten", "fife": "five", "ayt": "eight", "sexteen": "sixteen", "twelf": "twelve", "hate": "eight"}
})

// numbersHeard puts numbers for what sounds like them before a unit, behind the M of a thread, and
// where something is counted: "ate mil", "m for", "there's for bolts".
func numbersHeard(words []word) {
	for i := range words {
		w := &words[i]
		if next := i + 1; (w.raw == "em" || w.lower == "um" || w.lower == "and" || w.lower == "am") && !endsHere(words, next) && threadSizes.has(words[next].lower) && !endsHere(words, next+1) && (w.raw == "em" || heads()[words[next+1].stem] == fastener || words[next+1].lower == "by") && w.raw != "" && (w.raw == "em" || w.lower == "am" || i > 0 && threadBefore.has(words[i-1].lower)) {
			w.lower, w.stem = "m", "m" // em six bolts
			continue
		}
		if w.raw == "em" && i+1 < len(words) && (threadSizes.has(words[i+1].lower) || heardAs()[words[i+1].lower] != "") {
			w.lower, w.stem = "m", "m"
			continue
		}
		if w.lower == "knew" && !endsHere(words, i+1) && (words[i+1].lower == "one" || words[i+1].lower == "ones" || isHead(words[i+1].stem)) {
			w.lower, w.stem = "new", "new"
			continue
		}
		number := heardAs()[w.lower]
		if number != "" && i > 0 && w.stop == 0 && smalls()[words[i-1].lower] >= 20 && smalls()[number] < 10 && (w.lower == "too" || w.lower == "ate" || w.lower == "won" || graded(words, i)) && !(!endsHere(words, i+1) && (smalls()[words[i+1].lower] > 0 || numeric(words[i+1].lower))) {
			w.lower, w.stem = number, number // thirty too
			continue
		}
		if number != "" && w.lower != "to" && w.lower != "for" && i+2 < len(words) && words[i+1].lower == "and" && (words[i+2].lower == "a" || denominators()[words[i+2].lower] > 0) && i > 0 && countedBehind.has(words[i-1].lower) {
			w.lower, w.stem = number, number // takes too and a half
			continue
		}
		if number == "" || i > 0 && (smalls()[words[i-1].lower] > 0 || numeric(words[i-1].lower)) && (w.lower == "to" || w.lower == "too") {
			continue
		}
		before := ""
		if i > 0 && w.stop == 0 {
			before = words[i-1].lower
		}
		counted := false
		if next := i + 1; !endsHere(words, next) {
			class, head := heads()[words[next].stem]
			counted = head && words[next].stem != words[next].lower && class != machinePart && countedBehind.has(before) || words[next].lower == "of" && next+1 < len(words) && pronouns.has(words[next+1].lower) && (before == "there" || before == "are" || before == "all")
			_, unit := units.at(words, next)
			small := unit > 0 && len(words[next].lower) > 2 && (sized.has(words[next].stem) || longUnits.has(words[next].stem))
			if small && (w.lower != "to" || countedBehind.has(before)) && (w.lower != "for" || before != "is" || countedBehind.has(before)) && !(w.lower == "for" && articles.has(words[next].lower)) {
				counted = true
			}
		}
		if before == "m" || counted {
			w.lower, w.stem = number, number
		}
	}
}

// graded reports whether the letters of a grade stand close before a word.
func graded(words []word, at int) bool {
	for i := max(at-4, 0); i < at; i++ {
		if w := words[i].lower; w == "vg" || w == "iso" || w == "sae" || w == "vee" {
			return true
		}
	}
	return false
}

var (
	threadSizes   = set("three four five six eight ten twelve fourteen sixteen twenty ate for 3 4 5 6 8 10 12 14 16 20")
	threadBefore  = set("four six eight two three the an these some little big")
	countedBehind = set("every on takes holds about around the there there's these those all other are is has have got with by a an its it's your")
	longUnits     = set("year month week hour day bar turn stroke quart pint gallon percent degree newton millilitre milliliter litre liter millibar gram kilo minute volt micron thou")
)

// toolHeard reads a tool of two words whose first was misheard: filler gauges, tork wrench.
func toolHeard(words []word, at int) (toolRow, int) {
	if endsHere(words, at+1) || words[at+1].hyphen || len(words[at].lower) < 4 || isHead(words[at].stem) || actionWords()[words[at].lower] || stopWords.has(words[at].lower) || len(words[at+1].lower) < 3 || stopWords.has(words[at+1].lower) {
		return toolRow{}, 0
	}
	row, ok := toolSounds()[sound(words[at].stem)+" "+words[at+1].stem]
	if !ok || row.first != words[at].lower[0] {
		return toolRow{}, 0
	}
	return row.toolRow, 2
}

type heardTool struct {
	toolRow
	first byte
}

// toolSounds are the tools of two words by the sound of the first.
var toolSounds = sync.OnceValue(func() map[string]heardTool {
	out := map[string]heardTool{}
	for _, row := range toolRows {
		for said := range strings.SplitSeq(row.said, "|") {
			first, second, ok := strings.Cut(said, " ")
			code := sound(singular(first))
			if !ok || strings.Contains(second, " ") || len(code) < 2 || len(first) < 4 {
				continue
			}
			if key := code + " " + singular(second); out[key].name == "" {
				out[key] = heardTool{row, first[0]}
			}
		}
	}
	return out
})

// partsHeard puts the noun of a part for a word that means nothing and sounds like it, and brakes
// for breaks: baring, calliper, break pads.
func partsHeard(words []word) {
	for i := range words {
		w := &words[i]
		if whole, ok := soundAlike()[w.stem]; ok {
			if w.lower != w.stem {
				w.lower = plural(whole)
			} else {
				w.lower = whole
			}
			w.stem = whole
			continue
		}
		if (w.lower == "break" || w.lower == "breaks") && !endsHere(words, i+1) && braked.has(words[i+1].stem) {
			w.lower, w.stem = "brake", "brake"
			continue
		}
		if len(w.stem) < 6 || !lettersOnly(w.stem) || w.raw == "" || w.raw[0] < 'a' || known(words, i) || strings.HasSuffix(w.lower, "ly") || prepositions.has(w.lower) {
			continue
		}
		if noun := nounSounds()[string(w.stem[0])+sound(w.stem)]; noun != "" && len(noun) <= len(w.stem)+1 && len(w.stem) <= len(noun)+1 && w.stem[len(w.stem)-1] == noun[len(noun)-1] {
			if w.lower != w.stem {
				w.lower = plural(noun)
			} else {
				w.lower = noun
			}
			w.stem = noun
		}
	}
}

// soundAlike are words that no workshop means, and the parts that sound the same.
var soundAlike = sync.OnceValue(func() map[string]string {
	return map[string]string{"vein": "vane", "peddle": "pedal", "shiv": "sheave", "gage": "gauge", "boult": "bolt", "skrew": "screw", "cermet": "grommet", "flywheal": "flywheel"}
})

var braked = set("pad disc drum shoe fluid line cable lever caliper pedal band lining hose pipe light")

// phrasesHeard puts a part of two words for two that sound like them together: grabs crews.
func phrasesHeard(words []word) {
	for i := 0; i+1 < len(words); i++ {
		a, b := &words[i], &words[i+1]
		if a.raw == "talk" && b.stop == 0 && torqued.has(b.lower) {
			a.lower, a.stem = "torque", "torque" // talk it again
			continue
		}
		if b.stop != 0 || len(a.stem) < 3 || len(b.stem) < 3 || !lettersOnly(a.lower) || !lettersOnly(b.lower) || isHead(b.stem) || modifiers.has(a.stem) || stopWords.has(a.lower) || stopWords.has(b.lower) {
			continue
		}
		said, ok := phraseSounds()[string(a.lower[0])+sound(a.lower+b.stem)]
		if !ok {
			continue
		}
		first, second, _ := strings.Cut(said, " ")
		if b.lower != b.stem {
			second = plural(second)
		}
		a.lower, a.stem = first, first
		b.lower, b.stem = second, singular(second)
	}
}

// torqued are words behind "torque", which is often heard as talk.
var torqued = set("it them those these the 'em")

// phraseSounds are parts of two words by the first letter and the sound of both together.
var phraseSounds = sync.OnceValue(func() map[string]string {
	out := map[string]string{}
	keep := func(said string) {
		first, second, ok := strings.Cut(said, " ")
		if code := sound(first + second); ok && !strings.Contains(second, " ") && len(code) > 4 && len(first) > 2 && out[string(first[0])+code] == "" {
			out[string(first[0])+code] = said
		}
	}
	for _, row := range nounPhrases {
		for said := range strings.SplitSeq(row.said, "|") {
			keep(said)
		}
	}
	for _, said := range []string{"grub screw", "set screw", "lock nut", "wing nut", "split pin", "roll pin", "shear pin", "copper washer", "drain plug", "level plug", "spark plug", "drive belt", "hose clip"} {
		keep(said)
	}
	return out
})

// oftenMisheard are nouns that are common enough in the trade to be meant by what sounds like them.
var oftenMisheard = set("bearing gasket caliper pulley throttle piston sleeve spindle impeller bushing sprocket solenoid carburettor diaphragm thermostat manifold crankshaft camshaft flywheel governor magneto alternator contactor capacitor condenser evaporator compressor gearbox coupling tensioner adjuster radiator injector actuator accumulator separator strainer circlip grommet trunnion knuckle clevis shackle coolant cylinder filter washer")

// nounSounds are those nouns by their first letter and their sound, where it is one noun's.
var nounSounds = sync.OnceValue(func() map[string]string {
	out := map[string]string{}
	for noun := range oftenMisheard.all() {
		key := string(noun[0]) + sound(noun)
		if has, ok := out[key]; ok && has != noun {
			out[key] = ""
			continue
		}
		out[key] = noun
	}
	return out
})
