package compiler

import (
	"cmp"
	"errors"
	"fmt"
	"math/bits"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/emit/json"
	"benchleaf/compiler/internal/join"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/sequence"
	"benchleaf/compiler/internal/standing"
	"benchleaf/compiler/internal/state"
	"benchleaf/compiler/source"
)

// Joining is what is asked of a job out of several procedures.
type Joining struct {
	Procedures []string // short names, at least one
	Unit       string   // short name of the machine it is for; may be empty where there is one of its kind
	On         string   // day such as 2026-05-01
	Name       string   // short name of the new procedure; made out of the machine and the day where it is empty
	Title      string   // as it prints; the usual where it is empty
	People     int      // 2 for a plan for two; one otherwise
}

// Joined is one job out of several procedures.
type Joined struct {
	People  int    // 2 for a plan for two
	ForOne  string // why it is for one though two were asked for
	Name    string
	Source  []byte  // the procedure in the language of the shop, for the top of its folder
	Result  *Result // of compiling it with the shop
	Length  int64   // seconds from the first step to the last
	Apart   int64   // seconds of the procedures one after the other
	Percent int64   // it is at most so much above the shortest
	Proved  bool    // it is the shortest, under the times it lists
	Bound   int64   // seconds that no order goes below
	Changes Changes
	Without Changes // of the procedures one after the other

	steps []plan.JoinedStep
}

// Changes counts what costs time besides the work.
type Changes = join.Changes

// Conflict is why procedures cannot be one job, with the places of what fights.
type Conflict struct {
	Text    string
	Help    string // what to do about it; may be empty
	Related []finding.Related
}

func (c *Conflict) Error() string { return c.Text }

// Join makes one job out of procedures of one machine: prepared and closed up once, waits
// filled, in the shortest order. The error is a *Conflict where no order is possible; of three
// and more procedures it names the most that are one job.
func (r *Result) Join(look Look, asked Joining) (*Joined, error) {
	out, err := r.join(look, asked)
	var fight *Conflict
	if errors.As(err, &fight) {
		if some := r.together(look, asked); len(some) > 0 {
			fight.Help = strings.TrimSpace(fmt.Sprintf("%s One job can be: %s.", fight.Help, strings.Join(some, ", ")))
		}
	}
	return out, err
}

// tries are how many choices of procedures are tried for the most that are one job, and how many
// procedures they are out of.
const tries, outOf = 40, 12

// together are the most procedures of those asked for that are one job, the first of such choices
// in their order; nil where there is none, or none was found within the tries.
func (r *Result) together(look Look, asked Joining) []string {
	names, left := asked.Procedures, tries
	if len(names) > outOf {
		return nil
	}
	asked.People = 1
	for without := 1; len(names)-without >= 2; without++ {
		for gone := uint(1); gone < 1<<len(names); gone++ {
			if bits.OnesCount(gone) != without {
				continue
			}
			if left--; left < 0 {
				return nil
			}
			asked.Procedures = nil
			for i, name := range names {
				if gone&(1<<(len(names)-1-i)) == 0 { // the last is left out first
					asked.Procedures = append(asked.Procedures, name)
				}
			}
			if _, err := r.join(look, asked); err == nil {
				return asked.Procedures
			}
		}
	}
	return nil
}

// mostJoined is how many procedures are one job at the most: twice through the letters that tell them
// apart. A card of more is read by nobody, and the search for its order takes seconds.
const mostJoined = 52

