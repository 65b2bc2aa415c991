package assist

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

// Complete lists what can stand at an offset of a file: first what begins as what is written
// there, then what holds it, then the rest, each in the order of the language or of the names.
func (s *Shop) Complete(path string, offset int) []Completion {
	file := s.file(path)
	if file == nil || offset < 0 || offset > len(file.Source.Text) {
		return nil
	}
	c := completer{shop: s, file: file, text: file.Source.Text, at: offset, cursor: look(file.Source.Text, offset)}
	c.names = file
	if shape := under(c.cursor.path); shape.second || len(c.cursor.path) > 0 && under(c.cursor.path[:len(c.cursor.path)-1]).second {
		if first := s.set.First(file); first != nil {
			c.names = first
		}
	}
	switch c.cursor.spot {
	case inKey:
		c.keys()
	case inHeader:
		c.header()
	case inText, inBare:
		c.value()
	}
	return c.ranked()
}

type completer struct {
	shop   *Shop
	file   *model.File
	names  *model.File // whose names are meant: those of the first, in a second reading
	text   []byte
	at     int
	cursor cursor
	out    []Completion
}

func (c *completer) span(start, end int) source.Place {
	return place(c.file, source.Span{Start: start, End: end})
}

// ranked puts what begins as what is written before what holds it, and that before the rest.
func (c *completer) ranked() []Completion {
	rank := func(one Completion) int {
		start := min(one.Replace.Span.Start, c.at)
		written := strings.ToLower(strings.TrimLeft(string(c.text[start:c.at]), " \t"))
		label := strings.ToLower(one.Label)
		switch {
		case strings.HasPrefix(label, written):
			return 0
		case strings.Contains(label, written):
			return 1
		}
		return 2
	}
	slices.SortStableFunc(c.out, func(a, b Completion) int { return rank(a) - rank(b) })
	return c.out
}

// keys offers the keys of a table that are not written yet, and the headers that can follow.
func (c *completer) keys() {
	s := under(c.cursor.path)
	replace := place(c.file, c.cursor.token)
	written := c.cursor.table.keys
	insert := func(key, value string) string {
		if c.cursor.shut {
			return key
		}
		return key + " = " + value
	}
	switch s.holds {
	case versions:
		for _, one := range c.named([]string{"variant"}) {
			if !slices.Contains(written, one.label) {
				c.add(one, replace, insert(one.label, "{ $0 }"))
			}
		}
	case counted:
		for _, one := range c.named(kindsOf(s.key)) {
			if !slices.Contains(written, one.label) {
				c.add(one, replace, insert(one.label, "$0"))
			}
		}
	case keyed:
		c.keysOf(s, replace, written, insert)
	}
	if c.cursor.depth == 0 && c.startsLine() && !c.cursor.shut {
		c.headers(replace)
	}
}

// startsLine reports whether nothing but blanks stands before the key.
func (c *completer) startsLine() bool {
	start := c.cursor.token.Start
	for start > 0 && (c.text[start-1] == ' ' || c.text[start-1] == '\t') {
		start--
	}
	return start == 0 || c.text[start-1] == '\n'
}

func (c *completer) keysOf(s shape, replace source.Place, written []string, insert func(key, value string) string) {
	verb := ""
	for _, key := range written {
		if _, ok := schema.FindVerb(key); ok && s.layout.Name == "step" {
			verb = key
		}
	}
	keys := slices.Clone(s.layout.Keys)
	if found, ok := schema.FindVerb(verb); ok { // what gives the verb its value comes first
		slices.SortStableFunc(keys, func(a, b schema.Key) int {
			return truth(slices.Contains(found.Takes, b.Name)) - truth(slices.Contains(found.Takes, a.Name))
		})
	}
	for _, key := range keys {
		action, isVerb := schema.FindVerb(key.Name)
		isVerb = isVerb && s.layout.Name == "step"
		if slices.Contains(written, key.Name) || isVerb && verb != "" {
			continue
		}
		if s.layout.Name == "file" && key.Kind != schema.Whole && key.Kind != schema.Texts {
			continue // they have headers
		}
		one := candidate{label: key.Name, detail: kindWords(key), doc: keyDoc(key), kind: "key"}
		if isVerb {
			one.kind, one.detail, one.doc = "verb", action.Doc, verbDoc(action)
		}
		c.add(one, replace, insert(key.Name, blank(key, isVerb)))
	}
}

