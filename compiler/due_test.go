package compiler

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/source"
)

var updateDue = flag.Bool("update", false, "rewrite testdata/due")

// looked is a small job at a machine, due as its when says.
func looked(machine, when string) string {
	return `benchleaf = 1

[procedure]
title = "Look over the chain oiler"
machine = "` + machine + `"
revision = "A"
date = 2024-01-15
author = "R. Aldous"
who = "Anyone who runs the loader"
hands-on = "5 min"
` + when + `
no-isolation = "Nothing is touched; look from outside the guard"
no-close = "Nothing is opened"
tools = []
supplies = []
spares = []
wear = ["eye-protection"]
manual = "Operator's manual, section 4"

[[step]]
inspect = "the oil level in the sight glass"
expect = "between the two marks"
outside = "Fill the oiler by its own card before the next shift."

[[step]]
measure = "the slack of the chain"
limit = "max 40 mm"
reading = "Slack"
outside = "Set the chain by its own card before the next shift."
`
}

const (
	bareShop = "benchleaf = 1\nuse = [\"loader.toml\"]\n\n[shop]\ntitle = \"Fernhollow Sawmill\"\n"
	loader   = "benchleaf = 1\n\n[machine]\nname = \"loader\"\ntitle = \"Bark loader\"\nmaker = \"Own build\"\nmodel = \"BL 1\"\nmanual = \"Operator's manual BL 1\"\nvariants = [\"short\", \"long\"]\nmeter = \"hours\"\n"
)

// one is a shop with one loader that went into service on a day.
func one(inService string) string {
	return bareShop + "\n[unit.yard]\nmachine = \"loader\"\nversion = \"short\"\n" + inService
}

// written is an entry of a book: its keys, one after the other.
func written(keys ...string) string { return "\n[[entry]]\n" + strings.Join(keys, "\n") + "\n" }

// worked is a time the job was done.
func worked(day string, more ...string) string {
	return written(append([]string{`procedure = "look"`, `machine = "Bark loader"`, "date = " + day}, more...)...)
}

// slackOf is what was read of the slack of the chain, of the entry before.
func slackOf(value string, more ...string) string {
	return "\n[[entry.reading]]\nwhat = \"Slack\"\nvalue = \"" + value + "\"\n" + strings.Join(more, "\n") + "\n"
}

// read are readings of the meter, 10 days apart: the first on 2026-01-01 after some tens of
// days, the meter at so many hours, and so many more each time.
func read(tens, count int, hours, more float64) string {
	out := ""
	for i := range count {
		day := time.Date(2026, 1, 1+10*(tens+i), 0, 0, 0, 0, time.UTC)
		out += written(`machine = "Bark loader"`, "date = "+day.Format(time.DateOnly), fmt.Sprintf("meter = \"%g h\"", hours+float64(i)*more))
	}
	return out
}

// told is a row on a line: what is empty is left away.
func told(row plan.DueRow) string {
	span := ""
	if row.Early != "" || row.Late != "" {
		span = fmt.Sprintf("(%s to %s)", first(row.Early, row.Day), first(row.Late, row.Day))
	}
	last := strings.Join(strings.Fields(row.LastDay+" "+row.LastMeter), " ")
	if row.OldMeter {
		last += " before"
	}
	if last != "" {
		last = "last " + last
	}
	parts := slices.DeleteFunc([]string{row.Unit, row.State, row.Day, span, row.Meter, row.By, last, row.Note}, func(part string) bool { return part == "" })
	return strings.ReplaceAll(strings.Join(parts, " | "), "\u00a0", " ")
}

func dueIn(t *testing.T, files map[string]string, asked Asked, book string) (*Due, error) {
	t.Helper()
	var sources []*source.File
	for name, text := range files {
		sources = append(sources, source.New(name, []byte(text)))
	}
	slices.SortFunc(sources, func(a, b *source.File) int { return strings.Compare(a.Path, b.Path) })
	result := Compile(Input{Files: sources})
	for _, job := range result.Jobs {
		require.False(t, job.Blocked, "%v", result.Findings)
	}
	return result.Due(Look{}, asked, strings.NewReader(book))
}

