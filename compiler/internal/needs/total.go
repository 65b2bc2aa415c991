package needs

import (
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
)

// Total is what work takes of one thing: amounts by dimension, and a bare number.
type Total struct {
	Amounts []quantity.Amount
	Count   int
	Rough   bool // strokes stand behind it, and nobody knows them closely
}

// Total adds up the uses of a supply. Strokes of a grease gun become a mass or a volume
// where the fluid says what a stroke gives; fluid is nil for what is none.
func (n *Needs) Total(name string, fluid *model.Fluid) Total {
	var out Total
	for _, use := range n.Supplies {
		if use.Name == name {
			out.Use(use, fluid)
		}
	}
	return out
}

// Use adds one use.
func (t *Total) Use(use Use, fluid *model.Fluid) {
	if !use.Amount.Set() || !use.Amount.OK {
		if !use.Amount.Set() {
			t.Count += use.Count
		}
		return
	}
	t.Take(use.Amount.Amount, fluid)
}

// Take adds an amount; strokes of a fluid by what one gives.
func (t *Total) Take(amount quantity.Amount, fluid *model.Fluid) {
	if amount.Dimension == quantity.Count && fluid != nil && fluid.Stroke.OK {
		if n, ok := amount.Highest(); ok && n.IsInt() && n.Num().IsInt64() {
			amount, t.Rough = fluid.Stroke.Scale(int(n.Num().Int64())), true
		}
	}
	t.Add(amount)
}

// Add adds an amount.
func (t *Total) Add(amount quantity.Amount) {
	for i, have := range t.Amounts {
		if sum, ok := have.Add(amount); ok {
			t.Amounts[i] = sum
			return
		}
	}
	t.Amounts = append(t.Amounts, amount)
}

// Join adds another total.
func (t *Total) Join(other Total) {
	for _, amount := range other.Amounts {
		t.Add(amount)
	}
	t.Count += other.Count
	t.Rough = t.Rough || other.Rough
}
