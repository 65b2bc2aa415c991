package needs

import (
	"cmp"
	"fmt"
	"slices"
	"sort"
	"sync"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/trade"
)

// Set is a way to serve a need: tools that do it together, by name, sorted.
type Set []string

// Fitting is a tool that goes on a fastener, with how well.
type Fitting struct {
	Tool *model.Tool
	Fit  trade.Fitting
	Why  string
}

// turners are the kinds of tool that turn a square without a torque: what runs a
// fastener out and in comes before what only breaks it loose or spins it hard.
var turners = []string{"ratchet", "breaker-bar", "impact-wrench"}

// hard kinds of head, by the kinds of tool that grip them: whole tools first, then those on a square drive.
var grippers = map[string]struct{ whole, driven []string }{
	"hex":              {[]string{"wrench", "adjustable"}, []string{"socket"}},
	"nut":              {[]string{"wrench", "adjustable"}, []string{"socket"}},
	"hex-flange":       {[]string{"wrench", "adjustable"}, []string{"socket"}},
	"hex-flange-heavy": {[]string{"wrench", "adjustable"}, []string{"socket"}},
	"castle-nut":       {[]string{"wrench", "adjustable"}, []string{"socket"}},
	"square":           {[]string{"wrench", "adjustable"}, []string{"socket"}},
	"square-plug":      {[]string{"wrench", "adjustable"}, []string{"socket"}},
	"socket-plug":      {[]string{"hex-key"}, []string{"hex-bit"}},
	"socket":           {[]string{"hex-key"}, []string{"hex-bit"}},
	"button":           {[]string{"hex-key"}, []string{"hex-bit"}},
	"countersunk":      {[]string{"hex-key"}, []string{"hex-bit"}},
	"set-screw":        {[]string{"hex-key"}, []string{"hex-bit"}},
	"slotted":          {[]string{"screwdriver"}, []string{"bit"}},
	"cross":            {[]string{"screwdriver"}, []string{"bit"}},
	"hexalobular":      {[]string{"screwdriver"}, []string{"bit"}},
}

// Grips lists the tools that go on a fastener, best fit first. A loose fit is
// for low hand loads only, so it does not count where a torque is asked for.
func (g Grip) Grips(tools []*model.Tool) []Fitting {
	ask, kept := g.ask(tools)
	if !kept {
		return g.gripping(tools)
	}
	return keep(&g.known.lock, g.known.grips, ask, func() []Fitting { return g.gripping(tools) })
}

func (g Grip) gripping(tools []*model.Tool) []Fitting {
	kinds := grippers[g.Head]
	var out []Fitting
	for _, tool := range tools {
		whole, driven := slices.Contains(kinds.whole, tool.Kind.Text), slices.Contains(kinds.driven, tool.Kind.Text)
		crow := tool.Kind.Text == "crowfoot" && slices.Contains(kinds.driven, "socket")
		switch {
		case whole && (g.Torque || g.Access == "socket" || g.ReachMM > 0):
			continue
		case driven && g.Access == "wrench", crow && !g.Torque, !whole && !driven && !crow:
			continue
		case g.Torque && g.Step.Adapter != nil && !crow: // the setting of the wrench is for the adapter
			continue
		}
		if fit, why, ok := g.fit(tool); ok && (fit != trade.Loose || !g.Torque) {
			out = append(out, Fitting{tool, fit, why})
		}
	}
	sort.SliceStable(out, func(i, j int) bool {
		return out[i].Fit < out[j].Fit || out[i].Fit == out[j].Fit && out[i].Tool.Name < out[j].Tool.Name
	})
	return out
}

// Fastener is what a part asks of the tools that tighten it, or only turn it where it has no
// torque; false where no tool turns it.
func Fastener(part *model.Part) (Grip, bool) {
	if !fastened(part) {
		return Grip{}, false
	}
	step := &model.Step{}
	step.Verb.Key = "tighten"
	return (*known)(nil).grip(step, part, part.At), true
}

// fit is the best fit of any size of a tool on any width the fastener may have.
// The first width is the standard one; others count only for a tool of just that size.
func (g Grip) fit(tool *model.Tool) (best trade.Fitting, why string, ok bool) {
	if len(g.Widths) == 0 {
		return g.recess(tool)
	}
	for _, size := range tool.Sizes {
		if !size.OK {
			continue
		}
		width, err := trade.ParseWidth(size.Text.Text)
		if err != nil {
			continue
		}
		fit, explained := g.fitWidth(width, g.Widths[0])
		if fit <= trade.Loose && (!ok || fit < best) {
			best, why, ok = fit, explained, true
		}
	}
	if !ok && tool.Kind.Text == "adjustable" && len(tool.Sizes) > 0 && g.Widths[0].MM <= float(tool.Sizes[0]) && !g.Torque {
		return trade.Loose, "adjustable wrench", true
	}
	return best, why, ok
}

func (g Grip) fitWidth(tool, fastener trade.Width) (trade.Fitting, string) {
	if slices.Contains(grippers[g.Head].whole, "hex-key") {
		return trade.FitKey(tool, fastener)
	}
	return trade.Fit(tool, fastener)
}

