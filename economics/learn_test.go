package economics

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"coldreckon/economics/climate"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/economics/season"
)

// cruiser is a boat whose log can be learned from: aboard from June to
// September, a stop every other day.
func cruiser() Boat {
	b := dunlin()
	b.Cruising.Nights = [12]float64{5: 30, 6: 31, 7: 31, 8: 30}
	b.Cruising.TripNights = 14
	b.Cruising.ShopEveryDays = 2
	b.Ice.FoundAtStops, b.Ice.CarryLoss, b.Ice.HomeFreezer, b.Food.DrinksADay = 1, 0, 10, 3
	return b
}

func groundOf(t *testing.T, b Boat) climate.Ground {
	t.Helper()
	g, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// keptAboard runs a season of the model with a leak and a use that the answers
// know nothing of, in weather of its own, and writes down what its owner would
// see: ice put in, what was left before it, and on request both temperatures,
// morning and evening.
func keptAboard(t *testing.T, b Boat, leak, use float64, seed uint64, temperatures bool) []heat.LogRow {
	t.Helper()
	w := newWorld(&b, groundOf(t, b))
	p, err := newProposal(&b, nil, &w, leak, IceOnly, FitOut{})
	if err != nil {
		t.Fatal(err)
	}
	truth := Typical
	truth.Use, truth.Drinks = use, use
	var air weatherYears
	air.fill(&b, &w, &truth, stream{seed, 1}, 1)
	s := p.setup(&truth)
	var trace season.Trace
	var tally season.Tally
	plan := s.IcePlan(p.icing(&Typical))
	s.Ice(&air.years[0], &plan, &tally, &trace)

	var rows []heat.LogRow
	first := time.Date(2025, 1, w.plan.Nights[0].Day, 12, 0, 0, 0, time.UTC)
	for i, h := range trace.Hours {
		now := first.Add(time.Duration(i) * time.Hour)
		row := heat.LogRow{At: now}
		if temperatures && (h.Clock == 8 || h.Clock == 20) {
			row.Box, row.Cabin, row.BoxRead, row.CabinRead = quantity.Celsius(h.FoodC), quantity.Celsius(h.CabinC), true, true
			rows = append(rows, row)
		}
		if h.Hour%(24*b.shopEvery()) == 0 {
			was := 0.0
			if h.Hour > 0 {
				was = trace.Hours[i-1].IceKg
				row.Left, row.LeftRead = quantity.Kilogram(was), true
			}
			// What went in is there after the hour, or melted in it; weighed to 0.1 kg.
			row.Ice = quantity.Kilogram(math.Round(10*(h.IceKg+h.MeltedKg-was)) / 10)
			rows = append(rows, row)
		}
		if i+1 == len(trace.Hours) || trace.Hours[i+1].Trip != h.Trip {
			rows = append(rows, heat.LogRow{At: now.Add(59 * time.Minute), Left: quantity.Kilogram(h.IceKg), LeftRead: true})
		}
	}
	return rows
}

// A season of the model itself, with daily weather that only the thermometers
// see, teaches the leak that it ran with: inside two of the stated standard
// errors in about 95 of 100 seasons, as of any normal error. Guards months,
// hours, the food's warmth beside dwindling ice, the first loads and the
// readings: without any of them the share or the bias fails.
func TestLearnFromASeason(t *testing.T) {
	b := cruiser()
	g := groundOf(t, b)
	drawn, err := Weigh(b, g)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		name         string
		temperatures bool
		bias         float64 // most, of the mean of ln leak
	}{
		{"ice alone", false, 0.12},
		{"ice and temperatures", true, 0.06},
	} {
		const seasons = 60
		inside, bias := 0, 0.0
		for seed := range uint64(seasons) {
			r := rand.New(rand.NewPCG(seed, 7))
			leak, use := 0.6+1.4*r.Float64(), 0.6+r.Float64()
			lesson, err := Learn(b, g, Log{Rows: keptAboard(t, b, leak, use, seed, row.temperatures)})
			if err != nil {
				t.Fatalf("%s, season %d: %v", row.name, seed, err)
			}
			off := math.Log(float64(lesson.Fit.UA) / leak / float64(drawn.Drawn.Total()))
			bias += off / seasons
			if math.Abs(off) < 2*lesson.Fit.LogSD {
				inside++
			}
			if lesson.Fit.LogSD > 0.2 || (lesson.Read > 0) != row.temperatures {
				t.Errorf("%s, season %d: log-sd %.2f, read %d", row.name, seed, lesson.Fit.LogSD, lesson.Read)
			}
		}
		if share := float64(inside) / seasons; share < 0.9 || math.Abs(bias) > row.bias {
			t.Errorf("%s: the truth inside two standard errors in %.2f of the seasons, bias %.3f", row.name, share, bias)
		}
	}
}

