package trade

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func width(t *testing.T, text string) Width {
	t.Helper()
	out, err := ParseWidth(text)
	require.NoError(t, err)
	return out
}

func thread(t *testing.T, text string) Thread {
	t.Helper()
	out, err := ParseThread(text)
	require.NoError(t, err)
	return out
}

// The two rules worked out by hand for every inch size and its nearest metric one; 3/4 and
// 19 mm, 5/16 and 8 mm, 5/32 and 4 mm are named as interchangeable in Wikipedia, Width across flats.
func TestFitInchAgainstMetric(t *testing.T) {
	for _, row := range []struct {
		inch, metric         string
		inchTool, metricTool Fitting
	}{
		{"5/32", "4", Good, Good}, {"3/16", "5", WillNotGoOn, TooLoose}, {"7/32", "5.5", Loose, WillNotGoOn},
		{"1/4", "6", TooLoose, WillNotGoOn}, {"9/32", "7", TooLoose, WillNotGoOn}, {"5/16", "8", Good, Good},
		{"11/32", "9", WillNotGoOn, TooLoose}, {"3/8", "10", WillNotGoOn, TooLoose}, {"7/16", "11", Loose, WillNotGoOn},
		{"1/2", "13", WillNotGoOn, TooLoose}, {"9/16", "14", TooLoose, WillNotGoOn}, {"19/32", "15", Good, WillNotGoOn},
		{"5/8", "16", WillNotGoOn, Good}, {"11/16", "17", TooLoose, WillNotGoOn}, {"3/4", "19", Good, Good},
		{"25/32", "20", WillNotGoOn, Good}, {"13/16", "21", WillNotGoOn, Loose}, {"7/8", "22", Loose, WillNotGoOn},
		{"15/16", "24", WillNotGoOn, Good}, {"1", "25", Loose, WillNotGoOn}, {"1-1/16", "27", Good, Good},
		{"1-1/8", "29", WillNotGoOn, Loose}, {"1-3/16", "30", Good, WillNotGoOn}, {"1-1/4", "32", WillNotGoOn, Good},
		{"1-5/16", "34", WillNotGoOn, Loose}, {"1-3/8", "35", Good, Good}, {"1-7/16", "36", Loose, WillNotGoOn},
		{"1-1/2", "38", Good, Good}, {"1-5/8", "41", Good, WillNotGoOn}, {"1-13/16", "46", Good, Good}, {"2-3/16", "55", Loose, WillNotGoOn},
	} {
		inch, metric := width(t, row.inch+" in"), width(t, row.metric+" mm")
		got, why := Fit(inch, metric)
		assert.Equal(t, row.inchTool, got, "%s tool on %s: %s", inch.Label, metric.Label, why)
		assert.NotEmpty(t, why)
		got, why = Fit(metric, inch)
		assert.Equal(t, row.metricTool, got, "%s tool on %s: %s", metric.Label, inch.Label, why)
		assert.NotEmpty(t, why)
		for _, size := range []Width{inch, metric} {
			same, _ := Fit(size, size)
			assert.Equal(t, Same, same)
		}
	}
}

func TestLeastOpeningOfPublishedExample(t *testing.T) {
	// Wikipedia, Width across flats: a 1-1/2 in wrench opens 1.508 to 1.520 in.
	assert.InDelta(t, 1.508, leastOpening(width(t, "1-1/2 in"))/25.4, 0.0006)
}

func TestStandIns(t *testing.T) {
	labels := func(list []Width) []string { return keysOf(list, func(w Width) string { return w.Label }) }
	assert.Equal(t, []string{"3/4 in"}, labels(StandIns(width(t, "19 mm"))))
	assert.Equal(t, []string{"19 mm"}, labels(StandIns(width(t, "3/4 in"))))
	assert.Empty(t, StandIns(width(t, "13 mm")))
	assert.Equal(t, []string{"1-3/16 in"}, labels(StandIns(width(t, "30 mm"))))
	assert.Equal(t, []string{"7/16 in"}, labels(StandIns(width(t, "11 mm"))))
	assert.Equal(t, []string{"5/32 in"}, labels(StandInKeys(width(t, "4 mm"))))
	assert.Empty(t, StandInKeys(width(t, "6 mm")))
}

func TestFitKey(t *testing.T) {
	for _, test := range []struct {
		tool, socket string
		want         Fitting
	}{
		{"4 mm", "4 mm", Same}, {"5/32 in", "4 mm", Good}, {"4 mm", "5/32 in", WillNotGoOn}, {"5/16 in", "8 mm", Good},
		{"3/16 in", "5 mm", TooLoose}, {"5 mm", "6 mm", TooLoose}, {"1/4 in", "6 mm", WillNotGoOn}, {"3/4 in", "19 mm", WillNotGoOn}, {"19 mm", "3/4 in", Good},
	} {
		got, why := FitKey(width(t, test.tool), width(t, test.socket))
		assert.Equal(t, test.want, got, "%s in %s: %s", test.tool, test.socket, why)
	}
}

