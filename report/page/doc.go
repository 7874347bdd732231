// Package page is what a printed thing says, before it is set: headings,
// paragraphs, lists, tables and charts in reading order.
//
// One Document comes out three ways: Draw sets it on a sheet (PDF makes the
// file), Text and Markdown write it out for e-mail and for people who cannot
// use a PDF. Every chart carries a finding and a table of the same figures, so
// that nothing is said by a drawing alone.
package page

import "coldreckon/report/sheet"

// Document is a whole printed thing. The zero Document is empty and ready to
// be added to.
type Document struct {
	Title   string    // of the file; also the running head from page two on
	Subject string    // of the file: what it is about, one sentence
	Foot    string    // at the left of every foot
	Parts   [][]Block // each starts on a new page
}

// Part starts a new page with these blocks.
func (d *Document) Part(blocks ...Block) { d.Parts = append(d.Parts, blocks) }

// Add appends blocks to the last part.
func (d *Document) Add(blocks ...Block) {
	if len(d.Parts) == 0 {
		d.Parts = [][]Block{nil}
	}
	last := len(d.Parts) - 1
	d.Parts[last] = append(d.Parts[last], blocks...)
}

// Block is a piece of a document: Heading, Para, List, Table, Chart, Note,
// Side or Kept.
type Block interface{ isBlock() }

// Heading opens a section. Levels are 0 for the title, 1 and 2; none may be
// skipped on the way down.
type Heading struct {
	Level int
	Text  string
}

// Style is how a paragraph is set.
type Style string

// The styles.
const (
	Body  Style = ""
	Lede  Style = "lede"  // the sentence a page opens with
	Small Style = "small" // notes and sources
	Fine  Style = "fine"  // what is looked up, not read
)

// Para is a paragraph. Lead, if any, is set in bold before the text; Keep
// holds it on the page of what follows.
type Para struct {
	Lead, Text string
	Style      Style
	Keep       bool
}

// Mark is what stands before an item of a list.
type Mark string

// The marks.
const (
	Dash   Mark = "dash"
	Number Mark = "number"
	Tick   Mark = "tick" // an open square for a pencil
)

// Item is one entry of a list. Lead, if any, is set in bold before the text;
// Source, if any, small after it.
type Item struct{ Lead, Text, Source string }

// List sets items below one another, each behind its mark.
type List struct {
	Mark  Mark // the zero Mark is a dash
	Items []Item
	Fine  bool // set smaller, for what is looked up
}

// Column is a column of a table.
type Column struct {
	Head  string
	Right bool    // figures stand to the right
	Share float64 // of the table's width, 0 to let the content decide
	Quiet bool    // names of rows, set in grey
}

// Table is a table. A row has a cell for each column; missing ones stay empty.
// A line break in a cell is kept in print.
type Table struct {
	Columns []Column
	Rows    [][]string
	Fine    bool // set smaller, for what is looked up
	Sum     bool // a line above the last row
}

// Chart is a drawing with its words.
type Chart struct {
	Finding string  // what it shows, one sentence
	Caption string  // what is drawn, with its unit
	Height  float64 // of the drawing with its words, mm, > 0
	// Draw draws the figure within r, with the finding as its first line.
	Draw func(s sheet.Sheet, r sheet.Rect) error
	// Table holds the drawn figures. Shown sets it under the drawing too, from
	// where it may go on over the page; text and Markdown always have it.
	Table Table
	Shown bool
}

// Note is text set apart by a rule at its left; Heavy for weightier notes.
type Note struct {
	Heavy  bool
	Blocks []Block
}

// Side sets columns of blocks side by side, each as wide as its share, in any
// measure; nil Shares are equal parts. In text the columns follow one another.
type Side struct {
	Shares  []float64
	Columns [][]Block // from left to right
}

// Kept holds blocks together on one page, unless a page is too small for them.
type Kept []Block

func (Heading) isBlock() {}
func (Para) isBlock()    {}
func (List) isBlock()    {}
func (Table) isBlock()   {}
func (Chart) isBlock()   {}
func (Note) isBlock()    {}
func (Side) isBlock()    {}
func (Kept) isBlock()    {}
