package schema_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"io/fs"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/schema"
)

var update = flag.Bool("update", false, "write the generated pages anew")

func TestGeneratedPagesAreFresh(t *testing.T) {
	text, err := schema.JSON()
	require.NoError(t, err)
	model, err := schema.ModelJSON()
	require.NoError(t, err)
	for path, want := range map[string][]byte{"benchleaf.schema.json": text, "benchleaf-model.schema.json": model, "reference.md": []byte(schema.Reference())} {
		if *update {
			require.NoError(t, os.WriteFile(path, want, 0o644))
		}
		got, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.True(t, bytes.Equal(want, got), "%s is stale: run go test ./schema -update", path)
	}
}

func TestEveryKeyIsToldAndEverySubTableIsThere(t *testing.T) {
	for _, table := range schema.Tables() {
		assert.NotEmpty(t, table.Doc, table.Name)
		seen := map[string]bool{}
		for _, key := range table.Keys {
			at := table.Name + "." + key.Name
			assert.False(t, seen[key.Name], "%s stands twice", at)
			seen[key.Name] = true
			assert.Regexp(t, `^[a-z]+(-[a-z]+)*$`, key.Name)
			assert.Regexp(t, `^[A-Z].*\.$`, key.Doc, at)
			switch key.Kind {
			case schema.Sub, schema.Subs, schema.Named, schema.Overrides:
				_, ok := schema.Find(key.Of)
				assert.True(t, ok, "%s holds %q, which is no table", at, key.Of)
			case schema.Choice, schema.Choices:
				assert.NotEmpty(t, key.Choices, at)
			case schema.Name, schema.Names, schema.Amount, schema.Amounts, schema.Quantity:
				assert.NotEmpty(t, key.Of, at)
			}
		}
	}
}

func TestVerbsTakeOnlyKeysOfAStep(t *testing.T) {
	step, _ := schema.Find("step")
	for _, verb := range schema.Verbs() {
		for _, key := range verb.Takes {
			_, ok := step.Key(key)
			assert.True(t, ok, "%s takes %s", verb.Key, key)
		}
		assert.NotEmpty(t, verb.Makes, verb.Key)
	}
}

// The JSON Schema is checked by a general validator (santhosh-tekuri/jsonschema,
// draft 2020-12): the examples of the reference pass it, damaged ones do not.
func TestJSONSchemaByAValidator(t *testing.T) {
	compiled := compile(t)
	for _, table := range schema.Tables() {
		if table.Example != "" {
			assert.NoError(t, compiled.Validate(example(t, table.Example)), table.Name)
		}
	}
	whole, _ := schema.Find("procedure")
	for name, change := range map[string][2]string{
		"unknown key":   {"hands-on", "hands-off"},
		"missing title": {"title = \"Look over the chain oiler\"\n", ""},
		"wrong word":    {`"eye-protection"`, `"sunglasses"`},
		"later version": {"benchleaf = 1", "benchleaf = 2"},
		"wrong kind":    {`expect = "between the two marks"`, "expect = 7"},
	} {
		damaged := strings.Replace(whole.Example, change[0], change[1], 1)
		require.NotEqual(t, whole.Example, damaged, name)
		assert.Error(t, compiled.Validate(example(t, damaged)), name)
	}
}

func compile(t *testing.T) *jsonschema.Schema {
	text, err := schema.JSON()
	require.NoError(t, err)
	parsed, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	compiler := jsonschema.NewCompiler()
	require.NoError(t, compiler.AddResource("benchleaf.json", parsed))
	compiled, err := compiler.Compile("benchleaf.json")
	require.NoError(t, err)
	return compiled
}

func example(t *testing.T, text string) any {
	if !strings.Contains(text, "benchleaf = ") {
		text = "benchleaf = 1\n" + text
	}
	// Dates are strings to JSON.
	text = regexp.MustCompile(`= (\d{4}-\d{2}-\d{2})`).ReplaceAllString(text, `= "$1"`)
	var data map[string]any
	_, err := toml.Decode(text, &data)
	require.NoError(t, err)
	asJSON, err := json.Marshal(data)
	require.NoError(t, err)
	out, err := jsonschema.UnmarshalJSON(bytes.NewReader(asJSON))
	require.NoError(t, err)
	return out
}

// Every file of the demonstration shop passes the JSON Schema too.
func TestTheShopPassesTheJSONSchema(t *testing.T) {
	compiled := compile(t)
	files := 0
	root := os.DirFS("../procedures")
	require.NoError(t, fs.WalkDir(root, ".", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(path, ".toml") || entry.Name() == "service-book.toml" {
			return err
		}
		text, err := fs.ReadFile(root, path)
		require.NoError(t, err)
		files++
		assert.NoError(t, compiled.Validate(example(t, string(text))), path)
		return nil
	}))
	assert.Greater(t, files, 20)
}
