package layout

import (
	"slices"

	"coldreckon/report/sheet"
)

// Document is what a printed thing says, from its first page to its last. The
// zero Document is empty and ready to be added to.
type Document struct {
	Title   string    // of the file; also the running head from page two on
	Subject string    // of the file: what it is about, one sentence
	Foot    string    // at the left of every foot; at the right stands the page's number
	Parts   [][]Block // each starts on a new page
	Margins Margins   // of every page; the zero Margins are the usual ones
	// Enlarged sets everything so many times as large, 1 or more, as for large
	// print; 0 is 1.
	Enlarged float64
	// Words puts a text into the reader's words, all but sources; nil leaves
	// them as they are.
	Words func(string) string
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

// Block is a piece of a document: Heading, Para, List, Table, Picture, Note,
// Side, Kept, Close, Rows or OnPaper.
type Block interface {
	// set makes the block ready for paper.
	set() flow
}

// Heading opens a section, enters the outline and stays with what follows.
// Levels are 0 for the title, 1 and 2; a document that skips one on the way down
// cannot be drawn.
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
	Tiny  Style = "tiny"  // what must stand on a full form
)

// Para is a paragraph. Lead, if any, is set in bold before the text; Keep
// holds it on the page of what follows, Wide lets it run as wide as its column.
type Para struct {
	Lead, Text string
	Style      Style
	Keep, Wide bool
}

// Paras are paragraphs of a style, one for each text that is not empty.
func Paras(style Style, texts ...string) []Block {
	var out []Block
	for _, text := range texts {
		if text != "" {
			out = append(out, Para{Text: text, Style: style})
		}
	}
	return out
}

// Mark is what stands before an item of a list.
type Mark string

// The marks. Any other is a dash.
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
	Steps bool // set like a table's cells, for what is done beside a form
}

// Texts lists plain texts.
func Texts(mark Mark, texts ...string) List {
	l := List{Mark: mark}
	for _, text := range texts {
		l.Items = append(l.Items, Item{Text: text})
	}
	return l
}

// Column is a column of a table.
type Column struct {
	Head  string  // may be empty
	Right bool    // figures stand to the right
	Share float64 // of the table's width without the gaps, 0 to let the content decide
	Quiet bool    // names of rows, set in grey
}

// Table is a table. A row has a cell for each column; missing ones stay empty.
// A line break in a cell is kept in print. On a narrow screen a table that does
// not fit becomes lists of pairs: one for each row, or, ByColumn, one for each
// column but the first, which names the pairs.
type Table struct {
	Columns  []Column
	Rows     [][]string
	Fine     bool // set smaller, for what is looked up
	Close    bool // rows set closer
	Sum      bool // a line above the last row
	ByColumn bool // the columns are what is compared
	Framed   int  // the column, counted from 0, that a heavy frame marks; 0 is none
}

// Without gives the table without its column i, counted from 0.
func (t Table) Without(i int) Table {
	t.Columns, t.Rows = slices.Delete(slices.Clone(t.Columns), i, i+1), slices.Clone(t.Rows)
	for k, row := range t.Rows {
		t.Rows[k] = slices.Delete(slices.Clone(row), i, i+1)
	}
	return t
}

// headed reports whether any of the columns has a head.
func headed(columns []Column) bool {
	return slices.ContainsFunc(columns, func(c Column) bool { return c.Head != "" })
}

// at gives a cell, empty where the row has none.
func at(row []string, i int) string {
	if i < len(row) {
		return row[i]
	}
	return ""
}

// Picture is a drawing with its words. Nothing is said by a drawing alone: a
// table holds what is drawn.
type Picture struct {
	Finding string // what it shows, one sentence, set over the drawing
	Caption string // what is drawn, with its unit; may be empty
	// Alt says the same to somebody who cannot see it, in a sentence or two;
	// empty takes finding and caption.
	Alt    string
	Height func(w float64) float64 // of the drawing at a width, mm
	Widest float64                 // of the drawing, mm; 0 fills any width
	// Draw draws within r.
	Draw func(s sheet.Sheet, r sheet.Rect) error
	// Table holds the drawn figures. Shown sets it under the drawing too, from
	// where it may go on over the page; the other writings always have it.
	Table Table
	Shown bool
}

// Note is weighty text, set apart by a rule at its left.
type Note []Block

// Side sets columns of blocks side by side, each as wide as its share, in any
// measure; nil Shares are equal parts. In text, and on a narrow screen, the
// columns follow one another.
type Side struct {
	Shares  []float64
	Columns [][]Block // from left to right
}

// Kept holds blocks together on one page, unless a page is too small for them.
type Kept []Block

// Close sets blocks below one another with half the air between them, for a page
// that has to hold much.
type Close []Block

// Rows sets blocks below one another without air, as the rows of a form that
// may go on over the page.
type Rows []Block

// OnPaper is drawn for a pencil. Other writings have Instead, which says the
// same in words.
type OnPaper struct {
	Name    string                                  // for errors
	Height  func(w float64) float64                 // at a width, mm
	Draw    func(s sheet.Sheet, r sheet.Rect) error // within r, as high as that
	Instead []Block
}

// inside gives the blocks of one that only paper sets in a way of its own.
func inside(b Block) []Block {
	switch b := b.(type) {
	case Side:
		return slices.Concat(b.Columns...)
	case Kept:
		return b
	case Close:
		return b
	case Rows:
		return b
	case OnPaper:
		return b.Instead
	}
	return nil
}
