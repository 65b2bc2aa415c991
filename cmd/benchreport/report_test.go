package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const benchOutput = `goos: linux
pkg: benchleaf/compiler
cpu: Some Processor 3000
BenchmarkStages-2   	       3	     14861 µs-bare/card	      3183 µs-check/procedure	       496.5 µs-decode/procedure
BenchmarkStages-2   	       3	     14000 µs-bare/card	      4183 µs-check/procedure	       500.5 µs-decode/procedure
BenchmarkDue   	       3	   2111348 ns/op	10964.63 MB/s
BenchmarkCard/plain-16         	       5	        65.90 ms-benchleaf	      1080 ms-chromium
--- BENCH: BenchmarkCard/plain-16
    card_test.go:70: first: 12 of 171 words are missing, 0 are more
PASS
ok  	benchleaf/compiler	22.049s
`

func TestTheOutputOfBenchmarksIsRead(t *testing.T) {
	m, err := readBench(benchOutput)
	require.NoError(t, err)
	assert.Equal(t, measured{
		"Stages":     {"µs-bare/card": {14861, 14000}, "µs-check/procedure": {3183, 4183}, "µs-decode/procedure": {496.5, 500.5}},
		"Due":        {"ns/op": {2111348}, "MB/s": {10964.63}},
		"Card/plain": {"ms-benchleaf": {65.90}, "ms-chromium": {1080}},
	}, m)
	for _, torn := range []string{"BenchmarkDue-2 3 2111348 ns/op 12\n", "BenchmarkDue-2 3 many ns/op\n"} {
		_, err = readBench(torn)
		assert.ErrorContains(t, err, "benchmark", torn)
	}
}

// A row is the median of its figures, and the median of the ratios of each run.
func TestAFigureIsHeldAgainstItsFloor(t *testing.T) {
	m, err := readBench(benchOutput)
	require.NoError(t, err)
	var s section
	require.NoError(t, s.hold(m, held{"check", gauge{"Stages", "µs-check/procedure"}, "procedure", "decode", gauge{"Stages", "µs-decode/procedure"}}))
	assert.Equal(t, [][]string{{"check", "4.18 ms a procedure", "decode", "500 µs", "8.36×"}}, s.rows)
	assert.ErrorContains(t, s.hold(m, held{"check", gauge{"Stages", "µs-check/procedure"}, "procedure", "decode", gauge{"Due", "ns/op"}}), "gave 2 figures")
	assert.ErrorContains(t, s.hold(m, held{what: "gone", figure: gauge{"Gone", "ns/op"}, floor: gauge{"Due", "ns/op"}}), "gave 0 figures")
}

// The fastest of the others is the floor; who is not installed is named.
func TestACardIsHeldAgainstTheFastestOther(t *testing.T) {
	var s section
	s.besideOthers("card", map[string][]float64{"ms-benchleaf": {60}, "ms-groff": {120}, "ms-chromium": {1200}}, []string{"groff", "pdflatex", "chromium"})
	assert.Equal(t, [][]string{
		{"card, benchleaf", "60.0 ms", "groff", "120 ms", "0.500×"},
		{"card, groff", "120 ms", "groff", "120 ms", "1.00×"},
		{"card, pdflatex", "pdflatex is not installed"},
		{"card, chromium", "1.20 s", "groff", "120 ms", "10.0×"},
	}, s.rows)
	s = section{}
	s.besideOthers("card", map[string][]float64{"ms-benchleaf": {60}}, []string{"groff"})
	assert.Equal(t, []string{"card, benchleaf", "60.0 ms", "no typesetter is installed"}, s.rows[0])
}

func TestTheReportIsMarkdown(t *testing.T) {
	s := section{title: "One card", command: "go run ./cmd/benchreport --only card"}
	s.tell("A whole process.", "Medians.")
	s.row("plain | card", "60.0 ms", "groff\n", "120 ms", "0.500×")
	s.missing("pdflatex", notInstalled("pdflatex"))
	s.note("Read the method.")
	assert.Equal(t, `# How fast benchleaf is

| measured on |     |
|-------------|-----|
| Cores       | 2   |

## One card

`+"`go run ./cmd/benchreport --only card`"+`

A whole process. Medians.

| what          | figure                    | floor  | of the floor | ratio  |
|---------------|---------------------------|--------|--------------|--------|
| plain \| card | 60.0 ms                   | groff  | 120 ms       | 0.500× |
| pdflatex      | pdflatex is not installed |        |              |        |

Read the method.
`, report{facts: []fact{{"Cores", "2"}}, sections: []section{s}}.markdown())
}

