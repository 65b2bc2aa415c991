package compose

import (
	"fmt"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/store"
)

// picker composes one list for several jobs.
type picker struct {
	writers []*writer
	keys    []string
	words   plan.Words
	list    plan.PickList
	ledger  *store.Ledger // nil where nobody asks for the shelves
}

// Asked is a job a list is for, with the versions of its machine as they print.
type Asked struct {
	Work
	Variant string
	Unit    string // short name of the machine; empty where any of its kind is meant
}

// served is the job as the legend of a list tells of it.
func (a Asked) served(key string) plan.Served {
	machine := a.Job.MachineTitle()
	if a.Variant != "" {
		machine += ", " + a.Variant
	}
	return plan.Served{Key: key, Title: a.Job.Procedure.Title.Text, Machine: machine, Revision: a.Job.Procedure.Revision.Text}
}

// Pick composes the pick list of some jobs, at least one. It is an error when the
// language of a shop has no words. Where ledger is not nil, a line says what is on the shelf.
func Pick(jobs []Asked, system quantity.System, ledger *store.Ledger) (plan.PickList, error) {
	p := &picker{ledger: ledger}
	for i, asked := range jobs {
		w, err := newWriter(asked.Work, system)
		if err != nil {
			return plan.PickList{}, err
		}
		p.writers = append(p.writers, w)
		p.keys = append(p.keys, model.Letter(i))
	}
	p.words = p.writers[0].words
	p.list = plan.PickList{Words: p.words, Kind: p.words.Labels.Pick, Title: p.words.Labels.Pick, DateIs: p.words.Labels.Latest}
	if shop := jobs[0].Job.Shop; shop != nil {
		p.list.Shop = shop.Title.Text
	}
	for i, asked := range jobs {
		p.list.Served = append(p.list.Served, asked.served(p.keys[i]))
		p.list.Date = max(p.list.Date, asked.Job.Procedure.Date.Text)
	}
	p.tools()
	p.supplies()
	p.spares()
	p.wear()
	p.waste()
	return p.list, nil
}

func (p *picker) group(kind, title, note string, lines []plan.Pick) {
	p.list.Groups = append(p.list.Groups, plan.PickGroup{Kind: kind, Title: title, Note: note, Lines: lines, None: p.words.Labels.None})
}

// demand is one need of one job. Tools go by their printed names: two files may
// use one name for different tools, and different names for one.
type demand struct {
	job  int
	grip *needs.Grip // nil for a tool named outright
	ways []needs.Set
}

// wall is every tool the jobs know, by printed name.
type wall map[string]*model.Tool

// hang puts the tools of a job on the wall, and gives their printed names by their own.
func (known wall) hang(w *writer, tools []*model.Tool) map[string]string {
	printed := map[string]string{}
	for _, tool := range tools {
		name := w.toolName(tool)
		printed[tool.Name], known[name] = name, tool
	}
	return printed
}

// listedFirst prefers the ways that are on the card.
func listedFirst(listed model.List, ways []needs.Set) []needs.Set {
	off := func(way needs.Set) int {
		n := 0
		for _, name := range way {
			if !listed.Has(name) {
				n++
			}
		}
		return n
	}
	slices.SortStableFunc(ways, func(a, b needs.Set) int { return off(a) - off(b) })
	return ways
}

func renamed(ways []needs.Set, printed map[string]string) []needs.Set {
	out := make([]needs.Set, len(ways))
	for i, way := range ways {
		for _, name := range way {
			out[i] = append(out[i], printed[name])
		}
		slices.Sort(out[i])
	}
	return out
}

