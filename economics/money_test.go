package economics_test

import (
	"math"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/heat"
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
	dry := &reckon(t, economics.Dunlin(), few).Of(economics.DryStores).AsTold
	paid(t, dry, "dry_premium", 0, 192)
	if len(dry.Lines) != 1 {
		t.Errorf("lines %+v; want the premium alone", dry.Lines)
	}
	adds(t, "first cost", dry.First, 0, 0)
	adds(t, "a year", dry.PerYear, 192, 1e-12)
	adds(t, "present cost", dry.Present, 1637.80, tableDigits)
	adds(t, "yearly equivalent", dry.Yearly, 192, 1e-9)
}

// Ice of the fixture, by hand. The box holds
//
//	90 L × 0.4 × 0.56 kg/L   = 20.16 kg of cubes.
//
// A bag of 4.5 kg arrives as 4.5 × 0.95 = 4.275 kg, so four bags fit an all but
// empty box (17.1 kg) and five do not (21.4 kg). A six-night trip starts with
// ice and stops again on day 3; of those later stops four in five sell it. A
// three-day gap melts at least 3 × 6.1 = 18 kg even in June, so it is four bags
// each time:
//
//	60 nights / 6            = 10 trips, 10 later stops, 8 of them with ice
//	10 + 8                   = 18 errands  × 5.00 =  90.00 a year
//	18 × 4 × 4.5 kg          = 324 kg      × 1.10 = 356.40 a year
//
// Food that needs cold: 2 people × 1.5 kg × 0.4 = 1.2 kg a day, over 3 days
// half of it on average, 1.8 kg; so each warm day spoils 1.8 × 0.80 = 1.44.
func TestMoneyOfIceByHand(t *testing.T) {
	ice := &reckon(t, economics.Dunlin(), few).Of(economics.IceOnly).AsTold
	warm := ice.Facts["warm_days_per_year"].(float64)
	if warm < 0 || warm > 60 || math.Abs(warm+ice.ColdDays-60) > 1e-9 {
		t.Errorf("%v warm and %v cold days in 60", warm, ice.ColdDays)
	}
	paid(t, ice, "ice", 0, 356.40)
	paid(t, ice, "ice_errands", 0, 90)
	paid(t, ice, "spoilage", 0, 1.44*warm)
	if len(ice.Lines) != 3 {
		t.Errorf("lines %+v; want three", ice.Lines)
	}
	adds(t, "first cost", ice.First, 0, 0)
	adds(t, "a year", ice.PerYear, 446.40+1.44*warm, 1e-9)
	adds(t, "present cost", ice.Present, (446.40+1.44*warm)*upv10, tableDigits)
	adds(t, "yearly equivalent", ice.Yearly, 446.40+1.44*warm, 1e-9)
}

// The small unit of the fixture, as told, by hand; with a life of four years
// and a sale, so that every kind of payment is there.
//
//	unit 900 + fitting 350 + cable and fuse 70            = 1,320.00 first cost
//	a new unit at the ends of years 4 and 8:
//	900 × (0.88849 + 0.78941)                             = 1,510.11
//	seen again at the sale, 0.15 × (900 + 350) = 187.50:
//	187.50 × 0.74409                                      =   139.52 off
//	upkeep 18, and what the season takes, each year:
//	(18 + 1.50 engine kWh + 0.70 kWh of wear + 1.44 warm days) × 8.5302
//
// The season's own figures are taken as they are, about 13 kWh from the
// engine, 13 kWh through the battery and 11 warm days.
func TestMoneyOfASmallUnitByHand(t *testing.T) {
	b := economics.Dunlin()
	b.Small.Life, b.Money.WillSell = 4, quantity.Yes
	unit := &reckon(t, b, few).Of(economics.SmallUnit).AsTold
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
	present := 1320 + 900*(spv4+spv8) - 187.5*spv10 + yearly*upv10
	adds(t, "present cost", unit.Present, present, tableDigits)
	adds(t, "yearly equivalent", unit.Yearly, present*crf10, 2*tableDigits)

	for year, want := range map[int]float64{0: 1320, 1: yearly, 3: yearly, 4: 900 + yearly, 8: 900 + yearly, 9: yearly, 10: yearly - 187.5} {
		if got := float64(unit.Flows[year]); !near(got, want, 1e-9) {
			t.Errorf("year %d: %.2f; by hand %.2f", year, got, want)
		}
	}
}

// The work on the small unit of the fixture, by hand: 90 L as 1 : 1 : 1.1 is
// 0.4342 m square and 0.4776 m high, so one upright face is 0.2073 m². Foam on
// the two that can be reached, inboard and fore, the lid left as it is:
//
//	2 × 0.2073 m² × 150      = 62.19
//	gasket 25, drain trap 20 = 45.00
func TestMoneyOfAFitOutByHand(t *testing.T) {
	b := economics.Dunlin()
	lid := b.Box.Faces[heat.Top]
	lid.Reach = economics.NotReached
	b.Box.Faces[heat.Top] = lid
	small := reckon(t, b, few).Of(economics.SmallUnit)
	if small.Fit.Out.FaceFoam == 0 || !small.Fit.Out.Seal || !small.Fit.Out.Drain {
		t.Fatalf("fit-out %+v; want foam, seal and drain", small.Fit.Out)
	}
	paid(t, &small.Fitted, "foam", 62.19, 0)
	paid(t, &small.Fitted, "seal", 25, 0)
	paid(t, &small.Fitted, "drain_trap", 20, 0)
	work := 0.0
	for _, l := range small.Fitted.Lines {
		if line(&small.AsTold, l.ID).First == 0 {
			work += l.First
		}
	}
	adds(t, "first cost", small.Fitted.First, small.AsTold.First+work, 1e-12)
}
