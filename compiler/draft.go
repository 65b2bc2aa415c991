package compiler

import (
	"benchleaf/compiler/internal/draft"
	"benchleaf/compiler/internal/emit/json"
	"benchleaf/compiler/internal/tidy"
	"benchleaf/compiler/source"
)

// Drafted is the draft of a procedure, made out of notes.
type Drafted struct {
	Text      []byte // the procedure, as TOML
	Questions []Question

	taken []draft.Taken
}

// Question is what notes leave open, at a line of theirs counted from 1.
type Question struct {
	Line int
	Text string
}

// MostNotes is how many bytes notes may have.
const MostNotes = draft.Most

// Draft makes the draft of a procedure out of spoken or typed notes. The error says where
// notes cannot be read, and the way out.
func Draft(notes []byte) (*Drafted, error) {
	made, err := draft.Of(notes)
	if err != nil {
		return nil, err
	}
	text, _ := tidy.File(source.New("draft.toml", made.TOML))
	out := &Drafted{Text: text, taken: made.Taken}
	for _, one := range made.Questions() {
		out.Questions = append(out.Questions, Question{one.Line, one.Question})
	}
	return out, nil
}

// JSON writes what was taken from the notes, each thing with its place, for other programs.
func (d *Drafted) JSON() []byte { return json.Draft(d.taken) }