func (r *Result) join(look Look, asked Joining) (*Joined, error) {
	if _, err := due.ParseDay(asked.On); err != nil {
		return nil, err
	}
	inputs, files, err := r.toJoin(&asked)
	if err != nil {
		return nil, err
	}
	plans := join.Of
	switch {
	case asked.People == 2:
		plans = join.OfTwo
	case asked.People < 0 || asked.People > 2:
		return nil, fmt.Errorf("a job can be joined for one or for two people, and not for %d", asked.People)
	}
	made, err := plans(inputs, sequence.Budget{})
	var fight *join.Conflict
	switch {
	case errors.As(err, &fight):
		return nil, conflictOf(fight)
	case err != nil:
		return nil, err
	}
	words, err := plan.LoadWords(cmp.Or(look.Language, inputs[0].Job.Language()))
	if err != nil {
		return nil, err
	}
	spoken := compose.JoinWords(words)
	out := &Joined{People: max(1, made.Workers), ForOne: made.ForOne, Length: made.Length, Bound: made.Bound, steps: compose.JoinedSteps(made, spoken), Apart: made.Apart, Percent: made.Percent(), Proved: made.Proved, Changes: made.Changes, Without: made.Without}
	out.Name = first(fileName(asked.Name), fileName(cmp.Or(asked.Unit, inputs[0].Job.MachineName(), inputs[0].Job.MachineTitle()))+"-"+asked.On)
	path := out.Name + ".toml"
	title := asked.Title
	if usual := made.Title(asked.On, spoken); title == "" {
		if asked.Name != "" { // several may be kept on one day
			usual += " · " + asked.Name
		}
		title = usual
		for n := 2; slices.ContainsFunc(r.set.Files, func(file *model.File) bool { return file.Procedure != nil && file.Procedure.Title.Text == title }); n++ {
			title = fmt.Sprintf("%s (%d)", usual, n)
		}
	}
	if r.set.File(path) != nil {
		return nil, fmt.Errorf("there is a file %s already; give the job another name", path)
	}
	for sealed := false; !sealed; { // again, where a part that goes back twice takes a second seal
		out.Source, _ = Tidy(source.New(path, []byte(made.Source(join.Look{Name: out.Name, Title: title, Day: asked.On}, spoken)))) // a fault would be told by Compile
		out.Result = Compile(Input{Files: append(slices.Clip(files), source.New(path, out.Source)), Targets: []string{path}, Whole: r.whole, Pictures: r.pictures})
		sealed = !out.renews(made)
	}
	out.Result.timelines = map[string]*plan.Timeline{out.Name: compose.Timeline(made, words)}
	if fight := out.fights(r, inputs); fight != nil {
		return nil, fight
	}
	return out, nil
}

// renews lets a plan name the seals of parts that go back a second time in the joined job, and
// reports whether there is one that it did not name.
func (j *Joined) renews(made *join.Plan) bool {
	again := false
	for _, job := range j.Result.Jobs {
		for _, breach := range job.walk.Breaches {
			if breach.Kind == state.SealAgain && made.Renew(breach.Step.Number, breach.Other) {
				again = true
			}
		}
	}
	return again
}

// units are the machines that stand in the shop.
func (r *Result) units() []standing.Unit {
	var jobs []*model.Job
	for _, job := range r.Jobs {
		jobs = append(jobs, job.work.Job)
	}
	units, _ := standing.Units(jobs, r.set.Units())
	return units
}

var stepNumber = regexp.MustCompile(`\bstep (\d+)`)

// ownNumbers names the steps of a text by the procedures they come from, since a job that is
// refused has no card to look them up on.
func ownNumbers(inputs []join.Input, joined *model.Job, text string) string {
	return stepNumber.ReplaceAllStringFunc(text, func(said string) string {
		number, err := strconv.Atoi(strings.TrimPrefix(said, "step "))
		if err != nil || number < 1 || number > len(joined.Steps) {
			return said
		}
		own, name := ownStep(inputs, joined.Steps[number-1])
		if own == nil {
			return said
		}
		return fmt.Sprintf("step %d of %s", own.Number, name)
	})
}

// ownStep is the step that a joined one comes from, by its origin: "A 7, B 2"; and the name
// of its procedure.
func ownStep(inputs []join.Input, joined *model.Step) (own *model.Step, name string) {
	for _, origin := range joined.Origins()[:min(1, len(joined.Origins()))] {
		for i, input := range inputs {
			if model.Letter(i) == origin.Letter && origin.Number >= 1 && origin.Number <= len(input.Job.Steps) {
				return input.Job.Steps[origin.Number-1], input.Job.File.Name()
			}
		}
	}
	return nil, ""
}

// toJoin are the jobs that are asked for, and the texts of all files.
func (r *Result) toJoin(asked *Joining) (inputs []join.Input, files []*source.File, err error) {
	units := r.units()
	if err := r.CheckUnit(asked.Unit); err != nil {
		return nil, nil, err
	}
	if n := len(asked.Procedures); n > mostJoined {
		return nil, nil, fmt.Errorf("%d procedures are asked for, and at most %d are joined at once; name fewer", n, mostJoined)
	}
	for i, name := range asked.Procedures {
		if slices.Contains(asked.Procedures[:i], name) {
			return nil, nil, fmt.Errorf("%s is named twice", name)
		}
		if r.set.Procedure(name) == nil {
			return nil, nil, errors.New(r.noProcedure(name))
		}
		if why := r.HeldBack(name); why != "" {
			return nil, nil, errors.New(why)
		}
	}
	var fit []standing.Unit // that all of them are of
	for _, unit := range units {
		if asked.Unit != "" && unit.Name != asked.Unit || slices.ContainsFunc(asked.Procedures, func(name string) bool { return r.jobOf(name, unit) == nil }) {
			continue
		}
		fit = append(fit, unit)
	}
	switch {
	case len(asked.Procedures) == 0:
		return nil, nil, errors.New("no procedure is named")
	case len(fit) == 0:
		return nil, nil, r.strangers(*asked, units)
	case slices.ContainsFunc(fit, func(unit standing.Unit) bool { return unit.Version != fit[0].Version }):
		return nil, nil, fmt.Errorf("they can be done to several machines: %s; say which with --unit", strings.Join(unitNames(fit), ", "))
	}
	if asked.Unit = fit[0].Name; len(fit) > 1 {
		asked.Unit = ""
	}
	for _, name := range asked.Procedures {
		job := r.jobOf(name, fit[0])
		if parts := job.work.Job.Procedure.Joins.Names(); len(parts) > 0 {
			return nil, nil, fmt.Errorf("%s is joined already, out of %s; join these", name, strings.Join(parts, ", "))
		}
		inputs = append(inputs, join.Input{Job: job.work.Job, Needs: job.work.Needs})
	}
	for _, file := range r.set.Files {
		files = append(files, file.Source)
	}
	return inputs, files, nil
}

