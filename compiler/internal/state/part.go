package state

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
)

// away reports whether a cover is off or open, and since which step.
func (p *part) away() (since *model.Step, off bool) {
	if p.open {
		return p.openAt, true
	}
	return p.offAt, p.off > 0
}

// isReached wants every cover before the object off or open.
func isReached(w *walk, step *model.Step, object model.Object) { w.reach(step, object, false) }

// isSeen is the same for a look, which may go through a slot.
func isSeen(w *walk, step *model.Step, object model.Object) { w.reach(step, object, true) }

func (w *walk) reach(step *model.Step, object model.Object, looks bool) {
	var behind model.List
	switch {
	case object.Part != nil:
		behind = object.Part.Behind
	case object.Point != nil:
		behind = object.Point.Behind
	case object.Limit != nil:
		behind = object.Limit.Behind
	}
	for _, name := range behind.Names() {
		cover := w.job.Part(name)
		if cover == nil || cover == object.Part {
			continue
		}
		if at := w.of(cover); at.off < all(cover) && !at.open {
			breach := w.breach(BehindCover, step, object.Text.At, object.Words(), cover.Words(), at.onAt)
			breach.Looked, breach.Name = looks, cover.Name
		}
	}
}

// isOn wants something there to take off.
func isOn(w *walk, step *model.Step, object model.Object) {
	if object.Part == nil {
		return
	}
	if at := w.of(object.Part); at.off >= all(object.Part) || at.off+some(step, object.Part) > all(object.Part) && step.Count.N > 0 {
		w.breach(AlreadyOff, step, object.Text.At, object.Words(), "", at.offAt)
	}
}

// isOff wants something off to put back.
func isOff(w *walk, step *model.Step, object model.Object) {
	if object.Part == nil {
		return
	}
	if at := w.of(object.Part); at.off == 0 && !at.open && !at.carried && !(w.foreign() && w.said(w.job.Procedure.Start, object.Words())) {
		w.breach(AlreadyOn, step, object.Text.At, object.Words(), "", at.onAt)
	}
}

// isFree wants what holds a thing out before a new one goes in, where it has been out
// once: it went back too soon.
func isFree(w *walk, step *model.Step, object model.Object) {
	for _, p := range w.renewed(step, object) {
		if w.of(p).off > 0 {
			w.reach(step, model.Object{Text: object.Text, Part: p}, false)
		}
		for _, name := range p.HeldBy.Names() {
			if fastener := w.job.Part(name); fastener != nil && w.of(fastener).off == 0 && w.of(fastener).out > 0 {
				breach := w.breach(BehindCover, step, object.Text.At, object.Words(), fastener.Words(), w.of(fastener).onAt)
				breach.Name = fastener.Name
			}
		}
	}
}

// GoesInFor reports whether a spare goes in for a part of a job: it has its name or is of its kind.
func GoesInFor(job *model.Job, spare *model.Spare, part *model.Part) bool {
	w := walk{job: job}
	return part.Name == spare.Name || w.kin(part.Words(), spare.Words())
}

// renewed lists the parts that a spare goes in for: of its name or its kind.
func (w *walk) renewed(step *model.Step, object model.Object) []*model.Part {
	if object.Part != nil {
		return []*model.Part{object.Part}
	}
	if object.Spare == nil {
		return nil
	}
	var out []*model.Part
	for _, p := range w.known {
		if GoesInFor(w.job, object.Spare, p) {
			out = append(out, p)
		}
	}
	return out
}

// isThere wants a fastener there to loosen.
func isThere(w *walk, step *model.Step, object model.Object) {
	if object.Part != nil && w.of(object.Part).off >= all(object.Part) {
		w.breach(LoosensOff, step, object.Text.At, object.Words(), "", w.of(object.Part).offAt)
	}
}

// isIn wants a fastener in before it is tightened.
func isIn(w *walk, step *model.Step, object model.Object) {
	if object.Part == nil {
		return
	}
	if at := w.of(object.Part); at.off >= some(step, object.Part) && at.off > 0 {
		w.breach(TightensOff, step, object.Text.At, object.Words(), "", at.offAt).of = object.Part
	}
}

func comesOff(w *walk, step *model.Step, object model.Object) {
	if object.Part == nil {
		return
	}
	w.take(step, object, object.Part)
	for _, name := range object.Part.HeldBy.Names() {
		if fastener := w.job.Part(name); fastener != nil && w.of(fastener).off < all(fastener) {
			w.take(step, object, fastener)
		}
	}
}

func (w *walk) take(step *model.Step, object model.Object, p *model.Part) {
	at := w.of(p)
	n := some(step, p)
	if p != object.Part {
		n = all(p)
	}
	n = min(n, all(p)-at.off)
	at.off += n
	at.out += n
	at.offAt, at.offPlace = step, object.Text.At
	at.loose, at.hand, at.open = false, false, false
	at.let = max(0, at.let-n)
}

func goesOn(w *walk, step *model.Step, object model.Object) {
	if object.Part == nil {
		return
	}
	w.put(step, object, object.Part)
	for _, name := range object.Part.HeldBy.Names() {
		if fastener := w.job.Part(name); fastener != nil && w.of(fastener).off > 0 {
			w.put(step, object, fastener)
		}
	}
}