func TestFiguresAreSpelledWithThreeDigits(t *testing.T) {
	for want, got := range map[string]string{
		"4.18 ms": spell(4183 * time.Microsecond), "12.0 s": spell(12 * time.Second), "999 µs": spell(999 * time.Microsecond), "0.250 µs": spell(250),
		"0.0481": three(0.0481), "1234": three(1234), "0": three(0), "34.8 MiB": size(36_490_445), "1.50 GiB": size(3 << 29),
		"527 ms": perThousand(52_700*time.Microsecond, 100),
	} {
		assert.Equal(t, want, got)
	}
	assert.Equal(t, 3*time.Millisecond, duration(3, "ms-groff"))
	assert.Equal(t, 3*time.Microsecond, duration(3, "µs-lay/card"))
	assert.Equal(t, time.Duration(3), duration(3, "ns/op"))
	assert.Zero(t, duration(3, "MB/s"))
}

func TestWhatIsAskedForIsHeld(t *testing.T) {
	for args, want := range map[string]string{
		"--only nothing": "finds none of stages, due", "--only (": "no regular expression", "--most 5": "give a number from 10 to 10000", "growth": `"growth" is asked for`,
	} {
		assert.ErrorContains(t, run(t.Context(), strings.Fields(args), &bytes.Buffer{}, &bytes.Buffer{}), want, args)
	}
	found, err := chosen("^(card|growth)")
	require.NoError(t, err)
	require.Len(t, found, 3)
	assert.Equal(t, "card", found[0].name)
	assert.Equal(t, "growth-typical", found[2].name)
	found, err = chosen("")
	require.NoError(t, err)
	assert.Len(t, found, len(parts))
}

func TestTheReportIsWrittenAsAWhole(t *testing.T) {
	file := filepath.Join(t.TempDir(), "report.md")
	require.NoError(t, write(file, nil, "one"))
	require.NoError(t, write(file, nil, "two"))
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, "two", string(text))
	left, err := os.ReadDir(filepath.Dir(file))
	require.NoError(t, err)
	assert.Len(t, left, 1)
	assert.ErrorContains(t, write(filepath.Join(t.TempDir(), "gone", "report.md"), nil, "one"), "cannot be written")
}

// The schema that a program gets whose days are no texts says the same of all else.
func TestDaysGoByFormat(t *testing.T) {
	text, err := os.ReadFile("../../schema/benchleaf.schema.json")
	require.NoError(t, err)
	made, err := daysByFormat(text)
	require.NoError(t, err)
	assert.NotContains(t, string(made), `"pattern":"^\\d{4}-\\d{2}-\\d{2}$"`)
	assert.Contains(t, string(made), `"format":"date"`)
	_, err = daysByFormat([]byte(`{"type": "object"}`))
	assert.ErrorContains(t, err, "no day")
}

func TestAProgramIsMeasuredAsAProcess(t *testing.T) {
	b := bench{until: t.Context()}
	took, err := b.child(t.TempDir(), "go", "version")
	require.NoError(t, err)
	assert.Positive(t, took.time)
	if took.peak != 0 {
		assert.Greater(t, took.peak, int64(1<<20))
	}
	_, err = b.child(t.TempDir(), "go", "no-such-verb")
	assert.ErrorContains(t, err, "no-such-verb")
	assert.Equal(t, spent{2, 9}, middle([]spent{{3, 7}, {1, 9}, {2, 8}}))
}

// Each program that is asked for and not there says so by its name.
func TestAProgramThatIsMissingIsNamed(t *testing.T) {
	if _, err := exec.LookPath("git"); err != nil {
		t.Skip("git is not installed")
	}
	var p programs
	assert.Empty(t, p.find("no-such-program", "nor-this-program"))
	assert.NotEmpty(t, p.find("no-such-program", "git"))
	facts := p.facts()
	require.Len(t, facts, 2)
	assert.Contains(t, facts[0].text, "git version")
	assert.Equal(t, fact{"nor-this-program", "not installed"}, facts[1])
}
