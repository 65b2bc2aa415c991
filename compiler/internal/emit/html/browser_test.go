package html_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"benchleaf/compiler/internal/emit/html"
	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/pages/pagestest"
	"benchleaf/compiler/internal/plan"
	"benchleaf/templates/browsertest"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// bench is a page that is open in a browser.
type bench struct{ browsertest.Page }

// opened writes the page of a card to the disk and opens it from there.
func opened(t *testing.T, card plan.Card, width, height int64) bench {
	t.Helper()
	return bench{browsertest.Open(t, func() string {
		page, err := html.Draw(card, figures)
		require.NoError(t, err)
		file := filepath.Join(t.TempDir(), card.Name+".html")
		require.NoError(t, os.WriteFile(file, page, 0o666))
		return "file://" + file
	}, width, height, 2*time.Minute)}
}

func told[T any](b bench, expression string) T {
	b.Helper()
	return browsertest.Told[T](b.Page, expression)
}

// press uses a button of the bar at the bottom, when a hand that moves on would.
func (b bench) press(pattern string) {
	b.Helper()
	b.Do(chromedp.Sleep(400 * time.Millisecond))
	b.Click(pattern)
}

func (b bench) write(pattern, text string) {
	b.Helper()
	told[bool](b, `((field) => { field.value = ''; return ['input', 'change'].map((name) => field.dispatchEvent(new Event(name, { bubbles: true })))[1]; })(document.querySelector(`+browsertest.Quoted(pattern)+`))`)
	b.Do(chromedp.SendKeys(chromedp.CSS(pattern), text), chromedp.Blur(chromedp.CSS(pattern)))
}

func (b bench) shown(pattern string) bool {
	b.Helper()
	return told[bool](b, `document.querySelector(`+browsertest.Quoted(pattern)+`).checkVisibility()`)
}

func (b bench) checked(pattern string) bool {
	b.Helper()
	return told[bool](b, `document.querySelector(`+browsertest.Quoted(pattern)+`).checked`)
}

// onTheBench is the sample card with a wait that is soon over.
func onTheBench() plan.Card {
	card := pagestest.Card()
	card.Sections[1].Steps[4].Seconds = 1 // step 9
	return card
}

func TestTicksAndReadingsSurviveAReload(t *testing.T) {
	b := opened(t, onTheBench(), 360, 740)
	assert.True(t, b.shown("#before") && !b.shown("#step-1"), "one step at a time on a phone")
	b.press("#on")
	assert.True(t, b.shown("#step-1") && !b.shown("#before"))
	b.press("#on") // done, next
	assert.True(t, b.shown("#step-2 .caution"), "the message stands at its step")
	b.Click("#done-2")
	b.press("#on")
	b.Click("#left-3")
	b.write("#why-3", "the tester is away")
	b.Do(chromedp.Reload())
	assert.True(t, b.checked("#done-1") && b.checked("#done-2") && !b.checked("#done-3") && b.checked("#left-3"))
	assert.True(t, b.shown("#step-3"), "the page opens where it was left")
	assert.Equal(t, "the tester is away", told[string](b, `document.getElementById('why-3').value`))
	b.Click("#done-3")
	assert.False(t, b.checked("#left-3"), "a step that is done is not left out")

	b.Click("#back")
	b.press("#back")
	b.press("#back")
	b.Click("input[value=all]")
	assert.True(t, b.shown("#step-1") && b.shown("#step-18"))
	b.Click("#again")
	b.Click("#keep")
	assert.True(t, b.checked("#done-1"), "nothing is wiped without being asked for twice")
	b.Click("#again")
	b.Click("#wipe")
	assert.False(t, b.checked("#done-1") || b.checked("#done-2"))
	b.Do(chromedp.Reload())
	assert.False(t, b.checked("#done-1"))
}

// Ticks are kept under what the page says: they never stand at other steps than they were made at.
func TestTicksOfAnotherTextAreNotTaken(t *testing.T) {
	card := onTheBench()
	b := opened(t, card, 1024, 768)
	b.Click("#done-1")
	card.Sections[0].Steps[0].Action = []plan.Run{{Text: "Empty the deck."}}
	page, err := html.Draw(card, figures)
	require.NoError(t, err)
	file := filepath.Join(t.TempDir(), "changed.html")
	require.NoError(t, os.WriteFile(file, page, 0o666))
	b.Do(chromedp.Navigate("file://" + file))
	assert.False(t, b.checked("#done-1"))
	assert.True(t, b.shown("#changed"))
}

