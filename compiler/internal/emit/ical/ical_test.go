package ical

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os/exec"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"benchleaf/compiler/internal/due"

	arran "github.com/arran4/golang-ical"
	emersion "github.com/emersion/go-ical"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var made = due.Date(2026, 11, 27)

func TestTheBytesOfACalendar(t *testing.T) {
	text, err := Calendar([]Event{
		{UID: "harvester/engine-oil@shop", Day: due.Date(2027, 2, 28), Title: "Change the oil; 1.1 L, SAE 30", Note: "Due at 1500 h.\nOr on 2027-03-04 \\ later.", Categories: []string{"Harvester", "oil, filters"}},
		{UID: "saw/blade", Day: due.Date(2028, 2, 29), Title: "Tighten the blade until the gauge reads 3.5 bar – Größe „M“ – and ⌀ 12 mm holes are clear"},
	}, made)
	require.NoError(t, err)
	assert.Equal(t, strings.ReplaceAll(`BEGIN:VCALENDAR
VERSION:2.0
PRODID:-//benchleaf//benchleaf//EN
BEGIN:VEVENT
UID:harvester/engine-oil@shop
DTSTAMP:20261127T000000Z
DTSTART;VALUE=DATE:20270228
SUMMARY:Change the oil\; 1.1 L\, SAE 30
DESCRIPTION:Due at 1500 h.\nOr on 2027-03-04 \\ later.
CATEGORIES:Harvester,oil\, filters
TRANSP:TRANSPARENT
END:VEVENT
BEGIN:VEVENT
UID:saw/blade
DTSTAMP:20261127T000000Z
DTSTART;VALUE=DATE:20280229
SUMMARY:Tighten the blade until the gauge reads 3.5 bar – Größe „M“
  – and ⌀ 12 mm holes are clear
TRANSP:TRANSPARENT
END:VEVENT
END:VCALENDAR
`, "\n", "\r\n"), string(text))
}

func TestACalendarThatCannotBeIsRefused(t *testing.T) {
	for name, events := range map[string][]Event{
		"no UID":                 {{Day: 1}},
		"the same twice":         {{UID: "a", Day: 1}, {UID: "a", Day: 2}},
		"the same when cleaned":  {{UID: "a\x01", Day: 1}, {UID: "a\x02", Day: 2}},
		"no day":                 {{UID: "a"}},
		"the second has no day":  {{UID: "a", Day: 1}, {UID: "b"}},
		"a UID that is no UTF-8": {{UID: "\xff", Day: 1}, {UID: "\ufffd", Day: 2}},
	} {
		_, err := Calendar(events, made)
		assert.Error(t, err, name)
	}
	_, err := Calendar(nil, 0)
	assert.Error(t, err)
	text, err := Calendar(nil, made)
	require.NoError(t, err)
	assert.Equal(t, "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//benchleaf//benchleaf//EN\r\nEND:VCALENDAR\r\n", string(text))
}

func TestWhatNoCalendarHoldsBecomesASpace(t *testing.T) {
	for text, want := range map[string]string{
		"a\r\nb\rc\nd": "a\nb\nc\nd", "a\vb\fc\u0085d\u2028e\u2029f": "a\nb\nc\nd\ne\nf",
		"a\x00b\x1bc\x7fd\u009be\tf": "a b c d e\tf", "a\xffb": "a\ufffdb", "BEGIN:VEVENT": "BEGIN:VEVENT", "": "",
	} {
		assert.Equal(t, want, clean(text))
	}
}

// given is events as a reader has to give them back.
func given(events []Event) []Event {
	out := make([]Event, len(events))
	for i, event := range events {
		out[i] = Event{UID: clean(event.UID), Day: event.Day, Title: clean(event.Title), Note: clean(event.Note)}
		for _, name := range event.Categories {
			out[i].Categories = append(out[i].Categories, clean(name))
		}
	}
	return out
}

func parseDay(t *testing.T, text string) due.Day {
	t.Helper()
	require.Len(t, text, 8)
	day, err := due.ParseDay(text[:4] + "-" + text[4:6] + "-" + text[6:])
	require.NoError(t, err)
	return day
}

