package rules

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/trade"
	"benchleaf/compiler/source"
)

// write is the fix that writes a text in quotes in the place of another, for a person to choose:
// what is nearest is not always what is meant.
func write(text string, at source.Place) []finding.Fix {
	if text == "" {
		return nil
	}
	return []finding.Fix{{Title: fmt.Sprintf("Write %q", text), Edits: []finding.Edit{{Place: at, Text: fmt.Sprintf("%q", text)}}}}
}

// meant is the fix for a text that is in no table of the trade; none where nothing is near.
func meant(err error, at source.Place) []finding.Fix {
	var mistaken *trade.Mistaken
	if !errors.As(err, &mistaken) {
		return nil
	}
	return write(mistaken.Meant, at)
}

// nearestOf is the name nearest to what was written, with its capitals; empty where none is near.
func nearestOf(written string, names []string) string {
	small := make([]string, len(names))
	for i, name := range names {
		small[i] = strings.ToLower(name)
	}
	if at := slices.Index(small, model.Nearest(written, small)); at >= 0 {
		return names[at]
	}
	return ""
}
