// Package html writes a card as one page for a phone or a tablet at the bench: it needs
// no network, and forbids itself any. It must not know what the values mean.
package html

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"html/template"
	"slices"
	"strconv"
	"strings"
	"sync"
	texts "text/template"

	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/plan"
	"benchleaf/templates"
)

// scripts are the parts of the page's script in the order they run.
var scripts = []string{"store", "views", "steps", "readings", "timers", "entry"}

// look is the shape of every page: how it is laid out, styled and moved.
type look struct {
	page   *template.Template
	style  string
	script string
}

var looks = sync.OnceValues(func() (look, error) {
	page, err := template.ParseFS(templates.Files, "phone/page.html")
	if err != nil {
		return look{}, err
	}
	sheet, err := texts.ParseFS(templates.Files, "phone/phone.css")
	if err != nil {
		return look{}, err
	}
	var style, script bytes.Buffer
	if err := sheet.ExecuteTemplate(&style, "phone.css", nil); err != nil {
		return look{}, err
	}
	script.WriteString("'use strict';(function () {\n")
	for _, name := range scripts {
		part, err := templates.Files.ReadFile("phone/" + name + ".js")
		if err != nil {
			return look{}, err
		}
		script.Write(part)
	}
	script.WriteString("}());\n")
	return look{page, style.String(), script.String()}, nil
})

// Draw writes the page of a card: the same bytes for the same card, always. figures are its
// drawings as SVG, by what they show: map, picture-2, with the number of the step circle-9,
// level-7, photo-4, and with their own numbers the signs, W017. It is an error when a template cannot be read or filled.
func Draw(card plan.Card, figures map[string][]byte) ([]byte, error) {
	look, err := looks()
	if err != nil {
		return nil, fmt.Errorf("phone page: %w", err)
	}
	page, err := look.fill(card, figures)
	if err != nil {
		return nil, fmt.Errorf("phone page: %w", err)
	}
	var out bytes.Buffer
	if err := look.page.ExecuteTemplate(&out, "page", page); err != nil {
		return nil, fmt.Errorf("phone page: %w", err)
	}
	return out.Bytes(), nil
}

// policy forbids the page every request and every script but its own (W3C, Content Security Policy Level 3).
func policy(style, script string) string {
	digest := func(text string) string {
		sum := sha256.Sum256([]byte(text))
		return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
	}
	return "default-src 'none'; style-src " + digest(style) + "; script-src " + digest(script) + "; img-src data:; base-uri 'none'; form-action 'none'"
}

// page is what the template is filled with.
type page struct {
	plan.Card
	Labels      plan.Labels
	Head        string
	Policy      string
	Style       template.CSS
	Script      template.JS
	HowTo, Data template.JS
	Front       []caution
	Bring       []list
	Parts       []part
	Blanks      []blank
	Figures     []figure
}

// figure is a drawing or a picture, with the names of its numbers.
type figure struct {
	Source  template.URL
	Alt     string
	Small   bool // a drawing of a few lines
	Caption string
	Names   []plan.Callout
	Labels  plan.Labels
}

type caution struct {
	plan.Caution
	Labels plan.Labels
	Look   string
	Alert  bool
	Brief  bool // only its hazard is named: it stands in full at the steps of its links
	Wear   string
	Drawn  []figure // its signs
	Links  []link
}

type link struct {
	N    int
	Text string
}

type list struct {
	Title string
	Items []item
}

type item struct{ ID, Quantity, Name, Note, StandIns string }

type part struct {
	ID, Title, Lead, Span string
	Stages                []stage
}

type stage struct {
	Title string
	Steps []step
}

type step struct {
	plan.Step
	Labels      plan.Labels
	Level       int // of its heading
	Cautions    []caution
	Blanks      []blank
	Figures     []figure
	Rounds      string // of tightening
	Done, Timer string
}

type blank struct {
	plan.Blank
	Labels    plan.Labels
	ID        string
	Step      int
	Type      string // of the field
	Figure    bool   // a figure in a unit is read
	Otherwise string
	Described string // ids of what tells more of the field
}

