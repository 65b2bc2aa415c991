// Package standing says how the machines of a shop stand: what their meters read, what was
// done to them, and when each job is due next. It must not know who asks, nor the clock:
// the day is given.
package standing

import (
	"cmp"
	"fmt"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
)

// Unit is one machine that stands in the shop.
type Unit struct {
	Name         string // short
	Title        string
	Serial       string
	Machine      string // short name of what it is one of; empty where that is only named in words
	MachineTitle string
	Version      string
	Meter        string // symbol of the unit its meter counts in: h, km, cycles; empty where it has none
	Start        due.Start
	Pattern      due.Pattern
}

// Standing is how one job at one machine stands.
type Standing struct {
	Unit   Unit
	Job    *model.Job
	Ask    due.Job // what decided the answer
	Answer due.Answer
	Last   *Done   // nil where it was never done
	Begun  *Done   // when it was begun since, and left with steps that are open; nil where it was not
	At     float64 // total of the meter at the last time; 0 where it was not read
	Stood  float64 // what the meter that was fitted then showed
	Read   bool    // At and Stood are known
	Use    due.Use
	Meter  due.Meter
	Sooner *Prompt // the reading that decided the answer; nil where none did
	Held   bool    // an error stands against its card
}

// defaultSoon is how many days before it is due a job is told to come soon.
const defaultSoon = 14

// Units lists the machines of some jobs, in the order of their names: those that files
// describe with [unit.NAME], and of a machine without such the one there is. problems say what
// of a unit cannot be taken.
func Units(jobs []*model.Job, described []*model.Unit) (units []Unit, problems []string) {
	machines := map[string]*model.Job{}
	for _, job := range jobs {
		key := cmp.Or(job.MachineName(), job.MachineTitle())
		if machines[key] == nil {
			machines[key] = job
		}
	}
	has := map[string]bool{}
	for _, one := range described {
		job := machines[one.Machine.Name()]
		if job == nil {
			continue // no procedure is of it
		}
		has[one.Machine.Name()] = true
		unit := ofMachine(job)
		unit.Name, unit.Serial, unit.Version = one.Name, one.Serial.Text, one.Version.Name()
		if machine := job.Machine; machine != nil && unit.Version != "" && !machine.Variants.Has(unit.Version) {
			problems = append(problems, fmt.Sprintf("%s: its machine has no version %q, so no job of a version is told; it has: %s", one.Name, one.Version.Text, strings.Join(machine.Variants.Names(), ", ")))
		}
		if one.Title.Set() {
			unit.Title = one.Title.Text
		}
		if one.InService.Set() {
			unit.Start.Day, _ = due.ParseDay(one.InService.Text)
		}
		if then, ok := figure(one.MeterThen, unit.Meter); ok {
			unit.Start.Meter = then
		}
		pattern, problem := patternOf(one.Use, unit.Meter)
		if problem != "" {
			problems = append(problems, one.Name+": "+problem)
		}
		unit.Pattern = pattern
		units = append(units, unit)
	}
	for key, job := range machines {
		if !has[key] {
			units = append(units, ofMachine(job))
		}
	}
	slices.SortFunc(units, func(a, b Unit) int { return cmp.Compare(a.Name, b.Name) })
	return units, problems
}

func ofMachine(job *model.Job) Unit {
	unit := Unit{Name: cmp.Or(job.MachineName(), job.MachineTitle()), Title: job.MachineTitle(), Machine: job.MachineName(), MachineTitle: job.MachineTitle(), Meter: "h"}
	if machine := job.Machine; machine != nil {
		unit.Meter = machine.MeterUnit()
		if machine.InService.Set() {
			unit.Start.Day, _ = due.ParseDay(machine.InService.Text)
		}
	}
	return unit
}

