// Package worksheet is the sheet of questions to fill in by hand: each with
// its help, a box to write in or squares to tick. It knows no question itself;
// what is asked comes in as plain data.
//
// Lengths are millimetres. It is drawn in greys, so that a copy of a copy
// still serves.
package worksheet

import (
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// Content is all that stands on the sheets, in the order of print.
type Content struct {
	Title    string // heads the first page, and runs over the others
	Intro    string // how it is filled in
	Sections []Section
	Caution  string // stands after the last section; may be empty
}

// Section is a run of questions under one heading, and sections under it, at
// most one deep.
type Section struct {
	Title     string
	Note      string // stands under the title; may be empty
	Questions []Question
	Sections  []Section
}

// Question is one thing asked. Questions are numbered through.
type Question struct {
	Key   string // by which an answers file calls it
	Topic string // stands in bold before the question; may be empty
	Ask   string
	Help  string // stands small after the question; may be empty
	// Blanks are the boxes to write in: none, one, or several with a name each.
	Blanks []Blank
	Wide   bool // gives a single box all the room for an answer
	// Ticks are the answers that need only a mark.
	Ticks []string
}

// Blank is one box to write in.
type Blank struct {
	Name string // printed above the box; may be empty
	Unit string // printed in the box, at its right; may be empty
}

// Draw sets the sheets. foot stands at their foot, such as a program and
// version. Errors: what layout.Document.Draw gives.
func (c Content) Draw(s sheet.Sheet, foot string) error {
	doc := layout.Document{Running: c.Title, Foot: foot}
	small := func(text string, keep bool) layout.Block {
		return layout.Text{Words: layout.Plain(text), Type: layout.Small, Full: true, Keep: keep}
	}
	doc.Add(layout.Heading{Level: 0, Text: c.Title}, layout.Text{Words: layout.Plain(c.Intro), Type: layout.Body, Full: true})
	width, number := layout.Frame(s).W, 0
	var add func(sections []Section, level int)
	add = func(sections []Section, level int) {
		for _, section := range sections {
			doc.Add(layout.Heading{Level: level, Text: section.Title})
			if section.Note != "" {
				doc.Add(small(section.Note, true))
			}
			var rows []layout.Figure
			for i, q := range section.Questions {
				number++
				rows = append(rows, row{Question: q, number: number, width: width, last: i == len(section.Questions)-1}.figure())
			}
			if len(rows) > 0 {
				doc.Add(layout.Rows(rows...))
			}
			add(section.Sections, level+1)
		}
	}
	add(c.Sections, 1)
	if c.Caution != "" {
		doc.Add(small(c.Caution, false))
	}
	return doc.Draw(s)
}

// PDF makes the file. Title and subject of info are replaced. Errors: what
// sheet.NewPDF and Draw give.
func (c Content) PDF(info sheet.Info, foot string) ([]byte, error) {
	info.Title, info.Subject = c.Title, "Questions to answer by hand"
	p, err := sheet.NewPDF(info)
	if err != nil {
		return nil, err
	}
	if err := c.Draw(p, foot); err != nil {
		return nil, err
	}
	return p.Bytes()
}
