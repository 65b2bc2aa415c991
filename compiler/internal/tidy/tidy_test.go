package tidy

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/source"
)

var long = strings.Repeat("x", 60)

// cases are texts and what they look like laid out.
var cases = []struct{ name, text, want string }{
	{"nothing", "", ""},
	{"only blank lines", "\n \n\t\n", ""},
	{"spaces round the equals", "a=1\nb   =\t2\n  c = 3  \n", "a = 1\nb = 2\nc = 3\n"},
	{"no line break at the end", "a = 1", "a = 1\n"},
	{"a comment without a line break", "#a", "# a\n"},
	{"a byte order mark and CRLF", "\uFEFFa = 1\r\n\r\n\r\n# b\r\nc = \"\"\"x\r\ny\"\"\"\r\n", "a = 1\n\n# b\nc = \"\"\"x\ny\"\"\"\n"},
	{"a blank line before a table", "a = 1\n[b]\nc = 2\n[d]\n", "a = 1\n\n[b]\nc = 2\n\n[d]\n"},
	{"one blank line and not three", "\n\na = 1\n\n\n\nb = 2\n\n\n\n[c]\n\n\n", "a = 1\n\nb = 2\n\n[c]\n"},
	{"none between a header and its first key", "[a]\n\nb = 1\n", "[a]\nb = 1\n"},
	{"a comment goes with the table below", "a = 1\n# of b\n# and more\n[b]\n", "a = 1\n\n# of b\n# and more\n[b]\n"},
	{"and with the table above", "[a]\n# none yet\n[b]\n", "[a]\n# none yet\n\n[b]\n"},
	{"and stays apart", "a = 1\n# of a\n\n[b]\n", "a = 1\n# of a\n\n[b]\n"},
	{"below a header, apart", "[a]\n\n# of b\nb = 1\n", "[a]\n\n# of b\nb = 1\n"},
	{"what is inside a step stands close", "[[step]]\na = 1\n[[step.caution]]\nb = 2\n[[step.caution]]\nb = 3\n[[step]]\n", "[[step]]\na = 1\n[[step.caution]]\nb = 2\n[[step.caution]]\nb = 3\n\n[[step]]\n"},
	{"or apart", "[[step]]\na = 1\n\n\n[step.picture]\nb = 2\n[steps]\n", "[[step]]\na = 1\n\n[step.picture]\nb = 2\n\n[steps]\n"},
	{"spaces in headers", "[ a . b ]\n[[ c.\"d e\" ]] # f\n", "[a.b]\n\n[[c.\"d e\"]] # f\n"},
	{"keys need no quotes", "\"a\" = 1\n'b-1'.\"c\" = 2\n\"d e\" = 3\n'f g' = 4\n'\"' = 5\n\"\" = 6\n\"\\u0068\" = 7\n\"1.2\" = 8\n\"é\" = 9\n", "a = 1\nb-1.c = 2\n\"d e\" = 3\n\"f g\" = 4\n'\"' = 5\n\"\" = 6\nh = 7\n\"1.2\" = 8\n\"é\" = 9\n"},
	{"dotted keys stay", "a . b=1\na.c   = { d.e=2 }\n", "a.b = 1\na.c = { d.e = 2 }\n"},
	{"quotes", "a = 'b'\nc = 'd\\e'\nf = 'g\"h'\ni = \"j\\\"k\"\nl = '''m'''\nn = \"\"\"o\"\"\"\np = ''\n", "a = \"b\"\nc = 'd\\e'\nf = 'g\"h'\ni = \"j\\\"k\"\nl = '''m'''\nn = \"\"\"o\"\"\"\np = \"\"\n"},
	{"long texts stay to the letter", "a = \"\"\"  \n  b  \\\n\n   c \"\"  \n\"\"\"\"\"   # d\n", "a = \"\"\"  \n  b  \\\n\n   c \"\"  \n\"\"\"\"\" # d\n"},
	{"numbers and days as spelled", "a = [+1,0x1F,1_000,6.0E-3,inf,1979-05-27 07:32:00Z,07:32:00,true]\n", "a = [+1, 0x1F, 1_000, 6.0E-3, inf, 1979-05-27 07:32:00Z, 07:32:00, true]\n"},
	{"comments", "#a\n#  b\n##c\n#!d\n#:schema e\n#---\n#\n# f \t \ng=1#h\ni=2   # j\n#é\n", "# a\n#  b\n##c\n#!d\n#:schema e\n#---\n#\n# f\ng = 1 # h\ni = 2 # j\n# é\n"},
	{"comments lined up by their author", "ab=1  # a\nb=1     # b\nc=1 # c\nd=1  # d\n\ne=1  # e\n", "ab = 1  # a\nb = 1   # b\nc = 1 # c\nd = 1 # d\n\ne = 1 # e\n"},
	{"not behind a long line", "a = \"" + long + "\"   # a\nb = 1      # b\nc = 10   # c\n", "a = \"" + long + "\" # a\nb = 1   # b\nc = 10  # c\n"},
	{"a list that goes on one line", "a = [\n  1,\n  2,\n\n]\nb = [ ]\nc = [[\"x\"],[  ]]\n", "a = [1, 2]\nb = []\nc = [[\"x\"], []]\n"},
	{"a list that does not", "a = [\"" + long + "\", \"" + long + "\"] # b\n", "a = [\n  \"" + long + "\",\n  \"" + long + "\",\n] # b\n"},
	{"a hundred characters go on a line", "aa = [\"" + long + "\", \"" + strings.Repeat("é", 27) + "\"]\n", "aa = [\"" + long + "\", \"" + strings.Repeat("é", 27) + "\"]\n"},
	{"a hundred and one do not", "aaa = [\"" + long + "\", \"" + strings.Repeat("é", 27) + "\"]\n", "aaa = [\n  \"" + long + "\",\n  \"" + strings.Repeat("é", 27) + "\",\n]\n"},
	{"one item that is too wide anyhow", "a = [\n  \"" + long + long + "\"\n]\n", "a = [\"" + long + long + "\"]\n"},
	{"comments in a list", "a = [ #a\n\n  #b\n  1 #c\n  #d\n  , #e\n\n\n  #f\n  2, #g\n #h\n\n#i\n] #j\n", "a = [ # a\n  # b\n  1, # c\n  # d\n  # e\n\n  # f\n  2, # g\n  # h\n\n  # i\n] # j\n"},
	{"a comment alone in a list", "a = [ # b\n]\nc = [\n# d\n]\n", "a = [ # b\n]\nc = [\n  # d\n]\n"},
	{"a list in a list with a comment", "a = [[1, # b\n2], [3]]\n", "a = [\n  [\n    1, # b\n    2,\n  ],\n  [3],\n]\n"},
	{"a long text in a list", "a = [\"\"\"x\ny\"\"\", 'z']\n", "a = [\n  \"\"\"x\ny\"\"\",\n  \"z\",\n]\n"},
	{"figures stay in their rows", "a = [\n[1,2],[3,4],\n[5,6], # b\n[7,8]\n]\n", "a = [\n  [1, 2], [3, 4],\n  [5, 6], # b\n  [7, 8],\n]\n"},
	{"rows that are too long are filled", "a = [" + strings.Repeat("[10, 20], ", 12) + "]\n", "a = [\n  " + strings.TrimSpace(strings.Repeat("[10, 20], ", 9)) + "\n  [10, 20], [10, 20], [10, 20],\n]\n"},
	{"a table in braces stays on its line", "a={b=1,c = 'd'}\ne={}\nf = { " + long + " = \"" + long + "\" }\n", "a = { b = 1, c = \"d\" }\ne = {}\nf = { " + long + " = \"" + long + "\" }\n"},
	{"tables in a list", "a = [{b=\"" + long + "\"},{c=\"" + long + "\"}]\n", "a = [\n  { b = \"" + long + "\" },\n  { c = \"" + long + "\" },\n]\n"},
	{"a list with a comment in braces", "a = { b = [1, # c\n2], d = 3 }\n", "a = { b = [\n  1, # c\n  2,\n], d = 3 }\n"},
	{"amounts, and figures in words that say less exactly", "benchleaf = 1\n[part.plug]\ntorque = \"35-40Nm\"\nacross = '1 1/2\"'\nreach = \"1-3/16in\"\n[part.nut]\ntorque = \"max 25 ft-lb (34Nm)\"\nangle = 'quarter turn'\n", "benchleaf = 1\n\n[part.plug]\ntorque = \"35 to 40 N·m\"\nacross = \"1-1/2 in\"\nreach = \"1-3/16 in\"\n\n[part.nut]\ntorque = \"max 25 lbf·ft (34 N·m)\"\nangle = \"quarter turn\"\n"},
	{"amounts of a middle and a tolerance", "benchleaf = 1\n[part.plug]\ntorque = \"38+/-3Nm / 28ft-lb\"\n[part.nut]\ntorque = \"40 Nm +2/-1\"\n", "benchleaf = 1\n\n[part.plug]\ntorque = \"38 ± 3 N·m (28 lbf·ft)\"\n\n[part.nut]\ntorque = \"40 +2/-1 N·m\"\n"},
	{"amounts in lists and braces", "benchleaf = 1\n[procedure]\nevery = [\"500hrs\", \"12 month\"]\n[[step]]\nwait = '1h 15'\nsupplies = { oil = \"0.5l\", rags = 2 }\nvariant = { long = { torque = \"42Nm\" } }\n", "benchleaf = 1\n\n[procedure]\nevery = [\"500 h\", \"12 months\"]\n\n[[step]]\nwait = \"1 h 15 min\"\nsupplies = { oil = \"0.5 L\", rags = 2 }\nvariant = { long = { torque = \"42 N·m\" } }\n"},
	{"amounts of a second reading", "benchleaf = 1\n[second-reading.part.plug]\ntorque = \"42Nm\"\n", "benchleaf = 1\n\n[second-reading.part.plug]\ntorque = \"42 N·m\"\n"},
	{"amounts with a doubt stay", "benchleaf = 1\n[part.plug]\ntorque = \"35-40\"\nacross = \".5in\"\nreach = \"2,5mm\"\n[cavity.box]\ncapacity = \"8 oz\"\n[tool.a]\nholds = \"2 gal\"\nrange = \"10 kg-m\"\n", "benchleaf = 1\n\n[part.plug]\ntorque = \"35-40\"\nacross = \".5in\"\nreach = \"2,5mm\"\n\n[cavity.box]\ncapacity = \"8 oz\"\n\n[tool.a]\nholds = \"2 gal\"\nrange = \"10 kg-m\"\n"},
	{"amounts in long texts, and what is no amount", "benchleaf = 1\n[part.plug]\ntitle = \"25Nm\"\nthread = \"M22x1.5\"\ntorque = \"\"\"25Nm\"\"\"\n", "benchleaf = 1\n\n[part.plug]\ntitle = \"25Nm\"\nthread = \"M22x1.5\"\ntorque = \"\"\"25Nm\"\"\"\n"},
	{"no amounts where the language is not ours", "[part.plug]\ntorque = \"25Nm\"\n", "[part.plug]\ntorque = \"25Nm\"\n"},
	{"nor where it is newer", "benchleaf = 99\n[part.plug]\ntorque = \"25Nm\"\n", "benchleaf = 99\n\n[part.plug]\ntorque = \"25Nm\"\n"},
}

func TestLayout(t *testing.T) {
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			out, _ := kept(t, "a.toml", c.text)
			assert.Equal(t, c.want, out)
		})
	}
}

// As deep as anything may stand, and as wide.
func TestDeepAndWide(t *testing.T) {
	deep := "a = " + strings.Repeat("[", 100) + "\"" + long + long + "\"" + strings.Repeat("]", 100) + "\n"
	kept(t, "deep.toml", deep)
	wide := "a = [" + strings.Repeat("[1, 2], ", 2_000) + "]\n"
	out, _ := kept(t, "wide.toml", wide)
	for line := range strings.SplitSeq(out, "\n") {
		require.LessOrEqual(t, len(line), Width)
	}
	_, faults := File(source.New("broken.toml", []byte("a = [\n")))
	assert.NotEmpty(t, faults)
}
