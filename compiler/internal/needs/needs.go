// Package needs works out what a job takes: what each fastener asks of a tool,
// fluids, consumables, parts that are renewed, protective equipment. It must not
// judge what is listed; it only says what is needed and what would serve.
package needs

import (
	"math/big"
	"slices"
	"strings"
	"sync"

	"benchleaf/compiler/internal/memo"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/trade"
	"benchleaf/compiler/source"
)

// Grip is one fastener a step turns, with what that asks of the tools.
type Grip struct {
	Step   *model.Step
	Part   *model.Part
	Object source.Place  // the object in the step
	Head   string        // key of the head
	Widths []trade.Width // widths across flats that may be met; empty for recesses
	Point  string        // number of a recess: T30, PH2
	Fault  error         // why no width is known

	Torque  bool    // turned to a torque
	Doubt   bool    // the torque cannot be read, so that nothing is known of the wrench
	Low     float64 // N·m at the wrench, 0 where there is no torque
	High    float64
	ReachMM float64
	Access  string // any, socket or wrench
	OnLine  bool   // its name tells that a hose or pipe is in the way of a socket; the author did not say so
	Listed  []Set  // ways the listed tools serve it

	anyDrive bool   // no thought of what a square drive takes
	known    *known // what was found for the fasteners of the job; nil for one by itself
}

// known is what was found for the fasteners of one job, of which many ask for the same.
type known struct {
	widths map[*model.Part]fitted
	lists  [2][]*model.Tool // the tools that are listed, and all tools

	lock  sync.Mutex // several outputs may ask at once
	ways  map[asked][]Set
	grips map[asked][]Fitting
}

// fitted are the widths of a part.
type fitted struct {
	widths []trade.Width
	fault  error
}

// asked is all of a fastener that the tools for it hang on, and which tools there are.
type asked struct {
	head, point, access       string
	widths                    *trade.Width
	low, high, reach          float64
	torque, adapter, anyDrive bool
	list                      int
}

// ask is the key of what is found for a fastener; false where it is not kept.
func (g Grip) ask(tools []*model.Tool) (out asked, ok bool) {
	if g.known == nil || len(tools) == 0 {
		return out, false
	}
	list := slices.IndexFunc(g.known.lists[:], func(list []*model.Tool) bool { return len(list) == len(tools) && &list[0] == &tools[0] })
	if list < 0 {
		return out, false
	}
	out = asked{g.Head, g.Point, g.Access, nil, g.Low, g.High, g.ReachMM, g.Torque, g.Step.Adapter != nil, g.anyDrive, list}
	if len(g.Widths) > 0 {
		out.widths = &g.Widths[0] // each part has its own
	}
	return out, true
}

// Use is a named thing a step uses up or works with.
type Use struct {
	Name   string
	Count  int
	Amount model.Amount // of fluids and consumables; unset where only the count is known
	Step   *model.Step
	At     source.Place
	Why    string // "fill the worm gearbox"
}

// Needs is what a job takes, in order of its steps.
type Needs struct {
	Grips    []Grip
	Tools    []Use // named outright
	Supplies []Use
	Spares   []Use
	Catch    []Catch
	Idle     Used // what is listed and only other versions of the machine take

	listed []*model.Tool
	known  *known
}

// Catch is a fluid that is drained, with the container that catches it.
type Catch struct {
	Step   *model.Step
	Cavity *model.Cavity
	Amount model.Amount // what is drained; unset where it is not known
	Tool   *model.Tool  // nil where none is named
}

// turning are the verbs that turn the fasteners of their object.
var turning = map[string]bool{"remove": true, "refit": true, "replace": true, "loosen": true, "tighten": true, "open": true, "close": true, "disconnect": true, "connect": true}

// rooms are for the lists of a job, which are long.
var rooms struct {
	grips                   memo.Room[Grip]
	tools, supplies, spares memo.Room[Use]
	catch                   memo.Room[Catch]
}

// Of works out what a job takes.
func Of(job *model.Job) *Needs {
	n := &Needs{known: &known{widths: map[*model.Part]fitted{}, lists: [2][]*model.Tool{job.Listed(), job.Tools()}, ways: map[asked][]Set{}, grips: map[asked][]Fitting{}}}
	n.Grips, n.Tools, n.Supplies, n.Spares, n.Catch = rooms.grips.Take(job.Memo), rooms.tools.Take(job.Memo), rooms.supplies.Take(job.Memo), rooms.spares.Take(job.Memo), rooms.catch.Take(job.Memo)
	for _, step := range job.Steps {
		for _, object := range step.Objects {
			n.object(job, step, object)
		}
		n.own(job, step)
	}
	rooms.grips.Put(job.Memo, n.Grips)
	rooms.tools.Put(job.Memo, n.Tools)
	rooms.supplies.Put(job.Memo, n.Supplies)
	rooms.spares.Put(job.Memo, n.Spares)
	rooms.catch.Put(job.Memo, n.Catch)
	n.listed = job.Listed()
	for i := range n.Grips {
		n.Grips[i].Listed = n.Grips[i].Ways(n.listed)
	}
	return n
}

