package compiler_test

import (
	"path"
	"regexp"
	"slices"
	"strings"

	"benchleaf/compiler"
	"benchleaf/schema"
)

// sheet is a file of the shop as its lines and the tables in them. It reads TOML
// as the shop writes it: one key a line, a list over several lines at most.
type sheet struct {
	path   string
	lines  []string
	tables []table
}

// table is a table of a sheet with the tables inside it: [[step]] and its
// [[step.caution]]. Lines count from 0, and to is the line after the last.
type table struct {
	kind, name string // "step" and "", "part" and "drain-plug"
	from, to   int
	entries    []entry
	inner      []table
}

// entry is a key with its value as written, on the lines from up to before to.
type entry struct {
	key, value string
	from, to   int
}

var (
	headerForm = regexp.MustCompile(`^\[\[?([a-z-]+)(?:\.([A-Za-z0-9_-]+))?\]?\]`)
	entryForm  = regexp.MustCompile(`^([A-Za-z0-9_.-]+) *= *(.*)$`)
	textForm   = regexp.MustCompile(`"([^"]*)"`)
	stepKinds  = []string{"prepare", "step", "close"}
)

func readSheet(path, text string) *sheet {
	s := &sheet{path: path, lines: strings.Split(text, "\n")}
	at := -1 // the table the line stands in
	for i := 0; i < len(s.lines); i++ {
		line := s.lines[i]
		if m := headerForm.FindStringSubmatch(line); m != nil {
			made := table{kind: m[1], name: m[2], from: i, to: len(s.lines)}
			if (slices.Contains(stepKinds, m[1]) || m[1] == "procedure") && m[2] != "" && at >= 0 {
				s.tables[at].inner = append(s.tables[at].inner, made)
				continue
			}
			if at >= 0 {
				s.tables[at].to = i
			}
			s.tables, at = append(s.tables, made), len(s.tables)
			continue
		}
		m := entryForm.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		one := entry{key: m[1], value: m[2], from: i, to: i + 1}
		for open(one.value) && one.to < len(s.lines) {
			one.value += "\n" + s.lines[one.to]
			one.to++
		}
		one.value = bare(one.value)
		i = one.to - 1
		switch {
		case at < 0:
			s.tables, at = append(s.tables, table{kind: "", from: 0, to: len(s.lines), entries: []entry{one}}), 0
		case len(s.tables[at].inner) > 0:
			last := &s.tables[at].inner[len(s.tables[at].inner)-1]
			last.entries = append(last.entries, one)
		default:
			s.tables[at].entries = append(s.tables[at].entries, one)
		}
	}
	for i := range s.tables {
		for j := range s.tables[i].inner {
			inner := &s.tables[i].inner[j]
			inner.to = s.tables[i].to
			if j+1 < len(s.tables[i].inner) {
				inner.to = s.tables[i].inner[j+1].from
			}
		}
	}
	return s
}

// open reports whether a list or table that begins in the text does not end in it.
func open(text string) bool {
	text = textForm.ReplaceAllString(text, "")
	return strings.Count(text, "[") > strings.Count(text, "]")
}

// bare takes the comment off the end of a value.
func bare(value string) string {
	quoted := false
	for i, r := range value {
		switch {
		case r == '"':
			quoted = !quoted
		case r == '#' && !quoted:
			return strings.TrimRight(value[:i], " ")
		}
	}
	return value
}

func (s *sheet) text() string { return strings.Join(s.lines, "\n") }

// steps lists the steps in order.
func (s *sheet) steps() []table {
	return slices.DeleteFunc(slices.Clone(s.tables), func(t table) bool { return !slices.Contains(stepKinds, t.kind) })
}

func (s *sheet) table(kind, name string) (table, bool) {
	i := slices.IndexFunc(s.tables, func(t table) bool { return t.kind == kind && t.name == name })
	if i < 0 {
		return table{}, false
	}
	return s.tables[i], true
}

func (t table) entry(key string) (entry, bool) {
	i := slices.IndexFunc(t.entries, func(e entry) bool { return e.key == key })
	if i < 0 {
		return entry{}, false
	}
	return t.entries[i], true
}

func (t table) texts(key string) []string {
	one, _ := t.entry(key)
	return texts(one.value)
}

// texts lists what stands in quotes in a value.
func texts(value string) []string {
	var out []string
	for _, m := range textForm.FindAllStringSubmatch(value, -1) {
		out = append(out, m[1])
	}
	return out
}

