package energy_test

import (
	"fmt"

	"coldreckon/economics/energy"
	"coldreckon/economics/quantity"
)

// A unit of 45 W in a box that leaks 1 W/K, in a cabin of 28 °C.
func ExampleCycle_Duty() {
	unit := energy.Unit{RatedW: 45, Eta: energy.Eta().Typical, CooledBy: energy.Fan, Plate: energy.Thin}
	duty := unit.Cycle().Duty(energy.Gain{Leak: 1, Out: 28, Use: 3}, 4, 28)
	fmt.Printf("runs %.0f %% of the day, takes %.0f Wh\n", 100*duty.RunShare, duty.DayWh())
	// Output: runs 50 % of the day, takes 383 Wh
}

// Five amperes over five metres of cable at 12 V.
func ExampleSizeFor() {
	least := energy.SizeFor(5, 5, 12, energy.CompressorDrop)
	sold, _ := energy.NextMetric(least)
	fmt.Printf("at least %.2f mm², sold as %v mm²\n", least, sold.Size)
	// Output: at least 2.49 mm², sold as 2.5 mm²
}

// A maker states 0.45 A at 12 V and boxes up to 125 L.
func ExampleRatingPlate_Meaning() {
	plate := energy.RatingPlate{Amps: 0.45, Volts: 12, BoxUpTo: 125, Box: energy.MakerBox,
		Ambient: energy.MakerAmbient().Range, CooledBy: energy.Fan}
	m := plate.Meaning()
	round := func(r quantity.Range) string { return fmt.Sprintf("%.0f (%.0f to %.0f)", r.Typical, r.Low, r.High) }
	fmt.Println("cools, W:", round(m.Cooling))
	fmt.Printf("its box leaks, W/K: %.1f (%.1f to %.1f)\n", m.ImpliedLeak.Typical, m.ImpliedLeak.Low, m.ImpliedLeak.High)
	// Output:
	// cools, W: 60 (45 to 90)
	// its box leaks, W/K: 0.7 (0.5 to 1.0)
}
