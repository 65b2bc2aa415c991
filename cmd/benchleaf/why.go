package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"benchleaf/compiler"
	"benchleaf/compiler/finding"
)

func whyCommand(by *caller) *cobra.Command {
	return &cobra.Command{
		Use:   "why [RULE…]",
		Short: "Say why a finding matters at the machine",
		Long: `Why says of a rule what goes wrong at the machine without it, where that is
published, and how a procedure reads that breaks it and one that keeps it. The
rule's name stands in brackets at the end of a finding. A family, such as units,
lists the rules in it; without a name all rules are listed.`,
		Example: `  benchleaf why                  every rule
  benchleaf why units            the rules on units
  benchleaf why units/missing    one rule`,
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			var out []string
			for _, rule := range compiler.Rules() {
				out = append(out, rule.ID+"\t"+rule.Title)
			}
			return out, cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(_ *cobra.Command, names []string) error { return why(by.out, names) },
	}
}

func why(out io.Writer, names []string) error {
	rules := compiler.Rules()
	if len(names) == 0 {
		listRules(out, rules)
		return nil
	}
	for i, name := range names {
		if i > 0 {
			fmt.Fprintln(out)
		}
		family := ofFamily(rules, name)
		rule, known := findRule(rules, name)
		switch {
		case known:
			explain(out, rule)
		case len(family) > 0:
			listRules(out, family)
		default:
			var ids, ends []string
			for _, rule := range rules {
				ids = append(ids, rule.ID)
				if strings.HasSuffix(rule.ID, "/"+name) {
					ends = append(ends, rule.ID)
				}
			}
			if len(ends) > 0 {
				return fmt.Errorf("there is no rule %q%s", name, didYouMean(ends))
			}
			return fmt.Errorf("there is no rule %q%s\n  see every rule: benchleaf why", name, didYouMean(nearest(name, ids, 3)))
		}
	}
	return nil
}

func findRule(rules []finding.Rule, id string) (finding.Rule, bool) {
	for _, rule := range rules {
		if rule.ID == id {
			return rule, true
		}
	}
	return finding.Rule{}, false
}

func ofFamily(rules []finding.Rule, name string) []finding.Rule {
	var out []finding.Rule
	for _, rule := range rules {
		if family(rule) == strings.TrimSuffix(name, "/") {
			out = append(out, rule)
		}
	}
	return out
}

func family(rule finding.Rule) string {
	family, _, _ := strings.Cut(rule.ID, "/")
	return family
}

func listRules(out io.Writer, rules []finding.Rule) {
	wide := 0
	for _, rule := range rules {
		wide = max(wide, len(rule.ID))
	}
	last := ""
	for i, rule := range rules {
		if family(rule) != last && i > 0 {
			fmt.Fprintln(out)
		}
		last = family(rule)
		fmt.Fprintf(out, "%-*s  %-7s  %s\n", wide, rule.ID, rule.Severity, rule.Title)
	}
}

func explain(out io.Writer, rule finding.Rule) {
	fmt.Fprintf(out, "%s (%s)\n%s.\n\n", rule.ID, rule.Severity, strings.TrimSuffix(rule.Title, "."))
	fmt.Fprintf(out, "Why at the machine:\n    %s\n\nSource:\n    %s\n", rule.Why, rule.Source)
	example(out, "Found in:", rule.Bad)
	example(out, "Clean:", rule.Good)
}

// example writes TOML set in.
func example(out io.Writer, title, text string) {
	if strings.TrimSpace(text) == "" {
		return
	}
	fmt.Fprintf(out, "\n%s\n", title)
	for line := range strings.SplitSeq(finding.Short(strings.Trim(text, "\n")), "\n") {
		fmt.Fprintln(out, strings.TrimRight("    "+line, " "))
	}
}
