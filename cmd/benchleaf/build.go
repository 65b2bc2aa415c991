package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"benchleaf/compiler"
	"benchleaf/compiler/finding"
)

// build is what one shop gives to be written.
type build struct {
	shop     *shop
	result   *compiler.Result
	checked  *compiler.Result // the same, with all its jobs
	folder   string           // where it is written
	shown    string           // the same, as it is told
	outputs  []compiler.Output
	printing *delivery // of what is written as it is made; nil where all of it is in outputs
	files    []written // when they are written
	troubles []compiler.Trouble
	notes    []string // said when the files are written
}

// prepare reads and checks the shops, and says what is held back and why.
func (by *caller) prepare(paths []string, out, variant string, look compiler.Look) (builds []*build, held bool, err error) {
	shops, err := by.asked(paths, out, look, compiler.Uses)
	if err != nil {
		return nil, false, err
	}
	return by.checkShops(shops, out, variant, (*shop).check)
}

// asked reads the shops that something is to be built of.
func (by *caller) asked(paths []string, out string, look compiler.Look, uses usesOf) ([]*shop, error) {
	if err := look.Check(); err != nil {
		return nil, err
	}
	if out == "" {
		return nil, fmt.Errorf("--out needs the name of a folder")
	}
	shops, away, err := loadBut(by.folder, paths, uses)
	return shops, errors.Join(away, err)
}

// checkShops checks shops that were read, each by check, and says what is held back and why.
func (by *caller) checkShops(shops []*shop, out, variant string, check func(*shop) *compiler.Result) (builds []*build, held bool, err error) {
	jobs := 0
	for _, s := range shops {
		b := &build{shop: s, result: check(s), shown: out}
		b.checked = b.result
		if err := b.only(variant); err != nil {
			return nil, false, err
		}
		if len(shops) > 1 {
			b.shown = filepath.Join(out, filepath.Base(s.folder))
		}
		b.folder = by.from(b.shown)
		if i := slices.IndexFunc(builds, func(other *build) bool { return other.folder == b.folder }); i >= 0 {
			return nil, false, fmt.Errorf("the shops %s and %s would both be written to %s; print one at a time", builds[i].shop.name, s.name, b.shown)
		}
		back, err := by.tellHeld(b)
		if err != nil {
			return nil, false, err
		}
		builds, held, jobs = append(builds, b), held || back, jobs+len(b.result.Jobs)
	}
	if jobs == 0 && !held {
		return nil, false, fmt.Errorf("there is no procedure in %s, so there is nothing to print", strings.Join(shopNames(shops), ", "))
	}
	return builds, held, nil
}

// only keeps the jobs for one version, of the machines that have it; the jobs of
// other machines stay.
func (b *build) only(variant string) error {
	if variant == "" {
		return nil
	}
	var known []string
	has := map[string]bool{} // procedures that serve the version
	for _, job := range b.result.Jobs {
		if job.Variant != "" && !slices.Contains(known, job.Variant) {
			known = append(known, job.Variant)
		}
		has[job.Path] = has[job.Path] || job.Variant == variant
	}
	if !slices.Contains(known, variant) {
		if len(known) == 0 {
			return fmt.Errorf("no machine here has versions, so there is no %q", variant)
		}
		return fmt.Errorf("no machine here has a version %q; there are: %s", variant, strings.Join(known, ", "))
	}
	b.result.Jobs = slices.DeleteFunc(b.result.Jobs, func(job compiler.Job) bool { return has[job.Path] && job.Variant != variant })
	return nil
}

// tellHeld draws the findings that hold cards back, and says which.
func (by *caller) tellHeld(b *build) (held bool, err error) {
	var holding []finding.Finding
	var rest tally
	for _, found := range b.result.Findings {
		if found.Holds() {
			holding = append(holding, found)
		} else {
			rest.by[found.Severity]++
		}
	}
	if err := by.draw(by.err, b.shop, holding); err != nil {
		return false, err
	}
	if len(holding) > 0 {
		fmt.Fprintln(by.err)
	}
	for _, card := range b.held() {
		fmt.Fprintf(by.err, "held back: %s\n", card)
	}
	for _, name := range b.outdated() {
		fmt.Fprintf(by.err, "do not use %s: it is from an earlier build\n", filepath.Join(b.shown, name))
	}
	if rest.by[finding.Warning]+rest.by[finding.Note] > 0 {
		fmt.Fprintf(by.err, "besides: %s; see them with benchleaf lint\n", rest.found())
	}
	return len(holding) > 0, nil
}

