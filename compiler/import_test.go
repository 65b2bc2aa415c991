package compiler_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// allowed is what each package may import from the project. A package that is
// not here may not exist; what the table does not name is refused.
var allowed = map[string][]string{
	"cmd/internal/cache":                 {},
	"cmd/internal/disk":                  {},
	"compiler/internal/tree/treetest":    {},
	"cmd/internal/desk":                  {"cmd/internal/disk", "compiler", "compiler/finding", "compiler/source", "schema", "templates"},
	"cmd/internal/editor":                {"compiler", "compiler/finding", "compiler/source"},
	"cmd/benchreport":                    {},
	"cmd/benchleaf":                      {"cmd/internal/cache", "cmd/internal/desk", "cmd/internal/disk", "cmd/internal/editor", "compiler", "compiler/finding", "compiler/source", "schema", "templates"},
	"compiler":                           {"compiler/internal/due", "compiler/internal/emit/ical", "compiler/internal/entry", "compiler/internal/join", "compiler/internal/sequence", "compiler/internal/standing", "compiler/internal/store", "compiler/finding", "compiler/source", "compiler/internal/assist", "compiler/internal/compose", "compiler/internal/draft", "compiler/internal/emit/csv", "compiler/internal/emit/html", "compiler/internal/emit/json", "compiler/internal/emit/pdf", "compiler/internal/emit/sarif", "compiler/internal/emit/svg", "compiler/internal/export", "compiler/internal/hazard", "compiler/internal/needs", "compiler/internal/model", "compiler/internal/pages", "compiler/internal/picture", "compiler/internal/plan", "compiler/internal/quantity", "compiler/internal/rules", "compiler/internal/state", "compiler/internal/tidy"},
	"compiler/source":                    {},
	"compiler/finding":                   {"compiler/source"},
	"compiler/internal/tree":             {"compiler/internal/pattern", "compiler/source", "compiler/finding"},
	"compiler/internal/quantity":         {"compiler/internal/pattern"},
	"compiler/internal/trade":            {"compiler/internal/pattern"},
	"compiler/internal/pattern":          {},
	"compiler/internal/memo":             {},
	"compiler/internal/picture":          {},
	"compiler/internal/trend":            {},
	"compiler/internal/sequence":         {},
	"compiler/internal/model":            {"compiler/internal/pattern", "compiler/internal/memo", "schema", "compiler/source", "compiler/finding", "compiler/internal/tree", "compiler/internal/quantity", "compiler/internal/trade"},
	"compiler/internal/tidy":             {"compiler/source", "compiler/finding", "compiler/internal/model", "compiler/internal/tree"},
	"compiler/internal/draft":            {"schema", "compiler/internal/quantity", "compiler/internal/trade"},
	"compiler/internal/needs":            {"compiler/internal/memo", "compiler/internal/pattern", "compiler/source", "compiler/internal/model", "compiler/internal/quantity", "compiler/internal/trade"},
	"compiler/internal/hazard":           {"compiler/internal/memo", "compiler/internal/pattern", "compiler/source", "compiler/internal/model", "compiler/internal/trade"},
	"compiler/internal/state":            {"compiler/internal/pattern", "compiler/source", "compiler/internal/model", "compiler/internal/quantity"},
	"compiler/internal/rules":            {"compiler/internal/memo", "compiler/internal/pattern", "schema", "compiler/source", "compiler/finding", "compiler/internal/tree", "compiler/internal/model", "compiler/internal/needs", "compiler/internal/hazard", "compiler/internal/picture", "compiler/internal/state", "compiler/internal/store", "compiler/internal/quantity", "compiler/internal/trade"},
	"compiler/internal/join":             {"compiler/internal/pattern", "compiler/source", "compiler/internal/tree", "compiler/internal/model", "compiler/internal/needs", "compiler/internal/sequence", "compiler/internal/state"},
	"compiler/internal/assist":           {"compiler/internal/pattern", "schema", "compiler/source", "compiler/finding", "compiler/internal/tree", "compiler/internal/model", "compiler/internal/needs", "compiler/internal/state", "compiler/internal/quantity", "compiler/internal/trade"},
	"compiler/internal/store":            {"compiler/internal/due", "compiler/internal/entry", "compiler/internal/model", "compiler/internal/needs", "compiler/internal/quantity"},
	"compiler/internal/plan":             {"compiler/internal/picture", "templates"},
	"compiler/internal/compose":          {"compiler/internal/due", "compiler/internal/join", "compiler/internal/entry", "compiler/internal/store", "compiler/internal/standing", "compiler/internal/trend", "compiler/source", "compiler/finding", "compiler/internal/state", "compiler/internal/model", "compiler/internal/needs", "compiler/internal/hazard", "compiler/internal/picture", "compiler/internal/quantity", "compiler/internal/trade", "compiler/internal/plan"},
	"compiler/internal/pages":            {"compiler/internal/pattern", "compiler/internal/picture", "compiler/internal/plan", "templates"},
	"compiler/internal/pages/pagestest":  {"compiler/internal/pages", "compiler/internal/picture", "compiler/internal/plan"},
	"compiler/internal/emit/pdf":         {"compiler/internal/pages", "compiler/internal/picture"},
	"compiler/internal/emit/svg":         {"compiler/internal/pages"},
	"compiler/internal/emit/pdf/pdftest": {"compiler/internal/pages"},
	"compiler/internal/emit/csv":         {"compiler/internal/plan"},
	"compiler/internal/emit/html":        {"compiler/internal/entry", "compiler/internal/plan", "templates"},
	"compiler/internal/entry":            {"compiler/internal/pattern", "compiler/internal/plan", "compiler/internal/quantity"},
	"compiler/internal/export":           {"schema", "compiler/source", "compiler/internal/model", "compiler/internal/needs", "compiler/internal/hazard", "compiler/internal/state", "compiler/internal/quantity"},
	"compiler/internal/emit/json":        {"compiler/internal/draft", "compiler/internal/export", "compiler/internal/plan", "compiler/source", "compiler/finding"},
	"compiler/internal/emit/sarif":       {"compiler/source", "compiler/finding"},
	"compiler/internal/due":              {},
	"compiler/internal/emit/ical":        {"compiler/internal/due"},
	"compiler/internal/standing":         {"compiler/internal/due", "compiler/internal/entry", "compiler/internal/model", "compiler/internal/quantity"},
	"schema":                             {},
	"templates":                          {},
	"templates/browsertest":              {},
}

