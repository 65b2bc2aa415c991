package compiler

import (
	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/tidy"
	"benchleaf/compiler/source"
)

// Tidy lays a file out as every file is to be, with its order, comments and data as they are.
// One in which faults of the syntax stand comes back unchanged, with the faults.
func Tidy(text *source.File) (out []byte, faults []finding.Finding) { return tidy.File(text) }
