package finding

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/source"
)

func drawn(t *testing.T, style Style, list ...Finding) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, Draw(&out, list, style))
	return out.String()
}

// on is the place of the first occurrence of some text in a file.
func on(file *source.File, text string) source.Place {
	start := strings.Index(string(file.Text), text)
	return source.Place{File: file, Span: source.Span{Start: start, End: start + len(text)}}
}

func TestDraw(t *testing.T) {
	step := source.New("procedures/gearbox.toml", []byte("[[step]]\ntighten = \"drain-plug\"\ntorque = \"42\"\n"))
	plug := source.New("machines/deck.toml", []byte("[part.drain-plug]\n"))
	got := drawn(t, Style{Width: 62}, Finding{
		Rule: "units/missing", Severity: Error, Place: on(step, `"42"`), Summary: `the torque "42" has no unit`, Variant: "long",
		Why:  "42 newton metres and 42 pound-feet differ by a third: the fastener strips or works loose.",
		Help: `Write "42 N·m" or "42 lbf·ft".`, Related: []Related{{on(plug, "drain-plug"), "the plug is described here"}, {Text: "kept at hand"}},
		Fixes: []Fix{{Title: `Write "42 N·m"`, Certain: true}, {Title: `Write "42 lbf·ft"`}},
	})
	assert.Equal(t, `procedures/gearbox.toml:3:10: error: the torque "42" has no unit (version long) [units/missing]
     3  torque = "42"
                 ^^^^
    see:   machines/deck.toml:1:7: the plug is described here
     1  [part.drain-plug]
              ----------
    see:   kept at hand
    why:   42 newton metres and 42 pound-feet differ by a
           third: the fastener strips or works loose.
    write: Write "42 N·m" or "42 lbf·ft".
    fix:   Write "42 N·m" (benchleaf lint --fix
           procedures/gearbox.toml does it)
    or:    Write "42 lbf·ft"
`, got)
}

func TestDrawTellsAReasonOnce(t *testing.T) {
	file := source.New("a.toml", []byte("x = \"\"\ny = \"\"\n"))
	first := Finding{Rule: "language/empty-text", Place: on(file, `""`), Summary: "empty", Why: "It prints as nothing."}
	second := first
	second.Place = on(file, "y")
	other := first
	other.Why = "It prints as a blank."
	got := drawn(t, Style{}, first, second, other)
	assert.Equal(t, 1, strings.Count(got, "It prints as nothing."))
	assert.Equal(t, 1, strings.Count(got, "It prints as a blank."))
	assert.Equal(t, 2, strings.Count(got, "\n\n"), "findings stand apart")
}

func TestDrawNamesFilesAsTheStyleSays(t *testing.T) {
	file := source.New("a.toml", []byte("x = 1\n"))
	style := Style{Path: func(path string) string { return "../shop/" + path }}
	got := drawn(t, style, Finding{Rule: "r/s", Place: on(file, "x"), Summary: "s", Related: []Related{{on(file, "1"), "t"}}})
	assert.True(t, strings.HasPrefix(got, "../shop/a.toml:1:1: note: s [r/s]\n"), got)
	assert.Contains(t, got, "see:   ../shop/a.toml:1:5: t\n")
}

func TestDrawColours(t *testing.T) {
	file := source.New("a.toml", []byte("x = 1\n"))
	f := Finding{Rule: "r/s", Severity: Warning, Place: on(file, "x"), Summary: "s", Why: "w"}
	assert.NotContains(t, drawn(t, Style{}, f), "\x1b")
	assert.Contains(t, drawn(t, Style{Colour: true}, f), "\x1b[1;33mwarning:\x1b[0m")
}

// Columns a terminal needs are those of Unicode Standard Annex 11: ideographs
// and most emoji two, accents that stand on a letter none.
func TestMarksStandUnderTheirText(t *testing.T) {
	for _, c := range []struct{ name, line, mark, want string }{
		{"letters", `torque = "42"`, `"42"`, "         ^^^^"},
		{"a tab before", "\ttorque = 42", "42", "             ^^"},
		{"a tab inside", "a\tb", "\t", " ^^^"},
		{"wide characters before", `say = "給油" # x`, "x", "               ^"},
		{"wide characters inside", `say = "給油"`, "給油", "       ^^^^"},
		{"an emoji before", "🔧 = x", "x", "     ^"},
		{"an accent of its own before", "e\u0301 = x", "x", "    ^"},
		{"a joiner before", "a\u200db = x", "x", "     ^"},
		{"half of a character", "\xe9 = x", "x", "    ^"},
		{"an order to the terminal before", "\x1b[2J = x", "x", "       ^"},
	} {
		file := source.New("a.toml", []byte(c.line+"\nnext\n"))
		lines := strings.Split(drawn(t, Style{}, Finding{Rule: "r/s", Place: on(file, c.mark), Summary: "s"}), "\n")
		require.Len(t, lines, 4, c.name)
		assert.Equal(t, "     1  ", lines[1][:gutter], c.name)
		assert.Equal(t, strings.Repeat(" ", gutter)+c.want, lines[2], c.name)
		assert.NotContains(t, lines[1], "\x1b", c.name)
	}
}

