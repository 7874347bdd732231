package economics

import "testing"

// BenchmarkReckon works a sixty-night boat out with 2,000 futures, all options
// and the search, without a rule book.
func BenchmarkReckon(b *testing.B) {
	boat := dunlin()
	ground, err := boat.Ground()
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Reckon(boat, Book{}, ground, DefaultSettings); err != nil {
			b.Fatal(err)
		}
	}
}
