package desk

import (
	"strings"
	"testing"

	"benchleaf/templates/browsertest"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
)

const (
	press     = "benchleaf = 1\n\n[machine]\ntitle = \"Peat press\"\nmanual = \"Its own\"\n\n[energy.mains]\nkind = \"electric\"\nisolate = \"Q2 to OFF.\"\nprove = \"Press START.\"\nrestore = \"Q2 to ON.\"\n\n[cover.guard]\nguards = [\"mains\"]\nthread = \"M8\"\ntorque = \"22 N·m\"\n"
	pressWork = "benchleaf = 1\n\n[procedure]\ntitle = \"Look at the belt\"\nmachine = \"press\"\nrevision = \"A\"\ndate = 2026-02-14\nauthor = \"R. Aldous\"\nwho = \"Mechanic\"\nhands-on = \"5 min\"\nevery = \"50 h\"\ntools = []\nsupplies = []\nspares = []\nwear = []\ncautions = []\nno-isolation = \"Nothing is touched.\"\nno-close = \"Nothing is opened.\"\n\n[[step]]\nsay = \"Look at the belt.\"\n"
)

func pressShop(t *testing.T, machine string) string {
	t.Helper()
	at := empty(t)
	put(t, at, "shop.toml", "benchleaf = 1\nuse = [\"machines/*.toml\", \"tools.toml\"]\n\n[shop]\ntitle = \"Press shop\"\n")
	put(t, at, "tools.toml", "benchleaf = 1\n\n[tool.pan]\ntitle = \"Drain pan\"\nkind = \"container\"\nholds = \"8 L\"\n\n[tool.padlock]\nkind = \"lock\"\n")
	put(t, at, "machines/press.toml", machine)
	put(t, at, "belt.toml", pressWork)
	return at
}

// What holds a card back in another file is told where the findings are, and leads there.
func TestNothingIsCalledRightWhileACardIsHeldBack(t *testing.T) {
	for says, one := range map[string]struct{ machine, told, line string }{
		"an amount":         {strings.Replace(press, `"22 N·m"`, `"22 N·m (90 lbf·ft)"`, 1), "The card is held back.", `torque = "22 N·m (90 lbf·ft)"`},
		"a key not known":   {strings.Replace(press, "thread", "thred", 1), "The steps are not checked yet.", `thred = "M8"`},
		"a text not closed": {strings.Replace(press, `thread = "M8"`, `thread = "M8`, 1), "The steps are not checked yet.", `thread = "M8`},
	} {
		t.Run(says, func(t *testing.T) {
			w := opened(t, pressShop(t, one.machine), 1440, 900)
			w.Click(`.file[data-path="belt.toml"]`)
			w.finds(one.told)
			w.finds("machines/press.toml, line ")
			assert.NotContains(t, w.Text("#findings"), "Nothing is wrong")
			assert.NotEqual(t, "no findings", w.Text("#tally"))
			w.Soon("the page tells it too", `document.getElementById('held').textContent.includes('machines/press.toml, line ')`)
			for _, pattern := range []string{".holds .goto", "#held button"} {
				w.Soon("there is a way there", `document.querySelector(`+browsertest.Quoted(pattern)+`) !== null`)
				told[bool](w, `(document.querySelector(`+browsertest.Quoted(pattern)+`).click(), true)`)
				w.Soon("it goes there", `document.getElementById('where').textContent.startsWith('machines/press.toml') && document.querySelector('#editor .cm-activeLine').textContent === `+browsertest.Quoted(one.line))
				told[bool](w, `(document.querySelector('.file[data-path="belt.toml"]').click(), true)`)
				w.finds("machines/press.toml, line ")
			}
		})
	}
	w := opened(t, pressShop(t, press), 1440, 900)
	w.Click(`.file[data-path="belt.toml"]`)
	w.Soon("it is checked", `document.getElementById('tally').textContent !== '' && document.querySelector('.side img') !== null`)
	assert.Empty(t, told[[]string](w, `Array.from(document.querySelectorAll('.holds')).map((one) => one.textContent)`))
	w.at(`hands-on = "5 min`)
	w.keys(" x")
	w.Soon("an error of its own is among the findings, and the page leads to it", `document.querySelector('.finding.error') !== null && document.getElementById('held').textContent.includes('line 10')`)
	w.at("revision = ")
	w.keys("\n[[step\n")
	w.finds("The steps are not checked yet.")
}

// What was filled in is not thrown away by a key.
func TestAFormAsksBeforeItForgets(t *testing.T) {
	w := opened(t, pressShop(t, press), 1440, 900)
	w.Click("#new-procedure")
	w.Soon("the form is open", `document.getElementById('form').open`)
	w.fill("Title", "Something long")
	for _, leave := range []func(){func() { w.keys(kb.Escape) }, func() { w.named("Cancel") }} {
		leave()
		w.Soon("it asks", `document.getElementById('sure').open`)
		w.keys("\r")
		w.Soon("it goes on", `!document.getElementById('sure').open && document.getElementById('form').open`)
	}
	w.keys(kb.Escape)
	w.Soon("it asks", `document.getElementById('sure').open`)
	w.keys(kb.Escape)
	w.keys(kb.Escape)
	w.keys(kb.Escape)
	assert.True(t, told[bool](w, `document.getElementById('form').open`))
	w.Do(chromedp.Sleep(100_000_000))
	told[bool](w, `(document.getElementById('sure').open && document.querySelector('#sure button').click(), true)`)
	w.Do(chromedp.MouseClickXY(5, 450))
	assert.True(t, told[bool](w, `document.getElementById('form').open && document.querySelector('#form input').value === 'Something long'`), "a click beside it does nothing")
	w.named("Cancel")
	w.named("Throw it away")
	w.Soon("it is shut", `!document.getElementById('form').open`)
	w.Click("#new-machine")
	w.keys(kb.Escape)
	w.Soon("nothing was filled in", `!document.getElementById('form').open`)
}

