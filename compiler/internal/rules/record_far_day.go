package rules

import (
	"fmt"
	"strconv"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

// farAhead is how many years from today a day of a record may lie at the most: a revision and a machine
// may be planned for the months to come. Common practice, no source.
const farAhead = 1

var farDay = add(Rule{
	Rule: finding.Rule{
		ID: "record/far-day", Severity: finding.Warning, Title: "A day lies far in the future",
		Why:     "What is dated so never grows old: a revision looks like the newest for ever, and what is counted from that day never falls due.",
		Source:  "that a year ahead is the most that is planned: common practice, no source",
		Setting: version + procedure + "no-isolation = \"Nothing is touched\"\ntools = []\nsupplies = []\nspares = []\nwear = []\n",
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\n[unit.first]\nmachine = \"gearbox\"\nin-service = 2206-05-01\n[machine]\ntitle = \"Gearbox\"\nname = \"gearbox\"\nmanual = \"Its own\"\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\n[unit.first]\nmachine = \"gearbox\"\nin-service = 2020-05-01\n[machine]\ntitle = \"Gearbox\"\nname = \"gearbox\"\nmanual = \"Its own\"\n",
	},
})

// Days tells of the days of a file that lie far after today, which is a day such as 2026-05-01; where it
// is empty nobody knows what day it is, and nothing is told.
func Days(file *model.File, today string) []finding.Finding {
	var out []finding.Finding
	if len(today) != len("2026-05-01") {
		return nil
	}
	year, err := strconv.Atoi(today[:4])
	if err != nil {
		return nil
	}
	limit := fmt.Sprintf("%04d%s", year+farAhead, today[4:])
	pass := &Pass{File: file, rule: farDay, out: &out}
	look := func(day model.Text, of string) {
		if day.Set() && len(day.Text) == len(limit) && day.Text > limit {
			pass.Found(finding.Finding{Place: day.At, Summary: fmt.Sprintf("%s lies more than a year ahead: %s", of, day.Text),
				Help: fmt.Sprintf("Look the year up again; today is %s.", today)})
		}
	}
	if file.Procedure != nil {
		look(file.Procedure.Date, "the day of the revision")
	}
	if file.Machine != nil {
		look(file.Machine.InService, "the day it went into service")
	}
	for _, unit := range file.Units() {
		look(unit.InService, "the day it went into service")
	}
	for _, store := range file.Stores() {
		look(store.Counted, "the day it was counted")
	}
	if file.Second != nil && file.Second.File == file {
		look(file.Second.Date, "the day of the second reading")
	}
	return out
}
