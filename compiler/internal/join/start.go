package join

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

// condition is what must hold before the first step, as far as it can be read: "the blade is
// off".
var condition = pattern.MustCompile(`(?i)\b(?:the|an?|no|both|all|its) ([\p{L}\d -]+?) (?:is|are|has|have|hangs?|stands?|lies?) (off|on|out|in|open|shut|closed|cold|warm|hot|empty|full|up|down|raised|lowered|running|stopped)\b([^.;]*)`)

// short is such a condition without a verb: "Gearbox warm from running".
var short = pattern.MustCompile(`(?i)^(?:the )?([\p{L}\d -]+?) (open|shut|closed|cold|warm|hot|empty|full|raised|lowered|running|stopped)\b([^.;]*)`)

// places are words that tell of a state only where nothing follows them.
var places = []string{"on", "off", "in", "out", "up", "down"}

// fights are words of which one keeps the other from being true.
var fights = [][2][]string{
	{{"off", "out"}, {"on", "in"}}, {{"open"}, {"shut", "closed"}}, {{"cold"}, {"warm", "hot"}}, {{"empty"}, {"full"}}, {{"up", "raised"}, {"down", "lowered"}}, {{"running"}, {"stopped"}},
}

type said struct {
	input    int
	text     model.Text
	of, word string
}

// conditions are those of the start that can be read. What leaves a choice ("off or slack") is
// let be; it prints as it is written.
func conditions(inputs []Input) (all []said) {
	for i, input := range inputs {
		for _, text := range input.Job.Procedure.Start.Items {
			for _, found := range append(condition.FindAllStringSubmatch(text.Text, -1), short.FindAllStringSubmatch(text.Text, 1)...) {
				rest := strings.TrimSpace(found[3])
				if strings.Contains(found[3], " or ") || slices.Contains(places, strings.ToLower(found[2])) && rest != "" && !strings.HasPrefix(rest, ",") && !strings.HasPrefix(rest, "and ") {
					continue // "on level ground" is no state
				}
				words := strings.Fields(strings.ToLower(found[1]))
				all = append(all, said{i, text, words[len(words)-1], strings.ToLower(found[2])})
			}
		}
	}
	return all
}

// coldFirst puts the work of a procedure that wants something cold before the runs of others, up
// to a run of its own.
func (p *problem) coldFirst() {
	for _, one := range conditions(p.inputs) {
		if one.word != "cold" {
			continue
		}
		last := -1
		for t := range p.tasks {
			if p.tasks[t].input == one.input && p.tasks[t].runs {
				break
			}
			if p.tasks[t].input == one.input {
				last = t
			}
		}
		for t := range p.tasks {
			if last >= 0 && p.tasks[t].input != one.input && p.tasks[t].runs {
				p.before = append(p.before, [2]int{last, t})
			}
		}
	}
}

// starts finds two conditions of the start that cannot both be true.
func starts(inputs []Input) *Conflict {
	all := conditions(inputs)
	for i, one := range all {
		for _, other := range all[i+1:] {
			if one.input == other.input || one.of != other.of || !against(one.word, other.word) {
				continue
			}
			return &Conflict{Start: one.text, Than: other.text,
				Help: "Do them one after the other, each when what it begins with is so; or take the condition out of start where the work does not need it.",
				Text: fmt.Sprintf("%s begins with %q, and %s with %q", inputs[one.input].Job.File.Name(), one.text.Text, inputs[other.input].Job.File.Name(), other.text.Text)}
		}
	}
	return nil
}

func against(one, other string) bool {
	for _, pair := range fights {
		if slices.Contains(pair[0], one) && slices.Contains(pair[1], other) || slices.Contains(pair[1], one) && slices.Contains(pair[0], other) {
			return true
		}
	}
	return false
}
