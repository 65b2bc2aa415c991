package compose

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
)

// once says which steps of the other person are done before a step, but for those that its
// gate speaks of already.
func (w *writer) once(step *model.Step) string {
	var out []string
	for _, name := range step.Once.Names() {
		if other := w.job.StepOf(name); other != nil && !slices.Contains(step.After(), other.Number) {
			out = append(out, strings.ReplaceAll(w.words.Labels.JoinOnce, "{n}", strconv.Itoa(other.Number)))
		}
	}
	return strings.Join(out, " ")
}

// step composes one numbered step, without the messages that stand before it.
func (w *writer) step(step *model.Step) plan.Step {
	out := plan.Step{Number: step.Number, Stage: step.Stage.Text, Meanwhile: step.Meanwhile.On, Wait: step.Lasts(), Seconds: seconds(step), Gate: step.Gate.Text, Origin: step.Origin.Text}
	switch {
	case step.Person.N == 0 && step.Verb.Key != "wait" && slices.ContainsFunc(w.job.Steps, func(other *model.Step) bool { return other.Person.N > 0 }):
		out.Worker = w.words.Labels.JoinBoth
	case step.Person.N > 0:
		out.Worker = strings.ReplaceAll(w.words.Labels.JoinPerson, "{n}", strconv.Itoa(step.Person.N))
	}
	if once := w.once(step); once != "" {
		out.Gate = strings.TrimSpace(out.Gate + " " + once)
	}
	said := blocks(step.Say.Text)
	if step.Verb.Key == "" && len(said) > 0 {
		out.Action, out.Say = said[0].Runs, said[1:]
	} else {
		out.Action = w.action(step)
		for _, object := range step.Objects {
			out.Say = append(out.Say, w.about(step, object)...)
		}
		out.Say = append(out.Say, said...)
	}
	w.values(step, &out)
	for _, object := range step.Objects {
		w.object(step, object, &out)
	}
	w.hold(step, &out)
	out.Level, out.Picture, out.Places = w.filledTo(step), w.picture(step.Picture), w.numbersAt(step)
	w.readings(step, &out)
	out.Otherwise = w.otherwise(step)
	for _, note := range step.Notes.Items {
		out.Notes = append(out.Notes, note.Text)
	}
	return out
}

// action is the sentence of the verb, its verb in bold.
func (w *writer) action(step *model.Step) []plan.Run {
	before, after, _ := strings.Cut(strings.TrimSuffix(w.sentenceOf(step), "."), "{object}")
	article := ""
	if w.words.Article != "" && strings.HasSuffix(before, " "+w.words.Article+" ") {
		article = w.words.Article + " "
	}
	object := w.objects(step, article != "")
	if key := step.Verb.Key; key == "prove" || key == "follow" { // the figures behind a comma would part the sentence
		object, _, _ = strings.Cut(object, ",")
	}
	if article != "" && model.Determined(object) {
		before = strings.TrimSuffix(before, article)
	}
	with, until := w.with(step), ""
	if with != "" {
		with = " " + with
	}
	if step.Until.Set() && step.Verb.Key != "wait" {
		until = w.until(step.Until)
	}
	if strings.Contains(after, "{with}") {
		after = strings.ReplaceAll(after, "{with}", with)
	} else {
		after += with
	}
	return sentenceRuns(before, object, after+until)
}

// until goes on from a sentence with what ends it.
func (w *writer) until(text model.Text) string {
	return w.words.Labels.UntilGoing + " " + w.goesOn(strings.TrimSuffix(text.Text, "."))
}

// sentenceRuns makes a sentence of what stands before an object, the object and what stands
// behind it; what is between two ** is bold, and the object is as its author wrote it.
func sentenceRuns(before, object, after string) []plan.Run {
	var out []plan.Run
	add := func(text string, bold bool) {
		if len(out) == 0 {
			text = upper(text)
		}
		if n := len(out); n > 0 && out[n-1].Bold == bold {
			out[n-1].Text += text
		} else if text != "" {
			out = append(out, plan.Run{Text: text, Bold: bold})
		}
	}
	for i, part := range strings.Split(before, "**") {
		add(part, i%2 == 1)
	}
	add(object, false)
	for i, part := range strings.Split(after, "**") {
		add(part, i%2 == 1)
	}
	if n := len(out); n > 0 {
		out[n-1].Text = strings.TrimRight(out[n-1].Text, " ")
	}
	add(".", false)
	return out
}

