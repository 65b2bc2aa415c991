package quantity

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Sentences as mechanics write them: what in them misleads, and what is plain words.
func TestProse(t *testing.T) {
	for text, want := range map[string]string{
		"Tighten to 31 ft-lb (52 N·m).":                   "52 N·m",
		"Fill 2 gal of coolant.":                          "gal",
		"Add a quart, then 3 qt more.":                    "qt",
		"Pump the tyre to 2.4 bar (25 psi).":              "25 psi",
		"Gap 0,5 mm.":                                     "0,5",
		"Torque the bolts to 42.":                         "42",
		"Tighten all four bolts to 42, then again.":       "42",
		"Tighten to 42 nm.":                               "nm",
		"Set it from 40 to 30 mm.":                        "40 to 30 mm",
		"Tighten to 31 lbf·ft (42 N·m).":                  "",
		"160 bar (2300 psi)":                              "",
		"Turn the screw to 3 o'clock.":                    "",
		"Set the knob to 4.":                              "",
		"Tighten it to the stop.":                         "",
		"Use the 8 oz hammer.":                            "",
		"Take 5 m of hose and an M8 bolt.":                "",
		"Leave a gap of 0.5 mm (0.020 in).":               "",
		"Fill 2 US gal of coolant.":                       "",
		"Lift it 12 in clear, in 2 steps.":                "",
		"It takes 1.5 L; bring 2 cans.":                   "",
		"Tighten to 42 N·m. Mark it.":                     "",
		"Turn 1,200 rpm, no more.":                        "",
		"Push 10 mm in with the thumb (a pen is enough).": "",
	} {
		got := ""
		for _, problem := range Prose(text) {
			got += text[problem.Start:problem.End]
			assert.NotEmpty(t, problem.Help, text)
		}
		assert.Equal(t, want, got, text)
	}
}

func FuzzProse(f *testing.F) {
	f.Add("Tighten to 31 ft-lb (52 N·m).")
	f.Fuzz(func(t *testing.T, text string) {
		for _, problem := range Prose(text) {
			assert.LessOrEqual(t, problem.Start, problem.End)
			assert.LessOrEqual(t, problem.End, len(text))
		}
	})
}

// The quick look at a sentence misses no amount.
func TestNoAmountIsMissedByTheQuickLook(t *testing.T) {
	dice := rand.New(rand.NewPCG(5, 2))
	pieces := []string{"7", "12", "0.5", "1,000", "3/4", "1-1/2", "N·m", "Nm", "ft-lb", "in", "kg", "µm", "°C", "US gal", "fl oz", "mm", "psi", "L", " ", " ", "\u00a0", "-", " to ", "±", ".", ",", "(", ")", "/", "turn", "x"}
	found := 0
	for range 200_000 {
		text := ""
		for range 1 + dice.IntN(8) {
			text += pieces[dice.IntN(len(pieces))]
		}
		if proseAmount.MatchString(text) {
			found++
			require.True(t, mayMeasure(text), "%q", text)
		}
	}
	assert.Greater(t, found, 1000)
}
