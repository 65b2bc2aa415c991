package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/gob"
	"encoding/json"
	"errors"
	"hash"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"sync"
	"sync/atomic"

	"benchleaf/cmd/internal/cache"
	"benchleaf/compiler"
)

// A build that would write what is there already is told by a record: what a build of the same
// files by the same program said, and which files it left. The key of a record is the digest of
// all that a build looks at, so a record is never wrong; it is of no use where a file that it
// names is not there any more as it was left.

// order is what a command was told to build.
type order struct {
	Command, Out, Variant, Machine string
	Look                           compiler.Look
}

// rebuild is one run of a command that builds, with the shops it has read.
type rebuild struct {
	shops []*shop
	cache *cache.Store
	key   cache.Key // of the record
	by    *caller
	maker cache.Key // the program
	cards *cards    // nil where none are kept
}

// kept is where cards are kept; nil where nothing is.
func (r *rebuild) kept() compiler.Keep {
	if r.cache == nil {
		return nil
	}
	r.cards = openCards(r.cache, r.maker, r.shops)
	return r.cards
}

// begin reads the shops. Where all that the order asks for is there, it says so as a full run would, and
// gives nil with the end of the command.
func (by *caller) begin(o order, paths []string) (*rebuild, error) {
	r := &rebuild{by: by, cache: cache.Open(by.env, by.folder)}
	if r.cache == nil {
		var err error
		if r.shops, err = by.asked(paths, o.Out, o.Look, compiler.Uses); err != nil {
			return nil, err
		}
		return r, nil
	}
	defer r.cache.Close()
	program := identify(r.cache)
	known := usesBefore(r.cache, program, by.folder, paths)
	var err error
	if r.shops, err = by.asked(paths, o.Out, o.Look, known.of); err != nil {
		return nil, err
	}
	itself, ok := program.wait()
	if !ok {
		r.cache = nil
		return r, nil
	}
	known.keep(itself)
	r.maker = itself
	if r.key, err = r.keyOf(itself, o); err != nil {
		return nil, err
	}
	var last record
	text, ok := r.cache.Get(r.key)
	if !ok || gob.NewDecoder(bytes.NewReader(text)).Decode(&last) != nil {
		return r, nil
	}
	there, renewed := last.holds()
	if !there {
		return r, nil
	}
	if renewed {
		r.put(last)
	}
	return nil, last.say(by)
}

// keyOf is the digest of all that a build by this program looks at, before it looks at what it wrote.
func (r *rebuild) keyOf(program cache.Key, o order) (key cache.Key, err error) {
	here, err := filepath.EvalSymlinks(r.by.folder)
	if err != nil {
		return key, err
	}
	width, yes := terminal(r.by.err)
	told, err := json.Marshal(struct {
		Order        order
		Folder, Here string // the working folder, as it was given and without links
		Terminal     bool
		Width        int
		NoColour     bool
		Shops        int
		Today        string // which days lie far ahead
	}{o, r.by.folder, here, yes, width, r.by.env("NO_COLOR") != "", len(r.shops), today()})
	if err != nil {
		return key, err
	}
	all := parts{sha256.New()}
	all.add("record", program[:], told)
	for _, s := range r.shops {
		all.add(s.folder, s.name, strconv.FormatBool(s.whole), strconv.Itoa(len(s.targets)), strconv.Itoa(len(s.files)), strconv.Itoa(len(s.pictures)))
		for _, target := range s.targets {
			all.add(target)
		}
		for _, file := range s.files {
			all.add(file.Path, file.Text)
		}
		for _, picture := range s.pictures {
			all.add(picture.Path, picture.Fault, picture.Bytes)
		}
	}
	return all.key(), nil
}

// parts makes a digest of parts, none of which can run into the next.
type parts struct{ sum hash.Hash }

func (p parts) add(list ...any) {
	for _, part := range list {
		switch part := part.(type) {
		case string:
			io.WriteString(p.sum, strconv.Itoa(len(part))+" "+part)
		case []byte:
			io.WriteString(p.sum, strconv.Itoa(len(part))+" ")
			p.sum.Write(part)
		}
	}
}

func (p parts) key() (key cache.Key) {
	copy(key[:], p.sum.Sum(nil))
	return key
}

// record is what a build left.
type record struct {
	Said    []piece // by a build that finds all files there
	Held    bool
	Folders []listing
	Files   []left
}

// piece is what was said on one of the two streams, until something was said on the other.
type piece struct {
	Err  bool
	Text string
}

// listing is a folder with the digest of its names, where these matter: a card of an earlier build is
// named when its procedure is held back.
type listing struct{ Folder, Names string }

