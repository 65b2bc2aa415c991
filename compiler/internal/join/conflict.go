package join

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/sequence"
	"benchleaf/compiler/internal/state"
)

// mostThings is how many energies, covers, raised things and spans there may be of each: a bit
// for each stands in a word.
const mostThings = 63

// crowded says that a machine has more to it than can be planned; nil where it has not.
func (p *problem) crowded() error {
	of := func(acts ...[][]act) (first, last step) {
		for _, list := range acts {
			for i, some := range list {
				if len(some) > 0 && first.Step == nil {
					first = step{some[0].input, some[0].step}
				}
				if len(some) > 0 && i >= mostThings {
					return first, step{some[0].input, some[0].step}
				}
			}
		}
		return first, first
	}
	m := &p.machine
	for _, one := range []struct {
		n     int
		words string
		acts  [][][]act
	}{{len(m.energies), "energies are cut off", [][][]act{m.cut, m.back}}, {len(m.covers), "covers come off", [][][]act{m.off, m.on}}, {len(m.lifts), "things are raised", [][][]act{m.up, m.down}}} {
		if one.n > mostThings {
			first, last := of(one.acts...)
			return p.conflict(fmt.Sprintf("%d %s, and at most %d can be planned: the first at %s, and one too many at %s", one.n, one.words, mostThings, p.named(first), p.named(last)), fewer, first, last)
		}
	}
	if n := len(p.spans); n > mostThings {
		first, last := step{p.spans[0].input, p.spans[0].first}, step{p.spans[mostThings].input, p.spans[mostThings].first}
		return p.conflict(fmt.Sprintf("%d parts come off or loose, and at most %d can be planned: the first at %s, and one too many at %s", n, mostThings, p.named(first), p.named(last)), fewer, first, last)
	}
	return nil
}

const fewer = "Join fewer procedures."

// leftOpen says that an author leaves the machine otherwise than it was, cut off or open: a job out of
// several is closed up as the machine was, and his last steps would be lost in it. Nil where none
// does, or where there is one procedure only.
func (p *problem) leftOpen() error {
	if len(p.inputs) < 2 {
		return nil
	}
	m := &p.machine
	for input, at := range p.final {
		cut := at.cut
		if p.gives[input] {
			cut &^= m.follows
		}
		var things []string
		var last []step
		job := p.inputs[input].Job
		leave := func(bits uint64, names []string, how string, k kind) {
			for i, name := range names {
				if bits&(1<<i) == 0 {
					continue
				}
				said, _, _ := strings.Cut(name, mark)
				for _, one := range slices.Backward(job.Steps) {
					at := slices.IndexFunc(one.Objects, func(o model.Object) bool {
						return o.Energy != nil && o.Energy.Name == name || o.Part != nil && o.Part.Name == name || o.Words() == said
					})
					if kindOf(job, one) == k && at >= 0 {
						said, last = one.Objects[at].Words(), append(last, step{input, one})
						break
					}
				}
				things = append(things, said+" "+how)
			}
		}
		leave(cut, m.energies, "cut off", cuts)
		leave(at.off, m.covers, "off", uncovers)
		leave(at.up, m.lifts, "raised", raises)
		if len(things) == 0 {
			continue
		}
		for other, one := range p.inputs {
			if other != input && len(one.Job.Steps) > 0 {
				last = append(last, step{other, one.Job.Steps[len(one.Job.Steps)-1]})
				break
			}
		}
		return p.conflict(fmt.Sprintf("%s leaves the %s at its end, and a job out of several is closed up as the machine was before", p.name(input), strings.Join(things, ", the ")), "Do it by its own card, behind the others.", last...)
	}
	return nil
}

// step is a step of one of the procedures.
type step struct {
	input int
	*model.Step
}

// name is the short name of a procedure.
func (p *problem) name(input int) string { return p.inputs[input].Job.File.Name() }

// named is a step as its author counts it.
func (p *problem) named(one step) string {
	return fmt.Sprintf("step %d of %s", one.Number, p.name(one.input))
}

