// Package templates carries the files that shape what people hold: stocks to
// print on and the fixed words of each language. It must not know what they mean.
package templates

import "embed"

// Files holds stocks.toml and words/<language>.toml.
//
//go:embed stocks.toml words/*.toml
var Files embed.FS
