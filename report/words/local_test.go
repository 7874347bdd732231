package words

import (
	"testing"

	"coldreckon/economics/quantity"
)

func TestLocal(t *testing.T) {
	for text, want := range map[string]string{
		"over 4.4 °C (40 °F) for two hours":             "over 40 °F (4.4 °C) for two hours",
		"at 2 to 8 °C (36 to 46 °F). Then 5 °C (41 °F)": "at 36 to 46 °F (2 to 8 °C). Then 41 °F (5 °C)",
		"at −10/45 °C and 4 °C":                         "at −10/45 °C and 4 °C",
	} {
		if got := Local(text, quantity.US); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
		if got := Local(text, quantity.Metric); got != text {
			t.Errorf("metric: %q becomes %q", text, got)
		}
	}
}
