package standing

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/source"
)

// jobsOf reads a shop of two machines, of which one stands there twice in two versions: a job
// at every loader, one at the long ones, and one at the press.
func jobsOf(t *testing.T, units string) ([]*model.Job, []*model.Unit) {
	t.Helper()
	job := func(title, machine, when string) string {
		return "benchleaf = 1\n\n[procedure]\ntitle = \"" + title + "\"\ndate = 2026-01-01\nauthor = \"R. Aldous\"\nwho = \"Anyone\"\nhands-on = \"5 min\"\nmachine = \"" + machine + "\"\nrevision = \"A\"\n" + when + "\n\n[[step]]\ninspect = \"the belt\"\n"
	}
	var files []*source.File
	for _, one := range [][2]string{
		{"grease.toml", job("Grease it", "loader", "every = [\"50 h\", \"12 months\"]")},
		{"loader.toml", "benchleaf = 1\n\n[machine]\nname = \"loader\"\ntitle = \"Bark loader\"\nmanual = \"BL 1\"\nvariants = [\"short\", \"long\"]\nmeter = \"hours\"\nin-service = 2026-01-01\n"},
		{"press.toml", "benchleaf = 1\n\n[machine]\nname = \"press\"\ntitle = \"Bale press\"\nmanual = \"BP 1\"\nmeter = \"cycles\"\n"},
		{"ram.toml", job("Look over the ram", "press", "every = \"1000 cycles\"")},
		{"saw.toml", "benchleaf = 1\n\n[machine]\nname = \"saw\"\ntitle = \"Band saw\"\nmanual = \"BS 1\"\n"},
		{"shop.toml", "benchleaf = 1\nuse = [\"loader.toml\", \"press.toml\", \"saw.toml\"]\n\n[shop]\ntitle = \"Fernhollow Sawmill\"\n" + units},
		{"tail.toml", job("Look over the tail", "loader", "every = \"6 months\"\nfor = [\"long\"]")},
	} {
		files = append(files, source.New(one[0], []byte(one[1])))
	}
	set := model.Read(files, func(n int, do func(int)) {
		for i := range n {
			do(i)
		}
	})
	var jobs []*model.Job
	require.Empty(t, set.Findings)
	for _, file := range set.Files {
		jobs = append(jobs, set.Jobs(file)...)
	}
	return jobs, set.Units()
}

const twoLoaders = "\n[unit.back]\nmachine = \"loader\"\nversion = \"long\"\ntitle = \"Loader at the back\"\nserial = \"BL-7\"\nin-service = 2026-02-01\nmeter-then = \"10 h\"\n\n[unit.front]\nmachine = \"loader\"\nversion = \"short\"\nuse = [{ week = \"14 h\" }]\n"

func TestTheMachinesOfAShop(t *testing.T) {
	for name, c := range map[string]struct {
		units    string
		want     []string
		problems string
	}{
		"none described": {"", []string{"loader Bark loader  2026-01-01 0 h", "press Bale press  0 cycles"}, ""},
		"two of a kind":  {twoLoaders, []string{"back Loader at the back long 2026-02-01 10 h", "front Bark loader short 2026-01-01 0 h", "press Bale press  0 cycles"}, ""},
		"no such version": {strings.ReplaceAll(twoLoaders, `"long"`, `"wide"`), []string{"back Loader at the back wide 2026-02-01 10 h", "front Bark loader short 2026-01-01 0 h", "press Bale press  0 cycles"},
			`back: its machine has no version "wide", so no job of a version is told; it has: short, long`},
		"use in another unit": {"\n[unit.press-1]\nmachine = \"press\"\nuse = [{ week = \"14 h\" }]\n", []string{"loader Bark loader  2026-01-01 0 h", "press-1 Bale press  0 cycles"}, "press-1: its use is not in the unit of its meter"},
		"no such day":         {"\n[unit.front]\nmachine = \"loader\"\nuse = [{ week = \"14 h\", from = \"02-30\", to = \"03-31\" }]\n", []string{"front Bark loader  2026-01-01 0 h", "press Bale press  0 cycles"}, "front: season 1: no year has such a day"},
		"no job is of it":     {"\n[unit.saw]\nmachine = \"saw\"\n", []string{"loader Bark loader  2026-01-01 0 h", "press Bale press  0 cycles"}, ""},
	} {
		jobs, described := jobsOf(t, c.units)
		units, problems := Units(jobs, described)
		var got []string
		for _, one := range units {
			day := ""
			if one.Start.Day > 0 {
				day = one.Start.Day.String() + " "
			}
			got = append(got, fmt.Sprintf("%s %s %s %s%g %s", one.Name, one.Title, one.Version, day, one.Start.Meter, one.Meter))
		}
		assert.Equal(t, c.want, got, name)
		assert.Equal(t, c.problems, strings.Join(problems, "; "), name)
	}
	jobs, described := jobsOf(t, twoLoaders)
	units, _ := Units(jobs, described)
	assert.Equal(t, "BL-7", units[0].Serial)
	use := due.Forecast(nil, units[1].Pattern)
	assert.Equal(t, 14.0, use.AWeek)
}

