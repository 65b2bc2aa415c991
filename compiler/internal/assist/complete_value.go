package assist

import (
	"path"
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

// value offers what can stand as the value of a key.
func (c *completer) value() {
	n := len(c.cursor.path)
	if n == 0 || c.cursor.long {
		return
	}
	s, name := under(c.cursor.path[:n-1]), c.cursor.path[n-1]
	if s.holds == counted {
		c.units("volume mass count length")
		return
	}
	key, known := s.find(name)
	if !known {
		return
	}
	inList := c.cursor.list || key.Kind != schema.Texts && key.Kind != schema.Choices
	switch key.Kind {
	case schema.Name, schema.Names:
		c.offer(c.named(kindsOf(key)), inList)
	case schema.Choice, schema.Choices:
		var out []candidate
		for _, option := range key.Choices {
			out = append(out, candidate{label: option.Word, detail: option.Doc, doc: inline(option.Doc), kind: "value"})
		}
		c.offer(out, inList)
	case schema.Amount, schema.Amounts:
		c.units(key.Of)
	case schema.Flag:
		if c.cursor.spot == inBare {
			for _, word := range []string{"true", "false"} {
				c.add(candidate{label: word, doc: inline(key.Doc), kind: "value"}, place(c.file, c.cursor.token), word)
			}
		}
	default:
		c.offer(c.texts(s.layout.Name, key), inList)
	}
}

// texts are what can stand in some keys that hold text.
func (c *completer) texts(table string, key schema.Key) []candidate {
	var out []candidate
	switch table + "." + key.Name {
	case "allow.rule":
		for _, rule := range c.shop.rules {
			out = append(out, candidate{label: rule.ID, detail: rule.Title, doc: inline(rule.Why), kind: "value"})
		}
	case "file.use":
		for _, file := range c.shop.set.Files {
			if file != c.file {
				out = append(out, candidate{label: c.from(file.Source.Path), detail: "file of the shop", kind: "value"})
			}
		}
	case "picture.file":
		for _, picture := range c.shop.pictures {
			out = append(out, candidate{label: c.from(picture), detail: "picture of the shop", kind: "value"})
		}
	default:
		if kinds, declares := namesIn(table, key); !declares {
			out = c.named(kinds)
		}
	}
	return out
}

// from is a path of the shop as it is written in the file.
func (c *completer) from(other string) string {
	here, there := strings.Split(path.Dir(c.file.Source.Path), "/"), strings.Split(other, "/")
	if here[0] == "." {
		here = nil
	}
	for len(here) > 0 && len(there) > 1 && here[0] == there[0] {
		here, there = here[1:], there[1:]
	}
	return strings.Repeat("../", len(here)) + strings.Join(there, "/")
}

// offer adds texts, in quotes where none are written; in brackets too where a list is wanted
// and none is open.
func (c *completer) offer(list []candidate, bare bool) {
	replace, before, after := c.around()
	if !bare && c.cursor.spot == inBare {
		before, after = `["`, `"]`
	}
	for _, one := range list {
		if c.cursor.values != nil && slices.Contains(c.cursor.values.items, one.label) {
			continue
		}
		c.add(one, replace, before+one.label+after)
	}
}

// around is what a text takes the place of, and what is written before and behind it: the
// quotes that are missing.
func (c *completer) around() (replace source.Place, before, after string) {
	token := c.cursor.token
	if c.cursor.spot == inBare {
		return place(c.file, token), `"`, `"`
	}
	quote := string(c.cursor.quote)
	if c.cursor.shut && plainText(c.text[c.at:token.End]) {
		return place(c.file, token), "", ""
	}
	end := c.at // of a text that is not closed only the name at the cursor is replaced
	for end < token.End && bareKey(c.text[end]) {
		end++
	}
	if end < len(c.text) && c.text[end] == c.cursor.quote {
		quote = ""
	}
	return c.span(token.Start, end), "", quote
}

func plainText(text []byte) bool {
	return !slices.ContainsFunc(text, func(b byte) bool { return !bareKey(b) && b != ' ' && b != '/' && b != '.' && b != '*' })
}

// figured is an amount up to the cursor: a figure, and what is written of its unit.
var figured = pattern.MustCompile(`[0-9][0-9.,/]*([ \t]*[^0-9,;()/"'.±-]*)$`)

// bounds are the words before a figure.
var bounds = []candidate{
	{label: quantity.English.AtLeast, detail: "at least", kind: "value"},
	{label: quantity.English.AtMost, detail: "at most", kind: "value"},
	{label: quantity.English.About, detail: "about", kind: "value"},
}

// units offers the units of what a key measures behind a figure, and the words that bound one
// before it.
func (c *completer) units(of string) {
	token := c.cursor.token
	written := string(c.text[token.Start:c.at])
	before, after := "", ""
	if c.cursor.spot == inText {
		if !c.cursor.shut {
			after = string(c.cursor.quote)
		}
	} else {
		before, after = `"`, `"`
	}
	m := figured.FindStringSubmatchIndex(written)
	if m == nil {
		if c.cursor.spot == inText && strings.Trim(written, "abinmoutx ") == "" {
			for _, word := range bounds {
				c.add(word, c.span(token.Start, c.at), word.label+" $0"+after)
			}
		}
		return
	}
	if unit := strings.TrimLeft(written[m[2]:m[3]], " \t"); strings.HasPrefix(unit, quantity.English.To+" ") {
		return // a word, and the second figure is still to come
	}
	start, end := token.Start+m[2], c.at
	if c.cursor.spot == inBare { // the figure gets its quotes too
		start = token.Start
		before += written[:m[2]]
		end = token.End
	} else {
		for end < token.End && !strings.ContainsRune(" \t0123456789()/", rune(c.text[end])) {
			end++
		}
	}
	for _, unit := range unitsOf(of) {
		blank := " "
		if unit.Symbol == "°" {
			blank = ""
		}
		c.add(candidate{label: unit.Symbol, detail: unit.Name, kind: "unit"}, c.span(start, end), before+blank+unit.Symbol+after)
	}
}

// unitsOf are the units of what a key measures, those of every shop first.
func unitsOf(of string) []quantity.Unit {
	var usual, rest []quantity.Unit
	for _, dimension := range model.Dimensions(of) {
		if dimension == quantity.Any {
			for _, every := range quantity.Dimensions() {
				usual = append(usual, every.Usual()...)
			}
			continue
		}
		usual = append(usual, dimension.Usual()...)
		rest = append(rest, quantity.Units(dimension)...)
	}
	var out []quantity.Unit
	for _, unit := range append(usual, rest...) {
		if !slices.ContainsFunc(out, func(other quantity.Unit) bool { return other.Symbol == unit.Symbol }) {
			out = append(out, unit)
		}
	}
	return out
}
