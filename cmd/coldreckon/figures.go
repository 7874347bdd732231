package main

import (
	"github.com/spf13/cobra"

	"coldreckon/report/figures"
)

// figuresCommand prints what was reckoned, as tables or as JSON.
func figuresCommand(out environment) *cobra.Command {
	var reckon reckonFlags
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "figures FILE",
		Short: "Print the figures of a boat",
		Long: `Prints the answer, the options, the months and the box as tables; with --json
every figure there is, with its unit in its name.

--set answers one question differently for this once, by its key in the
answers file.`,
		Example: `  coldreckon figures sample:dunlin
  coldreckon figures sample:dunlin --set ice.price="0.90 /lb" --set food.target="45 F"
  coldreckon figures sample:dunlin --json`,
		Args: arguments(1, 1, "one FILE, - or sample:NAME"),
		RunE: func(cmd *cobra.Command, args []string) error {
			found, err := reckon.reckon(cmd.Context(), out, args[0])
			if err != nil {
				return err
			}
			if asJSON {
				data, err := figuresJSON(found.figuresInput())
				if err != nil {
					return err
				}
				return out.result(data)
			}
			return out.result([]byte(figures.Plain(found.figuresInput())))
		},
	}
	reckon.addFlags(cmd)
	cmd.Flags().BoolVar(&asJSON, "json", false, "print every figure as JSON")
	return cmd
}

// figuresInput is what figures are printed from.
func (f reckonedBoat) figuresInput() figures.Input {
	return figures.Input{
		Reckoning: f.reckoning, Book: f.pack.Book, Findings: f.cautions, Guidance: f.pack.Guidance, Version: buildVersion(),
	}
}

// figuresJSON is every figure.
func figuresJSON(in figures.Input) ([]byte, error) {
	all, err := figures.Of(in)
	if err != nil {
		return nil, err
	}
	return all.Text()
}
