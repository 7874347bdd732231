package handout

import (
	"bytes"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/report/sheet"
	"coldreckon/rules"
)

var (
	papers  = []sheet.Paper{sheet.A4, sheet.Letter}
	systems = []quantity.System{quantity.Metric, quantity.US}
)

// leftOut are the stops that only the figures of one boat can call for, or
// that say more sharply what a check says for any boat.
var leftOut = []string{"food-over-8c", "food-over-10c", "cold-gap-ice", "cold-gap-unit", "vulnerable-warm", "medicine-warm", "medicine-frozen"}

func TestTwoSheetsForEveryGround(t *testing.T) {
	for i, g := range climate.Grounds() {
		for j, sys := range systems {
			if (i+j)%8 > 0 && os.Getenv("COLDRECKON_LONG") == "" {
				continue
			}
			h := sheets(t, g.ID, sys)
			for _, paper := range papers {
				r, err := sheet.NewRecording(paper)
				if err != nil {
					t.Fatal(err)
				}
				if err := h.Document("coldreckon, version 0.0").Draw(r); err != nil {
					t.Fatal(err)
				}
				name := g.ID + " " + string(sys) + " " + string(paper)
				if r.Page() != 2 {
					t.Errorf("%s: %d pages, want 2", name, r.Page())
				}
				w, height := r.Paper()
				for _, o := range r.Outside(sheet.Rect{W: w, H: height}.Inset(11.9, 10, 11.9, 11)) {
					t.Errorf("%s: outside the margins: %v", name, o)
				}
				for _, pair := range r.Collisions() {
					t.Errorf("%s: collision: %v\n%v", name, pair[0], pair[1])
				}
			}
		}
	}
}

func TestFileIsValidAndAlwaysTheSame(t *testing.T) {
	for _, sys := range systems {
		for _, paper := range papers {
			first := file(t, sheets(t, "ionian-islands", sys), paper)
			if !bytes.Equal(first, file(t, sheets(t, "ionian-islands", sys), paper)) {
				t.Errorf("%s %s: two files of the same sheets differ", sys, paper)
			}
			if err := api.Validate(bytes.NewReader(first), model.NewDefaultConfiguration()); err != nil {
				t.Errorf("%s %s: %v", sys, paper, err)
			}
			if len(first) > 200_000 {
				t.Errorf("%s %s: %d bytes, want under 200 kB", sys, paper, len(first))
			}
		}
	}
}

func TestAtMostTenLines(t *testing.T) {
	for _, sys := range systems {
		lines := sheets(t, "maine-coast", sys).newChained(0, 0, 190).steps()
		if len(lines) > 10 {
			t.Errorf("%s: %d lines, want at most 10", sys, len(lines))
		}
	}
}

// A copier that knows only black and white loses nothing but the grid: all type
// and every curve of the first side is black, and nothing is smaller than 9 points.
func TestTheChartSurvivesACopier(t *testing.T) {
	r := recorded(t, sheets(t, "chesapeake-bay", quantity.US), sheet.Letter)
	types, curves := 0, 0
	for _, o := range r.Ops {
		if o.Page != 1 || o.Box.Y > 255 { // the foot
			continue
		}
		switch {
		case o.Kind == sheet.TextOp && o.Picture != "":
			types++
			if o.Type.Size < 9 || o.Type.Grey != sheet.Black && o.Type.Grey != sheet.White {
				t.Errorf("%v is small or pale", o)
			}
		case o.Kind == sheet.LineOp && o.Pen.Width > 0.2:
			curves++
			if o.Pen.Grey != sheet.Black {
				t.Errorf("%v is not black", o)
			}
		}
	}
	if types < 80 || curves < 20 {
		t.Fatalf("%d texts and %d curves were looked at", types, curves)
	}
}

