package state

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/source"
)

// placed is what holds a machine fast and has to come away again: a wedge or a locking
// pin in what turns, a chock or a stand under it.
type placed struct {
	at    *model.Step
	place source.Place
	name  string // as the author calls it
	under bool   // it stands on the floor, and the machine may run
	stays bool   // it does not come away by itself when the machine is let down
	said  string // the sentence that sets it, in small letters
}

// What goes into a machine to hold what turns, and what goes under it, by the names the
// trade has for them; common practice, no source. A pin or a bar is one that stays in
// unless the sentence says what it holds.
const (
	pins    = `(?:lock(?:ing)?|timing|setting|stop|holding) (?:pins?|bars?|tools?)`
	holders = `(wedges?|` + pins + `|(?:drum|rotor|blade|shaft|knife|wood|wooden|hardwood|timber|stop|blocking) blocks?|blocks?(?: of (?:wood|timber))|chuck keys?)\b`
	props   = `((?:wheel )?chocks?|(?:axle|jack|safety|support) stands?|stands?(?: (?:under|beneath|below))|trestles?|cribbing|safety (?:strut|prop|stop)s?|(?:cylinder|lift) (?:stop|lock)s?|(?:work )?platforms?|planks?)\b`
)

var (
	putsIn   = pattern.MustCompile(`(?i)\b(?:(?:set|put|push|place|drive|insert|fit|drop|slide|tap|lay|knock|stick|kick|wedge|roll)|(?:lock|block|hold|secure|jam|steady)\b.* with)\b.*?\b(?:` + holders + `|` + props + `)|\b(chock)(?:,| (?:the|both|all|its|each|a|every)\b)`)
	takesOut = pattern.MustCompile(`(?i)\b(?:remove|withdraw|clear|stow|take|pull|draw|lift|knock|kick|drive|get|put|slide|tap|hang|roll|move|carry) (?:(?:the|a|both|all|two|four|its|out|away|off|back|old|last|far|near) )*(?:(?:wheel|axle|jack|safety|support|cylinder|lift|drum|rotor|blade|shaft|knife|wood|wooden|hardwood|timber|stop|blocking|chuck|lock|locking|timing|setting|holding|work) )*(chocks?|stands?|trestles?|platforms?|planks?|cribbing|blocks?|struts?|props?|stops?|locks?|wedges?|pins?|bars?|tools?|keys?)\b`)
	takesAll = pattern.MustCompile(`(?i)\b(?:remove|withdraw|clear|stow|take|pull|draw|lift|knock|kick|drive|get|put|hang) (them|it|all|both)(?: all| both)?(?: (?:out|away|off|back|aside|from)\b|[.,]|$)`)
	away     = pattern.MustCompile(`(?i)\b(?:remove|withdraw|clear|stow|out|off|away|back|aside|from)\b`)
	letsDown = pattern.MustCompile(`(?i)\blower\b|\blet\b.*\bdown\b|\bjack\b.*\bdown\b`)
	below    = pattern.MustCompile(`(?i)\b(?:under|beneath|below)\b`)
	fixed    = pattern.MustCompile(`(?i)\b(?:handle|gib|\d+ mm|jack on)\b`)                                                // a wedge in a handle, a gib that is set, what goes with the jack
	springs  = pattern.MustCompile(`(?i)^(?: has| have)? (?:snap|click|engage|spring|pop|jump|latch|catch)(?:s|es|ed)?\b`) // a pin of the part itself
	pin      = pattern.MustCompile(`(?i)^` + pins + `$`)
	spinning = pattern.MustCompile(`(?i)\b(?:rotor|drum|blades?|flywheel|shaft|spindle|arbor|reel|knife|knives|crank\w*|pulley|sprocket|fan|saw)\b`)
	onStands = pattern.MustCompile(`(?i)\b(?:on|with|by)\b.* (?:axle |jack |wooden )?(?:stands?|trestles?|cribbing|blocks?)\b`)
	stand    = pattern.MustCompile(`(?i)^(?:stands?|trestles?|cribbing|blocks?|struts?|props?)$`)
	boards   = pattern.MustCompile(`(?i)^(?:work )?(?:platform|plank)s?$`) // what one stands on
	trestle  = pattern.MustCompile(`(?i)^(?:trestles?|(?:work )?(?:platform|plank)s?)$`)
	chock    = pattern.MustCompile(`(?i)\bchocks?\b`)
)

