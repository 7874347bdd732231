package main

import (
	"context"
	"errors"
	"fmt"
	"iter"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/compare"
	"coldreckon/report/words"
	"coldreckon/rules"
	"coldreckon/wizard/questions"
)

// compareFlags are the flags of a comparison.
type compareFlags struct {
	buyer, sort string
	units       string // for all rows; empty for those of the first boat
	preparedFor string
	preparedBy  string
	rates       []string // as told
	reckon      reckonFlags
	to          printer
}

// compareCommand sets boats side by side.
func compareCommand(out environment) *cobra.Command {
	var c compareFlags
	cmd := &cobra.Command{
		Use:   "compare BOAT...",
		Short: "Set boats side by side for one buyer",
		Long: `Reckons several boats and sets them side by side, a row a boat, as she stands
and with the work she needs. It is not a survey or a valuation.

With --buyer the cruising, food, ice, money and habits of one answers file are
put in place of every boat's own. All rows are in the units of the first boat,
or in those of --units. Boats stand in the order of the middle price of a cold
day; those with no way to keep food cold, and those nobody described, follow.

Sums are in the buyer's currency, else in the first boat's. A boat told of in
another is converted at --rate; without one her sums are left out.

A file that cannot be read is told of and does not stop the others; the exit
code is then 2.`,
		Example: `  coldreckon compare sample:dunlin sample:saltmeadow -o boats.pdf
  coldreckon compare --buyer buyer.yaml sample:dunlin boat.yaml --for "A. Buyer" -o boats.pdf
  coldreckon compare sample:dunlin sample:kittiwake --rate EUR=1.08 --sort yearly
  coldreckon compare sample:dunlin sample:kittiwake --units metric
  coldreckon compare sample:dunlin boat.yaml --format csv`,
		Args: arguments(1, 1<<20, "the FILE of at least one boat"),
		RunE: func(cmd *cobra.Command, args []string) error {
			return c.compare(cmd.Context(), out, args)
		},
		ValidArgsFunction: func(cmd *cobra.Command, _ []string, word string) ([]string, cobra.ShellCompDirective) {
			return completeFile(cmd, nil, word)
		},
	}
	cmd.Flags().Var((*fileName)(&c.buyer), "buyer", "compare for the buyer told of in `FILE`")
	cmd.Flags().StringVar(&c.sort, "sort", "price", "put first what is best by "+words.Either(compare.SortKeys()))
	cmd.RegisterFlagCompletionFunc("sort", cobra.FixedCompletions(compare.SortKeys(), cobra.ShellCompDirectiveNoFileComp))
	cmd.Flags().StringVar(&c.units, "units", "", "us or metric, for all boats (default: the first boat's)")
	cmd.RegisterFlagCompletionFunc("units", cobra.FixedCompletions([]string{"us", "metric"}, cobra.ShellCompDirectiveNoFileComp))
	addNameFlags(cmd, &c.preparedFor, &c.preparedBy)
	cmd.Flags().StringArrayVar(&c.rates, "rate", nil, "what one of another currency is worth, as `EUR=1.08`; may be given again")
	c.reckon.addPriceFlags(cmd)
	c.to.addFlags(cmd, "text", "pdf", "md", "html", "csv", "json")
	c.to.addLargeSheetFlag(cmd)
	return cmd
}

