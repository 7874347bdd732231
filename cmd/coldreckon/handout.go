package main

import (
	"fmt"
	"strconv"

	"github.com/spf13/cobra"

	"coldreckon/report/compare"
	"coldreckon/report/handout"
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
	"coldreckon/rules"
)

// handoutCommand writes the sheets for a club's table.
func handoutCommand(out environment) *cobra.Command {
	var units, prices, rate string
	var to printer
	cmd := &cobra.Command{
		Use:   "handout GROUND -o OUT",
		Short: "Write the chart of a cruising ground, for pencil and paper",
		Long: `Writes a sheet to copy for a club evening: on one side a chart to follow with
a pencil, from the size of the ice box to the yearly cost of ice, of a small unit
and of going without, and ten lines to fill in; on the other the tables, two
tests of the box and the cautions, all made for one cruising ground. It is a PDF
to copy, or HTML for a screen. Money is in US dollars unless --rate or the file of
--prices names another currency.`,
		Example: `  coldreckon handout chesapeake-bay -o handout.pdf
  coldreckon handout dalmatia --units metric --rate EUR=1.08 -o handout.pdf`,
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
			note := ""
			if rate != "" {
				if pack, note, err = atRate(pack, rate); err != nil {
					return err
				}
			}
			return to.print(cmd.Context(), out, sys, func(info sheet.Info) (layout.Document, error) {
				sheets, err := handout.New(ground, sys, pack)
				if err != nil {
					return layout.Document{}, err
				}
				return sheets.Document(footOf(info) + note), nil
			})
		},
		ValidArgsFunction: completeFirst(groundIDs),
	}
	addUnitsFlag(cmd, &units)
	cmd.Flags().Var((*fileName)(&prices), "prices", "lay the prices of a rule `FILE` over the built-in ones")
	cmd.Flags().StringVar(&rate, "rate", "", "print money in another currency, as `EUR=1.08`: what one of it is worth")
	to.addFlags(cmd, "pdf", "html", "text", "md")
	to.addLargeSheetFlag(cmd)
	return cmd
}

// A currency whose amounts still lie on the chart's scales of money.
const leastRate, mostRate = 0.5, 2.0

// atRate gives the pack with its prices in another currency, and what to say of
// the rate.
func atRate(pack rules.Pack, text string) (rules.Pack, string, error) {
	currency, rate, err := compare.ParseRate(text)
	if err != nil {
		return pack, "", misuse("", "--rate: %v", err)
	}
	if !(rate >= leastRate && rate <= mostRate) {
		return pack, "", misuse("", "--rate: the chart's scales of money do not suit %q. Give a currency worth %v to %v of the book's.", text, leastRate, mostRate)
	}
	from := pack.Book.Currency
	own := fmt.Sprintf("kind: own-prices\ncurrency: %q\nper_dollar: %.8f\n", currency, 1/rate)
	pack, err = pack.WithPrices("--rate", []byte(own))
	return pack, fmt.Sprintf(". Prices at %s 1 = %s %s", currency, from, strconv.FormatFloat(rate, 'f', -1, 64)), err
}
