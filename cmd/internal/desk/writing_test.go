package desk

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"benchleaf/templates/browsertest"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const (
	ctrl  = chromedp.ModifierCtrl
	alt   = chromedp.ModifierAlt
	shift = chromedp.ModifierShift
)

// clean waits until nothing stands against the file at hand.
func (w writer) clean() {
	w.Helper()
	w.Soon("nothing is found", `document.getElementById('tally').textContent === 'no findings'`)
}

func (w writer) finds(words string) {
	w.Helper()
	w.Soon("it finds "+words, `document.getElementById('findings').textContent.includes(`+browsertest.Quoted(words)+`)`)
}

// downloads keeps what the page hands out, by its name.
func (w writer) downloads() {
	w.Helper()
	told[bool](w, `((make, blobs) => {
		window.handed = {};
		URL.createObjectURL = (blob) => { const address = make.call(URL, blob); blobs.set(address, blob); return address; };
		HTMLAnchorElement.prototype.click = function () { const name = this.download; blobs.get(this.href).text().then((text) => { window.handed[name] = text; }); };
		return true;
	})(URL.createObjectURL, new Map())`)
}

// A procedure is begun from nothing by the forms, goes on in the text with three mistakes,
// is mended by a key, by a click and by hand, and is printed and saved.
func TestAProcedureIsWrittenFromNothing(t *testing.T) {
	at := empty(t)
	w := opened(t, at, 1440, 900)
	w.downloads()
	w.Click("#new-procedure")
	w.named("Begin it")
	w.Soon("what is needed is asked for", `document.querySelector('dialog .wrong').textContent.includes('Title')`)
	for label, text := range map[string]string{"Title": "Look over the chain oiler", "Machine": "Log-deck conveyor", "Author": "R. Aldous", "Who may do it": "Anyone who runs the deck", "Time with hands on": "5 min",
		"How often": "50 h", "Date": "2026-02-14", "Why nothing is cut off": "Nothing is touched; look from outside the guard", "Why nothing is closed up": "Nothing is opened", "Place in the manual": "Operator's manual, section 4"} {
		w.fill(label, text)
	}
	told[bool](w, `(document.querySelector('dialog input[value="eye-protection"]').click(), true)`)
	w.Soon("the TOML is shown", `document.querySelector('dialog pre').textContent.includes('tools = []')`)
	w.named("Begin it")
	w.Soon("the file is open", `!document.getElementById('form').open && document.getElementById('where').textContent.startsWith('look-over-the-chain-oiler.toml')`)
	assert.True(t, strings.HasPrefix(w.written(), "benchleaf = 1\n\n[procedure]\ntitle = \"Look over the chain oiler\"\nmachine = \"Log-deck conveyor\"\n"), w.written())
	w.Soon("its page is drawn", `document.querySelectorAll('.side img').length > 0`)
	assert.NoFileExists(t, filepath.Join(at, "look-over-the-chain-oiler.toml"), "nothing is written before it is saved")

	w.keys("n", chromedp.KeyModifiers(alt))
	w.Soon("the form of a step opens", `document.getElementById('form').open`)
	told[bool](w, `((verb, part) => { part.value = 'step'; verb.value = 'inspect'; return [part, verb].map((one) => one.dispatchEvent(new Event('change', { bubbles: true })))[1]; })(document.getElementById('step-verb'), document.getElementById('step-section'))`)
	w.Soon("the verb is explained", `document.getElementById('verb-about').textContent.includes('Look for damage or wear')`)
	w.fill("To what", "the oil level in the sight glass")
	w.fill("What is seen when all is well", "between the two marks")
	w.fill("What to do when it is not right", "Fill the oiler by its own card before the next shift.")
	w.named("Add it")
	w.Soon("the step is on the page", `document.querySelectorAll('.spot').length === 1`)
	w.clean()
	assert.Contains(t, w.written(), "\n[[step]]\ninspect = \"the oil level in the sight glass\"\nexpect = \"between the two marks\"\n")
	page := told[string](w, `document.querySelector('.side img').src`)

	// Three mistakes, typed.
	told[bool](w, `((view) => { view.dispatch({ selection: { anchor: view.state.doc.length } }); view.focus(); return true; })(document.querySelector('#editor .cm-content').cmTile.view)`)
	w.Do(chromedp.SendKeys(chromedp.CSS("#editor .cm-content"), "\n[[step]]\ninspekt = \"the oil pipe\"\nexpect = \"dry\"\noutside = \"Stop the deck and renew the pipe before it runs again\""))
	w.keys(kb.Escape)
	w.finds("inspekt")
	w.at(`hands-on = "5 min`)
	w.keys(kb.Backspace)
	w.keys(kb.Backspace)
	w.keys(kb.Backspace)
	w.keys(kb.Backspace)
	w.finds(`"5" has no unit`)
	w.at(`wear = ["eye-protection`)
	w.keys("s")
	w.finds("eye-protections")
	w.Soon("wavy lines stand under them", `document.querySelectorAll('#editor .cm-lintRange-error').length >= 3`)
	w.Soon("the file has a badge", `document.querySelector('.file[aria-current] .badge.error') !== null`)
	assert.True(t, told[bool](w, `document.getElementById('print-card').disabled`), "it is held back")

	// One by its key, one by a click, one by hand.
	w.keys("\r", chromedp.KeyModifiers(alt))
	w.Soon("the word is mended", `!document.querySelector('#findings').textContent.includes('eye-protections')`)
	assert.Contains(t, w.written(), `wear = ["eye-protection"]`)
	told[bool](w, `(Array.from(document.querySelectorAll('.finding')).find((one) => one.textContent.includes('inspekt')).querySelector('.fixes button').click(), true)`)
	w.Soon("the verb is mended", `!document.querySelector('#findings').textContent.includes('inspekt')`)
	assert.Contains(t, w.written(), "\ninspect = \"the oil pipe\"\n")
	w.at(`hands-on = "5`)
	w.keys(" min")
	w.Soon("two steps are on the page", `document.querySelectorAll('.spot').length === 2`)
	w.clean()
	assert.NotEqual(t, page, told[string](w, `document.querySelector('.side img').src`), "the page is drawn anew")

	// From the page to the line, and back.
	told[bool](w, `(document.querySelector('.spot[data-step="1"]').click(), true)`)
	w.Soon("the cursor is at the step", `document.querySelector('.spot[data-step="1"]').hasAttribute('aria-current') && document.querySelector('#editor .cm-activeLine').textContent === '[[step]]'`)
	w.at("the oil pipe")
	w.Soon("the step at the cursor is marked", `document.querySelector('.spot[data-step="2"]').hasAttribute('aria-current') && !document.querySelector('.spot[data-step="1"]').hasAttribute('aria-current')`)

	for _, id := range []string{"print-card", "print-pick", "print-approval"} {
		w.Click("#" + id)
	}
	for _, name := range []string{"look-over-the-chain-oiler.pdf", "look-over-the-chain-oiler-pick-list.pdf", "look-over-the-chain-oiler-approval.pdf"} {
		w.Soon(name+" is handed out", `(window.handed[`+browsertest.Quoted(name)+`] || '').startsWith('%PDF-')`)
	}
	w.at("the oil pipe")
	w.keys("s", chromedp.KeyModifiers(ctrl))
	w.Soon("it is saved", `document.getElementById('save').disabled`)
	assert.Equal(t, w.written(), onDisk(t, at, "look-over-the-chain-oiler.toml"))
	assertNoDrafts(t, at)
}

