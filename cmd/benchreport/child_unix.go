//go:build unix

package main

import (
	"os"
	"runtime"
	"syscall"
)

// peakOf is the most memory a process had, by getrusage.
func peakOf(state *os.ProcessState) int64 {
	usage, ok := state.SysUsage().(*syscall.Rusage)
	if !ok {
		return 0
	}
	if runtime.GOOS == "darwin" {
		return int64(usage.Maxrss)
	}
	return int64(usage.Maxrss) << 10
}
