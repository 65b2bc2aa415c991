package plan

// TrendPoint is one reading on a trend sheet.
type TrendPoint struct {
	X, Y    float64
	Day     string // ISO 8601
	Outside bool   // of the limit it had when it was read
	Before  bool   // what was measured is gone, so the line does not count it
}

// TrendLine is the straight line through the readings: y = A + B·x.
type TrendLine struct{ A, B float64 }

// TrendBand is what a further reading at X is to be expected between.
type TrendBand struct{ X, Low, High float64 }

// TrendMeeting is where the line meets a limit.
type TrendMeeting struct {
	X           float64
	Early, Late float64 // where the band meets it
	Text        string  // "3450 h (3300 to 3700 h)"
}

// Trend is how one thing that is read on a machine has moved, and where it is going. Points
// may come in any order; figures are finite and written with the decimal mark of Words.
type Trend struct {
	Words   Words
	Shop    string
	Machine string
	What    string // "Chain slack"
	Unit    string // of y: "mm"
	XTitle  string // what the readings are spread over, with its unit: "Hour meter, h"
	Points  []TrendPoint
	Low     *float64 // limits; nil where there is none
	High    *float64
	Line    *TrendLine    // nil where there is none to draw
	Band    []TrendBand   // by X, at least two; drawn straight between them
	Meets   *TrendMeeting // nil where that cannot be said
	Verdict string        // what the readings say, in a sentence or two
	Date    string        // ISO 8601 day up to which the readings are
}
