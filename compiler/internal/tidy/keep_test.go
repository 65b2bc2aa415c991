package tidy

import (
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/tree"
	"benchleaf/compiler/internal/tree/treetest"
	"benchleaf/compiler/source"
)

// corpus is the valid files of the TOML project's own tests for version 1.0.
func corpus(t testing.TB) map[string]string {
	files := treetest.Corpus(t)
	maps.DeleteFunc(files, func(name, _ string) bool { return !strings.HasPrefix(name, "valid/") })
	return files
}

// own is every TOML file of the project below some folders.
func own(t testing.TB, folders ...string) map[string]string {
	out := map[string]string{}
	for _, folder := range folders {
		root := filepath.Join("../../..", folder)
		require.NoError(t, filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
			if err == nil && filepath.Ext(path) == ".toml" {
				text, err := os.ReadFile(path)
				require.NoError(t, err)
				out[filepath.ToSlash(path)] = string(text)
			}
			return err
		}))
	}
	return out
}

// kept fails where a file laid out is not what it was: another tree, a comment lost, moved or
// changed, an amount that is read otherwise, or a second run that changes it again. It gives
// what came out, and how many amounts are spelled otherwise.
func kept(t testing.TB, name, text string) (out string, spelled int) {
	laid, faults := File(source.New(name, []byte(text)))
	require.Empty(t, faults, text)
	before := string(plain([]byte(text)))
	was, faults := tree.Parse(source.New(name, []byte(text)))
	require.Empty(t, faults)
	is, faults := tree.Parse(source.New(name, laid))
	require.Empty(t, faults, "laid out:\n%s", laid)

	assert.Equal(t, said(was.Comments), said(is.Comments), "comments of %s", name)
	first, second := model.Amounts(was), model.Amounts(is)
	require.Equal(t, len(first), len(second), "amounts of %s", name)
	meant := map[string]string{}
	for i, amount := range first {
		assert.True(t, quantity.Alike(amount.Amount, second[i].Amount), "%q and %q", amount.Text.Text, second[i].Text.Text)
		assert.Equal(t, amount.Problems, second[i].Problems)
		if amount.Text.Text != second[i].Text.Text {
			meant[amount.Text.Text] = second[i].Text.Text
			spelled++
		}
	}
	assert.Empty(t, unlike(valueOf(was.Root), valueOf(is.Root), meant), "the tree of %s", name)
	var old, new map[string]any
	if _, err := toml.Decode(before, &old); err == nil {
		_, err = toml.Decode(string(laid), &new)
		require.NoError(t, err, "laid out:\n%s", laid)
		assert.Empty(t, unlike(old, new, meant), "data of %s", name)
	}

	again, faults := File(source.New(name, laid))
	require.Empty(t, faults)
	assert.Equal(t, string(laid), string(again), "a second run")
	return string(laid), spelled
}

func valueOf(table *tree.Table) map[string]any {
	out := map[string]any{}
	for i, entry := range table.Entries {
		out[fmt.Sprintf("%d %s", i, entry.Key)] = inside(entry.Value) // the order as well
	}
	return out
}

func inside(value *tree.Value) any {
	switch value.Kind {
	case tree.TableKind:
		return valueOf(value.Table)
	case tree.ArrayKind, tree.TablesKind:
		out := []any{}
		for _, item := range value.Items {
			out = append(out, inside(item))
		}
		return out
	case tree.StringKind:
		return value.Text
	}
	return fmt.Sprintf("%d: %s", value.Kind, value.Text) // as it is spelled
}

// unlike tells where two decoded values differ, but for amounts that are spelled otherwise;
// empty where they do not.
func unlike(a, b any, meant map[string]string) string {
	switch a := a.(type) {
	case map[string]any:
		b, ok := b.(map[string]any)
		if !ok || len(a) != len(b) {
			return fmt.Sprintf("%v is %v", a, b)
		}
		for key, inner := range a {
			other, ok := b[key]
			if !ok {
				return fmt.Sprintf("%q is lost", key)
			}
			if found := unlike(inner, other, meant); found != "" {
				return key + ": " + found
			}
		}
		return ""
	case []map[string]any:
		b, ok := b.([]map[string]any)
		if !ok || len(a) != len(b) {
			return fmt.Sprintf("%v is %v", a, b)
		}
		for i := range a {
			if found := unlike(a[i], b[i], meant); found != "" {
				return found
			}
		}
		return ""
	case []any:
		b, ok := b.([]any)
		if !ok || len(a) != len(b) {
			return fmt.Sprintf("%v is %v", a, b)
		}
		for i := range a {
			if found := unlike(a[i], b[i], meant); found != "" {
				return found
			}
		}
		return ""
	case string:
		if b, ok := b.(string); ok && (a == b || meant[a] == b && b != "") {
			return ""
		}
	}
	if one, other := fmt.Sprintf("%#v", a), fmt.Sprintf("%#v", b); one != other {
		return one + " is " + other
	}
	return ""
}

