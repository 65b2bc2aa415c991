package join

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
)

// Words are the words that a joined procedure needs besides those of its authors, in the
// language of the shop.
type Words struct {
	Title    string // "{n} jobs in one"
	Summary  string // "{length} instead of {apart} one after the other."
	Proved   string // "Proved shortest under the times it lists."
	Bounded  string // "At most {percent} % above a proved bound."
	When     string // "On {day}, as one job"
	Locked   string // "{things} locked off"
	Off      string // "{things} off"
	Up       string // "{things} raised"
	Whole    string // "Closed up"
	Gate     string // "Not before {time} have passed since step {n}."
	Between  string // "Not before {time} and no later than {most} after step {n}."
	Cuts     string // "energies cut off: {n} instead of {m}"
	Covers   string
	Turns    string
	Fill     string // "Meanwhile: steps {from} to {to}."
	FillOne  string // "Meanwhile: step {from}."
	Why      string // "Here, since {setting}."
	Locks    string // of a job for two, where an energy is cut off: each has a lock of their own
	Clear    string // and where one is given back: nobody is at the machine
	Unlock   string // and each takes their own lock off
	Held     string // "Only now: the machine stays as it is during the wait behind step {n}."
	Hours    string // unit of hours, of minutes
	Minutes  string
	Together string // between two of a list: " · "
}

// Look is what a joined procedure is called and when it is worked by.
type Look struct {
	Name  string // short name
	Title string // empty for the usual
	Day   string // ISO 8601
}

// Source writes the plan as a procedure in the language of the shop, so that everything that
// reads one reads it too: lint, cards, pick lists, phone pages, the state walk. Its file lies
// at the top of the shop folder.
func (p *Plan) Source(look Look, words Words) string {
	w := &writer{plan: p, words: words, told: map[*model.Step]bool{}}
	w.head(look)
	w.steps()
	return w.out.String()
}

type writer struct {
	plan  *Plan
	words Words
	out   strings.Builder
	told  map[*model.Step]bool // steps whose words stand with that of another
}

func (w *writer) line(format string, args ...any) { fmt.Fprintf(&w.out, format+"\n", args...) }

// quote writes a text as a TOML basic string.
func quote(text string) string {
	var out strings.Builder
	out.WriteByte('"')
	for _, r := range text {
		switch {
		case r == '"' || r == '\\':
			out.WriteByte('\\')
			out.WriteRune(r)
		case r == '\n':
			out.WriteString(`\n`)
		case r < ' ' || r == 0x7f:
			fmt.Fprintf(&out, `\u%04X`, r)
		default:
			out.WriteRune(r)
		}
	}
	out.WriteByte('"')
	return out.String()
}

func quotes(texts []string) string {
	out := make([]string, len(texts))
	for i, text := range texts {
		out[i] = quote(text)
	}
	return "[" + strings.Join(out, ", ") + "]"
}

// union gathers the texts of a list of every procedure, each once.
func (w *writer) union(list func(*model.Procedure) model.List) (out []string, given bool) {
	for _, input := range w.plan.Inputs {
		one := list(input.Job.Procedure)
		given = given || one.Given
		for _, item := range one.Items {
			if !slices.Contains(out, item.Text) {
				out = append(out, item.Text)
			}
		}
	}
	return out, given
}

// several joins the different texts of a key.
func (w *writer) several(text func(*model.Procedure) model.Text, between string) string {
	var out []string
	for _, input := range w.plan.Inputs {
		if one := text(input.Job.Procedure); one.Set() && !slices.Contains(out, one.Text) {
			out = append(out, one.Text)
		}
	}
	return strings.Join(out, between)
}

// who says who may do the job: of several what each asks for, with its letter, since words do
// not tell which is the stricter.
func (w *writer) who() string {
	var texts, letters []string
	for i, input := range w.plan.Inputs {
		text := input.Job.Procedure.Who.Text
		if text == "" {
			continue
		}
		at := slices.Index(texts, text)
		if at < 0 {
			at = len(texts)
			texts, letters = append(texts, text), append(letters, "")
		} else {
			letters[at] += ", "
		}
		letters[at] += model.Letter(i)
	}
	if len(texts) > 1 {
		for i := range texts {
			texts[i] = letters[i] + ": " + texts[i]
		}
	}
	return strings.Join(texts, "; ")
}

