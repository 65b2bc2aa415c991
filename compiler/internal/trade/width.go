package trade

import (
	"fmt"
	"math/big"
	"slices"
	"strconv"
	"strings"
)

// Width is a width across flats: of a head, a nut, a hexagon socket, or of the tool for it.
type Width struct {
	MM         float64
	Label      string // "16 mm", "3/4 in"
	Inch       bool
	Standard   string // where it is published; empty for one that was only written down
	FromMemory bool   // the standard was not seen in print
}

// widest is above every size a hand tool is sold in (metric 80 mm, inch 3-1/8 in), with room for ring spanners.
const widest = 200.0

// narrowest is below every size a hand tool is sold in (hex keys from 0.7 mm).
const narrowest = 0.5

// unitsOfWidth end a width, the longer before what they end with.
var unitsOfWidth = []string{"mm", "inches", "inch", "in.", "in", `"`, "”", "″"}

// ParseWidth reads "16 mm", "5.5 mm", "3/4 in", "1-3/16 in". The error says what to write.
func ParseWidth(text string) (Width, error) {
	plain := squeeze(text)
	at := slices.IndexFunc(unitsOfWidth, func(unit string) bool { return strings.HasSuffix(plain, unit) })
	if at < 0 {
		return Width{}, fmt.Errorf("%q has no unit; write \"16 mm\" or \"3/4 in\"", text)
	}
	figure := strings.TrimRight(strings.TrimSuffix(plain, unitsOfWidth[at]), " \t\n\f\r")
	if unitsOfWidth[at] == "mm" {
		mm, err := strconv.ParseFloat(figure, 64)
		if err != nil || !(mm >= narrowest && mm <= widest) {
			return Width{}, fmt.Errorf("%q is no width across flats in mm; write \"16 mm\"", text)
		}
		return metricWidth(mm), nil
	}
	value, ok := parseFraction(figure)
	if !ok && strings.Contains(figure, ".") && len(figure) < 10 && !strings.ContainsAny(figure, "eE/_") {
		value, ok = new(big.Rat).SetString(figure)
	}
	if !ok || inchMM(value) < narrowest || inchMM(value) > widest {
		return Width{}, fmt.Errorf("%q is no width across flats in inches; write \"3/4 in\"", text)
	}
	return inchWidth(value), nil
}

func metricWidth(mm float64) Width {
	return Width{MM: mm, Label: strconv.FormatFloat(mm, 'f', -1, 64) + " mm"}
}

func inchWidth(value *big.Rat) Width {
	label := fraction(value)
	if value.Denom().Cmp(big.NewInt(64)) > 0 {
		label = strings.TrimRight(value.FloatString(4), "0")
	}
	return Width{MM: inchMM(value), Label: label + " in", Inch: true}
}

func (w Width) after(standard string, fromMemory bool) Width {
	w.Standard, w.FromMemory = standard, fromMemory
	return w
}