func (w *walk) put(step *model.Step, object model.Object, p *model.Part) {
	at := w.of(p)
	n := some(step, p)
	if p != object.Part {
		n = all(p)
	}
	n = min(n, at.off)
	at.off -= n
	at.back += n
	at.onAt, at.open = step, false
	again := false
	if at.off == 0 && n > 0 {
		again = at.refits > 0 && at.offAt != nil
		at.refits++
	}
	at.carried = p != object.Part
	if n > 0 && (tightens(p) || turned(p) && !saysTight(step)) && !step.ByHand.Set() {
		at.hand, at.handAt, at.handedAt = true, step, object.Text.At
		at.let = min(all(p), at.let+n)
	}
	if again {
		if old := w.oldSeal(step, p); old != "" {
			w.breach(SealAgain, step, object.Text.At, p.Words(), old, at.offAt).Name = p.Name
		}
	}
}

// oldSeal is the first seal of a part that nothing renews while it goes back at a step: the
// step itself does not, nor does one that tightens the part before it comes off again, nor
// one that puts a new one in while it is off. Empty where all are renewed.
func (w *walk) oldSeal(step *model.Step, p *model.Part) string {
	var renewed []string
	for _, before := range w.job.Steps[w.of(p).offAt.Number:step.Number] {
		for _, object := range before.Objects {
			if before.Verb.Key == "replace" && object.Spare != nil {
				renewed = append(renewed, object.Spare.Name)
			}
		}
	}
	renewed = append(renewed, step.Spares.Names()...)
	for _, later := range w.job.Steps[step.Number:] {
		acts := slices.ContainsFunc(later.Objects, func(o model.Object) bool {
			return o.Part != nil && (o.Part == p || o.Part.HeldBy.Has(p.Name))
		})
		if acts && (later.Verb.Key == "remove" || later.Verb.Key == "replace") {
			break
		}
		if acts && later.Verb.Key == "tighten" {
			renewed = append(renewed, later.Spares.Names()...)
		}
	}
	for _, seal := range p.Seals.Names() {
		if !slices.Contains(renewed, seal) {
			return seal
		}
	}
	return ""
}

// tightens reports whether a part is one that a tool tightens once it is in.
func tightens(p *model.Part) bool {
	switch p.Head.Text {
	case "wing", "none":
		return false
	}
	return p.Torque.Set() || p.Angle.Set()
}

// turned reports whether a part is a nut of a shaft or a stud, which nobody leaves as
// it was put on, though no torque is known.
func turned(p *model.Part) bool {
	return (p.Head.Text == "nut" || p.Head.Text == "castle-nut") && (p.Thread.Set() || p.Across.Set())
}

// saysTight reports whether a step tells in words that what it puts on is tightened.
func saysTight(step *model.Step) bool {
	said := strings.ToLower(step.Say.Text)
	return slices.ContainsFunc([]string{"tight", "snug", "turn", "seat"}, func(word string) bool { return strings.Contains(said, word) })
}

// fastens reports whether a part is turned with a tool, though no torque is known.
func fastens(p *model.Part) bool {
	switch p.Head.Text {
	case "wing", "none":
		return false
	}
	return !p.Cover && (p.Thread.Set() || p.Across.Set())
}

// isRenewed puts a new one in: the part itself, or, of a spare, what is off and of its kind.
func isRenewed(w *walk, step *model.Step, object model.Object) {
	switch {
	case object.Part != nil:
		p := object.Part
		w.parted = w.drop(w.parted, plain(p.Words()))
		if at := w.of(p); at.off == 0 { // the old one came out at this step
			at.off, at.out = some(step, p), at.out+some(step, p)
			at.offAt, at.offPlace = step, object.Text.At
		}
		goesOn(w, step, object)
	case object.Spare != nil:
		w.moreFitted(step, object)
		w.fits(step, object, object.Spare.Words(), object.Spare.Name)
	}
	for _, name := range step.Spares.Names() {
		if spare := w.job.Spare(name); spare != nil && object.Part == nil {
			w.fits(step, object, spare.Words(), name)
		}
	}
}

// moreFitted tells of more new ones put in than came off.
func (w *walk) moreFitted(step *model.Step, object model.Object) {
	for _, p := range w.renewed(step, object) {
		if at := w.of(p); !p.Cover && step.Count.N > 0 && p.Count.N > 0 && at.off > 0 && step.Count.N > at.off {
			breach := w.breach(MoreFitted, step, object.Text.At, object.Words(), p.Words(), at.offAt)
			breach.Out, breach.Back = at.off, step.Count.N
		}
	}
}

// fits puts what is off and of a spare's kind back in.
func (w *walk) fits(step *model.Step, object model.Object, words, name string) {
	for _, p := range w.known {
		if at := w.of(p); at.off > 0 && (p.Name == name || w.kin(p.Words(), words)) {
			n := at.off
			if !p.Cover && step.Count.N > 0 && p.Count.N > 0 {
				n = min(n, step.Count.N)
			}
			at.back += n
			at.off, at.onAt = at.off-n, step
			if tightens(p) {
				at.hand, at.handAt, at.handedAt = true, step, object.Text.At
			}
		}
	}
}

