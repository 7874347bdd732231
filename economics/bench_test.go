package economics

import "testing"

// liveAboard is the fixture lived on all year in the tropics.
func liveAboard() Boat {
	b := dunlin()
	b.Cruising.Ground, b.Cruising.TripNights = "windward-islands", 365
	b.Cruising.Nights = [12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}
	b.Power.SolarWp, b.Power.MaxPanelWp, b.Power.Battery = 300, 500, 400
	return b
}

func benchmark(b *testing.B, boat Boat, set Settings, change func(*Boat, int)) {
	ground, err := boat.Ground()
	if err != nil {
		b.Fatal(err)
	}
	book := testBook()
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		if change != nil {
			change(&boat, i)
		}
		if _, err := Reckon(boat, book, ground, set); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkReckon works a boat out whole: 1,000 futures, all options, the
// search for work. Wanted: 0.3 s for 60 nights a year, a second for 365, on
// two cores.
func BenchmarkReckon(b *testing.B) {
	b.Run("60nights", func(b *testing.B) { benchmark(b, dunlin(), DefaultSettings, nil) })
	b.Run("365nights", func(b *testing.B) { benchmark(b, liveAboard(), DefaultSettings, nil) })
}

// BenchmarkOneAnswerChanged works the 60-night boat out again after one answer,
// over the 100 futures that are looked at between questions. Wanted: 80 ms on
// two cores.
func BenchmarkOneAnswerChanged(b *testing.B) {
	benchmark(b, dunlin(), Settings{Futures: 100, Seed: 1}, func(boat *Boat, i int) {
		boat.Box.OpensPerDay = 10 + float64(i%2)
	})
}
