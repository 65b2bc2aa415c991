package rules

import (
	"fmt"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/source"
)

var notChecked = add(Rule{Rule: finding.Rule{
	ID: "language/not-checked", Severity: finding.Warning, Title: "The steps of a procedure are not checked",
	Why:    "Nobody has looked at the order of the work, the hazards and the lists; no further finding does not mean that they are right.",
	Source: "the language itself", Setting: quiet,
	Bad:  "[[step]]\nsay = \"Look at the plug.\"\ncolour = \"red\"\n",
	Good: "[[step]]\nsay = \"Look at the plug.\"\n",
}})

// mostHolding is how many faults are named that keep the steps of one procedure from being checked.
const mostHolding = 3

// NotChecked says that no job was made of a procedure, and which faults of it or of the files it
// takes names from are the reason; nothing where there are none.
func NotChecked(file *model.File, found []finding.Finding) []finding.Finding {
	at, there := heading(file)
	if !there {
		return nil
	}
	var parts []string
	var first [][]finding.Related // of each other file
	for _, layer := range file.Layers() {
		var here []finding.Related
		for _, one := range found {
			if one.Place.File == layer.Source {
				here = append(here, finding.Related{Place: one.Place, Text: one.Summary})
			}
		}
		if len(here) == 0 {
			continue
		}
		in := layer.Source.Path
		if layer == file {
			in = "this file"
		}
		switch {
		case len(parts) > 0:
			parts = append(parts, fmt.Sprintf("%d in %s", len(here), in))
		case len(here) == 1:
			parts = append(parts, "1 error stands in "+in)
		default:
			parts = append(parts, fmt.Sprintf("%d errors stand in %s", len(here), in))
		}
		if layer != file { // its own stand beside it
			first = append(first, here)
		}
	}
	if len(parts) == 0 {
		return nil
	}
	out := finding.Finding{Rule: notChecked.ID, Severity: notChecked.Severity, Place: at, Why: notChecked.Why,
		Summary: fmt.Sprintf("the steps are not checked, since %s", names(parts)),
		Help:    "Put that right first; then the steps are checked."}
	for i := 0; len(out.Related) < mostHolding && i < mostHolding; i++ { // one of each file before the second of any
		for _, here := range first {
			if i < len(here) && len(out.Related) < mostHolding {
				out.Related = append(out.Related, here[i])
			}
		}
	}
	return []finding.Finding{out}
}

// header is the line that begins a procedure.
var header = pattern.MustCompile(`(?m)^[ \t]*(\[procedure\])`)

// heading is the header of a procedure, also where the text cannot be read; false where there is
// none, or no step below it.
func heading(file *model.File) (source.Place, bool) {
	if file.Procedure != nil {
		return file.Procedure.Header, len(file.Steps) > 0
	}
	at := header.FindSubmatchIndex(file.Source.Text)
	if at == nil {
		return source.Place{}, false
	}
	return source.Place{File: file.Source, Span: source.Span{Start: at[2], End: at[3]}}, true
}