// conflict is why there is no order, with the steps that its text names, each once.
func (p *problem) conflict(text, help string, steps ...step) *Conflict {
	out := &Conflict{Text: text, Help: help}
	var all []*model.Step
	for _, one := range steps {
		if one.Step != nil && !slices.Contains(all, one.Step) {
			all = append(all, one.Step)
		}
	}
	for i, one := range all {
		switch i {
		case 0:
			out.One = one
		case 1:
			out.Other = one
		default:
			out.More = append(out.More, one)
		}
	}
	return out
}

// block is why a task cannot be done yet: it waits for another procedure, or for its own.
type block struct {
	by    int // the procedure that it waits for
	text  string
	help  string // what the author of the task that waits may do
	steps []step
}

// explain names the steps that fight.
func (p *problem) explain(fight *sequence.Conflict) error {
	if blocks := p.ring(fight.Tasks); len(blocks) > 0 {
		return p.fought(blocks)
	}
	heads := p.heads(fight.Tasks)
	seen := map[int]bool{}
	var blocks []block
	for input := range p.inputs {
		if _, left := heads[input]; !left || len(blocks) > 0 {
			continue
		}
		var way []int
		clear(seen)
		for at := input; ; {
			head, left := heads[at]
			if !left {
				break
			}
			found := p.blocked(head, heads)
			if found == nil {
				break
			}
			if seen[at] { // it leads round: what stands before the circle is no part of it
				blocks = blocks[slices.Index(way, at):]
				return p.fought(blocks)
			}
			seen[at], way, blocks = true, append(way, at), append(blocks, *found)
			at = found.by
		}
		blocks = nil
	}
	var left []step
	for input := range p.inputs {
		if head, has := heads[input]; has {
			left = append(left, step{input, p.tasks[head].steps[0]})
		}
	}
	for _, t := range fight.Tasks[:min(len(fight.Tasks), 1)] {
		if len(left) == 0 {
			left = append(left, step{p.tasks[t].input, p.tasks[t].steps[0]})
		}
	}
	names := make([]string, len(left))
	for i, one := range left {
		names[i] = p.named(one)
	}
	return p.conflict("no order was found; it goes as far as "+strings.Join(names, " and "), "Join fewer procedures, or do these one after the other.", left...)
}

// heads are the first tasks that are left of each procedure. Where the search names only one
// of them, it is seen how far the tasks go, one after another.
func (p *problem) heads(left []int) map[int]int {
	out := map[int]int{}
	for t := len(p.tasks) - 1; t >= 0; t-- {
		if len(left) < 2 || slices.Contains(left, t) {
			out[p.tasks[t].input] = t
		}
	}
	for on := len(left) < 2; on; {
		on = false
		for input, head := range p.first(out) {
			if head < 0 || p.blocked(head, out) != nil {
				continue
			}
			on = true
			if delete(out, input); head+1 < len(p.tasks) && p.tasks[head+1].input == input {
				out[input] = head + 1
			}
		}
	}
	return out
}

// first are heads by their procedures, -1 where nothing is left.
func (p *problem) first(heads map[int]int) []int {
	out := make([]int, len(p.inputs))
	for input := range out {
		out[input] = -1
		if head, has := heads[input]; has {
			out[input] = head
		}
	}
	return out
}

// fought puts what keeps tasks from each other into words.
func (p *problem) fought(blocks []block) error {
	var texts, helps []string
	var steps []step
	for _, one := range blocks {
		texts, steps = append(texts, one.text), append(steps, one.steps...)
		if one.help != "" && !slices.Contains(helps, one.help) {
			helps = append(helps, one.help)
		}
	}
	if len(blocks) > 1 {
		helps = append([]string{"Do them one after the other, each by its own card."}, helps...)
	}
	return p.conflict(strings.Join(texts, "; "), strings.Join(helps, " "), steps...)
}

// ring are the blocks of tasks each of which comes before the next, and the last before the
// first; none where they are no such ring.
func (p *problem) ring(tasks []int) []block {
	var out []block
	for i, from := range tasks {
		to := tasks[(i+1)%len(tasks)]
		if !slices.Contains(p.before, [2]int{from, to}) && !slices.ContainsFunc(p.waits, func(w wait) bool { return w.from == from && w.to == to }) {
			return nil
		}
		if found := p.waitsFor(from, to); found != nil {
			out = append(out, *found)
		}
	}
	return out
}