func TestPlacesWithoutLength(t *testing.T) {
	text := "x = 1\n\nlast"
	for _, c := range []struct {
		name string
		at   int
		want []string
	}{
		{"before a character", 4, []string{"     1  x = 1", "            ^"}},
		{"at the end of a line", 5, []string{"     1  x = 1", "             ^"}},
		{"on a blank line", 6, nil},
		{"at the end of the file", len(text), []string{"     3  last", "            ^"}},
		{"past the end of the file", len(text) + 9, []string{"     3  last", "            ^"}},
	} {
		place := source.Place{File: source.New("a.toml", []byte(text)), Span: source.Span{Start: c.at, End: c.at}}
		lines := strings.Split(strings.TrimSuffix(drawn(t, Style{}, Finding{Rule: "r/s", Place: place, Summary: "s"}), "\n"), "\n")
		assert.Equal(t, c.want, append([]string(nil), lines[1:]...), c.name)
	}
	assert.Equal(t, "error: s [r/s]\n", drawn(t, Style{}, Finding{Rule: "r/s", Severity: Error, Summary: "s"}), "nowhere")
}

func TestASpanOverLinesIsShownByItsFirst(t *testing.T) {
	file := source.New("a.toml", []byte("a = [\r\n  1,\r\n]\r\n"))
	got := drawn(t, Style{}, Finding{Rule: "r/s", Place: on(file, "[\r\n  1,\r\n]"), Summary: "s"})
	assert.Equal(t, "a.toml:1:5: note: s [r/s]\n     1  a = [\n            ^\n", got)
}

func TestALongLineIsCutAroundTheSpan(t *testing.T) {
	for name, line := range map[string]string{
		"letters": strings.Repeat("a", 500) + "HERE" + strings.Repeat("b", 500),
		"wide":    strings.Repeat("給", 500) + "HERE" + strings.Repeat("油", 500),
		"huge":    strings.Repeat("a", 2_000_000) + "HERE" + strings.Repeat("b", 2_000_000),
	} {
		file := source.New("a.toml", []byte(line))
		lines := strings.Split(drawn(t, Style{Width: 60}, Finding{Rule: "r/s", Place: on(file, "HERE"), Summary: "s"}), "\n")
		assert.LessOrEqual(t, columnsOf(lines[1]), 60, name)
		before, after, found := strings.Cut(lines[1], "HERE")
		require.True(t, found, name)
		assert.True(t, strings.HasPrefix(before, "     1  …"), name)
		assert.True(t, strings.HasSuffix(after, "…"), name)
		assert.Equal(t, strings.Repeat(" ", columnsOf(before))+"^^^^", lines[2], name)
	}
	whole := source.New("a.toml", []byte("HERE "+strings.Repeat("b", 500)))
	assert.Contains(t, drawn(t, Style{Width: 60}, Finding{Rule: "r/s", Place: on(whole, "HERE"), Summary: "s"}), "     1  HERE b", "the start is shown where there is room")
}

func TestWordsStayWithinTheWidth(t *testing.T) {
	f := Finding{Rule: "r/s", Summary: "s", Why: strings.Repeat("oil the chain ", 30), Help: "Write:\n  a = 1\n" + strings.Repeat("x", 100)}
	lines := strings.Split(drawn(t, Style{Width: 50}, f), "\n")
	for _, line := range lines {
		if !strings.Contains(line, "xxx") {
			assert.LessOrEqual(t, len(line), 50)
		}
	}
	assert.Contains(t, strings.Join(lines, "\n"), "    write: Write:\n           a = 1\n           xxx")
}

func TestNothingTheAuthorWroteGivesOrdersToTheTerminal(t *testing.T) {
	evil := "\x1b[31m\u202e\u009b2J\r"
	file := source.New(evil, []byte("x = \""+evil+"\"\n"))
	got := drawn(t, Style{}, Finding{Rule: "r/s", Place: on(file, "x"), Summary: evil, Why: evil, Help: evil, Variant: evil, Fixes: []Fix{{Title: evil}}, Related: []Related{{on(file, "x"), evil}}})
	for _, bad := range []string{"\x1b", "\u202e", "\u009b", "\r"} {
		assert.NotContains(t, got, bad)
	}
}

func FuzzDraw(f *testing.F) {
	f.Add([]byte("a = \"給\t\"\r\n"), 4, 7, 60)
	f.Add([]byte("\xff\xfe\x00"), -1, 9, 1)
	f.Fuzz(func(t *testing.T, text []byte, start, end, width int) {
		place := source.Place{File: source.New("a.toml", text), Span: source.Span{Start: start, End: end}}
		got := drawn(t, Style{Width: width}, Finding{Rule: "r/s", Place: place, Summary: "s"})
		lines := strings.Split(strings.TrimSuffix(got, "\n"), "\n")
		if len(lines) == 1 {
			return
		}
		require.Len(t, lines, 3)
		assert.NotEmpty(t, strings.Trim(lines[2], " "), "something is marked")
		assert.LessOrEqual(t, columnsOf(lines[1]), max(width, narrow+gutter, map[bool]int{true: usual}[width <= 0]))
	})
}
