package html_test

import (
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"benchleaf/compiler/internal/emit/html"
	"benchleaf/compiler/internal/pages/pagestest"
	"benchleaf/compiler/internal/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// figures are drawings of the sample card, as small as can be.
var figures = map[string][]byte{"map": dot, "photo-8": dot, "level-14": dot, "circle-16": dot, "W017": dot}

var dot = []byte(`<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="30mm" viewBox="0 0 60 30"><circle cx="9" cy="9" r="5"/></svg>`)

func drawn(t *testing.T, card plan.Card) string {
	t.Helper()
	page, err := html.Draw(card, figures)
	require.NoError(t, err)
	again, err := html.Draw(card, figures)
	require.NoError(t, err)
	require.Equal(t, string(page), string(again), "the same card gives the same bytes")
	return string(page)
}

// raw is what stands between the tags of scripts and styles.
var raw = regexp.MustCompile(`(?s)(<(script|style)[^>]*>)(.*?)(</(?:script|style)>)`)

// elements reads the page as XML, which is stricter than what a browser asks for.
func elements(t *testing.T, page string) []xml.StartElement {
	t.Helper()
	reader := xml.NewDecoder(strings.NewReader(raw.ReplaceAllString(page, "$1$4")))
	var out []xml.StartElement
	for {
		token, err := reader.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		require.NoError(t, err)
		if start, ok := token.(xml.StartElement); ok {
			out = append(out, start.Copy())
		}
	}
}

func attribute(element xml.StartElement, name string) string {
	for _, one := range element.Attr {
		if one.Name.Local == name {
			return one.Value
		}
	}
	return ""
}

func TestThePageIsWellFormed(t *testing.T) {
	known := map[string]bool{}
	all := elements(t, drawn(t, pagestest.Card()))
	for _, element := range all {
		if id := attribute(element, "id"); id != "" {
			assert.False(t, known[id], "two of %s", id)
			known[id] = true
		}
	}
	fields, levels := 0, []string{}
	for _, element := range all {
		for _, name := range []string{"for", "aria-labelledby", "aria-describedby", "data-to"} {
			for id := range strings.FieldsSeq(attribute(element, name)) {
				assert.True(t, known[id], "%s of %s names %q", name, element.Name.Local, id)
			}
		}
		if link := attribute(element, "href"); link != "" {
			assert.True(t, known[strings.TrimPrefix(link, "#")], "a link to %q", link)
		}
		if regexp.MustCompile(`^h[1-6]$`).MatchString(element.Name.Local) {
			levels = append(levels, element.Name.Local)
		}
		if element.Name.Local == "html" {
			assert.Equal(t, "en", attribute(element, "lang"))
		}
		if attribute(element, "data-what") != "" {
			fields++
		}
	}
	assert.Equal(t, 8, fields, "readings at the steps and the record")
	assert.Equal(t, "h1", levels[0])
	for i := 1; i < len(levels); i++ {
		assert.LessOrEqual(t, int(levels[i][1]), int(levels[i-1][1])+1, "heading %d skips a level", i)
	}
}

// The address of the vocabulary is the only one, and it is a name: nothing is fetched from it.
func TestThePageAsksForNothing(t *testing.T) {
	page := drawn(t, pagestest.Card())
	assert.Equal(t, []string{"https://schema.org"}, regexp.MustCompile(`(?i)\b(?:https?|ftp|wss?):[^"' ]*`).FindAllString(page, -1))
	for _, source := range regexp.MustCompile(` src=.{0,20}`).FindAllString(page, -1) {
		assert.True(t, strings.HasPrefix(source, ` src="data:image/`), source)
	}
	for _, asks := range []string{"url(", "@import", "fetch(", "XMLHttpRequest", "WebSocket", "sendBeacon", "import(", "<link", "<iframe", "<form", "eval(", "innerHTML"} {
		assert.NotContains(t, page, asks)
	}
	for _, element := range elements(t, page) {
		for _, one := range element.Attr {
			assert.False(t, strings.HasPrefix(one.Name.Local, "on") || one.Name.Local == "style", "%s of %s, which the policy forbids", one.Name.Local, element.Name.Local)
		}
	}
	policy := ""
	for _, element := range elements(t, page) {
		if attribute(element, "http-equiv") == "Content-Security-Policy" {
			policy = attribute(element, "content")
		}
	}
	assert.True(t, strings.HasPrefix(policy, "default-src 'none'; "), policy)
	runs := 0
	for _, part := range raw.FindAllStringSubmatch(page, -1) {
		if strings.Contains(part[1], "json") {
			assert.True(t, json.Valid([]byte(part[3])), part[1])
			continue
		}
		sum := sha256.Sum256([]byte(part[3]))
		assert.Contains(t, policy, part[2]+"-src 'sha256-"+base64.StdEncoding.EncodeToString(sum[:])+"'")
		runs++
	}
	assert.Equal(t, 2, runs, "one style and one script")
}

func TestWordsOfTheAuthorStayWords(t *testing.T) {
	hostile := `</script></style><img src=x onerror=alert(1)>"'&{{.}} ` + "\u2028"
	card := pagestest.Card()
	card.Title, card.Machine, card.Name, card.Manual = hostile, hostile, hostile, hostile
	card.Summary = []plan.Run{{Text: hostile, Code: true}}
	card.Cautions[0].Hazard, card.Tools[0].Name, card.Blanks[0].Label = hostile, hostile, hostile
	step := &card.Sections[1].Steps[6]
	step.Action, step.Otherwise.Text, step.Readings[0].Label, step.Readings[0].Limit = []plan.Run{{Text: hostile}}, hostile, hostile, hostile
	page := drawn(t, card)
	for _, element := range elements(t, page) {
		if element.Name.Local == "img" {
			assert.True(t, strings.HasPrefix(attribute(element, "src"), "data:image/"))
		}
		assert.Empty(t, attribute(element, "onerror"))
	}
	assert.Len(t, raw.FindAllString(page, -1), 4)
}

func TestAMessageStandsWholeBeforeItsStep(t *testing.T) {
	card := pagestest.Card()
	page := drawn(t, card)
	for _, section := range card.Sections {
		for _, step := range section.Steps {
			_, after, _ := strings.Cut(page, `id="step-`+strconv.Itoa(step.Number)+`"`)
			before, _, found := strings.Cut(after, `class="mark"`)
			require.True(t, found)
			for _, caution := range step.Cautions {
				for _, part := range []string{caution.Word, caution.Hazard, caution.Consequence, caution.Avoid} {
					assert.Contains(t, before, part, "step %d", step.Number)
				}
			}
			assert.NotContains(t, before, ` hidden="`)
		}
	}
	front, _, _ := strings.Cut(page, `id="steps"`)
	for _, caution := range card.Cautions {
		assert.Contains(t, front, caution.Hazard)
		if len(caution.Steps) == 0 || caution.Signal == "danger" {
			assert.Contains(t, front, caution.Avoid)
		}
	}
	assert.NotContains(t, page, "<details")
}

// vocabulary is what the page may say of itself: types with their properties, those of the
// types they are kinds of included (Thing, CreativeWork, ItemList, ListItem, HowToItem).
// Source: schema.org, HowTo, HowToSection, HowToStep, HowToDirection, HowToTip, HowToTool,
// HowToSupply and Person, read against the published type definitions in schema-dts 2.1.0.
var vocabulary = map[string]string{
	"HowTo":          "name description inLanguage version dateModified author tool supply step",
	"HowToSection":   "name position itemListElement",
	"HowToStep":      "position itemListElement",
	"HowToDirection": "text",
	"HowToTip":       "text",
	"HowToTool":      "name requiredQuantity",
	"HowToSupply":    "name requiredQuantity",
	"Person":         "name",
}

func TestTheHowToKeepsToTheVocabulary(t *testing.T) {
	page := drawn(t, pagestest.Card())
	_, text, _ := strings.Cut(page, `<script type="application/ld+json">`)
	text, _, _ = strings.Cut(text, "</script>")
	var whole map[string]any
	require.NoError(t, json.Unmarshal([]byte(text), &whole))
	assert.Equal(t, "https://schema.org", whole["@context"])
	seen := map[string]int{}
	var walk func(value any)
	walk = func(value any) {
		switch value := value.(type) {
		case []any:
			for _, one := range value {
				walk(one)
			}
		case map[string]any:
			kind, _ := value["@type"].(string)
			properties, known := vocabulary[kind]
			assert.True(t, known, "no type %q", kind)
			seen[kind]++
			for key, one := range value {
				if !strings.HasPrefix(key, "@") {
					assert.True(t, slices.Contains(strings.Fields(properties), key), "%s has no %s", kind, key)
				}
				walk(one)
			}
		}
	}
	walk(whole)
	assert.Equal(t, map[string]int{"HowTo": 1, "HowToSection": 3, "HowToStep": 18, "HowToDirection": 18, "HowToTip": 4, "HowToTool": 8, "HowToSupply": 5, "Person": 1}, seen)
}

// What is drawn is said in words too: WCAG 2.2, 1.1.1.
func TestEveryDrawingIsSaidInWords(t *testing.T) {
	card := pagestest.Card()
	card.Cautions[0].Signs = []string{"W001", "W017"}
	said := map[string]int{}
	for _, element := range elements(t, drawn(t, card)) {
		if element.Name.Local == "img" {
			said[attribute(element, "alt")]++
		}
	}
	assert.Equal(t, map[string]int{"Where things are · Log-deck conveyor": 1, "The plugs, seen from the walkway": 1, "Breather, Fill plug, Sight glass, Drain plug": 1, "1 3 2 4": 1, "W017 hot surface": 1}, said)
	page := drawn(t, card)
	for _, callout := range card.Map.Callouts {
		assert.Contains(t, page, ">"+strconv.Itoa(callout.Number)+"</span> <span>"+callout.Name)
	}
	assert.Contains(t, page, "Passes: 50\u00a0% (11.5 to 13.5 N·m), 100\u00a0% (23 to 27 N·m)")
}
