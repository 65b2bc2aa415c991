// Package compiler is the front door: files in, findings and pages out. It is a
// function of values and knows no disk, clock or network.
package compiler

import (
	"bytes"
	"runtime"
	"slices"
	"sync"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/assist"
	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/hazard"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/rules"
	"benchleaf/compiler/internal/state"
	"benchleaf/compiler/source"
)

// Input is what a compile reads.
type Input struct {
	Files   []*source.File // every file of the shop that may be used
	Targets []string       // paths of the files to check and print; all files when empty
	Whole   bool           // no file of the shop is left out, so that a name that is in none is wrong
	Today   string         // the day it is compiled on, such as 2026-05-01; empty where that does not matter

	// Pictures are those the files show, as far as they are there; nil where none was
	// looked for, and then none is checked or printed.
	Pictures []source.Picture
}

// Result is what a compile found and can print.
type Result struct {
	Findings []finding.Finding // of the targets, sorted by place
	Allowed  []finding.Finding // what the author stands by, with the reason as the last related text
	Jobs     []Job             // one for each target's procedure and version of its machine, in order of path; those taken out are not printed

	Unchecked []string // targets whose work was not looked at, because they or what they use could not be read whole

	set       *model.Set
	whole     bool
	today     string                            // as it was given
	pictures  []source.Picture                  // that were given
	wrong     map[*model.File][]finding.Finding // amounts that cannot be read
	timelines map[string]*plan.Timeline         // of joined jobs, by their short names
	assist    func() *assist.Shop               // what helps while writing
	beside    func() map[string]string          // what else is written under which name
}

// Job names one procedure for one version of its machine.
type Job struct {
	Path, Name, Title, Machine, Variant, Revision string
	MachineName                                   string // the short name of the machine; empty where it is only named in words
	Blocked                                       bool   // an error stands against it, so no card is printed

	work     compose.Work
	walk     *state.Walk
	allowed  []finding.Finding
	holding  []finding.Finding // what blocks it, in its file and in those it takes names from
	versions int               // how many versions the procedure serves
}

// Output is one file to write: its name without a folder, and its bytes.
type Output struct {
	Name  string
	Bytes []byte
	Jobs  []Job // the jobs it serves; none for a file that was mended
}

// Uses lists the files a text takes names from, as paths from the shop folder, *
// standing for any name, and the pictures it shows; the caller loads them before it
// compiles.
func Uses(text *source.File) (files, pictures []string) { return model.Uses(text) }

// Shopfile is the name of the file whose names every file beside and below it takes.
const Shopfile = model.Shopfile

// Rules lists every rule, sorted by its name.
func Rules() []finding.Rule { return rules.Catalogue() }

// Compile reads the files, looks their names up and checks the targets, and with
// them the files they take names from.
func Compile(in Input) *Result { return new(Session).Compile(in) }

// SessionGarbage is how much garbage a program that keeps a Session does well to let grow, in
// percent of the memory in use (as GOGC has it): a collection looks at the whole shop, and the key
// that it falls on takes twice as long as others.
const SessionGarbage = 400

// Session compiles a shop again and again while somebody writes: what has not changed since
// the compile before is not read again. The results are those of Compile, and only the last one
// may be used. It does one thing at a time.
type Session struct {
	reader model.Reader
	told   map[*model.File]toldOf
}

// toldOf is what the rules on the amounts of a file found, and of which texts: its own, and those
// of the files that it takes names from. They look at nothing else.
type toldOf struct {
	texts []*source.File
	found []finding.Finding
}

// amounts runs the rules on the amounts of a file where it or what it takes names from is not as
// it was.
func (t toldOf) amounts(file *model.File) toldOf {
	layers := file.Layers()
	if len(layers) > 0 && slices.EqualFunc(layers, t.texts, func(layer *model.File, text *source.File) bool { return layer.Source == text }) {
		return t
	}
	now := toldOf{texts: make([]*source.File, len(layers))}
	for i, layer := range layers {
		now.texts[i] = layer.Source
	}
	now.found = append(rules.File(file), rules.Stocks(file, stockFault)...)
	now.found = append(now.found, rules.Units(file)...)
	now.found = append(now.found, rules.Stores(file)...)
	return now
}

