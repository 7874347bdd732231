package main

import (
	"github.com/spf13/cobra"

	"coldreckon/report/handout"
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// handoutCommand writes the sheets for a club's table.
func handoutCommand(out environment) *cobra.Command {
	var units, prices string
	var to printer
	cmd := &cobra.Command{
		Use:   "handout GROUND -o OUT",
		Short: "Write the chart of a cruising ground, for pencil and paper",
		Long: `Writes a sheet to copy for a club evening: on one side a chart to follow with
a pencil, from the size of the ice box to the yearly cost of ice, of a small unit
and of going without, and ten lines to fill in; on the other the tables, two
tests of the box and the cautions, all made for one cruising ground. It is a PDF
to copy, or HTML for a screen.`,
		Example: `  coldreckon handout chesapeake-bay -o handout.pdf
  coldreckon handout dalmatia --units metric -o handout.pdf`,
		Args: arguments(1, 1, "the name of one ground"),
		RunE: func(cmd *cobra.Command, args []string) error {
			sys, err := unitSystem(units)
			if err != nil {
				return err
			}
			if err := to.settle(out, prices); err != nil {
				return err
			}
			ground, err := groundNamed(args[0])
			if err != nil {
				return err
			}
			pack, err := out.pack(prices)
			if err != nil {
				return err
			}
			return to.print(cmd.Context(), out, sys, func(info sheet.Info) (layout.Document, error) {
				sheets, err := handout.New(ground, sys, pack)
				if err != nil {
					return layout.Document{}, err
				}
				return sheets.Document(footOf(info)), nil
			})
		},
		ValidArgsFunction: completeFirst(groundIDs),
	}
	addUnitsFlag(cmd, &units)
	cmd.Flags().Var((*fileName)(&prices), "prices", "lay the prices of a rule `FILE` over the built-in ones")
	to.addFlags(cmd, "pdf", "html", "text", "md")
	to.addLargeSheetFlag(cmd)
	return cmd
}