// Each case by hand. Day n is n days after 2026-01-01: day 30 is 01-31, 58 is 02-28, 60 is
// 03-02, 90 is 04-01, 100 is 04-11 and 120 is 05-01. Readings that rise evenly do not
// scatter, so the width is 25 %/√(stretches between readings).
func TestWhatIsDueByHand(t *testing.T) {
	words := func(when string) map[string]string {
		return map[string]string{"look.toml": looked("Bark loader", when)}
	}
	shop := func(when, shop string) map[string]string {
		return map[string]string{"look.toml": looked("loader", when), "shop.toml": shop, "loader.toml": loader}
	}
	const (
		january  = "in-service = 2026-01-01\n"
		schedule = "next = \"schedule\"\n"
		march    = "in-service = 2024-03-01\n"
	)
	by := func(shop string) string { return strings.Replace(shop, "[shop]\n", "[shop]\n"+schedule, 1) }
	two := bareShop + "\n[unit.back]\nmachine = \"loader\"\nversion = \"long\"\n\n[unit.front]\nmachine = \"loader\"\nversion = \"short\"\n"
	slack := func(clause string) string {
		return "every = \"6 months\"\nsooner = [{ reading = \"Slack\", " + clause + " }]"
	}
	oiled := strings.Replace(looked("loader", `when = "On demand"`), "Look over", "Oil", 1)
	for name, c := range map[string]struct {
		files    map[string]string
		asked    Asked
		book     string
		want     []string
		problems []string
	}{
		// 2024-02-29 + 12 months: there is no 2025-02-29. 27 days away.
		"leap day": {words(`every = "12 months"`), Asked{On: "2025-02-01"}, worked("2024-02-29"),
			[]string{"Bark loader | later | 2025-02-28 | calendar | last 2024-02-29"}, nil},
		// 2024-02-29 + 48 months: there is one again.
		"leap day to leap day": {words(`every = "4 years"`), Asked{On: "2028-02-29"}, worked("2024-02-29"),
			[]string{"Bark loader | due | 2028-02-29 | calendar | last 2024-02-29"}, nil},
		// 31 January + 1 month: the last of February, 14 days away.
		"end of a month": {words(`every = "1 month"`), Asked{On: "2026-02-14"}, worked("2026-01-31"),
			[]string{"Bark loader | soon | 2026-02-28 | calendar | last 2026-01-31"}, nil},
		// The same, 15 days away.
		"a day before it is soon": {words(`every = "1 month"`), Asked{On: "2026-02-13"}, worked("2026-01-31"),
			[]string{"Bark loader | later | 2026-02-28 | calendar | last 2026-01-31"}, nil},
		// Days 0 to 90 at 3 h a day: 270 h. 30 h are left: 10 days. 9 stretches: 8.33 %.
		// 9 days bring 27 · 1.083 = 29.2 h at the most, so not before day 100; 11 days bring
		// 33 · 0.917 = 30.25 h at the least.
		"first": {shop("every = \"2000 h\"\nfirst = \"300 h\"", one(january)), Asked{On: "2026-04-01"}, read(1, 9, 30, 30),
			[]string{"yard | soon | 2026-04-11 | (2026-04-11 to 2026-04-12) | 300 h | meter"}, nil},
		// At 300 h, read on day 100: it was reached between day 91 and day 100, by 3 h a day on day 100.
		"first is reached": {shop("every = \"2000 h\"\nfirst = \"300 h\"", one(january)), Asked{On: "2026-04-11"}, read(1, 10, 30, 30),
			[]string{"yard | due | 2026-04-11 | (2026-04-02 to 2026-04-11) | 300 h | meter"}, nil},
		// Done at 300 h, from then on every 2000 h: at 2300 h. 2000/3 = 666.7, so 667 days after
		// 2026-04-11. 10 stretches: 7.91 %. 2000/(3 · 1.0791) = 617.8 and 2000/(3 · 0.9209) = 723.9.
		"then": {shop("every = \"2000 h\"\nfirst = \"300 h\"", one(january)), Asked{On: "2026-04-11"}, read(1, 9, 30, 30) + worked("2026-04-11", `meter = "300 h"`),
			[]string{"yard | later | 2028-02-07 | (2027-12-20 to 2028-04-04) | 2300 h | meter | last 2026-04-11 300 h"}, nil},
		// 2 h a day, done on day 10 at 20 h: at 120 h, day 60, read on it; the reading before was on day 50.
		// 6 months after 2026-01-11 would be 2026-07-11.
		"both, the meter first": {shop(`every = ["100 h", "6 months"]`, one(january)), Asked{On: "2026-04-11"}, worked("2026-01-11", `meter = "20 h"`) + read(2, 9, 40, 20),
			[]string{"yard | overdue | 2026-03-02 | (2026-02-21 to 2026-03-02) | 120 h | meter | last 2026-01-11 20 h"}, nil},
		// 2 h in ten days: 102 h only (102 − 20)/0.2 = 410 days after day 100.
		"both, the calendar first": {shop(`every = ["100 h", "6 months"]`, one(january)), Asked{On: "2026-04-11"}, worked("2026-01-11", `meter = "2 h"`) + read(2, 9, 4, 2),
			[]string{"yard | later | 2026-07-11 | 102 h | calendar | last 2026-01-11 2 h"}, nil},
		// Done on day 0 at 1000 h; on day 50, at 1100 h, another meter from 0; on day 100 that shows 100 h.
		// Due after 300 h, of which 200 are used: 200 h on the new meter, 100/2 = 50 days after day 100.
		// 10 stretches: 100/(2 · 1.0791) = 46.3 and 100/(2 · 0.9209) = 54.3. What it showed when it
		// was done stays 1000 h.
		"another meter": {shop(`every = "300 h"`, one("")), Asked{On: "2026-04-11"},
			worked("2026-01-01", `meter = "1000 h"`) + read(1, 4, 1020, 20) + written(`unit = "yard"`, "date = 2026-02-20", `meter = "1100 h"`, `new-meter = "0 h"`) + read(6, 5, 20, 20),
			[]string{"yard | later | 2026-05-31 | (2026-05-28 to 2026-06-05) | 200 h | meter | last 2026-01-01 1000 h before"}, nil},
		// Due at 1050 h of the meter that went at 1100 h: the new one never shows that. Reached
		// between days 20 and 30, at 2 h a day on day 25.
		"due on the meter that is gone": {shop(`every = "50 h"`, one("")), Asked{On: "2026-04-11"},
			worked("2026-01-01", `meter = "1000 h"`) + read(1, 4, 1020, 20) + written(`unit = "yard"`, "date = 2026-02-20", `meter = "1100 h"`, `new-meter = "0 h"`) + read(6, 5, 20, 20),
			[]string{"yard | overdue | 2026-01-26 | (2026-01-22 to 2026-01-31) | meter | last 2026-01-01 1000 h before"}, nil},
		// 2 h a day, but on day 60 somebody wrote 12 h for 120: the sixth entry. 300 h are reached
		// 50 days after day 100. Nine stretches are left: 100/(2 · 1.083) = 46.2, 100/(2 · 0.917) = 54.5.
		"a meter does not go backwards": {shop(`every = "300 h"`, one(january)), Asked{On: "2026-04-11"}, read(1, 5, 20, 20) + read(6, 1, 12, 0) + read(7, 4, 140, 20),
			[]string{"yard | later | 2026-05-31 | (2026-05-28 to 2026-06-05) | 300 h | meter"},
			[]string{"entry 6 of the service book: the reading of the meter of yard is below an earlier reading, that of entry 5, and is left aside"}},
		"never done, nobody knows since when": {words(`every = "12 months"`), Asked{On: "2026-05-01"}, "",
			[]string{"Bark loader | unknown | never done, and no day in service is written"}, nil},
		"never done, since it went into service": {shop(`every = "12 months"`, one(march)), Asked{On: "2026-05-01"}, "",
			[]string{"yard | overdue | 2025-03-01 | calendar"}, nil},
		// The point of the grid 2025-03-01 is 28 days away, so it is done; the next is a year on.
		"early, from when it was done": {shop(`every = "12 months"`, one(march)), Asked{On: "2026-01-01"}, worked("2025-02-01"),
			[]string{"yard | later | 2026-02-01 | calendar | last 2025-02-01"}, nil},
		"early, from the schedule": {shop(`every = "12 months"`, by(one(march))), Asked{On: "2026-01-01"}, worked("2025-02-01"),
			[]string{"yard | later | 2026-03-01 | calendar | last 2025-02-01"}, nil},
		// 61 days behind 2025-03-01 and 304 before 2026-03-01.
		"late, from when it was done": {shop(`every = "12 months"`, one(march)), Asked{On: "2026-01-01"}, worked("2025-05-01"),
			[]string{"yard | later | 2026-05-01 | calendar | last 2025-05-01"}, nil},
		"late, from the schedule": {shop(`every = "12 months"`, by(one(march))), Asked{On: "2026-01-01"}, worked("2025-05-01"),
			[]string{"yard | later | 2026-03-01 | calendar | last 2025-05-01"}, nil},
		// Done at 220 h of the grid 100, 200, 300: that was 200, so at 300 h. 80 h are left on day
		// 110: 40 days. 11 stretches, 7.54 %: 80/(2 · 1.0754) = 37.2 and 80/(2 · 0.9246) = 43.3.
		"late by the meter, from the schedule": {shop(`every = "100 h"`, by(one(january))), Asked{On: "2026-04-21"}, read(1, 10, 20, 20) + worked("2026-04-21", `meter = "220 h"`),
			[]string{"yard | later | 2026-05-31 | (2026-05-29 to 2026-06-04) | 300 h | meter | last 2026-04-21 220 h"}, nil},
		// The job is for the long version alone, and of the two loaders the back one is long.
		"a version": {map[string]string{"look.toml": looked("loader", "every = \"12 months\"\nfor = [\"long\"]"), "shop.toml": two, "loader.toml": loader}, Asked{On: "2026-05-01"}, worked("2025-06-01", `variant = "long"`),
			[]string{"back | later | 2026-06-01 | calendar | last 2025-06-01"}, nil},
		// Without a table [unit.NAME] there is one loader, called as its kind.
		"no unit": {shop(`every = "12 months"`, bareShop), Asked{On: "2026-05-01"}, worked("2025-05-10"),
			[]string{"loader | soon | 2026-05-10 | calendar | last 2025-05-10"}, nil},
		"which of the two": {shop(`every = "12 months"`, two), Asked{On: "2026-05-01"}, worked("2025-06-01") + worked("2025-07-01", `unit = "front"`) + worked("2025-08-01", `unit = "side"`) + worked("2025-09-01", `variant = "long"`),
			[]string{"front | later | 2026-07-01 | calendar | last 2025-07-01", "back | later | 2026-09-01 | calendar | last 2025-09-01"},
			[]string{`entry 1 of the service book: it does not say which of the machines it is of; write unit = "back", or another of: back, front`, `entry 3 of the service book: no machine here is named "side"; there are: back, front`}},
		"on condition": {words(`when = "When the chain squeaks"`), Asked{On: "2026-05-01"}, worked("2025-05-10"),
			[]string{"Bark loader | on-condition | last 2025-05-10 | When the chain squeaks"}, nil},
		"of tomorrow": {words(`every = "12 months"`), Asked{On: "2026-05-01"}, worked("2025-05-10") + worked("2026-05-02"),
			[]string{"Bark loader | soon | 2026-05-10 | calendar | last 2025-05-10"}, nil},
		"put right": {words(`every = "12 months"`), Asked{On: "2026-05-01"}, worked("2025-05-10", "number = 7") + worked("2025-05-01", "number = 8", "corrects = 7"),
			[]string{"Bark loader | due | 2026-05-01 | calendar | last 2025-05-01"}, nil},
		"outside its limit": {words(`every = "12 months"`), Asked{On: "2026-05-01"}, worked("2025-05-10") + "\n[[entry.reading]]\nwhat = \"Slack\"\nvalue = \"34 mm\"\noutside = true\n",
			[]string{"Bark loader | soon | 2026-05-10 | calendar | last 2025-05-10 | readings outside at the last time: 1"}, nil},
		"by a day": {shop(`every = "12 months"`, two), Asked{On: "2026-05-01", By: "2026-07-01"}, worked("2025-07-01", `unit = "front"`) + worked("2025-07-02", `unit = "back"`),
			[]string{"front | later | 2026-07-01 | calendar | last 2025-07-01"}, nil},
		// 200 h on day 100, and 280 h on day 120: 280/120 = 2.333 h a day, 20/2.333 = 8.6 days.
		// Ten stretches are 3.33 h off, one 33.3 h: s² = (10 · 3.33²/10 + 33.3²/20)/10 = 6.67.
		// After 4 days 9.3 + 2·√(6.67 · (4 + 16/120)) = 19.8 h at the most, after 5 days 23.5 h;
		// after 18 days 42 − 23.5 = 18.5 h at the least, after 19 days 20.1 h.
		"a meter read just now": {shop(`every = "300 h"`, one(january)), Asked{On: "2026-05-01", Meters: map[string]string{"yard": "280 h"}}, read(1, 10, 20, 20),
			[]string{"yard | soon | 2026-05-10 | (2026-05-06 to 2026-05-20) | 300 h | meter"}, nil},
		// It stood at 0 h from day 10 to day 90, though 7 h a week are written: 1 h a day from day 90.
		// A use alone has 25 %: 100/1.25 = 80 and 100/0.75 = 133.3 days.
		"a meter that stood, and its use": {shop(`every = "100 h"`, one(january+"use = [{ week = \"7 h\" }]\n")), Asked{On: "2026-04-01"}, read(1, 9, 0, 0),
			[]string{"yard | later | 2026-07-10 | (2026-06-20 to 2026-08-13) | 100 h | meter | the meter did not move, so it is reckoned by the use that is written"}, nil},
		"a meter that stood, and no use": {shop(`every = "100 h"`, one(january)), Asked{On: "2026-04-01"}, read(1, 9, 0, 0),
			[]string{"yard | unknown | 100 h | the meter did not move"}, nil},
		// Hours, and no meter that counts them: the calendar alone is known, or nothing.
		"hours and no meter": {map[string]string{"look.toml": looked("loader", `every = ["50 h", "12 months"]`), "shop.toml": one(""), "loader.toml": strings.Replace(loader, `"hours"`, `"none"`, 1)}, Asked{On: "2026-04-01"}, worked("2025-06-01"),
			[]string{"yard | later | 2026-06-01 | calendar | last 2025-06-01 | no meter counts its hours"}, nil},
		"hours alone and a meter of cycles": {map[string]string{"look.toml": looked("loader", `every = "50 h"`), "shop.toml": one(""), "loader.toml": strings.Replace(loader, `"hours"`, `"cycles"`, 1)}, Asked{On: "2026-04-01"}, worked("2025-06-01"),
			[]string{"yard | unknown | last 2025-06-01 | no meter counts its hours"}, nil},
		// Entries of a machine that files tell of, and that no job here is of, are no matter.
		"another machine": {map[string]string{"look.toml": looked("splitter", `every = "12 months"`), "loader.toml": loader,
			"shop.toml":     strings.Replace(two, `"loader.toml"`, `"loader.toml", "splitter.toml"`, 1),
			"splitter.toml": strings.NewReplacer("loader", "splitter", "Bark", "Log").Replace(loader)}, Asked{On: "2026-05-01"},
			worked("2025-06-01", `unit = "front"`) + worked("2025-06-02") + written(`procedure = "look"`, `machine = "Log splitter"`, "date = 2025-05-10"),
			[]string{"splitter | soon | 2026-05-10 | calendar | last 2025-05-10"}, nil},
		// Six months after 2026-01-10 would be 2026-07-10. The slack was 38 mm when it was done, and
		// 38 is more than 35: a month after 2026-01-10, 9 days away.
		"sooner by its own reading": {words(slack("over = \"35 mm\", every = \"1 month\"")), Asked{On: "2026-02-01"}, worked("2026-01-10") + slackOf("38 mm"),
			[]string{"Bark loader | soon | 2026-02-10 | calendar | last 2026-01-10 | sooner: Slack was 38 mm on 2026-01-10, over 35 mm"}, nil},
		// 35 mm are not more than 35 mm, and 1.5 in are 38.1 mm.
		"at the value itself": {words(slack("over = \"35 mm\", every = \"1 month\"")), Asked{On: "2026-02-01"}, worked("2026-01-10") + slackOf("35 mm"),
			[]string{"Bark loader | later | 2026-07-10 | calendar | last 2026-01-10"}, nil},
		"in another unit": {words(slack("over = \"35 mm\", every = \"1 month\"")), Asked{On: "2026-02-01"}, worked("2026-01-10") + slackOf("1.5 in"),
			[]string{"Bark loader | soon | 2026-02-10 | calendar | last 2026-01-10 | sooner: Slack was 1.5 in on 2026-01-10, over 35 mm"}, nil},
		// Only the last one counts: 30 mm on 2026-01-20, that stands further up in the book.
		// Six months after 2026-01-20.
		"right again": {words(slack("over = \"35 mm\", every = \"1 month\"")), Asked{On: "2026-02-01"}, worked("2026-01-20") + slackOf("30 mm") + worked("2026-01-10") + slackOf("38 mm"),
			[]string{"Bark loader | later | 2026-07-20 | calendar | last 2026-01-20"}, nil},
		// The 38 mm were 28, and what is read tomorrow is not read yet.
		"a reading put right": {words(slack("over = \"35 mm\", every = \"1 month\"")), Asked{On: "2026-02-01"},
			worked("2026-01-10", "number = 7") + slackOf("38 mm") + worked("2026-01-10", "number = 8", "corrects = 7") + slackOf("28 mm") + worked("2026-02-02", "number = 9") + slackOf("40 mm"),
			[]string{"Bark loader | later | 2026-07-10 | calendar | last 2026-01-10"}, nil},
		// Done again without a reading: the chain is taken to be as long as it was last. A month after 2026-01-20.
		"an interval of a reading stays": {words(slack("over = \"35 mm\", every = \"1 month\"")), Asked{On: "2026-02-01"}, worked("2026-01-10") + slackOf("38 mm") + worked("2026-01-20"),
			[]string{"Bark loader | later | 2026-02-20 | calendar | last 2026-01-20 | sooner: Slack was 38 mm on 2026-01-10, over 35 mm"}, nil},
		// Of 3 weeks for what is over 35 mm and 1 month for what is outside, the 3 weeks: 2026-01-10 + 21 days.
		"the soonest of several": {words(slack("outside = true, every = \"1 month\" }, { reading = \"Slack\", over = \"35 mm\", every = \"3 weeks\"")), Asked{On: "2026-02-01"}, worked("2026-01-10") + slackOf("38 mm", "outside = true"),
			[]string{"Bark loader | overdue | 2026-01-31 | calendar | last 2026-01-10 | sooner: Slack was 38 mm on 2026-01-10, over 35 mm; readings outside at the last time: 1"}, nil},
		// By the schedule it would come on 2026-03-01 and 2026-09-01. The month counts from when it was done.
		"a reading beside a schedule": {shop(slack("under = \"4 mm\", every = \"1 month\""), by(one(march))), Asked{On: "2026-03-20"}, worked("2026-03-05") + slackOf("3.5 mm"),
			[]string{"yard | later | 2026-04-05 | calendar | last 2026-03-05 | sooner: Slack was 3.5 mm on 2026-03-05, under 4 mm"}, nil},
		// 2 h a day: 200 h on day 100. Done on day 0 at 0 h, due at 300 h, but for the reading at
		// 220 h: 10 days after day 100. Ten stretches, 7.91 %: 20/(2 · 1.0791) = 9.3 and 20/(2 · 0.9209) = 10.9.
		"sooner by the meter": {shop("every = \"300 h\"\nsooner = [{ reading = \"Slack\", over = \"35 mm\", every = \"220 h\" }]", one("")), Asked{On: "2026-04-11"}, worked("2026-01-01", `meter = "0 h"`) + slackOf("36 mm") + read(1, 10, 20, 20),
			[]string{"yard | soon | 2026-04-21 | (2026-04-21 to 2026-04-22) | 220 h | meter | last 2026-01-01 0 h | sooner: Slack was 36 mm on 2026-01-01, over 35 mm"}, nil},
		// Still outside when the work ended: not done, so due on that day, which is past.
		"at once, by its own end": {words(slack("outside = true")), Asked{On: "2026-02-01"}, worked("2026-01-10") + slackOf("38 mm", "outside = true"),
			[]string{"Bark loader | overdue | 2026-01-10 | reading | last 2026-01-10 | sooner: Slack was 38 mm on 2026-01-10, outside its limit; readings outside at the last time: 1"}, nil},
		// Done once more on the same day, further down in the book.
		"at once, and done again": {words(slack("outside = true")), Asked{On: "2026-02-01"}, worked("2026-01-10") + slackOf("38 mm", "outside = true") + worked("2026-01-10"),
			[]string{"Bark loader | later | 2026-07-10 | calendar | last 2026-01-10"}, nil},
		// Read by another card on 2026-02-01, which is today; the job was done before that.
		"at once, by another card": {map[string]string{"look.toml": looked("loader", "when = \"When the chain squeaks\"\nsooner = [{ reading = \"Slack\", of = \"oil\", over = \"35 mm\" }]"), "oil.toml": oiled, "shop.toml": one(""), "loader.toml": loader},
			Asked{On: "2026-02-01"}, worked("2026-01-10") + strings.Replace(worked("2026-02-01"), `"look"`, `"oil"`, 1) + slackOf("38 mm"),
			[]string{"yard | due | 2026-02-01 | reading | last 2026-01-10 | When the chain squeaks; sooner: Slack was 38 mm on 2026-02-01, over 35 mm", "yard | on-condition | last 2026-02-01 | On demand"}, nil},
		// The same day, the other card first or last in the book: it was answered.
		"another card is answered": {map[string]string{"look.toml": looked("loader", "when = \"When the chain squeaks\"\nsooner = [{ reading = \"Slack\", of = \"oil\", over = \"35 mm\" }]"), "oil.toml": oiled, "shop.toml": one(""), "loader.toml": loader},
			Asked{On: "2026-02-01"}, worked("2026-02-01") + strings.Replace(worked("2026-02-01"), `"look"`, `"oil"`, 1) + slackOf("38 mm"),
			[]string{"yard | on-condition | last 2026-02-01 | When the chain squeaks", "yard | on-condition | last 2026-02-01 | On demand"}, nil},
		// The front loader's chain says nothing of the back one's.
		"of another machine of the kind": {shop(slack("over = \"35 mm\", every = \"1 month\""), two), Asked{On: "2026-02-01"}, worked("2026-01-10", `unit = "front"`) + slackOf("38 mm") + worked("2026-01-10", `unit = "back"`) + slackOf("30 mm"),
			[]string{"front | soon | 2026-02-10 | calendar | last 2026-01-10 | sooner: Slack was 38 mm on 2026-01-10, over 35 mm", "back | later | 2026-07-10 | calendar | last 2026-01-10"}, nil},
		"a reading in words": {words(slack("over = \"35 mm\", every = \"1 month\"")), Asked{On: "2026-02-01"}, worked("2026-01-10") + slackOf("loose"),
			[]string{"Bark loader | later | 2026-07-10 | calendar | last 2026-01-10"},
			[]string{`entry 1 of the service book: the reading "Slack" of Bark loader is "loose", which cannot be held against 35 mm`}},
		"a reading of another kind": {words(slack("over = \"35 mm\", every = \"1 month\"")), Asked{On: "2026-02-01"}, worked("2026-01-10") + slackOf("35 bar"),
			[]string{"Bark loader | later | 2026-07-10 | calendar | last 2026-01-10"},
			[]string{`entry 1 of the service book: the reading "Slack" of Bark loader is "35 bar", which cannot be held against 35 mm`}},
	} {
		list, err := dueIn(t, c.files, c.asked, c.book)
		require.NoError(t, err, name)
		var got []string
		for _, row := range list.Rows {
			got = append(got, told(row))
		}
		assert.Equal(t, c.want, got, name)
		assert.Equal(t, c.problems, list.Problems, name)
	}
}

