package draft

import "strconv"

// everyAt takes an interval that is told without a figure: every year, weekly, once a month,
// the winter service, after the first hour.
func (t *taker) everyAt(at int) {
	w := t.words[at]
	if at+1 >= len(t.words) && periodic[w.lower] == "" {
		return
	}
	about := t.section.name
	if value := periodic[w.lower]; value != "" {
		t.add(Interval, value, t.intervalOf(at), at, at+1)
		return
	}
	next := at + 1
	switch {
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
			value = map[string]string{"1 year": "6 months"}[value]
		}
		if value != "" {
			t.add(Interval, value, t.intervalOf(at), at, next+2)
		}
	case seasons[w.lower] && (t.words[next].lower == "service" || t.words[next].lower == "check"):
		t.add(Interval, "1 year", wholeJob, at, next+1)
	case w.lower == "first" && at > 0 && (t.words[at-1].lower == "the" || t.words[at-1].lower == "after"):
		if u, n := units.at(t.words, next); n > 0 && t.words[next].stop == 0 && t.words[next].stem == t.words[next].lower && (u.symbol == "h" || u.symbol == "weeks" || u.symbol == "months" || u.symbol == "days") {
			value := "1 " + u.symbol
			if one, ok := ones[u.symbol]; ok {
				value = "1 " + one
			}
			t.add(Interval, value, about, at, next+n)
		}
	}
}

// intervalOf is what an interval belongs to: what is spoken of, or the whole job.
func (t *taker) intervalOf(at int) string {
	if t.section.name == "" || t.near(wholeCues, at, at+1, 6, 10) {
		return wholeJob
	}
	return t.section.name
}

var wholeCues = cues("all of this|whole thing|this job|the lot|whole job|everything|i'm doing")

var periodic = map[string]string{"yearly": "1 year", "annually": "1 year", "monthly": "1 month", "weekly": "1 week", "daily": "1 day", "quarterly": "3 months"}

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
	case "week", "monday", "friday":
		unit = "week"
	case "day", "morning", "shift":
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
