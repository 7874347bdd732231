package handout

import (
	"math"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"coldreckon/economics"
	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/report/sheet"
	"coldreckon/rules"
)

func pack(t *testing.T) (rules.Pack, rules.Foods) {
	t.Helper()
	p, err := rules.Load()
	if err != nil {
		t.Fatal(err)
	}
	f, err := rules.LoadFoods()
	if err != nil {
		t.Fatal(err)
	}
	return p, f
}

func sheets(t *testing.T, ground string, sys quantity.System) *Handout {
	t.Helper()
	g, err := climate.Find(ground)
	if err != nil {
		t.Fatal(err)
	}
	p, f := pack(t)
	h, err := New(g, sys, p, f)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

func file(t *testing.T, h *Handout, paper sheet.Paper) []byte {
	t.Helper()
	b, err := h.Document("coldreckon").PDF(sheet.Info{Author: "coldreckon", Lang: "en-GB", Date: time.Unix(1767225600, 0), Paper: paper})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// reader is a person with the two sheets: all figures come from the PDF.
type reader struct {
	sys    quantity.System
	foam   map[string][]float64 // table A, by material; dry, damp, wet, soaked
	leak   grid                 // B
	months map[string][]float64 // C: air, degrees, sun, Ah
	heats  []float64            // D
	ice    []float64
	ah     [3][]float64
	most   []float64
	money  grid // E
	steps  map[string]string
}

func read(t *testing.T, pdf []byte, sys quantity.System) reader {
	t.Helper()
	items := textOf(t, pdf)
	r := reader{sys: sys, foam: map[string][]float64{}, months: map[string][]float64{}, steps: map[string]string{}}
	figures := func(cells []string) []float64 {
		var out []float64
		for _, s := range cells {
			out = append(out, number(t, s))
		}
		return out
	}
	for _, row := range readTable(t, items, "A") {
		if len(row) == 5 && row[0] != "Share of its thickness" {
			r.foam[row[0]] = figures(row[1:])
		}
	}
	r.leak = readGrid(t, readTable(t, items, "B"), map[quantity.System]string{quantity.Metric: "L", quantity.US: "cu ft"}[sys])
	for _, row := range readTable(t, items, "C") {
		if len(row) == 5 && len(row[0]) == 3 {
			r.months[row[0]] = figures(row[1:])
		}
	}
	for _, row := range readTable(t, items, "D") {
		switch {
		case row[0] == "most":
			r.most = figures(row[1:])
		case len(row) == 8 && !strings.HasPrefix(row[0], "Heat"):
			f := figures(row)
			r.heats, r.ice = append(r.heats, f[0]), append(r.ice, f[1])
			for i := range r.ah {
				r.ah[i] = append(r.ah[i], f[3+2*i])
			}
		}
	}
	r.money = readGrid(t, readTable(t, items, "E"), "years")
	// The steps: a number in bold at the left, its text to the right of it.
	var mark string
	for _, i := range items {
		if i.page != 1 {
			continue
		}
		if regexp.MustCompile(`^\d{1,2}$`).MatchString(i.text) {
			mark = i.text
		} else if mark != "" {
			r.steps[mark] += i.text + " "
		}
	}
	if len(r.foam) != 5 || len(r.months) != 12 || len(r.heats) != 10 || len(r.most) != 3 || len(r.steps) != 20 {
		t.Fatalf("read %d materials, %d months, %d heats, %d most, %d steps", len(r.foam), len(r.months), len(r.heats), len(r.most), len(r.steps))
	}
	return r
}

// in finds figures in a step's text by an expression with groups.
func (r reader) in(t *testing.T, step, expression string) []float64 {
	t.Helper()
	m := regexp.MustCompile(expression).FindStringSubmatch(strings.ReplaceAll(r.steps[step], "  ", " "))
	if m == nil {
		t.Fatalf("step %s is %q; it lacks %s", step, r.steps[step], expression)
	}
	var out []float64
	for _, s := range m[1:] {
		out = append(out, number(t, s))
	}
	return out
}

// leakBetween reads the leak table between its columns and rows.
func (r reader) leakBetween(t *testing.T, volume, foam float64) float64 {
	var at, column []float64
	for i, v := range r.leak.down {
		at, column = append(at, number(t, v)), append(column, interpolate(foam, r.leak.across, r.leak.cells[i]))
	}
	return interpolate(volume, at, column)
}

// lookupLeak takes the nearest column and the nearest row, as line 3 tells.
func (r reader) lookupLeak(t *testing.T, volume, foam float64) float64 {
	var down []float64
	for _, v := range r.leak.down {
		down = append(down, number(t, v))
	}
	return r.leak.cells[nearest(volume, down)][nearest(foam, r.leak.across)]
}

// lookupMoney takes the row of the life, or of the next shorter one.
func (r reader) lookupMoney(t *testing.T, life string, years float64) float64 {
	column := slices.Index(r.money.across, years)
	row := slices.Index(r.money.down, life)
	if row < 0 {
		for i, name := range r.money.down {
			if name != "lasts" && number(t, name) <= number(t, life) {
				row = i
			}
		}
	}
	return r.money.cells[row][column]
}

// answer is what the sheet and the program are compared in.
type answer struct{ leak, iceDay, ahDay, iceYear, unitYear, dryYear float64 }

// tripsOf counts a year's trips, and the stops to shop after the first of each,
// as their owner would: every stretch of months aboard in trips of the usual
// length, the last one shorter.
func tripsOf(b economics.Boat) (trips, later float64) {
	first := 0
	for m := range 12 {
		if b.Cruising.Nights[m] > 0 && b.Cruising.Nights[(m+11)%12] == 0 {
			first = m
		}
	}
	stretch := 0.0
	for i := range 13 {
		if n := b.Cruising.Nights[(first+i)%12]; i < 12 && n > 0 {
			stretch += n
			continue
		}
		for ; stretch > 0; stretch -= b.Cruising.TripNights {
			trips++
			later += math.Ceil(math.Min(stretch, b.Cruising.TripNights)/b.Cruising.ShopEveryDays-1e-9) - 1
		}
		stretch = 0
	}
	return trips, later
}

// work goes through the twenty steps for a boat.
func (r reader) work(t *testing.T, b economics.Boat) answer {
	t.Helper()
	u := map[quantity.System]struct{ volume, foam, rim, degree, mass, leak float64 }{
		quantity.Metric: {1, 0.001, 1, 1, 1, 1},
		quantity.US:     {28.316846592, 0.0254, 0.3048, 5.0 / 9, 0.45359237, 0.52752792631},
	}[r.sys]
	index := map[heat.State]int{heat.Dry: 0, heat.Damp: 1, heat.Wet: 2, heat.Soaked: 3}
	material := map[heat.Material]string{heat.OldPolyurethane: "Old foam, or not known", heat.Polyurethane: "New polyurethane",
		heat.XPS: "Extruded board", heat.EPS: "Bead board", heat.Cork: "Cork"}
	walls, lid := b.Box.Faces[heat.Fore], b.Box.Faces[heat.Top]
	if b.Box.Lid == heat.FrontDoor { // its door is as the other sides
		walls = b.Box.Faces[heat.Inboard]
	}
	var line [21]float64
	// The box.
	line[1] = float64(b.Box.Volume) / u.volume
	share := r.foam[material[walls.Material]][index[walls.State]]
	line[2] = float64(walls.Foam) / u.foam * share
	line[3] = r.lookupLeak(t, line[1], line[2])
	line[4] = (5*line[3] + r.lookupLeak(t, line[1], float64(lid.Foam)/u.foam*share)) / 6
	f := r.in(t, "5", `rim × (\d+(?:\.\d+)?) \(soft gasket\), (\d+(?:\.\d+)?) \(hard or gappy\) or (\d+(?:\.\d+)?) \(it only rests\). Open drain hose: (\d+(?:\.\d+)?) more`)
	rim := 2 * float64(b.Box.LidOpening.Length+b.Box.LidOpening.Width) / u.rim
	line[5] = line[4] + rim*f[slices.Index([]heat.Seal{heat.GoodSeal, heat.PoorSeal, heat.NoSeal}, b.Box.LidSeal)]
	if b.Box.Drain == heat.OpenDrain {
		line[5] += f[3]
	}
	f = r.in(t, "6", `line 5 \+ (\d+(?:\.\d+)?) × people \+ (\d+(?:\.\d+)?)\.`)
	line[6] = line[5] + f[0]*b.Cruising.Crew + f[1]
	warmest := ""
	var nights float64
	for m, name := range monthNames {
		n := b.Cruising.Nights[m]
		nights += n
		if n > 0 && (warmest == "" || r.months[name][1] > r.months[warmest][1]) {
			warmest = name
		}
	}
	f = r.in(t, "7", `over (\d+) °. warmer .* than (\d+) °`)
	target := float64(b.Food.Target)
	if r.sys == quantity.US {
		target = target*1.8 + 32
	}
	line[7] = r.months[warmest][1] + float64(b.Box.CabinOffset)/u.degree - f[0] - target + f[1]
	line[8] = line[6] * line[7]
	// Ice.
	line[9] = interpolate(line[8], r.heats, r.ice)
	if line[8] < r.heats[0] {
		line[9] = r.ice[0] * line[8] / r.heats[0]
	}
	if last := len(r.heats) - 1; line[8] > r.heats[last] {
		line[9] = r.ice[last] * line[8] / r.heats[last]
	}
	f = r.in(t, "10", `× (\d+(?:\.\d+)?) \(cubes\), (\d+(?:\.\d+)?) \(crushed\) or (\d+(?:\.\d+)?) \(block\)`)
	load := line[1] * float64(b.Ice.ShareOfBox) * f[slices.Index([]heat.IceKind{heat.Cubes, heat.Crushed, heat.Block}, b.Ice.Kind)]
	bag := float64(b.Ice.UnitSize) / u.mass
	line[10] = bag * math.Floor(math.Min(load, float64(b.Ice.CarryLimit)/u.mass)/bag+1e-9)
	trips, later := tripsOf(b)
	line[11] = later * float64(b.Ice.FoundAtStops)
	f = r.in(t, "12", `lesser of line 10 and (\d+(?:\.\d+)?) × line 9`)
	errands := line[11]
	if b.Ice.FirstLoad == economics.Bought {
		line[12] = trips * line[10]
		errands += trips
	}
	line[12] += line[11] * math.Min(line[10], f[0]*line[9]*nights/(trips+line[11]))
	line[13] = b.Cruising.Crew * float64(b.Food.KgPerPersonDay) / u.mass * float64(b.Food.MustBeColdShare) * b.Cruising.ShopEveryDays / 2
	f = r.in(t, "14", `nights × line 13 × \$(\d+(?:\.\d+)?)`)
	spoiled := f[0]
	line[14] = line[12]*float64(b.Ice.Price)*u.mass + errands*float64(b.Ice.TripCost) + nights*line[13]*spoiled
	// The unit.
	f = r.in(t, "15", `Fins in a locker: × (\d+(?:\.\d+)?); sea water: × (\d+(?:\.\d+)?)\. Lithium battery: × (\d+(?:\.\d+)?)\.`)
	var byRating []float64
	for i := range r.ah {
		byRating = append(byRating, interpolate(line[8], r.heats, r.ah[i]))
	}
	column := nearest(float64(b.Small.RatedCooling), []float64{35, 50, 70})
	line[15] = byRating[column]
	switch b.Small.CooledBy {
	case energy.Fins:
		line[15] *= f[0]
	case energy.Seawater:
		line[15] *= f[1]
	}
	lithium := b.Power.Chemistry == energy.Lithium
	if lithium {
		line[15] *= f[2]
	}
	f = r.in(t, "16", `\(bimini × (\d+(?:\.\d+)?), deck × (\d+(?:\.\d+)?); plain controller × (\d+(?:\.\d+)?)\) \+ engine hours × its amps × (\d+(?:\.\d+)?) −`)
	twelve := float64(b.Power.Volts) / 12
	sun := float64(b.Power.SolarWp) / 100 * r.months[warmest][3]
	switch b.Power.Mounting {
	case energy.Bimini:
		sun *= f[0]
	case energy.OnDeck:
		sun *= f[1]
	}
	if b.Power.Controller == energy.Plain {
		sun *= f[2]
	}
	line[16] = sun + twelve*(b.Power.EngineHoursPerDay*float64(b.Power.EngineAmps)*f[3]-float64(b.Power.OtherLoads))
	f = r.in(t, "17", `is over (\d+(?:\.\d+)?) of the battery's Ah \(lithium (\d+(?:\.\d+)?)\)`)
	usable := f[0]
	if lithium {
		usable = f[1]
	}
	line[17] = trips
	if line[8] > 0.9*r.most[column] || (line[15]-line[16])*b.Cruising.TripNights > usable*twelve*float64(b.Power.Battery) {
		line[17] = nights
	}
	f = r.in(t, "18", `fitting \+ \$(\d+(?:\.\d+)?) for cable and fuse; sea water \$(\d+(?:\.\d+)?) more`)
	lasting := float64(b.Small.Fitting) + f[0]
	if b.Small.CooledBy == energy.Seawater {
		lasting += f[1]
	}
	years := float64(b.Money.Years)
	line[18] = float64(b.Small.Price)*r.lookupMoney(t, short(float64(b.Small.Life), 3), years) + lasting*r.lookupMoney(t, "lasts", years) + float64(b.Small.Upkeep)
	f = r.in(t, "19", `line 15 × \$(\d+(?:\.\d+)?) \(lithium \$(\d+(?:\.\d+)?)\) \+ line 17 × line 13 × \$(\d+(?:\.\d+)?)`)
	wear := f[0]
	if lithium {
		wear = f[1]
	}
	line[19] = line[18] + nights*line[15]*wear + line[17]*line[13]*f[2]
	f = r.in(t, "20", `people × nights × \$(\d+(?:\.\d+)?)`)
	line[20] = b.Cruising.Crew * nights * f[0]
	return answer{leak: line[5] * u.leak, iceDay: line[9] * u.mass, ahDay: line[15] / twelve, iceYear: line[14], unitYear: line[19], dryYear: line[20]}
}

// The main promise: for 200 plausible boats on four grounds in both systems,
// worked by pencil with what the PDF says, leak, ice a day, Ah a day and yearly
// cost come within 15 % of the program nine times in ten.
//
// It guards the tables and the figures in the steps. Each of these makes it
// fail: the leak table a fifth too high, damp foam counted as dry, the months'
// degrees 5 K too high, the units' watt-hours doubled, table E at 6 %, line 10
// without its loss and two sevenths short, spoiled food as good as left out.
func TestPencilAgreesWithTheProgram(t *testing.T) {
	const worst = 0.15
	names := [6]string{"leak", "ice a day", "Ah a day", "ice, a year", "small unit, a year", "dry stores, a year"}
	var errors [6][]float64
	p, _ := pack(t)
	seed := uint64(0)
	for _, g := range []struct {
		ground string
		season []int
	}{
		{"maine-coast", []int{6, 7, 8, 9}}, {"chesapeake-bay", []int{5, 6, 7, 8, 9}},
		{"aegean-cyclades", []int{5, 6, 7, 8, 9}}, {"windward-islands", []int{12, 1, 2, 3, 4}},
	} {
		for _, sys := range []quantity.System{quantity.Metric, quantity.US} {
			person := read(t, file(t, sheets(t, g.ground, sys), sheet.A4), sys)
			seed++
			r := rand.New(rand.NewPCG(seed, 2026))
			for range 25 {
				b := plausibleBoat(r, g.ground, sys, g.season)
				ground, err := b.Ground()
				if err != nil {
					t.Fatal(err)
				}
				x, err := economics.Reckon(b, p.Book, ground, economics.Settings{Futures: 20, Seed: 1})
				if err != nil {
					t.Fatal(err)
				}
				facts := x.Options[0].AsTold.Facts
				got := person.work(t, b)
				for i, pair := range [6][2]float64{
					{got.leak, float64(x.Box.Leak)}, {got.iceDay, facts["ice_per_day_hottest_kg"].(float64)}, {got.ahDay, x.Units[0].AhPerDay},
					{got.iceYear, x.Options[0].AsTold.Yearly}, {got.unitYear, x.Options[2].AsTold.Yearly}, {got.dryYear, x.Options[1].AsTold.Yearly},
				} {
					errors[i] = append(errors[i], math.Abs(pair[0]/pair[1]-1))
				}
			}
		}
	}
	for i, name := range names {
		slices.Sort(errors[i])
		n := len(errors[i])
		if n != 200 {
			t.Fatalf("%d boats, want 200", n)
		}
		p90 := errors[i][n*9/10-1]
		t.Logf("%-18s %d boats: error median %.1f %%, 90th percentile %.1f %%, greatest %.1f %%", name, n, 100*errors[i][n/2], 100*p90, 100*errors[i][n-1])
		if p90 > worst {
			t.Errorf("%s: the 90th percentile of the error is %.1f %%, want at most %.0f %%", name, 100*p90, 100*worst)
		}
	}
}
