package heat

import (
	"encoding/csv"
	"fmt"
	"os"
	"strconv"
	"testing"

	"coldreckon/economics/quantity"
)

// Moist air against a general psychrometrics library by other hands; see the
// head of the file for its name and version. Guards every coefficient of
// saturationKPa, HumidityRatio, EnthalpyKJ and specificVolume. The library
// takes the equation over ice up to the triple point at 0.01 °C, a ten
// thousandth less at 0 °C than the one over water.
func TestMoistAirAgainstALibrary(t *testing.T) {
	file, err := os.Open("testdata/psychrolib.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	in := csv.NewReader(file)
	in.Comment = '#'
	rows, err := in.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		var x [6]float64
		for i, cell := range row {
			if x[i], err = strconv.ParseFloat(cell, 64); err != nil {
				t.Fatal(err)
			}
		}
		c, rh := quantity.Celsius(x[0]), quantity.Fraction(x[1])
		w := HumidityRatio(c, rh)
		at := fmt.Sprintf("%g °C, %g: ", x[0], x[1])
		share := 1e-5
		if c == 0 {
			share = 1e-4
		}
		within(t, at+"saturation, Pa", 1000*saturationKPa(c), x[2], share*x[2])
		within(t, at+"humidity ratio", w, x[3], share*x[3])
		within(t, at+"enthalpy, kJ/kg", EnthalpyKJ(c, x[3]), x[4], 1e-4)
		within(t, at+"volume, m³/kg", specificVolume(c, x[3]), x[5], 2e-5*x[5])
	}
	if len(rows) != 1+15*3 {
		t.Errorf("read %d rows", len(rows))
	}
}
