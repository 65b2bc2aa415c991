package entry

import (
	"bytes"

	"benchleaf/compiler/internal/pattern"
)

// version is a line that says the version of the language, as every procedure file has one:
// it stands above the entries of some forms.
var version = pattern.MustCompile(`^[ \t]*benchleaf[ \t]*=[ \t]*1[ \t]*(#.*)?$`)

// ownTable is the header of an entry or of a table of one, also with the brackets that are
// taken for it by mistake.
var ownTable = pattern.MustCompile(`^\[\[?[ \t]*entry[ \t]*(\.[ \t]*[a-z-]+[ \t]*)?\]`)

// Alone reports whether a text holds entries and nothing else, as a form does or what a phone
// gave. It need not be one that can be read.
func Alone(text []byte) bool {
	some := false
	for at := mark(text); at < len(text); {
		line := text[at:lineEnd(text, at)]
		switch begin(line) {
		case isTable:
			if !ownTable.Match(bytes.TrimLeft(line, " \t")) {
				return false
			}
			some = true
			fallthrough
		case isPair:
			if !some && !version.Match(bytes.TrimRight(line, "\r")) {
				return false
			}
			end, _ := statementEnd(text, at)
			at = max(end, at+1)
		default:
			at += len(line) + 1
		}
	}
	return some
}

// Unversioned is a text of entries without the version of the language, should that stand
// above them. Every line keeps its number.
func Unversioned(text []byte) []byte {
	for at := mark(text); at < len(text); {
		end := lineEnd(text, at)
		switch line := bytes.TrimRight(text[at:end], "\r"); {
		case begin(line) == saysNothing:
		case version.Match(line):
			return append(bytes.Clone(text[:at]), text[end:]...)
		default:
			return text
		}
		at = end + 1
	}
	return text
}
