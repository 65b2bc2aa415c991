package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"benchleaf/cmd/internal/disk"
	"benchleaf/compiler"
	"benchleaf/compiler/source"
)

// What is read at most, so that a folder that is no shop, or was made to keep the program busy, is told
// and not read into memory. What one file may hold is limited by the compiler.
const (
	mostBytes   = 4 << 20   // of one file, or of entries to log: a book of a thousand pages
	mostPicture = 32 << 20  // of one picture: a telephone's finest
	mostAlbum   = 512 << 20 // of all pictures of one shop, which lie in memory together
	mostFiles   = 20_000    // of one shop
	mostShop    = 256 << 20 // of all files of one shop, which lie in memory together
	mostLooks   = 20_000    // folders that are looked through for the uses with a *, of one shop
	mostEntries = 200_000   // files and folders that are looked at: a shop is a folder, not a disk
	mostDeep    = 100       // folders inside each other
)

// shop is one shop folder with the files that are to be checked and those they use.
type shop struct {
	folder  string         // without links
	name    string         // as it is told, from the working folder
	files   []*source.File // in order of path
	targets []string       // paths of the files to check, in order
	whole   bool           // these are all there are
	passed  []string       // files beside them that are not read for their names, as they are told

	pictures []source.Picture // that the targets show, as far as they are there; never nil once it is read
	shown    func(path string) string
	unsaved  map[string][]byte // texts that stand in place of files, by path
	looks    int               // folders that were looked through for uses
	real     map[string]string // while files are read: folders by their names, without links
}

// load reads the shops that some paths lie in: each file belongs to the shop
// whose shop file is nearest above it, or, where there is none, to the folder
// that was asked for.
func load(from string, paths []string) ([]*shop, error) {
	shops, away, err := loadBut(from, paths, compiler.Uses)
	return shops, errors.Join(away, err)
}

// usesOf tells what a file takes from others, as compiler.Uses does.
type usesOf func(*source.File) (files, pictures []string)

// loadBut reads like load, and tells apart the links that lead out of a shop: all else is read,
// and what asked for it ends as where it could not run.
func loadBut(from string, paths []string, uses usesOf) (shops []*shop, away, err error) {
	found, gone, err := group(from, paths)
	if err != nil {
		return nil, told(gone), err
	}
	var faults []error
	for _, s := range found {
		for _, fault := range s.read(uses) {
			if errors.As(fault, new(awayError)) {
				gone = append(gone, fault)
			} else {
				faults = append(faults, fault)
			}
		}
		if len(s.targets) > 0 {
			shops = append(shops, s)
		}
	}
	if len(shops) == 0 && len(faults) == 0 && len(gone) == 0 {
		if len(paths) == 0 {
			paths = []string{"."}
		}
		faults = append(faults, fmt.Errorf("there are only entries of a service book in %s, and no procedure", strings.Join(paths, ", ")))
	}
	return shops, told(gone), told(faults)
}

// group finds the shops and their targets, of which nothing is read yet, and the links that lead
// out of them.
func group(from string, paths []string) (shops []*shop, away []error, err error) {
	if len(paths) == 0 {
		paths = []string{"."}
	}
	f, err := find(from, paths)
	if err != nil {
		if f != nil {
			away = f.away
		}
		return nil, away, err
	}
	targets := map[string][]string{}
	for _, file := range f.files {
		folder := f.shop(file)
		short, err := filepath.Rel(folder, file)
		if err != nil {
			return nil, f.away, err
		}
		targets[folder] = append(targets[folder], filepath.ToSlash(short))
	}
	for _, folder := range slices.Sorted(maps.Keys(targets)) {
		list := targets[folder]
		slices.Sort(list)
		var passed []string
		for _, path := range f.passed {
			if f.shop(path) == folder {
				passed = append(passed, f.shown(path))
			}
		}
		shops = append(shops, &shop{folder: folder, name: f.shown(folder), targets: list, whole: f.whole(folder), passed: passed,
			shown: func(path string) string { return f.shown(filepath.Join(folder, filepath.FromSlash(path))) }})
	}
	return shops, f.away, nil
}

// shop is the shop folder of a file.
func (f *finder) shop(file string) string {
	folder := filepath.Dir(file)
	if found := f.above(folder); found != "" {
		return found
	}
	best := folder
	for _, root := range f.roots {
		if inside(root, file) && len(root) < len(best) {
			best = root
		}
	}
	return best
}

// whole reports whether all of a shop folder was looked through.
func (f *finder) whole(folder string) bool {
	return slices.ContainsFunc(f.roots, func(root string) bool { return inside(root, folder) })
}

