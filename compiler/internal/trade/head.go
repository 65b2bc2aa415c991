package trade

// Head is a kind of head, by what the tool grips.
type Head struct {
	Key      string
	Words    string
	Internal bool   // the tool goes into the fastener
	Hexagon  bool   // it has a width across flats between six flats
	Standard string // where its sizes are published; empty for a kind no tool turns
}

// Heads lists every kind of head, the usual ones first.
func Heads() []Head {
	return []Head{
		{"hex", "hexagon head or nut", false, true, "ISO 4014, ISO 4017, ISO 272; ASME B18.2.1"},
		{"nut", "hexagon nut", false, true, "ISO 4032, ISO 272; ASME B18.2.2"},
		{"castle-nut", "castle or slotted nut", false, true, "ISO 7035; ASME B18.2.2"},
		{"hex-flange", "hexagon with flange, small series", false, true, "ISO 15071, ISO 4162, EN 1662; ASME B18.2.1"},
		{"hex-flange-heavy", "hexagon with flange, heavy series", false, true, "EN 1665"},
		{"socket", "hexagon socket cap", true, true, "ISO 4762; ASME B18.3"},
		{"button", "hexagon socket button", true, true, "ISO 7380; ASME B18.3"},
		{"countersunk", "hexagon socket countersunk", true, true, "ISO 10642; ASME B18.3"},
		{"set-screw", "hexagon socket set screw", true, true, "ISO 4026 to ISO 4029; ASME B18.3"},
		{"socket-plug", "plug with hexagon socket", true, true, "DIN 906, DIN 908"},
		{"square-plug", "plug with square head", false, false, "ASME B16.14"},
		{"square", "square head", false, false, "ASME B18.2.1"},
		{"slotted", "slot", true, false, "ISO 2380-1"},
		{"cross", "cross recess", true, false, "ISO 4757 types H and Z"},
		{"hexalobular", "hexalobular recess", true, false, "ISO 10664"},
		{"wing", "wing, knob or lever, turned by hand", false, false, ""},
		{"none", "nothing a tool turns: clip, latch, push-on", false, false, ""},
	}
}

// FindHead looks a kind of head up by its key.
func FindHead(key string) (Head, bool) {
	for _, head := range Heads() {
		if head.Key == key {
			return head, true
		}
	}
	return Head{}, false
}

// ParseHead is FindHead for what somebody wrote; the error names the nearest kind.
func ParseHead(text string) (Head, error) {
	if head, ok := FindHead(squeeze(text)); ok {
		return head, nil
	}
	return Head{}, unknown("kind of head", text, keysOf(Heads(), func(h Head) string { return h.Key }))
}

// Recesses lists the numbers of a recess, smallest first: PH and PZ for a cross recess
// (ISO 4757 types H and Z), T8 to T55 for a hexalobular one (ISO 10664). Numbers are
// from memory. Other heads have none.
func Recesses(head string) []string {
	switch head {
	case "cross":
		return []string{"PH0", "PH1", "PH2", "PH3", "PH4", "PZ0", "PZ1", "PZ2", "PZ3", "PZ4"}
	case "hexalobular":
		return []string{"T8", "T9", "T10", "T15", "T20", "T25", "T27", "T30", "T40", "T45", "T50", "T55"}
	}
	return nil
}

// Widths lists the widths across flats that may be met on a fastener of that thread and
// head, the standard one first. Widths of other standards and of older or Japanese makes
// follow. It is empty for recesses, for heads no tool turns, and where nothing is published.
func Widths(thread Thread, head string) []Width {
	switch {
	case head == "socket-plug":
		return plugKeys.of(thread)
	case head == "square-plug":
		return squarePlugs.of(thread)
	case thread.Pipe():
		if head == "hex" {
			return hexPlugs.of(thread)
		}
		return nil
	case thread.Metric():
		return distinct(widthsOf(metricWidths[head], thread))
	}
	return distinct(widthsOf(inchWidths[head], thread))
}

// sizes is one column of one standard: nominal thread size to width.
type sizes struct {
	standard   string
	fromMemory bool
	inch       map[string]string  // "3/8" → "9/16"
	mm         map[string]float64 // "M10" → 16
}

func (s sizes) of(thread Thread) []Width {
	if mm, ok := s.mm[thread.Nominal]; ok {
		return []Width{metricWidth(mm).after(s.standard, s.fromMemory)}
	}
	if inch, ok := s.inch[thread.Nominal]; ok {
		return []Width{inchWidth(mustInch(inch)).after(s.standard, s.fromMemory)}
	}
	return nil
}

func widthsOf(columns []sizes, thread Thread) []Width {
	var out []Width
	for _, column := range columns {
		out = append(out, column.of(thread)...)
	}
	return out
}

// distinct keeps the first of equal widths: the standard one stands before the older.
func distinct(widths []Width) []Width {
	var out []Width
	seen := map[string]bool{}
	for _, width := range widths {
		if !seen[width.Label] {
			seen[width.Label] = true
			out = append(out, width)
		}
	}
	return out
}
