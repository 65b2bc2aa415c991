// Package join makes one job out of several procedures on one machine: what makes the machine
// ready and closes it up is done once, waits are filled with the work of others, and the order
// is the shortest there is under the times it lists. DEVELOPERS.md states the problem. It must
// not know words or paper.
//
// The order within each procedure stays as its author wrote it. Steps that only bring the
// machine into a state (an energy is cut off, a cover comes off, it is raised) are no work of
// their own: what they bring about becomes a need of the steps between them and their
// counterparts, and the plan brings them in where the state has to change.
package join

import (
	"fmt"
	"maps"
	"slices"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/sequence"
)

// Input is one procedure for the version of the machine that is worked at.
type Input struct {
	Job   *model.Job
	Needs *needs.Needs
}

// Plan is the order in which everything is done.
type Plan struct {
	Inputs  []Input
	Deeds   []Deed // in order
	Waits   []Wait
	Workers int    // 2 where it is for two people
	ForOne  string // why it is for one though two were asked for
	Length  int64  // seconds from the first step to the last
	Bound   int64  // seconds that no order goes below
	Proved  bool   // Bound is Length
	Apart   int64  // seconds of the procedures one after the other
	Changes Changes
	Without Changes // of the procedures one after the other
	Tools   needs.Kit
}

// Deed is one step of the plan.
type Deed struct {
	Input   int           // whose step it is
	Step    *model.Step   // as the author wrote it
	Only    []string      // the objects that count; empty for all
	Change  bool          // it only changes the state of the machine
	Worker  int           // who does it, 1 or 2, of a plan for two people; 0 for both, and in a plan for one
	Once    []int         // deeds of the other person that are done before it
	Start   int64         // seconds from the begin
	Seconds int64         // it takes
	State   Setting       // of the machine after it
	Open    []int         // waits that run while it is done, by index
	Gate    int           // wait that has to be over before it; -1 for none
	Between bool          // it stands here for what the machine is still set to
	Held    int           // wait that it could not fill, by index; -1 for none
	Also    []*model.Step // steps of other procedures that it does the work of
	Again   bool          // it is done another time than its author has it, for whoever comes next
	Renew   []string      // spares it takes besides those that its author names
}

// Wait is a time that has to pass between two deeds.
type Wait struct {
	Input    int
	Step     *model.Step
	From, To int   // deeds
	Least    int64 // seconds
	Most     int64 // seconds until what it is for begins; 0 for any
	Idle     int64 // seconds at its end in which nothing is left to do
}

// Setting is what the machine is set to, as far as the procedures change it.
type Setting struct {
	Cut  []string // energies that are cut off
	Off  []string // covers that are off
	Pose string   // empty for as it stands
	Up   []string // what is raised
}

// Changes counts what costs time besides the work.
type Changes struct {
	Isolations int // energies cut off, one by one
	Covers     int // covers off
	Turns      int // turned over or raised
	Tools      int // another tool in the hand
	Seconds    int64
}

// Conflict is why no order is possible: two steps or two conditions that fight.
type Conflict struct {
	Text        string
	Help        string        // what to do about it
	One, Other  *model.Step   // nil where it is a condition
	More        []*model.Step // further steps that the text names
	Start, Than model.Text    // conditions of the start; not set where it is steps
}

func (c *Conflict) Error() string { return c.Text }

// Of joins some procedures, at least one, of one machine in one version. The error is a
// *Conflict where no order is possible.
func Of(inputs []Input, budget sequence.Budget) (*Plan, error) {
	if conflict := unfit(inputs); conflict != nil {
		return nil, conflict
	}
	p := newProblem(inputs)
	solved, err := p.solve(budget)
	if err != nil {
		return nil, err
	}
	out := p.plan(solved)
	if err := out.compare(p); err != nil {
		return nil, err
	}
	return out, nil
}

// unfit says why procedures cannot be one job, before any order is looked for: they are of
// different machines, or begin with conditions that fight. Nil where nothing speaks against it.
func unfit(inputs []Input) *Conflict {
	for _, input := range inputs[1:] {
		if first := inputs[0].Job; input.Job.MachineName() != first.MachineName() || input.Job.MachineTitle() != first.MachineTitle() || input.Job.Variant != first.Variant {
			return &Conflict{Text: fmt.Sprintf("%s is of %s, and %s of %s; one job is of one machine", first.File.Name(), first.MachineTitle(), input.Job.File.Name(), input.Job.MachineTitle())}
		}
	}
	return starts(inputs)
}

// compare works out what the procedures take one after the other, with the times of the
// joined job, and the tools for all.
func (p *Plan) compare(joined *problem) error {
	inputs := joined.inputs
	for i := range inputs {
		alone := newProblem(inputs[i : i+1])
		maps.Copy(alone.mean, joined.mean)
		order := make([]int, len(alone.tasks))
		for k := range order {
			order[k] = k
		}
		replayed, err := sequence.Replay(alone.asked(), order)
		if err != nil {
			return fmt.Errorf("%s: %w", inputs[i].Job.File.Name(), err)
		}
		one := alone.plan(replayed)
		p.Apart += one.Length
		if i > 0 {
			p.Apart += placeSeconds
		}
		p.Without.add(one.Changes)
	}
	p.Tools = kit(inputs)
	return nil
}

func (c *Changes) add(other Changes) {
	c.Isolations += other.Isolations
	c.Covers += other.Covers
	c.Turns += other.Turns
	c.Tools += other.Tools
	c.Seconds += other.Seconds
}

// kit is the fewest tools that serve every procedure, out of what their cards list.
func kit(inputs []Input) needs.Kit {
	listed := map[string]bool{}
	for _, input := range inputs {
		for _, tool := range input.Job.Listed() {
			listed[tool.Name] = true
		}
	}
	var demands []needs.Demand
	for _, input := range inputs {
		on := slices.DeleteFunc(slices.Clone(input.Job.Tools()), func(tool *model.Tool) bool { return !listed[tool.Name] })
		for g := range input.Needs.Grips {
			grip := &input.Needs.Grips[g]
			ways := grip.Handy(on)
			if len(ways) == 0 {
				ways = grip.Handy(input.Job.Tools())
			}
			demands = append(demands, needs.Demand{Ways: ways})
		}
		for _, use := range input.Needs.Tools {
			demands = append(demands, needs.Demand{Ways: []needs.Set{{use.Name}}})
		}
	}
	return needs.Smallest(demands)
}
