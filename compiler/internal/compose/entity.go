package compose

import (
	"html"
	"strings"
)

// unescape takes the backslashes off what CommonMark lets be escaped, and reads entities.
func unescape(words string) string {
	if !strings.ContainsAny(words, `\&`) {
		return words
	}
	var out strings.Builder
	for i := 0; i < len(words); i++ {
		if words[i] == '\\' && i+1 < len(words) && strings.IndexByte("!\"#$%&'()*+,-./:;<=>?@[\\]^_`{|}~", words[i+1]) >= 0 {
			i++
		}
		out.WriteByte(words[i])
	}
	return html.UnescapeString(out.String())
}
