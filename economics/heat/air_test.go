package heat

import (
	"testing"

	"coldreckon/economics/quantity"
)

// Guards saturationKPa, HumidityRatio, EnthalpyKJ: a digit changed in any
// coefficient of the water branch fails the 20 and 30 °C rows. ASHRAE's table
// is of real air; it states 0.7 % for the perfect-gas equations used here.
func TestMoistAir(t *testing.T) {
	tests := []struct {
		source     string
		t          quantity.Celsius
		rh         quantity.Fraction
		w, h       float64
		wTol, hTol float64
	}{
		{"ASHRAE Fundamentals, ch. 1, saturated air at 0 °C, from memory", 0, 1, 0.003790, 9.473, 0.007 * 0.003790, 0.007 * 9.473},
		{"ASHRAE Fundamentals, ch. 1, saturated air at 20 °C, from memory", 20, 1, 0.014758, 57.555, 0.007 * 0.014758, 0.007 * 57.555},
		{"ASHRAE Fundamentals, ch. 1, saturated air at 30 °C, from memory", 30, 1, 0.027329, 99.98, 0.007 * 0.027329, 0.007 * 99.98},
		{"moist-air table of the web, saturated air at 0 °C", 0, 1, 0.0038, 9.5, 0.00005, 0.1},
		{"the equations by hand, 35 °C and 60 %", 35, 0.60, 0.02144, 90.23, 0.000005, 0.01},
	}
	for _, tt := range tests {
		w := HumidityRatio(tt.t, tt.rh)
		within(t, tt.source+", W", w, tt.w, tt.wTol)
		within(t, tt.source+", h", EnthalpyKJ(tt.t, w), tt.h, tt.hTol)
	}
	within(t, "Hundy, Refrigeration and Air-Conditioning, ex. 21.3: 28 °C, x 0.0111", EnthalpyKJ(28, 0.0111), 56.6, 0.15)
	within(t, "35 °C and 60 %: v by hand", specificVolume(35, HumidityRatio(35, 0.6)), 0.903, 0.0005)
	within(t, "dry air at 15 °C, 1.225 kg/m³: ISO 2533 standard atmosphere", 1/specificVolume(15, 0), 1.225, 0.001)
}

// Guards the ice branch and the switch at 0 °C in saturationKPa, digit by digit.
func TestSaturationPressure(t *testing.T) {
	tests := []struct {
		source  string
		t       quantity.Celsius
		pa, tol float64
	}{
		{"Hyland and Wexler 1983 over water, by hand", 0, 611.2, 0.1},
		{"Hyland and Wexler 1983 over water, by hand", 20, 2338.8, 0.2},
		{"Hyland and Wexler 1983 over water, by hand", 30, 4246, 1},
		{"moist-air table of the web", 30, 4243, 5},
		{"boiling at one atmosphere", 100, 101325, 150},
		// Over ice: the branch's own table in ASHRAE, from memory.
		{"ASHRAE Fundamentals, ch. 1, over ice at -10 °C, from memory", -10, 259.9, 0.3},
		{"ASHRAE Fundamentals, ch. 1, over ice at -20 °C, from memory", -20, 103.2, 0.2},
		{"ice meets water at 0 °C", -1e-9, 611.2, 0.1},
	}
	for _, tt := range tests {
		within(t, tt.source, 1000*saturationKPa(tt.t), tt.pa, tt.tol)
	}
}

// Guards the table in SaturatedEnthalpyKJ: reading one step off is 0.5 kJ/kg.
func TestSaturatedEnthalpyTable(t *testing.T) {
	for c := -25.0; c < 65; c += 0.0137 {
		got, want := SaturatedEnthalpyKJ(quantity.Celsius(c)), saturatedEnthalpyKJ(quantity.Celsius(c))
		if d := got - want; d > 0.01 || d < -0.01 {
			t.Fatalf("at %g °C: %g, formula %g", c, got, want)
		}
	}
}

// A cold store's air change, FAO Fisheries Technical Paper 340 (1994), section
// 8.1: 40 kcal for each cubic metre of air at 35 °C and 60 % let into a store at
// -30 °C. The density of the air that falls out gives it within 5 %, that of
// the air that comes in falls a fifth short. Guards ColdAirDensity.
func TestAirChangeOfAColdStore(t *testing.T) {
	warm := HumidityRatio(35, 0.60)
	perM3 := EnthalpyKJ(35, warm) - SaturatedEnthalpyKJ(-30)
	within(t, "kcal/m³", perM3*ColdAirDensity(-30)/4.187, 40, 2)
	if short := perM3 / specificVolume(35, warm) / 4.187; short > 33 {
		t.Errorf("with the warm air's density %.1f kcal/m³; the check tells nothing", short)
	}
	within(t, "saturated air of 0 °C, 0.7781 m³/kg: ASHRAE Fundamentals, ch. 1, from memory", ColdAirDensity(0), 1/0.7781, 0.001)
	for c := -25.0; c < 65; c += 0.0137 {
		within(t, "table", ColdAirDensity(quantity.Celsius(c)), coldAirDensity(quantity.Celsius(c)), 1e-5)
	}
}

// One look at two tables gives what two looks give, and the formulas beyond
// their ends. Guards ExchangeKJPerM3.
func TestExchange(t *testing.T) {
	for c := -30.0; c < 70; c += 0.137 {
		box := quantity.Celsius(c)
		within(t, "heat per cubic metre", ExchangeKJPerM3(80, box), coldAirDensity(box)*(80-saturatedEnthalpyKJ(box)), 0.03)
	}
	within(t, "FAO's 40 kcal for each cubic metre, as above", ExchangeKJPerM3(EnthalpyKJ(35, HumidityRatio(35, 0.6)), -30)/4.187, 40, 2)
}

// Guards the air of an opening as OpeningHeatKJ puts it together: leaving out the
// moisture halves it, swap counted twice fails the second row.
func TestOpening(t *testing.T) {
	humid := HumidityRatio(30, 0.7)
	all := float64(OpeningHeatKJ(80, 1, 30, humid, 4))
	within(t, "80 L of 30 °C, 70 % air against 4 °C saturated, 1.263 kg/m³, by hand", all, 6.22, 0.02)
	within(t, "ten such a day, by hand", 10*all/86.4, 0.720, 0.003)
	within(t, "ice of it", float64(MeltKgPerDay(quantity.Watt(10*all/86.4), 0)), 0.187, 0.001)
	within(t, "a top lid changes three parts in ten", float64(OpeningHeatKJ(80, 0.3, 30, humid, 4)), 0.3*all, 1e-12)
	if cold := OpeningHeatKJ(80, 1, 2, HumidityRatio(2, 0.7), 4); cold >= 0 {
		t.Errorf("a colder cabin brought %g kJ in", float64(cold))
	}
}
