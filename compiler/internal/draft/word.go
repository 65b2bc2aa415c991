package draft

import (
	"regexp"
	"strconv"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"
)

// word is one word of the notes, with its place in bytes.
type word struct {
	lower      string // in lower case, without dots inside an abbreviation and without 's
	stem       string // the same in the singular
	start, end int
	line       int    // counted from 1
	sentence   int    // counted from 0
	stop       byte   // the mark before it, 0 where there is none
	hyphen     bool   // joined to the word before by a hyphen
	of         bool   // has 's behind it
	timed      bool   // its line begins with a time
	paused     bool   // the mark before it is none of the notes, but a pause of the speaker
	times      bool   // a count by its x: x4, 3x
	raw        string // as it was written, "" for a sign
	either     bool   // a figure that may be a thousand or a decimal
}

// line is one line of the notes without the time before it.
type line struct {
	text    string
	at      int // of text in the notes
	number  int
	timed   bool
	empties int // empty lines before it
}

// lines cuts notes into lines and takes the times off their starts: "03:12", "[00:04:10]".
func lines(notes string) []line {
	var out []line
	at, empties, number := 0, 0, 0
	stamped, listed, item := false, numbered(notes), 1
	for at < len(notes) {
		end := strings.IndexByte(notes[at:], '\n')
		text := notes[at:]
		if end >= 0 {
			text = notes[at : at+end]
		}
		next := at + len(text) + 1
		number++
		stamp := timeStamp().FindStringIndex(text)
		one := line{text: text, at: at, number: number}
		if stamp != nil {
			one.text, one.at, one.timed = text[stamp[1]:], at+stamp[1], true
		}
		if mark := listMark().FindStringSubmatch(one.text); item <= listed && mark != nil && mark[1] == strconv.Itoa(item) {
			one.text, one.at = one.text[len(mark[0]):], one.at+len(mark[0])
			item++
		}
		if strings.TrimSpace(one.text) == "" {
			if stamp != nil {
				stamped = true // a time on a line of its own
			} else {
				empties++
			}
		} else {
			one.timed = one.timed || stamped
			stamped = false
			one.empties, empties = empties, 0
			out = append(out, one)
		}
		at = next
	}
	return out
}

// numbered gives how many lines of notes are numbered one after another from 1: "1. …", "2 …";
// 0 where they are no list.
func numbered(notes string) int {
	next := 1
	for text := range strings.Lines(notes) {
		if mark := listMark().FindStringSubmatch(text); mark != nil && mark[1] == strconv.Itoa(next) {
			next++
		}
	}
	if next < 5 {
		return 0
	}
	return next - 1
}

// split gives the words of notes, each with its line and its sentence.
func split(notes string) []word {
	all := lines(notes)
	marks := strings.Count(notes, ". ") + strings.Count(notes, ".\n")
	punctuated := marks*60 > len(strings.Fields(notes))
	wrapped := broken(all)
	flows := captioned(all, punctuated)
	long := len(all) > 0 && len(notes) > 70*len(all)
	var out []word
	sentence := 0
	for i, one := range all {
		if i > 0 {
			before := strings.TrimRight(all[i-1].text, " \t\r")
			first, _ := utf8.DecodeRuneInString(strings.TrimSpace(one.text))
			goesOn := one.empties == 0 && unicode.IsLower(first) && !strings.ContainsAny(before[len(before)-1:], ".?!:") && (one.timed || flows || punctuated && wrapped[i])
			if goesOn && one.timed && !punctuated && long && !continuing.has(firstWord(one.text)) {
				goesOn = false // a caption of several words by itself
			}
			if !goesOn && one.empties == 0 && unitGoesOn(all[i-1], one) {
				goesOn = true
			}
			if !goesOn {
				sentence++
			}
		}
		first := len(out)
		out, sentence = appendWords(out, one, sentence)
		if first < len(out) {
			if first > 0 && out[first].sentence != out[first-1].sentence && out[first].stop == 0 {
				out[first].stop = '.'
			}
		}
	}
	doubtful(out)
	if !punctuated {
		paused(out)
	}
	return out
}

