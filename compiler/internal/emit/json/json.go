// Package json writes findings and procedures for other programs. It must not
// know how they were found. What is written keeps its names and meaning: keys
// may be added, never changed.
package json

import (
	"encoding/json"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// Version of the form; it rises only when a key changes its meaning.
const Version = 1

// Report is what a compile found.
type Report struct {
	Procedures []Procedure
	Findings   []finding.Finding
	Allowed    []finding.Finding
}

// Procedure is one procedure for one version of its machine.
type Procedure struct {
	File     string `json:"file"`
	Name     string `json:"name"`
	Title    string `json:"title"`
	Machine  string `json:"machine"`
	Variant  string `json:"variant,omitempty"`
	Revision string `json:"revision"`
	Blocked  bool   `json:"blocked"` // no card is printed
}

type report struct {
	Version    int         `json:"benchleaf"`
	Procedures []Procedure `json:"procedures"`
	Findings   []found     `json:"findings"`
	Allowed    []found     `json:"allowed"`
}

type found struct {
	Rule     string          `json:"rule"`
	Severity string          `json:"severity"`
	Holds    bool            `json:"holds"` // no card is printed while it stands
	Place    source.Location `json:"place"`
	Summary  string          `json:"summary"`
	Why      string          `json:"why,omitempty"`
	Help     string          `json:"help,omitempty"`
	Variant  string          `json:"variant,omitempty"`
	Related  []related       `json:"related,omitempty"`
	Fixes    []fix           `json:"fixes,omitempty"`
}

type related struct {
	Place source.Location `json:"place"`
	Text  string          `json:"text"`
}

type fix struct {
	Title   string `json:"title"`
	Certain bool   `json:"certain"`
	Edits   []edit `json:"edits"`
}

type edit struct {
	Place source.Location `json:"place"`
	Text  string          `json:"text"`
}

// Write writes a report as indented JSON with a line break at its end.
func Write(in Report) []byte {
	out := report{Version: Version, Procedures: in.Procedures, Findings: list(in.Findings), Allowed: list(in.Allowed)}
	if out.Procedures == nil {
		out.Procedures = []Procedure{}
	}
	return indented(out)
}

func indented(report any) []byte {
	text, err := json.MarshalIndent(report, "", "  ")
	if err != nil {
		panic(err) // every field is a plain value
	}
	return append(text, '\n')
}

func list(findings []finding.Finding) []found {
	out := make([]found, 0, len(findings))
	for _, one := range findings {
		entry := found{Rule: one.Rule, Severity: one.Severity.String(), Holds: one.Holds(), Place: one.Place.Location(), Summary: one.Summary, Why: one.Why, Help: one.Help, Variant: one.Variant}
		for _, other := range one.Related {
			entry.Related = append(entry.Related, related{other.Place.Location(), other.Text})
		}
		for _, offered := range one.Fixes {
			made := fix{Title: offered.Title, Certain: offered.Certain}
			for _, change := range offered.Edits {
				made.Edits = append(made.Edits, edit{change.Place.Location(), change.Text})
			}
			entry.Fixes = append(entry.Fixes, made)
		}
		out = append(out, entry)
	}
	return out
}