// A reading that brings a job forward is told with its reason in every form of what is due.
// The planner goes on by the interval of the reading: from 2026-02-10 to 2026-12-10 every
// month, and not every six. 2026-02-01 is a Sunday, so its week is of January, and so is the
// first of the twelve months.
func TestAReadingThatBringsAJobForwardIsTold(t *testing.T) {
	when := "every = \"6 months\"\nsooner = [{ reading = \"Slack\", over = \"35.5 mm\", every = \"1 month\" }]"
	files := map[string]string{"look.toml": looked("loader", when), "shop.toml": one(""), "loader.toml": loader}
	list, err := dueIn(t, files, Asked{On: "2026-02-01"}, worked("2026-01-10")+slackOf("38 mm"))
	require.NoError(t, err)
	const why = "sooner: Slack was 38 mm on 2026-01-10, over 35.5 mm"
	assert.Contains(t, string(list.JSON()), `"note": "`+why+`"`)
	calendar, err := list.Calendar()
	require.NoError(t, err)
	assert.Contains(t, strings.ReplaceAll(string(calendar), "\r\n ", ""), strings.ReplaceAll(why, ",", `\,`))
	planner, err := compose.Planner(list.stands, "yard", list.on, "de", quantity.Metric)
	require.NoError(t, err)
	require.Len(t, planner.Jobs, 1)
	assert.Equal(t, "früher: Slack war 38 mm am 2026-01-10, über 35.5 mm", strings.ReplaceAll(planner.Jobs[0].Note, "\u00a0", " "))
	assert.Len(t, planner.Marks, 11)

	files["look.toml"] = looked("loader", strings.Replace(when, `, every = "1 month"`, "", 1))
	list, err = dueIn(t, files, Asked{On: "2026-02-01"}, worked("2026-01-10")+slackOf("38 mm"))
	require.NoError(t, err)
	assert.Contains(t, string(list.JSON()), `"by": "reading"`)
	planner, err = compose.Planner(list.stands, "yard", list.on, "", quantity.Both)
	require.NoError(t, err)
	assert.Len(t, planner.Marks, 2, "at once, and six months later")
}

