package economics

import (
	"math"
	"testing"

	"coldreckon/economics/climate"
)

// A boat that winters where it is hot: the months told there have that ground's
// air, sea and sun, the others stay; a month split in two counts where half or
// more of it is spent; and an unknown ground is named.
func TestTwoGroundsInAYear(t *testing.T) {
	b := untold()
	b.Cruising.Ground, b.Cruising.Elsewhere = "maine-coast", "windward-islands"
	b.Cruising.Nights = [12]float64{0: 20, 1: 20, 2: 10, 6: 20, 7: 20}
	b.Cruising.NightsElsewhere = [12]float64{0: 20, 1: 10, 2: 4}
	home, err := climate.Find("maine-coast")
	if err != nil {
		t.Fatal(err)
	}
	away, err := climate.Find("windward-islands")
	if err != nil {
		t.Fatal(err)
	}
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	w := newWorld(&b, ground)
	homeSky, awaySky := climate.NewSky(home), climate.NewSky(away)
	for m := range 12 {
		want, sky := home, homeSky
		if m == 0 || m == 1 { // the 4 of March's 10 are fewer than half
			want, sky = away, awaySky
		}
		if w.months[m].SeaC != float64(want.Months[m].Sea) || ground.Months[m].AirMean != want.Months[m].AirMean {
			t.Errorf("month %d: sea %.1f °C, air %.1f; want %.1f, %.1f", m+1, w.months[m].SeaC, float64(ground.Months[m].AirMean), float64(want.Months[m].Sea), float64(want.Months[m].AirMean))
		}
		day := climate.MidMonthDay(m + 1)
		if *w.sky.Shape(day) != *sky.Shape(day) || math.Abs(w.sky.SunKWh(day, 0.3)-sky.SunKWh(day, 0.3)) > 1e-12 {
			t.Errorf("month %d: another ground's sky", m+1)
		}
	}
	if w.aboard > 1 && w.months[w.aboard].SeaC < w.months[0].SeaC {
		t.Errorf("the hottest month aboard is %d", w.aboard+1)
	}

	// Food is no colder for a winter in the tropics than for one in Maine.
	stay := b
	stay.Cruising.Elsewhere = NoElsewhere
	keeps := func(b Boat) float64 {
		r, err := typically(b)
		if err != nil {
			t.Fatal(err)
		}
		return r.Of(IceOnly).AsTold.year.keptShare
	}
	if hot, cool := keeps(b), keeps(stay); hot >= cool {
		t.Errorf("ice keeps %.2f of the days with a winter in the tropics, %.2f without", hot, cool)
	}
	b.Cruising.Elsewhere = "nowhere-at-all"
	if _, err := b.Ground(); err == nil {
		t.Error("an unknown second ground is taken")
	}
}

// By hand: 20 nights at home of which half are kept, 30 away of which 24 and 3 are
// in two months: 0.5 against 0.9. Within 2 in 100 neither decides.
func TestGroundsByHand(t *testing.T) {
	b := untold()
	b.Cruising.Ground, b.Cruising.Elsewhere = "maine-coast", "windward-islands"
	b.Cruising.Nights = [12]float64{0: 25, 1: 5, 6: 20}
	b.Cruising.NightsElsewhere = [12]float64{0: 25, 1: 5}
	r := &Reckoning{Boat: b, Ground: must(b.Ground()), Months: []MonthFigures{{Month: 1, Nights: 25}, {Month: 2, Nights: 5}, {Month: 7, Nights: 20}}}
	for i, id := range Options {
		r.Options[i].ID = id
	}
	months := &r.Of(SmallUnit).FittedMonths
	for _, row := range []struct {
		here    float64
		decides int
	}{{0.5, 0}, {0.91, -1}, {1, 1}} {
		months[0].Cold, months[1].Cold, months[6].Cold = 0.96, 0.6, row.here
		parts, decides := r.Grounds(SmallUnit)
		if len(parts) != 2 || decides != row.decides || parts[0].ID != "maine-coast" || parts[1].ID != "windward-islands" ||
			parts[0].Nights != 20 || parts[1].Nights != 30 || math.Abs(parts[1].KeptShare-0.9) > 1e-12 || math.Abs(parts[0].KeptShare-row.here) > 1e-12 {
			t.Errorf("%+v, decides %d, want %d", parts, decides, row.decides)
		}
	}
	if parts, _ := r.Grounds(DryStores); parts != nil {
		t.Error("dry stores have parts")
	}
	r.Boat.Cruising.Elsewhere = NoElsewhere
	if parts, _ := r.Grounds(SmallUnit); parts != nil {
		t.Error("one ground has parts")
	}
}
