package compiler

import (
	"bytes"
	"fmt"
	"io"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/entry"
)

// entryOf is an entry of a service book of many: meters read in turn, and every tenth time a
// job done.
func entryOf(i, entries int) entry.Entry {
	machines := []string{"mill", "chipper", "compressor", "edger", "power-pack"}
	jobs := []string{"band-mill-guide-rollers", "chipper-knife-turn", "compressor-oil-and-filter", "edger-infeed-chain", "power-pack-return-filter"}
	e := entry.Entry{Number: firstNumber + i, Unit: machines[i%5], Date: dayOf(i * 3600 / entries), Meter: fmt.Sprintf("%05d h", meterOf(i, entries))}
	if i%10 < 5 {
		e.Procedure, e.Revision, e.Who = jobs[i%5], "A", "R. A."
		for step := range 20 {
			e.Done = append(e.Done, step+1)
		}
		e.Readings = []entry.Reading{{Step: 7, What: "Gap", Value: "3.4 mm", Limit: "3 to 5 mm"}}
	}
	return e
}

func meterOf(i, entries int) int { return 400 + i*20000/entries }

// firstNumber makes all numbers as long as each other, up to nine million.
const firstNumber = 1_000_000

func longBook(entries int) []byte {
	var out bytes.Buffer
	out.WriteString(entry.Head)
	for i := range entries {
		out.Write(entryOf(i, entries).Text())
	}
	return out.Bytes()
}

func dayOf(n int) entry.Day {
	return entry.Day(fmt.Sprintf("%04d-%02d-%02d", 2022+n/360, n%360/30+1, min(n%30, 27)+1))
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
		due, err := result.Due(Look{}, Asked{On: "2031-12-01"}, bytes.NewReader(book))
		require.NoError(b, err)
		require.NotEmpty(b, due.Rows)
		require.Empty(b, due.Problems)
	}
}

// madeBook is a service book that nobody holds: its entries are made when they are read, in
// tens that are as long as each other, each out of the first ten by writing other figures
// into it. So next to nothing of it is left to collect.
type madeBook struct {
	entries int
	days    []string
	ten     []byte
	made    int64      // which ten stand there
	numbers [10][]int  // where the number of each entry stands
	figures [10][2]int // and where its day and its meter do
}

func newMadeBook(entries int) *madeBook {
	m := &madeBook{entries: entries}
	for n := range 3600 {
		m.days = append(m.days, string(dayOf(n)))
	}
	for i := range 10 {
		e := entryOf(i, entries)
		text := e.Text()
		for at := 0; ; {
			next := bytes.Index(text[at:], []byte(fmt.Sprint(e.Number)))
			if next < 0 {
				break
			}
			m.numbers[i] = append(m.numbers[i], len(m.ten)+at+next)
			at += next + 1
		}
		m.figures[i] = [2]int{len(m.ten) + bytes.Index(text, []byte(e.Date)), len(m.ten) + bytes.Index(text, []byte(e.Meter))}
		m.ten = append(m.ten, text...)
	}
	return m
}

func (m *madeBook) make(ten int64) {
	if m.made == ten {
		return
	}
	m.made = ten
	for k := range 10 {
		i := int(ten)*10 + k
		for _, at := range m.numbers[k] {
			figures(m.ten[at:at+7], firstNumber+i)
		}
		copy(m.ten[m.figures[k][0]:], m.days[i*3600/m.entries])
		figures(m.ten[m.figures[k][1]:m.figures[k][1]+5], meterOf(i, m.entries))
	}
}

// figures writes a number into as many places as there are.
func figures(into []byte, number int) {
	for at := len(into) - 1; at >= 0; at-- {
		into[at], number = byte('0'+number%10), number/10
	}
}

func (m *madeBook) Size() int64 { return int64(m.entries/10) * int64(len(m.ten)) }

func (m *madeBook) ReadAt(into []byte, from int64) (n int, err error) {
	long := int64(len(m.ten))
	for n < len(into) && from < m.Size() {
		m.make(from / long)
		more := copy(into[n:], m.ten[from%long:])
		n, from = n+more, from+int64(more)
	}
	if n < len(into) {
		err = io.EOF
	}
	return n, err
}

func TestAMadeBookIsALongBook(t *testing.T) {
	made, err := io.ReadAll(io.NewSectionReader(newMadeBook(2000), 0, 1<<40))
	require.NoError(t, err)
	require.Equal(t, string(longBook(2000)), entry.Head+string(made))
}

// mostInUse is the most of the heap that is in use while something runs, and what was in use
// before. For that time what nobody holds any more is collected as soon as it makes up 2 %: the
// program then helps to collect before it may take more, so what is in use is what is held, and
// 2 % and a little. It is read every tenth of a millisecond, without stopping the program.
func mostInUse(run func()) (before, most uint64) {
	defer debug.SetGCPercent(debug.SetGCPercent(2))
	runtime.GC()
	sample := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
	metrics.Read(sample)
	before = sample[0].Value.Uint64()
	most = before
	stop, stopped := make(chan bool), make(chan bool)
	go func() {
		defer close(stopped)
		for {
			select {
			case <-stop:
				return
			case <-time.After(100 * time.Microsecond):
				metrics.Read(sample)
				most = max(most, sample[0].Value.Uint64())
			}
		}
	}()
	run()
	close(stop)
	<-stopped
	return before, most
}

// BenchmarkDueMemory says how much memory what is due takes, by the number of entries, which
// all lie in the same ten years: the most of the heap that is in use, the shop with it, and how
// much of that is above the shop.
func BenchmarkDueMemory(b *testing.B) {
	result := Compile(Input{Files: ReadFolder(b, "../procedures")})
	most := map[int]uint64{}
	for _, entries := range []int{1_000, 10_000, 100_000, 1_000_000} {
		b.Run(fmt.Sprint(entries), func(b *testing.B) {
			book, above := newMadeBook(entries), uint64(0)
			for b.Loop() {
				before, inUse := mostInUse(func() {
					due, err := result.Due(Look{}, Asked{On: "2031-12-01"}, book)
					require.NoError(b, err)
					require.NotEmpty(b, due.Rows)
					require.Empty(b, due.Problems)
				})
				most[entries], above = max(most[entries], inUse), max(above, inUse-before)
			}
			b.ReportMetric(float64(most[entries]), "B-in-use")
			b.ReportMetric(float64(above), "B-above-shop")
			if most[1_000] > 0 {
				b.ReportMetric(float64(most[entries])/float64(most[1_000]), "of-1000")
			}
		})
	}
}
