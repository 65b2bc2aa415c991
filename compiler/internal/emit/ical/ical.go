// Package ical writes days as a calendar that calendar programs take in (RFC 5545). It
// must not know what the days are for.
package ical

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"benchleaf/compiler/internal/due"
)

// Event is something on a whole day.
type Event struct {
	UID        string // the same for the same thing whenever it is written again
	Day        due.Day
	Title      string
	Note       string   // may have several lines; none is written where it is empty
	Categories []string // likewise
}

// product names who wrote the calendar (RFC 5545, 3.7.3).
const product = "-//benchleaf//benchleaf//EN"

// Calendar writes events in the order they are given, as all-day events that leave the day
// free and ring no alarm. made is the day it was made on, so that the same values give the
// same bytes. A UID that is empty or comes twice, and a day that is none, are errors.
//
// Lines of a text end as RFC 5545 has it, whatever ended them; other control characters
// than a tab may not stand in a calendar and become spaces, and bytes that are no UTF-8
// become U+FFFD.
func Calendar(events []Event, made due.Day) ([]byte, error) {
	if made == 0 {
		return nil, fmt.Errorf("ical: the calendar has no day it was made on")
	}
	w := &writer{}
	w.line("BEGIN", "VCALENDAR")
	w.line("VERSION", "2.0")
	w.line("PRODID", product)
	seen := map[string]bool{}
	for i, event := range events {
		uid := clean(event.UID)
		switch {
		case uid == "":
			return nil, fmt.Errorf("ical: event %d has no UID", i+1)
		case seen[uid]:
			return nil, fmt.Errorf("ical: event %d has the UID %q of another", i+1, uid)
		case event.Day == 0:
			return nil, fmt.Errorf("ical: event %d has no day", i+1)
		}
		seen[uid] = true
		w.line("BEGIN", "VEVENT")
		w.line("UID", escape(uid))
		w.line("DTSTAMP", date(made)+"T000000Z")
		w.line("DTSTART;VALUE=DATE", date(event.Day)) // without an end it is that day (3.6.1)
		w.line("SUMMARY", escape(clean(event.Title)))
		if event.Note != "" {
			w.line("DESCRIPTION", escape(clean(event.Note)))
		}
		if len(event.Categories) > 0 {
			names := make([]string, len(event.Categories))
			for i, name := range event.Categories {
				names[i] = escape(clean(name))
			}
			w.line("CATEGORIES", strings.Join(names, ","))
		}
		w.line("TRANSP", "TRANSPARENT")
		w.line("END", "VEVENT")
	}
	w.line("END", "VCALENDAR")
	return w.Bytes(), nil
}

func date(day due.Day) string { return strings.ReplaceAll(day.String(), "-", "") }

var lineEnds = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\v", "\n", "\f", "\n", "\u0085", "\n", "\u2028", "\n", "\u2029", "\n")

// clean is a text as a calendar can hold it.
func clean(text string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' && r != '\n' && r != '\t' || r == 0x7f || 0x80 <= r && r < 0xa0 {
			return ' '
		}
		return r
	}, lineEnds.Replace(strings.ToValidUTF8(text, "\ufffd")))
}

var escapes = strings.NewReplacer(`\`, `\\`, ";", `\;`, ",", `\,`, "\n", `\n`)

// escape writes a text as a value of the kind TEXT (3.3.11).
func escape(text string) string { return escapes.Replace(text) }

type writer struct{ bytes.Buffer }

// most is the octets of a line without its end (3.1).
const most = 75

// line writes a content line, folded between letters.
func (w *writer) line(name, value string) {
	text := name + ":" + value
	room := most
	for len(text) > room {
		end := room
		for !utf8.RuneStart(text[end]) {
			end--
		}
		w.WriteString(text[:end] + "\r\n ")
		text, room = text[end:], most-1
	}
	w.WriteString(text + "\r\n")
}
