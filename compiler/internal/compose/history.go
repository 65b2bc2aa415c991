package compose

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/standing"
)

// History puts into words what a service book tells of one machine up to a day. works are its
// jobs, at least one; entries are those of the machine in the order of the book, with the
// numbers of those that a later one stands for. It is an error when the shop's language has no
// words.
func History(works []Work, unit standing.Unit, entries []entry.Entry, put map[int]bool, on string, system quantity.System) (plan.History, error) {
	w, err := newWriter(works[0], system)
	if err != nil {
		return plan.History{}, err
	}
	labels := w.words.Labels
	out := plan.History{Words: w.words, Machine: unit.Title, To: on, Entries: Entries(works, entries, put)}
	if shop := works[0].Job.Shop; shop != nil {
		out.Shop = shop.Title.Text
	}
	out.Done = plan.Table{Key: "done", Title: labels.HistoryDone, Columns: []string{labels.Date, labels.Hours, labels.Procedure, labels.Revision, labels.Who, labels.Remarks}}
	out.Open = plan.Table{Key: "open", Title: labels.HistoryOpen, Columns: []string{labels.Date, labels.Procedure, labels.Step, labels.Note}}
	last := ""
	for i, e := range dayByDay(entries) {
		one := out.Entries[i]
		if one.Put {
			continue
		}
		out.From = cmp.Or(out.From, one.Date)
		last = cmp.Or(one.NewMeter, one.Meter, last)
		if e.Procedure == "" && e.NewMeter == "" && e.Remarks == "" {
			continue // a meter that was read
		}
		remarks := []string{e.Remarks}
		if e.NewMeter != "" {
			remarks = append(remarks, labels.NewMeter+" "+e.NewMeter)
		}
		if n := len(e.Open); n > 0 && e.Procedure != "" {
			remarks = append(remarks, strings.ReplaceAll(labels.NotFinished, "{n}", strconv.Itoa(n)))
		}
		if n := len(e.LeftOut); n > 0 {
			remarks = append(remarks, strings.ReplaceAll(labels.StepsLeftOut, "{n}", strconv.Itoa(n)))
		}
		if len(one.Outside) > 0 {
			remarks = append(remarks, labels.Outside+labels.Colon+" "+strings.Join(one.Outside, ", "))
		}
		out.Done.Rows = append(out.Done.Rows, plan.Row{Cells: []string{one.Date, one.Meter, one.Title, one.Revision, one.Who, joinedTexts(remarks)}})
		for _, row := range undone(e, labels.NotDone) {
			out.Open.Rows = append(out.Open.Rows, plan.Row{Cells: append([]string{one.Date, one.Title}, row...)})
		}
	}
	facts := []plan.Fact{{Label: labels.Serial, Text: unit.Serial}, {Label: labels.Variant, Text: unit.Version}, {Label: labels.InService, Text: dayText(unit)}, {Label: labels.Hours, Text: last}, {Label: labels.Manual, Text: ""}}
	if machine := works[0].Job.Machine; machine != nil {
		facts[len(facts)-1].Text = machine.Manual.Text
	}
	for _, fact := range facts {
		if fact.Text != "" {
			out.Facts = append(out.Facts, fact)
		}
	}
	out.Done, out.Open = saying(out.Done), saying(out.Open)
	return out, nil
}

// dayByDay are entries by day, those of one day as they stand in the book.
func dayByDay(entries []entry.Entry) []entry.Entry {
	out := slices.Clone(entries)
	slices.SortStableFunc(out, func(a, b entry.Entry) int { return cmp.Compare(a.Date, b.Date) })
	return out
}

// Entries are entries of a service book for other programs, by day. works tell the titles of
// their procedures; put has the numbers of those that a later one stands for.
func Entries(works []Work, entries []entry.Entry, put map[int]bool) []plan.HistoryEntry {
	titles := map[string]string{}
	for _, work := range works {
		titles[work.Job.File.Name()] = work.Job.Procedure.Title.Text
	}
	moved := func(list []entry.Moved) (out []string) {
		for _, one := range list {
			out = append(out, one.What+" "+one.Amount)
		}
		return out
	}
	var out []plan.HistoryEntry
	for _, e := range dayByDay(entries) {
		one := plan.HistoryEntry{Number: e.Number, Date: string(e.Date), Unit: cmp.Or(e.Unit, e.Machine), Procedure: e.Procedure, Title: cmp.Or(titles[e.Procedure], e.Procedure), Revision: e.Revision,
			Meter: e.Meter, NewMeter: e.NewMeter, Who: e.Who, Done: len(e.Done), Remarks: e.Remarks, Corrects: e.Corrects, Put: put[e.Number], Used: moved(e.Used), Received: moved(e.Received)}
		for _, left := range e.LeftOut {
			one.LeftOut = append(one.LeftOut, strings.TrimSuffix(fmt.Sprintf("%d: %s", left.Step, left.Why), ": "))
		}
		for _, step := range e.Open {
			one.Open = append(one.Open, strconv.Itoa(step))
		}
		for _, reading := range e.Readings {
			said := reading.What + " " + reading.Value
			one.Readings = append(one.Readings, said)
			if reading.Outside {
				one.Outside = append(one.Outside, said)
			}
		}
		out = append(out, one)
	}
	return out
}

// undone are the steps that were left out or open, and why: steps in a row for one reason together.
func undone(e entry.Entry, open string) [][]string {
	left := slices.Clone(e.LeftOut)
	for _, step := range e.Open {
		left = append(left, entry.LeftOut{Step: step, Why: open})
	}
	slices.SortStableFunc(left, func(a, b entry.LeftOut) int { return a.Step - b.Step })
	var out [][]string
	for i := 0; i < len(left); {
		end := i + 1
		for end < len(left) && left[end].Why == left[i].Why && left[end].Step == left[end-1].Step+1 {
			end++
		}
		steps := strconv.Itoa(left[i].Step)
		if end > i+1 {
			steps += "–" + strconv.Itoa(left[end-1].Step)
		}
		out = append(out, []string{steps, left[i].Why})
		i = end
	}
	return out
}

func dayText(unit standing.Unit) string {
	if unit.Start.Day == 0 {
		return ""
	}
	return unit.Start.Day.String()
}

func joinedTexts(texts []string) string {
	var said []string
	for _, text := range texts {
		if text != "" {
			said = append(said, text)
		}
	}
	return strings.Join(said, " · ")
}
