package compose

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/text"

	"benchleaf/compiler/internal/plan"
)

// blocks reads CommonMark into paragraphs and items of lists. Headings become
// bold paragraphs; pictures and raw HTML have no place in a step and leave their text.
func blocks(markdown string) []plan.Block {
	if strings.TrimSpace(markdown) == "" {
		return nil
	}
	if unmarked(markdown) || strings.Count(markdown, "[")+strings.Count(markdown, ">") > mostNested {
		return []plan.Block{{Runs: []plan.Run{{Text: strings.TrimRight(markdown, " ")}}}}
	}
	return parsed(markdown)
}

// mostNested is how many brackets and quotations a text may have before it is read as it stands: the
// parser takes longer for each the more there are, and a step has none.
const mostNested = 200

// parser keeps nothing of what it reads, and may be used by many at once.
var parser = goldmark.New().Parser()

// unmarked reports whether a text holds no mark that CommonMark gives a meaning; most
// sentences of a procedure are so, and need no parser.
func unmarked(markdown string) bool {
	if strings.ContainsAny(markdown, "*_`[]<>&\\#!~") || strings.Contains(markdown, "  ") || strings.ContainsFunc(markdown, unicode.IsControl) || !utf8.ValidString(markdown) {
		return false
	}
	switch first := markdown[0]; {
	case first >= '0' && first <= '9', first == '-', first == '+', first == ' ', first == '=':
		return false // may begin a list or a line
	}
	return true
}

func parsed(markdown string) []plan.Block {
	source := []byte(markdown)
	root := parser.Parse(text.NewReader(source))
	r := reader{source: source}
	r.container(root, "")
	return r.out
}

// runs reads CommonMark as one stretch of text.
func runs(markdown string) []plan.Run {
	var out []plan.Run
	for i, block := range blocks(markdown) {
		if i > 0 {
			out = append(out, plan.Run{Text: " "})
		}
		out = append(out, block.Runs...)
	}
	return out
}

type reader struct {
	source []byte
	out    []plan.Block
}

// container reads the blocks inside a node; bullet goes to the first of them.
func (r *reader) container(node ast.Node, bullet string) {
	for child := node.FirstChild(); child != nil; child = child.NextSibling() {
		switch child := child.(type) {
		case *ast.List:
			r.list(child)
		case *ast.Blockquote:
			r.container(child, bullet)
		case *ast.Heading:
			r.block(bullet, r.inline(child, plan.Run{Bold: true}))
		case *ast.CodeBlock, *ast.FencedCodeBlock:
			r.block(bullet, []plan.Run{{Text: strings.TrimSpace(string(child.Lines().Value(r.source))), Code: true}})
		case *ast.ThematicBreak, *ast.HTMLBlock, *ast.LinkReferenceDefinition:
		default:
			r.block(bullet, r.inline(child, plan.Run{}))
		}
		bullet = ""
	}
}

func (r *reader) list(list *ast.List) {
	number := list.Start
	for item := list.FirstChild(); item != nil; item = item.NextSibling() {
		bullet := "•"
		if list.IsOrdered() {
			bullet = strconv.Itoa(number) + "."
			number++
		}
		r.container(item, bullet)
	}
}

func (r *reader) block(bullet string, content []plan.Run) {
	if len(content) > 0 {
		r.out = append(r.out, plan.Block{Bullet: bullet, Runs: content})
	}
}

// inline reads the text inside a node in a face.
func (r *reader) inline(node ast.Node, face plan.Run) []plan.Run {
	var out []plan.Run
	add := func(words string, face plan.Run) {
		if words == "" {
			return
		}
		if n := len(out); n > 0 && out[n-1].Bold == face.Bold && out[n-1].Italic == face.Italic && out[n-1].Code == face.Code {
			out[n-1].Text += words
			return
		}
		face.Text = words
		out = append(out, face)
	}
	for child := node.FirstChild(); child != nil; child = child.NextSibling() {
		inner := face
		switch child := child.(type) {
		case *ast.Text:
			words := string(child.Segment.Value(r.source))
			if !child.IsRaw() {
				words = unescape(words)
			}
			if child.SoftLineBreak() || child.HardLineBreak() {
				words += " "
			}
			add(words, face)
			continue
		case *ast.String:
			add(string(child.Value), face)
			continue
		case *ast.AutoLink:
			add(string(child.Label(r.source)), face)
			continue
		case *ast.RawHTML:
			continue
		case *ast.Emphasis:
			inner.Bold, inner.Italic = face.Bold || child.Level > 1, face.Italic || child.Level == 1
		case *ast.CodeSpan:
			inner.Code = true
		}
		for _, run := range r.inline(child, inner) {
			add(run.Text, run)
		}
	}
	return out
}
