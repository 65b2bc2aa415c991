package compiler

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/plan"
)

// BenchmarkBatchAgainstTypst makes each card of the shop that BENCHLEAF_SHOP names a PDF:
//
//   - benchleaf: the command as a whole process, from the files of the shop to the PDFs on disk,
//     with all checks, and the pick list of all;
//   - typst: the words of the same cards as Typst texts, compiled to PDFs in memory one after the
//     other in one process that is running already, with its faces loaded and warmed up. The
//     folder of BENCHLEAF_TYPST holds typst.mjs and the compiler it takes.
//
// Both take turns. cmd/benchreport makes both folders and runs it.
func BenchmarkBatchAgainstTypst(b *testing.B) {
	shop, typst := os.Getenv("BENCHLEAF_SHOP"), os.Getenv("BENCHLEAF_TYPST")
	if shop == "" || typst == "" {
		b.Skip("BENCHLEAF_SHOP and BENCHLEAF_TYPST name no folders")
	}
	node := outside(b, "node")
	composed, err := Compile(Input{Files: ReadFolder(b, shop)}).compose(Look{})
	require.NoError(b, err)
	folder := b.TempDir()
	texts, faces := filepath.Join(folder, "texts"), filepath.Join(folder, "faces")
	for _, made := range []string{texts, faces} {
		require.NoError(b, os.Mkdir(made, 0o755))
	}
	for i, card := range composed {
		require.NoError(b, os.WriteFile(filepath.Join(texts, fmt.Sprintf("%06d.typ", i)), []byte(typstOfCard(card.content)), 0o600))
	}
	for _, face := range []pages.Face{pages.Regular, pages.Bold, pages.BoldItalic} {
		require.NoError(b, os.WriteFile(filepath.Join(faces, fmt.Sprintf("face%d.ttf", face)), face.TrueType(), 0o600))
	}
	command := filepath.Join(folder, "benchleaf.exe")
	run := func(program string, args ...string) string {
		said, err := exec.Command(program, args...).Output()
		require.NoError(b, err, string(said))
		return strings.TrimSpace(string(said))
	}
	run(outside(b, "go"), "build", "-o", command, "../cmd/benchleaf")
	var ours, theirs []float64
	first, out := filepath.Join(folder, "first.pdf"), filepath.Join(folder, "out")
	b.ResetTimer()
	for b.Loop() {
		require.NoError(b, os.RemoveAll(out))
		start := time.Now()
		run(command, "print", shop, "--out", out)
		ours = append(ours, float64(time.Since(start).Microseconds())/1000/float64(len(composed)))
		each, err := strconv.ParseFloat(run(node, filepath.Join(typst, "typst.mjs"), texts, faces, first), 64)
		require.NoError(b, err)
		theirs = append(theirs, each)
	}
	if pdftotext, err := exec.LookPath("pdftotext"); err == nil {
		document, _ := pages.LayCard(composed[0].content, composed[0].look)
		sameWords(b, oneCard{name: "first", document: document}, run(pdftotext, "-raw", first, "-"))
	}
	made, err := filepath.Glob(filepath.Join(out, "*.pdf"))
	require.NoError(b, err)
	require.Len(b, made, len(composed)+1, "a card each, and the pick list")
	slices.Sort(ours)
	slices.Sort(theirs)
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(float64(len(composed)), "cards")
	b.ReportMetric(ours[len(ours)/2], "ms-benchleaf/card")
	b.ReportMetric(theirs[len(theirs)/2], "ms-typst/card")
}

// typst writes for Typst; texts stand in it as strings.
type typst struct{ out strings.Builder }

const typstHead = `#set page(paper: "a5", margin: (x: 9mm, y: 9mm))
#set text(font: "Go", size: 8.5pt, hyphenate: false)
#set par(leading: 0.5em, spacing: 0.6em)
#let tick = box(width: 2.6mm, height: 2.6mm, stroke: 0.3mm)
#let colours = (danger: rgb("#9b2423"), warning: rgb("#d05d29"), caution: rgb("#a06c00"), notice: rgb("#005387"))
`

func typstOfCard(card plan.Card) string {
	t := &typst{}
	t.out.WriteString(typstHead)
	alone(card, t)
	return t.out.String()
}

// write puts texts where the %s stand, as strings.
func (t *typst) write(format string, texts ...string) {
	quoted := make([]any, len(texts))
	for i, text := range texts {
		quoted[i] = typstString(text)
	}
	fmt.Fprintf(&t.out, format+"\n", quoted...)
}