// above is the nearest folder at or above another that holds a shop file.
func (f *finder) above(folder string) string {
	if found, known := f.shops[folder]; known {
		return found
	}
	found := ""
	if info, err := os.Stat(filepath.Join(folder, compiler.Shopfile)); err == nil && info.Mode().IsRegular() {
		found = folder
	} else if parent := filepath.Dir(folder); parent != folder {
		found = f.above(parent)
	}
	f.shops[folder] = found
	return found
}

// read reads the targets and whatever they use, and theirs in turn. What holds entries of the
// service book alone, as a form that somebody fills in, is left aside.
func (s *shop) read(uses usesOf) []error {
	s.real = map[string]string{}
	defer func() { s.real = nil }()
	var faults []error
	known, matched, target := map[string]bool{}, map[string]bool{}, map[string]bool{}
	var waiting, pictures []string
	size := 0
	want := func(path string) {
		if !known[path] {
			known[path] = true
			waiting = append(waiting, path)
		}
	}
	for _, path := range s.targets {
		want(path)
		target[path] = true
	}
	for len(waiting) > 0 {
		if len(known) > mostFiles {
			return append(faults, fmt.Errorf("%s holds more than %d procedure files; give a smaller folder", s.name, mostFiles))
		}
		path := waiting[0]
		waiting = waiting[1:]
		text, err := s.open(path, mostBytes, "a procedure file")
		if err != nil {
			faults = append(faults, err)
			continue
		}
		if compiler.IsForm(text) {
			s.targets = slices.DeleteFunc(s.targets, func(target string) bool { return target == path })
			continue
		}
		if size += len(text); size > mostShop {
			return append(faults, fmt.Errorf("the files of %s are more than %d MiB; give a smaller folder", s.name, mostShop>>20))
		}
		file := source.New(path, text)
		s.files = append(s.files, file)
		files, shown := uses(file)
		for _, pattern := range files {
			if matched[pattern] {
				continue
			}
			matched[pattern] = true
			for _, used := range s.match(pattern) {
				want(used)
			}
		}
		if target[path] {
			pictures = append(pictures, shown...)
		}
	}
	if s.looks > mostLooks {
		faults = append(faults, fmt.Errorf("%s: to find what its files use, more than %d folders would be looked through; write fewer * into use, or take links back out", s.name, mostLooks))
	}
	s.look(pictures)
	slices.SortFunc(s.files, func(a, b *source.File) int { return strings.Compare(a.Path, b.Path) })
	return faults
}

// look reads pictures, each once. What is not there is left to the compiler to say, with
// the line that shows it; so is what cannot be read.
func (s *shop) look(paths []string) {
	s.pictures = []source.Picture{}
	size := 0
	slices.Sort(paths)
	for _, path := range slices.Compact(paths) {
		if !fs.ValidPath(path) {
			continue
		}
		one := source.Picture{Path: path}
		if len(s.match(path)) == 0 {
			if near := s.nearPicture(path); near != "" {
				one.Near, one.Fault = near, fmt.Sprintf("is not there; did you mean %q?", near)
				s.pictures = append(s.pictures, one)
			}
			continue
		}
		if size > mostAlbum {
			one.Fault = fmt.Sprintf("is not read, since the pictures of the shop are more than %d MiB together; make them smaller", mostAlbum>>20)
			s.pictures = append(s.pictures, one)
			continue
		}
		var err error
		if one.Bytes, err = s.open(path, mostPicture, "a picture"); err != nil {
			one.Fault = strings.TrimPrefix(err.Error(), s.shown(path)+" ")
		}
		size += len(one.Bytes)
		s.pictures = append(s.pictures, one)
	}
}

// nearPicture is the name of a picture beside a path, which is like that of the path; empty
// where there is none.
func (s *shop) nearPicture(place string) string {
	entries, err := os.ReadDir(filepath.Join(s.folder, filepath.FromSlash(path.Dir(place))))
	if err != nil {
		return ""
	}
	var names []string
	for _, entry := range entries {
		if slices.Contains([]string{".png", ".jpg", ".jpeg"}, strings.ToLower(path.Ext(entry.Name()))) {
			names = append(names, entry.Name())
		}
	}
	if near := nearest(path.Base(place), names, 1); len(near) > 0 {
		return near[0]
	}
	return ""
}

