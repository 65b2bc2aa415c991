package compiler

import (
	"cmp"
	"fmt"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/emit/pdf/pdftest"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/plan"
)

// BenchmarkManualAgainstTypesetters makes the manual of the demonstration shop a PDF on A4:
//
//   - benchleaf: the command, built before the clock, reads, checks and lays out the shop;
//   - bare: the marks of its pages drawn by the PDF library alone, in this process: the floor;
//   - groff: troff, tbl, preconv and the macros ms, as a whole: groff -k -t -ms -Tpdf;
//   - weasyprint: HTML and CSS with the same faces.
//
// The typesetters get the words of plan.Manual in the order of the pages: headings, tables,
// messages in boxes, numbered steps, values and blanks in frames, lists with boxes to tick,
// heads and feet with the number of the page. Their input is made before the clock, so they
// neither read procedures nor check them. They leave out drawings, pictures and signs, the numbers of pages in contents,
// tables and index, the links, the drawings of bolt circles, and that nothing is parted which
// belongs together; groff also the grounds in colour and the faces inside the file. A test
// holds their pages to within a quarter of those of benchleaf, and the words to the same.
//
// Each is a whole process from its start to the file on disk, but for the floor. Programs
// take turns with the floor; rates and ratios are of the medians of at least three rounds.
// pages/s counts the pages each makes of its own; ×bare is time for the manual over that of
// the floor.
func BenchmarkManualAgainstTypesetters(b *testing.B) {
	content, document := boundManual(b)
	folder := b.TempDir()
	for _, way := range waysToPrint() {
		b.Run(way.name, func(b *testing.B) {
			run := way.ready(b, content, document, folder)
			var took, floor []time.Duration
			for b.Loop() {
				for range 3 {
					start := time.Now()
					run()
					took = append(took, time.Since(start))
					start = time.Now()
					require.NoError(b, pdftest.Bare(document))
					floor = append(floor, time.Since(start))
				}
			}
			made := len(document.Sides)
			if file := filepath.Join(folder, way.name, "manual.pdf"); way.name != "bare" {
				made = pagesIn(b, file)
			}
			b.ReportMetric(0, "ns/op") // of three rounds and their floors
			b.ReportMetric(float64(made), "pages")
			b.ReportMetric(float64(made)/median(took).Seconds(), "pages/s")
			b.ReportMetric(float64(median(took))/float64(median(floor)), "×bare")
		})
	}
}

func median(all []time.Duration) time.Duration {
	sorted := slices.Sorted(slices.Values(all))
	return sorted[len(sorted)/2]
}

// Each typesetter makes of its input a PDF with as many pages as the manual has, within a
// quarter, and its words are those of the manual.
func TestTypesettersSetTheSameManual(t *testing.T) {
	if testing.Short() {
		t.Skip("nothing here runs side by side")
	}
	content, document := boundManual(t)
	folder := t.TempDir()
	whole := wordsIn(strings.Join(spoken(document), " "))
	for _, way := range waysToPrint() {
		if way.name == "bare" {
			continue
		}
		t.Run(way.name, func(t *testing.T) {
			pdftotext := outside(t, "pdftotext")
			way.ready(t, content, document, folder)()
			file := filepath.Join(folder, way.name, "manual.pdf")
			assert.InEpsilon(t, len(document.Sides), pagesIn(t, file), 0.25, "pages")
			text, err := exec.Command(pdftotext, "-raw", file, "-").Output()
			require.NoError(t, err)
			missing, all := 0, 0
			there := wordsIn(string(text))
			for word, n := range whole {
				all += n
				missing += max(0, n-there[word])
			}
			extra := -all + missing
			for _, n := range there {
				extra += n
			}
			t.Logf("%d pages; %d of %d words are missing, %d are more", pagesIn(t, file), missing, all, extra)
			assert.Less(t, float64(missing), 0.03*float64(all), "words missing")
			assert.Less(t, float64(extra), 0.03*float64(all), "words more")
		})
	}
}

var wordPattern = regexp.MustCompile(`\pL[\pL\d]*`)

// wordsIn counts the words of a text: what begins with a letter.
func wordsIn(text string) map[string]int {
	out := map[string]int{}
	for _, word := range wordPattern.FindAllString(text, -1) {
		out[word]++
	}
	return out
}

// spoken are the texts of a document.
func spoken(document pages.Document) (out []string) {
	for _, side := range document.Sides {
		for _, mark := range side.Marks {
			if text, ok := mark.(pages.Text); ok {
				out = append(out, text.Text)
			}
		}
	}
	return out
}

