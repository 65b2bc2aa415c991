package pagestest

import (
	"math/rand/v2"
	"strings"

	"benchleaf/compiler/internal/plan"
)

// Random makes a card as no author would write it: long words, many steps or
// none, messages longer than a side. The same seed makes the same card.
func Random(seed uint64) plan.Card {
	g := dice{rand.New(rand.NewPCG(seed, 7))}
	card := plan.Card{Words: Words(), Shop: g.text(4), Title: g.text(12), Name: g.word(), Machine: g.text(4), Variant: g.text(3),
		Revision: g.word(), Date: "2026-01-31", Author: g.text(3), Summary: g.runs(40), Manual: g.text(20)}
	for range g.upTo(9) {
		card.Facts = append(card.Facts, plan.Fact{Label: g.text(3), Text: g.text(8)})
	}
	card.Start, card.End, card.Allowed = g.texts(3, 30), g.texts(3, 30), g.texts(2, 10)
	card.Cautions = g.cautions(6)
	for i := range card.Cautions {
		for range g.upTo(3) {
			card.Cautions[i].Steps = append(card.Cautions[i].Steps, 1+g.IntN(99))
		}
	}
	for range g.upTo(5) {
		card.Isolations = append(card.Isolations, plan.Isolation{Energy: g.text(5), How: g.text(g.long(60)), Prove: g.text(40), Cut: g.IntN(3), Proof: g.IntN(3)})
	}
	card.Wear, card.Tools, card.Supplies, card.Spares = g.things(4), g.things(30), g.things(4), g.things(4)
	number := 1
	for range g.upTo(4) {
		section := plan.Section{Title: g.text(6), Lead: g.text(g.upTo(20))}
		for range g.upTo(20) {
			section.Steps = append(section.Steps, g.step(number))
			number++
		}
		card.Sections = append(card.Sections, section)
	}
	card.Blanks = g.blanks(12)
	if g.IntN(3) > 0 {
		card.Map = g.drawing()
	}
	for range g.upTo(2) {
		card.Pictures = append(card.Pictures, *g.picture())
	}
	return card
}

// RandomList makes a pick list as no shop would have it.
func RandomList(seed uint64) plan.PickList {
	g := dice{rand.New(rand.NewPCG(seed, 11))}
	list := plan.PickList{Words: Words(), Shop: g.text(3), Kind: "Pick list", Title: g.text(8), Sum: g.text(4), Date: "2026-01-31", DateIs: "Latest revision", Warnings: g.texts(3, 20)}
	keys := []string{}
	for i := range g.upTo(30) {
		keys = append(keys, string(rune('A'+i%26))+strings.Repeat("'", i/26))
		list.Served = append(list.Served, plan.Served{Key: keys[i], Title: g.text(6), Machine: g.text(3), Revision: g.word()})
	}
	for range g.upTo(6) {
		group := plan.PickGroup{Title: g.text(3), Note: g.text(g.upTo(12)), None: g.text(g.upTo(4))}
		for range g.upTo(30) {
			group.Lines = append(group.Lines, plan.Pick{Name: g.text(1 + g.upTo(8)), Quantity: g.text(g.upTo(2)), Take: g.text(g.upTo(6)),
				Serves: g.texts(5, 5), StandIns: g.texts(3, 5), Where: g.text(g.upTo(4)), For: keys[:g.upTo(len(keys))],
				OnHand: g.text(g.upTo(2)), Missing: g.text(g.upTo(2)), Cost: g.text(g.upTo(2)), RunsOut: g.text(g.upTo(9))})
		}
		list.Groups = append(list.Groups, group)
	}
	return list
}

// RandomApproval makes an approval sheet as no job would have it: strips that overlap
// nothing, that never end, long names, hundreds of steps.
func RandomApproval(seed uint64) plan.Approval {
	g := dice{rand.New(rand.NewPCG(seed, 13))}
	sheet := plan.Approval{Words: Words(), Shop: g.text(3), Title: g.text(10), Machine: g.text(3), Variant: g.text(2), Revision: g.word(), Date: "2026-01-31",
		Author: g.text(3), Checked: g.text(3), Manual: g.text(12), Held: g.upTo(1) == 1, Verdict: g.text(8), Counts: g.texts(2, 15)}
	steps := g.upTo(120)
	for range steps {
		sheet.Steps = append(sheet.Steps, g.runs(15))
	}
	for from := 1; from <= steps; {
		to := min(steps, from+g.upTo(40))
		sheet.Phases = append(sheet.Phases, plan.Phase{Title: g.text(4), From: from, To: to})
		from = to + 1
	}
	for range g.upTo(20) {
		strip := plan.Strip{Name: g.text(6)}
		for at := 1 + g.upTo(9); at <= steps; {
			to := min(steps, at+g.upTo(30))
			strip.Bars = append(strip.Bars, plan.Bar{From: at, To: to, Word: g.text(2), Half: g.upTo(1) == 1})
			at = to + 1 + g.upTo(9)
		}
		sheet.Strips = append(sheet.Strips, strip)
	}
	remarks := func() (out []plan.Remark) {
		for range g.upTo(12) {
			out = append(out, plan.Remark{Word: g.word(), Text: g.text(20), Rule: g.word(), Where: g.word(), Step: g.upTo(steps), Reason: g.text(g.upTo(12))})
		}
		return out
	}
	sheet.Found, sheet.Accepted = remarks(), remarks()
	for range g.upTo(30) {
		sheet.Figures = append(sheet.Figures, plan.Figure{What: g.text(5), Text: g.text(3), Source: g.text(g.upTo(12)), Where: g.word()})
	}
	return sheet
}