// minutes writes seconds as "1 h 25 min", up to the whole minute.
func (w *writer) minutes(seconds int64) string {
	minutes := (seconds + 59) / 60
	if minutes < 60 {
		return fmt.Sprintf("%d %s", minutes, w.words.Minutes)
	}
	if minutes%60 == 0 {
		return fmt.Sprintf("%d %s", minutes/60, w.words.Hours)
	}
	return fmt.Sprintf("%d %s %d %s", minutes/60, w.words.Hours, minutes%60, w.words.Minutes)
}

// plain is a time as the language reads it.
func plain(seconds int64) string {
	return (&writer{words: Words{Hours: "h", Minutes: "min"}}).minutes(seconds)
}

// Percent is how far the plan can be above the shortest, in whole percent, rounded up.
func (p *Plan) Percent() int64 {
	if p.Proved || p.Bound <= 0 {
		return 0
	}
	return (100*(p.Length-p.Bound) + p.Bound - 1) / p.Bound
}

func (w *writer) head(look Look) {
	p := w.plan
	first := p.Inputs[0].Job
	title := look.Title
	if title == "" {
		title = p.Title(look.Day, w.words)
	}
	claim := w.words.Proved
	if !p.Proved {
		claim = strings.ReplaceAll(w.words.Bounded, "{percent}", strconv.FormatInt(p.Percent(), 10))
	}
	summary := strings.NewReplacer("{length}", w.minutes(p.Length), "{apart}", w.minutes(p.Apart)).Replace(w.words.Summary) + " " + claim
	var counts []string
	for _, one := range []struct {
		pattern string
		n, m    int
	}{{w.words.Cuts, p.Changes.Isolations, p.Without.Isolations}, {w.words.Covers, p.Changes.Covers, p.Without.Covers}, {w.words.Turns, p.Changes.Turns, p.Without.Turns}} {
		if one.m > 0 {
			counts = append(counts, strings.NewReplacer("{n}", strconv.Itoa(one.n), "{m}", strconv.Itoa(one.m)).Replace(one.pattern))
		}
	}
	if len(counts) > 0 {
		summary += " " + capital(strings.Join(counts, "; ")) + "."
	}
	w.line("benchleaf = 1")
	if uses := w.uses(); len(uses) > 0 {
		w.line("use = %s", quotes(uses))
	}
	w.line("")
	w.line("[procedure]")
	w.line("name = %s", quote(look.Name))
	w.line("title = %s", quote(title))
	w.line("machine = %s", quote(first.Procedure.Machine.Text))
	if first.Variant != "" {
		w.line("for = %s", quotes([]string{first.Variant}))
	}
	w.line("summary = %s", quote(summary))
	w.line("revision = \"1\"")
	w.line("date = %s", look.Day)
	w.line("author = %s", quote(w.several(func(p *model.Procedure) model.Text { return p.Author }, ", ")))
	w.line("who = %s", quote(w.who()))
	people, hands := max(1, p.Workers), int64(0)
	for _, input := range p.Inputs {
		people = max(people, input.Job.Procedure.People.Or(1))
	}
	for _, deed := range p.Deeds {
		if !deed.Step.Lasts() {
			hands += deed.Seconds
		}
	}
	if people > 1 {
		w.line("people = %d", people)
	}
	if p.Workers < 2 {
		hands *= int64(people) // all are there for all of it
	}
	w.line("hands-on = %s", quote(plain(hands)))
	w.line("elapsed = %s", quote(plain(p.Length)))
	w.line("when = %s", quote(strings.ReplaceAll(w.words.When, "{day}", look.Day)))
	names, revisions := make([]string, len(p.Inputs)), make([]string, len(p.Inputs))
	for i, input := range p.Inputs {
		names[i], revisions[i] = input.Job.File.Name(), input.Job.Procedure.Revision.Text
	}
	w.line("joins = %s", quotes(names))
	w.line("joined-revisions = %s", quotes(revisions))
	if tools := p.Tools.Tools; len(tools) > 0 {
		w.line("tools = %s", quotes(w.listed(tools)))
	} else {
		w.line("tools = []")
	}
	for _, one := range []struct {
		key  string
		list func(*model.Procedure) model.List
	}{
		{"start", func(p *model.Procedure) model.List { return p.Start }},
		{"end", func(p *model.Procedure) model.List { return p.End }},
		{"supplies", func(p *model.Procedure) model.List { return p.Supplies }},
		{"spares", func(p *model.Procedure) model.List { return p.Spares }},
		{"wear", func(p *model.Procedure) model.List { return p.Wear }},
		{"cautions", func(p *model.Procedure) model.List { return p.Cautions }},
		{"record", func(p *model.Procedure) model.List { return p.Record }},
		{"notes", func(p *model.Procedure) model.List { return p.Notes }},
	} {
		if list, given := w.union(one.list); given {
			w.line("%s = %s", one.key, quotes(list))
		}
	}
	for _, one := range []struct {
		key  string
		text func(*model.Procedure) model.Text
	}{
		{"manual", func(p *model.Procedure) model.Text { return p.Manual }},
		{"no-isolation", func(p *model.Procedure) model.Text { return p.NoIsolation }},
		{"no-close", func(p *model.Procedure) model.Text { return p.NoClose }},
	} {
		if text := w.several(one.text, "; "); text != "" && (one.key == "manual" || w.all(one.text)) {
			w.line("%s = %s", one.key, quote(text))
		}
	}
	w.allowed()
}

