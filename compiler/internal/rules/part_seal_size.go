package rules

import (
	"fmt"
	"strconv"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/pattern"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "part/seal-size", Severity: finding.Warning, Title: "A sealing ring does not go with the thread it lies on",
		Why:     "A ring too small does not go over the thread, one too large slips aside and leaks.",
		Source:  "common practice, no source (rings are named by the thread they go over and the outer diameter)",
		Setting: setting + "no-isolation = \"On the bench\"\ntools = []\nspares = [\"ring\"]\nwear = []\nsupplies = []\n",
		Bad:     "[spare.ring]\ntitle = \"sealing ring 22 × 27 mm\"\n[part.plug]\nthread = \"M24x1.5\"\nhead = \"wing\"\nseals = [\"ring\"]\n[[step]]\nremove = \"plug\"\n[[step]]\nrefit = \"plug\"\n",
		Good:    "[spare.ring]\ntitle = \"sealing ring 22 × 27 mm\"\n[part.plug]\nthread = \"M22x1.5\"\nhead = \"wing\"\nseals = [\"ring\"]\n[[step]]\nremove = \"plug\"\n[[step]]\nrefit = \"plug\"\n",
	},
	Job: func(p *Pass) {
		for _, part := range p.Job.Worked() {
			if part.Cover || !says(part.Words()+" "+part.Name, plugged...) { // the ring of a cover or a bowl lies under its rim
				continue
			}
			thread, err := p.threadOf(part)
			if err != nil || !thread.Metric() {
				continue
			}
			for _, seal := range part.Seals.Items {
				spare := p.Job.Spare(seal.Name())
				if spare == nil {
					continue
				}
				size := ring.FindStringSubmatch(strings.ToLower(spare.Words()))
				if size == nil {
					continue
				}
				inner, _ := strconv.ParseFloat(size[1], 64)
				if inner < thread.DiameterMM-0.5 || inner > thread.DiameterMM+1.5 {
					p.Found(finding.Finding{Place: part.Thread.At, Summary: fmt.Sprintf("the %s of the %s does not go with its thread %s", spare.Words(), part.Words(), part.Thread.Text),
						Help: "Correct the thread, or name the ring that goes over it.", Related: []finding.Related{{Place: seal.At, Text: "the ring"}}})
				}
			}
		}
	},
})

// ring is a sealing ring or washer with its inner and outer diameter.
var ring = pattern.MustCompile(`(?:ring|washer)\D*(\d+(?:\.\d+)?)\s*[×x]\s*\d`)

// plugged are words of what screws into its seal by its own thread; common practice, no source.
var plugged = []string{"plug", "screw", "bolt", "union", "banjo", "nipple", "sender", "sensor", "switch", "cock", "valve", "breather", "adapter", "elbow", "fitting"}
