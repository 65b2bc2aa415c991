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
	if what := r.beside()[name]; what != "" {
		return what
	}
	if strings.HasSuffix(name, "-trend.pdf") {
		for _, unit := range r.machines() {
			if strings.HasPrefix(name, fileName(unit)+"-") {
				return "a trend of " + unit
			}
		}
	}
	return ""
}

// written are the names, in small letters, under which the other commands write pages, each with
// what it is; all but those of the trends, of which a machine has many.
func (r *Result) written() map[string]string {
	out := map[string]string{"pick-list.pdf": "the pick list", "manual.pdf": "the manual", "contact.pdf": "the contact sheet",
		"due-list.pdf": "the list of what is due", "bring.pdf": "the list of what to bring", "gauge.pdf": "the page of true sizes", "shopping-list.pdf": "the shopping list"}
	is := func(name, what string) {
		if _, taken := out[name]; !taken {
			out[name] = what
		}
	}
	for _, stock := range Stocks() {
		is("cards-on-"+strings.ToLower(stock)+".pdf", "the cards on "+stock)
	}
	for _, job := range r.Jobs {
		is(strings.ToLower(job.named())+"-approval.pdf", "the approval sheet of "+job.Name)
		is(strings.ToLower(job.named())+"-record.pdf", "the record sheet of "+job.Name)
		is(strings.ToLower(r.set.File(job.Path).Procedure.Machine.Name())+"-chart.pdf", "the chart of "+cmp.Or(job.MachineName, job.Machine))
	}
	for _, unit := range r.machines() {
		is(plannerName(unit)+"-planner.pdf", "the planner of "+unit)
		is(fileName(unit)+"-history.pdf", "the history of "+unit)
	}
	return out
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