func TestAMachineIsBegunWithItsShop(t *testing.T) {
	at := empty(t)
	w := opened(t, at, 1440, 900)
	w.Click("#new-machine")
	w.fill("Name of the shop", "Mill of the Test")
	w.fill("Name as it prints", "Band mill")
	w.fill("Manual", "Operator's manual, edition 2")
	w.named("Begin it")
	w.Soon("the machine is open", `document.getElementById('where').textContent.startsWith('machines/band-mill.toml')`)
	w.Click("#add-thing")
	w.fill("Short name", "drain-plug")
	w.fill("Thread", "M22x1.5")
	w.named("Add it")
	w.Soon("the part is written", `!document.getElementById('form').open`)
	assert.Contains(t, w.written(), "\n[part.drain-plug]\n")
	w.keys("s", chromedp.KeyModifiers(ctrl))
	w.Soon("both are saved", `document.getElementById('save').disabled`)
	assert.Contains(t, onDisk(t, at, "shop.toml"), "use = [\"machines/*.toml\"]\n\n[shop]\ntitle = \"Mill of the Test\"\n")
	assert.Contains(t, onDisk(t, at, "machines/band-mill.toml"), "title = \"Band mill\"")
	w.clean()
	w.Click("#new-procedure")
	w.Soon("the machine can be chosen", `Array.from(document.querySelectorAll('dialog option')).some((one) => one.value === 'band-mill')`)
	w.keys(kb.Escape)
	assert.Equal(t, "Mill of the Test", w.Text("#shop"))
}

