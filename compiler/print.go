package compiler

import (
	"cmp"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"sync/atomic"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/compose"
	"benchleaf/compiler/internal/emit/csv"
	"benchleaf/compiler/internal/emit/json"
	"benchleaf/compiler/internal/emit/pdf"
	"benchleaf/compiler/internal/emit/sarif"
	"benchleaf/compiler/internal/emit/svg"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
)

// Look is how pages are to be made; what is empty is as the shop file says.
type Look struct {
	Stock    string // a5, a4, letter, half-letter, a6, 4x6
	Units    string // metric, inch, both
	Distance string // from the eye to the page: "500 mm"
	Language string // of the fixed words: en, de, fr, es
	Pictures bool   // each side as an SVG besides
	Sheet    string // the cards several to a sheet of this stock besides, with cut marks
}

// Stocks lists the names of the stocks a page can be printed on.
func Stocks() []string {
	stocks, err := pages.Stocks()
	if err != nil {
		panic(err) // the stocks are part of the program, and a test reads them
	}
	names := make([]string, len(stocks))
	for i, stock := range stocks {
		names[i] = stock.Name
	}
	return names
}

// Units lists the choices of units a page can be printed in.
func Units() []string { return compose.Units() }

// Languages lists the languages pages can be printed in.
func Languages() []string { return plan.Languages() }

// Check says what is wrong with a look, or nil. A stock may be one of a shop's own, and
// is looked up when a page is made.
func (look Look) Check() error {
	if look.Sheet != "" {
		if _, err := pages.FindStock(look.Sheet); err != nil {
			return err
		}
	}
	if look.Units != "" {
		if _, err := compose.System(look.Units); err != nil {
			return err
		}
	}
	if look.Language != "" && !slices.Contains(Languages(), look.Language) {
		return fmt.Errorf("no language %q; there are: %s", look.Language, strings.Join(Languages(), ", "))
	}
	if look.Distance != "" {
		if _, err := distance(look.Distance); err != nil {
			return err
		}
	}
	return nil
}

func distance(text string) (float64, error) {
	amount, problems := quantity.Parse(text, quantity.Length)
	if len(problems) > 0 {
		return 0, fmt.Errorf("reading distance: %s", problems[0].Message)
	}
	most, ok := amount.Max()
	mm, _ := most.Float64()
	if !ok || mm < 200 || mm > 5000 {
		return 0, fmt.Errorf("reading distance %s is not from 200 mm to 5 m", text)
	}
	return mm, nil
}

// settle fills in what the shop file says, and then what is usual.
func (look Look) settle(shop compose.Wishes) (pages.Look, quantity.System, error) {
	if err := look.Check(); err != nil {
		return pages.Look{}, 0, err
	}
	var own []pages.Stock
	for _, one := range shop.Own {
		own = append(own, pages.Stock(one))
	}
	stock, err := pages.FindStock(first(look.Stock, shop.Stock, pages.DefaultStock), own...)
	if err != nil {
		return pages.Look{}, 0, err
	}
	system, err := compose.System(first(look.Units, shop.Units, "both"))
	if err != nil {
		return pages.Look{}, 0, err
	}
	settled := pages.Look{Stock: stock, DistanceMM: shop.DistanceMM}
	if look.Distance != "" {
		settled.DistanceMM, err = distance(look.Distance)
	}
	return settled, system, err
}

// stockFault says what is wrong with a stock of a shop's own, or nil; amounts that
// cannot be read are told by others.
func stockFault(stock *model.Stock) error {
	for _, length := range append([]model.Amount{stock.Width, stock.Height, stock.Border, stock.Binding, stock.Top, stock.Corner, stock.Distance}, stock.Hole...) {
		if length.Set() && !length.OK {
			return nil
		}
	}
	if !stock.Width.Set() || !stock.Height.Set() || !stock.Border.Set() || !stock.Title.Set() {
		return nil
	}
	if slices.ContainsFunc(Stocks(), func(known string) bool { return strings.EqualFold(known, stock.Name) }) {
		return fmt.Errorf("there is a stock %q already; give yours another name", stock.Name)
	}
	_, err := pages.FindStock(stock.Name, pages.Stock(compose.Own(stock)))
	return err
}

func first(texts ...string) string {
	for _, text := range texts {
		if text != "" {
			return text
		}
	}
	return ""
}

// Trouble is something that could not be shown on a page as it should.
type Trouble struct{ Output, Where, Text string }