// Every stop of the pack is on the sheet, or left out on purpose.
func TestEveryStopIsPlaced(t *testing.T) {
	p := pack(t)
	var placed []string
	for _, c := range checks {
		placed = append(placed, c.id)
	}
	for _, c := range p.Cautions {
		if c.Grade == rules.Stop && !slices.Contains(placed, c.ID) && !slices.Contains(leftOut, c.ID) {
			t.Errorf("stop %q is neither on the sheet nor left out", c.ID)
		}
	}
	list, err := checklist(p, quantity.Metric)
	if err != nil {
		t.Fatal(err)
	}
	for i, c := range list {
		if c.Text == "" || strings.Contains(c.Text, "{") {
			t.Errorf("check %s reads %q", checks[i].id, c.Text)
		}
	}
	if _, err := checklist(rules.Pack{}, quantity.Metric); err == nil {
		t.Error("a pack without cautions was accepted")
	}
}

// Each cell of the leak table is the heat ledger's own, to the last digit
// printed. One false cell fails here, however few boats it would touch.
func TestLeakCells(t *testing.T) {
	for _, sys := range systems {
		u := map[quantity.System]struct{ litre, metre, leak float64 }{quantity.Metric: {1, 0.001, 1}, quantity.US: {28.316846592, 0.0254, 0.52752792631}}[sys]
		r := read(t, file(t, sheets(t, "maine-coast", sys), sheet.A4), sys)
		for i, v := range r.leak.down {
			for k, foam := range r.leak.across {
				spec := heat.Spec{Inside: heat.CubeLike(quantity.Litre(number(t, v) * u.litre)), Lid: heat.TopLid, Seal: heat.GoodSeal, Drain: heat.TrappedDrain}
				for j, side := range heat.Sides {
					spec.Faces[j] = heat.FaceSpec{Side: side, Neighbour: heat.Cabin, Layers: []heat.Layer{{Material: heat.OldPolyurethane, State: heat.Dry, Thickness: quantity.Metre(foam * u.metre)}}}
					if side == heat.Outboard {
						spec.Faces[j].Neighbour = heat.Sea
					}
				}
				c, err := spec.Conductance()
				if err != nil {
					t.Fatal(err)
				}
				if want := float64(c.Total()) / u.leak; math.Abs(r.leak.cells[i][k]-want) > 0.0051 {
					t.Errorf("%s: leak of %s with %g of foam is %g, want %.3f", sys, v, foam, r.leak.cells[i][k], want)
				}
			}
		}
	}
}

// Foam of any kind and state counts so that the leak table, read between its
// entries, comes out right within 8 % for boxes of 60 to 150 L with 25 to 75 mm of it, soaked foam, of
// which little is known, within 16 %.
func TestFoamCounts(t *testing.T) {
	r := read(t, file(t, sheets(t, "maine-coast", quantity.Metric), sheet.A4), quantity.Metric)
	for i, m := range materials {
		for k, state := range states {
			for _, litres := range []float64{60, 100, 150} {
				for _, mm := range []float64{25, 50, 75} {
					c := conductance(quantity.Litre(litres), quantity.Metre(mm/1000), m, state)
					name := []string{"Old foam, or not known", "New polyurethane", "Extruded board", "Bead board", "Cork"}[i]
					got := r.leakBetween(t, litres, mm*r.foam[name][k])
					within := 0.08
					if state == heat.Soaked {
						within = 0.16
					}
					if math.Abs(got/float64(c.Total())-1) > within {
						t.Errorf("%g L, %g mm of %s %s: table %.2f W/K, ledger %.2f W/K", litres, mm, state, m, got, float64(c.Total()))
					}
				}
			}
		}
	}
}

// Source of the factors: tables of compound interest, capital recovery at 3 %
// (A/P, 3 %, n), as in NIST Handbook 135 and any textbook; from memory to four
// digits. Of a renewal the years left at the end are seen again.
func TestMoneyCells(t *testing.T) {
	r := read(t, file(t, sheets(t, "maine-coast", quantity.US), sheet.Letter), quantity.US)
	published := map[float64]float64{5: 0.2184, 8: 0.1425, 10: 0.1172, 12: 0.1005, 15: 0.0838, 20: 0.0672}
	present := map[float64]float64{5: 0.8626, 6: 0.8375, 8: 0.7894, 10: 0.7441, 12: 0.7014, 15: 0.6419} // (P/F, 3 %, n)
	for k, years := range r.money.across {
		for i, life := range r.money.down {
			want := published[years]
			if life != "lasts" {
				n := number(t, life)
				paid, last := 1.0, 0.0
				for at := n; at < years; at += n {
					last = at
					factor, ok := present[at]
					if !ok {
						factor = math.Pow(1.03, -at)
					}
					paid += factor
				}
				if last > 0 { // what is left of the last renewal, straight line
					paid -= (last + n - years) / n * math.Pow(1.03, -years)
				}
				want *= paid
			}
			if math.Abs(r.money.cells[i][k]-want) > 0.0007 {
				t.Errorf("a life of %s over %g years costs %g a year, want %.4f", life, years, r.money.cells[i][k], want)
			}
		}
	}
}

