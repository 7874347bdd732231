package main

import (
	"github.com/spf13/cobra"

	"coldreckon/report/boxtest"
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// boxtestCommand prints how to test a box, on one page with blanks.
func boxtestCommand(out environment) *cobra.Command {
	var units string
	var to printer
	cmd := &cobra.Command{
		Use:   "boxtest -o OUT",
		Short: "Print the two tests of an ice box, one page with blanks",
		Long: `Prints one page to take aboard: a weighed test with ice and a test with jugs of
water, each with blanks for the readings, a sum a pencil can do, and the lines
that carry the result into the answers file. It is a PDF to print, or HTML for
a screen.`,
		Example: `  coldreckon boxtest -o box-tests.pdf
  coldreckon boxtest --units metric --paper letter -o box-tests.pdf`,
		Args: arguments(0, 0, "nothing but flags"),
		RunE: func(cmd *cobra.Command, _ []string) error {
			sys, err := unitSystem(units)
			if err != nil {
				return err
			}
			if err := to.settle(out); err != nil {
				return err
			}
			return to.print(cmd.Context(), out, sys, func(info sheet.Info) (layout.Document, error) { return boxtest.Document(sys, footOf(info)), nil })
		},
		ValidArgsFunction: cobra.NoFileCompletions,
	}
	addUnitsFlag(cmd, &units)
	to.addFlags(cmd, "pdf", "html", "text", "md")
	return cmd
}
