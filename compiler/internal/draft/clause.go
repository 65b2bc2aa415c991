package draft

import "strings"

// spoken reports whether notes are spoken or written out, and not in short: articles are as
// frequent in them as they are in speech.
func (t *taker) spoken() bool {
	if t.voice == 0 {
		articles, marks := 0, 0
		for i := range t.words {
			switch t.words[i].lower {
			case "the", "a", "an", "you", "it", "is", "that", "i", "this", "there":
				articles++
			}
			if t.words[i].stop != 0 && !t.words[i].paused && (i == 0 || t.words[i].line == t.words[i-1].line) {
				marks++
			}
		}
		t.voice = 1
		if articles*12 < len(t.words) && (marks*25 > len(t.words) || articles*25 < len(t.words)) {
			t.voice = 2
		}
	}
	return t.voice == 1
}

// stateAt reports whether a word that may be a verb tells a state: it's clean, is empty.
func (t *taker) stateAt(at int) bool {
	if at == 0 || t.words[at].stop != 0 {
		return false
	}
	before := t.words[at-1]
	if before.lower == "is" && before.raw == "" {
		return false // flat = change
	}
	return before.of && before.lower != "let" || stateBefore.has(before.lower) && !(before.lower == "are" || before.lower == "be") || before.lower == "be" && !passives.has(t.words[at].lower)
}

var (
	stateBefore = set("is are was be been it's that's they're looks look feels feel runs stays keep keeps too very nice pretty fairly")
	passives    = set("run")
)

// subjectAt is what the clause at a word is about: what it names before the word, or what was
// spoken of before.
func (t *taker) subjectAt(at int) (part, int, bool) {
	for i := len(t.mentions) - 1; i >= 0; i-- {
		m := t.mentions[i]
		if m.to > at {
			continue
		}
		if t.words[m.from].sentence != t.words[at].sentence || at-m.to > 9 {
			break
		}
		if m.place && m.from > 0 && !articles.has(t.words[m.from-1].lower) || clauseStart(t.words, at-1) > m.from && t.words[at-1].lower != "it" {
			continue
		}
		return m.part, m.from, true
	}
	first := clauseStart(t.words, at-1)
	if t.words[first].stop == ',' || first+1 < at && pronouns.has(t.words[first].lower) || at-first <= 1 {
		p, ok := t.meant(max(at-1, 0))
		return p, first, ok && at-first <= 3
	}
	return part{}, at, false
}

// passiveAt takes what is told of a thing as done to it: the pads get binned, the oil is changed,
// they want greasing, the shoes need a clean.
func (t *taker) passiveAt(at int) {
	aux := t.words[at].lower
	short := t.words[at].of || strings.HasSuffix(aux, "'re")
	wants := wanting.has(aux)
	if !wants && !passive.has(aux) && !short || at+1 >= len(t.words) || at == 0 && !short || t.words[at].stop != 0 && !short {
		return
	}
	next := at + 1
	for next < len(t.words)-1 && t.words[next].stop == 0 && (adverbs.has(t.words[next].lower) || wants && (t.words[next].lower == "to" || t.words[next].lower == "be" || t.words[next].lower == "a")) {
		next++
	}
	if t.words[next].stop != 0 || !t.live(at, next+1) {
		return
	}
	said := t.words[next].lower
	verb := participle(said)
	if verb == "" && wants && t.words[next-1].lower == "a" && actionWords()[said] {
		verb = said
	}
	if verb == "" || wants && strings.HasSuffix(said, "ed") && t.words[next-1].lower != "be" || !wants && !strings.HasSuffix(said, "ed") && otherForms()[said] == "" {
		return
	}
	if end := next + 1; !endsHere(t.words, end) && (t.words[end].lower == "for" && t.words[next].lower != "checked" || t.words[end].lower == "by" || t.words[end].lower == "from") {
		return // they are fitted by the dealer
	}
	if short && !strings.HasSuffix(aux, "'re") && !pronouns.has(aux) {
		if _, n := partAt(t.words, at); n == 0 {
			return
		}
	}
	p, from, ok := t.subjectAt(at)
	if short && at > 0 && !ok {
		if q, n := partAt(t.words, at); n == 1 {
			p, from, ok = t.qualify(q), at, true
		}
	}
	if !ok || p.name == "" {
		return
	}
	for _, row := range deedsBy()[verb] {
		end := next + 1
		if row.particles != "" {
			if endsHere(t.words, end) || !set(row.particles).has(t.words[end].lower) {
				continue
			}
			end++
		}
		if bad.has(said) && row.deed == "loosen" && p.class != fastener && p.class != plugPart && p.class != linePart && p.class != valvePart {
			continue // the belt is cracked
		}
		if deed := settle(row.deed, p.class); deed != "" && passiveDeeds.has(deed) {
			t.act(deed, p, min(from, at), end, false)
			return
		}
	}
}

