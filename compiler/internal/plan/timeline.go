package plan

// Timeline is a job over its time: a row of bars for each thing that is told.
type Timeline struct {
	Title  string
	Length int64 // seconds
	Rows   []TimelineRow
}

// TimelineRow is one row of a strip.
type TimelineRow struct {
	Label string
	Kind  string // work, change, wait, state
	Bars  []TimelineBar
}

// TimelineBar is a time in seconds from the begin of the job.
type TimelineBar struct{ From, To int64 }

// JoinedStep is one step of a joined job with its time.
type JoinedStep struct {
	Number  int // on the card
	Start   int64
	Seconds int64
	Whose   []string // procedures with the numbers of their steps: "log-deck-gearbox-oil 7"
	Words   string
	Ready   bool // it only makes the machine ready or closes it up
	Wait    bool // it is a wait, which others fill
	Person  int  // who does it, in a plan for two; 0 for both, and in a plan for one
	Setting string
}