func (l look) fill(card plan.Card, figures map[string][]byte) (page, error) {
	labels := card.Words.Labels
	howto, err := json.Marshal(howTo(card))
	if err != nil {
		return page{}, err
	}
	known, err := dataOf(card)
	if err != nil {
		return page{}, err
	}
	data, err := json.Marshal(known)
	if err != nil {
		return page{}, err
	}
	out := page{Card: card, Labels: labels, Head: joined(card.Title, card.Machine, card.Variant), Policy: policy(l.style, l.script),
		Style: template.CSS(l.style), Script: template.JS(l.script), HowTo: template.JS(howto), Data: template.JS(data)} // our own text, and JSON whose signs are escaped
	for _, one := range plan.WorstFirst(card.Cautions) {
		out.Front = append(out.Front, inFront(one, card.Words, figures))
	}
	for _, group := range []struct {
		key, title string
		items      []plan.Item
	}{{"wear", labels.Wear, card.Wear}, {"tools", labels.Tools, card.Tools}, {"supplies", labels.Supplies, card.Supplies}, {"spares", labels.Spares, card.Spares}} {
		out.Bring = append(out.Bring, bring(group.key, group.title, group.items))
	}
	if card.Map != nil {
		out.Figures = figureOf(figures["map"], joined(labels.Map, card.Machine), labels.Map, card.Map.Callouts, labels)
	}
	for i, one := range card.Pictures {
		out.Figures = append(out.Figures, figureOf(figures[fmt.Sprintf("picture-%d", i+1)], one.Title, one.Title, one.Callouts, labels)...)
	}
	for i, section := range card.Sections {
		out.Parts = append(out.Parts, partOf(i+1, section, figures, card.Words))
	}
	for i, one := range card.Blanks {
		out.Blanks = append(out.Blanks, field(one, fmt.Sprintf("record-%d", i+1), 0, "", labels))
	}
	return out, nil
}

func joined(parts ...string) string {
	return strings.Join(slices.DeleteFunc(parts, func(part string) bool { return part == "" }), " · ")
}

// inFront is a message before all steps; one that stands in full at its steps names them.
func inFront(one plan.Caution, words plan.Words, figures map[string][]byte) caution {
	labels := words.Labels
	out := message(one, words, figures)
	if out.Brief = one.Brief(); out.Brief {
		for i, n := range one.Steps {
			text := strconv.Itoa(n)
			if i == 0 {
				text = labels.AtStep + " " + text
			}
			out.Links = append(out.Links, link{n, text})
		}
	}
	return out
}

func message(one plan.Caution, words plan.Words, figures map[string][]byte) caution {
	level := plan.Signals()[one.Rank()]
	if one.Word == "" {
		one.Word = strings.ToUpper(level)
	}
	out := caution{Caution: one, Labels: words.Labels, Look: level, Alert: level != "notice", Wear: strings.Join(one.Wear, ", ")}
	for _, number := range one.Drawn() {
		out.Drawn = append(out.Drawn, figureOf(figures[number], strings.TrimSpace(number+" "+words.Signs[number]), "", nil, words.Labels)...)
	}
	return out
}

func bring(key, title string, items []plan.Item) list {
	out := list{Title: title}
	for i, one := range items {
		out.Items = append(out.Items, item{ID: fmt.Sprintf("bring-%s-%d", key, i+1), Quantity: one.Quantity, Name: one.Name, Note: one.Note, StandIns: strings.Join(one.StandIns, ", ")})
	}
	return out
}

func partOf(n int, section plan.Section, figures map[string][]byte, words plan.Words) part {
	out := part{ID: fmt.Sprintf("part-%d", n), Title: section.Title, Lead: section.Lead}
	if last := len(section.Steps) - 1; last >= 0 {
		out.Span = strconv.Itoa(section.Steps[0].Number)
		if last > 0 {
			out.Span += "–" + strconv.Itoa(section.Steps[last].Number)
		}
	}
	for i, one := range section.Steps {
		if i == 0 || one.Stage != "" {
			out.Stages = append(out.Stages, stage{Title: one.Stage})
		}
		at := &out.Stages[len(out.Stages)-1]
		at.Steps = append(at.Steps, stepOf(one, at.Title != "", figures, words))
	}
	return out
}