// Title is the usual title of a joined job.
func (p *Plan) Title(day string, words Words) string {
	return strings.NewReplacer("{n}", strconv.Itoa(len(p.Inputs)), "{day}", day).Replace(words.Title)
}

// all reports whether every procedure says something.
func (w *writer) all(text func(*model.Procedure) model.Text) bool {
	return !slices.ContainsFunc(w.plan.Inputs, func(input Input) bool { return !text(input.Job.Procedure).Set() })
}

// listed brings tools into the order of the cards.
func (w *writer) listed(tools []string) []string {
	on, _ := w.union(func(p *model.Procedure) model.List { return p.Tools })
	out := slices.Clone(tools)
	slices.SortStableFunc(out, func(a, b string) int {
		at := func(name string) int {
			if i := slices.Index(on, name); i >= 0 {
				return i
			}
			return len(on)
		}
		return at(a) - at(b)
	})
	return out
}

// uses are the files of procedures that describe things of their own.
func (w *writer) uses() []string {
	var out []string
	for _, input := range w.plan.Inputs {
		if input.Job.File.Describes() {
			out = append(out, input.Job.File.Source.Path)
		}
	}
	return out
}

// allowed takes over what the authors stand by.
func (w *writer) allowed() {
	seen := map[string]bool{}
	for _, input := range w.plan.Inputs {
		for _, allow := range slices.Concat(input.Job.Procedure.Allow, input.Job.File.Allow) {
			text := inline(input.Job.File.Source, allow.Table)
			if !seen[text] {
				seen[text] = true
				if len(seen) == 1 {
					w.out.WriteString("allow = [\n")
				}
				w.line("  %s,", text)
			}
		}
	}
	if len(seen) > 0 {
		w.line("]")
	}
}

var bare = pattern.MustCompile(`^[A-Za-z0-9_-]+$`)

func keyText(key string) string {
	if bare.MatchString(key) {
		return key
	}
	return quote(key)
}

// inline writes a table in braces.
func inline(file *source.File, table *tree.Table) string {
	if len(table.Entries) == 0 {
		return "{}"
	}
	var out []string
	for _, entry := range table.Entries {
		out = append(out, keyText(entry.Key)+" = "+valueText(file, entry.Value))
	}
	return "{ " + strings.Join(out, ", ") + " }"
}

