package sarif

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"benchleaf/compiler/finding"
)

// words are what a finding says: what is the case, and what to write.
func words(one finding.Finding) message {
	text := sentence(one.Summary)
	marked := escape(text)
	if one.Why != "" {
		marked += "\n\n**Why:** " + escape(one.Why)
	}
	if one.Help != "" {
		text += " " + one.Help
		marked += "\n\n**Write:** " + escape(one.Help)
	}
	return message{Text: plain(text), Markdown: braces(marked)}
}

// describe is a rule with its reason, its source and its examples.
func describe(one finding.Rule) rule {
	family, _, _ := strings.Cut(one.ID, "/")
	out := rule{ID: one.ID, Short: message{Text: plain(sentence(one.Title))}, Full: message{Text: plain(sentence(one.Why))}, Default: configuration{one.Severity.String()}, Tags: tags{[]string{family}}}
	text := []string{sentence(one.Why), "Source: " + sentence(one.Source)}
	marked := []string{escape(sentence(one.Why)), "**Source:** " + escape(sentence(one.Source))}
	for _, example := range []struct{ title, text string }{{"Found in:", one.Bad}, {"Clean:", one.Good}} {
		if body := finding.Short(strings.Trim(example.text, "\n")); strings.TrimSpace(body) != "" {
			text = append(text, example.title+"\n"+body)
			marked = append(marked, example.title+"\n\n"+fenced(body))
		}
	}
	out.Help = message{Text: plain(strings.Join(text, "\n\n")), Markdown: braces(strings.Join(marked, "\n\n"))}
	return out
}

// fenced is a block of code whose fence is longer than any in it.
func fenced(code string) string {
	fence := "```"
	for strings.Contains(code, fence) {
		fence += "`"
	}
	return fence + "toml\n" + code + "\n" + fence
}

func sentence(text string) string {
	text = strings.TrimSpace(text)
	first, n := utf8.DecodeRuneInString(text)
	if n == 0 {
		return text
	}
	text = string(unicode.ToUpper(first)) + text[n:]
	if last := text[len(text)-1]; last != '.' && last != '!' && last != '?' {
		text += "."
	}
	return text
}

// plain writes words for a message that is not formatted: what is in square brackets and goes
// before a parenthesis would be read as a link, and a figure in braces as a place for another text
// (SARIF 2.1.0, 3.11.5 and 3.11.6).
func plain(text string) string { return braces(strings.ReplaceAll(text, "](", `\](`)) }

func braces(text string) string { return strings.NewReplacer("{", "{{", "}", "}}").Replace(text) }

// escape writes words for GitHub-Flavored Markdown as they are.
func escape(text string) string {
	var out strings.Builder
	for _, r := range text {
		if strings.ContainsRune("\\`*_[]<>#|~&", r) {
			out.WriteByte('\\')
		}
		out.WriteRune(r)
	}
	return out.String()
}
