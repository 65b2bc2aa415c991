package trade

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/pattern"
)

// Series is the family of threads a thread belongs to.
type Series int

// The series of threads that ParseThread knows.
const (
	MetricCoarse Series = iota + 1 // ISO 261, ISO 262
	MetricFine                     // ISO 261
	UNC                            // ASME B1.1
	UNF                            // ASME B1.1
	UNS                            // ASME B1.1, special
	UN                             // ASME B1.1, of a constant pitch
	PipeParallel                   // ISO 228-1 G, ISO 7-1 Rp: seals with a washer or a face
	PipeTaper                      // ISO 7-1 R and Rc: seals in the thread
	NPT                            // ASME B1.20.1, taper: seals in the thread
)

var seriesWords = []string{"", "metric coarse", "metric fine", "UNC", "UNF", "UNS", "UN", "parallel pipe thread", "taper pipe thread", "NPT"}

func (s Series) String() string { return seriesWords[s] }

// Thread is a screw thread of a published series.
type Thread struct {
	Written    string // the way the standard writes it: "M10", "M10×1.25", "3/8-16 UNC", "G 1/4", "1/8-27 NPT"
	Nominal    string // its size without the pitch: "M10", "3/8", "#10", "G 1/4", "1/8 NPT"
	Series     Series
	DiameterMM float64 // major diameter; of a pipe thread that in the gauge plane
	PitchMM    float64
	TPI        float64 // threads an inch; 0 for metric
	Standard   string
}

// Metric reports whether the thread is a metric one.
func (t Thread) Metric() bool { return t.Series == MetricCoarse || t.Series == MetricFine }

// Pipe reports whether the thread is a pipe thread, whose size is not its diameter.
func (t Thread) Pipe() bool { return t.Series >= PipeParallel }

// StressAreaMM2 is the nominal stress area: ISO 898-1 for metric threads, ASME B1.1
// (Appendix B) for inch ones. Pipe threads have none.
func (t Thread) StressAreaMM2() (float64, bool) {
	switch {
	case t.Metric():
		core := t.DiameterMM - 0.9382*t.PitchMM
		return math.Pi / 4 * core * core, true
	case t.Series >= UNC && t.Series <= UN:
		core := t.DiameterMM - 0.9743*t.PitchMM
		return 0.7854 * core * core, true
	}
	return 0, false
}

var (
	metricForm  = pattern.MustCompile(`^m ?(\d{1,3}(?:\.\d)?)(?: ?[x×*] ?(\d{1,3}(?:\.\d{1,3})?))?$`)
	unifiedForm = pattern.MustCompile(`^(#\d{1,2}|no\.? ?\d{1,2}|[\d/ -]{1,8}?) ?(?:-|x|×) ?(\d{1,2}(?:\.\d)?)(?: ?tpi)?(?: ?(unc|unf|uns|un|npt))?$`)
	pipeForm    = pattern.MustCompile(`^(g|r|rc|rp|npt|bspp|bspt|bsp) ?([\d/ -]{1,7})$`)
	seriesOnly  = pattern.MustCompile(`^([\d/ -]{1,8}?)(?: ?in|")? ?(unc|unf|uns|un)$`)
	metricDash  = pattern.MustCompile(`^m ?(\d{1,3}) ?[-/] ?(\d(?:\.\d{1,2})?)$`)
	pipeAfter   = pattern.MustCompile(`^([\d/ -]{1,7}?) ?(?:in|")? ?(npt|bspp|bspt|bsp)$`)
)