// Compile compiles like the function Compile.
func (s *Session) Compile(in Input) *Result {
	set := s.reader.Read(in.Files, inParallel)
	out := &Result{set: set, whole: in.Whole, today: in.Today, pictures: in.Pictures, wrong: map[*model.File][]finding.Finding{}}
	out.assist = out.assistant()
	out.beside = sync.OnceValue(out.written)
	read := map[*model.File]bool{}
	var targets []*model.File
	for _, file := range set.Files {
		if len(in.Targets) == 0 || slices.Contains(in.Targets, file.Source.Path) {
			targets = append(targets, file)
			for _, layer := range file.Layers() {
				read[layer] = true
			}
		}
	}
	pictures := leafThrough(targets, in.Pictures)
	amounts, told := make([][]finding.Finding, len(set.Files)), make([]toldOf, len(set.Files))
	inParallel(len(set.Files), func(i int) {
		if read[set.Files[i]] {
			told[i] = s.told[set.Files[i]].amounts(set.Files[i])
			amounts[i] = append(slices.Clone(told[i].found), rules.Pictures(set.Files[i], pictures.of)...)
			amounts[i] = append(amounts[i], rules.Days(set.Files[i], in.Today)...)
		}
	})
	s.told = map[*model.File]toldOf{}
	for i, file := range set.Files {
		if read[file] {
			s.told[file] = told[i]
		}
	}
	for i, file := range set.Files {
		kept, allowed := rules.Allow(file, amounts[i])
		for _, f := range amounts[i] {
			if f.Severity == finding.Error && !offCard(file, f) && !rules.OfPart(f.Rule) && slices.ContainsFunc(kept, func(other finding.Finding) bool { return other.Rule == f.Rule && other.Place == f.Place }) {
				out.wrong[file] = append(out.wrong[file], f)
			}
		}
		if !slices.Contains(targets, file) {
			out.Findings, out.Allowed = append(out.Findings, kept...), append(out.Allowed, allowed...)
		}
	}
	for _, found := range set.Findings {
		if file := set.File(found.Place.File.Path); read[file] {
			out.Findings = append(out.Findings, found)
		}
	}
	checked := make([]checkedFile, len(targets))
	inParallel(len(targets), func(i int) {
		checked[i] = check(set, targets[i], amounts[slices.Index(set.Files, targets[i])], out.wrong, pictures)
	})
	for i, one := range checked {
		if len(one.jobs) == 0 && isProcedure(targets[i]) {
			out.Unchecked = append(out.Unchecked, targets[i].Source.Path)
			out.Findings = append(out.Findings, rules.NotChecked(targets[i], unreadable(set, targets[i]))...)
		}
		out.Findings = append(out.Findings, one.findings...)
		out.Allowed = append(out.Allowed, one.allowed...)
		out.Jobs = append(out.Jobs, one.jobs...)
	}
	out.Findings, out.Allowed = finding.Sort(out.Findings), finding.Sort(out.Allowed)
	return out
}

// unreadable are the errors that keep the steps of a procedure from being checked: those of the files
// it takes names from, and its own, that could not be read.
func unreadable(set *model.Set, file *model.File) (out []finding.Finding) {
	for _, found := range set.Findings {
		if found.Holds() && slices.ContainsFunc(file.Layers(), func(layer *model.File) bool { return layer.Broken && layer.Source == found.Place.File }) {
			out = append(out, found)
		}
	}
	return out
}

// isProcedure reports whether a file is of a procedure; of one with a fault of the syntax, whose
// tables are not known, its words tell.
func isProcedure(file *model.File) bool {
	return file.Procedure != nil || file.Broken && bytes.Contains(file.Source.Text, []byte("[procedure]"))
}

type checkedFile struct {
	findings, allowed []finding.Finding
	jobs              []Job
}

// check runs the rules on each job of a file, and takes out what its author stands by.
func check(set *model.Set, file *model.File, amounts []finding.Finding, wrong map[*model.File][]finding.Finding, pictures album) checkedFile {
	jobs := set.JobsAnew(file)
	found := make([][]finding.Finding, len(jobs))
	needed, implied, walked := make([]*needs.Needs, len(jobs)), make([][]hazard.Implied, len(jobs)), make([]*state.Walk, len(jobs))
	inParallel(len(jobs), func(i int) {
		needed[i], implied[i] = needs.Of(jobs[i]), hazard.Of(jobs[i])
		walked[i] = state.Of(jobs[i], hazard.HandsIn(implied[i]))
		found[i] = rules.Job(jobs[i], needed[i], implied[i], walked[i])
	})
	if len(jobs) > 1 {
		needs.Compare(file.Procedure, needed)
	}
	out := checkedFile{findings: amounts}
	if len(jobs) > 0 || file.Procedure == nil {
		out.findings, out.allowed = rules.Allow(file, append(slices.Clone(amounts), rules.Merge(found)...))
	}
	var wrongAmounts []finding.Finding
	for _, layer := range file.Layers() {
		if layer != file { // its own are among what was found
			wrongAmounts = append(wrongAmounts, wrong[layer]...)
		}
	}
	for i, job := range jobs {
		holding := slices.Clone(wrongAmounts)
		for _, f := range out.findings {
			if f.Holds() && (f.Variant == "" || f.Variant == job.Variant) && !offCard(file, f) {
				holding = append(holding, f)
			}
		}
		made := describe(job, len(holding) > 0, out.allowed)
		made.holding = holding
		made.versions, made.walk, made.work = len(jobs), walked[i], compose.Work{Job: job, Needs: needed[i], Hazards: implied[i], Pictures: pictures.of}
		out.jobs = append(out.jobs, made)
	}
	return out
}

// offCard reports whether a finding is of what stands in a file and on no card: what is on the
// shelf, what it costs, which machines there are and how much they run.
func offCard(file *model.File, f finding.Finding) bool {
	return rules.OffCard(f.Rule) || slices.ContainsFunc(file.OffCard(), func(amount model.Amount) bool {
		return f.Place.Span.Start >= amount.At.Span.Start && f.Place.Span.End <= amount.At.Span.End
	})
}

func describe(job *model.Job, blocked bool, allowed []finding.Finding) Job {
	return Job{Path: job.File.Source.Path, Name: job.File.Name(), Title: job.Procedure.Title.Text, Machine: job.MachineTitle(),
		Variant: job.Variant, Revision: job.Procedure.Revision.Text, Blocked: blocked, allowed: allowed, MachineName: job.MachineName()}
}

// inParallel does n things with as many hands as the machine has; each writes
// its own result, so that the order of the work leaves no trace. A panic in one
// of them goes on in the caller, when the others are done.
func inParallel(n int, do func(i int)) {
	next := make(chan int)
	var hands sync.WaitGroup
	failures := make([]any, n)
	guarded := func(i int) {
		defer func() { failures[i] = recover() }()
		do(i)
	}
	for range min(n, runtime.GOMAXPROCS(0)) {
		hands.Go(func() {
			for i := range next {
				guarded(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	hands.Wait()
	for _, failure := range failures {
		if failure != nil {
			panic(failure)
		}
	}
}
