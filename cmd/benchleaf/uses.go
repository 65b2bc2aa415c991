package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/gob"

	"benchleaf/cmd/internal/cache"
	"benchleaf/compiler"
	"benchleaf/compiler/source"
)

// used is what a file takes from others.
type used struct{ Files, Pictures []string }

// usesKnown is what the files of a build use, by the digests of their paths and texts: a text that was
// read the last time need not be read again to find what is to be read next.
type usesKnown struct {
	kept     *cache.Store
	folder   string
	paths    []string
	last     map[string]used
	now      map[string]used
	reckoned bool // some were not known
}

// usesBefore is what this program found the last time, when it was asked the same in the same folder.
func usesBefore(kept *cache.Store, p *program, folder string, paths []string) *usesKnown {
	u := &usesKnown{kept: kept, folder: folder, paths: paths, now: map[string]used{}}
	if itself, ok := p.known(); ok {
		if text, there := kept.Get(u.key(itself)); there && gob.NewDecoder(bytes.NewReader(text)).Decode(&u.last) != nil {
			u.last = nil
		}
	}
	return u
}

func (u *usesKnown) key(program cache.Key) cache.Key {
	all := parts{sha256.New()}
	all.add("uses", program[:], u.folder)
	for _, path := range u.paths {
		all.add(path)
	}
	return all.key()
}

// of is compiler.Uses, if need be.
func (u *usesKnown) of(file *source.File) (files, pictures []string) {
	all := parts{sha256.New()}
	all.add(file.Path, file.Text)
	key := all.key()
	is, known := u.last[string(key[:])]
	if !known {
		is.Files, is.Pictures = compiler.Uses(file)
		u.reckoned = true
	}
	u.now[string(key[:])] = is
	return is.Files, is.Pictures
}

// keep keeps what was found for the next time.
func (u *usesKnown) keep(program cache.Key) {
	var text bytes.Buffer
	if (u.reckoned || len(u.now) != len(u.last)) && gob.NewEncoder(&text).Encode(u.now) == nil {
		u.kept.Put(u.key(program), text.Bytes())
	}
}