func TestMonthsAndDays(t *testing.T) {
	g, err := climate.Find("chesapeake-bay")
	if err != nil {
		t.Fatal(err)
	}
	metric := read(t, file(t, sheets(t, g.ID, quantity.Metric), sheet.A4), quantity.Metric)
	us := read(t, file(t, sheets(t, g.ID, quantity.US), sheet.A4), quantity.US)
	for m := range 12 {
		name := month(m)
		row, c := metric.months[name], g.Months[m]
		if math.Abs(row[0]-float64(c.AirMean)) > 0.51 || math.Abs(row[2]-float64(c.Sun)) > 0.051 {
			t.Errorf("%s: air %g and sun %g, the ground has %.1f and %.2f", name, row[0], row[2], float64(c.AirMean), float64(c.Sun))
		}
		// The outside lies between sea and cabin; five walls of six face the cabin.
		cabin, sea := float64(c.AirMean)+2-4, float64(c.Sea)-4
		if want := (5*cabin + sea) / 6; math.Abs(row[1]-want) > 0.6 {
			t.Errorf("%s: %g degrees, near %.1f by the walls", name, row[1], want)
		}
		if math.Abs(us.months[name][1]/1.8-row[1]) > 0.11 {
			t.Errorf("%s: %g °F is not %g °C", name, us.months[name][1], row[1])
		}
		// A panel never yields more than its rating under the day's sun.
		if ah := row[3]; ah > 100*float64(c.Sun)/12.3 || ah < 0.6*100*float64(c.Sun)/12.3 {
			t.Errorf("%s: %g Ah from 100 W under %.1f kWh/m²", name, ah, float64(c.Sun))
		}
	}
	for i, btu := range us.heats {
		// Source: the ton of refrigeration, 144 Btu to melt a pound of ice; its
		// water leaves 3.6 °F warmer. Two digits are printed.
		want := btu * 24 / (144 + 3.6)
		if digit := math.Pow(10, math.Floor(math.Log10(want))-1); math.Abs(us.ice[i]-want) > 0.5*digit+0.005*want {
			t.Errorf("%g Btu/h melt %g lb a day, want %.1f", btu, us.ice[i], want)
		}
	}
	warm := g.Months[hottest(g)].AirMean + 2
	for k, rated := range ratings {
		unit := energy.Unit{RatedW: quantity.Watt(rated), Eta: energy.Eta().Typical, CooledBy: energy.Fan, Plate: energy.Thin}
		work := unit.Working(4, warm)
		if math.Abs(metric.most[k]-float64(work.CapacityW)) > 0.51 {
			t.Errorf("a unit of %g W holds %g W, want %.1f", rated, metric.most[k], float64(work.CapacityW))
		}
		for i, w := range metric.heats {
			if w > float64(work.CapacityW) {
				if metric.ah[k][i] < metric.ah[k][i-1] {
					t.Errorf("a unit of %g W takes less at %g W of heat than before", rated, w)
				}
				continue
			}
			// Heat over efficiency, with 3 W of fan while it runs and 0.1 W always.
			want := (24*(w/work.COP+3*w/float64(work.CapacityW)) + 2.4) / 12.3
			if math.Abs(metric.ah[k][i]-want) > 0.7 {
				t.Errorf("a unit of %g W takes %g Ah against %g W, want %.1f", rated, metric.ah[k][i], w, want)
			}
		}
	}
}