type dice struct{ *rand.Rand }

func (g dice) upTo(n int) int { return g.IntN(n + 1) }

// long is mostly a few and now and then very many.
func (g dice) long(n int) int {
	if g.IntN(25) == 0 {
		return n * 8
	}
	return g.upTo(n)
}

func (g dice) word() string {
	letters := []rune("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789·–±°²½≥×−")
	n := 1 + g.IntN(12)
	switch g.IntN(60) {
	case 0:
		n = 200
	case 1:
		return string([]rune{'\u2713', '\u26a0', '\U0001F527', '\u202f', '\n', '\t', 0x00, '\u0301'}[g.IntN(8)])
	}
	out := make([]rune, n)
	for i := range out {
		out[i] = letters[g.IntN(len(letters))]
	}
	return string(out)
}

func (g dice) text(words int) string {
	var out []string
	for range words {
		out = append(out, g.word())
	}
	return strings.Join(out, " ")
}

func (g dice) texts(n, words int) (out []string) {
	for range g.upTo(n) {
		out = append(out, g.text(g.upTo(words)))
	}
	return out
}

func (g dice) runs(words int) (out []plan.Run) {
	for range g.upTo(5) {
		out = append(out, plan.Run{Text: g.text(g.long(words/4)) + " ", Bold: g.IntN(3) == 0, Italic: g.IntN(5) == 0, Code: g.IntN(9) == 0})
	}
	return out
}

func (g dice) cautions(n int) (out []plan.Caution) {
	signals := plan.Signals()
	for range g.upTo(n) {
		signal := signals[g.IntN(4)]
		made := plan.Caution{Signal: signal, Word: strings.ToUpper(signal), Hazard: g.text(8), Consequence: g.text(g.long(20)), Avoid: g.text(g.long(40)), Wear: g.texts(3, 3)}
		switch g.IntN(3) {
		case 0:
			made.Second = plan.Second{Language: "fr", Word: "AVERTISSEMENT", Hazard: g.text(g.upTo(12))}
		case 1:
			made.Second = plan.Second{Language: "de", Word: g.word(), Hazard: g.text(g.long(9))}
		}
		out = append(out, made)
	}
	return out
}

func (g dice) things(n int) (out []plan.Item) {
	for range g.upTo(n) {
		out = append(out, plan.Item{Name: g.text(1 + g.upTo(8)), Quantity: g.text(g.upTo(2)), Note: g.text(g.upTo(10)), StandIns: g.texts(3, 5)})
	}
	return out
}

func (g dice) blanks(n int) (out []plan.Blank) {
	for range g.upTo(n) {
		out = append(out, plan.Blank{Label: g.text(1 + g.upTo(5)), Unit: g.text(g.upTo(1)), Limit: g.text(g.upTo(6))})
	}
	return out
}

func (g dice) step(number int) plan.Step {
	step := plan.Step{Number: number, Action: append([]plan.Run{{Text: "Do "}}, g.runs(30)...), Otherwise: plan.Fact{Label: g.text(1 + g.upTo(2)), Text: g.text(g.upTo(20))}, Details: g.texts(4, 6), Notes: g.texts(2, 20),
		Wait: g.IntN(5) == 0, Meanwhile: g.IntN(3) == 0}
	if g.IntN(4) == 0 {
		step.Stage = g.text(5)
	}
	if g.IntN(3) == 0 {
		step.Cautions = g.cautions(3)
	}
	for range g.upTo(3) {
		step.Values = append(step.Values, plan.Value{Label: g.text(1), Text: g.text(1 + g.upTo(4)), Also: g.text(g.upTo(4))})
	}
	for range g.upTo(2) {
		step.Say = append(step.Say, plan.Block{Bullet: []string{"", "•", "12."}[g.IntN(3)], Runs: g.runs(40)})
	}
	step.Readings = g.blanks(2)
	if g.IntN(5) == 0 {
		for turn := range 4 + g.IntN(21) {
			step.Circle = append(step.Circle, turn+1)
		}
	}
	switch g.IntN(8) {
	case 0:
		step.Level = g.level()
	case 1:
		step.Picture = g.picture()
	case 2:
		for range 2 + g.upTo(4) {
			step.Passes = append(step.Passes, plan.Pass{Share: 1 + g.upTo(99), Text: g.text(g.upTo(5))})
		}
	}
	return step
}
