package main

import (
	"bytes"
	"cmp"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// manCommand writes the manual pages. It is for those who package the program,
// so the help does not list it.
func manCommand(out environment) *cobra.Command {
	return &cobra.Command{
		Use:    "man FOLDER",
		Short:  "Write the manual pages into a folder",
		Hidden: true,
		Long: `Writes one manual page for each command into a folder that exists: coldreckon.1,
coldreckon-report.1 and so on. SOURCE_DATE_EPOCH, in seconds since 1970, sets
the date they bear.`,
		Example: `  coldreckon man .`,
		Args:    arguments(1, 1, "a folder"),
		RunE: func(_ *cobra.Command, args []string) error {
			day, err := reportDate("", out.env)
			if err != nil {
				return err
			}
			for _, p := range manualPages(commands(environment{}), day) {
				if err := save(filepath.Join(args[0], p.name), p.text); err != nil {
					return err
				}
			}
			return nil
		},
	}
}

// A manualPage is one page in the language of troff, with its file's name.
type manualPage struct {
	name string
	text []byte
}

// manualPages makes the page of a command and of each that the help lists
// under it.
func manualPages(cmd *cobra.Command, day time.Time) []manualPage {
	pages := []manualPage{{manualName(cmd) + ".1", manualText(cmd, day)}}
	for _, sub := range subcommands(cmd) {
		pages = append(pages, manualPages(sub, day)...)
	}
	return pages
}

// manualName is what the manual calls a command: coldreckon-report.
func manualName(cmd *cobra.Command) string { return strings.ReplaceAll(cmd.CommandPath(), " ", "-") }

// subcommands gives the commands that the help of one lists.
func subcommands(cmd *cobra.Command) []*cobra.Command {
	return slices.DeleteFunc(slices.Clone(cmd.Commands()), func(sub *cobra.Command) bool { return !sub.IsAvailableCommand() })
}

// manualText writes one page with the macros of man(7), so that it reads as
// any other page of section 1.
func manualText(cmd *cobra.Command, day time.Time) []byte {
	cmd.InitDefaultHelpFlag()
	var b bytes.Buffer
	name := manualName(cmd)
	fmt.Fprintf(&b, ".TH \"%s\" \"1\" \"%s\" \"coldreckon %s\" \"User commands\"\n",
		troff(strings.ToUpper(name)), day.Format("Jan 2006"), troff(buildVersion()))
	fmt.Fprintf(&b, ".SH NAME\n%s \\- %s\n", troff(name), troff(cmd.Short))
	fmt.Fprintf(&b, ".SH SYNOPSIS\n\\fB%s\\fP%s\n", troff(cmd.CommandPath()), troff(strings.TrimPrefix(cmd.UseLine(), cmd.CommandPath())))
	fmt.Fprintf(&b, ".SH DESCRIPTION\n%s", troffText(cmp.Or(cmd.Long, cmd.Short+".")))
	troffFlags(&b, "OPTIONS", cmd.NonInheritedFlags())
	troffFlags(&b, "OPTIONS OF ALL COMMANDS", cmd.InheritedFlags())
	if cmd.Example != "" {
		fmt.Fprintf(&b, ".SH EXAMPLES\n%s", troffText(cmd.Example))
	}
	var see []string
	if cmd.HasParent() {
		see = append(see, manualName(cmd.Parent()))
	}
	for _, sub := range subcommands(cmd) {
		see = append(see, manualName(sub))
	}
	for i, other := range see {
		see[i] = `\fB` + troff(other) + `\fP(1)`
	}
	if len(see) > 0 {
		fmt.Fprintf(&b, ".SH SEE ALSO\n%s\n", strings.Join(see, ",\n"))
	}
	return b.Bytes()
}

// troffFlags lists flags with what they take and what they are without being
// told; no flags give no section.
func troffFlags(b *bytes.Buffer, heading string, flags *pflag.FlagSet) {
	flags.VisitAll(func(f *pflag.Flag) {
		if f.Hidden {
			return
		}
		if heading != "" {
			fmt.Fprintf(b, ".SH %s\n", heading)
			heading = ""
		}
		b.WriteString(".TP\n")
		if f.Shorthand != "" {
			fmt.Fprintf(b, `\fB%s\fP, `, troff("-"+f.Shorthand))
		}
		fmt.Fprintf(b, `\fB%s\fP`, troff("--"+f.Name))
		takes, usage := pflag.UnquoteUsage(f)
		if takes != "" {
			fmt.Fprintf(b, ` \fI%s\fP`, troff(takes))
		}
		switch f.DefValue {
		case "", "false", "[]":
		default:
			usage += " (default " + f.DefValue + ")"
		}
		fmt.Fprintf(b, "\n%s\n", troff(usage))
	})
}

// troffText sets a help text: paragraphs are filled, indented lines keep their
// layout.
func troffText(help string) string {
	var b strings.Builder
	inside := false
	for line := range strings.Lines(strings.Trim(help, "\n")) {
		line = strings.TrimRight(line, " \n")
		indented := strings.HasPrefix(line, "  ")
		switch {
		case indented && !inside:
			b.WriteString(".PP\n.RS 4\n.nf\n")
		case inside && !indented:
			b.WriteString(".fi\n.RE\n.PP\n")
		case line == "":
			b.WriteString(".PP\n")
		}
		if inside = indented; line != "" {
			b.WriteString(troff(strings.TrimPrefix(line, "  ")) + "\n")
		}
	}
	if inside {
		b.WriteString(".fi\n.RE\n")
	}
	return b.String()
}

// troff keeps every sign what it is: a backslash, a quotation mark within a
// macro's argument, a hyphen that readers copy into a shell, and a mark at the
// head of a line that would make it a request.
func troff(text string) string {
	text = strings.NewReplacer(`\`, `\e`, "-", `\-`, `"`, `\(dq`, "`", `\(ga`, "^", `\(ha`, "~", `\(ti`).Replace(text)
	if strings.HasPrefix(text, ".") || strings.HasPrefix(text, "'") {
		text = `\&` + text
	}
	return text
}