func TestAFileThatChangesIsShownAnew(t *testing.T) {
	at := empty(t)
	put(t, at, "grease.toml", "benchleaf = 1\r\n\r\n[procedure]\r\ntitle = \"Grease it\"\r\n")
	w := opened(t, at, 1440, 900)
	w.Click(`.file[data-path="grease.toml"]`)
	w.Soon("it is open", `document.querySelector('#editor .cm-content').textContent.includes('Grease it')`)
	assert.True(t, told[bool](w, `document.getElementById('save').disabled`), "line ends of another system are no change")
	put(t, at, "grease.toml", "benchleaf = 1\r\n\r\n[procedure]\r\ntitle = \"Oil it\"\r\n")
	told[bool](w, `window.dispatchEvent(new Event('focus'))`)
	w.Soon("the new text is shown", `document.querySelector('#editor .cm-content').textContent.includes('Oil it')`)
	w.at("Oil it")
	w.keys(" well")
	w.keys("s", chromedp.KeyModifiers(ctrl))
	w.Soon("it is saved", `document.getElementById('save').disabled`)
	assert.Equal(t, "benchleaf = 1\r\n\r\n[procedure]\r\ntitle = \"Oil it well\"\r\n", onDisk(t, at, "grease.toml"), "its line ends stay")
	w.at("Oil it")
	w.keys(" always")
	require.NoError(t, os.Remove(filepath.Join(at, "grease.toml")))
	w.keys("s", chromedp.KeyModifiers(ctrl))
	w.Soon("it is told that the file is gone", `document.getElementById('conflict').open && document.getElementById('conflict-says').textContent.includes('no longer on the disk')`)
	w.Click("#keep-mine")
	w.Soon("it is saved", `document.getElementById('save').disabled`)
	assert.Contains(t, onDisk(t, at, "grease.toml"), "Oil it always well")
}

// An answer that was on its way while the file was saved does not show the file anew, which
// would put a step that nobody took into what can be undone; and one that comes while somebody
// writes takes nothing away.
func TestAnAnswerThatComesLateChangesNothing(t *testing.T) {
	at := empty(t)
	put(t, at, "grease.toml", "benchleaf = 1\n\n[procedure]\ntitle = \"Grease it\"\n")
	w := opened(t, at, 1440, 900)
	w.Click(`.file[data-path="grease.toml"]`)
	w.Soon("it is open", `document.querySelector('#editor .cm-content').textContent.includes('Grease it')`)
	// From now on every check is answered when it is let, as one that was asked before.
	told[bool](w, `((real) => { window.held = []; window.fetch = async (what, how) => { const answer = await real(what, how); if (String(what).includes('api/check') && window.hold) { await new Promise((go) => window.held.push(go)); } return answer; }; return true; })(window.fetch)`)
	told[bool](w, `(window.hold = true)`)
	told[bool](w, `window.dispatchEvent(new Event('focus'))`)
	w.Soon("a check is held, and the ones before it are given up", `window.held.length > 0`)
	put(t, at, "grease.toml", "benchleaf = 1\n\n[procedure]\ntitle = \"Oil it\"\n")
	told[bool](w, `(window.held = [], window.dispatchEvent(new Event('focus')))`)
	w.Soon("the check is under way", `window.held.length > 0`)
	w.at("Grease it")
	w.keys(" well")
	told[bool](w, `(window.hold = false, window.held.forEach((go) => go()), true)`)
	w.Soon("it is told", `document.getElementById('alarm').textContent.includes('was changed on the disk meanwhile')`)
	assert.Contains(t, w.written(), "Grease it well", "what was written stays")
	w.keys("s", chromedp.KeyModifiers(ctrl))
	w.Soon("both are shown", `document.getElementById('conflict').open`)
	told[bool](w, `(window.held = [], window.hold = true)`)
	told[bool](w, `window.dispatchEvent(new Event('focus'))`)
	w.Soon("another check is under way", `window.held.length > 0`)
	w.Click("#keep-mine")
	w.Soon("it is saved", `document.getElementById('save').disabled`)
	told[bool](w, `(window.hold = false, window.held.forEach((go) => go()), true)`)
	w.Do(chromedp.Sleep(500 * time.Millisecond))
	w.at("Grease it")
	w.keys("z", chromedp.KeyModifiers(ctrl))
	w.Soon("the other text is one step back", `document.querySelector('#editor .cm-content').cmTile.view.state.sliceDoc().includes('Oil it')`)
}