// said is what comments say, without the blanks behind the # and at the end.
func said(comments []tree.Comment) []string {
	var out []string
	for _, one := range comments {
		text := strings.TrimRight(one.Text, " \t")
		if rest, found := strings.CutPrefix(text, "# "); found && !strings.HasPrefix(rest, " ") {
			text = "#" + rest
		}
		out = append(out, text)
	}
	return out
}

// The TOML project's own corpus, and every file of this project that has no fault of the syntax.
func TestNothingIsLost(t *testing.T) {
	files := corpus(t)
	assert.Greater(t, len(files), 150)
	for name, text := range own(t, "procedures", "testdata", "templates") {
		if _, faults := tree.Parse(source.New(name, []byte(text))); len(faults) == 0 {
			files[name] = text
		}
	}
	assert.Greater(t, len(files), 500)
	for name, text := range files {
		t.Run(name, func(t *testing.T) {
			out, _ := kept(t, name, text)
			windows, _ := kept(t, name, "\uFEFF"+strings.ReplaceAll(string(plain([]byte(text))), "\n", "\r\n"))
			assert.Equal(t, out, windows)
		})
	}
}

// Files of the shop whose amounts and layout somebody has made rough come out as they were.
func TestRoughFilesComeOutAsTheyWere(t *testing.T) {
	rough := [][2]string{
		{`(?m)^(\S+ = ")([\d.]+) to ([\d.]+) N·m"`, `${1}${2}-${3}Nm"`}, {`(?m)^(\S+ = )"([\d.]+) to ([\d.]+) lbf·ft`, `${1}"from $2 to $3 ft-lbs`},
		{`(?m)^(\S+ = ")max ([\d.]+) (mm|bar)"`, `${1}≤ ${2}${3}"`}, {`(?m)^(\S+ = ")([\d.]+) L"`, `${1}${2} litres"`}, {`(?m)^(\S+ = ")([\d.]+) h"`, `${1}${2}hrs"`},
		{`(?m)^(\S+) = `, `  ${1}=`}, {`"\]`, `",   ]`}, {`\n\n`, "\n\t\n\n\n"}, {`(?m)^\[([a-z-]+)\.`, `[ "$1" . `}, {` # `, " #"},
	}
	spelled := 0
	for name, text := range own(t, "procedures") {
		if strings.HasSuffix(name, "service-book.toml") {
			continue
		}
		worse := text
		for _, one := range rough {
			worse = regexp.MustCompile(one[0]).ReplaceAllString(worse, one[1])
		}
		require.NotEqual(t, text, worse, name)
		out, n := kept(t, name, worse)
		spelled += n
		assert.Equal(t, text, out, name)
	}
	assert.Greater(t, spelled, 120, "amounts that are spelled otherwise")
}

// The files that show how one writes are tidy themselves.
func TestWhatShowsHowOneWritesIsTidy(t *testing.T) {
	for name, text := range own(t, "procedures", "templates/scaffold") {
		if strings.HasSuffix(name, "service-book.toml") { // it has one form of its own, and is only ever added to
			continue
		}
		out, faults := File(source.New(name, []byte(text)))
		assert.Empty(t, faults)
		assert.Equal(t, text, string(out), name)
	}
}

// A file with a fault of the syntax comes back byte for byte, with its faults.
func TestAFaultLeavesTheFile(t *testing.T) {
	faulty := 0
	for name, text := range own(t, "testdata/broken") {
		_, want := tree.Parse(source.New(name, []byte(text)))
		if len(want) == 0 {
			continue
		}
		faulty++
		out, faults := File(source.New(name, []byte(text)))
		assert.Len(t, faults, len(want))
		assert.Equal(t, text, string(out), name)
	}
	assert.Greater(t, faulty, 15)
}

func FuzzFile(f *testing.F) {
	for _, text := range corpus(f) {
		f.Add(text)
	}
	for _, text := range own(f, "testdata/clean") {
		f.Add(text)
	}
	for _, c := range cases {
		f.Add(c.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		out, faults := File(source.New("fuzz.toml", []byte(text)))
		if len(faults) > 0 {
			assert.Equal(t, text, string(out))
			return
		}
		kept(t, "fuzz.toml", text)
	})
}

// BenchmarkFile lays the machines and procedures of the shop out; a bare decode of the same
// texts by BurntSushi/toml in the same run is the floor.
func BenchmarkFile(b *testing.B) {
	files := own(b, "procedures")
	size := 0
	for name, text := range files {
		if strings.HasSuffix(name, "service-book.toml") {
			delete(files, name)
			continue
		}
		size += len(text)
	}
	names := make([]string, 0, len(files))
	for name := range files {
		names = append(names, name)
	}
	slices.Sort(names)
	var ours, floor time.Duration
	for b.Loop() {
		for _, name := range names {
			start := time.Now()
			_, faults := File(source.New(name, []byte(files[name])))
			ours += time.Since(start)
			require.Empty(b, faults)
			start = time.Now()
			var decoded map[string]any
			_, err := toml.Decode(files[name], &decoded)
			floor += time.Since(start)
			require.NoError(b, err)
		}
	}
	b.ReportMetric(float64(size)*float64(b.N)/1e6/ours.Seconds(), "MB/s")
	b.ReportMetric(float64(ours)/float64(floor), "×BurntSushi")
}
