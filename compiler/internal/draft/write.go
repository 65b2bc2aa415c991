package draft

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"benchleaf/compiler/internal/quantity"
	"benchleaf/schema"
)

// writer writes what was taken as a procedure.
type writer struct {
	t     *taker
	out   strings.Builder
	kinds map[string]string // short name → table it is described in
	order []string          // short names in the order in which they are first needed
	said  map[string]string // short name → how it was called
	gaps  []Taken           // what is asked beside a gap, and not by the notes
	// what the file writes, by a first writing; nil in that
	written map[string]bool
}

// width is how long a line of a comment gets.
const width = 100

// text writes the whole file, and gives what it asks beside its gaps.
func (t *taker) text() (string, []Taken) {
	_, first := t.body(nil)
	w, body := t.body(valuesIn(first)) // once more, with what is written nowhere told beside its sentence
	if at := foreignAt(t.words); at >= 0 {
		w.gap(askLanguage, "notes", "Only English is read, and these notes seem to be in another language: what is missing here? Write them in English and draft them again.", at)
	}
	w.head()
	return w.out.String() + body, w.gaps
}

// body writes all but the head.
func (t *taker) body(written map[string]bool) (*writer, string) {
	w := &writer{t: t, kinds: map[string]string{}, said: map[string]string{}, written: written}
	t.describe(w)
	w.procedure()
	w.steps()
	w.things()
	body := w.out.String()
	w.out.Reset()
	return w, body
}

var quotedValue = pattern(`"((?:[^"\\]|\\.)+)"|^count = (\d+)`)

// valuesIn gives the texts and counts that a draft writes, without its comments.
func valuesIn(body string) map[string]bool {
	out := map[string]bool{}
	for line := range strings.Lines(body) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		code, _, _ := strings.Cut(line, " # ")
		for _, found := range quotedValue().FindAllStringSubmatch(code, -1) {
			out[found[1]+found[2]] = true
		}
	}
	return out
}

// gap gives the question of a gap. Where the notes ask for it themselves theirs is given, and it is
// not asked again.
func (w *writer) gap(missing, about, question string, at int) string {
	if said := w.t.question(missing, about, ""); said != "" {
		return said
	}
	if !slices.ContainsFunc(w.gaps, func(one Taken) bool { return one.Value == missing && one.About == about }) && at < len(w.t.words) {
		w.gaps = append(w.gaps, Taken{Kind: Ask, Value: missing, About: about, Question: question, Start: w.t.words[at].start, End: w.t.words[at].end, Line: w.t.words[at].line})
	}
	return plain(question)
}

// firstOf gives the word at which a thing is first worked on.
func (t *taker) firstOf(called string) int {
	for _, d := range t.deeds {
		if d.part.name == called || cavityName(d.part.name) == called {
			return d.from
		}
	}
	return 0
}

func (w *writer) line(format string, args ...any) { fmt.Fprintf(&w.out, format+"\n", args...) }

// comment writes words as a comment, on as many lines as they take.
func (w *writer) comment(text string) {
	line := "#"
	for _, word := range strings.Fields(plain(text)) {
		if len(line)+1+len(word) > width && line != "#" {
			w.line("%s", line)
			line = "#  "
		}
		line += " " + word
	}
	w.line("%s", line)
}

// plain leaves nothing in a text that a comment or a text of one line cannot hold.
func plain(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == unicode.ReplacementChar || r == '\u2028' || r == '\u2029' {
			return ' '
		}
		return r
	}, text)
}

// value writes a key with its text; a gap where the text is empty, with what is asked beside it.
func (w *writer) value(key, text, beside string) {
	line := key + " = " + strconv.Quote(plain(text))
	if beside != "" {
		line += " # " + plain(beside)
	}
	w.line("%s", line)
}

func (w *writer) list(key string, names []string) {
	var quotedNames []string
	for _, name := range names {
		quotedNames = append(quotedNames, strconv.Quote(name))
	}
	w.line("%s = [%s]", key, strings.Join(quotedNames, ", "))
}

func (w *writer) head() {
	w.line("# A draft out of notes. Each sentence stands over what was taken from it, with its line in the notes.")
	w.line("# Every \"\" is a gap; what is asked stands beside it. benchleaf lint names those that are left.")
	open := open(w.t.out, w.gaps)
	if len(open) > 0 {
		w.line("#")
		w.line("# What the notes leave open:")
		for _, one := range open {
			w.comment(fmt.Sprintf("line %d: %s", one.Line, one.Question))
		}
	}
	w.line("")
	w.line("benchleaf = %d", schema.Version)
}

