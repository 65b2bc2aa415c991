package pagestest

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"benchleaf/compiler/internal/plan"
)

// Manual is a manual of two machines, one with two procedures.
func Manual() plan.Manual {
	first, second, other := Card(), Card(), Card()
	second.Title, second.Name = "Set the chain", "log-deck-chain"
	other.Title, other.Name, other.Machine, other.Variant = "Look over the edger", "edger-look", "Edger", ""
	out := plan.Manual{Words: Words(), Shop: first.Shop, Title: Words().Labels.ManualTitle, Date: first.Date, Pick: PickList()}
	out.Machines = []plan.Machine{
		{Title: first.Machine, Facts: []plan.Fact{{Label: "Maker", Text: "Own build"}, {Label: "Model", Text: "LD 6"}}, Tables: []plan.Table{torques(4)}, Procedures: []plan.Card{first, second}},
		{Title: other.Machine, Tables: []plan.Table{torques(90), {Key: "interval", Title: "Intervals", Columns: []string{"Procedure", "Then every", "Page"},
			Rows: []plan.Row{{Cells: []string{"Look over the edger", "50 h", ""}, To: plan.Mention{Machine: 2, Procedure: 1}}}}}, Procedures: []plan.Card{other}},
	}
	everywhere := []plan.Mention{{Machine: 1, Procedure: 1}, {Machine: 1, Procedure: 2}, {Machine: 2, Procedure: 1}}
	for _, caution := range messages() {
		out.Messages = append(out.Messages, plan.Message{Caution: caution, In: everywhere})
	}
	out.Index = []plan.IndexGroup{
		{Title: "Parts", Entries: []plan.IndexEntry{{Term: "Drain plug", Of: "Edger", At: []plan.Mention{{Machine: 2, Procedure: 1, Step: 8}, {Machine: 2, Table: "torque", Row: 80}}}, {Term: "Fill plug", At: []plan.Mention{{Machine: 1, Procedure: 1, Step: 15}}}}},
		{Title: "Tools", Entries: []plan.IndexEntry{{Term: "Lock and tag", At: []plan.Mention{{Machine: 1, Procedure: 1, List: true}, {Machine: 1, Procedure: 2, Step: 2}}}}},
	}
	return out
}

func torques(n int) plan.Table {
	table := plan.Table{Key: "torque", Title: "Torques", Columns: []string{"Fastener", "Thread", "Torque", "Condition"}}
	for i := range n {
		table.Rows = append(table.Rows, plan.Row{Cells: []string{fmt.Sprintf("Bolt %d", i+1), "M8", "22 to 27 N·m (17 to 19 lbf·ft)", "thread lightly oiled, crosswise"}})
	}
	return table
}

// RandomManual makes a manual as no shop would have it.
func RandomManual(seed uint64) plan.Manual {
	g := dice{rand.New(rand.NewPCG(seed, 17))}
	out := plan.Manual{Words: Words(), Shop: g.text(g.upTo(4)), Title: g.text(1 + g.upTo(5)), Date: "2026-01-31", Pick: RandomList(seed)}
	for m := range 1 + g.upTo(3) {
		machine := plan.Machine{Title: g.text(1 + g.upTo(6))}
		for range g.upTo(5) {
			machine.Facts = append(machine.Facts, plan.Fact{Label: g.text(2), Text: g.text(8)})
		}
		for p := range 1 + g.upTo(2) {
			card := Random(seed*31 + uint64(m*7+p))
			card.Machine = machine.Title
			machine.Procedures = append(machine.Procedures, card)
		}
		for k := range g.upTo(4) {
			table := plan.Table{Key: fmt.Sprint("t", k), Title: g.text(1 + g.upTo(4))}
			for range 1 + g.upTo(6) {
				table.Columns = append(table.Columns, g.text(1+g.upTo(2)))
			}
			for range 1 + g.upTo(60) {
				row := plan.Row{}
				for range table.Columns {
					row.Cells = append(row.Cells, g.text(g.upTo(g.long(4))))
				}
				table.Rows = append(table.Rows, row)
			}
			machine.Tables = append(machine.Tables, table)
		}
		out.Machines = append(out.Machines, machine)
	}
	at := func() (out []plan.Mention) {
		for range g.upTo(30) {
			out = append(out, plan.Mention{Machine: 1, Procedure: 1, Step: g.upTo(9)})
		}
		return out
	}
	for _, signal := range plan.Signals() {
		for range g.upTo(4) {
			caution := plan.Caution{Signal: signal, Word: strings.ToUpper(signal), Hazard: g.text(8), Consequence: g.text(g.long(20)), Avoid: g.text(g.long(40)), Wear: g.texts(3, 3)}
			out.Messages = append(out.Messages, plan.Message{Caution: caution, In: at()})
		}
	}
	for range g.upTo(3) {
		group := plan.IndexGroup{Title: g.text(2)}
		for range 1 + g.upTo(200) {
			group.Entries = append(group.Entries, plan.IndexEntry{Term: g.text(1 + g.upTo(6)), Of: g.text(g.upTo(3)), At: at()})
		}
		out.Index = append(out.Index, group)
	}
	return out
}
