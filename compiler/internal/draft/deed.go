package draft

import "strings"

// deedAt takes what is done by the verb at a word.
func (t *taker) deedAt(at int) {
	w := t.words[at]
	if w.of || t.standings[at] != holds {
		return
	}
	for _, row := range deedsBy[w.lower] {
		if row.particles == "" && (nounHere(t.words, at) || at > 0 && w.stop == 0 && notBeforeVerb[t.words[at-1].lower]) {
			continue
		}
		if t.deedBy(at, row) {
			return
		}
	}
}

// deedBy takes one row of the table at a word, and reports whether it held.
func (t *taker) deedBy(at int, row deedRow) bool {
	end := at + 1
	if row.particles != "" {
		particle := t.particleBehind(at, row.particles)
		if particle < 0 {
			return false
		}
		end = particle + 1
	}
	p, to, ok := t.object(at+1, end)
	if !ok {
		return false
	}
	to = max(to, end)
	verb := settle(row.deed, p.class)
	switch verb {
	case "":
		return false
	case "chock":
		t.actOn("chock", plural(strings.TrimSuffix(p.name, "s")), p, at, to, false)
		t.add(Tool, "wheel chock", p.name, at, to)
		return true
	}
	if row.deed == "pumpout" {
		t.add(Tool, "oil pump", p.name, at, to)
	}
	t.act(verb, p, at, to, false)
	return true
}

// particleBehind finds a particle of a verb: take it OFF, pull the plug wire OFF.
func (t *taker) particleBehind(at int, particles string) int {
	want := set(particles)
	for i := at + 1; i < len(t.words) && i < at+7; i++ {
		w := t.words[i]
		if w.stop != 0 || i > at+1 && actionWords[w.lower] && !bothWays[w.lower] {
			return -1
		}
		if want[w.lower] {
			return i
		}
		if i > at+1 && (w.lower == "and" || w.lower == "then") {
			return -1
		}
	}
	return -1
}

// object finds what a deed is done to: a part named between the verb and its particle or right
// behind, "it" and "them", or what is spoken of.
func (t *taker) object(from, end int) (part, int, bool) {
	stop := end
	for i := from; i < len(t.words) && i < end+5; i++ {
		w := t.words[i]
		if w.stop != 0 || i >= end && (breaks[w.lower] || actionWords[w.lower] && !bothWays[w.lower]) {
			break
		}
		if p, n := partAt(t.words, i); n > 0 {
			p = t.qualify(p)
			if of, ok := t.ofWhat(p.to); ok && p.bare && (t.words[p.to].lower == "of" || p.class == fastener) {
				p.name, p.bare = of.name+" "+p.head, false
			}
			return p, i + n, true
		}
		if pronouns[w.lower] {
			if t.last.name == "" {
				return part{}, 0, false
			}
			return t.last, max(i+1, stop), true
		}
		if !articles[w.lower] && !adjectives[w.lower] && i >= end && !small[w.lower] {
			break
		}
	}
	return part{}, 0, false
}

var pronouns = set("it that them those this these 'em")

var adjectives = set("of little big old new small good bad whole all both top bottom left right front rear up down out in on back each other last first second only just round over at for")

var small = set("two three four five six seven eight nine ten one")

// notBeforeVerb are words that a verb does not follow: "the drain", "of grease", "a check".
var notBeforeVerb = set("the a an of no some new old little big for by with this that my your its our their any each every number lithium in on")

// nounHere reports whether a word that may be a deed is a thing: nothing follows that could be done.
func nounHere(words []word, at int) bool {
	if !bothWays[words[at].lower] && !nounVerbs[words[at].lower] {
		return false
	}
	if at+1 >= len(words) || words[at+1].stop != 0 {
		return true
	}
	next := words[at+1].lower
	return !articles[next] && next != "all" && next != "both" && small[next] == false && heads[words[at+1].stem] == plainPart && !modifiers[next]
}

// nounVerbs are verbs that are as often nouns.
var nounVerbs = set("grease oil drain fill run check test start stop change record note log mark sign lock dust brush vacuum look level measure gauge wash tension support rest top line set block dress")

// deedsBy are the rows of deeds by the forms of their verbs.
var deedsBy = func() map[string][]deedRow {
	out := map[string][]deedRow{}
	for _, particles := range []bool{true, false} {
		for _, row := range deedRows {
			if (row.particles != "") == particles {
				for verb := range set(row.verbs) {
					out[verb] = append(out[verb], row)
				}
			}
		}
	}
	return out
}()
