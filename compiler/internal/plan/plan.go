// Package plan says what a page holds, in print order and already in words. It
// must not know paper, type, colour or any file format.
package plan

import "slices"

// Run is a stretch of text in one face.
type Run struct {
	Text         string
	Bold, Italic bool
	Code         bool
}

// Block is a paragraph, or one item of a list where Bullet is set ("•" or "1.").
type Block struct {
	Bullet string
	Runs   []Run
}

// Fact is a label with what it says: "People" – "2".
type Fact struct{ Label, Text string }

// Caution is a safety message in the order of ANSI Z535.6: signal word, hazard, consequence, avoidance.
type Caution struct {
	Signal      string   // key of the level: danger, warning, caution, notice
	Word        string   // the level in the card's language: DANGER
	Hazard      string   // noun phrase, no full stop
	Second      Second   // signal word and hazard in a second language; empty where the shop wants one only
	Consequence string   // sentence
	Avoid       string   // sentences
	Wear        []string // protective equipment, in words
	Signs       []string // ISO 7010 numbers, W before M before P
	Steps       []int    // of a message in front: the steps at which it stands again
}

// Second is what a signal panel says in a second language.
type Second struct {
	Language     string // BCP 47
	Word, Hazard string // the hazard is empty where nobody has said it in this language
}

// Isolation is one source of energy, how it is cut off and how that is proved, with the
// steps that say the same; 0 where none does.
type Isolation struct {
	Energy, How, Prove, Restore string
	Cut, Proof                  int
}

// Item is a line of a list of things to bring.
type Item struct {
	Name     string   // "Torque wrench 20 to 100 N·m, 1/2 in"
	Quantity string   // "2", "1.1 L"; empty for one tool
	Note     string   // what it is for, or its grade
	StandIns []string // what may be brought instead
	Sign     string   // number of ISO 7010, of protective equipment
}

// Brief reports whether a message in front only names its hazard, since it stands in full
// at its step. A danger is read in full before anything else.
func (c Caution) Brief() bool { return len(c.Steps) > 0 && c.Signal != "danger" }

// Drawn are the numbers of the signs of a message that are drawn: what threatens, and what is
// asked or forbidden. The general warning is left to the alert symbol, and a notice has none
// that warns.
func (c Caution) Drawn() []string {
	var out []string
	var warns, asks bool
	for _, number := range c.Signs {
		switch kind := number[0]; {
		case number == "W001" || kind == 'W' && (warns || c.Signal == "notice") || kind != 'W' && asks:
			continue
		case kind == 'W':
			warns = true
		default:
			asks = true
		}
		out = append(out, number)
	}
	return out
}

// Rank is the place of a message among the levels, 0 the worst: an unknown level counts
// as danger, so that no message looks milder than it may be.
func (c Caution) Rank() int { return max(0, slices.Index(Signals(), c.Signal)) }

// WorstFirst puts messages in the order of their levels.
func WorstFirst(cautions []Caution) []Caution {
	sorted := slices.Clone(cautions)
	slices.SortStableFunc(sorted, func(a, b Caution) int { return a.Rank() - b.Rank() })
	return sorted
}

// Blank is a place to write on the card.
type Blank struct {
	Label string // what is read: "Chain slack"
	Unit  string // "mm"; empty for words, names and dates
	Limit string // "20 to 30 mm"; empty where there is none

	Low, High string    // the bounds of the limit in Unit, as decimals; empty where it has none
	Of        BlankKind // what it says of the work as a whole
}

// BlankKind tells the blanks that every record has from readings of the work.
type BlankKind string

// A Meter is what the hour meter stands at, a Day when the work was done, a Worker who
// did it; the zero kind is a reading.
const (
	Meter  BlankKind = "meter"
	Day    BlankKind = "day"
	Worker BlankKind = "worker"
)

// Value is a figure that stands out at its step.
type Value struct {
	Label string // "Torque"
	Text  string // "42 to 48 N·m"
	Also  string // the same in the other system, or what it holds for; may be empty
}

// Step is one numbered action.
type Step struct {
	Number    int
	Stage     string    // heading that begins with this step; empty while it goes on
	Cautions  []Caution // print before the action, on the same side
	Action    []Run     // imperative sentence
	Say       []Block   // more words
	Values    []Value
	Details   []string // small print: fasteners, wrench sizes, order, condition of the thread
	Otherwise Fact     // what to do when it is not as it should be: "Outside the limit" – "Renew the chain."
	Readings  []Blank
	Places    []int    // numbers on the map of what it deals with
	Circle    []int    // of fasteners on a circle, clockwise from the top: the turn at which each is tightened; empty where nothing is drawn
	Passes    []Pass   // of tightening, where there is more than one
	Level     *Level   // how high it is filled; nil where that is not known
	Picture   *Picture // nil where there is none
	Notes     []string
	Gate      string // what must have passed before it may begin
	Origin    string // of a joined job: letter and number of the step it comes from
	Worker    string // of a job for two: who does it
	GoesOn    bool   // it is about what the step before was about, so that the hands stay where they are
	Meanwhile bool   // done while the wait above runs
	Wait      bool   // the step takes its time by itself: a wait, or a run with a time or an end
	Seconds   int    // its least time, or its most where it has no least; 0 where it has none
}

// Section is a run of steps under one heading: make safe, work, close up and test.
type Section struct {
	Title string
	Lead  string // a line under the title; may be empty
	Steps []Step
}

