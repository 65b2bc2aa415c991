package main

import (
	"fmt"
	"os/exec"
	"strings"
	"time"
)

// spent is what a run of a program took: from its start to its end, and its memory at the most.
type spent struct {
	time time.Duration
	peak int64 // bytes; 0 where the system does not tell
}

// child runs a program as a whole process.
func (b *bench) child(folder, program string, args ...string) (spent, error) {
	command := exec.CommandContext(b.until, program, args...)
	command.Dir = folder
	var said strings.Builder
	command.Stderr = &said // what it says on its way goes nowhere, so that nothing waits for it
	start := time.Now()
	err := command.Run()
	took := time.Since(start)
	if err != nil {
		return spent{}, fmt.Errorf("%s: %w\n%s", strings.Join(command.Args, " "), err, said.String())
	}
	return spent{took, peakOf(command.ProcessState)}, nil
}

// middle is the median time of some runs, and the most memory any of them took.
func middle(runs []spent) spent {
	var all []time.Duration
	most := int64(0)
	for _, run := range runs {
		all, most = append(all, run.time), max(most, run.peak)
	}
	return spent{median(all), most}
}
