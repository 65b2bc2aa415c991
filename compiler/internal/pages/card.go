package pages

import (
	"fmt"
	"strings"

	"benchleaf/compiler/internal/plan"
)

// card lays one card out.
type card struct {
	sheet
	plan  plan.Card
	above string // the line above the title; the shop, where it is empty
}

// LayCard lays a card out. What could not be shown as it should comes back as
// problems; the document is whole all the same.
func LayCard(content plan.Card, look Look) (Document, []Problem) {
	look, problems := look.settled()
	c := &card{sheet: sheet{setter: newSetter(look, content.Words, problems)}, plan: content}
	c.grid = c.rule()
	items := c.items()
	c.where = "card"
	frame := frame{s: c.setter, width: c.width, height: look.Stock.safe(1).Height, what: content.Title, end: content.Words.Labels.EndOfCard, again: c.again}
	frame.who, frame.laws = c.identity()
	document := Document{Title: content.Title, Subject: content.Machine, Author: content.Author, Language: content.Words.Language, Date: content.Date}
	document.Sides = frame.share(items)
	return document, distinct(c.problems)
}

// rule measures the margin by the widest step number.
func (c *card) rule() grid {
	most := 9
	for _, section := range c.plan.Sections {
		for _, step := range section.Steps {
			most = max(most, step.Number)
		}
	}
	digits := strings.Repeat("8", max(2, len(fmt.Sprint(most))))
	em := c.size.main
	width := c.look.Stock.safe(1).Width
	margin := tickSize*em + 0.3*em + Bold.Width(digits, numberSize*em) + 0.55*em
	return grid{width: width, margin: margin, column: width - margin, indent: 1.15 * em}
}

// Sizes in ems of the main type.
const (
	tickSize   = 1.45
	numberSize = 1.18
)

func (c *card) items() []item {
	items := []item{{piece: c.head()}}
	c.where = "safety"
	items = append(items, c.safety()...)
	items = append(items, c.overTime()...)
	c.where = "bring"
	items = append(items, c.bring()...)
	items = append(items, c.drawings()...)
	items = append(items, c.conditions(c.words.Labels.Start, c.plan.Start, costList)...)
	for _, section := range c.plan.Sections {
		items = append(items, c.section(section)...)
	}
	c.where = "record"
	return append(items, c.closing()...)
}

// overTime is the job over its time: like the messages and the energies, what it is as a whole.
func (c *card) overTime() []item {
	line := c.plan.Timeline
	if line == nil {
		return nil
	}
	c.where = line.Title
	return []item{{piece: c.heading(line.Title), above: c.size.main * 0.7, dear: costStage}, {piece: c.timeline(*line), above: c.size.main * 0.3, stays: true}}
}

// drawings are the map of the machine and the pictures for the whole job.
func (c *card) drawings() []item {
	labels := c.words.Labels
	tallest := min(c.look.Stock.safe(1).Height*0.3, 14*c.size.main) // on large stock no larger than it need be
	var items []item
	if c.plan.Map != nil {
		c.where = labels.Map
		made, ok := c.places(*c.plan.Map, c.width, tallest)
		if ok {
			items = append(append(items, item{piece: c.heading(labels.Map), above: c.size.main * 0.7, dear: costStage}), made...)
		} else {
			c.crowded(labels.Map, c.plan.Map.Callouts, c.width)
		}
	}
	for _, shown := range c.plan.Pictures {
		c.where = shown.Title
		made, ok := c.photo(shown, c.width, tallest*1.2)
		if !ok {
			c.crowded(shown.Title, shown.Callouts, c.width)
			continue
		}
		items = append(items, item{piece: made[0], above: c.size.main * 0.6, dear: costList})
		for _, row := range made[1:] {
			items = append(items, item{piece: row, above: c.size.small * 0.3, stays: true})
		}
	}
	return items
}

// heading is a title over a line.
func (c *card) heading(title string) piece {
	text := c.say(c.main().with(Bold), c.column, title)
	out := piece{width: c.width}
	out.put(text, 0, 0)
	out.mark(band(0, text.height, c.width, 0.35, black))
	out.height = text.height + 0.35
	return out.named("heading", title)
}

func (c *card) identity() (who string, laws []string) {
	labels := c.words.Labels
	who = joined(" · ", c.plan.Machine, c.plan.Variant, c.plan.Name, prefixed(labels.Revision, c.plan.Revision), c.plan.Date)
	if c.plan.Manual != "" {
		laws = append(laws, labels.Manual+labels.Colon+" "+c.plan.Manual)
	}
	return who, append(laws, labels.Local)
}

// joined puts a mark between the texts that say something.
func joined(mark string, texts ...string) string {
	var said []string
	for _, text := range texts {
		if strings.TrimSpace(text) != "" {
			said = append(said, text)
		}
	}
	return strings.Join(said, mark)
}

func prefixed(label, text string) string {
	if text == "" {
		return ""
	}
	return label + " " + text
}

func distinct(problems []Problem) []Problem {
	var out []Problem
	seen := map[Problem]bool{}
	for _, p := range problems {
		if !seen[p] {
			seen[p] = true
			out = append(out, p)
		}
	}
	return out
}
