package energy

import (
	"testing"

	"coldreckon/economics/quantity"
)

// Guards "warm := 1 - c.CellLoss*(cell-ratedCellC)" in PowerW.
func TestPanelTemperature(t *testing.T) {
	// PVWatts (Dobos 2014, NREL/TP-6A20-62641) as tested in pvlib-python:
	// 900 W/m², cells at 30 °C, 100 W, 0.3 % a kelvin. The air that gives cells
	// of 30 °C is put in, so that NOCT drops out.
	c := Chain{Wp: 100, Passed: 1, NOCT: 45, CellLoss: 0.003}
	near(t, "PVWatts", float64(c.PowerW(900, 30-25*900/800.0)), 88.65, 1e-9)
}

// Cell temperature from the nominal one, read back from the power.
//
// Guards "float64(c.NOCT)-noctAirC" and noctIrradiance.
func TestCellTemperature(t *testing.T) {
	for _, row := range []struct {
		Source      string
		mounting    Mounting
		irradiance  float64
		cell, share float64
	}{
		{"NOCT 45 °C by its definition, IEC 61215", Arch, 800, 55.0, 1e-9},
		{"NOCT 45 °C by its definition, IEC 61215", Arch, 1000, 61.25, 1e-9},
		{"18 K for a gap under half an inch, NREL/TP-6A20-67399", OnDeck, 800, 73.0, 1e-9},
		{"18 K for a gap under half an inch, NREL/TP-6A20-67399", OnDeck, 1000, 83.75, 1e-9},
	} {
		c := Panel{Wp: 100, Mounting: row.mounting}.Chain()
		c.Passed = 1
		warm := float64(c.PowerW(row.irradiance, 30)) / (100 * row.irradiance / 1000)
		near(t, row.Source, 25+(1-warm)/c.CellLoss, row.cell, row.share)
	}
}

// A plain controller holds the panel at the battery's voltage: 13.2 V over
// that of 36 cells, 18 V at 25 °C less 0.4 % a kelvin. Of the power it could
// give at that temperature this is the share passed on.
//
// Guards ControllerShare's marks (0.80 to 0.90 fails).
func TestPlainController(t *testing.T) {
	marks := ControllerShare(Plain)
	for _, row := range []struct{ cell, share, mark float64 }{
		{25, 0.73, marks.Low}, {45, 0.80, marks.Typical}, {65, 0.87, marks.High},
	} {
		byVoltage := 13.2 / (18 * (1 - 0.004*(row.cell-25)))
		near(t, "by voltage", byVoltage, row.share, 0.006)
		near(t, "mark", row.mark, byVoltage, 0.006)
	}
}

// Guards Shade, SoilAndWire and the product in Chain.
func TestChains(t *testing.T) {
	near(t, "soiling, mismatch, wiring, joints: NREL/TP-6A20-62641", SoilAndWire().Typical, 0.98*0.98*0.98*0.995, 0.005)
	// Sun to load through the battery, as a share of nameplate times
	// irradiation, in a warm climate at full sun: product of the usual
	// shares, of which soil, mismatch and controller are another author's.
	for _, row := range []struct {
		Source       string
		panel        Panel
		chemistry    Chemistry
		want, within float64
	}{
		{"arch, tracking, lithium: 0.92·0.97·0.87·0.97·0.96·0.96, usual shares", Panel{100, Arch, Tracking}, Lithium, 0.69, 0.03},
		{"deck, plain, lead: 0.75·0.97·0.78·0.97·0.87·0.85, usual shares", Panel{100, OnDeck, Plain}, Lead, 0.41, 0.10},
	} {
		got := float64(row.panel.Chain().PowerW(900, 28)) / 90 * float64(Bank{Chemistry: row.chemistry}.Store().ChargeEfficiency)
		near(t, row.Source, got, row.want, row.within)
	}
}

// Guards the loop in DayWh and "float64(c.Wp)" in PowerW.
func TestPanelDay(t *testing.T) {
	var shape [24]float64
	var air [24]quantity.Celsius
	for h := 6; h < 18; h++ {
		shape[h] = 1.0 / 12
	}
	for h := range air {
		air[h] = 20
	}
	p := Panel{Wp: 100, Mounting: Arch, Controller: Tracking}
	// 6 kWh/m² in 12 h of 500 W/m²: cells at 20 + 25·500/800 = 35.625 °C, so
	// 0.6 kWh · 0.92·0.96·0.94 · (1 - 0.004·10.625) = 476.9 Wh.
	near(t, "a day by hand", float64(p.Chain().DayWh(6, shape, air)), 476.9, 1e-3)
	// A bigger panel gives more in proportion; warmer air never gives more.
	bigger, plain := Panel{130, Arch, Tracking}.Chain(), p.Chain()
	for g := 0.0; g <= 1400; g += 100 {
		for _, air := range []quantity.Celsius{-10, 15, 45} {
			near(t, "bigger panel", float64(bigger.PowerW(g, air)), 1.3*float64(plain.PowerW(g, air)), 1e-12)
			if plain.PowerW(g, air+1) > plain.PowerW(g, air) || plain.PowerW(g, air) < 0 {
				t.Fatalf("%v W/m² at %v °C: %v, warmer %v", g, air, plain.PowerW(g, air), plain.PowerW(g, air+1))
			}
		}
	}
	if plain.PowerW(0, 20) != 0 {
		t.Error("power at night")
	}
}
