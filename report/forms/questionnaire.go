package forms

import "coldreckon/report/layout"

// Questionnaire is a sheet of questions to fill in by hand: all that stands on it, in the order of print.
type Questionnaire struct {
	Title    string   // heads the first page, and runs over the others
	Intro    string   // how it is filled in
	First    []Blanks // whose it is and when, before all questions; may be nil
	Last     []Blanks // after the last section, as what a yard has offered; may be nil
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

// Document lays the questions out. foot stands at the foot of every page, such as
// a program and version.
func (q Questionnaire) Document(foot string) layout.Document {
	doc := layout.Document{Title: q.Title, Subject: "Questions to answer by hand", Foot: foot}
	doc.Add(layout.Heading{Level: 0, Text: q.Title})
	for _, b := range q.First {
		doc.Add(b.Block())
	}
	doc.Add(layout.Para{Text: q.Intro, Wide: true})
	number := 0
	var add func(sections []Section, level int)
	add = func(sections []Section, level int) {
		for _, section := range sections {
			doc.Add(layout.Heading{Level: level, Text: section.Title})
			if section.Note != "" {
				doc.Add(layout.Para{Text: section.Note, Style: layout.Small, Keep: true})
			}
			var rows layout.Rows
			for i, asked := range section.Questions {
				number++
				rows = append(rows, row{Question: asked, number: number, last: i == len(section.Questions)-1}.block())
			}
			if len(rows) > 0 {
				doc.Add(rows)
			}
			add(section.Sections, level+1)
		}
	}
	add(q.Sections, 1)
	for _, b := range q.Last {
		doc.Add(b.Block())
	}
	if q.Caution != "" {
		doc.Add(layout.Para{Text: q.Caution, Style: layout.Small})
	}
	return doc
}
