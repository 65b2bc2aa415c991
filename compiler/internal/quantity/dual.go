package quantity

import (
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"
)

// dual reads the same amount in another unit behind the first: in parentheses,
// behind a stroke or an equals sign.
func (p *parser) dual(a *Amount) {
	at := p.pos
	p.skip()
	open := p.pos
	if p.rest() == "" || !strings.ContainsAny(p.rest()[:1], "(/=") {
		p.pos = at
		return
	}
	bracket := p.text[open] == '('
	p.pos++
	p.skip()
	if !p.figureAhead() {
		p.pos = at
		return
	}
	if a.Dimension != None {
		p.want = a.Dimension
	}
	start := p.pos
	second, ok := p.amount()
	end := p.pos
	if bracket && !p.sign(")") && ok {
		if p.rest() == "" {
			p.add(Problem{Kind: Malformed, Start: open, End: end, Message: quoted(p.text[open:end]) + " opens a bracket and does not shut it",
				Help: "Write " + quoted(p.text[open:end]+")") + ".", Replace: p.text[open:end] + ")", Certain: true})
		}
		return
	}
	if !ok || a.Dimension == None {
		return
	}
	second.Written = p.text[start:end]
	if second.Shape == Exact && a.Shape != Range && a.Shape != Tolerance {
		second.Shape = a.Shape
	}
	second.loose = second.loose || a.loose && second.Shape == Range
	p.compare(*a, second, start, end)
	if a.Shape == Tolerance && second.Shape == Exact {
		a.middle = &second // print converts the tolerance too
		return
	}
	a.Dual = &second
}

// figureAhead tells a dual figure from other things in parentheses.
func (p *parser) figureAhead() bool {
	if _, found := readShape(p.rest(), prefixes); found {
		return true
	}
	r, size := utf8.DecodeRuneInString(p.rest())
	if strings.ContainsRune("-−+±.", r) {
		next := p.rest()[size:]
		r, _ = utf8.DecodeRuneInString(next[spaces(next):])
	}
	_, glyph := glyphs[r]
	return glyph || r < utf8.RuneSelf && unicode.IsDigit(r)
}

func (p *parser) compare(a, b Amount, start, end int) {
	if agree(a, b) {
		return
	}
	message := quoted(p.text[start:end]) + " is not the same as " + quoted(a.Plain())
	right := a.In(b.Unit)
	if right.Dimension == None {
		p.fail(Disagree, start, end, message, "Write one amount.")
		return
	}
	replace := asciiFigures.Replace(English.bare(right))
	p.failWith(Disagree, start, end, message, "Write "+quoted(replace)+", if the first figure is right.", replace)
}

// agree reports whether two amounts are one, as near as they are written. A bound may
// be off by half a unit in the last place of the coarser figure, but not by more than
// 5 %, which is what two figures round by at most: 1 US gal is not 4.5 L. It may be
// off by 1 % more where a figure has two significant figures or fewer, and by another
// half unit towards the safe side, where a minimum was rounded up or a maximum down.
// Source: common practice, no source.
func agree(a, b Amount) bool {
	if !a.Unit.Converts(b.Unit) {
		return false
	}
	keep := min(a.mostDigits(), b.mostDigits())
	step := a.step(b.mostDigits())
	if other := b.step(a.mostDigits()); other.Cmp(step) > 0 {
		step = other
	}
	m := margin{half: new(big.Rat).Mul(step, big.NewRat(1, 2)), loose: keep <= 2,
		bounded: a.Shape != Exact && a.Shape != About, scale: a.Dimension == Temperature, instrument: instruments[a.Dimension]}
	if a.Shape == Tolerance && b.Shape == Exact {
		return m.near(a.first().base(), b.first().base())
	}
	lowA, haveA := a.Min()
	lowB, haveB := b.Min()
	if haveA != haveB || haveA && !m.near(lowA, lowB) {
		return false
	}
	highA, haveA := a.Max()
	highB, haveB := b.Max()
	if haveA != haveB {
		return false
	}
	return !haveA || m.near(new(big.Rat).Neg(highA), new(big.Rat).Neg(highB))
}

