package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

// asked are the jobs a clause takes its reading from, for this version of the machine; known
// is false where that cannot be told, since a fault of the language stands against them.
func (p *Pass) asked(clause *model.Sooner) (jobs []*model.Job, known bool) {
	if !clause.Of.Set() || clause.Of.Name() == p.Job.File.Name() {
		return []*model.Job{p.Job}, true
	}
	others := p.Job.Beside(clause.Of.Name())
	for _, other := range others {
		if other.MachineName() == p.Job.MachineName() && other.MachineTitle() == p.Job.MachineTitle() && (other.Variant == p.Job.Variant || other.Variant == "") {
			jobs = append(jobs, other)
		}
	}
	return jobs, len(others) > 0
}

// readings are the values a clause may mean, and the names of all that are asked for there.
func (p *Pass) readings(clause *model.Sooner) (meant []model.Reading, names []string, known bool) {
	jobs, known := p.asked(clause)
	for _, job := range jobs {
		for _, one := range job.Readings() {
			switch {
			case one.Name == "":
				known = false // it is named by several things, in the words of the page
			case strings.EqualFold(strings.TrimSpace(one.Name), strings.TrimSpace(clause.Reading.Text)):
				meant = append(meant, one)
			}
			names = append(names, one.Name)
		}
	}
	return meant, names, known
}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "interval/no-such-reading", Severity: finding.Error, Title: "The day of a job hangs on a reading that no card asks for",
		Why:     "It is never read under that name, so the job never comes sooner, and nobody sees it.",
		Source:  "the language itself: a reading is known by its name on the record strip",
		Setting: quiet,
		Bad:     "sooner = [{ reading = \"Slak\", over = \"35 mm\", every = \"50 h\" }]\n[[step]]\nmeasure = \"the slack of the chain\"\nlimit = \"max 40 mm\"\nreading = \"Slack\"\noutside = \"Set the chain.\"\n",
		Good:    "sooner = [{ reading = \"Slack\", over = \"35 mm\", every = \"50 h\" }]\n[[step]]\nmeasure = \"the slack of the chain\"\nlimit = \"max 40 mm\"\nreading = \"Slack\"\noutside = \"Set the chain.\"\n",
	},
	Everywhere: true,
	Job: func(p *Pass) {
		for _, clause := range p.Job.Procedure.Sooner {
			meant, names, known := p.readings(clause)
			if !clause.Reading.Set() || !known || len(meant) > 0 {
				continue
			}
			whose := "this card"
			if clause.Of.Set() {
				whose = clause.Of.Text
			}
			if jobs, _ := p.asked(clause); len(jobs) == 0 {
				p.Found(finding.Finding{Place: clause.Of.At, Summary: fmt.Sprintf("%q is a procedure of another machine or version, so what it reads is not read here", clause.Of.Text),
					Help: "Name a procedure of this machine, or leave of out for a reading of this card itself."})
				continue
			}
			slices.Sort(names)
			names = slices.Compact(names)
			found := finding.Finding{Place: clause.Reading.At, Summary: fmt.Sprintf("%s asks for no reading %q", whose, clause.Reading.Text),
				Help: "Give a step that measures it reading = \"…\" with that name."}
			if len(names) > 0 {
				found.Help = "Write one of: " + strings.Join(names, ", ") + "."
			}
			if near := nearestOf(clause.Reading.Text, names); near != "" {
				found.Help = fmt.Sprintf("Write %q if that is meant. Asked for are: %s.", near, strings.Join(names, ", "))
				found.Fixes = write(near, clause.Reading.At)
			}
			p.Found(found)
		}
	},
})
