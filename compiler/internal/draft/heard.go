package draft

// sounds are the letters by how they sound, for words that were written as they were heard. What
// is not among them is not heard.
var sounds = map[byte]byte{
	'b': '1', 'p': '1', 'f': '1', 'v': '1',
	'c': '2', 'g': '2', 'j': '2', 'k': '2', 'q': '2', 's': '2', 'x': '2', 'z': '2',
	'd': '3', 't': '3', 'l': '4', 'm': '5', 'n': '5', 'r': '6',
}

// sound gives how words sound together: the classes of their consonants, none twice in a row.
func sound(words ...string) string {
	out := []byte{}
	last := byte(0)
	for _, word := range words {
		for i := 0; i < len(word); i++ {
			class, ok := sounds[word[i]]
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
	if before := words[at-1].lower; !numeric(before) && smalls[before] == 0 && scales[before] == 0 {
		return unit{}, 0
	}
	var heard []string
	for n := 1; n <= 3 && at+n <= len(words); n++ {
		w := words[at+n-1]
		if n > 1 && w.stop != 0 || !lettersOnly(w.lower) && w.lower != "a" {
			break
		}
		if _, head := heads[w.stem]; head || n == 1 && (stopWords[w.lower] || actionWords[w.lower] || modifiers[w.lower]) {
			break
		}
		heard = append(heard, w.stem)
		if u, ok := unitSounds[sound(heard...)]; ok && heard[0][0] == u.first {
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
var unitSounds = func() map[string]heardUnit {
	out := map[string]heardUnit{}
	for symbol, said := range map[string][]string{
		"N·m": {"newton", "metre"}, "lbf·ft": {"foot", "pound"}, "lbf·in": {"inch", "pound"}, "mm": {"millimetre"}, "mL": {"millilitre"},
		"kg": {"kilogram"}, "kPa": {"kilopascal"}, "°C": {"degree", "celsius"}, "°F": {"degree", "fahrenheit"},
	} {
		for _, row := range unitWords {
			if row.symbol == symbol {
				out[sound(said...)] = heardUnit{unit{row.symbol, row.kind, row.open}, said[0][0]}
				break
			}
		}
	}
	return out
}()