// tools takes the fewest tools that serve every fastener of every job, out of what
// the cards list, and each tool a step names. A list for one job holds what its card holds.
func (p *picker) tools() {
	var demands []demand
	known := wall{}
	onCards := map[string]bool{} // printed names of what the cards list
	for _, w := range p.writers {
		for _, tool := range w.job.Listed() {
			onCards[w.toolName(tool)] = true
		}
	}
	for i, w := range p.writers {
		tools := w.job.Tools()
		printed := known.hang(w, tools)
		listed := slices.DeleteFunc(slices.Clone(tools), func(tool *model.Tool) bool { return !onCards[w.toolName(tool)] })
		for g := range w.needs.Grips {
			grip := &w.needs.Grips[g]
			ways := grip.Handy(listed)
			if len(ways) == 0 {
				ways = grip.Handy(tools)
			}
			demands = append(demands, demand{job: i, grip: grip, ways: renamed(listedFirst(w.job.Procedure.Tools, ways), printed)})
		}
		for _, use := range w.needs.Tools {
			demands = append(demands, demand{job: i, ways: renamed([]needs.Set{{use.Name}}, printed)})
		}
	}
	asked := make([]needs.Demand, len(demands))
	for i, one := range demands {
		asked[i] = needs.Demand{Ways: one.ways}
	}
	kit := needs.Smallest(asked)
	fewest := len(kit.Tools)
	if len(p.writers) == 1 {
		for _, tool := range p.writers[0].brings() {
			one := demand{ways: []needs.Set{{p.writers[0].toolName(tool)}}}
			demands, asked = append(demands, one), append(asked, needs.Demand{Ways: one.ways})
		}
		kit = needs.Smallest(asked)
	}
	for _, i := range kit.Unmet {
		if d := demands[i]; d.grip != nil {
			p.list.Warnings = append(p.list.Warnings, fmt.Sprintf("%s (%s)", p.writers[d.job].serves(*d.grip), p.keys[d.job]))
		}
	}
	p.list.Warnings = unique(p.list.Warnings)
	var lines []plan.Pick
	for _, name := range kit.Tools {
		if tool := known[name]; tool != nil {
			lines = append(lines, p.toolLine(name, tool, kit.Tools, demands))
		}
	}
	if len(p.writers) == 1 {
		for l := range lines {
			lines[l].Quantity = p.writers[0].howMany(lines[l].Name)
		}
	} else {
		p.locks(lines, known)
	}
	p.instead(lines, kit.Tools, demands)
	slices.SortStableFunc(lines, func(a, b plan.Pick) int { return compareNames(a.Name, b.Name) })
	note := p.words.Labels.Fewest
	switch {
	case len(kit.Tools) > fewest:
		note = "" // the card brings more
	case !kit.Proved:
		note = p.words.Labels.Few
	}
	p.group("tools", p.words.Labels.Tools, note, lines)
}

