package main

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"syscall"

	"github.com/rogpeppe/go-internal/lockedfile"

	"benchleaf/cmd/internal/disk"
	"benchleaf/compiler"
)

// The files beside a service book. The lock is a file of its own: on Windows a book that
// is locked could not be read, and an editor that saves puts another file in the book's
// place, with another lock. It is hidden and empty, and stays: taking it away would part
// those who wait for it from those who come later.
const (
	bookLock = ".service-book.lock"
	bookTorn = "service-book.torn"
)

// bookTail is how much of a book is looked at to find the next number.
const bookTail = 16 << 10

// appended says what came of writing into a service book.
type appended struct {
	numbers []int // of the new entries, in their order
	torn    int   // bytes at the end of the book that were put aside first
}

// appendEntries writes entries at the end of the service book of a shop folder, gives
// each the next number, and returns when they are safe on the disk. One writer writes at
// a time, also of several programs; the others wait. After an error the book is as it
// was, except for what was torn before and is put aside.
func appendEntries(folder, shown string, entries []compiler.Entry) (done appended, err error) {
	if len(entries) == 0 {
		return done, nil
	}
	name := filepath.Join(shown, compiler.Bookfile)
	for _, e := range entries {
		e.Number = 1
		if err := compiler.ScanBook(bytes.NewReader(e.Text()), func(compiler.Entry, int) error { return nil }); err != nil {
			return done, fmt.Errorf("an entry that nobody could read again is not written into %s: %w", name, err)
		}
	}
	path, err := bookPath(folder, name)
	if err != nil {
		return done, err
	}
	unlock, err := lockedfile.MutexAt(filepath.Join(filepath.Dir(path), bookLock)).Lock()
	if err != nil {
		return done, fmt.Errorf("%s cannot be locked: %w; its folder must let itself be written into", name, disk.Reason(err))
	}
	defer unlock()
	b, err := openBook(path)
	if err != nil {
		return done, fmt.Errorf("%s cannot be opened: %w", name, disk.Reason(err))
	}
	defer func() {
		if fault := b.file.Close(); err == nil && fault != nil {
			done.numbers, err = nil, fmt.Errorf("%s cannot be written: %w", name, disk.Reason(fault))
		}
	}()
	highest, err := b.look()
	if err != nil {
		return done, fmt.Errorf("%s cannot be read: %w", name, disk.Reason(err))
	}
	if highest > math.MaxInt-len(entries) {
		return done, fmt.Errorf("%s has an entry with the number %d, and none comes after it; mend that number", name, highest)
	}
	if torn := b.size - b.whole; torn > 0 {
		if err := b.putAside(); err != nil {
			return done, fmt.Errorf("%s ends with a part that was torn in writing, which cannot be put aside into %s: %w", name, filepath.Join(shown, bookTorn), disk.Reason(err))
		}
		done.torn = int(torn)
	}
	var text []byte
	var numbers []int
	for _, e := range entries {
		highest++
		e.Number = highest
		text, numbers = append(text, e.Text()...), append(numbers, highest)
	}
	if err := b.add(text); err != nil {
		return done, fmt.Errorf("%s cannot be written: %w", name, err)
	}
	done.numbers = numbers
	return done, nil
}

// bookPath is where a book really is, or will be: a plain file inside its folder.
func bookPath(folder, name string) (string, error) {
	folder, err := filepath.EvalSymlinks(folder)
	if err != nil {
		return "", fmt.Errorf("%s cannot be opened: %w", name, disk.Reason(err))
	}
	path := filepath.Join(folder, compiler.Bookfile)
	real, err := filepath.EvalSymlinks(path)
	if errors.Is(err, fs.ErrNotExist) {
		if _, err := os.Lstat(path); err == nil {
			return "", fmt.Errorf("%s is a link to nothing", name)
		}
		return path, nil
	}
	if err != nil {
		return "", fmt.Errorf("%s cannot be opened: %w", name, disk.Reason(err))
	}
	if !inside(folder, real) {
		return "", fmt.Errorf("%s is a link to %s, which is outside the shop folder; nothing is written there", name, real)
	}
	info, err := os.Stat(real)
	switch {
	case err != nil:
		return "", fmt.Errorf("%s cannot be opened: %w", name, disk.Reason(err))
	case info.IsDir():
		return "", fmt.Errorf("%s is a folder, and the service book is a file of that name; move the folder", name)
	case !info.Mode().IsRegular():
		return "", fmt.Errorf("%s is not a plain file", name)
	}
	return real, nil
}

// book is a service book that is open for writing, and locked.
type book struct {
	file  *os.File
	path  string
	size  int64
	whole int64 // bytes from the start
	fresh bool  // it was made just now
	ends  bool  // its last line ends
}

