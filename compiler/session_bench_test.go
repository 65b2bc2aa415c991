package compiler

import (
	"bytes"
	"fmt"
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
	base := out["log-deck-gearbox-oil.toml"]
	at := bytes.Index(base, []byte("[[step]]\nstage = \"Open and drain\""))
	end := bytes.Index(base, []byte("[[close]]\nrestore"))
	long := append([]byte{}, base[:at]...)
	steps := 0
	for steps < 300 {
		long = append(long, base[at:end]...)
		steps += bytes.Count(base[at:end], []byte("[[step]]"))
	}
	long = append(long, base[end:]...)
	out["long.toml"] = bytes.Replace(long, []byte("Change the worm gearbox oil"), []byte("Change the worm gearbox oil often"), 1)
	return out
}

// BenchmarkKeystroke types into a procedure of 300 steps in a shop of 216 files, a letter at a
// time, and looks at what is found after each: the time that 99 of 100 letters take at most.
func BenchmarkKeystroke(b *testing.B) {
	texts := grown(b, 4)
	files := fresh(texts)
	at := slices.IndexFunc(files, func(f *source.File) bool { return f.Path == "long.toml" })
	long := files[at].Text
	var session Session
	session.Compile(Input{Files: files, Targets: []string{"long.toml"}, Whole: true})
	var times []time.Duration
	place := bytes.Index(long, []byte("the drained oil against the light"))
	letters := "with a lamp held low "
	for n := 0; b.Loop(); n++ {
		typed := letters[:n%len(letters)]
		files[at] = source.New("long.toml", slices.Concat(long[:place], []byte(typed), long[place:]))
		start := time.Now()
		result := session.Compile(Input{Files: files, Targets: []string{"long.toml"}, Whole: true})
		times = append(times, time.Since(start))
		require.NotEmpty(b, result.Jobs)
	}
	slices.Sort(times)
	b.ReportMetric(float64(len(texts)), "files")
	b.ReportMetric(float64(times[len(times)/2].Microseconds())/1000, "ms-median")
	b.ReportMetric(float64(times[len(times)*99/100].Microseconds())/1000, "ms-99th")
}
