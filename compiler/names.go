package compiler

import (
	"cmp"
	"slices"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/source"
)

// Named is a short name with what it stands for, as it prints.
type Named struct{ Name, Title string }

// Names are the short names that somebody asks for by name.
type Names struct {
	Procedures []Named
	Machines   []Named
	Versions   []Named // of machines, with the machine's title
	Units      []Named // that stand in the shop; a machine with none is one of its kind
}

// NamesOf lists the names in some files, each list by name, without checking anything.
func NamesOf(files []*source.File) Names {
	var out Names
	set := model.Read(files, inParallel)
	described := map[string]bool{}
	for _, unit := range set.Units() {
		described[unit.Machine.Name()] = true
		out.Units = append(out.Units, Named{unit.Name, cmp.Or(unit.Title.Text, unit.Machine.Text)})
	}
	for _, file := range set.Files {
		if file.Procedure != nil {
			out.Procedures = append(out.Procedures, Named{file.Name(), file.Procedure.Title.Text})
		}
		if file.Machine == nil {
			continue
		}
		machine := Named{file.MachineName(), file.Machine.Title.Text}
		out.Machines = append(out.Machines, machine)
		if !described[machine.Name] {
			out.Units = append(out.Units, machine)
		}
		for _, version := range file.Machine.Variants.Names() {
			out.Versions = append(out.Versions, Named{version, machine.Title})
		}
	}
	for _, list := range []*[]Named{&out.Procedures, &out.Machines, &out.Versions, &out.Units} {
		slices.SortStableFunc(*list, func(a, b Named) int { return cmp.Compare(a.Name, b.Name) })
		*list = slices.CompactFunc(*list, func(a, b Named) bool { return a.Name == b.Name })
	}
	return out
}
