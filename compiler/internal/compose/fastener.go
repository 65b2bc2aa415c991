package compose

import (
	"fmt"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/trade"
)

// fasteners adds, for each fastener a step turns, how many there are, their
// thread and head, and when they are tightened the order, the passes and the
// state of the thread.
func (w *writer) fasteners(step *model.Step, part *model.Part, out *plan.Step) {
	labels := w.words.Labels
	for _, grip := range w.needs.Grips {
		if grip.Step != step || !holds(part, grip.Part) || grip.Fault != nil {
			continue
		}
		count := fmt.Sprintf("%d × ", grip.Part.Count.Or(1))
		if step.Count.N > 0 && step.Count.N < grip.Part.Count.Or(1) {
			count = fmt.Sprintf("%d %s %d × ", step.Count.N, labels.Of, grip.Part.Count.Or(1))
		}
		if count == "1 × " {
			count = ""
		}
		name := ""
		if grip.Part != part {
			name = grip.Part.Words() + labels.Colon + " "
		}
		out.Details = append(out.Details, name+count+w.headWords(grip))
		if grip.Part.LeftHand.On {
			out.Details = append(out.Details, labels.LeftHand)
		}
	}
	if step.Verb.Key == "tighten" {
		w.tightening(step, part, out)
	}
	if step.Verb.Key == "tighten" || step.Verb.Key == "refit" || step.Verb.Key == "replace" || step.Verb.Key == "connect" {
		for _, seal := range part.Seals.Names() {
			if spare := w.job.Spare(seal); spare != nil && step.Verb.Key != "tighten" {
				out.Details = append(out.Details, labels.New+" "+w.inside(spare.Words()))
			}
		}
	}
}

func holds(part, fastener *model.Part) bool {
	return part == fastener || part.HeldBy.Has(fastener.Name)
}

// headWords says what a tool grips and the thread behind it: "M18x1.5, 24 mm hex".
func (w *writer) headWords(grip needs.Grip) string {
	var out []string
	if grip.Part.Thread.Set() {
		out = append(out, grip.Part.Thread.Text)
	}
	return strings.Join(append(out, w.gripWords(grip)), ", ")
}

// gripWords says what a tool grips: "24 mm hex".
func (w *writer) gripWords(grip needs.Grip) string {
	word := w.words.Heads[grip.Head]
	switch {
	case len(grip.Widths) > 0:
		return grip.Widths[0].Label + " " + word
	case grip.Point != "":
		return grip.Point + " " + word
	default:
		return word
	}
}

func (w *writer) tightening(step *model.Step, part *model.Part, out *plan.Step) {
	labels := w.words.Labels
	pick := func(own, parts model.Text) string {
		if own.Set() {
			return own.Text
		}
		return parts.Text
	}
	if order := pick(step.Order, part.Order); order != "" {
		if out.Circle = drawn(order, part, step.Count); out.Circle != nil {
			order, _, _ = strings.Cut(w.order(order, part, step.Count), ":") // its numbers are those of the drawing
			out.Details = append(out.Details, order)
		} else {
			out.Details = append(out.Details, w.order(order, part, step.Count))
		}
	}
	passes := step.Passes
	if len(passes) == 0 {
		passes = part.Passes
	}
	if len(passes) > 1 {
		rounds := w.rounds(passes, needs.TorqueOf(step, part))
		if len(step.Objects) == 1 {
			out.Passes = rounds
		} else {
			out.Details = append(out.Details, labels.Passes+labels.Colon+" "+plan.Passes(rounds))
		}
	}
	if condition := pick(step.Condition, part.Condition); condition != "" {
		out.Details = append(out.Details, w.words.Conditions[condition])
	}
	if part.Product.Set() {
		if supply := w.job.Supply(part.Product.Name()); supply != nil {
			out.Details = append(out.Details, labels.With+" "+w.inside(supply.Words()))
		} else if fluid := w.job.Fluid(part.Product.Name()); fluid != nil {
			out.Details = append(out.Details, labels.With+" "+w.inside(fluid.Words()))
		}
	}
	if !step.Angle.Set() && part.Angle.OK {
		out.Values = w.put(out.Values, labels.Angle, part.Angle)
	}
	w.adapter(step, part, out)
}

// drawn is when each fastener of a circle has its turn, clockwise from the top; nil where
// the order is not one that is drawn.
func drawn(order string, part *model.Part, counted model.Whole) []int {
	count := part.OnCircle(counted)
	numbers, ok := trade.CrossOrder(count)
	if order != "cross" || count < 4 || !ok {
		return nil
	}
	turns := make([]int, count)
	for turn, bolt := range numbers {
		turns[bolt-1] = turn + 1
	}
	return turns
}

// order says in which order the fasteners of a circle are tightened; for an even
// circle of a size with a published order, by their numbers. Of several circles each
// has its own order.
func (w *writer) order(order string, part *model.Part, counted model.Whole) string {
	words, count := w.words.Orders[order], part.OnCircle(counted)
	if part.Circles.N > 1 && counted.Or(part.Count.Or(1)) > count {
		words += ", " + w.words.Labels.EachCircle
	}
	if order != "cross" || count < 4 {
		return words
	}
	if numbers, ok := trade.CrossOrder(count); ok {
		return words + w.words.Labels.Colon + " " + strings.Join(strings.Fields(strings.Trim(fmt.Sprint(numbers), "[]")), "-")
	}
	return words
}

// adapter says what the wrench is set to when an adapter changes its lever.
func (w *writer) adapter(step *model.Step, part *model.Part, out *plan.Step) {
	if step.Adapter == nil {
		return
	}
	for _, grip := range w.needs.Grips {
		if grip.Step == step && grip.Part == part && grip.Torque {
			text := fmt.Sprintf("%.3g to %.3g N·m", grip.Low, grip.High)
			if grip.Low == grip.High {
				text = fmt.Sprintf("%.3g N·m", grip.Low)
			}
			setting, problems := quantity.Parse(text, quantity.Torque)
			if len(problems) == 0 {
				out.Values = append(out.Values, w.value(w.words.Labels.Wrench, model.Amount{Amount: setting.WorkedOut(), OK: true}))
				out.Details = append(out.Details, w.words.Labels.With+" "+w.inside(w.words.Kinds["crowfoot"])+" "+w.writing().Plain(step.Adapter.Length.Amount))
			}
		}
	}
}
