package desk

import (
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// into puts what was written into a text, as the page does.
func into(text string, p placed) string {
	lines := strings.SplitAfter(text, "\n")
	if p.Line >= len(lines) {
		return text + p.Text
	}
	return strings.Join(lines[:p.Line], "") + p.Text + strings.Join(lines[p.Line:], "")
}

func TestAStepGoesWhereTheCursorIs(t *testing.T) {
	text := `benchleaf = 1

[procedure]
title = "x"

[[procedure.pictures]]
file = "a.png"

[[prepare]]
isolate = "mains"

[[step]]
remove = "guard"

[step.picture]
file = "b.png"
title = """
[[step]]
"""

# The next one:
[[step]]
clean = "it"
# done

[part.guard]
`
	line := func(words string) int { return strings.Count(text[:strings.Index(text, words)], "\n") }
	form := func(section string, at int) string {
		t.Helper()
		p, err := written(filled{Table: "step", Header: section, Values: map[string]any{"say": "Here."}, Text: text, Line: at})
		require.NoError(t, err)
		return into(text, p)
	}
	step := func(section string) string { return "\n[[" + section + "]]\nsay = \"Here.\"\n" }
	assert.Equal(t, strings.Replace(text, "\"mains\"\n", "\"mains\"\n"+step("prepare"), 1), form("prepare", line(`isolate`)))
	assert.Equal(t, strings.Replace(text, "[[step]]\n\"\"\"\n", "[[step]]\n\"\"\"\n"+step("step"), 1), form("step", line("b.png")), "what is within the step stays with it")
	assert.Equal(t, strings.Replace(text, "\"it\"\n", "\"it\"\n"+step("step"), 1), form("step", line("clean")))
	assert.Equal(t, strings.Replace(text, "\"it\"\n", "\"it\"\n"+step("step"), 1), form("step", 0), "behind the last, when the cursor is in none")
	assert.Equal(t, strings.Replace(text, "\"it\"\n", "\"it\"\n"+step("close"), 1), form("close", line("clean")), "the first of the last part stands behind the work")

	p, err := written(filled{Table: "step", Header: "step", First: true, Values: map[string]any{"say": "Here."}, Text: text})
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(text, "[[step]]\nremove", "[[step]]\nsay = \"Here.\"\n\n[[step]]\nremove", 1), into(text, p), "before all others of its section")
	assert.Equal(t, stepsTold{Section: "step", Here: line("[[step]]\nclean"), Steps: []headerTold{
		{"prepare", line("[[prepare]]"), `isolate = "mains"`}, {"step", line("[[step]]\nremove"), `remove = "guard"`}, {"step", line("[[step]]\nclean"), `clean = "it"`}}},
		standing{text, line("# The next")}.steps(), "the comment above a step belongs to it")
	assert.Equal(t, stepsTold{Section: "step", Here: -1, Steps: standing{Text: text}.steps().Steps}, standing{text, line("[part.guard]")}.steps())
	assert.Equal(t, stepsTold{Section: "prepare", Here: -1, Steps: []headerTold{}}, standing{}.steps())

	bare := "benchleaf = 1\n\n[procedure]\ntitle = \"x\"\n\n[[procedure.pictures]]\nfile = \"a.png\"\n\n[part.guard]\n"
	p, err = written(filled{Table: "step", Header: "step", Values: map[string]any{"say": "Here."}, Text: bare})
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(bare, "\"a.png\"\n", "\"a.png\"\n"+step("step"), 1), into(bare, p), "before what is described")
	work := "benchleaf = 1\n\n[procedure]\ntitle = \"x\"\n\n[[step]]\nclean = \"it\"\n"
	p, err = written(filled{Table: "step", Header: "prepare", Values: map[string]any{"say": "Here."}, Text: work})
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(work, "[[step]]", "[[prepare]]\nsay = \"Here.\"\n\n[[step]]", 1), into(work, p), "making safe comes before the work")
	for _, open := range []string{"benchleaf = 1\n[procedure]\ntitle = \"x\"", "benchleaf = 1\n[[step]]\nsay = \"x\""} {
		p, err = written(filled{Table: "step", Header: "step", Values: map[string]any{"say": "Here."}, Text: open, Line: 2})
		require.NoError(t, err)
		assert.Equal(t, open+"\n"+step("step"), into(open, p), "a last line without an end")
	}
}

