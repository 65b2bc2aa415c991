package main

import (
	"bytes"
	"fmt"
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

// writeAll puts files into a folder, all or none as far as the disk allows: the
// texts are written beside their places first, and moved there when all are
// safe. A build that is stopped by the keyboard writes nothing or all of it; one that
// is killed leaves of each file the old one or the new one.
func writeAll(folder, shown string, outputs []compiler.Output) ([]written, error) {
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return nil, fmt.Errorf("the folder %s cannot be made: %w", shown, disk.Reason(err))
	}
	stopped := make(chan os.Signal, 1)
	signal.Notify(stopped, os.Interrupt, syscall.SIGTERM)
	defer signal.Stop(stopped)
	var done []written
	var ready []draft
	defer func() {
		for _, d := range ready {
			os.Remove(d.at)
		}
	}()
	for i, output := range outputs {
		select {
		case <-stopped:
			return nil, fmt.Errorf("stopped before anything was written into %s", shown)
		default:
		}
		name := filepath.Join(shown, output.Name)
		if !plainName(output.Name) {
			return nil, fmt.Errorf("%q is no name for a file; give the procedure another short name", output.Name)
		}
		path := filepath.Join(folder, output.Name)
		same := sameBytes(path, output.Bytes)
		done = append(done, written{name, !same})
		if same {
			continue
		}
		d, err := newDraft(path, i, output.Bytes, 0o666)
		if err != nil {
			return nil, fmt.Errorf("%s cannot be written: %w", name, disk.Reason(err))
		}
		ready = append(ready, d)
	}
	for len(ready) > 0 {
		if err := ready[0].keep(); err != nil {
			return nil, fmt.Errorf("%s cannot be written: %w", filepath.Join(shown, filepath.Base(ready[0].path)), disk.Reason(err))
		}
		ready = ready[1:]
	}
	return done, nil
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
