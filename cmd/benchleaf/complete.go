package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"benchleaf/compiler"
)

// named are the flags that take a short name out of the shop.
var named = map[string]func(compiler.Names) []compiler.Named{
	"unit":      func(all compiler.Names) []compiler.Named { return all.Units },
	"procedure": func(all compiler.Names) []compiler.Named { return all.Procedures },
	"machine":   func(all compiler.Names) []compiler.Named { return all.Machines },
	"variant":   func(all compiler.Names) []compiler.Named { return all.Versions },
}

// completes lets a terminal complete the names of the shop and the files of each command. What
// cannot be read completes nothing.
func (by *caller) completes(root *cobra.Command) {
	for _, cmd := range root.Commands() {
		if cmd.ValidArgsFunction == nil {
			cmd.ValidArgsFunction = func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
				if !strings.Contains(cmd.Use, "PATH") && !strings.Contains(cmd.Use, "FILE") {
					return nil, cobra.ShellCompDirectiveNoFileComp
				}
				return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
			}
		}
		for name, list := range named {
			if cmd.Flags().Lookup(name) == nil {
				continue
			}
			_ = cmd.RegisterFlagCompletionFunc(name, func(_ *cobra.Command, paths []string, _ string) ([]string, cobra.ShellCompDirective) {
				if shop := cmd.Flags().Lookup("shop"); shop != nil {
					paths = []string{shop.Value.String()}
				}
				return by.names(paths, list), cobra.ShellCompDirectiveNoFileComp
			}) // fails only for a flag that is not there
		}
	}
}

// shells adds the command that writes completion for a shell, where its output is known, and has it
// refuse other shells.
func shells(root *cobra.Command) {
	root.InitDefaultCompletionCmd()
	if cmd, _, err := root.Find([]string{"completion"}); err == nil && cmd != root {
		cmd.Args = cobra.ArbitraryArgs
		cmd.RunE = func(cmd *cobra.Command, args []string) error {
			if len(args) > 0 {
				return fmt.Errorf("there is no completion for %q; there is one for bash, zsh, fish and powershell", args[0])
			}
			return cmd.Help()
		}
	}
}

// names are the short names in the shops of some paths, each with what it stands for.
func (by *caller) names(paths []string, list func(compiler.Names) []compiler.Named) []string {
	shops, err := load(by.folder, paths)
	if err != nil {
		return nil
	}
	var out []string
	for _, s := range shops {
		for _, one := range list(compiler.NamesOf(s.files)) {
			out = append(out, one.Name+"\t"+one.Title)
		}
	}
	return out
}
