package main

import (
	"context"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report"
	"coldreckon/report/sheet"
	"coldreckon/wizard/questions"
)

// reportCommand writes the owner's report of a boat.
func reportCommand(out surroundings) *cobra.Command {
	var reckon reckoner
	var to printer
	cmd := &cobra.Command{
		Use:   "report FILE -o OUT",
		Short: "Write the report of a boat",
		Long: `Writes the report: as a PDF to print, as plain text for e-mail, or as Markdown.
Without -o, or with -o -, it goes to standard output; a PDF is not written to a
terminal. The file is replaced only when the new one is complete.

The paper follows the boat's units, Letter for us and A4 for metric. The date
on it is today's, that of SOURCE_DATE_EPOCH, or the one given.`,
		Example: `  coldreckon report sample:dunlin -o report.pdf
  coldreckon report sample:kittiwake --format text
  coldreckon report sample:dunlin --set ice.price="0.90 /lb" --date 2025-06-30 -o dear-ice.pdf`,
		Args: arguments(1, 1, "one FILE, - or sample:NAME"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := to.check(out, args[0]); err != nil {
				return err
			}
			found, err := reckon.reckon(cmd.Context(), out, args[0])
			if err != nil {
				return err
			}
			return to.print(cmd.Context(), out, found)
		},
	}
	reckon.addFlags(cmd)
	to.addFlags(cmd)
	cmd.Flags().StringVar(&to.format, "format", "pdf", "pdf, text or md")
	cmd.RegisterFlagCompletionFunc("format", cobra.FixedCompletions([]string{"pdf", "text", "md"}, cobra.ShellCompDirectiveNoFileComp))
	return cmd
}

// A printer holds the flags that say how a report is printed.
type printer struct{ file, format, paper, date string }

// addFlags gives a command the flags that every report takes.
func (p *printer) addFlags(cmd *cobra.Command) {
	flags := cmd.Flags()
	flags.StringVarP(&p.file, "output", "o", "", "write the report to `OUT`; - is standard output")
	flags.StringVar(&p.paper, "paper", "", "a4 or letter")
	flags.StringVar(&p.date, "date", "", "the day printed on it, as `YYYY-MM-DD`")
	cmd.RegisterFlagCompletionFunc("paper", cobra.FixedCompletions([]string{"a4", "letter"}, cobra.ShellCompDirectiveNoFileComp))
}

// toStdout reports whether the report goes to standard output.
func (p *printer) toStdout() bool { return p.file == "" || p.file == "-" }

// check looks at the flags before anything is reckoned. answers is the file
// that the report is made from.
func (p *printer) check(out surroundings, answers string) error {
	switch p.format {
	case "pdf", "text", "md":
	default:
		return misuse("", "--format: found %q, expected pdf, text or md", p.format)
	}
	if _, _, ok := sheet.Paper(strings.ToLower(p.paper)).Size(); p.paper != "" && !ok {
		return misuse("", "--paper: found %q, expected a4 or letter", p.paper)
	}
	if _, err := reportDate(p.date, out.env); err != nil {
		return err
	}
	if p.format == "pdf" && p.toStdout() && out.toTerminal() {
		return misuse("Name a file with -o report.pdf, or choose --format text.",
			"standard output: found a terminal, expected a file for the PDF")
	}
	if !p.toStdout() && same(p.file, answers) {
		return misuse("Name another file with -o.", "%s: found the answers file, expected another name for the report", p.file)
	}
	return nil
}

// print makes the report and puts it where the flags say.
func (p *printer) print(ctx context.Context, out surroundings, found finding) error {
	date, err := reportDate(p.date, out.env)
	if err != nil {
		return err
	}
	data, err := aside(ctx, func() ([]byte, error) {
		return p.render(found.reportInput(date, sheet.Paper(strings.ToLower(p.paper))))
	})
	if err != nil {
		return err
	}
	if p.toStdout() {
		return out.result(data)
	}
	return save(p.file, data)
}

// render gives the report in the format asked for.
func (p *printer) render(in report.Input) ([]byte, error) {
	switch p.format {
	case "text":
		text, err := report.OwnerText(in)
		return []byte(text), err
	case "md":
		text, err := report.OwnerMarkdown(in)
		return []byte(text), err
	}
	return report.Owner(in)
}

// reportInput is what the report is made of. Paper "" follows the units.
func (f finding) reportInput(date time.Time, paper sheet.Paper) report.Input {
	boat := f.reckoning.Boat
	if paper == "" {
		paper = sheet.A4
		if boat.Units == quantity.US {
			paper = sheet.Letter
		}
	}
	return report.Input{
		Reckoning: f.reckoning, Pack: f.pack, Answers: asTold(boat), Version: buildVersion(), Date: date, Paper: paper,
	}
}

// asTold lists every answer that mattered for a boat, in the order of the
// questions, as its owner would write it.
func asTold(boat economics.Boat) []report.Answer {
	var list []report.Answer
	for _, row := range questions.All() {
		how, known := boat.Known[row.Key]
		if !known {
			how = quantity.Assumed
		}
		if how == quantity.Assumed && !row.Asked(boat) {
			continue
		}
		if value := row.Print(&boat); value != "" {
			list = append(list, report.Answer{Group: string(row.Group), Label: row.Label, Value: value, How: how})
		}
	}
	return list
}