// places keeps what the words of a step put into or under the machine, and what they
// take away.
func (w *walk) places(step *model.Step) {
	from := 0
	for _, sentence := range strings.SplitAfter(step.Say.Text, ".") {
		out := takesOut.FindStringSubmatchIndex(sentence)
		if out == nil && step.Verb.Key == "" { // of another step it may be its object
			out = takesAll.FindStringSubmatchIndex(sentence)
		}
		if out != nil && away.MatchString(sentence) && !putsUnder(sentence, out) {
			w.takesAway(step, sentence, from, out[2:4])
		} else if at := putsIn.FindStringSubmatchIndex(sentence); at != nil {
			w.puts(step, sentence, from, at[2:])
		} else if letsDown.MatchString(sentence) {
			w.stood()
		}
		from += len(sentence)
	}
}

// putsUnder reports whether a sentence that seems to take something away sets it under
// the machine: "put the stands under the back axle".
func putsUnder(sentence string, out []int) bool {
	return strings.HasPrefix(strings.ToLower(sentence[out[0]:]), "put ") && below.MatchString(sentence[out[3]:])
}

// puts keeps what a sentence puts in or under; at are where its holder, its prop and
// its verb "chock" stand.
func (w *walk) puts(step *model.Step, sentence string, from int, at []int) {
	for i := 0; i < len(at); i += 2 {
		if at[i] < 0 {
			continue
		}
		name, _, _ := strings.Cut(strings.ToLower(sentence[at[i]:at[i+1]]), " of ")
		if name == "chock" && i == 4 {
			name = "chocks"
		}
		for _, end := range []string{" under", " beneath", " below"} {
			name = strings.TrimSuffix(name, end)
		}
		if i == 0 && (fixed.MatchString(sentence) || pin.MatchString(name) && (!spinning.MatchString(sentence) || springs.MatchString(sentence[at[i+1]:]))) {
			continue
		}
		if boards.MatchString(name) && !below.MatchString(sentence) {
			continue // it stands beside
		}
		if !slices.ContainsFunc(w.job.Worked(), func(p *model.Part) bool { return w.kin(p.Words(), name) }) { // else it is a part, and stays in
			w.placed = append(w.placed, &placed{at: step, place: step.Say.Inside(from+at[i], from+at[i+1]), name: name, under: i > 0 || below.MatchString(sentence),
				stays: trestle.MatchString(name), said: strings.ToLower(sentence)})
		}
		if i > 0 && !chock.MatchString(name) && !boards.MatchString(name) {
			for _, h := range w.raised {
				h.supports, h.bareAt = true, nil // a safety strut, or stands in words
			}
		}
	}
}

// takesAway takes out what a sentence names, or all where it says "them"; chocks and
// stands that come away under what is raised leave it on the lifting gear.
func (w *walk) takesAway(step *model.Step, sentence string, from int, at []int) {
	thing := sentence[at[0]:at[1]]
	lower, all := strings.ToLower(sentence), slices.Contains([]string{"them", "it", "all", "both"}, strings.ToLower(thing))
	w.placed = slices.DeleteFunc(w.placed, func(p *placed) bool { return all || strings.Contains(lower, noun(p.name)) })
	if len(w.raised) == 0 || step.Verb.Key == "lower" {
		return
	}
	if chock.MatchString(thing) {
		w.breach(SupportOut, step, step.Say.Inside(from+at[0], from+at[1]), "chocks", w.raised[0].name, w.raised[0].at)
	}
	if stand.MatchString(thing) {
		for _, h := range w.raised {
			h.supports, h.bareAt = false, step
		}
	}
}

// stood takes out what stood under a machine that is let down; its chocks stay.
func (w *walk) stood() {
	w.placed = slices.DeleteFunc(w.placed, func(p *placed) bool { return p.under && !p.stays && !chock.MatchString(p.name) })
}

// runsFree wants what holds the machine fast out before it runs.
func runsFree(w *walk, step *model.Step, object model.Object) {
	if has(strings.ToLower(step.Told()+" "+object.Words()), byHand) {
		return
	}
	for _, p := range w.placed {
		if !p.under && !w.said(w.job.Procedure.End, p.name, "stay", "stays", "remain", "remains", "left", "in") {
			w.breach(LeftIn, step, object.Text.At, object.Words(), p.name, p.at)
			return
		}
	}
}

// leftInPlace tells of what was put in or under and never taken away, unless the end
// speaks of it.
func (w *walk) leftInPlace() {
	for _, p := range w.placed {
		if !slices.ContainsFunc(w.job.Procedure.End.Items, func(end model.Text) bool { return strings.Contains(strings.ToLower(end.Text), noun(p.name)) }) {
			w.breach(LeftInPlace, p.at, p.place, p.name, "", nil)
		}
	}
}
