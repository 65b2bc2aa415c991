package compose

import (
	"cmp"
	"slices"

	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
)

// Gauge composes the page of true sizes: the widths across flats that the sockets and
// wrenches of the shop have. It is an error when the shop's language has no words.
func Gauge(works []Work, system quantity.System) (plan.Gauge, error) {
	w, err := newWriter(works[0], system)
	if err != nil {
		return plan.Gauge{}, err
	}
	out := plan.Gauge{Words: w.words}
	if shop := works[0].Job.Shop; shop != nil {
		out.Shop = shop.Title.Text
	}
	var inch []plan.Width
	for _, work := range works {
		for _, tool := range work.Job.Tools() {
			if tool.Kind.Text != "socket" && tool.Kind.Text != "wrench" {
				continue
			}
			for _, size := range tool.Sizes {
				width := plan.Width{Label: size.Plain(), MM: millimetres(size)}
				list := &out.Widths
				if size.Unit.System == quantity.Inch {
					list = &inch
				}
				if width.MM > 0 && !slices.ContainsFunc(*list, func(other plan.Width) bool { return other.Label == width.Label }) {
					*list = append(*list, width)
				}
			}
		}
	}
	bySize := func(a, b plan.Width) int { return cmp.Compare(a.MM, b.MM) }
	slices.SortFunc(out.Widths, bySize)
	slices.SortFunc(inch, bySize)
	out.Widths = append(out.Widths, inch...)
	return out, nil
}
