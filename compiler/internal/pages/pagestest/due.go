package pagestest

import (
	"math/rand/v2"

	"benchleaf/compiler/internal/plan"
)

// DueList is what is due in a small mill, something of each state.
func DueList() plan.DueList {
	deck := plan.DueRow{Unit: "deck-yard", Machine: "Log-deck conveyor", Which: "LD6-0117", Title: "Change the worm gearbox oil", State: "overdue", Word: "Overdue",
		Day: "2026-03-02", Meter: "3651 h", Every: "2000 h or 12 months", LastDay: "2025-03-02", LastMeter: "1650 h", LastWho: "M. Lind"}
	row := func(state, word, day, early, late, note string) plan.DueRow {
		one := deck
		one.State, one.Word, one.Day, one.Early, one.Late, one.Note = state, word, day, early, late, note
		return one
	}
	unknown := row("unknown", "Not known", "", "", "", "too few readings of the meter, and no use is written")
	unknown.LastDay, unknown.LastMeter, unknown.LastWho = "", "", ""
	return plan.DueList{Words: Words(), Shop: "Harrow Lane Mill", On: "2026-05-05", Rows: []plan.DueRow{deck,
		row("due", "Due", "2026-05-07", "2026-05-01", "2026-05-15", "Or when the chain climbs on the head sprocket"),
		row("soon", "Soon", "2026-05-12", "2026-05-08", "2027-01-19", ""),
		row("later", "Later", "2026-06-12", "", "", "2 readings outside at the last time"),
		unknown, row("on-condition", "When needed", "", "", "", "When a tyre is worn")},
		Problems: []string{"entry 40 of the service book: its reading of the meter of deck-yard is below an earlier reading, that of entry 5, and is left aside"}}
}

// Planner is a year of a conveyor, each month of four weeks but the third.
func Planner() plan.Planner {
	out := plan.Planner{Words: Words(), Shop: "Harrow Lane Mill", Machine: "Log-deck conveyor", Which: "LD6-0117", On: "2026-05-05", Work: "12 h 5 min",
		Jobs: []plan.PlannerJob{
			{Key: "A", Title: "Grease the deck bearings", Every: "50 h", Work: "20 min", Day: "2026-04-18", State: "overdue", Word: "Overdue", Note: "And at once after every wash-down"},
			{Key: "B", Title: "Set the deck chain", Every: "250 h", Work: "45 min", Day: "2026-05-17", State: "soon", Word: "Soon"},
			{Key: "C", Title: "Change the worm gearbox oil", Every: "2000 h or 12 months", Work: "40 min", State: "unknown", Word: "Not known", Note: "the meter did not move"}}}
	for i, name := range out.Words.Labels.MonthNames() {
		month := plan.PlannerMonth{Name: name, Year: "2026", First: len(out.Weeks), Weeks: 4, Work: "2 h 25 min"}
		if i%3 == 2 {
			month.Weeks = 5
		}
		for range month.Weeks {
			n := len(out.Weeks)
			out.Weeks = append(out.Weeks, plan.PlannerWeek{Number: n + 1, From: n*7%28 + 1, To: n*7%28 + 7, Past: n == 0, Now: n == 1})
		}
		out.Months = append(out.Months, month)
	}
	for week := 1; week < len(out.Weeks); week += 3 {
		out.Marks = append(out.Marks, plan.PlannerMark{Key: "A", At: week, Early: max(1, week-1), Late: week + 1, Times: 1, Overdue: week == 1})
	}
	for week := 2; week < len(out.Weeks); week += 9 {
		out.Marks = append(out.Marks, plan.PlannerMark{Key: "B", At: week, Early: week - 1, Late: week + 4, Times: 1})
	}
	out.Marks = append(out.Marks, plan.PlannerMark{Key: "C", At: 9, Early: 9, Late: 9, Times: 3})
	return out
}

// RandomDueList makes a due list as no shop would have it: days that are words, states that
// nobody knows, long titles.
func RandomDueList(seed uint64) plan.DueList {
	g := dice{rand.New(rand.NewPCG(seed, 19))}
	out := plan.DueList{Words: Words(), Shop: g.text(g.upTo(4)), On: []string{"2026-05-05", "", g.word()}[g.IntN(3)], Problems: g.texts(g.upTo(4), 30)}
	states := []string{"overdue", "due", "soon", "later", "unknown", "on-condition", "another"}
	day := func() string { return []string{"2026-05-05", "2027-01-31", "", g.word()}[g.IntN(4)] }
	for range g.upTo(40) {
		state := states[g.IntN(len(states))]
		out.Rows = append(out.Rows, plan.DueRow{Machine: g.text(g.upTo(6)), Which: g.text(g.upTo(2)), Title: g.text(1 + g.upTo(g.long(12))), State: state, Word: g.text(1 + g.upTo(2)),
			Day: day(), Early: day(), Late: day(), Meter: g.text(g.upTo(2)), Every: g.text(g.upTo(6)), LastDay: day(), LastMeter: g.text(g.upTo(2)), LastWho: g.text(g.upTo(3)), Note: g.text(g.upTo(25))})
	}
	return out
}

// RandomPlanner makes a planner as no machine would have it: months of any number of weeks,
// bars across all of them, hundreds of marks.
func RandomPlanner(seed uint64) plan.Planner {
	g := dice{rand.New(rand.NewPCG(seed, 23))}
	out := plan.Planner{Words: Words(), Shop: g.text(g.upTo(4)), Machine: g.text(g.upTo(6)), Which: g.text(g.upTo(2)), On: []string{"2026-05-05", ""}[g.IntN(2)], Work: g.text(g.upTo(3))}
	keys := []string{"A", "B", "Z", "AA", g.word()}
	for range g.upTo(14) {
		out.Jobs = append(out.Jobs, plan.PlannerJob{Key: keys[g.IntN(len(keys))], Title: g.text(1 + g.upTo(10)), Every: g.text(g.upTo(5)), Work: g.text(g.upTo(3)), Day: g.text(g.upTo(1)),
			State: []string{"overdue", "later", ""}[g.IntN(3)], Word: g.text(g.upTo(2)), Note: g.text(g.upTo(25))})
	}
	for range g.upTo(14) {
		month := plan.PlannerMonth{Name: g.word(), Year: []string{"2026", "2027"}[g.IntN(2)], First: len(out.Weeks), Weeks: g.upTo(6), Work: g.text(g.upTo(3))}
		for range month.Weeks {
			out.Weeks = append(out.Weeks, plan.PlannerWeek{Number: g.upTo(53), From: g.upTo(31), To: g.upTo(31), Past: g.IntN(4) == 0, Now: g.IntN(9) == 0})
		}
		out.Months = append(out.Months, month)
	}
	for range g.long(60) {
		at := g.upTo(70) - 5
		out.Marks = append(out.Marks, plan.PlannerMark{Key: keys[g.IntN(len(keys))], At: at, Early: at - g.upTo(4)*g.upTo(4), Late: at + g.upTo(4)*g.upTo(4), Times: g.long(3), Overdue: g.IntN(9) == 0})
	}
	return out
}
