package desk

import (
	"strings"
	"testing"

	"benchleaf/templates/browsertest"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
)

const greasing = "benchleaf = 1\n\n[procedure]\ntitle = \"Grease it\"\nrevision = \"A\"\nauthor = \"R. Aldous\"\n"

// met opens greasing, writes into it, has somebody else write it, and saves.
func (w writer) met(at, behind, mine, theirs string) {
	w.Helper()
	w.Click(`.file[data-path="grease.toml"]`)
	w.Soon("it is open", `document.querySelector('#editor .cm-content').textContent.includes('Grease it')`)
	w.at(behind)
	w.keys(mine)
	put(w.T, at, "grease.toml", theirs)
	w.keys("s", chromedp.KeyModifiers(ctrl))
	w.Soon("it is asked", `document.getElementById('conflict').open`)
	assert.Equal(w, theirs, onDisk(w.T, at, "grease.toml"), "nothing was written over")
}

// What is in different places is put together, also on lines that follow each other; Enter
// chooses nothing; and whatever is chosen, what was replaced can be had back.
func TestAConflictIsMergedAndNothingIsLost(t *testing.T) {
	theirs := strings.Replace(greasing, `"A"`, `"B"`, 1)
	mine := strings.Replace(greasing, "Grease it", "Grease it well", 1)
	both := strings.Replace(theirs, "Grease it", "Grease it well", 1)
	for choice, want := range map[string]struct{ text, other, name string }{
		"keep-merged": {both, theirs, "Bring back the text on the disk"}, "keep-mine": {mine, theirs, "Bring back the text on the disk"},
		"take-theirs": {theirs, mine, "Bring back my text"}, "not-now": {theirs, "", ""},
	} {
		t.Run(choice, func(t *testing.T) {
			at := empty(t)
			put(t, at, "grease.toml", greasing)
			w := opened(t, at, 1440, 900)
			w.met(at, "Grease it", " well", theirs)
			assert.Contains(t, w.Text(".place.theirs"), `revision = "B"`)
			assert.Contains(t, w.Text(".place.theirs"), "From the disk")
			assert.Contains(t, w.Text(".place.mine"), "Grease it well")
			assert.Equal(t, 0, told[int](w, `document.querySelectorAll('.place.clash').length`))
			w.keys("\r")
			w.keys(" ")
			assert.True(t, told[bool](w, `document.getElementById('conflict').open`), "no button that writes has the focus")
			assert.Equal(t, theirs, onDisk(t, at, "grease.toml"))
			w.Click("#" + choice)
			w.Soon("it is shut", `!document.getElementById('conflict').open`)
			if choice == "not-now" {
				assert.Equal(t, mine, w.written(), "it is still there, and not saved")
				assert.Equal(t, theirs, onDisk(t, at, "grease.toml"))
				return
			}
			w.Soon("it is saved", `document.getElementById('save').disabled`)
			assert.Equal(t, want.text, w.written())
			assert.Equal(t, want.text, onDisk(t, at, "grease.toml"))
			w.at("Grease it")
			w.keys("z", chromedp.KeyModifiers(ctrl))
			w.Soon("the other text is one step back", `document.querySelector('#editor .cm-content').cmTile.view.state.sliceDoc() === `+browsertest.Quoted(want.other))
			w.keys("y", chromedp.KeyModifiers(ctrl))
			w.named(want.name)
			w.Soon("it is back", `document.querySelector('#editor .cm-content').cmTile.view.state.sliceDoc() === `+browsertest.Quoted(want.other))
			w.named("Bring back the text before this")
			w.Soon("and so is the one before", `document.querySelector('#editor .cm-content').cmTile.view.state.sliceDoc() === `+browsertest.Quoted(want.text))
			w.named("Let it go")
			w.Soon("that is all", `document.getElementById('replaced').hidden`)
		})
	}
}

// Where both changed the same line nothing is chosen before somebody does.
func TestWhatBothChangedIsChosen(t *testing.T) {
	theirs := strings.Replace(strings.Replace(greasing, "Grease it", "Oil it", 1), "R. Aldous", "T. Okafor", 1)
	for choice, title := range map[string]string{"mine": "title = \"Grease it well\"\n", "theirs": "title = \"Oil it\"\n", "both": "title = \"Oil it\"\ntitle = \"Grease it well\"\n"} {
		t.Run(choice, func(t *testing.T) {
			at := empty(t)
			put(t, at, "grease.toml", greasing)
			w := opened(t, at, 1440, 900)
			w.met(at, "Grease it", " well", theirs)
			assert.Contains(t, w.Text("#conflict-says"), "1 place was changed by both")
			assert.True(t, told[bool](w, `document.getElementById('keep-merged').disabled && document.querySelector('.place.clash :checked') === null`))
			assert.Contains(t, w.Text(".place.clash legend"), "Line 4")
			told[bool](w, `(document.querySelector('.place.clash [value=`+choice+`]').click(), true)`)
			w.Soon("it can be saved", `!document.getElementById('keep-merged').disabled`)
			w.Click("#keep-merged")
			w.Soon("it is saved", `document.getElementById('save').disabled`)
			want := strings.Replace(strings.Replace(greasing, "title = \"Grease it\"\n", title, 1), "R. Aldous", "T. Okafor", 1)
			assert.Equal(t, want, onDisk(t, at, "grease.toml"))
			assert.Equal(t, want, w.written())
		})
	}
}

