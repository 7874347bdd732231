package economics

import (
	"math"
	"testing"

	"coldreckon/economics/climate"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

func nearly(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if math.Abs(got-want) > within*math.Max(1, math.Abs(want)) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

// The parts are the whole, whatever the boat: heat by its ways in, what fills the
// box, and each month's need.
func TestCasesAddUp(t *testing.T) {
	for seed, r := range invented() {
		for _, id := range Options {
			for _, fitted := range []bool{false, true} {
				c, err := r.Case(r.Of(id), fitted)
				if err != nil {
					t.Fatalf("boat %d, %s: %v", seed, id, err)
				}
				heat := 0.0
				for _, s := range c.Heat {
					heat += s.HeatW
				}
				nearly(t, "the heat of the sources", heat, c.HeatW, 1e-9)
				m := c.Room
				nearly(t, "the room of the parts", m.Cooling+m.Food+m.Drinks+m.Lives+m.Free, c.VolumeL, 1e-9)
				for _, l := range []float64{m.Cooling, m.Food, m.Drinks, m.Lives, m.Free, m.Board, m.Short} {
					if l < 0 {
						t.Errorf("boat %d, %s: room of %v L", seed, id, l)
					}
				}
				if m.Short > 1e-9 && m.Free > 1e-9 {
					t.Errorf("boat %d, %s: %v L are short and %v L free", seed, id, m.Short, m.Free)
				}
				if !fitted && m.Board != 0 {
					t.Errorf("boat %d, %s: board of %v L as told", seed, id, m.Board)
				}
				if (id == SmallUnit || id == LargerUnit) != (len(c.Power) > 0) {
					t.Errorf("boat %d, %s: %d months of power", seed, id, len(c.Power))
				}
			}
		}
	}
}

// As told, a case is what the reckoning prints by month.
func TestCaseAsToldIsTheReckoned(t *testing.T) {
	b := dunlin()
	r, err := Reckon(b, testBook(), must(climate.Find("maine-coast")), Settings{Futures: 20, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	c, err := r.Case(r.Of(SmallUnit), false)
	if err != nil {
		t.Fatal(err)
	}
	for i, m := range r.Months {
		nearly(t, "the need of a month", c.Power[i].NeedWh, m.SmallWhPerDay, 1e-9)
		nearly(t, "the sun left in a month", c.Power[i].SunWh, max(0, m.SolarWhPerDay-m.HouseWhPerDay), 1e-9)
		if ice := must(r.Case(r.Of(IceOnly), false)); m.Month == ice.Month {
			nearly(t, "the heat", ice.HeatW, m.HeatGainW, 1e-9)
		}
	}
	told, fitted := must(r.Case(r.Of(IceOnly), false)), must(r.Case(r.Of(IceOnly), true))
	nearly(t, "the box as told", told.VolumeL, float64(r.Box.Volume), 1e-9)
	nearly(t, "the box with its board", fitted.VolumeL+fitted.Room.Board, told.VolumeL, 1e-9)
	if _, err := r.Case(&OptionFigures{ID: "cellar"}, false); err == nil {
		t.Error("an option that is not known is drawn")
	}
}

// A wall by hand: 1/U = 1/8.3 + 0.025/(0.028·e^(6·0.04)) + 1/8.3 (ASHRAE films,
// from memory; EN ISO 10456 for water in foam); its heat is U·A·(cabin - food).
// 25 mm of dry board at 0.033 W/m·K come before it inside.
func TestFaceByHand(t *testing.T) {
	b := dunlin()
	b.Box.Inside = quantity.Dimensions{Length: 0.4, Width: 0.45, Height: 0.5}
	r, err := typically(b)
	if err != nil {
		t.Fatal(err)
	}
	for _, fitted := range []bool{false, true} {
		c := must(r.Case(r.Of(SmallUnit), fitted))
		area, resistance := 0.45*0.5, 2/8.3+0.025/(0.028*math.Exp(6*0.04))
		if fitted { // inboard and fore are lined, and so is the lid
			area, resistance = (0.45-0.025)*(0.5-0.025), resistance+0.025/0.033
		}
		p, err := r.proposal(r.Of(SmallUnit), fitted)
		if err != nil {
			t.Fatal(err)
		}
		cabin := p.setup(&Typical)
		mean := cabin.Mean(p.world.aboard, 4)
		for _, s := range c.Heat {
			if s.Part == heat.FacePart && s.Side == heat.Fore {
				nearly(t, "the fore wall", s.HeatW, p.leakScale*area/resistance*(mean.CabinC-4), 1e-6)
			}
		}
	}
}

// The first measurements by hand: ice melts by the leak over 20 K at 333.6 kJ and
// 2 K of its water, and work makes it melt less.
func TestCommissioning(t *testing.T) {
	r, err := Reckon(dunlin(), testBook(), must(climate.Find("maine-coast")), Settings{Futures: 20, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	for _, id := range Options {
		c, err := r.Commission(r.Of(id))
		if err != nil {
			t.Fatal(err)
		}
		byHand := float64(r.Box.Leak) * 20 * 86.4 / (333.6 + 4.19*2)
		nearly(t, "ice melted before the work", c.BeforeKg, byHand, 1e-9)
		for name, x := range map[string]quantity.Range{"ice test": c.IceTestKg, "ice": c.IceKgPerDay, "hours": c.CoolHours, "share": c.RunShare, "amps": c.RunningA, "Ah": c.AhPerDay} {
			if !(x.Low <= x.Typical && x.Typical <= x.High) || x.Low < 0 {
				t.Errorf("%s, %s: %v", id, name, x)
			}
		}
		unit := id == SmallUnit || id == LargerUnit
		if (c.CoolHours.Typical > 0) != unit || (c.AhPerDay.Typical > 0) != unit {
			t.Errorf("%s: cools down in %v h, %v Ah", id, c.CoolHours, c.AhPerDay)
		}
		if len(r.Of(id).Fit.Items) > 0 && r.Of(id).Fit.Out.InsideFoam > 0 && c.IceTestKg.Typical >= c.BeforeKg {
			t.Errorf("%s: %v kg melt with more foam, %v without", id, c.IceTestKg, c.BeforeKg)
		}
		if unit { // what the season's facts say of the same day
			volts := 12.3
			want := r.Of(id).Fitted.Facts["unit_wh_per_day_hottest"].(float64) / volts
			nearly(t, "Ah a day", c.AhPerDay.Typical, want, 0.15)
		}
	}
	if _, err := r.Commission(&OptionFigures{ID: "cellar"}); err == nil {
		t.Error("an option that is not known is measured")
	}
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}
