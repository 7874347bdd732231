package economics

import "iter"

// order tells which of some things is at least as good as another in every way.
type order struct {
	atLeast [][]bool // row at least as good as column
	below   [][]int  // what a row is at least as good as, itself among them
}

func orderOf(n int, atLeast func(a, b int) bool) order {
	o := order{make([][]bool, n), make([][]int, n)}
	for a := range n {
		o.atLeast[a] = make([]bool, n)
		for b := range n {
			if o.atLeast[a][b] = atLeast(a, b); o.atLeast[a][b] {
				o.below[a] = append(o.below[a], b)
			}
		}
	}
	return o
}

// helpsAsMuch tells whether work outside the box has at least what other work has
// of everything that can only help.
func (f *FitOut) helpsAsMuch(o *FitOut) bool {
	return f.ByDay == o.ByDay && f.Bottles == o.Bottles && (f.ColdStart || !o.ColdStart) && (!f.NoIceRuns || o.NoIceRuns) &&
		(f.Vent || !o.Vent) && f.PanelWp >= o.PanelWp && f.Battery >= o.Battery
}

// above tells whether cell a has at least what cell b has of everything that
// can only help.
func (s *searcher) above(a, b *cell) bool {
	if a.box < 0 || b.box < 0 {
		return a.fit == b.fit
	}
	return s.better.atLeast[a.box][b.box] && s.more.atLeast[a.other][b.other] && s.asMuchIce(a, b)
}

// asMuchIce tells whether a cell has at least the ice of another: more of it in a
// smaller box is not always more.
func (s *searcher) asMuchIce(a, b *cell) bool {
	ice := func(c *cell) float64 { return s.boxes[c.box].litres * float64(s.share(&c.fit)) }
	return s.option != IceOnly || ice(a) >= ice(b)-1e-9
}

// below gives every cell that a cell is above, itself among them.
func (s *searcher) below(c int) iter.Seq[int] {
	a := &s.cells[c]
	return func(yield func(int) bool) {
		if a.box < 0 {
			yield(c)
			return
		}
		for _, box := range s.better.below[a.box] {
			for _, other := range s.more.below[a.other] {
				if i := s.at[box][other]; i >= 0 && s.asMuchIce(a, &s.cells[i]) && !yield(i) {
					return
				}
			}
		}
	}
}
