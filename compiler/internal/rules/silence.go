package rules

import (
	"fmt"
	"slices"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

// silent makes the finding that a list of the procedure is not given, with what
// would stand in it.
func silent(procedure *model.Procedure, key, what string, needed []string) finding.Finding {
	list := "[]"
	if len(needed) > 0 {
		list = quoted(needed)
	}
	line := key + " = " + list
	return finding.Finding{
		Place: procedure.Header, Summary: fmt.Sprintf("the procedure does not say %s", what),
		Help: fmt.Sprintf("Write %s; an empty list says that nothing is needed.", line),
		// An empty list says "none needed"; only the author can say that.
		Fixes: []finding.Fix{{Title: "Write " + line, Certain: len(needed) > 0, Edits: []finding.Edit{insertKey(procedure.Header, line)}}},
	}
}

// unique keeps the first of each name.
func unique(names []string) []string {
	var out []string
	for _, name := range names {
		if !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}