func TestAReadingOutsideItsLimitTellsWhatToDo(t *testing.T) {
	b := opened(t, onTheBench(), 1024, 768)
	field, verdict := "#reading-11-1", "#reading-11-1-verdict"
	for _, one := range []struct{ text, want string }{
		{"34", "Outside the limit: 34 mm"}, {"19,9", "Outside the limit: 19.9 mm"}, {"25", "Within the limit: 25 mm"}, {"20", "Within the limit: 20 mm"},
		{"30 mm", "Within the limit: 30 mm"}, {"59/2", "Within the limit: 59/2 mm"}, {"29 3/4", "Within the limit: 29-3/4 mm"},
		{"loose", "This is no figure. Write one such as 12.5."}, {"", ""},
	} {
		text, want := one.text, one.want
		b.write(field, text)
		outside := strings.HasPrefix(want, "Outside")
		if outside {
			want += "Set the chain by its own card before the conveyor runs again."
		}
		assert.Equal(t, want, b.Text(verdict), "%q", text)
		assert.Equal(t, outside || text == "loose", told[bool](b, `document.querySelector('`+field+`').getAttribute('aria-invalid') === 'true'`), "%q", text)
	}
	b.Do(chromedp.SendKeys(chromedp.CSS(field), "34")) // no key that ends it
	b.Soon("told while the hand rests", `document.querySelector('`+verdict+`').classList.contains('outside')`)
	assert.True(t, told[bool](b, `document.querySelector('.rail [data-to=step-11]').classList.contains('outside')`))
	b.Do(chromedp.Reload())
	assert.Contains(t, b.Text(verdict), "Outside the limit: 34 mm", "it stays told")
}

func TestATimerRunsAndIsOver(t *testing.T) {
	b := opened(t, onTheBench(), 1024, 768)
	told[bool](b, `(navigator.vibrate = (beats) => { window.beats = beats; return true; }, true)`)
	timer := "#step-9 .timer "
	assert.Equal(t, "0:01", b.Text(timer+".clock"))
	b.Click(timer + ".run")
	b.Soon("it is over", `document.querySelector('#step-9 .over').textContent === 'The time is over.'`)
	assert.Contains(t, b.Text(timer+".clock"), "over by")
	assert.Equal(t, "Timer of step 9: The time is over.", b.Text("#alarm"))
	assert.NotEmpty(t, told[[]int](b, `window.beats`))
	b.Do(chromedp.Reload())
	assert.Contains(t, b.Text(timer+".clock"), "over by", "it goes by the clock")
	b.Click(timer + ".zero")
	assert.Equal(t, "0:01", b.Text(timer+".clock"))
	assert.Empty(t, b.Text("#alarm"))

	long := "#step-18 .timer "
	assert.Equal(t, "5:00", b.Text(long+".clock"))
	b.Click(long + ".run")
	b.Soon("it counts down", `document.querySelector('#step-18 .clock').textContent === '4:58'`)
	b.Click(long + ".run")
	assert.Equal(t, "Go on", b.Text(long+".run"))
	at := b.Text(long + ".clock")
	b.Do(chromedp.Sleep(1200*time.Millisecond), chromedp.Reload())
	assert.Equal(t, at, b.Text(long+".clock"), "it pauses over a reload")
}

