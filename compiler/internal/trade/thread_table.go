package trade

import "strings"

// metricRow is a diameter with its pitches; coarse is 0 where there is none.
type metricRow struct {
	d, coarse float64
	fine      []float64
}

func (r metricRow) pitches() string {
	var out []string
	if r.coarse > 0 {
		out = append(out, number(r.coarse)+" (coarse)")
	}
	for _, p := range r.fine {
		out = append(out, number(p))
	}
	return strings.Join(out, ", ")
}

// metric is ISO 261. Coarse pitches M3 to M39 and the fine pitches that ISO 262
// selects were read; the other fine pitches (plugs, spark plugs, fittings) are from
// memory of ISO 261. By diameter.
var metric = []metricRow{
	{1.6, 0.35, []float64{0.2}}, {2, 0.4, []float64{0.25}}, {2.5, 0.45, []float64{0.35}},
	{3, 0.5, []float64{0.35}}, {3.5, 0.6, []float64{0.35}}, {4, 0.7, []float64{0.5}}, {5, 0.8, []float64{0.5}},
	{6, 1, []float64{0.75}}, {7, 1, []float64{0.75}}, {8, 1.25, []float64{1, 0.75}}, {9, 1.25, []float64{1, 0.75}},
	{10, 1.5, []float64{1.25, 1, 0.75}}, {11, 1.5, []float64{1, 0.75}}, {12, 1.75, []float64{1.5, 1.25, 1}},
	{14, 2, []float64{1.5, 1.25, 1}}, {15, 0, []float64{1.5, 1}}, {16, 2, []float64{1.5, 1}}, {17, 0, []float64{1.5, 1}},
	{18, 2.5, []float64{2, 1.5, 1}}, {20, 2.5, []float64{2, 1.5, 1}}, {22, 2.5, []float64{2, 1.5, 1}},
	{24, 3, []float64{2, 1.5, 1}}, {25, 0, []float64{2, 1.5, 1}}, {26, 0, []float64{1.5}}, {27, 3, []float64{2, 1.5, 1}},
	{28, 0, []float64{2, 1.5, 1}}, {30, 3.5, []float64{3, 2, 1.5, 1}}, {32, 0, []float64{2, 1.5}}, {33, 3.5, []float64{3, 2, 1.5}},
	{35, 0, []float64{1.5}}, {36, 4, []float64{3, 2, 1.5}}, {38, 0, []float64{1.5}}, {39, 4, []float64{3, 2, 1.5}},
	{40, 0, []float64{3, 2, 1.5}}, {42, 4.5, []float64{4, 3, 2, 1.5}}, {45, 4.5, []float64{4, 3, 2, 1.5}},
	{48, 5, []float64{4, 3, 2, 1.5}}, {50, 0, []float64{3, 2, 1.5}}, {52, 5, []float64{4, 3, 2, 1.5}},
	{56, 5.5, []float64{4, 3, 2, 1.5}}, {60, 5.5, []float64{4, 3, 2, 1.5}}, {64, 6, []float64{4, 3, 2, 1.5}},
}

// unifiedRow is an inch thread; size is "3/8" or "#10".
type unifiedRow struct {
	size   string
	tpi    float64
	series Series
}

func (r unifiedRow) written() string { return r.size + "-" + number(r.tpi) + " " + r.series.String() }

func (r unifiedRow) thread() Thread {
	return Thread{Written: r.written(), Nominal: r.size, Series: r.series, DiameterMM: ratMM(r.size), PitchMM: mmPerInch / r.tpi, TPI: r.tpi, Standard: "ASME B1.1"}
}

