package needs

import (
	"slices"

	"benchleaf/compiler/internal/model"
)

// Used holds names of each list of a procedure.
type Used struct{ Tools, Supplies, Spares map[string]bool }

// Used tells what the job takes: the tools that a step names or that take part in
// turning a fastener, and what is used up. While no listed tool serves a
// fastener, every one that could be meant for it counts.
func (n *Needs) Used() Used {
	used := Used{map[string]bool{}, map[string]bool{}, map[string]bool{}}
	for _, use := range n.Tools {
		used.Tools[use.Name] = true
	}
	for _, grip := range n.Grips {
		for _, way := range grip.Listed {
			for _, name := range way {
				used.Tools[name] = true
			}
		}
		for _, tool := range n.listed {
			if (len(grip.Listed) == 0 || grip.Doubt) && grip.Meant(tool) {
				used.Tools[tool.Name] = true
			}
		}
	}
	for _, catch := range n.Catch {
		for _, tool := range n.listed {
			if !catch.Step.Into.Set() && tool.Kind.Text == "container" {
				used.Tools[tool.Name] = true // what is drained goes into one of them
			}
		}
	}
	for _, use := range n.Supplies {
		used.Supplies[use.Name] = true
	}
	for _, use := range n.Spares {
		used.Spares[use.Name] = true
	}
	return used
}

// Compare sets Idle in what each version of one procedure takes. What no version
// takes is idle in none: its author put it on the list all the same.
func Compare(procedure *model.Procedure, versions []*Needs) {
	used := make([]Used, len(versions))
	for i, n := range versions {
		used[i] = n.Used()
	}
	for i, n := range versions {
		idle := func(list model.List, of func(Used) map[string]bool) map[string]bool {
			out := map[string]bool{}
			for _, name := range list.Names() {
				for _, other := range used {
					if of(other)[name] && !of(used[i])[name] {
						out[name] = true
					}
				}
			}
			return out
		}
		n.Idle = Used{
			Tools:    idle(procedure.Tools, func(u Used) map[string]bool { return u.Tools }),
			Supplies: idle(procedure.Supplies, func(u Used) map[string]bool { return u.Supplies }),
			Spares:   idle(procedure.Spares, func(u Used) map[string]bool { return u.Spares }),
		}
	}
}

// Fluids lists the names of the fluids a job takes or works on, each once, in order.
func (n *Needs) Fluids(job *model.Job) []string {
	var out []string
	for _, use := range n.Supplies {
		if job.Fluid(use.Name) != nil && !slices.Contains(out, use.Name) {
			out = append(out, use.Name)
		}
	}
	return out
}
