package energy

import (
	"math"
	"testing"

	"coldreckon/economics/quantity"
)

// The table of a holding unit gives what Working gives, to a millionth, at every
// coolant that it spans, kinks included; beyond, and where the plate stands at
// its ceiling, it says that it does not.
func TestHoldingReadsWhatWorkingGives(t *testing.T) {
	for _, unit := range []Unit{
		{RatedW: 60, Eta: 0.33, CooledBy: LockerFan}, {RatedW: 30, Eta: 0.26, CooledBy: Fins},
		{RatedW: 150, Eta: 0.42, CooledBy: Seawater}, {RatedW: 100, Eta: 0.33, CooledBy: Fan},
	} {
		ready := unit.Cycle().Ready()
		for _, box := range []quantity.Celsius{-12, 2, 4, 5} {
			var h Holding
			if !ready.Holding(box, &h) {
				t.Fatalf("%+v holding %v: no table", unit, box)
			}
			for coolant := -5.0; coolant < 60; coolant += 0.37 {
				w := ready.Working(box, quantity.Celsius(coolant))
				perCOP, perCapacity, ok := h.At(coolant)
				if !ok {
					if float64(w.Tc) < condenserFloorC+holdingSteps {
						t.Errorf("%+v: no figure at a coolant of %v", unit, coolant)
					}
					continue
				}
				for name, off := range map[string]float64{
					"inverse COP": perCOP*w.COP - 1, "inverse capacity": perCapacity*float64(w.CapacityW) - 1,
				} {
					if math.Abs(off) > 1e-6 {
						t.Errorf("%+v holding %v at %v: %s off by %g", unit, box, coolant, name, off)
					}
				}
			}
		}
	}
	weak := Unit{RatedW: 20, Eta: 0.3, CooledBy: Fan}.Cycle().Ready()
	var h Holding
	if weak.Holding(15, &h) {
		t.Error("a weak unit in a warm box has its plate at the ceiling, and yet a table")
	}
}
