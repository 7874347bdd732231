package compare

import (
	"cmp"
	"fmt"
	"iter"
	"runtime"
	"slices"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/words"
	"coldreckon/rules"
)

// Entry is one boat to compare: complete, every answer given or assumed, with
// the buyer's answers in place; or the error that reading it met.
type Entry struct {
	File string // as it is printed; may be empty
	Boat economics.Boat
	Err  error // nil when the boat was read
}

// Row is what is kept of one boat.
type Row struct {
	File  string
	Name  string
	Error string // why it could not be reckoned; the rest is then empty

	Currency string
	System   quantity.System
	// Answer is the cold way found best, Best in how many of 100 futures, Sure
	// whether it leads alone. Works is false when none does what is wanted in
	// enough futures; Answer then comes nearest. It is empty where there is
	// nothing to decide.
	Answer economics.OptionID
	Best   int
	Sure   bool
	Works  bool
	// Way is how food is best kept cold: the answer, else the cheapest way that
	// works in nine of ten futures with the work, or the one that comes nearest
	// to it.
	Way economics.OptionID
	// Case is the kind of answer, Grade how well its figures are known.
	Case  economics.Case
	Grade economics.EvidenceGrade
	// NotTold tells that nobody described her box: what is reckoned of her is
	// that of a usual boat.
	NotTold bool
	// WhyNot says why she has no place among the others; empty where she has.
	WhyNot string
	// ToldIn is the currency that her sums were converted from, at Rate of the
	// table's currency for one of it; empty where nothing was converted.
	ToldIn string
	Rate   float64
	// Options are the four, in the order of economics.Options.
	Options [4]Option
	Box     Box
	Old     *OldUnit // nil where no dead or untried unit is told of
	Stops   []Stop
	// Unasked names what nobody told and would clear the stops that are
	// Unanswered, in plain words.
	Unasked []string
}

// Placed reports whether she has a place in the order: a way was found that
// does what is wanted, of a boat that somebody described.
func (r *Row) Placed() bool { return r.Error == "" && r.WhyNot == "" }

// Of gives the row's figures of an option; nil for an option that is none of the
// four, and in a row with an error.
func (r *Row) Of(id economics.OptionID) *Option {
	for i := range r.Options {
		if r.Options[i].ID == id {
			return &r.Options[i]
		}
	}
	return nil
}

// Option is one of the four ways on one boat.
type Option struct {
	ID             economics.OptionID
	AsTold, Fitted Case
	Work           []string       // pieces of work, in the order a yard would do them
	WorkCost       quantity.Range // at first, with all prices of the book low or all high
	Best           int            // of 100 futures, in how many it is best
	// Price is what a cold day costs with the work: low, middle and high of the
	// futures, infinite where none is won; ExtraDays how many a year it wins.
	Price     quantity.Range
	ExtraDays float64
}

// Case is an option as the boat stands, or with the work.
type Case struct {
	Works    int // of 100 futures
	ColdDays int // of 100 days aboard, in typical years
	// Money at typical inputs, with the 10th and 90th percentiles over futures:
	// paid at first, in a usual year after that, and a year all in all.
	First, PerYear, Yearly quantity.Range
}

// Stop is a caution that must be cleared before an option can be called
// suitable.
type Stop struct {
	ID      string               `json:"id"`
	Options []economics.OptionID `json:"options"` // which it concerns; empty means all
	Text    string               `json:"text"`
	// Unanswered tells that only questions which nobody answered call for it.
	Unanswered bool `json:"unanswered,omitempty"`
}

// rowOf reckons one boat, with the same settings as all others. It never
// fails: what goes wrong is the row's Error.
func rowOf(e Entry, pack rules.Pack, set economics.Settings) Row {
	row, err := reckon(e, pack, set)
	if err != nil {
		return Row{File: e.File, Name: e.Boat.Name, Error: err.Error()}
	}
	return row
}

// Compare reckons the boats in their order, as many at a time as the machine
// has cores. After each it calls progress, which may be nil, with how many are
// done and the row just made. It ends when the entries do, so that a caller who
// must stop early ends them.
func Compare(entries iter.Seq[Entry], pack rules.Pack, set economics.Settings, progress func(done int, row *Row)) Table {
	t := Table{Seed: set.Seed, Futures: set.Futures, Prices: pack.Book.Identity, BookCurrency: pack.Book.Currency}
	var underWay []chan Row // the oldest first
	finish := func() {
		t.Rows = append(t.Rows, <-underWay[0])
		underWay = underWay[1:]
		if progress != nil {
			progress(len(t.Rows), &t.Rows[len(t.Rows)-1])
		}
	}
	for e := range entries {
		if len(underWay) == runtime.GOMAXPROCS(0) {
			finish()
		}
		row := make(chan Row, 1)
		underWay = append(underWay, row)
		go func() { row <- rowOf(e, pack, set) }()
	}
	for len(underWay) > 0 {
		finish()
	}
	return t
}