func stepOf(one plan.Step, staged bool, figures map[string][]byte, words plan.Words) step {
	labels := words.Labels
	number := strconv.Itoa(one.Number)
	out := step{Step: one, Labels: labels, Level: 3, Done: strings.ReplaceAll(labels.StepDone, "{n}", number), Timer: strings.ReplaceAll(labels.Timer, "{n}", number)}
	if staged {
		out.Level = 4
	}
	for _, caution := range plan.WorstFirst(one.Cautions) {
		out.Cautions = append(out.Cautions, message(caution, words, figures))
	}
	if len(one.Passes) > 0 {
		out.Rounds = labels.Passes + labels.Colon + " " + plan.Passes(one.Passes)
	}
	if len(one.Circle) > 0 {
		out.Figures = figureOf(figures["circle-"+number], turns(one.Circle), "", nil, labels)
	}
	if one.Level != nil {
		out.Figures = append(out.Figures, figureOf(figures["level-"+number], ports(*one.Level), "", nil, labels)...)
	}
	if one.Picture != nil {
		out.Figures = append(out.Figures, figureOf(figures["photo-"+number], one.Picture.Title, one.Picture.Title, one.Picture.Callouts, labels)...)
	}
	for i, reading := range one.Readings {
		out.Blanks = append(out.Blanks, field(reading, fmt.Sprintf("reading-%d-%d", one.Number, i+1), one.Number, one.Otherwise.Text, labels))
	}
	return out
}

// figureOf is a drawing, where there is one.
func figureOf(drawn []byte, alt, caption string, callouts []plan.Callout, labels plan.Labels) []figure {
	if drawn == nil {
		return nil
	}
	out := figure{Small: caption == "", Source: template.URL("data:image/svg+xml;base64," + base64.StdEncoding.EncodeToString(drawn)), Alt: alt, Caption: caption, Labels: labels}
	for _, one := range callouts {
		if one.Name != "" {
			out.Names = append(out.Names, one)
		}
	}
	return []figure{out}
}

// turns says a circle for those who cannot see it: the turn of each fastener, clockwise from the top.
func turns(circle []int) string { return strings.Trim(fmt.Sprint(circle), "[]") }

// ports says the openings of a vessel from the top.
func ports(level plan.Level) string {
	var names []string
	for _, port := range level.Ports {
		names = append(names, port.Name)
	}
	return strings.Join(names, ", ")
}

func field(one plan.Blank, id string, step int, otherwise string, labels plan.Labels) blank {
	out := blank{Blank: one, Labels: labels, ID: id, Step: step, Type: "text", Figure: one.Unit != "", Otherwise: otherwise}
	if one.Of == plan.Day {
		out.Type = "date"
	}
	var described []string
	if one.Limit != "" {
		described = append(described, id+"-limit")
	}
	if out.Figure {
		described = append(described, id+"-verdict")
	}
	out.Described = strings.Join(described, " ")
	return out
}

// data is what the script needs to know of the card.
type data struct {
	Procedure string            `json:"procedure"`
	Revision  string            `json:"revision"`
	Machine   string            `json:"machine"`
	Variant   string            `json:"variant"`
	Digest    string            `json:"digest"` // of what the card says, so that no tick stands at another step than it was made at
	Words     map[string]string `json:"words"`
	Layout    []entry.Field     `json:"layout"`
}

func dataOf(card plan.Card) (data, error) {
	out := data{Procedure: card.Name, Revision: card.Revision, Machine: card.Machine, Variant: card.Variant, Words: spoken(card.Words.Labels), Layout: entry.Layout()}
	card.Words = plan.Words{}
	said, err := json.Marshal(card)
	if err != nil {
		return data{}, err
	}
	sum := sha256.Sum256(said)
	out.Digest = base64.RawURLEncoding.EncodeToString(sum[:9])
	return out, nil
}

// spoken are the words that the script puts on the page.
func spoken(l plan.Labels) map[string]string {
	return map[string]string{
		"AtStep": l.AtStep, "AtSteps": l.AtSteps, "Begin": l.Begin, "Copied": l.Copied, "DoneNext": l.DoneNext, "DoneOf": l.DoneOf, "GoOn": l.GoOn, "Next": l.Next,
		"NoFigure": l.NoFigure, "NotCopied": l.NotCopied, "Outside": l.Outside, "OverBy": l.OverBy, "Pause": l.Pause, "Saved": l.Saved, "StartTimer": l.StartTimer,
		"StepOf": l.StepOf, "StillOpen": l.StillOpen, "TimeOver": l.TimeOver, "Timer": l.Timer, "Within": l.Within,
	}
}
