package desk

import (
	"context"
	"encoding/json"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// axeFolder names the environment variable with the folder that holds axe.min.js.
const axeFolder = "BENCHLEAF_AXE"

// writer is somebody at the desk: the page of a folder, open in a browser.
type writer struct {
	*testing.T
	tab context.Context
}

func browser(t *testing.T) string {
	t.Helper()
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	t.Skip("Chromium is not installed")
	return ""
}

// opened opens the desk of a folder in a browser.
func opened(t *testing.T, at string, width, height int64) writer {
	t.Helper()
	path := browser(t)
	d := served(t, at)
	options := []chromedp.ExecAllocatorOption{chromedp.ExecPath(path)}
	if os.Geteuid() == 0 {
		options = append(options, chromedp.NoSandbox) // Chromium refuses its sandbox to the administrator
	}
	tab, stop := chromedp.NewContext(context.Background(), chromedp.WithAllocatorOptions(options...))
	t.Cleanup(stop)
	require.NoError(t, chromedp.Do(tab, chromedp.EmulateViewport(width, height)))
	limited, cancel := context.WithTimeout(tab, 3*time.Minute)
	t.Cleanup(cancel)
	w := writer{t, limited}
	w.screen("light")
	w.do(chromedp.Navigate(d.Address()))
	w.soon("the desk is ready", `document.body.dataset.ready === 'true'`)
	told[bool](w, `(window.addEventListener('error', (event) => (window.wrongs = window.wrongs || []).push(event.message)), document.addEventListener('securitypolicyviolation', (event) => (window.wrongs = window.wrongs || []).push(event.violatedDirective + ' ' + event.blockedURI)), true)`)
	t.Cleanup(func() {
		if limited.Err() == nil {
			require.Empty(t, told[[]string](w, `window.wrongs || []`), "the page broke its own policy or failed")
		}
	})
	return w
}

func (w writer) do(steps ...chromedp.Action[chromedp.Void]) {
	w.Helper()
	require.NoError(w, chromedp.Do(w.tab, steps...))
}

func (w writer) click(pattern string) {
	w.Helper()
	w.do(chromedp.Click(chromedp.CSS(pattern)))
}

// named clicks the visible button that is called so.
func (w writer) named(name string) {
	w.Helper()
	w.soon("there is a button "+name, `Array.from(document.querySelectorAll('button')).some((one) => one.checkVisibility() && !one.disabled && one.textContent.trim() === `+inScript(name)+`)`)
	told[bool](w, `(Array.from(document.querySelectorAll('button')).find((one) => one.checkVisibility() && !one.disabled && one.textContent.trim() === `+inScript(name)+`).click(), true)`)
}

// fill writes into the field of a form that has a label of this text.
func (w writer) fill(label, text string) {
	w.Helper()
	found := `Array.from(document.querySelectorAll('dialog[open] label')).find((one) => one.firstChild.textContent.trim() === ` + inScript(label) + `)`
	w.soon("there is a field "+label, `Boolean(`+found+`)`)
	told[bool](w, `((field) => { field.value = `+inScript(text)+`; ['input', 'change'].forEach((name) => field.dispatchEvent(new Event(name, { bubbles: true }))); return true; })(document.getElementById(`+found+`.htmlFor))`)
}

// keys presses keys where the focus is.
func (w writer) keys(keys string, options ...chromedp.KeyOption) {
	w.Helper()
	w.do(chromedp.KeyEvent(keys, options...))
}

func (w writer) soon(says, expression string) {
	w.Helper()
	require.Eventually(w, func() bool { return told[bool](w, expression) }, 15*time.Second, 50*time.Millisecond, says)
}

func (w writer) text(pattern string) string {
	w.Helper()
	return told[string](w, `document.querySelector(`+inScript(pattern)+`).textContent`)
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
	told[bool](w, `((view) => { const at = view.state.doc.toString().indexOf(`+inScript(words)+`) + `+inScript(words)+`.length; view.dispatch({ selection: { anchor: at }, scrollIntoView: true }); view.focus(); return true; })(document.querySelector('#editor .cm-content').cmTile.view)`)
}

// screen is light or dark.
func (w writer) screen(scheme string) {
	w.Helper()
	_, err := chromedp.Call(w.tab, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{
		{Name: "prefers-color-scheme", Value: scheme}, {Name: "prefers-reduced-motion", Value: "reduce"}}})
	require.NoError(w, err)
}

func told[T any](w writer, expression string) T {
	w.Helper()
	out, err := chromedp.Run(w.tab, chromedp.Evaluate[T](expression))
	require.NoError(w, err, expression)
	return out
}

func inScript(text string) string {
	out, err := json.Marshal(text)
	if err != nil {
		panic(err) // a string always can
	}
	return strings.ReplaceAll(string(out), "</", `<\/`)
}
