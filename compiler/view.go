package compiler

import (
	"bytes"
	"path"
	"slices"
	"strconv"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/emit/svg"
	"benchleaf/compiler/internal/hazard"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/state"
	"benchleaf/compiler/source"
)

// View is the card of one job for a screen: its sides as pictures with the places of its
// steps, where each step is written, and how the machine stands after it.
type View struct {
	Job      Job
	Sides    []Side
	Steps    []ViewStep // in the order of their numbers
	Phases   []Phase
	Strips   []Strip
	Troubles []Trouble
}

// Side is one side of a card. Lengths are millimetres.
type Side struct {
	SVG           []byte
	Width, Height float64
	Spots         []Spot
}

// Spot is where a step, or a part of one that goes over several sides, stands on a side.
type Spot struct {
	Step                int
	X, Y, Width, Height float64
}

// ViewStep is a step as the card says it, and the place of its table in the text.
type ViewStep struct {
	Number int
	Words  string
	Place  source.Place
}

// Phase is a run of steps under one heading.
type Phase struct {
	Title    string
	From, To int
}

// Strip is one thing of the machine over the steps: energy, cover, part, cavity, raised,
// parted or slack. Between its bars it stands as before.
type Strip struct {
	Kind, Name string
	Bars       []Bar
}

// Bar is a run of steps after which a thing stands as its word says; Half where it is on
// the way: loose, isolated and not proved, raised and on no stand.
type Bar struct {
	From, To int
	Word     string
	Half     bool
}

// Variants lists the versions of its machine that the procedure of a file is printed for;
// one that is empty where the machine has none, and none where the steps cannot be read.
func (r *Result) Variants(path string) []string {
	var out []string
	for _, job := range r.drafted(path) {
		out = append(out, job.Variant)
	}
	return out
}

// drafted lists the jobs of a file, and where it has none since a fault of the language
// stands in it, what its text tells of them so far.
func (r *Result) drafted(path string) []Job {
	var out []Job
	for _, job := range r.Jobs {
		if job.Path == path {
			out = append(out, job)
		}
	}
	file := r.set.File(path)
	if len(out) > 0 || file == nil {
		return out
	}
	pictures := leafThrough([]*model.File{file}, r.pictures)
	for _, job := range r.set.Drafts(file) {
		made := describe(job, true, nil)
		made.work = compose.Work{Job: job, Needs: needs.Of(job), Hazards: hazard.Of(job), Pictures: pictures.of}
		made.walk = state.Of(job, hazard.HandsIn(made.work.Hazards))
		out = append(out, made)
	}
	return out
}

// View draws the card of a file's procedure for one version of its machine, the first when
// variant is empty or there is none of that name; also where an error stands against it,
// which Job.Blocked tells, and where the text is still being written. It is nil where the
// text cannot be read or holds no procedure.
func (r *Result) View(path, variant string, look Look) (*View, error) {
	jobs := r.drafted(path)
	if len(jobs) == 0 {
		return nil, nil
	}
	job := jobs[max(0, slices.IndexFunc(jobs, func(job Job) bool { return job.Variant == variant }))]
	settled, system, err := look.settle(compose.WishesOf(job.work.Job))
	if err != nil {
		return nil, err
	}
	content, err := compose.Card(job.work.In(look.Language), system, reasons(job.allowed))
	if err != nil {
		return nil, err
	}
	content.Timeline = r.timelines[job.Name]
	strips, err := compose.Standing(job.work.In(look.Language), system, job.walk)
	if err != nil {
		return nil, err
	}
	document, problems := pages.LayCard(content, settled)
	pictures, err := svg.Draw(document)
	if err != nil {
		return nil, err
	}
	view := &View{Job: job}
	for i, side := range document.Sides {
		view.Sides = append(view.Sides, Side{SVG: pictures[i], Width: side.Width, Height: side.Height, Spots: spots(side.Boxes)})
	}
	view.read(content, job.work.Job)
	for _, strip := range strips {
		one := Strip{Kind: strip.Kind, Name: strip.Name}
		for _, bar := range strip.Bars {
			one.Bars = append(one.Bars, Bar(bar))
		}
		view.Strips = append(view.Strips, one)
	}
	for _, problem := range problems {
		view.Troubles = append(view.Troubles, Trouble{job.named(), problem.Where, problem.Text})
	}
	return view, nil
}

