package model

import (
	"bytes"
	"slices"
	"strings"
	"sync"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/memo"
	"benchleaf/compiler/source"
)

// Turns reads a shop that is too large to be held: of a procedure from which no other file takes
// anything, as most are, and of its second reading, no more is kept than others look at, and both
// are read once more when their turn comes. What it finds is what Read finds.
type Turns struct {
	*Set
	each   func(n int, do func(i int))
	kept   map[*File]*kept
	awake  []*File   // those that are held all the time
	asleep [][]*File // those that have turns, in order of path: a procedure, and its second reading

	lock   sync.Mutex
	spaces []space // that nobody is using
}

// space is where a file and its jobs stand while it has its turn.
type space struct {
	room  room
	rooms []*room
	memo  *memo.Memo
}

// InTurns reads the files, links all of them, and holds the names of those that have no turns
// against what is there. each does n things, in any order or side by side.
func InTurns(texts []*source.File, each func(n int, do func(i int))) *Turns {
	texts = slices.Clone(texts)
	slices.SortFunc(texts, func(a, b *source.File) int { return strings.Compare(a.Path, b.Path) })
	t := &Turns{Set: newSet(make([]*File, len(texts)), map[string]*File{}), each: each, kept: map[*File]*kept{}}
	found := make([]*kept, len(texts))
	each(len(texts), func(i int) {
		file := new(File)
		likely := bytes.Contains(texts[i].Text, []byte("[procedure]")) || bytes.Contains(texts[i].Text, []byte("[second-reading"))
		if likely {
			t.enter(file)
		}
		findings := file.read(texts[i])
		t.Files[i], found[i] = file, &kept{broken: file.Broken, read: findings}
		if likely && file.lone() {
			var refs []Ref // until they are looked up
			for _, ref := range file.refs {
				refs = append(refs, Ref{ref.Name.apart(), ref.Of})
			}
			t.leave(file)
			file.refs = refs
		}
	})
	wanted := map[string]bool{}
	for i, file := range t.Files {
		t.byPath[file.Source.Path], t.kept[file], file.number = file, found[i], i
		for _, ref := range file.refs {
			if strings.Contains(ref.Of, "procedure") {
				wanted[ref.Name.Name()] = true
			}
		}
	}
	for i, file := range t.Files {
		t.stage(t.Files[i:i+1], (*Set).link)
		if file.sleeps && file.shares != nil {
			file.layers = nil // they are put together again when its turn comes
		}
	}
	held := make([]bool, len(t.Files))
	for i, file := range t.Files {
		held[i] = held[i] || !file.sleeps || wanted[file.Name()] && file.Procedure != nil
		for _, layer := range file.layers {
			held[layer.number] = held[layer.number] || layer != file && layer != t.other(file)
		}
	}
	for _, from := range t.above {
		for layer := range from.among {
			held[layer.number] = true
		}
	}
	for i, file := range t.Files {
		other := t.other(file)
		switch {
		case held[i] || other != nil && held[other.number]:
			t.awake = append(t.awake, file)
		case other == nil:
			t.asleep = append(t.asleep, []*File{file})
		case file.Procedure != nil:
			t.asleep = append(t.asleep, []*File{file, other})
		case other.Procedure == nil: // both are second readings of nothing
			t.asleep = append(t.asleep, []*File{file})
		}
	}
	t.rouse(slices.DeleteFunc(slices.Clone(t.awake), func(file *File) bool { return !file.sleeps }))
	t.stage(t.awake, stages[1])
	for i, file := range t.Files {
		if file.sleeps && file.shares != nil {
			file.layers = file.shares.under(file, t.ownReading(file))
		}
		t.stage(t.Files[i:i+1], stages[2])
		if file.sleeps && file.shares != nil {
			file.layers = nil
		}
	}
	t.Findings = gathered(t.Files, t.kept)
	t.renamed()
	for _, file := range t.Files {
		if file.sleeps {
			file.refs = nil
		}
	}
	return t
}

// Held are the files that are there all the time, in order of path.
func (t *Turns) Held() []*File { return t.awake }

// Each gives the files that are not held their turns, in order of path, so many procedures at a
// time, after which nothing that was made of them is to be used but findings. It is called once.
func (t *Turns) Each(many int, do func(files []*File)) {
	for turn := range slices.Chunk(t.asleep, many) {
		t.with(slices.Concat(turn...), func(files []*File) {
			t.stage(files, stages[1])
			do(files)
		})
	}
}

