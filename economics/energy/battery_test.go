package energy

import (
	"testing"

	"coldreckon/economics/quantity"
)

// Guards FullWh's factors (usable share, age, volts), restartShare and the
// scaling by nominalVolts in MeanVolts.
func TestBank(t *testing.T) {
	for _, row := range []struct {
		Source            string
		bank              Bank
		full, restart, in float64
	}{
		// 100 Ah · 12.3 V · 0.5; planning depth of IEEE 1013, from memory.
		{"lead, new", Bank{100, 12, Lead, 0}, 615, 61.5, 0.85},
		// the same · (1 - 0.04·5)
		{"lead, five years", Bank{100, 12, Lead, 5}, 492, 49.2, 0.85},
		// 100 Ah · 13.1 V · 0.8 · (1 - 0.02·5)
		{"lithium, five years", Bank{100, 12, Lithium, 5}, 943.2, 94.32, 0.96},
		// twice the voltage, half the ampere-hours: the same energy
		{"lead at 24 V", Bank{50, 24, Lead, 0}, 615, 61.5, 0.85},
		{"lead, dead of age", Bank{100, 12, Lead, 30}, 0, 0, 0.85},
	} {
		s := row.bank.Store()
		near(t, row.Source+": full", float64(s.FullWh), row.full, 1e-9)
		near(t, row.Source+": restart", float64(s.RestartWh), row.restart, 1e-9)
		near(t, row.Source+": efficiency", float64(s.ChargeEfficiency), row.in, 1e-9)
	}
	// 40 A stated, 0.7 of it at 12.3 V; 15 Ah at 12.3 V.
	b := Bank{100, 12, Lead, 0}
	near(t, "engine", float64(b.EngineW(40)), 344.4, 1e-9)
	near(t, "house", float64(b.Energy(15)), 184.5, 1e-9)
}

// Ranges as printed in the general literature (IEEE 1013, 1361, handbooks;
// from memory): the ledger's figures lie inside them.
//
// Guards UsableShare, ChargeEfficiency and BankVolts: swapping
// lead and lithium fails in each.
func TestBatteryFactsAreUsual(t *testing.T) {
	for _, row := range []struct {
		what      string
		figure    Figure
		low, high float64
	}{
		{"lead usable", UsableShare(Lead), 0.50, 0.50},
		{"lithium usable", UsableShare(Lithium), 0.80, 0.90},
		{"lead charge", ChargeEfficiency(Lead), 0.80, 0.90},
		{"lithium energy", ChargeEfficiency(Lithium), 0.92, 0.96},
		{"lead volts", BankVolts(Lead), 12.3, 12.4},
		{"lithium volts", BankVolts(Lithium), 13.1, 13.1},
		{"lead under load at half charge", lowVolts(Lead), 11.5, 11.8},
	} {
		if v := row.figure.Typical; v < row.low || v > row.high {
			t.Errorf("%s: %v outside %v to %v", row.what, v, row.low, row.high)
		}
	}
}

// Guards every figure: its marks in order, its unit's bounds, its source.
func TestFigures(t *testing.T) {
	share := func(f Figure) bool { return f.Unit == "" }
	for _, f := range allFigures() {
		if f.Low > f.Typical || f.Typical > f.High {
			t.Errorf("%s (%s): %v is not in order", f.Key, f.Label, f.Range)
		}
		if f.Key == "" || f.Label == "" || f.Source == "" {
			t.Errorf("%+v lacks key, label or source", f)
		}
		if share(f) && (f.Low <= 0 || f.High > 1) {
			t.Errorf("%s: share %v", f.Label, f.Range)
		}
	}
	seen := map[string]bool{}
	for _, f := range allFigures() {
		if seen[f.Label] {
			t.Errorf("label %q twice", f.Label)
		}
		seen[f.Label] = true
	}
}

// Nearly all built-in units shed their heat by a fan in their locker (common
// practice, no source); of the rest the worst is taken.
func TestUnknownWords(t *testing.T) {
	c := Unit{RatedW: 40, Eta: 0.33}.Cycle()
	if c != typicalUnit(40, LockerFan, Thin).Cycle() || c.Rise != 15 || c.Condenser != 3 {
		t.Errorf("unit: %+v", c)
	}
	if p := (Panel{Wp: 100}).Chain(); p != (Panel{100, OnDeck, Plain}).Chain() {
		t.Errorf("panel: %+v", p)
	}
	if b := (Bank{Nominal: 100, Volts: 12}).Store(); b != (Bank{100, 12, Lead, 0}).Store() {
		t.Errorf("bank: %+v", b)
	}
	var _ quantity.WattHour = Bank{}.FullWh()
}

// allFigures lists every figure of the ledger, in the order of constants.go.
func allFigures() []Figure {
	figures := []Figure{Eta(), PlateConductance(Thin), PlateConductance(Eutectic)}
	for _, c := range [...]Condenser{Fins, LockerFan, Fan, Seawater} {
		figures = append(figures, CondenserRise(c), CondenserPower(c))
	}
	figures = append(figures, Standby(), CapacityGrowth(), CapacityFall(),
		EutecticPoint(), EutecticLatent(), EutecticUsable(), EutecticMass())
	for _, m := range [...]Mounting{Arch, Bimini, OnDeck} {
		figures = append(figures, Shade(m))
	}
	figures = append(figures, ControllerShare(Tracking), ControllerShare(Plain), SoilAndWire(), CellLoss(),
		CellTemperature(Arch), CellTemperature(OnDeck))
	for _, c := range [...]Chemistry{Lead, Lithium} {
		figures = append(figures, BankVolts(c), lowVolts(c), UsableShare(c), AgeLoss(c), ChargeEfficiency(c))
	}
	return append(figures, EngineCharge(), HouseLoad(), cutOutVolts(),
		MakerAmbient(), makerFoam(), makerHot(), UsualCooling(Small), UsualCooling(Larger), ChestEta())
}
