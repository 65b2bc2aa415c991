package compiler

import "benchleaf/compiler/internal/compose"

// Actions lists the sentences of a job's steps as they print, in order; step 1 first.
func Actions(job Job) []string { return compose.Actions(job.work) }
