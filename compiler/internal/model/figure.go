package model

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
)

// Figure is a value a job stands on, with what is written beside it.
type Figure struct {
	Of     string // whose it is, in words: "drain plug"; empty for the procedure's own
	Key    string // torque, capacity, limit …
	Amount Amount
	Source string         // the comment behind it on its line, or above it; empty where there is none
	Second *SecondReading // where it was read a second time, alike; nil where it was not
}

// estimates are keys whose amounts are sizes anyone can measure, or guesses nobody
// needs to prove.
var estimates = []string{"hands-on", "elapsed", "time", "reach", "mass", "length", "wrench", "across", "reading-distance"}

// Figures lists the amounts a job stands on: those of its procedure and steps, and
// those of the things of the machine that it works on, in the order of the files.
func (j *Job) Figures() []Figure {
	var out []Figure
	if j.Procedure != nil {
		out = append(out, j.File.figures(j.Procedure.Table, "")...)
	}
	seen := map[*tree.Table]bool{}
	use := func(t Thing, words string) {
		if t.Table != nil && t.File != nil && !seen[t.Table] {
			seen[t.Table] = true
			out = append(out, t.File.figures(t.Table, words)...)
		}
	}
	for _, step := range j.Steps {
		var of string
		if len(step.Objects) > 0 {
			of = step.Objects[0].Words()
		}
		use(step.Thing, of)
		for _, object := range step.Objects {
			switch {
			case object.Part != nil:
				use(object.Part.Thing, object.Part.Words())
				for _, name := range object.Part.HeldBy.Names() {
					if fastener := j.Part(name); fastener != nil {
						use(fastener.Thing, fastener.Words())
					}
				}
			case object.Cavity != nil:
				use(object.Cavity.Thing, object.Cavity.Words())
			case object.Limit != nil:
				use(object.Limit.Thing, object.Limit.Words())
			case object.Point != nil:
				use(object.Point.Thing, object.Point.Words())
			case object.Energy != nil:
				use(object.Energy.Thing, object.Energy.Words())
			}
		}
	}
	return out
}

// figures lists the amounts of one table; what a version of the machine has of its
// own stands among them.
func (f *File) figures(table *tree.Table, of string) []Figure {
	var out []Figure
	for _, entry := range table.Entries {
		switch entry.Value.Kind {
		case tree.TablesKind, tree.ArrayKind, tree.TableKind:
			for _, item := range append(slices.Clone(entry.Value.Items), entry.Value) {
				if item.Table != nil && (entry.Key == "variant" || entry.Key == "adapter") {
					out = append(out, f.figures(item.Table, of)...)
				} else if amount, ok := f.amountOf(item); ok && !slices.Contains(estimates, entry.Key) {
					out = append(out, Figure{of, entry.Key, amount, f.beside(entry, item.Span), f.twice[item]})
				}
			}
		default:
			if amount, ok := f.amountOf(entry.Value); ok && !slices.Contains(estimates, entry.Key) {
				out = append(out, Figure{of, entry.Key, amount, f.beside(entry, entry.Value.Span), f.twice[entry.Value]})
			}
		}
	}
	return out
}

func (f *File) amountOf(value *tree.Value) (Amount, bool) {
	for _, amount := range f.Amounts {
		if amount.Value == value {
			return amount, true
		}
	}
	return Amount{}, false
}

// beside is the comment behind an entry on its last line, or else the ones right
// above its first.
func (f *File) beside(entry *tree.Entry, value source.Span) string {
	first, last := f.Source.Position(entry.KeySpan.Start).Line, f.Source.Position(value.End).Line
	above := map[int]string{}
	for _, comment := range f.Document.Comments {
		text := strings.TrimSpace(strings.TrimLeft(comment.Text, "#"))
		line := f.Source.Position(comment.Span.Start).Line
		switch {
		case line == last && comment.Span.Start >= value.End:
			return text
		case line < first && strings.HasPrefix(strings.TrimSpace(f.Source.Line(line)), "#"):
			above[line] = text
		}
	}
	var out []string
	for line := first - 1; above[line] != ""; line-- {
		out = append(out, above[line])
	}
	slices.Reverse(out)
	return strings.Join(out, " ")
}