// The forms know the shop before a file is open, and say what to do where a thing is not in it.
func TestANewProcedureKnowsTheShop(t *testing.T) {
	at := pressShop(t, press)
	w := opened(t, at, 1440, 900)
	w.Click("#new-procedure")
	w.Soon("the machine can be chosen", `Array.from(document.querySelectorAll('dialog option')).some((one) => one.value === 'press')`)
	assert.Contains(t, w.Text("#form"), "described first, with “New machine”")
	told[bool](w, `(document.querySelector('#form input[value=padlock]').click(), true)`)
	told[bool](w, `((field) => { field.value = 'oil-pump  funnel'; field.dispatchEvent(new Event('input', { bubbles: true })); return true; })(document.querySelector('#form input[value=padlock]').closest('.field').querySelector('.others input'))`)
	w.Soon("it is written with the others", `document.querySelector('#form pre').textContent.includes('tools = ["padlock", "oil-pump", "funnel"]')`)
	w.keys(kb.Escape)
	w.named("Throw it away")

	w.Click(`.file[data-path="belt.toml"]`)
	w.Soon("it is open", `document.querySelectorAll('.side img').length > 0`)
	w.Click("#new-procedure")
	w.Soon("and also when one is open", `Array.from(document.querySelectorAll('dialog option')).some((one) => one.value === 'press')`)
	w.keys(kb.Escape)
	w.Click("#add-step")
	w.Soon("the form is open", `document.getElementById('form').open`)
	told[bool](w, `((verb) => { verb.value = 'drain'; return verb.dispatchEvent(new Event('change', { bubbles: true })); })(document.getElementById('step-verb'))`)
	assert.Equal(t, []string{"", "pan"}, told[[]string](w, `Array.from(Array.from(document.querySelectorAll('#form label')).find((one) => one.firstChild.textContent === 'Caught in').parentNode.querySelectorAll('option')).map((one) => one.value)`), "what catches is a container")
	told[bool](w, `((verb) => { verb.value = 'say'; return verb.dispatchEvent(new Event('change', { bubbles: true })); })(document.getElementById('step-verb'))`)
	w.named("Add it")
	w.Soon("words are asked for", `document.querySelector('#form .wrong').textContent.includes('In words')`)
	w.keys(kb.Escape)

	w.Click("#add-thing")
	w.fill("Short name", "guard")
	w.choose("thing-kind", "cover")
	assert.Contains(t, w.Text("#form"), "There is one of this name: guard.")
	w.fill("Thread", "M10")
	w.choose("thing-kind", "part")
	w.choose("thing-file", "belt.toml")
	w.Soon("what was filled in stays with another kind", `document.querySelector('#form pre').textContent.includes('thread = "M10"')`)
	w.named("Add it, and another")
	w.Soon("the next is asked for", `document.getElementById('thing-name').value === ''`)
	w.fill("Short name", "guard")
	w.choose("thing-file", "belt.toml")
	w.named("Add it")
	w.Soon("a second of the name is refused", `document.querySelector('#form .wrong').textContent.includes('there is a [part.guard] already')`)
	assert.Equal(t, 1, strings.Count(w.written(), "[part.guard]"))
	told[bool](w, `(document.getElementById('form').close(), true)`)
	w.Soon("what was added stands in the middle", `((line, pane) => line.top > pane.top + 40 && line.bottom < pane.bottom - 60)(document.querySelector('#editor .cm-activeLine').getBoundingClientRect(), document.getElementById('editor').getBoundingClientRect()) || document.querySelector('#editor .cm-scroller').scrollHeight <= document.querySelector('#editor .cm-scroller').clientHeight + 200`)
}

func TestTheFileThatIsFoundIsReachedByKeys(t *testing.T) {
	w := opened(t, pressShop(t, press), 1440, 900)
	find := func() {
		told[bool](w, `(document.getElementById('filter').focus(), document.getElementById('filter').select(), true)`)
	}
	find()
	w.keys("belt")
	w.keys("\r")
	w.Soon("it is open", `document.getElementById('where').textContent.startsWith('belt.toml') && document.activeElement.matches('#editor .cm-content')`)
	find()
	w.keys("press.toml")
	w.keys(kb.ArrowDown)
	w.Soon("the list has the focus", `document.activeElement.matches('.file[data-path="machines/press.toml"]')`)
	w.keys("\r")
	w.Soon("it is open", `document.getElementById('where').textContent.startsWith('machines/press.toml')`)

	// An alarm is of a file, names it, and goes with it.
	w.at("[machine]")
	w.keys("\n[[x\n")
	w.Click("#tidy")
	w.Soon("it is told", `document.getElementById('alarm').textContent.startsWith('machines/press.toml: line ')`)
	told[bool](w, `(document.getElementById('filter').value = '', document.getElementById('filter').dispatchEvent(new Event('input')), document.querySelector('.file[data-path="tools.toml"]').click(), true)`)
	w.Soon("it is gone", `document.getElementById('where').textContent.startsWith('tools.toml') && document.getElementById('alarm').textContent === ''`)
	w.clean()
	w.at("[tool.pan]")
	w.keys("\r", chromedp.KeyModifiers(alt))
	w.Soon("there is nothing to mend", `document.getElementById('tell').textContent === 'Nothing is found in this file.'`)
}
