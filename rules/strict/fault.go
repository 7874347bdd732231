package strict

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Fault is one thing wrong with what somebody wrote, with its place when it was
// read from a file.
type Fault struct {
	File   string // "" when not from a file
	Line   int    // from 1; 0 when not known
	Column int    // from 1; 0 when not known
	Key    string // what it is about, or "" for the file as a whole

	Found    string // in words, to follow "found"
	Expected string // in words, to follow "expected"; "" when nothing else could stand there
	Hint     string // a way out in words, or ""
}

// Error gives the fault as one line: place, key, what was found, what is
// expected. The hint is left to the caller, who prints it on a line of its own.
func (f Fault) Error() string {
	var s strings.Builder
	if f.File != "" {
		s.WriteString(f.File + ":")
		if f.Line > 0 {
			fmt.Fprintf(&s, "%d:", f.Line)
			if f.Column > 0 {
				fmt.Fprintf(&s, "%d:", f.Column)
			}
		}
		s.WriteString(" ")
	}
	if f.Key != "" {
		s.WriteString(f.Key + ": ")
	}
	s.WriteString("found " + f.Found)
	if f.Expected != "" {
		s.WriteString(", expected " + f.Expected)
	}
	return s.String()
}

// Faults are all that was found wrong with one file.
type Faults []Fault

// Error gives one line for each fault.
func (f Faults) Error() string {
	lines := make([]string, len(f))
	for i, fault := range f {
		lines[i] = fault.Error()
	}
	return strings.Join(lines, "\n")
}

// Hint gives the first hint there is, or "".
func (f Faults) Hint() string {
	for _, fault := range f {
		if fault.Hint != "" {
			return fault.Hint
		}
	}
	return ""
}

// OrNil gives an error only when there is a fault, so that an empty list never
// becomes an error that is not nil.
func (f Faults) OrNil() error {
	if len(f) == 0 {
		return nil
	}
	return f
}

// inOrder sorts by place in the file and keeps as many as a person can use, with
// a word of the rest.
func (f Faults) inOrder() Faults {
	slices.SortStableFunc(f, func(a, b Fault) int { return cmp.Or(a.Line-b.Line, a.Column-b.Column) })
	if len(f) > MostFaults {
		f = append(f[:MostFaults:MostFaults], Fault{File: f[0].File, Line: f[MostFaults].Line, Found: "more than can be told at once", Expected: "those above mended first"})
	}
	return f
}
