package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"coldreckon/rules"
)

// rulesCommand checks and shows rule files: the built-in ones, or one's own.
func rulesCommand(out environment) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "rules",
		Short: "Check or show the rules and prices",
		Long: `The rules say when an option does not work, which cautions are printed, and
what things cost. They are built in; a FILE of your own can be checked and
shown the same way, and prices of your own are used with --prices.`,
		Args: knownCommand,

		SuggestionsMinimumDistance: 2,

		RunE: func(cmd *cobra.Command, _ []string) error {
			return misuse(helpHint(cmd), "%s: nothing is given. Give check or show.", cmd.CommandPath())
		},
	}
	cmd.AddCommand(
		&cobra.Command{
			Use:   "check [FILE]",
			Short: "Read every rule and run its examples",
			Example: `  coldreckon rules check
  coldreckon rules check club-prices.yaml`,
			Args: arguments(0, 1, "at most one rule file"),
			RunE: func(_ *cobra.Command, args []string) error {
				pack, name, err := out.rulePack(args)
				if err != nil {
					return err
				}
				if faults := pack.RunExamples(); len(faults) > 0 {
					return faults
				}
				return out.result(fmt.Appendf(nil, "%s: %d criteria, %d cautions and %d prices read; %d examples come out as written\n",
					oneLine(name), len(pack.Book.Criteria), len(pack.Cautions), len(pack.Book.Prices), pack.Examples()))
			},
		},
		&cobra.Command{
			Use:   "show [FILE]",
			Short: "Print every rule with its reason and source",
			Example: `  coldreckon rules show
  coldreckon rules show club-prices.yaml`,
			Args: arguments(0, 1, "at most one rule file"),
			RunE: func(_ *cobra.Command, args []string) error {
				pack, _, err := out.rulePack(args)
				if err != nil {
					return err
				}
				return out.result([]byte(pack.Listing()))
			},
		},
	)
	return cmd
}

// rulePack reads the rule file named in args, or the built-in rules.
func (out environment) rulePack(args []string) (pack rules.Pack, name string, err error) {
	if len(args) == 0 {
		pack, err = rules.Load()
		return pack, "built-in rules", err
	}
	data, err := out.read(args[0], ruleFile)
	if err != nil {
		return rules.Pack{}, "", err
	}
	pack, err = rules.Read(args[0], data)
	return pack, args[0], err
}