// match lists the files that are there for a use; what leads out of the shop
// folder is left to the compiler to say.
func (s *shop) match(pattern string) []string {
	if !fs.ValidPath(pattern) {
		return nil
	}
	if !strings.ContainsAny(pattern, "*?[") {
		if _, written := s.unsaved[pattern]; written {
			return []string{pattern}
		}
		info, err := os.Stat(filepath.Join(s.folder, filepath.FromSlash(pattern)))
		if err != nil || info.IsDir() {
			return nil
		}
		return []string{pattern}
	}
	found, err := fs.Glob(counting{os.DirFS(s.folder), &s.looks}, pattern)
	if err != nil {
		return nil // the compiler says that no file is there
	}
	for name := range s.unsaved {
		if fits, err := path.Match(pattern, name); err == nil && fits && !slices.Contains(found, name) {
			found = append(found, name)
		}
	}
	slices.Sort(found)
	return slices.DeleteFunc(found, func(name string) bool {
		return path.Ext(name) != ".toml" || path.Base(name) == compiler.Bookfile || strings.HasPrefix(path.Base(name), ".")
	})
}

// counting counts the folders that are looked through, and ends when they are too many.
type counting struct {
	fs.FS
	looks *int
}

func (c counting) ReadDir(name string) ([]fs.DirEntry, error) {
	if *c.looks++; *c.looks > mostLooks {
		return nil, fs.ErrInvalid
	}
	return fs.ReadDir(c.FS, name)
}

// readPlain reads a file that was named, if it is plain and not too big: a pipe or a device may never end.
func readPlain(path, shown string, most int64) ([]byte, error) {
	info, err := os.Stat(path)
	if err == nil && !info.Mode().IsRegular() {
		return nil, fmt.Errorf("%s is not a plain file", shown)
	}
	if err == nil && info.Size() > most {
		return nil, fmt.Errorf("%s is %.3g MiB, and at most %d MiB are read", shown, float64(info.Size())/(1<<20), most>>20)
	}
	text, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("%s cannot be read: %w", shown, disk.Reason(err))
	}
	return text, nil
}

// open reads one file of the shop, if it is plain, not too big and inside.
func (s *shop) open(path string, most int64, what string) ([]byte, error) {
	if text, written := s.unsaved[path]; written {
		return text, nil
	}
	file, size, err := s.reach(path)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	buffer := bytes.NewBuffer(make([]byte, 0, min(size, most)+bytes.MinRead))
	if _, err := buffer.ReadFrom(io.LimitReader(file, most+1)); err != nil {
		return nil, fmt.Errorf("%s cannot be read: %w", s.shown(path), disk.Reason(err))
	}
	text := buffer.Bytes()
	if int64(len(text)) > most {
		return nil, fmt.Errorf("%s is %.3g MiB; %s is at most %d MiB", s.shown(path), float64(max(size, int64(len(text))))/(1<<20), what, most>>20)
	}
	return text, nil
}

// follow is filepath.EvalSymlinks, which looks at each folder once while files are read.
func (s *shop) follow(place string) (string, error) {
	if s.real == nil {
		return filepath.EvalSymlinks(place)
	}
	folder, name := filepath.Split(place)
	real, known := s.real[folder]
	if !known {
		var err error
		if real, err = filepath.EvalSymlinks(folder); err != nil {
			return "", err
		}
		s.real[folder] = real
	}
	real = filepath.Join(real, name)
	if info, err := os.Lstat(real); err != nil || info.Mode()&fs.ModeSymlink == 0 {
		return real, err
	}
	return filepath.EvalSymlinks(real)
}

// reach opens one file of the shop, if it is plain and inside, and says how long it is.
func (s *shop) reach(path string) (file *os.File, size int64, err error) {
	name := s.shown(path)
	real, err := s.follow(filepath.Join(s.folder, filepath.FromSlash(path)))
	if err != nil {
		return nil, 0, fmt.Errorf("%s cannot be read: %w", name, disk.Reason(err))
	}
	if !inside(s.folder, real) {
		return nil, 0, awayError{fmt.Sprintf("%s is a link to %s, which is outside the shop folder; nothing is read from there", name, real)}
	}
	info, err := os.Stat(real)
	if err != nil {
		return nil, 0, fmt.Errorf("%s cannot be read: %w", name, disk.Reason(err))
	}
	if !info.Mode().IsRegular() {
		return nil, 0, fmt.Errorf("%s is not a plain file", name)
	}
	if file, err = os.Open(real); err != nil {
		return nil, 0, fmt.Errorf("%s cannot be read: %w", name, disk.Reason(err))
	}
	return file, info.Size(), nil
}