// recess compares the numbers of recess and bit; a slot takes any flat blade.
func (g Grip) recess(tool *model.Tool) (trade.Fitting, string, bool) {
	if g.Head == "slotted" {
		return trade.Same, "", len(tool.Points.Items) == 0 || tool.Points.Has("flat")
	}
	return trade.Same, "", g.Point != "" && tool.Points.Has(g.Point)
}

// Ways lists every way some tools serve the fastener: each smallest set of
// tools that does it together, the best fit first, then the fewest tools.
func (g Grip) Ways(tools []*model.Tool) []Set {
	ask, kept := g.ask(tools)
	if !kept {
		return g.serving(tools)
	}
	return keep(&g.known.lock, g.known.ways, ask, func() []Set { return g.serving(tools) })
}

// keep works out what was not asked before, and gives a list of its own each time.
func keep[T any](lock *sync.Mutex, kept map[asked][]T, ask asked, work func() []T) []T {
	lock.Lock()
	found, there := kept[ask]
	lock.Unlock()
	if !there {
		found = work()
		lock.Lock()
		kept[ask] = found
		lock.Unlock()
	}
	return slices.Clone(found)
}

func (g Grip) serving(tools []*model.Tool) []Set {
	var out []Set
	handles := g.Handles(tools)
	for _, fitting := range g.Grips(tools) {
		var fit []Set
		if fitting.Tool.Drive.Text == "" && !g.Torque {
			fit = []Set{{fitting.Tool.Name}}
		}
		for _, handle := range handles {
			switch {
			case fitting.Tool.Drive.Text != "":
				fit = append(fit, g.chains(fitting.Tool, handle, tools)...)
			case g.Torque: // its square is not known, and no torque comes without a wrench
				fit = append(fit, Set{fitting.Tool.Name, handle.Name})
			}
		}
		slices.SortFunc(fit, func(a, b Set) int { return cmp.Or(len(a)-len(b), slices.Compare(a, b)) })
		out = append(out, fit...)
	}
	return smallest(out)
}

// Handy lists the ways a mechanic would choose: none that runs a fastener out or
// in with a breaker bar or an impact wrench where a ratchet does it, and none that
// tightens to a torque by a crowfoot where a socket goes on.
func (g Grip) Handy(tools []*model.Tool) []Set {
	ways := g.Ways(tools)
	has := func(way Set, any ...string) bool {
		return slices.ContainsFunc(tools, func(tool *model.Tool) bool {
			return slices.Contains(any, tool.Kind.Text) && slices.Contains(way, tool.Name)
		})
	}
	clumsy := []string{"breaker-bar", "impact-wrench"}
	switch {
	case g.Torque && g.Step.Adapter != nil, !g.Torque && g.Step.Verb.Key == "loosen":
		return ways
	case g.Torque:
		clumsy = []string{"crowfoot"}
	case !slices.ContainsFunc(ways, func(way Set) bool { return has(way, "ratchet") }):
		return ways
	}
	if !slices.ContainsFunc(ways, func(way Set) bool { return !has(way, clumsy...) }) {
		return ways
	}
	return slices.DeleteFunc(ways, func(way Set) bool { return has(way, clumsy...) })
}

// AnyDrive is the same fastener with no thought of what a square drive takes.
func (g Grip) AnyDrive() Grip {
	g.anyDrive = true
	return g
}

// Known reports whether it can be told which tool fits.
func (g Grip) Known() bool {
	return g.Fault == nil && (len(g.Widths) > 0 || g.Point != "" || g.Head == "slotted")
}

// Meant reports whether a tool is of a kind that could serve the fastener, whatever its size.
func (g Grip) Meant(tool *model.Tool) bool {
	kinds, kind := grippers[g.Head], tool.Kind.Text
	return slices.Contains(kinds.whole, kind) || slices.Contains(kinds.driven, kind) || slices.Contains(turners, kind) ||
		slices.Contains([]string{"torque-wrench", "extension", "drive-adapter", "crowfoot"}, kind)
}

// headWords name the heads shortly.
var headWords = map[string]string{"nut": "nut", "castle-nut": "castle nut", "hex-flange": "flange hex", "hex-flange-heavy": "flange hex", "socket": "hex socket", "button": "hex socket", "countersunk": "hex socket",
	"set-screw": "hex socket", "socket-plug": "hex socket", "square": "square", "square-plug": "square", "slotted": "slot", "cross": "cross recess", "hexalobular": "recess"}

// Spoken says what a tool grips: "24 mm hex", "T30 recess".
func (g Grip) Spoken() string {
	word := headWords[g.Head]
	if word == "" {
		word = "hex"
	}
	switch {
	case len(g.Widths) > 0:
		return g.Widths[0].Label + " " + word
	case g.Point != "":
		return g.Point + " " + word
	default:
		return word
	}
}

