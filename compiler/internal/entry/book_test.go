package entry_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"reflect"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"testing/iotest"

	"benchleaf/compiler/internal/entry"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// scanned is what Scan hands over, with the lines.
func scanned(text io.Reader) (entries []entry.Entry, lines []int, err error) {
	err = entry.Scan(text, func(e entry.Entry, line int) error {
		entries, lines = append(entries, e), append(lines, line)
		return nil
	})
	return entries, lines, err
}

// byHand writes an entry in one of the many ways a person may.
type byHand struct {
	*rand.Rand
	out strings.Builder
}

func (h *byHand) one(of ...string) string { return of[h.IntN(len(of))] }

func (h *byHand) blank() string { return h.one("", "", "", " ", "\t ") }

// rest is what may stand behind a value, and on lines of their own.
func (h *byHand) rest() string {
	return h.blank() + h.one("", "", "# looked at", "#\"\"\" ' [[entry]]", "# größer") + h.one("\n", "\n", "\r\n") + h.one("", "", "\n", "  # [[entry]]\n", "# entry 3\n", "# end of entry 3\r\n", "\t\r\n")
}

func (h *byHand) text(text string) string {
	simple := !strings.ContainsFunc(text, func(r rune) bool { return r < ' ' && r != '\t' || r == 0x7F })
	several := !strings.ContainsFunc(text, func(r rune) bool { return r < ' ' && r != '\t' && r != '\n' || r == 0x7F })
	switch {
	case simple && !strings.Contains(text, "'") && h.IntN(2) == 0:
		return "'" + text + "'"
	case several && !strings.Contains(text, "'''") && !strings.HasSuffix(text, "'") && h.IntN(2) == 0:
		return "'''\n" + text + "'''"
	case several && h.IntN(2) == 0:
		plain := strings.NewReplacer(`\`, `\\`, `"""`, `""\"`).Replace(text)
		if end, quoted := strings.CutSuffix(plain, `"`); quoted {
			plain = end + `\"`
		}
		return `"""` + h.one("\n", "\\\n   \t\n", "\r\n") + strings.ReplaceAll(plain, " ", h.one(" ", `\u0020`)) + `"""`
	}
	var out strings.Builder
	for _, r := range text {
		switch {
		case r == '"' || r == '\\':
			out.WriteString(`\` + string(r))
		case r < ' ' || r == 0x7F || h.IntN(9) == 0:
			fmt.Fprintf(&out, h.one(`\u%04X`, `\U%08x`), r&0xFFFF|r>>16<<16)
		default:
			out.WriteRune(r)
		}
	}
	if strings.Contains(out.String(), `\u1`) && text == "\U0010FFFF" {
		return `"\U0010FFFF"`
	}
	return `"` + out.String() + `"`
}

func (h *byHand) value(of reflect.Value, inline bool) string {
	switch value := of.Interface().(type) {
	case entry.Day:
		return string(value) + h.one("", "", "T07:32:00Z", " 23:59:59.999", "T00:30:00+09:00")
	case string:
		return h.text(value)
	case int:
		if value > 0 {
			return h.one(strconv.Itoa(value), "+"+strconv.Itoa(value), fmt.Sprintf("0x%x", value))
		}
		return strconv.Itoa(value)
	case []int:
		gap := func() string { return h.one("", " ", "\n", " # [[entry]] ]\n", "\r\n  ") }
		out := "[" + gap()
		for i, n := range value {
			if i > 0 {
				out += "," + gap()
			}
			out += strconv.Itoa(n) + gap()
		}
		if len(value) > 0 {
			out += h.one("", ",") + gap()
		}
		return out + "]"
	}
	return fmt.Sprint(of.Interface())
}

func (h *byHand) key(key string) string { return h.one(key, key, `"`+key+`"`, "'"+key+"'") }

func (h *byHand) table(header string, layout []entry.Field, of reflect.Value) {
	h.out.WriteString(h.blank() + "[[" + h.blank() + header + h.blank() + "]]" + h.rest())
	var below []int
	for _, i := range h.Perm(len(layout)) {
		field, value := layout[i], of.Field(i)
		switch {
		case field.Kind == "tables" && value.Len() > 0 && h.IntN(2) == 0:
			h.out.WriteString(h.blank() + h.key(field.Key) + " = [" + h.one("", "\n", "\r\n # [[entry]]\n"))
			for j := range value.Len() {
				h.out.WriteString(h.inline(field.Fields, value.Index(j)) + h.one(",", " ,\n", ", # }\n"))
			}
			h.out.WriteString("]" + h.rest())
		case field.Kind == "tables":
			below = append(below, i)
		case !value.IsZero() || !field.May && field.Kind != "day":
			h.out.WriteString(h.blank() + h.key(field.Key) + h.blank() + "=" + h.blank() + h.value(value, false) + h.rest())
		}
	}
	for _, i := range below {
		for j := range of.Field(i).Len() {
			h.table(`entry.`+h.key(layout[i].Key), layout[i].Fields, of.Field(i).Index(j))
		}
	}
}

func (h *byHand) inline(layout []entry.Field, of reflect.Value) string {
	var parts []string
	for _, i := range h.Perm(len(layout)) {
		field, value := layout[i], of.Field(i)
		switch {
		case field.Kind == "tables" && value.Len() > 0:
			var all []string
			for j := range value.Len() {
				all = append(all, h.inline(field.Fields, value.Index(j)))
			}
			parts = append(parts, h.key(field.Key)+" = ["+strings.Join(all, h.one(", ", ",\n"))+"]")
		case field.Kind != "tables" && (!value.IsZero() || !field.May && field.Kind != "day"):
			parts = append(parts, h.key(field.Key)+h.blank()+"= "+h.value(value, true))
		}
	}
	return "{" + strings.Join(parts, ", ") + "}"
}

// anyBook is a book of entries, some as they are written by the program, some by hand.
func anyBook(random *rand.Rand) (text string, entries []entry.Entry) {
	h := &byHand{Rand: random}
	h.out.WriteString(h.one("", "", "\uFEFF") + h.one("", entry.Head, "# ours\r\n\r\n", "# größer \u2028\n"))
	if random.IntN(12) == 0 {
		h.out.WriteString("entry = [")
		for range random.IntN(4) {
			e := anyEntry(random)
			entries = append(entries, e)
			h.out.WriteString(h.inline(entry.Layout(), reflect.ValueOf(e)) + ",\n")
		}
		h.out.WriteString("]\n")
		return h.out.String(), entries
	}
	hand := random.IntN(4)
	for range random.IntN(6) {
		e := anyEntry(random)
		entries = append(entries, e)
		if random.IntN(4) < hand {
			h.table(h.one("entry", "entry", `"entry"`, "'entry'"), entry.Layout(), reflect.ValueOf(e))
		} else {
			h.out.Write(e.Text())
		}
	}
	out := h.out.String()
	if random.IntN(4) == 0 {
		out = strings.TrimRight(out, "\r\n")
	}
	return out, entries
}

func TestScanReadsWhatReadReads(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for range 1000 {
		text, entries := anyBook(random)
		want, err := entry.Read([]byte(text))
		require.NoError(t, err, "%s", text)
		require.Len(t, want, len(entries), "%s", text)
		var from io.Reader = strings.NewReader(text)
		switch random.IntN(4) {
		case 0:
			from = iotest.HalfReader(from)
		case 1:
			from = iotest.DataErrReader(from)
		case 2:
			if len(text) < 2000 {
				from = iotest.OneByteReader(from)
			}
		}
		got, lines, err := scanned(from)
		require.NoError(t, err, "%s", text)
		if len(want) > 0 {
			require.Equal(t, want, got, "%s", text)
		}
		all := strings.Split(text, "\n")
		for i, line := range lines {
			if i > 0 && !strings.Contains(text, "entry = [") {
				assert.Greater(t, line, lines[i-1])
			}
			assert.Contains(t, all[line-1], "entry", "%s", text)
		}
	}
}

// agree holds Scan against Read on any text.
func agree(t *testing.T, text []byte) {
	want, wrong := entry.Read(text)
	got, _, err := scanned(bytes.NewReader(text))
	switch {
	case wrong != nil:
		require.Error(t, err, "%v\n%s", wrong, text)
	case err != nil:
		require.ErrorContains(t, err, "no entry has a key", "a key in capital letters:\n%s", text)
	case len(want) > 0 || len(got) > 0:
		require.Equal(t, want, got, "%s", text)
	}
}

func TestScanAndReadAgreeOnDamagedBooks(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 10))
	bits := []string{"\"", "'", "\"\"\"", "'''", "\n", "\r", "[[entry]]\n", "\n[[entry]]\n", "\n[[entry.used]]\n", "[", "]", "{", "}", "#", "\\", ",", "=", "number = 1\n", "\x00", "\xff", "who = '''\n", "\n\"\"\"\n", "[entry]\n", "entry = []\n"}
	for range 2000 {
		text, _ := anyBook(random)
		for range 1 + random.IntN(2) {
			at, end := random.IntN(len(text)+1), 0
			if end = at; random.IntN(2) == 0 {
				end = min(len(text), at+random.IntN(6))
			}
			text = text[:at] + bits[random.IntN(len(bits))] + text[end:]
		}
		agree(t, []byte(text))
		whole := entry.Torn([]byte(text))
		require.Equal(t, whole, entry.Torn([]byte(text)[:whole]), "what is whole is whole: %q", text)
	}
}

func TestEveryFaultOfABookIsTold(t *testing.T) {
	good := func(n int) string {
		return string(entry.Entry{Number: n, Date: "2026-11-27", Who: "R. A.", Readings: []entry.Reading{{What: "Chain slack", Value: "34 mm"}}}.Text())
	}
	lines := 11 // of a good entry
	require.Equal(t, lines, strings.Count(good(1), "\n"))
	for name, c := range map[string]struct {
		text string
		line int // within it
		says string
	}{
		"unknown key":               {"\n[[entry]]\nnumber = 7\nwho = \"R. A.\"\ncolour = \"red\"\nunit = \"x\"\n", 5, `no entry has a key "entry.colour"; take it out, or write one of number, corrects, unit`},
		"unknown key of a table":    {"\n[[entry]]\nnumber = 7\n[[entry.reading]]\nwhat = \"x\"\n[[entry.reading]]\nlook = 1\n", 7, `no entry has a key "entry.reading.look"; take it out, or write one of step, what, value`},
		"unknown key in braces":     {"\n[[entry]]\nnumber = 7\nreading = [{what = \"x\"},\n {look = 1}]\n", 4, `no entry has a key "entry.reading.look"`},
		"unknown table":             {"\n[[entry]]\nnumber = 7\n\n[[entry.look]]\nwhat = \"x\"\n", 5, `no entry has a key "entry.look"`},
		"table of no entry":         {"\n[[entry]]\nnumber = 7\n[machine]\ntitle = \"x\"\n", 4, `no entry has a key "machine"`},
		"single brackets":           {"\n# form\n[entry]\nnumber = 7\nunit = \"x\"\n", 3, `an entry stands below two brackets on each side; write [[entry]]`},
		"capital":                   {"\n[[entry]]\nnumber = 7\nWho = \"R. A.\"\n", 4, `no entry has a key "entry.Who"`},
		"key twice":                 {"\n[[entry]]\nnumber = 7\nwho = \"R. A.\"\nwho = \"B. C.\"\n", 5, `already`},
		"text for a number":         {"\n[[entry]]\nwho = \"x\"\nnumber = 7\ncorrects = \"3\"\n", 5, `"entry.corrects" takes a whole number; write corrects = 17`},
		"number for a text":         {"\n[[entry]]\nnumber = 7\nwho = 3\n", 4, `"entry.who" takes text; write who = "…", in quotes`},
		"no quotes":                 {"\n[[entry]]\nnumber = 7\nwho = R. A.\n", 4, `mend it as TOML wants it`},
		"not closed":                {"\n[[entry]]\nnumber = 7\nwho = \"R. A.\nunit = \"x\"\n", 4, `mend it`},
		"day in quotes":             {"\n[[entry]]\nnumber = 7\ndate = \"2026-11-27\"\n", 4, `"entry.date" takes a day; write date = 2026-11-27`},
		"no such day":               {"\n[[entry]]\nnumber = 7\ndate = 2026-02-30\n", 4, `mend it`},
		"flag":                      {"\n[[entry]]\nnumber = 7\n[[entry.reading]]\noutside = true\n[[entry.reading]]\noutside = 1\n[[entry.reading]]\n", 7, `"entry.reading.outside" takes true or false`},
		"list of texts":             {"\n[[entry]]\nnumber = 7\ndone = [\"1\"]\n", 4, `"entry.done" takes a list of whole numbers`},
		"table for many":            {"\n[[entry]]\nnumber = 7\n[entry.used]\nwhat = \"x\"\n", 4, `"entry.used" takes a table of its own; write its keys below a line [[entry.used]]`},
		"text of several lines":     {"\n[[entry]]\nnumber = 7\nremarks = \"\"\"\nworn\n", 4, `mend it`},
		"literal of several lines":  {"\n[[entry]]\nnumber = 7\nremarks = '''worn\n", 4, `mend it`},
		"list not closed":           {"\n[[entry]]\nnumber = 7\ndone = [1, 2\n", 4, `mend it`},
		"zero":                      {"\n[[entry]]\nnumber = 7\n\x00\x00\n", 4, `mend it`},
		"not UTF-8":                 {"\n[[entry]]\nnumber = 7\n# \xe4\n", 4, `mend it`},
		"both in text and in tabs":  {"\n[[entry]]\nnumber = 7\nremarks = \"\"\"\n[[entry]]\n\"\"\"\nlook = 1\n", 7, `no entry has a key "entry.look"`},
		"syntax before such a text": {"\n[[entry]]\nnumber = 7\nlook\nremarks = \"\"\"\n[[entry]]\n\"\"\"\n", 4, `mend it`},
		"too long":                  {"\n[[entry]]\nnumber = 7\nwho = \"" + strings.Repeat("x", 5<<20) + "\"\n", 2, `longer than 1 MiB`},
	} {
		text := entry.Head + good(1) + c.text + good(2) + c.text + good(3)
		entries, at, err := scanned(strings.NewReader(text))
		var faults entry.Faults
		require.ErrorAs(t, err, &faults, name)
		require.Len(t, faults, 2, "%s: %v", name, err)
		for i, begins := range []int{1 + lines, 1 + 2*lines + strings.Count(c.text, "\n")} {
			if c.line > 0 {
				assert.GreaterOrEqual(t, faults[i].Line, begins+2, name)
				if !strings.Contains(name, "of several") && name != "list not closed" {
					assert.Equal(t, begins+c.line, faults[i].Line, name)
				}
			}
			assert.Contains(t, faults[i].Error(), c.says, name)
			assert.Equal(t, 7, faults[i].Number, name)
		}
		require.Len(t, entries, 3, name)
		assert.Equal(t, []int{1, 2, 3}, []int{entries[0].Number, entries[1].Number, entries[2].Number})
		assert.Equal(t, 1+lines+strings.Count(c.text, "\n")+3, at[1], name)
		_, err = entry.Read([]byte(text))
		assert.True(t, err != nil || name == "capital" || name == "too long", name)
	}
}

func TestAListOfEntriesIsTheWholeBook(t *testing.T) {
	entries, _, err := scanned(strings.NewReader("entry = [{number = 1}]\n\n[[entry]]\nnumber = 2\n"))
	assert.Len(t, entries, 2)
	assert.ErrorContains(t, err, "line 3: the entries stand in one list")
}

func TestScanEndsWhereItIsTold(t *testing.T) {
	full := errors.New("full")
	text := string(entry.Entry{Number: 1}.Text()) + string(entry.Entry{Number: 2}.Text())
	seen := 0
	err := entry.Scan(strings.NewReader(text), func(entry.Entry, int) error { seen++; return full })
	assert.ErrorIs(t, err, full)
	assert.Equal(t, 1, seen)
	err = entry.Scan(iotest.TimeoutReader(iotest.OneByteReader(strings.NewReader(text))), func(entry.Entry, int) error { return nil })
	assert.ErrorIs(t, err, iotest.ErrTimeout)
}

// A text that is never closed must not make the reader slow or big: each kind of quote
// can run on once at most.
func TestManyTextsThatAreNotClosed(t *testing.T) {
	for _, opens := range []string{"x = [", "x = {a = [", "x = \"\"\"", "x = '''", "x = \"", "\\\"\"\"", "'\\' = \"\"\"", "x = '\\\"\"\"", "[[entry.", "\"\"\"\\", "{\"\"\"'''"} {
		text := strings.Repeat("[[entry]]\nnumber = 4\n"+opens+"\n", 2_000)
		_, _, err := scanned(strings.NewReader(text))
		var faults entry.Faults
		require.ErrorAs(t, err, &faults)
		assert.GreaterOrEqual(t, len(faults), 2_000/3, opens) // two may close each other, and hold a third
	}
}

// A text that is too long may end anywhere in what is read at a time.
func TestTheEntryBehindOneThatIsTooLong(t *testing.T) {
	for more := range 16 {
		text := "[[entry]]\nwho = \"" + strings.Repeat("x", 4<<20+256<<10+more) + "[[entry]]\n" + string(entry.Entry{Number: 2}.Text())
		entries, _, err := scanned(iotest.DataErrReader(io.MultiReader(strings.NewReader(text[:4<<20]), iotest.OneByteReader(strings.NewReader(text[len(text)-80:])))))
		require.Error(t, err)
		require.Equal(t, []entry.Entry{{Number: 2}}, entries, more)
	}
}

func TestScanKeepsNothing(t *testing.T) {
	part, parts := bigBook(3000), []io.Reader{}
	for range 20 {
		parts = append(parts, bytes.NewReader(part))
	}
	var least, most uint64
	seen := 0
	require.NoError(t, entry.Scan(io.MultiReader(parts...), func(entry.Entry, int) error {
		if seen++; seen%6000 == 0 {
			var now runtime.MemStats
			runtime.GC()
			runtime.ReadMemStats(&now)
			most = max(most, now.HeapAlloc)
			if least == 0 {
				least = now.HeapAlloc
			}
		}
		return nil
	}))
	assert.Equal(t, 60_000, seen)
	assert.Less(t, most-least, uint64(512<<10), "of 18 MiB that were read")
}

// What stands in a book written by the program is read by the short way.
func TestThePlainFormHasEveryKey(t *testing.T) {
	var e entry.Entry
	fill(reflect.ValueOf(&e).Elem())
	last, plain := entry.Last(e.Text())
	assert.True(t, plain)
	assert.Equal(t, 3, last)
	two := append(e.Text(), e.Text()...)
	_, plain = entry.Last(two)
	assert.False(t, plain, "a number comes twice")
	_, plain = entry.Last([]byte("# nothing\n"))
	assert.False(t, plain)
}

func fill(of reflect.Value) {
	switch of.Kind() {
	case reflect.Struct:
		for i := range of.NumField() {
			fill(of.Field(i))
		}
	case reflect.Slice:
		of.Set(reflect.MakeSlice(of.Type(), 2, 2))
		fill(of.Index(0))
		fill(of.Index(1))
	case reflect.Int:
		of.SetInt(3)
	case reflect.Bool:
		of.SetBool(true)
	case reflect.String:
		of.SetString("2026-11-27")
	}
}

func FuzzScan(f *testing.F) {
	random := rand.New(rand.NewPCG(5, 6))
	for range 60 {
		text, _ := anyBook(random)
		f.Add([]byte(text))
	}
	f.Add([]byte(book))
	f.Add([]byte("[[entry]]\nwho = \"\"\"\n[[entry]]\n\"\"\"\n[[entry]]\ndone = [\n[[entry]]\n"))
	f.Add([]byte("entry = []\n[[entry]]\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		agree(t, text)
		whole := entry.Torn(text)
		require.LessOrEqual(t, whole, len(text))
		require.Equal(t, whole, entry.Torn(text[:whole]), "what is whole is whole")
	})
}

func TestTornAtEveryByte(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	for range 100 {
		whole := []byte(entry.Head)
		for n := range random.IntN(3) {
			e := anyEntry(random)
			e.Number = n + 1
			whole = append(whole, e.Text()...)
		}
		e := anyEntry(random)
		e.Number = 10 + random.IntN(200)
		text := e.Text()
		for cut := range text {
			torn := append(bytes.Clone(whole), text[:cut]...)
			want := len(whole)
			if cut == 1 || cut == len(text)-1 { // a blank line, or all but the last line end
				want = len(torn)
			}
			require.Equal(t, want, entry.Torn(torn), "%q", torn[len(whole):])
			if cut < len(text)-1 {
				zeros := append(torn, make([]byte, random.IntN(600)+1)...)
				require.Contains(t, []int{len(whole), len(whole) + min(cut, 1)}, entry.Torn(zeros), "%q", torn[len(whole):])
			}
		}
	}
	for cut := range entry.Head {
		assert.Equal(t, 0, entry.Torn([]byte(entry.Head[:cut])))
	}
}

// A long book is looked at from its end, and what is found is what a look at all of it finds:
// whatever stands at its end, and whatever was never whole far before.
func TestTornAtTheEndOfALongBook(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 12))
	tails := []string{"", "\n", "\n# entry 7\n[[entry]]\nnumb", "\n# entry 7\n", "\n# entr", "[[entr", "\x00\x00", "\n\n# entry 7\n[[entry]]\n\x00\n# end of entry 7\n",
		"\n[[entry]]\nwho = \"B", "\n[[entry]]\nwho = \"B.\"", "\n[[entry]]\nwho = \"B.\"\n", "# entry 3\n# entry 4\n", "\n[[entry]]x", "\n[[entry]]\x00"}
	middles := []string{"", "", "", "\n# entry 9\n[[entry]]\nnumber = 9\n", "\x00", "# entry 9\n", "\n[[entry]]\nremarks = '''\n# entry 2\n'''\n"}
	for range 300 {
		framed, plain := random.IntN(2) == 0, random.IntN(2) == 0
		var text []byte
		for long := 1 + random.IntN(300<<10); len(text) < long; {
			for range 50 {
				e := anyEntry(random)
				if e.Number = 0; framed {
					e.Number = 1 + random.IntN(100)
				}
				if plain && !framed {
					e = entry.Entry{Unit: "deck", Date: "2026-11-27", Meter: "900 h"}
				}
				text = append(text, e.Text()...)
			}
			text = append(text, middles[random.IntN(len(middles))]...)
		}
		if random.IntN(3) == 0 {
			text = append(text, bytes.Repeat([]byte("# long words\n"), random.IntN(20_000))...)
		}
		text = append(text, tails[random.IntN(len(tails))]...)
		whole, err := entry.TornAt(bytes.NewReader(text), int64(len(text)))
		require.NoError(t, err)
		require.Equal(t, int64(entry.Torn(text)), whole, "%q", text[max(0, len(text)-200):])
	}
}

func TestWhatIsTorn(t *testing.T) {
	one := string(entry.Entry{Number: 1, Who: "R. A."}.Text())
	for name, c := range map[string]struct{ whole, torn string }{
		"nothing":                    {"", ""},
		"by hand":                    {one + "[[entry]]\nwho = \"B.\"\n", ""},
		"by hand, no line end":       {one + "[[entry]]\nwho = \"B.\"", ""},
		"by hand, text of lines":     {one + "[[entry]]\nwho = '''\nB.\n'''", ""},
		"by hand, broken off":        {one + "[[entry]]\nwho = \"B.\"\n", "unit = \"de"},
		"header broken off":          {one, "[[entr"},
		"no frame, comment":          {one + "# read by R. A.", ""},
		"line ends of Windows":       {strings.ReplaceAll(one, "\n", "\r\n"), ""},
		"zeros":                      {one, "\x00\x00\x00"},
		"zeros and a line end":       {one, "\x00\x00\n"},
		"zeros before the rest":      {one, "\x00\x00\nwho = \"x\"\n# end of entry 2\n"},
		"zeros within":               {one, "\n# entry 2\n[[entry]]\n\x00\x00\x00\n# end of entry 2\n"},
		"another end":                {one, "\n# entry 2\n[[entry]]\nnumber = 2\n# end of entry 3\n"},
		"a whole one behind":         {one + "\n# entry 2\n[[entry]]\nnumber = 2\n" + one, ""},
		"a person has been at it":    {one + "\n# entry 2\n[[entry]]\nnumber = 2\n[[entry]]\nwho = \"B.\"\n", ""},
		"the words in a text":        {one + "[[entry]]\nremarks = '''\n# entry 2\n'''\n", ""},
		"a comment that looks so":    {one + "# entry fee\n[[entry]]\n", ""},
		"two torn behind each other": {one, "\n# entry 2\n[[entry]]\nnumb\n# entry 2\n[[entry]]\nnum"},
	} {
		assert.Equal(t, len(c.whole), entry.Torn([]byte(c.whole+c.torn)), name)
	}
}

// bigBook is a book of many entries of some twelve lines.
func bigBook(entries int) []byte {
	var out bytes.Buffer
	out.WriteString(entry.Head)
	for n := range entries {
		out.Write(entry.Entry{Number: n + 1, Unit: "deck-" + strconv.Itoa(n%40), Procedure: "log-deck-gearbox-oil", Revision: "C", Machine: "Log-deck conveyor", Date: entry.Day(fmt.Sprintf("2026-%02d-%02d", 1+n%12, 1+n%28)),
			Who: []string{"R. A.", "M. Ö.", "K. T."}[n%3], Meter: strconv.Itoa(1000+n) + " h", Done: []int{1, 2, 3, 4, 5, 6, 7, 8},
			Readings: []entry.Reading{{Step: 5, What: "Chain slack", Value: strconv.Itoa(20+n%11) + " mm", Limit: "20 to 30 mm"}}}.Text())
	}
	return out.Bytes()
}

// The floor is a look at every byte; the general decoder is what Read rests on.
func BenchmarkBook(b *testing.B) {
	text := bigBook(100_000)
	b.Run("scan", func(b *testing.B) {
		b.SetBytes(int64(len(text)))
		b.ReportAllocs()
		for b.Loop() {
			seen := 0
			if err := entry.Scan(bytes.NewReader(text), func(entry.Entry, int) error { seen++; return nil }); err != nil || seen != 100_000 {
				b.Fatal(seen, err)
			}
		}
	})
	b.Run("torn", func(b *testing.B) {
		b.SetBytes(int64(len(text)))
		b.ReportAllocs()
		for b.Loop() {
			if entry.Torn(text) != len(text) {
				b.Fatal("torn")
			}
		}
	})
	b.Run("floor", func(b *testing.B) {
		b.SetBytes(int64(len(text)))
		for b.Loop() {
			if bytes.Count(text, []byte{'\n'}) == 0 {
				b.Fatal("no lines")
			}
		}
	})
	b.Run("general", func(b *testing.B) {
		text := text[:len(text)/20]
		text = text[:entry.Torn(text)]
		b.SetBytes(int64(len(text)))
		b.ReportAllocs()
		for b.Loop() {
			var book struct {
				Entries []entry.Entry `toml:"entry"`
			}
			if _, err := toml.Decode(string(text), &book); err != nil {
				b.Fatal(err)
			}
		}
	})
}