// Stays with the lid shut tell use from leak. A thick box for four, where food
// brings a third of the heat, is logged a summer in use and a summer shut up.
func TestLearnUseApart(t *testing.T) {
	b := cruiser()
	b.Cruising.Crew, b.Food.MustBeColdShare = 4, 0.8
	for side, f := range b.Box.Faces {
		f.Foam, f.State = 0.075, heat.Dry
		b.Box.Faces[side] = f
	}
	b.Box.LidSeal, b.Box.Drain = heat.GoodSeal, heat.TrappedDrain
	g := groundOf(t, b)
	drawn, err := Weigh(b, g)
	if err != nil {
		t.Fatal(err)
	}
	const seasons = 20
	inside := 0
	for seed := range uint64(seasons) {
		r := rand.New(rand.NewPCG(seed, 8))
		leak, use := 0.7+0.6*r.Float64(), 0.6+r.Float64()
		rows := keptAboard(t, b, leak, use, seed, true)
		for _, row := range keptAboard(t, b, leak, 0, seed+100, true) {
			row.At, row.Shut = row.At.AddDate(1, 0, 0), true
			rows = append(rows, row)
		}
		lesson, err := Learn(b, g, Log{Rows: rows})
		if err != nil {
			t.Fatal(err)
		}
		if lesson.Record.UseLogSD == 0 {
			t.Errorf("season %d: nothing learned of use: %+v", seed, lesson.Fit)
			continue
		}
		ofLeak := math.Log(float64(lesson.Fit.UA) / leak / float64(drawn.Drawn.Total()))
		ofUse := math.Log(lesson.Record.Use / use)
		if math.Abs(ofLeak) < 2*lesson.Fit.LogSD && math.Abs(ofUse) < 2*float64(lesson.Record.UseLogSD) {
			inside++
		}
	}
	if inside < seasons*85/100 {
		t.Errorf("leak and use both inside two standard errors in %d of %d seasons", inside, seasons)
	}
}

// What was learned before does not colour what is learned now.
func TestLearnAgain(t *testing.T) {
	b := cruiser()
	rows := keptAboard(t, b, 1.2, 1.1, 5, true)
	once, err := Learn(b, groundOf(t, b), Log{Rows: rows})
	if err != nil {
		t.Fatal(err)
	}
	b.Evidence = b.Evidence.WithLog(heat.Learnt{Of: heat.OfIce, From: "2024-07-01", To: "2024-07-31", UA: 9, LogSD: 0.1, Use: 4, UseLogSD: 0.1})
	again, err := Learn(b, groundOf(t, b), Log{Rows: rows})
	if err != nil {
		t.Fatal(err)
	}
	if once.Record != again.Record {
		t.Errorf("learned %+v, then %+v", once.Record, again.Record)
	}
	if once.Blurred == 0 || once.TooLong != 0 || len(once.Items) != once.Record.Rows || once.Items[0].Residual != once.Fit.Residuals[0] {
		t.Errorf("lesson %+v", once)
	}
}

// warmingBox gives readings every quarter hour of a box of known leak whose
// water warms in a steady cabin, with a thermometer's errors of 0.2 K.
func warmingBox(r *rand.Rand, ua, capacityKJPerK float64) []heat.LogRow {
	var rows []heat.LogRow
	for i := range 80 {
		h := float64(i) / 4
		box := 26 - 22*math.Exp(-3.6*ua*h/capacityKJPerK) + 0.2*r.NormFloat64()
		rows = append(rows, heat.LogRow{At: time.Date(2025, 7, 1, 8, 15*i, 0, 0, time.UTC),
			Box: quantity.Celsius(box), Cabin: 26, BoxRead: true, CabinRead: true})
	}
	return rows
}

