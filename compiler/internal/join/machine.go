package join

import (
	"slices"

	"benchleaf/compiler/internal/model"
)

// act is an authored step that changes the state of the machine, or the part of it that is
// about one thing.
type act struct {
	input int
	step  *model.Step
	only  string // its object, where it has several

	before, behind []*model.Step // waits that belong to it
}

// machine is what can be changed at a machine, and the steps that do.
type machine struct {
	ways                           []map[string]map[kind][]act // of each procedure: how it changes each energy
	energies, covers, lifts, poses []string
	guards                         []uint64 // of a cover: the energies it guards against
	follows                        uint64   // energies that no step gives back: they come with any other
	leads                          []uint64 // of an energy: those that whoever cuts it off has cut off before
	cut, back                      [][]act  // of an energy
	off, on                        [][]act  // of a cover
	up, down                       [][]act  // of what is raised
	turn                           [][]act  // into a pose
	rises                          map[string][]rise
	lift                           map[*model.Step]string        // by the step that raises
	waits                          map[*model.Step][]*model.Step // that belong to a step that cuts off
	lingers                        map[*model.Step]bool          // those waits
}

// index is the place of a name in a list, which it is added to.
func index(list *[]string, name string) int {
	if at := slices.Index(*list, name); at >= 0 {
		return at
	}
	*list = append(*list, name)
	return len(*list) - 1
}

// kind is how a step changes the state of the machine.
type kind int

const (
	work kind = iota
	cuts
	restores
	uncovers
	covers
	raises
	lowers
	turns
)

// kindOf says how a step changes the state of the machine; work, where it does not, or not
// only. To tighten a cover that was never off is work.
func kindOf(job *model.Job, step *model.Step) kind {
	every := func(is func(model.Object) bool) bool {
		return len(step.Objects) > 0 && !slices.ContainsFunc(step.Objects, func(o model.Object) bool { return !is(o) })
	}
	energies := every(func(o model.Object) bool { return o.Energy != nil })
	guard := every(func(o model.Object) bool { return o.Part != nil && o.Part.Cover })
	switch step.Verb.Key {
	case "isolate", "relieve", "prove":
		if energies {
			return cuts
		}
	case "restore":
		if energies {
			return restores
		}
	case "remove", "open", "loosen":
		if guard {
			return uncovers
		}
	case "refit", "close", "tighten":
		if guard && slices.ContainsFunc(job.Steps[:step.Number-1], func(before *model.Step) bool {
			return slices.Contains([]string{"remove", "open", "loosen"}, before.Verb.Key) && slices.ContainsFunc(before.Objects, func(o model.Object) bool { return o.Part == step.Objects[0].Part })
		}) {
			return covers
		}
	case "raise", "support":
		return raises
	case "lower":
		return lowers
	case "turn-over":
		if step.Pose.Set() {
			return turns
		}
	}
	return work
}

// longest keeps the longer of two ways to change one thing, with what only the other does.
func longest(list *[][]act, at int, acts []act) {
	for len(*list) <= at {
		*list = append(*list, nil)
	}
	long, short := (*list)[at], acts
	if len(acts) > len(long) {
		long, short = acts, long
	}
	long = slices.Clone(long)
	for i, one := range slices.Backward(short) {
		does := func(verb string) func(act) bool {
			return func(other act) bool { return other.step.Verb.Key == verb }
		}
		if one.step.Verb.Key != "relieve" && one.step.Verb.Key != "prove" || slices.ContainsFunc(long, does(one.step.Verb.Key)) {
			continue
		}
		before := -1 // what stands behind it
		if i+1 < len(short) {
			before = slices.IndexFunc(long, does(short[i+1].step.Verb.Key))
		}
		if before < 0 && one.step.Verb.Key == "relieve" { // what is relieved is proved then
			before = slices.IndexFunc(long, does("prove"))
		}
		if before < 0 {
			before = len(long)
		}
		long = slices.Insert(long, before, one)
	}
	(*list)[at] = withWaits(withWaits(long, short), (*list)[at])
}

