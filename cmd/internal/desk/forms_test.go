package desk

import (
	"strings"
	"testing"

	"benchleaf/templates/browsertest"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
)

// choose chooses an option of a list in a form.
func (w writer) choose(id, value string) {
	w.Helper()
	told[bool](w, `((list) => { list.value = `+browsertest.Quoted(value)+`; return ['input', 'change'].map((name) => list.dispatchEvent(new Event(name, { bubbles: true })))[0]; })(document.getElementById(`+browsertest.Quoted(id)+`))`)
}

func (w writer) options(id string) []string {
	w.Helper()
	return told[[]string](w, `Array.from(document.getElementById(`+browsertest.Quoted(id)+`).options).map((one) => one.value)`)
}

// A thing goes into the file that is chosen: a part of the machine into the machine's file, a tool
// to the other tools, unless somebody says otherwise.
func TestAThingGoesIntoTheFileThatIsSaid(t *testing.T) {
	at := pressShop(t, press)
	w := opened(t, at, 1440, 900)
	w.Click(`.file[data-path="belt.toml"]`)
	w.Soon("it is drawn", `document.querySelectorAll('.side img').length > 0`)
	w.Click("#add-thing")
	assert.Equal(t, []string{"machines/press.toml", "belt.toml"}, w.options("thing-file"))
	assert.Contains(t, w.Text("#thing-file"), "machines/press.toml: Peat press")
	w.fill("Short name", "drain-plug")
	w.Soon("it says where it goes", `document.querySelector('#form .written b').textContent === 'What will be written into machines/press.toml'`)
	w.named("Add it, and another")
	w.Soon("it is told where it went", `document.getElementById('tell').textContent.includes('machines/press.toml')`)
	assert.NotContains(t, w.written(), "drain-plug", "the procedure stays as it is")
	w.Soon("the next is asked for", `document.getElementById('thing-name').value === ''`)

	w.choose("thing-kind", "tool")
	assert.Equal(t, []string{"tools.toml", "belt.toml"}, w.options("thing-file"))
	w.choose("thing-kind", "fluid")
	assert.Equal(t, []string{"shop.toml", "belt.toml"}, w.options("thing-file"), "without any, the file of the shop")
	w.choose("thing-kind", "part")
	w.choose("thing-file", "belt.toml")
	w.fill("Short name", "drain-plug")
	w.Soon("the other of the name is told", `document.getElementById('form').textContent.includes('What is written into belt.toml goes before it, in this file alone.')`)
	w.fill("Short name", "belt-cord")
	w.named("Add it")
	w.Soon("it stands in the procedure", `!document.getElementById('form').open && document.querySelector('#editor .cm-activeLine').textContent === '[part.belt-cord]'`)
	assert.Equal(t, "Save 2 files", w.Text("#save"))
	w.Click("#save")
	w.Soon("it is saved", `document.getElementById('save').disabled`)
	assert.Equal(t, press+"\n[part.drain-plug]\n", onDisk(t, at, "machines/press.toml"))
	assert.Equal(t, pressWork+"\n[part.belt-cord]\n", onDisk(t, at, "belt.toml"))

	told[bool](w, `(document.querySelector('.file[data-path="machines/press.toml"]').click(), true)`)
	w.Soon("the machine is open", `document.getElementById('where').textContent.startsWith('machines/press.toml')`)
	w.clean()
	w.Click("#add-thing")
	assert.Equal(t, []string{"machines/press.toml"}, w.options("thing-file"))
}

// While the text cannot be read, the machine that was known is.
func TestAPartGoesToItsMachineWhileTheTextIsBroken(t *testing.T) {
	w := opened(t, pressShop(t, press), 1440, 900)
	w.Click(`.file[data-path="belt.toml"]`)
	w.Soon("it is drawn", `document.querySelectorAll('.side img').length > 0`)
	w.at("revision = ")
	w.keys("\n[[step\n")
	w.finds("The steps are not checked yet.")
	w.Click("#add-thing")
	assert.Equal(t, "machines/press.toml", w.options("thing-file")[0])
}

