package cache

import (
	"bytes"
	"cmp"
	"encoding/hex"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"
)

// tally is the file that holds how many bytes were put into a cache since it was last looked
// through, a line for each time somebody said so. Lines are added at its end alone, so none is
// lost where several programs write.
const tally = "size"

const (
	tallyStep = 4 << 20   // how much is put before it is said, so that a program that is killed hides little
	mostTally = 64 << 10  // how long the tally grows before the cache is looked through
	abandoned = time.Hour // how old a draft is that nobody writes any more
)

// count adds what was put to the tally, now and then.
func (s *Store) count(size int64) {
	s.lock.Lock()
	s.added += size
	due := s.added >= tallyStep
	s.lock.Unlock()
	if due {
		s.settle()
	}
}

// Close says how much was put, and takes the oldest entries out where the cache is too large.
// The store may be used further.
func (s *Store) Close() {
	if s != nil {
		s.settle()
	}
}

func (s *Store) settle() {
	s.lock.Lock()
	defer s.lock.Unlock()
	if s.added == 0 {
		return
	}
	path := filepath.Join(s.folder, tally)
	text, err := os.ReadFile(path)
	size, ok := sum(text)
	if err == nil && ok && len(text) < mostTally && size+s.added <= s.most {
		file, err := os.OpenFile(path, os.O_APPEND|os.O_WRONLY, 0o600)
		if err == nil {
			fmt.Fprintf(file, "%d\n", s.added) // if it cannot be written, the cache is a little larger than told
			file.Close()
		}
		s.added = 0
		return
	}
	left := s.trim()
	if next, err := os.CreateTemp(s.folder, draft+"*"); err == nil {
		_, err = fmt.Fprintf(next, "%d\n", left)
		if fault := next.Close(); err == nil {
			err = fault
		}
		if err == nil {
			err = os.Rename(next.Name(), path)
		}
		if err != nil {
			os.Remove(next.Name())
		}
	}
	s.added = 0
}

// sum adds the lines of a tally; false for one that is damaged.
func sum(text []byte) (total int64, ok bool) {
	for line := range bytes.Lines(text) {
		n, err := strconv.ParseInt(strings.TrimSuffix(string(line), "\n"), 10, 64)
		if err != nil || n < 0 {
			return 0, false
		}
		if total += n; total < 0 {
			return 0, false
		}
	}
	return total, true
}

// trim looks through the cache. Where it is larger than it may be it takes out what was not used
// for the longest time, until there is room again for a while. It gives what is left, in bytes,
// and touches nothing that is no entry and no draft.
func (s *Store) trim() int64 {
	type entry struct {
		path string
		size int64
		used time.Time
	}
	var entries []entry
	var total int64
	now := time.Now()
	look := func(folder string, is func(name string) bool) {
		files, err := os.ReadDir(folder)
		if err != nil {
			return
		}
		for _, file := range files {
			path := filepath.Join(folder, file.Name())
			info, err := file.Info()
			switch {
			case err != nil || !info.Mode().IsRegular():
			case strings.HasPrefix(file.Name(), draft):
				if now.Sub(info.ModTime()) > abandoned {
					os.Remove(path)
				}
			case is(file.Name()):
				entries = append(entries, entry{path, info.Size(), info.ModTime()})
				total += info.Size()
			}
		}
	}
	isEntry := func(name string) bool { return isHex(name, len(Key{})-1) }
	folders, err := os.ReadDir(s.folder)
	if err != nil {
		return 0
	}
	for _, folder := range folders {
		if folder.IsDir() && isHex(folder.Name(), 1) {
			look(filepath.Join(s.folder, folder.Name()), isEntry)
		}
	}
	look(s.folder, func(string) bool { return false })
	if total <= s.most {
		return total
	}
	slices.SortFunc(entries, func(a, b entry) int { return cmp.Or(a.used.Compare(b.used), strings.Compare(a.path, b.path)) })
	for _, one := range entries {
		if total <= s.most/4*3 {
			break
		}
		if os.Remove(one.path) == nil {
			total -= one.size
		}
	}
	return total
}

// isHex reports whether a name is so many bytes as the store writes them.
func isHex(name string, bytes int) bool {
	raw, err := hex.DecodeString(name)
	return err == nil && len(raw) == bytes && name == strings.ToLower(name)
}
