package draft

// typed are words as they are written short in notes that somebody typed, and what they stand
// for. They are looked up as they are and without the s of a plural.
var typed = map[string]string{
	"yr": "year", "qts": "quarts", "gals": "gallons", "pts": "pints", "mo": "month", "wk": "week", "wkly": "weekly", "mthly": "monthly", "qtr": "quarter",
	"ea": "each", "evry": "every", "abt": "about", "aprox": "approx", "w/o": "without", "betw": "between", "btwn": "between", "til": "till", "thru": "through", "b4": "before", "bef": "before", "aft": "after", "incl": "including", "tho": "though", "em": "'em", "u": "you", "ur": "your", "oughta": "ought", "gotta": "must", "outta": "out",
	"chk": "check", "ck": "check", "chng": "change", "chg": "change", "rpl": "replace", "repl": "replace", "rplc": "replace", "rmv": "remove", "inst": "install", "adj": "adjust", "insp": "inspect", "tghtn": "tighten", "tq": "torque", "trq": "torque", "lub": "lube", "grs": "grease", "cln": "clean", "discon": "disconnect", "meas": "measure", "lsn": "loosen",
	"neg": "negative", "pos": "positive", "batt": "battery", "alu": "aluminium", "alum": "aluminium", "stbd": "starboard", "btm": "bottom", "rh": "right", "lh": "left", "frt": "front", "hyd": "hydraulic", "elec": "electric", "temp": "temperature", "lvl": "level", "qty": "quantity", "dia": "diameter", "assy": "assembly", "mtg": "mounting", "lite": "light", "tite": "tight",
	"skt": "socket", "hd": "head", "brg": "bearing", "wshr": "washer", "gskt": "gasket", "fltr": "filter", "cvr": "cover", "scr": "screw", "blt": "bolt", "shft": "shaft", "cyl": "cylinder", "vlv": "valve", "mtr": "motor", "gbox": "gearbox", "trans": "transmission", "eng": "engine", "conn": "connector", "clnt": "coolant", "spkr": "spark", "drv": "drive",
}

// signs stand for words where they stand alone in typed notes.
var signs = map[rune]string{'+': "and", '&': "and", '=': "is", '@': "at", '#': "number"}

// unabridged gives the word that a typed short form stands for.
func unabridged(text string) string {
	if whole, ok := typed[text]; ok {
		return whole
	}
	if len(text) > 2 && text[len(text)-1] == 's' {
		if whole, ok := typed[text[:len(text)-1]]; ok && whole != "'em" {
			return whole + "s"
		}
	}
	return text
}
