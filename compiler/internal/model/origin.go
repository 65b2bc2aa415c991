package model

import (
	"strconv"
	"strings"

	"benchleaf/compiler/internal/pattern"
)

// Letter is how the procedures that a job was joined out of are called: A, B, and so on.
func Letter(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return Letter(i/26-1) + Letter(i%26)
}

// Origin is a step that one of a joined job comes from, or does the work of.
type Origin struct {
	Text   string // as it is written
	Letter string // empty where it cannot be read
	Number int
}

var originForm = pattern.MustCompile(`^([A-Z]+) ([1-9][0-9]*)$`)

// Origins are the steps that a step of a joined job comes from, its own first: "A 7, B 2".
func (s *Step) Origins() []Origin {
	if !s.Origin.Set() {
		return nil
	}
	var out []Origin
	for _, text := range strings.Split(s.Origin.Text, ",") {
		one := Origin{Text: strings.TrimSpace(text)}
		if m := originForm.FindStringSubmatch(one.Text); m != nil {
			if n, err := strconv.Atoi(m[2]); err == nil {
				one.Letter, one.Number = m[1], n
			}
		}
		out = append(out, one)
	}
	return out
}
