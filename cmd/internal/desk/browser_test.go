package desk

import (
	"testing"
	"time"

	"benchleaf/templates/browsertest"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// writer is somebody at the desk: the page of a folder, open in a browser.
type writer struct{ browsertest.Page }

// opened opens the desk of a folder in a browser.
func opened(t *testing.T, at string, width, height int64) writer {
	t.Helper()
	w := writer{browsertest.Open(t, func() string { return served(t, at).Address() }, width, height, 3*time.Minute)}
	w.Soon("the desk is ready", `document.body.dataset.ready === 'true'`)
	told[bool](w, `(window.addEventListener('error', (event) => (window.wrongs = window.wrongs || []).push(event.message)), document.addEventListener('securitypolicyviolation', (event) => (window.wrongs = window.wrongs || []).push(event.violatedDirective + ' ' + event.blockedURI)), true)`)
	t.Cleanup(func() {
		if w.Tab.Err() == nil {
			require.Empty(t, told[[]string](w, `window.wrongs || []`), "the page broke its own policy or failed")
		}
	})
	return w
}

// named clicks the visible button that is called so.
func (w writer) named(name string) {
	w.Helper()
	w.Soon("there is a button "+name, `Array.from(document.querySelectorAll('button')).some((one) => one.checkVisibility() && !one.disabled && one.textContent.trim() === `+browsertest.Quoted(name)+`)`)
	told[bool](w, `(Array.from(document.querySelectorAll('button')).find((one) => one.checkVisibility() && !one.disabled && one.textContent.trim() === `+browsertest.Quoted(name)+`).click(), true)`)
}

// fill writes into the field of a form that has a label of this text.
func (w writer) fill(label, text string) {
	w.Helper()
	found := `Array.from(document.querySelectorAll('dialog[open] label')).find((one) => one.firstChild.textContent.trim() === ` + browsertest.Quoted(label) + `)`
	w.Soon("there is a field "+label, `Boolean(`+found+`)`)
	told[bool](w, `((field) => { field.value = `+browsertest.Quoted(text)+`; ['input', 'change'].forEach((name) => field.dispatchEvent(new Event(name, { bubbles: true }))); return true; })(document.getElementById(`+found+`.htmlFor))`)
}

// keys presses keys where the focus is.
func (w writer) keys(keys string, options ...chromedp.KeyOption) {
	w.Helper()
	w.Do(chromedp.KeyEvent(keys, options...))
}

// written is the text in the editor.
func (w writer) written() string {
	w.Helper()
	return told[string](w, `document.querySelector('#editor .cm-content').cmTile.view.state.sliceDoc()`)
}

// at puts the cursor behind the first place of some words in the text.
func (w writer) at(words string) {
	w.Helper()
	require.Contains(w, w.written(), words)
	told[bool](w, `((view) => { const at = view.state.doc.toString().indexOf(`+browsertest.Quoted(words)+`) + `+browsertest.Quoted(words)+`.length; view.dispatch({ selection: { anchor: at }, scrollIntoView: true }); view.focus(); return true; })(document.querySelector('#editor .cm-content').cmTile.view)`)
}

func told[T any](w writer, expression string) T {
	w.Helper()
	return browsertest.Told[T](w.Page, expression)
}
