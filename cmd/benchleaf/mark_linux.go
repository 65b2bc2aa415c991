package main

import (
	"io/fs"
	"syscall"
)

// markOf is the mark of a file as the disk tells it; false where it tells too little.
func markOf(info fs.FileInfo) (mark, bool) {
	is, ok := info.Sys().(*syscall.Stat_t)
	if !ok {
		return mark{}, false
	}
	return mark{Size: info.Size(), Modified: info.ModTime().UnixNano(), Changed: is.Ctim.Nano(), Device: uint64(is.Dev), Number: is.Ino}, true
}
