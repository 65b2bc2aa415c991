package compose

import (
	"slices"

	"benchleaf/compiler/internal/plan"
)

// entries gathers the places of the terms of one kind.
type entries struct {
	terms []string
	at    map[string][]plan.Mention
}

func (e *entries) add(term string, at plan.Mention) {
	if e.at == nil {
		e.at = map[string][]plan.Mention{}
	}
	if e.at[term] == nil {
		e.terms = append(e.terms, term)
	}
	if !slices.Contains(e.at[term], at) {
		e.at[term] = append(e.at[term], at)
	}
}

// sorted gives the entries in order of their terms.
func (e *entries) sorted() []plan.IndexEntry {
	terms := slices.Clone(e.terms)
	slices.SortStableFunc(terms, compareNames)
	var out []plan.IndexEntry
	for _, term := range terms {
		out = append(out, plan.IndexEntry{Term: term, At: e.at[term]})
	}
	return out
}

// parted gives a term that is met on several machines an entry for each: the drain plug of
// one is not that of another.
func parted(list []plan.IndexEntry, machines []plan.Machine) []plan.IndexEntry {
	var out []plan.IndexEntry
	for _, whole := range list {
		var of []int
		for _, at := range whole.At {
			if !slices.Contains(of, at.Machine) {
				of = append(of, at.Machine)
			}
		}
		slices.Sort(of)
		for _, machine := range of {
			entry := plan.IndexEntry{Term: whole.Term}
			if len(of) > 1 {
				entry.Of = machines[machine-1].Title
			}
			for _, at := range whole.At {
				if at.Machine == machine {
					entry.At = append(entry.At, at)
				}
			}
			out = append(out, entry)
		}
	}
	return out
}

// mentions adds to the index what the steps of a machine's procedures name and take.
func (b *binder) mentions(m int) {
	for i, w := range b.at[m] {
		procedure := b.in[m][i]
		at := func(step int) plan.Mention {
			return plan.Mention{Machine: m + 1, Procedure: procedure, Step: step}
		}
		fetched := plan.Mention{Machine: m + 1, Procedure: procedure, List: true}
		for _, step := range w.job.Steps {
			for _, object := range step.Objects {
				if object.Part != nil || object.Cavity != nil || object.Point != nil || object.Spare != nil || object.Limit != nil {
					b.index["parts"].add(upper(object.Words()), at(step.Number))
				}
			}
		}
		for _, grip := range w.needs.Grips {
			b.index["parts"].add(upper(grip.Part.Words()), at(grip.Step.Number))
		}
		for _, use := range w.needs.Spares {
			if spare := w.job.Spare(use.Name); spare != nil {
				b.index["parts"].add(upper(spare.Words()), at(use.Step.Number))
			}
		}
		for _, use := range w.needs.Supplies {
			if fluid := w.job.Fluid(use.Name); fluid != nil {
				b.index["fluids"].add(upper(fluidWords(fluid)), at(use.Step.Number))
			}
		}
		for _, tool := range w.brings() {
			name := w.toolName(tool)
			b.index["tools"].add(name, fetched)
			for _, grip := range w.needs.Grips {
				if turns(grip.Listed, tool.Name) {
					b.index["tools"].add(name, at(grip.Step.Number))
				}
			}
			for _, use := range w.needs.Tools {
				if use.Name == tool.Name {
					b.index["tools"].add(name, at(use.Step.Number))
				}
			}
		}
	}
}