func boundManual(t testing.TB) (plan.Manual, pages.Document) {
	t.Helper()
	content, look, _, err := Compile(Input{Files: ReadFolder(t, "../procedures")}).bind(Look{Stock: "a4"})
	require.NoError(t, err)
	document, problems := pages.LayManual(content, look)
	require.Empty(t, problems)
	return content, document
}

func pagesIn(t testing.TB, file string) int {
	t.Helper()
	said, err := exec.Command(outside(t, "pdfinfo"), file).Output()
	require.NoError(t, err)
	_, rest, _ := strings.Cut(string(said), "Pages:")
	n, err := strconv.Atoi(strings.Fields(rest)[0])
	require.NoError(t, err)
	return n
}

// wayToPrint makes ready what comes before the clock, and gives what runs on it; the PDF
// comes to lie in a folder of its name.
type wayToPrint struct {
	name  string
	ready func(t testing.TB, content plan.Manual, document pages.Document, folder string) func()
}

func waysToPrint() []wayToPrint {
	into := func(t testing.TB, folder, name string) string {
		path, err := filepath.Abs(filepath.Join(folder, name))
		require.NoError(t, err)
		require.NoError(t, os.MkdirAll(path, 0o755))
		return path
	}
	runs := func(t testing.TB, program string, args ...string) func() {
		return func() {
			said, err := exec.Command(program, args...).CombinedOutput()
			require.NoError(t, err, string(said))
		}
	}
	return []wayToPrint{
		{"benchleaf", func(t testing.TB, _ plan.Manual, _ pages.Document, folder string) func() {
			folder = into(t, folder, "benchleaf")
			command := filepath.Join(folder, "benchleaf.exe")
			runs(t, outside(t, "go"), "build", "-o", command, "../cmd/benchleaf")()
			return runs(t, command, "manual", "../procedures", "--stock", "a4", "--out", folder)
		}},
		{"bare", func(t testing.TB, _ plan.Manual, document pages.Document, _ string) func() {
			return func() { require.NoError(t, pdftest.Bare(document)) }
		}},
		{"groff", func(t testing.TB, content plan.Manual, _ pages.Document, folder string) func() {
			groff := outside(t, "groff")
			outside(t, "gropdf") // a small groff has neither it nor ms
			folder = into(t, folder, "groff")
			file := filepath.Join(folder, "manual.ms")
			require.NoError(t, os.WriteFile(file, []byte(troffOf(content)), 0o600))
			return func() {
				out, err := os.Create(filepath.Join(folder, "manual.pdf"))
				require.NoError(t, err)
				command := exec.Command(groff, "-k", "-t", "-ms", "-Tpdf", "-dpaper=a4", "-P-pa4", file)
				command.Stdout = out
				require.NoError(t, command.Run())
				require.NoError(t, out.Close())
			}
		}},
		{"weasyprint", func(t testing.TB, content plan.Manual, _ pages.Document, folder string) func() {
			weasyprint := outside(t, "weasyprint")
			folder = into(t, folder, "weasyprint")
			file := filepath.Join(folder, "manual.html")
			require.NoError(t, os.WriteFile(file, []byte(webOf(content)), 0o600))
			for _, face := range []pages.Face{pages.Regular, pages.Bold, pages.BoldItalic} {
				require.NoError(t, os.WriteFile(filepath.Join(folder, fmt.Sprintf("face%d.ttf", face)), face.TrueType(), 0o600))
			}
			return runs(t, weasyprint, "--quiet", file, filepath.Join(folder, "manual.pdf"))
		}},
	}
}

// typesetter writes the input of a program; each call adds to what is there.
type typesetter interface {
	cover(shop, title, latest, date string)
	chapter(number, above, title, stamp string) // on a page of its own
	section(title, aside string)
	stage(title, aside string)
	level(signal, word, means string)
	message(caution plan.Caution, label, text, aside string) // in a box; text is empty where it only names the hazard
	table(columns []string, rows [][]string)                 // columns are empty where nothing stands above
	step(number string, action []plan.Run)
	value(label, text, also string)
	blank(label, unit, limit string)
	things(label string, columns int, texts []string) // with boxes to tick
	labelled(label string, texts ...string)
	text(texts ...string)
	record(title string, blanks []plan.Blank, limit string)
}

