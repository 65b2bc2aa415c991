package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/BurntSushi/toml"
)

// card measures one card as a whole process, beside typesetters that get its words.
func card(b *bench) (s section, err error) {
	rounds := b.some("21x", "3x")
	s.tell("One card on A4, from the start of a process to the PDF on disk. Benchleaf reads, checks and lays out, and writes the pick list too;",
		"the typesetters get the words that benchleaf has put together, in the order of its card, without drawings, pictures and signs.",
		"WeasyPrint and Chromium set the same faces, groff and pdfLaTeX Helvetica.",
		"All take turns; medians of "+strings.TrimSuffix(rounds, "x")+" rounds. The floor is the fastest typesetter.")
	for _, programs := range [][]string{{"groff"}, {"pdflatex"}, {"weasyprint"}, {"google-chrome", "chromium"}} {
		b.outside.find(programs...)
	}
	m, err := b.goBench("./compiler", "^BenchmarkCardAgainstTypesetters$", rounds, 1)
	if err != nil {
		return s, err
	}
	for _, name := range []string{"plain", "typical"} {
		values := m["CardAgainstTypesetters/"+name]
		s.besideOthers(fmt.Sprintf("%s card of %.0f steps", name, median(values["steps"])), values, []string{"groff", "pdflatex", "weasyprint", "chromium"})
	}
	return s, nil
}

// besideOthers adds the row of benchleaf and of each other program, against the fastest of these;
// units of the values are ms-NAME.
func (s *section) besideOthers(what string, values map[string][]float64, others []string) {
	fastest, of := 0.0, ""
	for _, name := range others {
		if value := median(values["ms-"+name]); value > 0 && (of == "" || value < fastest) {
			fastest, of = value, name
		}
	}
	for _, name := range append([]string{"benchleaf"}, others...) {
		value := median(values["ms-"+name])
		switch {
		case value == 0:
			s.missing(what+", "+name, notInstalled(name))
		case of == "":
			s.row(what+", "+name, spell(duration(value, "ms")), "no typesetter is installed")
		default:
			s.row(what+", "+name, spell(duration(value, "ms")), of, spell(duration(fastest, "ms")), ratioOf(value, fastest))
		}
	}
}

// manual measures the manual of the demonstration shop beside typesetters.
func manual(b *bench) (s section, err error) {
	s.tell("The manual of the demonstration shop on A4, as a whole process; the typesetters get its words.",
		"The floor draws the marks of benchleaf's pages by go-pdf/fpdf, in turn with each. ratio: time for the manual over that of the floor.")
	s.columns = []string{"what", "pages", "pages a second", "ratio to the floor"}
	for _, name := range []string{"groff", "weasyprint"} {
		b.outside.find(name)
	}
	m, err := b.goBench("./compiler", "^BenchmarkManualAgainstTypesetters$", b.some("3x", "1x"), 1)
	if err != nil {
		return s, err
	}
	for _, name := range []string{"benchleaf", "bare", "groff", "weasyprint"} {
		values := m["ManualAgainstTypesetters/"+name]
		if len(values) == 0 {
			s.missing("manual, "+name, notInstalled(name))
			continue
		}
		s.row("manual, "+name, fmt.Sprint(median(values["pages"])), three(median(values["pages/s"])), times(median(values["×bare"])))
	}
	return s, nil
}

// shopOf makes a shop in a folder, once for its shape and number of procedures.
func (b *bench) shopOf(kind shape, procedures int) (folder string, err error) {
	folder = filepath.Join(b.work, fmt.Sprintf("%s-%d", kind.name, procedures))
	if _, err := os.Stat(folder); err == nil {
		return folder, nil
	}
	return folder, writeShop(folder, kind.files(procedures, 1))
}

