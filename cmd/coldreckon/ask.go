package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"github.com/spf13/cobra"

	"coldreckon/economics"
	"coldreckon/report"
	"coldreckon/report/words"
	"coldreckon/rules"
	"coldreckon/rules/strict"
	"coldreckon/wizard"
	"coldreckon/wizard/answers"
)

// defaultAnswers is the FILE that questions without a FILE are about.
const defaultAnswers = "boat.yaml"

// askFlags are the flags of the guided questions.
type askFlags struct {
	all, plain bool
	reckon     reckonFlags
	to         printer
}

// askCommand asks about a boat, keeps the answers and writes the report.
func askCommand(out environment) *cobra.Command {
	var a askFlags
	cmd := &cobra.Command{
		Use:   "ask [FILE]",
		Short: "Ask about a boat, then write FILE and the report",
		Long: `Asks about a boat, saves each answer at once in FILE (boat.yaml when none is
named), and writes the report beside it. Where FILE exists the questions go on
from what it holds; its comments stay.

Questions need a terminal. With --plain they are asked in plain lines, which
read well aloud and can be answered through a pipe.`,
		Example: `  coldreckon ask
  coldreckon ask dunlin.yaml -o dunlin.pdf`,
		Args: arguments(0, 1, "at most one FILE"),
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.ask(cmd.Context(), out, append(args, defaultAnswers)[0])
		},
	}
	a.addFlags(cmd)
	return cmd
}

// addFlags gives a command the flags of the questions.
func (a *askFlags) addFlags(cmd *cobra.Command) {
	cmd.Flags().BoolVar(&a.all, "all", false, "ask every question, in order")
	cmd.Flags().BoolVar(&a.plain, "plain", false, "ask in plain lines, through a pipe too")
	a.reckon.addPriceFlags(cmd)
	a.to.addFlags(cmd, "pdf")
}

// firstQuestion is longer than the first question takes to come up.
const firstQuestion = 50 * time.Millisecond

// ask holds the conversation about FILE and writes the report.
func (a *askFlags) ask(ctx context.Context, out environment, name string) error {
	if name == "-" || strings.HasPrefix(name, samplePrefix) {
		return misuse("", "ask: the answers cannot be kept in %q. Give the name of a file.", name)
	}
	told := a.to.file != ""
	if !told {
		a.to.file = strings.TrimSuffix(name, filepath.Ext(name)) + ".pdf"
	}
	if name == "" {
		return misuse("", "ask: the name of the file to keep the answers in is empty")
	}
	a.to.force = a.to.force || !told // mayReplace asks for leave
	if err := a.to.settle(out, name, a.reckon.prices); err != nil {
		return err
	}
	if err := a.reckon.check(); err != nil {
		return err
	}
	reading := sync.OnceValues(func() (rules.Pack, error) { return out.pack(a.reckon.prices) })
	// What is built in is read once the first question stands, while it is answered.
	ahead := time.AfterFunc(firstQuestion, func() {
		defer func() { _ = recover() }() // a fault comes out where the rules are used
		_, _ = reading()
	})
	defer ahead.Stop()
	file, before, err := out.answersSoFar(name)
	if err != nil {
		return err
	}
	if a.reckon.prices != "" { // which may be wrong
		pack, err := reading()
		if err != nil {
			return err
		}
		if err := a.reckon.oneCurrency(name, file.Told().Currency, pack.Book); err != nil {
			return err
		}
	}
	prompter, err := wizard.NewPrompter(out.stdin, out.stderr, wizard.Terminal{Getenv: out.env, Plain: a.plain})
	if err != nil {
		return misuse("'coldreckon sample dunlin > boat.yaml' gives a file to fill in for 'coldreckon report boat.yaml -o report.pdf'; --plain asks through a pipe.",
			"standard input: %v", err)
	}
	if err := a.converse(ctx, savedFile{name, before}, file, reading, prompter); err != nil {
		return err
	}
	pack, err := reading()
	if err != nil {
		return err
	}
	if !told {
		replace, err := mayReplace(ctx, prompter, a.to.file)
		if err != nil || !replace {
			return goOn(err, name)
		}
	}
	boat, faults := file.Boat(pack.Book)
	if len(faults) > 0 {
		return strict.Faults(faults)
	}
	found, err := a.reckon.work(ctx, name, boat, pack)
	if err != nil {
		return err
	}
	if err := writeReport(ctx, out, found, &a.to, report.Input{}); err != nil {
		return err
	}
	if !a.to.toStdout() {
		prompter.Say(nextSteps(found, oneLine(a.to.file), oneLine(name)))
	}
	return nil
}

