package rules

import (
	"fmt"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
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
		Bad:     "[machine]\nname = \"deck\"\ntitle = \"Deck\"\nmanual = \"Plate\"\n[unit.yard]\nmachine = \"deck\"\nuse = [{ from = \"April\", to = \"10-31\", week = \"30 h\" }, { from = \"11-01\", to = \"03-31\", week = \"3 h\" }]\n",
		Good:    "[machine]\nname = \"deck\"\ntitle = \"Deck\"\nmanual = \"Plate\"\n[unit.yard]\nmachine = \"deck\"\nuse = [{ from = \"04-01\", to = \"10-31\", week = \"30 h\" }, { from = \"11-01\", to = \"03-31\", week = \"3 h\" }]\n",
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
			if week := use.Week; week.OK && week.Dimension == quantity.Time {
				if most, ok := week.Highest(); ok && most.Cmp(big.NewRat(secondsOfWeek, 1)) > 0 {
					pass.Found(finding.Finding{Place: week.At, Summary: fmt.Sprintf("%s in a week are more than it has", week.Text.Text), Help: "Write how much the machine runs in a week, 168 h at the most."})
				}
			}
		}
		pass.counted(unit)
		pass.year(unit)
	}
	return out
}

const secondsOfWeek = 7 * secondsOfDay

// counted tells of what the meter of a machine of the shop does not count.
func (p *Pass) counted(unit *model.Unit) {
	machine := p.File.Described(unit.Machine.Name())
	if machine == nil {
		return
	}
	amounts := []model.Amount{unit.MeterThen}
	for _, use := range unit.Use {
		amounts = append(amounts, use.Week)
	}
	meter := machine.MeterUnit()
	for _, amount := range amounts {
		if !amount.OK || amount.Dimension != quantity.Calendar && model.Counted(amount, meter) {
			continue
		}
		found := finding.Finding{Place: amount.At, Summary: fmt.Sprintf("%s is said of a machine that has no meter", amount.Text.Text), Help: "Take it out, or write what the meter of the machine counts: meter = \"hours\"."}
		if meter != "" {
			found.Summary, found.Help = fmt.Sprintf("%s is not in %s, which the meter of %s counts", amount.Text.Text, meter, unit.Machine.Text), fmt.Sprintf("Write it in %s, or put right what the meter of the machine counts.", meter)
		}
		p.Found(found)
	}
}

// year tells of days of the year that two parts of the use of a machine take in, or none.
func (p *Pass) year(unit *model.Unit) {
	if len(unit.Use) == 0 {
		return
	}
	type day struct{ month, day int }
	var days []day
	of := map[day]int{} // part of a day, from 1
	for month, n := range monthDays {
		for d := range n {
			days = append(days, day{month + 1, d + 1})
		}
	}
	written := func(d day) string { return fmt.Sprintf("%02d-%02d", d.month, d.day) }
	for i, use := range unit.Use {
		from, to := 0, len(days)-1
		for end, text := range map[*int]model.Text{&from: use.From, &to: use.To} {
			if text.Set() {
				*end = slices.IndexFunc(days, func(d day) bool { return written(d) == text.Text })
			}
		}
		if from < 0 || to < 0 || use.From.Set() != use.To.Set() {
			return // told already
		}
		for at := from; ; at = (at + 1) % len(days) {
			if other := of[days[at]]; other > 0 {
				p.Found(finding.Finding{Place: use.Header, Summary: fmt.Sprintf("%s is in two parts of the year", written(days[at])), Help: "Let each part end before the next begins.",
					Related: []finding.Related{{Place: unit.Use[other-1].Header, Text: "the other part"}}})
				return
			}
			of[days[at]] = i + 1
			if at == to {
				break
			}
		}
	}
	leap, before := day{2, 29}, day{2, 28}
	if of[leap] == 0 { // is as the day before
		of[leap] = of[before]
	}
	if first := slices.IndexFunc(days, func(d day) bool { return of[d] == 0 }); len(unit.Use) > 0 && first >= 0 {
		for of[days[(first+len(days)-1)%len(days)]] == 0 { // it began before New Year
			first = (first + len(days) - 1) % len(days)
		}
		last := first
		for of[days[(last+1)%len(days)]] == 0 {
			last = (last + 1) % len(days)
		}
		p.Found(finding.Finding{Place: unit.Use[0].Header, Summary: fmt.Sprintf("%s to %s are in no part of the year", written(days[first]), written(days[last])),
			Help: "Write these days too; where the machine stands then, with week = \"0 h\"."})
	}
}

// monthDays are the days of the months of a leap year, from January.
var monthDays = []int{31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// monthAndDay reports whether a text is a day that some year has: "02-29".
func monthAndDay(text string) bool {
	month, day, _ := strings.Cut(text, "-")
	m, bad := strconv.Atoi(month)
	d, worse := strconv.Atoi(day)
	if bad != nil || worse != nil || len(text) != 5 || m < 1 || m > 12 || d < 1 {
		return false
	}
	return d <= monthDays[m-1]
}
