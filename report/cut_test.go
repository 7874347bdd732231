package report

import (
	"math"
	"math/rand/v2"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// boxOf is an invented box, mm, reached from inside all round but at its lid.
func boxOf(long, wide, high float64) (heat.Spec, economics.Box) {
	in := quantity.Dimensions{Length: quantity.Metre(long / 1000), Width: quantity.Metre(wide / 1000), Height: quantity.Metre(high / 1000)}
	b := economics.Box{Inside: in, Lid: heat.TopLid, Faces: map[heat.Side]economics.Face{}}
	for _, side := range heat.Sides {
		b.Faces[side] = economics.Face{Reach: economics.FromInside}
	}
	return heat.Spec{Inside: in, Lid: heat.TopLid}, b
}

// By hand: 25 mm round a box of 500 by 400 by 450. The bottom is whole, the ends
// stand on it across the whole width, the sides between the ends.
func TestPiecesByHand(t *testing.T) {
	walls, b := boxOf(500, 400, 450)
	want := map[string][2]float64{"bottom": {500, 400}, "fore": {400, 425}, "aft": {400, 425}, "inboard": {450, 425}, "outboard": {450, 425}}
	got := faces(walls, b, economics.FitOut{InsideFoam: 0.025})
	if len(got) != len(want) {
		t.Fatalf("%d pieces, want %d", len(got), len(want))
	}
	for _, p := range got {
		if w := want[p.name]; p.w != w[0] || p.h != w[1] || p.thick != 25 {
			t.Errorf("%s is %v by %v by %v, want %v by 25", p.name, p.w, p.h, p.thick, w)
		}
	}
	// What they enclose is the box with its board, as the heat ledger has it.
	lined, err := walls.WithAddedFoam([]heat.Side{heat.Bottom, heat.Fore, heat.Aft, heat.Inboard, heat.Outboard}, 0.025)
	if err != nil {
		t.Fatal(err)
	}
	left := 0.5 * 0.4 * 0.45
	for _, p := range got {
		left -= p.w * p.h * p.thick / 1e9
	}
	if math.Abs(left*1000-float64(lined.Inside.Volume())) > 1e-9 {
		t.Errorf("the pieces leave %v L, the box has %v", left*1000, lined.Inside.Volume())
	}
}

// Any pieces: each passes the lid, all of each face is there, no two lie over each
// other and none leaves its sheet.
func TestPiecesPassAndFit(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 5))
	for range 200 {
		walls, b := boxOf(300+900*rng.Float64(), 300+600*rng.Float64(), 300+500*rng.Float64())
		out := economics.FitOut{InsideFoam: 0.025, LidFoam: quantity.Metre(0.025 * float64(rng.IntN(3)))}
		const long, short = 1200, 600
		var all []piece
		area := 0.0
		most := 300 + 400*rng.Float64()
		for _, p := range faces(walls, b, out) {
			area += p.w * p.h
			for _, q := range p.toPass(most, long, short) {
				if min(q.w, q.h) > min(most, short)+1e-6 || max(q.w, q.h) > long+1e-6 {
					t.Errorf("%s, %v by %v, does not pass %v", q.name, q.w, q.h, most)
				}
				area -= q.w * q.h
				q.number = len(all) + 1
				all = append(all, q)
			}
		}
		if math.Abs(area) > 1e-3 {
			t.Errorf("%v mm² of the faces are not covered", area)
		}
		sheets, thick := pack(all, long, short)
		n := 0
		for i, sh := range sheets {
			for k, p := range sh.Pieces {
				if n++; p.X < 0 || p.Y < 0 || p.X+p.W > long+0.1 || p.Y+p.H > short+0.1 || all[p.Number-1].thick != thick[i] {
					t.Errorf("piece %d leaves its sheet: %+v", p.Number, p)
				}
				for _, q := range sh.Pieces[:k] {
					if p.X < q.X+q.W-0.1 && q.X < p.X+p.W-0.1 && p.Y < q.Y+q.H-0.1 && q.Y < p.Y+p.H-0.1 {
						t.Errorf("piece %d lies over %d", p.Number, q.Number)
					}
				}
			}
		}
		if n != len(all) {
			t.Errorf("%d pieces of %d are on sheets", n, len(all))
		}
	}
}
