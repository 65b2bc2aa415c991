package compose

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/join"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
)

// JoinWords are the words of a joined procedure in a language.
func JoinWords(words plan.Words) join.Words {
	l := words.Labels
	name := func(symbol string) string {
		if said := words.Units[symbol]; said != "" {
			return said
		}
		return symbol
	}
	return join.Words{Title: l.JoinTitle, Summary: l.JoinSummary, Proved: l.JoinProved, Bounded: l.JoinBounded, When: l.JoinWhen, Locked: l.JoinLocked, Off: l.JoinOff,
		Up: l.JoinUp, Whole: l.JoinWhole, Gate: l.JoinGate, Between: l.JoinBetween, Cuts: l.JoinCuts, Covers: l.JoinCovers, Turns: l.JoinTurns, Fill: l.JoinFill, FillOne: l.JoinFillOne, Why: l.JoinWhy, Held: l.JoinHeld, Locks: l.JoinLocks, Clear: l.JoinClear, Unlock: l.JoinUnlock, Hours: name("h"), Minutes: name("min"), Together: " · "}
}

// Timeline draws a joined job over its time: each procedure, what makes the machine ready, what
// waits, and what the machine is set to.
func Timeline(made *join.Plan, words plan.Words) *plan.Timeline {
	l := words.Labels
	out := &plan.Timeline{Title: l.JoinTime, Length: made.Length}
	ready := plan.TimelineRow{Label: l.JoinReady, Kind: "change"}
	rows := make([]plan.TimelineRow, len(made.Inputs))
	for i, input := range made.Inputs {
		rows[i] = plan.TimelineRow{Label: model.Letter(i) + " " + input.Job.Procedure.Title.Text, Kind: "work"}
	}
	people := make([]plan.TimelineRow, made.Workers)
	for n := range people {
		people[n] = plan.TimelineRow{Label: strings.ReplaceAll(l.JoinPerson, "{n}", strconv.Itoa(n+1)), Kind: "work"}
	}
	set := map[string]int{}
	var states []plan.TimelineRow
	for d, deed := range made.Deeds {
		bar := plan.TimelineBar{From: deed.Start, To: deed.Start + deed.Seconds}
		if deed.Change {
			extend(&ready, bar)
		} else {
			extend(&rows[deed.Input], bar)
		}
		for n := range people {
			if deed.Worker == n+1 || deed.Worker == 0 {
				extend(&people[n], bar)
			}
		}
		until := made.Length
		if d+1 < len(made.Deeds) {
			until = made.Deeds[d+1].Start
		}
		job := made.Inputs[0].Job
		for _, name := range deed.State.Cut {
			if energy := job.Energy(name); energy != nil {
				states = stretch(states, set, strings.ReplaceAll(l.JoinLocked, "{things}", energy.Words()), deed.Start, until)
			}
		}
		for _, name := range deed.State.Off {
			if part := job.Part(name); part != nil {
				states = stretch(states, set, strings.ReplaceAll(l.JoinOff, "{things}", part.Words()), deed.Start, until)
			}
		}
		for _, name := range deed.State.Up {
			states = stretch(states, set, strings.ReplaceAll(l.JoinUp, "{things}", name), deed.Start, until)
		}
		if pose := job.Pose(deed.State.Pose); pose != nil {
			states = stretch(states, set, pose.Words(), deed.Start, until)
		}
	}
	out.Rows = append(append(people, ready), rows...)
	for _, wait := range made.Waits {
		from := made.Deeds[wait.From].Start + made.Deeds[wait.From].Seconds
		out.Rows = append(out.Rows, plan.TimelineRow{Label: l.JoinWait + " (" + model.Letter(wait.Input) + ")", Kind: "wait", Bars: []plan.TimelineBar{{From: from, To: from + wait.Least}}})
	}
	for i := range states {
		states[i].Label = upper(states[i].Label)
	}
	out.Rows = append(out.Rows, states...)
	return out
}

// extend adds a bar, or makes the last one longer where it goes on.
func extend(row *plan.TimelineRow, bar plan.TimelineBar) {
	if n := len(row.Bars); n > 0 && row.Bars[n-1].To == bar.From {
		row.Bars[n-1].To = bar.To
		return
	}
	row.Bars = append(row.Bars, bar)
}

// stretch makes the row of a state longer.
func stretch(rows []plan.TimelineRow, index map[string]int, label string, from, to int64) []plan.TimelineRow {
	at, known := index[label]
	if !known {
		at, rows = len(rows), append(rows, plan.TimelineRow{Label: label, Kind: "state"})
		index[label] = at
	}
	extend(&rows[at], plan.TimelineBar{From: from, To: to})
	return rows
}

// JoinedSteps lists the steps of a joined job with their times, waits behind the step they
// begin with.
func JoinedSteps(made *join.Plan, words join.Words) []plan.JoinedStep {
	var out []plan.JoinedStep
	whose := func(input int, step *model.Step) string {
		return fmt.Sprintf("%s %d", made.Inputs[input].Job.File.Name(), step.Number)
	}
	for d, deed := range made.Deeds {
		one := plan.JoinedStep{Number: len(out) + 1, Start: deed.Start, Seconds: deed.Seconds, Words: said(deed.Step), Ready: deed.Change, Person: deed.Worker, Setting: made.Told(deed.State, words)}
		one.Whose = []string{whose(deed.Input, deed.Step)}
		for _, also := range deed.Also {
			for i, input := range made.Inputs {
				if slices.Contains(input.Job.Steps, also) {
					one.Whose = append(one.Whose, whose(i, also))
				}
			}
		}
		out = append(out, one)
		for _, wait := range made.Waits {
			if wait.From == d {
				out = append(out, plan.JoinedStep{Number: len(out) + 1, Start: deed.Start + deed.Seconds, Seconds: wait.Least, Whose: []string{whose(wait.Input, wait.Step)},
					Words: said(wait.Step), Wait: true, Setting: one.Setting})
			}
		}
	}
	return out
}

// said is a step in the author's words: its verb and what it is about, or its sentence.
func said(step *model.Step) string {
	if step.Verb.Key == "" {
		return step.Say.Text
	}
	var objects []string
	for _, object := range step.Objects {
		objects = append(objects, object.Words())
	}
	if step.Verb.Key == "wait" {
		objects = []string{step.Wait.Text.Text}
	}
	return step.Verb.Key + " " + strings.Join(objects, ", ")
}
