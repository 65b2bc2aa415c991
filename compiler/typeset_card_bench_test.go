package compiler

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/plan"
)

// plainCard is a procedure in a file of its own, such as an inspection has.
const plainCard = `benchleaf = 1

[procedure]
title = "Look over the drying drum"
machine = "Drying drum"
revision = "A"
date = 2026-03-09
author = "S. Dunmore"
who = "Anyone who runs the drum"
hands-on = "6 min"
every = "40 h"
no-isolation = "Nothing is touched; look from outside the guards"
no-close = "Nothing is opened"
tools = []
supplies = []
spares = []
wear = ["eye-protection"]
manual = "Section 3.4"

[[step]]
inspect = "the belts through the slots of the guard"
expect = "no fray, no shine on the sides"
outside = "Renew the belts by their own card."

[[step]]
inspect = "the anchor bolts at the feet"
expect = "no gap under a washer, no bright rim"
outside = "Call a mechanic before the next shift."

[[step]]
inspect = "the indicator of the filter"
expect = "green"
outside = "Change the filter by its own card."
`

// oneCard is a card as it is printed alone.
type oneCard struct {
	name, path string // the procedure, as the command is given it
	content    plan.Card
	document   pages.Document
}

// cardsToSet are a plain card, in a folder of its own, and a typical one of the demonstration shop.
func cardsToSet(t testing.TB) []oneCard {
	t.Helper()
	folder := filepath.Join(t.TempDir(), "plain")
	require.NoError(t, os.Mkdir(folder, 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "drum.toml"), []byte(plainCard), 0o600))
	return []oneCard{aCard(t, "plain", folder, "drum.toml"), aCard(t, "typical", "../procedures", "edger-drive-belts.toml")}
}

func aCard(t testing.TB, name, folder, file string) oneCard {
	t.Helper()
	composed, err := Compile(Input{Files: ReadFolder(t, folder), Targets: []string{file}}).compose(Look{Stock: "a4"})
	require.NoError(t, err)
	require.Len(t, composed, 1)
	document, problems := pages.LayCard(composed[0].content, composed[0].look)
	require.Empty(t, problems)
	return oneCard{name, filepath.Join(folder, file), composed[0].content, document}
}

// alone says a card to a typesetter, without the page break before it.
func alone(card plan.Card, to typesetter) {
	s := said{loose{to}, card.Words.Labels}
	to.text(between(" · ", card.Shop, card.Words.Labels.Card))
	s.card(card, "")
	s.signs(plan.Manual{Machines: []plan.Machine{{Procedures: []plan.Card{card}}}, Words: card.Words})
	to.text(card.Words.Labels.Local)
}

// loose is a typesetter whose chapters do not begin a page.
type loose struct{ typesetter }

func (l loose) chapter(_, above, title, stamp string) {
	l.text(above)
	l.section(title, stamp)
}

func troffOfCard(card plan.Card) string {
	t := &troff{}
	t.lines(".nr PO 2.2c", ".nr LL 17c", ".nr HM 1.9c", ".nr FM 1.7c", ".nr PS 10", ".nr VS 12.4p", ".nr PD 3p", ".nr GROWPS 3", ".nr PSINCR 2.5p",
		".nr HY 0", ".fam H", ".ad l", ".defcolor danger rgb #9b2423", ".defcolor warning rgb #d05d29", ".defcolor caution rgb #a06c00", ".defcolor notice rgb #005387",
		".ds CH", ".ds CF", ".LP")
	alone(card, t)
	return t.out.String()
}

func webOfCard(card plan.Card) string {
	w := &web{}
	w.write("<!DOCTYPE html><html lang=%s><meta charset=utf-8><title>%s</title><style>"+strings.ReplaceAll(webStyle, "%", "%%")+"</style>\n", card.Words.Language, card.Title)
	alone(card, w)
	return w.out.String()
}

