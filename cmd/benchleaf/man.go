package main

import (
	"fmt"
	"strings"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

func manCommand(by *caller) *cobra.Command {
	var date string
	cmd := &cobra.Command{
		Use:   "man",
		Short: "Write the manual page of this command, for man",
		Long: `Man writes one page for the program man, in the language of man(7), with every
command, its flags and its examples. The day that stands on the page is the one
that is given, so that the same program writes the same page.`,
		Example: `  benchleaf man --date 2026-05-01 > benchleaf.1
  man -l benchleaf.1`,
		Args: noPaths,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if _, err := time.Parse(time.DateOnly, date); date != "" && err != nil {
				return fmt.Errorf("%q is not a day; write it like 2026-05-01", date)
			}
			_, err := fmt.Fprint(by.out, manual(cmd.Root(), date))
			return err
		},
	}
	cmd.Flags().StringVar(&date, "date", "", "day that stands on the page, such as 2026-05-01; none when left out")
	return cmd
}

// manual is the page of a command with all its subcommands.
func manual(root *cobra.Command, date string) string {
	var out strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&out, format+"\n", args...) }
	line(`.TH %s 1 "%s" "%s"`, strings.ToUpper(root.Name()), date, roff(root.Name()))
	line(".SH NAME\n%s \\- %s", roff(root.Name()), roff(lowerFirst(root.Short)))
	line(".SH SYNOPSIS\n.B %s\n.I command\n[...]", roff(root.Name()))
	line(".SH DESCRIPTION")
	prose(&out, root.Long)
	line(".SH COMMANDS")
	for _, cmd := range root.Commands() {
		if cmd.Hidden || !cmd.IsAvailableCommand() {
			continue
		}
		line(".SS %s", roff(root.Name()+" "+cmd.Use))
		prose(&out, cmd.Long)
		cmd.LocalFlags().VisitAll(func(flag *pflag.Flag) { option(&out, flag) })
		if cmd.Example != "" {
			line(".PP\nExamples:")
			literal(&out, strings.Split(cmd.Example, "\n"))
		}
	}
	line(".SH EXIT STATUS\n0 when all is well, 1 when something was found or held back, 2 when it could not run.")
	return out.String()
}

// prose writes paragraphs; lines that are set in stand as they are.
func prose(out *strings.Builder, text string) {
	for part := range strings.SplitSeq(strings.Trim(text, "\n"), "\n\n") {
		var lines []string
		for line := range strings.SplitSeq(part, "\n") {
			if strings.HasPrefix(line, " ") || strings.HasPrefix(line, "\t") {
				lines = append(lines, line)
				continue
			}
			literal(out, lines)
			if lines = nil; out.Len() > 0 && strings.HasPrefix(part, line) {
				paragraph(out)
			}
			fmt.Fprintln(out, roff(line))
		}
		literal(out, lines)
	}
}

// paragraph begins one, but behind a heading, where it begins by itself.
func paragraph(out *strings.Builder) {
	text := strings.TrimSuffix(out.String(), "\n")
	if last := text[strings.LastIndex(text, "\n")+1:]; !strings.HasPrefix(last, ".SH") && !strings.HasPrefix(last, ".SS") {
		out.WriteString(".PP\n")
	}
}

// literal writes lines as they stand.
func literal(out *strings.Builder, lines []string) {
	if len(lines) == 0 {
		return
	}
	out.WriteString(".PP\n.nf\n")
	for _, line := range lines {
		fmt.Fprintln(out, roff(strings.TrimRight(line, " ")))
	}
	out.WriteString(".fi\n")
}

func option(out *strings.Builder, flag *pflag.Flag) {
	kind, usage := pflag.UnquoteUsage(flag)
	name := `\fB` + roff("--"+flag.Name) + `\fR`
	if flag.Shorthand != "" {
		name = `\fB` + roff("-"+flag.Shorthand) + `\fR, ` + name
	}
	if kind != "" {
		name += ` \fI` + roff(kind) + `\fR`
	}
	fmt.Fprintf(out, ".TP\n%s\n%s\n", name, roff(usage))
}

// roff writes text for man(7): what it would take for an order of its own is kept from it, and
// letters beyond ASCII are named.
func roff(text string) string {
	var out strings.Builder
	for i, r := range text {
		switch {
		case (r == '.' || r == '\'') && i == 0:
			out.WriteString(`\&`)
			out.WriteRune(r)
		case r == '\\':
			out.WriteString(`\e`)
		case r == '-':
			out.WriteString(`\-`)
		case r == '"':
			out.WriteString(`\(dq`)
		case r == '\t':
			out.WriteString("    ")
		case r > 126:
			fmt.Fprintf(&out, `\[u%04X]`, r)
		default:
			out.WriteRune(r)
		}
	}
	return out.String()
}