// locks says how many of a lock or a tag are wanted: jobs of a list are done one after the
// other, so it is what the job takes that takes most.
func (p *picker) locks(lines []plan.Pick, known wall) {
	for l := range lines {
		most := 0
		for _, w := range p.writers {
			most = max(most, w.count(lines[l].Name))
		}
		if most > 1 && known[lines[l].Name].IsLock() {
			lines[l].Quantity = strconv.Itoa(most)
		}
	}
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
func (p *picker) toolLine(name string, tool *model.Tool, kit []string, demands []demand) plan.Pick {
	line := plan.Pick{Name: name, StandIns: standIns(tool), Where: tool.Where.Text}
	var serves heads
	for _, d := range demands {
		if !p.works(name, kit, d) {
			continue
		}
		line.For = append(line.For, p.keys[d.job])
		if d.grip != nil && sized(tool) {
			serves.add(p.writers[d.job].headWords(*d.grip), d.grip.Part.Words())
		}
	}
	line.For, line.Serves = unique(line.For), serves.lines(p.words.Labels.Colon)
	return line
}

// instead says on a line of the kit which tools of the cards it takes the place of.
func (p *picker) instead(lines []plan.Pick, kit []string, demands []demand) {
	for i, w := range p.writers {
		for _, tool := range w.job.Listed() {
			left := w.toolName(tool)
			if w.needs.Idle.Tools[tool.Name] || slices.Contains(kit, left) {
				continue
			}
			for l := range lines {
				if slices.ContainsFunc(demands, func(d demand) bool {
					return d.job == i && d.grip != nil && turnsIn(d.ways, left) && p.works(lines[l].Name, kit, d) && alike(tool, lines[l].Name, w)
				}) {
					lines[l].Instead = append(lines[l].Instead, left)
				}
			}
		}
	}
	for l := range lines {
		lines[l].Instead = unique(lines[l].Instead)
	}
}

// alike reports whether a tool of the kit does what another does: grip the head, or turn the square.
func alike(left *model.Tool, name string, w *writer) bool {
	for _, tool := range w.job.Tools() {
		if w.toolName(tool) == name {
			return sized(tool) == sized(left)
		}
	}
	return false
}

func turnsIn(ways []needs.Set, name string) bool {
	return slices.ContainsFunc(ways, func(way needs.Set) bool { return slices.Contains(way, name) })
}

// heads gathers the parts a tool serves by their heads.
type heads struct {
	order []string
	parts map[string][]string
}

func (h *heads) add(head, part string) {
	if h.parts == nil {
		h.parts = map[string][]string{}
	}
	if h.parts[head] == nil {
		h.order = append(h.order, head)
	}
	if !slices.Contains(h.parts[head], part) {
		h.parts[head] = append(h.parts[head], part)
	}
}

func (h *heads) lines(colon string) []string {
	var out []string
	for _, head := range h.order {
		out = append(out, head+colon+" "+strings.Join(h.parts[head], ", "))
	}
	return out
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

// lineOf finds the line of a list by its key, or begins it.
func lineOf(lines *[]plan.Pick, keys *[]string, key string) (at int, fresh bool) {
	if at = slices.Index(*keys, key); at >= 0 {
		return at, false
	}
	*keys, *lines = append(*keys, key), append(*lines, plan.Pick{})
	return len(*lines) - 1, true
}

// supplies adds up what the jobs take of each fluid and consumable, by what is
// printed of it: title, grade and service.
func (p *picker) supplies() {
	var lines []plan.Pick
	var keys []string
	var sums []needs.Total
	var packs [][]model.Amount
	var shelves []any
	for i, w := range p.writers {
		for _, name := range w.job.Procedure.Supplies.Names() {
			if w.needs.Idle.Supplies[name] {
				continue
			}
			printed, service := w.supplyName(name), ""
			fluid, supply := w.job.Fluid(name), w.job.Supply(name)
			if fluid != nil {
				service = fluid.Service.Text
			}
			at, fresh := lineOf(&lines, &keys, printed+"\n"+service)
			if fresh {
				sums, packs, shelves = append(sums, needs.Total{}), append(packs, nil), append(shelves, nil)
			}
			lines[at].Name = printed
			lines[at].For = append(lines[at].For, p.keys[i])
			sums[at].Join(w.sum(name))
			switch {
			case fluid != nil:
				packs[at], lines[at].Where, shelves[at] = fluid.Packs, fluid.Where.Text, fluid
			case supply != nil:
				packs[at], lines[at].Where, shelves[at] = supply.Packs, supply.Where.Text, supply
			}
		}
	}
	for i := range lines {
		lines[i].Quantity, lines[i].Take = p.writers[0].quantity(sums[i]), p.writers[0].packs(sums[i], packs[i])
		p.shelf(&lines[i], shelves[i], sums[i])
		lines[i].For = unique(lines[i].For)
	}
	p.group("supplies", p.words.Labels.Supplies, "", lines)
}

// shelf says on a line what there is of a thing, and how much of it is missing.
func (p *picker) shelf(line *plan.Pick, thing any, need needs.Total) {
	if p.ledger == nil {
		return
	}
	account := p.ledger.Of(thing)
	if account == nil || account.OnHand == nil {
		return
	}
	line.OnHand = p.writers[0].much(account, account.OnHand)
	much, ok := account.Much(need)
	if missing := new(big.Rat); ok && missing.Sub(much, account.OnHand).Sign() > 0 {
		line.Missing = p.writers[0].much(account, missing)
	} else if ok { // it is taken off the shelf, and no pack is bought
		line.Take = ""
	}
}

// spares counts the parts that are renewed, by title and number.
func (p *picker) spares() {
	var lines []plan.Pick
	var keys []string
	var counts, packs []int
	var shelves []any
	for i, w := range p.writers {
		for _, name := range w.job.Procedure.Spares.Names() {
			spare := w.job.Spare(name)
			if spare == nil || w.needs.Idle.Spares[name] {
				continue
			}
			printed := upper(spare.Words())
			if spare.Number.Set() {
				printed += ", " + spare.Number.Text
			}
			at, fresh := lineOf(&lines, &keys, printed)
			if fresh {
				counts, packs, shelves = append(counts, 0), append(packs, 1), append(shelves, spare)
			}
			lines[at].Name, lines[at].Where, packs[at] = printed, spare.Where.Text, max(packs[at], spare.Pack.Or(1))
			lines[at].For = append(lines[at].For, p.keys[i])
			counts[at] += w.spareCount(name)
		}
	}
	for i := range lines {
		if counts[i] > 0 {
			lines[i].Quantity = strconv.Itoa(counts[i])
		}
		if packs[i] > 1 && counts[i] > 0 {
			lines[i].Take = fmt.Sprintf("%d × %d", (counts[i]+packs[i]-1)/packs[i], packs[i])
		}
		p.shelf(&lines[i], shelves[i], needs.Total{Count: counts[i]})
		lines[i].For = unique(lines[i].For)
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
	var sums []needs.Total
	var into [][]string
	for i, w := range p.writers {
		for _, catch := range w.needs.Catch {
			name := w.words.Labels.Used + " " + w.inside(catch.Cavity.Words())
			if fluid := w.job.Fluid(catch.Cavity.Fluid.Name()); fluid != nil {
				name = w.words.Labels.Used + " " + w.inside(fluidWords(fluid))
			}
			at := slices.IndexFunc(lines, func(line plan.Pick) bool { return line.Name == name })
			if at < 0 {
				at = len(lines)
				lines, sums, into = append(lines, plan.Pick{Name: name}), append(sums, needs.Total{}), append(into, nil)
			}
			if catch.Amount.Set() && catch.Amount.OK {
				sums[at].Add(catch.Amount.Amount)
			}
			if tool := w.job.Tool(catch.Step.Into.Name()); tool != nil {
				into[at] = append(into[at], w.inside(w.toolName(tool)))
			}
			lines[at].For = append(lines[at].For, p.keys[i])
		}
	}
	for i := range lines {
		lines[i].Quantity = p.writers[0].quantity(sums[i])
		lines[i].Into, lines[i].For = strings.Join(unique(into[i]), ", "), unique(lines[i].For)
	}
	p.group("waste", p.words.Labels.Waste, "", lines)
}
