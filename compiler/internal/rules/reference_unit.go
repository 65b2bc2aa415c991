package rules

import (
	"fmt"
	"strconv"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var unitVersion = add(Rule{
	Rule: finding.Rule{
		ID: "reference/unit-version", Severity: finding.Error, Title: "A machine of the shop is a version there is not, or does not say which it is",
		Why:     "What is due, and which card is taken, hangs on the version.",
		Source:  "the language itself: a version is one of the variants of the machine",
		Setting: version,
		Bad:     "[machine]\nname = \"deck\"\ntitle = \"Deck\"\nmanual = \"Plate\"\nvariants = [\"short\", \"long\"]\n[unit.yard]\nmachine = \"deck\"\nversion = \"wide\"\n",
		Good:    "[machine]\nname = \"deck\"\ntitle = \"Deck\"\nmanual = \"Plate\"\nvariants = [\"short\", \"long\"]\n[unit.yard]\nmachine = \"deck\"\nversion = \"long\"\n",
	},
})

var unitUse = add(Rule{
	Rule: finding.Rule{
		ID: "interval/use", Severity: finding.Error, Title: "The use of a machine cannot be reckoned with",
		Why:     "When a job is due is reckoned from it.",
		Source:  "the language itself: parts of the year from a month and day to another, in what the meter counts",
		Setting: version,
		Bad:     "[machine]\nname = \"deck\"\ntitle = \"Deck\"\nmanual = \"Plate\"\n[unit.yard]\nmachine = \"deck\"\nuse = [{ from = \"April\", to = \"10-31\", week = \"30 h\" }]\n",
		Good:    "[machine]\nname = \"deck\"\ntitle = \"Deck\"\nmanual = \"Plate\"\n[unit.yard]\nmachine = \"deck\"\nuse = [{ from = \"04-01\", to = \"10-31\", week = \"30 h\" }]\n",
	},
})

// Units tells of the machines of the shop that a file describes.
func Units(file *model.File) []finding.Finding {
	var out []finding.Finding
	for _, unit := range file.Units() {
		pass := &Pass{File: file, rule: unitVersion, out: &out}
		if machine := file.Described(unit.Machine.Name()); machine != nil {
			known := machine.Variants.Names()
			switch {
			case unit.Version.Set() && !machine.Variants.Has(unit.Version.Text):
				help := "Take version out: the machine has no versions."
				if len(known) > 0 {
					help = "Write one of: " + strings.Join(known, ", ") + "."
				}
				pass.Found(finding.Finding{Place: unit.Version.At, Summary: fmt.Sprintf("%q is no version of %s", unit.Version.Text, unit.Machine.Text), Help: help})
			case !unit.Version.Set() && len(known) > 0:
				pass.Found(finding.Finding{Place: unit.Header, Summary: fmt.Sprintf("it is not said which version of %s it is", unit.Machine.Text), Help: "Write version = \"" + known[0] + "\", or another of: " + strings.Join(known, ", ") + "."})
			}
		}
		pass = &Pass{File: file, rule: unitUse, out: &out}
		for _, use := range unit.Use {
			for _, end := range []model.Text{use.From, use.To} {
				if end.Set() && !monthAndDay(end.Text) {
					pass.Found(finding.Finding{Place: end.At, Summary: fmt.Sprintf("%q is no month and day", end.Text), Help: "Write the month and the day with two figures each, such as \"04-01\"."})
				}
			}
			if use.From.Set() != use.To.Set() {
				pass.Found(finding.Finding{Place: use.Header, Summary: "a part of the year has one end only", Help: "Write from and to, or neither for the whole year."})
			}
		}
	}
	return out
}

// monthAndDay reports whether a text is a day that some year has: "02-29".
func monthAndDay(text string) bool {
	month, day, _ := strings.Cut(text, "-")
	m, bad := strconv.Atoi(month)
	d, worse := strconv.Atoi(day)
	if bad != nil || worse != nil || len(text) != 5 || m < 1 || m > 12 || d < 1 {
		return false
	}
	return d <= []int{31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}[m-1]
}
