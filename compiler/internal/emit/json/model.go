package json

import "benchleaf/compiler/internal/export"

type wholeModel struct {
	export.Model
	Findings []found `json:"findings"`
	Allowed  []found `json:"allowed"`
}

// Model writes the whole model of a shop, with the findings of a report.
func Model(in export.Model, report Report) []byte {
	return indented(wholeModel{in, list(report.Findings), list(report.Allowed)})
}
