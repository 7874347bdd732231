package report

import (
	"fmt"
	"slices"
	"strings"
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
	Paper     sheet.Paper // required for print; the other formats do without
	Full      bool        // adds the appendix, for whoever wants to check
	For, By   string      // for whom and by whom it was prepared; printed where told
	Enlarged  float64     // everything so many times as large, for large print; 0 is 1
}

// Answer is one figure of the boat as it is printed in the appendix.
type Answer struct {
	Group string // what it belongs to: "The ice box"
	Label string // what it is: "Inside volume"
	Value string // with its unit, as the owner would write it
	How   quantity.How
}

// Document is the owner's report for a screen or as text. Errors: a fact that a
// caution needs is missing.
func Document(in Input) (layout.Document, error) {
	a, err := in.author()
	if err != nil {
		return layout.Document{}, err
	}
	return a.document(), nil
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
		found[i].Text = quantity.Local(found[i].Text, r.Boat.Units)
	}
	return found, err
}

// author puts one report together.
type author struct {
	Input
	r        *economics.Reckoning
	v        words.Voice
	findings []rules.Finding
	untold   []string // what was left unanswered and would otherwise lift a stop
	foods    rules.Foods
	models   []layout.Block // how well the models have done; with the appendix only
	// The way that the pages after the first are about, as told and with its
	// work, and what to expect of it.
	o            *economics.OptionFigures
	told, fitted economics.CaseFigures
	expect       economics.Commissioning
	// cutsAhead has the pieces to cut stand on page two, and cautions beside steps
	// that take a line more on page four, where page three is full.
	cutsAhead bool
	paged     bool // printed on four pages, so that words may name them
}

func (in Input) author() (author, error) {
	a := author{Input: in, r: in.Reckoning, v: words.Of(in.Reckoning, in.Pack.Book)}
	var err error
	if a.findings, err = Findings(in.Reckoning, in.Pack); err != nil {
		return a, fmt.Errorf("cautions: %w", err)
	}
	if err = a.partUntold(); err != nil {
		return a, fmt.Errorf("cautions: %w", err)
	}
	if a.foods, err = rules.LoadFoods(); err != nil {
		return a, fmt.Errorf("foods that keep: %w", err)
	}
	if in.Full {
		if a.models, err = models(); err != nil {
			return a, err
		}
	}
	if a.o = a.v.Leader(); a.o == nil {
		a.o = a.r.Of(economics.IceOnly)
	}
	for fitted, into := range map[bool]*economics.CaseFigures{false: &a.told, true: &a.fitted} {
		if *into, err = a.r.Case(a.o, fitted); err != nil {
			return a, fmt.Errorf("%s: %w", a.o.ID, err)
		}
	}
	if a.expect, err = a.r.Commission(a.o); err != nil {
		return a, fmt.Errorf("%s: %w", a.o.ID, err)
	}
	return a, nil
}

// setting is how a page is set: how tightly, from 0, and how much height it has
// to spare, mm.
type setting struct {
	tight int
	spare float64
}

// full tells that a page has nothing to spare at its tightest.
func (s setting) full() bool { return s.tight == tightest && s.spare == 0 }

// The tightest setting, and the heights tried that a paper has to spare.
const tightest = 5

var spares = []float64{36, 30, 24, 18, 12, 6, 0}

// pages are those for the reader.
func (a author) pages() []func(setting) []layout.Block {
	return []func(setting) []layout.Block{a.answer, a.boat, a.work, a.proof}
}

// set sets a page, with less air unless it is roomy.
func (a author) set(page func(setting) []layout.Block, s setting) []layout.Block {
	if s.tight == 0 {
		return page(s)
	}
	return []layout.Block{layout.Close(page(s))}
}