func TestWhoseAnEntryIs(t *testing.T) {
	jobs, described := jobsOf(t, twoLoaders)
	units, _ := Units(jobs, described)
	for name, c := range map[string]struct {
		of        entry.Entry
		unit, why string
	}{
		"by its short name":               {entry.Entry{Unit: "front"}, "front", ""},
		"by its short name, other words":  {entry.Entry{Unit: "front", Machine: "Bale press"}, "front", ""},
		"no such":                         {entry.Entry{Unit: "side", Machine: "Bale press"}, "", `no machine here is named "side"; there are: back, front, press`},
		"the name of a kind":              {entry.Entry{Unit: "loader"}, "", `no machine here is named "loader"; of that kind there are: back, front`},
		"the title of a kind":             {entry.Entry{Unit: "bark loader"}, "", `no machine here is named "bark loader"; of that kind there are: back, front`},
		"misspelt":                        {entry.Entry{Unit: "frnt"}, "", `no machine here is named "frnt"; did you mean "front"?`},
		"the only one of its kind":        {entry.Entry{Machine: "bale PRESS"}, "press", ""},
		"by the short name of its kind":   {entry.Entry{Machine: "press"}, "press", ""},
		"by its own title":                {entry.Entry{Machine: "Loader at the back"}, "back", ""},
		"one of two, not said":            {entry.Entry{Machine: "loader"}, "", `it does not say which of the machines it is of; write unit = "back", or another of: back, front`},
		"one of two, by its version":      {entry.Entry{Machine: "Bark loader", Variant: "short"}, "front", ""},
		"one of two, of no version there": {entry.Entry{Machine: "Bark loader", Variant: "wide"}, "", `no machine here is called "Bark loader"`},
		"no such title":                   {entry.Entry{Machine: "Edger"}, "", `no machine here is called "Edger"`},
	} {
		unit, why := Owner(c.of, units)
		assert.Equal(t, c.unit, unit.Name, name)
		assert.Equal(t, c.why, why, name)
	}
}

func TestWhichJobsServeAMachine(t *testing.T) {
	for _, c := range []struct {
		units string
		want  map[string]string
	}{
		{twoLoaders, map[string]string{"back": "grease(long) tail(long)", "front": "grease(short)", "press": "ram()"}},
		{strings.ReplaceAll(twoLoaders, `"long"`, `"wide"`), map[string]string{"back": "", "front": "grease(short)", "press": "ram()"}},
		{"", map[string]string{"loader": "grease(short) grease(long) tail(long)", "press": "ram()"}}, // of no version, so of each
	} {
		jobs, described := jobsOf(t, c.units)
		units, _ := Units(jobs, described)
		got := map[string]string{}
		for _, unit := range units {
			var serve []string
			for _, job := range jobs {
				if Serves(job, unit) {
					serve = append(serve, job.File.Name()+"("+job.Variant+")")
				}
			}
			got[unit.Name] = strings.Join(serve, " ")
		}
		assert.Equal(t, c.want, got)
	}
}

// numbered gives entries the numbers of their places.
func numbered(entries ...entry.Entry) []entry.Entry {
	for i := range entries {
		entries[i].Number = i + 1
	}
	return entries
}