func TestCompletionAndMeaningsStandInTheText(t *testing.T) {
	w := opened(t, demonstration(t), 1440, 900)
	w.Click(`.file[data-path="` + oil + `"]`)
	w.Soon("it is drawn", `document.querySelectorAll('.spot').length > 3`)
	told[bool](w, `((view) => { view.dispatch({ changes: { from: view.state.doc.length, insert: '\n[[close]]\n' }, selection: { anchor: view.state.doc.length + 11 } }); view.focus(); return true; })(document.querySelector('#editor .cm-content').cmTile.view)`)
	w.keys("disp")
	w.Soon("the verb is offered", `(document.querySelector('.cm-tooltip-autocomplete [aria-selected=true]') || { textContent: '' }).textContent.includes('dispose')`)
	w.Soon("it is explained", `(document.querySelector('.cm-completionInfo') || { textContent: '' }).textContent.includes('Hand over what is left')`)
	w.Do(chromedp.Sleep(100_000_000))
	w.keys("\t") // takes what is offered, and leaves the text where nothing is
	w.Soon("it is written", `document.querySelector('#editor .cm-content').cmTile.view.state.sliceDoc().endsWith('\n[[close]]\ndispose = ""')`)
	w.keys(" ", chromedp.KeyModifiers(ctrl))
	w.Soon("names are offered", `Array.from(document.querySelectorAll('.cm-tooltip-autocomplete li')).some((one) => one.textContent.includes('gear-460'))`)
}

// The keys go round the desk, and everything can be reached and seen.
func TestAKeyboardGoesRoundTheDesk(t *testing.T) {
	w := opened(t, demonstration(t), 1440, 900)
	w.keys("\t")
	assert.Equal(t, "jump", told[string](w, `document.activeElement.className`))
	w.keys(kb.F6)
	assert.True(t, told[bool](w, `document.activeElement.matches('.file')`))
	w.keys(kb.ArrowDown)
	w.keys("\r")
	w.Soon("a file is open and the text has the focus", `document.querySelectorAll('.spot').length > 3 && document.activeElement.matches('#editor .cm-content')`)
	for _, pattern := range []string{"#sheet .spot", "#found", "#state thead button", "#files .file", "#editor .cm-content"} {
		w.keys(kb.F6)
		assert.True(t, told[bool](w, `document.activeElement.matches(`+browsertest.Quoted(pattern)+`)`), "%s, not %s", pattern, told[string](w, `document.activeElement.outerHTML.slice(0, 120)`))
	}
	w.keys(kb.F6, chromedp.KeyModifiers(shift))
	assert.True(t, told[bool](w, `document.activeElement.matches('.file')`))
	w.keys(kb.F6, chromedp.KeyModifiers(shift))
	w.keys(kb.ArrowRight)
	w.keys("\r")
	w.Soon("the step of the second number is at the cursor", `document.querySelector('.spot[data-step="2"]').hasAttribute('aria-current') && document.activeElement.matches('#editor .cm-content')`)
	w.keys("\t")
	assert.False(t, told[bool](w, `document.activeElement.matches('#editor .cm-content')`), "the text does not hold the keyboard")
}

