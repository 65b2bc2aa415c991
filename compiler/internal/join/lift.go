package join

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
)

// rise is a way to raise one thing: what is said of it, by what it is about. Two ways that say
// different things of the same are two: who wants stands under the axle does not find them under
// the frame, and nobody works out a third way from both. It is let down in between then, and
// raised the other way. What only one of the two says is no difference, and words are not judged.
type rise map[string]string

// mark parts the name of what is raised from the number of the way, where there are several.
const mark = "\x00"

// riseOf is the way that a step raises something, with what supports it then.
func riseOf(job *model.Job, raise *model.Step) rise {
	out := rise{}
	put := func(about, text string) {
		if text != "" {
			out[about] += text + "\n"
		}
	}
	for _, step := range job.Steps[raise.Number-1:] {
		if step != raise && step.Verb.Key != "support" {
			if step.Verb.Key == "raise" || step.Verb.Key == "lower" {
				break
			}
			continue
		}
		if step != raise {
			for _, object := range step.Objects {
				put("where", strings.ToLower(object.Words()))
			}
		}
		tools := slices.Clone(step.Tools.Names())
		slices.Sort(tools)
		put(step.Verb.Key+" with", strings.Join(tools, " "))
		put("pose", step.Pose.Name())
		put("to", step.SetTo.Text.Text+step.Limit.Text.Text)
	}
	return out
}

// like reports whether two ways to raise something can be one.
func (r rise) like(other rise) bool {
	for about, text := range r {
		if said := other[about]; said != "" && said != text {
			return false
		}
	}
	return true
}

// learnLifts finds the ways in which a job raises things: each is that of a job before it, if it
// is like all that were found to be.
func (m *machine) learnLifts(job *model.Job) {
	if m.rises == nil {
		m.rises, m.lift = map[string][]rise{}, map[*model.Step]string{}
	}
	for _, step := range job.Steps {
		if step.Verb.Key != "raise" || len(step.Objects) == 0 {
			continue
		}
		name, own := step.Objects[0].Words(), riseOf(job, step)
		at := slices.IndexFunc(m.rises[name], own.like)
		if at < 0 {
			at = len(m.rises[name])
			m.rises[name] = append(m.rises[name], rise{})
		}
		for about, text := range own {
			m.rises[name][at][about] = text
		}
		if at > 0 {
			name += fmt.Sprint(mark, at)
		}
		m.lift[step] = name
	}
}

// lifted is the name under which something is raised and let down: one for a job at a time,
// since authors call it differently when it comes down.
func (m *machine) lifted(job *model.Job, step *model.Step) string {
	name := ""
	for _, other := range job.Steps[:step.Number] {
		if other.Verb.Key == "raise" && len(other.Objects) > 0 {
			name = m.lift[other]
		}
	}
	return name
}

// called are names of what is raised as they are said.
func (m *machine) called(names []string) []string {
	for i, name := range names {
		names[i], _, _ = strings.Cut(name, mark)
	}
	return names
}
