package join

import (
	"math/big"
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
)

// need is what the machine has to be set to for a task, as bits by the lists of the machine.
type need struct {
	cut, live uint64 // energies
	off, on   uint64 // covers
	up, down  uint64 // what is raised
	pose      int    // -1 where any will do
}

// task is work that is done in one go: the steps of a procedure between which the machine does
// not change and nothing waits.
type task struct {
	input  int
	steps  []*model.Step
	lead   []int64 // seconds that are lost before each step but the first, by another tool or fluid
	need   need
	time   int64  // of all steps, and what is lost between them
	first  hands  // what it begins with
	last   hands  // and ends with
	tools  int    // how often another tool is taken within it
	runs   bool   // the machine runs
	opens  uint64 // what it takes apart, empties or slackens, as bits of spans
	closes uint64 // what it puts right again
	bars   uint64 // spans in which it cannot be done
	gate   int    // wait that has to be over before it; -1 for none
	within int    // task of another procedure that does its work: the same run; -1 for none
	also   []int  // tasks whose work it does
}

// takes reports whether another tool is taken for a task than is in the hand.
func (t *task) takes(at hands) bool { return t.first.tool != "" && t.first.tool != at.tool }

// lost are the seconds before a task for another tool, another fluid, or another procedure than
// the one of the last task, counted from 1; 0 for none.
func (t *task) lost(at hands, input int) (out int64) {
	if t.takes(at) {
		out += toolSeconds
	}
	if t.first.fluid != "" && at.fluid != "" && t.first.fluid != at.fluid {
		out += fluidSeconds
	}
	if input != 0 && input != t.input+1 {
		out += placeSeconds
	}
	return out
}

// hands are what hands are at; empty for nothing.
type hands struct {
	tool  string // what is taken
	fluid string // what can, funnel or gun is wet with
}

// wait is a time that has to pass between two tasks.
type wait struct {
	input    int
	step     *model.Step
	from, to int
	least    int64
	most     int64  // until to begins; 0 for any
	off      uint64 // covers that are off while it runs, and that its author puts back later
	later    uint64 // covers that its author takes off behind it
	bars     []int  // tasks that do not fill it
}

// span is the time in which one thing of the machine is not as it was: off, open, loose or
// empty. Others do not work at it then, and the machine does not run.
type span struct {
	input  int
	key    string // part/drain-plug, cavity/gearbox
	words  string
	first  *model.Step
	cavity bool
	valve  bool // it is closed first, and opened again
}

// opens are the verbs that begin a span, and closes those that end it: of a valve that is
// closed for the work it is the other way round.
func (s span) opens() []string {
	if s.valve {
		return []string{"close"}
	}
	return opening
}

func (s span) closes() []string {
	if s.valve {
		return []string{"open"}
	}
	return closing
}

var (
	opening = []string{"remove", "loosen", "open", "disconnect", "drain", "slacken"}
	closing = []string{"refit", "tighten", "close", "connect", "fill", "tension", "replace", "bleed"}
)

// thing is the key of a part or a cavity that a step is done to; empty for anything else.
func thing(object model.Object) string {
	switch {
	case object.Part != nil && !object.Part.Cover:
		return "part/" + object.Part.Name
	case object.Cavity != nil:
		return "cavity/" + object.Cavity.Name
	}
	return ""
}

// touched are the keys of what a step is about: its objects, what holds them, the plugs of a
// cavity, and what its words name.
func touched(job *model.Job, step *model.Step, spans []span) map[string]bool {
	out := map[string]bool{}
	for _, object := range step.Objects {
		if key := thing(object); key != "" {
			out[key] = true
		}
		if object.Part != nil {
			for _, name := range object.Part.HeldBy.Names() {
				out["part/"+name] = true
			}
		}
		if object.Limit != nil { // what holds a setting is tight when it is read
			for _, name := range object.Limit.HeldBy.Names() {
				out["part/"+name] = true
			}
		}
		if cavity := object.Cavity; cavity != nil {
			for _, plug := range []model.Text{cavity.Drain, cavity.Fill, cavity.Vent} {
				out["part/"+plug.Name()] = true
			}
		}
	}
	said := strings.ToLower(step.Told())
	for _, object := range step.Objects {
		said += " " + strings.ToLower(object.Words())
	}
	for _, one := range spans {
		if len(one.words) > 3 && strings.Contains(said, strings.ToLower(one.words)) {
			out[one.key] = true
		}
	}
	return out
}

