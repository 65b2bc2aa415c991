package assist

import (
	"cmp"
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/state"
	"benchleaf/compiler/internal/tree"
	"benchleaf/schema"
)

// Hints are what a job's steps change about the machine, each behind its step, and what
// amounts are in the other system of units. Without a job there is only the latter.
func (s *Shop) Hints(path string, job *model.Job, walk *state.Walk) []Hint {
	file := s.file(path)
	if file == nil {
		return nil
	}
	var out []Hint
	if job != nil && walk != nil {
		for i, step := range job.Steps {
			if text, tip := change(walk, i); text != "" {
				out = append(out, Hint{At: behind(step), Text: cut(text, 60), Tip: tip})
			}
		}
	}
	c := converter{file: file, system: quantity.Both}
	for _, layer := range file.Layers() {
		if layer.Shop != nil {
			c.system = map[string]quantity.System{"metric": quantity.Metric, "inch": quantity.Inch}[layer.Shop.Units.Text]
			if layer.Shop.Units.Text != "metric" && layer.Shop.Units.Text != "inch" {
				c.system = quantity.Both
			}
			break
		}
	}
	c.table(file.Document.Root, top())
	out = append(out, c.out...)
	slices.SortStableFunc(out, func(a, b Hint) int { return cmp.Compare(a.At, b.At) })
	return out
}

// behind is where the hint of a step stands: behind its verb, or its header where it has none.
func behind(step *model.Step) int {
	if len(step.Verbs) > 0 {
		return step.Verbs[0].Value.Span.End
	}
	return step.Header.Span.End
}

// change says what a step changes: "off: belt guard; gearbox empty".
func change(walk *state.Walk, at int) (text, tip string) {
	var words, stands []string
	things := map[string][]string{}
	for _, track := range walk.Tracks {
		if at >= len(track.Levels) {
			continue
		}
		now, before := track.Levels[at], state.AsBefore
		if at > 0 {
			before = track.Levels[at-1]
		}
		if now != state.AsBefore {
			stands = append(stands, track.Words+" "+level(track.Kind, now))
		}
		if now == before {
			continue
		}
		word := level(track.Kind, now)
		if now == state.AsBefore {
			word = restored(track.Kind, before)
		}
		if things[word] == nil {
			words = append(words, word)
		}
		things[word] = append(things[word], track.Words)
	}
	if len(words) == 0 {
		return "", ""
	}
	for i, word := range words {
		words[i] = word + ": " + strings.Join(things[word], ", ")
	}
	tip = "Now all stands as it does while the machine works."
	if len(stands) > 0 {
		tip = "Now: " + strings.Join(stands, "; ") + "."
	}
	return strings.Join(words, "; "), tip
}

// level is how something of a kind stands.
func level(kind string, level state.Level) string {
	switch {
	case kind == "slack":
		return "slack"
	case kind == "parted":
		return "apart"
	}
	return [...]string{"as before", "loose", "open", "closed", "off", "empty", "isolated", "proved dead", "raised", "on stands"}[level]
}

// restored is how something stands that stands as before again.
func restored(kind string, before state.Level) string {
	switch {
	case kind == "slack":
		return "under tension"
	case kind == "parted":
		return "joined"
	}
	switch before {
	case state.Loose:
		return "tight"
	case state.Open:
		return "closed"
	case state.Shut:
		return "open"
	case state.Empty:
		return "filled"
	case state.Cut, state.Proved:
		return "live"
	case state.Raised, state.Stands:
		return "down"
	}
	return "on"
}

// told are the keys whose amounts are told in the other system: those that somebody sets,
// fills or reads at the machine.
var told = []string{"torque", "amount", "capacity", "pressure", "set", "limit", "new", "over", "under"}

type converter struct {
	file   *model.File
	system quantity.System
	out    []Hint
}

func (c *converter) table(table *tree.Table, s shape) {
	if table == nil || s.second {
		return
	}
	for _, entry := range table.Entries {
		inner := s.down(entry.Key)
		if inner.holds != unknown {
			c.table(entry.Value.Table, inner)
			for _, item := range entry.Value.Items {
				c.table(item.Table, inner)
			}
		}
		key, known := s.find(entry.Key)
		if !known || key.Kind != schema.Amount || entry.Value.Kind != tree.StringKind || !slices.Contains(told, key.Name) {
			continue
		}
		wants := model.Dimensions(key.Of)
		amount, problems := quantity.Parse(entry.Value.Text, wants[0], wants[1:]...)
		if len(problems) > 0 || amount.Dual != nil || c.system == amount.Unit.System {
			continue
		}
		if also := strings.ReplaceAll(amount.Also(quantity.Both), "\u00a0", " "); also != "" {
			c.out = append(c.out, Hint{At: entry.Value.Span.End, Text: "= " + also, Tip: strings.Join(converted(amount), "\n")})
		}
	}
}