// own adds what the step itself names.
func (n *Needs) own(job *model.Job, step *model.Step) {
	for _, tool := range step.Tools.Items {
		n.Tools = append(n.Tools, Use{Name: tool.Name(), Count: 1, Step: step, At: tool.At, Why: "named by the step"})
	}
	if step.Into.Set() {
		n.Tools = append(n.Tools, Use{Name: step.Into.Name(), Count: 1, Step: step, At: step.Into.At, Why: "catches what is drained"})
		if cavity := job.Emptied(step); cavity != nil {
			amount := step.Amount
			if !amount.Set() {
				amount = cavity.Capacity
			}
			n.Catch = append(n.Catch, Catch{Step: step, Cavity: cavity, Amount: amount})
		}
	}
	if pose := job.Pose(step.Pose.Name()); pose != nil {
		n.named(pose.Tools, step, step.Pose.At, "holds "+pose.Words())
	}
	for _, used := range step.Supplies {
		n.Supplies = append(n.Supplies, Use{Name: used.Name.Name(), Count: used.Count, Amount: used.Amount, Step: step, At: used.Name.At, Why: "used at the step"})
	}
	for _, spare := range step.Spares.Items {
		count := step.Count.Or(1)
		for _, object := range step.Objects {
			if object.Part != nil && object.Part.Seals.Has(spare.Name()) {
				count = seals(step, object.Part)
			}
		}
		n.Spares = append(n.Spares, Use{Name: spare.Name(), Count: count, Step: step, At: spare.At, Why: "renewed at the step"})
	}
}

func (n *Needs) named(tools model.List, step *model.Step, at source.Place, why string) {
	for _, tool := range tools.Items {
		n.Tools = append(n.Tools, Use{Name: tool.Name(), Count: 1, Step: step, At: at, Why: why})
	}
}

// object adds what the object of a verb takes.
func (n *Needs) object(job *model.Job, step *model.Step, object model.Object) {
	at := object.Text.At
	switch {
	case object.Part != nil:
		n.part(job, step, object.Part, at)
		if spare := job.Spare(object.Part.Name); spare != nil && step.Verb.Key == "replace" && !step.Spares.Has(spare.Name) {
			n.Spares = append(n.Spares, Use{Name: spare.Name, Count: step.Count.Or(object.Part.Count.Or(1)), Step: step, At: at, Why: "renewed at the step"})
		}
	case object.Cavity != nil:
		n.cavity(step, object, at)
	case object.Energy != nil && (step.Verb.Key == "isolate" || step.Verb.Key == "prove" || step.Verb.Key == "relieve"):
		if step.Verb.Key == "isolate" {
			n.named(object.Energy.Tools, step, at, "isolates the "+object.Energy.Words())
		}
	case object.Point != nil && (step.Verb.Key == "grease" || step.Verb.Key == "lubricate"):
		point := object.Point
		n.named(point.Tool, step, at, "lubricates the "+point.Words())
		amount := point.Amount
		if step.Amount.Set() {
			amount = step.Amount
		}
		n.Supplies = append(n.Supplies, Use{Name: fluidOf(step, point.Fluid), Count: point.Count.Or(1), Amount: times(amount, step.Count.Or(point.Count.Or(1))), Step: step, At: at, Why: step.Verb.Key + " the " + point.Words()})
	case object.Limit != nil && step.Verb.Key != "record":
		n.named(object.Limit.Tool, step, at, "measures the "+object.Limit.Words())
	case object.Spare != nil && step.Verb.Key == "replace" && !step.Spares.Has(object.Spare.Name):
		n.Spares = append(n.Spares, Use{Name: object.Spare.Name, Count: step.Count.Or(1), Step: step, At: at, Why: "renewed at the step"})
	}
	if step.Fluid.Set() && object.Cavity == nil && object.Point == nil {
		n.Supplies = append(n.Supplies, Use{Name: step.Fluid.Name(), Amount: step.Amount, Step: step, At: step.Fluid.At, Why: step.Verb.Key + " the " + object.Words()})
	}
}

