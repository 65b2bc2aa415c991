package rules_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Figures that only look like a fault raise nothing.
func TestHarmlessFiguresStaySilent(t *testing.T) {
	families := []string{"interval", "limit", "record", "picture"}
	for _, every := range []string{
		`["2000 h", "12 months"]`, `["700 h", "1 month"]`, `["10 h", "6 years"]`, `["24 months", "10000 km"]`, `["500 cycles", "50 h", "1 week", "800 km"]`,
		`"6 years"`, `["24 h", "1 day"]`, `["about 500 h", "1 month"]`, `["500 h", "6 months"]` + "\nfirst = \"50 h\"", `["500 h", "6 months"]` + "\nfirst = \"500 h\"",
		`"500 h"` + "\nfirst = \"5 years\"", `["500 h", "6 months"]` + "\nfirst = [\"50 h\", \"1 month\"]", `"400 to 600 h"` + "\nfirst = \"500 h\"", `"1000 km"` + "\nfirst = \"50 h\"",
	} {
		assert.Empty(t, told(strings.Replace(lone, `every = "50 h"`, "every = "+every, 1), families...), every)
	}
	for _, limit := range []string{
		"limit = \"max 5 mm\"", "limit = \"3 to 5 mm\"", "limit = \"4 ± 1 mm\"", "limit = \"0 bar\"", "limit = \"about 4 mm\"", "limit = \"8 pieces\"", "limit = \"0 V\"",
		"limit = \"min 4 mm\"\nnew = \"5 mm\"", "limit = \"max 261 mm\"\nnew = \"254 mm\"", "limit = \"max 5 mm\"\nnew = \"5 mm\"", "limit = \"3 to 5 mm\"\nnew = \"5 to 6 mm\"",
		"limit = \"max 2 %\"\nnew = \"500 mm\"", "limit = \"min 10 mm\"\nnew = \"1/2 in\"", "limit = \"max 5 mm\"\nnew = \"about 6 mm\"",
	} {
		assert.Empty(t, told(lone+"[limit.gap]\noutside = \"Call.\"\n"+limit+"\n[[step]]\nmeasure = \"gap\"\nreading = \"Gap\"\n", families...), limit)
	}
	for _, set := range []string{
		"0.5 to 0.8 mm", "0.5 mm", "0.8 mm", "0.65 ± 0.15 mm", "about 0.9 mm", "0.02 to 0.03 in", "0.8 mm\"\nlimit = \"max 1 mm", "1.2 mm\"\nlimit = \"1 to 1.5 mm", "40 N", "90°",
	} {
		assert.Empty(t, told(lone+"[limit.gap]\noutside = \"Call.\"\nlimit = \"0.5 to 0.8 mm\"\n[[step]]\nadjust = \"gap\"\nset = \""+set+"\"\n", families...), set)
	}
	assert.Empty(t, told(lone+"[limit.gap]\noutside = \"Call.\"\nlimit = \"0 to 0.8 mm\"\n[[step]]\nadjust = \"gap\"\nset = \"max 0.5 mm\"\n", families...), "nothing is the least there is")
	assert.Len(t, told(lone+"[limit.gap]\noutside = \"Call.\"\nlimit = \"5 mm\"\nnew = \"6 mm\"\n[[step]]\nadjust = \"gap\"\nset = \"4 mm\"\n", families...), 1, "a limit without a side is told once, and nothing is held against it")
	for _, step := range []string{
		"measure = \"the rope\"\nexpect = \"as thick as at the hook\"\noutside = \"Renew it.\"", "measure = \"the rope\"\nreading = \"Rope\"", "measure = \"the rope\"\nset = \"max 3 mm\"",
		"measure = \"the rope\"\nsay = \"Call the figure out.\"", "measure = \"the rope\"\nlimit = \"min 3 mm\"\noutside = \"Renew it.\"\nreading = \"Rope\"", "inspect = \"the rope\"", "record = \"hour meter\"",
		"measure = \"the rope\"\nreading = \"Rope, left\"\n[[step]]\nmeasure = \"the rope\"\nreading = \"Rope, right\"",
		"say = \"Wipe it.\"\ntime = \"30 min\"", "wait = \"2 h\"\ntime = \"2 h\"", "run = \"the pump\"\nleast = \"1 h\"\ntime = \"1 h\"", "wait = \"1 h\"\n[[step]]\nsay = \"Wipe it.\"\nmeanwhile = true\ntime = \"50 min\"",
		"say = \"Wipe it.\"\ntime = \"20 to 50 min\"", "say = \"Wipe it.\"\ntime = \"max 50 min\"", "say = \"Wipe it.\"\npeople = 1",
		"say = \"Look.\"\npicture = { file = \"pictures/plug.PNG\", title = \"Plug\", points = [[0, 1], [1, 0], [0.5, 0.5]] }", "say = \"Look.\"\npicture = { file = \"./a/../plug.jpeg\", title = \"Plug\", points = [] }",
		"say = \"Look.\"\npicture = { file = \"two words.v2.jpg\", title = \"Plug\" }", "say = \"Look.\"\npicture = { file = \"..plug.jpg\", title = \"Plug\" }",
	} {
		assert.Empty(t, told(lone+"[[step]]\n"+step+"\n", families...), step)
	}
	for _, key := range []string{"checked = \"T. Okafor\"", "checked = \"R. Aldous jr.\"", "people = 3", "record = [\"Rope\", \"Hook\"]", "pictures = [{ file = \"a.png\", title = \"A\" }, { file = \"a.png\", title = \"B\" }]"} {
		assert.Empty(t, told(strings.Replace(lone, "tools = []", "tools = []\n"+key, 1)+"[[step]]\nmeasure = \"the rope\"\nreading = \"Rope\"\npeople = 1\n", families...), key)
	}
	assert.Empty(t, told(strings.Replace(lone, `"30 min"`, `"about 30 min"`, 1)+"[[step]]\nsay = \"Wipe it.\"\ntime = \"35 min\"\n", families...), "about")
}