// unitGoesOn reports whether a line ends with a figure and the next begins with its unit.
func unitGoesOn(before, next line) bool {
	last := before.text[strings.LastIndexByte(strings.TrimRight(before.text, " \t\r"), ' ')+1:]
	words, _ := appendWords(nil, line{text: strings.TrimSpace(last)}, 0)
	if len(words) != 1 || !numeric(words[0].lower) && smalls()[words[0].lower] == 0 && scales()[words[0].lower] == 0 {
		return false
	}
	words, _ = appendWords(words, line{text: strings.TrimSpace(next.text[:min(len(next.text), 40)])}, 0)
	if len(words) < 2 {
		return false
	}
	words[1].start = words[0].end + 1
	_, unit := unitAt(words, 1)
	return unit > 0 && len(words[1].lower) > 2
}

// continuing are words with which a line goes on with the one before.
var continuing = set("and or but because which that to of in on at with for from than so till until then")

func firstWord(text string) string {
	text, _, _ = strings.Cut(strings.TrimSpace(text), " ")
	return strings.ToLower(text)
}

// captioned reports whether the lines of notes without marks are captions, each of as many words
// as fit, and no list: they begin in lower case, and their lengths are alike.
func captioned(all []line, punctuated bool) bool {
	if punctuated || len(all) < 6 {
		return false
	}
	lower, fitting := 0, 0
	longest := 0
	for _, one := range all {
		longest = max(longest, len(strings.TrimSpace(one.text)))
	}
	for _, one := range all {
		text := strings.TrimSpace(one.text)
		first, _ := utf8.DecodeRuneInString(text)
		if unicode.IsLower(first) || unicode.IsDigit(first) {
			lower++
		}
		if len(text)*2 > longest && !strings.ContainsAny(text, ":=") {
			fitting++
		}
	}
	return longest < 100 && lower*10 > len(all)*8 && fitting*10 > len(all)*7
}

// paused parts speech that was written down without marks where a speaker goes on to something
// else: now, okay so, and then you.
func paused(words []word) {
	shift, since := 0, 0
	for i := range words {
		w := &words[i]
		w.sentence += shift
		if i == 0 || w.sentence != words[i-1].sentence || w.stop != 0 {
			since = 0
			continue
		}
		since++
		if since < 3 {
			continue
		}
		switch {
		case length(pauses, words, i) > 0 && !beforePause.has(words[i-1].lower):
			w.stop, w.paused = '.', true
			w.sentence++
			shift++
			since = 0
		case newSubject(words, i) || ordered(words, i):
			w.stop, w.paused = '.', true
			w.sentence++
			shift++
			since = 0
		case length(halts, words, i) > 0 && !beforePause.has(words[i-1].lower):
			w.stop, w.paused = ',', true
		}
	}
}

// newSubject reports whether somebody who speaks without pauses begins a sentence at a word: the
// gearbox has …, these want …, behind words that are whole without them.
func newSubject(words []word, at int) bool {
	before := words[at-1].lower
	if prepositions.has(before) || beforePause.has(before) || determiners.has(before) || actionWords()[before] && !prepositions.has(before) && !particleWords.has(before) || finite.has(before) && !particleWords.has(before) || breaks.has(before) || beforeInfinitive.has(before) && before != "don't" || before == "as" || before == "like" || before == "of" || before == "all" || before == "only" {
		return false
	}
	i := at
	switch w := words[at].lower; {
	case w == "there's" || w == "there" && words[at].of:
		return true
	case w == "these" || w == "those" || w == "this":
	case w == "the" || w == "your" || w == "that":
		i++
		for n := 0; i < len(words)-1 && n < 3 && words[i].stop == 0 && !finite.has(words[i].lower) && !(n > 0 && tells(words, i)); n++ {
			if stopWords.has(words[i].lower) && !finite.has(words[i].lower) || prepositions.has(words[i].lower) || actionWords()[words[i].lower] && !isHead(words[i].stem) {
				return false
			}
			if words[i].of {
				return true // the drain's
			}
			i++
		}
		return i > at+1 && !endsHere(words, i) && (finite.has(words[i].lower) || tells(words, i)) && !prepositions.has(words[i].lower) && !particleWords.has(words[i].lower)
	default:
		return false
	}
	return !endsHere(words, i+1) && finite.has(words[i+1].lower) && !prepositions.has(words[i+1].lower) && !particleWords.has(words[i+1].lower)
}

