package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"
	"time"

	"github.com/spf13/cobra"
	"golang.org/x/term"
)

// environment is everything outside the program that a command may touch.
type environment struct {
	env    func(string) string
	stdin  io.Reader
	stdout io.Writer // results
	stderr io.Writer // messages and prompts

	stopped context.Context // done when the program is told to stop; nil: never
}

// Main runs the program and gives its exit code: 0 done, 1 failed, 2 bad usage
// or bad input, 130 interrupted. Arguments are those after the program's name;
// env looks up a variable of the environment.
func Main(args []string, env func(string) string, stdin io.Reader, stdout, stderr io.Writer) int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	defer stop()
	root := commands(environment{env, stdin, stdout, stderr, ctx})
	root.SetArgs(args)
	err := untilStopped(ctx, func() error { return root.ExecuteContext(ctx) })
	if err == nil {
		return exitDone
	}
	c := complaintOf(err)
	c.print(stderr)
	return c.code
}

// commands builds the tree of commands afresh.
func commands(out environment) *cobra.Command {
	var guided askFlags
	var version bool
	root := &cobra.Command{
		Use:   "coldreckon",
		Short: "Should this boat have refrigeration?",
		Long: `coldreckon asks about a small cruising boat and her ice box, reckons heat,
electricity and money over the years for four ways to eat aboard (ice, dry
stores, a small unit, a larger unit), and writes a report to print.

Without a command it asks its questions; "coldreckon boat.yaml" asks about the
boat of that file. FILE is an answers file, "-" for
standard input, or sample:NAME for a built-in example. Results go to standard
output, messages to standard error; nothing is sent over any network.

Exit codes: 0 done, 1 failed, 2 bad usage or a bad file, 130 interrupted.`,
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          commandOrFile,

		SuggestionsMinimumDistance: 2,
		RunE: func(cmd *cobra.Command, args []string) error {
			if version {
				return printVersion(out)
			}
			return guided.ask(cmd.Context(), out, append(args, defaultAnswers)[0])
		},
	}
	guided.addFlags(root)
	root.Flags().BoolVar(&version, "version", false, "print the build and the rule book it holds")
	root.SetIn(out.stdin)
	root.SetOut(out.stdout)
	root.SetErr(out.stderr)
	root.SetFlagErrorFunc(flagFault)
	root.AddCommand(askCommand(out), reportCommand(out), figuresCommand(out), compareCommand(out), unitsCommand(out), checkCommand(out), seasonlogCommand(out), learnCommand(out),
		boxtestCommand(out), ailingCommand(out), handoutCommand(out), sampleCommand(out), groundsCommand(out), rulesCommand(out), versionCommand(out),
		manCommand(out), questionsCommand(out))
	refuseUnknown(root)
	return root
}

// refuseUnknown has the commands that the library adds refuse what they do not know,
// as ours do.
func refuseUnknown(root *cobra.Command) {
	root.InitDefaultHelpCmd()
	root.InitDefaultCompletionCmd()
	for _, cmd := range root.Commands() {
		switch cmd.Name() {
		case "help":
			cmd.Args = func(_ *cobra.Command, args []string) error {
				_, rest, _ := root.Find(args)
				return knownCommand(root, rest)
			}
		case "completion":
			cmd.Args = knownCommand
			cmd.RunE = func(cmd *cobra.Command, _ []string) error {
				return misuse(helpHint(cmd), "%s: the shell is missing. Give bash, fish, powershell or zsh.", cmd.CommandPath())
			}
			for _, shell := range cmd.Commands() {
				shell.Args = arguments(0, 0, "nothing after it")
			}
		}
	}
}

// commandOrFile lets a name of a file follow the program's own name: its
// questions are then about that file.
func commandOrFile(cmd *cobra.Command, args []string) error {
	if len(args) == 1 && strings.ContainsAny(args[0], "./\\") {
		return nil
	}
	return knownCommand(cmd, args)
}

// knownCommand refuses whatever follows a command that has others under it:
// had it been one of them, it would have been run.
func knownCommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	hint := helpHint(cmd)
	if near := cmd.SuggestionsFor(args[0]); len(near) > 0 {
		hint = fmt.Sprintf("Did you mean '%s %s'?", cmd.CommandPath(), near[0])
	}
	return misuse(hint, "%s: there is no command %q", cmd.CommandPath(), args[0])
}

// arguments accepts between low and high arguments, and says what it takes
// when there are fewer or more.
func arguments(low, high int, takes string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) >= low && len(args) <= high {
			return nil
		}
		given := "nothing is given"
		switch n := len(args); {
		case n == 1:
			given = fmt.Sprintf("%q is given", args[0])
		case n > 1:
			given = fmt.Sprintf("%d arguments are given, the last %q", n, args[n-1])
		}
		return misuse(helpHint(cmd), "%s: %s. It takes %s.", cmd.CommandPath(), given, takes)
	}
}

// helpHint points to a command's help.
func helpHint(cmd *cobra.Command) string {
	return fmt.Sprintf("'%s --help' shows how it is used.", cmd.CommandPath())
}

// grace is how long a command may take to end by itself after a signal: what
// waits for a reader or a writer that never comes does not.
const grace = 2 * time.Second

// untilStopped runs work until it ends, or for no longer than grace after ctx is
// cancelled.
func untilStopped(ctx context.Context, work func() error) error {
	done := make(chan error, 1)
	go func() { done <- recovering(work) }()
	select {
	case err := <-done:
		return err
	case <-ctx.Done():
	}
	select {
	case err := <-done:
		return err
	case <-time.After(grace):
		return ctx.Err()
	}
}

// recovering runs work and turns a panic in it into an error: a fault of the
// program must not reach its user as a page of Go.
func recovering(work func() error) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = failure("Please report it, with the answers file.", "found a fault in the program itself: %v", p)
		}
	}()
	return work()
}

// inBackground runs work in a goroutine of its own, so that a signal need not wait
// for it: when ctx is cancelled the work is left behind, its result unused.
func inBackground[T any](ctx context.Context, work func() (T, error)) (T, error) {
	type outcome struct {
		value T
		err   error
	}
	done := make(chan outcome, 1)
	go func() {
		var value T
		err := recovering(func() (err error) {
			value, err = work()
			return err
		})
		done <- outcome{value, err}
	}()
	select {
	case o := <-done:
		if o.err != nil || ctx.Err() == nil {
			return o.value, o.err
		}
	case <-ctx.Done():
	}
	var none T
	return none, ctx.Err()
}

// result sends the whole of a command's result to standard output.
func (out environment) result(data []byte) error {
	if _, err := out.stdout.Write(data); err != nil {
		return failure("", "standard output: it takes no more (%v) of %d bytes", cause(err), len(data))
	}
	return nil
}

// isTerminal reports whether what is written to w is shown on a screen.
func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}