// BenchmarkCardAgainstTypesetters makes one card a PDF on A4, as a whole process from its start
// to the file on disk: by benchleaf, which reads the procedure and what it uses, checks it, and
// writes a pick list too, and by typesetters that get the words of its plan, as
// BenchmarkManualAgainstTypesetters has them:
//
//   - groff: groff -k -t -ms -Tpdf, in Helvetica, which is not put into the file;
//   - pdflatex: one run, with the packages geometry, xcolor and helvet;
//   - weasyprint, and chromium by --headless --print-to-pdf: HTML and CSS with the same faces.
//
// All take turns; the figures are medians, so it wants many rounds: -benchtime 21x. A test holds
// the words to the same. A program that is not installed has no figure.
func BenchmarkCardAgainstTypesetters(b *testing.B) {
	for _, card := range cardsToSet(b) {
		b.Run(card.name, func(b *testing.B) {
			folder := b.TempDir()
			var ways []settingWay
			for _, way := range waysToSetACard(b) {
				if way.program == "" {
					continue
				}
				way.ready(b, card, filepath.Join(folder, way.name))
				ways = append(ways, way)
			}
			took := map[string][]time.Duration{}
			b.ResetTimer()
			for b.Loop() {
				for _, way := range ways {
					out := filepath.Join(folder, way.name)
					require.NoError(b, os.RemoveAll(filepath.Join(out, "made")))
					require.NoError(b, os.Mkdir(filepath.Join(out, "made"), 0o755))
					start := time.Now()
					way.run(b, card, out)
					took[way.name] = append(took[way.name], time.Since(start))
				}
			}
			steps := 0
			for _, section := range card.content.Sections {
				steps += len(section.Steps)
			}
			b.ReportMetric(0, "ns/op")
			b.ReportMetric(float64(steps), "steps")
			for _, way := range ways {
				pdfIn(b, filepath.Join(folder, way.name, "made"), card)
				b.ReportMetric(float64(median(took[way.name]).Microseconds())/1000, "ms-"+way.name)
			}
		})
	}
}

// settingWay makes a card a PDF: its input is made ready in a folder, and the PDF comes to lie
// in the folder made in it.
type settingWay struct {
	name, program string // program is empty where it is not installed
	ready         func(t testing.TB, card oneCard, folder string)
	run           func(t testing.TB, card oneCard, folder string)
}

func waysToSetACard(t testing.TB) []settingWay {
	t.Helper()
	installed := func(programs ...string) string {
		for _, program := range programs {
			if path, err := exec.LookPath(program); err == nil {
				return path
			}
		}
		return ""
	}
	into := func(t testing.TB, folder, name, text string) {
		require.NoError(t, os.MkdirAll(folder, 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600))
	}
	inWeb := func(t testing.TB, card oneCard, folder string) {
		into(t, folder, "card.html", webOfCard(card.content))
		for _, face := range []pages.Face{pages.Regular, pages.Bold, pages.BoldItalic} {
			require.NoError(t, os.WriteFile(filepath.Join(folder, fmt.Sprintf("face%d.ttf", face)), face.TrueType(), 0o600))
		}
	}
	runs := func(t testing.TB, folder, program string, args ...string) {
		command := exec.Command(program, args...)
		command.Dir = folder
		said, err := command.CombinedOutput()
		require.NoError(t, err, string(said))
	}
	benchleaf := filepath.Join(t.TempDir(), "benchleaf.exe")
	runs(t, "", installed("go"), "build", "-o", benchleaf, "../cmd/benchleaf")
	groff, latex, weasyprint, chromium := installed("groff"), installed("pdflatex"), installed("weasyprint"), installed("google-chrome", "chromium")
	if installed("gropdf") == "" {
		groff = "" // a small groff has neither it nor ms
	}
	return []settingWay{
		{"benchleaf", benchleaf, func(t testing.TB, _ oneCard, folder string) { require.NoError(t, os.MkdirAll(folder, 0o755)) },
			func(t testing.TB, card oneCard, folder string) {
				runs(t, "", benchleaf, "print", card.path, "--stock", "a4", "--out", filepath.Join(folder, "made"))
			}},
		{"groff", groff, func(t testing.TB, card oneCard, folder string) {
			into(t, folder, "card.ms", troffOfCard(card.content))
		}, func(t testing.TB, _ oneCard, folder string) {
			out, err := os.Create(filepath.Join(folder, "made", "card.pdf"))
			require.NoError(t, err)
			command := exec.Command(groff, "-k", "-t", "-ms", "-Tpdf", "-dpaper=a4", "-P-pa4", filepath.Join(folder, "card.ms"))
			command.Stdout = out
			require.NoError(t, command.Run())
			require.NoError(t, out.Close())
		}},
		{"pdflatex", latex, func(t testing.TB, card oneCard, folder string) {
			into(t, folder, "card.tex", latexOfCard(card.content))
		}, func(t testing.TB, _ oneCard, folder string) {
			runs(t, folder, latex, "-interaction=batchmode", "-halt-on-error", "-output-directory=made", "card.tex")
		}},
		{"weasyprint", weasyprint, inWeb, func(t testing.TB, _ oneCard, folder string) {
			runs(t, folder, weasyprint, "--quiet", "card.html", filepath.Join("made", "card.pdf"))
		}},
		{"chromium", chromium, inWeb, func(t testing.TB, _ oneCard, folder string) {
			runs(t, folder, chromium, "--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer",
				"--user-data-dir="+filepath.Join(folder, "profile"), "--print-to-pdf="+filepath.Join(folder, "made", "card.pdf"), "file://"+filepath.Join(folder, "card.html"))
		}},
	}
}

