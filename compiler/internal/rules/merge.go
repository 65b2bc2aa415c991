package rules

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
)

// Merge joins the findings on the versions of one machine: what holds for all of
// them is told once, for no version by name.
func Merge(versions [][]finding.Finding) []finding.Finding {
	var out []finding.Finding
	for _, list := range versions {
		for _, found := range list {
			holds := inAll(found, versions)
			if !holds && everywhere(found.Rule) {
				continue
			}
			if holds {
				found.Variant = ""
			}
			out = append(out, found)
		}
	}
	return finding.Sort(out)
}

func inAll(found finding.Finding, versions [][]finding.Finding) bool {
	for _, list := range versions {
		if !slices.ContainsFunc(list, func(other finding.Finding) bool {
			return other.Rule == found.Rule && other.Place == found.Place && other.Summary == found.Summary
		}) {
			return false
		}
	}
	return true
}

func everywhere(id string) bool {
	return slices.ContainsFunc(all, func(rule *Rule) bool { return rule.ID == id && rule.Everywhere })
}

// known reports whether a rule of that name is in the catalogue.
func known(id string) bool {
	return slices.ContainsFunc(Catalogue(), func(rule finding.Rule) bool { return rule.ID == id })
}

var unknownRule = add(Rule{Rule: finding.Rule{
	ID: "reference/unknown-rule", Severity: finding.Error, Title: "An allowance names a rule that is not there",
	Why:    "The finding it is meant for stays, or stayed once under another name.",
	Source: "the language itself", Setting: quiet,
	Bad:  "allow = [{ rule = \"tool/nevr-used\", reason = \"kept at hand\" }]\n[[step]]\nsay = \"Look at the plug.\"\n",
	Good: "[[step]]\nsay = \"Look at the plug.\"\n",
}})

var unusedAllow = add(Rule{Rule: finding.Rule{
	ID: "reference/allow-unused", Severity: finding.Warning, Title: "An allowance stands where nothing is found",
	Why:    "An allowance left behind hides the next real fault of its kind.",
	Source: "the language itself", Setting: quiet,
	Bad:  "[[step]]\nsay = \"Look at the plug.\"\nallow = [{ rule = \"tool/never-used\", reason = \"kept at hand\" }]\n",
	Good: "[[step]]\nsay = \"Look at the plug.\"\n",
}})

var firmAllow = add(Rule{Rule: finding.Rule{
	ID: "safety/cannot-allow", Severity: finding.Error, Title: "A missing danger or warning cannot be allowed away",
	Why:    "Whoever holds the card has only the card: what can kill or maim must stand on it.",
	Source: "ANSI Z535.6; 29 CFR 1910.147", Setting: gearbox,
	Bad:  "allow = [{ rule = \"safety/missing-caution\", reason = \"everybody knows\" }]\ncautions = []\ntools = []\n[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\n[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n",
	Good: "cautions = [\"start\"]\ntools = []\n[energy.mains]\nkind = \"electric\"\nisolate = \"Lock the switch.\"\nprove = \"Press START.\"\n[[prepare]]\nisolate = \"mains\"\n[[prepare]]\nprove = \"mains\"\n",
}})

// Allow takes out the findings of a file that its author stands by, and says
// which allowances are wrong. What is taken out carries the reason as its last
// related text.
// Findings of the job may stand in a file the procedure takes names from; that
// file may stand by them as well.
func Allow(file *model.File, found []finding.Finding) (kept, allowed []finding.Finding) {
	used := map[*model.Allow]bool{}
	for _, one := range found {
		entry := allowance(file, one)
		if entry == nil {
			kept = append(kept, one)
			continue
		}
		used[entry] = true
		if one.Firm {
			kept = append(kept, one, entryFault(firmAllow, entry, fmt.Sprintf("%q cannot be allowed away: %s", entry.Rule.Text, one.Summary), cure(one)))
			continue
		}
		one.Related = append(one.Related, finding.Related{Place: entry.Rule.At, Text: entry.Reason.Text})
		allowed = append(allowed, one)
	}
	for _, entry := range Allowances(file) {
		switch {
		case !known(entry.Rule.Text):
			kept = append(kept, unknownEntry(entry))
		case !used[entry] && file.Procedure != nil: // what uses a library may need it
			kept = append(kept, entryFault(unusedAllow, entry, fmt.Sprintf("nothing is found here for %q to allow", entry.Rule.Text), "Take the allowance out."))
		}
	}
	return kept, allowed
}

// cure says what to do about a finding that nobody can stand by.
func cure(found finding.Finding) string {
	if strings.HasPrefix(found.Rule, "safety/") && strings.Contains(found.Summary, "message") {
		return "Write the message, and take the allowance out. Where the words say something else, say it in other words."
	}
	return "Do what the finding says, and take the allowance out."
}

func entryFault(rule *Rule, entry *model.Allow, summary, help string) finding.Finding {
	return finding.Finding{Rule: rule.ID, Severity: rule.Severity, Place: entry.Rule.At, Summary: summary, Why: rule.Why, Help: help}
}

func unknownEntry(entry *model.Allow) finding.Finding {
	var ids []string
	for _, rule := range Catalogue() {
		ids = append(ids, rule.ID)
	}
	help := "Write the rule as the finding names it."
	near := model.Nearest(entry.Rule.Text, ids)
	if near != "" {
		help = fmt.Sprintf("Write %q if that is what is meant.", near)
	}
	found := entryFault(unknownRule, entry, fmt.Sprintf("there is no rule %q", entry.Rule.Text), help)
	found.Fixes = write(near, entry.Rule.At)
	return found
}

// Allowances lists what a file stands by.
func Allowances(file *model.File) []*model.Allow {
	out := slices.Clone(file.Allow)
	if file.Procedure != nil {
		out = append(out, file.Procedure.Allow...)
	}
	for _, step := range file.Steps {
		out = append(out, step.Allow...)
	}
	return out
}

// allowance finds the entry that speaks for a finding: one of the step it stands
// in, of the file it stands in, or of the procedure.
func allowance(file *model.File, found finding.Finding) *model.Allow {
	var inside *model.Step
	for _, step := range file.Steps {
		if found.Place.File != file.Source {
			break
		}
		if step.Header.Span.Start <= found.Place.Span.Start && (inside == nil || step.Header.Span.Start > inside.Header.Span.Start) {
			inside = step
		}
	}
	if inside != nil {
		for _, entry := range inside.Allow {
			if entry.Rule.Text == found.Rule {
				return entry
			}
		}
	}
	var whole []*model.Allow
	for _, layer := range file.Layers() {
		if layer == file || layer.Source == found.Place.File {
			whole = append(whole, layer.Allow...)
		}
	}
	if file.Procedure != nil {
		whole = append(whole, file.Procedure.Allow...)
	}
	for _, entry := range whole {
		if entry.Rule.Text == found.Rule {
			return entry
		}
	}
	return nil
}