// Nothing reaches over the side on a small screen, and what is touched is large; so it is where
// text is zoomed to twice its size.
func TestASmallScreenHasOneColumn(t *testing.T) {
	w := opened(t, demonstration(t), 390, 844)
	assert.True(t, told[bool](w, `document.getElementById('files').checkVisibility() && !document.getElementById('text').checkVisibility()`))
	told[bool](w, `(document.querySelector('.file[data-path="`+oil+`"]').click(), true)`)
	w.Soon("the text is shown", `document.getElementById('text').checkVisibility() && !document.getElementById('files').checkVisibility() && document.querySelectorAll('.spot').length > 3`)
	for _, tab := range []string{"files", "text", "sheet", "found", "state"} {
		w.Click(`.tabs [data-tab=` + tab + `]`)
		assert.LessOrEqual(t, told[int](w, `document.documentElement.scrollWidth`), 390, tab)
		small := told[[]string](w, `Array.from(document.querySelectorAll('button, select, input')).filter((one) => one.checkVisibility() && !one.matches('.jump, .spot, thead button, [type=checkbox]')).filter((one) => one.getBoundingClientRect().height < 32).map((one) => one.outerHTML.slice(0, 120))`)
		assert.Empty(t, small, tab)
	}
	w.Click(`.tabs [data-tab=sheet]`)
	told[bool](w, `(document.querySelector('.spot[data-step="6"]').click(), true)`)
	w.Soon("the step leads to the text", `document.getElementById('text').checkVisibility()`)

	w = opened(t, demonstration(t), 720, 450) // as 1440 × 900 at 200 %
	assert.LessOrEqual(t, told[int](w, `document.documentElement.scrollWidth`), 720)
	assert.True(t, told[bool](w, `document.querySelector('.tabs').checkVisibility()`))
	told[bool](w, `(document.documentElement.style.fontSize = '200%', true)`)
	assert.LessOrEqual(t, told[int](w, `document.documentElement.scrollWidth`), 720, "with the text twice as large")
}

// The text reaches down to the end of its part, the buttons that begin something stand together,
// and a wide screen is used by the page and the states.
func TestEveryScreenIsUsed(t *testing.T) {
	for _, size := range []struct{ width, height int64 }{{390, 844}, {800, 1000}, {1400, 900}, {2560, 1300}} {
		w := opened(t, demonstration(t), size.width, size.height)
		told[bool](w, `(document.querySelector('.file[data-path="`+oil+`"]').click(), true)`)
		w.Soon("it is drawn", `document.querySelectorAll('.spot').length > 3`)
		foot := func(pattern string) float64 {
			return told[float64](w, `document.querySelector(`+browsertest.Quoted(pattern)+`).getBoundingClientRect().bottom`)
		}
		top := func(pattern string) float64 {
			return told[float64](w, `document.querySelector(`+browsertest.Quoted(pattern)+`).getBoundingClientRect().top`)
		}
		assert.LessOrEqual(t, foot("#text"), float64(size.height), "%d wide: the text is cut", size.width)
		assert.InDelta(t, foot("#editor"), foot("#editor .cm-scroller"), 1, "%d wide", size.width)
		for _, id := range []string{"#new-machine", "#add-step", "#add-thing"} {
			assert.InDelta(t, top("#new-procedure"), top(id), 1, "%d wide: %s", size.width, id)
		}
		if size.width < 1000 {
			assert.InDelta(t, foot("#text"), foot("#editor"), 1, "%d wide: a strip stands below the text", size.width)
			assert.Greater(t, foot("#text"), float64(size.height)-30, "%d wide", size.width)
			assert.Greater(t, top("#new-procedure"), foot("#save"), "%d wide", size.width)
		}
		if size.width > 2000 {
			assert.True(t, told[bool](w, `document.getElementById('strip').scrollWidth <= document.getElementById('strip').clientWidth`), "all states are seen")
			assert.True(t, told[bool](w, `document.getElementById('sheet').clientWidth > document.getElementById('text').clientWidth`))
		}
	}
}