// A box of 90 L with 10 kg of water, by hand: 0.15·90 + 4.19·10 = 55.4 kJ/K.
// Guards the water and the liner in learnTemperatures.
func TestLearnFromTemperatures(t *testing.T) {
	b := dunlin()
	r := rand.New(rand.NewPCG(3, 4))
	for _, ua := range []float64{0.5, 1.2, 2.4} {
		rows := warmingBox(r, ua, 0.15*90+4.19*10)
		lesson, err := Learn(b, groundOf(t, b), Log{Rows: rows, Water: 10, WaterTold: true})
		if err != nil {
			t.Fatal(err)
		}
		if off := math.Abs(float64(lesson.Fit.UA) - ua); off > 3*float64(lesson.Fit.UASE) || off > 0.05*ua {
			t.Errorf("learned %.3f ± %.3f W/K of a box of %.1f", float64(lesson.Fit.UA), float64(lesson.Fit.UASE), ua)
		}
		if got := lesson.Record; got.Of != heat.OfTemperatures || got.Rows != 80 || got.From != "2025-07-01" || got.To != "2025-07-02" || got.Use != 0 {
			t.Errorf("keeps %+v", got)
		}
		empty, err := Learn(b, groundOf(t, b), Log{Rows: rows, WaterTold: true})
		if err == nil && empty.Fit.LogSD <= lesson.Fit.LogSD {
			t.Errorf("an empty box is as sure, %.2f, as one with water, %.2f", empty.Fit.LogSD, lesson.Fit.LogSD)
		}
	}
}

// Each row names, by the words of its error, the refusal that it guards.
func TestLearnRefuses(t *testing.T) {
	b := cruiser()
	good := func() []heat.LogRow { return keptAboard(t, b, 1, 1, 1, false) }
	weekend := func(x []heat.LogRow) []heat.LogRow { // bought weekly, nothing said of what was left
		var out []heat.LogRow
		for i := range 8 {
			out = append(out, heat.LogRow{At: x[0].At.AddDate(0, 0, 21*i), Ice: 10})
		}
		return out
	}
	for want, row := range map[string]struct {
		spoil func([]heat.LogRow) []heat.LogRow
		water bool
	}{
		"has 3 spells":        {func(x []heat.LogRow) []heat.LogRow { return x[:4] }, false},
		"longer than a trip":  {weekend, false},
		"more than there was": {func(x []heat.LogRow) []heat.LogRow { x[3].Left = 300; return x }, false},
		"leak nothing":        {func(x []heat.LogRow) []heat.LogRow { return unmelted(x) }, false},
		"scatters":            {func(x []heat.LogRow) []heat.LogRow { return fitful(x) }, false},
		"no row with both":    {func(x []heat.LogRow) []heat.LogRow { return []heat.LogRow{{At: x[0].At, Box: 4, BoxRead: true}} }, false},
		"how much had to":     {func([]heat.LogRow) []heat.LogRow { return warmingBox(rand.New(rand.NewPCG(1, 1)), 1, 60) }, false},
		"changed by":          {func([]heat.LogRow) []heat.LogRow { return constant() }, true},
		"at least 6":          {func([]heat.LogRow) []heat.LogRow { return constant()[:5] }, true},
	} {
		lesson, err := Learn(b, groundOf(t, b), Log{Rows: row.spoil(good()), Water: 10, WaterTold: row.water})
		if err == nil {
			t.Errorf("%s: no error, %+v", want, lesson.Fit)
		} else if !strings.Contains(err.Error(), want) {
			t.Errorf("got %q; want it to say %q", err, want)
		}
	}
}

// unmelted gives a log whose ice does not melt: all that is there is left.
func unmelted(rows []heat.LogRow) []heat.LogRow {
	var there quantity.Kilogram
	for i := range rows {
		rows[i].Left = there
		there += rows[i].Ice
		rows[i].LeftRead = i > 0
	}
	return rows
}

