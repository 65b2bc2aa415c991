package draft

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What is said, and how benchleaf writes it. None of it stands in the five sets of notes.
func TestSpokenAmounts(t *testing.T) {
	for said, want := range map[string]string{
		"an inch and three sixteenths":            "1-3/16 in",
		"one and a quarter inches":                "1-1/4 in",
		"two inches and a half":                   "2-1/2 in",
		"five thirty-seconds of an inch":          "5/32 in",
		"seventy-two to eighty-seven foot pounds": "72 to 87 lbf·ft",
		"between ten and twelve bar":              "10 to 12 bar",
		"half a litre":                            "0.5 L",
		"two and a half liters":                   "2.5 L",
		"three quarters of a litre":               "0.75 L",
		"oh point five":                           "0.5",
		"nought point two five millimetres":       "0.25 mm",
		"point oh five":                           "0.05",
		"ten mil":                                 "10 mm",
		"fifteen thou":                            "0.015 in",
		"two hundred and ten newton metres":       "210 N·m",
		"one twenty new tons":                     "120 N·m",
		"fifty newton mutters":                    "50 N·m",
		"two thousand five hundred psi":           "2500 psi",
		"fifteen hundred r p m":                   "1500 rpm",
		"not more than three mil":                 "max 3 mm",
		"at least a hundred and sixty bar":        "min 160 bar",
		"ten seconds tops":                        "max 10 s",
		"an hour and twenty":                      "1 h 20 min",
		"half an hour":                            "30 min",
		"two and a half hours":                    "2 h 30 min",
		"a quarter of a turn":                     "1/4 turn",
		"three or four strokes":                   "3 to 4 strokes",
		"2,000 psi":                               "2000 psi",
		"1-3/16 in":                               "1-3/16",
		"85Nm":                                    "85 N·m",
		"12 ft lbs":                               "12 lbf·ft",
		"ninety inch pounds":                      "90 lbf·in",
		"two hundred degrees fahrenheit":          "200 °F",
	} {
		words := split(said)
		a, ok := amountAt(words, 0)
		if assert.True(t, ok, said) {
			assert.Equal(t, want, a.text(), said)
		}
	}
}

func TestSpokenGradesAndThreads(t *testing.T) {
	for said, want := range map[string]string{
		"fifteen w forty":           "15W-40",
		"75W90":                     "75W-90",
		"s a e thirty":              "SAE 30",
		"essay e 30":                "SAE 30",
		"thirty weight":             "SAE 30",
		"i s o v g sixty eight":     "ISO VG 68",
		"VG 220":                    "ISO VG 220",
		"g l five":                  "GL-5",
		"dot four":                  "DOT 4",
		"dot five point one":        "DOT 5.1",
		"number one calcium grease": "NLGI 1",
		"n l g i triple o":          "NLGI 000",
		"copper slip":               "anti-seize",
	} {
		f, ok := fluidAt(split(said), 0)
		if assert.True(t, ok, said) {
			assert.Equal(t, want, f.grade, said)
		}
	}
	for said, want := range map[string]string{
		"m twelve by one point two five": "M12x1.25",
		"M10":                            "M10",
		"m eight by forty":               "M8x40",
		"half thirteen":                  "1/2-13",
		"quarter twenty":                 "1/4-20",
		"7/16-14":                        "7/16-14",
		"quarter inch BSP":               "BSPP 1/4",
	} {
		text, next := threadAt(split(said), 0)
		assert.Positive(t, next, said)
		assert.Equal(t, want, text, said)
	}
	for _, said := range []string{"forty w", "sae one fifty foot pounds", "number two spanner", "iso standard"} {
		if f, ok := fluidAt(split(said), 0); ok {
			assert.Empty(t, f.grade, said)
		}
	}
}

// What is ruled out, told of others, or put right at once is not taken.
func TestWhatIsNotMeantIsNotTaken(t *testing.T) {
	for notes, not := range map[string]string{
		"Drain plug, M14. Don't do it up to 60 Nm.":             "60 N·m",
		"Wheel nuts, M12. Some lads put 200 Nm on them, don't.": "200 N·m",
		"Wheel nuts, M12. I had a fella strip one at 150 Nm.":   "150 N·m",
		"Drain plug takes a 17 spanner, no wait, a 19 spanner.": "17 mm",
		"Gearbox. GL-5, not GL-4.":                              "GL-4",
		"Hub nut. It used to be 90 Nm.":                         "90 N·m",
	} {
		made, err := Of([]byte(notes))
		assert.NoError(t, err)
		assert.False(t, slices.ContainsFunc(made.Taken, func(one Taken) bool { return one.Value == not }), "%s: %v", notes, made.Taken)
	}
}

func TestGapsAreAsked(t *testing.T) {
	for notes, want := range map[string]string{
		"Cylinder head bolts, M10. Do them up to forty.": "You said 40 for the cylinder head bolt: of what, lbf·in, lbf·ft or N·m?",
		"Gearbox. Drain plug out, let it drain.":         "What catches the oil of the gearbox, and does it hold all of it?",
		"The idler spring, unhook it.":                   "The idler spring is under tension: how is it let go so that it hits nobody?",
		"Coolant. Top it up with three gallons.":         "3 gal: US or imperial?",
		"Take the belt guard off.":                       "The belt guard comes off: when does it go back on?",
		"Grease the pins, number two grease.":            "Which thickener has the grease: lithium, calcium, another? Two that do not mix do harm.",
	} {
		made, err := Of([]byte(notes))
		assert.NoError(t, err)
		var questions []string
		for _, one := range made.Questions() {
			questions = append(questions, one.Question)
		}
		assert.Contains(t, questions, want, notes)
	}
}

func TestTimesAreNoWords(t *testing.T) {
	made, err := Of([]byte("[00:04:10] Drain plug,\n03:12 nineteen spanner.\n"))
	assert.NoError(t, err)
	var values []string
	for _, one := range made.Taken {
		values = append(values, one.Kind+" "+one.Value)
	}
	assert.Equal(t, []string{"part drain plug", "size 19 mm", "tool wrench"}, values)
}
