package economics

import "testing"

// Work on the fixture, by hand: 90 L as 1 : 1 : 1.1 is 0.4342 m square and
// 0.4776 m high, so one upright face is 0.2073 m², the top 0.1885. From inside
// can be reached inboard, fore and top; the lid is in the top.
//
//	foam 2 × 0.2073 m² × 150 = 62.19
//	the lid's 0.1885 × 150   = 28.27, and 40 for the lid itself; with 25 mm of it
//	the box is 0.4526 m high, and the other two faces 2 × 0.1965 × 150 = 58.94
//	gasket 25, drain trap 20, cover 25, vent 60
//	50 W of panel × 3.50     = 175
//	50 Ah × 12 V × 220 a kWh = 132, renewed
//
// A yard doubles what is work, not panel and battery.
func TestMoneyOfWorkByHand(t *testing.T) {
	b, book := dunlin(), testBook()
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	w := newWorld(&b, ground)
	for by, factor := range map[FittedBy]float64{Self: 1, Yard: 2} {
		b.Money.FittedBy = by
		for _, row := range []struct {
			fit   FitOut
			lines map[string]float64
		}{
			{FitOut{InsideFoam: 0.05}, map[string]float64{"foam": factor * 62.19}},
			{FitOut{LidFoam: 0.025}, map[string]float64{"foam": factor * 28.27, "lid_foam": factor * 40}},
			{FitOut{LidFoam: 0.025, InsideFoam: 0.05}, map[string]float64{"foam": factor * (58.94 + 28.27), "lid_foam": factor * 40}},
			{FitOut{Seal: true, Drain: true, Cover: true}, map[string]float64{"seal": factor * 25, "drain_trap": factor * 20, "cover": factor * 25}},
			{FitOut{Vent: true}, map[string]float64{"vent": factor * 60}},
			{FitOut{PanelWp: 50, Battery: 50}, map[string]float64{"panel": 175, "battery": 132}},
			{FitOut{OutsideFoam: 0.05}, map[string]float64{}}, // no face is reached from there
		} {
			p, err := newProposal(&b, &book, &w, 1, SmallUnit, row.fit)
			if err != nil {
				t.Fatal(err)
			}
			o, err := p.calculator().outcome(&Typical, aYear{})
			if err != nil {
				t.Fatal(err)
			}
			sum := 900 + 350 + 70.0 // unit, fitting, cable
			for id, want := range row.lines {
				l := line(&o, id)
				sum += l.First
				if diff := l.First - want; diff > 0.02 || diff < -0.02 || (l.Renew > 0) != (id == "battery") {
					t.Errorf("%s, %+v: %s %.2f at first, %.2f renewed; by hand %.2f", by, row.fit, id, l.First, l.Renew, want)
				}
			}
			if !near(o.First, sum, 1e-12) {
				t.Errorf("%s, %+v: %v at first; by hand %v", by, row.fit, o.First, sum)
			}
		}
	}
}