// figure is an amount in the unit of a meter; false where it is none.
func figure(amount model.Amount, symbol string) (float64, bool) {
	unit, known := quantity.FindUnit(symbol)
	if symbol == "" || !known || !amount.OK || amount.Dimension != unit.Dimension {
		return 0, false
	}
	least, ok := amount.Min()
	if !ok {
		return 0, false
	}
	value, _ := unit.FromBase(least).Float64()
	return value, true
}

func patternOf(uses []*model.Use, symbol string) (due.Pattern, string) {
	var seasons []due.Season
	for _, use := range uses {
		week, ok := figure(use.Week, symbol)
		if !ok {
			return due.Pattern{}, "its use is not in the unit of its meter"
		}
		season := due.Season{FromMonth: 1, FromDay: 1, ToMonth: 12, ToDay: 31, AWeek: week}
		for _, end := range []struct {
			text       string
			month, day *int
		}{{use.From.Text, &season.FromMonth, &season.FromDay}, {use.To.Text, &season.ToMonth, &season.ToDay}} {
			if end.text == "" {
				continue
			}
			month, day, _ := strings.Cut(end.text, "-")
			m, bad := strconv.Atoi(month)
			d, worse := strconv.Atoi(day)
			if bad != nil || worse != nil {
				return due.Pattern{}, strconv.Quote(end.text) + " is no month and day such as \"04-01\""
			}
			*end.month, *end.day = m, d
		}
		seasons = append(seasons, season)
	}
	if len(seasons) == 0 {
		return due.Pattern{}, ""
	}
	pattern, err := due.NewPattern(seasons)
	if err != nil {
		return due.Pattern{}, err.Error()
	}
	return pattern, ""
}

// Of says how each job at each machine stands on a day, the most pressing first. What could
// not be taken of the readings of a meter is added to the problems of the book.
func Of(jobs []*model.Job, units []Unit, book *Book, on due.Day) []Standing {
	var out []Standing
	for _, unit := range units {
		history := book.of(unit.Name)
		meter, faults, reads := history.join(unit)
		for _, fault := range faults {
			against := ""
			if fault.Against >= 0 && reads[fault.Against].entry > 0 {
				against = ", that of entry " + strconv.Itoa(reads[fault.Against].entry)
			}
			book.problem(reads[fault.Index].entry, "the reading of the meter of %s %s%s, and is left aside%s", unit.Name, fault.Why, against, suspect(unit, meter, fault, reads))
		}
		use := due.Forecast(meter.Points, unit.Pattern)
		seen := map[string]bool{}
		for _, job := range jobs {
			if !Serves(job, unit) || seen[job.File.Name()] || len(job.Procedure.Joins.Items) > 0 { // what was joined comes due by itself
				continue
			}
			seen[job.File.Name()] = true
			out = append(out, stand(unit, job, book, meter, reads, use, on))
		}
	}
	slices.SortStableFunc(out, func(a, b Standing) int {
		return cmp.Or(cmp.Compare(a.Answer.State, b.Answer.State), cmp.Compare(a.Answer.Day, b.Answer.Day), cmp.Compare(a.Unit.Name, b.Unit.Name), cmp.Compare(a.Job.File.Name(), b.Job.File.Name()))
	})
	return out
}

// standsOut is how many times the usual pace makes a reading one to doubt; common practice,
// no source.
const standsOut = 10

// suspect says that not a reading that was refused may be wrong, but the earlier one it does
// not fit: one that came faster than days can bring, or much faster than is usual here.
func suspect(unit Unit, meter due.Meter, fault due.Fault, reads []read) string {
	if fault.Why != due.Backwards || fault.Against < 0 || reads[fault.Against].entry <= 0 {
		return ""
	}
	at := slices.IndexFunc(meter.Points, func(point due.Point) bool { return point.Index == fault.Against })
	if at < 1 {
		return ""
	}
	from, to := meter.Points[at-1], meter.Points[at]
	gain, days := to.Total-from.Total, max(1, due.DaysBetween(from.Day, to.Day))
	usual := due.Forecast(meter.Points[:at], unit.Pattern).AWeek / 7
	if (most(unit) == 0 || gain <= most(unit)*float64(days)) && (usual <= 0 || gain <= standsOut*usual*float64(days)) {
		return ""
	}
	number := reads[fault.Against].entry
	return fmt.Sprintf("; entry %d may be the wrong one, since it is %.0f %s above the reading before it, of %s: if so, put it right with benchleaf log --corrects %d --meter", number, gain, unit.Meter, from.Day, number)
}