// What is known of a word stands in lines of its own.
func TestAMeaningKeepsItsLines(t *testing.T) {
	w := opened(t, demonstration(t), 1440, 900)
	w.Click(`.file[data-path="` + oil + `"]`)
	w.Soon("it is drawn", `document.querySelectorAll('.spot').length > 3`)
	w.at(`isolate = "mai`)
	w.Do(chromedp.Sleep(300 * time.Millisecond))
	at := told[[]float64](w, `((view) => { const place = view.coordsAtPos(view.state.selection.main.head); return [place.left, (place.top + place.bottom) / 2]; })(document.querySelector('#editor .cm-content').cmTile.view)`)
	w.Do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, at[0]-20, at[1]), chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, at[0], at[1]))
	w.Soon("it is told", `document.querySelector('.doc-tip') !== null`)
	assert.True(t, told[bool](w, `((tip) => tip.textContent.includes('\n') && tip.innerText.trim().split('\n').length > 1)(document.querySelector('.doc-tip'))`), w.Text(".doc-tip"))
}

func TestNoBarrierIsFound(t *testing.T) {
	barriers := browsertest.NewBarriers(t)
	at := demonstration(t)
	put(t, at, oil, strings.Replace(onDisk(t, at, oil), `into = "drain-pan-8"`, `into = "drain-pan-9"`, 1))
	for _, size := range []struct{ width, height int64 }{{1440, 900}, {390, 844}} {
		w := opened(t, at, size.width, size.height)
		barriers.Brought(w.Page)
		look := func(name string) {
			t.Helper()
			barriers.Look(w.Page, fmt.Sprintf("%s, %d wide", name, size.width))
		}
		look("begin")
		told[bool](w, `(document.querySelector('.file[data-path="`+oil+`"]').click(), true)`)
		w.Soon("it is drawn", `document.querySelectorAll('.spot').length > 3 && document.querySelectorAll('.finding').length > 0`)
		w.at(`isolate = "mains"`)
		look("a file")
		if size.width < 800 {
			for _, tab := range []string{"sheet", "found", "state"} {
				w.Click(`.tabs [data-tab=` + tab + `]`)
				look(tab)
			}
			w.Click(`.tabs [data-tab=text]`)
		}
		for _, form := range []string{"new-procedure", "new-machine", "add-step", "add-thing"} {
			w.Click("#" + form)
			w.Soon("the form is open", `document.getElementById('form').open`)
			look(form)
			told[bool](w, `(document.getElementById('form').close(), true)`)
		}
		w.at(`isolate = "mains"`)
		w.keys("\r")
		w.keys(" ", chromedp.KeyModifiers(ctrl))
		w.Soon("completion is open", `document.querySelector('.cm-tooltip-autocomplete') !== null`)
		look("completion")
		w.keys(kb.Escape)
		w.at(`hands-on = "40`)
		w.keys("0")
		was := onDisk(t, at, oil)
		put(t, at, oil, strings.Replace(was, `hands-on = "40`, `hands-on = "45`, 1)+"# later\n")
		w.keys("s", chromedp.KeyModifiers(ctrl))
		w.Soon("the conflict is shown", `document.getElementById('conflict').open`)
		look("conflict")
		w.Click("#keep-mine")
		w.Soon("what was replaced is told", `!document.getElementById('replaced').hidden`)
		machine := onDisk(t, at, "machines/log-deck.toml")
		put(t, at, "machines/log-deck.toml", strings.Replace(machine, `capacity = "1.1 L"`, `capacity = "1.1"`, 1))
		told[bool](w, `window.dispatchEvent(new Event('focus'))`)
		w.Soon("it is held back", `document.querySelector('.holds') !== null && document.querySelector('#held button') !== null`)
		look("held back")
		if size.width < 800 {
			w.Click(`.tabs [data-tab=found]`)
			look("held back, findings")
		}
		told[bool](w, `(document.getElementById('new-machine').click(), true)`)
		w.fill("Manual", "x")
		told[bool](w, `document.querySelector('#form input').dispatchEvent(new Event('input', { bubbles: true }))`)
		w.named("Cancel")
		w.Soon("it asks", `document.getElementById('sure').open`)
		look("a question")
		put(t, at, oil, was)
		put(t, at, "machines/log-deck.toml", machine)
	}
}
