package state

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/source"
)

// part is how a part or a cover stands.
type part struct {
	off                            int // how many of it are off
	out, back                      int // how many came off and went back in all
	loose, hand, open              bool
	offAt, onAt, looseAt, handAt   *model.Step
	openAt, tightAt                *model.Step
	offPlace, loosePlace, handedAt source.Place
	openPlace                      source.Place
	refits                         int
	carried                        bool // went on with what it holds, and not by a step of its own
	let                            int  // how many are loose or only put in, and not tightened since
}

// cavity is how a place that holds a fluid stands.
type cavity struct {
	drained   bool
	drainedAt *model.Step
	place     source.Place
}

// energy is how a source of energy stands.
type energy struct {
	cut, proved, given bool // isolated, proved dead, given back after it was cut
	relieved           bool // what is stored was let out
	told               bool // that it still loads what hands work on
	cutAt, givenAt     *model.Step
	place              source.Place
}

// held is something raised, parted or slackened, by its words.
type held struct {
	at       *model.Step
	place    source.Place
	name     string
	of       *model.Part // what is parted, where it is a part
	supports bool
	bareAt   *model.Step // the step that took what supported it away
}

type walk struct {
	job       *model.Job
	parts     map[*model.Part]*part
	known     []*model.Part // in the order in which they are met
	cavities  map[*model.Cavity]*cavity
	pools     []*model.Cavity
	energies  map[*model.Energy]*energy
	sources   []*model.Energy
	raised    []*held
	parted    []*held
	joined    []string // what was connected that nothing had parted: a gauge, a load bank
	slack     []*held
	placed    []*placed
	taps      []*tap
	blockedAt *model.Step // the step whose words block a breather, until it is freed
	running   *model.Step // the step that set the machine going, until one stops it
	waiting   []waiting   // the waits that run, while steps are done meanwhile
	last      *model.Step // the step before
	out       Walk
	moments   int // steps done
	hands     func(*model.Step) (source.Place, bool)
}

// Of walks a job through. hands tells of a step whether it brings hands to where
// the machine moves, and by what.
func Of(job *model.Job, hands func(*model.Step) (source.Place, bool)) *Walk {
	w := &walk{job: job, parts: map[*model.Part]*part{}, cavities: map[*model.Cavity]*cavity{}, energies: map[*model.Energy]*energy{}, hands: hands}
	for _, step := range job.Steps {
		w.step(step)
		w.record()
	}
	w.end()
	w.chart()
	return &w.out
}

func (w *walk) step(step *model.Step) {
	found := len(w.out.Breaches)
	w.handsAgain(step)
	if len(w.out.Breaches) == found {
		w.handsRunning(step)
	}
	w.places(step)
	w.blocksVent(step)
	w.turnsTaps(step)
	w.unsupported(step)
	w.breaksWait(step)
	row := verbs[step.Verb.Key]
	for _, object := range step.Objects {
		for _, needs := range row.needs {
			needs(w, step, object)
		}
	}
	if len(w.out.Breaches) == found { // else one of them says it better
		w.twice(step)
	}
	for _, object := range step.Objects {
		for _, makes := range row.makes {
			makes(w, step, object)
		}
	}
	if step.Verb.Key == "wait" {
		w.waits(step)
	}
	w.last = step
}

// once are verbs that do nothing when they are done a second time at once.
var once = []string{"remove", "refit", "replace", "drain", "fill", "raise", "lower", "support", "open", "close", "disconnect", "connect", "isolate", "restore", "turn-over"}

// twice tells of a step that is the one before it once more, word for word.
func (w *walk) twice(step *model.Step) {
	if w.last == nil || w.last.Verb.Key != step.Verb.Key || !slices.Contains(once, step.Verb.Key) || len(step.Objects) == 0 {
		return
	}
	same := func(a, b model.Object) bool { return a.Text.Text == b.Text.Text }
	if slices.EqualFunc(step.Objects, w.last.Objects, same) && step.Say.Text == w.last.Say.Text && step.Count.N == w.last.Count.N &&
		step.Fluid.Text == w.last.Fluid.Text && step.Amount.Text.Text == w.last.Amount.Text.Text && step.Into.Text == w.last.Into.Text {
		w.breach(Twice, step, step.Objects[0].Text.At, step.Objects[0].Words(), "", w.last)
	}
}

