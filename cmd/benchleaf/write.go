package main

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/signal"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"syscall"
	"time"

	"benchleaf/cmd/internal/disk"
	"benchleaf/compiler"
)

// defaultOut is the folder that cards are printed into, and that is never read.
const defaultOut = "out"

// written says what became of a file.
type written struct {
	path    string   // as it is told
	changed bool     // false where the file was there already, byte for byte
	at      string   // where it lies
	sum     [32]byte // digest of its bytes
}

// writeAll puts files into a folder, all or none as far as the disk allows.
func writeAll(folder, shown string, outputs []compiler.Output) ([]written, error) {
	d := newDelivery(folder, shown)
	defer d.drop()
	for _, output := range outputs {
		if err := d.add(output); err != nil {
			return nil, err
		}
	}
	return d.keep()
}

// delivery puts files into a folder, all or none as far as the disk allows: the texts are written
// beside their places as they come, by several hands while more are made, and moved there when all
// are safe. A build that is stopped by the keyboard writes nothing or all of it; one that is killed
// leaves of each file the old one or the new one.
type delivery struct {
	folder, shown string
	stopped       chan os.Signal
	made, kept    bool // the folder was not there before; all is in its place
	size          int  // bytes of all

	files []*parcel
	queue chan *parcel // nil until something comes
	hands sync.WaitGroup
	gone  atomic.Bool // one of them cannot be written
}

// parcel is a file on its way.
type parcel struct {
	written
	number int
	text   []byte // until it is written
	draft  *draft // beside its place; nil where it is there already
	fault  error
}

func newDelivery(folder, shown string) *delivery {
	d := &delivery{folder: folder, shown: shown, stopped: make(chan os.Signal, 1)}
	signal.Notify(d.stopped, os.Interrupt, syscall.SIGTERM)
	return d
}

// waiting is how many files wait to be written before the one who makes them waits.
const waiting = 16

// add takes one file to be written beside its place, where it is not there already, byte for byte.
func (d *delivery) add(output compiler.Output) error {
	if d.queue == nil {
		_, err := os.Lstat(d.folder)
		d.made = errors.Is(err, fs.ErrNotExist)
		if err := os.MkdirAll(d.folder, 0o777); err != nil {
			return fmt.Errorf("the folder %s cannot be made: %w", d.shown, disk.Reason(err))
		}
		sweep(d.folder)
		queue := make(chan *parcel, waiting)
		d.queue = queue
		for range runtime.GOMAXPROCS(0) {
			d.hands.Go(func() {
				for one := range queue {
					d.write(one)
				}
			})
		}
	}
	select {
	case <-d.stopped:
		return fmt.Errorf("stopped before anything was written into %s", d.shown)
	default:
	}
	if d.gone.Load() {
		return d.settle()
	}
	if !plainName(output.Name) {
		return fmt.Errorf("%q is no name for a file; give the procedure another short name", output.Name)
	}
	one := &parcel{number: len(d.files), text: output.Bytes, written: written{path: filepath.Join(d.shown, output.Name), at: filepath.Join(d.folder, output.Name)}}
	d.files, d.size = append(d.files, one), d.size+len(output.Bytes)
	d.queue <- one
	return nil
}

// stale is how long ago a text beside its place was written that nobody will move there any more: the
// build that wrote it was killed.
const stale = time.Hour

// sweep takes such texts out of a folder.
func sweep(folder string) {
	left, _ := filepath.Glob(filepath.Join(folder, ".benchleaf-*-*"))
	for _, path := range left {
		if info, err := os.Lstat(path); err == nil && info.Mode().IsRegular() && time.Since(info.ModTime()) > stale {
			os.Remove(path)
		}
	}
}

// write puts a file beside its place.
func (d *delivery) write(one *parcel) {
	text := one.text
	one.text = nil
	if one.sum = sha256.Sum256(text); d.gone.Load() || sameBytes(one.at, text) {
		return
	}
	made, err := newDraft(one.at, one.number, text, 0o666)
	if err != nil {
		one.fault = fmt.Errorf("%s cannot be written: %w", one.path, disk.Reason(err))
		d.gone.Store(true)
		return
	}
	one.changed, one.draft = true, &made
}

// settle waits until all that was taken is written, and says of the first file that could not be.
func (d *delivery) settle() error {
	if d.queue != nil {
		close(d.queue)
		d.queue = nil
	}
	d.hands.Wait()
	for _, one := range d.files {
		if one.fault != nil {
			return one.fault
		}
	}
	return nil
}

// keep moves all to their places.
func (d *delivery) keep() ([]written, error) {
	if err := d.settle(); err != nil {
		return nil, err
	}
	var done []written
	for _, one := range d.files {
		if one.draft != nil {
			if err := one.draft.keep(); err != nil {
				return nil, fmt.Errorf("%s cannot be written: %w", one.path, disk.Reason(err))
			}
			one.draft = nil
		}
		done = append(done, one.written)
	}
	d.kept = true
	return done, nil
}

// drop takes away what was not kept.
func (d *delivery) drop() {
	signal.Stop(d.stopped)
	_ = d.settle() // it was told, or nothing is to be kept
	for _, one := range d.files {
		if one.draft != nil {
			os.Remove(one.draft.at)
			one.draft = nil
		}
	}
	if d.made && !d.kept {
		os.Remove(d.folder) // where nothing else is in it
	}
}

// plainName reports whether a name names a file in a folder and nothing else.
func plainName(name string) bool {
	return filepath.IsLocal(name) && !strings.ContainsAny(name, `/\:`) && !strings.HasPrefix(name, ".")
}

func sameBytes(path string, text []byte) bool {
	info, err := os.Stat(path)
	if err != nil || !info.Mode().IsRegular() || info.Size() != int64(len(text)) {
		return false
	}
	old, err := os.ReadFile(path)
	return err == nil && bytes.Equal(old, text)
}

// draft is a text that is safe on the disk beside the place it is meant for.
type draft struct{ at, path string }

// newDraft writes a text beside its place. Its name is this process's own, so
// that two builds do not meet.
func newDraft(path string, number int, text []byte, mode os.FileMode) (draft, error) {
	d := draft{filepath.Join(filepath.Dir(path), fmt.Sprintf(".benchleaf-%d-%d", os.Getpid(), number)), path}
	file, err := os.OpenFile(d.at, os.O_CREATE|os.O_WRONLY|os.O_TRUNC, mode)
	if err != nil {
		return d, err
	}
	_, err = file.Write(text)
	if err == nil {
		err = file.Sync()
	}
	if fault := file.Close(); err == nil {
		err = fault
	}
	if err != nil {
		os.Remove(d.at)
	}
	return d, err
}

// keep moves the text to its place.
func (d draft) keep() error { return os.Rename(d.at, d.path) }

// replace writes a file anew, with the rights it has. What it holds must still
// be what was read: an editor may have saved it meanwhile.
func replace(path string, read, text []byte) error {
	real, err := filepath.EvalSymlinks(path)
	if err != nil {
		return disk.Reason(err)
	}
	info, err := os.Stat(real)
	if err != nil {
		return disk.Reason(err)
	}
	if !sameBytes(real, read) {
		return fmt.Errorf("it was changed meanwhile")
	}
	d, err := newDraft(real, 0, text, info.Mode().Perm())
	if err != nil {
		return disk.Reason(err)
	}
	if err := d.keep(); err != nil {
		os.Remove(d.at)
		return disk.Reason(err)
	}
	return nil
}