// tells reports whether a word that no table knows is a verb behind its subject: the table rides on.
func tells(words []word, at int) bool {
	w := words[at]
	if w.stem == w.lower || isHead(w.stem) || modifiers.has(w.lower) || endsHere(words, at+1) {
		return false
	}
	next := words[at+1].lower
	return prepositions.has(next) || determiners.has(next)
}

// ordered reports whether somebody who speaks without pauses tells at a word what to do next:
// clean the slots, wipe them down, behind words that lead to no verb.
func ordered(words []word, at int) bool {
	w, before := words[at].lower, words[at-1].lower
	if words[at].stem != w && !kept.has(w) || prepositions.has(w) || particleWords.has(w) && w != "back" || numeric(before) || smalls()[before] > 0 || denominators()[before] > 0 || !actionWords()[w] && !orderVerbs.has(w) || endsHere(words, at+1) || leadsToVerb.has(before) || prepositions.has(before) && !particleWords.has(before) && before != "in" && before != "on" || determiners.has(before) || modifiers.has(words[at-1].stem) && !isHead(words[at-1].stem) && !particleWords.has(before) && before != "bar" && !states.has(before) || actionWords()[before] && !particleWords.has(before) && !isHead(words[at-1].stem) && !states.has(before) || describing.has(before) || words[at-1].of || stateBefore.has(before) || breaks.has(before) {
		return false
	}
	next := words[at+1].lower
	return determiners.has(next) || next == "it" || next == "them" || next == "those" || next == "these"
}

var (
	determiners = set("the a an your every each both all any no some another my our")
	orderVerbs  = set("mind watch use get put take wear leave keep grab give send make")
	leadsToVerb = set("to you we i they he she it and or then not don't never just can could will would must should might may please who which that always also let let's you'll we'll i'll they'll gonna wanna you'd we'd don't doesn't go come help if when while until till once before after as so but do does did what how where")
)

// broken reports of each line whether it goes on from the one before, which was broken because
// its next word had no room. Where few lines are, none is: they are a list.
func broken(all []line) map[int]bool {
	longest := 0
	for _, one := range all {
		longest = max(longest, len(strings.TrimSpace(one.text)))
	}
	out := map[int]bool{}
	for i := 1; i < len(all); i++ {
		word, _, _ := strings.Cut(strings.TrimSpace(all[i].text), " ")
		if len(strings.TrimSpace(all[i-1].text))+1+len(word) > longest {
			out[i] = true
		}
	}
	if longest > 120 || len(out)*3 < len(all) {
		return nil
	}
	return out
}

func appendWords(out []word, one line, sentence int) ([]word, int) {
	text := one.text
	var stop byte
	hyphen := false
	for at := 0; at < len(text); {
		r, size := utf8.DecodeRuneInString(text[at:])
		if said, end := short(text, at); end > at {
			out = append(out, word{lower: said, stem: said, start: one.at + at, end: one.at + end, line: one.number, timed: one.timed, sentence: sentence, stop: stop})
			at, stop, hyphen = end, 0, false
			continue
		}
		if quote := r == '"' && (at == 0 || text[at-1] < '0' || text[at-1] > '9'); quote || !wordRune(r) {
			switch r {
			case '.', '!', '?':
				if r == '.' && len(out) > 0 && out[len(out)-1].end == one.at+at && shortened(out[len(out)-1], text[at+1:]) {
					if last := &out[len(out)-1]; last.lower == "w" && (len(out) < 2 || !numeric(out[len(out)-2].lower)) {
						last.lower, last.stem = "with", "with"
					}
					break
				}
				if stop != '.' {
					stop = '.'
					sentence++
				}
			case '/':
				if at > 0 && text[at-1] == ' ' && at+1 < len(text) && text[at+1] == ' ' && stop == 0 {
					stop = ',' // 8 blocks / carriage
				}
			case ',', ';', ':', '(', ')', '–', '—', '…', '→', '>':
				if stop == 0 {
					stop = ','
				}
				if r == ':' && stop == ',' {
					stop = ':'
				}
			case '-', '‑':
				hyphen = at > 0 && text[at-1] != ' ' && at+1 < len(text) && text[at+1] != ' '
				if !hyphen && stop == 0 {
					stop = ','
				}
			}
			at += size
			continue
		}
		if whole, end := slashed(text, at); end > at {
			for said := range strings.FieldsSeq(whole) {
				out = append(out, word{lower: said, stem: singular(said), start: one.at + at, end: one.at + end, line: one.number, timed: one.timed, sentence: sentence, stop: stop})
				stop = 0
			}
			at, hyphen = end, false
			continue
		}
		end := wordEnd(text, at)
		for _, cut := range cuts(text[at:end]) {
			w := word{start: one.at + at, end: one.at + at + len(cut), line: one.number, timed: one.timed, sentence: sentence, stop: stop, hyphen: hyphen}
			w.lower = strings.ToLower(strings.ReplaceAll(cut, "’", "'"))
			if whole, ok := bareMarks()[w.lower]; ok {
				w.lower = whole
			}
			if bare, ok := strings.CutSuffix(w.lower, "'s"); ok {
				w.lower, w.of = bare, true
			}
			w.raw = cut
			w.lower = pointed(w.lower)
			if bare := strings.Trim(w.lower, "x×"); len(bare) < 3 && len(bare)+1 == len(w.lower) && figures(bare) && bare != "" {
				w.lower, w.times = bare, true // x4, 3x
			}
			w.lower = unabridged(w.lower)
			if !numeric(w.lower) && !pitched().MatchString(w.lower) {
				w.lower = strings.ReplaceAll(w.lower, ".", "")
			}
			w.stem = singular(w.lower)
			out = append(out, w)
			at += len(cut)
			stop, hyphen = 0, false
		}
	}
	return out, sentence
}

