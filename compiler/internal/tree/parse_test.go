package tree

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/tree/treetest"
	"benchleaf/compiler/source"
)

func said(findings []finding.Finding) []string {
	var out []string
	for _, found := range findings {
		at := found.Place.Start()
		out = append(out, fmt.Sprintf("%d:%d %s", at.Line, at.Column, strings.TrimPrefix(found.Rule, "syntax/")))
	}
	return out
}

func TestEachFaultIsToldOnceAtItsPlace(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		want []string
	}{
		"several in one file": {"a = Drain plug\nb = \"open\nc = 3\nd = [1, 2\n[part.plug]\ntorque =\nhead \"hex\"\ncount = 02\n",
			[]string{"1:5 unquoted-text", "2:5 unclosed-text", "4:5 unclosed-list", "6:1 no-value", "7:1 no-equals", "8:9 bad-number"}},
		"a list over several lines goes on behind":      {"use = [\n  \"a.toml\",\n  \"b.toml\"\n\n[shop]\ntitle = \"x\"\ntitle = \"y\"\n", []string{"1:7 unclosed-list", "7:1 key-twice"}},
		"a list of lists is not taken for a header":     {"outline = [\n  [0, 0],\n  [120, 40]\n]\nx = 1\n", nil},
		"an open long text ends the text, not the file": {"say = \"\"\"Turn it\nonce.\n[[step]]\nfill = \n", []string{"1:7 unclosed-text", "4:1 no-value"}},
		"a unit without quotes":                         {"torque = 42 N·m # at the plug\n", []string{"1:10 unquoted-text"}},
		"a decimal comma":                               {"a = 2,5\n", []string{"1:5 unquoted-text"}},
		"a colon for the equals":                        {"title: \"x\"\n", []string{"1:6 no-equals"}},
		"curly quotes":                                  {"title = “Drain”\n", []string{"1:9 curly-quotes"}},
		"a header without its end":                      {"[part.plug\nhead = \"hex\"\n", []string{"1:1 bad-header"}},
		"a step short of a bracket is a step":           {"[[step]]\nremove = \"a\"\n[[step]\nremove = \"b\"\n", []string{"3:1 bad-header"}},
		"a header of two words":                         {"x = 1\n[part.drain plug]\nx = 2\n", []string{"2:1 bad-header"}},
		"a day with strokes":                            {"date = 3/4/2026\nb = 2026/3/4\n", []string{"1:8 bad-date", "2:5 bad-date"}},
		"spaces that are none":                          {"\u00a0a = 1\nb\u00a0= 2\n", []string{"1:1 bad-key", "2:2 no-equals"}},
		"an inch mark in the text":                      {"say = \"Take the 1/2\" ratchet.\"\nb = 1\n", []string{"1:22 extra-text"}},
		"a comment behind an open text":                 {"title = \"Change oil   # such as \"Change …\"\nb = 1\n", []string{"1:9 unclosed-text"}},
		"a header without brackets":                     {"[a]\nx = 1\npart.plug\nx = 2\n", []string{"3:1 no-equals"}},
		"half a line ending":                            {"a = 1\n# last\r", []string{"2:7 control-character"}},
		"another language's comment":                    {"// oil\nx = 1\n", []string{"1:1 bad-key"}},
		"yes for true":                                  {"left-hand = yes\n", []string{"1:13 bad-number"}},
		"a quote at the end only":                       {"a = it drips\"\n", []string{"1:5 unquoted-text"}},
		"two kinds of quote":                            {"a = \"top box'\nb = 1\n", []string{"1:5 unclosed-text"}},
		"a table twice":                                 {"[a]\nx = 1\n[b]\n[a]\ny = Plug\n", []string{"4:1 table-twice", "5:5 unquoted-text"}},
		"a table over lines":                            {"a = { x = 1,\n y = 2 }\n", []string{"1:5 unclosed-table"}},
		"no such day":                                   {"date = 2026-02-30\n", []string{"1:8 bad-date"}},
		"yes in capitals":                               {"left-hand = TRUE\n", []string{"1:13 bad-number"}},
		"half a line":                                   {"benchleaf = 1\n[procedure]\ntit", []string{"3:1 no-equals"}},
		"no comma":                                      {"a = [\"x\" \"y\"]\n", []string{"1:9 missing-comma"}},
		"a control in the text":                         {"a = \"x\x02y\"\nb = \n", []string{"1:7 control-character", "2:1 no-value"}},
		"Latin-1":                                       {"a = \"20 \xb0C\"\nb = \"\xe9\"\n", []string{"1:9 not-utf-8"}},
		"UTF-16":                                        {"\xff\xfea\x00=\x00", []string{"1:1 not-utf-8"}},
		"a byte order mark":                             {"\uFEFFa = 1\n", nil},
		"Windows line ends":                             {"a = 1\r\nb = \"x\"\r\nc = Plug\r\n", []string{"3:5 unquoted-text"}},
	} {
		t.Run(name, func(t *testing.T) {
			_, findings := Parse(source.New("x.toml", []byte(c.text)))
			assert.Equal(t, c.want, said(findings))
			for _, found := range findings {
				assert.NotEmpty(t, found.Help)
				assert.NotEmpty(t, found.Why)
			}
		})
	}
}

