package trade

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestLeverSettingOfPublishedExamples(t *testing.T) {
	for _, test := range []struct {
		source                string
		torque, lever, extend float64
		angle, want, within   float64
	}{
		{"US Army TM 9-254, figure 4-5", 70, 12, 2, 0, 60, 1e-9},
		{"Robinson R66 maintenance manual 20-1", 135, 10, 1.5, 0, 117.39, 0.005},
		{"Robinson R66 maintenance manual 20-2", 135, 10, 1.5, 180, 158.82, 0.005},
		{"Piper PA-28-161 service manual 2-90", 30, 1, 0.25, 0, 24, 1e-9},
		{"US Navy NAVEDTRA 14315, figure 3-44", 100, 12, 6, 0, 66.7, 0.05},
		{"US Army TM 9-254, angled adapter: effective lever L + E cos 60°", 70, 12, 2, 60, 70 * 12.0 / 13, 1e-9},
		{"a right angle changes nothing", 70, 12, 2, 90, 70, 1e-9},
	} {
		assert.InDelta(t, test.want, LeverSetting(test.torque, test.lever, test.extend, test.angle), test.within, test.source)
	}
	assert.True(t, math.IsNaN(LeverSetting(70, 12, 12, 180)))
	assert.True(t, math.IsNaN(LeverSetting(70, 0, 2, 0)))
}

func TestUsableRange(t *testing.T) {
	for _, test := range []struct{ mark, maximum, low float64 }{{20, 100, 20}, {10, 100, 20}, {40, 100, 40}, {0, 25, 5}} {
		low, high := UsableRange(test.mark, test.maximum)
		assert.InDelta(t, test.low, low, 1e-9)
		assert.InDelta(t, test.maximum, high, 0)
	}
}

// A Facom S.325DA manual quotes ISO 6789: ±4 % above 10 N·m, ±6 % at and below.
func TestWrenchTolerance(t *testing.T) {
	assert.InDelta(t, 0.06, WrenchTolerance(10), 0)
	assert.InDelta(t, 0.04, WrenchTolerance(10.1), 0)
	assert.True(t, Holdable(42, 48))
	assert.False(t, Holdable(49, 51))
	assert.False(t, Holdable(8.6, 9.4))
	assert.False(t, Holdable(45, 45))
}

func TestDrives(t *testing.T) {
	for text, label := range map[string]string{"1/2 in": "1/2 in", "1/2": "1/2 in", `1/2"`: "1/2 in", "12.5 mm": "1/2 in", "12.7mm": "1/2 in", "1 in": "1 in", "6.3 mm": "1/4 in"} {
		drive, ok := FindDrive(text)
		assert.True(t, ok, text)
		assert.Equal(t, label, drive.Label)
	}
	for _, text := range []string{"", "11 mm", "5/8 in", "mm"} {
		_, err := ParseDrive(text)
		assert.Error(t, err, text)
	}
	for torque, label := range map[float64]string{5: "1/4 in", 30: "1/4 in", 31: "3/8 in", 200: "1/2 in", 1500: "1 in"} {
		drive, ok := DriveFor(torque)
		assert.True(t, ok)
		assert.Equal(t, label, drive.Label)
	}
	_, ok := DriveFor(2101)
	assert.False(t, ok)
	drives := Drives()
	assert.InDelta(t, 135, Weakest(drives[2], drives[1], drives[2]).HandLimitNm, 0)
	for i, drive := range drives {
		inch := mustInch(drive.Label[:len(drive.Label)-3])
		assert.InDelta(t, inchMM(inch), drive.SquareMM, 1e-9, "ISO 1174-1 squares are whole fractions of an inch")
		assert.True(t, i == 0 || drives[i-1].HandLimitNm < drive.HandLimitNm)
	}
}

func TestProofLoadsOfISO898(t *testing.T) {
	for _, row := range iso898 {
		for i, name := range []string{"4.6", "8.8", "10.9", "12.9"} {
			class, err := ParseClass(name)
			require.NoError(t, err)
			load, err := ProofLoadN(thread(t, row.thread), class)
			require.NoError(t, err)
			assert.InEpsilon(t, row.proof[i], load, 0.01, "%s %s", row.thread, name)
			if i == 0 {
				continue
			}
			strength, err := class.Strength(thread(t, row.thread))
			require.NoError(t, err)
			assert.InEpsilon(t, row.most[i-1], strength.TensileMPa*row.area, 0.01, "%s %s", row.thread, name)
		}
	}
}

// Clamp of 75 % proof for grade 2, in lbf, as printed with the bolt torque table of coxhardware.com.
func TestClampOfSAEJ429(t *testing.T) {
	for text, published := range map[string]float64{"1/4-20": 1312, "3/8-16": 3197, "3/8-24": 3622, "1/2-13": 5853, "3/4-10": 13778, "7/8-9": 11435, "1-8": 14999, "1-1/2-12": 39130} {
		class, err := ParseClass("grade 2")
		require.NoError(t, err)
		load, err := ProofLoadN(thread(t, text), class)
		require.NoError(t, err)
		assert.InEpsilon(t, published, 0.75*load/4.4482216152605, 0.01, text)
	}
}

