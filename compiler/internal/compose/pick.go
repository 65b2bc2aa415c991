package compose

import (
	"fmt"
	"slices"
	"strconv"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
)

// picker composes one list for several jobs.
type picker struct {
	writers []*writer
	keys    []string
	words   plan.Words
	list    plan.PickList
}

// Asked is a job a list is for, with the versions of its machine as they print.
type Asked struct {
	Work
	Variant string
}

// Pick composes the pick list of some jobs, at least one. It is an error when the
// language of a shop has no words.
func Pick(jobs []Asked, system quantity.System) (plan.PickList, error) {
	p := &picker{}
	for i, asked := range jobs {
		w, err := newWriter(asked.Work, system)
		if err != nil {
			return plan.PickList{}, err
		}
		p.writers = append(p.writers, w)
		p.keys = append(p.keys, letters(i))
	}
	p.words = p.writers[0].words
	p.list = plan.PickList{Words: p.words, Title: p.words.Labels.Pick}
	if shop := jobs[0].Job.Shop; shop != nil {
		p.list.Shop = shop.Title.Text
	}
	for i, asked := range jobs {
		job, machine := asked.Job, asked.Job.MachineTitle()
		if asked.Variant != "" {
			machine += ", " + asked.Variant
		}
		p.list.Served = append(p.list.Served, plan.Served{Key: p.keys[i], Title: job.Procedure.Title.Text, Machine: machine, Revision: job.Procedure.Revision.Text})
		p.list.Date = max(p.list.Date, job.Procedure.Date.Text)
	}
	p.tools()
	p.supplies()
	p.spares()
	p.wear()
	p.waste()
	return p.list, nil
}

// letters counts A to Z, then AA, AB and so on.
func letters(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return letters(i/26-1) + letters(i%26)
}

func (p *picker) group(kind, title, note string, lines []plan.Pick) {
	p.list.Groups = append(p.list.Groups, plan.PickGroup{Kind: kind, Title: title, Note: note, Lines: lines, None: p.words.Labels.None})
}

// demand is one need of one job.
type demand struct {
	job  int
	grip *needs.Grip // nil for a tool named outright
	use  needs.Use
	ways []needs.Set
}

// tools takes the fewest tools that serve every fastener of every job, and each
// tool a step names.
func (p *picker) tools() {
	var demands []demand
	known := map[string]*model.Tool{}
	for i, w := range p.writers {
		tools := w.job.Tools()
		for _, tool := range tools {
			known[tool.Name] = tool
		}
		for g := range w.needs.Grips {
			grip := &w.needs.Grips[g]
			demands = append(demands, demand{job: i, grip: grip, ways: grip.Ways(tools)})
		}
		for _, use := range w.needs.Tools {
			demands = append(demands, demand{job: i, use: use, ways: []needs.Set{{use.Name}}})
		}
	}
	asked := make([]needs.Demand, len(demands))
	for i, one := range demands {
		asked[i] = needs.Demand{Ways: one.ways}
	}
	kit := needs.Smallest(asked)
	for _, i := range kit.Unmet {
		if d := demands[i]; d.grip != nil {
			p.list.Warnings = append(p.list.Warnings, fmt.Sprintf("%s (%s)", p.writers[d.job].serves(*d.grip), p.keys[d.job]))
		}
	}
	p.list.Warnings = unique(p.list.Warnings)
	var lines []plan.Pick
	for _, name := range kit.Tools {
		if tool := known[name]; tool != nil {
			lines = append(lines, p.toolLine(tool, kit.Tools, demands))
		}
	}
	note := p.words.Labels.Fewest
	if !kit.Proved {
		note = p.words.Labels.Few
	}
	p.group("tools", p.words.Labels.Tools, note, lines)
}

func unique(list []string) []string {
	var out []string
	for _, item := range list {
		if !slices.Contains(out, item) {
			out = append(out, item)
		}
	}
	return out
}

// toolLine says what a tool of the kit serves and which jobs want it.
func (p *picker) toolLine(tool *model.Tool, kit []string, demands []demand) plan.Pick {
	line := plan.Pick{Name: p.writers[0].toolName(tool), StandIns: standIns(tool), Where: tool.Where.Text}
	for _, d := range demands {
		if !p.works(tool.Name, kit, d) {
			continue
		}
		line.For = append(line.For, p.keys[d.job])
		if d.grip != nil && sized(tool) {
			line.Serves = append(line.Serves, p.writers[d.job].serves(*d.grip))
		}
	}
	line.For, line.Serves = unique(line.For), unique(line.Serves)
	return line
}

