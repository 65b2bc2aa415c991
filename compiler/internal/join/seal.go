package join

import "slices"

// Renew lets the step of a number on the card name a spare: the seal of a part that goes back
// a second time in the joined job, which none of its procedures had to name. It reports
// whether there is such a step, and it does not name it yet.
func (p *Plan) Renew(number int, spare string) bool {
	at := slices.Index(p.numbers(), number)
	if at < 0 || p.Deeds[at].Step.Spares.Has(spare) || slices.Contains(p.Deeds[at].Renew, spare) {
		return false
	}
	p.Deeds[at].Renew = append(p.Deeds[at].Renew, spare)
	return true
}
