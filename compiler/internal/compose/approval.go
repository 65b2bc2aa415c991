package compose

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/state"
	"benchleaf/compiler/source"
)

// Review is what is to be said of a job besides what its card says.
type Review struct {
	Walk     *state.Walk
	Held     bool
	Found    []finding.Finding
	Accepted []finding.Finding // with the reason as the last related text
}

// Approval composes the sheet for whoever puts their name to a procedure: how the
// machine stands after each step, what was found, what is accepted and why, and
// where every figure comes from. It is an error when the shop's language has no words.
func Approval(work Work, system quantity.System, review Review) (plan.Approval, error) {
	w, err := newWriter(work, system)
	if err != nil {
		return plan.Approval{}, err
	}
	card, err := Card(work, system, nil)
	if err != nil {
		return plan.Approval{}, err
	}
	out := plan.Approval{Words: card.Words, Shop: card.Shop, Title: card.Title, Machine: card.Machine, Variant: card.Variant, Revision: card.Revision,
		Date: card.Date, Author: card.Author, Checked: card.Checked, Manual: card.Manual, Held: review.Held, Verdict: w.words.Labels.Fit}
	if review.Held {
		out.Verdict = w.words.Labels.HeldBack
	}
	for _, section := range card.Sections {
		if len(section.Steps) == 0 {
			continue
		}
		out.Phases = append(out.Phases, plan.Phase{Title: section.Title, From: section.Steps[0].Number, To: section.Steps[len(section.Steps)-1].Number})
		for _, step := range section.Steps {
			out.Steps = append(out.Steps, step.Action)
		}
	}
	out.Strips = w.strips(review.Walk)
	for _, found := range review.Found {
		out.Found = append(out.Found, w.remark(found))
	}
	for _, found := range review.Accepted {
		remark := w.remark(found)
		if n := len(found.Related); n > 0 {
			remark.Reason = found.Related[n-1].Text
		}
		out.Accepted = append(out.Accepted, remark)
	}
	out.Figures = w.figures()
	bare, again := 0, 0
	for _, figure := range out.Figures {
		if figure.Source == "" {
			bare++
		}
		if figure.Again != "" {
			again++
		}
	}
	out.Counts = w.counts(out, bare, again)
	if bare > 0 && !review.Held {
		out.Verdict = strings.ReplaceAll(w.words.Labels.FitBare, "{none}", strconv.Itoa(bare))
	}
	return out, nil
}

// kindOrder is how the strips stand below each other.
var kindOrder = []string{"energy", "raised", "cover", "part", "parted", "slack", "cavity"}

func (w *writer) strips(walk *state.Walk) []plan.Strip {
	tracks := slices.Clone(walk.Tracks)
	slices.SortStableFunc(tracks, func(a, b state.Track) int {
		return cmp.Compare(slices.Index(kindOrder, a.Kind), slices.Index(kindOrder, b.Kind))
	})
	var out []plan.Strip
	for _, track := range tracks {
		strip := plan.Strip{Kind: track.Kind, Name: upper(track.Words)}
		for i, level := range track.Levels {
			if level == state.AsBefore {
				continue
			}
			word, half := w.level(level)
			switch track.Kind {
			case "slack":
				word = w.words.Labels.Slack
			case "parted":
				word = w.words.Labels.Apart
			}
			if n := len(strip.Bars); n > 0 && strip.Bars[n-1].To == i && strip.Bars[n-1].Word == word {
				strip.Bars[n-1].To = i + 1
				continue
			}
			strip.Bars = append(strip.Bars, plan.Bar{From: i + 1, To: i + 1, Word: word, Half: half})
		}
		if len(strip.Bars) > 0 {
			out = append(out, strip)
		}
	}
	return out
}

func (w *writer) level(level state.Level) (word string, half bool) {
	labels := w.words.Labels
	switch level {
	case state.Loose:
		return labels.Loose, true
	case state.Open:
		return labels.Open, false
	case state.Shut:
		return labels.Closed, false
	case state.Off:
		return labels.Off, false
	case state.Empty:
		return labels.Empty, false
	case state.Cut:
		return labels.Isolated, true
	case state.Proved:
		return labels.Proved, false
	case state.Raised:
		return labels.Raised, true
	}
	return labels.OnStands, false
}

func (w *writer) remark(found finding.Finding) plan.Remark {
	labels := w.words.Labels
	word := [...]string{labels.Note, labels.Warned, labels.Error}[found.Severity]
	return plan.Remark{Severity: found.Severity.String(), Word: word, Text: upper(found.Summary), Rule: found.Rule, Where: where(found.Place), Step: w.stepAt(found.Place)}
}

func where(place source.Place) string {
	if place.File == nil {
		return ""
	}
	return fmt.Sprintf("%s:%d", place.File.Path, place.Start().Line)
}

// stepAt is the step whose table a place stands in; 0 where it stands in none.
func (w *writer) stepAt(place source.Place) int {
	number, start := 0, -1
	for _, step := range w.job.Steps {
		if at := step.Header.Span.Start; place.File == w.job.File.Source && at <= place.Span.Start && place.Span.Start <= step.Table.End() && at > start {
			number, start = step.Number, at
		}
	}
	return number
}

func (w *writer) figures() []plan.Figure {
	var out []plan.Figure
	for _, figure := range w.job.Figures() {
		what := model.Spoken(figure.Key)
		if figure.Of != "" {
			what = figure.Of + ", " + what
		}
		made := plan.Figure{What: upper(what), Text: w.amount(figure.Amount), Source: figure.Source, Where: where(figure.Amount.At)}
		if second := figure.Second; second != nil {
			made.Source = cmp.Or(made.Source, second.From.Text)
			made.Again = strings.NewReplacer("{who}", second.By.Text, "{day}", second.Date.Text).Replace(w.words.Labels.ReadAgain)
		}
		out = append(out, made)
	}
	return out
}

func (w *writer) counts(sheet plan.Approval, bare, again int) []string {
	labels := w.words.Labels
	by := map[string]int{}
	for _, remark := range sheet.Found {
		by[remark.Severity]++
	}
	say := func(text string, n, none int) string {
		return strings.NewReplacer("{n}", strconv.Itoa(n), "{none}", strconv.Itoa(none)).Replace(text)
	}
	found := []string{say(labels.Errors, by["error"], 0), say(labels.Warnings, by["warning"], 0), say(labels.Notes, by["note"], 0), say(labels.Accepted, len(sheet.Accepted), 0)}
	figures := strings.ReplaceAll(say(labels.FigureCount, len(sheet.Figures), bare), "{again}", strconv.Itoa(again))
	lines := []string{strings.Join(found, " · "), figures}
	if w.job.Language() != model.English {
		lines = append(lines, labels.Unread)
	}
	return lines
}
