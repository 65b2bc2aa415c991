package compiler_test

import (
	"bytes"
	"encoding/json"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

// shop is a set of files that tests have, compiled.
type shop struct {
	files  []*source.File
	result *compiler.Result
	log    []byte // in SARIF
	run    sarifRun
}

var (
	shopsOnce sync.Once
	allShops  map[string]shop
)

// shops are all the files that tests have, each set compiled once, as one shop: the demonstration
// shop, what is broken and what is clean.
func shops(t *testing.T) map[string]shop {
	shopsOnce.Do(func() {
		allShops = map[string]shop{}
		add := func(name string, files []*source.File, pictures []source.Picture) {
			result := compiler.Compile(compiler.Input{Files: files, Whole: name == "procedures", Pictures: pictures})
			log := result.SARIF("1.2.3")
			allShops[name] = shop{files, result, log, readSARIF(t, log)}
		}
		procedures := compiler.ReadFolder(t, "../procedures")
		add("procedures", procedures, compiler.ReadPictures(t, "../procedures", procedures))
		for name, files := range cases(t) {
			add(name, files, compiler.Imagined(files))
		}
		clean, err := filepath.Glob("../testdata/clean/*.toml")
		require.NoError(t, err)
		for _, path := range clean {
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			add("clean/"+filepath.Base(path), []*source.File{source.New(filepath.Base(path), text)}, nil)
		}
	})
	require.Greater(t, len(allShops), 200)
	return allShops
}

// compiled makes a schema ready, by a general validator (santhosh-tekuri/jsonschema).
func compiled(t *testing.T, text []byte) *jsonschema.Schema {
	t.Helper()
	parsed, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	require.NoError(t, c.AddResource("schema.json", parsed))
	out, err := c.Compile("schema.json")
	require.NoError(t, err)
	return out
}

func valid(t *testing.T, by *jsonschema.Schema, text []byte, name string) {
	t.Helper()
	parsed, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err, name)
	assert.NoError(t, by.Validate(parsed), name)
}

func sarifSchema(t *testing.T) *jsonschema.Schema {
	text, err := os.ReadFile("../testdata/standards/sarif-schema-2.1.0.json")
	require.NoError(t, err)
	return compiled(t, text)
}

func TestSARIFIsAsTheStandardWantsIt(t *testing.T) {
	if testing.Short() {
		t.Skip("one thing after the other: nothing that race could find")
	}
	standard := sarifSchema(t)
	for name, one := range shops(t) {
		valid(t, standard, one.log, name)
	}
	var damaged map[string]any
	require.NoError(t, json.Unmarshal(compiler.Compile(compiler.Input{}).SARIF("1.2.3"), &damaged))
	damaged["runs"].([]any)[0].(map[string]any)["columnKind"] = "bytes"
	assert.Error(t, standard.Validate(damaged), "the schema refuses what is wrong")
}

// What a log is read back into.
type sarifRegion struct {
	StartLine, StartColumn, EndLine, EndColumn     int
	CharOffset, CharLength, ByteOffset, ByteLength int
}

type sarifPhysical struct {
	ArtifactLocation struct {
		URI   string
		Index int
	}
	Region sarifRegion
}

type sarifLocation struct {
	PhysicalLocation sarifPhysical
	Message          struct{ Text string }
}

type sarifResult struct {
	RuleID              string
	RuleIndex           int
	Level               string
	Message             struct{ Text, Markdown string }
	Locations           []sarifLocation
	RelatedLocations    []sarifLocation
	PartialFingerprints map[string]string
	Suppressions        []struct {
		Kind, Justification string
		Location            sarifLocation
	}
	Fixes []struct {
		ArtifactChanges []struct {
			ArtifactLocation struct{ URI string }
			Replacements     []struct {
				DeletedRegion   sarifRegion
				InsertedContent struct{ Text string }
			}
		}
		Properties struct{ Certain bool }
	}
}

type sarifRun struct {
	Tool struct {
		Driver struct {
			Version string
			Rules   []struct{ ID string }
		}
	}
	Artifacts []struct {
		Location struct{ URI string }
	}
	Results []sarifResult
}

