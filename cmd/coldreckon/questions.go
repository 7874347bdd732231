package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report"
	"coldreckon/report/forms"
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
	"coldreckon/report/words"
	"coldreckon/wizard/questions"
)

// questionsCommand prints the table of questions, to look things up in or to
// answer by hand.
func questionsCommand(out environment) *cobra.Command {
	var units, prices string
	var blank bool
	var to printer
	cmd := &cobra.Command{
		Use:   "questions [KEY]",
		Short: "Print everything that can be asked, or a blank worksheet",
		Long: `Prints every question: its key in the answers file, its help, how an answer is
written, what is possible and what is taken when nobody answers. With a KEY it
prints that one, or all whose keys begin with it.

With --blank it prints a worksheet to fill in by hand, with all that matters
before a report, and on a last page what to look at where a unit is dead or runs
all the time; that is a PDF unless told otherwise.`,
		Example: `  coldreckon questions box.volume
  coldreckon questions power --units metric
  coldreckon questions -o questions.pdf
  coldreckon questions --blank -o worksheet.pdf`,
		Args: arguments(0, 1, "the key of at most one question"),
		RunE: func(cmd *cobra.Command, args []string) error {
			sys, err := unitSystem(units)
			if err != nil {
				return err
			}
			if blank {
				if len(args) > 0 {
					return misuse("", "--blank: leave the key %q out, as the worksheet has all that matters", args[0])
				}
				to.formats = []string{"pdf", "html", "text", "md"}
			}
			if err := to.settle(out, prices); err != nil {
				return err
			}
			rows, err := questionsNamed(args)
			if err != nil {
				return err
			}
			pack, err := out.pack(prices)
			if err != nil {
				return err
			}
			currency := questions.Unanswered(sys, pack.Book)["currency"].Value
			return to.print(cmd.Context(), out, sys, func(info sheet.Info) (layout.Document, error) {
				if blank {
					return worksheet(sys, currency, pack.Book, footOf(info)), nil
				}
				doc := reference(rows, sys, currency, pack.Book)
				doc.Foot = footOf(info)
				return doc, nil
			})
		},
		ValidArgsFunction: completeFirst(func() []string {
			var keys []string
			for _, row := range questions.All() {
				keys = append(keys, row.Key)
			}
			return keys
		}),
	}
	addUnitsFlag(cmd, &units)
	cmd.Flags().Var((*fileName)(&prices), "prices", "lay the prices of a rule `FILE` over the built-in ones")
	cmd.Flags().BoolVar(&blank, "blank", false, "a worksheet to fill in by hand")
	to.addFlags(cmd, "text", "md", "html", "pdf")
	to.addLargeFlag(cmd)
	return cmd
}

// questionsNamed gives the rows of a key, of all keys that begin with it, or,
// without one, of the whole table.
func questionsNamed(args []string) ([]questions.Row, error) {
	if len(args) == 0 {
		return questions.All(), nil
	}
	key := args[0]
	if row, ok := questions.Find(key); ok {
		return []questions.Row{row}, nil
	}
	var rows []questions.Row
	for _, row := range questions.All() {
		if strings.HasPrefix(row.Key, key+".") {
			rows = append(rows, row)
		}
	}
	if len(rows) == 0 {
		return nil, misuse(cmp.Or(questions.DidYouMean(key), "'coldreckon questions' lists them all."), "%q is not the key of a question", key)
	}
	return rows, nil
}

// reference is the page of these rows: all that the table says of each.
func reference(rows []questions.Row, sys quantity.System, currency string, book economics.Book) layout.Document {
	doc := layout.Document{Title: "What can be asked", Subject: "The questions and the keys of the answers file"}
	if len(rows) == len(questions.All()) {
		doc.Add(layout.Heading{Level: 0, Text: doc.Title}, layout.Para{Text: referenceIntro})
	}
	taken := questions.Unanswered(sys, book)
	var group questions.Group
	for i, entry := range entries(rows, sys, currency, taken) {
		if len(rows) > 1 && entry.row.Group != group {
			group = entry.row.Group
			if i == 0 && len(rows) < len(questions.All()) {
				doc.Add(layout.Heading{Level: 0, Text: string(group)})
			} else {
				doc.Add(layout.Heading{Level: 1, Text: string(group)})
			}
		}
		doc.Add(layout.Kept{layout.Para{Lead: entry.row.Key + ":", Text: entry.text(), Style: layout.Fine}})
	}
	return doc
}

const referenceIntro = "Each entry begins with its key in the answers file. Any unit will do, whichever is shown; so will sums, " +
	"such as 2*5+3. \"Don't know\" is always an answer, and the same is taken as for no answer: a usual figure, with a wider range. It may follow " +
	"from other answers; shown is what is taken when nothing else is told. Essential questions come first, those of safety are always asked, " +
	"any other when its answer is worth something to the decision; 'coldreckon ask --all' asks them all."

