package draft

import (
	"strconv"
	"sync"
)

// everyAt takes an interval that is told without a figure: every year, weekly, once a month,
// the winter service, after the first hour.
func (t *taker) everyAt(at int) {
	w := t.words[at]
	if at+1 >= len(t.words) && periodic()[w.lower] == "" {
		return
	}
	about := t.section.name
	if value := periodic()[w.lower]; value != "" && w.stop == 0 && at > 0 && (t.words[at-1].lower == "half" || t.words[at-1].lower == "bi") {
		if w.lower == "yearly" || w.lower == "annual" || w.lower == "annually" {
			t.add(Interval, "6 months", t.intervalOf(at), at-1, at+1)
		}
		return
	} else if value != "" && w.stop == 0 && at > 0 && (numeric(t.words[at-1].lower) || smalls()[t.words[at-1].lower] > 1) {
		return // three monthly
	} else if value != "" {
		t.add(Interval, value, t.intervalOf(at), at, at+1)
		return
	}
	next := at + 1
	if n, after := numberAt(t.words, at); after > at && n.whole && n.int() > 1 && !endsHere(t.words, after) { // three monthly, 500 hourly
		if unit := periodicUnit()[t.words[after].lower]; unit != "" {
			t.add(Interval, n.text(false)+" "+unit, t.intervalOf(at), at, after+1)
			return
		}
	}
	switch {
	case t.words[at].lower == "end" && t.words[next].lower == "of" || t.words[at].lower == "start" && t.words[next].lower == "of" || t.words[at].lower == "before" && t.words[next].lower == "every":
		for i := next + 1; i < min(next+4, len(t.words)) && t.words[i].stop == 0; i++ {
			if t.words[i].stem == "season" {
				t.add(Interval, "1 year", t.intervalOf(at), at, i+1)
				break
			}
			if t.words[i].stem == "shift" || t.words[i].stem == "day" {
				t.add(Interval, "1 day", t.intervalOf(at), at, i+1)
				break
			}
			if !articles.has(t.words[i].lower) {
				break
			}
		}
	case w.lower == "every" || w.lower == "each":
		other := t.words[next].lower == "other" || t.words[next].lower == "second"
		if other && next+1 < len(t.words) {
			next++
		}
		if value := calendar(t.words, next, other); value != "" && t.words[next].stop == 0 {
			if w.lower == "each" && t.words[next].lower == "season" {
				return
			}
			t.add(Interval, value, t.intervalOf(at), at, next+1)
		}
	case (w.lower == "once" || w.lower == "twice") && (t.words[next].lower == "a" || t.words[next].lower == "every") && next+1 < len(t.words):
		value := calendar(t.words, next+1, false)
		if w.lower == "twice" {
			value = map[string]string{"1 year": "6 months", "1 day": "12 h", "1 month": "2 weeks"}[value]
		}
		if value != "" {
			t.add(Interval, value, t.intervalOf(at), at, next+2)
		}
	case seasons.has(w.lower) && (t.words[next].lower == "service" || t.words[next].lower == "check"):
		t.add(Interval, "1 year", wholeJob, at, next+1)
	case w.lower == "first" && at > 0 && (t.words[at-1].lower == "the" || t.words[at-1].lower == "after"):
		if u, n := units.at(t.words, next); n > 0 && t.words[next].stop == 0 && t.words[next].stem == t.words[next].lower && (u.symbol == "h" || u.symbol == "weeks" || u.symbol == "months" || u.symbol == "days") {
			value := "1 " + u.symbol
			if one, ok := ones()[u.symbol]; ok {
				value = "1 " + one
			}
			t.add(Interval, value, about, at, next+n)
		}
	}
}

// intervalOf is what an interval belongs to: what is spoken of, or the whole job.
func (t *taker) intervalOf(at int) string {
	if head := t.machineHead(); t.section.name == "" || t.section.class == machinePart && t.words[t.section.from].sentence == 0 && (t.section.head == head || lastWord(t.section.name) == head) || t.near(wholeCues, at, at+1, 6, 10) {
		return wholeJob
	}
	return t.section.name
}

var wholeCues = cues("all of this|whole thing|this job|the lot|whole job|everything|i'm doing")

var periodic = sync.OnceValue(func() map[string]string {
	return map[string]string{"yearly": "1 year", "annually": "1 year", "monthly": "1 month", "weekly": "1 week", "daily": "1 day", "quarterly": "3 months", "fortnightly": "2 weeks", "annual": "1 year", "biannual": "6 months", "nightly": "1 day"}
})

// periodicUnit are words that tell a period behind a figure: three monthly.
var periodicUnit = sync.OnceValue(func() map[string]string {
	return map[string]string{"monthly": "months", "weekly": "weeks", "yearly": "years", "hourly": "h", "daily": "days"}
})

var seasons = set("winter spring summer autumn fall annual yearly")

func calendar(words []word, at int, other bool) string {
	if at >= len(words) {
		return ""
	}
	n, unit := 1, ""
	switch words[at].lower {
	case "year", "spring", "winter", "autumn", "fall", "summer", "season":
		unit = "year"
	case "month":
		unit = "month"
	case "january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november", "december", "christmas", "easter":
		unit = "year"
	case "week", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "weekend":
		unit = "week"
	case "fortnight":
		n, unit = 2, "week"
	case "day", "morning", "shift", "evening", "night", "milking":
		unit = "day"
	case "term":
		if words[at].hyphen {
			unit = "half-term"
		}
	case "half":
		if at+1 < len(words) && words[at+1].lower == "term" {
			return "1 half-term"
		}
	case "quarter":
		n, unit = 3, "month"
	}
	if unit == "" {
		return ""
	}
	if other {
		n *= 2
	}
	if n > 1 {
		unit += "s"
	}
	return strconv.Itoa(n) + " " + unit
}
