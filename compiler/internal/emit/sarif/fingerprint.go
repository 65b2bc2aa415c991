package sarif

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// fingerprintName names what a fingerprint is made of; a change of it takes the next version.
const fingerprintName = "ruleAndLine/v1"

// fingerprint tells a finding from others of its rule in its file, wherever it stands: by the
// text of its line, the header of its table and the first line of the table. Lines that are added
// or taken out elsewhere do not change it. Of several that are alike, their order counts.
func (w *writer) fingerprint(one finding.Finding) map[string]string {
	parts := []string{one.Rule, one.Variant, one.Place.Text()}
	name := ""
	if file := one.Place.File; file != nil {
		name = file.Path
	}
	if file := one.Place.File; file != nil && one.Place.Span != (source.Span{}) { // or it is of the file as a whole
		line := one.Place.Start().Line
		header, first := tableAt(file, line)
		parts = append(parts, squeezed(file.Line(line)), header, first)
	}
	key := strings.Join(parts, "\x00")
	n := w.seen[name+"\x00"+key]
	w.seen[name+"\x00"+key]++
	sum := sha256.Sum256(fmt.Appendf(nil, "%s\x00%d", key, n))
	return map[string]string{fingerprintName: hex.EncodeToString(sum[:16])}
}

// tableAt is the header of the table a line is in, and the first line that says something in it.
func tableAt(file *source.File, line int) (header, first string) {
	at := line
	for at > 0 && !strings.HasPrefix(squeezed(file.Line(at)), "[") {
		at--
	}
	for next := at + 1; next <= file.Lines(); next++ {
		if text := squeezed(file.Line(next)); text != "" && text[0] != '#' {
			if text[0] != '[' {
				first = text
			}
			break
		}
	}
	return squeezed(file.Line(at)), first
}

func squeezed(line string) string { return strings.Join(strings.Fields(line), " ") }
