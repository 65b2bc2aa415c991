package plan

// StoreRow is one thing on the shelf.
type StoreRow struct {
	Name     string // short name
	Title    string
	Number   string // order or part number
	Where    string
	Supplier string
	State    string   // missing, order, enough, uncounted
	Word     string   // the state in the language of the page
	OnHand   string   // "5.6 L"; empty where nobody counted
	Counted  string   // ISO 8601 day
	Need     string   // what the work asked for takes; empty for nothing
	Missing  string   // what of that, and of what is to be kept, is not there
	Buy      string   // packs: "1 × 5 L + 2 × 1 L"
	Cost     string   // "89.40 EUR"; empty where a price is not known
	RunsOut  string   // ISO 8601 day; empty where it lasts for all that is foreseen, or nobody counted
	At       string   // the work it runs out at
	OrderBy  string   // ISO 8601 day
	Used     string   // within the twelve months before
	Year     string   // what is foreseen for the twelve months to come
	For      []string // keys of the work it is wanted for
	Works    []string // short names of its procedures
	Keep     string   // what is to be there at the least; empty for nothing
}

// Store is how the shelves of a shop stand on a day.
type Store struct {
	Words    Words
	Shop     string
	On, By   string // ISO 8601 days; By is empty for what is due and soon
	Served   []Served
	Rows     []StoreRow
	Cost     string // of all that is to be bought; empty where none has a price
	Unpriced int    // things to buy without a price
	Reckoned int    // entries that do not say what was used
}