// A step goes behind the one at the cursor, or to the end of the part of the job the cursor is in,
// and the form says so before.
func TestAStepSaysWhereItGoes(t *testing.T) {
	at := pressShop(t, press)
	text := pressWork[:strings.Index(pressWork, "[[step]]")] + "# Off with it.\n[[prepare]]\nisolate = \"mains\"\n\n[[prepare]]\nprove = \"mains\"\n\n[part.cord]\n\n[[step]]\nremove = \"guard\"\n\n[[step]]\nsay = \"Look at the belt.\"\n"
	put(t, at, "belt.toml", text)
	w := opened(t, at, 1440, 900)
	w.Click(`.file[data-path="belt.toml"]`)
	w.Soon("it is drawn", `document.querySelectorAll('.spot').length === 4`)
	chosen := func(cursor string) []string {
		t.Helper()
		w.at(cursor)
		w.Click("#add-step")
		w.Soon("the form is open", `document.getElementById('form').open`)
		out := told[[]string](w, `['step-section', 'step-behind'].map((name) => document.getElementById(name).selectedOptions[0].textContent)`)
		told[bool](w, `(document.getElementById('form').close(), true)`)
		return out
	}
	assert.Equal(t, []string{"Make it safe", "Line 21, at the cursor: isolate = \"mains\""}, chosen("isolate ="))
	assert.Equal(t, []string{"Make it safe", "Line 21, at the cursor: isolate = \"mains\""}, chosen("# Off with"), "its comment belongs to it")
	assert.Equal(t, []string{"Make it safe", "Line 24, the last: prove = \"mains\""}, chosen("[part.cord"), "in no step: the end of the part of the job")
	assert.Equal(t, []string{"The work", "Line 29, at the cursor: remove = \"guard\""}, chosen("remove ="))
	assert.Equal(t, []string{"The work", "Line 32, the last: say = \"Look at the belt.\""}, chosen("revision ="))

	w.at("isolate =")
	w.Click("#add-step")
	w.Soon("the form is open", `document.getElementById('form').open`)
	w.choose("step-section", "close")
	assert.Equal(t, []string{"-1"}, w.options("step-behind"))
	w.choose("step-section", "step")
	w.choose("step-behind", "-1")
	w.choose("step-verb", "say")
	w.fill("In words", "Sweep the floor.")
	w.named("Add it, and another")
	w.Soon("the next goes behind it", `document.getElementById('form').open && document.getElementById('step-behind').selectedOptions[0].textContent === 'Line 29, at the cursor: say = "Sweep the floor."'`)
	assert.Equal(t, strings.Replace(text, "[[step]]\nremove", "[[step]]\nsay = \"Sweep the floor.\"\n\n[[step]]\nremove", 1), w.written())
}

// Who has no keyboard undoes by buttons.
func TestUndoAndRedoHaveButtons(t *testing.T) {
	w := opened(t, pressShop(t, press), 390, 844)
	told[bool](w, `(document.querySelector('.file[data-path="belt.toml"]').click(), true)`)
	w.Soon("it is open", `document.getElementById('text').checkVisibility() && document.getElementById('where').textContent.startsWith('belt.toml')`)
	off := func() []bool {
		return told[[]bool](w, `['undo', 'redo'].map((name) => document.getElementById(name).getAttribute('aria-disabled') === 'true')`)
	}
	assert.Equal(t, []bool{true, true}, off())
	assert.Equal(t, []string{"Undo", "Redo"}, []string{w.Text("#undo"), w.Text("#redo")})
	assert.GreaterOrEqual(t, told[float64](w, `Math.min(...['undo', 'redo'].flatMap((name) => { const box = document.getElementById(name).getBoundingClientRect(); return [box.width, box.height]; }))`), 44.0, "a finger hits it")
	w.at("Look at the belt")
	w.keys(" well")
	assert.Contains(t, w.written(), "Look at the belt well")
	assert.Equal(t, []bool{false, true}, off())
	w.Click("#undo")
	assert.Equal(t, pressWork, w.written())
	w.Soon("it is as it was saved", `document.getElementById('save').disabled`)
	assert.Equal(t, []bool{true, false}, off())
	w.Click("#undo")
	assert.Equal(t, pressWork, w.written(), "there is no more to undo")
	w.Click("#redo")
	assert.Contains(t, w.written(), "Look at the belt well")
	assert.Equal(t, []bool{false, true}, off())
}