// ParseThread reads a thread the way it is stamped, drawn or said: "M10", "M10x1.25",
// "3/8-16 UNC", "3/8-16", "#10-24", "G1/4", "R 1/2", "NPT 1/8", "1/8-27 NPT". A metric
// thread without a pitch is the coarse one (ISO 262). The error says what is known.
func ParseThread(text string) (Thread, error) {
	plain := strings.ReplaceAll(squeeze(text), "”", `"`)
	if m := metricForm.FindStringSubmatch(plain); m != nil {
		return parseMetric(text, m[1], m[2])
	}
	if m := pipeForm.FindStringSubmatch(plain); m != nil {
		return parsePipe(text, m[1], m[2])
	}
	if m := unifiedForm.FindStringSubmatch(plain); m != nil {
		return parseUnified(text, m[1], m[2], m[3])
	}
	if m := pipeAfter.FindStringSubmatch(plain); m != nil {
		return parsePipe(text, m[2], m[1])
	}
	if size, ok := parseFraction(strings.Trim(strings.TrimSuffix(plain, "in"), `" `)); ok {
		return Thread{}, bareInch(text, fraction(size))
	}
	if m := seriesOnly.FindStringSubmatch(plain); m != nil {
		return Thread{}, noPitch(text, m[1], m[2])
	}
	if m := metricDash.FindStringSubmatch(plain); m != nil {
		if meant, err := parseMetric("M"+m[1]+"x"+m[2], m[1], m[2]); err == nil {
			return Thread{}, mistaken(meant.Written, "%q is no thread; write %q", text, meant.Written)
		}
	}
	if strings.Contains(plain, ",") {
		if meant, err := ParseThread(strings.ReplaceAll(text, ",", ".")); err == nil {
			return Thread{}, mistaken(meant.Written, "%q is no thread; write %q", text, meant.Written)
		}
	}
	if near := nearest(text, threadNames()); near != "" && plain != "" && near[:1] == strings.ToUpper(plain[:1]) {
		return Thread{}, mistaken(near, "%q is no thread; the nearest is %q", text, near)
	}
	return Thread{}, fmt.Errorf("%q is no thread; write M10, M10x1.25, 3/8-16 UNC, G 1/4 or 1/8-27 NPT", text)
}

// noPitch is the error for an inch thread with its series and no threads an inch: "1/2 UNF".
func noPitch(text, size, series string) error {
	value, ok := parseFraction(size)
	for _, row := range unified {
		if ok && row.size == fraction(value) && strings.EqualFold(series, row.series.String()) {
			return mistaken(row.written(), "%q does not say the threads an inch; write %q", text, row.written())
		}
	}
	return fmt.Errorf("%q is no thread; write 3/8-16 UNC, G 1/4 or 1/8-27 NPT", text)
}

func bareInch(text, size string) error {
	var known []string
	for _, row := range unified {
		if row.size == size {
			known = append(known, row.written())
		}
	}
	if len(known) == 0 {
		return fmt.Errorf("%q says neither the series nor the pitch; write 3/8-16 UNC, G 1/4 or 1/8-27 NPT", text)
	}
	return fmt.Errorf("%q does not say the threads an inch; write %s", text, anyOf(known))
}

func threadNames() []string {
	var out []string
	for _, row := range metric {
		out = append(out, "M"+number(row.d))
	}
	for _, row := range unified {
		out = append(out, row.written())
	}
	for _, row := range pipe {
		out = append(out, "G "+row.size, "R "+row.size, row.size+" NPT")
	}
	return out
}

func number(value float64) string { return strconv.FormatFloat(value, 'f', -1, 64) }

