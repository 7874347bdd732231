package economics

import (
	"reflect"
	"testing"

	"coldreckon/economics/cost"
)

// A future's outcome depends on the future alone: not on which others are
// reckoned, nor in what order, nor on what was reckoned before in the same
// scratch space.
func TestFuturesAreIndependent(t *testing.T) {
	b, book := dunlin(), testBook()
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	w := newWorld(&b, ground)
	box, err := boxEvidence(&b, &w)
	if err != nil {
		t.Fatal(err)
	}
	const count, seed = 12, 5
	futures := draw(inputs(&b, &book, &box), count, seed)
	var ps []*proposal
	for _, id := range Options {
		p, err := newProposal(&b, &book, &w, 1, id, FitOut{})
		if err != nil {
			t.Fatal(err)
		}
		ps = append(ps, p)
	}
	all, _, err := trials(ps, futures, seed)
	if err != nil {
		t.Fatal(err)
	}
	few, _, err := trials(ps, futures[:5], seed)
	if err != nil {
		t.Fatal(err)
	}
	for i := range ps {
		if !reflect.DeepEqual(few[i], all[i][:5]) {
			t.Errorf("%s: the first five futures depend on the later ones", ps[i].option)
		}
	}

	var air air
	var idle idle
	var buffer cost.Flows
	for k := count - 1; k >= 0; k-- {
		air.breathe(&b, &w, &futures[k], stream{seed, futureStream + uint64(k)}, 1)
		idle.empty()
		for i := len(ps) - 1; i >= 0; i-- {
			trial, err := ps[i].trial(&futures[k], &air, &idle, ps[i].steady(), &buffer)
			if err != nil {
				t.Fatal(err)
			}
			if trial != all[i][k] {
				t.Errorf("%s in future %d, from the last to the first: %+v; before %+v", ps[i].option, k, trial, all[i][k])
			}
		}
	}
}

// Futures spread every input over its range, and the same seed gives the same
// futures.
func TestDrawIsStratified(t *testing.T) {
	b, book := dunlin(), testBook()
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	w := newWorld(&b, ground)
	box, err := boxEvidence(&b, &w)
	if err != nil {
		t.Fatal(err)
	}
	ins := inputs(&b, &book, &box)
	futures := draw(ins, 1000, 3)
	if !reflect.DeepEqual(futures, draw(ins, 1000, 3)) {
		t.Error("the same seed gives other futures")
	}
	for _, in := range ins {
		if in.Factor.Low == in.Factor.High || in.Name == "sun" { // the year's own sun blurs it
			continue
		}
		below, above := 0, 0
		for k := range futures {
			switch v := *in.at(&futures[k]); {
			case v < in.Factor.Low:
				below++
			case v > in.Factor.High:
				above++
			}
		}
		// Latin hypercube: one future in each thousandth, so 100 lie beyond a
		// tenth percentile whatever the seed.
		if below < 99 || below > 101 || above < 99 || above > 101 {
			t.Errorf("%s: %d of 1000 below the 10th percentile, %d above the 90th; want 100 each", in.Name, below, above)
		}
	}
}
