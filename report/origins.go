package report

import (
	"fmt"
	"slices"
	"strings"
)

// origins numbers the sources of a table's rows, each once.
type origins []string

// number is that of a source, 1 for the first.
func (o *origins) number(source string) string {
	n := slices.Index(*o, source)
	if n < 0 {
		n = len(*o)
		*o = append(*o, source)
	}
	return fmt.Sprint(n + 1)
}

// String lists them under their numbers: "(1) one; (2) another".
func (o origins) String() string {
	var out []string
	for i, source := range o {
		out = append(out, fmt.Sprintf("(%d) %s", i+1, source))
	}
	return strings.Join(out, "; ")
}
