package report

import "testing"

// BenchmarkOwner sets one report, the reckoning done before.
func BenchmarkOwner(b *testing.B) {
	in := inputOf(b, islander())
	for b.Loop() {
		if _, err := printedPDF(in); err != nil {
			b.Fatal(err)
		}
	}
}
