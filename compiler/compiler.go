// Package compiler is the front door: files in, findings and pages out. It is a
// function of values and knows no disk, clock or network.
package compiler

import (
	"bytes"
	"runtime"
	"slices"
	"strings"
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

	// Lean holds no more of a large shop in memory than takes part in what is just being looked
	// at. What comes of it can be told, and printed by Print; nothing else can be made of it.
	Lean bool
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
	turns     *model.Turns                      // of a lean compile of a large shop, in which no job has its work
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

// Where a shop has more than manyFiles it is large, and severalFiles of it are looked at together.
const (
	manyFiles    = 256
	severalFiles = 128
)

// Compile compiles like the function Compile.
func (s *Session) Compile(in Input) *Result {
	if in.Lean && len(in.Files) > manyFiles {
		return inTurns(in, severalFiles)
	}
	c := newCompilation(in, s.reader.Read(in.Files, inParallel))
	c.told = s.told
	s.told = map[*model.File]toldOf{}
	c.look(c.set.Files, s.told)
	return c.done()
}

// inTurns compiles so many procedures at a time, and holds none of their jobs.
func inTurns(in Input, many int) *Result {
	turns := model.InTurns(in.Files, inParallel)
	c := newCompilation(in, turns.Set)
	one := func(files []*model.File) {
		c.look(files, map[*model.File]toldOf{})
		for i := range c.out.Jobs {
			c.out.Jobs[i].work, c.out.Jobs[i].walk = compose.Work{}, nil
		}
	}
	one(turns.Held())
	turns.Each(many, one)
	c.out.turns = turns
	return c.done()
}

// compilation is a compile under way.
type compilation struct {
	set     *model.Set
	out     *Result
	targets map[*model.File]bool
	read    map[*model.File]bool // targets, and the files they take names from
	told    map[*model.File]toldOf
}

func newCompilation(in Input, set *model.Set) *compilation {
	c := &compilation{set: set, targets: map[*model.File]bool{}}
	c.out = &Result{set: set, whole: in.Whole, today: in.Today, pictures: in.Pictures, wrong: map[*model.File][]finding.Finding{}}
	c.out.assist = c.out.assistant()
	c.out.beside = sync.OnceValue(c.out.written)
	asked := map[string]bool{}
	for _, path := range in.Targets {
		asked[path] = true
	}
	var targets []*model.File
	for _, file := range set.Files {
		if len(in.Targets) == 0 || asked[file.Source.Path] {
			targets = append(targets, file)
			c.targets[file] = true
		}
	}
	c.read = set.Reach(targets)
	return c
}

// look runs the rules on some files, and makes the jobs of the targets among them. What the
// files take names from was looked at before, or is among them. now takes what was found of their amounts.
func (c *compilation) look(files []*model.File, now map[*model.File]toldOf) {
	var targets []*model.File
	for _, file := range files {
		if c.targets[file] {
			targets = append(targets, file)
		}
	}
	pictures := leafThrough(targets, c.out.pictures)
	amounts, told := make([][]finding.Finding, len(files)), make([]toldOf, len(files))
	inParallel(len(files), func(i int) {
		if c.read[files[i]] {
			told[i] = c.told[files[i]].amounts(files[i])
			amounts[i] = append(slices.Clone(told[i].found), rules.Pictures(files[i], pictures.of)...)
			amounts[i] = append(amounts[i], rules.Days(files[i], c.out.today)...)
		}
	})
	var ofTargets [][]finding.Finding
	for i, file := range files {
		if c.read[file] {
			now[file] = told[i]
		}
		kept, allowed := rules.Allow(file, amounts[i])
		for _, f := range amounts[i] {
			if f.Severity == finding.Error && !offCard(file, f) && !rules.OfPart(f.Rule) && slices.ContainsFunc(kept, func(other finding.Finding) bool { return other.Rule == f.Rule && other.Place == f.Place }) {
				c.out.wrong[file] = append(c.out.wrong[file], f)
			}
		}
		if c.targets[file] {
			ofTargets = append(ofTargets, amounts[i])
		} else {
			c.out.Findings, c.out.Allowed = append(c.out.Findings, kept...), append(c.out.Allowed, allowed...)
		}
	}
	checked := make([]checkedFile, len(targets))
	inParallel(len(targets), func(i int) { checked[i] = check(c.set, targets[i], ofTargets[i], c.out.wrong, pictures) })
	for i, one := range checked {
		if len(one.jobs) == 0 && isProcedure(targets[i]) {
			c.out.Unchecked = append(c.out.Unchecked, targets[i].Source.Path)
			c.out.Findings = append(c.out.Findings, rules.NotChecked(targets[i], unreadable(c.set, targets[i]))...)
		}
		c.out.Findings = append(c.out.Findings, one.findings...)
		c.out.Allowed = append(c.out.Allowed, one.allowed...)
		c.out.Jobs = append(c.out.Jobs, one.jobs...)
	}
}

// done puts what was found into order.
func (c *compilation) done() *Result {
	for _, found := range c.set.Findings {
		if file := c.set.File(found.Place.File.Path); c.read[file] {
			c.out.Findings = append(c.out.Findings, found)
		}
	}
	c.out.Findings, c.out.Allowed = finding.Sort(c.out.Findings), finding.Sort(c.out.Allowed)
	slices.SortStableFunc(c.out.Jobs, func(a, b Job) int { return strings.Compare(a.Path, b.Path) })
	slices.Sort(c.out.Unchecked)
	return c.out
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

// works are the jobs of a file, with what they take and what can hurt at them.
type works struct {
	jobs    []*model.Job
	needs   []*needs.Needs
	implied [][]hazard.Implied
}

// workOf makes the jobs of a file.
func workOf(set *model.Set, file *model.File) works {
	w := works{jobs: set.JobsAnew(file)}
	w.needs, w.implied = make([]*needs.Needs, len(w.jobs)), make([][]hazard.Implied, len(w.jobs))
	inParallel(len(w.jobs), func(i int) { w.needs[i], w.implied[i] = needs.Of(w.jobs[i]), hazard.Of(w.jobs[i]) })
	return w
}

// compare holds what the jobs take against each other, as pages want it.
func (w works) compare(file *model.File) {
	if len(w.jobs) > 1 {
		needs.Compare(file.Procedure, w.needs)
	}
}

// of is what the pages of a job are made of.
func (w works) of(i int, pictures album) compose.Work {
	return compose.Work{Job: w.jobs[i], Needs: w.needs[i], Hazards: w.implied[i], Pictures: pictures.of}
}

// check runs the rules on each job of a file, and takes out what its author stands by.
func check(set *model.Set, file *model.File, amounts []finding.Finding, wrong map[*model.File][]finding.Finding, pictures album) checkedFile {
	w := workOf(set, file)
	found, walked := make([][]finding.Finding, len(w.jobs)), make([]*state.Walk, len(w.jobs))
	inParallel(len(w.jobs), func(i int) {
		walked[i] = state.Of(w.jobs[i], hazard.HandsIn(w.implied[i]))
		found[i] = rules.Job(w.jobs[i], w.needs[i], w.implied[i], walked[i])
	})
	w.compare(file)
	out := checkedFile{findings: amounts}
	if len(w.jobs) > 0 || file.Procedure == nil {
		out.findings, out.allowed = rules.Allow(file, append(slices.Clone(amounts), rules.Merge(found)...))
	}
	var wrongAmounts []finding.Finding
	if len(wrong) > 0 {
		for _, layer := range file.Layers() {
			if layer != file { // its own are among what was found
				wrongAmounts = append(wrongAmounts, wrong[layer]...)
			}
		}
	}
	for i, job := range w.jobs {
		holding := slices.Clone(wrongAmounts)
		for _, f := range out.findings {
			if f.Holds() && (f.Variant == "" || f.Variant == job.Variant) && !offCard(file, f) {
				holding = append(holding, f)
			}
		}
		made := describe(job, len(holding) > 0, out.allowed)
		made.holding = holding
		made.versions, made.walk, made.work = len(w.jobs), walked[i], w.of(i, pictures)
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
