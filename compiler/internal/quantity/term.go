package quantity

import (
	"math/big"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// term is a figure with the unit behind it, if there is one.
type term struct {
	number
	unit      Unit // zero when none is written
	numberEnd int  // end of the figure, before its unit
	compound  bool // written in several units, unit is the last
	bad       bool // a unit stands there and was reported
}

func (t term) figure() figure {
	return figure{value: t.value, unit: t.unit, text: t.text, digits: t.digits, places: t.places, fraction: t.fraction, compound: t.compound}
}

func (p *parser) term() (term, bool) {
	n, ok := p.number()
	if !ok {
		return term{}, false
	}
	t := term{number: n, numberEnd: n.end}
	p.unitOf(&t)
	if t.unit.Dimension != None {
		p.compound(&t)
	}
	return t, true
}

// unitOf reads the unit behind a figure.
func (p *parser) unitOf(t *term) {
	at := p.pos
	p.skip()
	m, known := longestMatch(p.text, p.pos, func(key string) bool { return len(spellings[key]) > 0 || len(trapsOf[key]) > 0 })
	if known {
		t.unit, t.bad = p.resolve(m)
		p.pos, t.end = m.end, m.end
		return
	}
	if strings.HasPrefix(p.rest(), "#") {
		p.hash(p.pos)
		p.pos, t.end, t.bad = p.pos+1, p.pos+1, true
		return
	}
	end := unknownUnit(p.text, p.pos)
	if end == p.pos || p.stops() {
		p.pos = at
		return
	}
	p.unknown(p.pos, end)
	p.pos, t.end, t.bad = end, end, true
}

func (p *parser) stops() bool {
	return slices.ContainsFunc(stopwords, func(word string) bool { return hasWord(p.rest(), word) })
}

// resolve finds which unit a spelling is where the dimension is known, or says why it is none.
func (p *parser) resolve(m match) (unit Unit, bad bool) {
	for _, t := range trapsOf[m.key] {
		if t.catches(p.want, p.wants) {
			p.trapped(t, m)
			return Unit{}, true
		}
	}
	found := spellings[m.key]
	for _, s := range found {
		if s.unit.Dimension == p.want || p.want == Any {
			p.want = s.unit.Dimension
			if s.old {
				p.old(s.unit, m)
			}
			return s.unit, false
		}
	}
	dimension := None
	if len(found) > 0 {
		dimension = found[0].unit.Dimension
	} else if len(trapsOf[m.key]) > 0 {
		dimension = trapsOf[m.key][0].meant[0].dimension
	}
	p.wrong(m, dimension)
	return Unit{}, true
}

// once reports whether a spelling was not reported before: the unit of both bounds is one fault.
func (p *parser) once(key string) bool {
	if p.told[key] {
		return false
	}
	if p.told == nil {
		p.told = map[string]bool{}
	}
	p.told[key] = true
	return true
}

func (p *parser) written(m match) string { return strings.TrimSpace(p.text[m.start:m.end]) }

func (p *parser) trapped(t trap, m match) {
	if !p.once(m.key) {
		return
	}
	help, replace := p.writeOne(), ""
	if symbols := t.symbols(p.wants); len(symbols) > 0 {
		help = "Write " + p.wholes(m.start, m.end, symbols) + whichever(symbols)
		if len(symbols) == 1 {
			replace = symbols[0]
		}
	}
	if t.help != "" {
		help, replace = t.help, ""
	}
	p.failWith(t.kind, m.start, m.end, quoted(p.written(m))+" "+t.says, help, replace)
}

func (p *parser) old(unit Unit, m match) {
	if !p.once(m.key) {
		return
	}
	p.warn(Deprecated, m.start, m.end, quoted(p.written(m))+" is read as "+unit.Symbol,
		"Write "+p.whole(m.start, m.end, unit.Symbol)+".", unit.Symbol, true)
}

func (p *parser) wrong(m match, is Dimension) {
	if !p.once(m.key) {
		return
	}
	row := p.want.row()
	help := "Write " + row.article + " " + row.name + ", such as " + quoted(p.sample(p.want)) + "."
	if len(p.wants) > 1 {
		help = p.writeOne()
	}
	p.fail(Wrong, m.start, m.end, quoted(p.written(m))+" is a unit of "+is.String()+", not of "+p.names(), help)
}

func symbolOf(row dimension) string {
	if len(row.usual) == 0 {
		return ""
	}
	return row.usual[0]
}

// unknown reports a word that is no unit, with the nearest that is one.
func (p *parser) unknown(start, end int) {
	written := p.text[start:end]
	if !p.once(written) {
		return
	}
	help := p.writeOne()
	symbol, certain := nearestUnit(written, p.want)
	if symbol != "" {
		help = "Write " + p.whole(start, end, symbol) + " if that is meant."
	}
	p.add(Problem{Kind: Unknown, Start: start, End: end, Message: quoted(written) + " is no unit that is known here", Help: help, Replace: symbol, Certain: certain})
}

// compound goes on behind a unit that a smaller one may follow.
func (p *parser) compound(t *term) {
	for depth := 0; depth < 3; depth++ {
		at := p.pos
		next, ok := p.smaller(*t)
		if !ok {
			p.pos = at
			return
		}
		*t = next
	}
}

func (p *parser) smaller(t term) (term, bool) {
	allowed := compounds[t.unit.Symbol]
	if len(allowed) == 0 || !t.value.IsInt() || t.fraction {
		return t, false
	}
	p.skip()
	if t.unit.Symbol == "ft" && strings.HasPrefix(p.rest(), "-") && strings.ContainsAny(p.text[t.numberEnd:p.pos], "'′’") {
		p.pos++
	}
	for _, word := range []string{"and", ",", "&"} {
		if hasWord(p.rest(), word) {
			p.pos += len(word)
			p.skip()
			break
		}
	}
	if r, _ := utf8.DecodeRuneInString(p.rest()); !unicode.IsDigit(r) {
		return t, false
	}
	n, ok := p.quietly(func(q *parser) (number, bool) { return q.number() })
	if !ok {
		return t, false
	}
	symbol, end := p.smallerUnit(n, t.unit, allowed)
	if symbol == "" {
		return t, false
	}
	unit := unitOf(t.unit.Dimension, symbol)
	p.pos = end
	value := new(big.Rat).Add(unit.FromBase(t.unit.ToBase(t.value)), n.value)
	whole := withUnit(t.text, t.unit.called(t.value), "\u00a0")
	return term{numberEnd: n.end, unit: unit, compound: true, number: number{
		value: value, start: t.start, end: end, text: whole + " " + n.text, fraction: n.fraction,
		digits: t.digits + n.digits, places: n.places}}, true
}

// smallerUnit is the unit behind the second figure of a compound, and where it ends.
func (p *parser) smallerUnit(n number, larger Unit, allowed []string) (string, int) {
	at := n.end + spaces(p.text[n.end:])
	m, ok := longestMatch(p.text, at, func(key string) bool { return len(spellings[key]) > 0 })
	if !ok {
		if r, _ := utf8.DecodeRuneInString(p.text[at:]); (r == utf8.RuneError || strings.ContainsRune("-–—…(/±", r) || p.text[at:] != "" && stopsAt(p.text[at:])) && implied[larger.Symbol] != "" && n.value.Cmp(big.NewRat(60, 1)) < 0 {
			return implied[larger.Symbol], n.end
		}
		return "", 0
	}
	for _, s := range spellings[m.key] {
		if s.unit.Dimension == larger.Dimension && slices.Contains(allowed, s.unit.Symbol) {
			return s.unit.Symbol, m.end
		}
	}
	return "", 0
}

func stopsAt(text string) bool {
	return slices.ContainsFunc(stopwords, func(word string) bool { return hasWord(text, word) })
}

// quietly reads something that may turn out not to belong: nothing is reported
// unless it was read clean.
func (p *parser) quietly(read func(*parser) (number, bool)) (number, bool) {
	q := &parser{text: p.text, pos: p.pos, want: p.want, wants: p.wants}
	n, ok := read(q)
	if !ok || len(q.problems) > 0 {
		return number{}, false
	}
	p.pos = q.pos
	return n, true
}

// unify gives figures without a unit that of the other; it reports a figure that has none at all.
func (p *parser) unify(terms ...*term) bool {
	var unit Unit
	bad := false
	for _, t := range terms {
		if t.unit.Dimension != None {
			unit = t.unit
		}
		bad = bad || t.bad
	}
	if bad {
		return false
	}
	if unit.Dimension == None {
		p.missing(terms[0].start, terms[len(terms)-1].numberEnd)
		return false
	}
	// A figure without a unit takes the next one's, the last takes the one before.
	for i := len(terms) - 1; i >= 0; i-- {
		if terms[i].unit.Dimension == None {
			terms[i].unit = unit
		}
		unit = terms[i].unit
	}
	return true
}

func (p *parser) missing(start, end int) {
	// What stands there instead of a unit is told by finish.
	if left := p.rest()[spaces(p.rest()):]; left != "" && !strings.ContainsAny(left[:1], "(/)=") {
		p.unitless = true
		return
	}
	p.unitless = true
	help := p.writeOne()
	if usual := p.usual(); len(usual) > 0 && p.want != Any {
		usual = slices.Clone(usual)
		for i, symbol := range usual {
			usual[i] = quoted(withUnit(clip(p.text[start:end], 24), symbol, " "))
		}
		help = "Write " + either(usual) + whichever(usual)
	}
	p.fail(Missing, start, end, quoted(p.text[start:end])+" has no unit", help)
}