// short reads what typed notes write short with a mark: w/, +, #2, and .035.
func short(text string, at int) (string, int) {
	if before, _ := utf8.DecodeLastRuneInString(text[:at]); at > 0 && (wordRune(before) || before == '.') && text[at] != '+' {
		return "", at
	}
	r, size := utf8.DecodeRuneInString(text[at:])
	next, _ := utf8.DecodeRuneInString(text[at+size:])
	before := at == 0 || text[at-1] == ' '
	switch {
	case (r == '<' || r == '>' || r == '≤' || r == '≥') && before:
		behind := strings.TrimLeft(text[at+size:], " =")
		if figure, _ := utf8.DecodeRuneInString(behind); unicode.IsDigit(figure) || figure == '.' {
			return map[rune]string{'<': "under", '≤': "under", '>': "over", '≥': "minimum"}[r], len(text) - len(behind)
		}
	case strings.HasPrefix(text[at:], "+/-") && (at+3 >= len(text) || text[at+3] == ' ' || unicode.IsDigit(rune(text[at+3]))):
		return "±", at + 3
	case r == '±':
		return "±", at + size
	case r == '+' && at > 0 && unicode.IsDigit(rune(text[at-1])) && unicode.IsDigit(next):
		return "and", at + 1 // 8+10 spanners
	case signs()[r] != "" && before && (next == ' ' || r == '#' && unicode.IsDigit(next)):
		return signs()[r], at + size
	case (r == 'w' || r == 'W') && next == '/':
		if at+2 < len(text) && (text[at+2] == 'o' || text[at+2] == 'O') {
			return "without", at + 3
		}
		return "with", at + 2
	case r == '.' && before && unicode.IsDigit(next):
		end := at + 1
		for end < len(text) && text[end] >= '0' && text[end] <= '9' {
			end++
		}
		return "0" + text[at:end], end
	}
	return "", at
}

// bareMarks are words that are often typed without their mark.
var bareMarks = sync.OnceValue(func() map[string]string {
	return map[string]string{"dont": "don't", "doesnt": "doesn't", "cant": "can't", "wont": "won't", "isnt": "isn't", "arent": "aren't", "didnt": "didn't", "shouldnt": "shouldn't", "its": "it's", "thats": "that's", "theres": "there's", "youre": "you're", "theyre": "they're", "youll": "you'll", "whats": "what's"}
})

func wordRune(r rune) bool {
	return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '×' || r == '°' || r == 'µ' || r == '"' || r == '%' || r == '½' || r == '¼' || r == '¾'
}