// learn gathers what the steps of a job change, each thing the first time it is changed.
func (m *machine) learn(input int, job *model.Job) {
	m.learnLifts(job)
	type key struct {
		kind kind
		name string
	}
	runs := map[key][]act{}
	var order []key
	closed := map[key]bool{} // the way is whole: the counterpart came
	before, behind := lingers(job)
	if m.waits == nil {
		m.waits, m.lingers = map[*model.Step][]*model.Step{}, map[*model.Step]bool{}
	}
	for _, some := range []map[*model.Step][]*model.Step{before, behind} {
		for step, waits := range some {
			m.waits[step] = append(m.waits[step], waits...)
			for _, wait := range waits {
				m.lingers[wait] = true
			}
		}
	}
	add := func(k kind, name string, step *model.Step, several bool) {
		at := key{k, name}
		if closed[at] || slices.ContainsFunc(runs[at], func(one act) bool { return one.step.Verb.Key == step.Verb.Key }) {
			closed[at] = true // the way begins anew
			return
		}
		if runs[at] == nil {
			order = append(order, at)
		}
		one := act{input: input, step: step, before: before[step], behind: behind[step]}
		if several {
			one.only = name
		}
		runs[at] = append(runs[at], one)
	}
	counterpart := map[kind]kind{cuts: restores, restores: cuts, uncovers: covers, covers: uncovers, raises: lowers, lowers: raises}
	for _, step := range job.Steps {
		k := kindOf(job, step)
		names := []string{}
		switch k {
		case work:
			continue
		case cuts, restores:
			for _, object := range step.Objects {
				names = append(names, object.Energy.Name)
			}
		case uncovers, covers:
			for _, object := range step.Objects {
				names = append(names, object.Part.Name)
			}
		case raises, lowers:
			names = []string{m.lifted(job, step)}
		case turns:
			names = []string{step.Pose.Name()}
		}
		for _, name := range names {
			add(k, name, step, len(step.Objects) > 1)
			if other, has := counterpart[k]; has && runs[key{other, name}] != nil {
				closed[key{other, name}] = true
			}
		}
	}
	ways := map[string]map[kind][]act{}
	for _, at := range order {
		if at.kind == cuts || at.kind == restores {
			if ways[at.name] == nil {
				ways[at.name] = map[kind][]act{}
			}
			ways[at.name][at.kind] = runs[at]
		}
	}
	m.ways = append(m.ways, ways)
	for _, at := range order {
		switch at.kind {
		case cuts:
			longest(&m.cut, index(&m.energies, at.name), runs[at])
		case restores:
			longest(&m.back, index(&m.energies, at.name), runs[at])
		case uncovers:
			longest(&m.off, index(&m.covers, at.name), runs[at])
		case covers:
			longest(&m.on, index(&m.covers, at.name), runs[at])
		case raises:
			longest(&m.up, index(&m.lifts, at.name), runs[at])
		case lowers:
			longest(&m.down, index(&m.lifts, at.name), runs[at])
		case turns:
			longest(&m.turn, index(&m.poses, at.name), runs[at])
		}
	}
}

// settle fills in what hangs on all jobs together.
func (m *machine) settle(inputs []Input) {
	pad := func(names []string, lists ...*[][]act) {
		for _, list := range lists {
			for len(*list) < len(names) {
				*list = append(*list, nil)
			}
		}
	}
	pad(m.energies, &m.cut, &m.back)
	pad(m.covers, &m.off, &m.on)
	pad(m.lifts, &m.up, &m.down)
	for i, acts := range m.back {
		if len(acts) == 0 {
			m.follows |= 1 << i
		}
	}
	m.guards = make([]uint64, len(m.covers))
	for i, name := range m.covers {
		if part := inputs[0].Job.Part(name); part != nil {
			for _, energy := range part.Guards.Names() {
				if at := slices.Index(m.energies, energy); at >= 0 {
					m.guards[i] |= 1 << at
				}
			}
		}
	}
}
