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

// picker composes one list for several jobs. It goes through them more than once, and keeps
// nothing of a job but what it says of it.
type picker struct {
	n      int                             // how many
	each   func(do func(i int, w *writer)) // gives them in turn
	first  *writer                         // of the first, which writes the sums
	keys   []string
	words  plan.Words
	list   plan.PickList
	ledger *store.Ledger // nil where nobody asks for the shelves
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
	return PickInTurn(len(jobs), func(do func(i int, asked Asked)) {
		for i, asked := range jobs {
			do(i, asked)
		}
	}, system, ledger)
}

// PickInTurn composes the list as Pick does, of n jobs that need not be there at one time: each
// gives them in turn whenever it is called. Of the first what is fixed for the list is kept.
func PickInTurn(n int, each func(do func(i int, asked Asked)), system quantity.System, ledger *store.Ledger) (plan.PickList, error) {
	p := &picker{n: n, ledger: ledger}
	var fault error
	p.each = func(do func(i int, w *writer)) {
		each(func(i int, asked Asked) {
			if fault != nil {
				return
			}
			w, err := newWriter(asked.Work, system)
			if fault = err; err != nil {
				return
			}
			do(i, w)
		})
	}
	onCards := map[string]bool{} // printed names of the tools that the cards list
	p.each(func(i int, w *writer) {
		if i == 0 {
			p.first = &writer{system: w.system, words: w.words}
			p.words = w.words
			p.list = plan.PickList{Words: p.words, Kind: p.words.Labels.Pick, Title: p.words.Labels.Pick, DateIs: p.words.Labels.Latest}
			if shop := w.job.Shop; shop != nil {
				p.list.Shop = shop.Title.Text
			}
		}
		for _, tool := range w.job.Listed() {
			onCards[w.toolName(tool)] = true
		}
	})
	each(func(i int, asked Asked) {
		p.keys = append(p.keys, model.Letter(i))
		p.list.Served = append(p.list.Served, asked.served(p.keys[i]))
		p.list.Date = max(p.list.Date, asked.Job.Procedure.Date.Text)
	})
	if fault != nil {
		return plan.PickList{}, fault
	}
	tools := toolLines{picker: p, known: wall{}, onCards: onCards}
	supplies, spares, wear, waste := supplyLines{picker: p}, spareLines{picker: p}, wearLines{picker: p}, wasteLines{picker: p}
	p.each(func(i int, w *writer) {
		tools.add(i, w)
		supplies.add(i, w)
		spares.add(i, w)
		wear.add(i, w)
		waste.add(i, w)
	})
	tools.group()
	supplies.group()
	spares.group()
	wear.group()
	waste.group()
	return p.list, fault
}

func (p *picker) group(kind, title, note string, lines []plan.Pick) {
	p.list.Groups = append(p.list.Groups, plan.PickGroup{Kind: kind, Title: title, Note: note, Lines: lines, None: p.words.Labels.None})
}

