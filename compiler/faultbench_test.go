package compiler_test

import (
	"flag"
	"fmt"
	"os"
	"path"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

var (
	updateFaults = flag.Bool("update-faults", false, "rewrite testdata/faults/table.md")
	listMissed   = flag.String("missed-faults", "", "write the faults that were missed to this file")
)

// most is how many places of a kind are tried; of more, as many are taken evenly.
// Of slips of the pen and of what is no fault, one place is much like the next.
func (k faultKind) most() int {
	if k.family == "language" || k.family == harmless {
		return fewPlaces
	}
	return manyPlaces
}

const manyPlaces, fewPlaces = 60, 25

// score is what became of the faults of one kind.
type score struct {
	kind                           faultKind
	places, tried                  int
	right, elsewhere, missed       int
	again                          int      // of those at the right place, told by nothing but a second reading
	examples, astray               []string // what was missed, what was found elsewhere
	crashed, unreadable, unchanged []string
}

// runs are the kinds of the bench: faults, and changes that are none.
var runs = slices.Concat(faultKinds, harmlessKinds)

// TestFaultBench puts faults into the demonstration shop one at a time, and holds
// what is found against testdata/faults/table.md: no kind may be found less often.
func TestFaultBench(t *testing.T) {
	if testing.Short() {
		t.Skip("too slow with -short, and nothing here is shared but what other tests share")
	}
	files := compiler.ReadFolder(t, demonstration)
	undamaged := compiler.Compile(compiler.Input{Files: files}).Findings
	assert.Empty(t, undamaged, "false alarms: %s", describe(undamaged))
	scores := runFaults(files, undamaged)
	for _, one := range scores {
		assert.NotZero(t, one.tried, "%s: the shop has no place for it", one.kind.name)
		assert.Empty(t, one.crashed, "%s: a compile or a rule failed", one.kind.name)
		assert.Empty(t, one.unreadable, "%s: the damaged file is no TOML", one.kind.name)
		assert.Empty(t, one.unchanged, "%s: nothing was changed", one.kind.name)
	}
	all := sum(scores[:len(faultKinds)])
	assert.GreaterOrEqual(t, percent(all.right, all.tried), 95.0, "found at the right place, in percent")
	assert.GreaterOrEqual(t, percent(all.right+all.elsewhere, all.tried), 99.0, "found at all, in percent")
	holdReasons(t, scores[:len(faultKinds)])
	if *listMissed != "" {
		require.NoError(t, os.WriteFile(*listMissed, []byte(missedList(scores)), 0o644))
	}
	if *updateFaults {
		require.NoError(t, os.MkdirAll("../testdata/faults", 0o755))
		require.NoError(t, os.WriteFile(faultTable, []byte(drawFaults(scores, len(undamaged))), 0o644))
		return
	}
	text, err := os.ReadFile(faultTable)
	require.NoError(t, err)
	for _, complaint := range holdFaults(scores, string(text)) {
		assert.Fail(t, complaint)
	}
}

// holdReasons wants a reason for every kind that is not always found, and none for another.
func holdReasons(t *testing.T, scores []score) {
	for _, one := range scores {
		assert.Equal(t, one.missed > 0, reasons[one.kind.name] != "", "%s: %d missed, and the reason is %q", one.kind.name, one.missed, reasons[one.kind.name])
	}
	for name := range reasons {
		assert.True(t, slices.ContainsFunc(scores, func(s score) bool { return s.kind.name == name }), "%s is no kind", name)
	}
}

// runFaults tries every kind at its places, on as many hands as the machine has.
func runFaults(files []*source.File, undamaged []finding.Finding) []score {
	f := &folder{}
	for _, file := range files {
		if _, again := firstReading(file.Path); !again {
			f.sheets = append(f.sheets, readSheet(file.Path, string(file.Text)))
		}
	}
	known := map[string]int{}
	for _, found := range undamaged {
		known[mark(found)]++
	}
	scores := make([]score, len(runs))
	type task struct {
		score *score
		damage
	}
	var tasks []task
	for i, kind := range runs {
		scores[i].kind = kind
		var all []damage
		for _, s := range f.sheets {
			all = append(all, kind.apply(f, s)...)
		}
		all = slices.DeleteFunc(all, func(d damage) bool { return kind.family != "language" && len(f.shows(d.path, d.line)) == 0 })
		scores[i].places = len(all)
		tries := min(len(all), kind.most())
		for n := range tries {
			tasks = append(tasks, task{&scores[i], all[n*len(all)/tries]})
		}
	}
	outcomes := make([]outcome, len(tasks))
	var hands sync.WaitGroup
	for hand := range runtime.GOMAXPROCS(0) {
		hands.Go(func() {
			for i := hand; i < len(tasks); i += runtime.GOMAXPROCS(0) {
				outcomes[i] = try(f, files, known, tasks[i].damage, tasks[i].score.kind.once)
			}
		})
	}
	hands.Wait()
	for i, one := range tasks {
		one.score.add(f, one.damage, outcomes[i])
	}
	return scores
}

// mark tells a finding from others where lines have moved.
func mark(found finding.Finding) string {
	return found.Place.File.Path + " " + found.Rule + " " + found.Summary + " " + found.Variant
}

// outcome is what a compile of a damaged shop found besides what was found before.
type outcome struct {
	found []finding.Finding
	crash string
}

func try(f *folder, files []*source.File, known map[string]int, d damage, once bool) (out outcome) {
	defer func() {
		if failure := recover(); failure != nil {
			out.crash = fmt.Sprint(failure)
		}
	}()
	targets := f.shows(d.path, d.line)
	if len(targets) == 0 {
		targets = f.procedures(d.path)[:1]
	}
	damaged := []*source.File{source.New(d.path, []byte(d.text))}
	for _, file := range files {
		if _, again := firstReading(file.Path); file.Path != d.path && (f.takes(targets, file.Path) || d.path == standing && path.Dir(file.Path) == "machines") && !(again && once) {
			damaged = append(damaged, file)
		}
	}
	seen := map[string]int{}
	for _, found := range compiler.Compile(compiler.Input{Files: damaged, Targets: append(targets, d.path)}).Findings {
		if seen[mark(found)]++; seen[mark(found)] > known[mark(found)] {
			out.found = append(out.found, found)
		}
		if found.Rule == "internal/rule-failed" {
			out.crash = found.Summary
		}
	}
	return out
}

func (s *score) add(f *folder, d damage, got outcome) {
	told := fmt.Sprintf("%s:%d: %s", d.path, d.line, d.words)
	s.tried++
	if got.crash != "" {
		s.crashed = append(s.crashed, told+": "+got.crash)
	}
	if d.text == f.sheet(d.path).text() {
		s.unchanged = append(s.unchanged, told)
	}
	if !s.kind.syntax && slices.ContainsFunc(got.found, func(found finding.Finding) bool { return strings.HasPrefix(found.Rule, "syntax/") }) {
		s.unreadable = append(s.unreadable, told)
	}
	switch {
	case s.kind.family == harmless && len(got.found) > 0:
		s.elsewhere++
		s.astray = append(s.astray, told+"; found: "+flat(describe(got.found[:1])))
	case slices.ContainsFunc(got.found, d.meets):
		s.right++
		if !slices.ContainsFunc(got.found, func(found finding.Finding) bool {
			return !strings.HasPrefix(found.Rule, "record/read-") && d.meets(found)
		}) {
			s.again++
		}
	case len(got.found) > 0:
		s.elsewhere++
		s.astray = append(s.astray, told+"; found: "+flat(describe(got.found[:1])))
	default:
		s.missed++
		s.examples = append(s.examples, told)
	}
}
