package energy

import (
	"math"
	"testing"

	"coldreckon/economics/quantity"
)

// Guards the three cases of Duty: the sign of "heat > float64(working.CapacityW)",
// there and for the eutectic, and "quantity.Watt(share)*c.PowerW".
func TestHotterNeverCostsLess(t *testing.T) {
	for _, rated := range []quantity.Watt{25, 40, 80, 120} {
		for _, cooledBy := range []Condenser{Fins, Fan, Seawater} {
			for _, plate := range []Plate{Thin, Eutectic} {
				c := typicalUnit(rated, cooledBy, plate).Cycle()
				for _, leak := range []quantity.WattPerKelvin{0.3, 0.8, 2, 4} {
					before := c.Duty(Gain{Leak: leak, Out: -5, Use: 2}, 4, -5)
					for out := quantity.Celsius(-4.5); out <= 50; out += 0.5 {
						d := c.Duty(Gain{Leak: leak, Out: out, Use: 2}, 4, out)
						if d.DayWh() < before.DayWh()*(1-1e-9) || d.RunShare < before.RunShare-1e-9 || d.Held < before.Held-1e-9 {
							t.Fatalf("%+v leak %v, air %v: %+v is less than half a degree below: %+v", c, leak, out, d, before)
						}
						before = d
					}
				}
			}
		}
	}
}

// Guards "rest - c.capacity(te, tc)/leak" and the series conductance in
// FloatingBox (the plain plate conductance in its place fails), and
// "min(plateCeilingC" in evaporating.
func TestFloatingBoxBalances(t *testing.T) {
	for _, rated := range []quantity.Watt{10, 25, 40, 80} {
		for _, leak := range []quantity.WattPerKelvin{0.2, 1, 3, 8} {
			for _, use := range []quantity.Watt{0, 6, 40} {
				for out := quantity.Celsius(0); out <= 45; out += 9 {
					c := typicalUnit(rated, Fins, Thin).Cycle()
					g := Gain{Leak: leak, Out: out, Use: use}
					held := c.FloatingBox(g, out)
					near(t, "gain at the floating temperature", float64(g.At(held)), float64(c.Working(held, out).CapacityW), 1e-7)
					// Just below it the unit loses, just above it gains.
					if d := c.Duty(g, held-0.01, out); d.RunShare <= 1 || math.Abs(float64(d.Held-held)) > 1e-9 {
						t.Errorf("below the floating %v: %+v", held, d)
					}
					if d := c.Duty(g, held+0.01, out); d.RunShare >= 1 || d.Held != held+0.01 {
						t.Errorf("above the floating %v: %+v", held, d)
					}
				}
			}
		}
	}
}

// A steady day by hand, 45 W at -10/45 °C with a ducted fan, box 4 °C in air
// of 28 °C, leak 1 W/K, use 3 W:
//
//	heat in                    1 · 24 + 3                        = 27 W
//	condenser                  28 + 12                           = 40 °C
//	plate: 4 - capacity/5 and 45 · exp(0.045·(te+10)) · 1.04 meet at
//	                           te -6.8065, capacity 54.03 W
//	efficiency                 0.33 · 266.3435 / 46.8065         = 1.8778
//	running                    54.03/1.8778 + 3                  = 31.77 W
//	run share                  27/54.03                          = 0.4997
//	a day                      24 · (0.4997·31.77 + 0.1)         = 383.4 Wh
//
// Guards every line of it; leaving out fan or standby fails.
func TestSteadyDayByHand(t *testing.T) {
	c := typicalUnit(45, Fan, Thin).Cycle()
	d := c.Duty(Gain{Leak: 1, Out: 28, Use: 3}, 4, 28)
	near(t, "plate", float64(d.Working.Te), -6.8065, 1e-5)
	near(t, "capacity", float64(d.Working.CapacityW), 54.03, 1e-4)
	near(t, "efficiency", d.Working.COP, 1.8778, 1e-4)
	near(t, "run share", d.RunShare, 0.4997, 1e-4)
	near(t, "a day", float64(d.DayWh()), 383.4, 3e-4)
}

// A unit that is too small, by hand: 10 W at -10/45 °C with a duct in air of
// 38 °C, so 50 °C in the condenser; 2 W/K and 6 W of use want 74 W at 4 °C.
//
//	plate: 4 - capacity/5 and 10 · exp(0.045·(te+10)) · 0.96 meet at
//	                           te 0.8688, capacity 15.656 W
//	run share                  74/15.656                         = 4.727
//	floats where 2 · (38 - T) + 6 = capacity(T)
//
// Guards the run share beyond 1 and that the day is a whole day's running.
func TestOverloadedDayByHand(t *testing.T) {
	c := typicalUnit(10, Fan, Thin).Cycle()
	d := c.Duty(Gain{Leak: 2, Out: 38, Use: 6}, 4, 38)
	w := c.Working(4, 38)
	near(t, "plate at the target", float64(w.Te), 4-float64(w.CapacityW)/5, 1e-9)
	near(t, "capacity at the target", float64(w.CapacityW), 10*math.Exp(0.045*(float64(w.Te)+10))*0.96, 1e-9)
	near(t, "run share", d.RunShare, 4.727, 1e-4)
	held := c.Working(d.Held, 38)
	near(t, "a day", float64(d.DayWh()), 24*(float64(held.CapacityW)/held.COP+3+0.1), 1e-9)
}

