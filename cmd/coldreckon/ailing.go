package main

import (
	"github.com/spf13/cobra"

	"coldreckon/report"
)

// ailingCommand prints the sheet on a unit that is dead or runs all the time.
func ailingCommand(out surroundings) *cobra.Command {
	var reckon reckoner
	var to printer
	cmd := &cobra.Command{
		Use:   "ailing FILE -o OUT",
		Short: "Print what to look at when a boat's unit is dead or runs all the time",
		Long: `Prints a sheet for half an hour with a meter, before money goes into an old unit:
what to look at, what each finding points to, what mending costs, and whether
to mend, replace or take out by the figures of this boat. The gas circuit stays
shut.`,
		Example: `  coldreckon ailing sample:saltmeadow -o unit.pdf
  coldreckon ailing sample:dunlin --set box.fitted_unit=dead --format text`,
		Args: arguments(1, 1, "one FILE, - or sample:NAME"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := to.settle(out, args[0], reckon.prices); err != nil {
				return err
			}
			found, err := reckon.reckon(cmd.Context(), out, args[0])
			if err != nil {
				return err
			}
			info, err := to.info(out, found.reckoning.Boat.Units)
			if err != nil {
				return err
			}
			return to.write(cmd.Context(), out, func() ([]byte, error) {
				return to.document(report.Ailing(report.Input{Reckoning: found.reckoning, Pack: found.pack}, info.Author), info)
			})
		},
	}
	reckon.addFlags(cmd)
	to.addFlags(cmd, "pdf", "html", "text", "md")
	return cmd
}