// set says a manual to a typesetter, in the order of its pages.
func set(m plan.Manual, to typesetter) {
	s := said{to, m.Words.Labels}
	labels := s.labels
	to.cover(m.Shop, m.Title, labels.Latest, m.Date)
	to.section(labels.Machines, "")
	for _, machine := range m.Machines {
		about := []string{machine.Title}
		for _, fact := range machine.Facts {
			if fact.Label == labels.Maker || fact.Label == labels.Model {
				about = append(about, fact.Text)
			}
		}
		to.text(about...)
	}
	to.text(labels.OwnFirst, labels.Local)
	above := m.Shop + " · " + m.Title
	to.chapter("", above, labels.Revisions, "")
	columns := []string{labels.Procedure, labels.Revision, labels.Date, labels.Author, labels.Checked, labels.Page}
	for i, machine := range m.Machines {
		var rows [][]string
		for _, card := range machine.Procedures {
			rows = append(rows, []string{titled(card), card.Revision, card.Date, card.Author, card.Checked, ""})
		}
		if i > 0 {
			columns = make([]string, 6)
		}
		to.stage(machine.Title, "")
		to.table(columns, rows)
	}
	to.chapter("", above, labels.Contents, "")
	to.table(nil, contents(m))
	to.chapter("1", above, labels.Safety, "")
	to.text(labels.SafetyLead, labels.Local)
	s.messages(m)
	s.signs(m)
	for i, machine := range m.Machines {
		number := strconv.Itoa(i + 2)
		to.chapter(number, above, machine.Title, "")
		s.facts(machine.Facts)
		s.places(machine.Map)
		for _, table := range machine.Tables {
			to.section(table.Title, "")
			var rows [][]string
			for _, row := range table.Rows {
				rows = append(rows, row.Cells)
			}
			to.table(table.Columns, rows)
		}
		for k, card := range machine.Procedures {
			s.card(card, number+"."+strconv.Itoa(k+1))
		}
	}
	last := len(m.Machines) + 2
	to.chapter(strconv.Itoa(last), above, labels.Pick, "")
	s.pick(m.Pick)
	to.chapter(strconv.Itoa(last+1), above, labels.Index, "")
	for _, group := range m.Index {
		to.section(group.Title, "")
		var rows [][]string
		third := (len(group.Entries) + 2) / 3
		for i := range third {
			var row []string
			for k := i; k < len(group.Entries); k += third {
				row = append(row, between(", ", group.Entries[k].Term, group.Entries[k].Of))
			}
			rows = append(rows, append(row, make([]string, 3-len(row))...))
		}
		to.table(nil, rows)
	}
}

func titled(card plan.Card) string { return between(", ", card.Title, card.Variant) }

// between puts a mark between the texts that are not empty.
func between(mark string, texts ...string) string {
	return strings.Join(slices.DeleteFunc(texts, func(text string) bool { return text == "" }), mark)
}

func contents(m plan.Manual) (out [][]string) {
	labels := m.Words.Labels
	out = append(out, []string{"1", labels.Safety})
	for i, machine := range m.Machines {
		number := strconv.Itoa(i + 2)
		out = append(out, []string{number, machine.Title})
		if len(machine.Tables) > 0 {
			out = append(out, []string{"", labels.Data})
		}
		for k, card := range machine.Procedures {
			out = append(out, []string{number + "." + strconv.Itoa(k+1), titled(card)})
		}
	}
	last := len(m.Machines) + 2
	return append(out, []string{strconv.Itoa(last), labels.Pick}, []string{strconv.Itoa(last + 1), labels.Index})
}

// said says parts of a manual.
type said struct {
	to     typesetter
	labels plan.Labels
}

func (s said) messages(m plan.Manual) {
	means := map[string]string{"danger": s.labels.DangerMeans, "warning": s.labels.WarningMeans, "caution": s.labels.CautionMeans, "notice": s.labels.NoticeMeans}
	before := ""
	for _, message := range m.Messages {
		if message.Signal != before {
			s.to.level(message.Signal, message.Word, means[message.Signal])
			before = message.Signal
		}
		s.full(message.Caution)
		var in []string
		for _, at := range message.In {
			in = append(in, titled(m.Machines[at.Machine-1].Procedures[at.Procedure-1]))
		}
		s.to.labelled(s.labels.StandsIn, in...)
	}
}

