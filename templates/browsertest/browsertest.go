// Package browsertest opens pages that templates make in a headless Chromium, for tests that use
// them as a person does. It must not know what is on a page.
package browsertest

import (
	"context"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// axeFolder names the environment variable with the folder that holds axe.min.js.
const axeFolder = "BENCHLEAF_AXE"

// Page is a page that is open in a browser.
type Page struct {
	*testing.T
	Tab context.Context
}

// browser is the path of a Chromium; the test is skipped where there is none.
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

// Open opens an address in a tab of a size in pixels that is closed with the test, in a light
// scheme. The test is skipped where there is no Chromium; at is asked for the address only then.
func Open(t *testing.T, at func() string, width, height int64, limit time.Duration) Page {
	t.Helper()
	path := browser(t)
	address := at()
	options := []chromedp.ExecAllocatorOption{chromedp.ExecPath(path)}
	if os.Geteuid() == 0 {
		options = append(options, chromedp.NoSandbox) // Chromium refuses its sandbox to the administrator
	}
	tab, stop := chromedp.NewContext(context.Background(), chromedp.WithAllocatorOptions(options...))
	t.Cleanup(stop)
	require.NoError(t, chromedp.Do(tab, chromedp.EmulateViewport(width, height)))
	limited, cancel := context.WithTimeout(tab, limit)
	t.Cleanup(cancel)
	p := Page{t, limited}
	p.Screen("light")
	p.Do(chromedp.Navigate(address))
	return p
}

// Do does some steps.
func (p Page) Do(steps ...chromedp.Action[chromedp.Void]) {
	p.Helper()
	require.NoError(p, chromedp.Do(p.Tab, steps...))
}

// Click clicks what a CSS pattern finds.
func (p Page) Click(pattern string) {
	p.Helper()
	p.Do(chromedp.Click(chromedp.CSS(pattern)))
}

// Text is the text of what a CSS pattern finds.
func (p Page) Text(pattern string) string {
	p.Helper()
	return Told[string](p, `document.querySelector(`+Quoted(pattern)+`).textContent`)
}

// Soon wants an expression to hold within 15 seconds.
func (p Page) Soon(says, expression string) {
	p.Helper()
	require.Eventually(p, func() bool { return Told[bool](p, expression) }, 15*time.Second, 50*time.Millisecond, says)
}

// Screen is light or dark, and nothing moves on it.
func (p Page) Screen(scheme string) {
	p.Helper()
	_, err := chromedp.Call(p.Tab, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{
		{Name: "prefers-color-scheme", Value: scheme}, {Name: "prefers-reduced-motion", Value: "reduce"}}})
	require.NoError(p, err)
}

// Told is what an expression of the page comes to.
func Told[T any](p Page, expression string) T {
	p.Helper()
	out, err := chromedp.Run(p.Tab, chromedp.Evaluate[T](expression))
	require.NoError(p, err, expression)
	return out
}

// Quoted is a text as a script writes it, which ends no script of a page.
func Quoted(text string) string {
	out, err := json.Marshal(text)
	if err != nil {
		panic(err) // a string always can
	}
	return strings.ReplaceAll(string(out), "</", `<\/`)
}

// Barriers looks for barriers with axe-core, whose script axe.min.js is in the folder that
// BENCHLEAF_AXE names; where it names none, the test is skipped.
type Barriers struct{ script string }

// NewBarriers reads axe-core.
func NewBarriers(t *testing.T) Barriers {
	t.Helper()
	folder := os.Getenv(axeFolder)
	if folder == "" {
		t.Skip(axeFolder + " names no folder with axe.min.js")
	}
	script, err := os.ReadFile(filepath.Join(folder, "axe.min.js"))
	require.NoError(t, err)
	return Barriers{string(script)}
}

// Brought puts axe-core into a page.
func (b Barriers) Brought(p Page) {
	p.Helper()
	Told[bool](p, b.script+";true")
}

// Look wants no barrier on a page as it is, light and dark; which says which page it is. It leaves it light.
func (b Barriers) Look(p Page, which string) {
	p.Helper()
	for _, scheme := range []string{"light", "dark"} {
		p.Screen(scheme)
		p.Do(chromedp.Sleep(200 * time.Millisecond))
		found, err := chromedp.Run(p.Tab, chromedp.Evaluate[[]string](`axe.run().then((found) => found.passes.length < 8 ? ['hardly anything was looked at'] : found.violations.map((one) => one.id + ': ' + one.help + ': ' + one.nodes.map((node) => node.html.slice(0, 300) + ' ' + node.failureSummary).join('; ')))`, chromedp.EvalAwaitPromise))
		require.NoError(p, err)
		assert.Empty(p, found, "%s, %s", which, scheme)
	}
	p.Screen("light")
}