// strangers says of procedures that no one machine has all of which is of which.
func (r *Result) strangers(asked Joining, units []standing.Unit) error {
	var said []string
	for _, name := range asked.Procedures {
		var of []string
		for _, unit := range units {
			if r.jobOf(name, unit) != nil {
				of = append(of, unit.Name)
			}
		}
		if asked.Unit != "" && slices.Contains(of, asked.Unit) {
			continue
		}
		if len(of) == 0 {
			of = []string{"no machine here"}
		}
		said = append(said, name+" is of "+strings.Join(of, ", "))
	}
	if asked.Unit != "" {
		return fmt.Errorf("%s, and not of %s; one job is of one machine", strings.Join(said, "; "), asked.Unit)
	}
	return fmt.Errorf("%s; one job is of one machine", strings.Join(said, "; "))
}

// CheckUnit says that a short name is that of no machine; an empty one is fine.
func (r *Result) CheckUnit(name string) error {
	if names := unitNames(r.units()); name != "" && !slices.Contains(names, name) {
		return fmt.Errorf("there is no machine %q; there are: %s", name, strings.Join(names, ", "))
	}
	return nil
}

// conflictOf puts a conflict of steps or conditions to the places where they stand.
func conflictOf(fight *join.Conflict) *Conflict {
	out := &Conflict{Text: fight.Text, Help: fight.Help}
	for _, one := range append([]*model.Step{fight.One, fight.Other}, fight.More...) {
		if one != nil {
			out.Related = append(out.Related, finding.Related{Place: one.Header, Text: fmt.Sprintf("step %d of %s", one.Number, one.File.Name())})
		}
	}
	for _, one := range []model.Text{fight.Start, fight.Than} {
		if one.Set() {
			out.Related = append(out.Related, finding.Related{Place: one.At, Text: "this condition"})
		}
	}
	return out
}

// Procedures are the short names of the procedures of one machine, but for those that were
// joined out of others.
func (r *Result) Procedures(unit string) []string {
	var out []string
	for _, one := range r.units() {
		for i := range r.Jobs {
			if job := &r.Jobs[i]; one.Name == unit && len(job.work.Job.Procedure.Joins.Items) == 0 && standing.Serves(job.work.Job, one) && !slices.Contains(out, job.Name) {
				out = append(out, job.Name)
			}
		}
	}
	return out
}

// Joined reports whether a job was joined out of others.
func (j Job) Joined() bool { return len(j.work.Job.Procedure.Joins.Items) > 0 }

// Joins are the procedures that a list of what is due asks for at one machine; those that have
// no card, since an error stands against them, by themselves.
func (d *Due) Joins(unit string) (with, without []string) {
	for _, one := range d.stands {
		switch name := one.Job.File.Name(); {
		case one.Unit.Name != unit || !d.presses(one):
		case d.result.jobOf(name, one.Unit) == nil:
			without = append(without, name)
		default:
			with = append(with, name)
		}
	}
	return with, without
}

// JSON is a joined job for other programs, with the times it was planned by.
func (j *Joined) JSON() []byte {
	counts := func(c Changes) [4]int { return [4]int{c.Isolations, c.Covers, c.Turns, c.Tools} }
	return json.Joined(json.Join{Name: j.Name, Length: j.Length, Apart: j.Apart, Bound: j.Bound, Proved: j.Proved, ForOne: j.ForOne, Lost: join.Lost(), Changes: counts(j.Changes), Without: counts(j.Without), Steps: j.steps})
}

// Pages draws the bench card of a joined job, and the list of what to bring for it.
func (j *Joined) Pages(look Look) ([]Output, []Trouble, error) {
	outputs, troubles, err := j.Result.Cards(look, nil)
	if err != nil {
		return nil, nil, err
	}
	lists, more, err := j.Result.Pick(look)
	for i := range lists {
		lists[i].Name = j.Name + "-" + lists[i].Name
	}
	return append(outputs, lists...), append(troubles, more...), err
}