// Texts of other line ends are put together too, and what comes out ends its lines as on the disk.
func TestLineEndsAreNoConflict(t *testing.T) {
	at := empty(t)
	put(t, at, "grease.toml", greasing)
	w := opened(t, at, 1440, 900)
	theirs := strings.ReplaceAll(strings.Replace(greasing, "R. Aldous", "T. Okafor", 1), "\n", "\r\n")
	w.met(at, "Grease it", " well", theirs)
	assert.Equal(t, 2, told[int](w, `document.querySelectorAll('.place').length`))
	w.Click("#keep-merged")
	w.Soon("it is saved", `document.getElementById('save').disabled`)
	assert.Equal(t, strings.Replace(theirs, "Grease it", "Grease it well", 1), onDisk(t, at, "grease.toml"))
}

// Texts that are put together by lines: what comes out for each of many bases and changes is
// made of what each side wrote, and a change that only one side made is always in it.
func TestMergingKeepsWhatEachSideWrote(t *testing.T) {
	w := opened(t, empty(t), 1440, 900)
	wrong, err := chromedp.Run(w.Tab, chromedp.Evaluate[[]string](`import(document.querySelector('script[type=module]').src.replace('desk.js', 'merge.js')).then(({ merge, together }) => {
		let seed = 7;
		const any = (n) => { seed = (seed * 1103515245 + 12345) % 2147483648; return Math.floor(seed / 65536) % n; };
		const edit = (lines, who) => {
			const out = lines.slice();
			for (let i = any(4); i > 0; i -= 1) {
				const at = any(out.length + 1), what = any(3);
				if (what === 0) { out.splice(at, 0, who + any(3)); } else if (what === 1) { out.splice(at, 1); } else if (at < out.length) { out[at] = who + any(3); }
			}
			return out;
		};
		const wrong = [];
		for (let i = 0; i < 20000; i += 1) {
			const base = Array.from({ length: 1 + any(8) }, () => 'l' + any(5)), texts = { was: base, mine: edit(base, 'm'), theirs: edit(base, 't') };
			const [was, mine, theirs] = ['was', 'mine', 'theirs'].map((side) => texts[side].join('\n'));
			const places = merge(was, mine, theirs);
			for (const [side, whole] of [['was', was], ['mine', mine], ['theirs', theirs]]) {
				if (places.flatMap((place) => place[side]).join('\n') !== whole) { wrong.push(side + ' ' + JSON.stringify(texts)); }
			}
			if (merge(was, mine, was).some((place) => place.kind === 'clash') || together(merge(was, mine, was), new Map()).join('\n') !== mine) { wrong.push('mine alone ' + JSON.stringify(texts)); }
			if (together(merge(was, was, theirs), new Map()).join('\n') !== theirs) { wrong.push('theirs alone ' + JSON.stringify(texts)); }
			if (together(merge(was, mine, mine), new Map()).join('\n') !== mine) { wrong.push('alike ' + JSON.stringify(texts)); }
		}
		return wrong.slice(0, 5);
	})`, chromedp.EvalAwaitPromise))
	assert.NoError(t, err)
	assert.Empty(t, wrong)
}

// A file that was emptied is not saved so without being asked, and can be had back.
func TestAnEmptyFileIsAskedAbout(t *testing.T) {
	at := empty(t)
	put(t, at, "grease.toml", greasing)
	w := opened(t, at, 1440, 900)
	w.Click(`.file[data-path="grease.toml"]`)
	w.Soon("it is open", `document.querySelector('#editor .cm-content').textContent.includes('Grease it')`)
	w.at("Grease it")
	w.keys("a", chromedp.KeyModifiers(ctrl))
	w.keys(kb.Delete)
	w.keys("s", chromedp.KeyModifiers(ctrl))
	w.Soon("it is asked", `document.getElementById('sure').open && document.getElementById('sure').textContent.includes('grease.toml is empty now. Saved so, its 6 lines are gone')`)
	w.keys("\r")
	w.Soon("it is shut", `!document.getElementById('sure').open`)
	assert.Equal(t, greasing, onDisk(t, at, "grease.toml"), "Enter writes nothing")
	w.Click("#save")
	w.named("Save it empty")
	w.Soon("it is saved", `document.getElementById('save').disabled`)
	assert.Empty(t, onDisk(t, at, "grease.toml"))
	w.named("Bring back what stood in it")
	w.Soon("it is back", `document.querySelector('#editor .cm-content').cmTile.view.state.sliceDoc() === `+browsertest.Quoted(greasing))
}
