package compiler

import (
	"bytes"
	"fmt"
	"os"
	"runtime/debug"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"benchleaf/compiler/source"
)

// grown is a shop of so many copies of the demonstration shop's machines and procedures, each
// machine with a name of its own, and one procedure of 300 steps.
func grown(b testing.TB, copies int) map[string][]byte {
	texts := shopTexts(b)
	out := map[string][]byte{}
	var names []string // of machines and procedures
	for path := range texts {
		if !strings.HasPrefix(path, "shop") && !strings.HasPrefix(path, "second/") {
			names = append(names, strings.TrimSuffix(strings.TrimPrefix(strings.TrimPrefix(path, "machines/"), "second/"), ".toml"))
		}
	}
	for path, text := range texts {
		out[path] = text
		if strings.HasPrefix(path, "shop") {
			continue
		}
		for n := 1; n < copies; n++ {
			copied := string(text)
			for _, name := range names {
				copied = strings.ReplaceAll(copied, `"`+name+`"`, fmt.Sprintf(`"%s-%d"`, name, n))
			}
			out[strings.TrimSuffix(path, ".toml")+fmt.Sprintf("-%d.toml", n)] = []byte(copied)
		}
	}
	out["long.toml"] = long(out["log-deck-gearbox-oil.toml"])
	return out
}

// long is a procedure of 300 steps: the work of another again and again, each time in words of
// its own.
func long(base []byte) []byte {
	at := bytes.Index(base, []byte("[[step]]\nstage = \"Open and drain\""))
	end := bytes.Index(base, []byte("[[close]]\nrestore"))
	round := string(base[at:end])
	out := append([]byte{}, base[:at]...)
	for n := 0; n*strings.Count(round, "[[step]]") < 300; n++ {
		turn := fmt.Sprintf("turn %d", n+1)
		out = append(out, strings.NewReplacer(
			"the housing round both plugs and the breather", "the housing round both plugs and the breather, "+turn,
			"Set the drain pan below the drain plug.", "Set the drain pan below the drain plug, "+turn+".",
			"It lets air in, so that the oil runs freely.", "It lets air in, so that the oil runs freely, "+turn+".",
			"the last thread of oil breaks into drops", "the last thread of oil breaks into drops, "+turn,
			"the drained oil against the light", "the drained oil against the light, "+turn,
			"a bronze shimmer and a little grey paste", "a bronze shimmer and a little grey paste, "+turn,
			"Keep a sample of flakes", "Keep a sample, "+turn+", of flakes",
			"in by hand.", "in by hand, "+turn+".",
			"the middle of the sight glass", "the middle of the sight glass, "+turn,
		).Replace(round)...)
	}
	out = append(out, base[end:]...)
	return bytes.Replace(out, []byte("Change the worm gearbox oil"), []byte("Change the worm gearbox oil often"), 1)
}

// keystroke is one change of a text: what is typed at a place, and how many bytes go there before.
type keystroke struct {
	at, gone int
	typed    string
}

// typing is what somebody types into the procedure of 300 steps, a key at a time: words and
// amounts are changed, a name is wrong while it is typed, and steps come and go.
func typing(b testing.TB, text []byte) (out []keystroke) {
	after := func(share int, words string) int {
		from := len(text) * share / 100
		at := bytes.Index(text[from:], []byte(words))
		require.GreaterOrEqual(b, at, 0)
		return from + at + len(words)
	}
	write := func(at int, words string) {
		for i := range len(words) {
			out = append(out, keystroke{at + i, 0, words[i : i+1]})
		}
	}
	wipe := func(at, n int) {
		for i := range n {
			out = append(out, keystroke{at + n - 1 - i, 1, ""})
		}
	}
	for share := 10; share < 100; share += 25 {
		words := " with a lamp held low"
		place := after(share, "inspect = \"the drained oil")
		write(place, words)
		wipe(place, len(words))
		place = after(share, "drain = \"gearbox\"\ninto = \"drain-pan-8") // another pan, which is nowhere, and back
		wipe(place-1, 1)
		write(place-1, "9")
		wipe(place-1, 1)
		write(place-1, "8")
		place = after(share, "wait = \"15 to 2")
		wipe(place-1, 1)
		write(place-1, "3")
		wipe(place-1, 1)
		write(place-1, "2")
		step := "[[step]]\nsay = \"Wipe the rim dry.\"\n\n"
		place = after(share, "area = [\"gearbox\"]\n\n")
		write(place, step)
		out = append(out, keystroke{place, len(step), ""}) // cut at once
		there := bytes.Index(text[place:], []byte("[[step]]"))
		next := bytes.Index(text[place+there+1:], []byte("[[step]]"))
		cut := string(text[place+there : place+there+1+next])
		out = append(out, keystroke{place + there, len(cut), ""}, keystroke{place + there, 0, cut}) // a step goes, and is put back
	}
	return out
}

// BenchmarkKeystroke types into a procedure of 300 steps in a shop of 216 files, a key at a
// time, and looks at what is found after each: the time that 99 of 100 keys take at most. Garbage
// is collected as the editor service and the desk have it, unless GOGC says otherwise.
func BenchmarkKeystroke(b *testing.B) {
	texts := grown(b, 4)
	if os.Getenv("GOGC") == "" {
		defer debug.SetGCPercent(debug.SetGCPercent(SessionGarbage))
	}
	files := fresh(texts)
	at := slices.IndexFunc(files, func(f *source.File) bool { return f.Path == "long.toml" })
	keys := typing(b, files[at].Text)
	require.GreaterOrEqual(b, len(keys), 300)
	var session Session
	compile := func() *Result {
		return session.Compile(Input{Files: files, Targets: []string{"long.toml"}, Whole: true})
	}
	require.Len(b, compile().Jobs, 2)
	var times []time.Duration
	found, text := 0, files[at].Text
	for b.Loop() {
		for _, key := range keys {
			start := time.Now()
			text = slices.Concat(text[:key.at], []byte(key.typed), text[key.at+key.gone:])
			files[at] = source.New("long.toml", text)
			result := compile()
			times = append(times, time.Since(start))
			found += len(result.Findings)
		}
	}
	require.Equal(b, string(texts["long.toml"]), string(text))
	require.NotZero(b, found)
	slices.Sort(times)
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(float64(len(texts)), "files")
	b.ReportMetric(float64(len(keys)), "keys")
	b.ReportMetric(float64(times[len(times)/2].Microseconds())/1000, "ms-median")
	b.ReportMetric(float64(times[len(times)*99/100].Microseconds())/1000, "ms-99th")
	b.ReportMetric(float64(times[len(times)-1].Microseconds())/1000, "ms-most")
}
