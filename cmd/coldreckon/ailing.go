package main

import (
	"context"

	"github.com/spf13/cobra"

	"coldreckon/report"
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// ailingCommand prints the sheet on a unit that is dead or runs all the time.
func ailingCommand(out environment) *cobra.Command {
	return forBoat(out, &cobra.Command{
		Use:   "ailing FILE -o OUT",
		Short: "Print what to look at when a boat's unit is dead or runs all the time",
		Long: `Prints a sheet for half an hour with a meter, before money goes into an old unit:
what to look at, what each finding points to, what mending costs, and whether
to mend, replace or take out by the figures of this boat. The gas circuit stays
shut.`,
		Example: `  coldreckon ailing sample:saltmeadow -o unit.pdf
  coldreckon ailing sample:dunlin --set box.fitted_unit=dead --format text`,
	}, func(ctx context.Context, found reckonedBoat, to *printer) error {
		return to.print(ctx, out, found.reckoning.Boat.Units, func(info sheet.Info) (layout.Document, error) {
			return report.Ailing(report.Input{Reckoning: found.reckoning, Pack: found.pack}, footOf(info)), nil
		})
	}, "pdf", "html", "text", "md")
}