// valueText writes a value as its author did, and tables in braces.
func valueText(file *source.File, value *tree.Value) string {
	switch value.Kind {
	case tree.TableKind:
		return inline(file, value.Table)
	case tree.TablesKind:
		out := make([]string, len(value.Items))
		for i, item := range value.Items {
			out[i] = inline(file, item.Table)
		}
		return "[" + strings.Join(out, ", ") + "]"
	case tree.StringKind:
		return quote(value.Text)
	case tree.ArrayKind:
		out := make([]string, len(value.Items))
		for i, item := range value.Items {
			out[i] = valueText(file, item)
		}
		return "[" + strings.Join(out, ", ") + "]"
	}
	return source.Place{File: file, Span: value.Span}.Text()
}

// steps writes the steps: those that make the machine ready first, those that close it up last.
func (w *writer) steps() {
	deeds := w.plan.Deeds
	ready := 0
	for ready < len(deeds) && deeds[ready].Step.Section == "prepare" {
		ready++
	}
	done := len(deeds) // what a procedure without a [[close]] ends with belongs to the end too
	for done > ready && (deeds[done-1].Step.Section == "close" || !deeds[done-1].Change && !w.closes(deeds[done-1].Input)) {
		done--
	}
	if !slices.ContainsFunc(deeds[done:], func(deed Deed) bool { return deed.Step.Section == "close" }) {
		done = len(deeds)
	}
	numbers := w.plan.numbers()
	for i := range deeds {
		section := "step"
		switch {
		case i < ready:
			section = "prepare"
		case i >= done:
			section = "close"
		}
		stage := ""
		if section == "step" && (i == 0 || i == ready || w.during(i-1) != w.during(i)) {
			stage = w.during(i)
		}
		w.step(section, stage, i, numbers)
		for at, wait := range w.plan.Waits {
			if wait.From == i {
				w.wait(section, at, wait, numbers)
			}
		}
	}
}

// during says what the machine is set to while a step is done: what goes back on is on only
// when it is.
func (w *writer) during(at int) string {
	deed := w.plan.Deeds[at]
	if at > 0 && deed.Change && slices.Contains(closing, deed.Step.Verb.Key) {
		deed = w.plan.Deeds[at-1]
	}
	return deed.State.words(w.words, w.spoken)
}

// closes reports whether a procedure has steps that close up.
func (w *writer) closes(input int) bool {
	return slices.ContainsFunc(w.plan.Inputs[input].Job.Steps, func(step *model.Step) bool { return step.Section == "close" })
}

// numbers are the numbers of the deeds on the card, where waits count too.
func (p *Plan) numbers() []int {
	out := make([]int, len(p.Deeds))
	n := 0
	for i := range p.Deeds {
		n++
		out[i] = n
		for _, wait := range p.Waits {
			if wait.From == i {
				n++
			}
		}
	}
	return out
}

// left out of a step: what the writer says itself.
var ownKeys = []string{"stage", "meanwhile", "id", "notes", "picture", "gate", "person", "once", "origin"}

