package join

import (
	"cmp"
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
)

// share lets one run do for several: the last of them that are alike, by what runs and by what
// the machine has to be set to, is done once, for the longest of their times, behind the work
// of all. What several grease alike is greased once, behind what each does before it and ahead
// of what each does after it.
func (p *problem) share() {
	for t := range p.tasks {
		deed := p.alike(&p.tasks[t])
		if p.tasks[t].within >= 0 || deed == "" {
			continue
		}
		alike := []int{t}
		for other := t + 1; other < len(p.tasks); other++ {
			if one := &p.tasks[other]; one.within < 0 && one.input != p.tasks[t].input && p.alike(one) == deed && one.need == p.tasks[t].need &&
				!slices.ContainsFunc(alike, func(a int) bool { return p.tasks[a].input == one.input }) {
				alike = append(alike, other)
			}
		}
		longest := t
		for _, a := range alike {
			if p.tasks[a].time > p.tasks[longest].time {
				longest = a
			}
		}
		for _, a := range alike {
			if a != longest {
				p.shareOne(longest, a)
			}
		}
	}
}

// shareOne lets a task do the work of another, if no order of the two forbids it.
func (p *problem) shareOne(does, left int) {
	before := slices.Clone(p.before)
	before = append(before, [2]int{does, left})
	if left > 0 && p.tasks[left-1].input == p.tasks[left].input {
		before = append(before, [2]int{left - 1, does})
	}
	if circles(len(p.tasks), before) {
		return
	}
	p.before = before
	p.tasks[left].within, p.tasks[left].time = does, 0
	p.tasks[does].also = append(p.tasks[does].also, left)
}

// alike is what a task does that one of several may do for all; empty for any other.
func (p *problem) alike(one *task) string {
	if deed := tried(one); deed != "" {
		return deed
	}
	if len(one.steps) == 1 && one.gate < 0 && p.greasedToo(one.input, one.steps[0]) {
		return greased(one.steps[0])
	}
	return ""
}

// greased is what a step greases, with what and how much of it; empty for a step that greases
// nothing, or that says by its reading or its record whose it is.
func greased(step *model.Step) string {
	if !slices.Contains([]string{"grease", "lubricate"}, step.Verb.Key) || step.Reading.Set() || step.Meanwhile.On {
		return ""
	}
	words := []string{step.Verb.Key}
	for _, object := range step.Objects {
		words = append(words, strings.ToLower(cmp.Or(object.Key(), object.Words())))
	}
	for _, key := range []string{"fluid", "amount", "until", "count", "supplies"} {
		if entry := step.Table.Get(key); entry != nil {
			words = append(words, key+" "+valueText(step.File.Source, entry.Value))
		}
	}
	return strings.Join(words, ", ")
}

// greasedToo reports whether another procedure greases the same as a step does.
func (p *problem) greasedToo(input int, step *model.Step) bool {
	deed := greased(step)
	for other := range p.inputs {
		if deed != "" && other != input && slices.ContainsFunc(p.inputs[other].Job.Steps, func(step *model.Step) bool { return greased(step) == deed }) {
			return true
		}
	}
	return false
}

// tried is what runs in a task that is nothing but one run at the end of its procedure; empty
// for any other.
func tried(one *task) string {
	if len(one.steps) != 1 || !one.runs || one.gate >= 0 {
		return ""
	}
	step := one.steps[0]
	if step.Verb.Key != "run" || step.Section != "close" || step.Reading.Set() || step.Until.Set() || step.Most.Set() || step.Say.Set() {
		return ""
	}
	words := make([]string, len(step.Objects))
	for i, object := range step.Objects {
		words[i] = strings.ToLower(object.Words())
	}
	return strings.Join(words, ", ")
}

// circles reports whether pairs of tasks, each before the other, lead round in a circle.
func circles(n int, before [][2]int) bool {
	waits := make([]int, n)
	next := make([][]int, n)
	for _, pair := range before {
		waits[pair[1]]++
		next[pair[0]] = append(next[pair[0]], pair[1])
	}
	var free []int
	for t, count := range waits {
		if count == 0 {
			free = append(free, t)
		}
	}
	done := 0
	for ; len(free) > 0; done++ {
		t := free[len(free)-1]
		free = free[:len(free)-1]
		for _, after := range next[t] {
			if waits[after]--; waits[after] == 0 {
				free = append(free, after)
			}
		}
	}
	return done < n
}

// shared are the steps of the tasks that one does the work of.
func (p *problem) shared(one *task) []*model.Step {
	var out []*model.Step
	for _, t := range one.also {
		out = append(out, p.tasks[t].steps...)
	}
	return out
}