func TestWidths(t *testing.T) {
	for _, test := range []struct {
		thread, head string
		want         []string
	}{
		{"M6", "hex", []string{"10 mm"}},
		{"M8", "hex", []string{"13 mm", "12 mm"}},
		{"M10", "hex", []string{"16 mm", "17 mm", "14 mm"}},
		{"M10x1.25", "nut", []string{"16 mm", "17 mm", "14 mm"}},
		{"M12", "hex", []string{"18 mm", "19 mm", "17 mm"}},
		{"M14", "hex", []string{"21 mm", "22 mm", "19 mm"}},
		{"M18x1.5", "hex", []string{"27 mm"}},
		{"M22", "nut", []string{"34 mm", "32 mm"}},
		{"M10", "hex-flange", []string{"13 mm"}},
		{"M12", "hex-flange", []string{"15 mm", "16 mm"}},
		{"M12", "hex-flange-heavy", []string{"18 mm"}},
		{"M10", "socket", []string{"8 mm"}},
		{"M10", "button", []string{"6 mm"}},
		{"M10", "countersunk", []string{"6 mm"}},
		{"M10", "set-screw", []string{"5 mm"}},
		{"M22x1.5", "socket-plug", []string{"10 mm"}},
		{"G 1/4", "hex", []string{"13 mm"}},
		{"1/4 NPT", "square-plug", []string{"3/8 in"}},
		{"7/16-14", "hex", []string{"5/8 in"}},
		{"7/16-14", "nut", []string{"11/16 in"}},
		{"9/16-12", "hex", []string{"13/16 in"}},
		{"9/16-12", "nut", []string{"7/8 in"}},
		{"3/8-16", "hex", []string{"9/16 in"}},
		{"3/8-16", "socket", []string{"5/16 in"}},
		{"1/4-20", "hex-flange", []string{"3/8 in"}},
		{"M10", "cross", nil}, {"M10", "wing", nil}, {"M10", "square", nil}, {"G 1/4", "nut", nil},
	} {
		got := Widths(thread(t, test.thread), test.head)
		assert.Equal(t, len(test.want), len(got), "%s %s: %v", test.thread, test.head, got)
		for i := range got {
			assert.Equal(t, test.want[i], got[i].Label, "%s %s", test.thread, test.head)
			assert.NotEmpty(t, got[i].Standard)
		}
	}
	m10 := Widths(thread(t, "M10"), "hex")
	assert.Equal(t, []bool{false, false, true}, []bool{m10[0].FromMemory, m10[1].FromMemory, m10[2].FromMemory})
	assert.Contains(t, m10[1].Standard, "DIN 931")
}

// ASME B18.2.1: width across flats is 1.5 D for 3/8, 1/2 and all from 5/8 up; four sizes are the exception.
func TestInchHexagonsFollowOneAndAHalfD(t *testing.T) {
	odd := map[string]bool{"1/4": true, "5/16": true, "7/16": true, "9/16": true, "#8": true, "#10": true}
	for size, across := range asmeHex {
		assert.Equal(t, !odd[size], math.Abs(inchMM(mustInch(across))-1.5*ratMM(size)) < 1e-9, size)
	}
}

func TestTablesHoldOnlyKnownSizes(t *testing.T) {
	known := map[string]bool{}
	for _, row := range metric {
		known["M"+number(row.d)] = true
	}
	for _, row := range unified {
		known[row.size] = true
	}
	for _, row := range pipe {
		known["G "+row.size], known["R "+row.size], known[row.size+" NPT"] = true, !row.onlyG, row.nptInch > 0
	}
	for _, table := range []map[string][]sizes{metricWidths, inchWidths, {"socket-plug": {plugKeys}, "hex": {hexPlugs}, "square-plug": {squarePlugs}}} {
		for head, columns := range table {
			_, ok := FindHead(head)
			assert.True(t, ok, head)
			for _, column := range columns {
				assert.NotEmpty(t, column.standard)
				for size, text := range column.inch {
					assert.True(t, known[size], "%s %s", head, size)
					value, ok := parseFraction(text)
					assert.True(t, ok && fraction(value) == text, text)
				}
				for size := range column.mm {
					assert.True(t, known[size], "%s %s", head, size)
				}
			}
		}
	}
}

func TestHeads(t *testing.T) {
	keys := keysOf(Heads(), func(h Head) string { return h.Key })
	for _, key := range []string{"hex", "nut", "castle-nut", "hex-flange", "hex-flange-heavy", "socket", "button", "countersunk", "set-screw", "square", "slotted", "cross", "hexalobular", "wing", "none", "socket-plug", "square-plug"} {
		assert.Contains(t, keys, key)
	}
	_, err := ParseHead("hexalobal")
	assert.ErrorContains(t, err, `"hexalobular"`)
	assert.Contains(t, Recesses("hexalobular"), "T30")
	assert.Contains(t, Recesses("cross"), "PZ2")
	assert.Empty(t, Recesses("hex"))
}
