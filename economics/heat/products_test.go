package heat

import (
	"testing"

	"coldreckon/economics/quantity"
)

// Cooling loads of goods above freezing, from textbooks; the model knows one
// heat capacity, so that each weight is taken by its own over GoodsKJPerKgK.
// Guards GoodsHeatKJ: a temperature left out fails both.
func TestGoodsAgainstTextbooks(t *testing.T) {
	for _, row := range []struct {
		source   string
		kg, c    float64
		from, to quantity.Celsius
		hours    float64
		wantKW   float64
		within   float64
	}{
		{"Hundy, Refrigeration and Air-Conditioning, ex. 18.2: 8 t of meat, 22 to 1 °C in 14 h", 8000, 3.1, 22, 1, 14, 10.3, 0.05},
		{"FAO Fish. Tech. Paper 340, 8.1: 35 t a day at 5.5 kcal/kg, 8020 kcal/h", 35000, 1, 5.5 * 4.1868, 0, 24, 8020 * 1.163e-3, 0.02},
	} {
		kJ := GoodsHeatKJ(quantity.Kilogram(row.kg*row.c/GoodsKJPerKgK), row.from, row.to)
		within(t, row.source, float64(kJ)/3600/row.hours, row.wantKW, row.within)
	}
}