// With gives some procedures a turn, and with them their second readings, after which nothing that
// was made of them is to be used.
func (t *Turns) With(files []*File, do func()) {
	var asleep []*File
	for _, file := range files {
		if file.sleeps {
			asleep = append(asleep, file)
			if other := t.other(file); other != nil {
				asleep = append(asleep, other)
			}
		}
	}
	t.with(asleep, func([]*File) {
		n := len(t.Findings)
		for _, file := range asleep {
			t.readAgain(file)
		}
		t.Findings = t.Findings[:n] // what it finds was kept the first time
		do()
	})
}

// with reads files that sleep, and lets them sleep again.
func (t *Turns) with(files []*File, do func(files []*File)) {
	t.rouse(files)
	do(files)
	t.each(len(files), func(i int) { t.leave(files[i]) })
}

// other is the other reading of a file; nil where there is none.
func (t *Turns) other(file *File) *File { return t.byPath[otherReading(file.Source.Path)] }

// stage does one thing to some files, and keeps what it finds.
func (t *Turns) stage(files []*File, do func(*Set, *File)) {
	for _, file := range files {
		t.keep(t.kept, file, do)
	}
}

// enter gives a file a space of its own.
func (t *Turns) enter(file *File) {
	t.lock.Lock()
	defer t.lock.Unlock()
	var one space
	if n := len(t.spaces); n > 0 {
		one, t.spaces = t.spaces[n-1], t.spaces[:n-1]
	} else {
		one.memo = new(memo.Memo)
	}
	file.room, file.rooms, file.memo = one.room, one.rooms, one.memo
}

// leave keeps of a file what others look at, and gives its space free.
func (t *Turns) leave(file *File) {
	t.lock.Lock()
	t.spaces = append(t.spaces, space{file.room, file.rooms, file.memo})
	t.lock.Unlock()
	var called *Procedure
	if p := file.Procedure; p != nil {
		called = &Procedure{Thing: Thing{Name: p.Thing.Name, At: p.At, Header: p.Header}, Title: p.Title.apart(), Short: p.Short.apart(), Machine: p.Machine.apart()}
	}
	var second *SecondReading
	if file.Second != nil {
		second = &SecondReading{Thing: Thing{At: file.Second.At, Header: file.Second.Header}}
	}
	layers := file.layers
	if file.shares != nil {
		layers = nil
	}
	*file = File{Source: file.Source, Uses: file.Uses.apart(), Procedure: called, Second: second, Broken: file.Broken, sleeps: true,
		number: file.number, unread: file.unread, layers: layers, machine: file.machine, view: file.view, shares: file.shares}
}

// rouse reads some files again.
func (t *Turns) rouse(files []*File) {
	t.each(len(files), func(i int) { t.wake(files[i]) })
	for _, file := range files { // when all of them are there
		if file.shares != nil {
			file.layers = file.shares.under(file, t.ownReading(file))
		}
	}
}

func (t *Turns) wake(file *File) {
	broken, number, layers, machine, seen, shares := file.Broken, file.number, file.layers, file.machine, file.view, file.shares
	t.enter(file)
	file.read(file.Source)
	file.Broken, file.number, file.layers, file.machine, file.view, file.shares = broken, number, layers, machine, seen, shares
}

// lone reports whether a file is a procedure or a second reading, and describes nothing for others.
func (f *File) lone() bool {
	return (f.Procedure != nil) != (f.Second != nil) && !f.unread && !f.bare && f.Shop == nil && f.Machine == nil && len(f.things) == 0 && len(f.areas) == 0
}

// apart is the text with nothing of its tree but itself.
func (t Text) apart() Text {
	if t.Value != nil {
		alone := *t.Value
		alone.Items, alone.Table = nil, nil
		t.Value = &alone
	}
	return t
}

// apart is the list with nothing of its tree but its texts.
func (l List) apart() List {
	out := List{Given: l.Given, At: l.At}
	for _, item := range l.Items {
		out.Items = append(out.Items, item.apart())
	}
	return out
}

// gathered are the findings of some files: what was found when they were read, and then what was
// found when they were linked.
func gathered(files []*File, of map[*File]*kept) []finding.Finding {
	var out []finding.Finding
	for _, file := range files {
		out = append(out, of[file].read...)
	}
	for _, file := range files {
		out = append(out, of[file].linked...)
	}
	return out
}