func TestWhatCannotBeAskedIsRefused(t *testing.T) {
	files := map[string]string{"look.toml": looked("loader", `every = "50 h"`), "shop.toml": one(""), "loader.toml": loader}
	for says, c := range map[string]struct {
		asked Asked
		book  string
	}{
		"there is no day 2026-02-29": {Asked{On: "2026-02-29"}, ""},
		`"May" is no day`:            {Asked{On: "2026-05-01", By: "May"}, ""},
		"given now: the reading of the meter of yard is below an earlier reading, that of entry 10": {Asked{On: "2026-05-01", Meters: map[string]string{"yard": "28 h"}}, read(1, 10, 20, 20)},
		"--by 2026-04-30 is before 2026-05-01, the day it is asked for":                             {Asked{On: "2026-05-01", By: "2026-04-30"}, ""},
		`there is no machine "yrad"; there are: yard`:                                               {Asked{On: "2026-05-01", Meters: map[string]string{"yrad": "1 h"}}, ""},
	} {
		_, err := dueIn(t, files, c.asked, c.book)
		assert.ErrorContains(t, err, says)
	}
}

// An entry that cannot be read is told with its line, and the others count.
func TestABadEntryCostsNoOther(t *testing.T) {
	files := map[string]string{"look.toml": looked("loader", `every = "12 months"`), "shop.toml": one(""), "loader.toml": loader}
	list, err := dueIn(t, files, Asked{On: "2026-05-01"}, worked("2025-06-01")+"\n[[entry]]\nprocedure = look\n"+worked("2025-07-01"))
	require.NoError(t, err)
	require.Len(t, list.Rows, 1)
	assert.Equal(t, "2025-07-01", list.Rows[0].LastDay)
	require.Len(t, list.Problems, 1)
	assert.Contains(t, list.Problems[0], Bookfile+": line ")
}

