package wizard

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"

	"github.com/AlecAivazis/survey/v2"
	"github.com/AlecAivazis/survey/v2/core"
	"github.com/AlecAivazis/survey/v2/terminal"
	"golang.org/x/term"
)

// This file is the fence round package survey, which is no longer looked
// after. What it is known to get wrong is caught here:
//
//   - it eats what comes through a pipe, and hangs on a terminal that does not
//     report its cursor: it is used on ordinary terminals alone (NewPrompter);
//   - it writes to standard output unless told otherwise;
//   - an answer that does not fit a number's type ends it: only texts are
//     asked for, and checked by a validator, which asks again;
//   - its lists panic when the input ends while nothing matches, and keep the
//     highlight where it was when letters change what stands there: menu is a
//     list that does not;
//   - it reports the interrupt key as an error of its own, knows no way back,
//     ignores a cancelled context, and leaves the terminal raw when abandoned;
//   - it shows its help over what it takes to be the line of the prompt, which is
//     another once the window was resized: help is given and the question put anew;
//   - its long lines break badly: what does not fit is said before the prompt;
//   - its icons, colours and error sentence belong to the whole program, and
//     are set once.

// Terminal tells NewPrompter about the world.
type Terminal struct {
	Getenv func(string) string // reads the environment, as os.Getenv does
	Plain  bool                // ask in plain lines, through a pipe too
}

type withDescriptor interface{ Fd() uintptr }

// NewPrompter gives the prompter that suits in and out, the streams that
// answers come from and questions go to (standard error, so that results stay
// apart). Where either is no terminal it gives ErrNoTerminal, having read
// nothing, unless a plain prompter is asked for. Simple terminals (TERM=dumb),
// and people who set ACCESSIBLE, are asked in plain lines.
func NewPrompter(in io.Reader, out io.Writer, t Terminal) (Prompter, error) {
	source, inOK := in.(terminal.FileReader)
	sink, outOK := out.(terminal.FileWriter)
	wide := func() int { return widthOf(out) }
	switch {
	case t.Plain:
		return NewPlain(in, out, wide), nil
	case !inOK || !outOK || !isTerminal(source) || !isTerminal(sink):
		return nil, ErrNoTerminal
	case t.Getenv("TERM") == "dumb" || t.Getenv("ACCESSIBLE") != "":
		return NewPlain(in, out, wide), nil
	}
	setOnce(t.Getenv("NO_COLOR") != "")
	return &lists{source, sink, wide}, nil
}

func isTerminal(f withDescriptor) bool { return term.IsTerminal(int(f.Fd())) }

// widthOf gives the columns of a terminal, 80 where out is none.
func widthOf(out io.Writer) int {
	if f, ok := out.(withDescriptor); ok {
		if w, _, err := term.GetSize(int(f.Fd())); err == nil && w > 0 {
			return w
		}
	}
	return 80
}

var once sync.Once

func setOnce(noColour bool) {
	once.Do(func() {
		core.DisableColor = noColour
		survey.InputQuestionTemplate = strings.Replace(survey.InputQuestionTemplate, "{{ print .Config.HelpInput }} for help", asksHelp+" explains", 1)
		survey.ErrorTemplate = `{{color .Icon.Format }}{{ .Error.Error }}{{color "reset"}}` + "\n"
	})
}

// lists asks with lines to edit and lists to move in.
type lists struct {
	in    terminal.FileReader
	out   terminal.FileWriter
	width func() int
}

func (l *lists) forget() { dropTyped(l.in.Fd()) }

func (l *lists) Say(text string) { fmt.Fprint(l.out, "\n"+wrap(text, l.width())+"\n") }

// The columns that a prompt needs beside the question: for the icon, the hint
// about help and a short answer.
const (
	roomForLine = 36
	roomForList = 44
)

// head says what comes before the prompt, and gives the prompt: the question
// itself where it fits on the line.
func (l *lists) head(q Question, room int) string {
	if q.Why != "" {
		l.Say(q.Why)
	}
	fmt.Fprintln(l.out)
	message := q.Text
	if q.Enter != "" {
		message += " (Enter " + q.Enter + ")"
	}
	if columns(message)+room <= l.width() {
		return message
	}
	text := q.Text
	if q.Enter != "" {
		text += "\nEnter " + q.Enter + "."
	}
	fmt.Fprintln(l.out, wrap(text, l.width()))
	return "Answer:"
}