func (s said) full(caution plan.Caution) {
	label := ""
	if len(caution.Wear) > 0 {
		label = s.labels.Wear + s.labels.Colon + " " + strings.Join(caution.Wear, ", ") + "."
	}
	s.to.message(caution, label, between(" ", caution.Consequence, caution.Avoid), "")
}

func (s said) facts(facts []plan.Fact) {
	var labels, texts []string
	for _, fact := range facts {
		labels, texts = append(labels, fact.Label), append(texts, fact.Text)
	}
	if len(facts) > 0 {
		s.to.table(labels, [][]string{texts})
	}
}

func (s said) card(card plan.Card, number string) {
	labels, to := s.labels, s.to
	to.chapter(number, between(" · ", number, between(", ", card.Machine, card.Variant)), card.Title, between(" ", labels.Revision, card.Revision, card.Date))
	s.facts(card.Facts)
	to.text(plainly(card.Summary))
	if card.Manual != "" {
		to.labelled(labels.Manual, card.Manual)
	}
	for i, caution := range plan.WorstFirst(card.Cautions) {
		if i == 0 {
			to.labelled(labels.Safety)
		}
		if caution.Brief() {
			to.message(caution, "", "", labels.Steps(caution.Steps))
		} else {
			s.full(caution)
		}
	}
	s.isolations(card)
	to.stage(labels.Bring, "")
	s.things(labels.Wear, card.Wear)
	s.things(labels.Tools, card.Tools)
	s.things(labels.Supplies, card.Supplies)
	s.things(labels.Spares, card.Spares)
	s.places(card.Map)
	for _, picture := range card.Pictures {
		s.picture(picture)
	}
	if len(card.Start) > 0 {
		to.labelled(labels.Start, card.Start...)
	}
	for _, section := range card.Sections {
		s.section(section)
	}
	if len(card.End) > 0 {
		to.labelled(labels.End, card.End...)
	}
	if len(card.Allowed) > 0 {
		to.labelled(labels.Allowed, card.Allowed...)
	}
	to.record(labels.Record, card.Blanks, labels.Limit)
	by := []string{labels.Author + " " + card.Author}
	if card.Checked != "" {
		by = append(by, labels.Checked+" "+card.Checked)
	}
	to.text(strings.Join(by, " · "))
}

// places are the names of a map; what is drawn is left out.
func (s said) places(drawing *plan.Drawing) {
	if drawing == nil {
		return
	}
	s.to.stage(s.labels.Map, "")
	s.callouts(drawing.Callouts)
}

// picture is what stands below one; the picture itself is left out.
func (s said) picture(picture plan.Picture) {
	s.to.text(picture.Title)
	s.callouts(picture.Callouts)
}

func (s said) callouts(all []plan.Callout) {
	for row := range slices.Chunk(all, 3) {
		cells := make([]string, 3)
		for i, one := range row {
			cells[i] = fmt.Sprintf("%d %s", one.Number, one.Name)
			if len(one.Steps) > 0 {
				cells[i] += " · " + s.labels.Steps(one.Steps)
			}
		}
		s.to.table(nil, [][]string{cells})
	}
}

// signs are the meanings of the signs; the signs themselves are left out.
func (s said) signs(m plan.Manual) {
	var numbers []string
	for _, machine := range m.Machines {
		for _, card := range machine.Procedures {
			numbers = append(numbers, pages.Signs(card)...)
		}
	}
	slices.Sort(numbers)
	s.to.section(s.labels.Signs, "")
	for _, number := range slices.Compact(numbers) {
		s.to.text(number + " " + m.Words.Signs[number])
	}
}

func (s said) isolations(card plan.Card) {
	labels := s.labels
	if len(card.Isolations) == 0 {
		if card.NoEnergy != "" {
			s.to.labelled(labels.Isolate, labels.NoEnergy+". "+card.NoEnergy)
		}
		return
	}
	var rows [][]string
	for _, one := range card.Isolations {
		how, prove := one.How, one.Prove
		if one.Cut > 0 && one.Proof > 0 {
			how, prove = labels.Steps([]int{one.Cut}), labels.Steps([]int{one.Proof})
		}
		rows = append(rows, []string{one.Energy, how, prove})
	}
	s.to.labelled(labels.Isolate)
	s.to.table([]string{labels.Energy, labels.Isolate, labels.Prove}, rows)
}

func (s said) things(label string, items []plan.Item) {
	var texts []string
	for _, item := range items {
		rest := []string{item.Note}
		for _, other := range item.StandIns {
			rest = append(rest, s.labels.Or+" "+other)
		}
		texts = append(texts, between(" ", item.Quantity, item.Name, between(" · ", rest...)))
	}
	if len(items) == 0 {
		s.to.labelled(label, s.labels.None)
		return
	}
	s.to.things(label, 2, texts)
}

