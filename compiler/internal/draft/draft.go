// Package draft makes the draft of a procedure out of a person's notes, spoken or typed, by
// rules: numbers as they are said, units as they are heard, the nouns and verbs of the trade.
// It must not know files, findings or whether the work is right.
package draft

import (
	"bytes"
	"fmt"
	"slices"
	"unicode"
	"unicode/utf8"
)

// Draft is what became of notes.
type Draft struct {
	Taken []Taken // by place
	Gaps  []Taken // what the draft itself leaves open beside: a kind, a grade, an amount that no word was said of
	TOML  []byte
}

// Most is how many bytes notes may have: two hours of speech.
const Most = 128 << 10

// Of reads notes. The error says where they cannot be read, and the way out.
func Of(notes []byte) (Draft, error) {
	notes = bytes.TrimPrefix(notes, []byte("\ufeff"))
	if err := readableNotes(notes); err != nil {
		return Draft{}, err
	}
	t := take(string(notes))
	text, gaps := t.text()
	return Draft{Taken: t.out, Gaps: gaps, TOML: []byte(text)}, nil
}

// Questions are what the notes leave open, by line.
func (d Draft) Questions() []Taken {
	return open(d.Taken, d.Gaps)
}

func open(taken, gaps []Taken) []Taken {
	out := append(asked(taken), gaps...)
	slices.SortStableFunc(out, func(a, b Taken) int { return a.Line - b.Line })
	return out
}

// asked gives the questions among what was taken, each once for a thing and a line.
func asked(taken []Taken) []Taken {
	var out []Taken
	for _, one := range taken {
		again := slices.ContainsFunc(out, func(o Taken) bool { return o.Value == one.Value && o.About == one.About && o.Line == one.Line })
		if one.Kind == Ask && !again {
			out = append(out, one)
		}
	}
	return out
}

func readableNotes(notes []byte) error {
	if len(notes) > Most {
		return fmt.Errorf("notes are at most %d KiB, and these are more; make a draft of each job by itself", Most>>10)
	}
	line := 1
	for at := 0; at < len(notes); {
		r, size := utf8.DecodeRune(notes[at:])
		switch {
		case r == utf8.RuneError && size == 1:
			return fmt.Errorf("line %d holds bytes that are no text in UTF-8; save the notes as UTF-8", line)
		case r == '\n':
			line++
		case unicode.IsControl(r) && r != '\t' && r != '\r':
			return fmt.Errorf("line %d holds the control character %U; notes are plain text, so take it out", line, r)
		}
		at += size
	}
	if len(bytes.TrimSpace(notes)) == 0 {
		return fmt.Errorf("the notes are empty")
	}
	return nil
}