func truth(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// blank is the value of a key with its filling left out.
func blank(key schema.Key, verb bool) string {
	switch key.Kind {
	case schema.Texts, schema.Choices:
		return `["$0"]`
	case schema.Names:
		if verb {
			return `"$0"`
		}
		return `["$0"]`
	case schema.Whole, schema.Day, schema.Again:
		return "$0"
	case schema.Flag:
		return "true"
	case schema.Wholes, schema.Point:
		return "[$0]"
	case schema.Points, schema.Lines, schema.Rounds:
		return "[[$0]]"
	case schema.Subs:
		return "[{ $0 }]"
	case schema.Sub, schema.Quantity, schema.Overrides, schema.Named:
		return "{ $0 }"
	}
	return `"$0"`
}

// candidate is something that can stand at the cursor.
type candidate struct {
	label, detail, doc, kind string
}

func (c *completer) add(one candidate, replace source.Place, insert string) {
	c.out = append(c.out, Completion{Label: one.label, Detail: one.detail, Doc: one.doc, Kind: one.kind, Insert: insert, Replace: replace})
}

// headers offers what can begin a table. Those of a procedure's steps come first in its file.
func (c *completer) headers(replace source.Place) {
	keys := top().layout.Keys
	if c.file.Procedure != nil {
		keys = slices.Clone(keys)
		slices.SortStableFunc(keys, func(a, b schema.Key) int { return truth(b.Of == "step") - truth(a.Of == "step") })
	}
	for _, key := range keys {
		table, known := schema.Find(key.Of)
		one := candidate{label: "[" + key.Name + "]", detail: key.Doc, kind: "table"}
		insert := one.label + "\n$0"
		switch key.Kind {
		case schema.Sub:
			if entry := c.file.Document.Root.Get(key.Name); entry != nil && (c.cursor.spot != inHeader || !within(entry.KeySpan, c.at)) {
				continue
			}
		case schema.Subs:
			one.label = "[[" + key.Name + "]]"
			insert = one.label + "\n$0"
		case schema.Named:
			one.label = "[" + key.Name + ".NAME]"
			insert = "[" + key.Name + ".$0]"
		default:
			continue
		}
		if known {
			one.doc = tableDoc(table)
		}
		if c.cursor.spot == inHeader {
			insert = strings.TrimSuffix(insert, "\n$0")
		}
		c.add(one, replace, insert)
	}
}

// header offers the parts of a header: tables, or the names that are still to be described.
func (c *completer) header() {
	if len(c.cursor.path) == 0 {
		c.headers(place(c.file, c.cursor.whole))
		return
	}
	closing := ""
	if !c.cursor.shut {
		closing = "]"
		if c.cursor.list {
			closing = "]]"
		}
	}
	replace := place(c.file, c.cursor.token)
	if !c.cursor.shut {
		replace = c.span(c.cursor.token.Start, max(c.cursor.whole.End, c.cursor.token.End))
	}
	s := under(c.cursor.path)
	switch s.holds {
	case versions:
		for _, one := range c.named([]string{"variant"}) {
			c.add(one, replace, one.label+closing)
		}
	case named:
		for _, one := range c.undescribed(s) {
			c.add(one, replace, one.label+closing)
		}
	case keyed:
		for _, key := range s.layout.Keys {
			switch key.Kind {
			case schema.Sub, schema.Subs, schema.Again, schema.Overrides:
				c.add(candidate{label: key.Name, detail: kindWords(key), doc: keyDoc(key), kind: "table"}, replace, key.Name+closing)
			}
		}
	}
}

// undescribed are the names that a header of a kind can still describe: those that are used
// and described nowhere, what lies on no shelf yet, the hazards whose message can be replaced,
// and in a second reading those of the first.
func (c *completer) undescribed(s shape) []candidate {
	kind := s.layout.Name
	if s.second {
		return c.named([]string{kind})
	}
	var names []string
	switch kind {
	case "store":
		return slices.DeleteFunc(c.named([]string{"fluid", "supply", "spare"}), func(one candidate) bool {
			_, thing := c.file.Describing("store", one.label)
			return thing != nil
		})
	case "caution":
		for _, hazard := range schema.Hazards {
			if c.file.Own(kind, hazard.Word) == nil {
				names = append(names, hazard.Word)
			}
		}
	}
	for _, file := range c.shop.set.Files {
		if file != c.file && !file.Sees(c.file, kind) {
			continue
		}
		for _, m := range c.shop.mentions[file] {
			if !m.declares && !m.second && m.kinds[0] == kind && !strings.Contains(strings.TrimSpace(m.written), " ") && !c.shop.resolve(m).known() {
				names = append(names, m.name)
			}
		}
	}
	slices.Sort(names)
	var out []candidate
	for _, name := range slices.Compact(names) {
		out = append(out, candidate{label: name, detail: "used and not described yet", kind: "name"})
		if card, _, ok := builtIn(mention{name: name, kinds: []string{kind}}); ok {
			out[len(out)-1].detail, out[len(out)-1].doc = card.title, card.text("built-in safety message")
		}
	}
	return out
}

// named are the names of some kinds that can be written here, with what is known of each.
func (c *completer) named(kinds []string) []candidate {
	var out []candidate
	seen := map[string]bool{}
	for _, kind := range kinds {
		for _, name := range c.namesOf(kind) {
			if seen[name] || c.isSelf(kind, name) {
				continue
			}
			seen[name] = true
			m := mention{file: c.names, name: name, written: name, kinds: []string{kind}, unit: c.unit()}
			one := candidate{label: name, detail: kind, kind: "name"}
			if t := c.shop.resolve(m); t.known() {
				if card, ok := c.shop.about(c.names, t, false); ok {
					one.detail, one.doc = strings.Join(append([]string{card.title}, card.detail...), ", "), card.text(kind)
				}
			} else if card, what, ok := builtIn(m); ok {
				one.detail, one.doc = card.title, card.text(what)
			}
			one.detail = cut(one.detail, 80)
			out = append(out, one)
		}
	}
	return out
}

// isSelf reports whether a name is that of the thing that is being described.
func (c *completer) isSelf(kind, name string) bool {
	path := c.cursor.path
	return len(path) > 2 && path[0] == kind && path[1] == name
}

func (c *completer) namesOf(kind string) []string {
	switch kind {
	case "words":
		return nil
	case "procedure":
		var out []string
		for _, file := range c.shop.set.Files {
			if file.Procedure != nil && file != c.file {
				out = append(out, file.Name())
			}
		}
		slices.Sort(out)
		return slices.Compact(out)
	case "step":
		var out []string
		for _, step := range c.file.Steps {
			if step.ID.Set() && !slices.Contains(out, step.ID.Name()) {
				out = append(out, step.ID.Name())
			}
		}
		return out
	case "variant":
		of := c.names.Of()
		if unit := c.unit(); unit != nil {
			of = nil
			if entry := unit.Get("machine"); entry != nil {
				of = machineNamed(c.names, mention{name: model.Text{Text: entry.Value.Text}.Name(), written: entry.Value.Text})
			}
		}
		if of == nil || of.Machine == nil {
			return nil
		}
		return of.Machine.Variants.Names()
	}
	return c.names.Names(kind)
}

// unit is the table of the machine of the shop that the cursor is in; nil where it is in none.
func (c *completer) unit() *tree.Table {
	path := c.cursor.path
	if len(path) < 3 || path[0] != "unit" {
		return nil
	}
	if units := c.file.Document.Root.Get("unit"); units != nil && units.Value.Table != nil {
		if entry := units.Value.Table.Get(path[1]); entry != nil {
			return entry.Value.Table
		}
	}
	return nil
}

// kindWords says in a few words what a key holds.
func kindWords(key schema.Key) string {
	of := strings.ReplaceAll(strings.TrimSuffix(key.Of, " words"), " ", " or ")
	switch key.Kind {
	case schema.Text, schema.Words:
		return "text"
	case schema.Texts:
		return "list of texts"
	case schema.Name:
		return "name of a " + of
	case schema.Names:
		return "names: " + of
	case schema.Amount, schema.Amounts:
		if key.Of == "any" {
			return "amount"
		}
		return "amount: " + of
	case schema.Whole, schema.Wholes:
		return "number"
	case schema.Flag:
		return "true or false"
	case schema.Day:
		return "day"
	case schema.Choice, schema.Choices:
		return "one of a list"
	case schema.Point, schema.Points, schema.Lines, schema.Rounds:
		return "places"
	}
	return "table"
}

// keyDoc is what a key says, with an example.
func keyDoc(key schema.Key) string {
	out := inline(key.Doc)
	if key.Required {
		out += "\n\nAlways needed."
	}
	if key.Example != "" {
		out += fmt.Sprintf("\n\n```toml\n%s = %s\n```", key.Name, key.Example)
	}
	return out
}

// verbDoc is what a verb says, with what must be true before and what is true after.
func verbDoc(verb schema.Verb) string {
	out := inline(verb.Doc)
	if verb.Needs != "" {
		out += "\n\n- needs: " + inline(verb.Needs)
	}
	if verb.Makes != "" {
		if verb.Needs == "" {
			out += "\n"
		}
		out += "\n- makes true: " + inline(verb.Makes)
	}
	return out + fmt.Sprintf("\n\n```toml\n%s = %s\n```", verb.Key, verb.Sample)
}

func tableDoc(table schema.Table) string {
	out := inline(table.Doc)
	if table.Example != "" {
		out += "\n\n```toml\n" + table.Example + "\n```"
	}
	return out
}
