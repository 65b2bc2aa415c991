package draft

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// Kinds of what is taken from notes.
const (
	Torque   = "torque"
	Size     = "size"
	Range    = "range"
	Fluid    = "fluid"
	Amount   = "amount"
	Count    = "count"
	Interval = "interval"
	Tool     = "tool"
	Part     = "part"
	Hazard   = "hazard"
	Action   = "action"
	Wait     = "wait"
	Ask      = "question"
)

// Taken is one thing that was taken from the notes.
type Taken struct {
	Kind       string
	Value      string // as benchleaf writes it
	About      string // what it belongs to
	Start, End int    // its words in the notes, in bytes
	Line       int    // counted from 1
	Question   string // of a question, as a technician asks it
	sentence   int
	noun       string // of a size, the noun it was told of
}

type itemKind int

const (
	amountItem itemKind = iota
	threadItem
	classItem
	fluidItem
	toolItem
	partItem
)

// item is a thing found among the words.
type item struct {
	kind     itemKind
	from, to int
	amount   amount
	text     string // of a thread or a class
	fluid    fluid
	tool     toolRow
	part     part
	used     bool
}

// scan finds the things in the words, none over another.
func scan(words []word) []item {
	var out []item
	for at := 0; at < len(words); {
		it := item{from: at}
		switch {
		case func() bool { f, ok := fluidAt(words, at); it.kind, it.fluid, it.to = fluidItem, f, f.to; return ok }():
		case func() bool {
			text, to := threadAt(words, at)
			it.kind, it.text, it.to = threadItem, text, to
			return to > at
		}():
		case func() bool {
			text, to := classAt(words, at, out)
			it.kind, it.text, it.to = classItem, text, to
			return to > at
		}():
		case func() bool { row, n := toolAt(words, at); it.kind, it.tool, it.to = toolItem, row, at+n; return n > 0 }():
		case func() bool { a, ok := amountAt(words, at); it.kind, it.amount, it.to = amountItem, a, a.to; return ok }():
		case func() bool { p, n := partAt(words, at); it.kind, it.part, it.to = partItem, p, at+n; return n > 0 }():
		default:
			at++
			continue
		}
		out = append(out, it)
		at = max(it.to, at+1)
	}
	return out
}

// taker takes from the words of notes what belongs to a job.
type taker struct {
	notes     string
	words     []word
	items     []item
	standings []standing
	out       []Taken
	deeds     []deed

	topic        part // what is spoken of: the last thing that is no fastener
	fastener     part // the last fastener
	last         part
	cavity       string
	fluidOf      fluid
	torque       string
	section      part // what this place of the notes is about: "Gearboxes.", "Belt's a wide one"
	begun        int  // word at which the section began
	mentions     []mention
	sections     []section
	raised       string // what was raised last
	primeName    string
	headName     string
	machineName  string
	machineKnown bool
	headKnown    bool
	pulled       string // what a force was told of
	pto          bool
	energyName   string
	driven       bool // by an engine or a battery
	drivenKnown  bool
	outer        part // the heading over several things: "Filters"
	voice        int  // 1 spoken, 2 in short, 0 not looked at
}

// mention is a place where a part is named.
type mention struct {
	part
	from, to int
	place    bool
}

func take(notes string) *taker {
	words := aboard(split(notes))
	t := &taker{notes: notes, words: words}
	if t.spoken() {
		numbersHeard(words)
		partsHeard(words)
		phrasesHeard(words)
	} else {
		lengthened(words)
	}
	t.items, t.standings = scan(words), stand(words)
	slips(words, t.items, t.standings)
	t.walk()
	t.sizesOfTools()
	t.due()
	t.named()
	t.hazards()
	t.questions()
	slices.SortStableFunc(t.out, func(a, b Taken) int { return a.Start - b.Start })
	return t
}

// add keeps what was taken from the words from to to.
func (t *taker) add(kind, value, about string, from, to int) {
	for i := from; i < to && i < len(t.words); i++ {
		if s := t.standings[i]; s == denied || s == slip || s == story && kind != Hazard {
			return
		}
	}
	t.put(kind, value, about, from, to)
}

func (t *taker) put(kind, value, about string, from, to int) {
	to = min(max(to, from+1), len(t.words))
	for i := len(t.out) - 1; i >= 0 && len(t.out)-i < 400; i-- {
		if one := t.out[i]; one.Kind == kind && one.Value == value && t.words[from].start < one.End && one.Start < t.words[to-1].end {
			return
		}
	}
	t.out = append(t.out, Taken{Kind: kind, Value: value, About: about, Start: t.words[from].start, End: t.words[to-1].end, Line: t.words[from].line, sentence: t.words[from].sentence, noun: t.last.head})
}

func (t *taker) ask(missing, about, question string, from, to int) {
	t.put(Ask, missing, about, from, to)
	t.out[len(t.out)-1].Question = question
}

// said gives the words from to to as they stand in the notes.
func (t *taker) said(from, to int) string {
	return t.notes[t.words[from].start:t.words[to-1].end]
}

// walk goes through the words in order: things, and deeds that begin at a word.
func (t *taker) walk() {
	next := 0
	for at := range t.words {
		t.sectionAt(at)
		for next < len(t.items) && t.items[next].from <= at {
			it := &t.items[next]
			t.thing(next, it)
			next++
		}
		t.toldByWords(at)
		t.deedAt(at)
	}
}