// wordEnd gives the end of the word at a place: letters and figures, and what joins them.
func wordEnd(text string, at int) int {
	end := at
	for end < len(text) {
		r, size := utf8.DecodeRuneInString(text[end:])
		if wordRune(r) && !(r == '"' && end > at && (text[end-1] < '0' || text[end-1] > '9')) {
			end += size
			continue
		}
		next, _ := utf8.DecodeRuneInString(text[end+size:])
		before, _ := utf8.DecodeLastRuneInString(text[:end])
		figures := unicode.IsDigit(before) && unicode.IsDigit(next)
		letters := unicode.IsLetter(before) && unicode.IsLetter(next)
		single := letters && (end-at == 1 || text[end-2] == '.') // n.l.g.i.
		if (r == '\'' || r == '’') && letters || r == '/' && figures || r == ',' && figures && (thousands(text[end+size:]) || decimalComma(text, at, end)) || r == '.' && (figures || single) || r == '·' && letters {
			end += size
			continue
		}
		break
	}
	if end == at {
		_, size := utf8.DecodeRuneInString(text[at:])
		end += size
	}
	return end
}

// thousands reports whether three figures and no more begin a text: 2,000.
func thousands(text string) bool {
	n := 0
	for n < len(text) && text[n] >= '0' && text[n] <= '9' {
		n++
	}
	return n == 3
}

// decimalComma reports whether the comma at a place stands for a point: 1,4 litres, M8x1,25. Three
// figures behind it are a thousand, but for 0,125; several commas make a list, and so do sizes of
// spanners: 8,10.
func decimalComma(text string, at, comma int) bool {
	before, after := text[at:comma], text[comma+1:]
	if i := strings.LastIndexAny(before, "xX×"); i >= 0 {
		_, size := utf8.DecodeRuneInString(before[i:])
		before = before[i+size:]
	}
	n := 0
	for n < len(after) && after[n] >= '0' && after[n] <= '9' {
		n++
	}
	places, rest := after[:n], after[n:]
	if !figures(strings.ReplaceAll(before, ".", "")) || len(before) > 7 || n > 5 || strings.Contains(before, ".") && !dotted().MatchString(before) {
		return false
	}
	if at > 1 && text[at-1] == ',' && text[at-2] >= '0' && text[at-2] <= '9' || len(rest) > 1 && rest[0] == ',' && rest[1] >= '0' && rest[1] <= '9' {
		return false
	}
	return places == "5" || strings.HasPrefix(before, "0") || !sizesBehind().MatchString(rest)
}

var (
	dotted      = pattern(`^[1-9]\d{0,2}(\.\d{3})+$`)
	sizesBehind = pattern(`(?i)^ ?(mm|mil)?( (and|or|&) \d+\b[^,.]| (hex |allen |ring |open )?(spanner|socket|wrench|key)s?\b)`)
	comma       = pattern(`\d,(\d{1,2}|\d{4,})$|(^|\D)0,\d+$`)
	pitched     = pattern(`^m\d+(\.\d+)?[x×]\d+\.\d+$`)
	eitherWay   = pattern(`^[1-9]\d{0,2}[.,]\d{3}$`)
)

// pointed writes a figure that has a comma for its point with a point.
func pointed(text string) string {
	if !comma().MatchString(text) {
		return text
	}
	i := strings.LastIndexByte(text, ',')
	before := text[:i]
	if dotted().MatchString(before) {
		before = strings.ReplaceAll(before, ".", "")
	}
	return before + "." + text[i+1:]
}

// doubtful marks figures that may be a thousand or a decimal, in notes that write both ways: 1,250
// beside 1,4.
func doubtful(words []word) {
	commas := false
	for _, w := range words {
		commas = commas || comma().MatchString(w.raw)
	}
	if !commas {
		return
	}
	for i := range words {
		words[i].either = eitherWay().MatchString(words[i].raw)
	}
}

// cuts parts a figure from the unit that is written close to it: "85Nm", "10mm".
func cuts(text string) []string {
	n := 0
	for n < len(text) && (text[n] >= '0' && text[n] <= '9' || (text[n] == '.' || text[n] == '/' || text[n] == ',') && n+1 < len(text)) {
		n++
	}
	if n > 0 && n < len(text) {
		if unit := text[n:]; unitLetters.has(strings.ToLower(unit)) || unit == "C" || unit == "F" {
			return []string{text[:n], text[n:]}
		}
	}
	return []string{text}
}