// Wanted says which tool would fit: " with kind = …, sizes = …".
func (g Grip) Wanted() string {
	kinds := grippers[g.Head]
	if len(kinds.driven) == 0 {
		return ""
	}
	kind := kinds.driven[0]
	if !g.Torque && g.Access != "socket" && g.ReachMM == 0 {
		kind = kinds.whole[0]
	}
	if g.Torque && g.Access == "wrench" {
		kind = "crowfoot"
	}
	if len(g.Widths) > 0 {
		return fmt.Sprintf(" with kind = %q and sizes = %q", kind, g.Widths[0].Label)
	}
	if g.Point != "" {
		return fmt.Sprintf(" with kind = %q and points = [%q]", kind, g.Point)
	}
	return fmt.Sprintf(" with kind = %q", kind)
}

// Handles are the tools that turn the square: the torque wrenches whose usable
// range covers the torque, or a ratchet or bar where there is none.
func (g Grip) Handles(tools []*model.Tool) []*model.Tool {
	return slices.DeleteFunc(slices.Clone(tools), func(tool *model.Tool) bool {
		if g.Torque {
			return tool.Kind.Text != "torque-wrench" || !g.Covered(tool)
		}
		return !slices.Contains(turners, tool.Kind.Text)
	})
}

// Covered reports whether a torque wrench can be set to the torque: what is set of
// a range is its middle, and that lies in the usable range.
func (g Grip) Covered(wrench *model.Tool) bool {
	low, high, ok := Usable(wrench)
	middle := (g.Low + g.High) / 2
	return ok && low <= middle && middle <= high
}

// Usable is the usable range of a torque wrench in N·m: as marked, and not below
// a fifth of its maximum (ISO 6789:2003).
func Usable(wrench *model.Tool) (low, high float64, ok bool) {
	if !wrench.Range.Set() || !wrench.Range.OK {
		return 0, 0, false
	}
	mark, most := toFloat(wrench.Range.Lowest()), toFloat(wrench.Range.Highest())
	low, high = trade.UsableRange(mark, most)
	return low, high, true
}

// chains joins a socket or bit to a handle: straight, by an adapter between the
// squares, and by an extension where the fastener sits deep.
func (g Grip) chains(end, handle *model.Tool, tools []*model.Tool) []Set {
	set := Set{end.Name, handle.Name}
	if g.overloads(end.Drive.Text) {
		return nil
	}
	if end.Drive.Text == handle.Drive.Text {
		return g.deepen(set, end, tools)
	}
	var out []Set
	for _, adapter := range tools {
		if adapter.Kind.Text == "drive-adapter" && adapter.Drive.Text == handle.Drive.Text && adapter.DriveOut.Text == end.Drive.Text {
			out = append(out, g.deepen(append(slices.Clone(set), adapter.Name), end, tools)...)
		}
	}
	return out
}

// overloads reports whether the torque is above the hand limit of a square.
func (g Grip) overloads(drive string) bool {
	square, ok := trade.FindDrive(drive)
	return ok && !g.anyDrive && g.Torque && g.High > square.HandLimitNm
}

// deepen adds an extension, or two, where the head sits deeper than the socket is long.
func (g Grip) deepen(set Set, end *model.Tool, tools []*model.Tool) []Set {
	length := float(end.Length)
	if g.ReachMM == 0 || length >= g.ReachMM || end.Kind.Text == "crowfoot" {
		return []Set{sorted(set)}
	}
	var fit []*model.Tool
	for _, tool := range tools {
		if tool.Kind.Text == "extension" && tool.Drive.Text == end.Drive.Text {
			fit = append(fit, tool)
		}
	}
	var out []Set
	for i, one := range fit {
		if length+float(one.Length) >= g.ReachMM {
			out = append(out, sorted(append(slices.Clone(set), one.Name)))
			continue
		}
		for _, other := range fit[i:] {
			if (other != one || one.Count.Or(1) > 1) && length+float(one.Length)+float(other.Length) >= g.ReachMM {
				out = append(out, sorted(append(slices.Clone(set), one.Name, other.Name)))
			}
		}
	}
	return out
}

func sorted(set Set) Set {
	slices.Sort(set)
	return slices.Compact(set)
}

// smallest keeps the sets that hold no other whole, each once, in order.
func smallest(sets []Set) []Set {
	var out []Set
	for i, set := range sets {
		if !slices.ContainsFunc(sets, func(other Set) bool { return len(other) < len(set) && holds(set, other) }) &&
			!slices.ContainsFunc(sets[:i], func(other Set) bool { return slices.Equal(set, other) }) {
			out = append(out, set)
		}
	}
	return out
}

func holds(set, part Set) bool {
	for _, name := range part {
		if !slices.Contains(set, name) {
			return false
		}
	}
	return true
}

// Unlike are the fasteners of the job of which each asks something else of some tools, in order.
func (n *Needs) Unlike(tools []*model.Tool) []Grip {
	type apart struct {
		asked
		loosened bool
	}
	seen := map[apart]bool{}
	var out []Grip
	for _, grip := range n.Grips {
		ask, kept := grip.ask(tools)
		key := apart{ask, grip.Step.Verb.Key == "loosen"}
		if kept && seen[key] {
			continue
		}
		seen[key] = kept
		out = append(out, grip)
	}
	return out
}