// ByMeter reports whether a job is due at a machine by what its meter stands at.
func ByMeter(job *model.Job, unit Unit) bool {
	return unit.Meter != "" && (interval(job.Procedure.Every, unit.Meter).Hours > 0 || interval(job.Procedure.First, unit.Meter).Hours > 0)
}

// Serves reports whether a job is of a machine: of its kind, and for its version.
func Serves(job *model.Job, unit Unit) bool {
	if job.MachineName() != unit.Machine || job.MachineTitle() != unit.MachineTitle {
		return false
	}
	return job.Variant == "" || unit.Version == "" || job.Variant == unit.Version
}

func stand(unit Unit, job *model.Job, book *Book, meter due.Meter, reads []read, use due.Use, on due.Day) Standing {
	kept := book.of(unit.Name)
	procedure, times := job.Procedure, kept.done[job.File.Name()]
	ask := due.Job{Every: interval(procedure.Every, unit.Meter), First: interval(procedure.First, unit.Meter), Start: unit.Start, Soon: defaultSoon}
	if shop := job.Shop; shop != nil {
		if shop.Next.Text == "schedule" {
			ask.From = due.FromSchedule
		}
		if soon := interval([]model.Amount{shop.Soon}, ""); shop.Soon.Set() {
			ask.Soon = soon.Days + 30*soon.Months
		}
	}
	ask.Other = slices.ContainsFunc(slices.Concat(procedure.Every, procedure.First), func(amount model.Amount) bool { return amount.OK && !model.Counted(amount, unit.Meter) })
	out := Standing{Unit: unit, Job: job, Use: use, Meter: meter}
	for i, one := range times {
		total, read := total(meter, reads, one.read)
		ask.Done = append(ask.Done, due.Done{Day: one.Day, Total: total, Read: read})
		if out.Last == nil || one.Day >= out.Last.Day {
			out.Last, out.At, out.Read, out.Stood = &times[i], total, read, 0
			if read {
				out.Stood = one.read.Value
			}
		}
	}
	if begun, known := kept.begun[job.File.Name()]; known && (out.Last == nil || begun.Day > out.Last.Day || begun.Day == out.Last.Day && begun.Entry > out.Last.Entry) {
		out.Begun = &begun
	}
	var prompts []Prompt
	prompts, ask.Sooner = book.prompts(unit, job, out.Last)
	out.Ask, out.Answer = ask, due.Next(ask, use, on)
	if n := out.Answer.Sooner; n > 0 {
		out.Sooner = &prompts[n-1]
	}
	return out
}

// interval is when a job is due, in the unit of the meter, and in months and days.
func interval(amounts []model.Amount, symbol string) due.Interval {
	var out due.Interval
	for _, amount := range amounts {
		if !amount.OK {
			continue
		}
		if hours, ok := figure(amount, symbol); ok {
			out.Hours = hours
			continue
		}
		if amount.Dimension != quantity.Calendar {
			continue
		}
		least, ok := amount.Min()
		if !ok {
			continue
		}
		own, _ := amount.Unit.FromBase(least).Float64()
		switch amount.Unit.Symbol {
		case "years":
			out.Months = int(own*12 + 0.5)
		case "months":
			out.Months = int(own + 0.5)
		default:
			days, _ := new(big.Rat).Set(least).Float64()
			out.Days = int(days + 0.5)
		}
	}
	return out
}
