package compiler_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

var (
	written = regexp.MustCompile(`([a-z-]+) = ("(?:[^"\\]|\\.)*"|\[(?:[^\]"]|"(?:[^"\\]|\\.)*")*\])`)
	between = regexp.MustCompile(`"(?:[^"\\]|\\.)*"`)
	letters = regexp.MustCompile(`\d[\d./-]*(?:\s|·)*[\pL°·]*|\pL+`)
	prose   = strings.Fields("title say expect outside until keep how isolate prove restore relieve notes start end summary hazard consequence avoid reason by-hand stage no-isolation no-close who when local fitting where")
)

// abroad rewrites a file in a language no rule reads: the author's words letter by letter
// another, figures with their units, short words, marks in capitals and names as they are.
func abroad(text string) string {
	say := func(quoted string) string {
		return letters.ReplaceAllStringFunc(quoted, func(word string) string {
			if len(word) < 3 || unicode.IsDigit(rune(word[0])) || word == strings.ToUpper(word) {
				return word
			}
			word, many := strings.CutSuffix(strings.NewReplacer("knives", "knifes", "Knives", "Knifes").Replace(word), "s")
			turned := strings.Map(func(r rune) rune {
				switch {
				case r >= 'a' && r <= 'z':
					return 'a' + (r-'a'+13)%26
				case r >= 'A' && r <= 'Z':
					return 'A' + (r-'A'+13)%26
				}
				return r
			}, word)
			if many {
				turned += "s"
			}
			return turned
		})
	}
	verbs := map[string]bool{}
	for _, verb := range schema.Verbs() {
		verbs[verb.Key] = true
	}
	keys := map[string]bool{}
	for _, key := range prose {
		keys[key] = true
	}
	var out []string
	for _, line := range strings.Split(text, "\n") {
		code, comment, _ := strings.Cut(line, "  #")
		code = written.ReplaceAllStringFunc(code, func(entry string) string {
			key, value, _ := strings.Cut(entry, " = ")
			if !keys[key] && !verbs[key] {
				return entry
			}
			return key + " = " + between.ReplaceAllStringFunc(value, func(quoted string) string {
				if verbs[key] && !strings.Contains(quoted, " ") { // a name
					return quoted
				}
				return say(quoted)
			})
		})
		if comment != "" {
			code += "  #" + comment
		}
		out = append(out, code)
	}
	return strings.Join(out, "\n")
}

// A shop in another language is not read as if it were in English: neither do its words
// imply anything, nor is anything missed that they may well say.
func TestAShopInAnotherLanguageRaisesNothing(t *testing.T) {
	var files []*source.File
	root := "../procedures"
	require.NoError(t, filepath.WalkDir(root, func(path string, entry os.DirEntry, err error) error {
		if err != nil || entry.IsDir() || filepath.Ext(path) != ".toml" || entry.Name() == compiler.Bookfile {
			return err
		}
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		name, _ := filepath.Rel(root, path)
		changed := abroad(string(text))
		if name == compiler.Shopfile {
			changed = strings.Replace(changed, "[shop]", "[shop]\nlanguage = \"de\"", 1)
		}
		files = append(files, source.New(filepath.ToSlash(name), []byte(changed)))
		return nil
	}))
	result := compiler.Compile(compiler.Input{Files: files})
	assert.Empty(t, result.Findings, describe(result.Findings))
	require.NotEmpty(t, result.Jobs)
	for _, job := range result.Jobs {
		assert.False(t, job.Blocked, job.Name)
	}
}

// sayable are the rules that hold a card back and that an author in another language answers
// with a key instead of words.
var sayable = map[string]string{"safety/no-stand": "[[step]] support = …", "safety/still-turning": "[[step]] wait = …"}

// What looks wrong and is right raises nothing in another language either, but for what
// its author may stand by or may say with a key.
func TestWhatIsRightHoldsNothingBackInAnotherLanguage(t *testing.T) {
	const folder = "../testdata/clean"
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	for _, entry := range entries {
		text, err := os.ReadFile(filepath.Join(folder, entry.Name()))
		require.NoError(t, err)
		if strings.Contains(string(text), "[shop]") {
			continue
		}
		for _, language := range []string{"de", "fr", "es"} {
			changed := abroad(string(text)) + "\n[shop]\ntitle = \"X\"\nlanguage = \"" + language + "\"\n"
			result := compiler.Compile(compiler.Input{Files: []*source.File{source.New(entry.Name(), []byte(changed))}})
			for _, one := range result.Findings {
				if sayable[one.Rule] == "" {
					assert.False(t, one.Holds() || one.Firm, "%s in %s: %s: %s", entry.Name(), language, one.Rule, one.Summary)
				}
			}
		}
	}
}

// A guard that is named at the end may well be on again there; only the next card lets it stay off.
func TestAGuardIsNotExcusedByItsNameInAnotherLanguage(t *testing.T) {
	text, err := os.ReadFile("../testdata/clean/words-of-german-that-look-like-english.toml")
	require.NoError(t, err)
	off := strings.Replace(string(text), "[[step]]\nrefit = \"kettenschutz\"\n", "", 1)
	require.NotEqual(t, string(text), off)
	held := func(end string) bool {
		said := strings.Replace(off, "\n[[prepare]]", "end = [\""+end+"\"]\n\n[[prepare]]", 1)
		result := compiler.Compile(compiler.Input{Files: []*source.File{source.New("job.toml", []byte(said))}})
		found := false
		for _, one := range result.Findings {
			found = found || one.Rule == "sequence/not-put-back" && one.Holds()
		}
		return found
	}
	assert.True(t, held("Der Kettenschutz ist montiert."))
	assert.False(t, held("Weiter mit der nächsten Karte."))
}