func (w *writer) procedure() {
	t := w.t
	w.line("\n[procedure]")
	w.value("title", "", "the job, beginning with the action")
	w.value("machine", t.machine(), blankOr(t.machine(), "what the machine is called in the shop"))
	w.value("revision", "", "mark of this version, such as A")
	w.value("date", "", "day of this version, without quotes")
	w.value("author", "", "who wrote it")
	w.value("who", "", "who may do it")
	w.value("hands-on", t.handsOn(), blankOr(t.handsOn(), "how long it takes"))
	every := t.every()
	switch len(every) {
	case 0:
		w.value("every", "", "when it is due again")
	case 1:
		w.value("every", every[0], "")
	default:
		w.list("every", every)
	}
	w.value("manual", "", "where the machine's own manual tells of it")
	w.list("tools", w.named("tool"))
	w.list("supplies", append(w.named("fluid"), w.named("supply")...))
	w.list("spares", w.named("spare"))
	w.list("wear", t.worn())
	w.list("cautions", t.cautions())
}

func blankOr(text, beside string) string {
	if text == "" {
		return beside
	}
	return ""
}

// named gives the short names that are described in tables of a kind.
func (w *writer) named(kind string) []string {
	var out []string
	for _, name := range w.order {
		if w.kinds[name] == kind {
			out = append(out, name)
		}
	}
	return out
}

// handsOn is the time the whole job takes, where it was told.
func (t *taker) handsOn() string {
	for _, one := range t.out {
		if one.Kind == Wait && one.About == wholeJob && !strings.Contains(one.Value, " to ") {
			return one.Value
		}
	}
	return ""
}

// every gives the intervals of the whole job.
func (t *taker) every() []string {
	var out []string
	for _, one := range t.out {
		if one.Kind == Interval && one.About == wholeJob && readable(one.Value) && !slices.Contains(out, one.Value) && len(out) < 2 {
			out = append(out, one.Value)
		}
	}
	return out
}

const wholeJob = "whole job"

// readable reports whether benchleaf reads an amount as it stands.
func readable(text string) bool {
	_, problems := quantity.Parse(text, quantity.Any)
	return len(problems) == 0
}

func (t *taker) worn() []string {
	var out []string
	for _, one := range t.out {
		if row, ok := toolNames()[one.Value]; ok && one.Kind == Tool && row.wear != "" && !slices.Contains(out, row.wear) {
			out = append(out, row.wear)
		}
	}
	return out
}

func (t *taker) cautions() []string {
	var out []string
	for _, one := range t.out {
		if one.Kind == Hazard && !slices.Contains(out, one.Value) {
			out = append(out, one.Value)
		}
	}
	return out
}

// machine is what the notes call the machine: "this is the rear tine tiller".
func (t *taker) machine() string {
	if !t.machineKnown {
		t.machineName, t.machineKnown = t.findMachine(), true
	}
	return t.machineName
}

func (t *taker) findMachine() string {
	for i := range t.words {
		n := length(machineCues, t.words, i)
		if t.words[i].sentence > 2 {
			break
		}
		if n == 0 {
			continue
		}
		from := i + n
		for !endsHere(t.words, from) && (articles.has(t.words[from].lower) || adjectives.has(t.words[from].lower)) {
			from++
		}
		if from+2 < len(t.words) && t.words[from].lower == "number" { // number two belt
			if _, after := numberAt(t.words, from+1); after > from+1 && !endsHere(t.words, after) {
				from = after
			}
		}
		to := from
		for to < len(t.words) && to < from+6 && t.words[to].stop == 0 && !stopWords.has(t.words[to].lower) && !breaksAt(t.words, to) {
			if p, length := partAt(t.words, to); length > 0 && p.class == machinePart {
				return plain(t.said(from, p.to))
			}
			to++
		}
		if first := t.headed(); first != "" {
			return first
		}
		if to > from && to < from+6 && lettersOnly(t.words[to-1].lower) && t.words[to-1].stem != "service" && t.words[to-1].stem != "job" {
			return plain(t.said(from, to))
		}
	}
	return t.headed()
}

// headed is the machine of a heading: "pressure washer winter service", "Log splitter, …".
func (t *taker) headed() string {
	for i := 0; i < min(3, len(t.words)) && t.words[i].sentence == 0 && (i == 0 || t.words[i].stop == 0); i++ {
		if p, n := partAt(t.words, i); n > 0 && p.class == machinePart && p.head != "machine" && p.head != "engine" && p.head != "motor" && (i == 0 || lettersOnly(t.words[0].lower) && !stopWords.has(t.words[0].lower)) {
			return plain(t.said(0, p.to))
		}
	}
	for i := 0; i < min(8, len(t.words)) && t.words[i].sentence == 0; i++ {
		if w := t.words[i].stem; i > 0 && (w == "service" || w == "overhaul") && t.words[i].stop == 0 {
			to := i
			for to > 0 && (seasons.has(t.words[to-1].lower) || stopWords.has(t.words[to-1].lower)) {
				to--
			}
			from := 0
			for from < to && (stopWords.has(t.words[from].lower) || fillers.has(t.words[from].lower)) {
				from++
			}
			if from < to {
				return plain(t.said(from, to))
			}
		}
	}
	return ""
}

