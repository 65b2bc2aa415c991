package compiler

import (
	"cmp"
	"slices"
	"strings"
)

// Beside says what else of the shop is written under a name that a card would have, such as
// "the planner of deck": the pages of every command lie in one folder, and a disk may take
// capitals and small letters for the same. It is empty where nothing is.
func (r *Result) Beside(card string) string {
	name := strings.ToLower(card)
	fixed := map[string]string{"pick-list.pdf": "the pick list", "manual.pdf": "the manual", "contact.pdf": "the contact sheet",
		"due-list.pdf": "the list of what is due", "bring.pdf": "the list of what to bring", "gauge.pdf": "the page of true sizes", "shopping-list.pdf": "the shopping list"}
	if what := fixed[name]; what != "" {
		return what
	}
	for _, stock := range Stocks() {
		if name == "cards-on-"+strings.ToLower(stock)+".pdf" {
			return "the cards on " + stock
		}
	}
	for _, job := range r.Jobs {
		switch name {
		case strings.ToLower(job.named()) + "-approval.pdf":
			return "the approval sheet of " + job.Name
		case strings.ToLower(job.named()) + "-record.pdf":
			return "the record sheet of " + job.Name
		case strings.ToLower(job.work.Job.Procedure.Machine.Name()) + "-chart.pdf":
			return "the chart of " + cmp.Or(job.MachineName, job.Machine)
		}
	}
	for _, unit := range r.machines() {
		switch trend := strings.HasPrefix(name, fileName(unit)+"-") && strings.HasSuffix(name, "-trend.pdf"); {
		case name == plannerName(unit)+"-planner.pdf":
			return "the planner of " + unit
		case name == fileName(unit)+"-history.pdf":
			return "the history of " + unit
		case trend:
			return "a trend of " + unit
		}
	}
	return ""
}

// machines are the short names of what stands in the shop, also of what no job is asked for.
func (r *Result) machines() []string {
	var out []string
	for _, unit := range r.set.Units() {
		out = append(out, unit.Name)
	}
	for _, job := range r.Jobs {
		out = append(out, cmp.Or(job.MachineName, job.Machine))
	}
	slices.Sort(out)
	return slices.Compact(out)
}
