package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"

	"coldreckon/rules/strict"
	"coldreckon/wizard/questions"
)

// The exit codes. More may be added; these keep their meaning.
const (
	exitDone        = 0
	exitFailed      = 1   // the machine or its disk did not play along
	exitBadInput    = 2   // bad usage, or a bad file
	exitInterrupted = 130 // stopped by a signal or by the person asked
)

// A complaint is an error ready to be printed: a line for each fault, at most
// one hint, and the exit code.
type complaint struct {
	code  int
	lines []string
	hint  string
}

func (c complaint) Error() string { return strings.Join(c.lines, "\n") }

// misuse is a complaint about arguments or input.
func misuse(hint, format string, args ...any) error {
	return complaint{exitBadInput, []string{fmt.Sprintf(format, args...)}, hint}
}

// noSuch is a misuse: a value that is none of those there are.
func noSuch(of, given, choices string) error {
	return misuse("", "%s: there is no %q. Give %s.", of, given, choices)
}

// failure is a complaint about the world around the program.
func failure(hint, format string, args ...any) error {
	return complaint{exitFailed, []string{fmt.Sprintf(format, args...)}, hint}
}

// complaintOf gives any error its lines, hint and code.
func complaintOf(err error) complaint {
	var c complaint
	var faults strict.Faults
	var fault strict.Fault
	switch {
	case errors.As(err, &c):
		return c
	case errors.As(err, &fault):
		return complaintOf(strict.Faults{fault})
	case errors.As(err, &faults):
		return complaint{exitBadInput, strings.Split(faults.Error(), "\n"), faults.Hint()}
	case errors.Is(err, context.Canceled):
		return complaint{exitInterrupted, []string{"interrupted; nothing was written"}, ""}
	}
	return complaint{exitFailed, []string{err.Error()}, ""}
}

// twoSentences finds the end of a first sentence: a fault of two has its stop,
// which an error of Go's lacks.
var twoSentences = regexp.MustCompile(`[^.\s]\. [A-Z]`)

// print writes the complaint to standard error. There is nobody left to tell
// when that fails.
func (c complaint) print(w io.Writer) {
	for _, line := range c.lines {
		if twoSentences.MatchString(line) && !strings.HasSuffix(line, ".") {
			line += "."
		}
		fmt.Fprintln(w, "error: "+oneLine(line))
	}
	if c.hint != "" {
		fmt.Fprintln(w, "hint: "+oneLine(c.hint))
	}
}

// longestLine and shownEnd bound what is shown of a fault that repeats a long
// name or value, in bytes: what to give stands at its end.
const longestLine, shownEnd = 1000, 300

// oneLine keeps control characters in names and files from reaching the
// terminal, and a fault on its one line, of bounded length.
func oneLine(s string) string {
	if len(s) > longestLine {
		s = strings.ToValidUTF8(s[:longestLine-shownEnd]+" … "+s[len(s)-shownEnd:], "")
	}
	return strings.Map(unseen(0), strings.TrimSpace(s))
}

// unseen turns characters that steer what is seen into blanks, all but the one
// excepted.
func unseen(except rune) func(rune) rune {
	return func(r rune) rune {
		if r != except && questions.Steers(r) {
			return ' '
		}
		return r
	}
}
