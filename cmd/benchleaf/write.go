package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"

	"benchleaf/cmd/internal/disk"
	"benchleaf/compiler"
)

// defaultOut is the folder that cards are printed into, and that is never read.
const defaultOut = "out"

// written says what became of a file.
type written struct {
	path    string
	changed bool // false where the file was there already, byte for byte
}

// writeAll puts files into a folder, all or none as far as the disk allows.
func writeAll(folder, shown string, outputs []compiler.Output) ([]written, error) {
	d := deliver(folder, shown)
	defer d.drop()
	for _, output := range outputs {
		if err := d.add(output); err != nil {
			return nil, err
		}
	}
	return d.keep()
}

// delivery puts files into a folder, all or none as far as the disk allows: the texts are written
// beside their places as they come, and moved there when all are safe. A build that is stopped by
// the keyboard writes nothing or all of it; one that is killed leaves of each file the old one or
// the new one.
type delivery struct {
	folder, shown string
	stopped       chan os.Signal
	made, kept    bool // the folder was not there before; all is in its place
	done          []written
	ready         []draft
}

func deliver(folder, shown string) *delivery {
	d := &delivery{folder: folder, shown: shown, stopped: make(chan os.Signal, 1)}
	signal.Notify(d.stopped, os.Interrupt, syscall.SIGTERM)
	return d
}

// add writes one file beside its place, where it is not there already, byte for byte.
func (d *delivery) add(output compiler.Output) error {
	if len(d.done) == 0 {
		_, err := os.Lstat(d.folder)
		d.made = errors.Is(err, fs.ErrNotExist)
		if err := os.MkdirAll(d.folder, 0o777); err != nil {
			return fmt.Errorf("the folder %s cannot be made: %w", d.shown, disk.Reason(err))
		}
	}
	select {
	case <-d.stopped:
		return fmt.Errorf("stopped before anything was written into %s", d.shown)
	default:
	}
	name := filepath.Join(d.shown, output.Name)
	if !plainName(output.Name) {
		return fmt.Errorf("%q is no name for a file; give the procedure another short name", output.Name)
	}
	path := filepath.Join(d.folder, output.Name)
	same := sameBytes(path, output.Bytes)
	d.done = append(d.done, written{name, !same})
	if same {
		return nil
	}
	one, err := newDraft(path, len(d.done), output.Bytes, 0o666)
	if err != nil {
		return fmt.Errorf("%s cannot be written: %w", name, disk.Reason(err))
	}
	d.ready = append(d.ready, one)
	return nil
}

// keep moves all to their places.
func (d *delivery) keep() ([]written, error) {
	for len(d.ready) > 0 {
		if err := d.ready[0].keep(); err != nil {
			return nil, fmt.Errorf("%s cannot be written: %w", filepath.Join(d.shown, filepath.Base(d.ready[0].path)), disk.Reason(err))
		}
		d.ready = d.ready[1:]
	}
	d.kept = true
	return d.done, nil
}

// drop takes away what was not kept.
func (d *delivery) drop() {
	signal.Stop(d.stopped)
	for _, one := range d.ready {
		os.Remove(one.at)
	}
	if d.made && !d.kept {
		os.Remove(d.folder) // where nothing else is in it
	}
	d.ready = nil
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