func readSARIF(t *testing.T, text []byte) sarifRun {
	var log struct{ Runs []sarifRun }
	require.NoError(t, json.Unmarshal(text, &log))
	require.Len(t, log.Runs, 1)
	return log.Runs[0]
}

// cut is the text of a region, told three ways: by lines and columns in code points, by
// characters, by bytes. The lines are counted here anew, and a byte order mark is no character.
func cut(t *testing.T, text string, at sarifRegion, name string) (before, inside, after string) {
	t.Helper()
	bytewise := text[at.ByteOffset : at.ByteOffset+at.ByteLength]
	mark := ""
	if strings.HasPrefix(text, "\uFEFF") {
		mark = "\uFEFF"
	}
	runes := []rune(strings.TrimPrefix(text, mark))
	assert.Equal(t, strings.TrimPrefix(bytewise, mark), string(runes[at.CharOffset:at.CharOffset+at.CharLength]), "%s: by characters", name)
	place := func(line, column int) int {
		at := 0
		for ; line > 1; line-- {
			at += slices.Index(runes[at:], '\n') + 1
		}
		return at + column - 1
	}
	start, end := place(at.StartLine, at.StartColumn), place(at.EndLine, at.EndColumn)
	assert.Equal(t, strings.TrimPrefix(bytewise, mark), string(runes[start:end]), "%s: by lines and columns", name)
	return text[:at.ByteOffset], bytewise, text[at.ByteOffset+at.ByteLength:]
}

func TestSARIFPlacesHoldWhatTheFindingIsAbout(t *testing.T) {
	if testing.Short() {
		t.Skip("one thing after the other: nothing that race could find")
	}
	regions := 0
	for name, one := range shops(t) {
		files, result := one.files, one.result
		texts := map[string]string{}
		for _, file := range files {
			texts[file.Path] = strings.ToValidUTF8(string(file.Text), "?") // each wrong byte is a character
			if texts[file.Path] != string(file.Text) {
				delete(texts, file.Path)
			}
		}
		run := one.run
		require.Len(t, run.Results, len(result.Findings)+len(result.Allowed), name)
		for i, one := range run.Results {
			all := append(slices.Clone(result.Findings), result.Allowed...)
			assert.Equal(t, all[i].Rule, one.RuleID)
			assert.Equal(t, one.RuleID, run.Tool.Driver.Rules[one.RuleIndex].ID)
			assert.Equal(t, all[i].Severity.String(), one.Level)
			for _, at := range slices.Concat(one.Locations, one.RelatedLocations) {
				uri := at.PhysicalLocation.ArtifactLocation.URI
				assert.Equal(t, uri, run.Artifacts[at.PhysicalLocation.ArtifactLocation.Index].Location.URI)
				if text, known := texts[uri]; known {
					cut(t, text, at.PhysicalLocation.Region, name)
					regions++
				}
			}
		}
	}
	assert.Greater(t, regions, 300)
}

// Fixes that are certain, applied from the log alone, give the text that the fix gives.
func TestSARIFFixesAreThoseOfTheFinding(t *testing.T) {
	if testing.Short() {
		t.Skip("one thing after the other: nothing that race could find")
	}
	applied := 0
	for name, one := range shops(t) {
		files, result := one.files, one.result
		if len(files) > 1 {
			continue
		}
		for i, one := range one.run.Results[:len(result.Findings)] {
			for j, fix := range one.Fixes {
				want := result.Findings[i].Fixes[j]
				assert.Equal(t, want.Certain, fix.Properties.Certain)
				text, n := string(files[0].Text), 0
				for _, change := range fix.ArtifactChanges {
					n += len(change.Replacements)
					for _, part := range slices.Backward(change.Replacements) {
						before, _, after := cut(t, text, part.DeletedRegion, name)
						text = before + part.InsertedContent.Text + after
					}
				}
				require.Equal(t, len(want.Edits), n)
				edits := slices.Clone(want.Edits)
				slices.SortFunc(edits, func(a, b finding.Edit) int { return b.Place.Span.Start - a.Place.Span.Start })
				expected := string(files[0].Text)
				for _, edit := range edits {
					expected = expected[:edit.Place.Span.Start] + edit.Text + expected[edit.Place.Span.End:]
				}
				assert.Equal(t, expected, text, name)
				applied++
			}
		}
	}
	assert.Greater(t, applied, 90)
}

