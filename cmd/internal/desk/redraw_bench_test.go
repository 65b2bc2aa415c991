package desk

import (
	"context"
	"encoding/json"
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"os"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
)

// BenchmarkRedraw types a word into a procedure of the demonstration shop, a key at a time, and
// asks the desk after each, over the loopback, for what is wrong with the file and for its card
// drawn anew, as the page does: from the request to the last byte of the answer. Its floor is a
// bare server that reads the same requests as JSON and gives the same answers, which it has.
func BenchmarkRedraw(b *testing.B) {
	at, err := filepath.Abs("../../../procedures")
	require.NoError(b, err)
	d, err := Open(folder(at), 0)
	require.NoError(b, err)
	ended := make(chan error, 1)
	until, stop := context.WithCancel(b.Context())
	go func() { ended <- d.Serve(until) }()
	defer func() {
		stop()
		require.NoError(b, <-ended)
	}()
	jar, err := cookiejar.New(nil)
	require.NoError(b, err)
	client := &http.Client{Jar: jar}
	page, err := client.Get(d.Address())
	require.NoError(b, err)
	require.NoError(b, page.Body.Close())

	ask := func(address string, body []byte) []byte {
		answer, err := client.Post(address, "application/json", strings.NewReader(string(body)))
		require.NoError(b, err)
		defer answer.Body.Close()
		text, err := io.ReadAll(answer.Body)
		require.NoError(b, err)
		require.Equal(b, http.StatusOK, answer.StatusCode, string(text))
		return text
	}
	var ready []byte
	bare := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		var in checking
		if json.NewDecoder(r.Body).Decode(&in) == nil {
			w.Write(ready)
		}
	}))
	defer bare.Close()

	text, err := os.ReadFile(filepath.Join(at, oil))
	require.NoError(b, err)
	before, after, found := strings.Cut(string(text), "worn-in oil")
	require.True(b, found)
	const typed = "dark and worn-in oil"
	body, err := json.Marshal(checking{asked: asked{Path: oil}})
	require.NoError(b, err)
	ready = ask("http://"+d.address+d.base+"api/check", body) // what the page asks for when it opens
	if os.Getenv("GOGC") == "" {
		defer debug.SetGCPercent(debug.SetGCPercent(compiler.SessionGarbage)) // as the command has it
	}
	var ours, floor []time.Duration
	for b.Loop() {
		for n := range len(typed) {
			body, err := json.Marshal(checking{asked: asked{Path: oil, Unsaved: map[string]string{oil: before + typed[:n+1] + after}}})
			require.NoError(b, err)
			start := time.Now()
			ready = ask("http://"+d.address+d.base+"api/check", body)
			ours = append(ours, time.Since(start))
			start = time.Now()
			ask(bare.URL, body)
			floor = append(floor, time.Since(start))
		}
	}
	var told checkTold
	require.NoError(b, json.Unmarshal(ready, &told))
	require.NotNil(b, told.View)
	require.Empty(b, told.Findings)
	slices.Sort(ours)
	slices.Sort(floor)
	ms := func(times []time.Duration, of int) float64 {
		return float64(times[len(times)*of/100].Microseconds()) / 1000
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(ms(ours, 50), "ms-median")
	b.ReportMetric(ms(ours, 99), "ms-99th")
	b.ReportMetric(ms(floor, 50), "ms-floor")
}
