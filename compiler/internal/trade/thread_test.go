package trade

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestParseThread(t *testing.T) {
	tests := []struct {
		text, written string
		series        Series
		d, pitch      float64
	}{
		{"M10", "M10", MetricCoarse, 10, 1.5},
		{"m 10", "M10", MetricCoarse, 10, 1.5},
		{"M10x1.5", "M10", MetricCoarse, 10, 1.5},
		{"M10x1.25", "M10×1.25", MetricFine, 10, 1.25},
		{"M10×1.25", "M10×1.25", MetricFine, 10, 1.25},
		{"M10 x 1", "M10×1", MetricFine, 10, 1},
		{"M14x1.25", "M14×1.25", MetricFine, 14, 1.25},
		{"M18x1.5", "M18×1.5", MetricFine, 18, 1.5},
		{"M3.5", "M3.5", MetricCoarse, 3.5, 0.6},
		{"M26x1.5", "M26×1.5", MetricFine, 26, 1.5},
		{"3/8-16 UNC", "3/8-16 UNC", UNC, 9.525, 1.5875},
		{"3/8-16", "3/8-16 UNC", UNC, 9.525, 1.5875},
		{"3/8 - 24", "3/8-24 UNF", UNF, 9.525, 25.4 / 24},
		{"1/4-28 UNF", "1/4-28 UNF", UNF, 6.35, 25.4 / 28},
		{"1-8 UNC", "1-8 UNC", UNC, 25.4, 3.175},
		{"1 1/4-7", "1-1/4-7 UNC", UNC, 31.75, 25.4 / 7},
		{"1-1/4-12 UNF", "1-1/4-12 UNF", UNF, 31.75, 25.4 / 12},
		{"1-14", "1-14 UNS", UNS, 25.4, 25.4 / 14},
		{"#10-24", "#10-24 UNC", UNC, 4.826, 25.4 / 24},
		{"10-32", "#10-32 UNF", UNF, 4.826, 25.4 / 32},
		{"No. 8-32", "#8-32 UNC", UNC, 4.1656, 25.4 / 32},
		{"G1/4", "G 1/4", PipeParallel, 13.157, 25.4 / 19},
		{"G 1/2", "G 1/2", PipeParallel, 20.955, 25.4 / 14},
		{"1/2 BSPP", "G 1/2", PipeParallel, 20.955, 25.4 / 14},
		{"Rp 1/2", "Rp 1/2", PipeParallel, 20.955, 25.4 / 14},
		{"R1/4", "R 1/4", PipeTaper, 13.157, 25.4 / 19},
		{"Rc 1-1/4", "Rc 1-1/4", PipeTaper, 41.91, 25.4 / 11},
		{"NPT 1/8", "1/8-27 NPT", NPT, 10.287, 25.4 / 27},
		{"1/8-27 NPT", "1/8-27 NPT", NPT, 10.287, 25.4 / 27},
		{"1/8 NPT", "1/8-27 NPT", NPT, 10.287, 25.4 / 27},
		{"1-11.5 NPT", "1-11.5 NPT", NPT, 33.401, 25.4 / 11.5},
	}
	for _, test := range tests {
		thread, err := ParseThread(test.text)
		require.NoError(t, err, test.text)
		assert.Equal(t, test.written, thread.Written, test.text)
		assert.Equal(t, test.series, thread.Series, test.text)
		assert.InDelta(t, test.d, thread.DiameterMM, 1e-9, test.text)
		assert.InDelta(t, test.pitch, thread.PitchMM, 1e-9, test.text)
		again, err := ParseThread(thread.Written)
		require.NoError(t, err)
		assert.Equal(t, thread, again)
	}
}