func (w *writer) step(section, stage string, at int, numbers []int) {
	deed := w.plan.Deeds[at]
	file, table := deed.Step.File.Source, deed.Step.Table
	w.line("")
	w.line("[[%s]]", section)
	if stage != "" {
		w.line("stage = %s", quote(stage))
	}
	two := w.bothLock(deed)
	for _, entry := range table.Entries {
		switch {
		case slices.Contains(ownKeys, entry.Key):
		case entry.Key == "say" && two != "": // below
		case len(deed.Also) > 0 && slices.Contains(unitedKeys, entry.Key): // below, with those of the others
		case entry.Key == "spares" && len(deed.Renew) > 0: // below
		case entry.Key == deed.Step.Verb.Key && len(deed.Only) > 0:
			w.line("%s = %s", entry.Key, quotes(deed.Only))
		default:
			w.line("%s = %s", keyText(entry.Key), valueText(file, entry.Value))
		}
	}
	if len(deed.Renew) > 0 && len(deed.Also) == 0 {
		w.line("spares = %s", quotes(append(deed.Step.Spares.Names(), deed.Renew...)))
	}
	authors := append([]*model.Step{deed.Step}, deed.Also...)
	if len(deed.Also) > 0 {
		w.unite(deed, two)
	}
	if at := slices.IndexFunc(authors, func(step *model.Step) bool { return step.Picture != nil }); at >= 0 {
		w.picture(authors[at].File.Source, authors[at].Picture)
	}
	notes := allOf(authors, func(s *model.Step) model.List { return s.Notes })
	if deed.Between {
		notes = append(notes, strings.ReplaceAll(w.words.Why, "{setting}", uncapital(deed.State.words(w.words, w.spoken))))
	}
	if deed.Held >= 0 {
		notes = append(notes, strings.ReplaceAll(w.words.Held, "{n}", strconv.Itoa(numbers[w.plan.Waits[deed.Held].From])))
	}
	if deed.Gate >= 0 {
		if wait := w.plan.Waits[deed.Gate]; at > wait.From+1 || len(deed.Open) > 0 { // or else it would be read as done meanwhile
			gate := w.words.Gate
			if wait.Most > 0 {
				gate = w.words.Between
			}
			w.line("gate = %s", quote(strings.NewReplacer("{time}", w.minutes(wait.Least), "{most}", w.minutes(wait.Most/60*60), "{n}", strconv.Itoa(numbers[wait.From])).Replace(gate)))
		}
	}
	if len(notes) > 0 {
		w.line("notes = %s", quotes(notes))
	}
	if len(deed.Open) > 0 || w.goesOn(at) {
		w.line("meanwhile = true")
	}
	if two != "" && len(deed.Also) == 0 {
		w.line("say = %s", quote(besides(deed, deed.Step.Say.Text, two)))
	}
	if deed.Worker > 0 {
		w.line("person = %d", deed.Worker)
	}
	if len(deed.Once) > 0 {
		once := make([]string, len(deed.Once))
		for i, e := range deed.Once {
			once[i] = stepID(numbers[e])
		}
		w.line("once = %s", quotes(once))
	}
	if slices.ContainsFunc(w.plan.Deeds, func(other Deed) bool { return slices.Contains(other.Once, at) }) {
		w.line("id = %s", quote(stepID(numbers[at])))
	}
	if !deed.Again { // or else the service book would count it as that of its procedure
		w.line("origin = %s", quote(w.origin(deed)))
	}
}

// stepID is the short name of a step of a job for two, by its number when it was joined.
func stepID(number int) string { return fmt.Sprintf("step-%d", number) }

// bothLock is what two people do besides where an energy is cut off or given back; empty for one.
// By 29 CFR 1910.147(f)(3)(ii)(D) each of a group has a lock of their own, and by (e)(3) each
// takes off their own. Where an energy has no lock, nothing is said of one.
func (w *writer) bothLock(deed Deed) string {
	if w.plan.Workers < 2 || !deed.Change {
		return ""
	}
	locked := false
	for _, step := range append([]*model.Step{deed.Step}, deed.Also...) {
		locked = locked || w.plan.Inputs[deed.Input].Job.LocksAt(step, deed.Only)
	}
	switch verb := deed.Step.Verb.Key; {
	case verb == "isolate" && locked:
		return w.words.Locks
	case verb == "restore" && locked:
		return w.words.Clear + " " + w.words.Unlock
	case verb == "restore":
		return w.words.Clear
	}
	return ""
}

// besides are the words of a step with what two people do besides: behind them, but before an
// energy is given back.
func besides(deed Deed, say, two string) string {
	if deed.Step.Verb.Key == "restore" {
		say, two = two, say
	}
	return strings.TrimSpace(say + "\n\n" + two)
}

// goesOn reports whether a step is done while the step of its own procedure before it takes its
// time: a run, or a wait that nobody else fills.
func (w *writer) goesOn(at int) bool {
	deed := w.plan.Deeds[at]
	if !deed.Step.Meanwhile.On || at == 0 || w.plan.Deeds[at-1].Input != deed.Input {
		return false
	}
	return w.plan.Deeds[at-1].Step.Lasts() || w.goesOn(at-1)
}

