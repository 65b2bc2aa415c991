package main

import (
	"fmt"
	"os"
	"os/exec"
	"regexp"
	"runtime"
	"strconv"
	"strings"
	"time"
)

// facts are what the figures were measured on.
func (b *bench) facts() []fact {
	out := []fact{
		{"Day", time.Now().Format("2006-01-02 15:04")},
		{"Benchleaf", b.revision()},
		{"Processor", known(first(oneOf("/proc/cpuinfo", `(?m)^model name\s*:\s*(.+)$`), asked("sysctl", "-n", "machdep.cpu.brand_string")))},
		{"Cores", fmt.Sprint(runtime.NumCPU())},
		{"Memory", memory()},
		{"System", strings.TrimSpace(known(first(oneOf("/etc/os-release", `(?m)^PRETTY_NAME="?([^"\n]+)"?$`), runtime.GOOS)) + ", " + known(asked("uname", "-sr")))},
		{"Go", strings.TrimPrefix(known(asked("go", "version")), "go version ")},
	}
	if load := loadAverage(); load != "" {
		out = append(out, fact{"Load at the start", load})
	}
	if b.quick {
		out = append(out, fact{"Sizes", "small, by --quick: the figures are rough"})
	}
	return out
}

func (b *bench) revision() string {
	command := exec.Command("git", "describe", "--always", "--dirty")
	command.Dir = b.root
	told, err := command.Output()
	if err != nil {
		return known("")
	}
	return strings.TrimSpace(string(told))
}

func memory() string {
	kib, err := strconv.ParseInt(oneOf("/proc/meminfo", `(?m)^MemTotal:\s*(\d+) kB$`), 10, 64)
	if err == nil {
		return size(kib << 10)
	}
	bytes, err := strconv.ParseInt(asked("sysctl", "-n", "hw.memsize"), 10, 64)
	if err == nil {
		return size(bytes)
	}
	return known("")
}

// loadAverage is how many programs want to run, over one minute, five and fifteen; empty where
// the system does not tell.
func loadAverage() string {
	return oneOf("/proc/loadavg", `^(\S+ \S+ \S+)`)
}

// oneOf is what the group of an expression finds in a file; empty where there is no such thing.
func oneOf(file, expression string) string {
	text, err := os.ReadFile(file)
	found := regexp.MustCompile(expression).FindSubmatch(text)
	if err != nil || found == nil {
		return ""
	}
	return string(found[1])
}

// asked is what a program tells; empty where it is not there.
func asked(program string, args ...string) string {
	told, err := exec.Command(program, args...).Output()
	if err != nil {
		return ""
	}
	return strings.TrimSpace(string(told))
}

func first(texts ...string) string {
	for _, text := range texts {
		if text != "" {
			return text
		}
	}
	return ""
}

func known(text string) string { return first(text, "not known") }
