package finding

import (
	"fmt"
	"io"
	"strings"

	"benchleaf/compiler/source"
)

// Style is how findings are drawn.
type Style struct {
	Colour bool                     // with the colours of a terminal
	Width  int                      // columns to stay within; 0 for no end
	Path   func(path string) string // what to call a file; its own path when nil
}

// Draw writes findings for people: the place and what is the case, the line with
// the span marked, the other places, why it matters and what to write. The place
// stands alone at the start of its line, so that an editor can jump there. A
// reason that was given once is not given again.
func Draw(w io.Writer, list []Finding, style Style) error {
	p := &pen{style: style, told: map[string]bool{}}
	for i, found := range list {
		if i > 0 {
			p.out.WriteByte('\n')
		}
		p.finding(found)
	}
	_, err := io.WriteString(w, p.out.String())
	return err
}

// pen gathers what is drawn.
type pen struct {
	style Style
	told  map[string]bool
	out   strings.Builder
}

// The colours of a terminal, ECMA-48 8.3.117.
const (
	plain  = "\x1b[0m"
	bold   = "\x1b[1m"
	faint  = "\x1b[2m"
	red    = "\x1b[1;31m"
	yellow = "\x1b[1;33m"
	cyan   = "\x1b[1;36m"
)

var inks = map[Severity]string{Error: red, Warning: yellow, Note: cyan}

func (p *pen) ink(colour, text string) string {
	if !p.style.Colour || text == "" {
		return text
	}
	return colour + text + plain
}

func (p *pen) finding(f Finding) {
	summary := clean(f.Summary)
	if f.Variant != "" {
		summary += fmt.Sprintf(" (version %s)", clean(f.Variant))
	}
	fmt.Fprintf(&p.out, "%s%s %s %s\n", p.ink(bold, p.where(f)), p.ink(inks[f.Severity], f.Severity.String()+":"), p.ink(bold, summary), p.ink(faint, "["+f.Rule+"]"))
	p.excerpt(f.Place, '^', inks[f.Severity])
	for _, other := range f.Related {
		p.related(other)
	}
	if f.Why != "" && !p.told[f.Rule+f.Why] {
		p.told[f.Rule+f.Why] = true
		p.say("why:", f.Why)
	}
	if f.Help != "" {
		p.say("write:", f.Help)
	}
	for _, fix := range f.Fixes { // a fix is what lint --fix does; the others are choices
		label, title := "or:", fix.Title
		if fix.Certain {
			label = "fix:"
			title += fmt.Sprintf(" (benchleaf lint --fix %s does it)", p.path(mended(f, fix).Path))
		}
		p.say(label, title)
	}
}

// mended is the file a fix changes.
func mended(f Finding, fix Fix) *source.File {
	if len(fix.Edits) > 0 {
		return fix.Edits[0].Place.File
	}
	return f.Place.File
}

func (p *pen) path(path string) string {
	if p.style.Path != nil {
		path = p.style.Path(path)
	}
	return clean(path)
}

func (p *pen) where(f Finding) string {
	if !f.Place.Known() {
		return ""
	}
	at := f.Place.Start()
	return fmt.Sprintf("%s:%d:%d: ", p.path(f.Place.File.Path), at.Line, at.Column)
}

func (p *pen) related(other Related) {
	if !other.Place.Known() {
		p.say("see:", other.Text)
		return
	}
	at := other.Place.Start()
	p.say("see:", fmt.Sprintf("%s:%d:%d: %s", p.path(other.Place.File.Path), at.Line, at.Column, other.Text))
	p.excerpt(other.Place, '-', faint)
}

// Words after a finding are set in, and go on under themselves.
const (
	inset  = "    "
	hang   = 7 // columns a label takes
	narrow = 24
)

// say writes a labelled text, broken between words to the width.
func (p *pen) say(label, text string) {
	room := 0
	if p.style.Width > 0 {
		room = max(narrow, p.style.Width-len(inset)-hang)
	}
	for i, line := range wrap(text, room) {
		if i > 0 {
			label = ""
		}
		fmt.Fprintf(&p.out, "%s%s%s%s\n", inset, p.ink(bold, label), strings.Repeat(" ", hang-len(label)), line)
	}
}

// wrap breaks a text between words into lines of some columns at most; a word
// that is longer stands alone. Line breaks of the text stay.
func wrap(text string, room int) []string {
	var out []string
	for _, line := range strings.Split(strings.TrimRight(text, "\n"), "\n") {
		line = clean(line)
		if room == 0 {
			out = append(out, line)
			continue
		}
		built, columns := "", 0
		for _, word := range strings.Fields(line) {
			wide := columnsOf(word)
			if columns > 0 && columns+1+wide > room {
				out = append(out, built)
				built, columns = "", 0
			}
			if columns > 0 {
				built, columns = built+" ", columns+1
			}
			built, columns = built+word, columns+wide
		}
		out = append(out, built)
	}
	return out
}