// spansOf lists what a job takes apart, empties or slackens and puts right again.
func spansOf(input int, job *model.Job) []span {
	var out []span
	for _, step := range job.Steps {
		if kindOf(job, step) != work || !slices.Contains(opening, step.Verb.Key) && step.Verb.Key != "close" {
			continue
		}
		for _, object := range step.Objects {
			key := thing(object)
			if key != "" && !slices.ContainsFunc(out, func(one span) bool { return one.key == key }) {
				out = append(out, span{input: input, key: key, words: object.Words(), first: step, cavity: object.Cavity != nil, valve: step.Verb.Key == "close"})
			}
		}
	}
	return out
}

// runs reports whether the machine runs at a step, or moves by its own power.
func runs(step *model.Step) bool {
	return step.Verb.Key == "run" || step.Verb.Key == "start"
}

// setting is the state of the machine within one job.
type setting struct {
	cut, off, up uint64
	pose         int
}

// change takes a state step over; it is the author's own order.
func (m *machine) change(at *setting, job *model.Job, step *model.Step) {
	switch kindOf(job, step) {
	case cuts:
		for _, object := range step.Objects {
			at.cut |= 1 << index(&m.energies, object.Energy.Name)
		}
	case restores:
		for _, object := range step.Objects {
			at.cut &^= 1 << index(&m.energies, object.Energy.Name)
		}
		at.cut &^= m.follows
	case uncovers:
		for _, object := range step.Objects {
			at.off |= 1 << index(&m.covers, object.Part.Name)
		}
	case covers:
		for _, object := range step.Objects {
			at.off &^= 1 << index(&m.covers, object.Part.Name)
		}
	case raises:
		at.up |= 1 << index(&m.lifts, m.lifted(job, step))
	case lowers:
		at.up &^= 1 << index(&m.lifts, m.lifted(job, step))
	case turns:
		at.pose = index(&m.poses, step.Pose.Name())
	}
}

// tasksOf cuts the steps of a job into tasks and waits.
func (p *problem) tasksOf(input int, job *model.Job) {
	m := &p.machine
	at := setting{pose: p.resting} // who does not turn the machine wants it as it rests
	allEnergies, allCovers, allLifts := uint64(1)<<len(m.energies)-1, uint64(1)<<len(m.covers)-1, uint64(1)<<len(m.lifts)-1
	vessels, took := p.vessels(job), times(job)
	first := len(p.tasks)
	var open []int // waits whose gate is not found yet
	running, torn := false, true
	everCut := uint64(0)   // energies that its author cuts off before
	changed := false       // the machine was changed since the task before
	var held *model.Step   // a wait that nobody else may fill: what follows stays with the task before it
	var behind *model.Step // such a wait that no work has come behind yet, though the machine was changed
	for n, step := range job.Steps {
		p.seconds[step] = took[step]
		if kindOf(job, step) != work {
			m.change(&at, job, step)
			everCut |= at.cut
			torn, held, changed = true, nil, true
			continue
		}
		if step.Verb.Key == "wait" {
			p.seconds[step] = seconds(step.Wait)
		}
		if m.lingers[step] {
			torn, held = true, nil
			continue
		}
		after := step.Verb.Key == "wait" && changed && len(p.tasks) > first // it counts from that change, and nobody else comes between
		changed = false
		if held != nil && step.Meanwhile.On { // it takes of the wait, and not besides
			last := &p.tasks[len(p.tasks)-1]
			last.steps = append(last.steps, step)
			p.seconds[held] = max(0, p.seconds[held]-p.seconds[step])
			continue
		}
		if step.Verb.Key == "wait" && running && !after && len(p.tasks) > first { // it runs meanwhile, and somebody is with it
			last := &p.tasks[len(p.tasks)-1]
			last.steps = append(last.steps, step)
			continue
		}
		if step.Verb.Key == "wait" && !after && len(p.tasks) > first && len(open) == 0 && alone(step) {
			last := &p.tasks[len(p.tasks)-1]
			last.steps = append(last.steps, step)
			held, behind = step, step
			continue
		}
		if step.Verb.Key == "wait" && !after && len(p.tasks) > first {
			p.waits = append(p.waits, wait{input: input, step: step, from: len(p.tasks) - 1, to: -1, least: seconds(step.Wait), most: most(step), off: at.off})
			open, torn = append(open, len(p.waits)-1), true
			continue
		}
		runs := runs(step) || running
		goesOn := running && len(p.tasks) > first // also what is done while it runs by itself
		own := need{cut: at.cut, off: at.off, on: vessels &^ at.off, up: at.up, down: allLifts &^ at.up, pose: at.pose}
		if runs {
			own.live, own.on = allEnergies&^at.cut, allCovers&^at.off
		}
		if step.Section == "close" && slices.Contains(trying, step.Verb.Key) {
			own.live |= everCut &^ at.cut
		}
		gate := -1
		open = slices.DeleteFunc(open, func(w int) bool {
			over := !step.Meanwhile.On || slices.Contains(step.After(), job.Behind(p.waits[w].step)) // it has a gate of its own
			if over {
				p.waits[w].to, gate, torn = len(p.tasks), w, true
				p.waits[w].later = at.off &^ p.waits[w].off
			}
			return over
		})
		last := len(p.tasks) - 1
		alike := p.greasedToo(input, step)
		goesOn = goesOn || held != nil && p.tasks[last].need == own && !runs
		if !goesOn && (torn || p.wantsOthers(input, step) || alike || p.tasks[last].need != own || p.tasks[last].runs != runs || runs) {
			if behind != nil && most(behind) > 0 {
				p.over = append(p.over, wait{input: input, step: behind, from: last, to: last + 1, most: max(1, most(behind)-seconds(behind.Wait))})
			}
			p.tasks = append(p.tasks, task{input: input, need: own, runs: runs, gate: gate, within: -1})
			last, torn = len(p.tasks)-1, false
			if after {
				p.over = append(p.over, wait{input: input, step: step, from: last - 1, to: last, most: 1})
			}
		}
		held, behind = nil, nil
		if after {
			held, behind = step, step
		}
		p.tasks[last].steps = append(p.tasks[last].steps, step)
		torn = torn || !goesOn && alike
		switch step.Verb.Key {
		case "start", "run":
			running = runsOn(job.Steps[n+1:])
		case "stop":
			running = false
		default:
			running = running && runsOn(job.Steps[n+1:])
		}
	}
	p.final = append(p.final, at)
	p.gives = append(p.gives, slices.ContainsFunc(job.Steps, func(step *model.Step) bool { return kindOf(job, step) == restores }))
	for i := first; i < len(p.tasks); i++ {
		if i > first {
			p.before = append(p.before, [2]int{i - 1, i})
		}
		p.sum(&p.tasks[i])
	}
	p.waits = slices.DeleteFunc(p.waits, func(w wait) bool { return w.to < 0 && p.keepLast(w) })
}

