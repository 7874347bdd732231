package main

import (
	"github.com/spf13/cobra"

	"coldreckon/report"
)

// seasonlogCommand prints a page to keep a season's log on.
func seasonlogCommand(out environment) *cobra.Command {
	var units string
	var to printer
	cmd := &cobra.Command{
		Use:   "seasonlog",
		Short: "Print a page to keep a season's log on",
		Long: `Prints a page on which to note, day by day, ice bought and found, charge drawn
and temperatures; with --format csv the heading of a file for the same. 'coldreckon
learn' reads the file back.`,
		Example: `  coldreckon seasonlog --units metric -o season.pdf
  coldreckon seasonlog -o season.csv`,
		Args: arguments(0, 0, "nothing after it"),
		RunE: func(cmd *cobra.Command, _ []string) error {
			if err := to.settle(out); err != nil {
				return err
			}
			sys, err := unitSystem(units)
			if err != nil {
				return err
			}
			info, err := to.info(out, sys)
			if err != nil {
				return err
			}
			return to.write(cmd.Context(), out, func() ([]byte, error) {
				if to.format == "csv" {
					return []byte(report.SeasonLogCSV(sys)), nil
				}
				return to.document(report.SeasonLog(sys, buildVersion()), info)
			})
		},
	}
	addUnitsFlag(cmd, &units)
	to.addFlags(cmd, "text", "pdf", "md", "html", "csv")
	return cmd
}