// Two machines of one title are told apart by their short names.
func TestMachinesOfOneTitleAreToldApart(t *testing.T) {
	two := bareShop + "\n[unit.back]\nmachine = \"loader\"\nversion = \"long\"\n\n[unit.front]\nmachine = \"loader\"\nversion = \"short\"\n"
	list, err := dueIn(t, map[string]string{"look.toml": looked("loader", `every = "12 months"`), "shop.toml": two, "loader.toml": loader},
		Asked{On: "2026-05-01"}, worked("2026-05-01", `unit = "front"`)+worked("2026-04-01", `unit = "back"`))
	require.NoError(t, err)
	require.Len(t, list.Rows, 2)
	assert.Equal(t, "Bark loader (back)", list.Called(list.Rows[0]))
	calendar, err := list.Calendar()
	require.NoError(t, err)
	for _, words := range []string{"SUMMARY:Bark loader (back): Look over", "SUMMARY:Bark loader (front): Look over"} {
		assert.Contains(t, string(calendar), words)
	}
}

func shopBook(t *testing.T) []byte {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("../procedures", Bookfile))
	require.NoError(t, err)
	return text
}

const dueGolden = "../testdata/due/2026-05-01.txt"

// The list was held line by line against the book and the procedures: the last entry that
// counts, its meter and the interval on top, the months on the calendar. The days by the
// meter were reckoned a second time by another program, which shares nothing with this one
// (another reader of TOML, another calendar), from what Forecast and Next say they do. One
// of them by hand: the nine-metre deck was greased at 230 h, so at 280 h again. On 2026-04-27
// it stood at 261 h: 255 h in the 98 days since 2026-01-19, 2.60 a day. 19 h are left, 7.3
// days: on the eighth day after, 2026-05-05. The chain of the six-metre deck was longer than
// 508 mm at 7029 h, so it is due after 125 h and not after 250, at 7154 h: of the 49 h from
// 7106 h on 2026-03-31 to 7155 h on 2026-04-15 that is 48, 14.7 of 15 days, on the last of them.
func TestWhatIsDueInTheShop(t *testing.T) {
	list, err := Compile(Input{Files: shopFiles(t)}).Due(Look{}, Asked{On: "2026-05-01"}, bytes.NewReader(shopBook(t)))
	require.NoError(t, err)
	assert.Empty(t, list.Problems)
	got := ""
	for _, row := range list.Rows {
		got += row.Procedure + " | " + told(row) + "\n"
	}
	if *updateDue {
		require.NoError(t, os.MkdirAll(filepath.Dir(dueGolden), 0o777))
		require.NoError(t, os.WriteFile(dueGolden, []byte(got), 0o666))
	}
	want, err := os.ReadFile(dueGolden)
	require.NoError(t, err)
	assert.Equal(t, string(want), got, "stale: run go test ./compiler -run WhatIsDueInTheShop -update, and read it")
}