func TestParseThreadSaysWhatIsKnown(t *testing.T) {
	for text, hint := range map[string]string{
		"M10x1.75":       "listed are 1.5 (coarse), 1.25, 1, 0.75",
		"M8x1.5":         "listed are 1.25 (coarse), 1, 0.75",
		"M10x30":         "looks like a length",
		"M13":            "M12 or M14",
		"M26":            "listed are 1.5",
		"M0":             "M1.6",
		"M17x0":          "listed are 1.5, 1",
		"M999":           "M64",
		"3/8":            "3/8-16 UNC or 3/8-24 UNF",
		`3/8"`:           "3/8-16 UNC or 3/8-24 UNF",
		"3/8-20":         "3/8-16 UNC or 3/8-24 UNF",
		"3/8-16 UNF":     "3/8-16 UNC or 3/8-24 UNF",
		"11/32-20":       "as it is marked",
		"1/4 BSP":        "G 1/4 (parallel, ISO 228-1) or R 1/4",
		"R 7/8":          "known are 1/16, 1/8, 1/4, 3/8, 1/2, 3/4, 1",
		"1/8-28 NPT":     "write 1/8-27 NPT",
		"G 9/16":         "known are",
		"":               "write M10",
		"grade 8 bolts?": "no thread",
	} {
		_, err := ParseThread(text)
		assert.ErrorContains(t, err, hint, text)
	}
}

// Published stress areas and proof loads of ISO 898-1, as printed in the load tables of
// usefastener.com, engineeringtoolbox.com and optimas.com; M30 to M39 proof loads are area × stress.
var iso898 = []struct {
	thread string
	area   float64
	proof  [4]float64 // 4.6, 8.8, 10.9, 12.9
	most   [3]float64 // least ultimate load of 8.8, 10.9, 12.9
}{
	{"M3", 5.03, [4]float64{1130, 2920, 4180, 4880}, [3]float64{4020, 5230, 6140}},
	{"M3.5", 6.78, [4]float64{1530, 3940, 5630, 6580}, [3]float64{5420, 7050, 8270}},
	{"M4", 8.78, [4]float64{1980, 5100, 7290, 8520}, [3]float64{7020, 9130, 10700}},
	{"M5", 14.2, [4]float64{3200, 8230, 11800, 13800}, [3]float64{11350, 14800, 17300}},
	{"M6", 20.1, [4]float64{4520, 11600, 16700, 19500}, [3]float64{16100, 20900, 24500}},
	{"M7", 28.9, [4]float64{6500, 16800, 24000, 28000}, [3]float64{23100, 30100, 35300}},
	{"M8", 36.6, [4]float64{8240, 21200, 30400, 35500}, [3]float64{29200, 38100, 44600}},
	{"M10", 58, [4]float64{13000, 33700, 48100, 56300}, [3]float64{46400, 60300, 70800}},
	{"M12", 84.3, [4]float64{19000, 48900, 70000, 81800}, [3]float64{67400, 87700, 103000}},
	{"M14", 115, [4]float64{25900, 66700, 95500, 112000}, [3]float64{92000, 120000, 140000}},
	{"M16", 157, [4]float64{35300, 91000, 130000, 152000}, [3]float64{125000, 163000, 192000}},
	{"M18", 192, [4]float64{43200, 115000, 159000, 186000}, [3]float64{159000, 200000, 234000}},
	{"M20", 245, [4]float64{55100, 147000, 203000, 238000}, [3]float64{203000, 255000, 299000}},
	{"M22", 303, [4]float64{68200, 182000, 252000, 294000}, [3]float64{252000, 315000, 370000}},
	{"M24", 353, [4]float64{79400, 212000, 293000, 342000}, [3]float64{293000, 367000, 431000}},
	{"M27", 459, [4]float64{103000, 275000, 381000, 445000}, [3]float64{381000, 477000, 560000}},
	{"M30", 561, [4]float64{126000, 337000, 466000, 544000}, [3]float64{466000, 583000, 684000}},
	{"M33", 694, [4]float64{156000, 416000, 576000, 673000}, [3]float64{576000, 722000, 847000}},
	{"M36", 817, [4]float64{184000, 490000, 678000, 792000}, [3]float64{678000, 850000, 997000}},
	{"M39", 976, [4]float64{220000, 586000, 810000, 947000}, [3]float64{810000, 1020000, 1200000}},
}

