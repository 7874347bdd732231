package report

import (
	"fmt"
	"time"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
	"coldreckon/report/words"
	"coldreckon/rules"
)

// Input is what a report is made of. The same input gives the same bytes.
type Input struct {
	Reckoning *economics.Reckoning
	Pack      rules.Pack  // rules and prices that the reckoning was made with
	Answers   []Answer    // the boat as told, for the appendix, a group after the other
	Version   string      // of the program
	Date      time.Time   // printed as the day of making; required for print
	Paper     sheet.Paper // required for print; text and Markdown do without
}

// Answer is one figure of the boat as it is printed in the appendix.
type Answer struct {
	Group string // what it belongs to: "The ice box"
	Label string // what it is: "Inside volume"
	Value string // with its unit, as the owner would write it
	How   quantity.How
}

// Owner gives the owner's report as a PDF. Errors: a fact that a caution needs
// is missing, a paper that is not known, no date, or a drawing that fails.
func Owner(in Input) ([]byte, error) {
	doc, err := in.printed()
	if err != nil {
		return nil, err
	}
	return doc.PDF(in.info())
}

func (in Input) info() sheet.Info {
	return sheet.Info{Author: "coldreckon " + in.Version, Lang: in.language(), Date: in.Date, Paper: in.Paper}
}

// OwnerHTML gives the owner's report as one HTML file. Errors: a fact that a
// caution needs is missing, or a drawing that fails.
func OwnerHTML(in Input) ([]byte, error) {
	a, err := in.author()
	if err != nil {
		return nil, err
	}
	return a.document().HTML(in.info())
}

// OwnerText gives the owner's report as plain text, 80 columns wide. Errors: a
// fact that a caution needs is missing.
func OwnerText(in Input) (string, error) {
	a, err := in.author()
	if err != nil {
		return "", err
	}
	return a.document().Text(), nil
}

// OwnerMarkdown gives the owner's report as Markdown. Errors: a fact that a
// caution needs is missing.
func OwnerMarkdown(in Input) (string, error) {
	a, err := in.author()
	if err != nil {
		return "", err
	}
	return a.document().Markdown(), nil
}

// Findings gives the cautions that fire for a reckoning's four options as fitted,
// stops first, in the owner's units. Errors: a fact that a caution needs is missing.
func Findings(r *economics.Reckoning, pack rules.Pack) ([]rules.Finding, error) {
	var sets []economics.Facts
	for i := range r.Options {
		sets = append(sets, r.Options[i].Fitted.Facts)
	}
	found, err := pack.Judge(sets...)
	for i := range found {
		found[i].Text = words.Local(found[i].Text, r.Boat.Units)
	}
	return found, err
}

func (in Input) language() string {
	if in.Reckoning.Boat.Units == quantity.US {
		return "en-US"
	}
	return "en-GB"
}

// author puts one report together.
type author struct {
	Input
	r        *economics.Reckoning
	v        words.Voice
	findings []rules.Finding
	foods    rules.Foods
	// frontTight and bodyTight say how tightly page one and the other reader's
	// pages are set, from 0, roomy, to tightest and tightestBody.
	frontTight, bodyTight int
	// lastStretch and stretch make the figures of the last reader's page, and
	// of those before it, taller; 0 is not at all.
	lastStretch, stretch float64
}

// The tightest settings of page one and of the other reader's pages.
const tightest, tightestBody = 6, 5

func (in Input) author() (author, error) {
	found, err := Findings(in.Reckoning, in.Pack)
	if err != nil {
		return author{}, fmt.Errorf("cautions: %w", err)
	}
	foods, err := rules.LoadFoods()
	if err != nil {
		return author{}, fmt.Errorf("foods that keep: %w", err)
	}
	return author{Input: in, r: in.Reckoning, v: words.Of(in.Reckoning, in.Pack.Book), findings: found, foods: foods}, nil
}

// document is the whole report.
func (a author) document() layout.Document {
	doc := a.blank()
	doc.Part(a.front()...)
	doc.Part(a.body()...)
	doc.Part(a.appendix()...)
	doc.Part(a.asides()...)
	if a.r.HasRepair {
		doc.Part(ailing(a.v, 1)...)
	}
	return doc
}

func (a author) blank() layout.Document {
	return layout.Document{Title: a.r.Boat.Name + ": should she have refrigeration?", Subject: a.v.Answer(), Foot: a.foot()}
}

