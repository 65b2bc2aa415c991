package desk

import (
	"context"
	"encoding/json"
	"io"
	"net/http"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

const oil = "log-deck-gearbox-oil.toml"

func (p page) check(in checking) checkTold {
	p.Helper()
	body, err := json.Marshal(in)
	require.NoError(p, err)
	answer, err := p.client.Post(p.address("api/check"), "application/json", strings.NewReader(string(body)))
	require.NoError(p, err)
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	require.NoError(p, err)
	require.Equal(p, http.StatusOK, answer.StatusCode, string(text))
	var out checkTold
	require.NoError(p, json.Unmarshal(text, &out))
	return out
}

func TestUnsavedTextCountsForFindingsAndPages(t *testing.T) {
	at := demonstration(t)
	p := visited(t, at)
	text := onDisk(t, at, oil)
	before := p.check(checking{asked: asked{Path: oil}})
	require.NotNil(t, before.View)
	assert.Equal(t, []string{"six-metre", "nine-metre"}, before.Variants)
	assert.False(t, before.View.Blocked)

	mine := strings.Replace(text, `hands-on = "40 min"`, `hands-on = "40"`, 1)
	after := p.check(checking{asked: asked{Path: oil, Unsaved: map[string]string{oil: mine}}, Variant: "nine-metre", Open: map[string]string{oil: digest([]byte(text))}})
	require.NotEmpty(t, after.Findings)
	found := after.Findings[0]
	assert.Equal(t, "error", found.Severity)
	line := strings.Count(mine[:strings.Index(mine, "hands-on")], "\n")
	assert.Equal(t, line, found.From.Line)
	require.NotNil(t, after.View)
	assert.True(t, after.View.Blocked, "its page is drawn all the same")
	assert.Equal(t, "nine-metre", after.View.Variant)
	assert.Empty(t, after.Changed)
	assert.Equal(t, text, onDisk(t, at, oil), "nothing was written")

	// A machine that is not saved counts for the procedures that use it.
	machine := strings.Replace(onDisk(t, at, "machines/log-deck.toml"), `title = "Log-deck conveyor"`, `title = "Deck of my own"`, 1)
	other := p.check(checking{asked: asked{Path: oil, Unsaved: map[string]string{"machines/log-deck.toml": machine}}})
	assert.Equal(t, "Deck of my own", other.View.Machine)

	put(t, at, oil, text+"# later\n")
	told := p.check(checking{asked: asked{Path: oil}, Open: map[string]string{oil: digest([]byte(text))}})
	assert.Equal(t, []string{oil}, told.Changed)
}

func TestACheckOfAllTellsOfEveryFile(t *testing.T) {
	at := demonstration(t)
	p := visited(t, at)
	broken := strings.Replace(onDisk(t, at, oil), "[[step]]", "[[step]", 1)
	all := p.check(checking{asked: asked{Path: oil, All: true, Unsaved: map[string]string{oil: broken, "new.toml": ""}}})
	paths := map[string]int{}
	for _, found := range all.Findings {
		paths[found.Path]++
	}
	assert.NotZero(t, paths[oil])
	assert.NotZero(t, paths["new.toml"])
	assert.Nil(t, all.View, "no page of a text that cannot be read")
	kinds := map[string]string{}
	for _, file := range all.Files {
		kinds[file.Path] = file.Kind
	}
	assert.Equal(t, "procedure", kinds[oil], "it stays a procedure while its text cannot be read")
	assert.Equal(t, "machine", kinds["machines/log-deck.toml"])
}

func TestPrintsComeOutOfTheTextAtHand(t *testing.T) {
	at := demonstration(t)
	p := visited(t, at)
	send := func(in printing) (int, string, []byte) {
		t.Helper()
		body, err := json.Marshal(in)
		require.NoError(t, err)
		answer, err := p.client.Post(p.address("api/print"), "application/json", strings.NewReader(string(body)))
		require.NoError(t, err)
		defer answer.Body.Close()
		text, err := io.ReadAll(answer.Body)
		require.NoError(t, err)
		return answer.StatusCode, answer.Header.Get("Content-Disposition"), text
	}
	for _, one := range []struct{ kind, name, begins string }{
		{"card", "log-deck-gearbox-oil-nine-metre.pdf", "%PDF-"}, {"pick", "log-deck-gearbox-oil-pick-list.pdf", "%PDF-"},
		{"pick-csv", "log-deck-gearbox-oil-pick-list.csv", ""}, {"approval", "log-deck-gearbox-oil-nine-metre-approval.pdf", "%PDF-"},
	} {
		status, name, text := send(printing{asked: asked{Path: oil}, Kind: one.kind, Variant: "nine-metre"})
		assert.Equal(t, 200, status, one.kind)
		assert.Contains(t, name, one.name)
		assert.True(t, strings.HasPrefix(string(text), one.begins) && len(text) > 100, one.kind)
	}
	broken := map[string]string{oil: strings.Replace(onDisk(t, at, oil), `hands-on = "40 min"`, `hands-on = "40"`, 1)}
	status, _, text := send(printing{asked: asked{Path: oil, Unsaved: broken}, Kind: "card"})
	assert.Equal(t, 409, status)
	assert.Contains(t, string(text), "error")
	status, _, _ = send(printing{asked: asked{Path: oil}, Kind: "shirt"})
	assert.Equal(t, 400, status)
}

// slow is a checker that can be held.
type slow struct {
	began, go_ chan struct{}
	count      atomic.Int32
}

func (s *slow) Check(in compiler.Input) *compiler.Result {
	s.count.Add(1)
	s.began <- struct{}{}
	<-s.go_
	return compiler.Compile(in)
}

// One compile runs at a time; of those that wait, what nobody waits for any more is not done.
func TestTheNewestTextWins(t *testing.T) {
	at := empty(t)
	put(t, at, "oil.toml", "benchleaf = 1\n")
	d, err := Open(folder(at), 0)
	require.NoError(t, err)
	defer d.Close()
	s := &slow{began: make(chan struct{}), go_: make(chan struct{})}
	d.check = s
	type end struct {
		text string
		err  error
	}
	ends := make(chan end, 4)
	run := func(ctx context.Context, text string) {
		err := d.compile(ctx, asked{Path: "oil.toml", Unsaved: map[string]string{"oil.toml": text}}, func(c compiled) error {
			ends <- end{string(c.result.Text("oil.toml").Text), nil}
			return nil
		})
		if err != nil {
			ends <- end{text, err}
		}
	}
	first, giveUp := context.WithCancel(t.Context())
	second, giveUpToo := context.WithCancel(t.Context())
	go run(first, "a")
	<-s.began
	go run(second, "b")
	giveUpToo()
	got := <-ends
	assert.Equal(t, "b", got.text)
	assert.ErrorIs(t, got.err, context.Canceled, "it gave up while it waited")
	giveUp()
	go run(t.Context(), "c")
	s.go_ <- struct{}{}
	assert.ErrorIs(t, (<-ends).err, context.Canceled, "nobody wants what was begun before")
	<-s.began
	s.go_ <- struct{}{}
	assert.Equal(t, end{"c", nil}, <-ends)
	assert.EqualValues(t, 2, s.count.Load())
	run(t.Context(), "c")
	assert.Equal(t, end{"c", nil}, <-ends)
	assert.EqualValues(t, 2, s.count.Load(), "the same text is not compiled again")
}

type torn struct{}

func (torn) Check(compiler.Input) *compiler.Result { panic("torn") }

func TestACrashIsToldAndTheNextRequestIsAnswered(t *testing.T) {
	at := empty(t)
	put(t, at, "oil.toml", "benchleaf = 1\n")
	p := visited(t, at)
	p.desk.check = torn{}
	status, answer := p.send("POST", "api/check", `{"path":"oil.toml"}`, nil)
	assert.Equal(t, 500, status)
	assert.Contains(t, answer["error"], "fault of benchleaf")
	p.desk.check = &session{}
	status, _ = p.send("POST", "api/check", `{"path":"oil.toml"}`, nil)
	assert.Equal(t, 200, status)
}

func TestTheLanguageIsTheTable(t *testing.T) {
	told := language()
	assert.Len(t, told.Tables, len(schema.Tables()))
	assert.Len(t, told.Verbs, len(schema.Verbs()))
	for _, verb := range told.Verbs {
		assert.NotEmpty(t, verb.Doc, verb.Key)
		for _, key := range verb.Takes {
			step, _ := schema.Find("step")
			_, known := step.Key(key)
			assert.True(t, known, "%s takes %s", verb.Key, key)
		}
	}
}

func TestWhatMayStandAtAPlace(t *testing.T) {
	at := demonstration(t)
	p := visited(t, at)
	ask := func(text string) map[string]completionTold {
		t.Helper()
		offset := strings.Index(text, "¦")
		require.GreaterOrEqual(t, offset, 0)
		before := text[:offset]
		text = before + strings.TrimPrefix(text[offset:], "¦")
		body, err := json.Marshal(pointing{asked{Path: oil, Unsaved: map[string]string{oil: text}}, spot{strings.Count(before, "\n"), len([]rune(before[strings.LastIndex(before, "\n")+1:]))}})
		require.NoError(t, err)
		answer, err := p.client.Post(p.address("api/complete"), "application/json", strings.NewReader(string(body)))
		require.NoError(t, err)
		defer answer.Body.Close()
		var list []completionTold
		require.NoError(t, json.NewDecoder(answer.Body).Decode(&list))
		out := map[string]completionTold{}
		for _, one := range list {
			out[one.Label] = one
		}
		return out
	}
	text := onDisk(t, at, oil)
	keys := ask(text + "\n[[step]]\nrem¦")
	assert.Equal(t, "verb", keys["remove"].Kind)
	assert.Contains(t, keys["remove"].Doc, "needs: what hides it is off")
	assert.Equal(t, 3, keys["remove"].To.Character-keys["remove"].From.Character)
	names := ask(text + "\n[[step]]\nremove = \"¦\"")
	assert.Equal(t, "name", names["drain-plug"].Kind)
	assert.NotContains(t, names, "mains", "an energy is not removed")
	assert.NotContains(t, ask(text+"\n[[step]]\nremove = \"x\"\n¦"), "remove", "it is there already")
	words := ask(strings.Replace(text, `wear = ["`, `wear = ["¦`, 1))
	assert.Contains(t, words, "helmet")
	assert.NotContains(t, words, "gloves", "they are there already")
	assert.Contains(t, ask(text+"\n[¦"), "[[step]]")
	assert.Empty(t, ask(text+"\n# ¦"))
}

func TestHoverTellsWhatAWordMeans(t *testing.T) {
	at := demonstration(t)
	p := visited(t, at)
	text := onDisk(t, at, oil)
	line := strings.Count(text[:strings.Index(text, `isolate = "mains"`)], "\n")
	ask := func(character int) map[string]any {
		body, err := json.Marshal(pointing{asked{Path: oil}, spot{line, character}})
		require.NoError(t, err)
		_, out := p.send("POST", "api/hover", string(body), nil)
		return out
	}
	assert.Contains(t, ask(2)["text"], "Cut a source of energy off and lock it.")
	assert.Contains(t, ask(13)["text"], "mains – energy of Log-deck conveyor")
	assert.Empty(t, ask(8)["text"])
}

func TestPlacesGoThereAndBack(t *testing.T) {
	for _, text := range []string{"", "a", "é𝄞x\r\nzweite\n\n", "\n\n𝄞"} {
		file := source.New("a.toml", []byte(text))
		for offset := range text {
			assert.Equal(t, offset, offsetOf(file, spotOf(file, offset)), "%q at %d", text, offset)
		}
	}
	file := source.New("a.toml", []byte("ab\ncd"))
	assert.Equal(t, 2, offsetOf(file, spot{0, 99}))
	assert.Equal(t, 5, offsetOf(file, spot{99, 0}))
	assert.Equal(t, 5, offsetOf(file, spot{1, 99}))
}

func TestTheDeskStopsWhenItIsTold(t *testing.T) {
	d, err := Open(folder(empty(t)), 0)
	require.NoError(t, err)
	until, stop := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() { ended <- d.Serve(until) }()
	answer, err := http.Get(d.Address())
	require.NoError(t, err)
	answer.Body.Close()
	stop()
	select {
	case err := <-ended:
		assert.NoError(t, err)
	case <-time.After(10 * time.Second):
		t.Fatal("it goes on")
	}
	_, err = Open(folder("/no/such/folder"), 0)
	assert.Error(t, err)
}