func (s said) section(section plan.Section) {
	if len(section.Steps) == 0 && section.Lead == "" {
		return
	}
	to, labels := s.to, s.labels
	numbers := ""
	if n := len(section.Steps); n > 0 {
		numbers = fmt.Sprintf("%d–%d", section.Steps[0].Number, section.Steps[n-1].Number)
	}
	to.section(section.Title, numbers)
	if section.Lead != "" {
		to.text(section.Lead)
	}
	for i, step := range section.Steps {
		if step.Stage != "" {
			within := section.Title
			if i == 0 {
				within = ""
			}
			to.stage(step.Stage, within)
		}
		if step.Meanwhile && !section.Steps[i-1].Meanwhile {
			to.text(labels.Meanwhile)
		}
		for _, caution := range plan.WorstFirst(step.Cautions) {
			s.full(caution)
		}
		to.step(strconv.Itoa(step.Number), step.Action)
		for _, block := range step.Say {
			to.text(between(" ", block.Bullet, plainly(block.Runs)))
		}
		for _, value := range step.Values {
			to.value(value.Label, value.Text, value.Also)
		}
		for _, pass := range step.Passes {
			to.text(fmt.Sprintf("%d %% %s", pass.Share, pass.Text))
		}
		if step.Level != nil {
			for _, port := range step.Level.Ports {
				to.text(port.Name)
			}
		}
		if step.Picture != nil {
			s.picture(*step.Picture)
		}
		if len(step.Details) > 0 {
			to.text(strings.Join(step.Details, " · "))
		}
		for _, reading := range step.Readings {
			limit := ""
			if reading.Limit != "" {
				limit = labels.Limit + " " + reading.Limit
			}
			to.blank(reading.Label, reading.Unit, limit)
		}
		if step.Otherwise.Text != "" {
			to.text(step.Otherwise.Label + labels.Colon + " " + step.Otherwise.Text)
		}
		for _, note := range step.Notes {
			to.text(labels.Note + labels.Colon + " " + note)
		}
	}
}

func (s said) pick(list plan.PickList) {
	labels := s.labels
	s.to.labelled(labels.Procedures)
	var rows [][]string
	for _, served := range list.Served {
		rows = append(rows, []string{served.Key, served.Title + " " + between(" · ", served.Machine, labels.Revision+" "+served.Revision)})
	}
	s.to.table(nil, rows)
	for _, warning := range list.Warnings {
		s.to.value(labels.Missing, warning, "")
	}
	for _, group := range list.Groups {
		s.to.section(group.Title, group.Note)
		if len(group.Lines) == 0 {
			s.to.text(cmp.Or(group.None, labels.None))
			continue
		}
		var lines []string
		for _, line := range group.Lines {
			var about []string
			for _, part := range []plan.Fact{{Label: labels.Take, Text: line.Take}, {Label: labels.Where, Text: line.Where}, {Label: labels.Caught, Text: line.Into}, {Label: labels.Serves, Text: strings.Join(line.Serves, "; ")},
				{Label: labels.StandIn, Text: strings.Join(line.StandIns, ", ")}, {Label: labels.Instead, Text: strings.Join(line.Instead, "; ")}} {
				if part.Text != "" {
					about = append(about, part.Label+" "+part.Text)
				}
			}
			wanted := strings.Join(line.For, " ")
			if len(line.For) == len(list.Served) && len(line.For) > 3 {
				wanted = labels.All
			}
			lines = append(lines, between(" ", line.Quantity, line.Name, between(" · ", about...), wanted))
		}
		s.to.things("", 1, lines)
	}
}

func plainly(runs []plan.Run) string {
	out := ""
	for _, run := range runs {
		out += run.Text
	}
	return out
}

// troff writes for groff with the macros ms.
type troff struct {
	out   strings.Builder
	title string
}

func troffOf(m plan.Manual) string {
	t := &troff{title: m.Title}
	t.lines(".nr PO 2.2c", ".nr LL 17c", ".nr HM 1.9c", ".nr FM 1.7c", ".nr PS 10", ".nr VS 12.4p", ".nr PD 3p", ".nr GROWPS 3", ".nr PSINCR 2.5p",
		".nr HY 0", ".fam H", ".ad l", ".defcolor danger rgb #9b2423", ".defcolor warning rgb #d05d29", ".defcolor caution rgb #a06c00", ".defcolor notice rgb #005387",
		".ds CH", ".ds CF", ".ds RF \\\\n%", ".ds LF "+plainText(m.Shop+" · "+m.Title+" · "+m.Date))
	set(m, t)
	return t.out.String()
}

