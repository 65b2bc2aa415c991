package rules

import (
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/internal/trade"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fastener/class-of-another-system", Severity: finding.Warning, Title: "A strength class does not go with the thread",
		Why:     "Grade 8 on an inch bolt is a hard one, class 8.8 on a metric one is softer: with the wrong system the next bolt bought is too weak, and the torque too high for it.",
		Source:  "ISO 898-1 for metric screws, with 9.8 up to 16 mm; SAE J429 for inch ones",
		Setting: quiet,
		Bad:     "[part.hook-bolt]\nthread = \"M10\"\nclass = \"grade 8\"\n[[step]]\ninspect = \"hook-bolt\"\n",
		Good:    "[part.hook-bolt]\nthread = \"M10\"\nclass = \"8.8\"\n[[step]]\ninspect = \"hook-bolt\"\n",
	},
	Job: func(p *Pass) {
		for _, part := range p.parts() {
			thread, err := p.threadOf(part)
			if !part.Class.Set() || err != nil || thread.Pipe() {
				continue
			}
			class, err := trade.ParseClass(part.Class.Text)
			if err != nil || class.Inch != thread.Metric() && class.Name != "9.8" {
				continue // of the right system; larger and smaller sizes than the standard's are made
			}
			if class.Name == "9.8" && thread.Metric() && thread.DiameterMM <= 16 {
				continue
			}
			if _, err := class.Strength(thread); err != nil {
				p.Found(finding.Finding{Place: part.Class.At, Summary: err.Error(), Help: "Read the marks on the head: a metric screw has two numbers with a point, an inch one has lines, none for grade 2, three for grade 5, six for grade 8."})
			}
		}
	},
})

// parts are the parts the steps of the job act on, and what holds them, each once.
func (p *Pass) parts() []*model.Part {
	var out []*model.Part
	keep := func(part *model.Part) {
		if part != nil && !slices.Contains(out, part) {
			out = append(out, part)
		}
	}
	for _, step := range p.Job.Steps {
		for _, object := range step.Objects {
			if object.Part == nil {
				continue
			}
			keep(object.Part)
			for _, name := range object.Part.HeldBy.Names() {
				keep(p.Job.Part(name))
			}
		}
	}
	return out
}

var (
	twoNumbers = pattern.MustCompile(`^(?:class |grade )?\d{1,2}[.,]\d$`)
	oneNumber  = pattern.MustCompile(`^(?:class )?\d{1,2}$`)
	gradeForm  = pattern.MustCompile(`^(?:sae )?(?:grade|gr\.?) ?\d{1,2}$`)
	steelForm  = pattern.MustCompile(`^a[1-5]l?-\d{2}$`)
	// alsoMade are classes and grades of the standards the table of loads has not, from memory:
	// ISO 898-1 and its older editions, J429, and 14.9 of socket screws.
	alsoMade = []string{"3.6", "5.6", "6.6", "6.8", "6.9", "14.9", "5.1", "5.2", "8.1", "8.2", "grade 4", "grade 7", "grade 9"}
	nutClass = []string{"4", "5", "6", "8", "9", "10", "12", "04", "05"} // ISO 898-2, from memory
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "fastener/unknown-class", Severity: finding.Warning, Title: "A strength class is in no standard",
		Why:     "Whoever buys the next bolt by it gets what the counter takes it for.",
		Source:  "ISO 898-1, SAE J429; the classes of nuts and stainless screws are from memory of ISO 898-2 and ISO 3506-1",
		Setting: quiet,
		Bad:     "[part.hook-bolt]\nthread = \"M10\"\nclass = \"8.9\"\n[[step]]\ninspect = \"hook-bolt\"\n",
		Good:    "[part.hook-nut]\nhead = \"nut\"\nthread = \"M10\"\nclass = \"8\"\n[[step]]\ninspect = \"hook-nut\"\n",
	},
	Job: func(p *Pass) {
		for _, part := range p.parts() {
			if !part.Class.Set() || !wrongClass(part) {
				continue
			}
			found := finding.Finding{Place: part.Class.At, Help: "Write the class as it is marked on the head: \"8.8\" on a metric screw, \"grade 5\" for three lines on an inch one."}
			if _, err := trade.ParseClass(part.Class.Text); err != nil {
				found.Summary, found.Fixes = err.Error(), meant(err, part.Class.At)
			}
			p.Found(found)
		}
	},
})

// wrongClass reports whether a class is written the way of a standard that does not
// have it. Other words – B7, 14H, stainless – are of standards that are not known here.
func wrongClass(part *model.Part) bool {
	plain := strings.Join(strings.Fields(strings.ToLower(part.Class.Text)), " ")
	if _, err := trade.ParseClass(plain); err == nil {
		return false
	}
	bare := strings.TrimPrefix(strings.TrimPrefix(plain, "class "), "grade ")
	if slices.Contains(alsoMade, bare) || slices.Contains(alsoMade, "grade "+bare) && bare != plain {
		return false
	}
	switch {
	case oneNumber.MatchString(plain):
		nut := part.Head.Text == "nut" || part.Head.Text == "castle-nut" || says(partTells(part), "nut")
		return !nut || !slices.Contains(nutClass, bare)
	case steelForm.MatchString(plain):
		return !strings.HasSuffix(plain, "-10")
	}
	return twoNumbers.MatchString(plain) || gradeForm.MatchString(plain)
}
