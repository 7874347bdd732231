package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"coldreckon/economics"
	"coldreckon/report"
	"coldreckon/rules"
	"coldreckon/rules/strict"
	"coldreckon/wizard/answers"
	"coldreckon/wizard/questions"
)

// samplePrefix marks the name of a built-in boat where a FILE may stand.
const samplePrefix = "sample:"

// reckonFlags are the flags that figures and report share: what is reckoned
// besides the answers file.
type reckonFlags struct {
	sets     []string
	prices   string
	settings economics.Settings
}

// addFlags gives a command that takes a FILE the shared flags.
func (r *reckonFlags) addFlags(cmd *cobra.Command) {
	cmd.Flags().StringArrayVar(&r.sets, "set", nil, "answer one question differently, as `KEY=VALUE`; may be repeated")
	cmd.RegisterFlagCompletionFunc("set", completeKeys)
	cmd.ValidArgsFunction = completeFile
	r.addPriceFlags(cmd)
}

// addPriceFlags gives a command those of them that concern no answers.
func (r *reckonFlags) addPriceFlags(cmd *cobra.Command) {
	r.settings = economics.DefaultSettings
	flags := cmd.Flags()
	flags.Var((*fileName)(&r.prices), "prices", "lay the prices of a rule `FILE` over the built-in ones")
	flags.IntVar(&r.settings.Futures, "futures", r.settings.Futures, "reckon `NUMBER` futures: ways that prices, weather and habits may turn out; under 200 is a quick look")
	flags.Uint64Var(&r.settings.Seed, "seed", r.settings.Seed, "draw other futures for another `NUMBER`")
}

// forBoat completes a command that reckons the boat of one FILE and prints what
// print makes of it, in one of the formats.
func forBoat(out environment, cmd *cobra.Command, print func(context.Context, reckonedBoat, *printer) error, formats ...string) *cobra.Command {
	var reckon reckonFlags
	var to printer
	cmd.Args = arguments(1, 1, "one FILE, - or sample:NAME")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if err := to.settle(out, args[0], reckon.prices); err != nil {
			return err
		}
		found, err := reckon.reckon(cmd.Context(), out, args[0])
		if err != nil {
			return err
		}
		return print(cmd.Context(), found, &to)
	}
	reckon.addFlags(cmd)
	to.addFlags(cmd, formats...)
	to.addLargeFlag(cmd)
	return cmd
}

// A reckonedBoat is one boat reckoned, with the rules it was judged by and the
// cautions that fired.
type reckonedBoat struct {
	reckoning *economics.Reckoning
	pack      rules.Pack
	cautions  []rules.Finding
}

// reckon reads FILE and works it out.
func (r *reckonFlags) reckon(ctx context.Context, out environment, file string) (reckonedBoat, error) {
	if err := r.check(); err != nil {
		return reckonedBoat{}, err
	}
	if err := once("-", file, r.prices); err != nil {
		return reckonedBoat{}, err
	}
	pack, err := out.pack(r.prices)
	if err != nil {
		return reckonedBoat{}, err
	}
	boat, err := inBackground(ctx, func() (economics.Boat, error) { return out.boat(file, r.sets, pack.Book) })
	if err != nil {
		return reckonedBoat{}, err
	}
	return r.work(ctx, file, boat, pack)
}

// work works out the boat of a FILE, every question answered or assumed.
func (r *reckonFlags) work(ctx context.Context, file string, boat economics.Boat, pack rules.Pack) (reckonedBoat, error) {
	if err := r.oneCurrency(file, boat.Currency, pack.Book); err != nil {
		return reckonedBoat{}, err
	}
	ground, err := boat.Ground()
	if err != nil {
		return reckonedBoat{}, misuse("'coldreckon grounds' lists them all.", "%s: %v", file, err)
	}
	reckoning, err := inBackground(ctx, func() (*economics.Reckoning, error) {
		return economics.Reckon(boat, pack.Book, ground, r.settings)
	})
	if err != nil {
		return reckonedBoat{}, err
	}
	cautions, err := report.Findings(reckoning, pack)
	return reckonedBoat{reckoning, pack, cautions}, err
}

// The futures that may be asked for: fewer say nothing, more take minutes.
const (
	leastFutures = 20
	mostFutures  = 1_000_000
)

// check looks at the flags before anything is read.
func (r *reckonFlags) check() error {
	if n := r.settings.Futures; n < leastFutures || n > mostFutures {
		return misuse("", "--futures: there cannot be %d. Give %d to %d.", n, leastFutures, mostFutures)
	}
	return nil
}

// oneCurrency refuses a boat in one currency, "" for one not told yet, and a
// price file that was changed to another: nothing converts one into the other.
func (r *reckonFlags) oneCurrency(file, currency string, book economics.Book) error {
	if r.prices == "" || currency == "" || book.Currency == currency {
		return nil
	}
	usual, err := rules.Load()
	if err != nil || book.Currency == usual.Book.Currency {
		return err
	}
	return misuse("Set currency in the one or the other.", "%s: its amounts are in %s, but the prices of %[4]s are in %[3]s", file, currency, book.Currency, r.prices)
}

