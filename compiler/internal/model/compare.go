package model

import (
	"path"
	"slices"
	"strings"

	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/trade"
	"benchleaf/compiler/internal/tree"
	"benchleaf/schema"
)

// comparison holds values of one file against those of another.
type comparison struct {
	first, second *File
	copied        bool // the one is a copy of the other, and so no word may differ; or else both were read by people
}

// same reports whether two values of a key say one thing.
func (c *comparison) same(key schema.Key, here, there *tree.Value) bool {
	switch key.Kind {
	case schema.Amount:
		return c.sameAmount(here, there)
	case schema.Amounts, schema.Wholes, schema.Names, schema.Texts, schema.Choices:
		return c.sameList(key, here, there)
	case schema.Quantity:
		return c.sameUses(here, there)
	case schema.Sub:
		return c.sameTable(key, here.Table, there.Table)
	case schema.Subs:
		return slices.EqualFunc(here.Items, there.Items, func(one, other *tree.Value) bool { return c.sameTable(key, one.Table, other.Table) })
	case schema.Point, schema.Points, schema.Lines, schema.Rounds:
		return sameNumbers(here, there)
	case schema.Text:
		a, errA := trade.ParseThread(here.Text)
		b, errB := trade.ParseThread(there.Text)
		if key.Name == "thread" && errA == nil && errB == nil {
			return a == b
		}
	}
	return c.sameSaid(key, here, there)
}

// sameSaid reports whether two words, texts or numbers are one.
func (c *comparison) sameSaid(key schema.Key, here, there *tree.Value) bool {
	if here.Kind == tree.IntegerKind && there.Kind == tree.IntegerKind {
		return here.Int == there.Int
	}
	if !c.copied {
		return said(here) == said(there)
	}
	return copiedText(c.first, key, here) == copiedText(c.second, key, there)
}

func said(value *tree.Value) string {
	return strings.ToLower(strings.Join(strings.Fields(strings.ReplaceAll(value.Text, "-", " ")), " "))
}

// copiedText is a text as a copy has it: names as names, a picture by its path from the top of
// the shop folder, and words as they are but for line breaks.
func copiedText(file *File, key schema.Key, value *tree.Value) string {
	switch {
	case key.Kind == schema.Name || key.Kind == schema.Names:
		return Text{Text: value.Text}.Name()
	case key.Name == "file":
		return path.Join(path.Dir(file.Source.Path), value.Text)
	}
	return strings.Join(strings.Fields(value.Text), " ")
}

func (c *comparison) sameAmount(here, there *tree.Value) bool {
	a, okA := c.first.amountOf(here)
	b, okB := c.second.amountOf(there)
	if !okA || !okB || !a.OK || !b.OK {
		return c.sameSaid(schema.Key{}, here, there)
	}
	if c.copied {
		return quantity.Copied(a.Amount, b.Amount)
	}
	return quantity.Same(a.Amount, b.Amount)
}

func (c *comparison) sameList(key schema.Key, here, there *tree.Value) bool {
	items := func(value *tree.Value) []*tree.Value {
		if value.Kind == tree.ArrayKind {
			return value.Items
		}
		return []*tree.Value{value}
	}
	a, b := items(here), items(there)
	if len(a) != len(b) {
		return false
	}
	ordered := key.Kind == schema.Wholes || c.copied && key.Kind == schema.Texts // passes have an order, and what call-outs show
	left := slices.Clone(b)
	for _, one := range a {
		i := slices.IndexFunc(left, func(other *tree.Value) bool {
			if key.Kind == schema.Amounts {
				return c.sameAmount(one, other)
			}
			return c.sameSaid(key, one, other)
		})
		if i < 0 || ordered && i > 0 {
			return false
		}
		left = slices.Delete(left, i, i+1)
	}
	return true
}

// sameTable reports whether two tables say one thing, key by key.
func (c *comparison) sameTable(key schema.Key, mine, other *tree.Table) bool {
	layout, _ := schema.Find(key.Of)
	for _, name := range names(mine, other) {
		inner, _ := layout.Key(name)
		if mine == nil || other == nil || mine.Get(name) == nil || other.Get(name) == nil || !c.same(inner, mine.Get(name).Value, other.Get(name).Value) {
			return false
		}
	}
	return true
}

// sameUses reports whether two tables name the same things, with the same number or amount of each.
func (c *comparison) sameUses(here, there *tree.Value) bool {
	for _, name := range names(here.Table, there.Table) {
		if here.Table == nil || there.Table == nil || here.Table.Get(name) == nil || there.Table.Get(name) == nil || !c.sameAmount(here.Table.Get(name).Value, there.Table.Get(name).Value) {
			return false
		}
	}
	return true
}

// sameNumbers reports whether two lists hold the same numbers, however deep.
func sameNumbers(here, there *tree.Value) bool {
	if here.Kind == tree.ArrayKind || there.Kind == tree.ArrayKind {
		return here.Kind == there.Kind && slices.EqualFunc(here.Items, there.Items, sameNumbers)
	}
	number := func(value *tree.Value) float64 {
		if value.Kind == tree.IntegerKind {
			return float64(value.Int)
		}
		return value.Float
	}
	return number(here) == number(there)
}
