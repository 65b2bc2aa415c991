package assist

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

// Hover says what is known of an offset of a file: of a name what it names, of an amount the
// amount in other units, of a key, a verb, a word or a header what it means.
func (s *Shop) Hover(path string, offset int) (Hover, bool) {
	file := s.file(path)
	if file == nil {
		return Hover{}, false
	}
	if m, ok := s.at(file, offset); ok && !m.bare {
		if text, ok := s.hoverName(m); ok {
			return Hover{place(file, m.span), text}, true
		}
	}
	h := hoverer{shop: s, file: file, offset: offset}
	h.table(file.Document.Root, top())
	return h.out, h.found
}

func (s *Shop) hoverName(m mention) (string, bool) {
	if t := s.resolve(m); t.known() {
		if card, ok := s.about(m.file, t, true); ok {
			return card.text(s.kindWord(t)), true
		}
	}
	if card, what, ok := builtIn(m); ok {
		return card.text(what), true
	}
	return "", false
}

// kindWord says what a thing is and of what machine.
func (s *Shop) kindWord(t target) string {
	kind := t.kind
	if kind == "variant" {
		kind = "version"
	}
	if t.file.Machine != nil && kind != "machine" && kind != "procedure" && kind != "step" && t.file.Machine.Title.Set() {
		return kind + " of " + inline(t.file.Machine.Title.Text)
	}
	return kind
}

type hoverer struct {
	shop   *Shop
	file   *model.File
	offset int
	out    Hover
	found  bool
}

func (h *hoverer) say(span source.Span, text string) {
	if !h.found && text != "" {
		h.out, h.found = Hover{place(h.file, span), text}, true
	}
}

func (h *hoverer) table(table *tree.Table, s shape) {
	if table == nil {
		return
	}
	for _, entry := range table.Entries {
		key, known := s.find(entry.Key)
		for _, span := range append([]source.Span{entry.KeySpan}, entry.Again...) {
			if known && within(span, h.offset) {
				h.say(span, h.keyText(s, key))
			}
		}
		inner := s.down(entry.Key)
		if inner.holds != unknown {
			h.table(entry.Value.Table, inner)
			for _, item := range entry.Value.Items {
				h.table(item.Table, inner)
			}
		}
		switch {
		case h.found:
			return
		case s.holds == counted:
			h.amount("volume mass count length", entry.Value, "")
		case known:
			h.value(s, key, entry.Value)
		}
	}
}

// keyText is what a key means, with its table where it makes one.
func (h *hoverer) keyText(s shape, key schema.Key) string {
	if verb, ok := schema.FindVerb(key.Name); ok && s.layout.Name == "step" {
		return "**" + verb.Key + "**\n\n" + verbDoc(verb)
	}
	switch key.Kind {
	case schema.Sub, schema.Subs, schema.Named:
		if table, ok := schema.Find(key.Of); ok {
			return "**" + inline(table.Header) + "**\n\n" + tableDoc(table)
		}
	}
	return "**" + key.Name + "** – " + kindWords(key) + "\n\n" + keyDoc(key)
}

func (h *hoverer) value(s shape, key schema.Key, value *tree.Value) {
	for _, item := range append([]*tree.Value{value}, value.Items...) {
		if !within(item.Span, h.offset) || item.Kind == tree.ArrayKind || item.Kind == tree.TableKind || item.Kind == tree.TablesKind {
			continue
		}
		switch key.Kind {
		case schema.Amount, schema.Amounts:
			h.amount(key.Of, item, inline(key.Doc))
		case schema.Choice, schema.Choices:
			i := slices.IndexFunc(key.Choices, func(o schema.Option) bool { return o.Word == item.Text })
			if i >= 0 {
				h.say(item.Span, "**"+item.Text+"** – "+inline(key.Choices[i].Doc))
			}
		case schema.Text:
			if s.layout.Name == "allow" && key.Name == "rule" {
				for _, rule := range h.shop.rules {
					if rule.ID == item.Text {
						h.say(item.Span, "**"+inline(rule.Title)+"**\n\n"+inline(rule.Why))
					}
				}
			}
		}
	}
}

// still are what is measured in the same units everywhere.
var still = []quantity.Dimension{quantity.Time, quantity.Calendar, quantity.Count, quantity.Cycles}

// amount tells an amount in other units.
func (h *hoverer) amount(of string, value *tree.Value, doc string) {
	if value.Kind != tree.StringKind || !within(value.Span, h.offset) || h.found {
		return
	}
	wants := model.Dimensions(of)
	amount, problems := quantity.Parse(value.Text, wants[0], wants[1:]...)
	if slices.ContainsFunc(problems, func(p quantity.Problem) bool { return !p.Warning }) {
		return // the findings say what is wrong
	}
	text := "**" + inline(amount.Plain()) + "**"
	for _, other := range converted(amount) {
		text += "\n\n= " + inline(other)
	}
	if doc != "" {
		text += "\n\n" + doc
	}
	h.say(value.Span, text)
}

// converted is an amount in the units a shop would use, that of the other system first.
func converted(amount quantity.Amount) []string {
	var out []string
	add := func(text string) {
		text = strings.ReplaceAll(text, "\u00a0", " ")
		if text != "" && text != strings.ReplaceAll(amount.Plain(), "\u00a0", " ") && !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	if slices.Contains(still, amount.Dimension) {
		return nil
	}
	add(amount.Format(quantity.Metric))
	add(amount.Format(quantity.Inch))
	for _, unit := range amount.Dimension.Usual() {
		if unit.Symbol != amount.Unit.Symbol && amount.Unit.Converts(unit) && (amount.Dual == nil || amount.Dual.Unit.Symbol != unit.Symbol) {
			in := amount.In(unit)
			add(in.Plain())
		}
	}
	return out
}
