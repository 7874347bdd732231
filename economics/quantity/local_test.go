package quantity

import "testing"

// The spellings are those of Merriam-Webster and of the Concise Oxford, from memory.
func TestLocal(t *testing.T) {
	for text, want := range map[string][2]string{
		"over 4.4 °C (40 °F) for two hours":             {"over 4.4 °C (40 °F) for two hours", "over 40 °F (4.4 °C) for two hours"},
		"at 2 to 8 °C (36 to 46 °F). Then 5 °C (41 °F)": {"at 2 to 8 °C (36 to 46 °F). Then 5 °C (41 °F)", "at 36 to 46 °F (2 to 8 °C). Then 41 °F (5 °C)"},
		"18 x 22 x 16 in (450 x 550 x 400 mm)":          {"450 x 550 x 400 mm (18 x 22 x 16 in)", "18 x 22 x 16 in (450 x 550 x 400 mm)"},
		"at −10/45 °C and 4 °C":                         {"at −10/45 °C and 4 °C", "at −10/45 °C and 4 °C"},
		"Petrol vapour, mouldy tins":                    {"Petrol vapour, mouldy tins", "Gasoline vapor, moldy cans"},
		"an ammeter for the fuel_vapour_space":          {"an ammeter for the fuel_vapour_space", "an ammeter for the fuel_vapour_space"},
	} {
		for i, sys := range []System{Metric, US} {
			if got := Local(text, sys); got != want[i] {
				t.Errorf("%s: %q becomes %q, want %q", sys, text, got, want[i])
			}
		}
	}
}