// An entry is what the reference says of a row, and of those that differ from
// it by nothing but the face of the box they ask about.
type entry struct {
	row          questions.Row
	when         string // it is asked
	how          string // it is answered
	taken        string // when nobody answers
	others       []string
	alikeByParts string // entries with the same are one
}

// entries makes the entries of rows.
func entries(rows []questions.Row, sys quantity.System, currency string, taken map[string]economics.Assumption) []entry {
	var list []entry
	for _, row := range rows {
		e := entry{row: row, when: whenAsked(row), how: howAnswered(row, sys, currency), taken: whatIsTaken(row, taken)}
		if row.Group == questions.OfFaces {
			e.alikeByParts = strings.Join([]string{lastPart(row.Key), row.Help, e.how, e.taken}, "\n")
		}
		alike := slices.IndexFunc(list, func(o entry) bool { return e.alikeByParts != "" && o.alikeByParts == e.alikeByParts })
		if alike >= 0 {
			list[alike].others = append(list[alike].others, row.Key)
		} else {
			list = append(list, e)
		}
	}
	return list
}

// text sets the entry behind its key, each part on a line of its own.
func (e entry) text() string {
	lines := []string{e.row.Label + e.when + ".", e.row.Ask + " " + e.row.Help, e.how, e.taken}
	if len(e.others) > 0 {
		lines = append(lines, "Likewise "+strings.Join(e.others, ", ")+".")
	}
	return strings.Join(lines, "\n")
}

// whenAsked tells what sets a row's question apart from others.
func whenAsked(row questions.Row) string {
	s := ""
	switch {
	case row.Essential:
		s = ", essential"
	case row.Safety:
		s = ", safety"
	case row.Detail:
		s = ", a detail"
	}
	if row.When != nil {
		s += ", only if other answers call for it"
	}
	return s
}

// mostNames bounds the choices that are listed.
const mostNames = 12

// howAnswered tells how an answer is written and what is possible.
func howAnswered(row questions.Row, sys quantity.System, currency string) string {
	var s string
	switch spellings := row.Spellings(sys, currency); {
	case len(row.Options) > mostNames:
		last := row.Options[len(row.Options)-1]
		s = fmt.Sprintf("Choice: one of %d names, which 'coldreckon grounds' lists, or %s (%s)", len(row.Options)-1, last.Value, last.Label)
	case len(row.Options) > 0:
		var choices []string
		for _, o := range row.Options {
			if o.Label != "" && o.Label != strings.ReplaceAll(o.Value, "_", " ") {
				choices = append(choices, o.Value+" ("+o.Label+")")
			} else {
				choices = append(choices, o.Value)
			}
		}
		s = "Choice: " + strings.Join(choices, ", ")
	case row.Kind == questions.YesNo || row.Kind == questions.YesNoUnknown:
		s = "Answer: " + string(row.Kind)
	case len(spellings) == 0:
		s = "Answer: a short text"
	default:
		s = words.Capital(string(row.Kind)) + ", such as " + words.Either(spellings)
		if row.Kind == questions.Number || row.Kind == questions.Whole {
			s = words.Capital(string(row.Kind)) + ", such as " + spellings[0] + ", or a sum such as " + words.Either(spellings[1:])
		}
	}
	if bounds := row.Bounds(sys, currency); bounds != "" {
		s += "; " + bounds
	}
	s += "."
	if required, others := row.Parts(); len(required) > 0 {
		s += " Parts: " + strings.Join(required, ", ")
		if len(others) > 0 {
			s += "; may be left out: " + strings.Join(others, ", ")
		}
		s += "."
	}
	return s
}

// whatIsTaken tells what stands in for an answer, and why.
func whatIsTaken(row questions.Row, taken map[string]economics.Assumption) string {
	a, ok := taken[row.Key]
	switch {
	case !ok:
		return "Not answered: nothing is taken."
	case a.Why != "":
		why := strings.TrimLeft(strings.TrimPrefix(a.Why, "not answered"), ",: ")
		return "Not answered: " + a.Value + "; " + why + "."
	case row.Group == questions.OfFaces && ofWholeBox(row):
		return "Not answered: " + a.Value + ", unless the whole box was told otherwise."
	}
	return "Not answered: " + a.Value + "."
}

// ofWholeBox reports whether a question about one face is also asked about
// the whole box.
func ofWholeBox(row questions.Row) bool {
	_, ok := questions.Find("box." + lastPart(row.Key))
	return ok
}

func lastPart(key string) string { return key[strings.LastIndex(key, ".")+1:] }

