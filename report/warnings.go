package report

import (
	"fmt"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/report/layout"
	"coldreckon/report/words"
	"coldreckon/rules"
)

// mostUpFront is how many cautions stand on the reader's pages.
const mostUpFront = 7

// upFront picks the cautions for the reader's pages: the stops, those of the
// answer first, then the answer's other cautions.
func upFront(findings []rules.Finding, answer economics.OptionID) []rules.Finding {
	var out []rules.Finding
	for _, pick := range []func(rules.Finding) bool{
		func(f rules.Finding) bool { return f.Grade == rules.Stop && concerns(f, answer) },
		func(f rules.Finding) bool { return f.Grade == rules.Stop && !concerns(f, answer) },
		func(f rules.Finding) bool { return f.Grade == rules.Careful && concerns(f, answer) },
		func(f rules.Finding) bool { return f.Grade == rules.WorthANote && concerns(f, answer) },
	} {
		for _, f := range findings {
			if pick(f) && len(out) < mostUpFront {
				out = append(out, f)
			}
		}
	}
	return out
}

// concerns tells whether a caution is one of an option's.
func concerns(f rules.Finding, id economics.OptionID) bool {
	return len(f.Options) == 0 || slices.Contains(f.Options, id)
}

// warnings are the cautions that the reader must not miss.
func (a author) warnings() []layout.Block {
	front := upFront(a.findings, a.r.Answer.Way())
	out := []layout.Block{layout.Heading{Level: 1, Text: "Before anything is cut, wired or bought"}}
	l := layout.List{}
	for _, f := range front {
		l.Items = append(l.Items, layout.Item{Lead: lead(f), Text: f.Text})
	}
	if len(l.Items) > 0 {
		out = append(out, l)
	}
	if more := len(a.findings) - len(front); more > 0 {
		out = append(out, layout.Para{Text: fmt.Sprintf("%d more stand in the appendix, with their sources.", more)})
	}
	return append(out, layout.Note{Heavy: true, Blocks: []layout.Block{layout.Para{Text: a.Pack.Guidance}}})
}

// lead heads a caution: its weight and the options it concerns.
func lead(f rules.Finding) string {
	head := map[rules.Grade]string{rules.Stop: "Stop", rules.Careful: "Caution", rules.WorthANote: "Note"}[f.Grade]
	if len(f.Options) == 0 || len(f.Options) == len(economics.Options) {
		return head + "."
	}
	var names []string
	for _, id := range f.Options {
		names = append(names, words.Bare(id))
	}
	return head + " (" + strings.Join(names, ", ") + ")."
}