func parseMetric(text, diameter, pitch string) (Thread, error) {
	d, _ := strconv.ParseFloat(diameter, 64)
	for _, row := range metric {
		if row.d != d {
			continue
		}
		thread := Thread{Written: "M" + number(d), Nominal: "M" + number(d), Series: MetricCoarse, DiameterMM: d, PitchMM: row.coarse, Standard: "ISO 261"}
		if pitch == "" && row.coarse == 0 {
			return Thread{}, fmt.Errorf("%q has no coarse thread, so its pitch is written; listed are %s", text, row.pitches())
		}
		p, _ := strconv.ParseFloat(pitch, 64)
		if pitch == "" || p > 0 && p == row.coarse {
			return thread, nil
		}
		for _, fine := range row.fine {
			if p == fine {
				thread.Series, thread.PitchMM, thread.Written = MetricFine, p, thread.Nominal+"×"+number(p)
				return thread, nil
			}
		}
		if p >= 5 && p > row.coarse {
			return Thread{}, fmt.Errorf("%q: %s mm is no pitch of %s but looks like a length; listed are %s", text, number(p), thread.Nominal, row.pitches())
		}
		return Thread{}, fmt.Errorf("%q: %s mm is no pitch of %s; listed are %s", text, number(p), thread.Nominal, row.pitches())
	}
	return Thread{}, fmt.Errorf("%q is no metric diameter; the nearest are %s", text, anyOf(nearestMetric(d)))
}

// nearestMetric gives the listed diameters next below and next above.
func nearestMetric(d float64) []string {
	below, above := 0.0, 0.0
	for _, row := range metric {
		if row.d < d {
			below = row.d
		}
		if row.d > d && above == 0 {
			above = row.d
		}
	}
	var out []string
	for _, size := range []float64{below, above} {
		if size > 0 {
			out = append(out, "M"+number(size))
		}
	}
	return out
}

func parseUnified(text, size, tpi, series string) (Thread, error) {
	if series == "npt" {
		return parsePipeTPI(text, size, tpi)
	}
	digits := strings.TrimLeft(size, "#no. ")
	if gauge, err := strconv.Atoi(digits); err == nil && (digits != size || gauge > 2) {
		size = fmt.Sprintf("#%d", gauge)
	} else if value, ok := parseFraction(size); ok {
		size = fraction(value)
	}
	var same []string
	for _, row := range unified {
		if row.size != size {
			continue
		}
		same = append(same, row.written())
		if number(row.tpi) == tpi && (series == "" || strings.EqualFold(series, row.series.String())) {
			return row.thread(), nil
		}
	}
	if len(same) == 0 {
		if near := nearest(size+"-"+tpi, threadNames()); near != "" {
			return Thread{}, mistaken(near, "%q is no inch thread; the nearest is %q", text, near)
		}
		return Thread{}, fmt.Errorf("%q is no inch thread; write it as it is marked, such as 3/8-16 UNC or 1-5/16-12 UN", text)
	}
	return Thread{}, fmt.Errorf("%q is no thread of that size; listed are %s", text, anyOf(same))
}

func parsePipe(text, kind, size string) (Thread, error) {
	if kind == "bsp" {
		return Thread{}, fmt.Errorf("%q does not say parallel or taper; write G %s (parallel, ISO 228-1) or R %s (taper, ISO 7-1)", text, size, size)
	}
	value, ok := parseFraction(size)
	var known []string
	for _, row := range pipe {
		if kind == "npt" && row.nptInch == 0 || kind != "npt" && kind != "g" && kind != "bspp" && row.onlyG {
			continue
		}
		known = append(known, row.size)
		if ok && row.size == fraction(value) {
			return row.thread(kind), nil
		}
	}
	return Thread{}, fmt.Errorf("%q is no size of pipe thread; known are %s", text, strings.Join(known, ", "))
}

func parsePipeTPI(text, size, tpi string) (Thread, error) {
	thread, err := parsePipe(text, "npt", size)
	if err == nil && number(thread.TPI) != tpi {
		return Thread{}, mistaken(thread.Written, "%q: that size has %s threads an inch; write %s", text, number(thread.TPI), thread.Written)
	}
	return thread, err
}

func ratMM(size string) float64 {
	if after, ok := strings.CutPrefix(size, "#"); ok {
		n, _ := strconv.ParseInt(after, 10, 64)
		return inchMM(big.NewRat(60+13*n, 1000)) // ASME B1.1: 0.060 in + 0.013 in for each number
	}
	return inchMM(mustInch(size))
}
