package main

import (
	"bufio"
	"fmt"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

// measured is what benchmarks printed: for each by its name, without Benchmark and the number of
// cores, and for each of its units, a value for every time it was run.
type measured map[string]map[string][]float64

// benchLine is a line of a benchmark's figures: its name, how often it ran, and values with units.
var benchLine = regexp.MustCompile(`^Benchmark(\S+?)(?:-\d+)?\s+\d+\s+(.*)$`)

// readBench reads the output of go test -bench.
func readBench(text string) (measured, error) {
	out := measured{}
	lines := bufio.NewScanner(strings.NewReader(text))
	for lines.Scan() {
		found := benchLine.FindStringSubmatch(lines.Text())
		if found == nil {
			continue
		}
		fields := strings.Fields(found[2])
		if len(fields)%2 != 0 {
			return nil, fmt.Errorf("a benchmark's line is not figures with units: %s", lines.Text())
		}
		if out[found[1]] == nil {
			out[found[1]] = map[string][]float64{}
		}
		for pair := range slices.Chunk(fields, 2) {
			value, err := strconv.ParseFloat(pair[0], 64)
			if err != nil {
				return nil, fmt.Errorf("%q is no figure of a benchmark: %s", pair[0], lines.Text())
			}
			out[found[1]][pair[1]] = append(out[found[1]][pair[1]], value)
		}
	}
	return out, lines.Err()
}

// goBench runs benchmarks of a package of the project, each so many times or so long, over and
// over; env is put beside the environment.
func (b *bench) goBench(pkg, pattern, each string, rounds int, env ...string) (measured, error) {
	command := exec.CommandContext(b.until, "go", "test", "-run", "^$", "-bench", pattern, "-benchtime", each, "-count", fmt.Sprint(rounds), "-timeout", "2h", pkg)
	command.Dir = b.root
	command.Env = append(os.Environ(), env...)
	text, err := command.CombinedOutput()
	if err != nil {
		return nil, fmt.Errorf("%s: %w\n%s", strings.Join(command.Args, " "), err, text)
	}
	found, err := readBench(string(text))
	if err == nil && len(found) == 0 {
		err = fmt.Errorf("%s measured nothing:\n%s", strings.Join(command.Args, " "), text)
	}
	return found, err
}

// rounds is how often benchmarks are run: their figures are the medians of that many runs.
func (b *bench) rounds() int {
	if b.quick {
		return 1
	}
	return 5
}

// gauge names a figure: the benchmark and the unit of its value.
type gauge struct{ bench, unit string }

// values are all values of a figure.
func (m measured) values(of gauge) []float64 { return m[of.bench][of.unit] }

// median is the middle one of some values, the upper one of an even number.
func median[T float64 | time.Duration](all []T) T {
	if len(all) == 0 {
		return 0
	}
	sorted := slices.Sorted(slices.Values(all))
	return sorted[len(sorted)/2]
}

// duration is a value as a time, by what its unit begins with.
func duration(value float64, unit string) time.Duration {
	for _, prefix := range []struct {
		name string
		one  time.Duration
	}{{"ns", time.Nanosecond}, {"µs", time.Microsecond}, {"ms", time.Millisecond}, {"s", time.Second}} {
		if rest, is := strings.CutPrefix(unit, prefix.name); is && (rest == "" || rest[0] == '-' || rest[0] == '/') {
			return time.Duration(value * float64(prefix.one))
		}
	}
	return 0
}

// held is a row in which one figure is held against another of the same run.
type held struct {
	what   string
	figure gauge
	of     string // what a figure is for: procedure, card
	beside string // what the floor is
	floor  gauge
}

// hold adds the rows of some figures to a section.
func (s *section) hold(m measured, rows ...held) error {
	for _, row := range rows {
		figures, floors := m.values(row.figure), m.values(row.floor)
		if len(figures) == 0 || len(figures) != len(floors) {
			return fmt.Errorf("%s: the benchmark %s gave %d figures in %s, and %s %d in %s", row.what, row.figure.bench, len(figures), row.figure.unit, row.floor.bench, len(floors), row.floor.unit)
		}
		var ratios []float64
		for i := range figures {
			ratios = append(ratios, float64(duration(figures[i], row.figure.unit))/float64(duration(floors[i], row.floor.unit)))
		}
		figure := spell(duration(median(figures), row.figure.unit))
		if row.of != "" {
			figure += " a " + row.of
		}
		s.row(row.what, figure, row.beside, spell(duration(median(floors), row.floor.unit)), times(median(ratios)))
	}
	return nil
}