// sentenceOf is the sentence of a step's verb; a proof goes by the kind of its energy.
func (w *writer) sentenceOf(step *model.Step) string {
	if step.Verb.Key == "prove" && len(step.Objects) == 1 && step.Objects[0].Energy != nil {
		if own := w.words.Proofs[step.Objects[0].Energy.Kind.Text]; own != "" {
			return own
		}
	}
	return w.words.Verbs[step.Verb.Key]
}

// objects names what the verb acts on; of several each but the first, whose article stands
// with the verb, has its own article where they are in a sentence.
func (w *writer) objects(step *model.Step, inSentence bool) string {
	if step.Verb.Key == "wait" {
		if step.Until.Set() {
			return w.until(step.Until)
		}
		return ""
	}
	var names []string
	for i, object := range step.Objects {
		name := w.inside(object.Words())
		if inSentence && i > 0 {
			name = model.The(name)
		}
		names = append(names, name)
	}
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " " + w.words.Labels.And + " " + names[last]
}

// with says what is filled in or applied, and what catches what runs out.
func (w *writer) with(step *model.Step) string {
	switch step.Verb.Key {
	case "drain":
		if tool := w.job.Tool(step.Into.Name()); tool != nil {
			name, _, _ := strings.Cut(w.toolName(tool), ",")
			return strings.Join(strings.Fields(w.words.Labels.Into+" "+w.words.Article+" "+w.inside(name)), " ")
		}
	case "clean", "bleed":
		if fluid := w.job.Fluid(step.Fluid.Name()); fluid != nil {
			return w.words.Labels.With + " " + w.inside(fluidWords(fluid))
		}
	case "fill", "grease", "lubricate":
		if fluid := w.job.Fluid(fluidName(step)); fluid != nil {
			return w.words.Labels.With + " " + w.inside(fluidWords(fluid))
		}
	}
	return ""
}

func fluidName(step *model.Step) string {
	if step.Fluid.Set() {
		return step.Fluid.Name()
	}
	for _, object := range step.Objects {
		switch {
		case object.Cavity != nil:
			return object.Cavity.Fluid.Name()
		case object.Point != nil:
			return object.Point.Fluid.Name()
		}
	}
	return ""
}

// inside writes a title inside a sentence, as the language does.
func (w *writer) inside(title string) string {
	if w.words.Capitals {
		return title
	}
	return lowerTitle(title)
}

// goesOn writes words that go on from others.
func (w *writer) goesOn(words string) string {
	if w.words.Capitals {
		return words
	}
	return lowerFirst(words)
}

// lowerTitle writes a title inside a sentence: its first letter small, unless
// it begins with an abbreviation, a letter that names a shape ("O-ring", "V-belt")
// or a name written with a figure or more capitals.
func lowerTitle(words string) string {
	first, _, _ := strings.Cut(words, " ")
	_, n := utf8.DecodeRuneInString(first)
	if n == len(first) || first[n] == '-' || strings.ToLower(first[n:]) != first[n:] || strings.ContainsAny(first, "0123456789") {
		return words
	}
	return lowerFirst(words)
}

func lowerFirst(words string) string {
	first, _, _ := strings.Cut(words, " ")
	if len(first) > 1 && strings.ToUpper(first) == first {
		return words
	}
	for i, r := range words {
		return strings.ToLower(string(r)) + words[i+len(string(r)):]
	}
	return words
}

// seconds is how long a step lasts by what is written: its least time, or its most where
// that is all there is.
func seconds(step *model.Step) int {
	for _, time := range []model.Amount{step.Wait, step.Least, step.Most} {
		if !time.Set() || !time.OK {
			continue
		}
		least, ok := time.Min()
		if !ok {
			least, ok = time.Max()
		}
		if ok {
			length, _ := least.Float64()
			return int(length)
		}
	}
	return 0
}

