package pages

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"benchleaf/compiler/internal/plan"
)

// setter sets type for one document and gathers what it could not show.
type setter struct {
	look     Look
	size     sizes
	words    plan.Words
	where    string // for problems
	problems []Problem
}

func newSetter(look Look, words plan.Words, problems []Problem) *setter {
	return &setter{look: look, size: look.sizes(), words: words, problems: problems}
}

func (s *setter) problem(format string, args ...any) {
	s.problems = append(s.problems, Problem{s.where, fmt.Sprintf(format, args...)})
}

// kind is how a paragraph is set.
type kind struct {
	size    float64 // millimetres of the em
	leading float64 // line to line, in ems
	face    Face
	ink, on Ink
}

func (k kind) line() float64 { return k.size * k.leading }

// baseline is how far the base line lies below the top of its line.
func (k kind) baseline() float64 {
	return (k.line()-(k.face.ascent()+k.face.descent())*k.size)/2 + k.face.ascent()*k.size
}

func (k kind) with(face Face) kind {
	k.face = face
	return k
}

func (k kind) inked(ink Ink) kind {
	k.ink = ink
	return k
}

func (k kind) lying(on Ink) kind {
	k.on = on
	return k
}

func (s *setter) main() kind  { return kind{s.size.main, 1.22, Regular, black, white} }
func (s *setter) text() kind  { return kind{s.size.text, 1.24, Regular, black, white} }
func (s *setter) small() kind { return kind{s.size.small, 1.24, Regular, black, white} }

// span is letters of one face and ink.
type span struct {
	text string
	face Face
	ink  Ink
}

// word is spans without a space between; glue says it may not part from the next.
type word struct {
	spans []span
	glued bool
}

func (w word) width(size float64) float64 {
	sum := 0.0
	for _, sp := range w.spans {
		sum += sp.face.Width(sp.text, size)
	}
	return sum
}

// spans turns runs into spans, in the faces of a kind.
func (k kind) spans(runs []plan.Run) []span {
	out := make([]span, 0, len(runs))
	for _, run := range runs {
		face := k.face
		bold := run.Bold || face == Bold
		switch {
		case run.Code:
			face = Mono
		case bold && run.Italic:
			face = BoldItalic
		case bold:
			face = Bold
		case run.Italic:
			face = Italic
		}
		out = append(out, span{run.Text, face, k.ink})
	}
	return out
}

// say sets a text of one face.
func (s *setter) say(k kind, width float64, text string) piece {
	return s.set(k, width, []span{{text, k.face, k.ink}})
}

// set breaks spans into lines no wider than width. A word wider than a line is
// broken between letters.
func (s *setter) set(k kind, width float64, spans []span) piece {
	words := s.split(spans)
	lines := k.lines(words, width)
	lines = k.eased(words, lines, width)
	var out piece
	for _, line := range lines {
		out.put(k.row(line), 0, out.height)
	}
	return out
}

func (k kind) lines(words []word, width float64) [][]word {
	var lines [][]word
	for len(words) > 0 {
		var line []word
		line, words = k.fill(words, width)
		lines = append(lines, line)
	}
	return lines
}

// eased draws lines in a little where the last one would hold a word alone, as
// long as that costs no line.
func (k kind) eased(words []word, lines [][]word, width float64) [][]word {
	const lone, narrowest, step = 0.25, 65, 5 // shares of the width; the last two in hundredths
	if len(lines) < 2 || len(lines) > 4 {
		return lines
	}
	for share := 100; share >= narrowest; share -= step {
		drawn := k.lines(words, width*float64(share)/100)
		if len(drawn) > len(lines) {
			return lines
		}
		if k.wide(drawn[len(drawn)-1]) >= lone*width {
			return drawn
		}
	}
	return lines
}

func (k kind) wide(line []word) float64 {
	sum := 0.0
	for i, w := range line {
		if i > 0 {
			sum += line[i-1].space(k.size)
		}
		sum += w.width(k.size)
	}
	return sum
}

// wideAs is how wide a text is on one line.
func (s *setter) wideAs(k kind, text string) float64 {
	return k.wide(s.split([]span{{text, k.face, k.ink}}))
}

