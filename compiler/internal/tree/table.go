package tree

import (
	"fmt"

	"benchleaf/compiler/source"
)

// These are the rules of TOML v1.0.0 on who may add to a table: "Table", "Array
// of Tables", "Keys" (dotted) and "Inline Table".

// dottedTable walks down the parts of a dotted key, and makes what is not there.
func (p *parser) dottedTable(table *Table, parts []keyPart) *Table {
	for _, part := range parts {
		entry := table.Get(part.text)
		if entry == nil {
			made := &Table{Header: part.span, made: dotted}
			table.add(p.entry(part, p.kept(Value{Kind: TableKind, Span: part.span, Table: made})))
			table = made
			continue
		}
		if entry.Value.Kind != TableKind || entry.Value.Table.made != dotted {
			p.twice(keyTwice, part.span, entry.KeySpan, fmt.Sprintf("%q is already written, and a dotted key cannot add to it", part.text), "Put the key under the table's own header.")
		}
		entry.Again = append(entry.Again, part.span)
		table = entry.Value.Table
	}
	return table
}

// path walks down all but the last part of a header.
func (p *parser) path(parts []keyPart) *Table {
	table := p.doc.Root
	for _, part := range parts {
		entry := table.Get(part.text)
		if entry == nil {
			made := &Table{Header: part.span, made: implied}
			table.add(p.entry(part, p.kept(Value{Kind: TableKind, Span: part.span, Table: made})))
			table = made
			continue
		}
		entry.Again = append(entry.Again, part.span)
		switch value := entry.Value; {
		case value.Kind == TableKind && value.Table.made != closed:
			table = value.Table
		case value.Kind == TablesKind:
			table = value.Items[len(value.Items)-1].Table
		default:
			p.twice(keyTwice, part.span, entry.KeySpan, fmt.Sprintf("%q already has a value, and no table can stand in it", part.text), "Give one of the two another name.")
		}
	}
	return table
}

// headTable is the table a [header] begins.
func (p *parser) headTable(keys []keyPart, span source.Span) *Table {
	last := keys[len(keys)-1]
	parent := p.path(keys[:len(keys)-1])
	entry := parent.Get(last.text)
	if entry == nil {
		made := &Table{Header: span, made: headed}
		parent.add(p.entry(last, p.kept(Value{Kind: TableKind, Span: span, Table: made})))
		return made
	}
	if entry.Value.Kind == TableKind && entry.Value.Table.made == implied {
		table := entry.Value.Table
		table.made, table.Header = headed, span
		entry.Again = append(entry.Again, entry.KeySpan)
		entry.KeySpan, entry.Value.Span = last.span, span
		return table
	}
	p.twice(tableTwice, span, entry.KeySpan, fmt.Sprintf("%s is written twice", p.at(span)), p.ofTwo(keys, span))
	return nil
}

// listTable is the table a [[header]] begins, the last of its list.
func (p *parser) listTable(keys []keyPart, span source.Span) *Table {
	last := keys[len(keys)-1]
	parent := p.path(keys[:len(keys)-1])
	made := &Table{Header: span, made: headed}
	item := p.kept(Value{Kind: TableKind, Span: span, Table: made})
	entry := parent.Get(last.text)
	switch {
	case entry == nil:
		parent.add(p.entry(last, p.kept(Value{Kind: TablesKind, Span: span, Items: []*Value{item}})))
	case entry.Value.Kind == TablesKind:
		entry.Again = append(entry.Again, last.span)
		entry.Value.Items = append(entry.Value.Items, item)
	default:
		p.twice(tableTwice, span, entry.KeySpan, fmt.Sprintf("%q is already written, and not as a list of tables", last.text), "Write it with the same brackets each time, or give one another name.")
	}
	return made
}

// ofTwo says what to do with the second of two tables.
func (p *parser) ofTwo(keys []keyPart, span source.Span) string {
	if len(keys) > 1 {
		return "Put all its keys under the first, or give this one another name."
	}
	return fmt.Sprintf("Put all its keys under the first; where there are several, as of steps, write [%s] each time.", p.at(span))
}
