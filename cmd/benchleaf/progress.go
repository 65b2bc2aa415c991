package main

import (
	"fmt"
	"io"
	"sync"
	"time"
)

// progress is a line on a terminal that says how far a long build is. Nothing
// else in the command looks at a clock.
type progress struct {
	to      io.Writer
	begun   time.Time
	lock    sync.Mutex
	drawn   bool
	highest int
}

// patience is how long a build may take before it says how far it is.
const patience = time.Second

// watch begins a progress line; where the stream is no terminal it stays silent.
func watch(to io.Writer) *progress {
	if _, yes := terminal(to); !yes {
		to = nil
	}
	return &progress{to: to, begun: time.Now()}
}

// step is told whenever a card is finished; cards are finished by several hands at once.
func (p *progress) step(n, of int) {
	if p.to == nil || time.Since(p.begun) < patience {
		return
	}
	p.lock.Lock()
	defer p.lock.Unlock()
	if n > p.highest {
		p.highest, p.drawn = n, true
		fmt.Fprintf(p.to, "\r%d of %s ", n, many(of, "card", "cards"))
	}
}

// end takes the line away again.
func (p *progress) end() {
	if p.drawn {
		fmt.Fprint(p.to, "\r\x1b[K")
	}
}
