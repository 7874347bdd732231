package climate

import (
	"encoding/csv"
	"fmt"
	"os"
	"strconv"
	"testing"
)

// The sun's place and the length of the day against a general library of
// astronomy; see the head of the file for its name and version. FAO-56 takes
// one sine for the year: its declination is right at the solstices and up to a
// degree off in autumn, which makes a quarter of an hour at 60°. Guards
// declination, inverseSquare, sunsetAngle and DaylightHours: amplitude or phase
// changed by a fiftieth fails, as does the swing of the distance by a tenth.
func TestSunAgainstALibrary(t *testing.T) {
	file, err := os.Open("testdata/astronomy-engine.csv")
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
		var x [5]float64
		for i, cell := range row {
			if x[i], err = strconv.ParseFloat(cell, 64); err != nil {
				t.Fatal(err)
			}
		}
		day, latDeg := int(x[0]), x[1]
		at := fmt.Sprintf("day %d at %g°: ", day, latDeg)
		degree := 0.0175
		if day == 166 || day == 349 {
			degree = 0.001
		}
		near(t, at+"declination, rad", declination(day), x[2], degree)
		near(t, at+"inverse square", inverseSquare(day), x[3], 0.0025)
		near(t, at+"daylight, h", DaylightHours(latDeg, day), x[4], 0.25)
	}
	if len(rows) != 1+12*8 {
		t.Errorf("read %d rows", len(rows))
	}
}
