package pattern

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// forms are all expressions that the compiler writes out, and some that are harder.
func forms(t *testing.T) []string {
	out := []string{
		`(?i)ski`, `(?i)[sk]oil`, `a?b?cd`, `(?:ab|c)`, `x{2,3}yz`, `^`, `a*`, `(?i)\bno\b`, `[a-z]{2}`, `µm|km`, `(?s).`, `\x{17f}ea`, `(?i)mass|kelvin`, `ab.*?cdef`, `(?:a|b|)cd`, `a\nb`,
	}
	require.NoError(t, filepath.WalkDir("..", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(path, ".go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(node ast.Node) bool {
			call, is := node.(*ast.CallExpr)
			if !is || len(call.Args) != 1 {
				return true
			}
			name, is := call.Fun.(*ast.SelectorExpr)
			literal, plain := call.Args[0].(*ast.BasicLit)
			if is && plain && name.Sel.Name == "MustCompile" {
				form, err := strconv.Unquote(literal.Value)
				require.NoError(t, err)
				out = append(out, form)
			}
			return true
		})
		return nil
	}))
	return out
}

// A pattern finds in any text what the regular expression finds.
func TestAPatternFindsWhatTheExpressionFinds(t *testing.T) {
	dice := rand.New(rand.NewPCG(3, 9))
	all := forms(t)
	require.Greater(t, len(all), 150)
	var words []string
	for _, form := range all {
		words = append(words, regexp.MustCompile(`[\p{L}]+|\d+`).FindAllString(form, -1)...)
	}
	var texts []string
	paths, err := filepath.Glob("../../../procedures/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, path := range paths {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		texts = append(texts, strings.Split(string(text), "\n")...)
	}
	between := []string{" ", " ", " ", "", "-", ". ", ", ", " the ", " it ", "s ", "ed ", "\n", " – ", "\u00a0", "s\u017f", "\u212a"}
	for range 1000 {
		var text string
		for range 1 + dice.IntN(7) {
			word := words[dice.IntN(len(words))]
			switch dice.IntN(4) {
			case 0:
				word = strings.ToUpper(word)
			case 1:
				word = strings.NewReplacer("s", "\u017f", "k", "\u212a").Replace(word)
			}
			text += word + between[dice.IntN(len(between))]
		}
		texts = append(texts, text)
	}
	texts = append(texts, "", "a", "\u017f", "\u212a", "k", "x\u212a")
	found, spared := 0, 0
	for _, form := range all {
		plain, quick := regexp.MustCompile(form), MustCompile(form)
		for _, text := range texts {
			want := plain.FindStringSubmatchIndex(text)
			if len(want) > 0 {
				found++
			}
			if !quick.May(text) {
				spared++
				require.Empty(t, want, "%q in %q, which must hold one of %q", form, text, quick.must)
				continue
			}
			require.Equal(t, want, quick.FindStringSubmatchIndex(text), "%q in %q", form, text)
		}
	}
	assert.Greater(t, found, 1000)
	assert.Greater(t, spared, len(all)*len(texts)/2, "most are not tried")
}

// What must stand in what an expression finds is told as long as can be.
func TestWhatMustStandThere(t *testing.T) {
	for form, want := range map[string][]string{
		`(?i)\bWheels?\b`:                  {"wheel"},
		`\b(?:axles?|hubs?)\b`:             {"axle", "hub"},
		`(?i)\b(?:lift|take)\b.*\bguards?`: {"guard"},
		`gr[ae]y`:                          {"gray", "grey"},
		`\d+ mm`:                           {" mm"},
		`(?i)\bno\b.* |x`:                  nil,
		`\p{Lu}{2,}`:                       nil,
		`(?:bolt|.)`:                       nil,
	} {
		assert.Equal(t, want, required(form), form)
	}
}
