package compose

import (
	"cmp"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/hazard"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/picture"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/trade"
)

// Work is a job with what it takes and what can hurt in it.
type Work struct {
	Job      *model.Job
	Needs    *needs.Needs
	Hazards  []hazard.Implied
	Pictures func(*model.Picture) (*picture.Picture, error) // a picture, or why there is none; neither where none was looked for
	Language string                                         // of the fixed words; the shop's where empty
}

// In is the work in a language, or in the shop's where none is named.
func (w Work) In(language string) Work {
	w.Language = language
	return w
}

// writer composes the pages of one job.
type writer struct {
	job     *model.Job
	system  quantity.System
	words   plan.Words
	second  *plan.Words // of the second language on signal panels; nil where there is none
	needs   *needs.Needs
	hazards []hazard.Implied

	pictures func(*model.Picture) (*picture.Picture, error) // nil where none was looked for
}

func newWriter(work Work, system quantity.System) (*writer, error) {
	job := work.Job
	words, err := plan.LoadWords(cmp.Or(work.Language, job.Language()))
	if err != nil {
		return nil, err
	}
	var second *plan.Words
	if job.Shop != nil && job.Shop.SignalLanguage.Set() && job.Shop.SignalLanguage.Text != words.Language {
		also, err := plan.LoadWords(job.Shop.SignalLanguage.Text)
		if err != nil {
			return nil, err
		}
		second = &also
	}
	if job.Shop != nil && job.Shop.Local.Set() {
		words.Labels.Local = job.Shop.Local.Text
	}
	return &writer{job: job, system: system, words: words, second: second, needs: work.Needs, hazards: work.Hazards, pictures: work.Pictures}, nil
}

// Card composes the bench card of a job. allowed are the findings its author
// stands by, with the reasons. It is an error when the shop's language has no words.
func Card(work Work, system quantity.System, allowed []string) (plan.Card, error) {
	w, err := newWriter(work, system)
	if err != nil {
		return plan.Card{}, err
	}
	job, procedure := work.Job, work.Job.Procedure
	card := plan.Card{
		Words: w.words, Title: procedure.Title.Text, Name: job.File.Name(), Machine: job.MachineTitle(), Variant: job.Variant,
		Revision: procedure.Revision.Text, Date: procedure.Date.Text, Author: procedure.Author.Text, Checked: procedure.Checked.Text,
		Summary: runs(procedure.Summary.Text), Facts: w.facts(), Start: sentences(procedure.Start), End: sentences(procedure.End),
		Isolations: w.isolations(), NoEnergy: sentence(procedure.NoIsolation.Text),
		Wear: w.wear(), Tools: w.tools(), Supplies: w.supplies(), Spares: w.spares(),
		Blanks: w.blanks(), Manual: w.manual(), Allowed: allowed,
	}
	if job.Shop != nil {
		card.Shop = job.Shop.Title.Text
	}
	card.Joins = w.joins()
	card.Map = w.places()
	for _, shown := range procedure.Pictures {
		if one := w.picture(shown); one != nil {
			card.Pictures = append(card.Pictures, *one)
		}
	}
	atStep := w.cautions(&card)
	card.Sections = w.sections(atStep)
	return card, nil
}

// joins are the procedures that a joined one is made of, as its steps call them.
func (w *writer) joins() []plan.Served {
	var out []plan.Served
	for i, name := range w.job.Procedure.Joins.Names() {
		one := plan.Served{Key: model.Letter(i), Title: name}
		for _, other := range w.job.Beside(name) {
			one.Title, one.Revision = other.Procedure.Title.Text, other.Procedure.Revision.Text
		}
		out = append(out, one)
	}
	return out
}

func texts(list model.List) []string {
	var out []string
	for _, item := range list.Items {
		out = append(out, item.Text)
	}
	return out
}

func (w *writer) facts() []plan.Fact {
	labels, procedure := w.words.Labels, w.job.Procedure
	facts := []plan.Fact{
		{Label: labels.Who, Text: procedure.Who.Text},
		{Label: labels.People, Text: strconv.Itoa(procedure.People.Or(1))},
		{Label: labels.HandsOn, Text: w.amount(procedure.HandsOn)},
		{Label: labels.Elapsed, Text: w.amount(procedure.Elapsed)},
		{Label: labels.Every, Text: w.interval(procedure.Every)},
		{Label: labels.First, Text: w.interval(procedure.First)},
		{Label: labels.When, Text: procedure.When.Text},
	}
	return slices.DeleteFunc(facts, func(fact plan.Fact) bool { return fact.Text == "" })
}

func (w *writer) interval(amounts []model.Amount) string {
	var out []string
	for _, amount := range amounts {
		out = append(out, w.amount(amount))
	}
	return strings.Join(out, " "+w.words.Labels.Or+" ")
}

