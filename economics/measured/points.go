package measured

import (
	_ "embed" // the points
	"encoding/csv"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"coldreckon/economics/quantity"
)

// Point is one published measurement beside what the ledgers make of it.
type Point struct {
	Family, Label string // in plain words; no two points have the same label
	Source        string // where it was published
	Measured      float64
	Unit          string
	Predicted     quantity.Range // in the same unit, from the 10th to the 90th percentile
	Assumed       []Assumption   // what was assumed with a range, by name; the ledgers' own ranges included
	Words         map[string]string
}

// Ratio gives predicted over measured, at the typical mark.
func (p Point) Ratio() float64 { return p.Predicted.Typical / p.Measured }

// Inside tells whether what was measured lies within the predicted range.
func (p Point) Inside() bool { return p.Predicted.Low <= p.Measured && p.Measured <= p.Predicted.High }

//go:embed points.csv
var table string

// Points gives all points, in the order of points.csv. The error names the row
// that cannot be read; the file that comes with this package has none.
func Points() ([]Point, error) { return read(table) }

func read(text string) ([]Point, error) {
	in := csv.NewReader(strings.NewReader(text))
	in.Comma, in.Comment, in.LazyQuotes, in.TrimLeadingSpace = '|', '#', true, true
	rows, err := in.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("points: %w", err)
	}
	var out []Point
	for i, row := range rows {
		for c := range row {
			row[c] = strings.TrimSpace(row[c])
		}
		p, err := point(row)
		if err != nil {
			return nil, fmt.Errorf("points, row %d: %w", i+1, err)
		}
		if slices.ContainsFunc(out, func(o Point) bool { return o.Label == p.Label }) {
			return nil, fmt.Errorf("points, row %d: label %q twice", i+1, p.Label)
		}
		out = append(out, p)
	}
	return out, nil
}

// point reads a row: family, label, kind, measured, inputs, source.
func point(row []string) (Point, error) {
	if len(row) != 6 {
		return Point{}, fmt.Errorf("%d columns; want family, label, kind, measured, inputs, source", len(row))
	}
	p := Point{Family: row[0], Label: row[1], Source: row[5]}
	k, ok := kinds[row[2]]
	if !ok {
		return p, fmt.Errorf("kind %q is not known; want one of %s", row[2], strings.Join(slices.Sorted(maps.Keys(kinds)), ", "))
	}
	var err error
	if p.Measured, err = strconv.ParseFloat(row[3], 64); err != nil || !(p.Measured > 0) {
		return p, fmt.Errorf("measured %q; want a figure over 0", row[3])
	}
	x, err := parseInputs(row[4])
	if err != nil {
		return p, err
	}
	for _, prepare := range k.prepare {
		if err := prepare(x); err != nil {
			return p, err
		}
	}
	p.Unit, p.Words = k.unit, x.words
	p.Predicted = x.spread(k.reckon)
	switch unused := x.unused(); {
	case len(x.lacks) > 0:
		return p, fmt.Errorf("%s: %s", p.Label, strings.Join(x.lacks, ", "))
	case len(unused) > 0:
		return p, fmt.Errorf("%s: nothing asks for %s", p.Label, strings.Join(unused, ", "))
	case !(p.Predicted.Low > 0) || math.IsInf(p.Predicted.High, 0):
		return p, fmt.Errorf("%s: predicted %v", p.Label, p.Predicted)
	}
	for _, name := range slices.Sorted(maps.Keys(x.ranges)) {
		if r := x.ranges[name]; r.Low < r.High {
			p.Assumed = append(p.Assumed, Assumption{name, r})
		}
	}
	return p, nil
}

// Family sums up points of one kind.
type Family struct {
	Name    string
	Points  int
	Sources int
	Ratio   float64 // geometric mean of predicted over measured
	Inside  int     // points measured within their predicted range
}

// Families sums up points by family, in the order they first appear.
func Families(points []Point) []Family {
	var out []Family
	sources := map[string]map[string]bool{}
	for _, p := range points {
		i := slices.IndexFunc(out, func(f Family) bool { return f.Name == p.Family })
		if i < 0 {
			i, out = len(out), append(out, Family{Name: p.Family, Ratio: 1})
			sources[p.Family] = map[string]bool{}
		}
		f := &out[i]
		f.Ratio = math.Pow(math.Pow(f.Ratio, float64(f.Points))*p.Ratio(), 1/float64(f.Points+1))
		f.Points++
		if p.Inside() {
			f.Inside++
		}
		sources[p.Family][p.Source] = true
		f.Sources = len(sources[p.Family])
	}
	return out
}
