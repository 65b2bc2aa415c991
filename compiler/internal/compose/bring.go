package compose

import (
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/trade"
)

func (w *writer) wear() []plan.Item {
	var out []plan.Item
	names := w.protection(w.job.Procedure.Wear)
	for i, key := range w.job.Procedure.Wear.Items {
		known, _ := trade.FindWear(key.Text)
		out = append(out, plan.Item{Name: names[i], Sign: known.Sign})
	}
	return out
}

// brings are the tools that go to the machine: what is listed for this version, and what the
// shop has for the rest, where the author stands by a list that lacks it.
func (w *writer) brings() []*model.Tool {
	var out []*model.Tool
	var lacking []needs.Demand
	for _, tool := range w.job.Listed() {
		if !w.needs.Idle.Tools[tool.Name] && !slices.Contains(out, tool) {
			out = append(out, tool)
			lacking = append(lacking, needs.Demand{Ways: []needs.Set{{tool.Name}}})
		}
	}
	for _, use := range w.needs.Tools {
		lacking = append(lacking, needs.Demand{Ways: []needs.Set{{use.Name}}})
	}
	for _, grip := range w.needs.Grips {
		if len(grip.Listed) == 0 {
			lacking = append(lacking, needs.Demand{Ways: listedFirst(w.job.Procedure.Tools, grip.Handy(w.job.Tools()))})
		}
	}
	for _, name := range needs.Smallest(lacking).Tools {
		if tool := w.job.Tool(name); tool != nil && !slices.Contains(out, tool) {
			out = append(out, tool)
		}
	}
	return out
}

// tools are the tools that go to the machine, with what they are for and what may stand in.
func (w *writer) tools() []plan.Item {
	var out []plan.Item
	for _, tool := range w.brings() {
		item := plan.Item{Name: w.toolName(tool), StandIns: standIns(tool), Quantity: w.howMany(w.toolName(tool))}
		var serves []string
		for _, grip := range w.needs.Grips {
			if turns(grip.Listed, tool.Name) && !contains(serves, grip.Part.Words()) {
				serves = append(serves, grip.Part.Words())
			}
		}
		if sized(tool) {
			item.Note = strings.Join(serves, ", ")
		}
		if !slices.ContainsFunc(out, func(other plan.Item) bool { return other.Name == item.Name }) {
			out = append(out, item)
		}
	}
	return out
}

// howMany says of tools that print alike how many of them go to the machine, where it is more than one.
func (w *writer) howMany(printed string) string {
	n := w.count(printed)
	if n < 2 {
		return ""
	}
	return strconv.Itoa(n)
}

// count is how many tools that print alike go to the machine: one of each, and of a lock or a
// tag as many as are on at once.
func (w *writer) count(printed string) int {
	n, locks := 0, needs.Locks(w.job)
	for _, tool := range w.brings() {
		if w.toolName(tool) == printed {
			n += max(1, locks[tool.Name])
		}
	}
	return n
}

// sized reports whether a tool is for heads of one size, so that what it serves is worth saying.
func sized(tool *model.Tool) bool {
	switch tool.Kind.Text {
	case "socket", "wrench", "hex-key", "hex-bit", "bit", "screwdriver", "crowfoot", "special":
		return true
	}
	return false
}

func contains(list []string, word string) bool {
	for _, other := range list {
		if other == word {
			return true
		}
	}
	return false
}

// turns reports whether a tool takes part in one of the ways to turn a fastener.
func turns(ways []needs.Set, tool string) bool {
	for _, way := range ways {
		if contains(way, tool) {
			return true
		}
	}
	return false
}

// standIns are the other sizes that serve as well as a tool's own, by clearance.
func standIns(tool *model.Tool) []string {
	if len(tool.Sizes) != 1 || !tool.Sizes[0].OK {
		return nil
	}
	width, err := trade.ParseWidth(tool.Sizes[0].Text.Text)
	if err != nil {
		return nil
	}
	var list []trade.Width
	fit := trade.Fit
	switch tool.Kind.Text {
	case "socket", "wrench", "crowfoot":
		list = trade.StandIns(width)
	case "hex-key", "hex-bit":
		list, fit = trade.StandInKeys(width), trade.FitKey
	}
	var out []string
	for _, other := range list {
		if how, _ := fit(other, width); how == trade.Good {
			out = append(out, other.Label)
		}
	}
	return out
}

