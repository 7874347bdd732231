package measured

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"coldreckon/economics/quantity"
)

// Assumption is a figure that the source of a point does not give, or gives
// only roughly.
type Assumption struct {
	Name  string // its unit is the last part of the name
	Range quantity.Range
}

// inputs are what a model reckons from: figures with ranges, and words of the
// ledgers. At any moment one figure may stand at a mark of its range.
type inputs struct {
	ranges map[string]quantity.Range
	words  map[string]string
	at     map[string]float64 // the figures as they stand
	asked  map[string]bool    // names that the model wanted
	lacks  []string           // of those, the ones that are not there
}

// parseInputs reads "out_c=28 foam_mm=25/20/35 seal=good": a figure alone is
// exact, three are low, typical and high.
func parseInputs(text string) (*inputs, error) {
	x := &inputs{ranges: map[string]quantity.Range{}, words: map[string]string{}, at: map[string]float64{}, asked: map[string]bool{}}
	for _, field := range strings.Fields(text) {
		name, value, ok := strings.Cut(field, "=")
		if !ok || name == "" || x.has(name) {
			return nil, fmt.Errorf("%q; want name=figure, name=low/typical/high or name=word, each name once", field)
		}
		marks := strings.Split(value, "/")
		if _, err := strconv.ParseFloat(marks[0], 64); err != nil {
			x.words[name] = value
			continue
		}
		var figures []float64
		for _, m := range marks {
			f, err := strconv.ParseFloat(m, 64)
			if err != nil || math.IsNaN(f) || math.IsInf(f, 0) {
				return nil, fmt.Errorf("%q; want a figure, or low/typical/high", field)
			}
			figures = append(figures, f)
		}
		switch {
		case len(figures) == 1:
			x.assume(name, quantity.Exactly(figures[0]))
		case len(figures) == 3 && slices.IsSorted(figures):
			x.assume(name, quantity.Range{Low: figures[0], Typical: figures[1], High: figures[2]})
		default:
			return nil, fmt.Errorf("%q; want a figure, or low/typical/high in that order", field)
		}
	}
	return x, nil
}

func (x *inputs) has(name string) bool {
	_, figure := x.ranges[name]
	_, word := x.words[name]
	return figure || word
}

// assume gives a figure a range, unless the point has told one.
func (x *inputs) assume(name string, r quantity.Range) {
	if !x.has(name) {
		x.ranges[name], x.at[name] = r, r.Typical
	}
}

// need gives a figure that a model cannot do without.
func (x *inputs) need(name string) float64 {
	x.asked[name] = true
	v, ok := x.at[name]
	if !ok && !slices.Contains(x.lacks, name) {
		x.lacks = append(x.lacks, name)
	}
	return v
}

// or gives a figure, or what stands for it where the point has none.
func (x *inputs) or(name string, usual float64) float64 {
	x.asked[name] = true
	if v, ok := x.at[name]; ok {
		return v
	}
	return usual
}

// word gives a word, or the usual one.
func (x *inputs) word(name, usual string) string {
	x.asked[name] = true
	if w, ok := x.words[name]; ok {
		return w
	}
	return usual
}

// unused lists the names that no model asked for.
func (x *inputs) unused() []string {
	var out []string
	for _, name := range slices.Concat(slices.Sorted(maps.Keys(x.ranges)), slices.Sorted(maps.Keys(x.words))) {
		if !x.asked[name] {
			out = append(out, name)
		}
	}
	return out
}

// spread carries the ranges through a positive model: one figure at a time to
// its low and high mark, the logarithms' squares added.
func (x *inputs) spread(m model) quantity.Range {
	typical := m(x)
	var down, up float64
	for _, name := range slices.Sorted(maps.Keys(x.ranges)) {
		r := x.ranges[name]
		var least, most float64
		for _, mark := range [2]float64{r.Low, r.High} {
			x.at[name] = mark
			swing := math.Log(m(x) / typical)
			least, most = min(least, swing), max(most, swing)
		}
		x.at[name] = r.Typical
		down, up = math.Hypot(down, least), math.Hypot(up, most)
	}
	return quantity.Range{Low: typical * math.Exp(-down), Typical: typical, High: typical * math.Exp(up)}
}