// nextSteps tells what to do now, in three lines.
func nextSteps(found reckonedBoat, report, answers string) string {
	measure := "No single measurement would tell much more."
	if first := words.Of(found.reckoning, found.pack.Book).MeasureFirst(); len(first) > 0 {
		measure = fmt.Sprintf("What would tell most: %s. %s", first[0].What, first[0].How)
	}
	return fmt.Sprintf("The report is in %s, your answers in %s. Read its first page first.\n%s\nTo change an answer: coldreckon ask %s.", report, answers, measure, answers)
}

// savedFile is a file with what it was last seen to hold, nil where there was none.
type savedFile struct {
	name string
	seen []byte
}

// save puts new content into the file, unless somebody else has been at it or
// its owner has locked it.
func (k *savedFile) save(data []byte) error {
	err := save(k.name, data, writable, func(target string) error {
		now, err := os.ReadFile(target)
		if err == nil && !bytes.Equal(now, k.seen) {
			return failure("", "%s: somebody else changed it since it was read, so your last answer is not saved in it", k.name)
		}
		return nil
	})
	if err == nil {
		k.seen = data
	}
	return err
}

// converse asks until the file is complete. Every answer is on the disk before
// the next question.
func (a *askFlags) converse(ctx context.Context, at savedFile, file *answers.File, reading func() (rules.Pack, error), prompter wizard.Prompter) error {
	book := func() economics.Book {
		pack, _ := reading() // an error comes out where a boat is reckoned
		return pack.Book
	}
	name := at.name
	return goOn(wizard.Run(ctx, wizard.Options{
		Prompter: prompter, File: file, Name: oneLine(name), Book: book, All: a.all, Futures: a.reckon.settings.Futures,
		Reckon: func(boat economics.Boat, futures int) (*economics.Reckoning, error) {
			ground, err := boat.Ground()
			if err != nil {
				return nil, err
			}
			return inBackground(ctx, func() (*economics.Reckoning, error) {
				pack, err := reading()
				if err != nil {
					return nil, err
				}
				set := a.reckon.settings
				set.Futures = min(futures, set.Futures) // between questions, too
				return economics.Reckon(boat, pack.Book, ground, set)
			})
		},
		Headline: func(r *economics.Reckoning) string { return words.Of(r, book()).Answer() },
		Save: func(f *answers.File) error {
			var text bytes.Buffer
			if err := f.Write(&text); err != nil {
				return err
			}
			return at.save(text.Bytes())
		},
	}), name)
}

// goOn tells somebody who broke off the questions how to take them up again.
func goOn(err error, name string) error {
	hint := fmt.Sprintf("'coldreckon ask %s' goes on where this stopped.", name)
	switch {
	case errors.Is(err, wizard.ErrCancelled), errors.Is(err, context.Canceled):
		return complaint{exitInterrupted, []string{wizard.ErrCancelled.Error()}, hint}
	case errors.Is(err, wizard.ErrInputEnded), errors.Is(err, wizard.ErrNoEnd):
		return misuse(hint, "standard input: %v", err)
	}
	return err
}

// mayReplace asks before a report that is already there is written over.
func mayReplace(ctx context.Context, prompter wizard.Prompter, name string) (bool, error) {
	if _, err := os.Stat(name); errors.Is(err, fs.ErrNotExist) {
		return true, nil
	}
	chosen, err := prompter.Choose(ctx, wizard.Question{
		Text: fmt.Sprintf("%s is there already. Write the new report over it?", oneLine(name)),
		Help: "Your answers are saved in any case; 'coldreckon report' writes a report under another name.",
	}, []wizard.Choice{{Label: "Yes, replace it", Also: []string{"yes", "y"}}, {Label: "No, keep it", Also: []string{"no", "n"}}}, 0)
	return chosen == 0, err
}

// answersSoFar reads the answers so far and the text they stand in; a name that
// stands for nothing yet gives an empty file.
func (out environment) answersSoFar(name string) (*answers.File, []byte, error) {
	if _, err := os.Stat(name); errors.Is(err, fs.ErrNotExist) {
		file, err := answers.Fresh(economics.Boat{})
		return file, nil, err
	}
	text, err := out.read(name, answersFile)
	if err != nil {
		return nil, nil, err
	}
	file, err := out.understood(name, text)
	return file, text, err
}
