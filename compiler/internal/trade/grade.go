package trade

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/pattern"
)

// GradeKind is the scale a grade of a fluid or grease belongs to.
type GradeKind int

// The scales that ParseGrade knows.
const (
	GearOil     GradeKind = iota + 1 // SAE J306
	EngineOil                        // SAE J300
	Industrial                       // ISO 3448 viscosity grade
	NLGI                             // ASTM D217 consistency of grease
	BrakeFluid                       // FMVSS 116
	GearService                      // API 1560
	GreaseCode                       // DIN 51502, DIN 51825
	Coolant                          // ASTM D3306, ASTM D6210
)

var gradeWords = []string{"", "gear oil (SAE J306)", "engine oil (SAE J300)", "industrial oil (ISO 3448)", "grease (NLGI)", "brake fluid (FMVSS 116)", "gear service (API)", "grease (DIN 51502)", "coolant (ASTM)"}

func (k GradeKind) String() string { return gradeWords[k] }

// Grade is a grade in the one way it is written here, so that equal grades compare equal.
type Grade struct {
	Kind      GradeKind
	Canonical string // "SAE 80W-90", "ISO VG 46", "NLGI 2", "DOT 5.1", "API GL-5", "KP2K-30"
}

var (
	vgList     = []int{2, 3, 5, 7, 10, 15, 22, 32, 46, 68, 100, 150, 220, 320, 460, 680, 1000, 1500, 2200, 3200} // ISO 3448; 2200 and 3200 from memory
	nlgiList   = []string{"000", "00", "0", "1", "2", "3", "4", "5", "6"}                                        // ASTM D217
	dotList    = []string{"3", "4", "5", "5.1"}                                                                  // FMVSS 116, 49 CFR 571.116
	gearWinter = []string{"70W", "75W", "80W", "85W"}                                                            // SAE J306, February 2019
	gearSummer = []string{"65", "70", "75", "80", "85", "90", "110", "140", "190", "250"}
	oilWinter  = []string{"0W", "5W", "10W", "15W", "20W", "25W"} // SAE J300, January 2015
	oilSummer  = []string{"8", "12", "16", "20", "30", "40", "50", "60"}
	apiGear    = []string{"GL-1", "GL-2", "GL-3", "GL-4", "GL-5", "GL-6", "MT-1"} // API 1560
)

var (
	saeForm     = pattern.MustCompile(`^(?:SAE ?)?(\d{1,3}W?)(?:[-/ ]?(\d{1,3}W?))?$`)
	vgForm      = pattern.MustCompile(`^(?:ISO ?)?(?:VG|ISO) ?-?(\d{1,5})$`)
	nlgiForm    = pattern.MustCompile(`^NLGI ?(?:GRADE ?|NO\.? ?|#)?(\d+)$`)
	numberForm  = pattern.MustCompile(`^(?:#|NO\. ?)(\d+)$`)
	dotForm     = pattern.MustCompile(`^DOT ?-?(\d+(?:\.\d+)?)$`)
	apiForm     = pattern.MustCompile(`^(?:API ?)?(GL|MT) ?-?(\d)$`)
	coolantForm = pattern.MustCompile(`^(?:ASTM ?)?D ?-?(\d{4})$`)
	// Letters in both orders met on labels: KP2K-30, KPHC2N-40. Upper letters M to U and the lower temperatures are from memory of DIN 51502.
	dinForm = pattern.MustCompile(`^(K|G|OG|M)(P|F|PF)?(E|FK|HC|PG|PH|SI|X)?(P|F|PF)?(000|00|0|1|2|3|4|5|6)(C|D|E|F|G|H|K|M|N|P|R|S|T|U)-(10|20|30|40|50|60)$`)
	dinLike = pattern.MustCompile(`^(K|G|OG|M)[A-Z]{0,5}\d{1,4}[A-Z]-\d{1,3}$`)
)

var dashes = strings.NewReplacer("–", "-", "−", "-")

// ParseGrade recognises a grade and writes it one way: "75w90" is SAE 75W-90, "ISO 46" is
// ISO VG 46, "NLGI grade 2" is NLGI 2. A wrong one is an error that says what is right. A
// bare number is an error, as engine, gear and grease scales use the same ones.
func ParseGrade(text string) (Grade, error) {
	plain := strings.ToUpper(squeeze(dashes.Replace(text)))
	tight := strings.ReplaceAll(plain, " ", "")
	for _, form := range []struct {
		form  *pattern.Pattern
		read  func(text string, m []string) (Grade, error)
		plain string
	}{
		{nlgiForm, parseNLGI, plain}, {numberForm, parseNLGI, plain}, {vgForm, parseVG, plain}, {dotForm, parseDOT, plain}, {apiForm, parseAPI, plain},
		{coolantForm, parseCoolant, plain}, {dinForm, parseDIN, tight}, {dinLike, parseDIN, tight}, {saeForm, parseSAE, plain},
	} {
		if m := form.form.FindStringSubmatch(form.plain); m != nil {
			return form.read(text, m)
		}
	}
	return Grade{}, fmt.Errorf("%q is no grade known here; write SAE 80W-90, SAE 10W-40, ISO VG 46, NLGI 2, KP2K-30, DOT 4 or API GL-5", text)
}

