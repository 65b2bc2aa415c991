package trade

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestParseGrade(t *testing.T) {
	for text, want := range map[string]Grade{
		"75W-90": {GearOil, "SAE 75W-90"}, "SAE 80W-90": {GearOil, "SAE 80W-90"}, "80w90": {GearOil, "SAE 80W-90"}, "85W/140": {GearOil, "SAE 85W-140"}, "SAE 90": {GearOil, "SAE 90"}, "75W": {GearOil, "SAE 75W"},
		"10W-40": {EngineOil, "SAE 10W-40"}, "SAE 30": {EngineOil, "SAE 30"}, "5W–30": {EngineOil, "SAE 5W-30"}, "SAE 0W-8": {EngineOil, "SAE 0W-8"},
		"ISO VG 46": {Industrial, "ISO VG 46"}, "VG46": {Industrial, "ISO VG 46"}, "ISO 46": {Industrial, "ISO VG 46"}, "iso vg 220": {Industrial, "ISO VG 220"},
		"NLGI 2": {NLGI, "NLGI 2"}, "NLGI Grade 2": {NLGI, "NLGI 2"}, "#2": {NLGI, "NLGI 2"}, "No. 2": {NLGI, "NLGI 2"}, "NLGI 000": {NLGI, "NLGI 000"}, "NLGI No. 00": {NLGI, "NLGI 00"},
		"DOT 5": {BrakeFluid, "DOT 5"}, "DOT 5.1": {BrakeFluid, "DOT 5.1"}, "dot4": {BrakeFluid, "DOT 4"},
		"GL-5": {GearService, "API GL-5"}, "API GL4": {GearService, "API GL-4"}, "MT-1": {GearService, "API MT-1"},
		"K P 2 K -30": {GreaseCode, "KP2K-30"}, "KPHC2N-40": {GreaseCode, "KPHC2N-40"}, "KHCP1K-30": {GreaseCode, "KHCP1K-30"}, "GP00K-40": {GreaseCode, "GP00K-40"},
		"ASTM D6210": {Coolant, "ASTM D6210"},
	} {
		got, err := ParseGrade(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, got, text)
		again, err := ParseGrade(got.Canonical)
		require.NoError(t, err)
		assert.Equal(t, got, again)
	}
}

func TestParseGradeSaysWhatIsRight(t *testing.T) {
	for text, hint := range map[string]string{
		"80-90": `"SAE 80W-90"`, "90-80W": `write "SAE 80W-90"`, "ISO VG 40": `"ISO VG 46"`, "ISO 45": `"ISO VG 46"`, "VG 0": `"ISO VG 2"`,
		"NLGI 0000": `"NLGI 000"`, "NLGI 7": `"NLGI 6"`, "30": "SAE 30, ISO VG 30 or NLGI 30", "2": "scale", "SAE 82W-90": `"SAE 8`, "SAE 10W-90": "nearest",
		"DOT 6": "DOT 5, DOT 5.1", "DOT 5.0": "known are", "GL-7": "known are GL-1", "KP7K-30": `"KP2K-30"`, "KP2K-35": `"KP2K-30"`, "": "write", "red stuff": "write",
	} {
		_, err := ParseGrade(text)
		assert.ErrorContains(t, err, hint, text)
	}
}

// The two SAE scales must stay apart, or a guess would be made.
func TestSAEScalesShareNoGrade(t *testing.T) {
	for _, grade := range append(append([]string{}, gearWinter...), gearSummer...) {
		assert.NotContains(t, oilWinter, grade)
		assert.NotContains(t, oilSummer, grade)
	}
}

func FuzzParseGrade(f *testing.F) {
	for _, text := range []string{"80-90", "ISO VG 40", "KPHC2N-40", "NLGI 0000", "dot 5.1"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		grade, err := ParseGrade(text)
		if err != nil {
			assert.NotContains(t, strings.ToLower(err.Error()), "invalid")
			return
		}
		again, err := ParseGrade(grade.Canonical)
		require.NoError(t, err)
		assert.Equal(t, grade, again)
	})
}
