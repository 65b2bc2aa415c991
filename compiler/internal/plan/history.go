package plan

// History is what was done to one machine, for whoever buys or inspects it.
type History struct {
	Words    Words
	Shop     string
	Machine  string
	Facts    []Fact         // serial number, version, in service since, manual, hours
	From, To string         // ISO 8601 days: of the first entry, empty where there is none; and up to which entries count
	Done     Table          // what was done
	Open     Table          // what was left out, and readings outside of their limits
	Entries  []HistoryEntry // by day, those of one day as they stand in the book
}

// HistoryEntry is one entry of the service book, for other programs.
type HistoryEntry struct {
	Number    int
	Date      string
	Unit      string
	Procedure string
	Title     string
	Revision  string
	Meter     string
	NewMeter  string
	Who       string
	Done      int      // steps
	LeftOut   []string // "4: no spare at hand"
	Open      []string // steps that are not done yet, so that it does not count as done
	Readings  []string // "Chain slack 24 mm"
	Outside   []string // those outside of their limits
	Used      []string // "gear-460 1.1 L"
	Received  []string
	Remarks   string
	Corrects  int
	Put       bool // a later entry stands for it
}