func TestParseClass(t *testing.T) {
	for text, name := range map[string]string{"8.8": "8.8", "class 10.9": "10.9", "grade 8.8": "8.8", "ISO 898-1 class 12.9": "12.9",
		"grade 5": "grade 5", "SAE grade 8": "grade 8", "SAE J429 grade 2": "grade 2", "Gr. 8": "grade 8", "SAE 5": "grade 5", "A2-70": "A2-70", "a4-80": "A4-80"} {
		class, err := ParseClass(text)
		require.NoError(t, err, text)
		assert.Equal(t, name, class.Name)
	}
	for text, hint := range map[string]string{"8": "grade 8", "class 8": "metric one two numbers", "8.9": `the nearest is "8.8"`, "grade 7": "nearest", "": "known are", "A2-75": "nearest"} {
		_, err := ParseClass(text)
		assert.ErrorContains(t, err, hint, text)
	}
	grade8, _ := ParseClass("grade 8")
	_, err := grade8.Strength(thread(t, "M10"))
	assert.ErrorContains(t, err, "inch")
	iso, _ := ParseClass("8.8")
	_, err = iso.Strength(thread(t, "3/8-16"))
	assert.ErrorContains(t, err, "metric")
	_, err = iso.Strength(thread(t, "G 1/4"))
	assert.ErrorContains(t, err, "pipe thread")
	iso, _ = ParseClass("9.8")
	_, err = iso.Strength(thread(t, "M20"))
	assert.ErrorContains(t, err, "no \"9.8\" for M20")
	steel, _ := ParseClass("A2-70")
	_, err = ProofLoadN(thread(t, "M10"), steel)
	assert.ErrorContains(t, err, "no proof load")
}

func TestMarkingRuleOfISO898(t *testing.T) {
	for _, name := range []string{"4.6", "4.8", "5.8", "8.8", "9.8", "10.9", "12.9"} {
		class, err := ParseClass(name)
		require.NoError(t, err)
		strength, err := class.Strength(thread(t, "M8"))
		require.NoError(t, err)
		var first, second float64
		for i, digit := range name {
			if digit == '.' {
				first, second = parseFloat(name[:i]), parseFloat(name[i+1:])
			}
		}
		assert.GreaterOrEqual(t, strength.TensileMPa, 100*first)
		assert.InDelta(t, 10*first*second, strength.YieldMPa, 0, name)
	}
}

func parseFloat(text string) float64 {
	value, _ := parseFraction(text)
	out, _ := value.Float64()
	return out
}

func TestCrossOrder(t *testing.T) {
	for bolts := 3; bolts <= 24; bolts++ {
		order, ok := CrossOrder(bolts)
		require.True(t, ok)
		require.Len(t, order, bolts)
		seen := map[int]bool{}
		for i, bolt := range order {
			assert.True(t, bolt >= 1 && bolt <= bolts && !seen[bolt], "%d bolts: %v", bolts, order)
			seen[bolt] = true
			if bolts%2 == 0 && i%2 == 1 {
				assert.Equal(t, bolts/2, abs(bolt-order[i-1]), "%d bolts: %v has no opposite pair at %d", bolts, order, i)
			}
			if bolts > 4 && i > 0 {
				gap := abs(bolt - order[i-1])
				assert.Greater(t, min(gap, bolts-gap), 1, "%d bolts: %v goes to the neighbour at %d", bolts, order, i)
			}
		}
	}
	for _, bolts := range []int{-1, 0, 2, 25} {
		_, ok := CrossOrder(bolts)
		assert.False(t, ok)
	}
}

func abs(n int) int { return max(n, -n) }

// ASME PCC-1, legacy cross pattern, from memory of its table.
func TestCrossOrderOfPCC1(t *testing.T) {
	for bolts, want := range map[int][]int{
		4: {1, 3, 2, 4}, 5: {1, 3, 5, 2, 4}, 6: {1, 4, 2, 5, 3, 6}, 8: {1, 5, 3, 7, 2, 6, 4, 8},
		12: {1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12},
		16: {1, 9, 5, 13, 3, 11, 7, 15, 2, 10, 6, 14, 4, 12, 8, 16},
		20: {1, 11, 6, 16, 3, 13, 8, 18, 5, 15, 10, 20, 2, 12, 7, 17, 4, 14, 9, 19},
		24: {1, 13, 7, 19, 4, 16, 10, 22, 2, 14, 8, 20, 5, 17, 11, 23, 3, 15, 9, 21, 6, 18, 12, 24},
	} {
		got, _ := CrossOrder(bolts)
		assert.Equal(t, want, got)
	}
	passes := Passes()
	assert.IsIncreasing(t, passes)
	assert.Equal(t, 100, passes[len(passes)-1])
}
