package main

import (
	"cmp"
	"context"

	"github.com/spf13/cobra"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report"
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
	"coldreckon/wizard/questions"
)

// reportCommand writes the owner's report of a boat.
func reportCommand(out environment) *cobra.Command {
	var extra report.Input // what the flags add
	cmd := forBoat(out, &cobra.Command{
		Use:   "report FILE -o OUT",
		Short: "Write the report of a boat",
		Long: `Writes the report of four pages: the answer; the box and the boat; what to buy
and do; how to prove it. It comes as a PDF to print, as HTML for a screen, as
plain text for e-mail, or as Markdown. With --full an appendix follows, for
whoever wants to check.
Without -o, or with -o -, it goes to standard output; a PDF is not written to a
terminal. The file is replaced only when the new one is complete.

The date on it is today's, that of SOURCE_DATE_EPOCH, or the one given.`,
		Example: `  coldreckon report sample:dunlin -o report.pdf
  coldreckon report sample:kittiwake --format text
  coldreckon report sample:dunlin --set ice.price="0.90 /lb" --date 2025-06-30 -o dear-ice.pdf`,
	}, func(ctx context.Context, found reckonedBoat, to *printer) error {
		return writeReport(ctx, out, found, to, extra)
	}, "pdf", "html", "text", "md")
	cmd.Flags().BoolVar(&extra.Full, "full", false, "add the appendix: all figures, cautions, sources and the method")
	addNameFlags(cmd, &extra.For, &extra.By)
	return cmd
}

// writeReport prints what was found, with what the flags add to it.
func writeReport(ctx context.Context, out environment, found reckonedBoat, to *printer, in report.Input) error {
	boat := found.reckoning.Boat
	in.Reckoning, in.Pack, in.Answers = found.reckoning, found.pack, asTold(boat)
	in.Version, in.For, in.By = buildVersion(), oneLine(in.For), oneLine(in.By)
	if to.large {
		in.Enlarged = largePrint
	}
	return to.print(ctx, out, boat.Units, func(info sheet.Info) (layout.Document, error) {
		in.Date, in.Paper = info.Date, info.Paper
		if to.format == "pdf" {
			return report.Printed(in)
		}
		return report.Document(in)
	})
}

// asTold lists every answer that mattered for a boat, in the order of the
// questions, as its owner would write it.
func asTold(boat economics.Boat) []report.Answer {
	var list []report.Answer
	for _, row := range questions.All() {
		how := cmp.Or(boat.Known[row.Key], quantity.Assumed)
		if how == quantity.Assumed && !row.Asked(boat) {
			continue
		}
		if value := row.Shown(&boat); value != "" {
			list = append(list, report.Answer{Group: string(row.Group), Label: row.Label, Value: value, How: how})
		}
	}
	return list
}