// batch measures many plain cards beside a Typst compiler that is running already.
func batch(b *bench) (s section, err error) {
	cards := min(b.most, 1000)
	if b.quick {
		cards = min(b.most, 100)
	}
	s.tell(fmt.Sprintf("%d plain cards on A5. Benchleaf: a whole process, from the files of the shop to the PDFs on disk, all checks and the pick list with them.", cards),
		"Typst: the words of the same cards, each compiled to a PDF in memory, one after the other in one process, its faces loaded and warmed up before the clock; it reads no files and checks nothing.",
		"Medians of rounds in turn.")
	folder, err := b.shopOf(shapes[0], cards)
	if err != nil {
		return s, err
	}
	installed, fault := b.outside.install()
	if fault != nil {
		runs, err := b.prints(folder, filepath.Join(b.work, "batch"), 3)
		if err != nil {
			return s, err
		}
		took := middle(runs).time
		s.row("benchleaf", spell(took/time.Duration(cards))+" a card", "", "", "")
		s.note(fmt.Sprintf("%s cards a second.", three(float64(cards)/took.Seconds())))
		s.missing("typst", notInstalled("typst")+": "+firstLine(fault.Error()))
		return s, nil
	}
	m, err := b.goBench("./compiler", "^BenchmarkBatchAgainstTypst$", b.some("3x", "1x"), 1, "BENCHLEAF_SHOP="+folder, "BENCHLEAF_TYPST="+installed)
	if err != nil {
		return s, err
	}
	values := m["BatchAgainstTypst"]
	ours, theirs := median(values["ms-benchleaf/card"]), median(values["ms-typst/card"])
	s.row("benchleaf, files to files", spell(duration(ours, "ms"))+" a card", "typst, warm, in memory", spell(duration(theirs, "ms"))+" a card", ratioOf(ours, theirs))
	s.note(fmt.Sprintf("%s cards a second.", three(1000/ours)))
	return s, nil
}

// prints prints a shop over and over, each time into a folder that is new.
func (b *bench) prints(shop, out string, rounds int) (runs []spent, err error) {
	for range rounds {
		if err := os.RemoveAll(out); err != nil {
			return nil, err
		}
		took, err := b.child(b.work, b.command, "print", shop, "--out", out)
		if err != nil {
			return nil, err
		}
		runs = append(runs, took)
	}
	return runs, os.RemoveAll(out)
}

// checker is a program that checks all files of a folder.
type checker struct {
	name, checks string
	program      string
	args         func(folder string) []string
}

// lint measures checking beside programs that check TOML by a JSON Schema.
func lint(b *bench) (s section, err error) {
	procedures := min(b.most, 1000)
	if b.quick {
		procedures = min(b.most, 100)
	}
	s.tell(fmt.Sprintf("The files of a shop of %d procedures, each program as a whole process over the same files, in turn; medians. The others go by the JSON Schema of the language, schema/benchleaf.schema.json;", procedures),
		"each was first given a file with an unknown key, and told it. Tombi knows days by format = \"date\" alone, so it has a copy that says so. The floor is the fastest of the others.")
	s.columns = []string{"what", "figure", "memory at most", "what it checks", "ratio to the fastest other"}
	checkers, err := b.checkers()
	if err != nil {
		return s, err
	}
	for _, kind := range shapes {
		folder, err := b.shopOf(kind, procedures)
		if err != nil {
			return s, err
		}
		runs := map[string][]spent{}
		rounds := 5
		if b.quick {
			rounds = 1
		}
		for range rounds {
			for _, one := range checkers {
				if one.program == "" {
					continue
				}
				took, err := b.child(folder, one.program, one.args(folder)...)
				if err != nil {
					return s, err
				}
				runs[one.name] = append(runs[one.name], took)
			}
		}
		fastest := time.Duration(0)
		for _, one := range checkers[1:] {
			if took := middle(runs[one.name]).time; took > 0 && (fastest == 0 || took < fastest) {
				fastest = took
			}
		}
		for _, one := range checkers {
			took := middle(runs[one.name])
			what := kind.name + " shop, " + one.name
			switch {
			case one.program == "":
				s.missing(what, notInstalled(one.name))
			case fastest == 0:
				s.row(what, spell(took.time), size(took.peak), one.checks)
			default:
				s.row(what, spell(took.time), size(took.peak), one.checks, ratioOf(took.time.Seconds(), fastest.Seconds()))
			}
		}
	}
	return s, nil
}

