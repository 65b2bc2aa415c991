package compose

import (
	"fmt"
	"math/big"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/store"
)

func (w *writer) sum(name string) needs.Total {
	return w.needs.Total(name, w.job.Fluid(name))
}

func (w *writer) quantity(t needs.Total) string {
	var parts []string
	for _, amount := range t.Amounts {
		if t.Rough {
			amount = twoFigures(amount)
		}
		parts = append(parts, w.writing().Format(amount, w.system))
	}
	if t.Count > 0 {
		parts = append(parts, fmt.Sprint(t.Count))
	}
	return strings.Join(parts, " + ")
}

// packs says which packs to take so that a total is met: the least left over
// first, then the fewest packs; more than a dozen only where no choice is smaller.
func (w *writer) packs(t needs.Total, packs []model.Amount) string {
	if len(t.Amounts) != 1 || t.Count > 0 {
		return ""
	}
	need, ok := t.Amounts[0].Max()
	if !ok || need.Sign() <= 0 {
		return ""
	}
	var sizes []store.Pack
	for _, pack := range packs {
		if size, ok := pack.Max(); ok && pack.OK && pack.Dimension == t.Amounts[0].Dimension {
			sizes = append(sizes, store.Pack{Size: size, Amount: pack.Amount})
		}
	}
	best, ok := store.Choose(need, sizes)
	if !ok {
		return ""
	}
	text := w.picks(best.Picks)
	if left, ok := rounded(best.Left, t.Amounts[0].Unit); ok && !t.Rough {
		text += ", " + w.writing().Format(left, w.system) + " " + w.words.Labels.Left
	}
	return text
}

// picks writes packs with how many of each: "2 × 5 L + 1 × 1 L".
func (w *writer) picks(picks []store.Pick) string {
	var parts []string
	for _, pick := range picks {
		parts = append(parts, fmt.Sprintf("%d × %s", pick.Count, w.writing().Plain(pick.Pack.Amount)))
	}
	return strings.Join(parts, " + ")
}

// twoFigures rounds an amount up to two figures: what a number of strokes gives is known no closer.
func twoFigures(amount quantity.Amount) quantity.Amount {
	most, ok := amount.Max()
	if !ok || most.Sign() <= 0 {
		return amount
	}
	figure, step := amount.Unit.FromBase(most), big.NewRat(1, 1)
	ten := big.NewRat(10, 1)
	for figure.Cmp(new(big.Rat).Mul(step, ten)) < 0 {
		step.Quo(step, ten)
	}
	for figure.Cmp(new(big.Rat).Mul(step, big.NewRat(100, 1))) >= 0 {
		step.Mul(step, ten)
	}
	n := big.NewRat(int64(store.Ceil(figure, step)), 1)
	up, problems := quantity.Parse(trimmed(n.Mul(n, step))+" "+amount.Unit.Symbol, amount.Dimension)
	if len(problems) > 0 {
		return amount
	}
	return up.WorkedOut()
}

// trimmed writes a figure without noughts at its end.
func trimmed(figure *big.Rat) string {
	text := figure.FloatString(6)
	return strings.TrimRight(strings.TrimRight(text, "0"), ".")
}

// rounded is an amount in a unit, to two places; false where nothing is left of it.
func rounded(base *big.Rat, unit quantity.Unit) (quantity.Amount, bool) {
	figure := strings.TrimRight(strings.TrimRight(unit.FromBase(base).FloatString(2), "0"), ".")
	amount, problems := quantity.Parse(figure+" "+unit.Symbol, unit.Dimension)
	return amount.WorkedOut(), len(problems) == 0 && figure != "0"
}
