package rules

import (
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

var stockRule = add(Rule{
	Rule: finding.Rule{
		ID: "picture/stock", Severity: finding.Error, Title: "Nothing can be printed on a stock",
		Why:     "The hole goes through a line, a corner cuts a box, or no line has room at all.",
		Source:  "the stock itself; that 3 mm round a hole stay clear: common practice, no source",
		Setting: version,
		Bad:     "[stock.tag]\ntitle = \"Tag\"\nwidth = \"80 mm\"\nheight = \"150 mm\"\nborder = \"5 mm\"\nhole = [\"40 mm\", \"9 mm\", \"6 mm\"]\n",
		Good:    "[stock.tag]\ntitle = \"Tag\"\nwidth = \"80 mm\"\nheight = \"150 mm\"\nborder = \"5 mm\"\ntop = \"12 mm\"\nhole = [\"40 mm\", \"9 mm\", \"6 mm\"]\n",
	},
})

// Stocks tells of the stocks of a file on which nothing can be printed; fault says what
// is wrong with one, or nil.
func Stocks(file *model.File, fault func(*model.Stock) error) []finding.Finding {
	var out []finding.Finding
	pass := &Pass{File: file, rule: stockRule, out: &out}
	for _, stock := range file.Stocks() {
		if err := fault(stock); err != nil {
			summary, help, _ := strings.Cut(err.Error(), "; ")
			if help == "" {
				help = "write other measures"
			}
			place := stock.At
			if strings.Contains(summary, " hole") {
				place = stock.Key("hole")
			}
			pass.Found(finding.Finding{Place: place, Summary: summary, Help: strings.ToUpper(help[:1]) + help[1:] + "."})
		}
	}
	return out
}