// fitful gives a log of two-day stays in which all or nearly nothing melts.
func fitful(rows []heat.LogRow) []heat.LogRow {
	var out []heat.LogRow
	for i := range 6 {
		left := quantity.Kilogram(0.2)
		if i%3 != 0 {
			left = 39.9
		}
		out = append(out, heat.LogRow{At: rows[0].At.AddDate(0, 0, 2*i), Ice: 40 - left, Left: left, LeftRead: true})
	}
	return out
}

func constant() []heat.LogRow {
	rows := warmingBox(rand.New(rand.NewPCG(1, 1)), 1, 60)
	for i := range rows {
		rows[i].Box = 4
	}
	return rows
}

// What was learned is one more view of the leak: it narrows the range, and
// draws the middle towards itself. The use moves and narrows likewise; a
// lesson of no use leaves it alone.
func TestALogNarrowsLeakAndUse(t *testing.T) {
	b := dunlin()
	g := groundOf(t, b)
	before, err := Weigh(b, g)
	if err != nil {
		t.Fatal(err)
	}
	record := heat.Learnt{Of: heat.OfIce, From: "2025-06-01", To: "2025-08-01", UA: 1.2 * before.Leak, LogSD: 0.15, Use: 1.3, UseLogSD: 0.15}
	b.Evidence = b.Evidence.WithLog(record)
	after, err := Weigh(b, g)
	if err != nil {
		t.Fatal(err)
	}
	if !(before.Leak < after.Leak && after.Leak < record.UA) || after.LeakHigh/after.LeakLow >= before.LeakHigh/before.LeakLow {
		t.Errorf("leak %.2f (%.2f to %.2f), was %.2f (%.2f to %.2f)", after.Leak, after.LeakLow, after.LeakHigh, before.Leak, before.LeakLow, before.LeakHigh)
	}
	// By hand, inverse variances: ln 1.3 · 0.15⁻²/(0.15⁻² + 0.2704⁻²) = 0.2006, sd 0.1312.
	use := b.Evidence.Use()
	for name, pair := range map[string][2]float64{
		"use": {use.Typical, math.Exp(0.2006)}, "low": {use.Low, math.Exp(0.2006 - quantity.NormalP90*0.1312)}, "high": {use.High, math.Exp(0.2006 + quantity.NormalP90*0.1312)},
	} {
		if math.Abs(pair[0]-pair[1]) > 0.001 {
			t.Errorf("%s %.4f, by hand %.4f", name, pair[0], pair[1])
		}
	}
	w := newWorld(&b, g)
	p, err := asDrawn(&b, &w)
	if err != nil {
		t.Fatal(err)
	}
	setup := p.setup(&Typical)
	if got, want := setup.Goods.PerishableKgPerDay, 2*1.5*0.4*use.Typical; math.Abs(got-want) > 1e-9 {
		t.Errorf("%.3f kg of goods a day, want %.3f", got, want)
	}
	for _, in := range inputs(&b, &Book{}, &w, &after) {
		if in.Name == "use" && (in.Typical != use.Typical || math.Abs(in.Typical*in.Factor.High-use.High) > 1e-9 || math.Abs(in.Typical*in.Factor.Low-use.Low) > 1e-9) {
			t.Errorf("futures draw the use from %v times %.3f", in.Factor, in.Typical)
		}
	}
	record.Use, record.UseLogSD = 0, 0
	if got := (Evidence{Logs: []heat.Learnt{record}}).Use(); got != (quantity.Range{Low: 0.7, Typical: 1, High: 1.4}) {
		t.Errorf("use %v without a word of it", got)
	}
}

// The same days count once: a log read again replaces itself, one of other
// days or of another kind stays.
func TestLogsCountOnce(t *testing.T) {
	july := heat.Learnt{Of: heat.OfIce, From: "2025-07-01", To: "2025-07-31", UA: 1, LogSD: 0.2}
	summer, lastYear, warming := july, july, july
	summer.To, lastYear.From, lastYear.To, warming.Of = "2025-08-31", "2024-07-01", "2024-07-31", heat.OfTemperatures
	e := Evidence{}.WithLog(july).WithLog(lastYear).WithLog(warming).WithLog(july).WithLog(summer)
	if len(e.Logs) != 3 || e.Logs[0] != lastYear || e.Logs[1] != warming || e.Logs[2] != summer {
		t.Errorf("keeps %+v", e.Logs)
	}
}
