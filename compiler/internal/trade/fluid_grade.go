package trade

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/pattern"
)

// gradedBy are the scales a kind of fluid is graded by. Fluids that are not here have none.
// An engine oil of one grade also serves in gearboxes and hydraulics (SAE 10W, 30 and 50
// as transmission oil; common practice, no source), grease of NLGI 0 and softer in gears.
var gradedBy = map[string][]GradeKind{
	"gear-oil":       {GearOil, Industrial, GearService, EngineOil, NLGI, GreaseCode},
	"engine-oil":     {EngineOil, Industrial},
	"hydraulic-oil":  {Industrial, EngineOil, GearOil},
	"compressor-oil": {Industrial, EngineOil},
	"chain-oil":      {Industrial, EngineOil, GearOil, NLGI, GreaseCode},
	"grease":         {NLGI, GreaseCode, Industrial},
	"brake-fluid":    {BrakeFluid, Industrial},
	"coolant":        {Coolant},
}

// GradesOf reports whether fluids of a kind are graded by a scale; true for a kind that
// no scale is known for.
func GradesOf(kind string, scale GradeKind) bool {
	scales, known := gradedBy[kind]
	return !known || slices.Contains(scales, scale)
}

var gradeLike = []*pattern.Pattern{
	pattern.MustCompile(`^NLGI ?(?:GRADE ?|NO\.? ?|#)?\d+$`),
	pattern.MustCompile(`^ISO ?(?:VG)? ?-?\d{1,5}$|^VG ?-?\d{1,5}$`),
	pattern.MustCompile(`^DOT ?-?\d(?:\.\d)?$`),
	pattern.MustCompile(`^(?:API ?)?(?:GL|MT) ?-?\d$`),
	pattern.MustCompile(`^SAE ?\d{1,3}W?$`),
	pattern.MustCompile(`^(?:SAE ?)?\d{1,3}W[-/ ]?\d{1,3}$`),
	pattern.MustCompile(`^(?:SAE ?)?\d{1,3}[-/ ]\d{1,3}W?$`),
}

// WrongGrade reads a grade that is written the way of a published scale. It gives an
// error for one that the scale does not have, and no grade and no error for words it
// cannot tell anything of: a maker's own grade, a bare number, two grades at once.
func WrongGrade(text string) (Grade, error) {
	grade, err := ParseGrade(text)
	if err == nil {
		return grade, nil
	}
	plain := strings.ToUpper(squeeze(dashes.Replace(text)))
	for _, form := range gradeLike {
		if form.MatchString(plain) {
			return Grade{}, err
		}
	}
	return Grade{}, nil
}

var (
	gearService = pattern.MustCompile(`\bGL[- ]?(\d+)\b`)
	retired     = []string{"2", "3", "6"}
)

// GearServices finds the API gear services in words: "API GL-4/GL-5" gives 4 and 5.
func GearServices(words string) []string {
	var out []string
	for _, m := range gearService.FindAllStringSubmatch(strings.ToUpper(words), -1) {
		out = append(out, m[1])
	}
	return out
}

// GearServiceKnown reports whether API 1560 has a gear service of that number, and
// whether it is listed as in use: GL-2, GL-3 and GL-6 are not (oilspecifications.org).
func GearServiceKnown(number string) (known, inUse bool) {
	known = slices.Contains(apiGear, "GL-"+number)
	return known, known && !slices.Contains(retired, number)
}

var yellowMetal = pattern.MustCompile(`\b(?:bronze|brass|copper|gunmetal|yellow[- ]metals?)\b`)

// YellowMetal finds a copper alloy in words.
func YellowMetal(words string) (metal string, ok bool) {
	metal = yellowMetal.FindString(strings.ToLower(words))
	return metal, metal != ""
}

var yellowGear = pattern.MustCompile(`\b(?:worm|synchro(?:niser|nizer|mesh)?)s?\b`)

// YellowGear finds a gear in words that is usually made of a copper alloy: a worm wheel,
// a synchroniser (machinerylubrication.com/Read/30366).
func YellowGear(words string) (gear string, ok bool) {
	gear = yellowGear.FindString(strings.ToLower(words))
	return gear, gear != ""
}
