package compose

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/standing"
)

const (
	plannedMonths = 12
	daysOfWeek    = 7
	thursday      = 3 // days after Monday; a week is of the month its Thursday lies in
)

// Planner puts into words what is to be done at one machine in the twelve months from that
// of a day on. standings are those of all machines. It is an error when the shop's language
// has no words, and when the machine has no jobs.
func Planner(standings []standing.Standing, unit string, on due.Day, language string, system quantity.System) (plan.Planner, error) {
	own := slices.DeleteFunc(slices.Clone(standings), func(one standing.Standing) bool { return one.Unit.Name != unit })
	if len(own) == 0 {
		return plan.Planner{}, fmt.Errorf("no job is of a machine %q", unit)
	}
	// letters stay the same from one day to the next
	slices.SortStableFunc(own, func(a, b standing.Standing) int { return cmp.Compare(a.Job.File.Name(), b.Job.File.Name()) })
	w, err := newWriter(Work{Job: own[0].Job, Language: language}, system)
	if err != nil {
		return plan.Planner{}, err
	}
	p := planner{plan: plan.Planner{Words: w.words, Machine: own[0].Unit.Title, Which: whiches(standings)[unit], On: on.String()}}
	if shop := own[0].Job.Shop; shop != nil {
		p.plan.Shop = shop.Title.Text
	}
	p.weeks(on)
	for i, one := range own {
		w, err := newWriter(Work{Job: one.Job, Language: language}, system)
		if err != nil {
			return plan.Planner{}, err
		}
		row := w.due(one)
		job := plan.PlannerJob{Key: model.Letter(i), Title: row.Title, Every: row.Every, Work: w.amount(one.Job.Procedure.HandsOn), Day: row.Day, State: row.State, Word: row.Word, Note: row.Note}
		p.plan.Jobs = append(p.plan.Jobs, job)
		p.marks(job.Key, one, minutes(one.Job.Procedure.HandsOn))
	}
	sum := 0.0
	for i := range p.plan.Months {
		p.plan.Months[i].Work = workTime(p.work[i])
		sum += p.work[i]
	}
	p.plan.Work = workTime(sum)
	return p.plan, nil
}

type planner struct {
	plan plan.Planner
	on   due.Day
	from due.Day // Monday of the first week
	work [plannedMonths]float64
}

// weeks lists the weeks of twelve months.
func (p *planner) weeks(on due.Day) {
	monday := func(day due.Day) due.Day { return day.AddDays(1 - day.Weekday()) }
	p.on = on
	now := monday(on)
	year, month, _ := now.AddDays(thursday).Date()
	first := due.Date(year, month, 1)
	names := p.plan.Words.Labels.MonthNames()
	for n := range plannedMonths {
		begin, end := first.AddMonths(n), first.AddMonths(n+1)
		year, month, _ := begin.Date()
		one := plan.PlannerMonth{Name: names[month-1], Year: strconv.Itoa(year), First: len(p.plan.Weeks)}
		week := monday(begin)
		if week.AddDays(thursday) < begin {
			week = week.AddDays(daysOfWeek)
		}
		if p.from == 0 {
			p.from = week
		}
		for ; week.AddDays(thursday) < end; week = week.AddDays(daysOfWeek) {
			_, number := week.Week()
			_, _, from := week.Date()
			_, _, to := week.AddDays(daysOfWeek - 1).Date()
			p.plan.Weeks = append(p.plan.Weeks, plan.PlannerWeek{Number: number, From: from, To: to, Past: week < now, Now: week == now})
			one.Weeks++
			if week == due.Never { // the calendar ends
				break
			}
		}
		p.plan.Months = append(p.plan.Months, one)
	}
}

// week is the index of the week a day lies in, which may be none of the planner.
func (p *planner) week(day due.Day) int {
	days := due.DaysBetween(p.from, day)
	if days < 0 {
		return -1
	}
	return days / daysOfWeek
}

// marks sets a job into the weeks it is expected in.
func (p *planner) marks(key string, one standing.Standing, minutes float64) {
	last := p.from.AddDays(len(p.plan.Weeks)*daysOfWeek - 1)
	if one.Answer.Day == 0 || one.Answer.Day > last {
		return
	}
	answers := append([]due.Answer{one.Answer}, due.Following(one.Ask, one.Use, one.Answer, p.on, last)...)
	var made []plan.PlannerMark
	for i, answer := range answers {
		at, now := p.week(max(answer.Day, p.on)), p.week(p.on)
		if n := len(made); n > 0 && made[n-1].At == at {
			made[n-1].Times++
		} else {
			mark := plan.PlannerMark{Key: key, At: at, Early: at, Late: at, Times: 1, Overdue: i == 0 && answer.State == due.Overdue}
			if i == 0 && !mark.Overdue { // the bars of later turns would run into each other
				mark.Early, mark.Late = max(min(p.week(answer.Span.Early), at), now), max(p.week(min(answer.Span.Late, last)), at)
			}
			made = append(made, mark)
		}
		for month := range p.plan.Months {
			if one := p.plan.Months[month]; at >= one.First && at < one.First+one.Weeks {
				p.work[month] += minutes
			}
		}
	}
	for i := 1; i < len(made); i++ { // no week is in two bars of one job
		before, mark := &made[i-1], &made[i]
		before.Late = min(before.Late, mark.At-1)
		mark.Early = max(mark.Early, before.Late+1)
	}
	p.plan.Marks = append(p.plan.Marks, made...)
}

// minutes is how long hands are on a job; 0 where that is not known.
func minutes(amount model.Amount) float64 {
	most, ok := amount.Max()
	if !amount.OK || !ok || amount.Dimension != quantity.Time {
		return 0
	}
	seconds, _ := most.Float64()
	return seconds / 60
}

// workTime writes minutes as hours and minutes; empty for none.
func workTime(minutes float64) string {
	whole := int(minutes + 0.5)
	var out []string
	if hours := whole / 60; hours > 0 {
		out = append(out, strconv.Itoa(hours)+"\u00a0h")
	}
	if rest := whole % 60; rest > 0 {
		out = append(out, strconv.Itoa(rest)+"\u00a0min")
	}
	return strings.Join(out, " ")
}
