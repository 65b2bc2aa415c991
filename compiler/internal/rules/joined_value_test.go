package rules

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

// stepOf reads one step with some lines besides its verb.
func stepOf(t *testing.T, folder, lines string) *model.Step {
	t.Helper()
	file := source.New(folder+"a.toml", []byte("benchleaf = 1\n[[step]]\ninspect = \"the plug\"\n"+lines+"\n"))
	set := model.Read([]*source.File{file}, func(n int, do func(int)) {
		for i := range n {
			do(i)
		}
	})
	require.Len(t, set.Files[0].Steps, 1, "%s", lines)
	return set.Files[0].Steps[0]
}

func unlikeKeys(one, other *model.Step, variant string) []string {
	var out []string
	for _, key := range one.Unlike(other, variant) {
		if Unheld[key.Key] == "" {
			out = append(out, key.Key)
		}
	}
	return out
}

// bumped is a value that says something else: another figure, or another letter.
func bumped(value string) string {
	if i := strings.IndexAny(value, "0123456789"); i >= 0 {
		return value[:i] + string('1'+(value[i]-'0'+1)%9) + value[i+1:]
	}
	if value == "true" {
		return "false"
	}
	i := strings.Index(value, `"`) + 1
	return value[:i] + "x" + value[i:]
}

// Every key of a step is held against the author's, whether it is there, left out or says
// something else, or stands with a reason among those that are not.
func TestEveryKeyOfAStepIsHeldOrHasAReason(t *testing.T) {
	layout, _ := schema.Find("step")
	reasons, held := len(Unheld), 0
	for _, key := range layout.Keys {
		if _, verb := schema.FindVerb(key.Name); verb {
			continue
		}
		if reason, ok := Unheld[key.Name]; ok {
			assert.NotEmpty(t, reason, key.Name)
			reasons--
			continue
		}
		held++
		example := key.Example
		if example == "" {
			example = `[{ signal = "warning", hazard = "Hot oil", consequence = "It can scald.", avoid = "Wait." }]`
		}
		line := func(value string) string { return key.Name + " = " + value }
		bare, said, other := stepOf(t, "", ""), stepOf(t, "", line(example)), stepOf(t, "", line(bumped(example)))
		again := stepOf(t, "", line(strings.ReplaceAll(example, ", ", ",   ")))
		assert.Equal(t, []string{key.Name}, unlikeKeys(said, bare, ""), "%s is written here alone", key.Name)
		assert.Equal(t, []string{key.Name}, unlikeKeys(bare, said, ""), "%s is left out", key.Name)
		assert.Equal(t, []string{key.Name}, unlikeKeys(other, said, ""), "%s says %s", key.Name, bumped(example))
		assert.Empty(t, unlikeKeys(again, said, ""), "%s is only spaced", key.Name)
		assert.Empty(t, unlikeKeys(bare, stepOf(t, "", "variant = { long = { "+line(example)+" } }"), "short"), key.Name)
		assert.Equal(t, []string{key.Name}, unlikeKeys(bare, stepOf(t, "", "variant = { long = { "+line(example)+" } }"), "long"), key.Name)
	}
	assert.Zero(t, reasons, "a reason is given for a key that is not there")
	assert.Greater(t, held, 25)
}

// What says the same is no difference, however it is written.
func TestValuesAreHeldAsTheyAreRead(t *testing.T) {
	for _, one := range []struct {
		here, there string
		same        bool
	}{
		{`torque = "25 N·m"`, `torque = "25 Nm"`, true},
		{`torque = "25 N·m"`, `torque = "18.4 lbf·ft"`, true},
		{`torque = "25 N·m"`, `torque = "18 lbf·ft"`, false},
		{`torque = "24 to 26 N·m"`, `torque = "25 ± 1 N·m"`, true},
		{`torque = "24 to 26 N·m"`, `torque = "25 N·m"`, false},
		{`torque = "24 to 26 N·m"`, `torque = "24.5 to 26 N·m"`, false},
		{`least = "5 min"`, `least = "300 s"`, true},
		{`least = "5 min"`, `least = "280 s"`, false},
		{`set = "80 °C"`, `set = "176 °F"`, true},
		{`set = "80 °C"`, `set = "178 °F"`, false},
		{`set = "5 °C"`, `set = "-5 °C"`, false},
		{`supplies = { rags = 1, oil = "20 mL" }`, `supplies = { oil = "0.02 L", rags = 1 }`, true},
		{`supplies = { rags = 1 }`, `supplies = { rags = 2 }`, false},
		{`tools = ["oil-pump", "pan"]`, `tools = ["pan", "oil pump"]`, true},
		{`tools = "pan"`, `tools = ["pan"]`, true},
		{`keep = []`, ``, true},
		{`people = 1`, ``, true},
		{`count = 1`, ``, false},
		{`passes = [30, 60, 100]`, `passes = [60, 30, 100]`, false},
		{`say = "Turn it."`, "say = \"\"\"Turn\n  it.\"\"\"", true},
		{`say = "Turn it to -5."`, `say = "Turn it to 5."`, false},
		{`say = "Turn it."`, `say = "turn it."`, false},
		{`adapter = { length = "50 mm", wrench = "400 mm" }`, `adapter = { wrench = "40 cm", length = "5 cm" }`, true},
		{`picture = { file = "../a.png", title = "A" }`, `picture = { file = "../b.png", title = "A" }`, false},
		{`picture = { file = "a.png", title = "A", points = [[0.1, 0.2]] }`, `picture = { file = "a.png", title = "A", points = [[0.1, 0.3]] }`, false},
	} {
		assert.Equal(t, one.same, len(unlikeKeys(stepOf(t, "", one.here), stepOf(t, "", one.there), "")) == 0, "%s and %s", one.here, one.there)
	}
	assert.Empty(t, unlikeKeys(stepOf(t, "", `picture = { file = "pictures/a.png", title = "A" }`), stepOf(t, "deck/", `picture = { file = "../pictures/a.png", title = "A" }`), ""), "a picture is held by where it lies")
}