// Cards draws a bench card for each job that no error stands against, in order;
// one card serves versions of a machine for which it says the same. Pictures of its
// sides follow it, where they are asked for. done is called as cards are finished, with how many of how many; it may be nil.
func (r *Result) Cards(look Look, done func(n, of int)) ([]Output, []Trouble, error) {
	var out []Output
	_, troubles, err := r.eachCard(look, nil, func(one Output) error {
		out = append(out, one)
		return nil
	}, done)
	if err != nil {
		return nil, nil, err
	}
	return out, troubles, nil
}

// Ready reads what cards are made of, whatever they say, while the shop is still being checked. It
// need not be called.
func (look Look) Ready() {
	go pages.Ready()
	go func() { _, _ = plan.LoadWords(cmp.Or(look.Language, model.English)) }() // a language that is none is told by Check
}

// Print makes what Cards and then Pick give, and hands each card to take as soon as it is drawn, so
// that they need not be there at one time. It ends with the first error of take. A card that says
// what it said is taken out of keep, which may be nil.
func (r *Result) Print(look Look, keep Keep, take func(Output) error, done func(n, of int)) (lists []Output, troubles []Trouble, err error) {
	drawn, troubles, err := r.eachCard(look, keep, take, done)
	if err != nil || len(drawn.asked) == 0 {
		return nil, troubles, err
	}
	lists, more, err := r.pickOf(look, drawn)
	return lists, append(troubles, more...), err
}

// drawn is what is kept of the cards that were drawn, for the lists.
type drawn struct {
	asked  []asked
	jobs   []Job          // all that they serve
	wishes compose.Wishes // of the shop of the first
}

// asked is the first job that a card serves, without its work in a lean compile, and the versions
// as they print.
type asked struct {
	Job
	versions string
}

// add keeps what lists tell of a card.
func (d *drawn) add(card composedCard, lean bool) {
	if len(d.asked) == 0 {
		d.wishes = compose.WishesOf(card.jobs[0].work.Job)
	}
	jobs := card.jobs
	if lean {
		jobs = slices.Clone(jobs)
		for i := range jobs {
			jobs[i].work = compose.Work{}
		}
	}
	d.asked, d.jobs = append(d.asked, asked{jobs[0], card.content.Variant}), append(d.jobs, jobs...)
}

// eachCard draws the cards, some procedures at a time, and hands each over in order.
func (r *Result) eachCard(look Look, keep Keep, take func(Output) error, done func(n, of int)) (drawn, []Trouble, error) {
	var all drawn
	var told []Trouble
	var sheet []composedCard
	var documents []pages.Document
	var finished atomic.Int64
	printed := r.printed()
	err := r.rounds(printed, func(jobs []Job) error {
		composed, err := r.composeJobs(look, jobs)
		if err != nil {
			return err
		}
		outputs, sides := make([][]Output, len(composed)), make([]pages.Document, len(composed))
		troubles, faults := make([][]Trouble, len(composed)), make([]error, len(composed))
		inParallel(len(composed), func(i int) {
			card := composed[i]
			if look.Sheet != "" {
				var problems []pages.Problem
				sides[i], problems = pages.LayCard(card.content, card.look)
				outputs[i], troubles[i], faults[i] = look.draw(card.name(), sides[i], problems, card.jobs)
			} else {
				outputs[i], troubles[i], faults[i] = look.drawn(card, keep)
			}
			if n := int(finished.Add(int64(len(composed[i].jobs)))); done != nil {
				done(n, len(printed))
			}
		})
		for i, card := range composed {
			if faults[i] != nil {
				return faults[i]
			}
			for _, output := range outputs[i] {
				if err := take(output); err != nil {
					return err
				}
			}
			told = append(told, troubles[i]...)
			all.add(card, r.turns != nil)
		}
		if look.Sheet != "" {
			sheet, documents = append(sheet, composed...), append(documents, sides...)
		}
		return nil
	})
	if err == nil && len(sheet) > 0 {
		var sheets []Output
		sheets, err = look.imposed(sheet, documents)
		for _, one := range sheets {
			if err == nil {
				err = take(one)
			}
		}
	}
	return all, told, err
}

// imposed puts the cards several to a sheet: cards-on-a4.pdf.
func (look Look) imposed(composed []composedCard, documents []pages.Document) ([]Output, error) {
	sheet, err := pages.FindStock(look.Sheet)
	if err != nil {
		return nil, err
	}
	document, err := pages.Impose(documents, composed[0].look.Stock, sheet)
	if err != nil {
		return nil, err
	}
	out, _, err := look.draw("cards-on-"+sheet.Name+".pdf", document, nil, jobsOf(composed))
	return out, err
}

