package json

import "benchleaf/compiler/internal/plan"

type dueReport struct {
	Version  int      `json:"benchleaf"`
	On       string   `json:"on"`
	Due      []dueRow `json:"due"`
	Problems []string `json:"problems"`
}

type dueRow struct {
	Unit      string `json:"unit"`
	Machine   string `json:"machine"`
	Procedure string `json:"procedure"`
	Title     string `json:"title"`
	State     string `json:"state"` // overdue, due, soon, later, unknown, on-condition
	Day       string `json:"day,omitempty"`
	Early     string `json:"early,omitempty"`
	Late      string `json:"late,omitempty"`
	Meter     string `json:"meter,omitempty"`
	By        string `json:"by,omitempty"` // meter, calendar, reading
	Every     string `json:"every,omitempty"`
	Last      string `json:"last,omitempty"`
	LastMeter string `json:"last-meter,omitempty"`
	LastWho   string `json:"last-who,omitempty"`
	Note      string `json:"note,omitempty"`
	OldMeter  bool   `json:"last-on-old-meter,omitempty"`
}

// Due writes what is due on a day.
func Due(on string, rows []plan.DueRow, problems []string) []byte {
	out := dueReport{Version: Version, On: on, Due: []dueRow{}, Problems: append([]string{}, problems...)}
	for _, row := range rows {
		out.Due = append(out.Due, dueRow{Unit: row.Unit, Machine: row.Machine, Procedure: row.Procedure, Title: row.Title, State: row.State, Day: row.Day, Early: row.Early,
			Late: row.Late, Meter: row.Meter, By: row.By, Every: row.Every, Last: row.LastDay, LastMeter: row.LastMeter, LastWho: row.LastWho, Note: row.Note, OldMeter: row.OldMeter})
	}
	return indented(out)
}