func TestWhatIsWrittenIsTOML(t *testing.T) {
	p, err := written(filled{Table: "procedure", Values: map[string]any{
		"title": `Say "no" \ and tab	end`, "date": "2026-02-14", "people": 2.0, "tools": []any{}, "wear": []any{"gloves", "eye-protection"}, "every": "500 h", "summary": "One.\n\nTwo \"\"\" three.",
		"start": []any{"The deck is empty of logs, and nobody is near it or will come near it.", "The conveyor has run within the last hour, so that the oil is warm."}}})
	require.NoError(t, err)
	assert.Equal(t, 0, p.Line)
	assert.True(t, strings.HasPrefix(p.Text, "benchleaf = 1\n\n[procedure]\ntitle = "), p.Text)
	assert.Contains(t, p.Text, "start = [\n  \"The deck")
	var read struct {
		Procedure struct {
			Title, Summary string
			People         int
			Tools, Wear    []string
			Start          []string
		}
	}
	_, err = toml.Decode(p.Text, &read)
	require.NoError(t, err, p.Text)
	assert.Equal(t, "Say \"no\" \\ and tab\tend", read.Procedure.Title)
	assert.Equal(t, "One.\n\nTwo \"\"\" three.", read.Procedure.Summary)
	assert.Equal(t, 2, read.Procedure.People)
	assert.Len(t, read.Procedure.Start, 2)
	assert.Less(t, strings.Index(p.Text, "title"), strings.Index(p.Text, "date"), "in the order of the language")

	p, err = written(filled{Table: "step", Header: "step", Values: map[string]any{"clean": "the plugs", "supplies": map[string]any{"rags": 2.0, "gear-oil": "0.5 L"}, "meanwhile": true, "stage": "Open"}, Text: "benchleaf = 1\n"})
	require.NoError(t, err)
	assert.Equal(t, "\n[[step]]\nstage = \"Open\"\nclean = \"the plugs\"\nmeanwhile = true\nsupplies = { gear-oil = \"0.5 L\", rags = 2 }\n", p.Text)
	p, err = written(filled{Table: "part", Header: "drain-plug", Values: map[string]any{"thread": "M22x1.5"}, Text: "benchleaf = 1\n"})
	require.NoError(t, err)
	assert.Equal(t, "\n[part.drain-plug]\nthread = \"M22x1.5\"\n", p.Text)

	for _, text := range []string{"benchleaf = 1\n[cover.plug]\n", "benchleaf = 1\n[part.plug-2]\n", "benchleaf = 1\n[part.x]\nnote = \"\"\"\n[part.plug]\n\"\"\"\n"} {
		_, err := written(filled{Table: "part", Header: "plug", Text: text})
		assert.NoError(t, err, "another of the name: %s", text)
	}

	for says, form := range map[string]filled{
		"no table":             {Table: "nothing"},
		"no section":           {Table: "step", Header: "part"},
		"a table in a line":    {Table: "price"},
		"a name with a break":  {Table: "part", Header: "a]\n[x"},
		"a name in capitals":   {Table: "part", Header: "Plug"},
		"a name that is there": {Table: "part", Header: "plug", Text: "benchleaf = 1\n\n[part.plug]\nhead = \"wing\"\n"},
		"a name there, quoted": {Table: "part", Header: "plug", Text: "benchleaf = 1\n\n[ part . \"plug\" ] # the old one\n"},
		"a step of nothing":    {Table: "step", Header: "step", Values: map[string]any{"stage": "Open"}},
		"no key":               {Table: "step", Header: "step", Values: map[string]any{"x\ny": "1"}},
		"a text for a day":     {Table: "procedure", Values: map[string]any{"date": "2026-02-14\nx = 1"}},
		"half a person":        {Table: "procedure", Values: map[string]any{"people": 1.5}},
		"a table for a text":   {Table: "procedure", Values: map[string]any{"title": map[string]any{"a": 1.0}}},
		"nothing for a text":   {Table: "procedure", Values: map[string]any{"title": nil}},
	} {
		_, err := written(form)
		var wrong *fault
		require.ErrorAs(t, err, &wrong, says)
		assert.Equal(t, 422, wrong.status, says)
		assert.NotContains(t, wrong.why, "%!", says)
	}
}
