// Package export puts everything that the files of a shop mean into plain values, for
// programs that work on with it: every name looked up, every amount as numbers too, for
// each version of a machine. It must not judge the work or know a file format. The form is
// published as schema/benchleaf-model.schema.json: members may be added, never changed.
package export

import "benchleaf/compiler/source"

// Model is a whole shop.
type Model struct {
	Version    int         `json:"benchleaf-model"`
	Language   int         `json:"language"` // version of the language
	Shop       *Table      `json:"shop,omitempty"`
	Machines   []Machine   `json:"machines"`
	Libraries  []Thing     `json:"libraries"`
	Procedures []Procedure `json:"procedures"`
}

// Keys are the keys of a table of the language with their values, as far as they are written.
type Keys map[string]any

// Table is a table of a file.
type Table struct {
	Place source.Location `json:"place"`
	Keys  Keys            `json:"keys"`
}

// Thing is something that is described by name.
type Thing struct {
	Kind  string `json:"kind"`
	Name  string `json:"name"`
	Words string `json:"words"` // as it prints
	Table
}

// Machine is a machine with its versions.
type Machine struct {
	Name  string `json:"name"`
	Title string `json:"title"`
	Table
	Versions []MachineVersion `json:"versions"`
}

// MachineVersion is what one version of a machine has.
type MachineVersion struct {
	Version string  `json:"version,omitempty"` // empty where the machine has no versions
	Things  []Thing `json:"things"`
}

// Procedure is a procedure with a job for each version of its machine.
type Procedure struct {
	Name    string `json:"name"`
	Title   string `json:"title"`
	Machine string `json:"machine,omitempty"` // short name; empty where it is only named in words
	Table
	Versions []Job `json:"versions"` // none where the file, or one it takes names from, cannot be read whole
}

// Job is a procedure for one version of its machine.
type Job struct {
	Version string  `json:"version,omitempty"`
	Blocked bool    `json:"blocked"` // no card is printed
	Things  []Thing `json:"things"`  // of the machine, that the procedure's own file describes
	Steps   []Step  `json:"steps"`
	Needs   Needs   `json:"needs"`
}

// Step is one action.
type Step struct {
	Number  int      `json:"number"`
	Section string   `json:"section"` // prepare, step, close
	Verb    string   `json:"verb,omitempty"`
	Objects []Object `json:"objects"`
	Wait    *Amount  `json:"wait,omitempty"`
	Action  string   `json:"action"` // the sentence as it prints
	Table
	Hazards []Hazard   `json:"hazards"`
	After   []Standing `json:"after"` // what does not stand as it did before the job
}

// Object is what a verb acts on, with the values that hold for it at this step.
type Object struct {
	Kind   string  `json:"kind"` // part, cover, cavity, energy, point, limit, spare, fluid, supply, procedure, words
	Name   string  `json:"name,omitempty"`
	Words  string  `json:"words"`
	Torque *Amount `json:"torque,omitempty"`
	Amount *Amount `json:"amount,omitempty"`
	Fluid  string  `json:"fluid,omitempty"`
	Limit  *Amount `json:"limit,omitempty"`
}

// Hazard is what can hurt at a step.
type Hazard struct {
	Hazard string `json:"hazard"`
	Level  string `json:"level"`
	Why    string `json:"why"`
}

// Standing is how something stands after a step.
type Standing struct {
	Kind  string `json:"kind"` // part, cover, cavity, energy, raised, parted, slack
	Name  string `json:"name"`
	Words string `json:"words"`
	Level string `json:"level"`
}

// Needs is what a job takes, in the order of its steps.
type Needs struct {
	Fasteners []Fastener `json:"fasteners"`
	Tools     []Use      `json:"tools"`
	Supplies  []Use      `json:"supplies"`
	Spares    []Use      `json:"spares"`
	Waste     []Waste    `json:"waste"`
}

// Fastener is a fastener that a step turns, with the listed tools that do it: each of the ways is
// enough.
type Fastener struct {
	Step   int        `json:"step"`
	Part   string     `json:"part"`
	Words  string     `json:"words"`
	Head   string     `json:"head"`
	Widths []string   `json:"widths,omitempty"`
	Point  string     `json:"point,omitempty"`
	Access string     `json:"access"`
	Reach  float64    `json:"reach-mm,omitempty"`
	Low    float64    `json:"torque-low-newton-metres,omitempty"` // at the wrench
	High   float64    `json:"torque-high-newton-metres,omitempty"`
	Ways   [][]string `json:"tools"`
}

// Use is a named thing that a step uses.
type Use struct {
	Step   int     `json:"step"`
	Name   string  `json:"name"`
	Count  int     `json:"count,omitempty"`
	Amount *Amount `json:"amount,omitempty"`
	Why    string  `json:"why"`
}

// Waste is a fluid that runs out at a step.
type Waste struct {
	Step   int     `json:"step"`
	Cavity string  `json:"cavity"`
	Words  string  `json:"words"`
	Amount *Amount `json:"amount,omitempty"`
	Into   string  `json:"into,omitempty"`
}

// Supplied is how many or how much a step uses up of something.
type Supplied struct {
	Name   string  `json:"name"`
	Count  int     `json:"count,omitempty"`
	Amount *Amount `json:"amount,omitempty"`
}

// Amount is an amount as it prints, and as numbers: low and high in the unit, and in
// the coherent unit of the SI. A bound that is not there is left out; one figure is both. Of an
// amount that cannot be read only the text is told.
type Amount struct {
	Text      string   `json:"text"`
	Dimension string   `json:"dimension,omitempty"`
	Shape     string   `json:"shape,omitempty"` // exact, range, tolerance, at least, at most, about
	Unit      string   `json:"unit,omitempty"`
	Low       *float64 `json:"low,omitempty"`
	High      *float64 `json:"high,omitempty"`
	SI        *SI      `json:"si,omitempty"`
}

// SI is an amount in the coherent unit of the SI.
type SI struct {
	Unit string   `json:"unit"`
	Low  *float64 `json:"low,omitempty"`
	High *float64 `json:"high,omitempty"`
}
