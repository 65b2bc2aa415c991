package plan

import (
	"strconv"
	"strings"

	"benchleaf/compiler/internal/picture"
)

// Spot is a place on a drawing, in the units of whoever drew it, or on a picture, in parts
// of its width and height; x to the right, y down.
type Spot struct{ X, Y float64 }

// Round is a circle of a drawing.
type Round struct {
	Spot
	Radius float64
}

// Callout is a numbered place and what is there.
type Callout struct {
	Spot
	Number int
	Placed bool   // the number is that of the thing on the map of its machine
	Name   string // empty where only the number is known
	Steps  []int  // at which it is dealt with
	Marks  []bool // of a lubrication point: at which of the intervals it is due
}

// Drawing is a machine as its description draws it, with numbered places.
type Drawing struct {
	Outline  []Spot
	Lines    [][]Spot
	Rounds   []Round
	Callouts []Callout
}

// Picture is one of the shop's pictures.
type Picture struct {
	Title    string
	Image    *picture.Picture
	Callouts []Callout
}

// Level is what holds a fluid, seen from the side: how high it stands when it is right.
// Heights are parts of the vessel from its top.
type Level struct {
	Height float64
	Ports  []Port // from the top
}

// Port is an opening of a vessel, or where its level shows.
type Port struct {
	Name   string
	Height float64
	Kind   PortKind
}

// PortKind tells the openings of a vessel apart.
type PortKind string

// A vessel is filled, breathes, shows its level and is drained.
const (
	FillPort  PortKind = "fill"
	VentPort  PortKind = "vent"
	LevelPort PortKind = "level" // a glass, or something else to look at
	LevelPlug PortKind = "level-plug"
	DrainPort PortKind = "drain"
)

// Pass is one round of tightening.
type Pass struct {
	Share int    // of the torque, percent
	Text  string // the torque of the pass; empty where it is not known
	Also  string // the same in the other system; may be empty
}

// Passes writes rounds of tightening on one line: "30 % (24 N·m), 100 % (80 N·m)".
func Passes(passes []Pass) string {
	var out []string
	for _, pass := range passes {
		text := strconv.Itoa(pass.Share) + "\u00a0%"
		if pass.Text != "" {
			text += " (" + pass.Text + ")"
		}
		out = append(out, text)
	}
	return strings.Join(out, ", ")
}