func openBook(path string) (*book, error) {
	b := &book{path: path}
	file, err := os.OpenFile(path, os.O_RDWR, 0)
	if errors.Is(err, fs.ErrNotExist) {
		b.fresh = true
		file, err = os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o666)
	}
	if err != nil {
		return nil, err
	}
	b.file = file
	info, err := file.Stat()
	if err != nil {
		file.Close()
		return nil, err
	}
	b.size = info.Size()
	return b, nil
}

// look finds what of the book is whole, and the highest number in it. As long as the end
// of the book is as the program writes it, numbers rising, its last entry has the highest
// number; else the whole book is read.
func (b *book) look() (highest int, err error) {
	if b.size > bookTail {
		tail := make([]byte, bookTail)
		if _, err := b.file.ReadAt(tail, b.size-bookTail); err != nil {
			return 0, err
		}
		if at := bytes.Index(tail, []byte("\n# entry ")); at >= 0 {
			tail = tail[at+1:]
			whole, err := compiler.TornBook(bytes.NewReader(tail))
			if err != nil {
				return 0, err
			}
			if last, plain := compiler.LastEntry(tail[:whole]); plain {
				b.whole, b.ends = b.size-int64(len(tail))+whole, tail[whole-1] == '\n'
				return last, nil
			}
		}
	}
	b.whole, err = compiler.TornBook(io.NewSectionReader(b.file, 0, b.size))
	if err != nil {
		return 0, err
	}
	b.ends = true
	if b.whole > 0 {
		last := make([]byte, 1)
		if _, err := b.file.ReadAt(last, b.whole-1); err != nil {
			return 0, err
		}
		b.ends = last[0] == '\n'
	}
	place := 0
	err = compiler.ScanBook(io.NewSectionReader(b.file, 0, b.whole), func(e compiler.Entry, _ int) error {
		place++
		highest = max(highest, cmp.Or(e.Number, place)) // an entry without a number is known by its place
		return nil
	})
	var faults compiler.BookFaults
	if errors.As(err, &faults) { // an old fault keeps no new entry out
		for _, fault := range faults {
			highest = max(highest, fault.Number)
		}
		err = nil
	}
	return highest, err
}

// putAside moves what is torn at the end of the book into a file beside it.
func (b *book) putAside() error {
	rest := make([]byte, b.size-b.whole)
	if _, err := b.file.ReadAt(rest, b.whole); err != nil {
		return err
	}
	path := filepath.Join(filepath.Dir(b.path), bookTorn)
	if info, err := os.Lstat(path); err == nil && !info.Mode().IsRegular() {
		return fmt.Errorf("it is not a plain file")
	}
	aside, err := os.OpenFile(path, os.O_WRONLY|os.O_APPEND|os.O_CREATE, 0o666)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(aside, "# %d bytes, torn in writing from the end of %s:\n%s\n", len(rest), filepath.Base(b.path), rest)
	if err == nil {
		err = aside.Sync()
	}
	if fault := aside.Close(); err == nil {
		err = fault
	}
	if err == nil {
		err = syncFolder(filepath.Dir(path))
	}
	if err == nil {
		err = b.file.Truncate(b.whole)
	}
	if err == nil {
		b.size = b.whole
		err = b.file.Sync()
	}
	return err
}

// add writes text at the end of the book, and returns when it is safe. What cannot be
// written in full is taken back.
func (b *book) add(text []byte) error {
	switch {
	case b.size == 0:
		text = append([]byte(compiler.BookHead), text...)
	case !b.ends:
		text = append([]byte{'\n'}, text...)
	}
	var err error
	if b.fresh {
		err = syncFolder(filepath.Dir(b.path))
	}
	if err == nil {
		_, err = b.file.WriteAt(text, b.size)
	}
	if err == nil {
		err = b.file.Sync()
	}
	if err == nil {
		return nil
	}
	back := b.file.Truncate(b.size)
	if back == nil {
		back = b.file.Sync()
	}
	if back == nil && b.fresh {
		back = os.Remove(b.path)
	}
	if back != nil {
		return fmt.Errorf("%w, and what was begun cannot be taken back: %w; look at its end", disk.Reason(err), disk.Reason(back))
	}
	return fmt.Errorf("%w; it is as it was", disk.Reason(err))
}

// syncFolder makes safe that a file is in its folder. Windows does so by itself, and some
// file systems know no such thing.
func syncFolder(folder string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	open, err := os.Open(folder)
	if err != nil {
		return err
	}
	defer open.Close()
	if err = open.Sync(); errors.Is(err, syscall.EINVAL) || errors.Is(err, errors.ErrUnsupported) {
		return nil
	}
	return err
}