func TestTheEntryIsReadAndHeldAgainstTheCard(t *testing.T) {
	card := onTheBench()
	b := opened(t, card, 1024, 768)
	whole := func() entry.Entry {
		t.Helper()
		entries, err := entry.Read([]byte(told[string](b, `document.getElementById('entry').value`)))
		require.NoError(t, err)
		require.Len(t, entries, 1)
		assert.Empty(t, entries[0].Check(card))
		return entries[0]
	}
	assert.Len(t, whole().Open, 18)
	b.Click("#done-1")
	b.Click("#left-3")
	b.write("#why-3", `no "tester"`)
	b.write("#reading-11-1", "34,5")
	b.write("#record-1", "1.1")
	b.write("#record-4", "1234")
	b.write("#record-6", "R. A.")
	remarks := "worn \\ \"chain\" \u007f\tÆ 🔧 '''\n[[entry]]\n# end"
	told[bool](b, `((field) => { field.value = `+browsertest.Quoted(remarks)+` + '\ud83d'; return field.dispatchEvent(new Event('input', { bubbles: true })); })(document.getElementById('remarks'))`)
	got := whole()
	assert.Equal(t, told[string](b, `new Date().toLocaleDateString('sv-SE')`), string(got.Date))
	got.Date = ""
	assert.Equal(t, entry.Entry{Procedure: card.Name, Revision: "C", Machine: card.Machine, Variant: card.Variant, Who: "R. A.", Meter: "1234 h",
		Done: []int{1}, Open: []int{2, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18}, Remarks: remarks + "\ufffd",
		Readings: []entry.Reading{{Step: 11, What: "Chain slack", Value: "34.5 mm", Limit: "20 to 30 mm", Outside: true}, {What: "Oil drained", Value: "1.1 L", Limit: "0.9 to 1.2 L"}},
		LeftOut:  []entry.LeftOut{{Step: 3, Why: `no "tester"`}}}, got)

	b.write("#record-5", "") // a date that was wiped is that of the device
	assert.NotEmpty(t, whole().Date)
	told[bool](b, `(HTMLAnchorElement.prototype.click = function () { window.saved = this.download; }, true)`)
	b.Click("#save")
	assert.Regexp(t, `^log-deck-gearbox-oil-.*-\d{4}-\d\d-\d\d\.toml$`, told[string](b, `window.saved`))
	assert.Equal(t, "The file went to your downloads.", b.Text("#taken"))
	b.Click("#again")
	assert.False(t, b.shown("#sure-taken"), "what was saved is not warned of")
}

func TestEveryTargetIsLarge(t *testing.T) {
	for _, size := range []struct{ width, height int64 }{{360, 740}, {1024, 768}} {
		b := opened(t, onTheBench(), size.width, size.height)
		b.Click("input[value=all]")
		b.Click("#left-3")
		small := told[[]string](b, `Array.from(document.querySelectorAll('button, input, textarea, a')).filter((one) => one.checkVisibility() && !one.matches('.jump')).map((one) => one.closest('label') || one).filter((one) => {
			const box = one.getBoundingClientRect();
			return box.width < 48 || box.height < 48;
		}).map((one) => one.outerHTML)`)
		assert.Empty(t, small, "%d wide", size.width)
		assert.LessOrEqual(t, told[int64](b, `document.documentElement.scrollWidth`), size.width, "nothing reaches over the side")
		assert.Zero(t, told[int](b, `performance.getEntriesByType('resource').length`), "nothing was asked for")
	}
}

func TestAKeyboardReachesAndMoves(t *testing.T) {
	b := opened(t, onTheBench(), 360, 740)
	b.Do(chromedp.KeyEvent("\t"))
	assert.Equal(t, "jump", told[string](b, `document.activeElement.className`))
	b.Do(chromedp.KeyEvent("\r"))
	assert.Equal(t, "says-1", told[string](b, `document.activeElement.id`), "the heading of the first step")
	b.Do(chromedp.KeyEvent("\t"), chromedp.KeyEvent(" "))
	assert.False(t, b.checked("#done-1"), "the tick is before its heading")
	b.Do(chromedp.Focus(chromedp.CSS("#done-1")), chromedp.KeyEvent(" "))
	assert.True(t, b.checked("#done-1"))
}

func TestNoBarrierIsFound(t *testing.T) {
	barriers := browsertest.NewBarriers(t)
	for _, size := range []struct{ width, height int64 }{{360, 740}, {1024, 768}} {
		b := opened(t, onTheBench(), size.width, size.height)
		b.Click("input[value=all]")
		b.Click("#left-3")
		b.Click("#done-4")
		b.write("#reading-11-1", "34")
		b.write("#record-1", "1.1")
		b.write("#record-3", "hot")
		b.Click("#step-9 .run")
		b.Do(chromedp.Sleep(1500 * time.Millisecond))
		barriers.Brought(b.Page)
		look := func(name string) {
			t.Helper()
			barriers.Look(b.Page, fmt.Sprintf("%s, %d wide", name, size.width))
		}
		look("all steps")
		b.Click("#again")
		look("asked whether to wipe")
		b.Click("#keep")
		told[bool](b, `(window.scrollTo(0, 0), true)`)
		b.Click("input[value=one]")
		for _, pane := range []string{"before", "step-3", "step-11", "after"} {
			told[bool](b, `(document.querySelector('.rail [data-to=`+pane+`]').click(), true)`)
			look(pane)
		}
	}
}