// typstString is a text as a string of Typst, which has the escapes of JSON that come up here.
func typstString(text string) string {
	var out strings.Builder
	encoder := json.NewEncoder(&out)
	encoder.SetEscapeHTML(false)
	encoder.Encode(text) // of a string it cannot fail
	return strings.TrimSpace(out.String())
}

func (t *typst) cover(shop, title, latest, date string) {
	t.write(`#par[#%s] #text(size: 19pt, weight: "bold", %s) #par[#%s #%s]`, shop, title, latest, date)
}

func (t *typst) chapter(number, above, title, stamp string) {
	t.write(`#pagebreak() #par[#%s] #text(size: 19pt, weight: "bold")[#%s #%s] #par[#%s]`, above, number, title, stamp)
}

func (t *typst) section(title, aside string) {
	t.write(`#block(fill: rgb("#1f2f3a"), width: 100%%, inset: 1.5mm, sticky: true, text(fill: white, size: 11pt)[#%s #h(1fr) #%s])`, title, aside)
}

func (t *typst) stage(title, aside string) {
	t.write(`#block(width: 100%%, stroke: (bottom: 0.3mm), inset: (bottom: 1mm), sticky: true)[*#%s* #h(1fr) #%s]`, title, aside)
}

func (t *typst) level(signal, word, means string) {
	t.write(`#text(fill: colours.at(%s), weight: "bold", %s) *#%s*`, signal, word, means)
}

func (t *typst) message(caution plan.Caution, label, text, aside string) {
	t.write(`#block(width: 100%%, stroke: 0.4mm, radius: 0.8mm, inset: 1mm, breakable: false)[#text(fill: colours.at(%s), weight: "bold", %s) *#%s* #h(1fr) #%s`, caution.Signal, caution.Word, caution.Hazard, aside)
	if text != "" || label != "" {
		t.write(` \ #%s #%s`, text, label)
	}
	t.write("]")
}

func (t *typst) table(columns []string, rows [][]string) {
	format := ""
	for _, share := range shares(append([][]string{columns}, rows...)) {
		format += fmt.Sprintf("%.3ffr, ", share)
	}
	t.write("#table(columns: (" + format + "), stroke: (bottom: 0.2mm), inset: 1mm,")
	for _, cell := range columns {
		t.write(`strong(%s),`, cell)
	}
	for _, row := range rows {
		for _, cell := range row {
			t.write(`%s,`, cell)
		}
	}
	t.write(")")
}

func (t *typst) step(number string, action []plan.Run) {
	t.write(`#par[#tick *#%s*`, number)
	for _, run := range action {
		if run.Bold {
			t.write(`*#%s*`, run.Text)
		} else {
			t.write(`#%s`, run.Text)
		}
	}
	t.write("]")
}

func (t *typst) value(label, text, also string) {
	t.write(`#box(stroke: 0.4mm, radius: 0.8mm, inset: 1mm)[*#%s* #text(size: 12.5pt, weight: "bold", %s) #%s]`, label, text, also)
}

func (t *typst) blank(label, unit, limit string) {
	t.write(`#par[#%s #box(width: 20mm, height: 6mm, stroke: 0.3mm) #%s *#%s*]`, label, unit, limit)
}

func (t *typst) things(label string, columns int, texts []string) {
	if label != "" {
		t.labelled(label)
	}
	t.write("#grid(columns: (" + strings.Repeat("1fr, ", columns) + "), gutter: 1mm,")
	for _, text := range texts {
		t.write(`[#tick #%s],`, text)
	}
	t.write(")")
}

func (t *typst) labelled(label string, texts ...string) {
	t.write(`#par[*#%s*]`, label)
	t.text(texts...)
}

func (t *typst) text(texts ...string) {
	for _, text := range texts {
		t.write(`#par[#%s]`, text)
	}
}

func (t *typst) record(title string, blanks []plan.Blank, limit string) {
	t.write(`#par[*#%s*] #table(columns: `+strconv.Itoa(max(1, len(blanks)))+`, rows: 12mm, stroke: 0.3mm,`, title)
	for _, blank := range blanks {
		t.write(`[*#%s*`, blank.Label)
		if blank.Limit != "" {
			t.write(`#%s #%s`, limit, blank.Limit)
		}
		t.write(`#%s],`, blank.Unit)
	}
	t.write(")")
}
