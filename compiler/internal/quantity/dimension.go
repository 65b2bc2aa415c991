package quantity

// Dimension is what kind of thing an amount measures. Its base unit, in which
// bounds are compared, is named beside each.
type Dimension uint8

const (
	None                  Dimension = iota // of the zero Amount
	Torque                                 // N·m
	Length                                 // mm
	Volume                                 // L
	Mass                                   // kg
	Pressure                               // kPa
	Temperature                            // °C
	TemperatureDifference                  // °C of difference
	Time                                   // s
	Calendar                               // days; months and years are means of the Gregorian calendar
	Angle                                  // °
	RotationalSpeed                        // rev/min
	Speed                                  // m/s
	Force                                  // N
	Flow                                   // L/min
	Voltage                                // V
	Current                                // A
	Power                                  // W
	Viscosity                              // mm²/s
	Ratio                                  // %
	Resistance                             // Ω
	Density                                // kg/L
	Energy                                 // J
	Charge                                 // A·h
	Frequency                              // Hz
	Application                            // L/ha, of sprayers and spreaders
	Count                                  // 1; each thing counted is a unit of its own
	Distance                               // km, run by a machine
	Cycles                                 // 1
	Any                                    // asked of Parse: whatever the unit says
)

type dimension struct {
	name     string
	article  string
	usual    []string // symbols a shop would use, the first also in examples
	example  string   // a figure for an example
	negative bool     // a figure below zero can be meant
}

var dimensions = [...]dimension{
	None:                  {name: "nothing", article: "no"},
	Torque:                {"torque", "a", []string{"N·m", "lbf·ft", "lbf·in"}, "42", false},
	Length:                {"length", "a", []string{"mm", "in"}, "12", true},
	Volume:                {"volume", "a", []string{"L", "mL", "US qt"}, "1.2", false},
	Mass:                  {"mass", "a", []string{"kg", "g", "lb"}, "12", false},
	Pressure:              {"pressure", "a", []string{"bar", "kPa", "psi"}, "2.4", true},
	Temperature:           {"temperature", "a", []string{"°C", "°F"}, "80", true},
	TemperatureDifference: {"temperature difference", "a", []string{"°C", "°F"}, "10", true},
	Time:                  {"time", "a", []string{"min", "h", "s"}, "20", false},
	Calendar:              {"calendar time", "a", []string{"months", "weeks", "days"}, "12", false},
	Angle:                 {"angle", "an", []string{"°", "turns"}, "90", true},
	RotationalSpeed:       {"rotational speed", "a", []string{"rpm"}, "1450", false},
	Speed:                 {"speed", "a", []string{"m/s", "ft/min"}, "1.2", false},
	Force:                 {"force", "a", []string{"N", "kN", "lbf"}, "50", false},
	Flow:                  {"flow", "a", []string{"L/min", "US gal/min"}, "12", false},
	Voltage:               {"voltage", "a", []string{"V"}, "12", true},
	Current:               {"current", "a", []string{"A"}, "10", true},
	Power:                 {"power", "a", []string{"kW", "hp"}, "5.5", false},
	Viscosity:             {"viscosity", "a", []string{"mm²/s"}, "46", false},
	Ratio:                 {"ratio", "a", []string{"%"}, "50", true},
	Resistance:            {"resistance", "a", []string{"Ω", "kΩ"}, "5", false},
	Density:               {"density", "a", []string{"kg/L"}, "1.28", false},
	Energy:                {"energy", "an", []string{"J", "kW·h"}, "50", false},
	Charge:                {"charge", "a", []string{"A·h"}, "45", false},
	Frequency:             {"frequency", "a", []string{"Hz"}, "50", false},
	Application:           {"rate of application", "a", []string{"L/ha", "US gal/acre"}, "200", false},
	Count:                 {"count", "a", []string{"strokes", "drops", "pieces"}, "4", false},
	Distance:              {"distance", "a", []string{"km", "mi"}, "5000", false},
	Cycles:                {"number of cycles", "a", []string{"cycles"}, "500", false},
	Any:                   {name: "amount", article: "an", usual: []string{"mm", "N·m", "L"}, example: "3", negative: true},
}

func (d Dimension) String() string {
	if int(d) >= len(dimensions) {
		return "nothing"
	}
	return dimensions[d].name
}

// Usual are the units that a shop would use, the first also in examples; none for Any.
func (d Dimension) Usual() []Unit {
	if d == Any {
		return nil
	}
	var out []Unit
	for _, symbol := range d.row().usual {
		out = append(out, unitOf(d, symbol))
	}
	return out
}

// Dimensions lists every dimension that has a unit, in the order of the table.
func Dimensions() []Dimension {
	var out []Dimension
	for d := Torque; d < Any; d++ {
		out = append(out, d)
	}
	return out
}

func (d Dimension) row() dimension {
	if int(d) >= len(dimensions) {
		return dimensions[None]
	}
	return dimensions[d]
}