// compare reckons the boats and prints the comparison.
func (c *compareFlags) compare(ctx context.Context, out environment, names []string) error {
	if err := c.to.settle(out, append(slices.Clone(names), c.buyer, c.reckon.prices)...); err != nil {
		return err
	}
	rates := compare.Rates{}
	for _, text := range c.rates {
		currency, rate, err := compare.ParseRate(text)
		if err != nil {
			return misuse("", "--rate: %v", err)
		}
		rates[currency] = rate
	}
	if !slices.Contains(compare.SortKeys(), c.sort) {
		return noSuch("--sort", c.sort, words.Either(compare.SortKeys()))
	}
	var sys quantity.System
	if c.units != "" {
		var err error
		if sys, err = unitSystem(c.units); err != nil {
			return err
		}
	}
	if err := once("-", append(slices.Clone(names), c.buyer, c.reckon.prices)...); err != nil {
		return err
	}
	if err := c.reckon.check(); err != nil {
		return err
	}
	pack, err := out.pack(c.reckon.prices)
	if err != nil {
		return err
	}
	terms, buyer, err := out.buyer(c.buyer, pack.Book)
	if err != nil {
		return err
	}
	table, err := inBackground(ctx, func() (compare.Table, error) {
		return compare.Compare(c.entries(ctx, out, names, buyer, sys, pack, rates), pack, c.reckon.settings, out.progress(len(names))), nil
	})
	if err != nil {
		return err
	}
	table.Terms, table.Version, table.For, table.By = terms, buildVersion(), oneLine(c.preparedFor), oneLine(c.preparedBy)
	currency := table.ForSums(rates)
	if buyer != nil {
		currency = buyer.Currency
	}
	table.InCurrency(currency, rates)
	if err := table.Sort(c.sort); err != nil {
		return err
	}
	info, err := c.to.info(out, systemOf(table))
	if err != nil {
		return err
	}
	table.Day = printedDay(info.Date)
	info.Paper = info.Paper.Landscape()
	err = c.to.write(ctx, out, func() ([]byte, error) {
		switch c.to.format {
		case "csv":
			return table.CSV()
		case "json":
			return table.JSON()
		}
		return c.to.document(table.Document(), info)
	})
	if failed := table.Failed(); err == nil && failed > 0 {
		return misuse("", "compare: %d of %d boats could not be reckoned", failed, len(names))
	}
	return err
}

// systemOf is the unit system of the first boat that could be reckoned.
func systemOf(table compare.Table) quantity.System {
	for _, row := range table.Rows {
		if row.Error == "" {
			return row.System
		}
	}
	return quantity.Metric
}

// buyer reads the buyer's answers, and says for whom boats are compared. No
// name gives no buyer.
func (out environment) buyer(name string, book economics.Book) (terms compare.Terms, told *economics.Boat, err error) {
	if name == "" {
		return terms, nil, nil
	}
	boat, filled, err := out.told(name, book)
	if err != nil {
		return terms, nil, err
	}
	ground, err := filled.Ground()
	if err != nil {
		return terms, nil, misuse("'coldreckon grounds' lists them all.", "%s: %v", name, err)
	}
	return compare.TermsOf(filled, ground), &boat, nil
}

// entries reads one boat after the other, until all are read or ctx is
// cancelled, and puts all into one unit system: sys, or that of the first boat
// if it is empty. What is wrong with a file is told at once, fault by fault.
func (c *compareFlags) entries(ctx context.Context, out environment, names []string, buyer *economics.Boat, sys quantity.System, pack rules.Pack, rates compare.Rates) iter.Seq[compare.Entry] {
	return func(yield func(compare.Entry) bool) {
		for _, name := range names {
			if ctx.Err() != nil {
				return
			}
			boat, err := out.entry(name, buyer, pack.Book, rates)
			if err == nil {
				err = c.reckon.oneCurrency(name, boat.Currency, pack.Book)
			}
			if err != nil {
				complaint := complaintOf(err)
				complaint.print(out.stderr)
				err = errors.New(oneLine(strings.Join(complaint.lines, "; ")))
			} else if sys == "" {
				sys = boat.Units
			} else {
				boat.Units = sys // all answers are given by now, so that only their print changes
			}
			if !yield(compare.Entry{File: name, Boat: boat, Err: err}) {
				return
			}
		}
	}
}

// entry reads one boat and puts the buyer's answers in place of hers.
func (out environment) entry(name string, buyer *economics.Boat, book economics.Book, rates compare.Rates) (economics.Boat, error) {
	if buyer == nil {
		return out.boat(name, nil, book)
	}
	hers, _, err := out.told(name, book)
	if err != nil {
		return economics.Boat{}, err
	}
	return complete(name, compare.ForBuyer(hers, *buyer, rates), book)
}

// told reads the answers of a FILE, as told and filled in. Prices told without a
// currency are in the usual one.
func (out environment) told(name string, book economics.Book) (told, filled economics.Boat, err error) {
	file, err := out.answersIn(name)
	if err != nil {
		return told, filled, err
	}
	told, filled = file.Told(), file.Told()
	questions.Fill(&filled, book)
	told.Currency = filled.Currency
	return told, filled, nil
}

// progress tells a terminal how far a long comparison has come.
func (out environment) progress(all int) func(int, *compare.Row) {
	if !isTerminal(out.stderr) {
		return nil
	}
	return func(done int, row *compare.Row) {
		fmt.Fprintf(out.stderr, "%d of %d: %s\n", done, all, oneLine(row.File))
	}
}
