package main

import (
	"strings"

	"github.com/spf13/cobra"

	"coldreckon/economics/quantity"
	"coldreckon/report/protocol"
	"coldreckon/report/sheet"
)

// protocolCommand prints how to test a box, on one page with blanks.
func protocolCommand(out surroundings) *cobra.Command {
	var file, units, paper, date string
	cmd := &cobra.Command{
		Use:   "protocol [-o OUT]",
		Short: "Print the two tests of an ice box, one page with blanks",
		Long: `Prints one page to take aboard: a weighed test with ice and a test with jugs of
water, each with blanks for the readings, a sum a pencil can do, and the lines
that carry the result into the answers file.

Units are us unless you say metric; the paper follows them, Letter or A4. The
PDF is not written to a terminal.`,
		Example: `  coldreckon protocol -o box-tests.pdf
  coldreckon protocol --units metric --paper letter -o box-tests.pdf`,
		Args: arguments(0, 0, "nothing but flags"),
		RunE: func(*cobra.Command, []string) error {
			sys := quantity.System(strings.ToLower(units))
			if sys != quantity.Metric && sys != quantity.US {
				return misuse("", "--units: found %q, expected us or metric", units)
			}
			size := sheet.Paper(strings.ToLower(paper))
			if _, _, ok := size.Size(); paper != "" && !ok {
				return misuse("", "--paper: found %q, expected a4 or letter", paper)
			}
			if paper == "" {
				size = sheet.A4
				if sys == quantity.US {
					size = sheet.Letter
				}
			}
			day, err := reportDate(date, out.env)
			if err != nil {
				return err
			}
			toStdout := file == "" || file == "-"
			if toStdout && out.toTerminal() {
				return misuse("Name a file with -o box-tests.pdf.", "standard output: found a terminal, expected a file for the PDF")
			}
			pdf, err := protocol.PDF(sheet.Info{Author: "coldreckon", Lang: "en", Date: day, Paper: size}, sys, "coldreckon "+buildVersion())
			if err != nil {
				return err
			}
			if toStdout {
				return out.result(pdf)
			}
			return save(file, pdf)
		},
		ValidArgsFunction: cobra.NoFileCompletions,
	}
	flags := cmd.Flags()
	flags.StringVarP(&file, "output", "o", "", "write the page to `OUT`; - is standard output")
	flags.StringVar(&units, "units", string(quantity.US), "us or metric")
	flags.StringVar(&paper, "paper", "", "a4 or letter")
	flags.StringVar(&date, "date", "", "the day noted in the file, as `YYYY-MM-DD`")
	for flag, words := range map[string][]string{"units": {"us", "metric"}, "paper": {"a4", "letter"}} {
		cmd.RegisterFlagCompletionFunc(flag, cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp))
	}
	return cmd
}