// byArran reads a calendar with github.com/arran4/golang-ical. It does not part categories.
func byArran(t *testing.T, text []byte) []Event {
	t.Helper()
	calendar, err := arran.ParseCalendar(bytes.NewReader(text))
	require.NoError(t, err)
	var out []Event
	for _, event := range calendar.Events() {
		value := func(name arran.ComponentProperty) string {
			if property := event.GetProperty(name); property != nil {
				return property.Value
			}
			return ""
		}
		start := event.GetProperty(arran.ComponentPropertyDtStart)
		require.Equal(t, []string{"DATE"}, start.ICalParameters["VALUE"])
		require.Equal(t, "TRANSPARENT", value(arran.ComponentPropertyTransp))
		out = append(out, Event{UID: value(arran.ComponentPropertyUniqueId), Day: parseDay(t, start.Value),
			Title: value(arran.ComponentPropertySummary), Note: value(arran.ComponentPropertyDescription)})
	}
	return out
}

// byEmersion reads a calendar with github.com/emersion/go-ical.
func byEmersion(t *testing.T, text []byte) []Event {
	t.Helper()
	calendar, err := emersion.NewDecoder(bytes.NewReader(text)).Decode()
	require.NoError(t, err)
	var out []Event
	for _, event := range calendar.Events() {
		value := func(name string) string {
			text, err := event.Props.Text(name)
			require.NoError(t, err)
			return text
		}
		start := event.Props.Get(emersion.PropDateTimeStart)
		require.Equal(t, emersion.ValueDate, start.ValueType())
		read := Event{UID: value(emersion.PropUID), Day: parseDay(t, start.Value), Title: value(emersion.PropSummary), Note: value(emersion.PropDescription)}
		if property := event.Props.Get(emersion.PropCategories); property != nil {
			read.Categories, err = property.TextList()
			require.NoError(t, err)
		}
		out = append(out, read)
	}
	return out
}

// byPython reads calendars with Python's icalendar.
func byPython(t *testing.T, texts [][]byte) [][]Event {
	t.Helper()
	python := ""
	for _, name := range []string{"python3", "/usr/bin/python3"} { // the first may not be the one the package is installed for
		if exec.Command(name, "-c", "import icalendar").Run() == nil {
			python = name
			break
		}
	}
	if python == "" {
		t.Skip("python3-icalendar is not installed")
	}
	command := exec.Command(python, "-c", `
import icalendar, json, sys
out = []
for text in json.load(sys.stdin):
    calendar = icalendar.Calendar.from_ical(text.encode("utf-8"))
    assert calendar["VERSION"] == "2.0" and calendar["PRODID"]
    events = []
    for event in calendar.walk("VEVENT"):
        assert event["TRANSP"] == "TRANSPARENT" and not event.walk("VALARM") and not event.errors, event.errors
        assert event["DTSTAMP"].dt.isoformat() == "2026-11-27T00:00:00+00:00"
        day = event["DTSTART"].dt
        assert type(day).__name__ == "date"
        events.append({"UID": event["UID"], "Day": day.toordinal(), "Title": event["SUMMARY"], "Note": event.get("DESCRIPTION", "")})
    out.append(events)
json.dump(out, sys.stdout)`)
	var in []string
	for _, text := range texts {
		in = append(in, string(text))
	}
	sent, err := json.Marshal(in)
	require.NoError(t, err)
	command.Stdin = bytes.NewReader(sent)
	var told bytes.Buffer
	command.Stderr = &told
	out, err := command.Output()
	require.NoError(t, err, told.String())
	var events [][]Event
	require.NoError(t, json.Unmarshal(out, &events)) // a Day is a date's ordinal: 1 is 0001-01-01 to both
	return events
}

func withoutCategories(events []Event) []Event {
	out := append([]Event{}, events...)
	for i := range out {
		out[i].Categories = nil
	}
	return out
}

func wellFormed(t *testing.T, text []byte) {
	t.Helper()
	require.True(t, utf8.Valid(text))
	require.True(t, bytes.HasSuffix(text, []byte("\r\n")))
	for _, line := range strings.Split(strings.TrimSuffix(string(text), "\r\n"), "\r\n") {
		require.LessOrEqual(t, len(line), 75)
		require.True(t, utf8.ValidString(line), "a letter is cut")
		require.NotContains(t, line, "\r")
		require.NotContains(t, line, "\n")
	}
}

