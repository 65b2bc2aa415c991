package compose

import (
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
)

// amount writes an amount in the units of the page, both systems where it has both.
func (w *writer) amount(amount model.Amount) string {
	if !amount.Set() || !amount.OK {
		return ""
	}
	return amount.Format(w.system)
}

// value writes an amount as a figure that stands out, with the other system beside it.
func (w *writer) value(label string, amount model.Amount) plan.Value {
	if w.system != quantity.Both {
		value := plan.Value{Label: label, Text: amount.Format(w.system)}
		if amount.Dimension == quantity.Torque && amount.Shown(w.system).Symbol != amount.Unit.Symbol {
			value.Also = amount.Plain() // the scale of the wrench may be the author's
		}
		return value
	}
	return plan.Value{Label: label, Text: amount.Plain(), Also: amount.Also(quantity.Both)}
}

// put adds a value where the author gave one.
func (w *writer) put(values []plan.Value, label string, amount model.Amount) []plan.Value {
	if !amount.Set() || !amount.OK {
		return values
	}
	return append(values, w.value(label, amount))
}
