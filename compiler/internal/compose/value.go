package compose

import (
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
)

// writing is how the language writes amounts.
func (w *writer) writing() quantity.Writing {
	said := w.words.Amounts
	return quantity.Writing{To: said.To, AtLeast: said.AtLeast, AtMost: said.AtMost, About: said.About, Comma: said.Comma, Units: w.words.Units}
}

// amount writes an amount in the units of the page, both systems where it has both.
func (w *writer) amount(amount model.Amount) string {
	if !amount.Set() || !amount.OK {
		return ""
	}
	return w.writing().Format(amount.Amount, w.system)
}

// value writes an amount as a figure that stands out, with the other system beside it.
func (w *writer) value(label string, amount model.Amount) plan.Value {
	if w.system != quantity.Both {
		value := plan.Value{Label: label, Text: w.amount(amount)}
		if amount.Dimension == quantity.Torque && amount.Shown(w.system).Symbol != amount.Unit.Symbol {
			value.Also = w.writing().Plain(amount.Amount) // the scale of the wrench may be the author's
		}
		return value
	}
	return plan.Value{Label: label, Text: w.writing().Plain(amount.Amount), Also: w.writing().Also(amount.Amount, quantity.Both)}
}

// put adds a value where the author gave one.
func (w *writer) put(values []plan.Value, label string, amount model.Amount) []plan.Value {
	if !amount.Set() || !amount.OK {
		return values
	}
	return append(values, w.value(label, amount))
}
