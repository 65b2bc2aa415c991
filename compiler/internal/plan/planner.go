package plan

import "strings"

// Planner is a year of one machine, by weeks.
type Planner struct {
	Words   Words
	Shop    string
	Machine string
	Which   string // serial number or short name, where another machine has the same title
	On      string // ISO 8601 day it was reckoned on
	Jobs    []PlannerJob
	Months  []PlannerMonth
	Weeks   []PlannerWeek // of all months
	Marks   []PlannerMark
	Work    string // sum of the hands-on time; empty where there is none
}

// PlannerJob is one line of the key.
type PlannerJob struct {
	Key   string // letter it has in the weeks
	Title string
	Every string
	Work  string // hands-on time
	Day   string // ISO 8601 day it is expected on next; empty where that is not known
	State string // as in DueRow
	Word  string // the state in the language of the page
	Note  string
}

// PlannerMonth holds the weeks whose Thursday lies in it.
type PlannerMonth struct {
	Name  string // short
	Year  string
	First int    // index of its first week
	Weeks int    // how many, 4 or 5
	Work  string // sum of the hands-on time; empty where there is none
}

// PlannerWeek is a week from Monday to Sunday (ISO 8601).
type PlannerWeek struct {
	Number   int
	From, To int // days of the month
	Past     bool
	Now      bool
}

// PlannerMark is a job in a week.
type PlannerMark struct {
	Key         string
	At          int // index of the week it is expected in
	Early, Late int // the first and last week it may come in; At where that is certain
	Times       int // in that week
	Overdue     bool
}

// MonthNames are the short names of the months, from January.
func (l Labels) MonthNames() []string { return strings.Fields(l.Months) }