// unified is ASME B1.1. 1/4 to 1-1/2 were read with their stress areas, #8 and #10 in
// FAA AC 43.13-1B table 7-1; the other numbers and sizes over 1-1/2 are from memory.
// 1-14 is in no series of its own but common, and in the FAA table.
var unified = []unifiedRow{
	{"#0", 80, UNF}, {"#1", 64, UNC}, {"#1", 72, UNF}, {"#2", 56, UNC}, {"#2", 64, UNF}, {"#3", 48, UNC}, {"#3", 56, UNF},
	{"#4", 40, UNC}, {"#4", 48, UNF}, {"#5", 40, UNC}, {"#5", 44, UNF}, {"#6", 32, UNC}, {"#6", 40, UNF},
	{"#8", 32, UNC}, {"#8", 36, UNF}, {"#10", 24, UNC}, {"#10", 32, UNF}, {"#12", 24, UNC}, {"#12", 28, UNF},
	{"1/4", 20, UNC}, {"1/4", 28, UNF}, {"5/16", 18, UNC}, {"5/16", 24, UNF}, {"3/8", 16, UNC}, {"3/8", 24, UNF},
	{"7/16", 14, UNC}, {"7/16", 20, UNF}, {"1/2", 13, UNC}, {"1/2", 20, UNF}, {"9/16", 12, UNC}, {"9/16", 18, UNF},
	{"5/8", 11, UNC}, {"5/8", 18, UNF}, {"3/4", 10, UNC}, {"3/4", 16, UNF}, {"7/8", 9, UNC}, {"7/8", 14, UNF},
	{"1", 8, UNC}, {"1", 12, UNF}, {"1", 14, UNS}, {"1-1/8", 7, UNC}, {"1-1/8", 12, UNF}, {"1-1/4", 7, UNC}, {"1-1/4", 12, UNF},
	{"1-3/8", 6, UNC}, {"1-3/8", 12, UNF}, {"1-1/2", 6, UNC}, {"1-1/2", 12, UNF}, {"1-3/4", 5, UNC}, {"2", 4.5, UNC},
	// The 12-thread and 8-thread series of ASME B1.1, with the sizes of hydraulic ports and
	// fittings (SAE J1926, J514); from memory.
	{"3/4", 12, UN}, {"7/8", 12, UN}, {"1-1/16", 12, UN}, {"1-3/16", 12, UN}, {"1-5/16", 12, UN}, {"1-7/16", 12, UN}, {"1-5/8", 12, UN},
	{"1-3/4", 12, UN}, {"1-7/8", 12, UN}, {"2", 12, UN}, {"2-1/2", 12, UN}, {"1-1/8", 8, UN}, {"1-1/4", 8, UN}, {"1-3/8", 8, UN}, {"1-1/2", 8, UN},
	{"1-5/8", 8, UN}, {"1-3/4", 8, UN}, {"1-7/8", 8, UN}, {"2", 8, UN}, {"2-1/4", 8, UN}, {"2-1/2", 8, UN},
}

// pipeRow is a size of pipe thread: G and R share threads an inch and diameter; NPT has its own.
type pipeRow struct {
	size    string
	tpi, mm float64
	onlyG   bool // not a size of ISO 7-1
	nptTPI  float64
	nptInch float64 // outside diameter of the pipe; 0 where NPT has no such size
}

func (r pipeRow) thread(kind string) Thread {
	if kind == "npt" {
		return Thread{Written: r.size + "-" + number(r.nptTPI) + " NPT", Nominal: r.size + " NPT", Series: NPT,
			DiameterMM: r.nptInch * mmPerInch, PitchMM: mmPerInch / r.nptTPI, TPI: r.nptTPI, Standard: "ASME B1.20.1"}
	}
	letter, series, standard := "R", PipeTaper, "ISO 7-1"
	switch kind {
	case "g", "bspp":
		letter, series, standard = "G", PipeParallel, "ISO 228-1"
	case "rp":
		letter, series = "Rp", PipeParallel
	case "rc":
		letter = "Rc"
	}
	return Thread{Written: letter + " " + r.size, Nominal: letter + " " + r.size, Series: series, DiameterMM: r.mm, PitchMM: mmPerInch / r.tpi, TPI: r.tpi, Standard: standard}
}

// pipe is ISO 228-1 and ISO 7-1 (threads an inch and diameters read in FreeCAD_FastenersWB
// FsData/bspthreaddef.csv) and ASME B1.20.1 (from memory).
var pipe = []pipeRow{
	{"1/16", 28, 7.723, false, 27, 0.3125}, {"1/8", 28, 9.728, false, 27, 0.405}, {"1/4", 19, 13.157, false, 18, 0.540},
	{"3/8", 19, 16.662, false, 18, 0.675}, {"1/2", 14, 20.955, false, 14, 0.840}, {"5/8", 14, 22.911, true, 0, 0},
	{"3/4", 14, 26.441, false, 14, 1.050}, {"7/8", 14, 30.201, true, 0, 0}, {"1", 11, 33.249, false, 11.5, 1.315},
	{"1-1/8", 11, 37.897, true, 0, 0}, {"1-1/4", 11, 41.910, false, 11.5, 1.660}, {"1-1/2", 11, 47.803, false, 11.5, 1.900},
	{"1-3/4", 11, 53.746, true, 0, 0}, {"2", 11, 59.614, false, 11.5, 2.375}, {"2-1/2", 11, 75.184, false, 8, 2.875}, {"3", 11, 87.884, false, 8, 3.500},
}
