package json

import "benchleaf/compiler/internal/plan"

// Join is what is told of a joined job.
type Join struct {
	Name    string
	Length  int64 // seconds
	Apart   int64
	Bound   int64
	Proved  bool
	ForOne  string   // why it is for one though two were asked for
	Lost    [3]int64 // seconds for another tool, another fluid, another procedure
	Changes [4]int   // energies cut off, covers off, turns, other tools
	Without [4]int
	Steps   []plan.JoinedStep
}

type joinReport struct {
	Version int         `json:"benchleaf"`
	Name    string      `json:"name"`
	Seconds int64       `json:"seconds"`
	Apart   int64       `json:"one-after-the-other-seconds"`
	Bound   int64       `json:"proved-bound-seconds"`
	Proved  bool        `json:"proved-shortest"`
	ForOne  string      `json:"planned-for-one,omitempty"`
	Lost    joinLost    `json:"seconds-lost-by"`
	Changes joinChanges `json:"changes"`
	Without joinChanges `json:"changes-one-after-the-other"`
	Steps   []joinStep  `json:"steps"`
}

type joinChanges struct {
	Isolations int `json:"energies-cut-off"`
	Covers     int `json:"covers-off"`
	Turns      int `json:"turned-or-raised"`
	Tools      int `json:"other-tools"`
}

type joinLost struct {
	Tool      int64 `json:"another-tool"`
	Fluid     int64 `json:"another-fluid"`
	Procedure int64 `json:"another-procedure"`
}

type joinStep struct {
	Number  int      `json:"step"`
	Start   int64    `json:"start"`
	Seconds int64    `json:"seconds"`
	Whose   []string `json:"from"`
	Words   string   `json:"words"`
	Ready   bool     `json:"makes-ready,omitempty"`
	Wait    bool     `json:"wait,omitempty"`
	Person  int      `json:"person,omitempty"`
	Setting string   `json:"machine"`
}

// Joined writes a joined job with the times it was planned by.
func Joined(made Join) []byte {
	counts := func(n [4]int) joinChanges { return joinChanges{n[0], n[1], n[2], n[3]} }
	out := joinReport{Version: Version, Name: made.Name, Seconds: made.Length, Apart: made.Apart, Bound: made.Bound, Proved: made.Proved, ForOne: made.ForOne, Lost: joinLost{made.Lost[0], made.Lost[1], made.Lost[2]},
		Changes: counts(made.Changes), Without: counts(made.Without), Steps: []joinStep{}}
	for _, step := range made.Steps {
		out.Steps = append(out.Steps, joinStep(step))
	}
	return indented(out)
}
