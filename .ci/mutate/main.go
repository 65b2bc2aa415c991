// Command mutate changes the code of the rules in small ways, one at a time, and asks whether the
// quick tests of the rules notice: go run ./.ci/mutate. Every change is compiled into the tests at
// once, each behind its number, so that one build serves them all. The mutants that would change
// nothing in any of the tests are told by one run, and need none of their own.
//
// It has no judgement: a mutant that nobody could notice counts as one that nobody noticed.
package main

import (
	"cmp"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"time"
)

// quick are the tests of ./compiler that hold the rules, in about two seconds.
const quick = "^(TestVariationsOfTheExamples|TestEachBrokenProcedureRaisesItsFindingAndNothingElse|TestExamplesOfEveryRule|TestCertainFixesMendWhatTheyAreFor|" +
	"TestWhatLooksWrongAndIsRightRaisesNothing|TestTheDemonstrationShopIsClean|TestWhatIsLikelyMeantCanBeWrittenByAKey|" +
	"TestASlipOfThePenIsMendedByItsFix|TestARenamedPartIsMendedEverywhereByOneFix|TestWhatMayBeAnotherIsNotCalledRenamed|" +
	"TestAShopInAnotherLanguageRaisesNothing|TestWhatIsRightHoldsNothingBackInAnotherLanguage|TestAGuardIsNotExcusedByItsNameInAnotherLanguage)$"

// ofFixes are those of them that look at fixes, and are slower than the rest.
var ofFixes = []string{"TestCertainFixesMendWhatTheyAreFor", "TestWhatIsLikelyMeantCanBeWrittenByAKey", "TestASlipOfThePenIsMendedByItsFix", "TestARenamedPartIsMendedEverywhereByOneFix"}

func main() {
	packages := flag.String("packages", "compiler/internal/rules", "the `folders` to change, with commas between")
	n := flag.Int("n", 0, "how many mutants to try; 0 is all")
	seed := flag.Uint64("seed", 1, "which mutants are tried where -n is not all")
	pattern := flag.String("run", quick, "the `tests` of ./compiler")
	workers := flag.Int("j", 2, "how many mutants are tried at once")
	list := flag.String("all", "", "write what became of every mutant to this `file`")
	flag.Usage = func() {
		fmt.Fprintln(flag.CommandLine.Output(), "go run ./.ci/mutate [flags] [name …]: only the mutants of the files with such a name, as torque_ or tool_serve.go")
		flag.PrintDefaults()
	}
	flag.Parse()
	if err := run(strings.Split(*packages, ","), flag.Args(), *pattern, *list, *n, *seed, *workers); err != nil {
		fmt.Fprintln(os.Stderr, "mutate:", err)
		os.Exit(1)
	}
}

// What becomes of a mutant.
const (
	killed = iota
	timedOut
	survived
	idle // survived, and no test comes where it would change something
)

var words = []string{"killed", "timed out", "survived", "survived, never reached"}

func run(packages, files []string, pattern, list string, n int, seed uint64, workers int) error {
	scratch, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return err
	}
	defer os.RemoveAll(scratch)
	start := time.Now()
	mutants, overlay, err := prepare(packages, scratch)
	if err != nil {
		return err
	}
	suites, err := build(packages, overlay, scratch, pattern)
	if err != nil {
		return err
	}
	chosen := choose(mutants, files, n, seed)
	fmt.Printf("%d mutants, %d of them tried, built in %.0f s\n", len(mutants), len(chosen), time.Since(start).Seconds())
	fixes := map[string]bool{} // files that make one
	for _, one := range mutants {
		if _, ok := fixes[one.file]; !ok {
			text, err := os.ReadFile(one.file)
			if err != nil {
				return err
			}
			fixes[one.file] = strings.Contains(string(text), "finding.Fix")
		}
	}
	became := make([]int, len(chosen))
	var next, done atomic.Int64
	var group sync.WaitGroup
	for range workers {
		group.Go(func() {
			for {
				i := int(next.Add(1)) - 1
				if i >= len(chosen) {
					return
				}
				became[i] = try(suites, chosen[i], fixes[mutants[chosen[i]-1].file])
				if count := done.Add(1); count%200 == 0 {
					fmt.Fprintf(os.Stderr, "%d of %d, %.0f s\n", count, len(chosen), time.Since(start).Seconds())
				}
			}
		})
	}
	group.Wait()
	var all strings.Builder
	for i, id := range chosen {
		line := fmt.Sprintf("%s:%d: %s (%s)\n", mutants[id-1].file, mutants[id-1].line, mutants[id-1].what, words[became[i]])
		all.WriteString(line)
		if became[i] >= survived {
			fmt.Print(line)
		}
	}
	report(mutants, chosen, became)
	fmt.Printf("in %.0f s\n", time.Since(start).Seconds())
	if list != "" {
		return os.WriteFile(list, []byte(all.String()), 0o644)
	}
	return nil
}

// choose are the numbers of the mutants to try, in the order of the code.
func choose(mutants []mutant, files []string, n int, seed uint64) []int {
	var out []int
	for i, one := range mutants {
		if len(files) == 0 || slices.ContainsFunc(files, func(file string) bool { return strings.Contains(one.file, file) }) {
			out = append(out, i+1)
		}
	}
	if n > 0 && n < len(out) {
		random := rand.New(rand.NewPCG(seed, 0))
		random.Shuffle(len(out), func(i, j int) { out[i], out[j] = out[j], out[i] })
		out = out[:n]
		slices.Sort(out)
	}
	return out
}

// report counts by family: the first word of the names of files in rules, the package elsewhere.
func report(mutants []mutant, chosen, became []int) {
	counts := map[string][4]int{}
	var total [4]int
	for i, id := range chosen {
		family := familyOf(mutants[id-1].file)
		count := counts[family]
		count[became[i]]++
		total[became[i]]++
		counts[family] = count
	}
	families := make([]string, 0, len(counts))
	for family := range counts {
		families = append(families, family)
	}
	slices.SortFunc(families, cmp.Compare[string])
	fmt.Printf("\n%-12s %8s %8s %10s %9s %14s %6s\n", "", "tried", "killed", "timed out", "survived", "never reached", "score")
	for _, family := range families {
		line(family, counts[family])
	}
	line("all", total)
}

func line(name string, count [4]int) {
	tried := count[0] + count[1] + count[2] + count[3]
	if tried > 0 {
		fmt.Printf("%-12s %8d %8d %10d %9d %14d %5.1f%%\n", name, tried, count[killed], count[timedOut], count[survived], count[idle], 100*float64(count[killed]+count[timedOut])/float64(tried))
	}
}

func familyOf(file string) string {
	folder := filepath.Base(filepath.Dir(file))
	if first, _, ok := strings.Cut(filepath.Base(file), "_"); ok && folder == "rules" {
		return first
	}
	return folder
}
