package handout

import (
	"math"

	"coldreckon/economics/quantity"
	"coldreckon/report/sheet"
)

// axis is a logarithmic scale between two places on the sheet, mm: the same care
// with the pencil is worth the same share anywhere on it.
type axis struct{ lo, hi, from, to float64 }

// at gives the place of a value above 0.
func (a axis) at(v float64) float64 {
	return a.from + (a.to-a.from)*math.Log(v/a.lo)/math.Log(a.hi/a.lo)
}

func (a axis) holds(v float64) bool { return v >= a.lo*0.999 && v <= a.hi*1.001 }

// marks are the values that a scale may carry, the labelled among them.
func (a axis) marks() (all, labelled []float64) {
	for decade := 0.01; decade < 1e6; decade *= 10 {
		for _, f := range []float64{1, 1.5, 2, 3, 4, 5, 6, 8} {
			v := decade * f
			if !a.holds(v) {
				continue
			}
			all = append(all, v)
			if len(labelled) == 0 || math.Abs(a.at(v)-a.at(labelled[len(labelled)-1])) >= a.apart() {
				labelled = append(labelled, v)
			}
		}
	}
	return all, labelled
}

// apart is how far labels must stand from one another, mm.
func (a axis) apart() float64 {
	if math.Abs(a.to-a.from) > 70 { // across: figures are wider than high
		return 9.5
	}
	return 4.8
}

// label prints a value of a scale.
func label(v float64) string {
	return quantity.Thousands(short(v, 2))
}

// cut gives the part of a straight line that lies within a field; ok is false
// where none does.
func cut(p, q sheet.Point, field sheet.Rect) (from, to sheet.Point, ok bool) {
	low, high := 0.0, 1.0
	for _, d := range [2][4]float64{{p.X, q.X, field.X, field.Right()}, {p.Y, q.Y, field.Y, field.Bottom()}} {
		run := d[1] - d[0]
		if math.Abs(run) < 1e-9 {
			continue
		}
		a, b := (d[2]-d[0])/run, (d[3]-d[0])/run
		low, high = max(low, min(a, b)), min(high, max(a, b))
	}
	return along(p, q, low), along(p, q, high), low < high
}
