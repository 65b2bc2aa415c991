package desk

import (
	"strings"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
)

// completions are the ways to go on at a place of a text, with the cursor as the page has it.
func completions(result *compiler.Result, path string, offset int) []compiler.Completion {
	out := result.Complete(path, offset)
	for i := range out {
		out[i].Doc = plain(out[i].Doc)
		if before, after, cursor := strings.Cut(out[i].Insert, "$0"); cursor {
			out[i].Insert = before + "${}" + after
		}
	}
	return out
}

// hovered is what is known of a place of a text.
func hovered(result *compiler.Result, path string, offset int) (place source.Place, text string, ok bool) {
	known, ok := result.Hover(path, offset)
	return known.Place, plain(known.Text), ok
}

// plain is CommonMark without its marks, for a page that shows it as it is.
func plain(text string) string {
	return strings.NewReplacer("```toml\n", "", "**", "", "`", "").Replace(text)
}
