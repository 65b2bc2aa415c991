package main

import (
	"errors"
	"io"
	"os"
	"time"
)

// mark tells by what the disk says of a file whether it was touched.
type mark struct {
	Size, Modified, Changed int64 // the times in nanoseconds; who puts the one back moves the other
	Device, Number          uint64
	Settled                 bool // whoever touches the file from now on changes one of these
}

// step is how long after a change the next one may get the same time, at the most: the clocks of disks go
// in steps. Where a time is of whole seconds, the steps may be of two.
func (m mark) step() time.Duration {
	if m.Changed%int64(time.Second) == 0 {
		return 3 * time.Second
	}
	return 20 * time.Millisecond
}

// stands reports whether a file is surely as it was when the mark was taken.
func (m mark) stands(path string) bool {
	if !m.Settled {
		return false
	}
	info, err := os.Stat(path)
	if err != nil || !info.Mode().IsRegular() {
		return false
	}
	now, known := markOf(info)
	now.Settled = true
	return known && now == m
}

// readMarked reads a file with its mark, which is taken first. It may wait for one that was changed
// only now to settle.
func readMarked(path string, wait bool) (m mark, text []byte, err error) {
	file, err := os.Open(path)
	if err != nil {
		return m, nil, err
	}
	defer file.Close()
	m, err = markNow(file)
	if err == nil && wait && !m.Settled && m.step() < time.Second {
		if left := m.step() - time.Since(time.Unix(0, m.Changed)); left > 0 && left <= m.step() {
			time.Sleep(left + time.Millisecond)
		}
		m, err = markNow(file)
	}
	if err != nil {
		return m, nil, err
	}
	text = make([]byte, m.Size+1) // one more than there is, to see the end
	n, err := io.ReadFull(file, text)
	switch {
	case err == nil:
		return m, nil, errors.New("it grows while it is read")
	case err != io.EOF && err != io.ErrUnexpectedEOF:
		return m, nil, err
	}
	return m, text[:n], nil
}

// markNow takes the mark of an open file.
func markNow(file *os.File) (mark, error) {
	now := time.Now()
	info, err := file.Stat()
	if err != nil {
		return mark{}, err
	}
	if !info.Mode().IsRegular() {
		return mark{}, errors.New("not a plain file")
	}
	m, known := markOf(info)
	m.Size = info.Size()
	m.Settled = known && now.Sub(time.Unix(0, m.Changed)) > m.step()
	return m, nil
}
