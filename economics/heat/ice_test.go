package heat

import (
	"math"
	"math/rand/v2"
	"testing"

	"coldreckon/economics/quantity"
)

// Guards MeltKgPerDay and FusionKJPerKg: 86.4 or the latent heat changed fails
// each row; the tolerance is the spread of latent heats in the books.
func TestMelt(t *testing.T) {
	tests := []struct {
		source    string
		gain      float64 // W
		hours     float64
		want, tol float64 // kg
	}{
		{"NCERT Physics XI, exercise 11.19: 0.54 m² of 5 cm foam, k 0.01, 45 K, L 335", 45 * 0.54 * transmittance(bare, bare, []slab{{0.05, 0.01}}), 6, 0.313, 0.002},
		{"Çengel, Heat Transfer, ex. 3-7: 8 029 W melt 2 079 kg a day, L 333.7 (from memory)", 8029, 24, 2079, 1},
		{"sphere, k 0.02, r 0.05 and 0.18 m, 19 K, L 334: 93 g by hand from the inputs of a course notebook", 19 * 0.0174, 26, 0.093, 0.0005},
	}
	for _, tt := range tests {
		within(t, tt.source, float64(MeltKgPerDay(quantity.Watt(tt.gain), 0))*tt.hours/24, tt.want, tt.tol)
	}
	within(t, "NCERT: 3.687 kg of 4 left", 4-float64(MeltKgPerDay(4.86, 0))/4, 3.687, 0.002)
	within(t, "Çengel, prob. 3-162: foam of a chest, K/W", 1/(0.5708*transmittance(bare, bare, []slab{{0.03, 0.033}})), 1.5927, 0.0001)
	within(t, "Çengel, prob. 3-162: foam and outer film, K/W", 1/(0.5708*transmittance(bare, 18*0.74/0.5708, []slab{{0.03, 0.033}})), 1.6678, 0.0001)
	within(t, "FAO Fish. Tech. Paper 340, 8.1: 771.5 m² of 0.25 m, 0.037 kcal/h m °C, 65 K, kcal/h", 65*771.5*transmittance(bare, bare, []slab{{0.25, 0.037}}), 7422, 1)
	within(t, "Hundy, ex. 18.1 (inputs): 20 t/day of water from 15 °C to ice, kW, c 4.187, L 334", MeltKJPerKg(15)*20000/86400, 91.9, 0.2)
	if kg := MeltKgPerDay(-5, 2); kg != 0 {
		t.Errorf("a box that loses heat melts %g kg", float64(kg))
	}
}

// iceToChill gives the kilograms at 0 °C that take up a heat, kJ, their water
// staying at 0 °C.
func iceToChill(kJ float64) float64 { return kJ / FusionKJPerKg }

// Ice to chill fish, FAO Fisheries Technical Papers 331, ch. 3, and 348, table
// 7.1 (from memory; it prints 1.2 where its own formula gives 1.13). Guards
// FreezerBonusKJ and the heat capacities.
func TestIceToChill(t *testing.T) {
	for _, row := range []struct{ from, kg float64 }{{30, 3.4}, {25, 2.8}, {20, 2.3}, {15, 1.7}, {10, 1.2}, {5, 0.6}} {
		fish := quantity.Kilojoule(10 * 0.9 * 4.1868 * row.from)
		within(t, "Huss 1995, table 7.1: 10 kg of fish, 0.9 kcal/kg °C", iceToChill(float64(fish)), row.kg, 0.075)
	}
	within(t, "FAO 331, ch. 3: lean fish 0.8 kcal/kg °C against 80 kcal/kg", iceToChill(float64(0.8*4.1868*100*25)), 100*25*0.8/80, 0.15)
	within(t, "research institute: 0.0114 kg per kg and °C, of mixed goods (a third of it drink)", iceToChill(float64(GoodsHeatKJ(2, 1, 0)+WaterKJPerKgK))/3, 0.0114, 0.0007)
	within(t, "UN University training: 1 kg of ice cools 3.2 kg of water 25 to 0 °C", iceToChill(float64(3.2*WaterKJPerKgK*25)), 1, 0.01)
	within(t, "Earle, app. 7: subcooled to -18 °C, 11 % more", float64(FreezerBonusKJ(1, -18))/FusionKJPerKg, 0.11, 0.005)
	within(t, "10 kg of food, c 3.5, 25 to 4 °C: 2.2 kg of ice by hand", iceToChill(float64(735)), 2.2, 0.01)
	if FreezerBonusKJ(3, 4) != 0 {
		t.Error("ice above freezing has cold to spare")
	}
}

