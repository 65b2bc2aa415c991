package sequence_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/sequence"
)

// sopFolder names the folder of TSPLIB's sequential ordering problems and best_known.tsv.
const sopFolder = "BENCHLEAF_SOP"

// sop is that folder; the test is skipped where there is none.
func sop(t testing.TB) string {
	folder := os.Getenv(sopFolder)
	if folder == "" {
		t.Skip(sopFolder + " names no folder of sequential ordering problems")
	}
	return folder
}

// readSOP reads a problem of TSPLIB (G. Reinelt, TSPLIB, ORSA Journal on Computing 3, 1991):
// a full matrix, -1 at [i][j] where j comes before i; the first node is the start and the
// last the end.
func readSOP(t testing.TB, path string) sequence.Problem {
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	_, body, found := strings.Cut(string(text), "EDGE_WEIGHT_SECTION")
	require.True(t, found)
	fields := strings.Fields(strings.ReplaceAll(body, "EOF", ""))
	side, err := strconv.Atoi(fields[0])
	require.NoError(t, err)
	require.Len(t, fields, 1+side*side)
	change := make([]int64, side*side)
	for i, field := range fields[1:] {
		change[i], err = strconv.ParseInt(field, 10, 64)
		require.NoError(t, err)
	}
	n := side - 2
	p := sequence.Problem{Times: make([]int64, n)}
	for i := range n {
		for j := range n {
			if change[(i+1)*side+j+1] == -1 {
				p.Before = append(p.Before, [2]int{j, i})
			}
		}
	}
	p.Move = func(from sequence.State, task int) (sequence.State, int64, bool) {
		arc := change[int(from)*side+task+1]
		return sequence.State(task + 1), max(0, arc), arc >= 0
	}
	p.End = func(from sequence.State) int64 { return max(0, change[int(from)*side+side-1]) }
	return p
}

// sopLengths are the best known lengths, in the order of the file.
func sopLengths(t testing.TB, folder string) (names []string, lengths map[string]int64) {
	text, err := os.ReadFile(filepath.Join(folder, "best_known.tsv"))
	require.NoError(t, err)
	lengths = map[string]int64{}
	for _, line := range strings.Split(strings.TrimSpace(string(text)), "\n")[1:] {
		fields := strings.Split(line, "\t")
		length, err := strconv.ParseInt(fields[1], 10, 64)
		require.NoError(t, err)
		names, lengths[fields[0]] = append(names, fields[0]), length
	}
	return names, lengths
}

// spent is the processor time of this process, in seconds.
func spent() float64 {
	var usage syscall.Rusage
	_ = syscall.Getrusage(syscall.RUSAGE_SELF, &usage)
	return float64(usage.Utime.Nano()+usage.Stime.Nano()) / 1e9
}

// sopRun is what came of a problem.
type sopRun struct {
	plan  sequence.Plan
	known int64
	gap   float64 // of what was found to the best known, in per cent
	took  float64 // seconds of the processor
}

// runSOP solves a problem and holds the plan against what is known.
func runSOP(t testing.TB, folder, name string, known int64, budget func(tasks int) sequence.Budget) sopRun {
	p := readSOP(t, filepath.Join(folder, name+".sop"))
	before := spent()
	plan, err := sequence.Solve(p, budget(len(p.Times)))
	run := sopRun{plan: plan, known: known, took: spent() - before}
	require.NoError(t, err, name)
	replayed, err := sequence.Replay(p, plan.Order)
	require.NoError(t, err, name)
	assert.Equal(t, replayed.Length, plan.Length, name)
	assert.GreaterOrEqual(t, plan.Length, known, name)
	assert.LessOrEqual(t, plan.Bound, known, name)
	run.gap = float64(plan.Length-known) / float64(known) * 100
	return run
}

// short takes a second at the most on each of the problems, long about ten; enough proves those
// that it is used on in less. The problems of many tasks leave few of them free, so that a
// label takes little.
func short(tasks int) sequence.Budget {
	labels := 300_000
	if tasks > 100 {
		labels = 1_500_000
	}
	return sequence.Budget{Labels: labels / tasks, Trials: 120_000}
}

func long(tasks int) sequence.Budget {
	return sequence.Budget{Labels: 40_000_000 / tasks, Trials: 1_000_000}
}

func enough(tasks int) sequence.Budget {
	return sequence.Budget{Labels: 150_000_000 / tasks, Trials: 20_000}
}

const sopHeader = "instance     found   known  gap %   bound proved   labels  CPU s"

func (r sopRun) row(name string) string {
	return fmt.Sprintf("%-10s %7d %7d %6.2f %7d %6t %8d %6.2f", name, r.plan.Length, r.known, r.gap, r.plan.Bound, r.plan.Proved, r.plan.Labels, r.took)
}

// With about a second each, the orders found are within 1 % of the best known on average.
func TestSequentialOrderingGap(t *testing.T) {
	folder := sop(t)
	names, lengths := sopLengths(t, folder)
	gaps, most := 0.0, 0.0
	t.Log(sopHeader)
	for _, name := range names {
		run := runSOP(t, folder, name, lengths[name], short)
		gaps, most = gaps+run.gap, max(most, run.took)
		t.Log(run.row(name))
	}
	t.Logf("mean gap %.3f %%, at most %.2f seconds", gaps/float64(len(names)), most)
	assert.LessOrEqual(t, gaps/float64(len(names)), 1.0)
}

// These are proved, each within 10 s of the processor.
func TestSequentialOrderingProved(t *testing.T) {
	folder := sop(t)
	_, lengths := sopLengths(t, folder)
	t.Log(sopHeader)
	for _, name := range []string{
		"ESC07", "ESC11", "ESC12", "ESC25", "ESC47", "ESC63", "br17.10", "br17.12", "ft53.4", "p43.4", "ry48p.4", "rbg109a", "rbg150a", "rbg174a",
	} {
		run := runSOP(t, folder, name, lengths[name], enough)
		assert.True(t, run.plan.Proved, name)
		t.Log(run.row(name))
	}
}

// BenchmarkSequentialOrdering takes about ten seconds on each problem: -benchtime 1x.
func BenchmarkSequentialOrdering(b *testing.B) {
	folder := sop(b)
	names, lengths := sopLengths(b, folder)
	for _, name := range names {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				run := runSOP(b, folder, name, lengths[name], long)
				b.Log(run.row(name))
				b.ReportMetric(run.gap, "gap-%")
				b.ReportMetric(float64(run.plan.Bound), "bound")
				b.ReportMetric(run.took, "CPU-s")
			}
		})
	}
}