// What was done by the card of today stands in the book as on that card. Earlier revisions
// had the same steps and readings; before there was a card no steps were ticked.
func TestTheBookOfTheShopAgreesWithItsCards(t *testing.T) {
	entries, err := entry.Read(shopBook(t))
	require.NoError(t, err)
	cards, err := Compile(Input{Files: shopFiles(t)}).composeEach(Look{})
	require.NoError(t, err)
	current, outside, leftOut, corrected, replaced := 0, 0, 0, 0, 0
	for i, one := range entries {
		assert.Equal(t, i+1, one.Number)
		if one.Corrects > 0 {
			corrected++
			assert.Less(t, one.Corrects, one.Number)
		}
		if one.NewMeter != "" {
			replaced++
		}
		if weekday, err := time.Parse(time.DateOnly, string(one.Date)); assert.NoError(t, err) {
			assert.NotContains(t, []time.Weekday{time.Saturday, time.Sunday}, weekday.Weekday(), "entry %d", one.Number)
		}
		leftOut += min(len(one.LeftOut), 1)
		for _, reading := range one.Readings {
			if reading.Outside {
				outside++
			}
		}
		if one.Procedure == "" {
			continue
		}
		at := slices.IndexFunc(cards, func(card composedCard) bool {
			return card.content.Name == one.Procedure && card.content.Variant == one.Variant
		})
		require.GreaterOrEqual(t, at, 0, "entry %d", one.Number)
		card := cards[at].content
		switch one.Revision {
		case "":
			assert.Empty(t, one.Done, "entry %d", one.Number)
			continue
		case card.Revision:
			current++
			assert.Empty(t, one.Check(card), "entry %d", one.Number)
		default:
			said := one.Check(card)
			require.NotEmpty(t, said, "entry %d", one.Number)
			assert.Equal(t, fmt.Sprintf("revision is %q, and %q on the card", one.Revision, card.Revision), said[0], "entry %d", one.Number)
			for _, rest := range said[1:] { // the card had fewer steps then
				assert.Regexp(t, `^step \d+ is neither done, nor open, nor left out$`, rest, "entry %d", one.Number)
			}
		}
	}
	assert.GreaterOrEqual(t, len(entries), 150)
	assert.GreaterOrEqual(t, current, 15)
	assert.GreaterOrEqual(t, outside, 5)
	assert.GreaterOrEqual(t, leftOut, 10)
	assert.Equal(t, 2, corrected)
	assert.Equal(t, 1, replaced)
}