// held lists the cards that are not printed. A file with a fault of the language
// has no jobs to ask; whether it was to give a card is seen by its words.
func (b *build) held() []string {
	var out []string
	of := map[string][]compiler.Job{}
	for _, job := range b.result.Jobs {
		of[job.Path] = append(of[job.Path], job)
	}
	for _, target := range b.shop.targets {
		jobs := len(of[target])
		for _, job := range of[target] {
			switch {
			case job.Blocked && job.Variant != "":
				out = append(out, fmt.Sprintf("%s (version %s)", b.shop.shown(target), job.Variant))
			case job.Blocked:
				out = append(out, b.shop.shown(target))
			}
		}
		if jobs == 0 && bytes.Contains(b.shop.text(target), []byte("[procedure]")) {
			out = append(out, b.shop.shown(target))
		}
	}
	return out
}

// outdated lists the cards of an earlier build that are there for what is held back.
func (b *build) outdated() []string {
	entries, err := os.ReadDir(b.folder)
	if err != nil {
		return nil // nothing was built here
	}
	unread := map[string]bool{} // names of cards of files that could not be read whole, as far as their own names tell
	for _, path := range b.result.Unchecked {
		for _, kind := range []string{".pdf", ".html"} {
			unread[strings.TrimSuffix(filepath.Base(path), ".toml")+kind] = true
		}
	}
	var out []string
	for _, entry := range entries {
		stale := slices.ContainsFunc(b.result.Jobs, func(job compiler.Job) bool { return job.Blocked && b.isCardOf(entry.Name(), job) })
		if stale || unread[entry.Name()] {
			out = append(out, entry.Name())
		}
	}
	return out
}

// isCardOf reports whether a file is by its name a card of a job, on paper or for a phone:
// the procedure's name, and after it the versions it serves where these are not all.
func (b *build) isCardOf(file string, job compiler.Job) bool {
	versions, isCard := strings.CutPrefix(file, job.Name)
	kind := filepath.Ext(versions)
	versions = strings.TrimSuffix(versions, kind)
	isCard = isCard && (kind == ".pdf" || kind == ".html")
	if !isCard || versions == "" {
		return isCard
	}
	serves := false
	for _, other := range b.result.Jobs {
		if rest, named := strings.CutPrefix(versions, "-"+other.Variant); other.Path == job.Path && named {
			versions, serves = rest, serves || other.Variant == job.Variant
		}
	}
	return serves && versions == ""
}

// lists makes the pick list of one shop.
func (b *build) lists(look compiler.Look) error {
	lists, troubles, err := b.result.Pick(look)
	b.listed(lists)
	b.troubles = append(b.troubles, troubles...)
	return err
}

func (b *build) listed(lists []compiler.Output) {
	if len(lists) > 0 {
		b.tellVersions(lists[0].Jobs)
	}
	b.outputs = append(b.outputs, lists...)
}

// tellVersions says which machines are counted in more than one version.
func (b *build) tellVersions(jobs []compiler.Job) {
	versions := map[string][]string{}
	var machines []string
	for _, job := range jobs {
		if job.Variant == "" || slices.Contains(versions[job.Machine], job.Variant) {
			continue
		}
		if len(versions[job.Machine]) == 1 {
			machines = append(machines, job.Machine)
		}
		versions[job.Machine] = append(versions[job.Machine], job.Variant)
	}
	for _, machine := range machines {
		b.notes = append(b.notes, fmt.Sprintf("the pick list counts the %s of %s; --variant counts one", strings.Join(versions[machine], " and the "), machine))
	}
}

// deliver writes what was made, when all is made, and says each file.
func (by *caller) deliver(builds []*build, held bool) error {
	for _, b := range builds {
		by.tellNotes(b)
		if b.printing == nil {
			b.printing = newDelivery(b.folder, b.shown)
		}
		defer b.printing.drop()
		for _, output := range b.outputs {
			if err := b.printing.add(output); err != nil {
				return err
			}
		}
		files, err := b.printing.keep()
		if err != nil {
			return err
		}
		b.files = files
		by.tellWritten(files)
	}
	if held {
		return errFindings
	}
	return nil
}

// tellNotes says what there is to say of the files before they are written.
func (by *caller) tellNotes(b *build) {
	for _, note := range b.notes {
		fmt.Fprintln(by.err, note)
	}
	for _, trouble := range b.troubles {
		fmt.Fprintf(by.err, "%s: %s: %s\n", filepath.Join(b.shown, trouble.Output), trouble.Where, trouble.Text)
	}
}

// tellWritten says what became of each file.
func (by *caller) tellWritten(files []written) {
	for _, file := range files {
		did := "unchanged"
		if file.changed {
			did = "wrote"
		}
		fmt.Fprintf(by.out, "%-9s  %s\n", did, file.path)
	}
}