// Same reports whether two amounts of two files are one: figure for figure in one
// unit, and as near as they are written in two.
func Same(a, b Amount) bool {
	if a.Unit.Symbol != b.Unit.Symbol {
		return agree(a, b)
	}
	bound := func(x, y *big.Rat, haveX, haveY bool) bool { return haveX == haveY && (!haveX || x.Cmp(y) == 0) }
	lowA, haveA := a.Min()
	lowB, haveB := b.Min()
	if !bound(lowA, lowB, haveA, haveB) {
		return false
	}
	highA, haveA := a.Max()
	highB, haveB := b.Max()
	return bound(highA, highB, haveA, haveB)
}

// Copied reports whether an amount is the copy of another: figure for figure in one unit, and
// in two to what rounding takes, half a per cent or 0.3 °C; common practice, no source.
func Copied(a, b Amount) bool {
	if a.Unit.Symbol == b.Unit.Symbol {
		return Same(a, b)
	}
	near := func(x, y *big.Rat, haveX, haveY bool) bool {
		if !haveX || !haveY {
			return haveX == haveY
		}
		most := big.NewRat(3, 10)
		if a.Dimension != Temperature {
			most = new(big.Rat).Mul(new(big.Rat).Abs(x), big.NewRat(5, 1000))
		}
		apart := new(big.Rat).Sub(x, y)
		return apart.Abs(apart).Cmp(most) <= 0
	}
	lowA, haveA := a.Min()
	lowB, haveB := b.Min()
	if !a.Unit.Converts(b.Unit) || !near(lowA, lowB, haveA, haveB) {
		return false
	}
	highA, haveA := a.Max()
	highB, haveB := b.Max()
	return near(highA, highB, haveA, haveB)
}

// margin is how far apart two figures of one amount may be.
type margin struct {
	half    *big.Rat // half a unit in the last place
	loose   bool     // a figure has two significant figures or fewer
	bounded bool     // the figures are bounds
	scale   bool     // values are points on a scale, of which no share can be taken

	instrument *big.Rat // share of the value, or degrees on a scale, that the instrument may be off; nil where it is not known
}

// instruments are what the measuring tools of a shop may be off by: what two
// figures differ by less cannot be told apart at the machine. Name plates pair
// 250 bar with 3600 psi. Torque: half the 4 to 6 % of ISO 6789; pressure: class
// 2.5 of EN 837-1; temperature: 1.5 °C, half of 5 °F, common practice, no source.
var instruments = map[Dimension]*big.Rat{Torque: big.NewRat(25, 1000), Pressure: big.NewRat(25, 1000), Temperature: big.NewRat(3, 2)}

// near compares two lower bounds; b may be safer, which is higher.
func (m margin) near(a, b *big.Rat) bool {
	most := new(big.Rat).Set(m.half)
	if !m.scale {
		size := new(big.Rat).Abs(a)
		if share := new(big.Rat).Mul(size, big.NewRat(5, 100)); share.Cmp(most) < 0 {
			most = share
		}
		if m.loose {
			most.Add(most, size.Mul(size, big.NewRat(1, 100)))
		}
	}
	if off := m.instrument; off != nil {
		if !m.scale {
			off = new(big.Rat).Mul(off, new(big.Rat).Abs(a))
		}
		if off.Cmp(most) > 0 {
			most.Set(off)
		}
	}
	apart := new(big.Rat).Sub(b, a)
	if m.bounded && apart.Sign() > 0 {
		most.Add(most, m.half)
	}
	return apart.Abs(apart).Cmp(most) <= 0
}

func (a Amount) mostDigits() int {
	digits := 1
	for _, f := range a.figures() {
		digits = max(digits, f.digits)
	}
	return digits
}

// step is one unit in the last significant place, in the base unit, of the coarsest
// figure. Zeros at the end of a whole number beyond the figures of its partner only hold its place.
func (a Amount) step(partner int) *big.Rat {
	coarsest := new(big.Rat)
	for _, f := range a.figures() {
		if f.relative || f.text == "" {
			continue
		}
		size := powerOfTen(-f.places)
		switch {
		case f.fraction:
			size = big.NewRat(1, 64)
		case f.places == 0 && f.value.IsInt() && a.Dimension != Temperature:
			zeros := len(f.text) - len(strings.TrimRight(f.text, "0"))
			size = powerOfTen(max(0, min(zeros, f.digits-min(3, max(2, partner)))))
		}
		if size.Mul(size, f.unit.scale.factor); size.Cmp(coarsest) > 0 {
			coarsest = size
		}
	}
	return coarsest
}
