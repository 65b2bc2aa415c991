package trade

import "slices"

// Wear is a piece of protective equipment with its sign of ISO 7010.
type Wear struct{ Key, Name, Sign string }

// AllWear lists the protective equipment a job can ask for, head to foot after eyes and hands.
func AllWear() []Wear {
	return []Wear{
		{"eye-protection", "eye protection", "M004"},
		{"face-shield", "face shield", "M013"},
		{"gloves", "protective gloves", "M009"},
		{"cut-resistant-gloves", "cut-resistant gloves", "M009"},
		{"ear-protection", "ear protection", "M003"},
		{"safety-shoes", "safety footwear", "M008"},
		{"helmet", "head protection", "M014"},
		{"high-visibility", "high-visibility clothing", "M015"},
		{"clothing", "close-fitting protective clothing", "M010"},
		{"apron", "protective apron", "M026"},
		{"mask", "mask", "M016"},
		{"respirator", "respiratory protection", "M017"},
		{"harness", "safety harness", "M018"},
	}
}

// wearSaid are other words of the trade for the same equipment.
var wearSaid = map[string]string{
	"safety glasses": "eye-protection", "safety goggles": "eye-protection", "goggles": "eye-protection", "glasses": "eye-protection", "safety spectacles": "eye-protection",
	"visor": "face-shield", "nitrile gloves": "gloves", "work gloves": "gloves", "rubber gloves": "gloves", "cut gloves": "cut-resistant-gloves",
	"ear defenders": "ear-protection", "ear muffs": "ear-protection", "earmuffs": "ear-protection", "ear plugs": "ear-protection", "earplugs": "ear-protection", "hearing protection": "ear-protection",
	"safety boots": "safety-shoes", "steel-toe boots": "safety-shoes", "safety footwear": "safety-shoes", "boots": "safety-shoes",
	"hard hat": "helmet", "safety helmet": "helmet", "head protection": "helmet", "hi-vis": "high-visibility", "hi-vis vest": "high-visibility", "high-visibility vest": "high-visibility",
	"overalls": "clothing", "coveralls": "clothing", "dust mask": "mask", "respiratory protection": "respirator", "fall harness": "harness",
}

// FindWear looks protective equipment up by its key.
func FindWear(key string) (Wear, bool) {
	for _, wear := range AllWear() {
		if wear.Key == key {
			return wear, true
		}
	}
	return Wear{}, false
}

// ParseWear reads a key, a name or another word of the trade: "gloves", "ear protection",
// "hard hat". The error names the nearest key.
func ParseWear(text string) (Wear, error) {
	plain := squeeze(text)
	if key, ok := wearSaid[plain]; ok {
		wear, _ := FindWear(key)
		return wear, nil
	}
	for _, wear := range AllWear() {
		if plain == wear.Key || plain == wear.Name {
			return wear, nil
		}
	}
	return Wear{}, unknown("protective equipment", text, keysOf(AllWear(), func(w Wear) string { return w.Key }))
}

// wearInstead is what serves where a key is asked for, besides itself. A face shield is
// worn over eye protection, not in its place (29 CFR 1910.133, from memory); the rest is
// common practice, no source.
var wearInstead = map[string][]string{
	"gloves": {"cut-resistant-gloves"},
	"mask":   {"respirator"},
}

// Satisfies reports whether wearing one key is enough where another is asked for:
// cut-resistant gloves serve as gloves, a respirator as a mask. A face shield does not
// serve as eye protection.
func Satisfies(worn, asked string) bool {
	return worn == asked || slices.Contains(wearInstead[asked], worn)
}