// body is what the reader's pages hold after the first.
func (a author) body() []layout.Block {
	var out []layout.Block
	for _, part := range [][]layout.Block{a.fitting(), a.warnings(), a.seasons(), a.money(), a.sure()} {
		out = append(out, part...)
	}
	return out
}

// readerPages is how many pages are for the reader, the first included.
const readerPages = 4

// printed is the report set just tightly enough that the first page stands
// alone and the reader's pages are no more than promised.
func (in Input) printed() (layout.Document, error) {
	a, err := in.author()
	if err != nil {
		return layout.Document{}, err
	}
	for ; a.frontTight < tightest; a.frontTight++ {
		n, err := a.pages(a.front(), nil)
		if err != nil {
			return layout.Document{}, err
		}
		if n <= 1 {
			break
		}
	}
	for ; a.bodyTight < tightestBody; a.bodyTight++ {
		n, err := a.pages(a.front(), a.body())
		if err != nil {
			return layout.Document{}, err
		}
		if n <= readerPages {
			break
		}
	}
	// What is left of the reader's pages goes to their figures. The last page
	// comes first: once it is full, nothing can move there from those before.
	for _, stretch := range []*float64{&a.lastStretch, &a.stretch} {
		for _, *stretch = range []float64{0.3, 0.2, 0.1, 0} {
			n, err := a.pages(a.front(), a.body())
			if err != nil {
				return layout.Document{}, err
			}
			if n <= readerPages {
				break
			}
		}
	}
	return a.document(), nil
}

// pages counts the pages that parts take.
func (a author) pages(parts ...[]layout.Block) (int, error) {
	s, err := sheet.NewRecording(a.Paper)
	if err != nil {
		return 0, err
	}
	doc := a.blank()
	for _, part := range parts {
		doc.Part(part...)
	}
	if err := doc.Draw(s); err != nil {
		return 0, err
	}
	return s.Page(), nil
}

// least is the least height, from the given one up, at which a figure as wide
// as the page can be drawn.
func (a author) least(draw func(sheet.Sheet, sheet.Rect) error, height float64) float64 {
	paper := a.Paper
	if paper == "" { // text and Markdown draw nothing
		paper = sheet.A4
	}
	s, err := sheet.NewRecording(paper)
	if err != nil {
		return height // reported when the report is drawn
	}
	return leastAt(layout.Frame(s).W, draw, height)
}

// leastAt is the same for a figure of another width, mm.
func leastAt(width float64, draw func(sheet.Sheet, sheet.Rect) error, height float64) float64 {
	for ; height < 120; height += 2 {
		s, err := sheet.NewRecording(sheet.A4)
		if err != nil {
			break // A4 is known
		}
		s.AddPage()
		if draw(s, sheet.Rect{W: width, H: height}) == nil {
			break
		}
	}
	return height
}

// tall is the height of a figure on the reader's pages, as tight as they are
// set.
func (a author) tall(height float64) float64 { return a.set(height) * (1 + a.stretch) }

// last is the height of a figure on the last of them.
func (a author) last(height float64) float64 { return a.set(height) * (1 + a.lastStretch) }

func (a author) set(height float64) float64 {
	return height * [tightestBody + 1]float64{1, 0.9, 0.82, 0.78, 0.78, 0.78}[a.bodyTight]
}

func (a author) foot() string {
	text := "coldreckon " + a.Version
	if !a.Date.IsZero() {
		text += ", " + day(a.Date)
	}
	return text + ". An aid to planning, not a survey."
}

// day prints a date so that nobody can mistake month for day.
func day(t time.Time) string {
	return fmt.Sprintf("%d %s %d", t.Day(), words.Month(int(t.Month())), t.Year())
}

// aboard reports whether there are nights aboard to speak of.
func (a author) aboard() bool { return len(a.r.Months) > 0 }

// beside sets rows of the four options as a table.
func beside(rows []words.Row) layout.Table {
	t := layout.Table{ByColumn: true, Columns: []layout.Column{{Quiet: true, Share: 0.16}}}
	for _, id := range economics.Options {
		t.Columns = append(t.Columns, layout.Column{Head: words.Name(id), Share: 0.21})
	}
	for _, r := range rows {
		t.Rows = append(t.Rows, append([]string{r.Label}, r.Cells[:]...))
	}
	return t
}

// list makes a list of plain texts.
func list(mark layout.Mark, texts []string) layout.List {
	l := layout.List{Mark: mark}
	for _, t := range texts {
		l.Items = append(l.Items, layout.Item{Text: t})
	}
	return l
}