func threeFigures(value float64) float64 {
	unit := math.Pow(10, math.Floor(math.Log10(value))-2)
	return math.Round(value/unit) * unit
}

func TestStressAreasOfISO898(t *testing.T) {
	fine := map[string]float64{"M8x1": 39.2, "M10x1": 64.5, "M10x1.25": 61.2, "M12x1.25": 92.1, "M12x1.5": 88.1, "M14x1.5": 125, "M16x1.5": 167}
	for _, row := range iso898 {
		fine[row.thread] = row.area
	}
	for text, published := range fine {
		thread, err := ParseThread(text)
		require.NoError(t, err)
		area, ok := thread.StressAreaMM2()
		require.True(t, ok)
		assert.InDelta(t, published, threeFigures(area), 1e-9, text)
	}
}

// ASME B1.1 areas in square inches, as printed with the bolt torque table of coxhardware.com.
func TestStressAreasOfASMEB11(t *testing.T) {
	for text, published := range map[string]float64{
		"1/4-20": 0.0318, "1/4-28": 0.0364, "5/16-18": 0.0524, "5/16-24": 0.0581, "3/8-16": 0.0775, "3/8-24": 0.0878,
		"7/16-14": 0.1063, "7/16-20": 0.1187, "1/2-13": 0.1419, "1/2-20": 0.1600, "9/16-12": 0.1819, "9/16-18": 0.2030,
		"5/8-11": 0.2260, "5/8-18": 0.2560, "3/4-10": 0.3345, "3/4-16": 0.3730, "7/8-9": 0.4617, "7/8-14": 0.5095,
		"1-8": 0.6057, "1-12": 0.6630, "1-1/8-7": 0.7633, "1-1/8-12": 0.8557, "1-1/4-7": 0.9691, "1-1/4-12": 1.0729,
		"1-3/8-6": 1.1549, "1-3/8-12": 1.3147, "1-1/2-6": 1.4052, "1-1/2-12": 1.5810,
	} {
		thread, err := ParseThread(text)
		require.NoError(t, err, text)
		area, ok := thread.StressAreaMM2()
		require.True(t, ok)
		assert.InDelta(t, published, area/(25.4*25.4), 0.00006, text)
	}
	gas, err := ParseThread("G 1/4")
	require.NoError(t, err)
	_, ok := gas.StressAreaMM2()
	assert.False(t, ok)
}

func FuzzParseThread(f *testing.F) {
	for _, text := range []string{"M10x1.25", "3/8-16 UNC", "NPT 1/8", "G1/4", "1-1/4-7", "#10-24", "1/0-3", "6 6 UNC", "1-5/16-12 UN", "2 UN"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		thread, err := ParseThread(text)
		if err != nil {
			return
		}
		again, err := ParseThread(thread.Written)
		require.NoError(t, err)
		assert.Equal(t, thread, again)
	})
}

// What is nearly a thread is told as the thread that is meant, and nothing far off is offered.
func TestThreadsThatAreNearlyWritten(t *testing.T) {
	for text, says := range map[string]string{
		"1/2 UNF": "1/2-20 UNF", "3/8 UNC": "3/8-16 UNC", `5/16" UNC`: "5/16-18 UNC", "M10-1.25": "M10×1.25", "Tr 20x4": "write M10", "M61x1.5": "M60",
	} {
		_, err := ParseThread(text)
		if assert.Error(t, err, text) {
			assert.Contains(t, err.Error(), says, text)
		}
	}
}

// A comma for the point is told with the thread that is meant.
func TestACommaInAThreadIsTold(t *testing.T) {
	for text, meant := range map[string]string{"M 8 x 1,25": `write "M8"`, "M10x1,25": `write "M10×1.25"`} {
		_, err := ParseThread(text)
		assert.ErrorContains(t, err, meant)
	}
	_, err := ParseThread("M10,M12")
	assert.ErrorContains(t, err, "is no thread")
}