func (t *taker) live(from, to int) bool {
	for i := from; i < to; i++ {
		if t.standings[i] != holds {
			return false
		}
	}
	return true
}

func (t *taker) thing(number int, it *item) {
	switch it.kind {
	case partItem:
		t.partThing(number, it)
	case toolItem:
		t.toolThing(number, it)
	case fluidItem:
		t.fluidThing(it)
	case threadItem:
		if p, n := partAt(t.words, min(it.to, len(t.words)-1)); n > 0 && !endsHere(t.words, it.to) && (p.class == fastener || p.class != machinePart && p.class != placePart && p.class != cavityPart && p.class != raisedPart && p.bare && it.text[0] == 'M') {
			if p.class != fastener { // M12 pivot
				p.class = fastener
				if number+1 < len(t.items) && t.items[number+1].kind == partItem && t.items[number+1].from == it.to {
					t.items[number+1].part.class = fastener
				}
			}
			if name, ok := t.threaded(it.text, p.head); ok && p.bare {
				p.name, p.bare = name, false // the M6 nuts of before
				if number+1 < len(t.items) && t.items[number+1].kind == partItem && t.items[number+1].from == it.to {
					t.items[number+1].part.name, t.items[number+1].part.bare = name, false
				}
			}
			p = t.qualify(p)
			t.add(Size, it.text, p.name, it.from, it.to)
			if number > 0 && t.items[number-1].kind == amountItem && t.items[number-1].to == it.from && t.items[number-1].amount.low.whole && t.items[number-1].amount.low.int() > 1 {
				t.add(Count, t.items[number-1].amount.text(), p.name, t.items[number-1].from, it.to+n)
			}
			return
		}
		t.unnamedBolt(it)
		t.add(Size, it.text, t.subject(), it.from, it.to)
	case classItem:
		t.add(Size, it.text, t.subject(), it.from, it.to)
	case amountItem:
		if !it.used {
			t.amountThing(number, it)
		}
	}
}

// sentenceStart gives the first word of the sentence of a word.
func (t *taker) sentenceStart(at int) int { return sentenceStart(t.words, at) }

func sentenceStart(words []word, at int) int {
	for at > 0 && words[at-1].sentence == words[at].sentence {
		at--
	}
	return at
}

// startsSentence reports whether a word begins a sentence.
func (t *taker) startsSentence(at int) bool { return t.sentenceStart(at) == at }

// endOf gives the word behind the sentence of a word.
func (t *taker) endOf(at int) int {
	end := at
	for end < len(t.words) && t.words[end].sentence == t.words[at].sentence {
		end++
	}
	return end
}

// toldByWords takes what is told at a word by words alone: every year, same again.
func (t *taker) toldByWords(at int) {
	t.everyAt(at)
	t.sameAt(at)
	if t.standings[at] == holds {
		t.passiveAt(at)
		t.fineAt(at)
		t.renewedAt(at)
		t.toldAt(at)
		t.smearedAt(at)
		t.newOne(at)
		t.looked(at)
	}
}

// near reports whether a cue stands in the same sentence close before or behind some words.
func (t *taker) near(cue *phrases[bool], from, to, before, behind int) bool {
	sentence := t.words[from].sentence
	for i := max(from-before, 0); i < min(to+behind, len(t.words)); i++ {
		if (t.words[i].sentence == sentence || t.pausedBetween(i, from)) && (i < from || i >= to) && length(cue, t.words, i) > 0 {
			return true
		}
	}
	return false
}

// pausedBetween reports whether no more than one pause that is no mark of the notes parts two
// words that stand close.
func (t *taker) pausedBetween(a, b int) bool {
	if a > b {
		a, b = b, a
	}
	if b-a > 6 || t.words[b].sentence-t.words[a].sentence != 1 {
		return false
	}
	for i := a + 1; i <= b; i++ {
		if t.words[i].sentence != t.words[i-1].sentence {
			return t.words[i].paused
		}
	}
	return false
}

func (t *taker) inSentence(kind string, it *item) bool {
	for _, one := range t.out {
		if one.Kind == kind && one.sentence == t.words[it.from].sentence {
			return true
		}
	}
	return false
}

// sentences gives the text of each sentence, with its line.
func (t *taker) sentence(number int) (text string, line int) {
	first, last := -1, -1
	for i := range t.words {
		if t.words[i].sentence == number {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	if first < 0 {
		return "", 0
	}
	end := t.words[last].end
	for end < len(t.notes) {
		r, size := utf8.DecodeRuneInString(t.notes[end:])
		if !strings.ContainsRune(".!?)", r) {
			break
		}
		end += size
	}
	text = t.notes[t.words[first].start:end]
	if head, behind, ok := strings.Cut(text, "\n"); ok && t.words[last].timed {
		all := []string{head} // the times before the lines are not said
		for one := range strings.SplitSeq(behind, "\n") {
			all = append(all, timeStamp().ReplaceAllString(one, ""))
		}
		text = strings.Join(all, " ")
	}
	return strings.Join(strings.Fields(text), " "), t.words[first].line
}