func fluidOf(step *model.Step, own model.Text) string {
	if step.Fluid.Set() {
		return step.Fluid.Name()
	}
	return own.Name()
}

// times is an amount for each of several things.
func times(amount model.Amount, count int) model.Amount {
	if amount.OK && count > 1 {
		amount.Amount = amount.Scale(count)
	}
	return amount
}

func (n *Needs) cavity(step *model.Step, object model.Object, at source.Place) {
	cavity := object.Cavity
	amount := step.Amount
	if !amount.Set() {
		amount = cavity.Capacity
	}
	switch step.Verb.Key {
	case "fill":
		if name := fluidOf(step, cavity.Fluid); name != "" {
			n.Supplies = append(n.Supplies, Use{Name: name, Amount: amount, Step: step, At: at, Why: "fill the " + cavity.Words()})
		}
	case "bleed":
		if step.Fluid.Set() {
			n.Supplies = append(n.Supplies, Use{Name: step.Fluid.Name(), Amount: step.Amount, Step: step, At: step.Fluid.At, Why: "bleed the " + cavity.Words()})
		}
	case "drain":
		n.Catch = append(n.Catch, Catch{Step: step, Cavity: cavity, Amount: amount})
	}
}

// part adds the fasteners of a part, or those that hold it, and what is renewed with it.
func (n *Needs) part(job *model.Job, step *model.Step, part *model.Part, at source.Place) {
	if !turning[step.Verb.Key] {
		return
	}
	n.named(part.Tool, step, at, step.Verb.Key+" the "+part.Words())
	if fastened(part) && !part.Tool.Given && !fingers(step) {
		n.Grips = append(n.Grips, n.known.grip(step, part, at))
	}
	if step.Verb.Key != "tighten" && step.Verb.Key != "loosen" {
		for _, name := range part.HeldBy.Names() {
			holder := job.Part(name)
			if holder != nil && ownStep(job, holder, step.Verb.Key) {
				continue
			}
			if holder != nil && fastened(holder) && !holder.Tool.Given {
				n.Grips = append(n.Grips, n.known.grip(step, holder, at))
			} else if holder != nil {
				n.named(holder.Tool, step, at, step.Verb.Key+" the "+holder.Words())
			}
		}
	}
	n.renewed(job, step, part, at)
}

// ownStep reports whether a job turns a fastener in steps of its own, so that a step
// on what it holds does not turn it again: out for remove and open, in for the others.
func ownStep(job *model.Job, fastener *model.Part, verb string) bool {
	keys := []string{"refit", "tighten"}
	if verb == "remove" || verb == "open" || verb == "disconnect" {
		keys = []string{"remove"}
	}
	for _, step := range job.Steps {
		if !slices.Contains(keys, step.Verb.Key) {
			continue
		}
		for _, object := range step.Objects {
			if object.Part == fastener {
				return true
			}
		}
	}
	return false
}

// renewed adds seals and thread products. They are counted where the part goes
// back in: at the last of refit and tighten that the job has, which the caller
// cannot see here, so both are kept and the same part counts once. What a step of its
// own renews counts there, and so does the seal of a part that goes back a second time,
// which the step names.
func (n *Needs) renewed(job *model.Job, step *model.Step, part *model.Part, at source.Place) {
	key := step.Verb.Key
	if key != "tighten" && key != "refit" && key != "replace" && key != "connect" {
		return
	}
	for _, seal := range part.Seals.Names() {
		if slices.ContainsFunc(job.Steps, func(s *model.Step) bool {
			return s.Verb.Key == "replace" && slices.ContainsFunc(s.Objects, func(o model.Object) bool { return o.Spare != nil && o.Spare.Name == seal })
		}) {
			continue
		}
		n.addOnce(&n.Spares, Use{Name: seal, Count: seals(step, part), Step: step, At: at, Why: "seals the " + part.Words()})
	}
	if part.Product.Set() {
		n.addOnce(&n.Supplies, Use{Name: part.Product.Name(), Step: step, At: at, Why: "on the thread of the " + part.Words()})
	}
}

// seals is how many of each seal of a part go in at a step.
func seals(step *model.Step, part *model.Part) int {
	if part.Cover {
		return 1 // the count of a cover is of its fasteners
	}
	return step.Count.Or(part.Count.Or(1))
}

func (n *Needs) addOnce(list *[]Use, use Use) {
	for _, other := range *list {
		if other.Name == use.Name && other.Why == use.Why {
			return
		}
	}
	*list = append(*list, use)
}

