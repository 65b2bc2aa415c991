package quantity

type unitRow struct {
	name        string
	symbol      string // as printed
	dimension   Dimension
	system      System
	factor      string // exactly, to the base unit of the dimension
	offset      string
	spellings   string // other ways to write it, apart by |; · stands for any of · - . * and space
	old         string // ways to write it that are read with a warning
	singular    string
	approximate bool
}

// unitTable is every unit that is read. Factors are exact products of the definitions
// in NIST SP 811 (2008), appendix B.8, and NIST Handbook 44, appendix C: 1 in = 25.4 mm,
// 1 lb = 0.453 592 37 kg, gn = 9.806 65 m/s², 1 US gal = 231 in³, 1 imp gal = 4.546 09 L.
// Where two dimensions share a symbol, the first row is what Any reads.
var unitTable = []unitRow{
	{name: "newton metre", symbol: "N·m", dimension: Torque, system: Metric, factor: "1", spellings: "Nm|newton metre|newton metres|newton meter|newton meters"},
	{name: "pound-force foot", symbol: "lbf·ft", dimension: Torque, system: Inch, factor: "1.3558179483314004",
		spellings: "ft·lb|ft·lbs|ftlb|ftlbs|lb·ft|lbs·ft|lbft|lbf·ft|lbfft|ft·lbf|FT·LB|FT·LBS|LB·FT|LBF·FT|foot·pound|foot·pounds|pound·foot|pound·feet|pounds·feet"},
	{name: "pound-force inch", symbol: "lbf·in", dimension: Torque, system: Inch, factor: "0.1129848290276167",
		spellings: "in·lb|in·lbs|inlb|inlbs|lb·in|lbs·in|lbin|lbfin|in·lbf|IN·LB|IN·LBS|LB·IN|LBF·IN|inch·pound|inch·pounds|pound·inch|pound·inches"},
	{name: "ounce-force inch", symbol: "ozf·in", dimension: Torque, system: Inch, factor: "0.00706155181422604375",
		spellings: "oz·in|in·oz|in·ozf|ozin|inoz|inch·ounce|inch·ounces|ounce·inch|ounce·inches"},
	{name: "kilogram-force metre", symbol: "kgf·m", dimension: Torque, system: Metric, factor: "9.80665", spellings: "kgfm|m·kgf", old: "kg·m|kgm|m·kg|mkg|kp·m|kpm|mkp|m·kp"},
	{name: "kilogram-force centimetre", symbol: "kgf·cm", dimension: Torque, system: Metric, factor: "0.0980665", spellings: "kgfcm|cm·kgf", old: "kg·cm|kgcm|cm·kg|kp·cm|kpcm"},
	{name: "centinewton metre", symbol: "cN·m", dimension: Torque, system: Metric, factor: "0.01", spellings: "cNm"},
	{name: "millinewton metre", symbol: "mN·m", dimension: Torque, system: Metric, factor: "0.001"},
	{name: "decanewton metre", symbol: "daN·m", dimension: Torque, system: Metric, factor: "10", spellings: "daNm|m·daN|mdaN"},
	{name: "newton millimetre", symbol: "N·mm", dimension: Torque, system: Metric, factor: "0.001", spellings: "Nmm"},
	{name: "kilonewton metre", symbol: "kN·m", dimension: Torque, system: Metric, factor: "1000", spellings: "kNm"},

	{name: "millimetre", symbol: "mm", dimension: Length, system: Metric, factor: "1", spellings: "millimetre|millimetres|millimeter|millimeters"},
	{name: "centimetre", symbol: "cm", dimension: Length, system: Metric, factor: "10", spellings: "centimetre|centimetres|centimeter|centimeters"},
	{name: "metre", symbol: "m", dimension: Length, system: Metric, factor: "1000", spellings: "metre|metres|meter|meters"},
	{name: "micrometre", symbol: "µm", dimension: Length, system: Metric, factor: "0.001", spellings: "um|micron|microns|micrometre|micrometres"},
	{name: "inch", symbol: "in", dimension: Length, system: Inch, factor: "25.4", spellings: "\"|''|inch|inches|IN"},
	{name: "foot", symbol: "ft", dimension: Length, system: Inch, factor: "304.8", spellings: "'|foot|feet|FT"},
	{name: "yard", symbol: "yd", dimension: Length, system: Inch, factor: "914.4", spellings: "yds|yard|yards"},
	{name: "thousandth of an inch", symbol: "thou", dimension: Length, system: Inch, factor: "0.0254", spellings: "thous|thousandth|thousandths"},
	{name: "mil", symbol: "mil", dimension: Length, system: Inch, factor: "0.0254", spellings: "mils"},

	{name: "litre", symbol: "L", dimension: Volume, system: Metric, factor: "1", spellings: "l|ℓ|litre|litres|liter|liters|ltr|ltrs"},
	{name: "millilitre", symbol: "mL", dimension: Volume, system: Metric, factor: "0.001", spellings: "ml|mℓ|millilitre|millilitres|milliliter|milliliters"},
	{name: "decilitre", symbol: "dL", dimension: Volume, system: Metric, factor: "0.1", spellings: "dl"},
	{name: "centilitre", symbol: "cL", dimension: Volume, system: Metric, factor: "0.01", spellings: "cl"},
	{name: "cubic centimetre", symbol: "cm³", dimension: Volume, system: Metric, factor: "0.001", spellings: "cc|ccm|CC"},
	{name: "hectolitre", symbol: "hL", dimension: Volume, system: Metric, factor: "100", spellings: "hl|hectolitre|hectolitres|hectoliter|hectoliters"},
	{name: "cubic metre", symbol: "m³", dimension: Volume, system: Metric, factor: "1000"},
	{name: "US gallon", symbol: "US gal", dimension: Volume, system: Inch, factor: "3.785411784", spellings: "gal·US|US·gallon|US·gallons|gallon·US|gallons·US|U·S·gal|U·S·gallon|U·S·gallons|gal·U·S"},
	{name: "US liquid quart", symbol: "US qt", dimension: Volume, system: Inch, factor: "0.946352946", spellings: "qt·US|qts·US|US·qts|US·quart|US·quarts|quart·US|quarts·US|U·S·qt|U·S·quart|U·S·quarts|qt·U·S"},
	{name: "US liquid pint", symbol: "US pt", dimension: Volume, system: Inch, factor: "0.473176473", spellings: "pt·US|pts·US|US·pts|US·pint|US·pints|pint·US|pints·US|U·S·pt|U·S·pint|U·S·pints|pt·U·S"},
	{name: "US fluid ounce", symbol: "US fl oz", dimension: Volume, system: Inch, factor: "0.0295735295625", spellings: "fl·oz·US|US·floz|floz·US|US·oz·fl|US·fluid·ounce|US·fluid·ounces|U·S·fl·oz|fl·oz·U·S"},
	{name: "imperial gallon", symbol: "imp gal", dimension: Volume, system: Inch, factor: "4.54609", spellings: "gal·imp|Imp·gal|gal·Imp|imperial·gal|imperial·gallon|imperial·gallons|imp·gallon|imp·gallons|UK·gal|gal·UK|UK·gallon|UK·gallons"},
	{name: "imperial quart", symbol: "imp qt", dimension: Volume, system: Inch, factor: "1.1365225", spellings: "qt·imp|Imp·qt|qt·Imp|imperial·qt|imperial·quart|imperial·quarts|imp·quart|imp·quarts|UK·qt|qt·UK|UK·quart|UK·quarts"},
	{name: "imperial pint", symbol: "imp pt", dimension: Volume, system: Inch, factor: "0.56826125", spellings: "pt·imp|Imp·pt|pt·Imp|imperial·pt|imperial·pint|imperial·pints|imp·pint|imp·pints|UK·pt|pt·UK|UK·pint|UK·pints"},
	{name: "imperial fluid ounce", symbol: "imp fl oz", dimension: Volume, system: Inch, factor: "0.0284130625", spellings: "fl·oz·imp|Imp·fl·oz|fl·oz·Imp|imp·floz|imperial·fl·oz|imperial·fluid·ounce|imperial·fluid·ounces|UK·fl·oz|fl·oz·UK"},
	{name: "cubic inch", symbol: "in³", dimension: Volume, system: Inch, factor: "0.016387064", spellings: "cu·in|cubic·inch|cubic·inches|ci|cid"},

	{name: "kilogram", symbol: "kg", dimension: Mass, system: Metric, factor: "1", spellings: "kgs|kilogram|kilograms"},
	{name: "gram", symbol: "g", dimension: Mass, system: Metric, factor: "0.001", spellings: "gram|grams"},
	{name: "tonne", symbol: "t", dimension: Mass, system: Metric, factor: "1000", spellings: "tonne|tonnes|metric·ton|metric·tons"},
	{name: "short ton", symbol: "US ton", dimension: Mass, system: Inch, factor: "907.18474", spellings: "US·tons|short·ton|short·tons"},
	{name: "long ton", symbol: "imp ton", dimension: Mass, system: Inch, factor: "1016.0469088", spellings: "imp·tons|long·ton|long·tons|imperial·ton|imperial·tons|UK·ton|UK·tons"},
	{name: "pound", symbol: "lb", dimension: Mass, system: Inch, factor: "0.45359237", spellings: "lbs|LB|LBS|pound|pounds"},
	{name: "ounce", symbol: "oz", dimension: Mass, system: Inch, factor: "0.028349523125", spellings: "OZ|ounce|ounces|oz·av|oz·avdp|oz·avoir|oz·wt|ounce·av|ounce·avoirdupois|ounces·avoirdupois|avoirdupois·ounce|avoirdupois·ounces"},

	{name: "bar", symbol: "bar", dimension: Pressure, system: Metric, factor: "100", spellings: "bars|BAR"},
	{name: "kilopascal", symbol: "kPa", dimension: Pressure, system: Metric, factor: "1"},
	{name: "megapascal", symbol: "MPa", dimension: Pressure, system: Metric, factor: "1000", spellings: "N/mm²"},
	{name: "millibar", symbol: "mbar", dimension: Pressure, system: Metric, factor: "0.1"},
	{name: "hectopascal", symbol: "hPa", dimension: Pressure, system: Metric, factor: "0.1"},
	{name: "pascal", symbol: "Pa", dimension: Pressure, system: Metric, factor: "0.001"},
	{name: "pound-force per square inch", symbol: "psi", dimension: Pressure, system: Inch, factor: "44482216152605/6451600000000", spellings: "PSI|psig|lbf/in²|lb/in²|lbs/in²"},
	{name: "kilogram-force per square centimetre", symbol: "kgf/cm²", dimension: Pressure, system: Metric, factor: "98.0665", old: "kg/cm²|kp/cm²|kgs/cm²"},
	{name: "standard atmosphere", symbol: "atm", dimension: Pressure, system: Metric, factor: "101.325"},
	// Conventional columns: 13.5951 g/cm³ for mercury, 1 g/cm³ for water, under gn (SP 811, appendix B.8, footnotes).
	{name: "inch of mercury", symbol: "inHg", dimension: Pressure, system: Inch, factor: "3.386388640341", spellings: "in·Hg|\"Hg|\"·Hg"},
	{name: "millimetre of mercury", symbol: "mmHg", dimension: Pressure, system: Metric, factor: "0.133322387415", spellings: "mm·Hg"},
	{name: "inch of water", symbol: "inH₂O", dimension: Pressure, system: Inch, factor: "0.24908891", spellings: "inH2O|in·H2O|\"H2O|inWC|in·WC"},

	{name: "degree Celsius", symbol: "°C", dimension: Temperature, system: Metric, factor: "1", spellings: "deg·C|degC|degs·C|degree·C|degrees·C|degrees·Celsius|degree·Celsius|Celsius", old: "C"},
	{name: "degree Fahrenheit", symbol: "°F", dimension: Temperature, system: Inch, factor: "5/9", offset: "-160/9", spellings: "deg·F|degF|degs·F|degree·F|degrees·F|degrees·Fahrenheit|degree·Fahrenheit|Fahrenheit", old: "F"},
	{name: "kelvin", symbol: "K", dimension: Temperature, system: Metric, factor: "1", offset: "-273.15"},
	{name: "degree Celsius", symbol: "°C", dimension: TemperatureDifference, system: Metric, factor: "1", spellings: "deg·C|degC|degrees·C|degrees·Celsius", old: "C"},
	{name: "degree Fahrenheit", symbol: "°F", dimension: TemperatureDifference, system: Inch, factor: "5/9", spellings: "deg·F|degF|degrees·F|degrees·Fahrenheit", old: "F"},
	{name: "kelvin", symbol: "K", dimension: TemperatureDifference, system: Metric, factor: "1"},

	{name: "second", symbol: "s", dimension: Time, system: Neutral, factor: "1", spellings: "sec|secs|second|seconds"},
	{name: "minute", symbol: "min", dimension: Time, system: Neutral, factor: "60", spellings: "mins|minute|minutes"},
	{name: "hour", symbol: "h", dimension: Time, system: Neutral, factor: "3600", spellings: "hr|hrs|hour|hours"},

	{name: "day", symbol: "days", singular: "day", dimension: Calendar, system: Neutral, factor: "1", spellings: "d|day"},
	{name: "week", symbol: "weeks", singular: "week", dimension: Calendar, system: Neutral, factor: "7", spellings: "wk|wks|week"},
	// The mean month and year of the Gregorian calendar: 146 097 days in 400 years.
	{name: "month", symbol: "months", singular: "month", dimension: Calendar, system: Neutral, factor: "30.436875", spellings: "month|mo|mos|mth|mths", approximate: true},
	{name: "year", symbol: "years", singular: "year", dimension: Calendar, system: Neutral, factor: "365.2425", spellings: "year|yr|yrs|y", approximate: true},

	{name: "degree", symbol: "°", dimension: Angle, system: Neutral, factor: "1", spellings: "deg|degs|degree|degrees"},
	{name: "turn", symbol: "turns", singular: "turn", dimension: Angle, system: Neutral, factor: "360", spellings: "turn|rev|revs|revolution|revolutions"},
	{name: "flat of a hexagon", symbol: "flats", singular: "flat", dimension: Angle, system: Neutral, factor: "60", spellings: "flat"},

	{name: "revolution per minute", symbol: "rpm", dimension: RotationalSpeed, system: Neutral, factor: "1", spellings: "RPM|rev/min|revs/min|r/min|1/min|/min|min⁻¹|U/min"},

	{name: "metre per second", symbol: "m/s", dimension: Speed, system: Metric, factor: "1", spellings: "m/sec"},
	{name: "metre per minute", symbol: "m/min", dimension: Speed, system: Metric, factor: "1/60"},
	{name: "millimetre per second", symbol: "mm/s", dimension: Speed, system: Metric, factor: "0.001"},
	{name: "kilometre per hour", symbol: "km/h", dimension: Speed, system: Metric, factor: "5/18", spellings: "km/hr|kph|kmh"},
	{name: "foot per minute", symbol: "ft/min", dimension: Speed, system: Inch, factor: "0.00508", spellings: "fpm|FPM|sfpm"},
	{name: "foot per second", symbol: "ft/s", dimension: Speed, system: Inch, factor: "0.3048", spellings: "ft/sec"},
	{name: "mile per hour", symbol: "mph", dimension: Speed, system: Inch, factor: "0.44704", spellings: "MPH|mi/h"},

	{name: "newton", symbol: "N", dimension: Force, system: Metric, factor: "1", spellings: "newton|newtons"},
	{name: "kilonewton", symbol: "kN", dimension: Force, system: Metric, factor: "1000"},
	{name: "decanewton", symbol: "daN", dimension: Force, system: Metric, factor: "10"},
	{name: "pound-force", symbol: "lbf", dimension: Force, system: Inch, factor: "4.4482216152605", spellings: "LBF", old: "lb|lbs|LB|LBS"},
	{name: "kilogram-force", symbol: "kgf", dimension: Force, system: Metric, factor: "9.80665", old: "kp"},

	{name: "litre per minute", symbol: "L/min", dimension: Flow, system: Metric, factor: "1", spellings: "l/min|lpm|LPM"},
	{name: "litre per hour", symbol: "L/h", dimension: Flow, system: Metric, factor: "1/60", spellings: "l/h"},
	{name: "millilitre per minute", symbol: "mL/min", dimension: Flow, system: Metric, factor: "0.001", spellings: "ml/min|cc/min|cm³/min"},
	{name: "cubic metre per hour", symbol: "m³/h", dimension: Flow, system: Metric, factor: "50/3"},
	{name: "US gallon per minute", symbol: "US gal/min", dimension: Flow, system: Inch, factor: "3.785411784", spellings: "US·gpm|US·GPM|gal/min·US|U·S·gal/min|gpm·US"},
	{name: "imperial gallon per minute", symbol: "imp gal/min", dimension: Flow, system: Inch, factor: "4.54609", spellings: "imp·gpm|UK·gal/min|UK·gpm|gal/min·imp|gpm·imp"},
	{name: "cubic foot per minute", symbol: "ft³/min", dimension: Flow, system: Inch, factor: "28.316846592", spellings: "cfm|CFM"},

	{name: "volt", symbol: "V", dimension: Voltage, system: Neutral, factor: "1", spellings: "volt|volts|VDC|VAC|V·DC|V·AC"},
	{name: "kilovolt", symbol: "kV", dimension: Voltage, system: Neutral, factor: "1000"},
	{name: "millivolt", symbol: "mV", dimension: Voltage, system: Neutral, factor: "0.001"},
	{name: "ampere", symbol: "A", dimension: Current, system: Neutral, factor: "1", spellings: "amp|amps|ampere|amperes"},
	{name: "milliampere", symbol: "mA", dimension: Current, system: Neutral, factor: "0.001"},

	{name: "watt", symbol: "W", dimension: Power, system: Neutral, factor: "1", spellings: "watt|watts"},
	{name: "kilowatt", symbol: "kW", dimension: Power, system: Metric, factor: "1000"},
	{name: "mechanical horsepower", symbol: "hp", dimension: Power, system: Inch, factor: "745.69987158227022", spellings: "HP|bhp|horsepower"},
	{name: "metric horsepower", symbol: "PS", dimension: Power, system: Metric, factor: "735.49875", spellings: "CV|metric·hp"},

	{name: "square millimetre per second", symbol: "mm²/s", dimension: Viscosity, system: Neutral, factor: "1"},
	{name: "centistokes", symbol: "cSt", dimension: Viscosity, system: Neutral, factor: "1"},

	{name: "percent", symbol: "%", dimension: Ratio, system: Neutral, factor: "1", spellings: "percent|per·cent|pct"},

	{name: "ohm", symbol: "Ω", dimension: Resistance, system: Neutral, factor: "1", spellings: "ohm|ohms|Ohm|Ohms"},
	{name: "milliohm", symbol: "mΩ", dimension: Resistance, system: Neutral, factor: "0.001", spellings: "mohm|milliohm|milliohms"},
	{name: "kilohm", symbol: "kΩ", dimension: Resistance, system: Neutral, factor: "1000", spellings: "kohm|kohms|kilohm|kilohms"},
	{name: "megohm", symbol: "MΩ", dimension: Resistance, system: Neutral, factor: "1000000", spellings: "Mohm|Mohms|megohm|megohms"},

	{name: "kilogram per litre", symbol: "kg/L", dimension: Density, system: Neutral, factor: "1", spellings: "kg/l|kg/dm³"},
	{name: "gram per cubic centimetre", symbol: "g/cm³", dimension: Density, system: Neutral, factor: "1", spellings: "g/mL|g/ml|g/cc"},
	{name: "kilogram per cubic metre", symbol: "kg/m³", dimension: Density, system: Neutral, factor: "0.001"},

	{name: "joule", symbol: "J", dimension: Energy, system: Neutral, factor: "1", spellings: "joule|joules"},
	{name: "kilojoule", symbol: "kJ", dimension: Energy, system: Neutral, factor: "1000"},
	{name: "watt hour", symbol: "W·h", dimension: Energy, system: Neutral, factor: "3600", spellings: "Wh"},
	{name: "kilowatt hour", symbol: "kW·h", dimension: Energy, system: Neutral, factor: "3600000", spellings: "kWh"},

	{name: "ampere hour", symbol: "A·h", dimension: Charge, system: Neutral, factor: "1", spellings: "Ah"},
	{name: "milliampere hour", symbol: "mA·h", dimension: Charge, system: Neutral, factor: "0.001", spellings: "mAh"},

	{name: "hertz", symbol: "Hz", dimension: Frequency, system: Neutral, factor: "1"},
	{name: "kilohertz", symbol: "kHz", dimension: Frequency, system: Neutral, factor: "1000"},

	// The international acre, 43 560 ft² = 4046.856 422 4 m².
	{name: "litre per hectare", symbol: "L/ha", dimension: Application, system: Metric, factor: "1", spellings: "l/ha"},
	{name: "US gallon per acre", symbol: "US gal/acre", dimension: Application, system: Inch, factor: "378541178400/40468564224", spellings: "US·gpa|US·gal/ac|gal/acre·US"},
	{name: "imperial gallon per acre", symbol: "imp gal/acre", dimension: Application, system: Inch, factor: "454609000000/40468564224", spellings: "imp·gpa|imp·gal/ac|UK·gal/acre|gal/acre·imp"},

	{name: "stroke", symbol: "strokes", singular: "stroke", dimension: Count, system: Neutral, factor: "1", spellings: "stroke|pump|pumps|shot|shots"},
	{name: "drop", symbol: "drops", singular: "drop", dimension: Count, system: Neutral, factor: "1", spellings: "drop"},
	{name: "turn", symbol: "turns", singular: "turn", dimension: Count, system: Neutral, factor: "1", spellings: "turn"},
	{name: "tooth", symbol: "teeth", singular: "tooth", dimension: Count, system: Neutral, factor: "1", spellings: "tooth"},
	{name: "link", symbol: "links", singular: "link", dimension: Count, system: Neutral, factor: "1", spellings: "link"},
	{name: "piece", symbol: "pieces", singular: "piece", dimension: Count, system: Neutral, factor: "1", spellings: "piece|pcs|pc"},
	{name: "pair", symbol: "pairs", singular: "pair", dimension: Count, system: Neutral, factor: "1", spellings: "pair"},
	{name: "click", symbol: "clicks", singular: "click", dimension: Count, system: Neutral, factor: "1", spellings: "click"},
	{name: "notch", symbol: "notches", singular: "notch", dimension: Count, system: Neutral, factor: "1", spellings: "notch"},
	{name: "sheet", symbol: "sheets", singular: "sheet", dimension: Count, system: Neutral, factor: "1", spellings: "sheet"},

	{name: "kilometre", symbol: "km", dimension: Distance, system: Metric, factor: "1", spellings: "kilometre|kilometres|kilometer|kilometers"},
	{name: "mile", symbol: "mi", dimension: Distance, system: Inch, factor: "1.609344", spellings: "mile|miles"},

	{name: "cycle", symbol: "cycles", singular: "cycle", dimension: Cycles, system: Neutral, factor: "1", spellings: "cycle"},
}