// values are the figures a step is set to.
func (w *writer) values(step *model.Step, out *plan.Step) {
	labels := w.words.Labels
	if step.Verb.Key == "wait" {
		out.Values = w.put(out.Values, labels.Time, step.Wait)
	}
	if !step.Torque.Set() {
		out.Values = w.put(out.Values, labels.Torque, w.partTorque(step))
	}
	out.Values = w.put(out.Values, labels.Torque, step.Torque)
	out.Values = w.put(out.Values, labels.Angle, step.Angle)
	out.Values = w.put(out.Values, labels.Amount, w.filled(step))
	out.Values = w.put(out.Values, labels.Set, step.SetTo)
	out.Values = w.put(out.Values, labels.Time, step.Least)
	out.Values = w.put(out.Values, labels.AtMost, step.Most)
	if step.Verb.Key != "measure" && step.Verb.Key != "record" && !step.Reading.Set() && !step.SetTo.Set() {
		out.Values = w.put(out.Values, labels.Limit, step.HeldAgainst())
	}
}

// partTorque is the torque of the parts a step tightens, where all have the same one.
func (w *writer) partTorque(step *model.Step) model.Amount {
	var out model.Amount
	if step.Verb.Key != "tighten" || step.ByHand.Set() {
		return out
	}
	for _, object := range step.Objects {
		if object.Part == nil || !object.Part.Torque.OK {
			continue
		}
		if out.Set() && out.Text.Text != object.Part.Torque.Text.Text {
			return model.Amount{}
		}
		out = object.Part.Torque
	}
	return out
}

// filled is how much a step fills, drains or greases.
func (w *writer) filled(step *model.Step) model.Amount {
	if step.Amount.Set() {
		return step.Amount
	}
	for _, object := range step.Objects {
		switch {
		case object.Cavity != nil && (step.Verb.Key == "fill" || step.Verb.Key == "drain"):
			return object.Cavity.Capacity
		case object.Point != nil && (step.Verb.Key == "grease" || step.Verb.Key == "lubricate"):
			return object.Point.Amount
		}
	}
	return model.Amount{}
}

// object adds what the thing itself has to say at this step.
func (w *writer) object(step *model.Step, object model.Object, out *plan.Step) {
	switch key := step.Verb.Key; {
	case object.Part != nil:
		w.fasteners(step, object.Part, out)
	case object.Spare != nil && key == "replace":
		if count := step.Count.Or(1); count > 1 {
			out.Details = append(out.Details, strings.TrimSuffix(fmt.Sprintf("%d × %s", count, object.Spare.Number.Text), " × "))
		}
	case object.Point != nil && (key == "grease" || key == "lubricate"):
		if count := step.Count.Or(object.Point.Count.Or(1)); count > 1 {
			out.Details = append(out.Details, fmt.Sprintf("%d %s", count, w.words.Labels.Points))
			for i := range out.Values {
				if out.Values[i].Label == w.words.Labels.Amount {
					out.Values[i].Also = strings.TrimSpace(out.Values[i].Also + " " + w.words.Labels.Each)
				}
			}
		}
		if object.Point.Fitting.Set() {
			out.Details = append(out.Details, object.Point.Fitting.Text)
		}
		if object.Point.Until.Set() && !step.Until.Set() {
			out.Details = append(out.Details, w.words.Labels.Until+" "+w.goesOn(object.Point.Until.Text))
		}
	}
}

// otherwise is what to do when something is not as the step wants it.
func (w *writer) otherwise(step *model.Step) plan.Fact {
	out := plan.Fact{Label: w.words.Labels.IfNot, Text: step.Outside.Text}
	for _, object := range step.Objects {
		if object.Limit != nil && out.Text == "" {
			out.Text = object.Limit.Outside.Text
		}
	}
	if step.HeldAgainst().Set() || step.SetTo.Set() {
		out.Label = w.words.Labels.Outside
	}
	out.Text = sentence(out.Text)
	return out
}

// about is how the thing says it is done: how an energy is cut off, how a limit is measured.
func (w *writer) about(step *model.Step, object model.Object) []plan.Block {
	switch {
	case object.Energy != nil:
		told := map[string]model.Text{"isolate": object.Energy.Isolate, "relieve": object.Energy.Relieve, "prove": object.Energy.Prove, "restore": object.Energy.Restore}
		return blocks(told[step.Verb.Key].Text)
	case object.Limit != nil && step.Verb.Key != "record":
		return blocks(object.Limit.How.Text)
	}
	return nil
}