// left is a file that a build left.
type left struct {
	Path, Sum string
	Seen      mark
}

// holds reports whether all is there as it was left, and whether that is better known now.
func (rec *record) holds() (there, renewed bool) {
	for _, folder := range rec.Folders {
		if names(folder.Folder) != folder.Names {
			return false, false
		}
	}
	var gone, better atomic.Bool
	inHands(len(rec.Files), func(i int) {
		file := &rec.Files[i]
		if gone.Load() || file.Seen.stands(file.Path) {
			return
		}
		seen, text, err := readMarked(file.Path, false)
		if sum := sha256.Sum256(text); err != nil || string(sum[:]) != file.Sum {
			gone.Store(true)
			return
		}
		if seen.Settled {
			file.Seen = seen
			better.Store(true)
		}
	})
	return !gone.Load(), better.Load()
}

// names is the digest of the names in a folder; a folder that is not there has none.
func names(folder string) string {
	entries, _ := os.ReadDir(folder)
	all := parts{sha256.New()}
	for _, entry := range entries {
		all.add(entry.Name())
	}
	return string(all.sum.Sum(nil))
}

// say says what a build says that finds all its files there, and how it ends.
func (rec *record) say(by *caller) error {
	for _, one := range rec.Said {
		to := by.out
		if one.Err {
			to = by.err
		}
		if _, err := io.WriteString(to, one.Text); err != nil {
			return err
		}
	}
	if rec.Held {
		return errFindings
	}
	return nil
}

// end keeps a record of a build that has written its files, and hands on how it ended.
func (r *rebuild) end(builds []*build, ended error) error {
	if r.cache == nil || ended != nil && !errors.Is(ended, errFindings) {
		return ended
	}
	defer r.cache.Close()
	r.cards.close()
	rec := record{Held: ended != nil}
	for _, b := range builds {
		if len(b.checked.Unchecked) > 0 || slices.ContainsFunc(b.checked.Jobs, func(job compiler.Job) bool { return job.Blocked }) {
			rec.Folders = append(rec.Folders, listing{b.folder, names(b.folder)})
		}
	}
	if err := r.by.tellAgain(builds, &rec.Said); err != nil {
		return ended
	}
	for _, folder := range rec.Folders {
		if names(folder.Folder) != folder.Names {
			return ended // somebody else writes there; what was said of it is of no use
		}
	}
	for _, b := range builds {
		files, ok := leftOf(b)
		if !ok {
			return ended
		}
		rec.Files = append(rec.Files, files...)
	}
	r.put(rec)
	return ended
}

func (r *rebuild) put(rec record) {
	var text bytes.Buffer
	if gob.NewEncoder(&text).Encode(rec) == nil {
		r.cache.Put(r.key, text.Bytes())
	}
}

// tellAgain says what a build says that finds all its files there.
func (by *caller) tellAgain(builds []*build, into *[]piece) error {
	to := &caller{by.in, &copied{by.out, false, into}, &copied{by.err, true, into}, by.folder, by.env}
	for _, b := range builds {
		whole := *b
		whole.result = b.checked
		if _, err := to.tellHeld(&whole); err != nil {
			return err
		}
	}
	for _, b := range builds {
		to.tellNotes(b)
		files := slices.Clone(b.files)
		for i := range files {
			files[i].changed = false
		}
		to.tellWritten(files)
	}
	return nil
}

// copied takes what is said in place of a stream.
type copied struct {
	of   io.Writer
	err  bool
	into *[]piece
}

func (c *copied) Write(text []byte) (int, error) {
	if n := len(*c.into); n > 0 && (*c.into)[n-1].Err == c.err {
		(*c.into)[n-1].Text += string(text)
	} else {
		*c.into = append(*c.into, piece{c.err, string(text)})
	}
	return len(text), nil
}

// manyBytes is how much is worth a wait, so that the next build need not read it.
const manyBytes = 8 << 20

// leftOf looks at what a build has written; false where somebody else has written there since.
func leftOf(b *build) ([]left, bool) {
	files := make([]left, len(b.files))
	var other atomic.Bool
	inHands(len(files), func(i int) {
		file := b.files[i]
		seen, text, err := readMarked(file.at, b.printing.size > manyBytes)
		if err != nil || sha256.Sum256(text) != file.sum {
			other.Store(true)
			return
		}
		files[i] = left{file.at, string(file.sum[:]), seen}
	})
	return files, !other.Load()
}

// inHands does n things with as many hands as the machine has.
func inHands(n int, do func(i int)) {
	var next atomic.Int64
	var hands sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		hands.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(i)
			}
		})
	}
	hands.Wait()
}
