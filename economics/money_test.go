package economics_test

import (
	"math"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// The factors of 3 % a year to the digits that tables print: NIST Handbook
// 135, appendix D, and any table of interest factors (from memory).
const (
	spv4, spv8, spv10 = 0.88849, 0.78941, 0.74409
	upv10             = 8.5302
	crf10             = 0.117231
	tableDigits       = 2e-5 // relative error of the printed factors
)

func paid(t *testing.T, o *economics.Outcome, id string, first, yearly float64) {
	t.Helper()
	l := line(o, id)
	if math.Abs(l.First-first) > 0.005 || math.Abs(l.Yearly-yearly) > 0.005 {
		t.Errorf("%s: %.2f at first and %.2f a year; by hand %.2f and %.2f", id, l.First, l.Yearly, first, yearly)
	}
}

func adds(t *testing.T, what string, got, byHand, tolerance float64) {
	t.Helper()
	if !near(got, byHand, tolerance) {
		t.Errorf("%s: %.2f; by hand %.2f", what, got, byHand)
	}
}

// Dry stores of the fixture, by hand. Two people for 60 nights are 120
// person-nights; at 1.60 each
//
//	120 × 1.60               = 192.00 a year
//	192.00 × 8.5302          = 1,637.80 present cost
//	1,637.80 × 0.117231      = 192.00 yearly equivalent
func TestMoneyOfDryStoresByHand(t *testing.T) {
	dry := &told(t, economics.Dunlin()).Of(economics.DryStores).AsTold
	paid(t, dry, "dry_premium", 0, 192)
	if len(dry.Lines) != 1 {
		t.Errorf("lines %+v; want the premium alone", dry.Lines)
	}
	adds(t, "first cost", dry.First, 0, 0)
	adds(t, "a year", dry.PerYear, 192, 1e-12)
	adds(t, "present cost", dry.Present, 1637.80, tableDigits)
	adds(t, "yearly equivalent", dry.Yearly, 192, 1e-9)
}

// Ice of the fixture, in a cabin shut up in the sun, with a fifth of the box for
// it and sold at every stop, by hand. The box holds
//
//	90 L × 0.2 × 0.56 kg/L   = 10.08 kg of cubes.
//
// A bag of 4.5 kg arrives as 4.5 × 0.95 = 4.275 kg: two bags fit and 1.53 kg of
// a third, more than the quarter for which a bag is bought. Three days melt at
// least 3 × 7 = 21 kg even in June, so the box is empty at the next stop. A
// six-night trip starts with ice and stops again on day 3, where food is bought,
// too, so that no errand is made:
//
//	60 nights / 6            = 10 trips, 20 purchases
//	20 × 3 × 4.5 kg          = 270 kg      × 1.10 = 297.00 a year
//	20 × (13.5 - 10.08) kg   = 68.4 kg lost on the way or for want of room, 0.2533 of it
//
// Food that needs cold: 2 people × 1.5 kg × 0.4 = 1.2 kg a day, over 3 days
// half of it on average, 1.8 kg; so each warm day spoils 1.8 × 0.80 = 1.44.
func TestMoneyOfIceByHand(t *testing.T) {
	b := economics.Dunlin()
	b.Ice.ShareOfBox, b.Ice.FoundAtStops, b.Box.CabinOffset = 0.2, 1, 6
	ice := &told(t, b).Of(economics.IceOnly).AsTold
	warm := ice.Facts["warm_days_per_year"].(float64)
	if warm < 0 || warm > 60 || math.Abs(warm+ice.ColdDays-60) > 1e-9 {
		t.Errorf("%v warm and %v cold days in 60", warm, ice.ColdDays)
	}
	paid(t, ice, "ice", 0, 297)
	paid(t, ice, "ice_errands", 0, 0)
	paid(t, ice, "spoilage", 0, 1.44*warm)
	if len(ice.Lines) != 3 {
		t.Errorf("lines %+v; want three", ice.Lines)
	}
	if kg, lost := ice.IceBoughtKg(); !near(kg, 270, 1e-9) || !near(lost, 68.4/270, 1e-9) {
		t.Errorf("%v kg of ice, %v of it lost; by hand 270 and 0.2533", kg, lost)
	}
	adds(t, "first cost", ice.First, 0, 0)
	adds(t, "a year", ice.PerYear, 297+1.44*warm, 1e-9)
	adds(t, "present cost", ice.Present, (297+1.44*warm)*upv10, tableDigits)
	adds(t, "yearly equivalent", ice.Yearly, 297+1.44*warm, 1e-9)

	// A box cooled the day before costs one errand a trip, 10 × 5.00.
	b.Cruising.BeforeTrip = economics.Precooled
	paid(t, &told(t, b).Of(economics.IceOnly).AsTold, "ice_errands", 0, 50)
}

// The small unit of the fixture, as told, by hand; with a life of four years
// and a sale, so that every kind of payment is there.
//
//	unit 900 + fitting 350 + cable and fuse 70            = 1,320.00 first cost
//	a new unit at the ends of years 4 and 8:
//	900 × (0.88849 + 0.78941)                             = 1,510.11
//	left at the end: two of the last unit's four years, 450, more than its
//	0.15 at a sale; and of the fitting 0.15 × 350 = 52.50 at the sale:
//	502.50 × 0.74409                                      =   373.91 off
//	upkeep 18, and what the season takes, each year:
//	(18 + 1.50 engine kWh + 0.70 kWh of wear + 1.44 warm days) × 8.5302
//
// The season's own figures are taken as they are, about 13 kWh from the
// engine, 13 kWh through the battery and 11 warm days.
func TestMoneyOfASmallUnitByHand(t *testing.T) {
	b := economics.Dunlin()
	b.Small.Life, b.Money.WillSell = 4, quantity.Yes
	unit := &told(t, b).Of(economics.SmallUnit).AsTold
	fact := func(name string) float64 { return unit.Facts[name].(float64) }
	engine, wear, warm := fact("engine_kwh_per_year"), fact("battery_wear_kwh_per_year"), fact("warm_days_per_year")
	if engine < 5 || engine > 25 || wear < 5 || wear > 25 {
		t.Errorf("%.1f kWh from the engine, %.1f kWh through the battery: not this boat", engine, wear)
	}
	yearly := 18 + 1.50*engine + 0.70*wear + 1.44*warm

	paid(t, unit, "unit", 900, 0)
	paid(t, unit, "fitting", 350, 0)
	paid(t, unit, "upkeep", 0, 18)
	paid(t, unit, "cable_fuse", 70, 0)
	paid(t, unit, "engine_kwh", 0, 1.50*engine)
	paid(t, unit, "battery_wear", 0, 0.70*wear)
	paid(t, unit, "spoilage", 0, 1.44*warm)
	if len(unit.Lines) != 7 {
		t.Errorf("lines %+v; want seven", unit.Lines)
	}
	adds(t, "first cost", unit.First, 1320, 1e-12)
	adds(t, "a year", unit.PerYear, yearly, 1e-9)
	present := 1320 + 900*(spv4+spv8) - 502.5*spv10 + yearly*upv10
	adds(t, "present cost", unit.Present, present, tableDigits)
	adds(t, "yearly equivalent", unit.Yearly, present*crf10, 2*tableDigits)

	for year, want := range map[int]float64{0: 1320, 1: yearly, 3: yearly, 4: 900 + yearly, 8: 900 + yearly, 9: yearly, 10: yearly - 502.5} {
		if got := float64(unit.Flows[year]); !near(got, want, 1e-9) {
			t.Errorf("year %d: %.2f; by hand %.2f", year, got, want)
		}
	}
}

// A unit that is fitted and works costs nothing at first. It is taken to have half
// of its twelve years behind it: a new one for 900 follows after the sixth, of
// which eight twelfths, 600, are left after the tenth.
func TestMoneyOfAUnitAlreadyFitted(t *testing.T) {
	b := economics.Dunlin()
	b.Box.FittedUnit = economics.UnitWorks
	unit := &told(t, b).Of(economics.SmallUnit).AsTold
	paid(t, unit, "unit", 0, 0)
	usual := float64(unit.Flows[1])
	for year, more := range map[int]float64{2: 0, 5: 0, 6: 900, 7: 0, 9: 0, 10: -600} {
		if got := float64(unit.Flows[year]) - usual; !near(got+1e4, more+1e4, 1e-9) {
			t.Errorf("year %d: %.2f more than a usual year; by hand %v", year, got, more)
		}
	}
}
