package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"benchleaf/cmd/internal/disk"
	"benchleaf/compiler"
)

// finder looks for the files of the paths that were asked for.
type finder struct {
	from    string            // working folder, without links
	roots   []string          // folders asked for, without links
	files   map[string]string // real path → the path it is known by
	seen    map[string]bool   // real folders looked through
	links   []string          // met on the way, followed last
	entries int
	depth   int               // of the folder that is looked through, below where the search began
	shops   map[string]string // folder → shop folder at or above it, "" for none
	faults  []error
	away    []error  // links that lead out of the shop, which keep nothing else from being read
	passed  []string // files that look like procedure files by their names, and are not read
}

// awayError is of a link that leads out of the shop.
type awayError struct{ text string }

func (e awayError) Error() string { return e.text }

// find lists the procedure files at or below some paths; it is an error when there are none.
func find(from string, paths []string) (*finder, error) {
	f, err := gather(from, paths)
	if err != nil {
		return nil, err
	}
	if len(f.faults) == 0 && len(f.away) == 0 && len(f.files) == 0 {
		help := "write one with: benchleaf new gearbox-oil.toml"
		if len(f.passed) > 0 {
			help = passedOver(f.shown(f.passed[0]))
		}
		f.fault("there are no .toml files in %s\n  %s", strings.Join(paths, ", "), help)
	}
	return f, told(f.faults)
}

// gather lists the procedure files at or below some paths, and keeps what is wrong.
func gather(from string, paths []string) (*finder, error) {
	real, err := filepath.EvalSymlinks(from)
	if err != nil {
		return nil, fmt.Errorf("the working folder cannot be read: %w", err)
	}
	f := &finder{from: real, files: map[string]string{}, seen: map[string]bool{}, shops: map[string]string{}}
	for _, path := range paths {
		f.start(path)
	}
	for len(f.links) > 0 {
		link := f.links[0]
		f.links = f.links[1:]
		f.follow(link)
	}
	if f.entries > mostEntries {
		f.fault("there are more than %d files and folders below %s; give a smaller folder", mostEntries, strings.Join(paths, ", "))
	}
	return f, nil
}

func (f *finder) fault(format string, args ...any) {
	f.faults = append(f.faults, fmt.Errorf(format, args...))
}

// mostTold is how many faults of reading are told at once.
const mostTold = 20

// told joins faults of reading into one error, or none.
func told(faults []error) error {
	if len(faults) > mostTold {
		faults = append(faults[:mostTold:mostTold], fmt.Errorf("and %d more", len(faults)-mostTold))
	}
	return errors.Join(faults...)
}

// shown is how a path is told: from the working folder where that is shorter.
func (f *finder) shown(path string) string {
	if short, err := filepath.Rel(f.from, path); err == nil && len(short) < len(path) {
		return short
	}
	return path
}

// start takes a path that was asked for.
func (f *finder) start(asked string) {
	path := asked
	if !filepath.IsAbs(path) {
		path = filepath.Join(f.from, path)
	}
	real, err := filepath.EvalSymlinks(path)
	if err != nil {
		f.faults = append(f.faults, f.missing(asked, path, err))
		return
	}
	info, err := os.Stat(real)
	switch {
	case err != nil:
		f.fault("%s cannot be read: %w", asked, disk.Reason(err))
	case info.IsDir():
		f.roots = append(f.roots, real)
		f.walk(real)
	case filepath.Base(path) == compiler.Bookfile:
		f.fault("%s is the service book; see what it tells with: benchleaf due", asked)
	case filepath.Ext(path) != ".toml":
		f.fault("%s is not a procedure file; their names end in .toml", asked)
	case !info.Mode().IsRegular():
		f.fault("%s is not a plain file", asked)
	case isForm(real, info.Size()):
		f.fault("%s holds entries of the service book; write them into it with: benchleaf log %s", asked, asked)
	case f.files[real] == "":
		f.files[real] = real
	}
}

// isForm reports whether a file holds entries of a service book alone. What cannot be read
// is told where it is read.
func isForm(path string, size int64) bool {
	if size > mostBytes {
		return false
	}
	text, err := os.ReadFile(path)
	return err == nil && compiler.IsForm(text)
}

// missing says why a path that was asked for leads nowhere.
func (f *finder) missing(asked, path string, err error) error {
	if !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("%s cannot be read: %w", asked, disk.Reason(err))
	}
	if _, err := os.Lstat(path); err == nil {
		return fmt.Errorf("%s is a link to nothing", asked)
	}
	near := nearestPath(path)
	if near == "" {
		return fmt.Errorf("there is no file or folder %s", asked)
	}
	return fmt.Errorf("there is no file or folder %s; did you mean %s?", asked, f.shown(near))
}

