package json

import "benchleaf/compiler/internal/draft"

type draftReport struct {
	Version int        `json:"benchleaf"`
	Taken   []takenRow `json:"taken"`
}

type takenRow struct {
	Kind     string `json:"kind"` // torque, size, range, fluid, amount, count, interval, tool, part, hazard, action, wait, question
	Value    string `json:"value"`
	About    string `json:"about,omitempty"`
	Question string `json:"question,omitempty"`
	Line     int    `json:"line"`  // counted from 1
	Start    int    `json:"start"` // of its words in the notes, in bytes
	End      int    `json:"end"`
}

// Draft writes what was taken from notes, by place.
func Draft(taken []draft.Taken) []byte {
	out := draftReport{Version: Version, Taken: []takenRow{}}
	for _, one := range taken {
		out.Taken = append(out.Taken, takenRow{one.Kind, one.Value, one.About, one.Question, one.Line, one.Start, one.End})
	}
	return indented(out)
}
