// Package mutation stands, while a mutation check runs, in the code that is checked: each of its
// calls gives what the code gave, but for the one mutant whose number stands in the environment.
// It is compiled into the tests by an overlay only, and into nothing else.
package mutation

import (
	"cmp"
	"os"
	"runtime/metrics"
	"slices"
	"strconv"
	"sync"
	"time"
)

var (
	now    int // the mutant that lives in this run; 0 is none
	marks  *os.File
	marked map[string]bool
	test   string // the one that runs
	guard  sync.Mutex
)

func init() {
	now, _ = strconv.Atoi(os.Getenv("MUTANT"))
	if path := os.Getenv("MUTANT_MARKS"); path != "" {
		marks, _ = os.OpenFile(path, os.O_APPEND|os.O_WRONLY|os.O_CREATE, 0o644)
		marked = map[string]bool{}
	}
	if now > 0 {
		go stopWhenLarge()
	}
}

// most is how much memory a mutant may take: one that loops must not take all there is.
const most = 2 << 30

func stopWhenLarge() {
	sample := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
	for ; ; time.Sleep(100 * time.Millisecond) {
		if metrics.Read(sample); sample[0].Value.Uint64() > most {
			os.Exit(3)
		}
	}
}

// On reports whether a mutant lives, and notes that it would change something here.
func On(id int) bool {
	if marks != nil {
		mark(id)
	}
	return id == now
}

func mark(id int) {
	guard.Lock()
	defer guard.Unlock()
	if line := strconv.Itoa(id) + "\t" + test + "\n"; !marked[line] {
		marked[line] = true
		marks.WriteString(line)
	}
}

// Test says that a test begins, and gives what says that it ends.
func Test(name string) func() {
	guard.Lock()
	defer guard.Unlock()
	before := test
	test = name
	return func() {
		guard.Lock()
		defer guard.Unlock()
		test = before
	}
}

// True is a condition, forced to hold by its mutant.
func True(id int, x bool) bool { return x || On(id) }

// False is a condition, forced not to hold by its mutant.
func False(id int, x bool) bool { return x && !On(id) }

// Not is a condition, turned round by its mutant.
func Not(id int, x bool) bool { return x != On(id) }

// other is what holds, or what the mutant makes of it where that is another.
func other(id int, x, y bool) bool {
	if x != y && On(id) {
		return y
	}
	return x
}

// Less is a < b; the mutant makes it a <= b.
func Less[T cmp.Ordered](id int, a, b T) bool { return other(id, a < b, a <= b) }

// LessEqual is a <= b; the mutant makes it a < b.
func LessEqual[T cmp.Ordered](id int, a, b T) bool { return other(id, a <= b, a < b) }

// More is a > b; the mutant makes it a >= b.
func More[T cmp.Ordered](id int, a, b T) bool { return other(id, a > b, a >= b) }

// MoreEqual is a >= b; the mutant makes it a > b.
func MoreEqual[T cmp.Ordered](id int, a, b T) bool { return other(id, a >= b, a > b) }

type number interface {
	~int | ~int8 | ~int16 | ~int32 | ~int64 | ~uint | ~uint8 | ~uint16 | ~uint32 | ~uint64 | ~float32 | ~float64
}

// Sum is a + b; the mutant makes it a - b.
func Sum[T number](id int, a, b T) T { return swap(id, a+b, a-b) }

// Difference is a - b; the mutant makes it a + b.
func Difference[T number](id int, a, b T) T { return swap(id, a-b, a+b) }

// Product is a * b; the mutant makes it a / b.
func Product[T number](id int, a, b T) T {
	if b == 0 {
		return a * b
	}
	return swap(id, a*b, a/b)
}

// Quotient is a / b; the mutant makes it a * b.
func Quotient[T number](id int, a, b T) T { return swap(id, a/b, a*b) }

func swap[T number](id int, x, y T) T {
	if x != y && On(id) {
		return y
	}
	return x
}

// Pick is x; the mutant makes it y.
func Pick[T any](id int, x, y T) T {
	if On(id) {
		return y
	}
	return x
}

// Drop is a list; its mutants, one an entry from id on, each leave one out.
func Drop[S ~[]E, E any](id int, list S) S {
	for i := range list {
		if On(id + i) {
			return slices.Delete(slices.Clone(list), i, i+1)
		}
	}
	return list
}

// Without is a map; its mutant leaves a key out.
func Without[M ~map[K]V, K comparable, V any](id int, all M, key K) M {
	if On(id) {
		delete(all, key)
	}
	return all
}
