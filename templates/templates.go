// Package templates carries the files that shape what people hold: stocks to
// print on and the fixed words of each language. It must not know what they mean.
package templates

import "embed"

// Files holds stocks.toml, signs.toml, words/<language>.toml, scaffold/, the files that
// benchleaf new writes, phone/, the page of a card for a phone, and desk/, the page of the
// writing desk with its editor.
//
//go:embed stocks.toml signs.toml words/*.toml scaffold phone desk/*.html desk/*.css desk/*.js desk/*.txt
var Files embed.FS
