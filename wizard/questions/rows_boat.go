package questions

import (
	"math"
	"slices"

	"coldreckon/economics"
	"coldreckon/economics/climate"
	"coldreckon/economics/quantity"
)

// defaultCurrency is taken where neither owner nor price book names one.
const defaultCurrency = "$"

// always is a default that looks at nothing else.
func always(value any, why string) func(Context) (any, string) {
	return func(Context) (any, string) { return value, why }
}

const judgement = "engineering judgement, from memory"

// mostByWeekends is how many nights of a month weekends may hold, long ones among
// them; more are a holiday.
const mostByWeekends = 13

func generalRows() []Row {
	return []Row{
		{
			Key: "units", Group: OfBoat, Label: "Units", Kind: Choice,
			Ask:     "Which units do you use?",
			Help:    "Typical: us in North America, metric elsewhere. Any answer may still name its own unit, such as 90 L or 3.2 cu ft.",
			Options: []Option{{"us", "US: cu ft, lb, in, °F", "imperial|american"}, {"metric", "Metric: L, kg, mm, °C", "si"}},
			Field:   func(b *economics.Boat) Slot { return at(&b.Units) },
			Default: always(quantity.US, "no unit system was named"),
		},
		{
			Key: "currency", Group: OfBoat, Label: "Currency", Kind: Text,
			Ask:   "Which currency are your prices in?",
			Help:  "Typical: $, € or a code such as EUR. It is printed as you write it; nothing is converted.",
			Field: func(b *economics.Boat) Slot { return at(&b.Currency) },
			Default: func(c Context) (any, string) {
				if sign := c.Book().Currency; sign != "" {
					return sign, "the currency of the price book"
				}
				return defaultCurrency, "no currency was named"
			},
		},
		{
			Key: "boat.name", Group: OfBoat, Label: "Name", Kind: Text,
			Ask:     "What is the boat called?",
			Help:    "Typical: the name on her transom. It only heads the report.",
			Field:   func(b *economics.Boat) Slot { return at(&b.Name) },
			Default: always("Your boat", ""),
		},
	}
}

