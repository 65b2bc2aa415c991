package trade

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ratios by the formula of WCAG 2, and the rule of ISO 3864-4 that each safety colour has
// one contrast colour.
func TestContrastOfSafetyColours(t *testing.T) {
	for _, row := range []struct {
		signal       Signal
		black, white float64
		use          string
	}{
		{Danger, 2.67, 7.86, "#FFFFFF"}, {Warning, 5.28, 3.98, "#000000"}, {Caution, 10.63, 1.98, "#000000"},
		{Notice, 2.59, 8.12, "#FFFFFF"}, {SafetyInstructions, 4.23, 4.97, "#FFFFFF"},
	} {
		look := row.signal.Look()
		black, err := Contrast(look.Panel, "#000000")
		require.NoError(t, err)
		white, err := Contrast("#FFFFFF", look.Panel)
		require.NoError(t, err)
		assert.InDelta(t, row.black, black, 0.005, row.signal)
		assert.InDelta(t, row.white, white, 0.005, row.signal)
		assert.Equal(t, row.use, look.Text)
		used, err := Contrast(look.Panel, look.Text)
		require.NoError(t, err)
		assert.InDelta(t, max(black, white), used, 1e-12)
		assert.GreaterOrEqual(t, used, 4.5)
		assert.Equal(t, row.signal <= Caution, look.Alert, "the alert symbol is for injury only")
	}
	widest, err := Contrast("#000000", "#ffffff")
	require.NoError(t, err)
	assert.InDelta(t, 21, widest, 1e-9)
	for _, colour := range []string{"", "red", "#12345", "9B24233", "#9B242G", "+9B2423"} {
		_, err := Contrast(colour, "#000000")
		assert.ErrorContains(t, err, "is no colour", colour)
	}
}

func TestParseSignal(t *testing.T) {
	for _, signal := range Signals() {
		for _, text := range []string{signal.String(), signal.Word()} {
			got, err := ParseSignal(text)
			require.NoError(t, err)
			assert.Equal(t, signal, got)
		}
	}
	_, err := ParseSignal("dangr")
	assert.ErrorContains(t, err, `"danger"`)
	assert.True(t, Danger.Covers(Warning))
	assert.True(t, Caution.Covers(Caution))
	assert.False(t, Notice.Covers(Caution))
}

func TestSigns(t *testing.T) {
	// ISO 7010:2019: numbers that a wrong cheat sheet mixes up.
	for number, name := range map[string]string{"W004": "laser beam", "W012": "electricity", "W015": "overhead load", "W018": "automatic start-up", "m009": "wear protective gloves"} {
		sign, ok := FindSign(number)
		require.True(t, ok)
		assert.Equal(t, name, sign.Name)
	}
	for i, sign := range Signs() {
		assert.NotEmpty(t, sign.Kind(), sign.Number)
		assert.True(t, i == 0 || Signs()[i-1].Number < sign.Number, sign.Number)
	}
	_, err := ParseSign("W17")
	assert.ErrorContains(t, err, "W01")
}

func TestWear(t *testing.T) {
	for text, key := range map[string]string{"gloves": "gloves", "Ear protection": "ear-protection", "hard hat": "helmet", "safety glasses": "eye-protection", "nitrile gloves": "gloves", "respirator": "respirator"} {
		wear, err := ParseWear(text)
		require.NoError(t, err, text)
		assert.Equal(t, key, wear.Key)
	}
	_, err := ParseWear("glovs")
	assert.ErrorContains(t, err, `"gloves"`)
	for said, key := range wearSaid {
		_, ok := FindWear(key)
		assert.True(t, ok, said)
	}
	for _, wear := range AllWear() {
		sign, ok := FindSign(wear.Sign)
		assert.True(t, ok, wear.Key)
		assert.Equal(t, "mandatory", sign.Kind())
		assert.True(t, Satisfies(wear.Key, wear.Key))
	}
	assert.True(t, Satisfies("cut-resistant-gloves", "gloves"))
	assert.False(t, Satisfies("gloves", "cut-resistant-gloves"))
	assert.False(t, Satisfies("face-shield", "eye-protection"))
	assert.False(t, Satisfies("mask", "respirator"))
}
