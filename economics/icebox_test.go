package economics

import "testing"

// iceYear gives the cold days of an average year on ice in a future, over the
// same weather.
func iceYear(t *testing.T, b Boat, fit FitOut, f Future) float64 {
	t.Helper()
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	w, book := newWorld(&b, ground), testBook()
	p, err := newProposal(&b, &book, &w, 1, IceOnly, fit)
	if err != nil {
		t.Fatal(err)
	}
	var air air
	var idle idle
	air.breathe(&b, &w, &f, stream{1, 0}, typicalYears)
	y := p.live(&f, &air, &idle, nil)
	return y.coldDays
}

// iceBoat shops daily, so that there is always ice.
func iceBoat(ground string) Boat {
	b := dunlin()
	b.Cruising.Ground, b.Cruising.ShopEveryDays = ground, 1
	b.Ice.FoundAtStops, b.Food.Target = 1, 5
	b.Box.Volume = 110
	for side, f := range b.Box.Faces {
		f.Foam, f.Reach = 0.05, FromInside
		b.Box.Faces[side] = f
	}
	return b
}

// A leakier box or a hotter cabin never keeps more days cold on ice, however
// often ice is bought: the surface of the ice is the ice's own.
func TestLeakierBoxIsNeverColderOnIce(t *testing.T) {
	for _, ground := range []string{"maine-coast", "southern-baltic", "chesapeake-bay"} {
		b := iceBoat(ground)
		was := 366.0
		for _, leak := range []float64{0.6, 0.8, 1, 1.25, 1.6} {
			f := Typical
			f.Leak = leak
			days := iceYear(t, b, FitOut{}, f)
			if days > was {
				t.Errorf("%s: %v cold days where the box leaks %v times as much, %v where it leaks less", ground, days, leak, was)
			}
			was = days
			was = days
		}
		was = 366
		for _, hotter := range []float64{-2, 0, 2, 4} {
			f := Typical
			f.CabinK = hotter
			days := iceYear(t, b, FitOut{}, f)
			if days > was {
				t.Errorf("%s: %v cold days in a cabin %v K hotter, %v in a cooler one", ground, days, hotter, was)
			}
			was = days
			was = days
		}
	}
}

// Sealing a leaky box and lining it are worth cold days on ice, though foam
// takes room. Inputs taken: 110 L, two inches of damp foam, worn seal, open
// drain, ice bought daily; an inch under the lid, half an inch elsewhere.
func TestWorkIsWorthColdDaysOnIce(t *testing.T) {
	for _, ground := range []string{"maine-coast", "southern-baltic", "chesapeake-bay"} {
		b := iceBoat(ground)
		told := iceYear(t, b, FitOut{}, Typical)
		sealed := iceYear(t, b, FitOut{Seal: true, Drain: true}, Typical)
		lined := iceYear(t, b, FitOut{Seal: true, Drain: true, LidFoam: 0.025, FaceFoam: 0.0125}, Typical)
		if !(told < sealed && sealed < lined) {
			t.Errorf("%s: %v cold days as told, %v sealed, %v lined as well", ground, told, sealed, lined)
		}
	}
}
