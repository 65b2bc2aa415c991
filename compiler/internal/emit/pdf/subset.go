package pdf

import (
	"encoding/binary"
	"errors"
	"slices"
)

// trueType is a font file taken apart into its tables (OpenType 1.9, "The OpenType font file").
type trueType struct {
	tables map[string][]byte
	long   bool // the places of the glyphs take four bytes each
	glyphs int
	em     int
}

// kept are the tables that a font in a PDF needs when its glyphs are chosen by their numbers
// (ISO 32000-1, 9.9), in the order of their names.
var kept = []string{"cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "prep"}

var errFont = errors.New("the font file is cut short or has no outlines in the way of TrueType")

// errComposed is a glyph that is put together out of others: none of the Go faces has one, and
// cutting a face does not look for them.
var errComposed = errors.New("the font file has composed glyphs")

// readTrueType takes a font file apart. The tables share its bytes.
func readTrueType(file []byte) (*trueType, error) {
	t := &trueType{tables: map[string][]byte{}}
	if len(file) < 12 {
		return nil, errFont
	}
	for i := range int(binary.BigEndian.Uint16(file[4:])) {
		entry := 12 + 16*i
		if entry+16 > len(file) {
			return nil, errFont
		}
		start, length := int(binary.BigEndian.Uint32(file[entry+8:])), int(binary.BigEndian.Uint32(file[entry+12:]))
		if start > len(file) || length > len(file)-start {
			return nil, errFont
		}
		t.tables[string(file[entry:entry+4])] = file[start : start+length]
	}
	if len(t.tables["head"]) < 54 || len(t.tables["maxp"]) < 6 || len(t.tables["hhea"]) < 36 || len(t.tables["post"]) < 8 || t.tables["glyf"] == nil {
		return nil, errFont
	}
	t.long = binary.BigEndian.Uint16(t.tables["head"][50:]) == 1
	t.em = int(binary.BigEndian.Uint16(t.tables["head"][18:]))
	t.glyphs = int(binary.BigEndian.Uint16(t.tables["maxp"][4:]))
	if t.metrics() == 0 || t.em == 0 || t.glyphs == 0 || len(t.tables["hmtx"]) < 4*t.metrics() || t.place(t.glyphs) > len(t.tables["glyf"]) || len(t.tables["loca"]) < t.width()*(t.glyphs+1) {
		return nil, errFont
	}
	for glyph := range t.glyphs {
		if outline := t.outline(glyph); len(outline) >= 2 && int16(binary.BigEndian.Uint16(outline)) < 0 {
			return nil, errComposed
		}
	}
	return t, nil
}

// width is how many bytes the place of a glyph takes.
func (t *trueType) width() int {
	if t.long {
		return 4
	}
	return 2
}

// place is where a glyph begins among the outlines.
func (t *trueType) place(glyph int) int {
	at := t.width() * glyph
	switch loca := t.tables["loca"]; {
	case at+t.width() > len(loca):
		return len(t.tables["glyf"]) + 1
	case t.long:
		return int(binary.BigEndian.Uint32(loca[at:]))
	default:
		return 2 * int(binary.BigEndian.Uint16(loca[at:]))
	}
}

// outline is what is written of a glyph; empty for a space.
func (t *trueType) outline(glyph int) []byte {
	from, to := t.place(glyph), t.place(glyph+1)
	if glyph >= t.glyphs || from >= to || to > len(t.tables["glyf"]) {
		return nil
	}
	return t.tables["glyf"][from:to]
}

// metrics is how many glyphs have a width of their own; those behind have that of the last.
func (t *trueType) metrics() int { return int(binary.BigEndian.Uint16(t.tables["hhea"][34:])) }

// advance is how wide a glyph is, in thousandths of an em.
func (t *trueType) advance(glyph int) int {
	return t.thousandths(int(binary.BigEndian.Uint16(t.tables["hmtx"][4*min(glyph, t.metrics()-1):])))
}

// thousandths turns font units into thousandths of an em, rounded.
func (t *trueType) thousandths(units int) int {
	if units < 0 {
		return -t.thousandths(-units)
	}
	return (units*1000 + t.em/2) / t.em
}

// signed is a number of two bytes in a table.
func (t *trueType) signed(table string, at int) int {
	return int(int16(binary.BigEndian.Uint16(t.tables[table][at:])))
}

// subset is a font file with the outlines of some glyphs. The glyphs keep their numbers.
func (t *trueType) subset(glyphs []int) []byte {
	with := make([]bool, t.glyphs)
	with[0] = true // for what has none
	for _, glyph := range glyphs {
		if glyph < t.glyphs {
			with[glyph] = true
		}
	}
	var outlines, places []byte
	for glyph := range t.glyphs + 1 {
		if t.long {
			places = binary.BigEndian.AppendUint32(places, uint32(len(outlines)))
		} else {
			places = binary.BigEndian.AppendUint16(places, uint16(len(outlines)/2))
		}
		if glyph < t.glyphs && with[glyph] {
			outlines = padded(append(outlines, t.outline(glyph)...))
		}
	}
	tables := map[string][]byte{"glyf": outlines, "loca": places}
	for _, name := range kept {
		if table := t.tables[name]; table != nil && tables[name] == nil {
			tables[name] = table
		}
	}
	return assemble(tables)
}

// padded fills up to four bytes.
func padded(text []byte) []byte {
	for len(text)%4 != 0 {
		text = append(text, 0)
	}
	return text
}

// assemble writes a font file out of its tables, with their sums.
func assemble(tables map[string][]byte) []byte {
	var names []string
	for _, name := range kept {
		if tables[name] != nil {
			names = append(names, name)
		}
	}
	power := 0 // the largest power of two that is no more than the tables
	for 2<<power <= len(names) {
		power++
	}
	out := binary.BigEndian.AppendUint32(nil, 0x00010000)
	for _, number := range []int{len(names), 16 << power, power, 16*len(names) - 16<<power} {
		out = binary.BigEndian.AppendUint16(out, uint16(number))
	}
	at := len(out) + 16*len(names)
	head := 0
	var body []byte
	for _, name := range names {
		table := slices.Clone(tables[name])
		if name == "head" {
			head = at + len(body)
			clear(table[8:12]) // the sum of all, below
		}
		out = append(out, name...)
		for _, number := range []uint32{sum(table), uint32(at + len(body)), uint32(len(table))} {
			out = binary.BigEndian.AppendUint32(out, number)
		}
		body = append(body, padded(table)...)
	}
	out = append(out, body...)
	binary.BigEndian.PutUint32(out[head+8:], 0xB1B0AFBA-sum(out))
	return out
}

// sum adds up a table by words of four bytes.
func sum(table []byte) (out uint32) {
	for len(table) >= 4 {
		out += binary.BigEndian.Uint32(table)
		table = table[4:]
	}
	if len(table) > 0 {
		out += binary.BigEndian.Uint32(padded(slices.Clone(table)))
	}
	return out
}