// blankSheet is the worksheet: what leads to a first answer, then the rest by
// group, safety last.
func blankSheet(sys quantity.System, currency string) forms.Questionnaire {
	first := forms.Section{Title: "What leads to a first answer"}
	rest := forms.Section{Title: "What may change it"}
	safety := forms.Section{Title: string(questions.OfSafety), Note: "Leave none out if you can: a danger not known counts as there."}
	for _, row := range questions.All() {
		q := onPaper(row, sys, currency)
		switch {
		case row.Detail: // a report seldom hangs on it
		case row.Essential:
			first.Questions = append(first.Questions, q)
		case row.Safety:
			safety.Questions = append(safety.Questions, q)
		default:
			last := len(rest.Sections) - 1
			if last < 0 || rest.Sections[last].Title != string(row.Group) {
				rest.Sections = append(rest.Sections, forms.Section{Title: string(row.Group)})
				last++
			}
			rest.Sections[last].Questions = append(rest.Sections[last].Questions, q)
		}
	}
	return forms.Questionnaire{
		Title: "Should this boat have refrigeration?",
		Intro: "Leave blank what you do not know: a usual figure is taken then, with a wider range. Strike out a printed unit that " +
			"is not yours. The names in italics are those of coldreckon's answers file.",
		First: []forms.Blanks{{Boxes: []forms.Blank{{Name: "Your name"}, {Name: "The boat"}, {Name: "Date"}}, Shares: []float64{2, 2, 1}}},
		Last: []forms.Blanks{{Title: "The quotation you were given", Note: "As it stands there; what it leaves out stays blank.", Boxes: []forms.Blank{
			{Name: "Price", Unit: currency}, {Name: "Fitting", Unit: currency}, {Name: "Watts or amps"}, {Name: "For a box up to", Unit: quantity.VolumeUnit(sys)},
			{Name: "Cooled by: fins, fan, sea water"},
		}, Shares: []float64{1, 1, 1, 1, 1.9}}},
		Sections: []forms.Section{first, rest, safety},
		Caution: "The safety questions find what to look at first; answering them is no survey. Follow your local codes and the makers' " +
			"instructions, and have gas, refrigerant, wiring, lithium batteries and holes in the hull seen to by qualified people.",
	}
}

// worksheet is the questions, and on a page of their own what to look at on a
// unit that ails: a leader hands that to the boats that have one.
func worksheet(sys quantity.System, currency string, book economics.Book, foot string) layout.Document {
	doc := blankSheet(sys, currency).Document(foot)
	doc.Part(report.AilingByHand(sys, currency, book)...)
	return doc
}

// onPaper is a row as the worksheet asks it.
func onPaper(row questions.Row, sys quantity.System, currency string) forms.Question {
	q := forms.Question{Key: row.Key, Ask: quantity.Local(row.Ask, sys), Help: quantity.Local(helpOnPaper(row), sys)}
	if ofOwnGround(row) {
		q.Topic = quantity.Local(row.Label, sys)
	}
	blanks := row.Blanks(sys, currency)
	if len(blanks) == 12 && blanks[0].Unit != "" { // the boxes are too small for it
		q.Topic += ", in " + blanks[0].Unit
	}
	if ofOwnGround(row) {
		q.Topic += "; only if not listed"
	}
	for _, b := range blanks {
		if len(blanks) == 12 {
			b.Unit = ""
		}
		if row.Kind == questions.Share {
			b.Unit = "%"
		}
		q.Blanks = append(q.Blanks, forms.Blank(b))
	}
	q.Wide = len(q.Blanks) == 1 && row.Kind == questions.Text
	switch row.Kind {
	case questions.YesNo:
		q.Ticks = []string{"yes", "no"}
	case questions.YesNoUnknown:
		q.Ticks = []string{"yes", "no", "don't know"}
	case questions.Choice:
		if len(row.Options) > mostNames {
			q.Blanks, q.Wide = []forms.Blank{{}}, true
			break
		}
		for _, o := range row.Options {
			q.Ticks = append(q.Ticks, quantity.Local(o.Label, sys))
		}
	}
	if row.None != "" {
		q.Ticks = append(q.Ticks, row.None)
	}
	return q
}

// ofOwnGround reports whether a row asks about a cruising ground that is none
// of those listed.
func ofOwnGround(row questions.Row) bool {
	var listed, own economics.Boat
	own.Cruising.Ground = economics.OwnGround
	return row.Asked(own) && !row.Asked(listed)
}

// helpOnPaper is a row's help, with nothing called typical where all may write
// what they like.
func helpOnPaper(row questions.Row) string {
	if row.Kind == questions.Text || len(row.Options) > mostNames {
		return words.Capital(strings.TrimPrefix(row.Help, "Typical: "))
	}
	return row.Help
}