func (l *lists) Line(ctx context.Context, q Question) (string, error) {
	check := func(answer any) error {
		text, err := clean([]byte(answer.(string)))
		if err != nil {
			return wrapped{err, l.width()}
		}
		if text == "" || text == asksHelp || goesBack(text) || q.Check == nil {
			return nil
		}
		if err := q.Check(text); err != nil {
			return wrapped{err, l.width()}
		}
		return nil
	}
	for {
		// The help is only what has the library speak of the key.
		prompt := &survey.Input{Message: l.head(q, roomForLine), Help: asksHelp}
		var answer string
		if err := l.ask(ctx, prompt, &answer, survey.WithValidator(check), survey.WithHelpInput(noKey)); err != nil {
			return "", err
		}
		answer, err := clean([]byte(answer))
		switch {
		case err == nil && answer == asksHelp:
			l.explain(&q)
			continue
		case err == nil && goesBack(answer):
			err = ErrBack
		}
		return answer, err
	}
}

// explain gives the help of a question that is then put again, whole: what
// stands above may be anywhere once the window was resized.
func (l *lists) explain(q *Question) {
	l.Say(q.Help)
	q.Why = ""
}

// wrapped is an error whose sentence is broken to a width.
type wrapped struct {
	error
	width int
}

func (w wrapped) Error() string { return wrap(w.error.Error(), w.width) }

// asksHelp is the answer that asks for help; noKey stands in its place in the
// library, and is on no keyboard.
const (
	asksHelp = "?"
	noKey    = '\x00'
)

// backEntry is the line of a list that goes back.
const backEntry = "< back"

func (l *lists) Choose(ctx context.Context, q Question, choices []Choice, enter int) (int, error) {
	// A list to search starts with what Enter takes, so that it stays in sight.
	var order []int
	if q.Search {
		order = append(order, enter)
	}
	for i := range choices {
		if !q.Search || i != enter {
			order = append(order, i)
		}
	}
	shown := pick(choices, order)
	for {
		m := &menu{
			message: l.head(q, roomForList), enter: slices.Index(order, enter), width: l.width() - 4,
			find: func(typed string) []int {
				if strings.HasPrefix(typed, "<") {
					return []int{len(shown)}
				}
				return matches(shown, typed)
			},
		}
		for _, c := range shown {
			line := c.shown()
			if c.Heading != "" {
				line += " - " + c.Heading
			}
			m.entries = append(m.entries, line)
		}
		m.entries = append(m.entries, backEntry)
		var place int
		switch err := l.ask(ctx, m, &place); {
		case err != nil:
			return 0, err
		case place == explains:
			l.explain(&q)
		case place == len(shown):
			return 0, ErrBack
		default:
			return order[place], nil
		}
	}
}

// ask runs one prompt of package survey, to its end or to that of the context.
func (l *lists) ask(ctx context.Context, prompt survey.Prompt, answer any, opts ...survey.AskOpt) error {
	if ctx.Err() != nil {
		return ErrCancelled
	}
	opts = append(opts, survey.WithStdio(l.in, l.out, l.out), survey.WithIcons(func(icons *survey.IconSet) {
		icons.Question.Text, icons.Help.Text = "-", "?"
	}))
	before, stateErr := term.GetState(int(l.in.Fd()))
	done := make(chan error, 1)
	go func() {
		defer func() { // what the library fails on must not end the program
			if fault := recover(); fault != nil {
				done <- fmt.Errorf("found a fault in a prompt: %v", fault)
			}
		}()
		done <- survey.AskOne(prompt, answer, opts...)
	}()
	var err error
	select {
	case err = <-done:
	case <-ctx.Done():
		err = terminal.InterruptErr
	}
	switch {
	case err == nil:
		return nil
	case errors.Is(err, terminal.InterruptErr):
		err = ErrCancelled
	case errors.Is(err, io.EOF):
		err = ErrInputEnded
	default:
		err = fmt.Errorf("asking on the terminal: %w", err)
	}
	if stateErr == nil {
		err = errors.Join(err, term.Restore(int(l.in.Fd()), before))
	}
	fmt.Fprint(l.out, "\x1b[?25h\n") // the cursor, which lists hide
	return err
}