func numeric(text string) bool {
	return text != "" && (text[0] >= '0' && text[0] <= '9')
}

// singular takes the plural off a noun, well enough for the nouns of the trade.
func singular(text string) string {
	if kept.has(text) || len(text) < 4 || strings.HasSuffix(text, "ss") || strings.HasSuffix(text, "us") || strings.HasSuffix(text, "is") {
		return text
	}
	if one, ok := plurals()[text]; ok {
		return one
	}
	for _, end := range []struct{ many, one string }{{"ies", "y"}, {"ches", "ch"}, {"shes", "sh"}, {"xes", "x"}, {"sses", "ss"}, {"s", ""}} {
		if bare, ok := strings.CutSuffix(text, end.many); ok && len(bare) > 1 {
			return bare + end.one
		}
	}
	return text
}

// phrases finds the longest of many phrases at a word. Words are compared as they are and in
// the singular; the words of a phrase stand close together.
type phrases[T any] struct {
	written string // phrases of one value, apart by |
	value   T
	fill    func(*phrases[T])
	once    sync.Once
	byFirst map[string][]phrase[T]
}

type phrase[T any] struct {
	words []string
	value T
}

func (p *phrases[T]) add(written string, value T) {
	words := strings.Fields(written)
	for i := range words {
		if whole, ok := bareMarks()[words[i]]; ok {
			words[i] = whole
		}
		words[i] = strings.TrimSuffix(words[i], "'s") // as the words of notes are kept
	}
	p.byFirst[words[0]] = append(p.byFirst[words[0]], phrase[T]{words, value})
}

// addAll adds each of several phrases, apart by |.
func (p *phrases[T]) addAll(written string, value T) {
	for one := range strings.SplitSeq(written, "|") {
		p.add(one, value)
	}
}

// make fills the table when it is first looked at.
func (p *phrases[T]) make() {
	p.byFirst = map[string][]phrase[T]{}
	if p.fill != nil {
		p.fill(p)
		return
	}
	p.addAll(p.written, p.value)
}

// at gives the longest phrase at a word with its length, 0 where there is none.
func (p *phrases[T]) at(words []word, at int) (value T, length int) {
	p.once.Do(p.make)
	look := func(first string) {
		for _, one := range p.byFirst[first] {
			if len(one.words) > length && rowOf(words, at, one.words) {
				value, length = one.value, len(one.words)
			}
		}
	}
	look(words[at].lower)
	if words[at].stem != words[at].lower {
		look(words[at].stem)
	}
	return value, length
}

// has reports whether one of the phrases begins at a word.
func (p *phrases[T]) has(words []word, at int) bool {
	if at < 0 || at >= len(words) {
		return false
	}
	_, n := p.at(words, at)
	return n > 0
}

func rowOf(words []word, at int, row []string) bool {
	if at+len(row) > len(words) {
		return false
	}
	for i, want := range row {
		w := &words[at+i]
		if w.lower != want && w.stem != want || i > 0 && w.stop != 0 {
			return false
		}
	}
	return true
}

// wordSet is a set of words. Like all tables of this package it is made when it is first looked at, so
// that a program that drafts nothing pays nothing for it.
type wordSet struct {
	written string
	apart   string // what stands between the words, where it is no space
	once    sync.Once
	words   map[string]bool
}

// set is one of single words.
func set(written string) *wordSet { return &wordSet{written: written} }

// names is one of names that may have several words, apart by |.
func names(written string) *wordSet { return &wordSet{written: written, apart: "|"} }

func (s *wordSet) all() map[string]bool {
	s.once.Do(s.make)
	return s.words
}

func (s *wordSet) make() {
	s.words = map[string]bool{}
	all := strings.Fields(s.written)
	if s.apart != "" {
		all = strings.Split(s.written, s.apart)
	}
	for _, one := range all {
		s.words[one] = true
	}
}

func (s *wordSet) has(word string) bool { return s.all()[word] }

func pattern(written string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(written) })
}

