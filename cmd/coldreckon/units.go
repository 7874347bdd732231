package main

import (
	"context"

	"github.com/spf13/cobra"

	"coldreckon/report"
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// unitsCommand sets the owner's quotations side by side.
func unitsCommand(out environment) *cobra.Command {
	return forBoat(out, &cobra.Command{
		Use:   "units FILE",
		Short: "Set quotations for units side by side in the boat's box",
		Long: `Reckons every quotation of the answers file in the boat's own box, with the work
it needs, and sets them side by side: what it holds and uses, whether it goes in,
what it costs, what the offer leaves out, and in how many of 100 futures it is
the cheapest that works.

'coldreckon ask FILE' takes offers one by one, from its list of answers.
Quotations stand in the answers file under quotations, each with a name and a
price and whatever else the offer says; 'coldreckon questions' lists the parts.`,
		Example: `  coldreckon units offers.yaml
  coldreckon units offers.yaml -o quotations.pdf
  coldreckon units sample:dunlin --set 'quotations=name: A; price: $1,450; rated_amps: 0.55 A; rated_box: 110 L'`,
	}, func(ctx context.Context, found reckonedBoat, to *printer) error {
		r := found.reckoning
		if len(r.Quotations) == 0 {
			return misuse("Put them into the file, or try one with --set 'quotations=name: A; price: $1,450'.", "quotations: there is no offer yet")
		}
		return to.print(ctx, out, r.Boat.Units, func(info sheet.Info) (layout.Document, error) {
			return report.QuotationsDocument(r, found.pack.Book, footOf(info)), nil
		})
	}, "text", "pdf", "md", "html")
}
