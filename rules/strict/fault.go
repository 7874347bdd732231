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

	Wrong   string // what is wrong with it, a sentence without its stop
	Instead string // what to do about it, a second one, or "" when the first says it
	Hint    string // a way out in words, or ""
}

// Found is the fault of a data file: what stands there and what belongs there,
// both in words.
func Found(found, expected string) Fault {
	return Fault{Wrong: "found " + found + ", expected " + expected}
}

// Error gives the fault as one line: place, key, what is wrong, what to do. A
// sentence alone goes without its stop, as errors do. The hint is left to the caller, who prints it on a line of its own.
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
	s.WriteString(f.Wrong)
	if f.Instead != "" {
		s.WriteString(". " + f.Instead + ".")
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
		f = append(f[:MostFaults:MostFaults], Fault{File: f[0].File, Line: f[MostFaults].Line, Wrong: "there are more faults than can be told at once", Instead: "Mend those above first"})
	}
	return f
}
