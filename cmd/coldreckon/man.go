package main

import (
	"bytes"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/cobra/doc"
)

// manCommand writes the manual pages. It is for those who package the program,
// so the help does not list it.
func manCommand(out surroundings) *cobra.Command {
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
			pages, err := manualPages(commands(surroundings{}), day)
			if err != nil {
				return err
			}
			for _, p := range pages {
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
// under it. It changes the commands' texts, so they must serve nothing else.
func manualPages(cmd *cobra.Command, day time.Time) ([]manualPage, error) {
	cmd.DisableAutoGenTag = true
	cmd.Long = markdown(cmd.Long)
	var page bytes.Buffer
	header := doc.GenManHeader{Section: "1", Date: &day, Source: "coldreckon " + buildVersion(), Manual: "User commands"}
	if err := doc.GenMan(cmd, &header, &page); err != nil {
		return nil, err
	}
	pages := []manualPage{{strings.ReplaceAll(cmd.CommandPath(), " ", "-") + ".1", page.Bytes()}}
	for _, sub := range cmd.Commands() {
		if !sub.IsAvailableCommand() {
			continue
		}
		more, err := manualPages(sub, day)
		if err != nil {
			return nil, err
		}
		pages = append(pages, more...)
	}
	return pages, nil
}

// markdown says the same as a help text where marks of Markdown have a
// meaning: indented lines keep their layout, and marks are only themselves.
func markdown(help string) string {
	var b strings.Builder
	inside := false
	for line := range strings.Lines(help) {
		if indented := strings.HasPrefix(line, "  "); indented != inside {
			inside = indented
			b.WriteByte('\n')
		}
		if inside {
			b.WriteString("    " + line)
		} else {
			b.WriteString(markdownMarks.Replace(line))
		}
	}
	return b.String()
}

var markdownMarks = strings.NewReplacer(`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "<", `\<`, "[", `\[`, "#", `\#`)
