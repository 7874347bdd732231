package energy

import (
	"testing"

	"coldreckon/economics/quantity"
)

// The ranges that reports state and futures draw from, each as low, typical
// and high, written down a second time: whoever moves one says so here too.
// Where they are from stands beside each in constants.go.
func TestStatedRanges(t *testing.T) {
	for _, row := range []struct {
		f                  Figure
		low, typical, high float64
	}{
		{Eta(), 0.26, 0.33, 0.42}, {ChestEta(), 0.20, 0.25, 0.32},
		{PlateConductance(Thin), 3.5, 5, 7}, {PlateConductance(Eutectic), 5, 8, 11},
		{CondenserRise(Fins), 15, 20, 27}, {CondenserRise(LockerFan), 11, 15, 20}, {CondenserRise(Fan), 8, 12, 15}, {CondenserRise(Seawater), 4, 6, 8},
		{CondenserPower(Fins), 0, 0, 0}, {CondenserPower(LockerFan), 2, 3, 5}, {CondenserPower(Fan), 2, 3, 5}, {CondenserPower(Seawater), 0, 3, 12},
		{Standby(), 0.05, 0.1, 0.3}, {CapacityGrowth(), 0.038, 0.045, 0.057}, {CapacityFall(), 0.005, 0.008, 0.013},
		{EutecticPoint(), -11, -10, -6.5}, {EutecticLatent(), 253, 268, 283}, {EutecticUsable(), 0.8, 0.85, 0.9}, {EutecticMass(), 4, 8, 15},
		{UsualCooling(Small), 45, 60, 90}, {UsualCooling(Larger), 75, 100, 150},
		{MakerAmbient(), 18, 21, 25}, {makerFoam(), 0.04, 0.05, 0.08}, {makerHot(), 27, 32, 38},
		{Shade(Arch), 0.90, 0.92, 0.95}, {Shade(Bimini), 0.80, 0.85, 0.90}, {Shade(OnDeck), 0.65, 0.75, 0.85},
		{ControllerShare(Tracking), 0.95, 0.96, 0.98}, {ControllerShare(Plain), 0.73, 0.80, 0.87},
		{SoilAndWire(), 0.90, 0.94, 0.96}, {CellLoss(), 0.0035, 0.004, 0.0045},
		{CellTemperature(Arch), 43, 45, 48}, {CellTemperature(Bimini), 43, 45, 48}, {CellTemperature(OnDeck), 55, 63, 66},
		{BankVolts(Lead), 12.2, 12.3, 12.4}, {BankVolts(Lithium), 13.0, 13.1, 13.2},
		{lowVolts(Lead), 11.5, 11.8, 12.1}, {lowVolts(Lithium), 12.4, 12.8, 13.0},
		{UsableShare(Lead), 0.4, 0.5, 0.6}, {UsableShare(Lithium), 0.7, 0.8, 0.9},
		{AgeLoss(Lead), 0.02, 0.04, 0.07}, {AgeLoss(Lithium), 0.01, 0.02, 0.04},
		{ChargeEfficiency(Lead), 0.80, 0.85, 0.92}, {ChargeEfficiency(Lithium), 0.92, 0.96, 0.98},
		{EngineCharge(), 0.5, 0.7, 0.85}, {HouseLoad(), 8, 15, 30}, {cutOutVolts(), 9.6, 10.4, 11.1},
	} {
		if want := (quantity.Range{Low: row.low, Typical: row.typical, High: row.high}); row.f.Range != want {
			t.Errorf("%s: %+v, want %+v", row.f.Label, row.f.Range, want)
		}
		if row.f.Source == "" || row.f.Key == "" {
			t.Errorf("%s: no key or source", row.f.Label)
		}
	}
	if f := CondenserPower(Fan); f.Label != "ducted fan while running" {
		t.Errorf("what a duct's fan takes is called %q", f.Label)
	}
	// PlateConductance holds up to 50 W; twice the cooling has twice the plate.
	if plate := typicalUnit(100, Fan, Thin).Cycle().Plate; plate != 10 {
		t.Errorf("the plate of 100 W takes %v W/K", plate)
	}
	// US FDA Food Code 3-501.16: 41 °F.
	near(t, "limit of chilled food", float64(chilledLimit), (41.0-32)/1.8, 1e-12)
	if MakerBox != 5.5 || CompressorDrop != 0.03 {
		t.Errorf("a maker's box at %v °C, a drop of %v", MakerBox, CompressorDrop)
	}
}