// isolations lists the energies the job cuts off, each once, in order of their steps.
func (w *writer) isolations() []plan.Isolation {
	var out []plan.Isolation
	for _, energy := range w.isolated() {
		line := plan.Isolation{Energy: upper(energy.Words()), How: energy.Isolate.Text, Prove: energy.Prove.Text, Restore: energy.Restore.Text,
			Cut: w.firstOn("isolate", energy), Proof: w.firstOn("prove", energy)}
		if energy.Relieve.Set() {
			line.How += " " + energy.Relieve.Text
			if w.firstOn("relieve", energy) == 0 {
				line.Cut = 0 // only the table says how it is let out
			}
		}
		out = append(out, line)
	}
	return out
}

// firstOn is the first step that does something to an energy; 0 where none does.
func (w *writer) firstOn(verb string, energy *model.Energy) int {
	for _, step := range w.job.Steps {
		if step.Verb.Key == verb && slices.ContainsFunc(step.Objects, func(object model.Object) bool { return object.Energy == energy }) {
			return step.Number
		}
	}
	return 0
}

func (w *writer) isolated() []*model.Energy {
	var out []*model.Energy
	for _, step := range w.job.Steps {
		for _, object := range step.Objects {
			if step.Verb.Key == "isolate" && object.Energy != nil && !slices.Contains(out, object.Energy) {
				out = append(out, object.Energy)
			}
		}
	}
	return out
}

func (w *writer) manual() string {
	parts := []string{}
	if w.job.Machine != nil {
		parts = append(parts, w.job.Machine.Manual.Text)
	}
	if own := w.job.Procedure.Manual; own.Set() {
		if len(parts) > 0 && strings.HasPrefix(strings.ToLower(own.Text), strings.ToLower(parts[0])) {
			parts = nil // it names the machine's manual itself
		}
		parts = append(parts, own.Text)
	}
	return strings.Join(parts, ", ")
}

// blanks are what is written down at the end, besides the readings at the steps.
func (w *writer) blanks() []plan.Blank {
	var out []plan.Blank
	labels := w.words.Labels
	for _, item := range w.job.Procedure.Record.Items {
		out = append(out, plan.Blank{Label: item.Text})
	}
	meter := w.job.Machine != nil && w.job.Machine.Meter.Text == "hours"
	written := slices.IndexFunc(out, func(blank plan.Blank) bool { return strings.EqualFold(blank.Label, labels.Hours) })
	switch {
	case written >= 0:
		out[written].Of = plan.Meter
	case meter:
		out = append(out, plan.Blank{Label: labels.Hours, Unit: "h", Of: plan.Meter})
	}
	return append(out, plan.Blank{Label: labels.Date, Of: plan.Day}, plan.Blank{Label: labels.Initials, Of: plan.Worker})
}

// cautions puts every message of the job in front, each once, and tells which
// stand again at which step: those named there, and those for the whole job
// where they are met.
func (w *writer) cautions(card *plan.Card) map[int][]plan.Caution {
	atStep := map[int][]plan.Caution{}
	seen := map[string]bool{}
	first := func(caution *model.Caution) {
		made := w.caution(caution)
		if key := made.Word + made.Hazard + made.Consequence; !seen[key] {
			seen[key] = true
			card.Cautions = append(card.Cautions, made)
		}
	}
	for _, name := range w.job.Procedure.Cautions.Names() {
		if caution := w.message(name); caution != nil {
			first(caution)
			for _, number := range w.again(caution) {
				atStep[number] = append(atStep[number], w.caution(caution))
			}
		}
	}
	for _, step := range w.job.Steps {
		for _, name := range step.Cautions.Names() {
			if caution := w.message(name); caution != nil {
				first(caution)
				atStep[step.Number] = appendNew(atStep[step.Number], w.caution(caution))
			}
		}
		for _, own := range step.Own {
			first(own)
			atStep[step.Number] = appendNew(atStep[step.Number], w.caution(own))
		}
	}
	for i := range card.Cautions {
		card.Cautions[i].Steps = standsAt(card.Cautions[i], atStep)
	}
	return atStep
}

// standsAt lists the steps at which a message stands word for word.
func standsAt(caution plan.Caution, atStep map[int][]plan.Caution) []int {
	var out []int
	for number, list := range atStep {
		if slices.ContainsFunc(list, func(other plan.Caution) bool { return reflect.DeepEqual(other, caution) }) {
			out = append(out, number)
		}
	}
	slices.Sort(out)
	return out
}

// message finds a safety message by its name, at the level the job needs.
func (w *writer) message(name string) *model.Caution {
	if caution := w.job.Caution(name); caution != nil {
		return hazard.Message(caution, w.hazards)
	}
	return nil
}

func appendNew(list []plan.Caution, caution plan.Caution) []plan.Caution {
	for _, other := range list {
		if other.Hazard == caution.Hazard && other.Consequence == caution.Consequence {
			return list
		}
	}
	return append(list, caution)
}