// Each case by hand: what stands of the grease job at the front loader, of 50 h and 12 months,
// in service from 2026-01-01 at 0 h. Where its meter was not read on 2026-02-01, it is reckoned:
// by its use of 14 h a week, 62 h in 31 days; from 25 h on 2026-01-30, 25 h in 29 days, 26.7 h.
func TestHowAJobStands(t *testing.T) {
	front := func(day, meter string, more ...func(*entry.Entry)) entry.Entry {
		e := entry.Entry{Unit: "front", Date: entry.Day(day), Meter: meter}
		for _, do := range more {
			do(&e)
		}
		return e
	}
	greased := func(e *entry.Entry) { e.Procedure = "grease" }
	corrects := func(number int) func(*entry.Entry) { return func(e *entry.Entry) { e.Corrects = number } }
	fitted := func(at string) func(*entry.Entry) { return func(e *entry.Entry) { e.NewMeter = at } }
	for name, c := range map[string]struct {
		entries  []entry.Entry
		want     string // last day, total, what it stood at; total it is due at; what the meter shows then
		problems string
	}{
		"never done":              {nil, "never; due at 50, shows 50", ""},
		"done":                    {numbered(front("2026-02-01", "31 h", greased)), "2026-02-01 at 31, stood 31; due at 81, shows 81", ""},
		"put right":               {numbered(front("2026-02-01", "31 h", greased), front("2026-02-02", "33 h", greased, corrects(1))), "2026-02-02 at 33, stood 33; due at 83, shows 83", ""},
		"taken out":               {numbered(front("2026-02-01", "31 h", greased), entry.Entry{Date: "2026-02-02", Corrects: 1}), "never; due at 50, shows 50", ""},
		"done after the day":      {numbered(front("2026-02-01", "31 h", greased), front("2026-03-02", "90 h", greased)), "2026-02-01 at 31, stood 31; due at 81, shows 81", ""},
		"told in another order":   {numbered(front("2026-02-01", "31 h", greased), front("2026-01-10", "8 h", greased)), "2026-02-01 at 31, stood 31; due at 81, shows 81", ""},
		"twice on a day":          {numbered(front("2026-02-01", "31 h", greased), front("2026-02-01", "30 h", greased)), "2026-02-01 at 30, stood 30; due at 81, shows 81", ""},
		"meter replaced":          {numbered(front("2026-01-20", "20 h", fitted("5 h")), front("2026-02-01", "16 h", greased)), "2026-02-01 at 31, stood 16; due at 81, shows 66", ""},
		"replaced since":          {numbered(front("2026-02-01", "31 h", greased), front("2026-02-05", "40 h", fitted("0 h"))), "2026-02-01 at 31, stood 31; due at 81, shows 41", ""},
		"at the other machine":    {numbered(entry.Entry{Unit: "back", Date: "2026-02-03", Meter: "20 h", Procedure: "grease"}), "never; due at 50, shows 50", ""},
		"by another procedure":    {numbered(front("2026-02-01", "31 h", func(e *entry.Entry) { e.Procedure = "gease" })), "never; due at 50, shows 50", ""},
		"of the store":            {numbered(entry.Entry{Received: []entry.Moved{{What: "grease", Amount: "1 kg"}}}), "never; due at 50, shows 50", ""},
		"backward":                {numbered(front("2026-01-20", "20 h"), front("2026-01-30", "25 h"), front("2026-02-01", "15 h", greased)), "2026-02-01, not read; due at 77, shows 77", "3: the reading of the meter of front is below an earlier reading, that of entry 2, and is left aside"},
		"faster than a day":       {numbered(front("2026-01-20", "20 h"), front("2026-01-21", "90 h")), "never; due at 50, shows 50", "2: the reading of the meter of front is more than the days since an earlier reading can bring, that of entry 1, and is left aside"},
		"no date":                 {numbered(entry.Entry{Unit: "front", Meter: "20 h"}), "never; due at 50, shows 50", "1: it has no date"},
		"not said which":          {numbered(entry.Entry{Machine: "loader", Date: "2026-02-01", Procedure: "grease"}), "never; due at 50, shows 50", `1: it does not say which of the machines it is of; write unit = "back", or another of: back, front`},
		"an earlier one high":     {numbered(front("2026-01-12", "12 h"), front("2026-01-26", "24 h"), front("2026-02-02", "150 h"), front("2026-02-10", "36 h", greased)), "2026-02-10, not read; due at 238, shows 238", "4: the reading of the meter of front is below an earlier reading, that of entry 3, and is left aside; entry 3 may be the wrong one, since it is 126 h above the reading before it, of 2026-01-26: if so, put it right with benchleaf log --corrects 3 --meter"},
		"not to its end":          {numbered(front("2026-02-01", "31 h", greased, func(e *entry.Entry) { e.Open = []int{2} })), "never; due at 50, shows 50; begun 2026-02-01", ""},
		"begun before":            {numbered(front("2026-02-01", "31 h", greased, func(e *entry.Entry) { e.Open = []int{2} }), front("2026-02-02", "32 h", greased)), "2026-02-02 at 32, stood 32; due at 82, shows 82", ""},
		"begun after":             {numbered(front("2026-02-02", "32 h", greased), front("2026-02-02", "32 h", greased, func(e *entry.Entry) { e.Open = []int{2} })), "2026-02-02 at 32, stood 32; due at 82, shows 82; begun 2026-02-02", ""},
		"two of one number":       {[]entry.Entry{{Number: 1, Unit: "front", Date: "2026-02-01", Meter: "31 h", Procedure: "grease"}, {Number: 1, Unit: "front", Date: "2026-02-02", Meter: "32 h"}, {Number: 2, Date: "2026-02-03", Corrects: 1}}, "2026-02-01 at 31, stood 31; due at 81, shows 81", "1: it is to be put right by a later entry, but several have its number, so all of them count"},
		"one that comes later":    {[]entry.Entry{{Number: 1, Date: "2026-02-03", Corrects: 2}, {Number: 2, Unit: "front", Date: "2026-02-01", Meter: "31 h", Procedure: "grease"}}, "2026-02-01 at 31, stood 31; due at 81, shows 81", "1: it corrects entry 2, which is none before it, so that it takes nothing out"},
		"in another unit":         {numbered(front("2026-02-01", "31 cycles", greased)), "2026-02-01, not read; due at 112, shows 112", `1: meter = "31 cycles" is no single figure in h`},
		"what came off not read":  {numbered(front("2026-02-01", "", fitted("0 h"))), "never; due at 50, shows 50", `1: new-meter = "0 h" stands without meter; add meter, what the old one stood at last (--meter)`},
		"what was fitted not so":  {numbered(front("2026-02-01", "31 h", fitted("new"))), "never; due at 50, shows 50", `1: new-meter = "new" is no single figure in h`},
		"before service":          {numbered(front("2025-12-01", "31 h")), "never; due at 50, shows 50", "1: the reading of the meter of front is of a day before service began, and is left aside"},
		"given now, in no book":   {[]entry.Entry{{Number: -1, Unit: "front", Date: "2026-02-20", Meter: "-3 h"}}, "never; due at 50, shows 50", `-1: meter = "-3 h" is no single figure in h`},
		"three readings of a day": {numbered(front("2026-02-01", "31 h"), front("2026-02-01", "32 h", greased), front("2026-02-01", "33 h")), "2026-02-01 at 32, stood 32; due at 82, shows 82", ""},
	} {
		jobs, described := jobsOf(t, twoLoaders)
		units, _ := Units(jobs, described)
		on := due.Date(2026, 3, 1)
		book, err := Gather(units, nil, on, scanOf(c.entries))
		require.NoError(t, err)
		found := false
		for _, one := range Of(jobs, units, book, on) {
			if one.Unit.Name != "front" {
				continue
			}
			require.False(t, found, "%s: one row for each job", name)
			found = true
			got := "never"
			if one.Last != nil {
				got = one.Last.Day.String() + ", not read"
				if one.Read {
					got = fmt.Sprintf("%s at %g, stood %g", one.Last.Day, one.At, one.Stood)
				}
			}
			require.True(t, one.Answer.Metered || !one.Read, name)
			if one.Answer.Metered {
				got += fmt.Sprintf("; due at %.0f, shows %.0f", one.Answer.Meter.Expected, one.Meter.Shows(one.Answer.Meter.Expected))
			}
			if one.Begun != nil {
				got += "; begun " + one.Begun.Day.String()
			}
			assert.Equal(t, c.want, got, name)
		}
		assert.True(t, found, name)
		var problems []string
		for _, problem := range book.Problems {
			problems = append(problems, fmt.Sprintf("%d: %s", problem.Entry, problem.Text))
		}
		for why, whose := range book.Strange {
			problems = append(problems, fmt.Sprintf("%d: %s", whose.Last, why))
		}
		assert.Equal(t, c.problems, strings.Join(problems, "; "), name)
	}
}