var machineCues = cues("this is|this is the|this is for the|this is our|this is my|it's the|doing the|service on the|here's the|notes on the|service of the")

var notName = pattern(`[^a-z0-9]+`)

// name makes a short name of how a thing is called.
func name(called string) string {
	short := strings.Trim(notName().ReplaceAllString(strings.ToLower(called), "-"), "-")
	if short == "" || !shortName().MatchString(short) {
		return "thing"
	}
	return short
}

var shortName = pattern(schema.NamePattern)

// need says that a thing is to be described, in a table of a kind, and gives its short name.
func (w *writer) need(kind, called string) string {
	short := name(called)
	if has, ok := w.kinds[short]; ok && has != kind {
		if kind == "cover" && has == "part" || kind == "part" && has == "cover" {
			return short
		}
		short += "-" + kind
	}
	if _, ok := w.kinds[short]; !ok {
		w.kinds[short] = kind
		w.said[short] = called
		w.order = append(w.order, short)
	}
	return short
}

// step is one deed as a step.
type step struct {
	deed
	key     string
	object  string
	lines   []string // further keys
	section string   // prepare, step or close
}

// describe works out the steps and every table that they name.
func (t *taker) describe(w *writer) {
	for _, one := range t.out {
		if one.Kind != Tool {
			continue
		}
		row := toolNames()[one.Value]
		switch row.kind {
		case "wear":
		case "supply":
			w.need("supply", one.Value)
		default:
			w.need("tool", one.Value)
		}
	}
	for _, f := range t.fluids() {
		w.need("fluid", f.name)
	}
	for i := range t.deeds {
		t.stepOf(w, &t.deeds[i])
	}
}

// stepOf turns a deed into a step of the language.
func (t *taker) stepOf(w *writer, d *deed) step {
	s := step{deed: *d, key: d.verb}
	verb, known := schema.FindVerb(d.verb)
	words := strings.Contains(verb.Object, "words")
	called := d.part.name
	if called == "" {
		called = d.object
	}
	switch {
	case !known:
		s.key, s.object = "say", capital(strings.TrimSpace(d.verb+" the "+d.object))+"."
	case d.verb == "wait":
		s.object = d.object
	case verb.Object == "energy":
		if d.object != noEnergy {
			s.object = w.need("energy", d.object)
		}
	case verb.Object == "cavity" && called == "":
	case verb.Object == "cavity":
		s.object = w.need("cavity", cavityName(called))
	case d.verb == "replace" && !t.fastened(called):
		s.object = w.need("spare", called)
	case words && d.object != called && d.object != plural(called):
		s.object = "the " + d.object // the gap of a spark plug
	case words && (d.part.class == coverPart && !strings.Contains(verb.Object, "cover") || !(strings.Contains(verb.Object, "part") && t.fastened(called))):
		s.object = "the " + d.object
	case d.part.class == coverPart && strings.Contains(verb.Object, "cover"):
		s.object = w.need("cover", called)
	default:
		s.object = w.need("part", called)
	}
	t.figuresOf(w, &s)
	return s
}

