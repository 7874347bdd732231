package questions

import (
	"math"
	"testing"
)

func TestNights(t *testing.T) {
	north, south, trades := waters{}, waters{south: true}, waters{tropical: true}
	tests := []struct {
		text  string
		where waters
		want  [12]float64
	}{
		{"weekends in summer", north, [12]float64{5: 8, 6: 8, 7: 8, 8: 8}},
		{"weekends in summer", south, [12]float64{11: 8, 0: 8, 1: 8, 2: 8}},
		{"Two weeks' holiday", north, [12]float64{6: 14}},
		{"two weeks holiday", south, [12]float64{0: 14}},
		{"weekends in summer and two weeks’ holiday", north, [12]float64{5: 8, 6: 22, 7: 8, 8: 8}},
		{"3 weeks in august", north, [12]float64{7: 21}},
		{"nine nights in june", north, [12]float64{5: 9}},
		{"live aboard", north, DaysIn},
		{"winter in the sun", north, [12]float64{31, 28, 31, 30, 0, 0, 0, 0, 0, 0, 30, 31}},
		{"winter in the sun", south, [12]float64{4: 31, 5: 30, 6: 31, 7: 31, 8: 30, 9: 31}},
		{"jun 8, jul 12, aug 10", north, [12]float64{5: 8, 6: 12, 7: 10}},
		{"jun: 8; jul=12", north, [12]float64{5: 8, 6: 12}},
		{"jun-aug 10", north, [12]float64{5: 10, 6: 10, 7: 10}},
		{"November to January: 5", north, [12]float64{10: 5, 11: 5, 0: 5}},
		{"60 nights in summer", north, [12]float64{5: 15, 6: 15, 7: 15, 8: 15}},
		{"all summer", north, [12]float64{5: 30, 6: 31, 7: 31, 8: 30}},
		{"weekends", north, [12]float64{3: 8, 4: 8, 5: 8, 6: 8, 7: 8, 8: 8, 9: 8}},
		{"weekends", trades, [12]float64{8, 8, 8, 8, 8, 8, 8, 8, 8, 8, 8, 8}},
		{"60 nights", trades, [12]float64{10, 10, 10, 10, 10: 10, 11: 10}},
		{"weekends in may", north, [12]float64{4: 8}},
		{"weekends in july and august", north, [12]float64{6: 8, 7: 8}},
		{"every weekend in may, june and september", north, [12]float64{4: 8, 5: 8, 8: 8}},
		{"a week in may plus ten", north, [12]float64{}},
		{"10 days in may", north, [12]float64{4: 10}},
		{"200 nights in summer", north, [12]float64{}},
		{"60", north, [12]float64{5: 15, 6: 15, 7: 15, 8: 15}},
		{"about 60 nights a year", south, [12]float64{11: 15, 0: 15, 1: 15, 2: 15}},
		{"150", north, [12]float64{3: 22, 4: 21, 5: 22, 6: 21, 7: 21, 8: 22, 9: 21}},
		{"400 nights", north, DaysIn},
		{"november to april", north, [12]float64{31, 28, 31, 30, 0, 0, 0, 0, 0, 0, 30, 31}},
		{"weekends plus July", north, [12]float64{3: 8, 4: 8, 5: 8, 6: 31, 7: 8, 8: 8, 9: 8}},
		{"weekends in summer plus july", north, [12]float64{5: 8, 6: 31, 7: 8, 8: 8}},
		{"weekends in summer and all of August", north, [12]float64{5: 8, 6: 8, 7: 31, 8: 8}},
		{"long weekends in may", north, [12]float64{4: 12}},
		{"every weekend May to July", north, [12]float64{4: 8, 5: 8, 6: 8}},
		{"may-july weekends", north, [12]float64{4: 8, 5: 8, 6: 8}},
		{"summer weekends", south, [12]float64{11: 8, 0: 8, 1: 8, 2: 8}},
		{"we go out most weekends june to september", north, [12]float64{5: 8, 6: 8, 7: 8, 8: 8}},
		{"two months every summer", north, [12]float64{5: 15, 6: 15, 7: 15, 8: 15}},
		{"10 weekends", north, [12]float64{5: 5, 6: 5, 7: 5, 8: 5}},
		{"four long weekends in june", north, [12]float64{5: 12}},
		{"jun 8, then jul 9", north, [12]float64{}},
		{"all of july", north, [12]float64{6: 31}},
	}
	for _, tt := range tests {
		got, err := nightsOf(tt.text, tt.where)
		refused := tt.want == [12]float64{}
		if refused != (err != nil) || !refused && got != tt.want {
			t.Errorf("nightsOf(%q, %+v) = %v, %v; want %v", tt.text, tt.where, got, err, tt.want)
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
