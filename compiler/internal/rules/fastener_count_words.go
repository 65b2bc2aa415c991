package rules

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

// allOf is how a sentence counts the things of its step: "all four", "each of the 8".
var allOf = pattern.MustCompile(`(?i)\b(?:all|each of(?: the)?|every one of(?: the)?) (two|three|four|five|six|seven|eight|nine|ten|twelve|\d{1,2})\b(?:\s+(\w+))?`)

var numberWords = map[string]int{"two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "twelve": 12}

// notCounted are words behind a number that count something else than the step's things.
var notCounted = []string{"sides", "side", "corners", "faces", "threads", "directions", "times", "edges", "places", "points", "turns", "flats", "ends", "from", "of"}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fastener/count-in-words", Severity: finding.Warning, Title: "A sentence counts other than the part is counted",
		Why:     "One of the two is wrong: the pick list brings too few, or somebody looks for a bolt that is not there.",
		Source:  "common practice, no source",
		Setting: quiet + "[part.clips]\nhead = \"wing\"\ncount = 4\n",
		Bad:     "[[step]]\nremove = \"clips\"\nsay = \"Let all five go before the lid is lifted.\"\n",
		Good:    "[[step]]\nremove = \"clips\"\nsay = \"Let all four go before the lid is lifted.\"\n",
	},
	Job: func(p *Pass) {
		for _, step := range p.Job.Steps {
			m := allOf.FindStringSubmatchIndex(step.Say.Text)
			if m == nil || len(step.Objects) != 1 || step.Objects[0].Part == nil {
				continue
			}
			part := step.Objects[0].Part
			counts := p.counts() // it may speak of another thing of the job
			word := strings.ToLower(step.Say.Text[m[2]:m[3]])
			n, known := numberWords[word]
			if !known {
				n, _ = strconv.Atoi(word)
			}
			if part.Count.N == 0 || slices.Contains(counts, n) || m[4] >= 0 && slices.Contains(notCounted, strings.ToLower(step.Say.Text[m[4]:m[5]])) {
				continue
			}
			p.Found(finding.Finding{Place: step.Say.Inside(m[0], m[3]), Summary: fmt.Sprintf("step %d says %q, and the count of the %s is %d", step.Number, step.Say.Text[m[0]:m[3]], part.Words(), part.Count.N),
				Help: "Correct the one that is wrong.", Related: []finding.Related{{Place: part.Count.At, Text: "the count"}}})
		}
	},
})

// counts are the numbers in which the things of a job's steps are there.
func (p *Pass) counts() []int {
	var out []int
	for _, step := range p.Job.Steps {
		out = append(out, step.Count.N)
		for _, object := range step.Objects {
			switch {
			case object.Point != nil:
				out = append(out, object.Point.Count.N)
			case object.Part != nil:
				out = append(out, object.Part.Count.N, object.Part.OnCircle(model.Whole{}))
				for _, name := range object.Part.HeldBy.Names() {
					if fastener := p.Job.Part(name); fastener != nil {
						out = append(out, fastener.Count.N)
					}
				}
			}
		}
	}
	return out
}
