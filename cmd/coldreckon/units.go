package main

import (
	"context"

	"github.com/spf13/cobra"

	"coldreckon/report"
)

// unitsCommand sets the owner's quotations side by side.
func unitsCommand(out surroundings) *cobra.Command {
	var reckon reckoner
	var to printer
	cmd := &cobra.Command{
		Use:   "units FILE",
		Short: "Set quotations for units side by side in the boat's box",
		Long: `Reckons every quotation of the answers file in the boat's own box, with the work
it needs, and sets them side by side: what it holds and uses, whether it goes in,
what it costs, what the offer leaves out, and in how many of 100 futures it is
the cheapest that works.

Quotations stand in the answers file under quotations, each with a name and a
price and whatever else the offer says; 'coldreckon questions' lists the parts.`,
		Example: `  coldreckon units offers.yaml
  coldreckon units offers.yaml -o quotations.pdf
  coldreckon units sample:dunlin --set 'quotations=name: A; price: $1,450; rated_amps: 0.55 A; rated_box: 110 L'`,
		Args: arguments(1, 1, "one FILE, - or sample:NAME"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := to.settle(out, args[0], reckon.prices); err != nil {
				return err
			}
			found, err := reckon.reckon(cmd.Context(), out, args[0])
			if err != nil {
				return err
			}
			return writeQuotations(cmd.Context(), out, found, &to)
		},
	}
	reckon.addFlags(cmd)
	to.addFlags(cmd, "text", "pdf", "md", "html")
	return cmd
}

func writeQuotations(ctx context.Context, out surroundings, found finding, to *printer) error {
	r := found.reckoning
	if len(r.Quotations) == 0 {
		return misuse("Put them into the file, or try one with --set 'quotations=name: A; price: $1,450'.", "quotations: found none, expected one offer or more")
	}
	info, err := to.info(out, r.Boat.Units)
	if err != nil {
		return err
	}
	return to.write(ctx, out, func() ([]byte, error) {
		return to.document(report.QuotationsDocument(r, found.pack.Book, buildVersion()), info)
	})
}
