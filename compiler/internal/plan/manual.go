package plan

// Manual is what a shop keeps in a folder: its procedures, machine by machine, with
// what they share in front and behind.
type Manual struct {
	Words    Words
	Shop     string
	Title    string
	Date     string // ISO 8601 day of the latest revision
	Machines []Machine
	Messages []Message // worst first
	Pick     PickList
	Index    []IndexGroup
}

// Machine is a chapter: the figures of one machine, then its procedures.
type Machine struct {
	Title      string
	Facts      []Fact   // maker, model, versions, manual
	Map        *Drawing // where its things are; nil where it is not drawn
	Tables     []Table
	Procedures []Card
}

// Table is figures of a machine, a line a row.
type Table struct {
	Key     string // torque, capacity, wrench, lubrication, limit, interval
	Title   string
	Columns []string
	Rows    []Row
}

// Row is a line of a table. Where To is set, the page of that place stands in the last
// cell, which is empty.
type Row struct {
	Cells []string
	To    Mention
}

// Message is a safety message with the procedures it stands in.
type Message struct {
	Caution
	In []Mention
}

// Mention is a place of the manual. Machines, procedures, steps and rows count from 1;
// what is 0 is not meant, so that the zero Mention is no place at all.
type Mention struct {
	Machine   int
	Procedure int    // of the machine
	Step      int    // of the procedure; 0 for its beginning
	List      bool   // what the procedure asks to bring
	Table     string // key of a table of the machine, where Procedure is 0
	Row       int    // of the table
}

// IndexGroup is the index of one kind of thing: parts, fluids, tools.
type IndexGroup struct {
	Title   string
	Entries []IndexEntry // in order of their terms
}

// IndexEntry is a term with the places it stands at, in order of the manual.
type IndexEntry struct {
	Term string
	Of   string // the machine, where a term is met on several
	At   []Mention
}
