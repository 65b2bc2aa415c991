package store

import (
	"math/big"
	"slices"

	"benchleaf/compiler/internal/quantity"
)

// Pack is a size something is bought in.
type Pack struct {
	Size   *big.Rat // in the base unit of its dimension, above nothing
	Amount quantity.Amount
	Price  *big.Rat // in the currency of the shop; nil where nobody says
}

// Pick is how many of a pack are taken.
type Pick struct {
	Count int
	Pack  Pack
}

// Choice is what packs are taken so that a need is met.
type Choice struct {
	Picks []Pick
	Left  *big.Rat // over, in the base unit
	Cost  *big.Rat // nil where a price is not known

	count int
}

// mostPacks is how many packs of one purchase are still handy; common practice, no source.
const mostPacks = 12

// Choose says which packs to take so that a need above nothing is met. Of all choices of a
// dozen packs at the most, the cheapest wins where every pack has a price, or else the one
// that leaves the least over; of those that are alike in that, the one of the fewest packs.
// Where a dozen does not do, it is the fewest packs there can be. It is false where no pack
// has a size.
func Choose(need *big.Rat, packs []Pack) (Choice, bool) {
	packs = slices.DeleteFunc(slices.Clone(packs), func(pack Pack) bool { return pack.Size == nil || pack.Size.Sign() <= 0 })
	if len(packs) == 0 {
		return Choice{}, false
	}
	slices.SortStableFunc(packs, func(a, b Pack) int { return b.Size.Cmp(a.Size) })
	search := &search{need: need, packs: packs, priced: !slices.ContainsFunc(packs, func(pack Pack) bool { return pack.Price == nil })}
	search.from(0, mostPacks, new(big.Rat).Set(need), nil)
	if search.best == nil {
		most := packs[0]
		whole := Ceil(need, most.Size) - 1
		rest := new(big.Rat).Sub(need, new(big.Rat).Mul(most.Size, big.NewRat(int64(whole), 1)))
		last := most
		for _, pack := range packs {
			if pack.Size.Cmp(rest) >= 0 {
				last = pack
			}
		}
		picks := []Pick{{whole, most}, {1, last}}
		if last.Size.Cmp(most.Size) == 0 {
			picks = []Pick{{whole + 1, most}}
		}
		search.best = made(need, picks)
	}
	return *search.best, true
}

// search tries every choice of packs, the larger ones first.
type search struct {
	need   *big.Rat
	packs  []Pack
	priced bool
	best   *Choice
}

// from tries the packs from one on, of which so many may still be taken, for the rest of a need.
func (s *search) from(at, may int, rest *big.Rat, picks []Pick) {
	if rest.Sign() <= 0 {
		if choice := made(s.need, picks); s.best == nil || choice.better(s.best, s.priced) {
			s.best = choice
		}
		return
	}
	if at == len(s.packs) {
		return
	}
	pack := s.packs[at]
	for n := min(may, Ceil(rest, pack.Size)); n >= 0; n-- {
		left := new(big.Rat).Mul(pack.Size, big.NewRat(int64(n), 1))
		s.from(at+1, may-n, left.Sub(rest, left), append(picks[:len(picks):len(picks)], Pick{n, pack}))
	}
}

func made(need *big.Rat, picks []Pick) *Choice {
	out := &Choice{Left: new(big.Rat).Neg(need), Cost: new(big.Rat)}
	for _, pick := range picks {
		if pick.Count == 0 {
			continue
		}
		n := big.NewRat(int64(pick.Count), 1)
		out.Picks = append(out.Picks, pick)
		out.count += pick.Count
		out.Left.Add(out.Left, new(big.Rat).Mul(pick.Pack.Size, n))
		if out.Cost != nil && pick.Pack.Price != nil {
			out.Cost.Add(out.Cost, n.Mul(n, pick.Pack.Price))
		} else {
			out.Cost = nil
		}
	}
	return out
}

func (c *Choice) better(other *Choice, priced bool) bool {
	if priced {
		if order := c.Cost.Cmp(other.Cost); order != 0 {
			return order < 0
		}
	}
	if order := c.Left.Cmp(other.Left); order != 0 {
		return order < 0
	}
	return c.count < other.count
}

func floor(need, size *big.Rat) int {
	ratio := new(big.Rat).Quo(need, size)
	return int(new(big.Int).Quo(ratio.Num(), ratio.Denom()).Int64())
}

// Ceil is how many times a size goes into a need, the last time not whole.
func Ceil(need, size *big.Rat) int {
	n := floor(need, size)
	if new(big.Rat).Mul(size, big.NewRat(int64(n), 1)).Cmp(need) < 0 {
		n++
	}
	return n
}