// forgotten is after how many steps a warning is no longer in mind; common practice, no source.
const forgotten = 10

// again lists the steps at which a message for the whole job stands again: the
// first that brings a hazard it speaks for, and of a danger or a warning each
// that brings it so much later that the first is forgotten. What the isolation
// keeps away stands again only where something is isolated anew. Where steps name
// persons, each reads the steps that are theirs, and those that both come to.
func (w *writer) again(caution *model.Caution) []int {
	var people []int
	for _, step := range w.job.Steps {
		if n := step.Person.N; n > 0 && !slices.Contains(people, n) {
			people = append(people, n)
		}
	}
	if len(people) == 0 {
		return w.againFor(caution, 0)
	}
	var out []int
	for _, person := range people {
		out = append(out, w.againFor(caution, person)...)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// againFor lists the steps at which a message stands again for one person; for all with 0.
func (w *writer) againFor(caution *model.Caution, person int) []int {
	var out []int
	level, err := trade.ParseSignal(caution.Signal.Text)
	for _, one := range w.hazards {
		if !caution.Against.Has(one.Hazard.Key) || person > 0 && one.Step.Person.N > 0 && one.Step.Person.N != person {
			continue
		}
		n := one.Step.Number
		kept := (one.Hazard.Key == "start" || one.Hazard.Key == "rotation") && one.Step.Verb.Key != "isolate"
		if len(out) == 0 || !kept && err == nil && level <= trade.Warning && n-out[len(out)-1] >= forgotten {
			out = append(out, n)
		}
	}
	return out
}

func (w *writer) caution(caution *model.Caution) plan.Caution {
	said := told(caution, w.words)
	out := plan.Caution{Signal: caution.Signal.Text, Word: w.words.Signals[caution.Signal.Text],
		Hazard: strings.TrimSuffix(said.Hazard, "."), Consequence: sentence(said.Consequence), Avoid: sentence(said.Avoid),
		Wear: w.protection(caution.Wear), Signs: texts(caution.Signs)}
	if w.second != nil {
		out.Second = plan.Second{Language: w.second.Language, Word: w.second.Signals[caution.Signal.Text], Hazard: strings.TrimSuffix(caution.SecondHazard.Text, ".")}
		if caution.BuiltIn() {
			out.Second.Hazard = told(caution, *w.second).Hazard
		}
	}
	return out
}

// told is what a message says in a language: the words of the language for a built-in one,
// as it is written for a shop's own and in English.
func told(caution *model.Caution, words plan.Words) plan.Told {
	out := plan.Told{Hazard: caution.Hazard.Text, Consequence: caution.Consequence.Text, Avoid: caution.Avoid.Text}
	known, ok := words.Hazards[caution.Name]
	if !ok || !caution.BuiltIn() {
		return out
	}
	if known.Worst != "" && caution.Signal.Text == trade.Danger.String() {
		known.Consequence = known.Worst
	}
	return known
}

func (w *writer) protection(list model.List) []string {
	var out []string
	for _, item := range list.Items {
		out = append(out, w.words.Protection[item.Text])
	}
	return out
}

// sentence ends a text with a full stop and begins it with a capital.
func sentence(text string) string {
	text = upper(strings.TrimSpace(text))
	if text != "" && !strings.ContainsAny(text[len(text)-1:], ".!?:…") && !strings.HasSuffix(text, "…") {
		text += "."
	}
	return text
}

func sentences(list model.List) []string {
	out := texts(list)
	for i, text := range out {
		out[i] = sentence(text)
	}
	return out
}

func upper(text string) string {
	for i, r := range text {
		return strings.ToUpper(string(r)) + text[i+len(string(r)):]
	}
	return text
}

// goesOn reports whether two steps are about one thing: a plug that is refitted and then
// tightened.
func goesOn(before, after *model.Step) bool {
	for _, one := range before.Objects {
		if one.Key() != "" && slices.ContainsFunc(after.Objects, func(other model.Object) bool { return other.Key() == one.Key() }) {
			return true
		}
	}
	return false
}

// sections groups the steps as the author did.
func (w *writer) sections(atStep map[int][]plan.Caution) []plan.Section {
	labels := w.words.Labels
	var out []plan.Section
	for _, part := range []struct{ key, title string }{{"prepare", labels.Prepare}, {"step", labels.Work}, {"close", labels.Close}} {
		section := plan.Section{Title: part.title}
		for i, step := range w.job.Steps {
			if step.Section == part.key {
				made := w.step(step)
				made.Cautions = atStep[step.Number]
				made.GoesOn = i > 0 && goesOn(w.job.Steps[i-1], step)
				section.Steps = append(section.Steps, made)
			}
		}
		if len(section.Steps) > 0 {
			out = append(out, section)
		} else if part.key == "close" {
			out = append(out, plan.Section{Title: part.title, Lead: sentence(w.job.Procedure.NoClose.Text)})
		}
	}
	return out
}
