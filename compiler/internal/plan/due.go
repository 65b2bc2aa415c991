package plan

// DueRow is how one job at one machine stands.
type DueRow struct {
	Unit      string // short name of the machine
	Machine   string // its title
	Which     string // serial number or short name, where another machine has the same title
	Procedure string // short name
	Title     string
	State     string // overdue, due, soon, later, unknown, on-condition
	Word      string // the state in the language of the page
	Day       string // ISO 8601 day it is due on; empty where that is not known
	Early     string // it may be due as early as that
	Late      string // and as late
	Meter     string // what the meter stands at then: "2034 h"; empty where it does not count
	By        string // which limit comes first: meter, calendar; empty for none
	Every     string
	LastDay   string // when it was done last; empty where never
	LastMeter string
	OldMeter  bool // LastMeter is of a meter that was replaced since
	LastWho   string
	Note      string // what is not known of it, or what to look at
}

// DueList is what is due in a shop on a day.
type DueList struct {
	Words    Words
	Shop     string
	On       string // ISO 8601 day
	Rows     []DueRow
	Problems []string // of the service book
}
