package quantity

import (
	"math/big"
	"strings"
	"unicode/utf8"
)

// sign takes one of some signs.
func (p *parser) sign(signs ...string) bool {
	p.skip()
	for _, s := range signs {
		if strings.HasPrefix(p.rest(), s) {
			p.pos += len(s)
			p.skip()
			return true
		}
	}
	return false
}

// tolerance reads "± 3 N·m" and "+2/-1 mm" behind the middle. found says that one stands there.
func (p *parser) tolerance(middle term) (a Amount, found, ok bool) {
	if p.sign("±", "+/-", "+-", "+/−") {
		up, read := p.allowed(middle)
		if !read {
			p.noFigure(p.pos)
			return a, true, false
		}
		a, ok = p.around(middle, up, up)
		return a, true, ok
	}
	at := p.pos
	for _, signs := range [...][2][]string{{{"+"}, {"-", "−", "–"}}, {{"-", "−", "–"}, {"+"}}} {
		p.pos = at
		if !p.uneven(signs[0], signs[1]) {
			continue
		}
		p.pos = at
		p.sign(signs[0]...)
		one, ok := p.allowed(middle)
		p.sign("/")
		p.sign(signs[1]...)
		other, alike := p.allowed(middle)
		if !ok || !alike {
			break
		}
		if signs[0][0] != "+" {
			one, other = other, one
		}
		a, ok = p.around(middle, one, other)
		return a, true, ok
	}
	return a, false, false
}

// uneven looks whether two figures with these signs follow: "+2/-1", "+2 -1", "-1/+2".
// A minus alone is the hyphen of a range.
func (p *parser) uneven(first, second []string) bool {
	q := &parser{text: p.text, pos: p.pos, want: p.want, wants: p.wants}
	if !q.sign(first...) || !q.plain() {
		return false
	}
	if _, ok := q.allowed(term{}); !ok {
		return false
	}
	q.sign("/")
	return q.sign(second...) && q.plain()
}

// plain reports whether a figure without a sign comes next.
func (p *parser) plain() bool {
	r, _ := utf8.DecodeRuneInString(p.rest())
	_, glyph := glyphs[r]
	return r < utf8.RuneSelf && isDigit(byte(r)) || glyph || r == '.' && digitAt(p.rest(), 1)
}

// allowed reads a tolerance; one in percent of anything but a percentage is a share of the middle.
func (p *parser) allowed(middle term) (term, bool) {
	if !p.plain() {
		return term{}, false
	}
	n, ok := p.number()
	if !ok {
		return term{}, false
	}
	t := term{number: n, numberEnd: n.end}
	at := p.pos
	p.skip()
	share := middle.unit.Dimension != None && middle.unit.Dimension != Ratio || p.want != Ratio && p.want != Any
	if share && strings.HasPrefix(p.rest(), "%") {
		p.pos++
		t.unit, t.end = unitOf(Ratio, "%"), p.pos
		return t, true
	}
	p.pos = at
	p.unitOf(&t)
	return t, true
}

func (p *parser) around(middle, up, down term) (Amount, bool) {
	relative := up.unit.Dimension == Ratio && p.want != Ratio
	if relative || down.unit.Dimension == Ratio && p.want != Ratio {
		// "38 ± 5 % N·m" has the unit of the middle behind it all.
		if middle.unit.Dimension == None && !middle.bad {
			p.unitOf(&middle)
		}
		if !p.unify(&middle) {
			return Amount{}, false
		}
		percent := unitOf(Ratio, "%")
		up.unit, down.unit, relative = percent, percent, true
	} else if !p.unify(&middle, &up, &down) {
		return Amount{}, false
	}
	sound := p.checkValue(middle)
	a := Amount{Dimension: middle.unit.Dimension, Unit: middle.unit, Shape: Tolerance,
		parts: &parts{first: middle.figure(), second: up.figure(), third: down.figure()}}
	a.parts.second.relative, a.parts.third.relative = relative, relative
	if sound {
		p.checkReach(a, middle.start)
	}
	return a, true
}

// aroundNothing reads "± 0.5 mm": a tolerance around zero.
func (p *parser) aroundNothing(begin int, prefixed bool) (Amount, bool) {
	up, ok := p.allowed(term{})
	if !ok || prefixed {
		p.noFigure(begin)
		return Amount{}, false
	}
	if up.unit.Dimension == Ratio && p.want != Ratio && p.want != Any {
		p.fail(Malformed, begin, up.end, quoted(p.text[begin:up.end])+" is a share of nothing", p.writeOne())
		return Amount{}, false
	}
	if !p.unify(&up) {
		return Amount{}, false
	}
	zero := figure{value: new(big.Rat), unit: up.unit, digits: 1}
	a := Amount{Dimension: up.unit.Dimension, Unit: up.unit, Shape: Tolerance, parts: &parts{first: zero, second: up.figure(), third: up.figure()}}
	p.checkReach(a, begin)
	return a, true
}

// checkReach refuses a tolerance that goes below zero where nothing is, or beyond any measure.
func (p *parser) checkReach(a Amount, begin int) {
	row := a.Dimension.row()
	low, _ := a.Min()
	high, _ := a.Max()
	if beyond(low) || beyond(high) {
		p.tooFar(begin, p.pos)
		return
	}
	if low.Sign() < 0 && a.first().value.Sign() >= 0 && !row.negative {
		p.fail(Malformed, begin, p.pos, quoted(p.text[begin:p.pos])+" reaches below zero, and "+row.article+" "+row.name+" does not",
			"Write a range or a smaller tolerance.")
	}
}