// wasOpen wants a cover open, or off, before it is closed.
func wasOpen(w *walk, step *model.Step, object model.Object) {
	if object.Part == nil || !object.Part.Cover {
		return
	}
	if at := w.of(object.Part); !at.open && at.off == 0 && !at.loose {
		w.breach(AlreadyShut, step, object.Text.At, object.Words(), "", at.onAt)
	}
}

// testGear are words of what is connected for a test and comes away again.
var testGear = []string{" load bank ", " gauge ", " charger ", " tester ", " test ", " multimeter ", " voltmeter ", " ammeter ", " jumper ", " booster ", " probe ", " scanner ", " laptop "}

// comesAlong reports whether a thing is brought to the machine: test gear, or a tool of the list.
func (w *walk) comesAlong(name string) bool {
	if w.job.Language() != model.English { // what it is for is not read
		return true
	}
	name = " " + name + " "
	return has(name, testGear) || slices.ContainsFunc(w.job.Listed(), func(tool *model.Tool) bool {
		title, _, _ := strings.Cut(tool.Title.Text, ",")
		return strings.Contains(name, " "+plain(tool.Name)+" ") || title != "" && strings.Contains(name, " "+plain(title)+" ")
	})
}

// wasParted wants a part that is connected to have been parted, loosened, taken off
// or renewed before.
func wasParted(w *walk, step *model.Step, object model.Object) {
	if object.Part == nil || w.parts[object.Part] != nil && w.of(object.Part).out > 0 || w.comesAlong(plain(object.Words())) {
		return
	}
	for _, before := range w.job.Steps[:step.Number-1] {
		switch before.Verb.Key {
		case "disconnect", "remove", "replace", "refit", "open":
			for _, other := range before.Objects {
				if other.Part == object.Part || w.kin(other.Words(), object.Words()) || head(other.Words()) == head(object.Words()) {
					return
				}
			}
		}
	}
	if said := w.job.Procedure.Start; len(said.Items) == 0 || !w.said(said, object.Words(), "off", "open", "parted", "disconnected", "loose") {
		w.breach(AlreadyShut, step, object.Text.At, object.Words(), "", nil)
	}
}

func comesLoose(w *walk, step *model.Step, object model.Object) {
	if object.Part != nil {
		at := w.of(object.Part)
		at.tightAt = nil
		at.loose, at.looseAt, at.loosePlace = true, step, object.Text.At
		at.let = min(all(object.Part), at.let+some(step, object.Part))
	}
}

// isTightened also closes what a cover's own fasteners hold.
func isTightened(w *walk, step *model.Step, object model.Object) {
	if object.Part != nil {
		at := w.of(object.Part)
		if at.let = max(0, at.let-some(step, object.Part)); at.let > 0 && step.Count.N > 0 && (at.loose || at.hand) {
			at.tightAt = step
			return // some of them are still loose
		}
		at.loose, at.hand, at.carried, at.tightAt, at.let = false, false, false, step, 0
	}
}

func isOpened(w *walk, step *model.Step, object model.Object) {
	if object.Part != nil {
		at := w.of(object.Part)
		at.open, at.openAt, at.openPlace = true, step, object.Text.At
	}
}

func isClosed(w *walk, step *model.Step, object model.Object) {
	if object.Part != nil {
		at := w.of(object.Part)
		at.open, at.onAt = false, step
	}
}

func isParted(w *walk, step *model.Step, object model.Object) {
	name := plain(object.Words())
	if i := slices.Index(w.joined, name); i >= 0 { // it was there for a time
		w.joined = slices.Delete(w.joined, i, i+1)
		return
	}
	w.parted = append(w.parted, &held{at: step, place: object.Text.At, name: name, of: object.Part})
	if object.Part != nil {
		w.of(object.Part).loose = false
	}
}

func isJoined(w *walk, step *model.Step, object model.Object) {
	name, apart := plain(object.Words()), len(w.parted)
	if w.parted = w.drop(w.parted, name); len(w.parted) == apart && w.comesAlong(name) {
		w.joined = append(w.joined, name)
	}
	if object.Part != nil && tightens(object.Part) && !step.ByHand.Set() {
		at := w.of(object.Part)
		at.hand, at.handAt, at.handedAt = true, step, object.Text.At
	}
}

func isSlack(w *walk, step *model.Step, object model.Object) {
	w.slack = append(w.slack, &held{at: step, place: object.Text.At, name: plain(object.Words())})
}

func isTensioned(w *walk, step *model.Step, object model.Object) {
	w.slack = w.drop(w.slack, plain(object.Words()))
}

// drop takes what has a name, or one of its kind, off a list.
func (w *walk) drop(list []*held, name string) []*held {
	var out []*held
	for _, h := range list {
		if h.name != name && !w.kin(h.name, name) && !strings.Contains(name, h.name) {
			out = append(out, h)
		}
	}
	return out
}