var (
	passive = set("is are be gets get getting being")
	wanting = set("want wants need needs")
	adverbs = set("always usually all both only then also normally just be been being never")

	passiveDeeds = set("replace grease lubricate clean check inspect measure adjust tighten loosen remove refit sharpen flush drain disconnect connect bleed tension")
)

// renewedAt takes what is thrown away or made new: it's a new one, is scrap, goes in the bin,
// belts: new.
func (t *taker) renewedAt(at int) {
	n := length(renewals, t.words, at)
	if n == 0 || !t.live(at, at+n) {
		return
	}
	p, from, ok := t.renewedOf(at)
	if !ok || p.name == "" || p.class == machinePart || p.class == cavityPart || p.class == placePart {
		return
	}
	t.act("replace", p, from, at+n, false)
	if t.conditioned(from, at) {
		t.act("inspect", p, from, at+n, true)
	}
}

var renewals = cues("is always new|are always new|always a new one|replace as a pair|change as a pair|replace them as a pair|change both|put in the pair|put in a pair|change the pair|replace the pair|renew the pair|always the pair|always in pairs|do them as a pair|is a new one|it's a new one|a new one every|a new one each|new ones every|new one each|get a new one|put a new one|fit a new one|fit new ones|put new ones|it's new ones|is scrap|it's scrap|are scrap|goes in the bin|go in the bin|goes in the scrap|go in the scrap|in the bin with it|bin it|bin them|scrap it|scrap them|chuck it|chuck them|is finished|it's finished|it's had it|has had it|is knackered|it's knackered|it's done for|are done for|wants a new one|needs a new one|want new ones|need new ones|gets a new one|get new ones|time for a new one|time for new ones|new one goes in|new one goes on|new ones go in|new ones go on|put the new one|fit the new one|they go as a set|go as a set|change them as a set|changed as a set|always as a set|swap as set|change as set|replace as set|change the set")

// renewedOf is what is made new at a word: what its sentence names last, or what is spoken of.
func (t *taker) renewedOf(at int) (part, int, bool) {
	if w := t.words[at].lower; w == "it" || wanting.has(w) {
		for _, m := range t.mentions { // the seal, if there is a drip under the stem, it wants a new one
			if t.words[m.from].sentence == t.words[at].sentence && m.to <= at && !m.place && (t.startsSentence(m.from) || m.from > 0 && articles.has(t.words[m.from-1].lower) && t.startsSentence(m.from-1)) && m.class != machinePart && m.class != cavityPart && m.class != placePart {
				return m.part, m.from, true
			}
		}
	}
	for i := len(t.mentions) - 1; i >= 0 && t.words[at].sentence-t.words[t.mentions[i].from].sentence <= 1; i-- {
		m := t.mentions[i]
		if m.to > at || m.place || m.class == placePart || m.class == machinePart || m.class == cavityPart || features.has(m.head) {
			continue
		}
		if t.section.name != "" && m.from < t.begun {
			break
		}
		from := at
		if t.words[m.from].sentence == t.words[at].sentence && at-m.from < 12 {
			from = m.from
		}
		return m.part, from, true
	}
	if t.section.name != "" && t.section.class != machinePart && t.section.class != cavityPart {
		return t.section, at, true
	}
	return part{}, 0, false
}

