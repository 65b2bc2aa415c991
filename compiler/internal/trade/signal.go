package trade

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Signal is a signal word of ANSI Z535.6, the gravest first.
type Signal int

// The signal words. The zero value is the gravest, so that nothing looks milder by oversight.
const (
	Danger             Signal = iota // death or serious injury will result
	Warning                          // death or serious injury could result
	Caution                          // minor or moderate injury could result
	Notice                           // damage, not injury
	SafetyInstructions               // a reminder of a procedure or of equipment
)

var signalKeys = []string{"danger", "warning", "caution", "notice", "safety-instructions"}

// String is the key of the signal word: "danger", "safety-instructions".
func (s Signal) String() string { return signalKeys[s] }

// Word is the signal word as it prints in English: "DANGER", "SAFETY INSTRUCTIONS".
func (s Signal) Word() string {
	return strings.ToUpper(strings.ReplaceAll(signalKeys[s], "-", " "))
}

// Covers reports whether a message of this level is grave enough where the other is asked for.
func (s Signal) Covers(asked Signal) bool { return s <= asked }

// Signals lists the signal words, the gravest first.
func Signals() []Signal { return []Signal{Danger, Warning, Caution, Notice, SafetyInstructions} }

// ParseSignal reads a signal word in any case; the error names the nearest.
func ParseSignal(text string) (Signal, error) {
	plain := strings.ReplaceAll(squeeze(text), " ", "-")
	for _, signal := range Signals() {
		if signal.String() == plain {
			return signal, nil
		}
	}
	return Danger, unknown("signal word", text, signalKeys)
}

// Look is how the panel of a signal word is printed.
type Look struct {
	Panel, Text string // sRGB hex: "#9B2423"
	Alert       bool   // the safety alert symbol: for injury only
	Italic      bool
	Source      string
}

// Look gives the colours of ISO 3864-2 and ISO 3864-4 by their RAL numbers with their
// contrast colour, and the alert symbol and letters of ANSI Z535.4.
func (s Signal) Look() Look {
	const source = "ISO 3864-2, ISO 3864-4, ANSI Z535.4"
	return []Look{
		{"#9B2423", "#FFFFFF", true, false, source + "; RAL 3001"},
		{"#D05D29", "#000000", true, false, source + "; RAL 2010"},
		{"#F9A800", "#000000", true, false, source + "; RAL 1003"},
		{"#005387", "#FFFFFF", false, true, source + "; RAL 5005"},
		{"#237F52", "#FFFFFF", false, false, source + "; RAL 6032"},
	}[s]
}

// Contrast is the contrast ratio of two sRGB colours such as "#9B2423", 1 to 21, by the
// relative luminance of WCAG 2. The error names the colour that cannot be read.
func Contrast(a, b string) (float64, error) {
	lightA, err := luminance(a)
	if err != nil {
		return 0, err
	}
	lightB, err := luminance(b)
	if err != nil {
		return 0, err
	}
	return (max(lightA, lightB) + 0.05) / (min(lightA, lightB) + 0.05), nil
}

func luminance(hex string) (float64, error) {
	value, err := strconv.ParseUint(strings.TrimPrefix(hex, "#"), 16, 32)
	if err != nil || len(hex) != 7 || hex[0] != '#' {
		return 0, fmt.Errorf("%q is no colour; write \"#9B2423\"", hex)
	}
	sum := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		part := float64(value>>(16-8*i)&0xFF) / 255
		if part <= 0.04045 {
			part /= 12.92
		} else {
			part = math.Pow((part+0.055)/1.055, 2.4)
		}
		sum += weight * part
	}
	return sum, nil
}
