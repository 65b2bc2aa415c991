package compose

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/standing"
)

// stateKeys are the states as programs read them.
var stateKeys = map[due.State]string{due.Overdue: "overdue", due.Due: "due", due.Soon: "soon", due.Later: "later", due.Unknown: "unknown", due.OnCondition: "on-condition"}

// DueList puts into words how jobs stand on a day. works are those of the jobs, for their
// language and units. It is an error when the shop's language has no words.
func DueList(standings []standing.Standing, on due.Day, language string, system quantity.System) (plan.DueList, error) {
	out := plan.DueList{On: on.String()}
	which := whiches(standings)
	for _, one := range standings {
		w, err := newWriter(Work{Job: one.Job, Language: language}, system)
		if err != nil {
			return plan.DueList{}, err
		}
		out.Words = w.words
		if one.Job.Shop != nil {
			out.Shop = one.Job.Shop.Title.Text
		}
		row := w.due(one)
		row.Which = which[one.Unit.Name]
		out.Rows = append(out.Rows, row)
	}
	return out, nil
}

// whiches tells machines of one title apart: by their serial numbers, or else by their short
// names. What has a title of its own is not in it.
func whiches(standings []standing.Standing) map[string]string {
	named := map[string]map[string]bool{} // short names by titles
	for _, one := range standings {
		if named[one.Unit.Title] == nil {
			named[one.Unit.Title] = map[string]bool{}
		}
		named[one.Unit.Title][one.Unit.Name] = true
	}
	out := map[string]string{}
	for _, one := range standings {
		if len(named[one.Unit.Title]) > 1 {
			out[one.Unit.Name] = cmp.Or(one.Unit.Serial, one.Unit.Name)
		}
	}
	return out
}

func (w *writer) due(one standing.Standing) plan.DueRow {
	answer, labels := one.Answer, w.words.Labels
	row := plan.DueRow{Unit: one.Unit.Name, Machine: one.Unit.Title, Procedure: one.Job.File.Name(), Title: one.Job.Procedure.Title.Text,
		State: stateKeys[answer.State], Every: w.interval(one.Job.Procedure.Every), By: string(answer.Limit)}
	row.Word = map[string]string{"overdue": labels.Overdue, "due": labels.Due, "soon": labels.Soon, "later": labels.Later, "unknown": labels.NotKnown, "on-condition": labels.OnCondition}[row.State]
	if answer.Day > 0 && answer.Day < due.Never {
		row.Day = answer.Day.String()
		if answer.Span.Early > 0 && answer.Span.Early != answer.Day {
			row.Early = answer.Span.Early.String()
		}
		if answer.Span.Late > 0 && answer.Span.Late != answer.Day && answer.Span.Late < due.Never {
			row.Late = answer.Span.Late.String()
		}
	}
	if shows := one.Meter.Shows(answer.Meter.Expected); answer.Metered && shows >= 0 { // below 0 it was due on a meter that is gone
		row.Meter = w.stand(shows, one.Unit.Meter)
	}
	if last := one.Last; last != nil {
		row.LastDay, row.LastWho = last.Day.String(), last.Who
		if one.Read {
			row.OldMeter = !one.Meter.ShowsNow(one.At, one.Stood)
			row.LastMeter = w.stand(one.Stood, one.Unit.Meter)
		}
	}
	var notes []string
	if when := one.Job.Procedure.When.Text; when != "" {
		notes = append(notes, when)
	}
	if one.Sooner != nil {
		notes = append(notes, w.sooner(one.Sooner))
		if every := one.Sooner.Clause.Every; len(every) > 0 {
			row.Every = w.interval(every)
		}
	}
	switch {
	case answer.Reason == due.OtherMeter:
		notes = append(notes, strings.ReplaceAll(labels.OtherMeter, "{unit}", w.uncounted(one)))
	case answer.Reason != "":
		notes = append(notes, w.reason(answer.Reason))
	case one.Use.Stood && answer.Metered:
		notes = append(notes, labels.ByUse)
	}
	if last := one.Last; last != nil && last.Outside > 0 {
		notes = append(notes, strings.ReplaceAll(labels.OutsideLast, "{n}", strconv.Itoa(last.Outside)))
	}
	if last := one.Last; last != nil && last.LeftOut > 0 {
		notes = append(notes, strings.ReplaceAll(labels.LeftOutLast, "{n}", strconv.Itoa(last.LeftOut)))
	}
	if begun := one.Begun; begun != nil {
		notes = append(notes, strings.NewReplacer("{day}", begun.Day.String(), "{n}", strconv.Itoa(begun.Open)).Replace(labels.BegunLast))
	}
	if one.Held {
		notes = append(notes, labels.HeldCard)
	}
	row.Note = strings.Join(notes, "; ")
	return row
}

// uncounted is what the interval of a job is of that the meter of its machine does not count.
func (w *writer) uncounted(one standing.Standing) string {
	for _, amount := range slices.Concat(one.Job.Procedure.Every, one.Job.Procedure.First) {
		if !amount.OK || model.Counted(amount, one.Unit.Meter) {
			continue
		}
		switch amount.Dimension {
		case quantity.Time:
			return w.words.Labels.RunningHours
		case quantity.Cycles:
			return cmp.Or(w.words.Units["cycles"], "cycles")
		}
		return "km"
	}
	return ""
}

// sooner says which reading brought the day of a job forward, and why.
func (w *writer) sooner(read *standing.Prompt) string {
	labels, clause := w.words.Labels, read.Clause
	why := labels.SoonerOutside
	switch {
	case clause.Over.Set():
		why = strings.ReplaceAll(labels.SoonerOver, "{limit}", w.besideReading(clause.Over))
	case clause.Under.Set():
		why = strings.ReplaceAll(labels.SoonerUnder, "{limit}", w.besideReading(clause.Under))
	}
	return strings.NewReplacer("{reading}", clause.Reading.Text, "{value}", cmp.Or(read.Value, "–"), "{day}", read.Day.String(), "{why}", why).Replace(labels.Sooner)
}

// besideReading writes a value in the one unit its readings are written down in.
func (w *writer) besideReading(amount model.Amount) string {
	if w.system == quantity.Both {
		return w.writing().Plain(amount.Amount)
	}
	return w.amount(amount)
}

// stand is what a meter shows, to the whole unit.
func (w *writer) stand(value float64, unit string) string {
	return fmt.Sprintf("%.0f\u00a0%s", math.Round(value), cmp.Or(w.words.Units[unit], unit))
}

// reason says why something is not known.
func (w *writer) reason(reason due.Reason) string {
	labels := w.words.Labels
	said := map[due.Reason]string{due.NeverDone: labels.NeverDone, due.NoReadings: labels.NoMeter, due.FewReadings: labels.FewMeter, due.Idle: labels.IdleMeter, due.NotRead: labels.NotRead}
	if words := said[reason]; words != "" {
		return words
	}
	return string(reason)
}
