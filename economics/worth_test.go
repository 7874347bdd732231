package economics

import (
	"math"
	"slices"
	"testing"

	"coldreckon/economics/quantity"
)

// answered gives the answer of a boat whose ways are fitted with the work drawn
// for them, in place of that of a search, with the trials it was read from. What
// she lives through is lived once: no worth changes it.
func (p *pond) answered(worth quantity.Money) (*Reckoning, [][]Trial) {
	b := p.changed(func(b *Boat) {
		b.Money.ColdDayWorth = worth
		if worth > 0 {
			b.Known["money.cold_day_worth"] = quantity.Told
		}
	})
	w, _ := p.place(&b)
	r := &Reckoning{Boat: b}
	var ps []*proposal
	for i, id := range Options {
		q, err := newProposal(&b, &p.book, &w, 1, id, p.work[id])
		if err != nil {
			p.t.Fatal(err)
		}
		r.Options[i].ID = id
		r.Options[i].Fitted, err = q.calculator().outcome(&Typical, aYear{nights: 1})
		if err != nil {
			p.t.Fatal(err)
		}
		r.Options[i].AsTold = r.Options[i].Fitted
		ps = append(ps, q)
	}
	if p.weighed == nil {
		var err error
		if p.weighed, _, err = trials(ps, p.futures, p.seed); err != nil {
			p.t.Fatal(err)
		}
	}
	var rows [][]Trial
	for _, row := range p.weighed {
		rows = append(rows, slices.Clone(row))
	}
	for i := range r.Options {
		r.Options[i].count(rows[i])
	}
	for _, row := range rows { // each way is made to reach, so that there is something to weigh
		for k := range row {
			row[k].Works = true
		}
	}
	for _, id := range cold {
		r.Of(id).WorksOf100 = 100
	}
	r.Answer = r.answer(rows)
	return r, rows
}

// A higher worth never turns cold into going without, and the count at a worth,
// told or untold, is that of the futures whose price, the yearly cost over the
// days won, is no higher: counted here again.
func TestWorthIsOrderly(t *testing.T) {
	yes := 0
	eachPond(t, func(p *pond) {
		was, wasWorth := 0, quantity.Money(0)
		for _, worth := range []quantity.Money{0, 0.5, 1, 2, 3, 5, 8, 12, 20, 40, 80} {
			r, rows := p.answered(worth)
			a := &r.Answer
			if a.Case == NoNights || a.Case == NothingCold {
				return
			}
			counted := func(w float64) int {
				n := 0
				for k := range p.futures {
					trial := &rows[slices.Index(Options[:], a.Way())][k]
					if trial.ExtraDays > 1e-9 && math.Max(0, trial.Yearly)/trial.ExtraDays <= w {
						n++
					}
				}
				return int(math.Round(100 * float64(n) / pondFutures))
			}
			for _, c := range a.Counts {
				if got := counted(c.Worth); got != c.Of100 {
					t.Errorf("boat %d: %d of 100 at %v, says the answer; counted %d", p.seed, c.Of100, c.Worth, got)
				}
			}
			if worth == 0 {
				continue
			}
			if got := counted(float64(worth)); got != a.YesOf100[0] || got != a.YesOf100[1] {
				t.Errorf("boat %d: %v of 100 at %v told; counted %d", p.seed, a.YesOf100, worth, got)
			}
			if was >= 60 && a.YesOf100[0] < 60 || was >= 41 && a.YesOf100[0] < 41 {
				t.Errorf("boat %d: at %v a day %d of 100 say yes, at %v only %d, by %s", p.seed, wasWorth, was, worth, a.YesOf100[0], a.Way())
			}
			was, wasWorth = a.YesOf100[0], worth
		}
		if was >= 60 {
			yes++
		}
	})
	if yes == 0 {
		t.Error("at no worth is cold ever worth it")
	}
}