// trying are verbs by which an author tries, closing up, what he has given back; words may say so
// too.
var trying = []string{"check", "inspect", "measure", "adjust", ""}

// most is how many seconds a wait may take at the most, 0 for any. The end of "15 to 20 min" is
// no such limit: it says how long it takes, and who means a limit writes most.
func most(step *model.Step) int64 {
	high, ends := step.Most.Max()
	if !step.Most.OK || !ends {
		return 0
	}
	return max(seconds(step.Wait), new(big.Int).Quo(high.Num(), high.Denom()).Int64())
}

// runsOn reports whether the machine still runs at the next steps: they are done meanwhile, or
// one of them stops it before anything else is done with it.
func runsOn(next []*model.Step) bool {
	for _, step := range next {
		switch step.Verb.Key {
		case "stop":
			return true
		case "inspect", "check", "measure", "record", "adjust", "mark", "wait", "":
			if step.Meanwhile.On {
				return true
			}
		default:
			return step.Meanwhile.On
		}
	}
	return false
}

// alone reports whether a wait is to be waited out, and not filled by others: what must hold
// meanwhile leaves nobody free.
func alone(step *model.Step) bool {
	return step.Watched()
}

// sum adds up what a task takes, and what hands are at.
func (p *problem) sum(one *task) {
	at := hands{}
	for i, step := range one.steps {
		took := p.hands(one.input, step)
		lost := int64(0)
		if took.tool != "" && took.tool != at.tool {
			if at.tool != "" {
				lost += toolSeconds
				one.tools++
			} else {
				one.first.tool = took.tool
			}
			at.tool = took.tool
		}
		if took.fluid != "" && took.fluid != at.fluid {
			if at.fluid != "" {
				lost += fluidSeconds
			} else {
				one.first.fluid = took.fluid
			}
			at.fluid = took.fluid
		}
		if i == 0 {
			lost = 0
		}
		one.lead = append(one.lead, lost)
		one.time += lost + p.seconds[step]
	}
	one.last = at
}

// vessels are the covers of a job that guard against no energy: what they close is a vessel or
// a housing, and where their author has one on it is to be on.
func (p *problem) vessels(job *model.Job) uint64 {
	var out uint64
	for _, step := range job.Steps {
		for _, object := range step.Objects {
			if kindOf(job, step) == uncovers && len(object.Part.Guards.Names()) == 0 {
				out |= 1 << index(&p.machine.covers, object.Part.Name)
			}
		}
	}
	return out
}

// keepLast makes a wait that nothing comes after a part of the task before it, since nobody
// else can fill it.
func (p *problem) keepLast(w wait) bool {
	one := &p.tasks[w.from]
	one.time += w.least
	one.steps, one.lead = append(one.steps, w.step), append(one.lead, 0)
	return true
}
