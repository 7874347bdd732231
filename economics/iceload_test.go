package economics

import (
	"math"
	"testing"
	"time"

	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

func reader(t *testing.T, b Boat, rows []heat.LogRow) *loadReader {
	t.Helper()
	w := newWorld(&b, groundOf(t, b))
	p, err := asDrawn(&b, &w)
	if err != nil {
		t.Fatal(err)
	}
	return p.loadReader(rows)
}

func almost(t *testing.T, name string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s %.4f, want %.4f", name, got, want)
	}
}

// A day of July in a box with all faces to the cabin, by hand. Each row fails
// when its line in spellReader.read is left out.
func TestAStayByHand(t *testing.T) {
	b := dunlin()
	b.Food.DrinksADay, b.Ice.HomeFreezer = 3, 10
	for side, f := range b.Box.Faces {
		f.Neighbour = heat.Cabin
		b.Box.Faces[side] = f
	}
	noon := time.Date(2025, 7, 14, 12, 0, 0, 0, time.UTC)
	whole := heat.IceLoad{From: noon, To: noon.Add(24 * time.Hour), Ice: 20, Left: 12}
	// By the climate: July's mean of the Maine coast and 2 K of cabin.
	g := groundOf(t, b)
	cabin := float64(g.Months[6].AirMean) + 2

	atNoon := reader(t, b, nil).cabinAt(noon)
	rows := []heat.LogRow{ // 3 K warmer than the climate at its hour; food at 6 °C
		{At: noon, Cabin: quantity.Celsius(atNoon + 3), CabinRead: true, Box: 5, BoxRead: true},
		{At: noon.Add(24 * time.Hour), Box: 7, BoxRead: true},
		{At: noon.Add(25 * time.Hour), Cabin: 50, CabinRead: true, Box: 50, BoxRead: true}, // after the stay
	}
	read := reader(t, b, rows).read(whole, false)
	almost(t, "difference with both read", float64(read.spell.Difference), cabin+3-6, 1e-9)
	almost(t, "hours", read.spell.Hours, 24, 0)
	almost(t, "melted", float64(read.spell.Melted), 8, 1e-9)
	if !read.read || read.pullDownKJ != 0 {
		t.Errorf("reads %+v", read)
	}

	unread := reader(t, b, nil).read(whole, false)
	if food := cabin - float64(unread.spell.Difference); !(food > 3 && food < 8) || unread.read {
		t.Errorf("food at %.1f °C beside 12 to 20 kg of ice, unread", food)
	}
	// 1.2 kg of perishables a day, 3.5 kJ/kg·K, from 8 °C, and 2.1 kg of drinks
	// from the cabin; these not in a trip's first 24 hours.
	food := cabin - float64(unread.spell.Difference)
	goods := (1.2*3.5*(8-food) + 2.1*4.19*(cabin-food)) / 86.4
	almost(t, "use", float64(unread.spell.Use), reader(t, b, nil).openings[6]+goods, 1e-9)
	fewer := reader(t, b, rows).read(whole, false).spell.Use - reader(t, b, rows).read(whole, true).spell.Use
	almost(t, "drinks of the first day", float64(fewer), 2.1*4.19*(cabin+3-6)/86.4, 1e-9)

	shut := whole
	shut.Shut = true
	cold := reader(t, b, []heat.LogRow{{At: noon, Box: 1, BoxRead: true}})
	almost(t, "use with the lid shut", float64(cold.read(shut, false).spell.Use), 0, 0)

	// A warm box of 90 L from the cabin at noon to 6 °C: the box, jars, perishables
	// for half of the days between shops, and a day's drinks.
	first := reader(t, b, rows).read(whole, true)
	days := min(b.Cruising.ShopEveryDays, b.Cruising.TripNights, 7)
	pullDown := (0.15*90 + 0.40*90 + 3.5*1.2*days/2 + 4.19*2.1) * (atNoon + 3 - 6)
	almost(t, "pull-down", first.pullDownKJ, pullDown, 1e-6)
	almost(t, "melted, first", float64(first.spell.Melted), 8-pullDown/(333.6+4.19*2), 0.01)

	b.Ice.FirstLoad, b.Cruising.BeforeTrip = FromHome, Precooled
	home := reader(t, b, rows).read(whole, true)
	almost(t, "melted, from the freezer into a cold box", float64(home.spell.Melted), 8+10*2.1*18/(333.6+4.19*2), 0.02)
}

// Weekends only: every stay is the first of its trip, and what was left is
// weighed on the way home. The pull-down is then a guess in every row, and the
// leak is less sure for it; a box cooled beforehand has none.
func TestWeekendsPayForAWarmBox(t *testing.T) {
	b := cruiser()
	b.Cruising.TripNights = 2
	b.Food.MustBeColdShare = 0.1
	g := groundOf(t, b)
	drawn, err := Weigh(b, g)
	if err != nil {
		t.Fatal(err)
	}
	logSD := map[BeforeTrip]float64{}
	for _, before := range []BeforeTrip{Warm, Precooled} {
		b.Cruising.BeforeTrip = before
		s := reader(t, b, nil)
		var rows []heat.LogRow
		for i := range 8 {
			stay := heat.IceLoad{From: time.Date(2025, 6, 6+7*i, 18, 0, 0, 0, time.UTC), Ice: 25, Left: 10}
			stay.To = stay.From.Add(44 * time.Hour)
			for range 20 { // what melts depends on how warm the food is beside it
				went := s.read(stay, true)
				heatKJ := (1.3*float64(drawn.Drawn.Total())*float64(went.spell.Difference)+float64(went.spell.Use))*went.spell.Hours*3.6 + went.pullDownKJ
				stay.Left = stay.Ice - quantity.Kilogram(heatKJ/heat.MeltKJPerKg(heat.DrainCelsius))
			}
			rows = append(rows, heat.LogRow{At: stay.From, Ice: stay.Ice}, heat.LogRow{At: stay.To, Left: stay.Left, LeftRead: true})
		}
		lesson, err := Learn(b, g, Log{Rows: rows})
		if err != nil {
			t.Fatal(err)
		}
		almost(t, "leak of a box "+string(before), float64(lesson.Fit.UA/drawn.Drawn.Total()), 1.3, 0.02)
		logSD[before] = lesson.Fit.LogSD
		if len(lesson.Items) != 8 {
			t.Errorf("%s: %d stays", before, len(lesson.Items))
		}
	}
	if logSD[Warm] < 1.15*logSD[Precooled] {
		t.Errorf("log-sd %v", logSD)
	}
}