// checkers are benchleaf and what checks TOML by a schema. Each of the others has told an
// unknown key in a file.
func (b *bench) checkers() ([]checker, error) {
	text, err := os.ReadFile(filepath.Join(b.root, "schema", "benchleaf.schema.json"))
	if err != nil {
		return nil, err
	}
	plain, dated := filepath.Join(b.work, "language.schema.json"), filepath.Join(b.work, "dated.schema.json")
	withFormat, err := daysByFormat(text)
	if err != nil {
		return nil, err
	}
	config := filepath.Join(b.work, "tombi.toml") // tombi looks for it above the folder it is run in
	settings := fmt.Sprintf("toml-version = \"v1.0.0\"\n\n[[schemas]]\npath = %q\ninclude = [\"**/*.toml\"]\n", dated)
	err = errors.Join(os.WriteFile(plain, text, 0o600), os.WriteFile(dated, withFormat, 0o600), os.WriteFile(config, []byte(settings), 0o600))
	if err != nil {
		return nil, err
	}
	all := []checker{
		{"benchleaf lint", "syntax, keys, names across files, amounts, hazards, the machine walked through its steps, lists, words", b.command, func(folder string) []string { return []string{"lint", folder} }},
		{"taplo lint", "syntax, keys and kinds by the schema, file by file", b.outside.npmProgram("taplo"), func(folder string) []string {
			return []string{"lint", "--schema", "file://" + filepath.ToSlash(plain), filepath.Join(folder, "**", "*.toml")}
		}},
		{"tombi lint", "syntax, keys and kinds by the schema, file by file", b.outside.npmProgram("tombi", "@tombi-toml/cli-*/tombi*"), func(folder string) []string {
			return []string{"lint", "--offline", "--quiet", folder}
		}},
	}
	broken := filepath.Join(b.work, "unknown-key")
	if err := writeShop(broken, map[string]string{"broken.toml": "benchleaf = 1\n\n[shop]\ntitle = \"Coldwater Works\"\nunknown-key = 1\n"}); err != nil {
		return nil, err
	}
	for _, one := range all[1:] {
		if one.program == "" {
			continue
		}
		if _, err := b.child(broken, one.program, one.args(broken)...); err == nil {
			return nil, fmt.Errorf("%s does not tell an unknown key, so it does not check by the schema", one.name)
		}
	}
	return all, nil
}

// daysByFormat puts format = "date" in place of the pattern of a day.
func daysByFormat(schema []byte) ([]byte, error) {
	var all any
	if err := json.Unmarshal(schema, &all); err != nil {
		return nil, err
	}
	changed := 0
	var walk func(any)
	walk = func(at any) {
		switch at := at.(type) {
		case map[string]any:
			if at["pattern"] == `^\d{4}-\d{2}-\d{2}$` {
				delete(at, "pattern")
				at["format"] = "date"
				changed++
			}
			for _, key := range slices.Sorted(maps.Keys(at)) {
				walk(at[key])
			}
		case []any:
			for _, one := range at {
				walk(one)
			}
		}
	}
	walk(all)
	if changed == 0 {
		return nil, errors.New("the schema has no day any more that is held by a pattern")
	}
	return json.Marshal(all)
}

