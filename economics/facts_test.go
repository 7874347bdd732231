package economics_test

import (
	"testing"

	"coldreckon/economics"
)

// Facts of the fixture that follow from its answers alone, by hand: 60 nights
// for two, 1.5 kg a person and day of which 0.4 must be cold, food bought every
// 3 days, ice at four stops in five, 0.4 of 90 L for cubes at 0.56 kg/L, a
// thin plate that takes 5 L, 2 L of room for a kilogram and 0.2 of the box for
// what lives in it.
func TestFactsByHand(t *testing.T) {
	r := told(t, economics.Dunlin())
	for _, row := range []struct {
		option economics.OptionID
		fact   string
		want   float64
		sum    string
	}{
		{economics.DryStores, "nights_per_year", 60, "8 + 22 + 22 + 8"},
		{economics.DryStores, "person_nights_per_year", 120, "2 × 60"},
		{economics.IceOnly, "ice_gap_days", 3.75, "3 days / 0.8, less than the trip's 6"},
		{economics.IceOnly, "ice_capacity_kg", 20.16, "90 × 0.4 × 0.56"},
		{economics.IceOnly, "room_for_food_l", 54, "90 × 0.6"},
		{economics.SmallUnit, "room_for_food_l", 85, "90 - 5"},
		{economics.IceOnly, "food_to_keep_l", 25.2, "2 × 1.5 × 0.4 × 3 days × 2 L + 0.2 × 90"},
		{economics.IceOnly, "perishables_aboard_kg", 1.8, "2 × 1.5 × 0.4 × 3 days / 2"},
		{economics.SmallUnit, "battery_kwh", 2.4, "200 Ah × 12 V"},
		{economics.SmallUnit, "shore_nights_per_year", 0, "no shore power"},
		{economics.IceOnly, "foam_thinnest_mm", 25, "as told"},
	} {
		got, ok := r.Of(row.option).AsTold.Facts[row.fact].(float64)
		if !ok || !near(got, row.want, 1e-9) {
			t.Errorf("%s, %s: %v; by hand %v (%s)", row.option, row.fact, got, row.want, row.sum)
		}
	}
}

// Every option, as told and fitted, has every fact of the vocabulary, each of
// its kind, and no other.
func TestFactsKeepTheVocabulary(t *testing.T) {
	for name, r := range agreeingBoats(t) {
		for _, o := range r.Options {
			for _, out := range []economics.Outcome{o.AsTold, o.Fitted} {
				if len(out.Facts) != len(economics.Vocabulary()) {
					t.Errorf("%s, %s: %d facts; the vocabulary has %d", name, o.ID, len(out.Facts), len(economics.Vocabulary()))
				}
				for _, fact := range economics.Vocabulary() {
					ok := false
					switch fact.Kind {
					case economics.Number:
						_, ok = out.Facts[fact.Name].(float64)
					case economics.Truth:
						_, ok = out.Facts[fact.Name].(bool)
					case economics.Word:
						_, ok = out.Facts[fact.Name].(string)
					}
					if !ok {
						t.Errorf("%s, %s: %s is %v; want a %s", name, o.ID, fact.Name, out.Facts[fact.Name], fact.Kind)
					}
				}
			}
		}
	}
}
