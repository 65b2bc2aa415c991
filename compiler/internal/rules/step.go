package rules

import (
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/source"
)

// at is where a step is pointed at: its verb, or its header where it has none.
func at(step *model.Step) source.Place {
	if len(step.Verbs) > 0 {
		return step.Verbs[0].At
	}
	return step.Header
}

// names joins names as people do.
func names(list []string) string {
	switch len(list) {
	case 0:
		return ""
	case 1:
		return list[0]
	default:
		return strings.Join(list[:len(list)-1], ", ") + " and " + list[len(list)-1]
	}
}

// quoted writes names as a TOML list.
func quoted(list []string) string { return `["` + strings.Join(list, `", "`) + `"]` }

// insertKey is an edit that writes a key on a new line under a table's header.
func insertKey(header source.Place, line string) finding.Edit {
	if strings.HasPrefix(header.Text(), "{") { // a table in braces holds its keys itself
		at := header.Span.Start + 1
		return finding.Edit{Place: source.Place{File: header.File, Span: source.Span{Start: at, End: at}}, Text: " " + line + ","}
	}
	end := header.Span.End
	for end < len(header.File.Text) && header.File.Text[end] != '\n' {
		end++
	}
	return finding.Edit{Place: source.Place{File: header.File, Span: source.Span{Start: end, End: end}}, Text: "\n" + line}
}

// addTo is an edit that puts a name at the end of a list, or writes the list
// under the header where there is none.
func addTo(list model.List, header source.Place, key, name string) finding.Edit {
	if !list.Given {
		return insertKey(header, key+" = "+quoted([]string{name}))
	}
	text := string(list.At.File.Text[list.At.Span.Start:list.At.Span.End])
	if !strings.HasPrefix(text, "[") {
		return finding.Edit{Place: list.At, Text: "[" + text + `, "` + name + `"]`}
	}
	if len(list.Items) == 0 { // before the bracket, so that a comment in it stays
		end := list.At.Span.End - 1
		return finding.Edit{Place: source.Place{File: list.At.File, Span: source.Span{Start: end, End: end}}, Text: `"` + name + `"`}
	}
	end := list.Items[len(list.Items)-1].At.Span.End
	return finding.Edit{Place: source.Place{File: list.At.File, Span: source.Span{Start: end, End: end}}, Text: `, "` + name + `"`}
}