// growth measures a shop that grows tenfold again and again.
func growth(b *bench, kind shape) (s section, err error) {
	sizes := []int{10, 100, 1000, 10_000}
	if b.quick {
		sizes = []int{10, 100}
	}
	sizes = slices.DeleteFunc(sizes, func(n int) bool { return n > b.most })
	if last := sizes[len(sizes)-1]; last < b.most && !b.quick {
		sizes = append(sizes, b.most)
	}
	s.tell(fmt.Sprintf("A %s shop: %s. It is made from a seed, and lint finds nothing in it.", kind.name, kind.about),
		"Whole processes; print into a new folder; medians of up to five runs, memory at the most of any.",
		"The floor of lint is BurntSushi/toml, which decodes the same texts to maps in this process, on one core; that of print, which checks too, is lint.",
		"The last column holds the time for a procedure against that in the row above: 1 is linear growth.")
	s.columns = []string{"what", "procedures", "figure", "memory at most", "for 1,000 procedures", "of the floor", "ratio", "against linear"}
	checked := map[int]time.Duration{}
	for _, verb := range []string{"lint", "print"} {
		before := 0.0
		for _, procedures := range sizes {
			folder, err := b.shopOf(kind, procedures)
			if err != nil {
				return s, err
			}
			rounds := max(1, min(5, 2000/procedures))
			var runs []spent
			floor := checked[procedures]
			if verb == "print" {
				runs, err = b.prints(folder, filepath.Join(b.work, "growth"), rounds)
			} else {
				runs, floor, err = b.lints(folder, rounds)
			}
			if err != nil {
				return s, err
			}
			took := middle(runs)
			if verb == "lint" {
				checked[procedures] = took.time
			}
			each, against := took.time.Seconds()/float64(procedures), ""
			if before > 0 {
				against = three(each / before)
			}
			before = each
			s.row(verb, fmt.Sprint(procedures), spell(took.time), size(took.peak), perThousand(took.time, procedures), spell(floor), ratioOf(took.time.Seconds(), floor.Seconds()), against)
			fmt.Fprintf(b.said, "  %s, %d: %s, %s\n", verb, procedures, spell(took.time), size(took.peak))
		}
	}
	return s, nil
}

// lints checks a shop over and over, in turn with its floor, which decodes the same texts.
func (b *bench) lints(shop string, rounds int) (runs []spent, floor time.Duration, err error) {
	var floors []time.Duration
	for range rounds {
		took, err := b.child(b.work, b.command, "lint", shop)
		if err != nil {
			return nil, 0, err
		}
		runs = append(runs, took)
		decoded, err := decode(shop)
		if err != nil {
			return nil, 0, err
		}
		floors = append(floors, decoded)
	}
	return runs, median(floors), nil
}

// decode is how long it takes to read every TOML file below a folder into a map.
func decode(folder string) (time.Duration, error) {
	start := time.Now()
	err := filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || filepath.Ext(path) != ".toml" {
			return err
		}
		var out map[string]any
		_, err = toml.DecodeFile(path, &out)
		return err
	})
	return time.Since(start), err
}

// rebuild measures a print into a folder in which all is there already.
func rebuild(b *bench) (s section, err error) {
	procedures, rounds := min(b.most, 1000), 3
	if b.quick {
		procedures, rounds = min(b.most, 100), 1
	}
	s.tell(fmt.Sprintf("A shop of %d procedures is printed twice into one folder, which is new the first time. Medians of %d rounds. ratio: the first over the second.", procedures, rounds))
	s.columns = []string{"what", "the second time", "the first time", "ratio"}
	for _, kind := range shapes {
		folder, err := b.shopOf(kind, procedures)
		if err != nil {
			return s, err
		}
		out := filepath.Join(b.work, "rebuild")
		var once, again []spent
		for range rounds {
			if err := os.RemoveAll(out); err != nil {
				return s, err
			}
			for _, into := range []*[]spent{&once, &again} {
				took, err := b.child(b.work, b.command, "print", folder, "--out", out)
				if err != nil {
					return s, err
				}
				*into = append(*into, took)
			}
		}
		first, second := middle(once).time, middle(again).time
		s.row(kind.name+" shop", spell(second), spell(first), ratioOf(first.Seconds(), second.Seconds()))
	}
	return s, nil
}
