package season_test

import (
	"strconv"
	"strings"
	"testing"
)

// TestTraceByHand holds hours of the kept trace against sums done by hand from
// the boat's figures and the sources' equations, rounded as they were written:
//
// Maine coast in July: air 18.1 °C, 13.1 to 22.8; sea 16.5 °C; 0.011634 kg of
// water per kg of air. Cabin 2 K over the air. Leak 0.70 to the cabin, 0.20 to
// the sea, 0.15 to the engine space, 0.10 to the deck. 10 openings of 20 L.
// 1.2 kg of goods a day, two days' at the first noon. 120 kJ/K. Target 4 °C.
//
// Unit, hour 0 (12 h):
//
//	air     18.1 + 4.85 cos(15°(12.5 - 15)) = 18.1 + 4.85 · 0.79335 = 21.948; cabin 23.948, and so is the box
//	sun     6 · 0.116808 of the day = 700.8 W/m²; cells 21.948 + 25 · 700.8/800 = 43.85 °C
//	        100 W · 0.7008 · 0.76704 · (1 - 0.004 · 18.85) = 49.70 W
//	leak    0.20 (16.5 - 23.948) + 0.10 · 3 = -1.190 W
//	lid     10/14 · 20 L = 14.29 L of 0.8574 m³/kg = 0.01666 kg; h 53.71 outside, 71.98 inside
//	        0.01666 (53.71 - 71.98)/3.6 = -0.085 W; goods as warm as the box
//	gain    -1.190 - 0.085 = -1.274 W
//	plate   condenser 35.948 °C; at 3.901 °C: 50 · e^(0.045 · 13.901) · (1 + 0.008 · 9.052) = 50 · 1.8693 · 1.0724 = 100.23 W,
//	        and 5 W/K (23.948 - 3.901) = 100.23 W
//	COP     0.33 · 277.05/(35.948 - 3.901) = 2.853
//	needs   120 · 19.948/3.6 = 665 W, gets 100.23
//	food    23.948 - 3.6 (100.233 + 1.274)/120 = 20.903 °C
//	unit    100.23/2.853 + 3 + 0.1 = 38.23 W; sun is enough, the bank stays at 100 Ah · 12.3 V · 0.5 = 615 Wh
//
// Unit, hour 10 (22 h), box 4.0436 °C, cabin 18.244 °C, lid shut:
//
//	gain    0.70 · 14.2004 + 0.20 · 12.4564 + 0.15 · 14.2004 + 0.10 · 17.2004 = 16.282 W
//	needs   16.282 + 120 · 0.04363/3.6 = 17.736 W of the 60.83 it could; food 4 °C
//	unit    17.736/2.2796 + 3 · 17.736/60.83 + 0.1 = 7.780 + 0.875 + 0.1 = 8.755 W
//	charge  411.408 - 6 - 8.755 = 396.653 Wh
//
// Unit, hour 21 (9 h), box 4 °C, cabin 20.733 °C, motoring:
//
//	leak    0.70 · 16.733 + 0.20 · 12.5 + 0.15 · 24.733 + 0.10 · 19.733 = 19.896 W
//	lid     14.29 L of 0.8481 m³/kg = 0.016844 kg; h 50.40 outside, 16.65 inside: 0.016844 · 33.75/3.6 = 0.158 W
//	charge  328.927 + 0.85 (35.109 + 250 - 6 - 10.440) = 328.927 + 228.368 = 557.295 Wh
//
// Ice, hour 0:
//
//	buys    wants 1.2 · 2 · 6 + 4 + 7 = 25.4 kg; carries 4 bags of 4.5 kg, 17.1 kg after the loss of 5 %
//	at 0 °C 0.70 · 23.948 + 0.20 · 16.5 + 0.15 · 23.948 + 0.10 · 26.948 = 26.350 W; goods 3.6 · 2.4/(6 · 3.6) = 0.4 W/K,
//	        9.579 W; lid -0.085 W; together 35.845 W, and 1.15 + 0.4 = 1.55 W less per kelvin
//	surface 8 (17.1/20)^(2/3) = 7.2067 W/K
//	food    (120 · 23.948 + 3.6 · 35.845)/(120 + 3.6 (1.55 + 7.2067)) = 3002.8/151.52 = 19.817 °C
//	gain    35.845 - 1.55 · 19.817 = 5.128 W
//	ice     7.2067 · 19.817 = 142.82 W, 514.1 kJ; and 3.6 · 5.128 + 120 (23.948 - 19.817) = 18.5 + 495.7 = 514.2 kJ
//	left    17.1 - 514.1/(333.6 + 4.19 · 2) = 17.1 - 1.503 = 15.597 kg
//
// Source: the equations of ASHRAE Fundamentals (moist air), IEC 61215 (cells)
// and FAO Fisheries Technical Paper 436 (ice), as in the packages of the ledgers.
func TestTraceByHand(t *testing.T) {
	lines := keptTrace(t)
	names := strings.Split(lines[0], "\t")
	for _, row := range []struct {
		option string
		hour   int
		column string
		byHand float64
		within float64
	}{
		{"unit", 0, "CabinC", 23.948, 0.001},
		{"unit", 0, "SunW", 49.70, 0.02},
		{"unit", 0, "GainW", -1.274, 0.002},
		{"unit", 0, "EvaporatorC", 3.901, 0.001},
		{"unit", 0, "CapacityW", 100.23, 0.02},
		{"unit", 0, "CooledW", 100.23, 0.02},
		{"unit", 0, "COP", 2.853, 0.001},
		{"unit", 0, "FoodC", 20.903, 0.001},
		{"unit", 0, "UnitW", 38.23, 0.02},
		{"unit", 0, "ChargeWh", 615, 0},
		{"unit", 10, "GainW", 16.282, 0.002},
		{"unit", 10, "CooledW", 17.736, 0.002},
		{"unit", 10, "FoodC", 4, 1e-6},
		{"unit", 10, "UnitW", 8.755, 0.002},
		{"unit", 10, "ChargeWh", 396.653, 0.002},
		{"unit", 21, "GainW", 19.896 + 0.158, 0.001},
		{"unit", 21, "ChargeWh", 557.295, 0.002},
		{"ice", 0, "FoodC", 19.817, 0.001},
		{"ice", 0, "GainW", 5.128, 0.002},
		{"ice", 0, "CooledW", 142.82, 0.02},
		{"ice", 0, "IceKg", 15.597, 0.001},
	} {
		got, ok := 0.0, false
		for _, line := range lines[1:] {
			cells := strings.Split(line, "\t")
			if cells[0] != row.option || cells[2] != strconv.Itoa(row.hour) {
				continue
			}
			for c, name := range names {
				if name == row.column {
					v, err := strconv.ParseFloat(cells[c], 64)
					got, ok = v, err == nil
				}
			}
		}
		if !ok || !(got >= row.byHand-row.within && got <= row.byHand+row.within) {
			t.Errorf("%s hour %d: %s is %g, by hand %g", row.option, row.hour, row.column, got, row.byHand)
		}
	}
}
