package pagestest

import "benchleaf/compiler/internal/plan"

// PickList is what to bring for three procedures on one round.
func PickList() plan.PickList {
	return plan.PickList{
		Words: Words(), Shop: "Harrow Lane Mill", Kind: "Pick list", Title: "Autumn service, log deck and edger", Date: "2026-10-12", DateIs: "Latest revision",
		Served: []plan.Served{
			{Key: "A", Title: "Change the worm gearbox oil", Machine: "Log-deck conveyor", Revision: "C"},
			{Key: "B", Title: "Tension the drive belts", Machine: "Board edger", Revision: "2"},
			{Key: "C", Title: "Grease the tail bearings", Machine: "Log-deck conveyor", Revision: "A"},
		},
		Groups: []plan.PickGroup{
			{Kind: "tools", Title: "Tools", Note: "Fewest tools on the wall that serve every fastener", Lines: []plan.Pick{
				{Name: "Torque wrench 20 to 100 N·m, 1/2 in", Serves: []string{"drain plug", "fill plug", "guard bolts"}, Where: "Wall, row 2", For: []string{"A", "B"}},
				{Name: "Socket 24 mm, 1/2 in", Serves: []string{"24 mm hex · drain and fill plug"}, StandIns: []string{"ring spanner 24 mm"}, Where: "Tray 4", For: []string{"A"}},
				{Name: "Spanner 13 mm", Quantity: "2", Serves: []string{"13 mm hex · guard bolts, belt adjuster"}, Where: "Wall, row 1", For: []string{"A", "B", "C"}},
				{Name: "Belt tension gauge", Where: "Office drawer", For: []string{"B"}},
				{Name: "Grease gun, lever", Where: "Oil store", For: []string{"C"}},
			}},
			{Kind: "supplies", Title: "Supplies", Lines: []plan.Pick{
				{Name: "Gear oil PAG ISO VG 460", Quantity: "1.1 L", Take: "2 × 1 L bottle, 0.9 L left", Where: "Oil store", For: []string{"A"}},
				{Name: "Grease NLGI 2, lithium complex", Quantity: "60 g", Take: "1 cartridge", StandIns: []string{"calcium sulfonate NLGI 2"}, For: []string{"C"}},
				{Name: "Lint-free rags", Quantity: "8", For: []string{"A", "B", "C"}},
			}},
			{Kind: "spares", Title: "New parts", Lines: []plan.Pick{
				{Name: "Sealing ring 22 × 27 mm, copper", Quantity: "2", For: []string{"A"}},
				{Name: "Breather filter", Quantity: "1", For: []string{"A"}},
			}},
			{Kind: "wear", Title: "Wear", Lines: []plan.Pick{{Name: "Eye protection", For: []string{"A", "B", "C"}}, {Name: "Protective gloves", Quantity: "2 pairs", For: []string{"A", "C"}}}},
			{Kind: "waste", Title: "Waste", None: "Nothing to dispose of."},
		},
		Warnings: []string{"6 mm hex socket, set screw of the belt adjuster (B)"},
	}
}