// fineAt takes what is looked at whether it is well, in notes in short: locking pins ok?, lights work.
func (t *taker) fineAt(at int) {
	if !t.spoken() && well.has(t.words[at].lower) && t.words[at].stop == 0 && at > 0 && endsHere(t.words, at+1) && t.live(at, at+1) {
		if n := len(t.mentions); n > 0 && t.mentions[n-1].to == at && !t.mentions[n-1].place && t.mentions[n-1].class != machinePart && t.mentions[n-1].class != cavityPart {
			verb := "check"
			if w := t.words[at].lower; w == "clear" || w == "clean" {
				verb = "inspect"
			}
			t.act(verb, t.mentions[n-1].part, t.mentions[n-1].from, at+1, false)
		}
	}
	if w := t.words[at]; !t.spoken() && w.lower == "new" && (endsHere(t.words, at+1) || t.words[at+1].lower == "every" || t.words[at+1].lower == "each" || t.words[at+1].lower == "if") && t.live(at, at+1) && (w.stop != 0 || t.endsName(at) || at > 0 && (t.words[at-1].lower == "is" || t.words[at-1].times)) {
		p, from, ok := t.postposed(at, at+1)
		if !ok && t.section.name != "" {
			p, from, ok = t.section, at, true
		}
		if ok && p.class != machinePart && p.class != cavityPart && p.name != "" {
			t.act("replace", p, min(from, at), at+1, false)
			if at > 1 && t.words[at-1].lower == "is" && bad.has(t.words[at-2].lower) {
				t.act("inspect", p, at-2, at+1, true)
			}
		}
	}
}

var well = set("ok okay good secure tight free working works clear clean fine")

// conditioned reports whether an "if" with a bad state stands between two words.
func (t *taker) conditioned(from, to int) bool {
	cond := false
	for i := max(from, 0); i < to; i++ {
		cond = cond || t.words[i].lower == "if" || t.words[i].lower == "when" || t.words[i].lower == "any"
		if cond && (bad.has(t.words[i].lower) || defects.has(t.words[i].lower)) {
			return true
		}
	}
	return false
}

// postposed is what a verb without an object is told of: what its sentence began with, or what
// the notes came to: chain - clean, lube; plugs replace every 200 hours; rpl if worn.
func (t *taker) postposed(at, end int) (part, int, bool) {
	if !endsHere(t.words, end) {
		next := t.words[end].lower
		_, named := partAt(t.words, end)
		if curt := !t.spoken() && named == 0 && !articles.has(next) && (t.words[at].stop != 0 || at == 0 || t.words[at-1].lower == "and"); !curt && !behindVerb.has(next) && !numeric(next) && smalls()[next] == 0 {
			return part{}, 0, false
		}
	}
	w := t.words[at].lower
	if at > 1 && t.words[at].stop == 0 && speakers.has(t.words[at-1].lower) && len(t.mentions) > 0 { // the foam you wash in …
		if m := t.mentions[len(t.mentions)-1]; m.to == at-1 && !m.place && t.words[at-1].stop == 0 {
			return m.part, end, true
		}
	}
	if len(t.mentions) == 0 || nounVerbs.has(w) && t.words[at].stop == 0 && !(at > 0 && (t.words[at-1].lower == "and" || t.words[at-1].lower == "to")) && !(!t.spoken() && t.endsName(at)) || w == "test" || at > 0 && t.words[at].stop == 0 && !beforeVerb.has(t.words[at-1].lower) && !t.endsName(at) {
		return part{}, 0, false
	}
	if t.spoken() && t.words[at].stop == 0 && !t.endsName(at) {
		return part{}, 0, false
	}
	var first *mention
	for i := len(t.mentions) - 1; i >= 0; i-- {
		m := &t.mentions[i]
		if t.words[m.from].sentence != t.words[at].sentence {
			break
		}
		if m.to <= at && !m.place && m.class != machinePart && m.class != placePart && (first == nil || first.class == fastener) {
			first = m
		}
	}
	switch {
	case first != nil && (t.startsSentence(first.from) || first.from > 0 && t.startsSentence(first.from-1) || t.words[first.from].stop != 0 || !t.spoken()) && at-first.to <= 12:
		return first.part, end, true
	case first == nil && !t.spoken() && t.section.name != "" && t.words[at].sentence-t.words[t.section.from].sentence <= 2 && t.section.class != machinePart && (t.startsSentence(at) || t.words[at].stop != 0):
		return t.section, end, true
	}
	return part{}, 0, false
}

var (
	speakers   = set("you i we")
	behindVerb = set("weekly daily monthly yearly annually if every each when once with and at then or till until before after only unless as first by for in it's them")
	beforeVerb = set("is and then or to just also always")
)

// endsName reports whether the name of a part ends before a word.
func (t *taker) endsName(at int) bool {
	for i := len(t.mentions) - 1; i >= 0 && t.mentions[i].to > at-2; i-- {
		if t.mentions[i].to == at {
			return true
		}
	}
	return false
}

