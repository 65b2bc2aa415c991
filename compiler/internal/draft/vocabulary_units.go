package draft

import (
	"benchleaf/compiler/internal/quantity"
	"sync"
)

// unitWords are the units as they are said, typed and misheard. Several ways are apart by |.
var unitWords = []struct {
	said   string
	symbol string
	kind   quantity.Dimension
	open   bool
}{
	{"nm|n m|newton metre|newton meter|new ton metre|new ton meter|new ton mutter|newton mutter|new tonne metre|new tonne meter|newt metre|newt meter|newtown metre|newtown meter|neuton metre|neuton meter|neuton motor|newton motor|n·m", "N·m", quantity.Torque, false},
	{"newton|new ton", "N·m", quantity.Torque, false},
	{"foot pound|feet pound|foot lb|ft lb|ft lbs|ft pound|foot lbs|feet lbs|lb ft|lb foot|lbs ft|lbs foot|pound foot|pound feet|pounds foot|pounds feet|footpound|lbf ft|ftlb|ft·lb|lbft|lb·ft", "lbf·ft", quantity.Torque, false},
	{"inch pound|inch lb|inch lbs|in lb|in lbs|lb in|lbs in|lbs inch|pound inch|pound inches|inchpound|inlb|lbf in", "lbf·in", quantity.Torque, false},
	{"kilo metre of torque|kgm|kg m|kilogram force metre", "kgf·m", quantity.Torque, false},

	{"mm|mil|mill|milli|millimetre|millimeter|millie", "mm", quantity.Length, false},
	{"cm|centimetre|centimeter|centi", "cm", quantity.Length, false},
	{"micron|mic|um|µm", "µm", quantity.Length, false},
	{"metre|meter|mtr|mtrs", "m", quantity.Length, false},
	{"inch|in|\"", "in", quantity.Length, false},
	{"thou|thousandth|thousandth of an inch|thousandths of an inch|thousands of an inch", "thou", quantity.Length, false},
	{"foot|feet|ft", "ft", quantity.Length, false},

	{"l|litre|liter|ltr", "L", quantity.Volume, false},
	{"ml|millilitre|milliliter|mil litre|cc|c c|cubic centimetre", "mL", quantity.Volume, false},
	{"us gallon|u s gallon|american gallon", "US gal", quantity.Volume, false},
	{"us quart|u s quart|american quart", "US qt", quantity.Volume, false},
	{"us pint|u s pint|american pint", "US pt", quantity.Volume, false},
	{"us fluid ounce|u s fluid ounce|us fl oz|american fluid ounce", "US fl oz", quantity.Volume, false},
	{"imperial gallon|imp gal", "imp gal", quantity.Volume, false},
	{"imperial quart", "imp qt", quantity.Volume, false},
	{"imperial pint", "imp pt", quantity.Volume, false},
	{"gallon|gal", "gal", quantity.Volume, true},
	{"quart|qt", "qt", quantity.Volume, true},
	{"pint|pt", "pt", quantity.Volume, true},
	{"fluid ounce|fl oz", "fl oz", quantity.Volume, true},

	{"kg|kgs|kilo|kilogram|kilogramme|key low", "kg", quantity.Mass, false},
	{"g|gram|gramme", "g", quantity.Mass, false},
	{"tonne|metric ton", "t", quantity.Mass, false},
	{"pound|lb|lbs", "lb", quantity.Mass, false},
	{"ounce|oz", "oz", quantity.Mass, true},

	{"bar", "bar", quantity.Pressure, false},
	{"psi|p s i|pound per square inch|pounds per square inch|pounds a square inch|pea s i", "psi", quantity.Pressure, false},
	{"killer pascal|killa pascal|kilo pascal|kila pascal|kpa|k p a|kilopascal", "kPa", quantity.Pressure, false},
	{"mpa|megapascal", "MPa", quantity.Pressure, false},

	{"°c|deg c|degree c|degree celsius|degrees celsius|degree centigrade|celsius|centigrade", "°C", quantity.Temperature, false},
	{"°f|deg f|degree f|degree fahrenheit|degrees fahrenheit|fahrenheit", "°F", quantity.Temperature, false},
	{"deg|degree|°", "°", quantity.Angle, false},

	{"s|sec|second", "s", quantity.Time, false},
	{"min|minute", "min", quantity.Time, false},
	{"h|hr|hrs|hour|hour's work|engine hour|running hour|operating hour|meter hour", "h", quantity.Time, false},
	{"day", "days", quantity.Calendar, false},
	{"week", "weeks", quantity.Calendar, false},
	{"month", "months", quantity.Calendar, false},
	{"year", "years", quantity.Calendar, false},
	{"km|kms|kilometre|kilometer", "km", quantity.Distance, false},
	{"mile", "mi", quantity.Distance, false},

	{"turn|revolution of it|full turn|flat turn", "turn", quantity.Angle, false},
	{"flat", "flats", quantity.Angle, false},
	{"rpm|r p m|rev per minute|revs per minute|revs a minute|rev a minute|revolution per minute|revolutions per minute|revolutions a minute|rev/min|arpeem|are pee em", "rpm", quantity.RotationalSpeed, false},
	{"rev|revs|revolution", "rpm", quantity.RotationalSpeed, true},

	{"v|volt|vac|vdc|v ac|v dc|volt dc", "V", quantity.Voltage, false},
	{"a|amp|ampere", "A", quantity.Current, false},
	{"ohm", "Ω", quantity.Resistance, false},
	{"%|percent|per cent", "%", quantity.Ratio, false},

	{"stroke|pump|shot|squirt|stroke of the gun|pump of the gun", "strokes", quantity.Count, false},
	{"drop", "drops", quantity.Count, false},
	{"click", "clicks", quantity.Count, false},
	{"notch", "notches", quantity.Count, false},
	{"drop a minute|drop per minute|drops a minute|drops per minute", "drops/min", quantity.Flow, false},
	{"hz|hertz|hurt|cycles per second|cycle per second", "Hz", quantity.Frequency, false},
	{"khz|kilohertz", "kHz", quantity.Frequency, false},
	{"kw|kilowatt", "kW", quantity.Power, false},
	{"watt", "W", quantity.Power, false},
	{"hp|horsepower|horse power", "hp", quantity.Power, false},
	{"n|newtons of force", "N", quantity.Force, false},
	{"kn|kilonewton", "kN", quantity.Force, false},
	{"lbf|pound force|pounds force|pounds of force", "lbf", quantity.Force, false},
	{"kgf|kilos of force|kilograms force", "kgf", quantity.Force, false},
	{"mm s|mm/s|mm per second|millimetre a second|millimetre per second|millimeter per second|mm a second", "mm/s", quantity.Speed, false},
	{"m/s|metre a second|metre per second|meters per second|meters a second", "m/s", quantity.Speed, false},
	{"m min|m/min|metre a minute|metre per minute|meters per minute", "m/min", quantity.Speed, false},
	{"km h|km/h|kph|kilometre an hour|kilometre per hour", "km/h", quantity.Speed, false},
	{"mph|mile an hour|mile per hour", "mph", quantity.Speed, false},
	{"mv|millivolt", "mV", quantity.Voltage, false},
	{"ma|milliamp", "mA", quantity.Current, false},
	{"kohm|kilohm|kilo ohm|k ohm", "kΩ", quantity.Resistance, false},
	{"megohm|meg ohm|meg", "MΩ", quantity.Resistance, false},
	{"mbar|millibar", "mbar", quantity.Pressure, false},
	{"inch of mercury|inches of mercury|inhg|in hg", "inHg", quantity.Pressure, false},
	{"inch of water|inches of water|inch water gauge|inches water gauge", "inH2O", quantity.Pressure, false},
	{"pa|pascal", "Pa", quantity.Pressure, false},
	{"torr", "Torr", quantity.Pressure, false},
	{"l h|l/h|litre an hour|litre per hour|liters per hour|liters an hour", "L/h", quantity.Flow, false},
	{"gpm|gallon a minute|gallon per minute", "gpm", quantity.Flow, true},
	{"gal h|gal/h|gph|gallon an hour|gallon per hour", "gal/h", quantity.Flow, true},
	{"cfm|cubic feet a minute|cubic feet per minute", "cfm", quantity.Flow, false},
	{"cycle|wash cycle|operating cycle", "cycles", quantity.Cycles, false},
	{"tooth", "teeth", quantity.Count, false},
	{"l min|l/min|litre a minute|litre per minute|liters per minute", "L/min", quantity.Flow, false},
}