// A finding keeps its fingerprint when lines are added above it, loses it when its line is
// changed, and shares it with no other of its file.
func TestSARIFFingerprintsStayWhenLinesMove(t *testing.T) {
	if testing.Short() {
		t.Skip("one thing after the other: nothing that race could find")
	}
	prints := func(run sarifRun) map[string]string {
		out := map[string]string{}
		for _, one := range run.Results {
			require.Len(t, one.PartialFingerprints, 1)
			key := one.Locations[0].PhysicalLocation.ArtifactLocation.URI + " " + slices.Collect(maps.Values(one.PartialFingerprints))[0]
			assert.NotContains(t, out, key, "two findings of one fingerprint")
			out[key] = one.RuleID
		}
		return out
	}
	again := func(files []*source.File) map[string]string {
		return prints(readSARIF(t, compiler.Compile(compiler.Input{Files: files, Pictures: compiler.Imagined(files)}).SARIF("1")))
	}
	moved := 0
	for name, one := range shops(t) {
		before := prints(one.run)
		if len(before) == 0 || strings.HasPrefix(string(one.files[0].Text), "\uFEFF") || name == "empty.toml" {
			continue
		}
		var shifted []*source.File
		for _, file := range one.files {
			shifted = append(shifted, source.New(file.Path, append([]byte("# one line\n\n# and another\n"), file.Text...)))
		}
		assert.Equal(t, before, again(shifted), name)
		moved += len(before)
	}
	assert.Greater(t, moved, 300)

	files := shops(t)["torque-bare.toml"].files
	changed := source.New(files[0].Path, bytes.ReplaceAll(files[0].Text, []byte("torque = \""), []byte("torque = \"1")))
	require.NotEqual(t, files[0].Text, changed.Text)
	for key := range again([]*source.File{changed}) {
		assert.NotContains(t, again(files), key)
	}
}

func TestSARIFTellsWhatItsAuthorStandsBy(t *testing.T) {
	layout, _ := schema.Find("procedure")
	text := strings.Replace(layout.Example, "tools = []", "tools = [\"mallet\"]\nallow = [{ rule = \"tool/never-used\", reason = \"kept at hand for the tail shaft\" }]", 1) +
		"\n\n[tool.mallet]\nkind = \"hammer\"\n"
	compile := func() []byte {
		return compiler.Compile(compiler.Input{Files: []*source.File{source.New("oiler: yard.toml", []byte(text))}}).SARIF("1.2.3")
	}
	log := compile()
	valid(t, sarifSchema(t), log, "allowed")
	run := readSARIF(t, log)
	assert.Equal(t, "1.2.3", run.Tool.Driver.Version)
	require.Len(t, run.Results, 1)
	one := run.Results[0]
	assert.Equal(t, "tool/never-used", one.RuleID)
	require.Len(t, one.Suppressions, 1)
	assert.Equal(t, "inSource", one.Suppressions[0].Kind)
	assert.Equal(t, "kept at hand for the tail shaft", one.Suppressions[0].Justification)
	_, place, _ := cut(t, text, one.Suppressions[0].Location.PhysicalLocation.Region, "allowed")
	assert.Equal(t, `"tool/never-used"`, place)
	assert.Empty(t, one.RelatedLocations)
	assert.Equal(t, "oiler%3A%20yard.toml", run.Artifacts[0].Location.URI, "a path is written as a reference")
	assert.Equal(t, log, compile(), "same files, same bytes")

	doubtful := strings.Replace(text, "allow = [", "notes = []\n#", 1)
	log = compiler.Compile(compiler.Input{Files: []*source.File{source.New("oiler.toml", []byte(doubtful))}}).SARIF("1")
	assert.Contains(t, string(log), `"suppressions": []`, "what nobody stands by says so too")
}
