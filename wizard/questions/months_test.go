package questions

import (
	"math"
	"testing"
)

func TestNights(t *testing.T) {
	tests := []struct {
		text  string
		south bool
		want  [12]float64
	}{
		{"weekends in summer", false, [12]float64{5: 8, 6: 8, 7: 8, 8: 8}},
		{"weekends in summer", true, [12]float64{11: 8, 0: 8, 1: 8, 2: 8}},
		{"Two weeks' holiday", false, [12]float64{6: 14}},
		{"two weeks holiday", true, [12]float64{0: 14}},
		{"weekends in summer and two weeks’ holiday", false, [12]float64{5: 8, 6: 22, 7: 8, 8: 8}},
		{"3 weeks in august", false, [12]float64{7: 21}},
		{"nine nights in june", false, [12]float64{5: 9}},
		{"live aboard", false, DaysIn},
		{"winter in the sun", false, [12]float64{31, 28, 31, 30, 0, 0, 0, 0, 0, 0, 30, 31}},
		{"winter in the sun", true, [12]float64{4: 31, 5: 30, 6: 31, 7: 31, 8: 30, 9: 31}},
		{"jun 8, jul 12, aug 10", false, [12]float64{5: 8, 6: 12, 7: 10}},
		{"jun: 8; jul=12", false, [12]float64{5: 8, 6: 12}},
		{"jun-aug 10", false, [12]float64{5: 10, 6: 10, 7: 10}},
		{"November to January: 5", false, [12]float64{10: 5, 11: 5, 0: 5}},
		{"60 nights in summer", false, [12]float64{5: 15, 6: 15, 7: 15, 8: 15}},
		{"all summer", false, [12]float64{5: 30, 6: 31, 7: 31, 8: 30}},
		{"weekends", false, [12]float64{8, 8, 8, 8, 8, 8, 8, 8, 8, 8, 8, 8}},
		{"weekends in may", false, [12]float64{4: 8}},
		{"weekends in july and august", false, [12]float64{6: 8, 7: 8}},
		{"every weekend in may, june and september", false, [12]float64{4: 8, 5: 8, 8: 8}},
		{"a week in may plus ten", false, [12]float64{}},
		{"10 days in may", false, [12]float64{4: 10}},
		{"200 nights in summer", false, [12]float64{}},
		{"60", false, [12]float64{5: 15, 6: 15, 7: 15, 8: 15}},
		{"about 60 nights a year", true, [12]float64{11: 15, 0: 15, 1: 15, 2: 15}},
		{"150", false, [12]float64{3: 22, 4: 21, 5: 22, 6: 21, 7: 21, 8: 22, 9: 21}},
		{"400 nights", false, DaysIn},
		{"november to april", false, [12]float64{31, 28, 31, 30, 0, 0, 0, 0, 0, 0, 30, 31}},
		{"weekends plus July", false, [12]float64{8, 8, 8, 8, 8, 8, 31, 8, 8, 8, 8, 8}},
		{"weekends in summer plus july", false, [12]float64{5: 8, 6: 31, 7: 8, 8: 8}},
		{"weekends in summer and all of August", false, [12]float64{5: 8, 6: 8, 7: 31, 8: 8}},
		{"long weekends in may", false, [12]float64{4: 12}},
		{"every weekend May to July", false, [12]float64{4: 8, 5: 8, 6: 8}},
		{"may-july weekends", false, [12]float64{4: 8, 5: 8, 6: 8}},
		{"summer weekends", true, [12]float64{11: 8, 0: 8, 1: 8, 2: 8}},
		{"we go out most weekends june to september", false, [12]float64{5: 8, 6: 8, 7: 8, 8: 8}},
		{"two months every summer", false, [12]float64{5: 15, 6: 15, 7: 15, 8: 15}},
		{"10 weekends", false, [12]float64{5: 5, 6: 5, 7: 5, 8: 5}},
		{"four long weekends in june", false, [12]float64{5: 12}},
		{"jun 8, then jul 9", false, [12]float64{}},
		{"all of july", false, [12]float64{6: 31}},
	}
	for _, tt := range tests {
		got, err := nightsOf(tt.text, tt.south)
		refused := tt.want == [12]float64{}
		if refused != (err != nil) || !refused && got != tt.want {
			t.Errorf("nightsOf(%q, south %v) = %v, %v; want %v", tt.text, tt.south, got, err, tt.want)
		}
	}
}

// The months between the coldest and the warmest follow a cosine.
func TestEased(t *testing.T) {
	year := eased(map[int]float64{1: 5, 7: 19})
	for m, got := range year {
		want := 12 - 7*math.Cos(2*math.Pi*float64(m)/12)
		if math.Abs(got-want) > 1e-9 {
			t.Errorf("month %d: %v, want %v", m+1, got, want)
		}
	}
}