func capital(text string) string {
	if text == "" {
		return text
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

// cavityName gives a cavity the one name that it has in the draft.
func cavityName(called string) string {
	if called == "engine" {
		return "engine oil"
	}
	return called
}

// fastened reports whether a part is tightened, loosened, taken off or put back anywhere, so
// that it has a table of its own.
func (t *taker) fastened(called string) bool {
	return slices.ContainsFunc(t.deeds, func(d deed) bool {
		return d.part.name == called && (d.verb == "tighten" || d.verb == "loosen" || d.verb == "remove" || d.verb == "refit")
	})
}

// energyAt is what a deed at a word cuts off or gives back: what its clause or its sentence names, else what was
// cut off before, else the one source of which the notes tell; noEnergy where none is told. What is
// ruled out names none.
func (t *taker) energyAt(at int) string {
	if at < len(t.words) {
		found := append(t.switchedIn(clauseStart(t.words, at), clauseEnd(t.words, at+1)), t.switchedIn(max(t.sentenceStart(at), at-30), min(t.endOf(at), at+30))...)
		if len(found) > 0 {
			t.energyName = found[0].name
			return t.energyName
		}
	}
	if t.energyName == "" {
		t.energyName = noEnergy
		for _, row := range energies {
			if t.liveCue(row.said, 0, len(t.words)) {
				t.energyName = row.name
				break
			}
		}
	}
	return t.energyName
}

// switchedIn gives what words between two places tell that is switched.
func (t *taker) switchedIn(from, to int) []energyRow {
	var out []energyRow
	for _, row := range switched {
		if t.liveCue(row.said, from, to) && !(row.kind == "" && t.otherwiseDriven()) {
			out = append(out, row)
		}
	}
	return out
}

// otherwiseDriven reports whether the notes speak of an engine or a battery, so that a switch may be theirs.
func (t *taker) otherwiseDriven() bool {
	if !t.drivenKnown {
		t.drivenKnown, t.driven = true, t.engined() || wordIn(t.words, "battery")
	}
	return t.driven
}

// noEnergy stands for a source of energy that is not told.
const noEnergy = "power"

// liveCue reports whether a phrase that is not ruled out begins between two words.
func (t *taker) liveCue(said *phrases[bool], from, to int) bool {
	for at := from; at < to; at++ {
		if n := length(said, t.words, at); n > 0 && t.standings[at] != denied && t.standings[at] != slip && t.standings[at] != story {
			return true
		}
	}
	return false
}

// figuresOf gives a step the figures that stand with it.
func (t *taker) figuresOf(w *writer, s *step) {
	takes := func(key string) bool {
		verb, _ := schema.FindVerb(s.key)
		return slices.Contains(verb.Takes, key)
	}
	// the nearest of its kind that stands close to the deed, within its sentence
	one := func(key, kind string, fits func(Taken) bool) {
		if !takes(key) {
			return
		}
		best, far := "", 14
		for _, taken := range t.out {
			if taken.Kind != kind || taken.sentence != s.sentence || !readable(taken.Value) || !fits(taken) {
				continue
			}
			from, to := t.wordsOf(taken.Start, taken.End)
			if away := max(from-s.to, s.from-to, 0); away < far {
				best, far = taken.Value, away
			}
		}
		if best != "" {
			s.lines = append(s.lines, key+" = "+strconv.Quote(best))
		}
	}
	switch s.key {
	case "run", "start":
		for _, taken := range t.out {
			if taken.Kind == Wait && taken.sentence == s.sentence && readable(taken.Value) && taken.Start >= t.words[s.from].start {
				key, value := "least", taken.Value
				if bare, ok := strings.CutPrefix(value, "max "); ok {
					key, value = "most", bare
				}
				s.lines = append(s.lines, key+" = "+strconv.Quote(value))
				return
			}
		}
		one("set", Range, func(taken Taken) bool {
			a, problems := quantity.Parse(taken.Value, quantity.Any)
			return len(problems) == 0 && (a.Dimension == quantity.Pressure || a.Dimension == quantity.RotationalSpeed)
		})
		if s.key == "run" {
			s.lines = append(s.lines, `least = "" # `+w.gap(askRun, s.deed.object, fmt.Sprintf("How long does the %s run?", thing(s.deed.object)), s.from))
		}
	case "drain":
		if into := t.container(s.from); into != "" {
			s.lines = append(s.lines, "into = "+strconv.Quote(w.need("tool", into)))
		} else {
			s.lines = append(s.lines, `into = "" # `+w.gap(askContainer, s.deed.object, "What catches what runs out there?", s.from))
		}
	case "tighten":
		if len(t.about(Torque, s.part.name)) == 0 && t.byHand(s.part.name, s.deed) {
			s.lines = append(s.lines, `by-hand = "The notes say so"`)
		}
	case "fill":
		if f, ok := t.fluidFor(s.from, s.to, s.part.name); ok {
			s.lines = append(s.lines, "fluid = "+strconv.Quote(w.need("fluid", f.name)))
		} else {
			s.lines = append(s.lines, `fluid = "" # `+w.gap(askGrade, s.deed.object, fmt.Sprintf("Which fluid goes into the %s, of what grade?", thing(s.deed.object)), s.from))
		}
		one("amount", Amount, func(taken Taken) bool {
			return taken.About == s.part.name && !countedAmount(taken.Value) && len(t.conflicting(Amount, s.part.name)) == 0
		})
	case "grease", "lubricate":
		if f, ok := t.fluidFor(s.from, s.to, ""); ok && (f.kind == "grease" || s.key == "lubricate") {
			s.lines = append(s.lines, "fluid = "+strconv.Quote(w.need("fluid", f.name)))
		}
		one("amount", Amount, func(taken Taken) bool { return countedAmount(taken.Value) })
	case "check", "measure":
		if !strings.HasSuffix(s.deed.object, "level") && s.part.class != cavityPart {
			one("limit", Range, func(taken Taken) bool { return !strings.HasSuffix(taken.Value, "turn") })
		}
	case "adjust", "align", "tension":
		one("set", Range, func(taken Taken) bool { return !strings.HasSuffix(taken.Value, "turn") })
	}
}

// countedAmount reports whether an amount is counted in strokes or drops.
func countedAmount(value string) bool {
	return strings.Contains(value, "stroke") || strings.Contains(value, "drop")
}

// sectionOn gives the number of the section that a word stands in.
func (t *taker) sectionOn(word int) int {
	n := 0
	for n < len(t.sections) && t.sections[n].at <= word {
		n++
	}
	return n
}

// container is what catches a fluid that is let out at a word, where one is told in the same
// section, in its sentence or the ones beside it.
func (t *taker) container(word int) string {
	for _, one := range t.out {
		from, _ := t.wordsOf(one.Start, one.End)
		if one.Kind == Tool && toolNames()[one.Value].kind == "container" && t.sectionOn(from) == t.sectionOn(word) && one.sentence-t.words[word].sentence <= 2 && t.words[word].sentence-one.sentence <= 2 {
			return one.Value
		}
	}
	return ""
}

// question gives the question that asks for something of a thing, or other words where none does.
func (t *taker) question(missing, about, otherwise string) string {
	for _, one := range t.out {
		if one.Kind == Ask && one.Value == missing && (one.About == about || name(one.About) == about) {
			return plain(one.Question)
		}
	}
	return otherwise
}

// steps writes the sentences and the steps that were taken from them.
func (w *writer) steps() {
	t := w.t
	var all []step
	for i := range t.deeds {
		all = append(all, t.stepOf(w, &t.deeds[i]))
	}
	slices.SortStableFunc(all, func(a, b step) int { return a.from - b.from })
	for i := range all {
		if i > 0 && all[i].verb == "refit" && all[i-1].verb == "tighten" && all[i].part.name == all[i-1].part.name && all[i].sentence == all[i-1].sentence {
			all[i], all[i-1] = all[i-1], all[i]
			all[i].from, all[i-1].from = max(all[i].from, all[i-1].from), min(all[i].from, all[i-1].from)
		}
	}
	first, last := 0, len(all)
	for first < len(all) && makesSafe.has(all[first].verb) {
		first++
	}
	for last > first && closesUp.has(all[last-1].verb) {
		last--
	}
	for i := range all {
		switch {
		case i < first:
			all[i].section = "prepare"
		case i >= last:
			all[i].section = "close"
		default:
			all[i].section = "step"
		}
	}
	at := 0
	for from := 0; from < len(t.words); {
		to := from
		for to < len(t.words) && t.words[to].sentence == t.words[from].sentence {
			to++
		}
		begin := at
		for at < len(all) && all[at].from < to {
			at++
		}
		w.sentence(from, to, all[begin:at])
		from = to
	}
	if len(all) == 0 {
		w.line("\n[[step]]")
		w.value("say", "TODO: write what is done.", "nothing that is done could be taken from the notes")
	}
}

var makesSafe = set("run stop isolate prove relieve raise support lower disconnect close start chock wait")

var closesUp = set("restore connect open start run stop check inspect record lower measure dispose adjust sign close clean")

// long is how many words a sentence may have and still stand whole over its steps.
const long = 60

// sentence writes a sentence as a comment, and its steps below.
func (w *writer) sentence(from, to int, steps []step) {
	t := w.t
	w.line("")
	if len(steps) < 2 || to-from <= long {
		text, line := t.sentence(t.words[from].sentence)
		w.comment(fmt.Sprintf("Line %d: “%s”", line, text))
		w.figures(t.words[from].start, t.words[to-1].end)
		w.beside(from, to, steps)
		for i, s := range steps {
			if i > 0 {
				w.line("")
			}
			w.step(s)
		}
		return
	}
	for i, s := range steps {
		end := s.to
		if i+1 < len(steps) {
			end = t.whole(max(end, clauseStart(t.words, steps[i+1].from)))
		} else {
			end = to
		}
		if i > 0 {
			w.line("")
		}
		if end > from {
			w.comment(fmt.Sprintf("Line %d: “%s”", t.words[from].line, strings.Join(strings.Fields(t.said(from, end)), " ")))
			w.figures(t.words[from].start, t.words[end-1].end)
			w.beside(from, end, steps[i:i+1])
			s = steps[i]
			from = end
		}
		w.step(s)
	}
}

// whole moves an end of words that falls into a figure or a name behind it.
func (t *taker) whole(end int) int {
	for _, it := range t.items {
		if it.from < end && end < it.to {
			return it.to
		}
	}
	return end
}

// figures writes, under a sentence, the figures that were taken from it as they were read.
func (w *writer) figures(start, end int) {
	var list, lost []string
	for _, one := range w.t.out {
		switch one.Kind {
		case Torque, Size, Range, Fluid, Amount, Count, Interval, Wait:
			if one.Start >= start && one.Start < end {
				text := one.Kind + " " + one.Value
				if one.About != "" {
					text += " (" + one.About + ")"
				}
				if !slices.Contains(list, text) {
					if w.written == nil || w.wrote(one) {
						list = append(list, text)
					} else if !slices.Contains(lost, text) {
						lost = append(lost, text)
					}
				}
			}
		}
	}
	if len(lost) > 0 {
		list = append(list, "(not written: "+strings.Join(lost, "; ")+")")
	}
	if len(list) > 0 {
		w.comment("Read: " + strings.Join(list, "; "))
	}
}

// wrote reports whether a figure stands in the file, as a value of its own.
func (w *writer) wrote(one Taken) bool {
	value := one.Value
	if bare, ok := strings.CutPrefix(value, "max "); ok && w.written[bare] {
		return true
	}
	return w.written[value] || one.Kind == Fluid && (w.written["API "+value] || w.written[strings.ReplaceAll(value, " ", "-")] || w.written[strings.ToLower(value)])
}

// beside gives steps the tools and the warnings that stand with them in the notes.
func (w *writer) beside(from, to int, steps []step) {
	if len(steps) == 0 {
		return
	}
	t := w.t
	tools := make([][]string, len(steps))
	var warned []string
	for _, one := range t.out {
		if one.Start < t.words[from].start || one.Start >= t.words[to-1].end {
			continue
		}
		switch row := toolNames()[one.Value]; {
		case one.Kind == Hazard && !slices.Contains(warned, one.Value):
			warned = append(warned, one.Value)
		case one.Kind == Tool && row.kind != "wear" && row.kind != "container" && row.kind != "supply" && row.kind != "torque-wrench" && !sizeTool(row):
			at := 0
			for i := range steps {
				if t.words[steps[i].from].start <= one.Start {
					at = i
				}
			}
			if short := w.need("tool", one.Value); !slices.Contains(tools[at], strconv.Quote(short)) {
				tools[at] = append(tools[at], strconv.Quote(short))
			}
		}
	}
	for i := range steps {
		if len(tools[i]) > 0 {
			steps[i].lines = append(steps[i].lines, "tools = ["+strings.Join(tools[i], ", ")+"]")
		}
	}
	if len(warned) > 0 {
		var list []string
		for _, one := range warned {
			list = append(list, strconv.Quote(one))
		}
		steps[0].lines = append(steps[0].lines, "cautions = ["+strings.Join(list, ", ")+"]")
	}
}

func (w *writer) step(s step) {
	w.line("[[%s]]", s.section)
	beside := ""
	if s.object == "" && s.part.class == energyPart {
		beside = w.gap(askEnergy, noEnergy, "Which energy is cut off there: the mains, an engine, a battery, air or hydraulics?", s.from)
	}
	if s.object == "" && s.key == "drain" {
		beside = w.gap(askGrade, "drained", "What is drained there, out of what?", s.from)
	}
	w.value(s.key, s.object, beside)
	for _, line := range s.lines {
		w.line("%s", line)
	}
}

// about gives what was taken of a kind that belongs to a thing.
func (t *taker) about(kind, called string) []Taken {
	var out []Taken
	for _, one := range t.out {
		if one.Kind == kind && one.About == called {
			out = append(out, one)
		}
	}
	return out
}

// things writes the tables of what the steps name.
func (w *writer) things() {
	for _, kind := range []string{"energy", "cavity", "cover", "part", "tool", "fluid", "supply", "spare"} {
		for _, short := range w.order {
			if w.kinds[short] != kind {
				continue
			}
			w.line("\n[%s.%s]", kind, short)
			w.thing(kind, short, w.said[short])
		}
	}
}

func (w *writer) thing(kind, short, called string) {
	t := w.t
	switch kind {
	case "energy":
		row := energyRow{}
		for _, one := range energies {
			if one.name == called {
				row = one
			}
		}
		w.value("kind", row.kind, blankOr(row.kind, "electric, engine, hydraulic …"))
		w.value("isolate", "", "how it is cut off and locked")
		w.value("prove", "", "how it is shown to be off")
		w.value("restore", "", "how it is given back")
	case "cavity":
		w.value("title", called, "")
		if f, ok := t.fluidOfCavity(called); ok {
			w.value("fluid", w.need("fluid", f.name), "")
		}
		capacity := ""
		bare := strings.TrimSuffix(called, " oil")
		for _, one := range append(t.about(Amount, called), t.about(Amount, bare)...) {
			if readable(one.Value) {
				capacity = one.Value
				break
			}
		}
		if len(t.conflicting(Amount, called)) > 0 {
			capacity = ""
		}
		w.value("capacity", capacity, blankOr(capacity, t.question(askConflict, called, w.gapOf(capacity, askAmount, called, "How much does the %s take?"))))
	case "cover", "part":
		w.part(called)
	case "tool":
		row := toolNames()[called]
		w.value("title", called, "")
		w.value("kind", row.kind, "")
		if row.kind == "container" {
			holds := ""
			for _, one := range t.about(Amount, called) {
				if readable(one.Value) {
					holds = one.Value
				}
			}
			if holds != "" {
				w.value("holds", holds, "")
			}
		}
		if sizeTool(row) {
			sizes := t.sizesOf(called)
			if len(sizes) > 0 {
				w.list("sizes", sizes)
			} else {
				w.value("sizes", "", "what size")
			}
		}
	case "fluid":
		for _, f := range t.fluids() {
			if f.name == called {
				w.value("title", called, "")
				w.value("kind", f.kind, w.gapAt(f))
				if f.grade != "" {
					w.value("grade", f.grade, "")
				}
				if f.service != "" {
					w.value("service", f.service, "")
				}
				if f.thickener != "" {
					w.value("thickener", f.thickener, "")
				}
				return
			}
		}
		w.value("title", called, "")
		w.value("kind", "", "what it is")
	default:
		w.value("title", called, "")
	}
}

// gapOf gives the question for what a thing has no value of.
func (w *writer) gapOf(value, missing, called, format string) string {
	if value != "" || len(w.t.conflicting(Amount, called)) > 0 {
		return ""
	}
	return w.gap(missing, called, fmt.Sprintf(format, called), w.t.firstOf(called))
}

// gapAt gives the question for the kind of a fluid.
func (w *writer) gapAt(f told) string {
	if f.kind != "" {
		return ""
	}
	at, _ := w.t.wordsOf(f.at, f.end)
	return w.gap(askKind, f.grade, fmt.Sprintf("Which oil is the %s: hydraulic, gear, compressor?", f.grade), at)
}

func (w *writer) part(called string) {
	t := w.t
	w.value("title", called, "")
	for _, one := range t.about(Count, called) {
		if n, err := strconv.Atoi(one.Value); err == nil && n > 0 {
			w.line("count = %d", n)
			break
		}
	}
	thread, across, class := "", "", ""
	for _, one := range t.about(Size, called) {
		switch {
		case threadLike(one.Value):
			thread = one.Value
		case classLike(one.Value):
			class = one.Value
		case readable(one.Value) && across == "":
			across = one.Value
		}
	}
	if across != "" && t.socketHead(called) {
		w.value("head", "socket", "")
	}
	for _, row := range [][2]string{{"thread", thread}, {"class", class}, {"across", across}} {
		if row[1] != "" {
			w.value(row[0], row[1], "")
		}
	}
	torques := t.torquesOf(called)
	switch {
	case len(t.conflicting(Torque, called)) > 0:
		w.value("torque", "", t.question(askConflict, called, "how tight"))
	case len(torques) > 0 && readable(torques[0].Value):
		w.value("torque", torques[0].Value, "")
	case len(torques) > 0:
		w.value("torque", "", t.question(askUnit, called, "you said "+torques[0].Value+": of what?"))
	case slices.ContainsFunc(t.deeds, func(d deed) bool { return d.part.name == called && d.verb == "tighten" }):
		if !slices.ContainsFunc(t.deeds, func(d deed) bool { return d.part.name == called && d.verb == "tighten" && t.byHand(called, d) }) {
			w.value("torque", "", w.gap(askTorque, called, fmt.Sprintf("How tight does the %s go: to what torque, or by hand only?", called), t.firstOf(called)))
		}
	}
}

// socketHead reports whether a part is turned with a hexagon key.
func (t *taker) socketHead(called string) bool {
	for _, size := range t.about(Size, called) {
		for _, one := range t.out {
			if one.Kind == Tool && one.Value == "hex key" && one.sentence == size.sentence && one.Start <= size.End+2 && size.Start <= one.End+2 {
				return true
			}
		}
	}
	return false
}

func threadLike(text string) bool {
	return strings.HasPrefix(text, "M") && !strings.HasPrefix(text, "Morse") || strings.Contains(text, "/") && strings.Contains(text, "-") && !strings.Contains(text, " ")
}

func classLike(text string) bool {
	return strings.Contains(text, "grade") || slices.Contains(classes, text)
}

// sizesOf gives the sizes that were told with a tool.
func (t *taker) sizesOf(called string) []string {
	var out []string
	for _, one := range t.out {
		if one.Kind != Tool || one.Value != called {
			continue
		}
		for _, size := range t.out {
			if _, tool := toolNames()[size.About]; size.Kind == Size && tool && size.About != called {
				continue // that of another tool
			}
			if size.Kind == Size && size.About == called && size.sentence == one.sentence && readable(size.Value) && !slices.Contains(out, size.Value) {
				out = append(out, size.Value)
			}
			if size.Kind == Size && size.sentence == one.sentence && size.Start <= one.End && one.Start <= size.End+12 && readable(size.Value) && !slices.Contains(out, size.Value) {
				out = append(out, size.Value)
			}
		}
	}
	return out
}

// told is a fluid with all that was told of it.
type told struct {
	name, kind, grade, service, thickener string
	about                                 string // the cavity it was told of
	at                                    int    // first place in bytes
	end                                   int
	open                                  bool // nothing tells its kind
}

// fluids gives the fluids of the notes: each grade with the service and the thickener beside it.
func (t *taker) fluids() []told {
	var out []told
	for _, it := range t.items {
		if it.kind != fluidItem || !t.live(it.from, it.to) {
			continue
		}
		f := it.fluid
		start, end := t.words[it.from].start, t.words[it.to-1].end
		near := func() *told {
			if len(out) > 0 && start-out[len(out)-1].end < 40 && out[len(out)-1].kind == f.kind {
				return &out[len(out)-1]
			}
			return nil
		}
		switch f.what {
		case servicePart:
			if one := near(); one != nil && one.service == "" {
				one.service, one.end = "API "+f.grade, end
				continue
			}
			out = append(out, told{kind: f.kind, service: "API " + f.grade, at: start, end: end})
		case thickenerPart:
			if one := near(); one != nil && one.thickener == "" {
				one.thickener, one.end = strings.ReplaceAll(f.grade, " ", "-"), end
				continue
			}
			out = append(out, told{kind: f.kind, thickener: strings.ReplaceAll(f.grade, " ", "-"), at: start, end: end})
		case gradePart:
			if one := near(); one != nil && one.grade == "" {
				one.grade, one.end = f.grade, end
				continue
			}
			out = append(out, told{kind: f.kind, grade: f.grade, at: start, end: end, open: f.open})
		case productPart:
			out = append(out, told{name: f.grade, kind: f.kind, at: start, end: end})
		}
	}
	for i := range out {
		for _, one := range t.out {
			if one.Kind == Fluid && one.Start == out[i].at {
				out[i].about = one.About
			}
		}
		if out[i].open {
			out[i].kind = oilIn(out[i].about)
		}
		if out[i].name == "" {
			out[i].name = strings.TrimSpace(strings.ReplaceAll(cmp.Or(out[i].kind, "oil"), "-", " ") + " " + out[i].grade)
		}
	}
	return out
}

// oilIn is the kind of oil that a cavity holds, "" where its name does not tell.
func oilIn(cavity string) string {
	switch {
	case strings.Contains(cavity, "gearbox") || strings.Contains(cavity, "gear case") || strings.Contains(cavity, "differential"):
		return "gear-oil"
	case strings.Contains(cavity, "compressor"):
		return "compressor-oil"
	case strings.Contains(cavity, "hydraulic"):
		return "hydraulic-oil"
	}
	return ""
}

// fluidFor gives the fluid that is told of a cavity, or of what is greased where none is given: the
// nearest in the same section.
func (t *taker) fluidFor(from, to int, cavity string) (told, bool) {
	var best told
	far, found := 1000, false
	for _, f := range t.fluids() {
		word, end := t.wordsOf(f.at, f.end)
		away := max(word-to, from-end, 0)
		same := t.sectionOn(word) == t.sectionOn(from) || away < 10 || cavity != "" && f.about == cavity
		if f.kind == "other" || !same || cavity != "" && f.kind == "grease" || strings.Contains(cavity, "cool") != (f.kind == "coolant") || away >= far {
			continue
		}
		best, far, found = f, away, true
	}
	return best, found
}

func (t *taker) fluidOfCavity(called string) (told, bool) {
	for _, d := range t.deeds {
		if d.verb == "fill" && cavityName(d.part.name) == called {
			return t.fluidFor(d.from, d.to, d.part.name)
		}
	}
	return told{}, false
}

// energyRow is a source of energy by the words that tell of it.
type energyRow struct {
	name, kind string
	said       *phrases[bool]
}

// switched are the words of a sentence that tell what its switch, key or plug cuts off. A row
// without a kind holds only where nothing else drives the machine.
var switched = []energyRow{
	{"tractor", "shaft", cues("pto|p t o|tractor")},
	{"battery", "battery", cues("battery isolator|battery switch|battery master|battery disconnect")},
	{"hydraulics", "hydraulic", cues("hydraulic lever|hydraulic pressure|hydraulic isolator|hydraulic supply|hydraulics off|hydraulic valve")},
	{"air", "pneumatic", cues("compressed air|air line|air supply|air off|air isolator|air valve")},
	{"mains", "electric", cues("mains|main breaker|circuit breaker|rcd|fuse switch|out of the wall|at the wall|on the wall|unplug it|unplug the machine|electrics off|switchboard")},
	{"mains", "", cues("main switch|isolator|ice a later|eyes a later|distribution board|fuse board|breaker|the disconnect|pull the plug|mains plug|plug it out|plug pulled|pulled the plug|unplug|unplugged|mains switch|power switch|wall switch|power cord|power lead|power cable")},
}

var energies = []energyRow{
	{"controller", "electric", cues("controller")},
	{"mains", "electric", cues("isolator|ice a later|eyes a later|distribution board|fuse board|mains|circuit breaker|breaker off|the breaker in|plug it out|unplug it|unplug the machine|out of the wall|mains plug|loto|three phase|rcd|the disconnect|start button|starter button|green button|contactor|electric motor|knife switch")},
	{"tractor", "shaft", cues("pto|p t o|tractor")},
	{"engine", "engine", cues("engine|outboard|spark plug|plug wire|diesel|petrol|gasoline|ignition|pull cord")},
	{"mains", "electric", cues("switch on the wall|electrics|mains|socket outlet|plug it in")},
	{"battery", "battery", cues("battery|batteries")},
	{"air", "pneumatic", cues("compressed air|air line")},
	{"hydraulics", "hydraulic", cues("hydraulic pressure|hydraulic lever|hydraulic power|hydraulic supply|hydraulic isolator|hydraulic press|hydraulic unit|hydraulic pack")},
}
