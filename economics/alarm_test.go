package economics

import (
	"math"
	"os"
	"testing"

	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// stopsBook is testBook with what stops unseen spoil, 8 a kilogram, and an alarm
// of 30 that lasts eight years.
func stopsBook() Book {
	book := testBook()
	units := []OptionID{SmallUnit, LargerUnit}
	book.Prices = append(book.Prices,
		PriceLine{ID: "unseen_stops", Price: quantity.Range{Low: 4, Typical: 8, High: 15}, Billing: Yearly, Options: units,
			Quantity: times{by: []string{"unseen_stops_per_year", "stop_spoils_share", "perishables_aboard_kg"}}},
		PriceLine{ID: "alarm", Price: quantity.Range{Low: 15, Typical: 30, High: 80}, Billing: Renewed, Life: quantity.Exactly(8), Options: units,
			Quantity: times{when: "alarm_added"}})
	return book
}

// Household refrigerators without an ice maker: 8 in 100 repaired within three
// years, 12 in 100 within three to four (Consumer Reports, surveys of 2006, as
// quoted on two web pages). Boats' units do not stop more rarely: one stop unseen
// in so many years lies at the rare end of the range.
func TestUnseenStopsAgainstHouseholds(t *testing.T) {
	for _, row := range []struct{ share, years float64 }{{0.08, 3}, {0.12, 3.5}} {
		if a := row.share / row.years; a < 0.75*unseenStops.Low || a > 1.25*unseenStops.Low || a > unseenStops.Typical {
			t.Errorf("%.0f of 100 in %g years are %.3f a year; the range is %v", 100*row.share, row.years, a, unseenStops)
		}
	}
}

// By hand: two aboard eat 1.2 kg each a day of which 0.3 must be cold, shops every
// two days: 2 × 1.2 × 0.3 × 2 / 2 = 0.72 kg in the mean, at 8 a kilogram 5.76. In 73
// nights a stop comes 73/365/8 = 0.025 times: 0.144 a year, of which an alarm saves
// three quarters, 0.108. Over eight years at no interest 30 is 3.75 a year.
func TestAlarmByHand(t *testing.T) {
	b := untold()
	b.Money.Years, b.Money.Discount = 8, 0
	r := &Reckoning{Boat: b, Months: []MonthFigures{{Month: 6, Nights: 30}, {Month: 7, Nights: 31}, {Month: 8, Nights: 12}}}
	a, ok := r.Alarm(stopsBook())
	for _, row := range []struct {
		name      string
		got, want float64
	}{{"kg", a.FoodKg, 0.72}, {"stops", a.StopsPerYear.Typical, 0.025}, {"lost", a.Lost.Typical, 0.144}, {"saved", a.Saved.Typical, 0.108},
		{"between", a.YearsBetween.High, 30}, {"a year", a.PricePerYear, 3.75}} {
		if !ok || !near(row.got, row.want, 1e-9) {
			t.Errorf("%s: %v, want %v", row.name, row.got, row.want)
		}
	}
	r.Boat.Box.Alarm = quantity.Yes
	if a, _ := r.Alarm(stopsBook()); !near(a.Lost.Typical, 0.036, 1e-9) || a.Saved.High != 0 {
		t.Errorf("with an alarm aboard %+v", a)
	}
	if _, ok := r.Alarm(testBook()); ok {
		t.Error("a book without prices has an alarm")
	}
	r.Boat.Food.MustBeColdShare = 0
	if _, ok := r.Alarm(stopsBook()); ok {
		t.Error("nothing cold to lose, and still an alarm")
	}
}

// The alarm is chosen after the search; a search that tries the work chosen with
// and without it, through all of its sample's seasons, comes to the same: it is
// proposed where it lowers the mean cost, by what is said, and keeps no day.
func TestAlarmAgainstTryingBoth(t *testing.T) {
	book := stopsBook()
	proposed := 0
	crews := []int{0, 2, 4, 7}
	if os.Getenv("COLDRECKON_LONG") != "" {
		crews = []int{0, 1, 2, 3, 4, 5, 6, 7}
	}
	for _, crew := range crews {
		b := dunlin()
		b.Cruising.Crew, b.Cruising.ShopEveryDays = float64(1+crew), 6
		b.Cruising.Nights = [12]float64{4: 31, 5: 30, 6: 31, 7: 31, 8: 30}
		b.Box.Volume, b.Food.KgPerPersonDay = 250, 2.4
		s := newSearch(t, &b, &book, SmallUnit, 40)
		fit, _, err := findFit(s)
		if err != nil {
			t.Fatal(err)
		}
		with := fit.Out
		with.Alarm = true
		var trials [2][]Trial
		var mean [2]float64
		for i, out := range [2]FitOut{with.without(AlarmPiece), with} {
			p, err := newProposal(&b, &book, s.world, s.leakScale, SmallUnit, out)
			if err != nil {
				t.Fatal(err)
			}
			trials[i] = make([]Trial, 40)
			if err := s.ground.run(p.crew(), s.sample, trials[i]); err != nil {
				t.Fatal(err)
			}
			for _, k := range s.sample {
				mean[i] += trials[i][k].Present / float64(len(s.sample))
			}
		}
		for _, k := range s.sample {
			if a, b := trials[0][k], trials[1][k]; a.Works != b.Works || a.KeptDays != b.KeptDays || a.First+30*s.ground.futures[k].Materials-b.First > 1e-9 {
				t.Errorf("crew %d, future %d: %+v without, %+v with an alarm", 1+crew, k, a, b)
			}
		}
		saves := mean[0] - mean[1]
		if fit.Out.Alarm != (saves > 0) {
			t.Errorf("crew %d: proposed %v, saves %.2f", 1+crew, fit.Out.Alarm, saves)
		}
		if fit.Out.Alarm {
			proposed++
			item := fit.Items[len(fit.Items)-1]
			if item.Piece != AlarmPiece || !near(item.WithoutPresent, saves, 1e-9) || !near(fit.SearchPresent, mean[1], 1e-9) {
				t.Errorf("crew %d: %+v at %.2f; it saves %.4f and leaves %.2f", 1+crew, item, fit.SearchPresent, saves, mean[1])
			}
			b.Box.Alarm = quantity.Yes
			if fit, _, err := findFit(newSearch(t, &b, &book, SmallUnit, 40)); err != nil || fit.Out.Alarm {
				t.Errorf("crew %d: an alarm beside the one aboard (%v)", 1+crew, err)
			}
		}
	}
	if proposed == 0 || proposed == len(crews) {
		t.Errorf("proposed to %d of %d boats: too few, or too many, to tell", proposed, len(crews))
	}
}

// An alarm that is aboard never costs, what stops spoil grows with food and
// nights, and ice and dry stores know no such stop.
func TestUnseenStopsMoveTheRightWay(t *testing.T) {
	book := stopsBook()
	bill := func(b Boat, id OptionID) float64 {
		w := newWorld(&b, must(b.Ground()))
		p, err := newProposal(&b, &book, &w, 1, id, FitOut{})
		if err != nil {
			t.Fatal(err)
		}
		o, err := p.calculator().outcome(&Typical, aYear{})
		if err != nil {
			t.Fatal(err)
		}
		return line(&o, "unseen_stops").Yearly
	}
	for _, seed := range inventedSeeds {
		b := plausible(seed)
		if got := bill(b, IceOnly) + bill(b, DryStores); got != 0 {
			t.Errorf("boat %d: %v without a unit", seed, got)
		}
		more, alarmed := b, b
		more.Cruising.Crew++
		alarmed.Box.Alarm = quantity.Yes
		for _, id := range refrigerated {
			is := bill(b, id)
			if is <= 0 || bill(more, id) <= is || math.Abs(bill(alarmed, id)-seenSpoils*is) > 1e-12 {
				t.Errorf("boat %d, %s: %v as she is, %v with one more aboard, %v with an alarm", seed, id, is, bill(more, id), bill(alarmed, id))
			}
		}
	}
}

// Where an alarm is all the work, the unit works as often as told as fitted, and
// both are counted on all futures: no reader sees an alarm make the food warmer.
func TestAnAlarmAloneIsCountedOnce(t *testing.T) {
	b := dunlin()
	b.Cruising.Crew, b.Cruising.ShopEveryDays, b.Food.KgPerPersonDay, b.Cruising.BeforeTrip = 7, 6, 2.4, Precooled
	b.Cruising.Nights = [12]float64{4: 31, 5: 30, 6: 31, 7: 31, 8: 30}
	b.Box.Volume, b.Box.LidSeal, b.Box.Drain = 250, heat.GoodSeal, heat.NoDrain
	for side, f := range b.Box.Faces {
		f.Foam, f.State = 0.1, heat.Dry
		b.Box.Faces[side] = f
	}
	b.Power.Battery, b.Power.SolarWp, b.Power.MaxPanelWp = 500, 300, 300
	book := stopsBook()
	r, err := Reckon(b, book, must(b.Ground()), Settings{Futures: 35, Seed: 3})
	if err != nil {
		t.Fatal(err)
	}
	o := r.Of(SmallUnit)
	if !o.Fit.Out.Alarm || o.Fit.Cools() || o.WorksOf100 == 100 || o.WorksOf100 == 0 {
		t.Fatalf("%+v, works in %d: no boat to tell by", o.Fit.Items, o.WorksOf100)
	}
	if o.AsToldWorksOf100 != o.WorksOf100 || o.AsToldFutures != 35 {
		t.Errorf("works in %d as told, of %d futures, and in %d with an alarm", o.AsToldWorksOf100, o.AsToldFutures, o.WorksOf100)
	}
}
