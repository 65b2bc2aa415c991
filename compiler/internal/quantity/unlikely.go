package quantity

import "math/big"

// A torque in lbf·ft that is below leastFeet, or in lbf·in above mostInches, is more
// often the other unit: a factor of 12, and the commonest over-torque. Where the
// lines lie is common practice, no source.
const (
	leastFeet  = 5
	mostInches = 300
)

// unlikely warns of a torque that is read but likely meant in the other unit.
func (p *parser) unlikely(a Amount, begin, end int) {
	other, far := "", "low"
	switch {
	case a.Dimension != Torque:
		return
	case a.Unit.Symbol == "lbf·ft" && below(a, leastFeet):
		other = "lbf·in"
	case a.Unit.Symbol == "lbf·in" && above(a, mostInches):
		other, far = "lbf·ft", "high"
	default:
		return
	}
	unit := unitOf(Torque, other)
	same := a.In(unit)
	instead, figures := a, a.all()
	figures.first.unit, figures.second.unit, figures.third.unit = unit, unit, unit
	instead.parts = &figures
	p.warn(Unusual, begin, end, quoted(p.text[begin:end])+" is so "+far+" that "+other+" may be meant",
		"Write "+quoted(same.Plain())+", which is the same torque, or "+quoted(instead.Plain())+" if "+other+" is meant.", same.Plain(), false)
}

func below(a Amount, least int64) bool {
	for _, f := range a.figures()[:min(2, len(a.figures()))] {
		if !f.relative && f.value.Cmp(big.NewRat(least, 1)) >= 0 {
			return false
		}
	}
	return a.first().value.Sign() > 0
}

func above(a Amount, most int64) bool { return a.first().value.Cmp(big.NewRat(most, 1)) > 0 }
