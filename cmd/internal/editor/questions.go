package editor

import (
	"bytes"
	"fmt"
	"slices"

	"benchleaf/compiler"
	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// question answers a request about an open file.
type question func(s *server, at *shop, name string, doc *document, asked placeParams) (any, error)

var questions = map[string]question{
	"textDocument/diagnostic": func(_ *server, at *shop, name string, _ *document, _ placeParams) (any, error) {
		return report{"full", at.diagnostics(name)}, nil
	},
	"textDocument/codeAction":     (*server).actions,
	"textDocument/completion":     (*server).complete,
	"textDocument/hover":          (*server).hover,
	"textDocument/formatting":     (*server).format,
	"textDocument/inlayHint":      (*server).hints,
	"textDocument/documentSymbol": (*server).symbols,
	"textDocument/definition": func(_ *server, at *shop, name string, doc *document, asked placeParams) (any, error) {
		return at.locations(at.compiled().Definition(name, doc.offset(asked.Position))), nil
	},
	"textDocument/references": func(_ *server, at *shop, name string, doc *document, asked placeParams) (any, error) {
		return at.locations(at.compiled().References(name, doc.offset(asked.Position), asked.Context.IncludeDeclaration)), nil
	},
	"textDocument/prepareRename": func(_ *server, at *shop, name string, doc *document, asked placeParams) (any, error) {
		place, text, err := at.compiled().RenameRange(name, doc.offset(asked.Position))
		if err != nil {
			return nil, err
		}
		return prepared{spanOf(place), text}, nil
	},
	"textDocument/rename": func(_ *server, at *shop, name string, doc *document, asked placeParams) (any, error) {
		if known, ok := at.compiled().BookName(name, doc.offset(asked.Position)); ok && known != asked.NewName && at.Booked != nil {
			switch booked, err := at.Booked(known); {
			case err != nil:
				return nil, fmt.Errorf("whether the service book names %q is not known, and nothing is renamed: %w", known, err)
			case booked:
				return nil, fmt.Errorf("entries of %s name %q, and what is written there stays; keep the short name, and change the title", compiler.Bookfile, known)
			}
		}
		edits, err := at.compiled().Rename(name, doc.offset(asked.Position), asked.NewName)
		if err != nil {
			return nil, err
		}
		return at.edit(edits), nil
	},
}

func (d *document) offset(at position) int { return d.file.Offset(at.Line, at.Character) }

func (s *shop) locations(places []source.Place) []location {
	out := []location{}
	for _, place := range places {
		out = append(out, s.location(place))
	}
	return out
}

// edit is a change of several files.
func (s *shop) edit(edits []finding.Edit) workspaceEdit {
	out := workspaceEdit{Changes: map[string][]textEdit{}}
	for _, one := range edits {
		address := s.address(one.Place.File.Path)
		out.Changes[address] = append(out.Changes[address], textEdit{spanOf(one.Place), one.Text})
	}
	return out
}

// actions are the fixes of the findings that a span touches, and behind them those of the others on
// its lines: many an editor asks at the cursor, wherever in the line it stands.
func (s *server) actions(at *shop, name string, doc *document, asked placeParams) (any, error) {
	out := []codeAction{}
	if only := asked.Context.Only; len(only) > 0 && !slices.Contains(only, "quickfix") {
		return out, nil
	}
	start, end := doc.offset(asked.Range.Start), doc.offset(asked.Range.End)
	var beside []codeAction
	for _, found := range at.compiled().Findings {
		place := spanOf(found.Place)
		if found.Place.File.Path != name || place.End.Line < asked.Range.Start.Line || place.Start.Line > asked.Range.End.Line {
			continue
		}
		for _, fix := range found.Fixes {
			action := codeAction{Title: fix.Title, Kind: "quickfix", Diagnostics: []diagnostic{at.diagnostic(found)}, Preferred: fix.Certain, Edit: at.edit(fix.Edits)}
			if found.Place.Span.End < start || found.Place.Span.Start > end {
				beside = append(beside, action)
			} else {
				out = append(out, action)
			}
		}
	}
	return append(out, beside...), nil
}

func (s *server) complete(at *shop, name string, doc *document, asked placeParams) (any, error) {
	out := completionList{Items: []completionItem{}}
	for i, one := range at.compiled().Complete(name, doc.offset(asked.Position)) {
		item := completionItem{Label: one.Label, Kind: itemKinds[one.Kind], Detail: one.Detail, SortText: fmt.Sprintf("%05d", i)}
		if one.Doc != "" {
			item.Documentation = &markup{"markdown", one.Doc}
		}
		item.TextEdit, item.Format = &textEdit{spanOf(one.Replace), one.Insert}, 1
		if before, after, cursor := bytes.Cut([]byte(one.Insert), []byte("$0")); cursor {
			item.TextEdit.NewText = string(before) + string(after)
			if s.snips {
				item.TextEdit.NewText, item.Format = snippet(string(before))+"$0"+snippet(string(after)), 2
			}
		}
		item.FilterText = string(one.Replace.File.Text[one.Replace.Span.Start:one.Replace.Span.End])
		if quoted := bytes.TrimLeft([]byte(item.TextEdit.NewText), "\"["); item.FilterText == "" || !bytes.HasPrefix(quoted, bytes.TrimLeft([]byte(item.FilterText), "\"[")) {
			item.FilterText = ""
		} else {
			item.FilterText = item.TextEdit.NewText
		}
		out.Items = append(out.Items, item)
	}
	return out, nil
}

// snippet marks what an editor would read as a place of the cursor.
func snippet(text string) string {
	var out []byte
	for i := range len(text) {
		if slices.Contains([]byte(`\$}`), text[i]) {
			out = append(out, '\\')
		}
		out = append(out, text[i])
	}
	return string(out)
}

func (s *server) hover(at *shop, name string, doc *document, asked placeParams) (any, error) {
	known, there := at.compiled().Hover(name, doc.offset(asked.Position))
	if !there {
		return nil, nil
	}
	return hover{markup{"markdown", known.Text}, spanOf(known.Place)}, nil
}

// format lays the file out; only the lines that change are sent.
func (s *server) format(_ *shop, name string, doc *document, _ placeParams) (any, error) {
	laid, faults := compiler.Tidy(doc.file)
	if len(faults) > 0 {
		return nil, fmt.Errorf("%s: line %d: %s", name, faults[0].Place.Start().Line, faults[0].Summary)
	}
	text := doc.file.Text
	if bytes.Equal(laid, text) {
		return []textEdit{}, nil
	}
	head := 0
	for head < len(text) && head < len(laid) && text[head] == laid[head] {
		head++
	}
	head = bytes.LastIndexByte(text[:head], '\n') + 1
	tail := 0
	for tail < len(text)-head && tail < len(laid)-head && text[len(text)-1-tail] == laid[len(laid)-1-tail] {
		tail++
	}
	if cut := bytes.IndexByte(text[len(text)-tail:], '\n'); cut >= 0 {
		tail -= cut
	} else {
		tail = 0
	}
	return []textEdit{{span{positionOf(doc.file, head), positionOf(doc.file, len(text)-tail)}, string(laid[head : len(laid)-tail])}}, nil
}

func (s *server) hints(at *shop, name string, doc *document, asked placeParams) (any, error) {
	start, end := doc.offset(asked.Range.Start), doc.offset(asked.Range.End)
	out := []inlayHint{}
	for _, one := range at.compiled().Hints(name) {
		if one.At < start || one.At > end {
			continue
		}
		hint := inlayHint{Position: positionOf(doc.file, one.At), Label: one.Text, Left: true}
		if one.Tip != "" {
			hint.Tooltip = &markup{"markdown", one.Tip}
		}
		out = append(out, hint)
	}
	return out, nil
}

func (s *server) symbols(at *shop, name string, _ *document, _ placeParams) (any, error) {
	var draw func([]compiler.Symbol) []documentSymbol
	draw = func(list []compiler.Symbol) []documentSymbol {
		out := []documentSymbol{}
		for _, one := range list {
			kind, known := symbolKinds[one.Kind]
			if !known {
				kind = 8
			}
			out = append(out, documentSymbol{Name: one.Name, Detail: one.Detail, Kind: kind, Range: spanOf(one.Whole), Selection: spanOf(one.Place), Children: draw(one.Children)})
		}
		return out
	}
	return draw(at.compiled().Symbols(name)), nil
}
