package trade

import (
	"slices"
	"strings"
)

// Lists of words that tell the nut on a hose or pipe; common practice, no source.
var (
	lines     = strings.Fields("hose hoses pipe pipes line lines union unions")
	linesInto = append(strings.Fields("tube tubes tubing flare flared compression"), lines...)
	lineNuts  = strings.Fields("nut nuts fitting fittings end ends connection connections connector connectors coupling couplings")
	noLine    = strings.Fields("exhaust flange flanged manifold clamp clip bracket support guard stud studs reel banjo drive inner chain cover plug cap welded bolt bolts screw screws")
	lineLinks = strings.Fields("of at on to for from with in into behind between")
)

// NutOnLine tells of a part by what it is called whether a hose or pipe goes through its
// nut, so that no socket goes over it: "fuel pipe union", "flare nut", "nut of the brake
// pipe". Sure is whether the nut itself is named; a "press hose" may also be held by bolts.
func NutOnLine(called string) (line, sure bool) {
	head := strings.Fields(strings.ToLower(strings.ReplaceAll(called, "-", " ")))
	var tail []string
	if at := slices.IndexFunc(head, func(word string) bool { return slices.Contains(lineLinks, word) }); at > 0 {
		head, tail = head[:at], head[at+1:]
	}
	if len(head) == 0 || share(head, noLine) || share(tail, noLine) {
		return false, false
	}
	last := head[len(head)-1]
	nut := slices.Contains(lineNuts, last) && (share(head, linesInto) || share(tail, linesInto)) || last == "union" || last == "unions"
	return nut || slices.Contains(lines, last), nut
}

// share reports whether two lists have a word in common.
func share(some, list []string) bool {
	return slices.ContainsFunc(some, func(word string) bool { return slices.Contains(list, word) })
}