func TestWhatIsLateComesFirst(t *testing.T) {
	jobs, described := jobsOf(t, twoLoaders)
	units, _ := Units(jobs, described)
	on := due.Date(2027, 3, 1)
	book, err := Gather(units, nil, on, scanOf(numbered(entry.Entry{Unit: "front", Date: "2027-02-20", Meter: "60 h", Procedure: "grease", LeftOut: []entry.LeftOut{{Step: 1}, {Step: 2}}, Readings: []entry.Reading{{What: "Play", Outside: true}, {What: "Slack"}}})))
	require.NoError(t, err)
	var got []string
	for _, one := range Of(jobs, units, book, on) {
		got = append(got, fmt.Sprintf("%s %s %s", one.Answer.State, one.Unit.Name, one.Job.File.Name()))
		if one.Last != nil {
			assert.Equal(t, []int{1, 1, 2}, []int{one.Last.Entry, one.Last.Outside, one.Last.LeftOut})
		}
	}
	assert.Equal(t, []string{"overdue back tail", "overdue back grease", "later front grease", "unknown press ram"}, got)
}

func TestTheReadingsOfAThing(t *testing.T) {
	jobs, described := jobsOf(t, twoLoaders)
	units, _ := Units(jobs, described)
	play := func(unit, day, meter, value string, outside bool) entry.Entry {
		return entry.Entry{Unit: unit, Date: entry.Day(day), Meter: meter, Procedure: "grease", Readings: []entry.Reading{{Step: 1, What: "Play", Value: value, Outside: outside}, {Step: 2, What: "Slack", Value: "3 mm"}}}
	}
	entries := numbered(
		play("front", "2026-01-20", "20 h", "1 mm", false),
		play("front", "2026-01-20", "21 h", "1.1 mm", false),
		play("front", "2026-01-20", "22 h", "1.2 mm", true),
		play("back", "2026-02-10", "12 h", "2 mm", false),
		play("front", "2026-01-10", "8 h", "0.9 mm", false), // a phone gave it late
		play("front", "2026-02-10", "7 h", "1.3 mm", false), // it reads backward
		play("front", "2026-02-11", "", "1.4 mm", false),
		play("front", "2026-04-01", "80 h", "9 mm", false), // after the day
		entry.Entry{Unit: "front", Date: "2026-02-12", Meter: "40 h", NewMeter: "0 h"},
		play("front", "2026-02-20", "5 h", "1.5 mm", false),
		play("front", "2026-02-21", "6 h", "8 mm", false),
		play("front", "2026-02-21", "6 h", "1.6 mm", false),
		play("side", "2026-02-21", "6 h", "1.6 mm", false),
	)
	entries[11].Corrects = 11
	on := due.Date(2026, 3, 1)
	book, err := Gather(units, nil, on, scanOf(entries))
	require.NoError(t, err)
	assert.Equal(t, map[int]bool{11: true}, book.Replaced())
	series, err := ReadAt(units, book, on, scanOf(entries))
	require.NoError(t, err)
	var got []string
	for _, one := range series {
		line := fmt.Sprintf("%s %s %d %s:", one.Unit.Name, one.Procedure, one.Step, one.What)
		for _, point := range one.Points {
			line += fmt.Sprintf(" %d %s", point.Entry, point.Value)
			if point.Metered {
				line += fmt.Sprintf(" at %g", point.Total)
			}
			if point.Outside {
				line += " outside"
			}
			line += ";"
		}
		got = append(got, line)
	}
	assert.Equal(t, []string{
		"front grease 1 Play: 1 1 mm at 20; 2 1.1 mm at 21; 3 1.2 mm at 22 outside; 5 0.9 mm at 8; 6 1.3 mm; 7 1.4 mm; 10 1.5 mm at 45; 12 1.6 mm at 46;",
		"front grease 2 Slack: 1 3 mm at 20; 2 3 mm at 21; 3 3 mm at 22; 5 3 mm at 8; 6 3 mm; 7 3 mm; 10 3 mm at 45; 12 3 mm at 46;",
		"back grease 1 Play: 4 2 mm at 12;",
		"back grease 2 Slack: 4 3 mm at 12;",
	}, got)
}