func parseNLGI(text string, m []string) (Grade, error) {
	if !slices.Contains(nlgiList, m[1]) {
		near := "NLGI " + nearestNLGI(m[1])
		return Grade{}, mistaken(near, "%q is no NLGI grade; the nearest is %q, and the nine are %s", text, near, strings.Join(nlgiList, ", "))
	}
	return Grade{NLGI, "NLGI " + m[1]}, nil
}

func nearestNLGI(written string) string {
	if strings.Trim(written, "0") == "" {
		return "000"
	}
	return "6"
}

func parseVG(text string, m []string) (Grade, error) {
	value, _ := strconv.Atoi(m[1])
	if slices.Contains(vgList, value) {
		return Grade{Industrial, fmt.Sprintf("ISO VG %d", value)}, nil
	}
	// The grades stand about half as far again from each other, so nearness is one of ratio.
	best, least := vgList[0], 0.0
	for _, grade := range vgList {
		ratio := float64(max(grade, value)) / float64(max(min(grade, value), 1))
		if least == 0 || ratio < least {
			best, least = grade, ratio
		}
	}
	near := fmt.Sprintf("ISO VG %d", best)
	return Grade{}, mistaken(near, "%q is no viscosity grade of ISO 3448; the nearest is %q", text, near)
}

func parseDOT(text string, m []string) (Grade, error) {
	if !slices.Contains(dotList, m[1]) {
		return Grade{}, fmt.Errorf("%q is no brake fluid of FMVSS 116; known are DOT %s", text, strings.Join(dotList, ", DOT "))
	}
	return Grade{BrakeFluid, "DOT " + m[1]}, nil
}

func parseAPI(text string, m []string) (Grade, error) {
	name := m[1] + "-" + m[2]
	if !slices.Contains(apiGear, name) {
		return Grade{}, fmt.Errorf("%q is no API gear service; known are %s", text, strings.Join(apiGear, ", "))
	}
	return Grade{GearService, "API " + name}, nil
}

func parseCoolant(text string, m []string) (Grade, error) {
	if m[1] != "3306" && m[1] != "6210" {
		return Grade{}, fmt.Errorf("%q is no coolant specification known here; known are ASTM D3306 (light duty) and ASTM D6210 (heavy duty)", text)
	}
	return Grade{Coolant, "ASTM D" + m[1]}, nil
}

func parseDIN(text string, m []string) (Grade, error) {
	if !dinForm.MatchString(m[0]) {
		return Grade{}, fmt.Errorf("%q is no grease code of DIN 51502; write the kind, additives, NLGI grade, upper letter and lower temperature: \"KP2K-30\"", text)
	}
	return Grade{GreaseCode, m[0]}, nil
}

// parseSAE tells gear from engine oil: the two scales share no winter grade and no grade
// alone, and with a winter grade in front no pair.
func parseSAE(text string, m []string) (Grade, error) {
	first, second := m[1], m[2]
	switch {
	case second == "" && !strings.HasPrefix(strings.ToUpper(strings.TrimSpace(text)), "SAE") && !strings.HasSuffix(first, "W"):
		return Grade{}, fmt.Errorf("%q does not name its scale; write SAE %s, ISO VG %s or NLGI %s", text, first, first, first)
	case strings.HasSuffix(second, "W"):
		turned := "SAE " + second + "-" + strings.TrimSuffix(first, "W")
		return Grade{}, mistaken(turned, "%q has the winter grade second; write %q", text, turned)
	case second != "" && !strings.HasSuffix(first, "W"):
		near := "SAE " + nearestPair(first+"W", second)
		return Grade{}, mistaken(near, "%q lacks the W of its winter grade; write %q", text, near)
	}
	for _, scale := range []struct {
		kind           GradeKind
		winter, summer []string
	}{{EngineOil, oilWinter, oilSummer}, {GearOil, gearWinter, gearSummer}} {
		switch {
		case second == "" && (slices.Contains(scale.winter, first) || slices.Contains(scale.summer, first)):
			return Grade{scale.kind, "SAE " + first}, nil
		case slices.Contains(scale.winter, first) && slices.Contains(scale.summer, second):
			return Grade{scale.kind, "SAE " + first + "-" + second}, nil
		}
	}
	near := "SAE " + nearestPair(first, second)
	return Grade{}, mistaken(near, "%q is no grade of SAE J300 (engine) or SAE J306 (gear); the nearest is %q", text, near)
}

// nearestPair is the listed grade with the fewest other letters; an equal pair keeps to gear oil.
func nearestPair(first, second string) string {
	var all []string
	for _, scale := range [][2][]string{{gearWinter, gearSummer}, {oilWinter, oilSummer}} {
		if second == "" {
			all = append(append(all, scale[0]...), scale[1]...)
			continue
		}
		for _, winter := range scale[0] {
			for _, summer := range scale[1] {
				all = append(all, winter+"-"+summer)
			}
		}
	}
	written := first
	if second != "" {
		written += "-" + second
	}
	if near := nearest(written, all); near != "" {
		return near
	}
	return "80W-90"
}