func cruisingRows() []Row {
	return []Row{
		{
			Key: "cruising.ground", Group: OfCruising, Label: "Cruising ground", Kind: Choice,
			Ask:     "Where do you cruise most?",
			Help:    "Typical: a name such as chesapeake-bay or ionian-islands. Pick the nearest in climate; choose own to describe it by latitude and temperatures.",
			Options: grounds(),
			Field:   func(b *economics.Boat) Slot { return at(&b.Cruising.Ground) },
			Default: always("chesapeake-bay", "a middling summer climate, taken because no ground was named"),
		},
		{
			Key: "cruising.latitude", Group: OfCruising, Label: "Latitude of your own ground", Kind: Latitude,
			Ask:     "What is its latitude?",
			Help:    "Typical: 44.1 N, or 17 S; any chart of the area gives it. It sets the sun and the seasons.",
			Limits:  Limits{-climate.MaxLatitudeDeg, -65, 65, climate.MaxLatitudeDeg},
			Field:   func(b *economics.Boat) Slot { return at(&b.Cruising.LatitudeDeg) },
			Default: always(0.0, ""),
			When:    ownGround,
		},
		{
			Key: "cruising.air_min", Group: OfCruising, Label: "Night temperatures of your own ground", Kind: MonthTemperatures,
			Ask:     "How cold are its nights, month by month?",
			Help:    "Typical: january 5 °C (41 °F), july 19 °C (66 °F). Give the mean daily lowest of at least the coldest and the warmest month, from a pilot book or a weather page; the months between are rounded in.",
			Limits:  Limits{-40, -20, 30, 40},
			Field:   func(b *economics.Boat) Slot { return at(&b.Cruising.AirMin) },
			Default: always([12]quantity.Celsius{}, ""),
			When:    ownGround,
		},
		{
			Key: "cruising.air_max", Group: OfCruising, Label: "Day temperatures of your own ground", Kind: MonthTemperatures,
			Ask:     "How warm are its days, month by month?",
			Help:    "Typical: january 12 °C (54 °F), july 28 °C (82 °F). Give the mean daily highest of at least the coldest and the warmest month.",
			Limits:  Limits{-30, -10, 42, 55},
			Field:   func(b *economics.Boat) Slot { return at(&b.Cruising.AirMax) },
			Default: always([12]quantity.Celsius{}, ""),
			When:    ownGround,
		},
		{
			Key: "cruising.air_mean", Group: OfCruising, Label: "Air temperatures you know better", Kind: MonthOverrides, Detail: true,
			Ask:     "Do you know the mean air temperature of some months better than a table does?",
			Help:    "Typical: none; leave it out unless you keep a log. Otherwise july: 26 °C (79 °F) and so on, the mean of day and night.",
			Limits:  Limits{-30, -10, 36, 45},
			Field:   func(b *economics.Boat) Slot { return at(&b.Cruising.AirOverrides) },
			Default: always(map[int]quantity.Celsius(nil), ""),
		},
		{
			Key: "cruising.nights", Group: OfCruising, Label: "Nights aboard", Kind: Months,
			Ask:    "How many nights a year do you sleep aboard, and when?",
			Help:   "Typical: june 6, july 14, august 10. Also: weekends in summer, two weeks' holiday, live aboard, winter in the sun, or several joined by and. The log book knows.",
			Limits: Limits{0, 0, 31, 31},
			Field:  func(b *economics.Boat) Slot { return at(&b.Cruising.Nights) },
			Default: func(c Context) (any, string) {
				return each(8, season("summer", watersOf(c.Boat))), "weekends in the four summer months"
			},
		},
		{
			Key: "cruising.elsewhere", Group: OfCruising, Label: "A second ground in the year", Kind: Choice, Detail: true,
			Ask:     "Is she on another ground for a part of the year?",
			Help:    "Typical: none. Choose one if she winters, or is moved, where it is hotter or colder.",
			Options: append([]Option{{economics.NoElsewhere, "no, the same all year", "no|nowhere"}}, grounds()[:len(grounds())-1]...),
			Field:   func(b *economics.Boat) Slot { return at(&b.Cruising.Elsewhere) },
			Default: always(economics.NoElsewhere, "one ground was told"),
		},
		{
			Key: "cruising.nights_elsewhere", Group: OfCruising, Label: "Nights on the second ground", Kind: Months, Detail: true,
			Ask:     "How many of your nights are spent there, and when?",
			Help:    "Typical: january 20, february 25. They are part of the nights told; a month counts for the ground on which half of it or more is spent.",
			Limits:  Limits{0, 0, 31, 31},
			Field:   func(b *economics.Boat) Slot { return at(&b.Cruising.NightsElsewhere) },
			Default: always([12]float64{}, ""),
			When: func(b economics.Boat) bool {
				return b.Cruising.Elsewhere != "" && b.Cruising.Elsewhere != economics.NoElsewhere
			},
		},
		{
			Key: "cruising.trip_nights", Group: OfCruising, Label: "Length of a trip", Kind: Number, Words: []string{"nights", "night", "days"},
			Ask:    "How many nights from leaving home to coming back?",
			Help:   "Typical: 2 for weekends, 7 to 14 for holidays; for a boat you live on, all the nights of the year.",
			Limits: Limits{1, 1, 366, 366},
			Field:  func(b *economics.Boat) Slot { return at(&b.Cruising.TripNights) },
			Default: func(c Context) (any, string) {
				total := totalNights(c.Boat)
				switch {
				case total <= 1:
					return 1.0, "no nights aboard were told"
				case slices.Max(c.Boat.Cruising.Nights[:]) <= mostByWeekends:
					return math.Min(2, total), "weekends, by the nights of the fullest month"
				case total <= 150:
					return math.Min(7, total), "a week, by the number of nights aboard"
				}
				return total, "one long stay, by the number of nights aboard"
			},
		},
		{
			Key: "cruising.shop_every_days", Group: OfCruising, Label: "Days between food shops", Kind: Number, Words: []string{"days", "day"},
			Said:   func(text string, _ owner) string { return shopEvery(text) },
			Ask:    "When away, how many days between food shops?",
			Help:   "Typical: 3 along a settled coast, 7 to 14 among islands.",
			Limits: Limits{1, 1, 21, 90},
			Field:  func(b *economics.Boat) Slot { return at(&b.Cruising.ShopEveryDays) },
			Default: func(c Context) (any, string) {
				return math.Max(1, math.Min(3, c.Boat.Cruising.TripNights)), "a settled coast; " + judgement
			},
		},
		{
			Key: "cruising.shore_power_share", Group: OfCruising, Label: "Nights on shore power", Kind: Share,
			Ask:     "What share of your nights is the boat plugged in to shore power?",
			Help:    "Typical: none for anchoring, 30 % for a mixed summer, 90 % for marina people.",
			Limits:  Limits{0, 0, 1, 1},
			Field:   func(b *economics.Boat) Slot { return at(&b.Cruising.ShorePowerShare) },
			Default: always(0.0, "nights at anchor or on a mooring"),
		},
		{
			Key: "cruising.before_trip", Group: OfCruising, Label: "Box before a trip", Kind: Choice,
			Ask:  "When you come aboard for a trip, how is the box?",
			Help: "Typical: warm. Choose precooled if you chill it on shore power first, running if a unit is left on by its own sun.",
			Options: []Option{{"warm", "as warm as the cabin", "hot|shut down"}, {"precooled", "chilled beforehand on shore power", "pre-cooled|cold"},
				{"running", "kept cold between trips by its own sun", "left running|left on"}},
			Field:   func(b *economics.Boat) Slot { return at(&b.Cruising.BeforeTrip) },
			Default: always(economics.Warm, "most boats are shut down between trips"),
		},
		{
			Key: "cruising.crew", Data: "cruising.crew_people", Group: OfCruising, Label: "People aboard", Kind: Number, Words: []string{"people", "person", "persons", "of us"},
			Said:    crewSaid,
			Ask:     "How many of you?",
			Help:    "Typical: 2. Count a child as half; take the usual crew, not the fullest weekend.",
			Limits:  Limits{0.5, 1, 6, 16},
			Field:   func(b *economics.Boat) Slot { return at(&b.Cruising.Crew) },
			Default: always(2.0, "a couple"),
		},
	}
}

// grounds lists the cruising grounds as options, and the owner's own.
func grounds() []Option {
	var options []Option
	for _, p := range climate.Places() {
		options = append(options, Option{Value: p.ID, Label: p.Name})
	}
	return append(options, Option{economics.OwnGround, "somewhere else, described by latitude and temperatures", "elsewhere|other"})
}

func ownGround(b economics.Boat) bool { return b.Cruising.Ground == economics.OwnGround }

// latitude gives the latitude of the boat's ground, 0 when it is not known.
func latitude(b economics.Boat) float64 {
	if ownGround(b) {
		return b.Cruising.LatitudeDeg
	}
	if b.Cruising.Ground == "" {
		return 0
	}
	g, err := climate.Find(b.Cruising.Ground)
	if err != nil {
		return 0
	}
	return g.LatDeg
}

func watersOf(b economics.Boat) waters {
	lat := latitude(b)
	return waters{lat < 0, lat != 0 && math.Abs(lat) < tropicsDeg}
}

func totalNights(b economics.Boat) float64 {
	total := 0.0
	for _, n := range b.Cruising.Nights {
		total += n
	}
	return total
}
