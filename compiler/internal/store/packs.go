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

// Choose says which packs to take so that a need above nothing is met, out of each size
// alone, and each larger size topped up by each smaller one. Where every pack has a price,
// the cheapest choice wins; or else the least that is left over. Of choices that are alike
// in that, the fewest packs win. More than a dozen packs are taken only where no choice is
// smaller. It is false where no pack has a size.
func Choose(need *big.Rat, packs []Pack) (Choice, bool) {
	packs = slices.DeleteFunc(slices.Clone(packs), func(pack Pack) bool { return pack.Size == nil || pack.Size.Sign() <= 0 })
	priced := !slices.ContainsFunc(packs, func(pack Pack) bool { return pack.Price == nil })
	var best *Choice
	try := func(picks ...Pick) {
		choice := made(need, picks)
		if choice.Left.Sign() >= 0 && (best == nil || choice.better(best, priced)) {
			best = choice
		}
	}
	for _, pack := range packs {
		try(Pick{Ceil(need, pack.Size), pack})
		whole := floor(need, pack.Size)
		rest := new(big.Rat).Sub(need, new(big.Rat).Mul(pack.Size, big.NewRat(int64(whole), 1)))
		for _, other := range packs {
			if other.Size.Cmp(pack.Size) < 0 && rest.Sign() > 0 {
				try(Pick{whole, pack}, Pick{Ceil(rest, other.Size), other})
			}
		}
	}
	if best == nil {
		return Choice{}, false
	}
	return *best, true
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
	if handy, otherHandy := c.count <= mostPacks, other.count <= mostPacks; handy != otherHandy {
		return handy
	} else if !handy {
		return c.count < other.count
	}
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