// A certain fix leaves a file without that fault.
func TestCertainFixesMend(t *testing.T) {
	for _, text := range []string{"a = Drain plug\n", "a = \"open\n", "title: \"x\"\n", "title = “Drain”\n", "a = [\"x\" \"y\"]\n", "left-hand = TRUE\n", "a = { x = 1, }\n", "torque = 42 N·m # at the plug\n"} {
		_, findings := Parse(source.New("x.toml", []byte(text)))
		require.Len(t, findings, 1, text)
		require.NotEmpty(t, findings[0].Fixes, text)
		fix := findings[0].Fixes[0]
		assert.True(t, fix.Certain, text)
		edit := fix.Edits[0]
		mended := text[:edit.Place.Span.Start] + edit.Text + text[edit.Place.Span.End:]
		_, left := Parse(source.New("x.toml", []byte(mended)))
		assert.Empty(t, left, "%q became %q", text, mended)
	}
}

func TestPlaceInsideText(t *testing.T) {
	for _, c := range []struct{ text, find, want string }{
		{`a = "42 N·m"`, "N·m", "N·m"},
		{`a = "a\tb\u00b0C end"`, "C end", "C end"},
		{"a = \"\"\"\nfirst \\\n   second\"\"\"", "second", "second"},
		{`a = 'C:\temp x'`, `\temp`, `\temp`},
		{`a = "tab\there"`, "\t", `\t`},
	} {
		document, findings := Parse(source.New("x.toml", []byte(c.text)))
		require.Empty(t, findings)
		value := document.Root.Get("a").Value
		at := strings.Index(value.Text, c.find)
		require.GreaterOrEqual(t, at, 0, "%q in %q", c.find, value.Text)
		span := value.Inside(at, at+len(c.find))
		got := c.text[span.Start:span.End]
		assert.True(t, strings.HasPrefix(c.want, got) && got != "", "%q became %q", c.find, got)
	}
}

func TestCommentsAndHeadersAreKept(t *testing.T) {
	text := "# first\nbenchleaf = 1 # second\n[part.plug] # third\nhead = \"hex # not\"\n"
	document, findings := Parse(source.New("x.toml", []byte(text)))
	require.Empty(t, findings)
	var comments []string
	for _, comment := range document.Comments {
		comments = append(comments, comment.Text)
		assert.Equal(t, comment.Text, text[comment.Span.Start:comment.Span.End])
	}
	assert.Equal(t, []string{"# first", "# second", "# third"}, comments)
	plug := document.Root.Get("part").Value.Table.Get("plug")
	assert.Equal(t, "[part.plug]", text[plug.Value.Table.Header.Start:plug.Value.Table.Header.End])
	assert.Equal(t, "plug", text[plug.KeySpan.Start:plug.KeySpan.End])
}

// Ten megabytes of noise end with few findings and no panic.
func TestNoiseEndsWithFewFindings(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 5))
	raw := make([]byte, 10<<20)
	for i := range raw {
		raw[i] = byte(random.Uint32())
	}
	_, findings := Parse(source.New("noise.toml", raw))
	assert.Len(t, findings, 1)
	letters := []byte("abc =[]{}\"'#.,-1\n")
	for i := range raw {
		raw[i] = letters[random.IntN(len(letters))]
	}
	_, findings = Parse(source.New("noise.toml", raw))
	assert.LessOrEqual(t, len(findings), mostFaults+1)
	_, findings = Parse(source.New("noise.toml", []byte(strings.Repeat("a.", 40_000)+"a = 1\n")))
	assert.Equal(t, []string{"1:1 nested-too-deep"}, said(findings))
	for _, one := range []string{"[", "{a=", "\"", "a.", "'''"} {
		for _, times := range []int{30_000, 1 << 20} {
			_, findings = Parse(source.New("noise.toml", []byte("x = "+strings.Repeat(one, times))))
			assert.NotEmpty(t, findings)
			assert.LessOrEqual(t, len(findings), mostFaults+1)
		}
	}
}