// verb is the verb of a step with what it names; empty where the step is words alone.
func (t table) verb() (string, []string) {
	if !slices.Contains(stepKinds, t.kind) {
		return "", nil
	}
	for _, one := range t.entries {
		if _, ok := schema.FindVerb(one.key); ok {
			return one.key, texts(one.value)
		}
	}
	return "", nil
}

func (t table) does(verbs ...string) bool {
	verb, _ := t.verb()
	return slices.Contains(verbs, verb)
}

// names reports whether a step's verb names one of the things, or the table is one of them.
func (t table) names(things ...string) bool {
	_, objects := t.verb()
	return slices.ContainsFunc(things, func(name string) bool { return name == t.name || slices.Contains(objects, name) })
}

// call is how a table is spoken of in a list of misses.
func (t table) call() string {
	if verb, objects := t.verb(); verb != "" {
		return verb + " " + strings.Join(objects, ", ")
	}
	return strings.Trim(t.kind+"."+t.name, ".")
}

// folder is the whole shop, undamaged.
type folder struct {
	sheets []*sheet
}

func (f *folder) sheet(path string) *sheet {
	i := slices.IndexFunc(f.sheets, func(s *sheet) bool { return s.path == path })
	if i < 0 {
		return &sheet{}
	}
	return f.sheets[i]
}

// procedures lists the procedures a file counts for: itself, those of its
// machine, or, for a library, all.
func (f *folder) procedures(file string) []string {
	var out []string
	for _, s := range f.sheets {
		procedure, ok := s.table("procedure", "")
		if !ok {
			continue
		}
		machine := strings.Join(procedure.texts("machine"), "")
		switch {
		case s.path == file:
			return []string{file}
		case path.Dir(file) != "machines", path.Base(file) == machine+".toml":
			out = append(out, s.path)
		}
	}
	return out
}

// shows lists the procedures in which a fault at a line of a file can show: those
// of its machine; for a library, those that name what stands there, or whose
// machine does. It is empty for what nobody names.
func (f *folder) shows(file string, line int) []string {
	all := f.procedures(file)
	for _, t := range f.sheet(file).tables {
		if t.name == "" || line <= t.from || line > t.to {
			continue
		}
		switch path.Dir(file) {
		case "machines":
			if !slices.ContainsFunc(append(all, file), func(other string) bool { return strings.Contains(f.sheet(other).text(), `"`+t.name+`"`) }) {
				return nil
			}
		case "shop":
			return slices.DeleteFunc(all, func(procedure string) bool {
				s, named := f.sheet(procedure), regexp.MustCompile(`\b`+t.name+`\b`)
				return !named.MatchString(s.text()) && !named.MatchString(f.machine(s).text())
			})
		}
	}
	return all
}

// standing is the file of the machines that stand in the shop: no procedure takes anything
// from it, and it names machines of every kind.
const standing = "shop/units.toml"

// takes reports whether a procedure can take something from a file.
func (f *folder) takes(procedures []string, file string) bool {
	if first, again := firstReading(file); again {
		return f.takes(procedures, first)
	}
	return path.Dir(file) == "shop" && file != standing || path.Base(file) == compiler.Shopfile || slices.Contains(procedures, file) ||
		slices.ContainsFunc(procedures, func(procedure string) bool {
			return f.machine(f.sheet(procedure)).path == file || strings.Contains(f.sheet(procedure).text(), `of = "`+strings.TrimSuffix(file, ".toml")+`"`)
		})
}

// firstReading is the file that another is the second reading of.
func firstReading(file string) (string, bool) {
	folder, name := path.Split(path.Clean(file))
	above, again := strings.CutSuffix(path.Clean(folder), "second")
	return path.Join(above, name), again
}

// machine is the file of the machine a procedure or a machine's file is about.
func (f *folder) machine(s *sheet) *sheet {
	procedure, ok := s.table("procedure", "")
	if !ok {
		return s
	}
	return f.sheet("machines/" + strings.Join(procedure.texts("machine"), "") + ".toml")
}

var kinKeys = []string{"guards", "drain", "fill", "level", "vent", "held-by", "behind", "seals"}

// kin lists a thing of a machine and what it belongs with: a guard and its
// energies, a cavity and its plugs, a wheel and its nuts.
func (f *folder) kin(s *sheet, names ...string) []string {
	out := slices.Clone(names)
	for _, t := range f.machine(s).tables {
		for _, key := range kinKeys {
			for _, other := range t.texts(key) {
				if slices.Contains(names, t.name) {
					out = append(out, other)
				}
				if slices.Contains(names, other) {
					out = append(out, t.name)
				}
			}
		}
	}
	return out
}