// further takes what else the same deed is done to: clean the bowl, the screen and the float.
func (t *taker) further(verb string, at int) {
	if verb == "run" || verb == "start" {
		return
	}
	for range 5 {
		next, ok := t.nextOfList(at)
		if !ok {
			return
		}
		bare := next
		for bare < len(t.words)-1 && t.words[bare].stop == 0 && articles.has(t.words[bare].lower) && !pronouns.has(t.words[bare].lower) || bare == next && bare < len(t.words)-1 && articles.has(t.words[bare].lower) {
			bare++
		}
		if bare >= len(t.words) || bare > next && t.words[bare].stop != 0 {
			return
		}
		p, n := partAt(t.words, bare)
		end := bare + n
		if n == 0 {
			if bare == next || !listedVerbs.has(verb) {
				return
			}
			if p, end, ok = t.openObject(next); !ok {
				return
			}
		} else if p.class == placePart || p.class == machinePart {
			return
		}
		if !endsHere(t.words, end) && (finite.has(t.words[end].lower) || t.words[end].of) || t.words[end-1].of {
			return // and the other end is free
		}
		if !endsHere(t.words, end) && t.words[end].lower == "same" {
			return // new washer, and the fill plug same as the drain
		}
		t.act(verb, t.qualify(p), at, end, false)
		at = end
	}
}

// nextOfList gives the word at which the next thing of a list begins.
func (t *taker) nextOfList(at int) (int, bool) {
	if !endsHere(t.words, at) && t.words[at].lower == "for" { // check the hoses for chafing, the clips …
		at++
		for skipped := 0; !endsHere(t.words, at) && skipped < 3 && t.words[at].lower != "and" && !articles.has(t.words[at].lower); skipped++ {
			at++
		}
	}
	if at >= len(t.words) || t.words[at].stop == '.' {
		return 0, false
	}
	switch w := t.words[at]; {
	case w.lower == "and" || w.lower == "plus":
		at++
		if at < len(t.words) && (t.words[at].lower == "on" || t.words[at].lower == "then" || t.words[at].lower == "also") {
			at++
		}
	case w.stop == ',' || articles.has(w.lower) && !pronouns.has(w.lower):
		if !t.listGoesOn(at) {
			return 0, false
		}
	default:
		return 0, false
	}
	return at, at < len(t.words)-1 && t.words[at].stop != '.'
}

// listGoesOn reports whether a list that goes on at a word ends with "and" and a name, with no
// verb before it.
func (t *taker) listGoesOn(at int) bool {
	for i := at; i < min(at+12, len(t.words)-1) && t.words[i].stop != '.'; i++ {
		w := t.words[i].lower
		if w == "and" {
			next := t.words[i+1].lower
			_, n := partAt(t.words, i+1)
			return articles.has(next) || n > 0
		}
		if actionWords()[w] && !bothWays()[w] && !isHead(t.words[i].stem) || finite.has(w) || pronouns.has(w) && w != "that" && w != "this" {
			return false
		}
	}
	return false
}

// listedVerbs are deeds whose list may name things that no table knows.
var listedVerbs = set("check inspect clean grease lubricate")

// finite are words behind a name that say something of it.
var finite = set("is are has have had was were gets get got takes take takes wants want needs need goes go comes come off on out in up down back should must can will would does do holds hold sits sit stays looks off")

// due takes filters of which no more is told than when they are due: they are renewed.
func (t *taker) due() {
	for i, s := range t.sections {
		if s.class != filterPart || s.head != "element" && s.head != "cartridge" && s.head != "filter element" && !strings.HasSuffix(s.name, "element") {
			continue
		}
		end := len(t.words)
		if i+1 < len(t.sections) {
			end = t.sections[i+1].at
		}
		told := false
		for _, d := range t.deeds {
			told = told || d.from >= s.at && d.from < end && (d.part.name == s.name || d.verb == "replace" || d.verb == "clean" || d.verb == "inspect")
		}
		for _, one := range t.out {
			if from, _ := t.wordsOf(one.Start, one.End); !told && one.Kind == Interval && one.About == s.name && from >= s.at && from < end {
				t.act("replace", s.part, s.from, s.to, true)
				break
			}
		}
	}
}
