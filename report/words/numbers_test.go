package words

import (
	"testing"

	"coldreckon/economics/quantity"
)

// 1446 is $1,400 to two digits; rounded to tens first, as its range would
// have it, it came out as 1450 and then as $1,500.
func TestAmountsAreRoundedOnce(t *testing.T) {
	for _, tt := range []struct {
		x, low, high float64
		want         string
	}{
		{1446, 1300, 1700, "$1,400 (1,300–1,700)"}, {1464, 1300, 1700, "$1,500 (1,300–1,700)"},
		{378, 68, 1400, "$400 (68–1,400)"}, {0.14, 0, 2.2, "$0.10 (0–2.20)"}, {99.6, 90, 130, "$100 (90–130)"},
	} {
		if got := Tight(tt.x, quantity.Range{Low: tt.low, High: tt.high}, "$"); got != tt.want {
			t.Errorf("%v (%v to %v) prints as %q, want %q", tt.x, tt.low, tt.high, got, tt.want)
		}
	}
}