// The chain of the six-metre deck grows towards its limit, never back, as long as it is read.
func TestTheBookOfTheShopHasAReadingThatWears(t *testing.T) {
	entries, err := entry.Read(shopBook(t))
	require.NoError(t, err)
	var stretch []string
	for _, one := range entries {
		for _, reading := range one.Readings {
			if one.Unit == "deck" && reading.What == "Stretch over ten links" {
				stretch = append(stretch, reading.Value)
			}
		}
	}
	assert.GreaterOrEqual(t, len(stretch), 8)
	assert.True(t, slices.IsSorted(stretch), "%v", stretch)
}

// The book is written as the program writes an entry: between two lines with its number, a
// key a line, in the order of the layout.
func TestTheBookOfTheShopIsInItsForm(t *testing.T) {
	orders := map[string][]string{}
	var order func(table string, fields []entry.Field)
	order = func(table string, fields []entry.Field) {
		for _, field := range fields {
			if field.Kind == "tables" {
				order(table+"."+field.Key, field.Fields)
			}
			orders[table] = append(orders[table], field.Key)
		}
	}
	order("entry", entry.Layout())
	header := regexp.MustCompile(`^\[\[(.+)\]\]$`)
	keyed := regexp.MustCompile(`^([a-z-]+) = `)
	blocks := bytes.Split(shopBook(t), []byte("\n\n# entry "))
	for n, block := range blocks[1:] {
		lines := strings.Split(strings.TrimRight(string(block), "\n"), "\n")
		assert.Equal(t, []string{fmt.Sprint(n + 1), "[[entry]]", fmt.Sprintf("number = %d", n+1)}, lines[:3])
		assert.Equal(t, fmt.Sprintf("# end of entry %d", n+1), lines[len(lines)-1])
		table, at, tables := "", -1, -1
		for _, line := range lines[1 : len(lines)-1] {
			if found := header.FindStringSubmatch(line); found != nil {
				table, at = found[1], -1
				if _, below, is := strings.Cut(table, "."); is {
					place := slices.Index(orders["entry"], below)
					assert.LessOrEqual(t, tables, place, "entry %d", n+1)
					tables = place
				}
			} else if line != "" {
				found := keyed.FindStringSubmatch(line)
				require.NotNil(t, found, line)
				place := slices.Index(orders[table], found[1])
				assert.Less(t, at, place, "entry %d: %s", n+1, line)
				at = place
			}
		}
	}
	assert.Greater(t, len(blocks), 150)
}

