package tree

import (
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// rule is one kind of fault.
type rule = finding.Rule

// note keeps a finding and goes on.
func (p *parser) note(kind *rule, span source.Span, summary, help string) *finding.Finding {
	p.findings = append(p.findings, finding.Finding{Rule: kind.ID, Severity: kind.Severity, Summary: summary, Why: kind.Why, Help: help, Place: p.place(span)})
	return &p.findings[len(p.findings)-1]
}

func (p *parser) place(span source.Span) source.Place {
	return source.Place{File: p.file, Span: span}
}

// fail keeps a finding and gives the statement up.
func (p *parser) fail(kind *rule, span source.Span, summary, help string) {
	p.note(kind, span, summary, help)
	panic(fault{})
}

// mend is fail with a fix that replaces the span.
func (p *parser) mend(kind *rule, span source.Span, summary, help, title, text string, certain bool) {
	found := p.note(kind, span, summary, help)
	found.Fixes = []finding.Fix{{Title: title, Certain: certain, Edits: []finding.Edit{{Place: p.place(span), Text: text}}}}
	panic(fault{})
}

// mendAt is fail with a fix that inserts at an offset.
func (p *parser) mendAt(kind *rule, span source.Span, summary, help, title string, at int, text string, certain bool) {
	found := p.note(kind, span, summary, help)
	found.Fixes = []finding.Fix{{Title: title, Certain: certain, Edits: []finding.Edit{{Place: p.place(source.Span{Start: at, End: at}), Text: text}}}}
	panic(fault{})
}

// twice is fail with the place where it is written first.
func (p *parser) twice(kind *rule, span, first source.Span, summary, help string) {
	found := p.note(kind, span, summary, help)
	found.Related = []finding.Related{{Place: p.place(first), Text: "first written here"}}
	panic(fault{})
}

// Rules lists every fault of the syntax, with examples.
func Rules() []finding.Rule {
	out := make([]finding.Rule, len(faults))
	for i, kind := range faults {
		out[i] = *kind
	}
	return out
}

const (
	spec = "TOML v1.0.0, section "
	head = "benchleaf = 1\n"
	lost = "The line cannot be read, so nothing it says would be checked or printed."
)

func newFault(id, title, why, section, bad, good string) *rule {
	kind := &rule{ID: "syntax/" + id, Severity: finding.Error, Title: title, Why: why, Source: spec + section, Bad: bad, Good: good}
	faults = append(faults, kind)
	return kind
}

// faults is filled once, when the program starts.
var faults []*rule

const pan = "[tool.pan]\nkind = \"container\"\n"

var (
	notUTF8          = newFault("not-utf-8", "The file is not in UTF-8", "In another encoding ° and · are other letters, and an amount is read wrong.", "Spec", head+pan+"where = \"6 \xb0\"\n", head+pan+"where = \"6 °\"\n")
	notText          = newFault("not-text", "The file is not text", "It is no procedure; perhaps a picture or a save that went wrong.", "Spec", head+"\x00\x01", head)
	unquotedText     = newFault("unquoted-text", "Text has no quotes", lost, "String", head+pan+"where = By the door\n", head+pan+"where = \"By the door\"\n")
	curlyQuotes      = newFault("curly-quotes", "Text is in curly quotes", lost, "String", head+pan+"where = “By the door”\n", head+pan+"where = \"By the door\"\n")
	unclosedText     = newFault("unclosed-text", "Text is not closed", "What follows would be read as part of the text.", "String", head+pan+"where = \"By the door\n", head+pan+"where = \"By the door\"\n")
	unclosedList     = newFault("unclosed-list", "A list is not closed", "What follows would be read as part of the list.", "Array", head+"[tool.pan]\nsizes = [\"10 mm\", \"13 mm\"\nkind = \"wrench\"\n", head+"[tool.pan]\nsizes = [\"10 mm\", \"13 mm\"]\nkind = \"wrench\"\n")
	unclosedTable    = newFault("unclosed-table", "A table in braces is not closed on its line", "What follows would be read as part of the table.", "Inline Table", head+"[tool]\npan = { kind = \"container\"\n", head+"[tool]\npan = { kind = \"container\" }\n")
	badEscape        = newFault("bad-escape", "A backslash stands before a letter that means nothing", lost, "String", head+pan+"where = \"row 2\\door\"\n", head+pan+"where = \"row 2, door\"\n")
	badNumber        = newFault("bad-number", "A number or a yes or no is misspelt", lost, "Integer, Float, Boolean", head+pan+"count = 02\n", head+pan+"count = 2\n")
	badDate          = newFault("bad-date", "A day or a time cannot be", "A revision with a day that never was cannot be told from another.", "Local Date", head+"[machine]\ntitle = \"Log deck\"\nmanual = \"Manual\"\nin-service = 2026-02-30\n", head+"[machine]\ntitle = \"Log deck\"\nmanual = \"Manual\"\nin-service = 2026-02-20\n")
	controlCharacter = newFault("control-character", "A character that does not show stands in the text", "It prints as a gap or not at all.", "Spec, String", head+pan+"where = \"By\x01the door\"\n", head+pan+"where = \"By the door\"\n")
	noValue          = newFault("no-value", "A key has no value", lost, "Key/Value Pair", head+pan+"where =\n", head+pan+"where = \"By the door\"\n")
	noEquals         = newFault("no-equals", "A key has no =", lost, "Key/Value Pair", head+pan+"where \"By the door\"\n", head+pan+"where = \"By the door\"\n")
	badKey           = newFault("bad-key", "What stands before the = is no key", lost, "Keys", head+pan+"(where) = \"By the door\"\n", head+pan+"where = \"By the door\"\n")
	badHeader        = newFault("bad-header", "A header is not closed or has no name", "What stands under it would go into the table above.", "Table", head+"[tool.pan\nkind = \"container\"\n", head+pan)
	keyTwice         = newFault("key-twice", "A key is written twice", "Nobody can tell which of the two is meant.", "Key/Value Pair", head+pan+"where = \"Wall B\"\nwhere = \"By the door\"\n", head+pan+"where = \"By the door\"\n")
	tableTwice       = newFault("table-twice", "A table is written twice", "Nobody can tell which of the two is meant.", "Table", head+pan+pan, head+pan)
	extraText        = newFault("extra-text", "Something stands after the value", lost, "Key/Value Pair", head+pan+"where = \"Wall B\" row 2\n", head+pan+"where = \"Wall B\" # row 2\n")
	missingComma     = newFault("missing-comma", "No comma stands between two values", "Two values without a comma are read as one, or not at all.", "Array", head+"[tool.pan]\nkind = \"wrench\"\nsizes = [\"10 mm\" \"13 mm\"]\n", head+"[tool.pan]\nkind = \"wrench\"\nsizes = [\"10 mm\", \"13 mm\"]\n")
	missingItem      = newFault("extra-comma", "A comma stands where a value is wanted", "A value may have been lost.", "Array, Inline Table", head+"[tool.pan]\nkind = \"wrench\"\nsizes = [\"10 mm\", , \"13 mm\"]\n", head+"[tool.pan]\nkind = \"wrench\"\nsizes = [\"10 mm\", \"13 mm\"]\n")
	tooDeep          = newFault("nested-too-deep", "Lists and tables stand too deep inside each other", "No procedure is written so; the file is damaged.", "Array (limit of this compiler)", head+"use = "+nest("[", "]")+"\n", head)
	tooLong          = newFault("too-long", "A text or a file is longer than is read", "Nobody reads so much beside a machine; the file is damaged, or something else was copied into it.", "String (limit of this compiler)", head+pan+"where = \""+strings.Repeat("By the door. ", longest/13+1)+"\"\n", head+pan+"where = \"By the door\"\n")
	tooMany          = newFault("too-many", "A file has more faults than are shown", "The first ones often bring the others.", "(limit of this compiler)", head+strings.Repeat("where\n", 22), head)
)

func nest(opening, closing string) string {
	out := ""
	for range deepest + 1 {
		out = opening + out + closing
	}
	return out
}