// origin says whose step it is, and which steps of others it does the work of: "A 3, B 1".
func (w *writer) origin(deed Deed) string {
	out := fmt.Sprintf("%s %d", model.Letter(deed.Input), deed.Step.Number)
	for _, step := range deed.Also {
		for i, input := range w.plan.Inputs {
			if slices.Contains(input.Job.Steps, step) {
				out += fmt.Sprintf(", %s %d", model.Letter(i), step.Number)
			}
		}
	}
	return out
}

// picture writes a picture with its path from the top of the shop folder.
func (w *writer) picture(file *source.File, picture *model.Picture) {
	var out []string
	for _, entry := range picture.Table.Entries {
		text := valueText(file, entry.Value)
		if entry.Key == "file" {
			text = quote(picture.Place())
		}
		out = append(out, keyText(entry.Key)+" = "+text)
	}
	w.line("picture = { %s }", strings.Join(out, ", "))
}

// wait writes a wait behind the step it begins with.
func (w *writer) wait(section string, at int, wait Wait, numbers []int) {
	w.line("")
	w.line("[[%s]]", section)
	for _, entry := range wait.Step.Table.Entries {
		if !slices.Contains(ownKeys, entry.Key) {
			w.line("%s = %s", keyText(entry.Key), valueText(wait.Step.File.Source, entry.Value))
		}
	}
	var notes []string
	for _, note := range wait.Step.Notes.Items {
		notes = append(notes, note.Text)
	}
	if wait.To > wait.From+1 {
		fill, from, to := w.words.Fill, numbers[wait.From+1], numbers[wait.To-1]
		if from == to {
			fill = w.words.FillOne
		}
		notes = append(notes, strings.NewReplacer("{from}", strconv.Itoa(from), "{to}", strconv.Itoa(to)).Replace(fill))
	}
	if len(notes) > 0 {
		w.line("notes = %s", quotes(notes))
	}
	if picture := wait.Step.Picture; picture != nil {
		w.picture(wait.Step.File.Source, picture)
	}
	if open := w.plan.Deeds[wait.From].Open; len(open) > 0 && at != open[0] {
		w.line("meanwhile = true")
	}
	w.line("origin = %s", quote(fmt.Sprintf("%s %d", model.Letter(wait.Input), wait.Step.Number)))
}

// spoken is how a thing of the machine is called.
func (w *writer) spoken(kind, name string) string {
	job := w.plan.Inputs[0].Job
	switch kind {
	case "energy":
		if energy := job.Energy(name); energy != nil {
			return energy.Words()
		}
	case "cover":
		if part := job.Part(name); part != nil {
			return part.Words()
		}
	case "pose":
		if pose := job.Pose(name); pose != nil {
			return pose.Words()
		}
	}
	return name
}

// Told says what the machine is set to.
func (p *Plan) Told(s Setting, words Words) string {
	return s.words(words, (&writer{plan: p}).spoken)
}

// words say what the machine is set to: "Mains, chain load locked off · chain guard off".
func (s Setting) words(words Words, spoken func(kind, name string) string) string {
	var out []string
	put := func(pattern, kind string, names []string) {
		if len(names) == 0 {
			return
		}
		said := make([]string, len(names))
		for i, name := range names {
			said[i] = spoken(kind, name)
		}
		out = append(out, strings.ReplaceAll(pattern, "{things}", strings.Join(said, ", ")))
	}
	put(words.Locked, "energy", s.Cut)
	if s.Pose != "" {
		out = append(out, spoken("pose", s.Pose))
	}
	put(words.Up, "", s.Up)
	put(words.Off, "cover", s.Off)
	if len(out) == 0 {
		return words.Whole
	}
	return capital(strings.Join(out, words.Together))
}

func uncapital(text string) string {
	for i, r := range text {
		return strings.ToLower(string(r)) + text[i+len(string(r)):]
	}
	return text
}

func capital(text string) string {
	for i, r := range text {
		return strings.ToUpper(string(r)) + text[i+len(string(r)):]
	}
	return text
}
