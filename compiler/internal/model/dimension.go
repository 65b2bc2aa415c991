package model

import (
	"strings"

	"benchleaf/compiler/internal/quantity"
)

// dimensionNames are the names the schema uses for what an amount measures. An
// interval is running time, calendar time, distance or cycles.
var dimensionNames = map[string][]quantity.Dimension{
	"torque": {quantity.Torque}, "length": {quantity.Length}, "volume": {quantity.Volume}, "mass": {quantity.Mass}, "count": {quantity.Count}, "number": {quantity.Count},
	"time": {quantity.Time}, "angle": {quantity.Angle}, "pressure": {quantity.Pressure}, "voltage": {quantity.Voltage}, "any": {quantity.Any},
	"calendar": {quantity.Calendar}, "interval": {quantity.Time, quantity.Calendar, quantity.Distance, quantity.Cycles},
}

// dimensions are the dimensions a key of the schema allows, the likeliest first.
func dimensions(of string) []quantity.Dimension {
	var out []quantity.Dimension
	for _, name := range strings.Fields(of) {
		out = append(out, dimensionNames[name]...)
	}
	return out
}