// plain are the kinds of tool that size, range and drive tell apart; of others the name says more.
var plain = []string{"socket", "wrench", "adjustable", "hex-key", "hex-bit", "bit", "screwdriver", "ratchet", "breaker-bar", "torque-wrench", "extension", "drive-adapter", "crowfoot", "impact-wrench"}

// toolName is a tool's title, or its kind or name with size, range and drive.
func (w *writer) toolName(tool *model.Tool) string {
	if tool.Title.Set() {
		return upper(tool.Title.Text)
	}
	name := w.words.Kinds[tool.Kind.Text]
	if !contains(plain, tool.Kind.Text) {
		name = upper(strings.TrimRight(model.Spoken(tool.Name), " 0123456789"))
	}
	parts := []string{name}
	var sizes []string
	for _, size := range tool.Sizes {
		if size.OK {
			sizes = append(sizes, w.writing().Plain(size.Amount))
		}
	}
	parts = append(parts, strings.Join(sizes, ", "), strings.Join(texts(tool.Points), ", "))
	for _, amount := range []model.Amount{tool.Range, tool.Length, tool.Holds} {
		if amount.OK {
			parts = append(parts, w.writing().Plain(amount.Amount))
		}
	}
	name = strings.Join(strings.Fields(strings.Join(parts, " ")), " ")
	if drive, ok := trade.FindDrive(tool.Drive.Text); ok {
		name += ", " + drive.Label
		if out, ok := trade.FindDrive(tool.DriveOut.Text); ok {
			name += " → " + out.Label
		}
		name += " " + w.words.Labels.Drive
	}
	return name
}

// fluidWords is a fluid's title with its grade, where the title does not hold it: of "SAE
// 80W-90" the "80W-90" is enough.
func fluidWords(fluid *model.Fluid) string {
	words, fields := fluid.Words(), strings.Fields(fluid.Grade.Text)
	if len(fields) > 0 && len(fields[len(fields)-1]) > 1 && contains(strings.Fields(strings.ReplaceAll(words, ",", " ")), fields[len(fields)-1]) {
		return words
	}
	if fluid.Grade.Set() && !strings.Contains(words, fluid.Grade.Text) {
		words += " " + fluid.Grade.Text
	}
	return words
}

func (w *writer) supplies() []plan.Item {
	var out []plan.Item
	for _, name := range w.job.Procedure.Supplies.Names() {
		if w.needs.Idle.Supplies[name] {
			continue
		}
		sum := w.sum(name)
		item := plan.Item{Name: w.supplyName(name), Quantity: w.quantity(sum)}
		if fluid := w.job.Fluid(name); fluid != nil {
			item.Note = fluid.Service.Text
		}
		out = append(out, item)
	}
	return out
}

func (w *writer) supplyName(name string) string {
	if fluid := w.job.Fluid(name); fluid != nil {
		return upper(fluidWords(fluid))
	}
	if supply := w.job.Supply(name); supply != nil {
		return upper(supply.Words())
	}
	return model.Spoken(name)
}

func (w *writer) spares() []plan.Item {
	var out []plan.Item
	for _, name := range w.job.Procedure.Spares.Names() {
		spare := w.job.Spare(name)
		if spare == nil || w.needs.Idle.Spares[name] {
			continue
		}
		item := plan.Item{Name: upper(spare.Words()), Note: spare.Number.Text}
		if n := w.spareCount(name); n > 0 {
			item.Quantity = strconv.Itoa(n)
		}
		out = append(out, item)
	}
	return out
}

func (w *writer) spareCount(name string) int {
	n := 0
	for _, use := range w.needs.Spares {
		if use.Name == name {
			n += use.Count
		}
	}
	return n
}

// served says what a grip is: "16 mm hex · drain plug".
func served(head, part string) string { return head + " · " + part }