// fingers reports whether a step says that no tool goes on its fastener.
func fingers(step *model.Step) bool {
	words := strings.ToLower(step.ByHand.Text)
	return strings.Contains(words, "finger") && !strings.Contains(words, "then") || strings.Contains(words, "no tool") || strings.Contains(words, "without a tool")
}

// fastened reports whether a part tells of a head that a tool turns.
func fastened(part *model.Part) bool {
	switch part.Head.Text {
	case "wing", "none":
		return false
	}
	return part.Thread.Set() || part.Across.Set() || part.Head.Set()
}

func (k *known) grip(step *model.Step, part *model.Part, at source.Place) Grip {
	g := Grip{known: k, Step: step, Part: part, Object: at, Head: part.Head.Text, Point: part.Size.Text, Access: part.Access.Text}
	if g.Head == "" {
		g.Head = "hex"
	}
	if g.Access == "" {
		g.Access = "any"
		if g.OnLine = onLine(part, g.Head); g.OnLine {
			g.Access = "wrench"
		}
	}
	g.Widths, g.Fault = k.widthsOf(part, g.Head)
	g.ReachMM = float(part.Reach)
	if step.Verb.Key == "tighten" {
		g.Low, g.High, g.Torque = torque(step, part)
		amount := TorqueOf(step, part)
		g.Doubt = amount.Set() && !amount.OK
	}
	return g
}

// onLine reports whether a part is the nut on a hose or pipe. One that is only called
// "pipe" is taken for its nut where its thread is a pipe thread or a fine one, which the
// bolts of a bracket or a flange have not.
func onLine(part *model.Part, head string) bool {
	line, sure := trade.NutOnLine(part.Words())
	if !line || head != "hex" && head != "nut" {
		return false
	}
	thread, err := trade.ParseThread(part.Thread.Text)
	return sure || err == nil && !part.Class.Set() && thread.Series != trade.MetricCoarse && thread.Series != trade.UNC
}

// Float is an amount's upper bound in its base unit, 0 where it was left out or could not be read.
func float(amount model.Amount) float64 {
	if !amount.Set() || !amount.OK {
		return 0
	}
	return toFloat(amount.Highest())
}

func toFloat(value *big.Rat, ok bool) float64 {
	if !ok {
		return 0
	}
	out, _ := value.Float64()
	return out
}

// TorqueOf is the torque a step tightens a part to: its own, or the part's.
func TorqueOf(step *model.Step, part *model.Part) model.Amount {
	if step.Torque.Set() || part == nil {
		return step.Torque
	}
	if step.ByHand.Set() {
		return model.Amount{}
	}
	return part.Torque
}

// torque gives the lowest and highest setting of the wrench, in N·m; an adapter
// that changes the lever changes them.
func torque(step *model.Step, part *model.Part) (low, high float64, ok bool) {
	amount := TorqueOf(step, part)
	if !amount.Set() || !amount.OK || amount.Dimension != quantity.Torque {
		return 0, 0, false
	}
	low, high = toFloat(amount.Lowest()), toFloat(amount.Highest())
	if low == 0 {
		low = high
	}
	if high == 0 {
		high = low
	}
	if a := step.Adapter; a != nil && a.Length.OK && a.Wrench.OK {
		angle := 0.0
		if a.Angle.OK {
			angle = float(a.Angle)
		}
		low = trade.LeverSetting(low, float(a.Wrench), float(a.Length), angle)
		high = trade.LeverSetting(high, float(a.Wrench), float(a.Length), angle)
	}
	return low, high, true
}

// widthsOf are the widths across flats of a part, worked out once.
func (k *known) widthsOf(part *model.Part, head string) ([]trade.Width, error) {
	if k == nil {
		return widths(part, head)
	}
	found, there := k.widths[part]
	if !there {
		found.widths, found.fault = widths(part, head)
		k.widths[part] = found
	}
	return found.widths, found.fault
}

// widths are the widths across flats that may be met on a part.
func widths(part *model.Part, head string) ([]trade.Width, error) {
	if part.Across.Set() {
		if !part.Across.OK {
			return nil, nil // the rules on units say what is wrong
		}
		first, _, _ := strings.Cut(part.Across.Text.Text, "(") // the same in the other unit stands behind
		width, err := trade.ParseWidth(first)
		return []trade.Width{width}, err
	}
	switch head {
	case "slotted", "cross", "hexalobular":
		return nil, nil
	}
	thread, err := trade.ParseThread(part.Thread.Text)
	if err != nil {
		return nil, err
	}
	return trade.Widths(thread, head), nil
}
