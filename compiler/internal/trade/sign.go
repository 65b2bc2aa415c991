package trade

import "strings"

// Sign is a safety sign of ISO 7010:2019 with its amendments: number and meaning only.
type Sign struct{ Number, Name string }

// Kind says what the letter of the number stands for (ISO 3864-1 gives shape and colour).
func (s Sign) Kind() string {
	return map[byte]string{'W': "warning", 'M': "mandatory", 'P': "prohibition", 'E': "safe condition", 'F': "fire equipment"}[s.Number[0]]
}

// FindSign looks a sign up by its number, "W017".
func FindSign(number string) (Sign, bool) {
	for _, sign := range Signs() {
		if sign.Number == strings.ToUpper(strings.TrimSpace(number)) {
			return sign, true
		}
	}
	return Sign{}, false
}

// ParseSign is FindSign with an error that names the nearest number.
func ParseSign(text string) (Sign, error) {
	if sign, ok := FindSign(text); ok {
		return sign, nil
	}
	return Sign{}, unknown("sign of ISO 7010 in use here", text, keysOf(Signs(), func(s Sign) string { return s.Number }))
}

// Signs lists the signs a workshop uses, by letter and number. Titles follow
// lbize/iso-7010 lib.typ, shortened; a cheat sheet on the web that gives W004 to
// electricity and W018 to overhead loads is wrong. P028 is from memory.
func Signs() []Sign {
	return []Sign{
		{"E001", "emergency exit, left hand"}, {"E002", "emergency exit, right hand"}, {"E003", "first aid"}, {"E011", "eyewash station"}, {"E020", "emergency stop button"},
		{"F001", "fire extinguisher"},
		{"M001", "general mandatory action"}, {"M002", "refer to instruction manual"}, {"M003", "wear ear protection"}, {"M004", "wear eye protection"},
		{"M005", "connect earth"}, {"M006", "disconnect mains plug"}, {"M008", "wear safety footwear"}, {"M009", "wear protective gloves"},
		{"M010", "wear protective clothing"}, {"M011", "wash your hands"}, {"M013", "wear a face shield"}, {"M014", "wear head protection"},
		{"M015", "wear high-visibility clothing"}, {"M016", "wear a mask"}, {"M017", "wear respiratory protection"}, {"M018", "wear a safety harness"},
		{"M021", "disconnect before maintenance or repair"}, {"M026", "wear a protective apron"}, {"M027", "check guard"}, {"M028", "keep locked"},
		{"M057", "ensure continuous ventilation"}, {"M068", "lock moving mechanical parts"},
		{"P001", "general prohibition"}, {"P002", "no smoking"}, {"P003", "no open flame"}, {"P010", "do not touch"}, {"P015", "no reaching in"},
		{"P028", "do not wear gloves"}, {"P031", "do not alter the state of the switch"}, {"P069", "not to be serviced by users"},
		{"W001", "general warning"}, {"W002", "explosive material"}, {"W003", "radioactive material or ionizing radiation"}, {"W004", "laser beam"},
		{"W006", "magnetic field"}, {"W007", "floor-level obstacle"}, {"W008", "drop (fall)"}, {"W009", "biological hazard"}, {"W010", "low temperature"},
		{"W011", "slippery surface"}, {"W012", "electricity"}, {"W014", "industrial vehicles"}, {"W015", "overhead load"}, {"W016", "toxic material"},
		{"W017", "hot surface"}, {"W018", "automatic start-up"}, {"W019", "crushing"}, {"W021", "flammable material"}, {"W022", "sharp element"},
		{"W023", "corrosive substance"}, {"W024", "crushing of hands"}, {"W025", "counter-rotating rollers"}, {"W026", "battery charging"},
		{"W027", "optical radiation"}, {"W028", "oxidizing substance"}, {"W029", "pressurized cylinder"}, {"W035", "falling objects"},
		{"W038", "sudden loud noise"}, {"W041", "asphyxiating atmosphere"}, {"W042", "arc flash"}, {"W079", "hot content"}, {"W080", "hot steam"},
		{"W087", "high sound levels"}, {"W088", "moving blades"}, {"W089", "moving gears"},
	}
}