// No text of a form is heard twice: no two of its fields are called alike, and what describes one
// does not begin with its name.
func TestNoFormSaysAThingTwice(t *testing.T) {
	w := opened(t, demonstration(t), 1440, 900)
	w.Click(`.file[data-path="` + oil + `"]`)
	w.Soon("it is drawn", `document.querySelectorAll('.spot').length > 3`)
	twice := func(form string) {
		t.Helper()
		w.Do(chromedp.Sleep(1))
		assert.Empty(t, told[[]string](w, `((form) => {
			const plain = (text) => text.toLowerCase().replace(/[^a-z0-9]+/g, ' ').trim();
			const out = [], seen = new Set();
			for (const label of form.querySelectorAll('label, legend, .ticks label, option, summary, .written b')) {
				const text = plain(label.textContent), words = text.split(' ');
				if (words.length > 1 && words.length % 2 === 0 && words.slice(0, words.length / 2).join(' ') === words.slice(words.length / 2).join(' ')) { out.push('said twice: ' + label.textContent); }
				if (!label.matches('.field > label, .field > legend, .others > label')) { continue; }
				if (seen.has(text)) { out.push('two are called: ' + label.textContent); }
				seen.add(text);
				const doc = label.parentNode.querySelector('.doc');
				const called = plain(label.firstChild.textContent);
				if (doc && (plain(doc.textContent) === called || doc.textContent.toLowerCase().replace(/[.,:;].*$/s, '') === label.firstChild.textContent.toLowerCase())) { out.push('its description says it again: ' + label.textContent); }
			}
			for (const group of form.querySelectorAll('[aria-label]')) { if (form.textContent.includes(group.getAttribute('aria-label'))) { out.push('a name that stands there too: ' + group.getAttribute('aria-label')); } }
			const ids = [...form.querySelectorAll('[id]')].map((one) => one.id);
			out.push(...ids.filter((one, i) => ids.indexOf(one) !== i).map((one) => 'two of the id ' + one));
			for (const one of form.querySelectorAll('[aria-describedby], [aria-labelledby]')) { for (const id of ['aria-describedby', 'aria-labelledby'].flatMap((name) => (one.getAttribute(name) || '').split(' ').filter(Boolean))) { if (!form.querySelector('#' + id)) { out.push('nothing has the id ' + id); } } }
			return out;
		})(document.querySelector('#form form'))`), form)
	}
	for _, name := range []string{"new-procedure", "new-machine"} {
		w.Click("#" + name)
		twice(name)
		told[bool](w, `(document.getElementById('form').close(), true)`)
	}
	for _, path := range []string{oil, "machines/log-deck.toml", "shop/tools.toml"} {
		told[bool](w, `(document.querySelector('.file[data-path="`+path+`"]').click(), true)`)
		w.Soon("it is open", `document.getElementById('where').textContent.startsWith('`+path+`')`)
		w.Click("#add-thing")
		for _, kind := range w.options("thing-kind") {
			w.choose("thing-kind", kind)
			twice(kind)
		}
		told[bool](w, `(document.getElementById('form').close(), true)`)
	}
	told[bool](w, `(document.querySelector('.file[data-path="`+oil+`"]').click(), true)`)
	w.Soon("it is open", `!document.getElementById('add-step').disabled`)
	w.Click("#add-step")
	w.Soon("the form is open", `document.getElementById('form').open`)
	for _, verb := range w.options("step-verb") {
		w.choose("step-verb", verb)
		twice(verb)
	}
}
