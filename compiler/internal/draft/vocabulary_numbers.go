package draft

import "sync"

// A time before a line: 03:12, [00:04:10], (1:02).
var timeStamp = pattern(`^\s*[\[(]?\d{1,3}:\d{2}(?::\d{2})?(?:[.,]\d{1,3})?[\])]?\s*[-–:]?\s*`)

var smalls = sync.OnceValue(func() map[string]int64 {
	return map[string]int64{
		"zero": 0, "nought": 0, "naught": 0, "oh": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
		"eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19,
		"twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90, "dozen": 12,
	}
})

var scales = sync.OnceValue(func() map[string]int64 {
	return map[string]int64{"hundred": 100, "thousand": 1000, "grand": 1000}
})

var denominators = sync.OnceValue(func() map[string]int64 {
	return map[string]int64{
		"half": 2, "halves": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "fourths": 4, "eighth": 8, "eighths": 8, "eights": 8,
		"sixteenth": 16, "sixteenths": 16, "sixteens": 16, "sixth": 6, "sixths": 6, "twelfth": 12, "fifth": 5, "fifths": 5, "tenth": 10, "tenths": 10,
	}
})

var longDenominators = sync.OnceValue(func() map[string]int64 {
	return map[string]int64{"thirty second": 32, "thirty seconds": 32, "sixty fourth": 64, "sixty fourths": 64}
})

var halves = sync.OnceValue(func() map[string]int64 {
	return map[string]int64{"½": 2, "¼": 1, "¾": 3}
})

// plurals are those that no rule gives.
var plurals = sync.OnceValue(func() map[string]string {
	return map[string]string{"teeth": "tooth", "feet": "foot", "knives": "knife", "leaves": "leaf", "bushes": "bush", "bushings": "bushing", "halves": "half", "axes": "axe", "valves": "valve", "sleeves": "sleeve", "sieves": "sieve", "gauges": "gauge", "hinges": "hinge", "fuses": "fuse", "hoses": "hose", "houses": "house", "brushes": "brush", "cases": "case", "bases": "base"}
})

// kept are words that end in s and stay as they are.
var kept = set("phillips grease gas chassis glass brass press this his less bellows pliers goggles gloves always across as is was has its us bus plus yes does goes axis lens alias canvas")

// The number before a line of a list: 1. or 2) or 3.
var listMark = pattern(`^\s*(\d{1,2})[.)]?\s+`)