// lengthened gives words that are cut short in notes in short, with no mark behind them, their
// ends: "air filt", "tens bolt". The shortest word of the trade that begins so is meant.
func lengthened(words []word) {
	for i := range words {
		w := &words[i]
		if next := i + 1; w.lower == "q" && !endsHere(words, next) && (numeric(words[next].lower) || smalls()[words[next].lower] > 0) {
			w.lower, w.stem = "every", "every" // q 3 mo
		}
		if next := i + 1; !endsHere(words, next) && papers.has(words[next].lower) {
			switch strings.ToLower(w.raw) {
			case "sep":
				w.lower, w.stem = "separate", "separate" // sep. job
			case "diff":
				w.lower, w.stem = "different", "different" // diff. sheet
			}
		}
		if len(w.stem) < 4 || len(w.stem) > 5 || strings.HasSuffix(w.stem, "ll") || strings.HasSuffix(w.stem, "ss") || strings.HasSuffix(w.stem, "e") || !lettersOnly(w.stem) || known(words, i) {
			continue
		}
		if whole := beginning(w.stem); whole != "" {
			if w.stem != w.lower {
				w.lower = plural(whole)
			} else {
				w.lower = whole
			}
			w.stem = whole
		}
	}
}

// papers are words before which a short form says that it is another one.
var papers = set("job sheet card visit task page list item day machine one type model")

// known reports whether a word means something as it stands.
func known(words []word, at int) bool {
	w := words[at].lower
	_, head := heads()[words[at].stem]
	_, number := smalls()[w]
	_, tool := tools.at(words, at)
	_, unit := units.at(words, at)
	_, fluid := products.at(words, at)
	_, of := denominators()[w]
	return head || number || of || tool > 0 || unit > 0 || fluid > 0 || stopWords.has(w) || modifiers.has(w) || modifiers.has(words[at].stem) || actionWords()[w] || participle(w) != "" || describing.has(w) || vague.has(words[at].stem) || scales()[w] > 0 || bad.has(w) || defects.has(w) || dirt.has(w) || finite.has(w) || plainWords.has(w) || plainWords.has(words[at].stem)
}

// plainWords are short words that are whole.
var plainWords = set("link links with per then than when were only also read held hand high half heel body bent salt sand soft seal same side sign skin slow snug soon sure tall team than that them test text thin tick till time tire told took true type used vent very view wait walk wall want warm wash wear week well went west what when whom wide wife will wind wire wise wood word work yard year zero ask add age air all and any ate bad bag bay bed big bit box boy bus but buy car cat con cut day deck did dip dog dry due ear eat end eye fan far fat few fit fix fly for fun gas gap get god got gun guy had has hat hit hot how ice ill ink its job keep key kit lad law lay led leg let lid lie lip lit log lot low mad man map may mix mud new not now nut odd off oil old one our out own pan part past pay pet pin pit ply pot pro put ran raw red rid rim rip rob rod rot row rub run rut sad saw say sea see set sir sit six ski sky son sum sun tab tag tap tar tea ten the tie tin tip toe ton too top tow toy try two use van via war was wax way wet who why win won yes yet you back bare base beep best bite blow blue body bold bond boom both bulk burn bush busy calm came card care cart case cash cast cold come cook cool cost dark data date dead deal deep done down draw dual dull dust each easy east edge else even ever face fact fail fair fall farm fast feed feel feet felt file fill find fine fire firm five flat flow foam fold food fork form four free fuel full gave gear girl give glad glue goes gold gone good grey grip grow hair hang hard harm have head hear heat help here hide hill hire hold hole home hook hope hour huge idea idle inch into iron item join jump just kept kick kind knee know lack lake land last late lead leak lean left less life lift like line link list live load lock long look loop lose loss lost loud love made main make male many mark mass mean meet melt menu mess mile milk mind mine miss mode more most move much must name near neat neck need nest next nice nine none noon nose note okay once onto open oven over pack page paid pain pair park pass path peak pick pile pink pipe plan play plug plus poor pull pump pure push rack rain rare rate rear rent rest ride ring rise risk road rock roll roof room root rope rota rust safe sale seat seen self sell send sent ship shop shot show shut sick")

// beginning gives the shortest word of the trade that begins with a text and goes on by two
// letters or more; "" where there is none.
func beginning(text string) string {
	best := ""
	for _, whole := range skeletons()[text[0]] {
		if strings.HasPrefix(whole, text) && len(whole) > len(text)+1 && (best == "" || len(whole) < len(best) || len(whole) == len(best) && whole < best) {
			best = whole
		}
	}
	return best
}