// Holding lists the errors that hold the card of a file's procedure back for one version of its
// machine, chosen as View does, in the file and in those it takes names from. Unchecked is set
// where nothing but these is known, since the steps are not checked until they are mended.
func (r *Result) Holding(path, variant string) (holding []finding.Finding, unchecked bool) {
	var jobs []Job
	for _, job := range r.Jobs {
		if job.Path == path {
			jobs = append(jobs, job)
		}
	}
	if len(jobs) > 0 {
		return finding.Sort(slices.Clone(jobs[max(0, slices.IndexFunc(jobs, func(job Job) bool { return job.Variant == variant }))].holding)), false
	}
	file := r.set.File(path)
	if file == nil || !isProcedure(file) {
		return nil, false
	}
	holding = unreadable(r.set, file)
	for _, layer := range file.Layers() {
		holding = append(holding, r.wrong[layer]...)
	}
	return finding.Sort(holding), true
}

// read takes the steps and the parts of the job out of the words of its card.
func (v *View) read(content plan.Card, job *model.Job) {
	said := map[int]string{}
	for _, section := range content.Sections {
		if n := len(section.Steps); n > 0 {
			v.Phases = append(v.Phases, Phase{section.Title, section.Steps[0].Number, section.Steps[n-1].Number})
		}
		for _, step := range section.Steps {
			for _, run := range step.Action {
				said[step.Number] += run.Text
			}
		}
	}
	for _, step := range job.Steps {
		place := step.Header
		place.Span.End = max(place.Span.End, step.Table.End())
		v.Steps = append(v.Steps, ViewStep{step.Number, said[step.Number], place})
	}
}

// spots finds the boxes of steps among the boxes of a side, outer ones first.
func spots(boxes []pages.Box) []Spot {
	var out []Spot
	for _, box := range boxes {
		if box.Kind == "step" || box.Kind == "step-part" {
			if number, err := strconv.Atoi(box.ID); err == nil {
				out = append(out, Spot{number, box.Place.X, box.Place.Y, box.Place.Width, box.Place.Height})
				continue
			}
		}
		out = append(out, spots(box.Boxes)...)
	}
	return out
}

// Listed is one file of the shop by what it holds.
type Listed struct {
	Path  string
	Kind  string // shop, machine, procedure, second, library; broken where its text cannot be read
	Title string // as it prints; empty where it has none
	Name  string // the short name of a procedure
}

// Listing says what each file of the shop holds, in order of path.
func (r *Result) Listing() []Listed {
	var out []Listed
	for _, file := range r.set.Files {
		one := Listed{Path: file.Source.Path, Kind: "library"}
		switch {
		case isProcedure(file):
			one.Kind = "procedure"
			if file.Procedure != nil {
				one.Title, one.Name = file.Procedure.Title.Text, file.Name()
			}
		case file.Machine != nil:
			one.Kind, one.Title = "machine", file.Machine.Title.Text
		case file.Second != nil && path.Base(path.Dir(file.Source.Path)) == "second":
			one.Kind = "second"
		case path.Base(file.Source.Path) == Shopfile:
			one.Kind = "shop"
			if file.Shop != nil {
				one.Title = file.Shop.Title.Text
			}
		case file.Broken && bytes.Contains(file.Source.Text, []byte("[machine]")):
			one.Kind = "machine"
		}
		out = append(out, one)
	}
	return out
}

// Nameable is a thing that a file can name: its kind, its short name and how it is said;
// of a tool Sort is what it is, such as container.
type Nameable struct{ Kind, Name, Words, Sort string }

// Names lists what a file can name, by kind and name, and the procedures of the shop; of a
// file that is not there, what it could name where it is begun: what the nearest file of the
// shop at or above it gives.
func (r *Result) Names(at string) []Nameable {
	var out []Nameable
	file := r.set.File(at)
	for folder := path.Dir(at); file == nil; folder = path.Dir(folder) {
		file = r.set.File(path.Join(folder, Shopfile))
		if folder == "." || folder == "/" {
			break
		}
	}
	if file != nil {
		for _, seen := range file.Seen() {
			out = append(out, Nameable(seen))
		}
	}
	for _, seen := range r.set.Procedures() {
		out = append(out, Nameable(seen))
	}
	return out
}

// Homes are the files, by their paths, in which a thing of each kind can be described so that a
// file knows it, the likeliest first; none where there is no such file.
func (r *Result) Homes(at string) map[string][]string {
	out := map[string][]string{}
	if file := r.set.File(at); file != nil {
		for kind, homes := range file.Homes() {
			for _, home := range homes {
				out[kind] = append(out[kind], home.Source.Path)
			}
		}
	}
	return out
}

// Text is a file of the shop as it was compiled; nil where there is none of that path.
func (r *Result) Text(path string) *source.File {
	if file := r.set.File(path); file != nil {
		return file.Source
	}
	return nil
}