func TestDutyWithoutNeed(t *testing.T) {
	c := typicalUnit(45, Fan, Thin).Cycle()
	d := c.Duty(Gain{Leak: 1, Out: 2, Use: 1}, 5, 2)
	if d.RunShare != 0 || d.Mean != c.Standby || d.Held != 3 {
		t.Errorf("a box that rests at 3 °C: %+v", d)
	}
	d = c.Duty(Gain{Leak: 1, Out: 4, Use: 0.5}, 4, 4)
	near(t, "half a watt is pumped too", d.RunShare, 0.5/float64(d.Working.CapacityW), 1e-12)
}

// While a plate freezes, the cycle costs what -10 °C costs; when the heat is
// more than it can take out there, the plate warms until it can, without a
// step in the energy.
//
// Guards "ratingPlateC+math.Log(heat" in Duty.
func TestStoringDuty(t *testing.T) {
	c := typicalUnit(30, Fan, Eutectic).Cycle()
	storing := float64(c.Storing(25).CapacityW)
	below := c.Duty(Gain{Leak: 1, Out: 4, Use: quantity.Watt(storing * 0.999999)}, 4, 25)
	above := c.Duty(Gain{Leak: 1, Out: 4, Use: quantity.Watt(storing * 1.000001)}, 4, 25)
	near(t, "energy across the limit", float64(above.Mean), float64(below.Mean), 1e-5)
	more := c.Duty(Gain{Leak: 1, Out: 4, Use: quantity.Watt(storing * 1.1)}, 4, 25)
	near(t, "runs without a pause", more.RunShare, 1, 1e-12)
	near(t, "with the capacity called for", float64(more.Working.CapacityW), 1.1*storing, 1e-9)
	if more.Working.Te <= -10 || more.Held != 4 {
		t.Errorf("thawed plate: %+v", more)
	}
}

// In a hot box the plate sits at its ceiling and capacity is constant, so
// the pull-down has a closed form: C/leak · ln((net at start)/(net at end)).
//
// Guards "scale := float64(capacity) / 3.6", simpson's weights and the sign
// of "working.CapacityW - gain(box)".
func TestPullDownAgainstClosedForm(t *testing.T) {
	c := typicalUnit(25, Fan, Thin).Cycle()
	g := Gain{Leak: 1.5, Out: 30}
	from, to := quantity.Celsius(35), quantity.Celsius(20)
	w := c.Working(to, 30)
	if w.Te != 5 {
		t.Fatalf("plate at %v, the check needs its ceiling", w.Te)
	}
	net := func(box quantity.Celsius) float64 { return float64(w.CapacityW - g.At(box)) }
	want := 120 / 3.6 / float64(g.Leak) * math.Log(net(from)/net(to))
	got := c.PullDown(120, from, to, g.At, 30)
	near(t, "hours", got.Hours, want, 1e-9)
	near(t, "energy", float64(got.Energy), want*float64(c.PowerW(w)+c.Standby), 1e-9)
}

// A pull-down cannot pass the temperature at which the box floats.
//
// Guards "if net <= 0" in PullDown.
func TestPullDownEndsAtTheFloatingBox(t *testing.T) {
	c := typicalUnit(40, Fins, Thin).Cycle()
	g := Gain{Leak: 3, Out: 32, Use: 10}
	held := c.FloatingBox(g, 32)
	if p := c.PullDown(150, 32, held+0.5, g.At, 32); !p.Reached || p.Hours < 1 {
		t.Errorf("down to half a degree above %v: %+v", held, p)
	}
	if p := c.PullDown(150, 32, held-0.5, g.At, 32); p.Reached {
		t.Errorf("down to half a degree below %v: %+v", held, p)
	}
	if p := c.PullDown(150, 4, 4, g.At, 32); !p.Reached || p.Hours != 0 {
		t.Errorf("nothing to do: %+v", p)
	}
}

// Energy is kept: over a pull-down, heat out of the contents plus gain equals
// heat pumped, here by stepping through it minute by minute.
func TestPullDownAgainstSmallSteps(t *testing.T) {
	c := typicalUnit(60, Fan, Thin).Cycle()
	g := Gain{Leak: 1, Out: 28, Use: 4}
	want := c.PullDown(200, 28, 4, g.At, 28)
	const step = 1.0 / 3600 // hours
	box, hours, wattHours := quantity.Celsius(28), 0.0, 0.0
	for box > 4 {
		w := c.Working(box, 28)
		box -= quantity.Celsius(float64(w.CapacityW-g.At(box)) * step * 3.6 / 200)
		hours += step
		wattHours += step * float64(c.PowerW(w)+c.Standby)
	}
	near(t, "hours", want.Hours, hours, 2e-3)
	near(t, "energy", float64(want.Energy), wattHours, 2e-3)
}

