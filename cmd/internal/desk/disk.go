package desk

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"unicode/utf8"

	"benchleaf/cmd/internal/disk"
	"benchleaf/compiler"
)

// mostText is how long a file may be: as long as the command reads one.
const mostText = 4 << 20

// fault is what a request could not be done for, in words for the page.
type fault struct {
	status int
	why    string
}

func (f *fault) Error() string { return f.why }

func faultOf(status int, format string, args ...any) error {
	return &fault{status, fmt.Sprintf(format, args...)}
}

// digest tells texts apart.
func digest(text []byte) string {
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:])
}

// place makes a path of the page one of the shop folder, links followed. It is a fault where
// the path leads out of the folder or is not that of a procedure file.
func (d *Desk) place(asked string) (string, error) {
	switch {
	case !fs.ValidPath(asked) || strings.ContainsAny(asked, "\\:\x00") || !filepath.IsLocal(filepath.FromSlash(asked)):
		return "", faultOf(403, "%q is no path in the shop folder", asked)
	case path.Ext(asked) != ".toml":
		return "", faultOf(403, "%s is not a procedure file; their names end in .toml", asked)
	case path.Base(asked) == compiler.Bookfile:
		return "", faultOf(403, "%s is the service book; it is added to with benchleaf log and not written here", asked)
	}
	for part := range strings.SplitSeq(asked, "/") {
		if strings.HasPrefix(part, ".") {
			return "", faultOf(403, "%s is hidden; the desk leaves such files alone", asked)
		}
	}
	folder := d.shop.Folder()
	real, err := filepath.EvalSymlinks(filepath.Join(folder, filepath.FromSlash(asked)))
	if errors.Is(err, fs.ErrNotExist) {
		if _, linked := os.Lstat(filepath.Join(folder, filepath.FromSlash(asked))); linked == nil {
			return "", faultOf(403, "%s is a link to nothing", asked)
		}
		return asked, d.within(path.Dir(asked))
	}
	if err != nil {
		return "", faultOf(403, "%s cannot be reached: %v", asked, disk.Reason(err))
	}
	short, err := filepath.Rel(folder, real)
	if err != nil || !filepath.IsLocal(short) || filepath.Ext(real) != ".toml" {
		return "", faultOf(403, "%s is a link out of the shop folder, or to what is no procedure file", asked)
	}
	return filepath.ToSlash(short), nil
}

// within is a fault where a folder, or the nearest above it that is there, lies outside the
// shop folder.
func (d *Desk) within(asked string) error {
	for at := asked; at != "."; at = path.Dir(at) {
		real, err := filepath.EvalSymlinks(filepath.Join(d.shop.Folder(), filepath.FromSlash(at)))
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if short, outside := filepath.Rel(d.shop.Folder(), real); err != nil || outside != nil || !filepath.IsLocal(short) {
			return faultOf(403, "%s is a link out of the shop folder", at)
		}
		return nil
	}
	return nil
}

// read reads a file; fs.ErrNotExist where it is not there.
func (d *Desk) read(asked string) ([]byte, error) {
	at, err := d.place(asked)
	if err != nil {
		return nil, err
	}
	info, err := d.root.Stat(at)
	if err == nil && !info.Mode().IsRegular() { // to open a pipe would wait for who writes into it
		return nil, faultOf(403, "%s is not a plain file", asked)
	}
	file, err := d.root.Open(at)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, fs.ErrNotExist
	}
	if err != nil {
		return nil, faultOf(403, "%s cannot be read: %v", asked, disk.Reason(err))
	}
	defer file.Close()
	text, err := io.ReadAll(io.LimitReader(file, mostText+1))
	if err != nil {
		return nil, faultOf(500, "%s cannot be read: %v", asked, disk.Reason(err))
	}
	if len(text) > mostText {
		return nil, faultOf(413, "%s is longer than %d MiB", asked, mostText>>20)
	}
	return text, nil
}

// legible reads a file that the page can show without losing a byte of it.
func (d *Desk) legible(asked string) ([]byte, error) {
	text, err := d.read(asked)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, faultOf(404, "there is no file %s", asked)
	}
	if err == nil && !utf8.Valid(text) {
		return nil, faultOf(422, "%s is not in UTF-8; save it as UTF-8 with the program it was written with", asked)
	}
	return text, err
}

// changed is a save that was refused, with what stands on the disk.
type changed struct {
	text []byte
	gone bool
}

func (c *changed) Error() string { return "the file was changed on the disk meanwhile" }

// save writes a text in the place of a file whose digest was known; an empty one stands for
// a file that is not there yet. The file is the old one or the new one at any moment, and a
// change that somebody else made meanwhile is never written over.
func (d *Desk) save(asked string, text []byte, known string) error {
	d.saving.Lock()
	defer d.saving.Unlock()
	if len(text) > mostText {
		return faultOf(413, "a file is at most %d MiB long", mostText>>20)
	}
	at, err := d.place(asked)
	if err != nil {
		return err
	}
	if err := d.unchanged(asked, known); err != nil {
		return err
	}
	mode := fs.FileMode(0o666)
	if info, err := d.root.Stat(at); err == nil {
		mode = info.Mode().Perm()
	}
	if folder := path.Dir(at); known == "" && folder != "." {
		if err := d.root.MkdirAll(folder, 0o777); err != nil {
			return faultOf(403, "the folder %s cannot be made: %v", folder, disk.Reason(err))
		}
	}
	d.counted++
	beside := path.Join(path.Dir(at), fmt.Sprintf(".benchleaf-desk-%d-%d", os.Getpid(), d.counted))
	if err := d.write(beside, text, mode); err != nil {
		return faultOf(403, "%s cannot be written: %v", asked, disk.Reason(err))
	}
	defer d.root.Remove(beside) // nothing is left of it where it was moved
	if known == "" {
		switch err := d.root.Link(beside, at); {
		case err == nil:
			return nil
		case errors.Is(err, fs.ErrExist):
			return d.unchanged(asked, known)
		}
		// A disk without hard links: whoever makes the file first has it.
	}
	if err := d.unchanged(asked, known); err != nil {
		return err
	}
	if err := d.root.Rename(beside, at); err != nil {
		return faultOf(403, "%s cannot be written: %v", asked, disk.Reason(err))
	}
	return nil
}

// unchanged holds what is on the disk against the digest that was known of it.
func (d *Desk) unchanged(asked, known string) error {
	now, err := d.read(asked)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if known != "" {
			return &changed{gone: true}
		}
	case err != nil:
		return err
	case digest(now) != known:
		return &changed{text: now}
	}
	return nil
}

func (d *Desk) write(at string, text []byte, mode fs.FileMode) error {
	file, err := d.root.OpenFile(at, os.O_CREATE|os.O_EXCL|os.O_WRONLY, mode)
	if err != nil {
		return err
	}
	_, err = file.Write(text)
	if err == nil {
		err = file.Sync()
	}
	if closing := file.Close(); err == nil {
		err = closing
	}
	if err != nil {
		d.root.Remove(at)
	}
	return err
}
