package quantity

// Settled is the amount as a file is to hold it: every figure and unit the author wrote, with
// the spelling of units, fractions and ranges settled, in plain spaces.
func (a Amount) Settled() string {
	out := English.print(a)
	for _, behind := range []*Amount{a.Dual, a.middle} {
		if behind != nil && !behind.none() {
			out += " (" + English.bare(*behind) + ")"
		}
	}
	return asciiFigures.Replace(out)
}

// Alike reports whether two amounts are one in all that is printed or worked out of them:
// the same figures in the same units, written to the same places.
func Alike(a, b Amount) bool {
	return a.Dimension == b.Dimension && a.Unit.Symbol == b.Unit.Symbol && a.Shape == b.Shape && a.loose == b.loose &&
		a.first().alike(b.first()) && a.second().alike(b.second()) && a.third().alike(b.third()) &&
		bothAlike(a.Dual, b.Dual) && bothAlike(a.middle, b.middle)
}

func bothAlike(a, b *Amount) bool {
	if a == nil || b == nil {
		return a == b
	}
	return Alike(*a, *b)
}

func (f figure) alike(g figure) bool {
	if f.value == nil || g.value == nil {
		return f.value == g.value
	}
	return f.value.Cmp(g.value) == 0 && f.unit.Symbol == g.unit.Symbol && f.text == g.text && f.digits == g.digits &&
		f.places == g.places && f.fraction == g.fraction && f.compound == g.compound && f.relative == g.relative
}