// Guards "s.Latent / 3.6 / load" and the plate check in HoldOver.
func TestHoldOver(t *testing.T) {
	// 8 kg at 268 kJ/kg, 85 % of it, against 1 W/K · 24 K + 3 W = 27 W:
	// 0.85 · 8 · 268 / 27 = 67,496 s = 18.75 h.
	s := ColdStore{Mass: 8, Latent: 268, Usable: 0.85, Freezing: -10, Plate: 8}
	g := Gain{Leak: 1, Out: 28, Use: 3}
	hours, ok := s.HoldOver(g, 4)
	near(t, "hours", hours, 18.75, 1e-3)
	if !ok {
		t.Error("14 K · 8 W/K pass 112 W, more than 27 W")
	}
	s.Plate = 1.9 // passes 26.6 W at 14 K
	if _, ok := s.HoldOver(g, 4); ok {
		t.Error("a plate that passes 26.6 W holds 27 W")
	}
	if hours, ok := s.HoldOver(Gain{Leak: 1, Out: 3}, 4); !ok || !math.IsInf(hours, 1) {
		t.Errorf("no gain: %v %v", hours, ok)
	}
}

// Guards listeriaGrowth's offset and reference (-1.18 to -0.5 fails).
func TestListeriaGrowth(t *testing.T) {
	for _, row := range []struct {
		Source string
		food   quantity.Celsius
		want   float64
		share  float64
	}{
		{"FDA/USDA-FSIS 2003, by definition", 5, 1, 1e-12},
		{"FDA/USDA-FSIS 2003, worked values", 4, 0.70, 0.005},
		{"FDA/USDA-FSIS 2003, worked values", 7, 1.75, 0.005},
		{"FDA/USDA-FSIS 2003, worked values", 10, 3.3, 0.015},
		{"FDA/USDA-FSIS 2003, worked values", 13, 5.3, 0.015},
		{"FDA/USDA-FSIS 2003, worked values", 20, 11.7, 0.005},
		{"former US Food Code: 7 days at 41 °F, 4 days at 45 °F (7.2 °C)", 7.22, 7.0 / 4, 0.06},
	} {
		near(t, row.Source, listeriaGrowth(row.food), row.want, row.share)
	}
	// Rosenow & Marth 1987, doubling in milk and cream: the extremes' ratio
	// between 8 and 4 °C and between 13 and 8 °C, which the form must fall in.
	for _, row := range []struct {
		cold, warm        quantity.Celsius
		coldLow, coldHigh float64 // hours
		warmLow, warmHigh float64
	}{{4, 8, 29.7, 45.6, 8.7, 14.6}, {8, 13, 8.7, 14.6, 4.45, 6.9}} {
		got := listeriaGrowth(row.warm) / listeriaGrowth(row.cold)
		if got < row.coldLow/row.warmHigh || got > row.coldHigh/row.warmLow {
			t.Errorf("%v over %v °C: %.2f times, Rosenow & Marth give %.2f to %.2f", row.warm, row.cold, got, row.coldLow/row.warmHigh, row.coldHigh/row.warmLow)
		}
	}
	if listeriaGrowth(-1.18) != 0 || listeriaGrowth(-5) != 0 {
		t.Error("grows below its least temperature")
	}
}

// Guards chilledLimit and the order of setPoints.
func TestSetPoints(t *testing.T) {
	c := typicalUnit(45, Fan, Thin).Cycle()
	trade := c.SetPoints(Gain{Leak: 1.2, Out: 28, Use: 4}, 28)
	for i, p := range trade {
		if p.Perishables != (p.Box <= 5) {
			t.Errorf("%v °C: perishables %v", p.Box, p.Perishables)
		}
		if i > 0 && (p.Duty.DayWh() >= trade[i-1].Duty.DayWh() || p.Growth <= trade[i-1].Growth) {
			t.Errorf("%v °C costs %.0f Wh, %v °C %.0f Wh", p.Box, p.Duty.DayWh(), trade[i-1].Box, trade[i-1].Duty.DayWh())
		}
	}
	// A degree saves the gain's own share and a little of the lift: with 32.8 W
	// at 4 °C, 1.2 W is 3.7 %, the warmer plate about 2 % more.
	saved := 1 - float64(trade[2].Duty.DayWh()/trade[1].Duty.DayWh())
	if saved < 0.037 || saved > 0.08 {
		t.Errorf("5 °C instead of 4 °C saves %.3f", saved)
	}
}
