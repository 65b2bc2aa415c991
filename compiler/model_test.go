package compiler_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

func TestTheModelIsAsItsSchemaWantsIt(t *testing.T) {
	if testing.Short() {
		t.Skip("one thing after the other: nothing that race could find")
	}
	text, err := schema.ModelJSON()
	require.NoError(t, err)
	form := compiled(t, text)
	for name, one := range shops(t) {
		valid(t, form, one.result.Model(), name)
	}
	model := string(shops(t)["procedures"].result.Model())
	for name, change := range map[string][2]string{
		"another version":    {`"benchleaf-model": 1`, `"benchleaf-model": 2`},
		"a key unknown":      {`"hands-on": {`, `"hands-off": {`},
		"no such kind":       {`"kind": "cavity"`, `"kind": "cave"`},
		"words for a figure": {`"low": 42,`, `"low": "42",`},
	} {
		damaged := strings.Replace(model, change[0], change[1], 1)
		require.NotEqual(t, model, damaged, name)
		var parsed any
		require.NoError(t, json.Unmarshal([]byte(damaged), &parsed))
		assert.Error(t, form.Validate(parsed), name)
	}
}

type toldAmount struct {
	Text, Dimension, Shape, Unit string
	Low, High                    *float64
	SI                           *struct {
		Unit      string
		Low, High *float64
	}
}

type toldThing struct {
	Kind, Name string
	Place      struct{ File string }
	Keys       map[string]json.RawMessage
}

type toldModel struct {
	Machines []struct {
		Name     string
		Versions []struct {
			Version string
			Things  []toldThing
		}
	}
	Libraries  []toldThing
	Procedures []struct {
		Name, Machine string
		Versions      []struct {
			Version string
			Blocked bool
			Things  []toldThing
			Steps   []struct {
				Number  int
				Verb    string
				Objects []struct {
					Kind, Name, Fluid     string
					Torque, Amount, Limit *toldAmount
				}
				After []struct{ Kind, Name, Level string }
			}
			Needs struct {
				Fasteners []struct {
					Part  string
					Tools [][]string
				}
				Supplies []struct {
					Name   string
					Amount *toldAmount
				}
			}
		}
	}
}

func TestTheModelTellsTheShopForEachVersion(t *testing.T) {
	if testing.Short() {
		t.Skip("one thing after the other: nothing that race could find")
	}
	result := shops(t)["procedures"].result
	var model toldModel
	require.NoError(t, json.Unmarshal(result.Model(), &model))
	jobs := 0
	for _, procedure := range model.Procedures {
		jobs += len(procedure.Versions)
	}
	assert.Equal(t, len(result.Jobs), jobs)

	capacity := map[string]float64{}
	for _, machine := range model.Machines {
		if machine.Name != "log-deck" {
			continue
		}
		for _, version := range machine.Versions {
			for _, thing := range version.Things {
				if thing.Kind == "cavity" && thing.Name == "gearbox" {
					var amount toldAmount
					require.NoError(t, json.Unmarshal(thing.Keys["capacity"], &amount))
					capacity[version.Version] = *amount.SI.High
					assert.Equal(t, "m³", amount.SI.Unit)
					assert.Equal(t, "machines/log-deck.toml", thing.Place.File)
				}
			}
		}
	}
	assert.Greater(t, len(capacity), 1)
	for _, procedure := range model.Procedures {
		if procedure.Name != "log-deck-gearbox-oil" {
			continue
		}
		assert.Equal(t, "log-deck", procedure.Machine)
		for _, version := range procedure.Versions {
			filled, tightened := false, false
			for _, step := range version.Steps {
				for _, object := range step.Objects {
					if step.Verb == "fill" {
						filled = true
						assert.Equal(t, "gear-460", object.Fluid)
						assert.InDelta(t, capacity[version.Version], *object.Amount.SI.High, 1e-9, version.Version)
					}
					tightened = tightened || step.Verb == "tighten" && object.Torque != nil && *object.Torque.Low > 0
				}
			}
			assert.True(t, filled && tightened)
			assert.NotEmpty(t, version.Needs.Fasteners)
			assert.Empty(t, version.Steps[len(version.Steps)-1].After, "the machine stands as it stood")
			states := map[string]bool{}
			for _, step := range version.Steps {
				for _, one := range step.After {
					states[one.Kind+" "+one.Level] = true
				}
			}
			assert.True(t, states["energy proved"] && states["cavity empty"] && states["cover off"], "%v", states)
		}
	}
	for name, one := range shops(t) {
		assert.Equal(t, one.result.Model(), one.result.Model(), name)
	}
}

// Every key that a file of the shop has is told, but for verbs, versions and second readings.
func TestTheModelLeavesNoKeyOut(t *testing.T) {
	layout, _ := schema.Find("procedure")
	file := func(change string) *compiler.Result {
		return compiler.Compile(compiler.Input{Files: []*source.File{source.New("oiler.toml", []byte(strings.Replace(layout.Example, "tools = []", "tools = []\n"+change, 1)))}})
	}
	plain := file("").Model()
	for _, key := range layout.Keys {
		if key.Example == "" || bytes.Contains([]byte(layout.Example), []byte(key.Name+" = ")) {
			continue
		}
		assert.NotEqual(t, plain, file(key.Name+" = "+key.Example).Model(), key.Name)
		assert.Contains(t, string(file(key.Name+" = "+key.Example).Model()), `"`+key.Name+`": `)
	}
}