func jobsOf(composed []composedCard) []Job {
	var out []Job
	for _, card := range composed {
		out = append(out, card.jobs...)
	}
	return out
}

// composedCard is the words of one card, with the versions it serves.
type composedCard struct {
	jobs    []Job
	content plan.Card
	look    pages.Look
	alone   bool // it serves every version there is
}

func (c composedCard) name() string {
	name := c.jobs[0].Name
	if !c.alone {
		for _, job := range c.jobs {
			name += "-" + job.Variant
		}
	}
	return name + ".pdf"
}

// compose puts the cards into words and joins those that say the same.
func (r *Result) compose(look Look) ([]composedCard, error) {
	return r.composeJobs(look, r.printed())
}

// printed are the jobs that no error stands against.
func (r *Result) printed() []Job {
	return slices.DeleteFunc(slices.Clone(r.Jobs), func(job Job) bool { return job.Blocked })
}

func (r *Result) composeJobs(look Look, jobs []Job) ([]composedCard, error) {
	cards, err := r.composed(look, jobs)
	if err != nil {
		return nil, err
	}
	var out []composedCard
	of := map[string][]int{} // the cards of a file
	for _, card := range cards {
		path := card.jobs[0].Path
		if at := slices.IndexFunc(of[path], func(i int) bool { return out[i].same(card) }); at >= 0 {
			one := &out[of[path][at]]
			one.jobs = append(one.jobs, card.jobs...)
			continue
		}
		of[path] = append(of[path], len(out))
		out = append(out, card)
	}
	for i := range out {
		out[i].alone = len(out[i].jobs) == out[i].jobs[0].versions
		if len(out[i].jobs) > 1 {
			out[i].content.Variant = variants(out[i].jobs)
		}
	}
	return out, nil
}

// composeEach puts the card of each job into words.
func (r *Result) composeEach(look Look) ([]composedCard, error) { return r.composed(look, r.printed()) }

func (r *Result) composed(look Look, jobs []Job) ([]composedCard, error) {
	cards := make([]composedCard, len(jobs))
	faults := make([]error, len(jobs))
	inParallel(len(jobs), func(i int) {
		settled, system, err := look.settle(compose.WishesOf(jobs[i].work.Job))
		if err == nil {
			cards[i] = composedCard{jobs: jobs[i : i+1 : i+1], look: settled}
			cards[i].content, err = compose.Card(jobs[i].work.In(look.Language), system, reasons(jobs[i].allowed))
			cards[i].content.Timeline = r.timelines[jobs[i].Name]
		}
		faults[i] = err
	})
	for _, fault := range faults {
		if fault != nil {
			return nil, fault
		}
	}
	return cards, nil
}

func variants(jobs []Job) string {
	var out []string
	for _, job := range jobs {
		out = append(out, job.Variant)
	}
	return strings.Join(out, ", ")
}

// same reports whether two cards of one procedure say the same.
func (c composedCard) same(other composedCard) bool {
	a, b := c.content, other.content
	a.Variant, b.Variant = "", ""
	return reflect.DeepEqual(a, b)
}

// draw makes the PDF of a document that serves some jobs, and behind it, where the look
// asks for them, a picture of each side: gearbox-oil-1.svg beside gearbox-oil.pdf.
func (look Look) draw(name string, document pages.Document, problems []pages.Problem, jobs []Job) ([]Output, []Trouble, error) {
	bytes, err := pdf.Draw(document)
	if err != nil {
		return nil, nil, fmt.Errorf("%s: %w", name, err)
	}
	outputs := []Output{{Name: name, Bytes: bytes, Jobs: jobs}}
	if look.Pictures {
		sides, err := svg.Draw(document)
		if err != nil {
			return nil, nil, fmt.Errorf("%s: %w", name, err)
		}
		for i, side := range sides {
			outputs = append(outputs, Output{Name: fmt.Sprintf("%s-%d.svg", strings.TrimSuffix(name, ".pdf"), i+1), Bytes: side, Jobs: jobs})
		}
	}
	var troubles []Trouble
	for _, problem := range problems {
		troubles = append(troubles, Trouble{name, problem.Where, problem.Text})
	}
	return outputs, troubles, nil
}

func reasons(allowed []finding.Finding) []string {
	var out []string
	for _, found := range allowed {
		reason := ""
		if n := len(found.Related); n > 0 {
			reason = ": " + found.Related[n-1].Text
		}
		out = append(out, found.Summary+reason)
	}
	return out
}

