package compose

import (
	"fmt"
	"math/big"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/quantity"
)

// total is what a job takes of one supply: amounts by dimension, and a bare number.
type total struct {
	amounts []quantity.Amount
	count   int
	rough   bool // strokes stand behind it, and nobody knows them closely
}

// sum adds up the uses of a supply. Strokes of a grease gun become a mass or a
// volume where the fluid says what a stroke gives.
func (w *writer) sum(name string) total {
	var out total
	fluid := w.job.Fluid(name)
	for _, use := range w.needs.Supplies {
		if use.Name == name {
			out.use(use, fluid)
		}
	}
	return out
}

func (t *total) use(use needs.Use, fluid *model.Fluid) {
	if !use.Amount.Set() || !use.Amount.OK {
		if !use.Amount.Set() {
			t.count += use.Count
		}
		return
	}
	amount := use.Amount.Amount
	if amount.Dimension == quantity.Count && fluid != nil && fluid.Stroke.OK {
		if n, ok := amount.Max(); ok && n.IsInt() && n.Num().IsInt64() {
			amount, t.rough = fluid.Stroke.Scale(int(n.Num().Int64())), true
		}
	}
	t.add(amount)
}

func (t *total) add(amount quantity.Amount) {
	for i, have := range t.amounts {
		if sum, ok := have.Add(amount); ok {
			t.amounts[i] = sum
			return
		}
	}
	t.amounts = append(t.amounts, amount)
}

// join adds another total.
func (t *total) join(other total) {
	for _, amount := range other.amounts {
		t.add(amount)
	}
	t.count += other.count
	t.rough = t.rough || other.rough
}

func (w *writer) quantity(t total) string {
	var parts []string
	for _, amount := range t.amounts {
		if t.rough {
			amount = twoFigures(amount)
		}
		parts = append(parts, w.writing().Format(amount, w.system))
	}
	if t.count > 0 {
		parts = append(parts, fmt.Sprint(t.count))
	}
	return strings.Join(parts, " + ")
}

// mostPacks is how many packs of one purchase are still handy; common practice, no source.
const mostPacks = 12

// packs says which packs to take so that a total is met: the least left over
// first, then the fewest packs; more than a dozen only where no choice is smaller.
func (w *writer) packs(t total, packs []model.Amount) string {
	if len(t.amounts) != 1 || t.count > 0 {
		return ""
	}
	need, ok := t.amounts[0].Max()
	if !ok || need.Sign() <= 0 {
		return ""
	}
	best := choosePacks(need, t.amounts[0].Dimension, packs)
	if best == nil {
		return ""
	}
	var parts []string
	for _, pick := range best.picks {
		parts = append(parts, fmt.Sprintf("%d × %s", pick.n, w.writing().Plain(pick.pack.Amount)))
	}
	text := strings.Join(parts, " + ")
	if left, ok := rounded(best.left, t.amounts[0].Unit); ok && !t.rough {
		text += ", " + w.writing().Format(left, w.system) + " " + w.words.Labels.Left
	}
	return text
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
	n := big.NewRat(int64(ceil(figure, step)), 1)
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

type packPick struct {
	n    int
	pack model.Amount
}

type packChoice struct {
	picks []packPick
	left  *big.Rat
	n     int
}

func (c *packChoice) better(other *packChoice) bool {
	if other == nil {
		return true
	}
	if handy, otherHandy := c.n <= mostPacks, other.n <= mostPacks; handy != otherHandy {
		return handy
	} else if !handy {
		return c.n < other.n
	}
	if order := c.left.Cmp(other.left); order != 0 {
		return order < 0
	}
	return c.n < other.n
}

// choosePacks tries each size alone, and each larger size topped up by each smaller one.
func choosePacks(need *big.Rat, dimension quantity.Dimension, packs []model.Amount) *packChoice {
	var best *packChoice
	try := func(picks ...packPick) {
		choice := &packChoice{left: new(big.Rat).Neg(need)}
		for _, pick := range picks {
			if pick.n > 0 {
				choice.picks = append(choice.picks, pick)
				choice.n += pick.n
				choice.left.Add(choice.left, new(big.Rat).Mul(sizeOf(pick.pack), big.NewRat(int64(pick.n), 1)))
			}
		}
		if choice.left.Sign() >= 0 && choice.better(best) {
			best = choice
		}
	}
	for _, pack := range packs {
		size := sizeOf(pack)
		if size == nil || pack.Dimension != dimension {
			continue
		}
		try(packPick{ceil(need, size), pack})
		whole := floor(need, size)
		rest := new(big.Rat).Sub(need, new(big.Rat).Mul(size, big.NewRat(int64(whole), 1)))
		for _, other := range packs {
			small := sizeOf(other)
			if small != nil && other.Dimension == dimension && small.Cmp(size) < 0 && rest.Sign() > 0 {
				try(packPick{whole, pack}, packPick{ceil(rest, small), other})
			}
		}
	}
	return best
}

func sizeOf(pack model.Amount) *big.Rat {
	if !pack.OK {
		return nil
	}
	size, ok := pack.Max()
	if !ok || size.Sign() <= 0 {
		return nil
	}
	return size
}

func floor(need, size *big.Rat) int {
	ratio := new(big.Rat).Quo(need, size)
	return int(new(big.Int).Quo(ratio.Num(), ratio.Denom()).Int64())
}

func ceil(need, size *big.Rat) int {
	n := floor(need, size)
	if new(big.Rat).Mul(size, big.NewRat(int64(n), 1)).Cmp(need) < 0 {
		n++
	}
	return n
}