// ones are units of which one is written otherwise than several.
var ones = sync.OnceValue(func() map[string]string {
	return map[string]string{"days": "day", "weeks": "week", "months": "month", "years": "year", "strokes": "stroke", "drops": "drop", "flats": "flat", "clicks": "click", "notches": "notch"}
})

// single are units of which one may be told as "an inch", "a minute".
var single = set("cm in h min s days weeks months years L m mm drops turn° gal qt pt kg")

// closeOnly are units that are also other words, and are read only close to a figure.
var closeOnly = set("um in a s t h v n w pa ma")

var plainInch = set("inch centimetre centimeter millimetre millimeter mil litre liter gallon quart pint")

// sized are units that sizes of wrenches are told in.
var sized = set("mm mil mill milli millimetre millimeter inch")

// unitLetters are units that may be written close to a figure.
var unitLetters = set(`af hz khz kw kn n mv ma mbar revs deg mins yrs yr wks mths cc oz qt qts gal pt lbf kph mph micron um µm in-lb nm mm cm m l ml cc kg g t bar psi kpa mpa h hr hrs min mins s sec secs v a w in ft lb lbs rpm °c °f ° % " thou ltr km`)

var boundWords = []boundRow{
	{"max|maximum|inside|up to a max of|to a max of|no greater than|no bigger than|no higher than|not higher than|doesn't exceed|not exceed|must not exceed|inside of|not over|no over|not more than|no more than|never more than|not above|at most|at the most|under|less than|below|up to|anything under|over|more than|past|beyond|above|anything over|max of|maximum of|not past|no bigger than|within", atMost},
	{"nearer than|closer than|no nearer than|no closer than|min|minimum|at least|no lower than|not lower than|a good|a minimum of|not under|not less than|no less than|not below|minimum of", atLeast},
	{"about|around|roughly|round about|somewhere around|somewhere about|in the region of|somewhere near|just about|~|ca|approximately|approx|say|like|call it|some|nearly|near enough|i'd say|maybe|circa", about},
}

var boundsBehind = []boundRow{
	{"max|maximum|at most|at the most|tops|max.|absolute max|at the very most|and no more|is the limit|is plenty|or it's out|is your limit|no more|not more|or less|or under|on the rim max|limit|at the outside", atMost},
	{"min|minimum|at least|no lower than|not lower than|a good|a minimum of|or more|or above|and above|or better|and up|and over|or over", atLeast},
	{"or so|ish|or thereabouts|give or take|roughly|about", about},
}

var units = &phrases[unit]{fill: func(out *phrases[unit]) {
	for _, row := range unitWords {
		out.addAll(row.said, unit{row.symbol, row.kind, row.open})
	}
}}

var prefixes, suffixes = bounds(boundWords), bounds(boundsBehind)

type boundRow struct {
	said  string
	shape shape
}

func bounds(rows []boundRow) *phrases[shape] {
	return &phrases[shape]{fill: func(out *phrases[shape]) {
		for _, row := range rows {
			out.addAll(row.said, row.shape)
		}
	}}
}
