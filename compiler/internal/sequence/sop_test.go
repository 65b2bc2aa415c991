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

// readSOP reads a problem of TSPLIB (G. Reinelt, TSPLIB, ORSA Journal on Computing 3, 1991):
// a full matrix, -1 at [i][j] where j comes before i; the first node is the start and the
// last the end.
func readSOP(t *testing.T, path string) sequence.Problem {
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
func sopLengths(t *testing.T, folder string) (names []string, lengths map[string]int64) {
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

func TestSequentialOrderingProblems(t *testing.T) {
	folder := os.Getenv(sopFolder)
	if folder == "" {
		t.Skip(sopFolder + " names no folder of sequential ordering problems")
	}
	names, lengths := sopLengths(t, folder)
	budget := sequence.Budget{}
	if v := os.Getenv("L"); v != "" {
		budget.Labels, _ = strconv.Atoi(v)
	}
	if v := os.Getenv("R"); v != "" {
		budget.Rounds, _ = strconv.Atoi(v)
	}
	gaps := 0.0
	fmt.Printf("%-10s %7s %7s %6s %7s %6s %8s %6s\n", "instance", "found", "known", "gap %", "bound", "proved", "labels", "CPU s")
	for _, name := range names {
		if v := os.Getenv("I"); v != "" && !strings.Contains(v, name) {
			continue
		}
		p := readSOP(t, filepath.Join(folder, name+".sop"))
		before := spent()
		plan, err := sequence.Solve(p, budget)
		took := spent() - before
		require.NoError(t, err, name)
		replayed, err := sequence.Replay(p, plan.Order)
		require.NoError(t, err, name)
		assert.Equal(t, replayed.Length, plan.Length, name)
		assert.GreaterOrEqual(t, plan.Length, lengths[name], name)
		assert.LessOrEqual(t, plan.Bound, lengths[name], name)
		gap := float64(plan.Length-lengths[name]) / float64(lengths[name]) * 100
		gaps += gap
		fmt.Printf("%-10s %7d %7d %6.2f %7d %6t %8d %6.2f\n", name, plan.Length, lengths[name], gap, plan.Bound, plan.Proved, plan.Labels, took)
	}
	fmt.Printf("mean gap %.3f %%\n", gaps/float64(len(names)))
}
