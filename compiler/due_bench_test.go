package compiler

import (
	"bytes"
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/entry"
)

// longBook is a service book of many entries: meters read in turn, and every tenth time a
// job done.
func longBook(entries int) []byte {
	var out bytes.Buffer
	out.WriteString(entry.Head)
	machines := []string{"band-mill", "chipper", "compressor", "edger", "power-pack"}
	jobs := []string{"band-mill-guide-rollers", "chipper-knife-turn", "compressor-oil-and-filter", "edger-infeed-chain", "power-pack-return-filter"}
	for i := range entries {
		e := entry.Entry{Number: i + 1, Unit: machines[i%5], Date: dayOf(i * 3600 / entries), Meter: fmt.Sprintf("%d h", 100+i*20000/entries)}
		if i%10 < 5 {
			e.Procedure, e.Revision, e.Who = jobs[i%5], "A", "R. A."
			for step := range 20 {
				e.Done = append(e.Done, step+1)
			}
			e.Readings = []entry.Reading{{Step: 7, What: "Gap", Value: "3.4 mm", Limit: "3 to 5 mm"}}
		}
		out.Write(e.Text())
	}
	return out.Bytes()
}

func dayOf(n int) entry.Day {
	return entry.Day(fmt.Sprintf("%04d-%02d-%02d", 2022+n/360, n%360/30+1, n%30%28+1))
}

// BenchmarkDue asks a book of 100 000 entries what is due, and holds it against counting the
// lines of the book, which is the least that anybody who reads it does.
func BenchmarkDue(b *testing.B) {
	files := ReadFolder(b, "../procedures")
	result := Compile(Input{Files: files})
	book := longBook(100_000)
	b.SetBytes(int64(len(book)))
	b.ReportAllocs()
	b.ResetTimer()
	for b.Loop() {
		due, err := result.Due(Look{}, Asked{On: "2031-12-01"}, book)
		require.NoError(b, err)
		require.NotEmpty(b, due.Rows)
	}
}