// hold adds what the step itself has to say beside its words.
func (w *writer) hold(step *model.Step, out *plan.Step) {
	labels := w.words.Labels
	label := func(label, text string) {
		out.Say = append(out.Say, plan.Block{Runs: []plan.Run{{Text: label + labels.Colon, Bold: true}, {Text: " " + sentence(text)}}})
	}
	if pose := w.job.Pose(step.Pose.Name()); pose != nil {
		text := pose.Words()
		if pose.How.Set() {
			text += labels.Colon + " " + pose.How.Text
		}
		label(labels.Pose, text)
	}
	if step.Expect.Set() {
		label(labels.Expect, step.Expect.Text)
	}
	for _, item := range step.Keep.Items {
		label(labels.Keep, item.Text)
	}
	if step.ByHand.Set() {
		label(labels.ByHand, step.ByHand.Text)
	}
	if step.People.N > 1 {
		out.Details = append(out.Details, fmt.Sprintf("%s%s %d", labels.People, labels.Colon, step.People.N))
	}
	if tools := w.taken(step); tools != "" {
		out.Details = append(out.Details, labels.WithTools+" "+tools)
	}
	if tool := w.job.Tool(step.Into.Name()); tool != nil && step.Verb.Key != "drain" {
		name, _, _ := strings.Cut(w.toolName(tool), ",")
		out.Details = append(out.Details, labels.Into+" "+w.inside(name))
	}
	for _, used := range step.Supplies {
		if used.Amount.OK && used.Amount.Set() {
			out.Details = append(out.Details, w.amount(used.Amount)+" "+w.inside(w.supplyName(used.Name.Name())))
		}
	}
	for _, spare := range step.Spares.Items {
		if known := w.job.Spare(spare.Name()); known != nil {
			if text := labels.New + " " + w.inside(known.Words()); !slices.Contains(out.Details, text) { // as the seal of its part
				out.Details = append(out.Details, text)
			}
		}
	}
	for _, key := range step.Wear.Items {
		out.Details = append(out.Details, w.words.Protection[key.Text])
	}
}

// taken names the tools the step says it takes, besides what turns its fasteners, and what
// it uses up without an amount.
func (w *writer) taken(step *model.Step) string {
	lists := []model.List{step.Tools}
	for _, object := range step.Objects {
		if object.Limit != nil && step.Verb.Key != "record" {
			lists = append(lists, object.Limit.Tool)
		}
		if object.Point != nil && (step.Verb.Key == "grease" || step.Verb.Key == "lubricate") {
			lists = append(lists, object.Point.Tool)
		}
	}
	if pose := w.job.Pose(step.Pose.Name()); pose != nil {
		lists = append(lists, pose.Tools)
	}
	var names []string
	for _, list := range lists {
		for _, item := range list.Items {
			if tool := w.job.Tool(item.Name()); tool != nil {
				name, _, _ := strings.Cut(w.toolName(tool), ",")
				names = append(names, w.inside(name))
			}
		}
	}
	for _, used := range step.Supplies {
		if !used.Amount.Set() {
			names = append(names, w.inside(w.supplyName(used.Name.Name())))
		}
	}
	return strings.Join(unique(names), ", ")
}

// readings are the places to write a value down.
func (w *writer) readings(step *model.Step, out *plan.Step) {
	var blank plan.Blank
	limit := step.Limit
	if step.Verb.Key == "measure" || step.Verb.Key == "record" {
		blank.Label, limit = upper(w.objects(step, false)), step.HeldAgainst()
	}
	if step.Reading.Set() {
		blank.Label = step.Reading.Text
	}
	if blank.Label == "" {
		return
	}
	if limit.OK {
		blank.Unit, blank.Limit = limit.Shown(w.system).Symbol, w.amount(limit)
		blank.Low, blank.High = limit.Bounds(w.system)
	}
	out.Readings = append(out.Readings, blank)
}

// Actions lists the sentences of the steps of a job in order; empty where the
// shop's language has no words.
func Actions(work Work) []string {
	w, err := newWriter(work, quantity.Both)
	if err != nil {
		return nil
	}
	var out []string
	for _, step := range work.Job.Steps {
		text := ""
		for _, run := range w.step(step).Action {
			text += run.Text
		}
		out = append(out, text)
	}
	return out
}