// world is what only the command may touch: the disk, the clock, the network, the environment.
var world = []string{"os", "os/exec", "net", "net/http", "syscall", "io/ioutil", "time", "path/filepath"}

// unworldly are packages of the compiler that may name one of these all the same, and why.
var unworldly = map[string][]string{
	"compiler/internal/tree":             {"time"}, // only to tell whether a day can be
	"compiler/internal/emit/pdf/pdftest": {"time"},
	"compiler/internal/emit/pdf":         {"time"}, // dates are values there; a test holds that the clock is not read
}

func TestImportsFlowOneWay(t *testing.T) {
	root := os.DirFS("..")
	seen := map[string]bool{}
	require.NoError(t, fs.WalkDir(root, ".", func(file string, entry fs.DirEntry, err error) error {
		if err == nil && entry.IsDir() && file != "." && strings.HasPrefix(entry.Name(), ".") {
			return fs.SkipDir // what checks the project is no part of it
		}
		if err != nil || entry.IsDir() || !strings.HasSuffix(file, ".go") || strings.HasSuffix(file, "_test.go") {
			return err
		}
		text, err := fs.ReadFile(root, file)
		require.NoError(t, err)
		parsed, err := parser.ParseFile(token.NewFileSet(), file, text, parser.ImportsOnly)
		require.NoError(t, err)
		folder := path.Dir(file)
		may, known := allowed[folder]
		assert.True(t, known, "%s is not in the table of imports", folder)
		seen[folder] = true
		for _, spec := range parsed.Imports {
			name, _ := strconv.Unquote(spec.Path.Value)
			inner, own := strings.CutPrefix(name, "benchleaf/")
			if own {
				assert.Contains(t, may, inner, "%s may not import it", folder)
			}
			if strings.HasPrefix(folder, "compiler") && slices.Contains(world, name) {
				assert.Contains(t, unworldly[folder], name, "%s is a function of values and may not import it", folder)
			}
		}
		return nil
	}))
	for folder := range allowed {
		assert.True(t, seen[folder], "%s is in the table of imports and does not exist", folder)
	}
}