// breach keeps a breach.
func (w *walk) breach(kind Kind, step *model.Step, place source.Place, thing, other string, since *model.Step) *Breach {
	w.out.Breaches = append(w.out.Breaches, Breach{Kind: kind, Step: step, Place: place, Thing: thing, Other: other, Since: since})
	return &w.out.Breaches[len(w.out.Breaches)-1]
}

// of is how a part stands; at the start it is on and tight, unless the start of the
// procedure says otherwise.
func (w *walk) of(p *model.Part) *part {
	if known, ok := w.parts[p]; ok {
		return known
	}
	made := &part{}
	if !w.foreign() && w.said(w.job.Procedure.Start, p.Words(), "off", "out", "removed", "apart", "hangs", "lies", "taken") {
		made.off = all(p)
	}
	if !w.foreign() && w.said(w.job.Procedure.Start, p.Words(), "open") {
		made.open = true
	}
	w.parts[p] = made
	w.known = append(w.known, p)
	return made
}

func (w *walk) pool(c *model.Cavity) *cavity { return met(w.cavities, &w.pools, c) }

func (w *walk) source(e *model.Energy) *energy { return met(w.energies, &w.sources, e) }

// met gives how a thing stands; one not met before is put behind the others.
func met[Thing, Stand any](known map[*Thing]*Stand, order *[]*Thing, thing *Thing) *Stand {
	if known[thing] == nil {
		known[thing] = new(Stand)
		*order = append(*order, thing)
	}
	return known[thing]
}

// all is how many pieces a part is; the count of a cover is of its fasteners.
func all(p *model.Part) int {
	if p.Cover {
		return 1
	}
	return p.Count.Or(1)
}

// some is how many a step acts on.
func some(step *model.Step, p *model.Part) int {
	if p.Cover || step.Count.N == 0 {
		return all(p)
	}
	return step.Count.N
}

// said reports whether a text of a list speaks of a thing with one of some words; in a
// language that is not read, whether it speaks of it at all.
func (w *walk) said(list model.List, thing string, words ...string) bool {
	for _, item := range list.Items {
		text := " " + plain(item.Text) + " "
		if !strings.Contains(text, plain(thing)) && !strings.Contains(text, head(thing)) && (noun(thing) == "" || !strings.Contains(text, " "+noun(thing)+" ")) {
			continue
		}
		if w.foreign() {
			return true
		}
		for _, word := range words {
			if strings.Contains(text, " "+word+" ") {
				return true
			}
		}
	}
	return false
}

// foreign reports whether the words of the job are in a language that is not read.
func (w *walk) foreign() bool { return w.job.Language() != model.English }

// plain is a text in small letters with single blanks and no marks.
func plain(text string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r > 127)
	}), " ")
}

// head is the last word of a name, which says what kind of thing it is.
func head(words string) string {
	fields := strings.Fields(plain(words))
	if len(fields) == 0 {
		return "\x00"
	}
	return " " + fields[len(fields)-1] + " "
}

// noun is the word that says what kind of thing a name is, in the singular: "belt" of
// "matched set of V-belts SPB 2650", "seal" of "hub seal 45 × 72".
func noun(words string) string {
	words, _, _ = strings.Cut(words, ",")
	for _, lot := range []string{"-set", "-kit", "-pair", " set", " kit", " pair", " assembly", " element", " cartridge", " insert"} { // a pad set is pads
		words = strings.TrimSuffix(words, lot)
	}
	if _, after, ok := strings.Cut(words, " of "); ok {
		words = after
	}
	last := ""
	for _, word := range strings.Fields(words) {
		word = word[strings.LastIndex(strings.TrimRight(word, "-"), "-")+1:]          // the belt of a V-belt
		if strings.ContainsAny(word, "0123456789") || strings.ToUpper(word) == word { // a size or a mark: "B 62"
			if last != "" {
				break
			}
			continue
		}
		last = strings.ToLower(word)
	}
	switch {
	case strings.HasSuffix(last, "ves"):
		return last[:len(last)-3] + "fe"
	case strings.HasSuffix(last, "ies"):
		return last[:len(last)-3] + "y"
	case strings.HasSuffix(last, "s") && !strings.HasSuffix(last, "ss"):
		return last[:len(last)-1]
	}
	return last
}

// kin reports whether two names are of the same kind of thing.
func (w *walk) kin(a, b string) bool {
	switch w.job.Language() {
	case model.English:
		return kin(a, b)
	case "de":
		return kinAtEnd(a, b)
	}
	return kinAtStart(a, b)
}

// kin is how it is told in English.
func kin(a, b string) bool {
	one := noun(a)
	return one != "" && one == noun(b)
}
