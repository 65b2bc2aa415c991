package tree

import (
	"bytes"
	"fmt"
	"strings"

	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/source"
)

// Items of a list on one line, as they stand between commas.
var (
	wholeItem = pattern.MustCompile(`^(?:"[^"]*"|'[^']*'|[0-9a-z.+-]*)$`)
	plainName = pattern.MustCompile(`^(?:[A-Za-z0-9][A-Za-z0-9._-]*|\d[0-9./]* ?[A-Za-z·µ°%]+)$`)
	halfItems = []struct {
		form    *pattern.Pattern
		summary string
	}{
		{pattern.MustCompile(`^"([^"']+)$`), "%s has a quote before it and none at its end"},
		{pattern.MustCompile(`^'([^"']+)$`), "%s has a quote before it and none at its end"},
		{pattern.MustCompile(`^(?:"([^"']+)'|'([^"']+)")$`), "the text %s begins with one kind of quote and ends with the other"},
		{pattern.MustCompile(`^(?:""([^"']+)"|"([^"']+)"")$`), "%s has a quote too many"},
	}
)

// wholeItems reports whether a list on one line is of texts in double quotes, each with no quote in
// it, and nothing else: most are.
func wholeItems(line []byte) bool {
	for {
		line = bytes.TrimLeft(line, " \t")
		if len(line) == 0 || line[0] != '"' {
			return len(line) == 0
		}
		end := bytes.IndexAny(line[1:], `"',`) + 1
		if end == 0 || line[end] != '"' {
			return false
		}
		line = bytes.TrimLeft(line[end+1:], " \t")
		if len(line) > 0 && line[0] != ',' {
			return false
		}
		line = line[min(1, len(line)):]
	}
}

// lostQuote tells of the one item of a list on one line that has lost a quote or has one too
// many: the list read as it stands would put the fault at an item behind it. Nothing is told
// where two items are damaged, for a comma may stand in the text of one. The fix is certain
// where all items are names or sizes, in which no comma can stand. A quote that is lost before
// an item is told where that item is read.
func (p *parser) lostQuote(start int) {
	line := p.src[start+1:]
	if end := bytes.IndexByte(line, '\n'); end >= 0 {
		line = line[:end]
	}
	end := bytes.IndexByte(line, ']')
	if end < 0 || bytes.ContainsAny(line[:end], `[{\#`) {
		return
	}
	if after := bytes.TrimSpace(line[end+1:]); len(after) > 0 && after[0] != '#' {
		return
	}
	if wholeItems(line[:end]) {
		return
	}
	certain, at := true, start+1
	var broken source.Span
	var summary, mended string
	for _, item := range strings.SplitAfter(string(line[:end]), ",") {
		text := strings.Trim(strings.TrimSuffix(item, ","), " \t")
		from := at + strings.Index(item, text)
		at += len(item)
		inner := strings.Trim(text, `"'`)
		certain = certain && (text == "" || plainName.MatchString(inner))
		if wholeItem.MatchString(text) {
			continue
		}
		if summary != "" {
			return
		}
		for _, half := range halfItems {
			if half.form.MatchString(text) {
				summary, mended, broken = half.summary, quoted(inner), source.Span{Start: from, End: from + len(text)}
				break
			}
		}
		if summary == "" {
			return
		}
	}
	if summary == "" {
		return
	}
	p.open, p.pos = false, start+1+len(line)
	p.mend(unclosedText, broken, fmt.Sprintf(summary, p.at(broken)), "Write a quote on both sides: "+mended, "Write "+mended, mended, certain)
}