// What is longer than is read is told once, at its place, and what is just as long is read.
func TestWhatIsTooLongIsTold(t *testing.T) {
	text := func(n int) string { return "a = \"" + strings.Repeat("é", n/2) + "\"\nb = 1\n" }
	long := func(n int) string { return "# x\nb = 1 # " + strings.Repeat("x", n-8) + "\r\n" }
	for _, c := range []struct {
		text string
		want []string
	}{
		{text(longest), nil},
		{text(longest + 2), []string{"1:5 too-long"}},
		{"a = '''\n" + strings.Repeat("x\n", longest/2) + "'''\n", nil},
		{"a = [\n'''\n" + strings.Repeat("x\n", longest/2+1) + "''']\nb =\n", []string{"2:1 too-long", fmt.Sprintf("%d:1 no-value", longest/2+5)}},
		{long(widest - 1), nil},
		{long(widest), []string{"2:1 too-long"}},
		{"a = [\n" + strings.Repeat("1,\n", mostValues-1) + "]\n", nil},
		{"a = [\n" + strings.Repeat("1,\n", mostValues) + "]\nb =\n", []string{fmt.Sprintf("%d:1 too-long", mostValues+1)}},
		{strings.Repeat("[[step]]\n", mostValues+1), []string{fmt.Sprintf("%d:1 too-long", mostValues+1)}},
	} {
		document, findings := Parse(source.New("long.toml", []byte(c.text)))
		assert.Equal(t, c.want, said(findings), "%.30q", c.text)
		if a := document.Root.Get("a"); a != nil {
			assert.LessOrEqual(t, len(a.Value.Text), longest)
			assert.True(t, utf8.ValidString(a.Value.Text))
			spans(t, len(c.text), document.Root)
		}
	}
}

func TestEveryFaultIsInTheListOfRules(t *testing.T) {
	known := map[string]bool{}
	for _, rule := range Rules() {
		known[rule.ID] = true
		_, bad := Parse(source.New("bad.toml", []byte(rule.Bad)))
		require.NotEmpty(t, bad, rule.ID)
		assert.Equal(t, rule.ID, bad[len(bad)-1].Rule)
		_, good := Parse(source.New("good.toml", []byte(rule.Good)))
		assert.Empty(t, good, rule.ID)
	}
	for name, text := range treetest.Corpus(t) {
		_, findings := Parse(source.New(name, []byte(text)))
		for _, found := range findings {
			assert.True(t, known[found.Rule], found.Rule)
		}
	}
}

// A list that has lost one quote is told at the item that lost it, and mended where the
// items are names or sizes.
func TestLostQuoteInAList(t *testing.T) {
	for _, c := range []struct{ list, at, mended string }{
		{`["a, "b", "c"]`, `"a`, `["a", "b", "c"]`},
		{`["a", "b, "c"]  # see page 3`, `"b`, `["a", "b", "c"]  # see page 3`},
		{`["a", b", "c"]`, `b"`, `["a", "b", "c"]`},
		{`["8 mm", "10 mm]`, `"10 mm`, `["8 mm", "10 mm"]`},
		{`['a", "b"]`, `'a"`, `["a", "b"]`},
		{`["a", "b""]`, `"b""`, `["a", "b"]`},
		{`["Warm oil, "Clean hands"]`, `"Warm oil`, ""}, // "Warm oil, Clean hands" may be meant
	} {
		_, findings := Parse(source.New("list.toml", []byte("key = "+c.list+"\nother = 1\n")))
		require.Len(t, findings, 1, c.list)
		span := findings[0].Place.Span
		assert.Equal(t, c.at, ("key = " + c.list)[span.Start:span.End], c.list)
		fix := findings[0].Fixes[0]
		assert.Equal(t, c.mended != "", fix.Certain, c.list)
		if fix.Certain {
			edit := fix.Edits[0]
			text := "key = " + c.list
			assert.Equal(t, "key = "+c.mended, text[:edit.Place.Span.Start]+edit.Text+text[edit.Place.Span.End:])
		}
	}
	for _, list := range []string{`["a, b", "c"]`, `["a,", ",b"]`, `['8" pipe', "it's"]`, `[1, 2, true]`, `[]`, `["a",]`, `["a, b, c"]`} {
		_, findings := Parse(source.New("list.toml", []byte("key = "+list+"\n")))
		assert.Empty(t, findings, list)
	}
}