// works reports whether a tool takes part in serving a need, by the first way the kit has whole.
func (p *picker) works(tool string, kit []string, d demand) bool {
	for _, way := range d.ways {
		if !slices.ContainsFunc(way, func(name string) bool { return !slices.Contains(kit, name) }) {
			return slices.Contains(way, tool)
		}
	}
	return false
}

// supplies adds up what the jobs take of each fluid and consumable.
func (p *picker) supplies() {
	var names []string
	for _, w := range p.writers {
		names = append(names, w.job.Procedure.Supplies.Names()...)
	}
	var lines []plan.Pick
	for _, name := range unique(names) {
		var sum total
		line := plan.Pick{}
		var packs []model.Amount
		for i, w := range p.writers {
			if !w.job.Procedure.Supplies.Has(name) {
				continue
			}
			line.Name = w.supplyName(name)
			line.For = append(line.For, p.keys[i])
			sum.join(w.sum(name))
			if fluid := w.job.Fluid(name); fluid != nil {
				packs, line.Where = fluid.Packs, fluid.Where.Text
			} else if supply := w.job.Supply(name); supply != nil {
				packs, line.Where = supply.Packs, supply.Where.Text
			}
		}
		line.Quantity, line.Take = p.writers[0].quantity(sum), p.writers[0].packs(sum, packs)
		lines = append(lines, line)
	}
	p.group("supplies", p.words.Labels.Supplies, "", lines)
}

// spares counts the parts that are renewed.
func (p *picker) spares() {
	var names []string
	for _, w := range p.writers {
		names = append(names, w.job.Procedure.Spares.Names()...)
	}
	var lines []plan.Pick
	for _, name := range unique(names) {
		line := plan.Pick{}
		count, pack := 0, 1
		for i, w := range p.writers {
			spare := w.job.Spare(name)
			if !w.job.Procedure.Spares.Has(name) || spare == nil {
				continue
			}
			line.Name, line.Where, pack = upper(spare.Words()), spare.Where.Text, spare.Pack.Or(1)
			if spare.Number.Set() {
				line.Name += ", " + spare.Number.Text
			}
			line.For = append(line.For, p.keys[i])
			count += w.spareCount(name)
		}
		if count > 0 {
			line.Quantity = strconv.Itoa(count)
		}
		if pack > 1 && count > 0 {
			line.Take = fmt.Sprintf("%d × %d", (count+pack-1)/pack, pack)
		}
		lines = append(lines, line)
	}
	p.group("spares", p.words.Labels.Spares, "", lines)
}

func (p *picker) wear() {
	var lines []plan.Pick
	for i, w := range p.writers {
		for _, name := range w.protection(w.job.Procedure.Wear) {
			at := slices.IndexFunc(lines, func(line plan.Pick) bool { return line.Name == name })
			if at < 0 {
				lines = append(lines, plan.Pick{Name: name})
				at = len(lines) - 1
			}
			lines[at].For = append(lines[at].For, p.keys[i])
		}
	}
	p.group("wear", p.words.Labels.Wear, "", lines)
}

// waste adds up what is drained, by fluid, with the containers that catch it.
func (p *picker) waste() {
	var lines []plan.Pick
	sums := map[string]*total{}
	for i, w := range p.writers {
		for _, catch := range w.needs.Catch {
			name := w.words.Labels.Used + " " + lowerTitle(catch.Cavity.Words())
			if fluid := w.job.Fluid(catch.Cavity.Fluid.Name()); fluid != nil {
				name = w.words.Labels.Used + " " + lowerTitle(fluidWords(fluid))
			}
			at := slices.IndexFunc(lines, func(line plan.Pick) bool { return line.Name == name })
			if at < 0 {
				lines = append(lines, plan.Pick{Name: name})
				at = len(lines) - 1
				sums[name] = &total{}
			}
			if catch.Amount.Set() && catch.Amount.OK {
				sums[name].add(catch.Amount.Amount)
			}
			if tool := w.job.Tool(catch.Step.Into.Name()); tool != nil {
				lines[at].Serves = append(lines[at].Serves, w.words.Labels.Into+" "+lowerTitle(w.toolName(tool)))
			}
			lines[at].For = append(lines[at].For, p.keys[i])
		}
	}
	for i := range lines {
		lines[i].Quantity = p.writers[0].quantity(*sums[lines[i].Name])
		lines[i].Serves, lines[i].For = unique(lines[i].Serves), unique(lines[i].For)
	}
	p.group("waste", p.words.Labels.Waste, "", lines)
}
