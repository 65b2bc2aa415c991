package compose

import (
	"strings"
	"testing"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/trade"
	"benchleaf/compiler/internal/tree"
	"benchleaf/schema"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// speaking is a writer of an empty job in a language.
func speaking(t *testing.T, language string) *writer {
	t.Helper()
	words, err := plan.LoadWords(language)
	require.NoError(t, err)
	return &writer{job: &model.Job{File: &model.File{}}, system: quantity.Both, words: words}
}

func written(words string) model.Text {
	return model.Text{Text: words, Value: &tree.Value{Kind: tree.StringKind, Text: words}}
}

// doing is a step with a verb on things in the author's words.
func doing(t *testing.T, verb string, things ...string) *model.Step {
	t.Helper()
	known, ok := schema.FindVerb(verb)
	require.True(t, ok, verb)
	step := &model.Step{Verb: known}
	for _, thing := range things {
		step.Objects = append(step.Objects, model.Object{Kind: "words", Text: written(thing)})
	}
	return step
}

func sentenceSaid(w *writer, step *model.Step) string {
	out := ""
	for _, run := range w.action(step) {
		if run.Bold {
			out += "[" + run.Text + "]"
		} else {
			out += run.Text
		}
	}
	return out
}

func TestSentencesOfEachLanguage(t *testing.T) {
	for _, c := range []struct {
		language, verb, until string
		things                []string
		want                  string
	}{
		{"en", "remove", "", []string{"chain guard"}, "[Remove] the chain guard."},
		{"en", "remove", "", []string{"all four clips"}, "[Remove] all four clips."},
		{"en", "remove", "", []string{"lid", "seal"}, "[Remove] the lid and the seal."},
		{"en", "wait", "the oil only drips", nil, "[Wait] until the oil only drips."},
		{"en", "drain", "The oil only drips.", []string{"gearbox"}, "[Drain] the gearbox until the oil only drips."},
		{"de", "remove", "", []string{"Kettenschutz"}, "Kettenschutz [abbauen]."},
		{"de", "remove", "", []string{"alle vier Klammern"}, "Alle vier Klammern [abbauen]."},
		{"de", "remove", "", []string{"Deckel", "Dichtung", "Sieb"}, "Deckel, Dichtung und Sieb [abbauen]."},
		{"de", "drain", "Öl nur noch tropft.", []string{"Getriebe"}, "Getriebe [ablassen], bis Öl nur noch tropft."},
		{"de", "wait", "Öl nur noch tropft", nil, "[Warten], bis Öl nur noch tropft."},
		{"fr", "remove", "", []string{"Écrou de blocage"}, "[Déposer\u00a0:] écrou de blocage."},
		{"fr", "remove", "", []string{"couvercle", "joint"}, "[Déposer\u00a0:] couvercle et joint."},
		{"fr", "wait", "L’huile ne coule plus.", nil, "[Attendre] jusqu’à\u00a0: l’huile ne coule plus."},
		{"es", "remove", "", []string{"Protector de cadena"}, "[Desmontar:] protector de cadena."},
		{"es", "fill", "el aceite llega a la marca", []string{"reductor"}, "[Llenar:] reductor hasta: el aceite llega a la marca."},
	} {
		step := doing(t, c.verb, c.things...)
		if c.until != "" {
			step.Until = written(c.until)
		}
		assert.Equal(t, c.want, sentenceSaid(speaking(t, c.language), step))
	}
}

// What its author writes between two ** is no verb.
func TestOnlyTheVerbIsBold(t *testing.T) {
	for _, language := range plan.Languages() {
		for _, verb := range schema.Verbs() {
			said := sentenceSaid(speaking(t, language), doing(t, verb.Key, "x **y** z"))
			assert.Equal(t, 1, strings.Count(said, "["), "%s: %s", language, said)
			assert.True(t, strings.HasSuffix(said, "."), "%s: %s", language, said)
			assert.NotContains(t, said, "{", "%s: %s", language, said)
		}
	}
}

// What can happen, will, where the message is a DANGER.
func TestABuiltInMessageSpeaksTheLanguageAtEachLevel(t *testing.T) {
	job := &model.Job{File: &model.File{}}
	for _, language := range plan.Languages() {
		w := speaking(t, language)
		for _, hazard := range trade.Hazards() {
			message := job.Caution(hazard.Key)
			require.NotNil(t, message, hazard.Key)
			usual := w.caution(message)
			worst := usual
			if hazard.Worst != hazard.Level {
				worst = w.caution(message.Raised(hazard.Worst))
			}
			name := language + " " + hazard.Key
			assert.NotEmpty(t, usual.Hazard, name)
			assert.NotEmpty(t, worst.Avoid, name)
			assert.Equal(t, w.words.Signals[hazard.Worst.String()], worst.Word, name)
			rises := hazard.Worst == trade.Danger && hazard.Level != trade.Danger
			assert.Equal(t, rises, usual.Consequence != worst.Consequence, "%s: %s", name, worst.Consequence)
			if language != "en" {
				assert.NotEqual(t, hazard.Hazard, usual.Hazard, name)
				assert.Equal(t, w.words.Hazards[hazard.Key].Avoid, worst.Avoid, name)
			}
		}
	}
}

func TestTheSecondLanguageOfASignalPanel(t *testing.T) {
	w := speaking(t, "de")
	english := speaking(t, "en").words
	w.second = &english
	assert.Equal(t, plan.Second{Language: "en", Word: "CAUTION", Hazard: "Hot parts and fluids"}, w.caution(w.job.Caution("hot")).Second)
	own := &model.Caution{Thing: model.Thing{Name: "hot", File: &model.File{}}, Signal: written("warning"), Hazard: written("Heißes Öl."), Consequence: written("Es verbrüht"), Avoid: written("Warten")}
	assert.Equal(t, plan.Second{Language: "en", Word: "WARNING"}, w.caution(own).Second)
	assert.Equal(t, "Heißes Öl", w.caution(own).Hazard)
	own.SecondHazard = written("Hot oil")
	assert.Equal(t, "Hot oil", w.caution(own).Second.Hazard)
	w.second = nil
	assert.Empty(t, w.caution(own).Second)
}