// split takes spans apart into words.
func (s *setter) split(spans []span) []word {
	var words []word
	open := false // the next letters still belong to the last word
	for _, sp := range spans {
		text, missing := printable(sp.face, sp.text)
		for _, r := range missing {
			s.problem("no type for %q (U+%04X)", string(r), r)
		}
		for i, part := range strings.Split(text, " ") {
			if i > 0 {
				open = false
			}
			if part == "" {
				continue
			}
			bit := span{strings.ReplaceAll(part, "\u00a0", " "), sp.face, sp.ink}
			if open {
				last := &words[len(words)-1]
				last.spans = append(last.spans, bit)
			} else {
				words = append(words, word{spans: []span{bit}})
			}
			open = true
		}
	}
	for i := range len(words) - 1 {
		words[i].glued = isNumber(words[i]) && isShort(words[i+1]) ||
			i > 0 && words[i-1].glued && isShort(words[i]) && startsNumber(words[i+1])
	}
	return words
}

// A number keeps to its unit, and "22 × 27", "20 to 30" and "1 h 15 min" stay whole.
func isNumber(w word) bool {
	last := w.spans[len(w.spans)-1].text
	return isDigit(last[len(last)-1])
}

func startsNumber(w word) bool { return isDigit(w.spans[0].text[0]) }

func isShort(w word) bool {
	return len(w.spans) == 1 && utf8.RuneCountInString(w.spans[0].text) <= 4 && !startsNumber(w)
}

func isDigit(b byte) bool { return b >= '0' && b <= '9' }

// fill takes the words of one line off the front.
func (k kind) fill(words []word, width float64) (line, rest []word) {
	x, n, fits := 0.0, 0, 0
	for n < len(words) {
		w := words[n].width(k.size)
		if n > 0 {
			w += words[n-1].space(k.size)
		}
		if x+w > width+tiny {
			break
		}
		x += w
		n++
		if !words[n-1].glued || n == len(words) {
			fits = n
		}
	}
	if fits == 0 {
		fits = n
	}
	if fits > 0 {
		return words[:fits], words[fits:]
	}
	head, tail := k.chop(words[0], width)
	if len(tail.spans) == 0 {
		return []word{head}, words[1:]
	}
	return []word{head}, append([]word{tail}, words[1:]...)
}

// space is the width of the space after a word.
func (w word) space(size float64) float64 { return w.spans[len(w.spans)-1].face.Width(" ", size) }

// chop parts a word that is wider than a line; at least one letter stays.
func (k kind) chop(w word, width float64) (head, tail word) {
	x := 0.0
	for i, sp := range w.spans {
		for at, r := range sp.text {
			advance := sp.face.Width(string(r), k.size)
			if x+advance > width && x > 0 {
				head.spans = append([]span{}, w.spans[:i]...)
				if at > 0 {
					head.spans = append(head.spans, span{sp.text[:at], sp.face, sp.ink})
				}
				tail.spans = append([]span{{sp.text[at:], sp.face, sp.ink}}, w.spans[i+1:]...)
				tail.glued = w.glued
				return head, tail
			}
			x += advance
		}
	}
	return w, word{}
}

// row draws one line; neighbours of one face and ink become one mark.
func (k kind) row(line []word) piece {
	out := piece{height: k.line()}
	x := 0.0
	for n, w := range line {
		if n > 0 {
			x += line[n-1].space(k.size)
			if last, ok := lastText(out); ok {
				last.Text += " " // within the mark, so that the letters copied out keep their spaces
				out.marks[len(out.marks)-1] = last
			}
		}
		for _, sp := range w.spans {
			wide := sp.face.Width(sp.text, k.size)
			if last, ok := lastText(out); ok && last.Face == sp.face && last.Ink == sp.ink {
				last.Text += sp.text
				out.marks[len(out.marks)-1] = last
			} else {
				out.mark(Text{x, k.baseline(), sp.face, k.size, sp.ink, sp.text, k.on})
			}
			x += wide
		}
	}
	out.width = x
	return out
}

// line sets a text on one line, and ends it with an ellipsis where it is too long for that.
func (s *setter) line(style kind, width float64, text string) piece {
	words := s.split([]span{{text, style.face, style.ink}})
	if style.wide(words) <= width {
		return s.say(style, width, text)
	}
	line, _ := style.fill(words, width-style.face.Width("…", style.size))
	out := style.row(line)
	if last, ok := lastText(out); ok {
		last.Text += "…"
		out.width += last.Face.Width("…", last.Size)
		out.marks[len(out.marks)-1] = last
	}
	return out
}

func lastText(p piece) (Text, bool) {
	if len(p.marks) == 0 {
		return Text{}, false
	}
	last, ok := p.marks[len(p.marks)-1].(Text)
	return last, ok
}
