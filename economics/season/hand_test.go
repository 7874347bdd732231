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
// 1.2 kg of perishables a day, two days' at the first noon, which come at 8 °C:
// 2.4 · 3.5/21.6 = 0.38889 W/K for six hours. 2 kg of drinks a day from the second
// noon: 2 · 4.19/86.4 = 0.09699 W/K. 60 kJ/K. Target 4 °C.
//
// Unit, hour 0 (12 h), warm, the food in its bag:
//
//	air     18.1 + 4.85 cos(15°(12.5 - 15)) = 18.1 + 4.85 · 0.79335 = 21.948; cabin 23.948, and so is the box
//	sun     6 · 0.116808 of the day = 700.8 W/m²; cells 21.948 + 25 · 700.8/800 = 43.85 °C
//	        100 W · 0.7008 · 0.76704 · (1 - 0.004 · 18.85) = 49.70 W
//	leak    0.20 (16.5 - 23.948) + 0.10 · 3 = -1.190 W
//	lid     10/14 · 20 L = 14.29 L of the box's 0.8671 m³/kg = 0.016475 kg; h 53.71 outside, 72.00 inside
//	        0.016475 (53.71 - 72.00)/3.6 = -0.084 W
//	gain    -1.190 - 0.084 = -1.274 W
//	plate   condenser 35.948 °C; at 3.901 °C: 50 · e^(0.045 · 13.901) · (1 + 0.008 · 9.052) = 50 · 1.8693 · 1.0724 = 100.23 W,
//	        and 5 W/K (23.948 - 3.901) = 100.23 W
//	COP     0.33 · 277.05/(35.948 - 3.901) = 2.853
//	needs   60 · 19.948/3.6 = 332 W, gets 100.23
//	food    23.948 - 3.6 (100.233 + 1.274)/60 = 17.857 °C
//	unit    100.23/2.853 + 3 + 0.1 = 38.23 W; sun is enough, the bank stays at 100 Ah · 12.3 V · 0.5 = 615 Wh
//
// Unit, hour 10 (22 h), box 4 °C, cabin 18.244 °C, lid shut. The box was at its
// limit after five hours, so that this is the last of six in which food goes in:
//
//	leak    0.70 · 14.244 + 0.20 · 12.5 + 0.15 · 14.244 + 0.10 · 17.244 = 16.332 W
//	gain    16.332 + 0.38889 (8 - 4) = 17.887 W, of the 60.75 it could
//	unit    17.887/2.2777 + 3 · 17.887/60.75 + 0.1 = 7.853 + 0.883 + 0.1 = 8.837 W
//
// Unit, hour 21 (9 h), box 4 °C, cabin 20.733 °C, motoring:
//
//	leak    0.70 · 16.733 + 0.20 · 12.5 + 0.15 · 24.733 + 0.10 · 19.733 = 19.896 W
//	lid     14.29 L of 0.7915 m³/kg = 0.018050 kg; h 50.40 outside, 16.65 inside: 0.018050 · 33.75/3.6 = 0.169 W
//	charge  full: 285 W of sun and engine find room for less
//
// Ice, hour 0. What he wants, by the planned day, 2.5 K warmer:
//
//	melt    box 2 °C, cabin 22.6: leak 0.85 · 20.6 + 0.20 · 14.5 + 0.10 · 23.6 + 0.05 of the engine = 22.82 W; drinks 2.00, food
//	        1.2 · 3.5 · 6/86.4 = 0.29, lid 0.10; 25.2 · 86.4/342 = 6.4 kg a day
//	floor   4.5 °C at 15 h, cabin 27.41: 24.46 + drinks 2.22 + food 0.68 + lid 0.20 = 27.56 W; 27.56/(9 · 4.5) = 0.6805 m²,
//	        560 (0.6805/6)^(3/2) = 21.4 kg, of which 20 fit
//	chill   60 (26.448 - 2)/342 = 4.3 kg
//	buys    1.2 · 2 · 6.4 + 20 + 4.3 = 39.6 kg; 20 fit: five bags of 4.5, of which 0.95 comes aboard, the last in part
//
// and what comes of it, the box at the cabin's 23.948 °C:
//
//	at 0 °C 0.70 · 23.948 + 0.20 · 16.5 + 0.15 · 23.948 + 0.10 · 26.948 = 26.350 W; lid -0.084 W; 26.266 W, 1.15 W less per kelvin
//	surface 6 (20/560)^(2/3) = 0.6507 m²; 9 (23.948/5)^(1/4) = 13.314 W/m²·K; 8.664 W/K
//	food    (60 · 23.948 + 3.6 · 26.266)/(60 + 3.6 (1.15 + 8.664)) = 1531.4/95.33 = 16.065 °C
//	gain    26.266 - 1.15 · 16.065 = 7.792 W
//	ice     8.664 · 16.065 = 139.18 W, 501.0 kJ; and 3.6 · 7.792 + 60 (23.948 - 16.065) = 28.1 + 473.0 = 501.1 kJ
//	left    20 - 501.05/(333.6 + 4.19 · 2) = 20 - 1.465 = 18.535 kg
//
// Ice, hour 30 (18 h of the second day), food 5.267 °C, 10.967 kg, cabin 23.052 °C:
//
//	surface 6 (10.967/560)^(2/3) = 0.43593 m²; 9 (5.267/5)^(1/4) = 9.1178 W/m²·K; 3.9747 W/K
//	at 0 °C 0.85 · 23.052 + 0.20 · 16.5 + 0.10 · 26.052 = 25.500 W; drinks 0.09699 · 23.052 = 2.236 W
//	lid     14.29 L of 0.7959 m³/kg = 0.01795 kg; h 52.79 outside, 19.1 inside: 0.168 W
//	food    (60 · 5.267 + 3.6 · 27.904)/(60 + 3.6 (1.247 + 3.9747)) = 416.47/78.80 = 5.285 °C
//	ice     3.9747 · 5.285 = 21.01 W; 3.6 · 21.01/342 = 0.2212 kg
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
		{"unit", 0, "FoodC", 17.857, 0.001},
		{"unit", 0, "UnitW", 38.23, 0.02},
		{"unit", 0, "ChargeWh", 615, 0},
		{"unit", 4, "FoodC", 4, 1e-6},
		{"unit", 4, "Counted", 0, 0},
		{"unit", 5, "Counted", 1, 0},
		{"unit", 10, "GainW", 17.887, 0.002},
		{"unit", 10, "CooledW", 17.887, 0.002},
		{"unit", 10, "FoodC", 4, 1e-6},
		{"unit", 10, "UnitW", 8.837, 0.002},
		{"unit", 21, "GainW", 19.896 + 0.169, 0.001},
		{"unit", 21, "ChargeWh", 615, 0},
		{"ice", 0, "FoodC", 16.065, 0.001},
		{"ice", 0, "GainW", 7.792, 0.002},
		{"ice", 0, "CooledW", 139.18, 0.02},
		{"ice", 0, "IceKg", 18.535, 0.001},
		{"ice", 5, "Counted", 0, 0},
		{"ice", 6, "Counted", 1, 0},
		{"ice", 30, "FoodC", 5.285, 0.001},
		{"ice", 30, "CooledW", 21.01, 0.005},
		{"ice", 30, "MeltedKg", 0.2212, 0.0001},
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