// demand is one need of one job. Tools go by their printed names: two files may
// use one name for different tools, and different names for one.
type demand struct {
	job        int
	fastener   bool   // and not a tool named outright
	head, part string // of the fastener
	ways       []needs.Set
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

// toolLines takes the fewest tools that serve every fastener of every job, out of what
// the cards list, and each tool a step names. A list for one job holds what its card holds.
type toolLines struct {
	*picker
	known   wall
	onCards map[string]bool // printed names of what the cards list
	demands []demand
	from    []int    // the first demand of each job
	brought []string // by the only job
}

func (t *toolLines) add(i int, w *writer) {
	t.from = append(t.from, len(t.demands))
	tools := w.job.Tools()
	printed := t.known.hang(w, tools)
	listed := slices.DeleteFunc(slices.Clone(tools), func(tool *model.Tool) bool { return !t.onCards[w.toolName(tool)] })
	for g := range w.needs.Grips {
		grip := &w.needs.Grips[g]
		ways := grip.Handy(listed)
		if len(ways) == 0 {
			ways = grip.Handy(tools)
		}
		t.demands = append(t.demands, demand{job: i, fastener: true, head: w.headWords(*grip), part: grip.Part.Words(),
			ways: renamed(listedFirst(w.job.Procedure.Tools, ways), printed)})
	}
	for _, use := range w.needs.Tools {
		t.demands = append(t.demands, demand{job: i, ways: renamed([]needs.Set{{use.Name}}, printed)})
	}
	if t.n == 1 {
		for _, tool := range w.brings() {
			t.brought = append(t.brought, w.toolName(tool))
		}
	}
}

func (t *toolLines) group() {
	asked := make([]needs.Demand, len(t.demands))
	for i, one := range t.demands {
		asked[i] = needs.Demand{Ways: one.ways}
	}
	kit := needs.Smallest(asked)
	fewest := len(kit.Tools)
	if t.n == 1 {
		for _, name := range t.brought {
			one := demand{ways: []needs.Set{{name}}}
			t.demands, asked = append(t.demands, one), append(asked, needs.Demand{Ways: one.ways})
		}
		kit = needs.Smallest(asked)
	}
	for _, i := range kit.Unmet {
		if d := t.demands[i]; d.fastener {
			t.list.Warnings = append(t.list.Warnings, fmt.Sprintf("%s (%s)", served(d.head, d.part), t.keys[d.job]))
		}
	}
	t.list.Warnings = unique(t.list.Warnings)
	serving := t.serving(kit.Tools)
	lines := t.lines(kit.Tools, serving)
	t.finish(lines, kit.Tools, serving)
	slices.SortStableFunc(lines, func(a, b plan.Pick) int { return compareNames(a.Name, b.Name) })
	note := t.words.Labels.Fewest
	switch {
	case len(kit.Tools) > fewest:
		note = "" // the card brings more
	case !kit.Proved:
		note = t.words.Labels.Few
	}
	t.picker.group("tools", t.words.Labels.Tools, note, lines)
}

// serving are the tools of the kit that serve each need: the first way that the kit has whole.
func (t *toolLines) serving(kit []string) []needs.Set {
	there := map[string]bool{}
	for _, name := range kit {
		there[name] = true
	}
	out := make([]needs.Set, len(t.demands))
	for i, d := range t.demands {
		if n := slices.IndexFunc(d.ways, func(way needs.Set) bool {
			return !slices.ContainsFunc(way, func(name string) bool { return !there[name] })
		}); n >= 0 {
			out[i] = d.ways[n]
		}
	}
	return out
}

// lines say what each tool of the kit serves and which jobs want it.
func (t *toolLines) lines(kit []string, serving []needs.Set) []plan.Pick {
	var lines []plan.Pick
	at, serves := map[string]int{}, map[string]*heads{}
	for _, name := range kit {
		if tool := t.known[name]; tool != nil {
			at[name], serves[name] = len(lines), &heads{}
			lines = append(lines, plan.Pick{Name: name, StandIns: standIns(tool), Where: tool.Where.Text})
		}
	}
	for i, d := range t.demands {
		for _, name := range serving[i] {
			l, on := at[name]
			if !on {
				continue
			}
			lines[l].For = append(lines[l].For, t.keys[d.job])
			if d.fastener && sized(t.known[name]) {
				serves[name].add(d.head, d.part)
			}
		}
	}
	for l := range lines {
		lines[l].For, lines[l].Serves = unique(lines[l].For), serves[lines[l].Name].lines(t.words.Labels.Colon)
	}
	return lines
}

// finish says on the lines how many of a tool are wanted, and which tools of the cards it takes the
// place of. Jobs of a list are done one after the other, so of a lock or a tag it is what the job
// takes that takes most.
func (t *toolLines) finish(lines []plan.Pick, kit []string, serving []needs.Set) {
	most := make([]int, len(lines))
	t.each(func(i int, w *writer) {
		for l := range lines {
			if name := lines[l].Name; t.n == 1 {
				lines[l].Quantity = w.howMany(name)
			} else if t.known[name].IsLock() {
				most[l] = max(most[l], w.count(name))
			}
		}
		end := len(t.demands)
		if i+1 < len(t.from) {
			end = t.from[i+1]
		}
		for _, tool := range w.job.Listed() {
			left := w.toolName(tool)
			if w.needs.Idle.Tools[tool.Name] || slices.Contains(kit, left) {
				continue
			}
			for l := range lines {
				for n := t.from[i]; n < end; n++ {
					if d := t.demands[n]; d.fastener && turnsIn(d.ways, left) && slices.Contains(serving[n], lines[l].Name) && alike(tool, lines[l].Name, w) {
						lines[l].Instead = append(lines[l].Instead, left)
						break
					}
				}
			}
		}
	})
	for l := range lines {
		if most[l] > 1 {
			lines[l].Quantity = strconv.Itoa(most[l])
		}
		lines[l].Instead = unique(lines[l].Instead)
	}
}

func unique(list []string) []string {
	var out []string
	seen := make(map[string]bool, len(list))
	for _, item := range list {
		if !seen[item] {
			seen[item] = true
			out = append(out, item)
		}
	}
	return out
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

// named are the lines of a list by what they are known by.
type named struct {
	lines []plan.Pick
	at    map[string]int
}

// line finds the line of a key, or begins it.
func (n *named) line(key string) (at int, fresh bool) {
	if at, known := n.at[key]; known {
		return at, false
	}
	if n.at == nil {
		n.at = map[string]int{}
	}
	n.at[key] = len(n.lines)
	n.lines = append(n.lines, plan.Pick{})
	return len(n.lines) - 1, true
}

// supplyLines adds up what the jobs take of each fluid and consumable, by what is
// printed of it: title, grade and service.
type supplyLines struct {
	*picker
	named
	sums    []needs.Total
	packs   [][]model.Amount
	shelves []any
}

func (s *supplyLines) add(i int, w *writer) {
	for _, name := range w.job.Procedure.Supplies.Names() {
		if w.needs.Idle.Supplies[name] {
			continue
		}
		printed, service := w.supplyName(name), ""
		fluid, supply := w.job.Fluid(name), w.job.Supply(name)
		if fluid != nil {
			service = fluid.Service.Text
		}
		at, fresh := s.line(printed + "\n" + service)
		if fresh {
			s.sums, s.packs, s.shelves = append(s.sums, needs.Total{}), append(s.packs, nil), append(s.shelves, nil)
		}
		s.lines[at].Name = printed
		s.lines[at].For = append(s.lines[at].For, s.keys[i])
		s.sums[at].Join(w.sum(name))
		switch {
		case fluid != nil:
			s.packs[at], s.lines[at].Where, s.shelves[at] = fluid.Packs, fluid.Where.Text, fluid
		case supply != nil:
			s.packs[at], s.lines[at].Where, s.shelves[at] = supply.Packs, supply.Where.Text, supply
		}
	}
}

func (s *supplyLines) group() {
	for i := range s.lines {
		line := &s.lines[i]
		line.Quantity, line.Take = s.first.quantity(s.sums[i]), s.first.packs(s.sums[i], s.packs[i])
		s.shelf(line, s.shelves[i], s.sums[i])
		line.For = unique(line.For)
	}
	s.picker.group("supplies", s.words.Labels.Supplies, "", s.lines)
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
	line.OnHand = p.first.much(account, account.OnHand)
	much, ok := account.Much(need)
	if missing := new(big.Rat); ok && missing.Sub(much, account.OnHand).Sign() > 0 {
		line.Missing = p.first.much(account, missing)
	} else if ok { // it is taken off the shelf, and no pack is bought
		line.Take = ""
	}
}

// spareLines counts the parts that are renewed, by title and number.
type spareLines struct {
	*picker
	named
	counts, packs []int
	shelves       []any
}

func (s *spareLines) add(i int, w *writer) {
	for _, name := range w.job.Procedure.Spares.Names() {
		spare := w.job.Spare(name)
		if spare == nil || w.needs.Idle.Spares[name] {
			continue
		}
		printed := upper(spare.Words())
		if spare.Number.Set() {
			printed += ", " + spare.Number.Text
		}
		at, fresh := s.line(printed)
		if fresh {
			s.counts, s.packs, s.shelves = append(s.counts, 0), append(s.packs, 1), append(s.shelves, spare)
		}
		s.lines[at].Name, s.lines[at].Where, s.packs[at] = printed, spare.Where.Text, max(s.packs[at], spare.Pack.Or(1))
		s.lines[at].For = append(s.lines[at].For, s.keys[i])
		s.counts[at] += w.spareCount(name)
	}
}

func (s *spareLines) group() {
	for i := range s.lines {
		line, count, pack := &s.lines[i], s.counts[i], s.packs[i]
		if count > 0 {
			line.Quantity = strconv.Itoa(count)
		}
		if pack > 1 && count > 0 {
			line.Take = fmt.Sprintf("%d × %d", (count+pack-1)/pack, pack)
		}
		s.shelf(line, s.shelves[i], needs.Total{Count: count})
		line.For = unique(line.For)
	}
	s.picker.group("spares", s.words.Labels.Spares, "", s.lines)
}

// wearLines are what the people wear.
type wearLines struct {
	*picker
	named
}

func (l *wearLines) add(i int, w *writer) {
	for _, name := range w.protection(w.job.Procedure.Wear) {
		at, _ := l.line(name)
		l.lines[at].Name, l.lines[at].For = name, append(l.lines[at].For, l.keys[i])
	}
}

func (l *wearLines) group() { l.picker.group("wear", l.words.Labels.Wear, "", l.lines) }

// wasteLines adds up what is drained, by fluid, with the containers that catch it.
type wasteLines struct {
	*picker
	named
	sums []needs.Total
	into [][]string
}

func (l *wasteLines) add(i int, w *writer) {
	for _, catch := range w.needs.Catch {
		name := w.words.Labels.Used + " " + w.inside(catch.Cavity.Words())
		if fluid := w.job.Fluid(catch.Cavity.Fluid.Name()); fluid != nil {
			name = w.words.Labels.Used + " " + w.inside(fluidWords(fluid))
		}
		at, fresh := l.line(name)
		if fresh {
			l.sums, l.into = append(l.sums, needs.Total{}), append(l.into, nil)
		}
		if catch.Amount.Set() && catch.Amount.OK {
			l.sums[at].Add(catch.Amount.Amount)
		}
		if tool := w.job.Tool(catch.Step.Into.Name()); tool != nil {
			l.into[at] = append(l.into[at], w.inside(w.toolName(tool)))
		}
		l.lines[at].Name, l.lines[at].For = name, append(l.lines[at].For, l.keys[i])
	}
}

func (l *wasteLines) group() {
	for i := range l.lines {
		line := &l.lines[i]
		line.Quantity = l.first.quantity(l.sums[i])
		line.Into, line.For = strings.Join(unique(l.into[i]), ", "), unique(line.For)
	}
	l.picker.group("waste", l.words.Labels.Waste, "", l.lines)
}