func (t *troff) lines(lines ...string) {
	for _, line := range lines {
		t.out.WriteString(line + "\n")
	}
}

// plainText makes a text one of troff that is no request.
func plainText(text string) string {
	return `\&` + strings.NewReplacer(`\`, `\e`, "\u00a0", `\~`).Replace(text)
}

func strong(text string) string { return `\fB` + plainText(text) + `\fP` }

func (t *troff) cover(shop, title, latest, date string) {
	t.lines(".LP", ".LG", plainText(shop), ".sp 6c", ".LG", ".LG", strong(title), ".br", ".NL", plainText(latest+" "+date), ".sp 2c")
}

func (t *troff) chapter(number, above, title, stamp string) {
	t.lines(".bp", ".ds LH "+plainText(title), ".ds RH "+plainText(stamp), ".LP", plainText(above), ".SH 1", plainText(between(" ", number, title)), ".LP", plainText(stamp))
}

func (t *troff) section(title, aside string) {
	t.lines(".SH 2", plainText(title), `\h'1c'`+plainText(aside), ".LP")
}

func (t *troff) stage(title, aside string) {
	t.lines(".SH 3", plainText(title), `\h'1c'`+plainText(aside), ".LP")
}

func (t *troff) level(signal, word, means string) {
	t.lines(".LP", `\m[`+signal+`]`+strong(word)+`\m[]`, strong(means))
}

func (t *troff) message(caution plan.Caution, label, text, aside string) {
	t.lines(".B1", `\m[`+caution.Signal+`]`+strong(caution.Word)+`\m[]`, strong(caution.Hazard))
	if aside != "" {
		t.lines(plainText(aside))
	}
	if text != "" {
		t.lines(".br", plainText(text))
	}
	if label != "" {
		t.lines(plainText(label))
	}
	t.lines(".B2")
}

func (t *troff) table(columns []string, rows [][]string) {
	widths := shares(append([][]string{columns}, rows...))
	format := ""
	for _, share := range widths {
		format += fmt.Sprintf("lw(%.2fc) ", share*16-0.4)
	}
	t.lines(".LP", ".TS H", "tab(\t);", strings.TrimSpace(format)+".")
	cells := func(row []string, look func(string) string) {
		var line []string
		for _, cell := range row {
			line = append(line, "T{\n"+look(cell)+"\nT}")
		}
		t.lines(strings.Join(line, "\t"))
	}
	if len(columns) > 0 {
		cells(columns, strong)
		t.lines("_")
	}
	t.lines(".TH")
	for _, row := range rows {
		cells(row, plainText)
	}
	t.lines(".TE")
}

// shares of the width of a table that its columns get: by their longest texts, none of
// which counts for more than 40 letters nor less than its longest word.
func shares(rows [][]string) []float64 {
	longest := make([]float64, len(rows[len(rows)-1]))
	sum := 0.0
	for _, row := range rows {
		for i, cell := range row {
			longest[i] = max(longest[i], min(40, float64(utf8.RuneCountInString(cell))), 4)
			for _, word := range strings.Fields(cell) {
				longest[i] = max(longest[i], 1.4*float64(utf8.RuneCountInString(word)))
			}
		}
	}
	for _, one := range longest {
		sum += one
	}
	for i := range longest {
		longest[i] /= sum
	}
	return longest
}

func (t *troff) step(number string, action []plan.Run) {
	t.lines(".IP "+strong(number)+" 1.2c", tickBox(0.36)+`\c`)
	for _, run := range action {
		if run.Bold {
			t.lines(strong(run.Text))
		} else {
			t.lines(plainText(strings.TrimSpace(run.Text)))
		}
	}
}

// tickBox draws a box of so many centimetres and goes back to the base line behind it.
func tickBox(size float64) string {
	return fmt.Sprintf(`\D'p %[1]gc 0 0 -%[1]gc -%[1]gc 0'\v'%[1]gc'\h'%.2[2]fc'`, size, 1.6*size)
}

func (t *troff) value(label, text, also string) {
	t.lines(".br", strong(label), `.BX "\fB`+strings.ReplaceAll(text, `"`, `""`)+`\fP"`, plainText(also))
}

func (t *troff) blank(label, unit, limit string) {
	t.lines(".br", plainText(label), `.BX "\h'2c'"`, plainText(unit), strong(limit))
}

func (t *troff) things(label string, columns int, texts []string) {
	if label != "" {
		t.labelled(label)
	}
	t.lines(".TS", "tab(\t);", strings.TrimSpace(strings.Repeat(fmt.Sprintf("lw(%.2fc) ", 16/float64(columns)-0.4), columns))+".")
	for row := range slices.Chunk(texts, columns) {
		var line []string
		for _, text := range row {
			line = append(line, "T{\n"+tickBox(0.26)+plainText(text)+"\nT}")
		}
		t.lines(strings.Join(line, "\t"))
	}
	t.lines(".TE")
}

func (t *troff) labelled(label string, texts ...string) {
	t.lines(".LP", strong(label))
	t.text(texts...)
}

func (t *troff) text(texts ...string) {
	for _, text := range texts {
		t.lines(".br", plainText(text))
	}
}

func (t *troff) record(title string, blanks []plan.Blank, limit string) {
	t.lines(".LP", strong(title), ".TS", "allbox expand tab(\t);", strings.TrimSpace(strings.Repeat("l ", len(blanks)))+".")
	var cells []string
	for _, blank := range blanks {
		text := strong(blank.Label)
		if blank.Limit != "" {
			text += "\n" + plainText(limit+" "+blank.Limit)
		}
		cells = append(cells, "T{\n"+text+"\n.sp\n"+plainText(blank.Unit)+"\nT}")
	}
	t.lines(strings.Join(cells, "\t"), ".TE")
}

// web writes HTML and CSS.
type web struct{ out strings.Builder }

const webStyle = `
@font-face { font-family: Go; src: url(face0.ttf) }
@font-face { font-family: Go; font-weight: bold; src: url(face1.ttf) }
@font-face { font-family: Go; font-weight: bold; font-style: italic; src: url(face3.ttf) }
@page { size: A4; margin: 19mm 18mm 19mm 22mm; font: 8.5pt Go;
  @top-left { content: string(head) } @top-right { content: string(stamp) }
  @bottom-left { content: string(foot) } @bottom-right { content: counter(page) } }
html { font: 9.2pt/1.28 Go; hyphens: none }
body, p, h1, h2, h3 { margin: 0 }
p { margin-top: 1mm }
.cover { string-set: foot attr(title); height: 100mm; background: #1f2f3a; color: white; padding: 8mm }
.chapter { break-before: page; background: #1f2f3a; color: white; padding: 3mm }
h1 { font-size: 19pt; string-set: head content(text) }
.chapter .stamp { string-set: stamp content(text) }
h2 { font-size: 11pt; background: #1f2f3a; color: white; padding: 1mm 2mm; margin: 4mm 0 2mm; break-after: avoid }
h3 { font-size: 9.2pt; border-bottom: 0.3mm solid #1f2f3a; margin-top: 3mm; break-after: avoid }
h2 span, h3 span { float: right; font-weight: normal }
table { border-collapse: collapse; width: 100%; margin-top: 1mm } th { text-align: left; border-bottom: 0.35mm solid }
td { vertical-align: top; border-bottom: 0.2mm solid #b9c1c7; padding: 0.5mm 1mm 0.5mm 0 } th { font-weight: normal; padding: 0 1mm 0 0 }
.caution { border: 0.4mm solid; border-radius: 0.8mm; margin-top: 1.5mm; break-inside: avoid; padding: 0 1mm 0.7mm 0 }
.caution p { margin-left: 1mm } .caution i { float: right; font-style: normal }
.word { display: inline-block; padding: 0.3mm 1.5mm; margin-right: 1.5mm; font-weight: bold }
.danger { background: #9b2423; color: white } .warning { background: #d05d29 } .caution-word { background: #f9a800 } .notice { background: #005387; color: white; font-style: italic }
.step { font-size: 10.8pt; margin-top: 3mm; break-after: avoid } .step b.number { font-size: 12.5pt; margin: 0 3mm 0 1mm }
.box { display: inline-block; width: 2.6mm; height: 2.6mm; border: 0.3mm solid; border-radius: 0.4mm; margin-right: 1.5mm }
.value { display: inline-block; border: 0.4mm solid; border-radius: 0.8mm; margin-top: 1mm } .value b { font-size: 12.5pt; padding: 0 1.5mm }
.value span { background: black; color: white; padding: 0.5mm 1.5mm; font-weight: bold }
.blank { display: inline-block; width: 20mm; height: 6mm; border: 0.3mm solid; vertical-align: middle; margin: 0 2mm }
.record td { border: 0.3mm solid; height: 12mm; padding: 1mm }
`

func webOf(m plan.Manual) string {
	w := &web{}
	w.write("<!DOCTYPE html><html lang=%s><meta charset=utf-8><title>%s</title><style>"+strings.ReplaceAll(webStyle, "%", "%%")+"</style>\n", m.Words.Language, m.Shop+" · "+m.Title)
	set(m, w)
	return w.out.String()
}

// write puts texts into HTML.
func (w *web) write(format string, texts ...string) {
	escaped := make([]any, len(texts))
	for i, text := range texts {
		escaped[i] = html.EscapeString(text)
	}
	fmt.Fprintf(&w.out, format, escaped...)
}

func (w *web) cover(shop, title, latest, date string) {
	w.write("<div class=cover title='%s'><p>%s<h1>%s</h1><p>%s %s</div>\n", shop+" · "+title+" · "+date, shop, title, latest, date)
}

func (w *web) chapter(number, above, title, stamp string) {
	w.write("<div class=chapter><p>%s<h1>%s %s</h1><p class=stamp>%s</div>\n", above, number, title, stamp)
}

func (w *web) section(title, aside string) { w.write("<h2><span>%s</span>%s</h2>\n", aside, title) }

func (w *web) stage(title, aside string) { w.write("<h3><span>%s</span>%s</h3>\n", aside, title) }

func (w *web) level(signal, word, means string) {
	w.write("<h3><b class='word %s'>%s</b>%s</h3>\n", wordClass(signal), word, means)
}

func wordClass(signal string) string {
	if signal == "caution" {
		return "caution-word"
	}
	return signal
}

func (w *web) message(caution plan.Caution, label, text, aside string) {
	w.write("<div class=caution><i>%s</i><span class='word %s'>%s</span><b>%s</b>", aside, wordClass(caution.Signal), caution.Word, caution.Hazard)
	if text != "" {
		w.write("<p>%s %s", text, label)
	}
	w.write("</div>\n")
}

func (w *web) table(columns []string, rows [][]string) {
	w.write("<table>")
	if len(columns) > 0 {
		w.write("<thead><tr>")
		for _, column := range columns {
			w.write("<th>%s", column)
		}
		w.write("<tbody>")
	}
	for _, row := range rows {
		w.write("<tr>")
		for i, cell := range row {
			if i == 0 {
				w.write("<td><b>%s</b>", cell)
			} else {
				w.write("<td>%s", cell)
			}
		}
	}
	w.write("</table>\n")
}

func (w *web) step(number string, action []plan.Run) {
	w.write("<div class=step><span class=box></span><b class=number>%s</b>", number)
	for _, run := range action {
		if run.Bold {
			w.write("<b>%s</b>", run.Text)
		} else {
			w.write("%s", run.Text)
		}
	}
	w.write("</div>\n")
}

func (w *web) value(label, text, also string) {
	w.write("<div class=value><span>%s</span><b>%s</b> %s </div>\n", label, text, also)
}

func (w *web) blank(label, unit, limit string) {
	w.write("<p>%s<span class=blank></span>%s <b>%s</b>\n", label, unit, limit)
}

func (w *web) things(label string, columns int, texts []string) {
	w.write("<table>")
	for row := range slices.Chunk(texts, columns) {
		w.write("<tr><td>%s", label)
		label = ""
		for _, text := range row {
			w.write("<td><span class=box></span>%s", text)
		}
	}
	w.write("</table>\n")
}

func (w *web) labelled(label string, texts ...string) {
	w.write("<p><b>%s</b>\n", label)
	w.text(texts...)
}

func (w *web) text(texts ...string) {
	for _, text := range texts {
		w.write("<p>%s\n", text)
	}
}

func (w *web) record(title string, blanks []plan.Blank, limit string) {
	w.write("<h2>%s</h2><table class=record><tr>", title)
	for _, blank := range blanks {
		w.write("<td><b>%s</b> ", blank.Label)
		if blank.Limit != "" {
			w.write("%s %s ", limit, blank.Limit)
		}
		w.write("%s", blank.Unit)
	}
	w.write("</table>\n")
}
