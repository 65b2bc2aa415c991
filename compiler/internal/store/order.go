package store

import (
	"math/big"

	"benchleaf/compiler/internal/due"
)

// year is the days of which what was used and what is foreseen is told.
const year = 365

// State is how a thing on the shelf stands.
type State int

const (
	Missing   State = iota // the work asked for takes more than there is
	ToOrder                // less than what is kept would be left, or it runs out before an order can be there
	Enough                 // neither
	Uncounted              // nobody counted it
)

// Order is what is to be done about a thing.
type Order struct {
	State   State
	Now     *big.Rat // what the work asked for takes, in the base unit
	Year    *big.Rat // what the work of the twelve months to come takes
	Keep    *big.Rat // how much is to be there at the least
	Missing *big.Rat // what to buy at the least; nothing where there is enough
	Choice  Choice   // packs for it
	Chosen  bool     // there are such packs
	RunsOut *Need    // the first work that what is on hand does not do for; nil where there is none
	OrderBy due.Day  // day by which it is to be ordered for that; 0 where it does not run out
}

// Order says on a day how an account stands and what to buy. What is to be ordered within
// some days to come is to be ordered.
func (a *Account) Order(on due.Day, within int) Order {
	out := Order{Now: new(big.Rat), Year: new(big.Rat), Missing: new(big.Rat), Keep: a.keep()}
	for _, need := range a.Future {
		if need.Day <= on.AddDays(year) {
			out.Year.Add(out.Year, need.Much)
		}
		if need.Now {
			out.Now.Add(out.Now, need.Much)
		}
	}
	if a.OnHand == nil {
		out.State = Uncounted
		return out
	}
	covered := new(big.Rat).Set(out.Now) // what there must be for
	left := new(big.Rat).Set(a.OnHand)
	for i, need := range a.Future {
		if left.Sub(left, need.Much).Sign() < 0 {
			out.RunsOut, out.OrderBy = &a.Future[i], need.Day.AddDays(-a.lead())
			break
		}
	}
	switch keep := out.Keep; {
	case out.Now.Cmp(a.OnHand) > 0:
		out.State = Missing
		covered.Add(covered, keep)
	case new(big.Rat).Add(out.Now, keep).Cmp(a.OnHand) > 0:
		out.State = ToOrder
		covered.Add(covered, keep)
	case out.RunsOut != nil && out.OrderBy <= on.AddDays(within):
		out.State = ToOrder
		covered = new(big.Rat).Set(keep)
		for _, need := range a.Future {
			if need.Day <= out.RunsOut.Day {
				covered.Add(covered, need.Much)
			}
		}
	default:
		out.State = Enough
		return out
	}
	out.Missing.Sub(covered, a.OnHand)
	out.Choice, out.Chosen = Choose(out.Missing, a.Packs)
	return out
}

// keep is how much is to be there at the least, in the base unit.
func (a *Account) keep() *big.Rat {
	if a.Kept != nil && a.Kept.Keep.Set() {
		if much, ok := a.base(a.Kept.Keep); ok {
			return much
		}
	}
	return new(big.Rat)
}

// lead is how long it takes until what is ordered is there, in days.
func (a *Account) lead() int {
	if a.Kept == nil || !a.Kept.Lead.OK || !a.Kept.Lead.Set() {
		return 0
	}
	days, ok := a.Kept.Lead.Max()
	if !ok {
		return 0
	}
	return Ceil(days, big.NewRat(1, 1))
}