var hostile = []string{
	"", " ", "  two spaces in front", "trailing  ", `\`, `\\`, `\n`, `\N is no line end`, `ends in \`, "a;b,c:d", `"quoted"`, "=?x", "%2C %5C",
	"END:VEVENT\r\nEND:VCALENDAR\r\nBEGIN:VCALENDAR", "line\n\n\nend\n", "\r\n folded", "\ttab", "tab\t\tin it", "\x00\x07\x1b[31m", "\xff\xfe",
	"\u2028\u0085", "äöü ß – „Größe“", "漢字かな交じり文", "👩‍🔧 with 🔧", "e\u0301\u0302\u0303", "\u202eturned round", "\ufeffmark", "{{.}} <b>&amp;</b>",
	strings.Repeat("ä", 200), strings.Repeat("🔧", 80), strings.Repeat(",", 300), strings.Repeat("\\", 90), strings.Repeat("a ", 120), strings.Repeat("\n", 90), strings.Repeat("a", 66) + "é",
}

// someText is a text of hostile pieces.
func someText(r *rand.Rand) string {
	var out strings.Builder
	for range r.IntN(5) {
		if r.IntN(3) == 0 {
			out.WriteString(strings.Repeat("x", r.IntN(90)))
		}
		out.WriteString(hostile[r.IntN(len(hostile))])
	}
	return out.String()
}

func someEvents(r *rand.Rand, text func(*rand.Rand) string) []Event {
	var out []Event
	for k := range r.IntN(6) {
		event := Event{UID: fmt.Sprintf("%d-%s", k, text(r)), Day: due.Day(1 + r.IntN(int(due.Never))), Title: text(r), Note: text(r)}
		for range r.IntN(4) {
			event.Categories = append(event.Categories, text(r))
		}
		out = append(out, event)
	}
	return out
}

func TestReadersGiveBackWhatWasWritten(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		events := someEvents(r, someText)
		text, err := Calendar(events, made)
		require.NoError(t, err)
		wellFormed(t, text)
		again, err := Calendar(events, made)
		require.NoError(t, err)
		require.True(t, bytes.Equal(text, again))
		require.Empty(t, differ(given(events), byEmersion(t, text)))
		require.Empty(t, differ(withoutCategories(given(events)), byArran(t, text)))
	}
}

// differ is the first event that two lists do not share, empty where there is none.
func differ(want, got []Event) string {
	if len(want) != len(got) {
		return fmt.Sprintf("%d events, and %d were read", len(want), len(got))
	}
	for i := range want {
		if a, b := fmt.Sprintf("%q", want[i]), fmt.Sprintf("%q", got[i]); a != b {
			return a + "\nwas read as\n" + b
		}
	}
	return ""
}

// Python's icalendar 4.0.3 takes a backslash before n, comma or semicolon for an escape
// also where it is escaped itself, and %2C and its like for the character they stand for in
// a URL. Texts with either go to the two other readers only.
var misread = regexp.MustCompile(`\\|%(2C|3A|3B|5C)`)

func TestPythonGivesBackWhatWasWritten(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	var texts [][]byte
	var want [][]Event
	for range 400 {
		events := someEvents(r, func(r *rand.Rand) string { return misread.ReplaceAllString(someText(r), "/") })
		text, err := Calendar(events, made)
		require.NoError(t, err)
		texts, want = append(texts, text), append(want, withoutCategories(given(events)))
	}
	got := byPython(t, texts)
	require.Len(t, got, len(want))
	for i := range want {
		require.Empty(t, differ(want[i], got[i]))
	}
}

func FuzzCalendar(f *testing.F) {
	for i, text := range hostile {
		f.Add("u"+text, hostile[(i+1)%len(hostile)], text, hostile[(i+2)%len(hostile)], 1+i*100_000)
	}
	f.Fuzz(func(t *testing.T, uid, title, note, category string, day int) {
		events := []Event{{UID: uid, Day: due.Date(2026, 1, 1).AddDays(day), Title: title, Note: note, Categories: []string{category, "x"}}}
		text, err := Calendar(events, made)
		if err != nil {
			require.Empty(t, uid)
			return
		}
		wellFormed(t, text)
		require.Empty(t, differ(given(events), byEmersion(t, text)))
		require.Empty(t, differ(withoutCategories(given(events)), byArran(t, text)))
	})
}