// once refuses a name that can be read only once and is given more often.
func once(name string, given ...string) error {
	if first := slices.Index(given, name); first >= 0 && slices.Contains(given[first+1:], name) {
		return misuse("Name a file for one of them.", "standard input: it is named more than once")
	}
	return nil
}

// pack is the built-in rules, with a file's prices laid over them.
func (out environment) pack(prices string) (rules.Pack, error) {
	pack, err := rules.Load()
	if err != nil || prices == "" {
		return pack, err
	}
	data, err := out.read(prices, ruleFile)
	if err != nil {
		return rules.Pack{}, err
	}
	return pack.WithPrices(prices, data)
}

// boat reads the boat that FILE stands for, with single answers laid over it,
// every question answered or assumed.
func (out environment) boat(name string, sets []string, book economics.Book) (economics.Boat, error) {
	file, err := out.answersIn(name)
	if err != nil {
		return economics.Boat{}, err
	}
	if len(sets) == 0 {
		boat, faults := file.Boat(book)
		return boat, strict.Faults(faults).OrNil()
	}
	boat := file.Told()
	var faults []answers.Fault
	for _, set := range sets {
		if err := setOne(&boat, set); err != nil {
			faults = append(faults, *err)
		}
	}
	if len(faults) > 0 {
		return economics.Boat{}, strict.Faults(faults).OrNil()
	}
	boat, err = complete(name, boat, book)
	return boat, blameSets(err, sets)
}

// blameSets says of answers that do not go together that --set gave one of them.
func blameSets(err error, sets []string) error {
	var faults strict.Faults
	errors.As(err, &faults)
	for i, fault := range faults {
		for _, set := range sets {
			if key, _, _ := strings.Cut(set, "="); strings.HasPrefix(fault.Key, strings.TrimSpace(key)) {
				faults[i].File = "--set"
			}
		}
	}
	return err
}

// complete checks the answers of a boat together and gives the defaults to
// the rest.
func complete(name string, boat economics.Boat, book economics.Book) (economics.Boat, error) {
	faults := strict.Faults(questions.Check(boat))
	for i := range faults {
		faults[i].File = name
	}
	if len(faults) > 0 {
		return economics.Boat{}, faults
	}
	questions.Fill(&boat, book)
	return boat, nil
}

// setOne puts one KEY=VALUE into a boat that has not been filled.
func setOne(boat *economics.Boat, set string) *answers.Fault {
	key, value, ok := strings.Cut(set, "=")
	if !ok {
		return &answers.Fault{File: "--set", Wrong: fmt.Sprintf("%q has no = in it", set), Instead: "Give KEY=VALUE, such as food.target=\"4 °C\""}
	}
	err := questions.Set(boat, strings.TrimSpace(key), strings.TrimSpace(value))
	var fault questions.Fault
	switch {
	case err == nil:
		return nil
	case !errors.As(err, &fault):
		fault.Key, fault.Wrong = key, err.Error()
	}
	fault.File, fault.Line, fault.Column = "--set", 0, 0
	return &fault
}

// answersIn reads the answers of a FILE.
func (out environment) answersIn(name string) (*answers.File, error) {
	text, err := out.answersText(name)
	if err != nil {
		return nil, err
	}
	return out.understood(name, text)
}

// understood reads the text of an answers file, and says what was taken otherwise
// than it stood.
func (out environment) understood(name string, text []byte) (*answers.File, error) {
	file, faults := answers.Read(name, bytes.NewReader(text))
	if file != nil {
		for _, note := range file.Notes() {
			fmt.Fprintln(out.stderr, note)
		}
	}
	return file, strict.Faults(faults).OrNil()
}

// answersText gives the text of a FILE.
func (out environment) answersText(name string) ([]byte, error) {
	if sample, isSample := strings.CutPrefix(name, samplePrefix); isSample {
		s, err := sampleNamed(sample)
		return []byte(s.Text), err
	}
	return out.read(name, answersFile)
}

// completeFile offers the built-in boats besides the files of the folder.
func completeFile(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	var names []string
	for _, s := range answers.Samples() {
		names = append(names, samplePrefix+s.Name+"\t"+s.Summary)
	}
	return names, cobra.ShellCompDirectiveDefault
}

// completeTwoFiles offers the files of the folder, twice.
func completeTwoFiles(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) < 2 {
		return nil, cobra.ShellCompDirectiveDefault
	}
	return nil, cobra.ShellCompDirectiveNoFileComp
}

// completeKeys offers the keys of the answers file.
func completeKeys(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	var keys []string
	for _, row := range questions.All() {
		keys = append(keys, row.Key+"=\t"+row.Label)
	}
	return keys, cobra.ShellCompDirectiveNoSpace | cobra.ShellCompDirectiveNoFileComp
}

// stands reports whether an input, "-" for standard input, stands for the file
// of a name, be it there or not.
func (out environment) stands(input, name string) bool {
	var there os.FileInfo
	var err error
	if f, isFile := out.stdin.(*os.File); input == "-" && isFile {
		there, err = f.Stat()
	} else {
		there, err = os.Stat(input)
	}
	if err != nil {
		return input != "" && filepath.Clean(input) == filepath.Clean(name)
	}
	file, err := os.Stat(name)
	return err == nil && os.SameFile(there, file)
}
