package economics

import (
	"fmt"
	"math"

	"coldreckon/economics/energy"
	"coldreckon/economics/quantity"
)

// QuotationFigures is one quotation in the boat's box with the work found for
// it, beside the others.
type QuotationFigures struct {
	Quotation Quotation
	Option    OptionID // the unit of the four ways that it would be
	Stands    bool     // whether it is the one that stands for it there
	// Unit is what it does in the hottest month aboard, in the box with its work.
	Unit    UnitFigures
	Figures OptionFigures
	// AsShe is the same in the box as she is, which is one box for all.
	AsShe UnitFigures
	// CheapestOf100 is in how many of 100 futures it works and costs least of
	// the quotations that work, all years counted.
	CheapestOf100 int
	// HasRoom tells whether all that has to go in goes in beside its plate;
	// GoesThrough and GoesOnWall whether the plate goes through the lid's opening
	// and on a wall.
	HasRoom                 bool
	GoesThrough, GoesOnWall quantity.Tri
	Unsaid                  []Unsaid
	// SlowAhPerDay is what it takes at its slowest speed; 0 where its speed
	// cannot be set.
	SlowAhPerDay float64
	// At45F and At50F is what it takes a day with the box at 7.2 and 10 °C.
	At45FAhPerDay, At50FAhPerDay float64
	// ColdStoreHours is how long box and food take to warm to 5 °C when they
	// were run down to 1 °C on shore power before leaving; a cold-storing plate
	// adds its own hours. 0 where they would not warm.
	ColdStoreHours float64
}

// MostQuotations is how many quotations are weighed; more are an error.
const MostQuotations = 12

// weighed are the quotations studied.
type weighedOffers struct {
	figures []QuotationFigures
	best    map[OptionID]*studied // the one that stands for a unit
	stands  map[OptionID]int      // its number
}

// stand gives the boat with the best quotations standing for her units.
func (w *weighedOffers) stand(b Boat, book *Book) Boat {
	for _, id := range [2]OptionID{SmallUnit, LargerUnit} {
		if k, ok := w.stands[id]; ok {
			b = b.offered(&w.figures[k].Quotation, book)
		}
	}
	return b
}

// weighQuotations studies every quotation of a boat on the ground of the four
// ways. Of those taken for the same unit that one stands which is the cheapest
// that works in most futures; of equals the one that works in more, then the
// cheaper one.
func (s *study) weighQuotations(b *Boat) (*weighedOffers, error) {
	out := &weighedOffers{best: map[OptionID]*studied{}, stands: map[OptionID]int{}}
	if len(b.Quotations) > MostQuotations {
		return nil, fmt.Errorf("quotations: %d are too many. Give at most %d", len(b.Quotations), MostQuotations)
	}
	var cases []*studied
	var fitted []*proposal
	for i := range b.Quotations {
		q := &b.Quotations[i]
		boat := b.offered(q, s.book)
		id := q.Option(b)
		c, err := s.study(&boat, id)
		if err != nil {
			return nil, fmt.Errorf("quotation %q: %w", q.Name, err)
		}
		f := QuotationFigures{Quotation: *q, Option: id, Unit: c.fitted.unitFigures(), AsShe: c.told.unitFigures(), HasRoom: c.fitted.hasRoom(), Unsaid: q.Unsaid(),
			GoesThrough: q.GoesThrough(boat.Box), GoesOnWall: q.GoesOnWall(boat.Box, c.fitted.fit.lining(boat.Box))}
		f.other(c.fitted)
		cases, fitted, out.figures = append(cases, c), append(fitted, c.fitted), append(out.figures, f)
	}
	rows, _, err := trials(fitted, s.futures, s.seed)
	if err != nil {
		return nil, err
	}
	for i, c := range cases {
		c.figures.count(rows[i])
		out.figures[i].Figures = c.figures
	}
	cheapest := func(among func(i int) bool) []int {
		wins := make([]int, len(rows))
		for k := range s.futures {
			best := -1
			for i := range rows {
				if among(i) && rows[i][k].Works && (best < 0 || rows[i][k].Yearly < rows[best][k].Yearly) {
					best = i
				}
			}
			if best >= 0 {
				wins[best]++
			}
		}
		return wins
	}
	for i, n := range cheapest(func(int) bool { return true }) {
		out.figures[i].CheapestOf100 = int(math.Round(100 * float64(n) / float64(len(s.futures))))
	}
	for _, id := range [2]OptionID{SmallUnit, LargerUnit} {
		best := -1
		wins := cheapest(func(i int) bool { return out.figures[i].Option == id })
		for i := range out.figures {
			f := &out.figures[i]
			if f.Option == id && (best < 0 || wins[i] > wins[best] || wins[i] == wins[best] && f.before(&out.figures[best])) {
				best = i
			}
		}
		if best >= 0 {
			out.figures[best].Stands = true
			out.best[id], out.stands[id] = cases[best], best
		}
	}
	return out, nil
}

// before tells whether a quotation that wins no more often than another stands
// before it.
func (f *QuotationFigures) before(other *QuotationFigures) bool {
	a, b := f.Figures.WorksOf100, other.Figures.WorksOf100
	return a > b || a == b && f.Figures.Fitted.Present < other.Figures.Fitted.Present
}

// chilledC is how cold box and food are run before leaving, and limitC how warm
// they may get. Below it what stands beside the plate freezes.
const chilledC, warmestC quantity.Celsius = 1, 5

// other works out what another set-point or speed takes, and what storing cold
// in the box buys.
func (f *QuotationFigures) other(p *proposal) {
	s, r, month := p.setup(&Typical), p.refrigerator(&Typical), p.world.aboard
	mean := s.Mean(month, s.TargetC)
	coolant := quantity.Celsius(r.CoolantC(mean.CabinC, mean.SeaC))
	gain := s.Gain(month, s.TargetC)
	volts := float64(p.boat.Power.Bank().MeanVolts())
	ah := func(d energy.Duty) float64 { return float64(d.DayWh()) / volts }
	f.At45FAhPerDay, f.At50FAhPerDay = ah(r.Cycle.Duty(gain, 65.0/9, coolant)), ah(r.Cycle.Duty(gain, 10, coolant))
	if f.Quotation.Control == SpeedKnob {
		f.SlowAhPerDay = ah(r.Cycle.Slowed(gain, quantity.Celsius(s.TargetC), coolant))
	}
	if in := float64(gain.At((chilledC + warmestC) / 2)); in > 0 {
		f.ColdStoreHours = s.Box.HeatKJPerK * float64(warmestC-chilledC) / 3.6 / in
	}
}