func reckon(e Entry, pack rules.Pack, set economics.Settings) (row Row, err error) {
	if e.Err != nil {
		return Row{}, e.Err
	}
	defer func() { // a fault in one boat must not stop the rest
		if fault := recover(); fault != nil {
			err = fmt.Errorf("found a fault in the program itself: %v", fault)
		}
	}()
	ground, err := e.Boat.Ground()
	if err != nil {
		return Row{}, err
	}
	r, err := economics.Reckon(e.Boat, pack.Book, ground, set)
	if err != nil {
		return Row{}, err
	}
	row = Row{
		File: e.File, Name: e.Boat.Name, Currency: e.Boat.Currency, System: e.Boat.Units,
		Answer: r.Answer.Way(), Best: r.Answer.WayOf100, Sure: len(r.Answer.Ways) == 1, Works: works(r.Answer.Case),
		Case: r.Answer.Case, Grade: r.Answer.Grade, NotTold: !described(&e.Boat), Box: boxOf(r), Old: oldUnitOf(r, pack.Book),
	}
	var sets []economics.Facts
	for i := range r.Options {
		row.Options[i] = optionOf(r, &r.Options[i], pack.Book)
		sets = append(sets, r.Options[i].Fitted.Facts)
	}
	row.Way = row.coldWay()
	if other := r.Answer.Otherwise; other != "" { // the best that no hazard forbids
		row.Way = other
	}
	row.WhyNot = whyNot(&row, r, pack.Book)
	findings, err := pack.Judge(sets...)
	if err != nil {
		return Row{}, err
	}
	for _, f := range findings {
		if f.Grade != rules.Stop {
			continue
		}
		s := Stop{ID: f.ID, Options: []economics.OptionID{}, Text: quantity.Local(f.Text, e.Boat.Units)}
		if len(f.Options) < len(economics.Options) {
			s.Options = f.Options
		}
		unasked, err := unansweredBehind(f.ID, pack, sets)
		if err != nil {
			return Row{}, err
		}
		s.Unanswered = len(unasked) > 0
		for _, name := range unasked {
			if !slices.Contains(row.Unasked, name) {
				row.Unasked = append(row.Unasked, name)
			}
		}
		row.Stops = append(row.Stops, s)
	}
	return row, nil
}

// works tells whether a way was found that does what is wanted.
func works(c economics.Case) bool {
	switch c {
	case economics.NoRoomAtAll, economics.CoolOnly, economics.NoneReaches:
		return false
	}
	return true
}

// enough is in how many of 100 futures a way must work to be called cold
// enough: what the search for work aims at.
const enough = 90

func (r *Row) coldWay() economics.OptionID {
	if r.Works && r.Answer != "" {
		return r.Answer
	}
	return slices.MinFunc(coldWays[:], func(a, b economics.OptionID) int {
		x, y := r.Of(a).Fitted, r.Of(b).Fitted
		return cmp.Or(cmp.Compare(min(y.Works, enough), min(x.Works, enough)), cmp.Compare(x.Yearly.Typical, y.Yearly.Typical))
	})
}

// StopsFor gives the stops that concern an option, those left out that come
// only from unanswered questions.
func (r *Row) StopsFor(id economics.OptionID) []Stop {
	var out []Stop
	for _, s := range r.Stops {
		if !s.Unanswered && (len(s.Options) == 0 || slices.Contains(s.Options, id)) {
			out = append(out, s)
		}
	}
	return out
}

func optionOf(r *economics.Reckoning, o *economics.OptionFigures, book economics.Book) Option {
	out := Option{
		ID: o.ID, Best: o.BestOf100, Price: o.PriceOfCold, ExtraDays: o.ExtraDays.Typical, Work: []string{},
		AsTold: caseOf(&o.AsTold, o.AsToldWorksOf100, o.AsToldBands), Fitted: caseOf(&o.Fitted, o.WorksOf100, o.FittedBands),
	}
	told := words.Of(r, book).Work(o.ID)
	for _, item := range o.Fit.Items {
		text := words.Piece(item, &r.Boat)
		if item.Piece == economics.ColdStartPiece { // how to start cold is another thing on each way
			if i := slices.IndexFunc(told, func(w words.Work) bool { return w.Piece == item.Piece }); i >= 0 {
				text = told[i].What
			}
		}
		out.Work = append(out.Work, text)
	}
	for _, c := range o.PieceCosts {
		out.WorkCost = out.WorkCost.Plus(c.Cost)
	}
	return out
}

func caseOf(o *economics.Outcome, works int, bands economics.Bands) Case {
	band := func(typical float64, b quantity.Range) quantity.Range {
		return quantity.Range{Low: min(b.Low, typical), Typical: typical, High: max(b.High, typical)}
	}
	cold, _ := o.Shares()
	return Case{
		Works: works, ColdDays: int(100*cold + 0.5),
		First: band(o.First, bands.First), PerYear: band(o.PerYear, bands.PerYear), Yearly: band(o.Yearly, bands.Yearly),
	}
}