// pdfIn is the PDF of a card in a folder.
func pdfIn(t testing.TB, folder string, card oneCard) string {
	t.Helper()
	found, err := filepath.Glob(filepath.Join(folder, "*.pdf"))
	require.NoError(t, err)
	found = slices.DeleteFunc(found, func(path string) bool { return filepath.Base(path) == "pick-list.pdf" })
	require.Len(t, found, 1, card.name)
	return found[0]
}

// Each typesetter makes of its input a PDF with the words of the card.
func TestTypesettersSetTheSameCard(t *testing.T) {
	if testing.Short() {
		t.Skip("nothing here runs side by side")
	}
	pdftotext := outside(t, "pdftotext")
	cards := cardsToSet(t)
	for _, way := range waysToSetACard(t) {
		t.Run(way.name, func(t *testing.T) {
			if way.program == "" {
				t.Skipf("%s is not installed", way.name)
			}
			for _, card := range cards {
				folder := filepath.Join(t.TempDir(), way.name)
				way.ready(t, card, folder)
				require.NoError(t, os.Mkdir(filepath.Join(folder, "made"), 0o755))
				way.run(t, card, folder)
				text, err := exec.Command(pdftotext, "-raw", pdfIn(t, filepath.Join(folder, "made"), card), "-").Output()
				require.NoError(t, err)
				sameWords(t, card, string(text))
			}
		})
	}
}

// sameWords holds the words of a text against those of a card: each may leave out a few, such as
// the head of a side, that its pages say again, or break a word at the end of a line.
func sameWords(t testing.TB, card oneCard, text string) {
	t.Helper()
	whole, there := wordsIn(strings.Join(spoken(card.document), " ")), wordsIn(text)
	missing, more, all := 0, 0, 0
	for word, n := range whole {
		all += n
		missing += max(0, n-there[word])
	}
	for word, n := range there {
		more += max(0, n-whole[word])
	}
	t.Logf("%s: %d of %d words are missing, %d are more", card.name, missing, all, more)
	assert.Less(t, float64(missing), 0.12*float64(all), "words missing")
	assert.Less(t, float64(more), 0.12*float64(all), "words more")
}

// latex writes for pdfLaTeX.
type latex struct{ out strings.Builder }

const latexHead = `\documentclass[10pt,a4paper]{article}
\usepackage[T1]{fontenc}
\usepackage[scaled=0.92]{helvet}
\usepackage{textcomp}
\usepackage{xcolor}
\usepackage[a4paper,left=22mm,right=18mm,top=19mm,bottom=19mm]{geometry}
\renewcommand{\familydefault}{\sfdefault}
\definecolor{danger}{HTML}{9B2423}\definecolor{warning}{HTML}{D05D29}\definecolor{caution}{HTML}{A06C00}\definecolor{notice}{HTML}{005387}
\DeclareUnicodeCharacter{2002}{ }\DeclareUnicodeCharacter{2009}{\,}\DeclareUnicodeCharacter{2011}{-}\DeclareUnicodeCharacter{202F}{\,}
\DeclareUnicodeCharacter{2032}{\ensuremath{'}}\DeclareUnicodeCharacter{2033}{\ensuremath{''}}\DeclareUnicodeCharacter{2212}{\ensuremath{-}}
\DeclareUnicodeCharacter{2264}{\ensuremath{\le}}\DeclareUnicodeCharacter{2265}{\ensuremath{\ge}}\DeclareUnicodeCharacter{2192}{\ensuremath{\to}}
\DeclareUnicodeCharacter{03BC}{\ensuremath{\mu}}\DeclareUnicodeCharacter{2300}{\ensuremath{\oslash}}
\newcommand{\tick}{\fbox{\rule{0pt}{1.2ex}\rule{1.2ex}{0pt}}}
\setlength{\parindent}{0pt}\setlength{\parskip}{1mm}\raggedright\hyphenpenalty=10000\emergencystretch=3em
\begin{document}
`

func latexOfCard(card plan.Card) string {
	l := &latex{}
	l.out.WriteString(latexHead)
	alone(card, l)
	l.out.WriteString("\\end{document}\n")
	return l.out.String()
}