// What is added to a book while it is read is left for the next time, and a book that cannot
// be read says so.
func TestABookIsReadAsItWasOpened(t *testing.T) {
	result := Compile(Input{Files: []*source.File{source.New("look.toml", []byte(looked("Bark loader", "every = \"2 months\"")))}})
	first := worked("2026-01-05")
	text := strings.NewReader(first + worked("2026-03-01") + "\x00")
	list, err := result.Due(Look{}, Asked{On: "2026-05-01"}, io.NewSectionReader(text, 0, int64(len(first))))
	require.NoError(t, err)
	require.Len(t, list.Rows, 1)
	assert.Equal(t, "2026-01-05", list.Rows[0].LastDay)
	assert.Empty(t, list.Problems)

	_, err = result.Due(Look{}, Asked{On: "2026-05-01"}, shut{})
	assert.EqualError(t, err, "service-book.toml cannot be read: the disk is gone")
}

// shut is a book that cannot be read.
type shut struct{}

func (shut) Size() int64                       { return 100_000 }
func (shut) ReadAt([]byte, int64) (int, error) { return 0, errors.New("the disk is gone") }

// Only an entry that counts is told, and only where nothing of the shop is unknown.
func TestNamesThatAreOfNoProcedure(t *testing.T) {
	book := worked("2026-01-05") + strings.ReplaceAll(worked("2026-01-06")+worked("2026-01-07")+worked("2026-01-08", "corrects = 3")+worked("2026-09-01"), `"look"`, `"lok"`)
	broken := strings.NewReplacer("Look over", "Look into", "revision", "revison").Replace(looked("Bark loader", ""))
	for name, c := range map[string]struct {
		files map[string]string
		whole bool
		want  []string
	}{
		"the whole shop":       {map[string]string{"look.toml": looked("Bark loader", "")}, true, []string{`2 entries of the service book, the last of them entry 4: no procedure here is named "lok"; did you mean "look"?`}},
		"some of it":           {map[string]string{"look.toml": looked("Bark loader", "")}, false, nil},
		"it has the procedure": {map[string]string{"look.toml": looked("Bark loader", ""), "lok.toml": strings.Replace(looked("Bark loader", ""), "Look over", "Look at", 1)}, true, nil},
		"one cannot be read":   {map[string]string{"look.toml": looked("Bark loader", ""), "other.toml": broken}, true, []string{"other.toml: it is not in the list, since an error in it, or in what it uses, keeps it from being read; see benchleaf lint"}},
	} {
		var sources []*source.File
		for _, path := range slices.Sorted(maps.Keys(c.files)) {
			sources = append(sources, source.New(path, []byte(c.files[path])))
		}
		list, err := Compile(Input{Files: sources, Whole: c.whole}).Due(Look{}, Asked{On: "2026-05-01"}, strings.NewReader(book))
		require.NoError(t, err, name)
		assert.Equal(t, c.want, list.Problems, name)
	}
}

// A procedure that is there and has no card is told apart from one that is not there.
func TestWhyAProcedureHasNoCard(t *testing.T) {
	files := map[string]string{"good.toml": looked("Bark loader", `every = "50 h"`), "held.toml": strings.NewReplacer("Look over", "Look at", `"max 40 mm"`, `"40 to 30 mm"`).Replace(looked("Bark loader", "")),
		"torn.toml": strings.NewReplacer("Look over", "Look into", "revision", "revison").Replace(looked("Bark loader", ""))}
	var sources []*source.File
	for _, path := range slices.Sorted(maps.Keys(files)) {
		sources = append(sources, source.New(path, []byte(files[path])))
	}
	result := Compile(Input{Files: sources})
	assert.Empty(t, result.HeldBack("good"))
	assert.Empty(t, result.HeldBack("gone"))
	assert.Equal(t, `an error in held.toml, or in what it uses, holds "held" back; see benchleaf lint`, result.HeldBack("held"))
	assert.Equal(t, `"torn" cannot be read: an error stands in torn.toml, or in what it uses; see benchleaf lint`, result.HeldBack("torn"))
}

// An entry that is dated far ahead counts for nothing, and is told until another corrects it.
func TestAnEntryDatedFarAheadIsTold(t *testing.T) {
	told := func(today, book string) []string {
		t.Helper()
		result := Compile(Input{Files: []*source.File{source.New("look.toml", []byte(looked("Bark loader", `every = "12 months"`)))}, Today: today})
		list, err := result.Due(Look{}, Asked{On: "2026-05-01"}, strings.NewReader(book))
		require.NoError(t, err)
		return list.Problems
	}
	far := worked("2025-05-10") + worked("2206-05-02", "number = 2")
	require.Len(t, told("2026-05-01", far), 1)
	assert.Equal(t, "entry 2 of the service book: its date 2206-05-02 lies more than a year ahead, and it does not count before; put it right with an entry that corrects it", told("2026-05-01", far)[0])
	assert.Empty(t, told("2026-05-01", far+worked("2026-04-02", "number = 3", "corrects = 2")))
	assert.Empty(t, told("2026-05-01", worked("2027-04-30")), "a day that may be planned")
	assert.Empty(t, told("", far), "nobody knows what day it is")
}
