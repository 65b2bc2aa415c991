package join

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/sequence"
	"benchleaf/compiler/source"
)

// onRig reads procedures, given by their steps, on a machine.
func onRig(t *testing.T, machine string, procedures ...string) []Input {
	t.Helper()
	files := []*source.File{source.New("rig.toml", []byte("benchleaf = 1\n[machine]\nname = \"rig\"\ntitle = \"Rig\"\nmanual = \"Plate\"\n"+machine))}
	for i, steps := range procedures {
		name := string(rune('a' + i))
		files = append(files, source.New(name+".toml", []byte("benchleaf = 1\nuse = [\"rig.toml\"]\n[procedure]\ntitle = \""+name+"\"\nmachine = \"rig\"\nrevision = \"A\"\ndate = 2026-01-01\nauthor = \"R\"\nwho = \"R\"\nhands-on = \"20 min\"\n"+steps)))
	}
	set := model.Read(files, func(n int, do func(int)) {
		for i := range n {
			do(i)
		}
	})
	require.Empty(t, set.Findings)
	var out []Input
	for _, file := range set.Files {
		for _, job := range set.Jobs(file) {
			out = append(out, Input{Job: job, Needs: needs.Of(job)})
		}
	}
	require.Len(t, out, len(procedures))
	return out
}

// steps writes "remove plug, refit plug" as steps.
func steps(list string) string {
	var out strings.Builder
	for _, one := range strings.Split(list, ", ") {
		verb, object, _ := strings.Cut(one, " ")
		fmt.Fprintf(&out, "[[step]]\n%s = %q\n", verb, object)
	}
	return out.String()
}

// Every refusal names the steps that fight, as their authors count them, and a way out.
func TestRefusals(t *testing.T) {
	gaps := "[part.band]\n[part.shoe]\nheld-by = [\"clamp\"]\n[part.clamp]\nthread = \"M8\"\n" +
		"[limit.band-gap]\nlimit = \"2 to 4 mm\"\noutside = \"Set it again.\"\nanew-after = [\"band\"]\n" +
		"[limit.shoe-gap]\nlimit = \"2 to 4 mm\"\noutside = \"Set it again.\"\nanew-after = [\"shoe\"]\n"
	var plugs, all strings.Builder
	for i := range 64 {
		fmt.Fprintf(&plugs, "[part.plug-%d]\n[cover.lid-%d]\n", i, i)
	}
	for i := range 64 {
		fmt.Fprintf(&all, ", remove %%s-%d", i)
	}
	many := func(what string) string {
		return steps(strings.ReplaceAll(strings.TrimPrefix(all.String(), ", "), "%s", what) + ", inspect the rig")
	}
	for _, one := range []struct {
		name, machine string
		procedures    []string
		text, help    string
		steps         []int
	}{
		{"a cavity is empty while its own author raises the machine",
			"[cavity.box]\nfluid = \"oil\"\ncapacity = \"1 L\"\n[fluid.oil]\nkind = \"gear-oil\"\n",
			[]string{steps("drain box, raise the rig, inspect the rig, lower the rig, fill box"), steps("inspect the rig")},
			"for step 3 of a the machine is raised, let down or turned, and from step 1 of a to step 5 of a the box is empty",
			"Write the steps that fill the box again, or close it, before it is moved.", []int{3, 1, 5}},
		{"each has loose what the other works at, and waits for it", gaps,
			[]string{steps("loosen clamp, remove band, refit band, adjust shoe-gap, tighten clamp"), steps("adjust band-gap, remove shoe, refit shoe")},
			"step 4 of a sets the shoe gap, and wants to come after step 3 of b, which puts the shoe on or tight; from step 1 of a to step 5 of a the clamp is loose, and step 2 of b works at it",
			"Do them one after the other, each by its own card. Where the shoe gap does not hang on the shoe, take it out of anew-after.", []int{4, 3, 2, 1, 5}},
		{"too many covers", plugs.String(), []string{many("lid"), steps("inspect the rig")},
			"64 covers come off, and at most 63 can be planned: the first at step 1 of a, and one too many at step 64 of a", "Join fewer procedures.", []int{1, 64}},
		{"too many parts", plugs.String(), []string{steps("inspect the rig"), many("plug")},
			"64 parts come off or loose, and at most 63 can be planned: the first at step 1 of b, and one too many at step 64 of b", "Join fewer procedures.", []int{1, 64}},
	} {
		_, err := Of(onRig(t, one.machine, one.procedures...), sequence.Budget{})
		var fight *Conflict
		require.ErrorAs(t, err, &fight, one.name)
		assert.Equal(t, one.text, fight.Text, one.name)
		assert.Equal(t, one.help, fight.Help, one.name)
		var numbers []int
		for _, step := range append([]*model.Step{fight.One, fight.Other}, fight.More...) {
			numbers = append(numbers, step.Number)
		}
		assert.Equal(t, one.steps, numbers, one.name)
	}
}
