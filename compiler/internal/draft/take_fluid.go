package draft

import (
	"math/big"

	"benchleaf/compiler/internal/quantity"
)

// fluidThing takes a fluid or its grade.
func (t *taker) fluidThing(it *item) {
	f := it.fluid
	if !t.live(it.from, it.to) {
		return
	}
	if f.kind == "grease" || t.fluidOf.kind == "" || f.what == gradePart {
		t.fluidOf = f
	}
	if f.what == namePart {
		return
	}
	about := t.cavity
	if f.kind == "grease" {
		about = t.topic.name
	}
	t.add(Fluid, f.grade, about, it.from, it.to)
	if f.what == gradePart && f.kind != "grease" && t.section.class == cavityPart && t.cavity != "" && !t.near(describes, it.from, it.to, 5, 0) && !t.near(heldLevel, it.from, it.to, 0, 25) && !t.did("fill", t.cavity) {
		to := it.to
		for _, one := range t.items {
			if one.kind == amountItem && one.amount.unit.kind == quantity.Volume && one.from >= it.to && one.from-it.to < 10 && t.words[one.from].sentence == t.words[it.from].sentence {
				to = one.to
			}
		}
		end := to
		for end < len(t.words) && t.words[end].sentence == t.words[it.from].sentence && end < it.from+18 {
			end++
		}
		if t.live(it.from, it.to) {
			t.actOn("fill", t.cavity, cavityOf(t.cavity), it.from, end, true)
		}
	}
}

var (
	describes = cues("oil in it is|in it is|it is|used|okay too|that we use|was")
	heldLevel = cues("bottom of the hole|fill|top it up")
)

// ofFluid reports whether a figure in "mil" is told of a fluid.
func (t *taker) ofFluid(it *item, a amount) bool {
	if it.to+1 < len(t.words) && t.words[it.to].stop == 0 && t.words[it.to].lower == "of" {
		w := t.words[it.to+1].lower
		_, fluid := fluidAt(t.words, it.to+1)
		return fluid || w == "oil" || w == "coolant" || w == "water" || w == "fluid" || w == "diesel" || w == "fuel" || w == "petrol" || w == "the"
	}
	return a.low.value.Cmp(big.NewRat(100, 1)) >= 0 && t.near(cues("fill|holds|takes|top|put|pour"), it.from, it.to, 4, 0)
}
