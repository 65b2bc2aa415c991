package compiler

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// Whatever is typed where in the files of the shop, and however often, a session finds what a
// compile of the files as they then are finds.
func TestASessionFindsWhatACompileFinds(t *testing.T) {
	dice := rand.New(rand.NewPCG(7, 1))
	texts := shopTexts(t)
	paths := make([]string, 0, len(texts))
	for path := range texts {
		paths = append(paths, path)
	}
	slices.Sort(paths)
	edits := []string{"\"", "x", "\n", "7", "# ", "[part.new]\n", "[", "[[step]]\n", "N·m", " = ", "]", "renamed-",
		"\n[[step]]\nsay = \"Wipe the rim of the left wheel at 20 N.\"\n\n", "\n[[close]]\n", "chock the wheel, then "}
	var session Session
	rounds := 200
	if testing.Short() {
		rounds = 40
	}
	for round := range rounds {
		if dice.IntN(4) > 0 || round == 0 {
			path := paths[dice.IntN(len(paths))]
			text := texts[path]
			at := dice.IntN(len(text) + 1)
			switch dice.IntN(4) {
			case 0: // as it was
				texts[path] = shopTexts(t)[path]
			case 1:
				end := min(len(text), at+dice.IntN(12))
				texts[path] = slices.Concat(text[:at], text[end:])
			default:
				texts[path] = slices.Concat(text[:at], []byte(edits[dice.IntN(len(edits))]), text[at:])
			}
		}
		if dice.IntN(10) == 0 {
			texts = shopTexts(t)
		}
		if dice.IntN(12) == 0 {
			delete(texts, paths[dice.IntN(len(paths))])
		}
		var targets []string
		for _, path := range paths {
			if texts[path] == nil {
				texts[path] = shopTexts(t)[path]
			}
			if dice.IntN(8) == 0 {
				targets = append(targets, path)
			}
		}
		in := Input{Files: fresh(texts), Targets: targets, Whole: dice.IntN(2) == 0}
		fast := everything(session.Compile(in))
		require.Equal(t, everything(Compile(Input{Files: fresh(texts), Targets: targets, Whole: in.Whole})), fast, "round %d", round)
	}
}

// everything is what a result says.
func everything(result *Result) (out []string) {
	place := func(at source.Place) string {
		return fmt.Sprintf("%s %d-%d", at.File.Path, at.Span.Start, at.Span.End)
	}
	for _, list := range [][]finding.Finding{result.Findings, result.Allowed} {
		for _, one := range list {
			line := fmt.Sprintf("%s %s %s %s %s", place(one.Place), one.Rule, one.Severity, one.Summary, one.Help)
			for _, related := range one.Related {
				line += " | " + place(related.Place) + " " + related.Text
			}
			out = append(out, line)
		}
	}
	for _, job := range result.Jobs {
		out = append(out, fmt.Sprintf("%s %s %v %d", job.Path, job.Variant, job.Blocked, len(job.work.Job.Steps)))
	}
	return append(out, result.Unchecked...)
}
