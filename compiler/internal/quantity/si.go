package quantity

import "math/big"

// coherent is the coherent unit of the SI in which a dimension is told to other programs, and how
// the base unit of the dimension turns into it: SI = factor · base + offset.
type coherent struct{ unit, factor, offset string }

// siTable goes by the SI Brochure (BIPM, 9th edition, 2019), tables 2 to 5 and 8. A turn is 360°; a
// radian is 180°/π, here to twenty figures. Days are of 86 400 s.
var siTable = map[Dimension]coherent{
	Torque:                {"N·m", "1", ""},
	Length:                {"m", "1/1000", ""},
	Volume:                {"m³", "1/1000", ""},
	Mass:                  {"kg", "1", ""},
	Pressure:              {"Pa", "1000", ""},
	Temperature:           {"K", "1", "273.15"},
	TemperatureDifference: {"K", "1", ""},
	Time:                  {"s", "1", ""},
	Calendar:              {"s", "86400", ""},
	Angle:                 {"rad", "0.017453292519943295769", ""},
	RotationalSpeed:       {"s⁻¹", "1/60", ""},
	Speed:                 {"m/s", "1", ""},
	Force:                 {"N", "1", ""},
	Flow:                  {"m³/s", "1/60000", ""},
	Voltage:               {"V", "1", ""},
	Current:               {"A", "1", ""},
	Power:                 {"W", "1", ""},
	Viscosity:             {"m²/s", "1/1000000", ""},
	Ratio:                 {"1", "1/100", ""},
	Resistance:            {"Ω", "1", ""},
	Density:               {"kg/m³", "1000", ""},
	Energy:                {"J", "1", ""},
	Charge:                {"C", "3600", ""},
	Frequency:             {"Hz", "1", ""},
	Application:           {"m³/m²", "1/10000000", ""},
	Count:                 {"1", "1", ""},
	Distance:              {"m", "1000", ""},
	Cycles:                {"1", "1", ""},
}

// SI is a value in the base unit of the dimension as one in the coherent unit of the SI, with
// that unit's symbol; of what is counted, and of shares, it is 1.
func (d Dimension) SI(value *big.Rat) (out *big.Rat, unit string) {
	row, known := siTable[d]
	if !known {
		return value, ""
	}
	factor, _ := new(big.Rat).SetString(row.factor)
	out = new(big.Rat).Mul(value, factor)
	if row.offset != "" {
		offset, _ := new(big.Rat).SetString(row.offset)
		out.Add(out, offset)
	}
	return out, row.unit
}
