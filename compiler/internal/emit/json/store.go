package json

import "benchleaf/compiler/internal/plan"

type storeReport struct {
	Version  int        `json:"benchleaf"`
	On       string     `json:"on"`
	By       string     `json:"by,omitempty"`
	Store    []storeRow `json:"store"`
	Cost     string     `json:"cost,omitempty"`
	Problems []string   `json:"problems"`
}

type storeRow struct {
	Name     string `json:"name"`
	Title    string `json:"title"`
	Number   string `json:"number,omitempty"`
	Where    string `json:"where,omitempty"`
	Supplier string `json:"supplier,omitempty"`
	State    string `json:"state"` // missing, order, enough, uncounted
	OnHand   string `json:"on-hand,omitempty"`
	Counted  string `json:"counted,omitempty"`
	Need     string `json:"need,omitempty"`
	Missing  string `json:"missing,omitempty"`
	Buy      string `json:"buy,omitempty"`
	Cost     string `json:"cost,omitempty"`
	RunsOut  string `json:"runs-out,omitempty"`
	At       string `json:"runs-out-at,omitempty"`
	OrderBy  string `json:"order-by,omitempty"`
	Used     string `json:"used-in-a-year,omitempty"`
	Year     string `json:"foreseen-for-a-year,omitempty"`
	Keep     string `json:"keep,omitempty"`
}

// Store writes how the shelves of a shop stand on a day.
func Store(on, by string, rows []plan.StoreRow, cost string, problems []string) []byte {
	out := storeReport{Version: Version, On: on, By: by, Store: []storeRow{}, Cost: cost, Problems: append([]string{}, problems...)}
	for _, row := range rows {
		out.Store = append(out.Store, storeRow{Name: row.Name, Title: row.Title, Number: row.Number, Where: row.Where, Supplier: row.Supplier, State: row.State,
			OnHand: row.OnHand, Counted: row.Counted, Need: row.Need, Missing: row.Missing, Buy: row.Buy, Cost: row.Cost, RunsOut: row.RunsOut, At: row.At,
			OrderBy: row.OrderBy, Used: row.Used, Year: row.Year, Keep: row.Keep})
	}
	return indented(out)
}