var latexPlain = strings.NewReplacer(`\`, `\textbackslash{}`, "{", `\{`, "}", `\}`, "#", `\#`, "$", `\$`, "%", `\%`, "&", `\&`, "_", `\_`, "~", `\textasciitilde{}`, "^", `\textasciicircum{}`, "\u00a0", "~")

// write puts texts where the %s stand, as words and not as commands.
func (l *latex) write(format string, texts ...string) {
	plain := make([]any, len(texts))
	for i, text := range texts {
		plain[i] = latexPlain.Replace(text)
	}
	fmt.Fprintf(&l.out, format, plain...)
}

func (l *latex) cover(shop, title, latest, date string) {
	l.write("%s\n\n{\\Huge\\bfseries %s}\n\n%s %s\n\n", shop, title, latest, date)
}

func (l *latex) chapter(number, above, title, stamp string) {
	l.write("\\newpage %s\n\n{\\LARGE\\bfseries %s %s}\\hfill %s\n\n", above, number, title, stamp)
}

func (l *latex) section(title, aside string) {
	l.write("\\medskip{\\large\\bfseries %s}\\hfill %s\\nopagebreak\n\n", title, aside)
}

func (l *latex) stage(title, aside string) {
	l.write("\\medskip\\textbf{%s}\\hfill %s\\nopagebreak\n\n", title, aside)
}

func (l *latex) level(signal, word, means string) {
	l.write("\\textcolor{%s}{\\textbf{%s}} \\textbf{%s}\n\n", signal, word, means)
}

func (l *latex) message(caution plan.Caution, label, text, aside string) {
	l.write("\\fbox{\\parbox{0.96\\linewidth}{\\raggedright\\textcolor{%s}{\\textbf{%s}} \\textbf{%s}\\hfill %s", caution.Signal, caution.Word, caution.Hazard, aside)
	if text != "" || label != "" {
		l.write("\\\\%s %s", text, label)
	}
	l.write("}}\n\n")
}

func (l *latex) table(columns []string, rows [][]string) {
	widths := shares(append([][]string{columns}, rows...))
	format := ""
	for _, share := range widths {
		format += fmt.Sprintf("p{%.3f\\linewidth}", share*0.94-0.02)
	}
	l.write("{\\setlength{\\tabcolsep}{1mm}\\begin{tabular}{" + format + "}\n")
	row := func(cells []string, look string) {
		for i, cell := range cells {
			if i > 0 {
				l.write(" & ")
			}
			l.write("\\raggedright "+look+"%s", cell)
		}
		l.write("\\tabularnewline\n")
	}
	if len(columns) > 0 {
		row(columns, "\\bfseries ")
		l.write("\\hline\n")
	}
	for _, cells := range rows {
		row(cells, "")
	}
	l.write("\\end{tabular}}\n\n")
}

func (l *latex) step(number string, action []plan.Run) {
	l.write("\\smallskip\\tick\\ \\textbf{%s} ", number)
	for _, run := range action {
		if run.Bold {
			l.write("\\textbf{%s}", run.Text)
		} else {
			l.write("%s", run.Text)
		}
	}
	l.write("\n\n")
}

func (l *latex) value(label, text, also string) {
	l.write("\\fbox{\\textbf{%s} \\textbf{%s} %s}\n\n", label, text, also)
}

func (l *latex) blank(label, unit, limit string) {
	l.write("%s \\fbox{\\rule{0pt}{3ex}\\hspace{20mm}} %s \\textbf{%s}\n\n", label, unit, limit)
}

func (l *latex) things(label string, columns int, texts []string) {
	if label != "" {
		l.labelled(label)
	}
	for row := range slices.Chunk(texts, columns) {
		for _, text := range row {
			l.write("\\parbox[t]{"+fmt.Sprintf("%.3f", 0.96/float64(columns))+"\\linewidth}{\\raggedright\\tick\\ %s}", text)
		}
		l.write("\n\n")
	}
}

func (l *latex) labelled(label string, texts ...string) {
	l.write("\\textbf{%s}\n\n", label)
	l.text(texts...)
}

func (l *latex) text(texts ...string) {
	for _, text := range texts {
		l.write("%s\n\n", text)
	}
}

func (l *latex) record(title string, blanks []plan.Blank, limit string) {
	l.write("\\textbf{%s}\n\n", title)
	for _, blank := range blanks {
		l.write("\\fbox{\\parbox[t][12mm]{40mm}{\\raggedright\\textbf{%s}", blank.Label)
		if blank.Limit != "" {
			l.write(" %s %s", limit, blank.Limit)
		}
		l.write("\\\\%s}} ", blank.Unit)
	}
	l.write("\n\n")
}