// Card is all that a bench card says.
type Card struct {
	Words      Words
	Shop       string
	Title      string
	Name       string // the procedure's short name
	Machine    string
	Variant    string
	Revision   string
	Date       string // ISO 8601 day of the revision
	Author     string
	Checked    string
	Summary    []Run
	Facts      []Fact
	Joins      []Served  // procedures it was joined out of
	Timeline   *Timeline // of a joined job: who does what when; nil for none
	Start      []string  // condition of the machine at the start
	End        []string  // and at the end
	Cautions   []Caution
	Isolations []Isolation
	NoEnergy   string // why nothing is isolated; empty when something is
	Wear       []Item
	Tools      []Item
	Supplies   []Item
	Spares     []Item
	Map        *Drawing // where things are; nil where the machine is not drawn
	Pictures   []Picture
	Sections   []Section
	Blanks     []Blank // readings, hours, date, initials
	Manual     string  // the machine's own manual and where in it
	Allowed    []string
}

// Strip is one thing of the machine over the steps of a job.
type Strip struct {
	Kind string // energy, cover, part, cavity, raised
	Name string
	Bars []Bar // in order of their steps; between them it stands as before
}

// Bar is a run of steps after which a thing stands as its word says.
type Bar struct {
	From, To int // steps, from 1
	Word     string
	Half     bool // on the way: loose, isolated and not proved, raised and on no stand
}

// Phase is a run of steps under one heading.
type Phase struct {
	Title    string
	From, To int
}

// Remark is a finding as the approval sheet tells it.
type Remark struct {
	Severity string // error, warning, note
	Word     string // the severity in the page's language
	Text     string
	Rule     string
	Where    string // file and line
	Step     int    // 0 where it is of no step
	Reason   string // why its author stands by it; empty where nobody does
}

// Figure is a value the procedure stands on, with the source written beside it.
type Figure struct {
	What   string
	Text   string
	Source string // empty where none is written
	Where  string // file and line
	Again  string // who read it a second time and when; empty where nobody did
}

// Approval is what somebody reads who puts their name to a procedure.
type Approval struct {
	Words    Words
	Shop     string
	Title    string
	Machine  string
	Variant  string
	Revision string
	Date     string
	Author   string
	Checked  string
	Manual   string
	Held     bool     // no card is printed while it stands as it does
	Verdict  string   // one sentence
	Counts   []string // how many of each there are, a line each
	Phases   []Phase
	Steps    [][]Run // the action of each step
	Strips   []Strip
	Found    []Remark
	Accepted []Remark
	Figures  []Figure
}

// Served is a procedure a pick list is for; lines refer to it by its Key.
type Served struct{ Key, Title, Machine, Revision string }

// Pick is a line of a pick list.
type Pick struct {
	Name     string   // what to take
	Quantity string   // "2", "3.3 L"; empty for one tool
	Take     string   // packs to take: "4 × 1 L bottle, 0.7 L left"
	Serves   []string // what it is for: "16 mm hex: drain plug, fill plug"
	Into     string   // what catches it
	Instead  []string // what of the cards it takes the place of
	StandIns []string
	Where    string   // place on the wall or shelf
	For      []string // keys of the procedures that want it
	OnHand   string   // what is on the shelf of it: "0.6 L"; empty where nobody counted
	Missing  string   // how much of it is not there
	Keep     string   // how much is to be there at the least
	Cost     string   // what the packs to take cost: "28.40 EUR"
	RunsOut  string   // when and at what the shelf runs out, and by when to order
}

// PickGroup is a list of one kind: tools, supplies, single-use parts, protective equipment, waste.
type PickGroup struct {
	Kind  string // tools, supplies, spares, wear, waste
	Title string
	Note  string // "fewest tools that serve every fastener, proved"
	Lines []Pick
	None  string // said when there are no lines
}

// PickList is what to bring for a set of procedures.
type PickList struct {
	Words    Words
	Shop     string
	Kind     string // what sort of list it is, in the language of the page
	Title    string
	Sum      string // below the title
	Date     string // ISO 8601 day
	DateIs   string // what day it is: of the latest revision
	Served   []Served
	Groups   []PickGroup
	Warnings []string // what no tool on the wall serves
}

// RecordRow is something that is written down each time: a reading at its step, or a
// blank of the whole job, whose Step is 0.
type RecordRow struct {
	Step int
	Blank
	Outside string // what to do when it is not as it should be
}

// RecordSheet is what is written down of a job, time after time.
type RecordSheet struct {
	Words    Words
	Shop     string
	Title    string
	Machine  string
	Variant  string
	Revision string
	Date     string
	Author   string
	Manual   string
	Rows     []RecordRow
}

// ChartRow is something that is done to a machine again and again.
type ChartRow struct {
	Name  string
	Note  string // which oil and how much; when it is done the first time
	Marks []bool // one for each column

	Number int // of its place on the drawing; 0 where it has none
}

// WallChart shows what is due on a machine at which interval.
type WallChart struct {
	Words   Words
	Shop    string
	Machine string
	Manual  string
	Date    string   // the latest revision
	Map     *Drawing // with the points; nil where the machine is not drawn
	Columns []string // intervals, the shortest first: running time before the calendar
	Jobs    []ChartRow
	Points  []ChartRow
}

// Width is a width across flats that a shop has a tool for.
type Width struct {
	Label string // "13 mm", "1/2 in"
	MM    float64
}

// Gauge is a page to hold a bolt head against: a ruler and the shop's widths, true to size.
type Gauge struct {
	Words  Words
	Shop   string
	Widths []Width // metric before inch, the smallest first
}