// nearestPath replaces the first name of a path that is not there by the
// nearest one beside it.
func nearestPath(path string) string {
	parent, name := filepath.Split(filepath.Clean(path))
	parent = filepath.Clean(parent)
	if parent == path {
		return ""
	}
	if _, err := os.Stat(parent); err != nil {
		if parent = nearestPath(parent); parent == "" {
			return ""
		}
		if whole := filepath.Join(parent, name); exists(whole) {
			return whole
		}
	}
	entries, err := os.ReadDir(parent)
	if err != nil {
		return ""
	}
	var names []string
	for _, entry := range entries {
		if entry.IsDir() || filepath.Ext(entry.Name()) == ".toml" {
			names = append(names, entry.Name())
		}
	}
	if near := nearest(name, names, 1); len(near) > 0 {
		return filepath.Join(parent, near[0])
	}
	return ""
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}

// walk looks through a folder; hidden files and the folder cards are printed
// into are passed over.
func (f *finder) walk(folder string) {
	if f.seen[folder] || f.entries > mostEntries {
		return
	}
	if f.depth == mostDeep {
		f.fault("the folder %s lies more than %d folders deep; nothing is read there, give the folder of the shop", cut(f.shown(folder)), mostDeep)
		return
	}
	f.depth++
	defer func() { f.depth-- }()
	f.seen[folder] = true
	entries, err := os.ReadDir(folder)
	if err != nil {
		f.fault("the folder %s cannot be read: %w", f.shown(folder), disk.Reason(err))
		return
	}
	f.entries += len(entries)
	for _, entry := range entries {
		path, name := filepath.Join(folder, entry.Name()), entry.Name()
		switch {
		case strings.HasPrefix(name, "."):
		case entry.IsDir():
			if name != defaultOut {
				f.walk(path)
			}
		case entry.Type()&fs.ModeSymlink != 0:
			f.links = append(f.links, path)
		case filepath.Ext(name) != ".toml":
			if _, meant := nearlyTOML(name); meant && entry.Type().IsRegular() {
				f.passed = append(f.passed, path)
			}
		case name == compiler.Bookfile:
		case !entry.Type().IsRegular():
			f.fault("%s is not a plain file", f.shown(path))
		default:
			f.files[path] = path
		}
	}
}

// backups are the endings that editors and other programs give what they keep beside a file.
var backups = []string{".bak", ".old", ".orig", ".rej", ".save", ".swp", ".swo", ".tmp"}

// nearlyTOML gives the name that a file likely should have: one more ending was put behind .toml, as
// some systems do unseen, or it is in capitals. Backups are none.
func nearlyTOML(name string) (meant string, ok bool) {
	ending := filepath.Ext(name)
	stem := strings.TrimSuffix(name, ending)
	switch {
	case strings.EqualFold(ending, ".toml"):
		return stem + ".toml", stem != ""
	case strings.HasSuffix(name, "~") || slices.Contains(backups, strings.ToLower(ending)):
		return "", false
	}
	inner := filepath.Ext(stem)
	return strings.TrimSuffix(stem, inner) + ".toml", strings.EqualFold(inner, ".toml") && stem != inner
}

// passedOver says that a file is not read, and the way out.
func passedOver(path string) string {
	meant, _ := nearlyTOML(filepath.Base(path))
	return fmt.Sprintf("%s: note: it is passed over, since its name does not end in .toml; rename it to %s, or move it out of the shop folder", path, meant)
}

// cut is a path that is told, without its middle where it is long.
func cut(path string) string {
	if runes := []rune(path); len(runes) > 120 {
		return string(runes[:60]) + "…" + string(runes[len(runes)-60:])
	}
	return path
}

// follow takes a link met on the way. What it leads to is read once, under its
// own name where it has one, and only inside the shop folder.
func (f *finder) follow(link string) {
	toml := filepath.Ext(link) == ".toml"
	real, err := filepath.EvalSymlinks(link)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if toml {
			f.fault("%s is a link to nothing", f.shown(link))
		}
		return
	case err != nil:
		f.fault("%s is a link that cannot be followed: %w", f.shown(link), disk.Reason(err))
		return
	}
	info, err := os.Stat(real)
	if err != nil || !info.IsDir() && !toml || info.IsDir() && filepath.Base(link) == defaultOut {
		return
	}
	if shop := f.shop(link); !inside(shop, real) {
		f.away = append(f.away, awayError{fmt.Sprintf("%s is a link to %s, which is outside the shop folder %s; nothing is read from there", f.shown(link), real, f.shown(shop))})
		return
	}
	switch {
	case info.IsDir() && inside(real, link):
		f.fault("%s is a link back to %s, the folder it lies in; take the link out", f.shown(link), f.shown(real))
	case info.IsDir():
		f.walk(real)
	case f.files[real] == "":
		f.files[real] = link
	}
}

// inside reports whether a path is a folder or lies below it.
func inside(folder, path string) bool {
	short, err := filepath.Rel(folder, path)
	return err == nil && filepath.IsLocal(short)
}
