// Package pattern is regular expressions that are quick on texts in which they find nothing, and
// those are most: one of a few short texts must stand in whatever an expression finds, and an
// expression is tried only where one does. They cost nothing before they are first asked: a
// command that needs few of the many begins at once.
package pattern

import (
	"regexp"
	"slices"
	"strings"
	"sync"
)

// Pattern is a regular expression.
type Pattern struct {
	must   []string    // in small letters; one stands in each text it is found in; none where that is not known
	least  int         // the length of the shortest of them
	starts [1024]uint8 // by the first letters, hashed: which of the rows, from 1
	rows   [][]string

	look    sync.Once             // makes ready to look for them
	compile func() *regexp.Regexp // the whole expression, compiled when it is first tried
	of      func() []string       // what must be there
}

// MustCompile makes a pattern of a regular expression as package regexp has them. One that cannot
// be read panics when it is first tried; a test reads all that the project writes out.
func MustCompile(form string) *Pattern {
	return &Pattern{compile: sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(form) }), of: func() []string { return required(form) }}
}

// ready finds out what must be there, once.
func (p *Pattern) ready() {
	p.look.Do(func() {
		p.must = p.of()
		p.index()
	})
}

// index makes ready to look for the texts that must be there.
func (p *Pattern) index() {
	for i, text := range p.must {
		if i == 0 || len(text) < p.least {
			p.least = len(text)
		}
	}
	for _, text := range p.must {
		at := &p.starts[p.hash(text)]
		if *at == 0 {
			if len(p.rows) < 255 {
				p.rows = append(p.rows, nil)
			}
			*at = uint8(len(p.rows))
		}
		p.rows[*at-1] = append(p.rows[*at-1], text)
	}
}

// hash is of the first two letters of a text, or the first three where all have as many.
func (p *Pattern) hash(text string) uint32 {
	out := uint32(text[0])*37 ^ uint32(text[1])*601
	if p.least > 2 {
		out ^= uint32(text[2]) * 5
	}
	return out & 1023
}

// small are bytes with the letters of ASCII made small.
var small = func() (out [256]byte) {
	for i := range out {
		out[i] = byte(i)
	}
	for c := byte('A'); c <= 'Z'; c++ {
		out[c] = c + 'a' - 'A'
	}
	return out
}()

// May reports whether the pattern may be found in a text; where it says no, it is not.
func (p *Pattern) May(text string) bool {
	p.ready()
	if p.least < 2 {
		return true
	}
	if len(text) < p.least {
		return !plain(text)
	}
	third := uint32(0)
	if p.least > 2 {
		third = 5
	}
	last := len(text) - p.least
	now, next := uint32(small[text[0]]), uint32(small[text[1]])
	for i := 0; i <= last; i++ {
		after := uint32(0)
		if i+2 < len(text) {
			after = uint32(small[text[i+2]])
		}
		if now >= 0xC5 && !plain(text[i:min(len(text), i+3)]) {
			return true
		}
		if row := p.starts[(now*37^next*601^after*third)&1023]; row > 0 && begins(text[i:], p.rows[row-1]) {
			return true
		}
		now, next = next, after
	}
	return !plain(text[last+1:])
}

// begins reports whether a text begins with one of some in small letters.
func begins(text string, any []string) bool {
	return slices.ContainsFunc(any, func(must string) bool {
		if len(text) < len(must) {
			return false
		}
		for i := range len(must) {
			if small[text[i]] != must[i] {
				return false
			}
		}
		return true
	})
}

// plain reports whether a text holds neither the long s nor the sign of the kelvin, which are
// letters of ASCII to an expression that knows no capitals.
func plain(text string) bool {
	return !strings.Contains(text, "\u017f") && !strings.Contains(text, "\u212a")
}

// MatchString is as in package regexp, and so are the others.
func (p *Pattern) MatchString(text string) bool { return p.May(text) && p.compile().MatchString(text) }

// FindString is as in package regexp.
func (p *Pattern) FindString(text string) string {
	if !p.May(text) {
		return ""
	}
	return p.compile().FindString(text)
}

// FindStringIndex is as in package regexp.
func (p *Pattern) FindStringIndex(text string) []int {
	if !p.May(text) {
		return nil
	}
	return p.compile().FindStringIndex(text)
}

// FindStringSubmatch is as in package regexp.
func (p *Pattern) FindStringSubmatch(text string) []string {
	if !p.May(text) {
		return nil
	}
	return p.compile().FindStringSubmatch(text)
}

// FindStringSubmatchIndex is as in package regexp.
func (p *Pattern) FindStringSubmatchIndex(text string) []int {
	if !p.May(text) {
		return nil
	}
	return p.compile().FindStringSubmatchIndex(text)
}

// FindAllString is as in package regexp.
func (p *Pattern) FindAllString(text string, n int) []string {
	if !p.May(text) {
		return nil
	}
	return p.compile().FindAllString(text, n)
}

// FindAllStringIndex is as in package regexp.
func (p *Pattern) FindAllStringIndex(text string, n int) [][]int {
	if !p.May(text) {
		return nil
	}
	return p.compile().FindAllStringIndex(text, n)
}

// FindAllStringSubmatchIndex is as in package regexp.
func (p *Pattern) FindAllStringSubmatchIndex(text string, n int) [][]int {
	if !p.May(text) {
		return nil
	}
	return p.compile().FindAllStringSubmatchIndex(text, n)
}

// FindAllStringSubmatch is as in package regexp.
func (p *Pattern) FindAllStringSubmatch(text string, n int) [][]string {
	if !p.May(text) {
		return nil
	}
	return p.compile().FindAllStringSubmatch(text, n)
}

// Match is as in package regexp.
func (p *Pattern) Match(text []byte) bool { return p.compile().Match(text) }

// FindSubmatchIndex is as in package regexp.
func (p *Pattern) FindSubmatchIndex(text []byte) []int { return p.compile().FindSubmatchIndex(text) }

// FindSubmatch is as in package regexp.
func (p *Pattern) FindSubmatch(text []byte) [][]byte { return p.compile().FindSubmatch(text) }

// ReplaceAllString is as in package regexp.
func (p *Pattern) ReplaceAllString(text, by string) string {
	if !p.May(text) {
		return text
	}
	return p.compile().ReplaceAllString(text, by)
}

// Any makes a quick look at a text for several patterns: where it says no, none of them is found.
func Any(patterns ...*Pattern) func(text string) bool {
	all := &Pattern{of: func() []string {
		var must []string
		for _, p := range patterns {
			if p.ready(); p.least < 2 {
				return nil
			}
			must = append(must, p.must...)
		}
		return must
	}}
	return all.May
}