// document is the whole report, each page as set, loosely where nothing is told.
func (a author) document(set ...setting) layout.Document {
	doc := a.blank()
	for i, page := range a.pages() {
		s := setting{}
		if i < len(set) {
			s = set[i]
		}
		doc.Part(a.set(page, s)...)
	}
	if offers := quotations(a.r, a.Pack.Book); offers != nil {
		doc.Part(offers...)
	}
	if a.Full {
		doc.Part(slices.Concat(a.appendix(), a.alsoAsked(), a.models)...)
		if a.r.HasRepair {
			doc.Part(ailing(a.v, 1)...)
		}
	}
	return doc
}

func (a author) blank() layout.Document {
	return layout.Document{Title: a.r.Boat.Name + ": should she have refrigeration?", Subject: a.v.Answer(), Foot: a.foot(), Margins: margins, Enlarged: a.Enlarged,
		Words: func(text string) string { return quantity.Local(text, a.r.Boat.Units) }}
}

// margins leave room for the running head and foot, mm.
var margins = layout.Margins{Side: 17, Top: 16, Bottom: 15}

// Printed is the report with each page set just tightly enough for both papers,
// which so hold the same; what the paper has to spare goes to its pictures.
// Errors: those of Document, a paper that is not known, a drawing that fails.
func Printed(in Input) (layout.Document, error) {
	a, err := in.author()
	if err != nil {
		return layout.Document{}, err
	}
	a.paged = a.Enlarged <= 1
	set, held, err := a.settings()
	if err == nil && !held {
		a.cutsAhead = true
		set, _, err = a.settings()
	}
	if err != nil {
		return layout.Document{}, err
	}
	return a.document(set...), nil
}

// settings finds how each page is set, and whether every page holds what it should.
func (a author) settings() (set []setting, held bool, err error) {
	held = true
	for _, page := range a.pages() {
		var s setting
		fits := func(paper sheet.Paper) bool {
			var n int
			if err == nil {
				n, err = a.pagesOf(paper, a.set(page, s))
			}
			return n <= 1
		}
		if a.Enlarged > 1 { // as many pages as it takes, each picture on one
			fits = func(paper sheet.Paper) bool {
				_, tall := a.pagesOf(paper, a.set(page, s))
				return tall == nil
			}
		}
		for s.tight < tightest && !(fits(sheet.Letter) && fits(sheet.A4)) {
			s.tight++
		}
		held = held && (s.tight < tightest || fits(sheet.Letter) && fits(sheet.A4))
		for _, s.spare = range spares {
			if fits(a.Paper) {
				break
			}
		}
		set = append(set, s)
	}
	return set, held, err
}

// pagesOf counts the pages that blocks take on a paper.
func (a author) pagesOf(paper sheet.Paper, blocks []layout.Block) (int, error) {
	s, err := sheet.NewRecording(paper)
	if err != nil {
		return 0, err
	}
	doc := a.blank()
	doc.Part(layout.Heading{Level: 0, Text: a.r.Boat.Name}) // so that the outline may go on with a lower level
	doc.Part(blocks...)
	n, err := doc.Pages(s)
	return n - 1, err
}

// at names a place on one of the four pages, or says where it stands elsewhere.
func (a author) at(page, elsewhere string) string {
	if a.paged {
		return page
	}
	return elsewhere
}

func (a author) foot() string {
	text := "coldreckon " + a.Version
	if !a.Date.IsZero() {
		text += ", " + day(a.Date)
	}
	return text + ". An aid to planning, not a survey."
}

// prepared says for whom and by whom.
func (in Input) prepared() string {
	var parts []string
	if in.For != "" {
		parts = append(parts, "for "+in.For)
	}
	if in.By != "" {
		parts = append(parts, "by "+in.By)
	}
	if len(parts) == 0 {
		return ""
	}
	return "Prepared " + strings.Join(parts, ", ")
}

// day prints a date so that nobody can mistake month for day.
func day(t time.Time) string {
	return fmt.Sprintf("%d %s %d", t.Day(), words.Month(int(t.Month())), t.Year())
}

// aboard reports whether there are nights aboard to speak of.
func (a author) aboard() bool { return len(a.r.Months) > 0 }

// decided reports whether there is a way to speak of.
func (a author) decided() bool { return a.aboard() && a.r.Answer.Way() != "" }
