// Package cache keeps what was worked out once where the next run finds it: pieces of bytes
// under keys, in a folder of the user's own. Whatever is in it may be deleted at any time, and
// nothing about it is ever an error: what cannot be read is not there, and what cannot be
// written is not kept. It must not know what it keeps.
package cache

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"sync"
	"time"
)

// Variable is the variable of the environment that turns the cache off, by the word Off, or
// names the folder it is to lie in.
const (
	Variable = "BENCHLEAF_CACHE"
	Off      = "off"
)

// Most is how many bytes a cache holds at most, apart from what the runs of a moment add to it.
const Most = 512 << 20

// lastUse is how long ago an entry may have been used without its time being written anew.
const lastUse = 24 * time.Hour

// Key is the digest of all that an entry depends on, with the program that made it.
type Key = [sha256.Size]byte

// Store is a folder of entries. Several hands and several programs may use it at once. A nil
// Store is one that keeps nothing.
type Store struct {
	folder string
	most   int64

	lock  sync.Mutex
	shut  bool  // it could not be written into
	added int64 // bytes that are not in the tally yet
}

// Open gives the cache that the environment asks for: in the folder of the user's caches, or
// where Variable says, a path from a folder. It is nil where there is to be none, where nobody
// says where it would be, and where others than the user may write into it.
func Open(env func(name string) string, from string) *Store {
	folder := env(Variable)
	switch {
	case folder == Off:
		return nil
	case folder == "":
		base := userFolder(env)
		if !filepath.IsAbs(base) {
			return nil
		}
		folder = filepath.Join(base, "benchleaf")
	case !filepath.IsAbs(folder):
		folder = filepath.Join(from, folder)
	}
	return At(folder, Most)
}

// userFolder is os.UserCacheDir for an environment that is given.
func userFolder(env func(name string) string) string {
	home := env("HOME")
	switch {
	case runtime.GOOS == "windows":
		return env("LocalAppData")
	case runtime.GOOS == "darwin" && home != "":
		return filepath.Join(home, "Library", "Caches")
	case env("XDG_CACHE_HOME") != "":
		return env("XDG_CACHE_HOME")
	case home != "":
		return filepath.Join(home, ".cache")
	}
	return ""
}

// At is a cache in a folder that holds so many bytes at most; nil where others may write into the folder.
func At(folder string, most int64) *Store {
	info, err := os.Stat(folder)
	if err == nil && (!info.IsDir() || runtime.GOOS != "windows" && info.Mode().Perm()&0o022 != 0) {
		return nil
	}
	return &Store{folder: folder, most: most}
}

// An entry is its mark, the digest of its key and its content, and the content.
const mark = "benchleaf cache 1\n"

const head = len(mark) + sha256.Size

func digest(key Key, content []byte) []byte {
	sum := sha256.New()
	sum.Write(key[:])
	sum.Write(content)
	return sum.Sum(nil)
}

// path is where an entry lies: 256 folders keep each of them short.
func (s *Store) path(key Key) string {
	name := hex.EncodeToString(key[:])
	return filepath.Join(s.folder, name[:2], name[2:])
}

// Get gives what was put under a key, to the byte; false where nothing was, and where it is not
// whole any more.
func (s *Store) Get(key Key) ([]byte, bool) {
	if s == nil {
		return nil, false
	}
	path := s.path(key)
	file, err := os.Open(path)
	if err != nil {
		return nil, false
	}
	defer file.Close()
	info, err := file.Stat()
	if err != nil || !info.Mode().IsRegular() || info.Size() < int64(head) || info.Size() > s.largest() {
		return nil, false
	}
	text := make([]byte, info.Size())
	if _, err := io.ReadFull(file, text); err != nil {
		return nil, false
	}
	content := text[head:]
	if string(text[:len(mark)]) != mark || string(text[len(mark):head]) != string(digest(key, content)) {
		return nil, false
	}
	if now := time.Now(); now.Sub(info.ModTime()) > lastUse {
		_ = os.Chtimes(path, now, now) // or it goes a little too early
	}
	return content, true
}

// largest is the size of the largest entry: one is not to drive out all others.
func (s *Store) largest() int64 { return s.most / 4 }

// Put keeps a content under a key, in place of what is there.
func (s *Store) Put(key Key, content []byte) {
	if s == nil || int64(head+len(content)) > s.largest() || s.isShut() {
		return
	}
	path := s.path(key)
	if err := s.write(path, key, content); err != nil {
		s.lock.Lock()
		s.shut = true
		s.lock.Unlock()
		return
	}
	s.count(int64(head + len(content)))
}

func (s *Store) isShut() bool {
	s.lock.Lock()
	defer s.lock.Unlock()
	return s.shut
}

// write puts an entry beside its place and moves it there, so that who reads finds the old one or
// the new one. It is not flushed to the disk: what is torn by a loss of power is told by its digest.
func (s *Store) write(path string, key Key, content []byte) error {
	file, err := os.CreateTemp(filepath.Dir(path), draft+"*")
	if os.IsNotExist(err) {
		if err = os.MkdirAll(filepath.Dir(path), 0o700); err == nil {
			file, err = os.CreateTemp(filepath.Dir(path), draft+"*")
		}
	}
	if err != nil {
		return err
	}
	_, err = file.Write(append(append([]byte(mark), digest(key, content)...), content...))
	if fault := file.Close(); err == nil {
		err = fault
	}
	if err == nil {
		err = os.Rename(file.Name(), path)
	}
	if err != nil {
		os.Remove(file.Name())
	}
	return err
}

// draft begins the names of entries that are being written.
const draft = "new-"
