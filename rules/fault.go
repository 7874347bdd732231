package rules

import (
	"fmt"
	"strings"
)

// Fault is one mistake in a rule file, with its place.
type Fault struct {
	File         string
	Line, Column int    // from 1; 0 when the whole file is meant
	Rule         string // id of the rule, "" outside any
	Key          string // "" when the record itself is meant
	Found, Want  string // in words, each to follow "found" and "expected"
}

// Error gives "file:line:column: rule: key: found X; expected Y".
func (f Fault) Error() string {
	var b strings.Builder
	b.WriteString(f.File)
	if f.Line > 0 {
		fmt.Fprintf(&b, ":%d:%d", f.Line, f.Column)
	}
	for _, name := range []string{f.Rule, f.Key} {
		if name != "" {
			b.WriteString(": " + name)
		}
	}
	fmt.Fprintf(&b, ": found %s; expected %s", f.Found, f.Want)
	return b.String()
}

// Faults gathers every mistake of one reading, in the order of the file.
type Faults []Fault

// Error gives one line for each fault.
func (f Faults) Error() string {
	lines := make([]string, len(f))
	for i, fault := range f {
		lines[i] = fault.Error()
	}
	return strings.Join(lines, "\n")
}

// orNil gives an error only when there is a fault, so that an empty list
// never becomes a non-nil error.
func (f Faults) orNil() error {
	if len(f) == 0 {
		return nil
	}
	return f
}

// expressionError is a mistake in an expression, before it has a place.
type expressionError struct{ found, want string }

func (e expressionError) Error() string { return "found " + e.found + "; expected " + e.want }

func mistake(found, want string) error { return expressionError{found, want} }