// Pick draws the pick list of all jobs that no error stands against, as PDF and
// as CSV; versions of a machine that need the same count once.
func (r *Result) Pick(look Look) ([]Output, []Trouble, error) {
	composed, err := r.compose(look)
	if err != nil || len(composed) == 0 {
		return nil, nil, err
	}
	var all drawn
	for _, card := range composed {
		all.add(card, false)
	}
	return r.pickOf(look, all)
}

// pickOf draws the pick list of the cards that were drawn.
func (r *Result) pickOf(look Look, all drawn) ([]Output, []Trouble, error) {
	each := func(do func(i int, asked compose.Asked)) {
		n := 0
		jobs := make([]Job, len(all.asked))
		for i, one := range all.asked {
			jobs[i] = one.Job
		}
		_ = r.rounds(jobs, func(jobs []Job) error {
			for _, job := range jobs {
				do(n, compose.Asked{Work: job.work.In(look.Language), Variant: all.asked[n].versions})
				n++
			}
			return nil
		})
	}
	return look.pick("pick-list", all.wishes, func(system quantity.System) (plan.PickList, error) {
		return compose.PickInTurn(len(all.asked), each, system, nil)
	}, all.jobs, "")
}

// rounds gives some jobs, in order of their files, a few files at a time, with what pages are made
// of in place. It ends with the first error.
func (r *Result) rounds(jobs []Job, do func(jobs []Job) error) (err error) {
	for len(jobs) > 0 && err == nil {
		n, files := 0, []*model.File(nil)
		for ; n < len(jobs); n++ {
			if n == 0 || jobs[n].Path != jobs[n-1].Path {
				if len(files) == severalFiles {
					break
				}
				files = append(files, r.set.File(jobs[n].Path))
			}
		}
		turn := jobs[:n]
		if jobs = jobs[n:]; r.turns == nil {
			err = do(turn)
		} else {
			r.turns.With(files, func() { err = do(r.working(turn, files)) })
		}
	}
	return err
}

// working puts what pages are made of to some jobs, which are of some files.
func (r *Result) working(jobs []Job, files []*model.File) []Job {
	of, at := make([]works, len(files)), map[string]int{}
	inParallel(len(files), func(i int) {
		of[i] = workOf(r.set, files[i])
		of[i].compare(files[i])
	})
	for i, file := range files {
		at[file.Source.Path] = i
	}
	pictures := leafThrough(files, r.pictures)
	out := slices.Clone(jobs)
	for i := range out {
		work := of[at[out[i].Path]]
		version := slices.IndexFunc(work.jobs, func(job *model.Job) bool { return job.Variant == out[i].Variant })
		out[i].work = work.of(version, pictures)
	}
	return out
}

// pick draws a list of what to fetch for some jobs, as PDF and as CSV. Where a day is given it is
// what to bring for what is due then.
func (look Look) pick(name string, wishes compose.Wishes, list func(system quantity.System) (plan.PickList, error), jobs []Job, on string) ([]Output, []Trouble, error) {
	settled, system, err := look.settle(wishes)
	if err != nil {
		return nil, nil, err
	}
	content, err := list(system)
	if err != nil {
		return nil, nil, err
	}
	if on != "" {
		labels := content.Words.Labels
		content.Kind, content.Title, content.Date, content.DateIs = labels.BringList, labels.BringList, on, labels.Date
	}
	document, problems := pages.LayPick(content, settled)
	outputs, troubles, err := look.draw(name+".pdf", document, problems, jobs)
	if err != nil {
		return nil, nil, err
	}
	table, err := csv.Pick(content)
	return append(outputs, Output{Name: name + ".csv", Bytes: table, Jobs: jobs}), troubles, err
}

// JSON is the findings and jobs for other programs, in a form that stays.
func (r *Result) JSON() []byte {
	report := json.Report{Findings: r.Findings, Allowed: r.Allowed}
	for _, job := range r.Jobs {
		report.Procedures = append(report.Procedures, json.Procedure{File: job.Path, Name: job.Name, Title: job.Title,
			Machine: job.Machine, Variant: job.Variant, Revision: job.Revision, Blocked: job.Blocked})
	}
	return json.Write(report)
}

// SARIF is the findings as a log of SARIF 2.1.0, for programs that show findings of many
// tools; version is what benchleaf says of itself.
func (r *Result) SARIF(version string) []byte {
	return sarif.Write(sarif.Log{Version: version, Rules: Rules(), Findings: r.Findings, Allowed: r.Allowed})
}

// Fix applies the certain fixes of the findings to their files' texts, and
// returns the files that changed with what was done. Where fixes meet, the first
// by place wins; a second compile finds what is left.
func (r *Result) Fix() ([]Output, []Mend) { return fixed(r.Findings) }
