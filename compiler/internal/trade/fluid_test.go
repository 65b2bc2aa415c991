package trade

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// US Bureau of Reclamation, FIST 2-4, table 2: the pairs that are not incompatible, all of them.
func TestThickenersOfFIST24(t *testing.T) {
	published := map[[2]string]Mixing{
		{"aluminium-complex", "lithium"}: Borderline, {"calcium", "lithium"}: Borderline,
		{"calcium", "lithium-complex"}: Mixes, {"lithium", "lithium-complex"}: Mixes,
		{"aluminium-complex", "lithium-complex"}: Borderline, // C in the table; 21 charts disagree 12, 4 and 5 (lubesngreases.com 25/10)
	}
	for i, row := range greaseChart {
		require.Len(t, row, len(thickeners))
		for j := range thickeners {
			assert.Equal(t, greaseChart[j][i], row[j], "%s and %s", thickeners[i], thickeners[j])
			want := DoesNotMix
			if found, ok := published[[2]string{min(thickeners[i], thickeners[j]), max(thickeners[i], thickeners[j])}]; ok {
				want = found
			}
			if i == j {
				want = Mixes
			}
			assert.Equal(t, want, ThickenersMix(thickeners[i], thickeners[j]), "%s and %s", thickeners[i], thickeners[j])
		}
	}
	assert.Equal(t, Unknown, ThickenersMix("calcium-sulfonate", "lithium"))
	assert.Equal(t, Mixes, ThickenersMix("calcium-sulfonate", "calcium-sulfonate"))
}

// FMVSS 116, 49 CFR 571.116: what each brake fluid is miscible with.
func TestBrakeFluidsOfFMVSS116(t *testing.T) {
	miscible := map[string]string{"DOT 3": "DOT 3, DOT 4, DOT 5.1,", "DOT 4": "DOT 3, DOT 4, DOT 5.1,", "DOT 5": "DOT 5,", "DOT 5.1": "DOT 3, DOT 4, DOT 5.1,"}
	for one, list := range miscible {
		for other := range miscible {
			want := DoesNotMix
			if strings.Contains(list, other+",") {
				want = Mixes
			}
			assert.Equal(t, want, BrakeFluidsMix(one, other), "%s and %s", one, other)
		}
	}
	assert.Equal(t, DoesNotMix, BrakeFluidsMix("dot5", "DOT-4"))
	assert.Equal(t, Unknown, BrakeFluidsMix("DOT 4", "ISO VG 46"))
	assert.Equal(t, Unknown, BrakeFluidsMix("", "DOT 4"))
}

func TestCoolantKind(t *testing.T) {
	for words, want := range map[string]string{"OAT, ASTM D3306": "OAT", "Si-OAT": "HOAT", "P-HOAT": "HOAT", "hybrid, blue": "HOAT", "IAT with silicate": "IAT"} {
		kind, ok := CoolantKind(words)
		assert.True(t, ok, words)
		assert.Equal(t, want, kind, words)
	}
	for _, words := range []string{"", "blue", "ASTM D6210", "goat oats", "coat"} {
		_, ok := CoolantKind(words)
		assert.False(t, ok, words)
	}
}

// Every grade of the published lists is read: SAE J306 of February 2019
// (pmlubrication.com.au), SAE J300 of January 2015 (raso.name), ISO 3448 up to 1500
// (united-oil.com, pmlubrication.com.au), the nine of ASTM D217, the four of FMVSS 116.
func TestEveryPublishedGradeIsRead(t *testing.T) {
	for kind, list := range map[GradeKind]string{
		GearOil:    "SAE 70W,SAE 75W,SAE 80W,SAE 85W,SAE 65,SAE 70,SAE 75,SAE 80,SAE 85,SAE 90,SAE 110,SAE 140,SAE 190,SAE 250,75W-90,80W-90,85W-140,75W-140",
		EngineOil:  "SAE 0W,SAE 5W,SAE 10W,SAE 15W,SAE 20W,SAE 25W,SAE 8,SAE 12,SAE 16,SAE 20,SAE 30,SAE 40,SAE 50,SAE 60,10W-30,15W-40,20W-50",
		Industrial: "ISO VG 2,ISO VG 3,ISO VG 5,ISO VG 7,ISO VG 10,ISO VG 15,ISO VG 22,ISO VG 32,ISO VG 46,ISO VG 68,ISO VG 100,ISO VG 150,ISO VG 220,ISO VG 320,ISO VG 460,ISO VG 680,ISO VG 1000,ISO VG 1500",
		NLGI:       "NLGI 000,NLGI 00,NLGI 0,NLGI 1,NLGI 2,NLGI 3,NLGI 4,NLGI 5,NLGI 6",
		BrakeFluid: "DOT 3,DOT 4,DOT 5,DOT 5.1",
	} {
		for text := range strings.SplitSeq(list, ",") {
			grade, err := WrongGrade(text)
			require.NoError(t, err, text)
			assert.Equal(t, kind, grade.Kind, text)
		}
	}
}

func TestWrongGrade(t *testing.T) {
	for _, text := range []string{"ISO VG 47", "ISO 45", "VG40", "NLGI 7", "NLGI 0000", "DOT 6", "SAE 45", "SAE 80-90", "80-90", "90-80W", "10W-90", "GL-7"} {
		_, err := WrongGrade(text)
		assert.Error(t, err, text)
	}
	for _, text := range []string{"", "46", "2", "HLP 46", "HVLP 32", "CLP 220", "NLGI 1.5", "NLGI 1-2", "DOT 4 LV", "ATF type F", "SAE 30 or 10W-30", "universal", "ISO-L-HM 46", "two-stroke, 1:50", "5W-30 / 5W-40"} {
		grade, err := WrongGrade(text)
		assert.NoError(t, err, text)
		assert.Equal(t, Grade{}, grade, text)
	}
}

func TestGradesOf(t *testing.T) {
	assert.False(t, GradesOf("engine-oil", GearOil), "80W-90 is of SAE J306, engine oil of J300")
	assert.True(t, GradesOf("gear-oil", GearOil))
	assert.True(t, GradesOf("gear-oil", EngineOil), "SAE 50 is sold for gearboxes")
	assert.False(t, GradesOf("grease", BrakeFluid))
	assert.True(t, GradesOf("other", BrakeFluid))
}

// oilspecifications.org/api_gos.php: GL-2, GL-3 and GL-6 are inactive; there is no GL-7.
func TestGearServices(t *testing.T) {
	assert.Equal(t, []string{"4", "5"}, GearServices("API GL-4/GL5"))
	assert.Empty(t, GearServices("CLP PG, gl, GL"))
	for number, want := range map[string][2]bool{"1": {true, true}, "2": {true, false}, "3": {true, false}, "4": {true, true}, "5": {true, true}, "6": {true, false}, "7": {}} {
		known, inUse := GearServiceKnown(number)
		assert.Equal(t, want, [2]bool{known, inUse}, number)
	}
}

func TestYellowMetal(t *testing.T) {
	for words, metal := range map[string]string{"Bronze": "bronze", "CuSn12, bronze": "bronze", "brass cage": "brass", "steel": "", "brassy": "", "yellow paint": ""} {
		got, ok := YellowMetal(words)
		assert.Equal(t, metal, got)
		assert.Equal(t, metal != "", ok)
	}
	for words, gear := range map[string]string{"worm gearbox": "worm", "Worm wheel": "worm", "synchroniser ring": "synchroniser", "wormhole": "", "earthworms": ""} {
		got, ok := YellowGear(words)
		assert.Equal(t, gear, got)
		assert.Equal(t, gear != "", ok)
	}
}