// waitsFor is why a task comes behind one of another procedure; nil where it does not.
func (p *problem) waitsFor(from, to int) *block {
	for _, one := range p.anews {
		if one.before != from || one.after != to {
			continue
		}
		does := "measures"
		if state.Sets(one.sets, one.limit) {
			does = "sets"
		}
		sets, renews := step{p.tasks[to].input, one.sets}, step{p.tasks[from].input, one.renews}
		return &block{by: renews.input, steps: []step{sets, renews},
			text: fmt.Sprintf("%s %s the %s, and wants to come after %s, which puts the %s on or tight", p.named(sets), does, one.limit.Words(), p.named(renews), one.part.Words()),
			help: fmt.Sprintf("Where the %s does not hang on the %s, take it out of anew-after.", one.limit.Words(), one.part.Words())}
	}
	return nil
}

// blocked is what keeps a task that is the next of its procedure from being done; nil for
// nothing.
func (p *problem) blocked(t int, heads map[int]int) *block {
	one := &p.tasks[t]
	for _, pair := range p.before {
		if from := pair[0]; pair[1] == t && p.tasks[from].input != one.input && p.left(from, heads) {
			if found := p.waitsFor(from, t); found != nil {
				return found
			}
		}
	}
	for s, span := range p.spans {
		if until, open := p.open(s, heads); open && one.bars&(1<<s) != 0 {
			return p.barred(one, span, until)
		}
	}
	for s, span := range p.spans {
		if until, open := p.open(s, heads); open && span.cavity && (one.need.pose >= 0 || one.need.up != 0 || one.need.down != 0) {
			moves, holds := step{one.input, one.steps[0]}, step{span.input, span.first}
			return &block{by: span.input, steps: []step{moves, holds, until},
				text: fmt.Sprintf("for %s the machine is raised, let down or turned, and from %s to %s the %s is %s", p.named(moves), p.named(holds), p.named(until), span.words, how(span)),
				help: fmt.Sprintf("Write the steps that fill the %s again, or close it, before it is moved.", span.words)}
		}
	}
	return nil
}

// barred is that a task works at what another procedure has off, or runs the machine.
func (p *problem) barred(one *task, span span, until step) *block {
	at := step{one.input, one.steps[0]}
	does := "sets the machine going"
	if !one.runs {
		does = "works at it"
		for _, s := range one.steps {
			if touched(p.inputs[one.input].Job, s, p.spans)[span.key] {
				at.Step = s
				break
			}
		}
	}
	holds := step{span.input, span.first}
	return &block{by: span.input, steps: []step{at, holds, until},
		text: fmt.Sprintf("from %s to %s the %s is %s, and %s %s", p.named(holds), p.named(until), span.words, how(span), p.named(at), does)}
}

// how is the state that a thing is in while it is in a span.
func how(one span) string {
	switch one.first.Verb.Key {
	case "loosen":
		return "loose"
	case "open":
		return "open"
	case "disconnect":
		return "apart"
	case "drain":
		return "empty"
	case "slacken":
		return "slack"
	case "close":
		return "shut"
	}
	return "off"
}

// left reports whether a task is not done when these are the next of their procedures.
func (p *problem) left(t int, heads map[int]int) bool {
	head, has := heads[p.tasks[t].input]
	return has && t >= head
}

// open reports whether a span is open when these tasks are the next of their procedures, and
// the step that ends it.
func (p *problem) open(s int, heads map[int]int) (until step, open bool) {
	bit := uint64(1) << s
	for t := range p.tasks {
		one := &p.tasks[t]
		if one.input != p.spans[s].input {
			continue
		}
		if p.left(t, heads) {
			if open && one.closes&bit != 0 {
				return step{one.input, p.ends(one, p.spans[s])}, true
			}
			continue
		}
		open = (open || one.opens&bit != 0) && one.closes&bit == 0
	}
	return step{}, false
}

// ends is the step of a task that ends a span.
func (p *problem) ends(one *task, of span) *model.Step {
	last := one.steps[len(one.steps)-1]
	for _, s := range one.steps {
		if slices.Contains(of.closes(), s.Verb.Key) && slices.ContainsFunc(s.Objects, func(o model.Object) bool { return thing(o) == of.key }) {
			last = s
		}
	}
	return last
}
