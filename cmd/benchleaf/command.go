package main

import (
	"errors"
	"fmt"
	"runtime/debug"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"benchleaf/schema"
)

// command makes the whole command with its subcommands.
func command(by *caller) *cobra.Command {
	root := &cobra.Command{
		Use:   "benchleaf",
		Short: "Check service procedures and print bench cards",
		Long: `Benchleaf reads service procedures written in TOML, says what is wrong or missing
in them, and prints them as bench cards with a pick list of what to bring, and as a manual.`,
		Example: `  benchleaf new gearbox-oil.toml     write a procedure to fill in
  benchleaf lint                     check every procedure in this folder
  benchleaf why torque/no-value      say why a finding matters
  benchleaf print                    print the cards and the pick list into out`,
		Version:       version(),
		Args:          cobra.ArbitraryArgs,
		SilenceErrors: true,
		SilenceUsage:  true,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) > 0 {
				return unknownCommand(cmd, args[0])
			}
			return cmd.Help()
		},
	}
	root.SetVersionTemplate("benchleaf {{.Version}}\n")
	root.SetFlagErrorFunc(flagFault)
	root.AddCommand(newCommand(by), draftCommand(by), lintCommand(by), tidyCommand(by), editorCommand(by), deskCommand(by), printCommand(by), pickCommand(by), phoneCommand(by), approveCommand(by), recordCommand(by), chartCommand(by), gaugeCommand(by), manualCommand(by), contactCommand(by), logCommand(by), dueCommand(by), joinCommand(by), storeCommand(by), trendCommand(by), historyCommand(by), whyCommand(by), referenceCommand(by), schemaCommand(by), modelCommand(by), manCommand(by))
	by.completes(root)
	return root
}

// version is what the build says of itself.
func version() string {
	built := "development"
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" && info.Main.Version != "(devel)" {
		built = info.Main.Version
	}
	return fmt.Sprintf("%s, language version %d", built, schema.Version)
}

func unknownCommand(root *cobra.Command, name string) error {
	var names []string
	for _, sub := range root.Commands() {
		if !sub.Hidden {
			names = append(names, sub.Name())
		}
	}
	return fmt.Errorf("there is no command %q%s\n  see: benchleaf --help", name, didYouMean(nearest(name, names, 1)))
}

// flagFault tells a wrong flag with the nearest one there is.
func flagFault(cmd *cobra.Command, err error) error {
	if cmd.Parent() == nil && cmd.Flags().NArg() > 0 {
		return unknownCommand(cmd, cmd.Flags().Arg(0))
	}
	text := err.Error()
	var unknown *pflag.NotExistError
	if errors.As(err, &unknown) && unknown.GetSpecifiedShortnames() == "" {
		var names []string
		cmd.Flags().VisitAll(func(flag *pflag.Flag) { names = append(names, "--"+flag.Name) })
		name := "--" + unknown.GetSpecifiedName()
		text = fmt.Sprintf("there is no flag %s%s", name, didYouMean(nearest(name, names, 1)))
	}
	return fmt.Errorf("%s\n  see: %s --help", text, cmd.CommandPath())
}