// FAO Fisheries Technical Paper 436 (2003), table 2.1, m³ per tonne; from memory.
// Guards BulkDensity.
func TestBulkDensity(t *testing.T) {
	for _, row := range []struct {
		kind      IceKind
		low, high float64 // m³/t
	}{{Block, 1.08, 1.09}, {Crushed, 1.4, 1.5}, {Cubes, 1.6, 2.0}} {
		kg, err := CapacityKg(1000, 1, row.kind)
		if err != nil {
			t.Fatal(err)
		}
		if m3PerTonne := 1000 / float64(kg); m3PerTonne < row.low-0.005 || m3PerTonne > row.high+0.005 {
			t.Errorf("%s stows at %.3f m³/t; want %g to %g", row.kind, m3PerTonne, row.low, row.high)
		}
	}
	kg, _ := CapacityKg(80, 0.4, Block)
	within(t, "0.4 of 80 L in blocks", float64(kg), 80*0.4*0.92, 1e-12)
}

// A cube of 10 kg of block has sides of (10/920)^(1/3) = 0.22152 m and 6 faces:
// 0.29441 m², 2.6497 W/K at 9 W/m²·K; by hand. Above 5 °C still air's film grows
// with the fourth root of the difference (any textbook of heat transfer, laminar
// free convection): at 10 °C 2^(1/4) = 1.18921.
//
// Guards Surface: an exponent of 1 in WPerK, or of 2/3 in FloorKg, fails.
func TestSurface(t *testing.T) {
	leak, outside, use := quantity.WattPerKelvin(1.2), quantity.Celsius(28), quantity.Watt(4)
	block := NewSurface(9, 920)
	within(t, "10 kg of block", float64(block.WPerK(10, 4)), 2.6497, 0.0001)
	within(t, "10 kg of block, food at 10 °C", float64(block.WPerK(10, 10)/block.WPerK(10, 5)), 1.18921, 0.00001)
	within(t, "an eighth of the ice has a quarter of its surface", float64(block.WPerK(2.5, 4)/block.WPerK(20, 4)), 0.25, 1e-12)
	within(t, "loose ice is larger", float64(NewSurface(9, 560).WPerK(7, 4)/block.WPerK(7, 4)), math.Pow(920.0/560, 2.0/3), 1e-12)
	within(t, "no ice: leak and use alone", float64(block.FoodCelsius(0, leak, outside, use)), 28+4/1.2, 1e-12)

	within(t, "no ice, a tight box, no use: the air outside", float64(block.FoodCelsius(0, 0.3, 15, 0)), 15, 1e-12)

	r := rand.New(rand.NewPCG(7, 8))
	for range 500 {
		limit := quantity.Celsius(0.5 + 12*r.Float64())
		kg := block.FloorKg(limit, quantity.Watt(float64(leak)*float64(outside-limit))+use)
		within(t, "the floor holds its limit", float64(block.FoodCelsius(kg, leak, outside, use)), float64(limit), 1e-7)
		if warmer := block.FoodCelsius(kg*0.9, leak, outside, use); warmer <= limit {
			t.Fatal("less ice held the limit")
		}
	}
	if kg := block.FloorKg(5, -1); kg != 0 {
		t.Errorf("a cold cabin asked for %g kg", float64(kg))
	}
	if none := (Surface{}); none.WPerK(20, 4) != 0 || !math.IsInf(float64(none.FloorKg(5, 10)), 1) {
		t.Error("no surface takes up heat")
	}
}

// The surface's table against the exact power. Guards both slopes in
// surfaceTable and the lower limit in WPerK: 0.02 in place of an eighth fails.
func TestSurfaceTable(t *testing.T) {
	for x := 1e-6; x <= 3; x += 0.000317 {
		if got, want := float64((Surface{1}).WPerK(quantity.Kilogram(surfaceRefKg*x), 0)), math.Pow(x, 2.0/3); math.Abs(got-want) > 1e-8*want {
			t.Fatalf("x = %v: %.12g, want %.12g", x, got, want)
		}
	}
	if got := (Surface{1}).WPerK(surfaceRefKg, 0); got != 1 {
		t.Errorf("x = 1: %v", got)
	}
}
