// Package state walks a machine through the steps of a job: what is on, loose, open,
// full, live, raised after each of them. It tells where a step does not fit what the
// steps before it left behind, and what is not as it was at the end. It must not
// know how a finding reads.
package state

import (
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/source"
)

// Kind is what does not fit.
type Kind string

// Breaches of a step.
const (
	BehindCover      Kind = "behind-cover"       // works on what a cover hides that is on
	AlreadyOff       Kind = "already-off"        // removes what is off
	AlreadyOn        Kind = "already-on"         // refits what never came off
	TightensOff      Kind = "tightens-off"       // tightens what is off
	LoosensOff       Kind = "loosens-off"        // loosens what is off
	DrainsShut       Kind = "drains-shut"        // drains through a plug that is in
	NoAir            Kind = "no-air"             // drains or fills with no way for air
	FillsOpen        Kind = "fills-open"         // fills while it is open below
	FillsShut        Kind = "fills-shut"         // fills through a plug that is in
	NoLevelCheck     Kind = "no-level-check"     // fills, and nothing tells how far
	TiltedOpen       Kind = "tilted-open"        // turns the machine over with a cavity open
	RestoresLive     Kind = "restores-live"      // gives back what was never cut off
	RestoredGuardOff Kind = "restored-guard-off" // gives energy back with a guard off
	RestoredApart    Kind = "restored-apart"     // gives energy back before a part goes on
	GuardOffLive     Kind = "guard-off-live"     // takes a guard off after the energy came back
	HandsAgain       Kind = "hands-again"        // hands go in after the energy came back
	NotProvedAgain   Kind = "not-proved-again"   // isolated a second time and not proved
	RunsGuardOff     Kind = "runs-guard-off"     // runs with a guard off
	RunsDead         Kind = "runs-dead"          // runs while its energy is cut off
	RunsApart        Kind = "runs-apart"         // runs with a part off or not tightened
	RaisedBare       Kind = "raised-bare"        // works on what is raised and on no stand
	LoweredApart     Kind = "lowered-apart"      // lets down what stands on a part that is off
	WaitBroken       Kind = "wait-broken"        // does while waiting what ends the wait's purpose
	StillTurning     Kind = "still-turning"      // a guard comes off before the mass stands still
	SealAgain        Kind = "seal-again"         // a part goes back a second time with one seal
	ProvedEarly      Kind = "proved-early"       // proved dead before it is relieved
	InTheAir         Kind = "in-the-air"         // a wheel's fasteners are turned hard while it hangs free
	RaisedForNothing Kind = "raised-for-nothing" // let down again with nothing done
	Twice            Kind = "twice"              // the step before, once more
	NeverLoose       Kind = "never-loose"        // tightens after setting what nothing let move
	TightForNothing  Kind = "tight-for-nothing"  // tightens what was loosened, with nothing done between
	TightTwice       Kind = "tight-twice"        // tightens what is tight, in the same way once more
	SetTight         Kind = "set-tight"          // sets what has just been tightened
	HeldTight        Kind = "held-tight"         // sets what a fastener that is tight holds
	Loaded           Kind = "loaded"             // loosens or takes off what an energy still loads
	AlreadyShut      Kind = "already-shut"       // closes or connects what is
	ProvedLive       Kind = "proved-live"        // proves dead what no step cuts off
	LowersNothing    Kind = "lowers-nothing"     // lets down what was never raised
	TightThenOff     Kind = "tight-then-off"     // tightens what the next steps take off
	MoreFitted       Kind = "more-fitted"        // puts more new ones in than came off
	FillsUndrained   Kind = "fills-undrained"    // fills what was opened to drain and never drained
	HandsRunning     Kind = "hands-running"      // hands go to what turns, and nothing stopped the machine
	LeftIn           Kind = "left-in"            // runs with a wedge or a locking pin in
	RunsOpen         Kind = "runs-open"          // runs with something open, loose, apart or empty
	RunsShut         Kind = "runs-shut"          // runs or is bled with shut what feeds it
	SupportOut       Kind = "support-out"        // chocks or stands come away under what is raised
	LoweredEarly     Kind = "lowered-early"      // lets down while what came off under it goes back later
	RaisedTwice      Kind = "raised-twice"       // raises for other work what was never let down
	LoweredOnto      Kind = "lowered-onto"       // lets down onto what words set under it
	HandsLoaded      Kind = "hands-loaded"       // works by hand on what a raised mass pulls on
	VentShut         Kind = "vent-shut"          // fills with the vent shut or blocked
)

// Breaches of the end: what a job leaves behind.
const (
	NotPutBack   Kind = "not-put-back"
	NotAllBack   Kind = "not-all-back"
	LeftHand     Kind = "left-hand-tight"
	LeftLoose    Kind = "left-loose"
	LeftOpen     Kind = "left-open"
	LeftShut     Kind = "left-shut" // a valve is closed and never opened
	NotConnected Kind = "not-connected"
	NeverFilled  Kind = "never-filled"
	NotRestored  Kind = "not-restored"
	LeftRaised   Kind = "left-raised"
	LeftSlack    Kind = "left-slack"
	LeftInPlace  Kind = "left-in-place" // a wedge, a pin, a chock or a stand never comes away
	NotAnew      Kind = "not-anew"      // a part is renewed or back on, and no later step makes a setting anew
	NotTried     Kind = "not-tried"     // energy came back and nobody tries whether it works
)

// Breach is one place where a step does not fit the state, with the step that made
// the state so.
type Breach struct {
	Kind      Kind
	Step      *model.Step  // the step at fault; of the end, the one that made it so
	Place     source.Place // its object
	Thing     string       // what it is about, in words
	Name      string       // its short name
	Other     string       // what stands against it, in words: a cover, an energy, a plug
	Since     *model.Step  // the step that made the state so; nil where it was so at the start
	Out       int          // how many came off, of NotAllBack; of LeftHand and LeftLoose, how many are left where some were tightened
	Back      int          // and how many went back
	Looked    bool         // the step only looks
	Guard     bool         // of NotPutBack: it keeps people from an energy
	Tensioner bool         // of Loaded: a part loads it, and no energy

	of *model.Part // what is off
}

// Level is how something stands, for the chart of a job.
type Level int

// The levels of a part, a cavity and an energy.
const (
	AsBefore Level = iota // tight, full, live
	Loose                 // loose, or only hand-tight
	Open                  // open
	Shut                  // closed, of a valve that is open while the machine works
	Off                   // off
	Empty                 // a cavity that is drained
	Cut                   // an energy that is isolated
	Proved                // and proved dead
	Raised                // raised, on the lifting gear
	Stands                // raised, on stands
)

func (l Level) String() string {
	return [...]string{"as-before", "loose", "open", "shut", "off", "empty", "isolated", "proved", "raised", "on-stands"}[l]
}

// Track is one thing of the machine over the steps: its level after each.
type Track struct {
	Name, Words string
	Kind        string // part, cover, cavity, energy, raised
	Levels      []Level
}

// Walk is a job walked through.
type Walk struct {
	Breaches []Breach
	Tracks   []Track // of the things whose level changes, in the order in which they do
}
