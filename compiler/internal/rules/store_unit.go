package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/store"
)

var storeUnit = add(Rule{
	Rule: finding.Rule{
		ID: "store/unit", Severity: finding.Error, Title: "An amount on the shelf cannot be held against the rest",
		Why:     "What is left is reckoned from what was counted, what was used and what a pack holds; litres do not come off kilograms.",
		Source:  "the language itself: one kind of amount for each thing on the shelf",
		Setting: version,
		Bad:     "[fluid.oil]\nkind = \"gear-oil\"\npacks = [\"1 L\"]\n[store.oil]\non-hand = \"4 kg\"\ncounted = 2026-04-01\n",
		Good:    "[fluid.oil]\nkind = \"gear-oil\"\npacks = [\"1 L\"]\n[store.oil]\non-hand = \"4 L\"\ncounted = 2026-04-01\n",
	},
})

var storePrice = add(Rule{
	Rule: finding.Rule{
		ID: "store/price", Severity: finding.Error, Title: "A price or a currency cannot be read",
		Why:     "What the shopping costs is added up from it.",
		Source:  "the language itself; currencies by the codes of ISO 4217, three capital letters",
		Setting: version,
		Bad:     "[spare.seal]\npack = 10\n[store.seal]\non-hand = 4\ncounted = 2026-04-01\nprices = [{ pack = 10, price = \"3,20\" }]\n",
		Good:    "[spare.seal]\npack = 10\n[store.seal]\non-hand = 4\ncounted = 2026-04-01\nprices = [{ pack = 10, price = \"3.20\" }]\n",
	},
})

// OffCard reports whether a rule is of what stands in a file and on no card, so that its findings
// hold none back.
func OffCard(rule string) bool {
	return slices.Contains([]string{storeUnit.ID, storePrice.ID, unitVersion.ID, unitUse.ID}, rule)
}

// Stores tells of what a file says is on the shelf.
func Stores(file *model.File) []finding.Finding {
	var out []finding.Finding
	if shop := file.Shop; shop != nil && shop.Currency.Set() {
		if code := shop.Currency.Text; len(code) != 3 || strings.Trim(code, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "" {
			pass := &Pass{File: file, rule: storePrice, out: &out}
			pass.Found(finding.Finding{Place: shop.Currency.At, Summary: fmt.Sprintf("%q is no code of a currency", code), Help: "Write the three capital letters of ISO 4217, such as \"EUR\", \"USD\" or \"GBP\"."})
		}
	}
	for _, kept := range file.Stores() {
		pass := &Pass{File: file, rule: storeUnit, out: &out}
		amounts := slices.Clone(kept.OnHand)
		if kept.Keep.Set() {
			amounts = append(amounts, kept.Keep)
		}
		for _, price := range kept.Prices {
			amounts = append(amounts, price.Pack)
		}
		against := packOf(file.Stored(kept.Name))
		for _, amount := range amounts {
			switch {
			case !amount.OK:
			case !against.OK:
				against = amount
			case !against.Unit.Converts(amount.Unit):
				pass.Found(finding.Finding{Place: amount.At, Summary: fmt.Sprintf("%q of %s does not go with %q", amount.Text.Text, kept.Name, against.Text.Text),
					Help: "Write all amounts of it in one kind: by volume, by mass, by length or by number.", Related: related(against)})
			}
		}
		pass = &Pass{File: file, rule: storePrice, out: &out}
		for _, price := range kept.Prices {
			if _, err := store.Money(price.Price.Text); price.Price.Set() && err != nil {
				pass.Found(finding.Finding{Place: price.Price.At, Summary: err.Error(), Help: "Write figures with a point before the cents, and no sign of the currency."})
			}
		}
	}
	return out
}

func related(amount model.Amount) []finding.Related {
	if !amount.At.Known() {
		return nil
	}
	return []finding.Related{{Place: amount.At, Text: "the other"}}
}

// packOf is a size that something on the shelf comes in; not OK where nobody says.
func packOf(stored any) model.Amount {
	var packs []model.Amount
	switch stored := stored.(type) {
	case *model.Fluid:
		packs = stored.Packs
	case *model.Supply:
		packs = stored.Packs
	case *model.Spare:
		number, _ := quantity.Parse("1 piece", quantity.Count)
		return model.Amount{Text: model.Text{Text: "pieces"}, Amount: number, OK: true}
	}
	for _, pack := range packs {
		if pack.OK {
			return pack
		}
	}
	return model.Amount{}
}
