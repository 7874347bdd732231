package economics

import (
	"math"
	"slices"

	"coldreckon/economics/climate"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Reckoning is all that is worked out for one boat. Money is the owner's, in
// today's prices.
type Reckoning struct {
	Boat   Boat
	Ground climate.Ground
	Box    BoxFigures
	Months []MonthFigures // those with nights aboard, January first
	// WithWork is the same in the box that the small unit's work makes of it; Months
	// where that unit brings a chest of its own.
	WithWork []MonthFigures
	// Options holds the four in the order of Options.
	Options [4]OptionFigures
	// Units are the small and the larger one, as told.
	Units [2]UnitFigures
	// BreakEven gives the nights a year at which the small and the larger unit
	// cost the same as ice.
	BreakEven [2]BreakEven
	Answer    Answer
	// Cool is ice with the work that keeps food cool, at 10 °C, where nothing
	// keeps it cold; nil where it is not asked.
	Cool *OptionFigures
	// Chest is a free-standing chest as the small unit, beside the built-in one,
	// where the boat has room for one; nil where it has none or nobody said.
	Chest *OptionFigures
	// Cooler is ice in a passive cooler in place of the box, beside ice in the
	// box; nil where there is no place for one, where it is for the drinks, or
	// nobody said.
	Cooler *CoolerFigures
	// Drinks is a cooler for the drinks, beside any way; nil where they are in the
	// box or nobody said.
	Drinks *DrinksFigures
	// Freezing is what each wish takes with each unit; SunWhPerWp what a rated
	// watt of panel yields a day in the hottest month aboard, Wh. Both are left
	// out without nights aboard.
	Freezing   []FreezingFigures
	SunWhPerWp float64
	// ByDay is the small unit switched off at night; nil where the owner would not.
	ByDay *ByDayFigures
	// RepairWorth is the most that repairing a dead or doubtful unit may cost to
	// be no dearer than a new small one, as a present cost; HasRepair when there
	// is such a unit.
	RepairWorth float64
	HasRepair   bool
	Futures     FuturesFigures
	Settings    Settings
	// Quotations are the owner's offers in the order told, each with its work.
	Quotations []QuotationFigures
}

// BoxFigures is the box as it stands.
type BoxFigures struct {
	Volume   quantity.Litre         // inside
	Drawn    heat.Conductance       // from the drawing alone
	Leak     quantity.WattPerKelvin // from drawing and evidence together, the median
	LeakLow  quantity.WattPerKelvin // 10th percentile
	LeakHigh quantity.WattPerKelvin // 90th percentile
	Evidence heat.Combined          // how Leak was come by
	SetAside []string               // memories of ice that no leak can give, in plain words
	IceKg    float64                // most ice it can hold in the share given to ice
}

// leakScale is what the leak was found to be over what the drawing says, 1 for a
// drawing without a leak.
func (b *BoxFigures) leakScale() float64 {
	if total := b.Drawn.Total(); total > 0 {
		return float64(b.Leak / total)
	}
	return 1
}

// MonthFigures is a mean day of a month with nights aboard, box at its target.
type MonthFigures struct {
	Month                         int     // 1 to 12
	Nights                        int     // aboard
	CabinC, SeaC                  float64 // means
	LeakW, OpeningsW, GoodsW      float64 // heat through the walls, by lid openings, from food and drink brought aboard
	HeatGainW                     float64 // the three together
	IceKgPerDay                   float64 // melted by it
	SunKWhM2Day                   float64 // on level ground
	SolarWhPerDay                 float64 // from the panel as told, into the battery
	HouseWhPerDay                 float64 // other loads
	SmallWhPerDay, LargerWhPerDay float64 // taken by a unit
	SmallRunShare, LargerRunShare float64 // of the time; over 1 it cannot hold the target
	SmallHeldC, LargerHeldC       float64 // temperature really held
}

// OptionFigures is one option as told and fitted. The fitted case is the
// as-told one when no work is needed or none is possible.
type OptionFigures struct {
	ID     OptionID
	AsTold Outcome // at typical inputs, over twenty years of weather, fewer in a quick look
	Fitted Outcome // the same with its fit-out
	Fit    Fit
	// WorksOf100 is in how many of 100 futures the fitted case works, hazards
	// apart; dry stores keep nothing cold and work in none. BestOf100 is in how
	// many it is the best of the ways that were weighed.
	WorksOf100, BestOf100 int
	// AsToldWorksOf100 is the like for the case as told, over AsToldFutures.
	AsToldFutures, AsToldWorksOf100 int
	// Bands are over the futures of the counts.
	FittedBands, AsToldBands Bands
	// PriceOfCold is what a cold day costs with the fitted case: the yearly
	// equivalent over the days kept beyond those that the empty box keeps. It
	// and the days are the 10th, 50th and 90th percentile over the futures; a
	// price is infinite where no day is won.
	PriceOfCold, ExtraDays, KeptDays quantity.Range
	MedicineOf100                    int // of 100 futures, those in which 2 to 8 °C are kept in every hour
	// ExpectedRegret is how much more the fitted case loses a year than the best
	// of the weighed ways in each future, on average; 0 for a way not weighed.
	ExpectedRegret float64
	PieceCosts     []PieceCost // of the fitted case's work
	Fortnight      Fortnight   // the worst of the fitted case
	// KeptBy and CoolBy are the shares of each month's days that the typical
	// years keep cold and cool, January first, of the fitted case and as told.
	FittedMonths, AsToldMonths [12]MonthKept
}

// MonthKept is what became of a month's days aboard, as shares of them; both 0
// without nights.
type MonthKept struct {
	Cold float64 // pass the exam at 5 °C
	Cool float64 // pass that at 10 °C, the cold ones among them
}

// Bands are the 10th and 90th percentiles, as Low and High, of what an option
// costs over futures, by the names of Outcome; Typical is the median.
type Bands struct {
	First, PerYear, Present, Yearly quantity.Range
}

// Of gives an option's figures, nil for an id that is none of Options.
func (r *Reckoning) Of(id OptionID) *OptionFigures {
	for i := range r.Options {
		if r.Options[i].ID == id {
			return &r.Options[i]
		}
	}
	return nil
}

// Settings are the choices of a reckoning that are not the boat's.
type Settings struct {
	// Futures is 20 or more; 1,000 is usual. Under 200 it is a quick look: the
	// search for work meets fewer futures, too, and takes more works for alike;
	// a future holds fewer days, and typical years are fewer.
	Futures int
	Seed    uint64 // of weather and futures; the same seed gives the same reckoning
}

// quickLook is the number of futures under which a reckoning is a quick look.
const quickLook = 200

// Quick tells whether a reckoning is a quick look.
func (s Settings) Quick() bool { return s.Futures < quickLook }

// searchFutures is how many futures the search for work meets: always the same
// ones; in a quick look an eighth as many, which are others, and for a glimpse
// twice those asked for.
func (s Settings) searchFutures() int {
	if s.Quick() {
		return min(searchFutures/8, 2*s.Futures)
	}
	return searchFutures
}

// typicalYears is the number of years of weather behind a figure at typical inputs,
// of a boat with so many nights a year. A quick look makes do with five, and with
// fewer where these have daysOfALook in all.
func (s Settings) typicalYears(nights int) int {
	if s.Quick() {
		return max(1, min(typicalYears/4, daysOfALook/max(1, nights)))
	}
	return typicalYears
}

// Engineering judgement, from memory.
const daysOfALook = 150

// DefaultSettings are those of a report.
var DefaultSettings = Settings{Futures: 1000, Seed: 1}

// Reckon works one boat out: a pure function of the boat, the rule book, the
// ground and the settings. The boat must be complete, every answer given or
// assumed and within the limits of its question. It fails when the boat's
// walls, ice or evidence do not make sense, naming the answer, or when a
// criterion or price of the book asks for a fact that is missing or comes out
// not finite.
func Reckon(b Boat, book Book, ground climate.Ground, set Settings) (*Reckoning, error) {
	w := newWorld(&b, ground)
	if set.Quick() {
		w.live(&b, daysAGlance, longGlance)
	}
	r := &Reckoning{Boat: b, Ground: ground, Settings: set}
	var err error
	if r.Box, err = boxEvidence(&b, &w); err != nil {
		return nil, err
	}
	st := newStudy(&r.Boat, &book, &w, &r.Box, set)
	offers, err := st.weighQuotations(&r.Boat)
	if err != nil {
		return nil, err
	}
	r.Quotations = offers.figures
	r.Boat = offers.stand(r.Boat, &book)
	var cases [4]*studied
	told, fitted := make([]*proposal, 4), make([]*proposal, 4)
	err = parallel(len(Options), func(int) func(int) error {
		return func(i int) (err error) {
			if cases[i] = offers.best[Options[i]]; cases[i] == nil {
				cases[i], err = st.study(&r.Boat, Options[i])
			}
			return err
		}
	})
	if err != nil {
		return nil, err
	}
	for i, c := range cases {
		told[i], fitted[i] = c.told, c.fitted
	}
	r.Months = monthFigures(told[0], told[2], told[3])
	r.WithWork = r.Months
	if r.Boat.Small.Form == BuiltIn {
		r.WithWork = monthFigures(fitted[2], fitted[2], fitted[3])
	}
	r.Units = [2]UnitFigures{told[2].unitFigures(), told[3].unitFigures()}
	rows, paid, err := trials(fitted, st.futures, set.Seed)
	if err != nil {
		return nil, err
	}
	for i, c := range cases {
		c.figures.count(rows[i])
		r.Options[i] = c.figures
	}
	if err := r.countAsTold(told, rows, st.futures); err != nil {
		return nil, err
	}
	if err := r.weighVariants(st, fitted); err != nil {
		return nil, err
	}
	r.Answer = r.answer(rows)
	if r.Answer.OverLimit > 0 {
		s := cases[slices.Index(Options[:], r.Answer.Way())].search
		r.Answer.LimitBuys = s.limitBuys(float64(b.Money.Budget))
		if s.failed != nil {
			return nil, s.failed
		}
	}
	asked := answerer{r, rows, len(st.futures)}
	r.Futures = asked.losses(st.inputs, st.futures, r.Answer.Way())
	r.Futures.Seed = set.Seed
	r.Futures.Paid = paidBands(paid, int(b.Money.Years)+1)
	r.BreakEven = [2]BreakEven{
		breakEven(SmallUnit, &r.Options[2].Fitted, &r.Options[0].Fitted),
		breakEven(LargerUnit, &r.Options[3].Fitted, &r.Options[0].Fitted),
	}
	return r, nil
}

// count reads an option's figures from its trials.
func (o *OptionFigures) count(trials []Trial) {
	o.WorksOf100, o.FittedBands = worksOf100(trials), bands(trials)
	o.PriceOfCold = percentiles(trials, func(t *Trial) float64 { return t.Price })
	o.ExtraDays = percentiles(trials, func(t *Trial) float64 { return t.ExtraDays })
	o.KeptDays = percentiles(trials, func(t *Trial) float64 { return t.KeptDays })
	kept := 0
	for i := range trials {
		if trials[i].MedicineKept {
			kept++
		}
	}
	o.MedicineOf100 = 100 * kept / len(trials) // rounded down: 99 must be 99
}

// The options as told are put to the first of all futures, one in asToldPart,
// enough to say how often they work. How many is printed.
const asToldPart = 5

// countAsTold puts the options as told to the futures. One that needs no work
// is the fitted one, whose trials are there already.
func (r *Reckoning) countAsTold(told []*proposal, fitted [][]Trial, futures []Future) error {
	futures = futures[:max(1, len(futures)/asToldPart)]
	var worked []*proposal
	for i := range r.Options {
		if len(r.Options[i].Fit.Items) > 0 {
			worked = append(worked, told[i])
		}
	}
	rows, _, err := trials(worked, futures, r.Settings.Seed)
	if err != nil {
		return err
	}
	for i := range r.Options {
		o, row := &r.Options[i], fitted[i]
		if len(o.Fit.Items) > 0 {
			row, rows = rows[0], rows[1:]
		}
		o.AsToldFutures, o.AsToldWorksOf100 = len(row), worksOf100(row)
		if !o.Fit.Cools() { // it works as often
			o.AsToldFutures, o.AsToldWorksOf100 = len(fitted[i]), o.WorksOf100
		}
		o.AsToldBands = bands(row)
	}
	return nil
}

// live puts the option as told and fitted through the typical years, which are
// the same where no work is done.
func (o *OptionFigures) live(told, fitted *proposal, a *weatherYears, base *baseLoads) (err error) {
	var w recorder
	years := fitted.live(&Typical, a, base, &w)
	o.Fortnight, o.FittedMonths = w.fortnight(fitted), years.months
	if o.Fitted, err = fitted.calculator().outcome(&Typical, years); err != nil {
		return err
	}
	if fitted.fit != told.fit {
		years = told.live(&Typical, a, base, nil)
	}
	o.AsToldMonths = years.months
	o.AsTold, err = told.calculator().outcome(&Typical, years)
	return err
}

// worksOf100 gives in how many of 100 trials the proposal works.
func worksOf100(trials []Trial) int {
	n := 0
	for i := range trials {
		if trials[i].Works {
			n++
		}
	}
	return int(math.Round(100 * float64(n) / float64(len(trials))))
}

// monthFigures reads the mean days of the months aboard. Heat and ice are the
// box's; what the units take is theirs, in their own box where they bring one.
func monthFigures(ice, small, larger *proposal) []MonthFigures {
	var out []MonthFigures
	box, cold := ice.setup(&Typical), ice.boat.Food.Target
	smallBox, largerBox := small.setup(&Typical), larger.setup(&Typical)
	smallUnit, largerUnit := small.refrigerator(&Typical), larger.refrigerator(&Typical)
	for m := range 12 {
		nights := ice.world.plan.NightsIn(m)
		if nights == 0 {
			continue
		}
		mean := box.Mean(m, float64(cold))
		s, l := smallBox.Duty(m, smallUnit, float64(cold)), largerBox.Duty(m, largerUnit, float64(cold))
		out = append(out, MonthFigures{
			Month: m + 1, Nights: nights, CabinC: mean.CabinC, SeaC: mean.SeaC,
			LeakW: mean.LeakW, OpeningsW: mean.OpeningsW, GoodsW: mean.GoodsW + mean.DrinksW, HeatGainW: mean.GainW(),
			IceKgPerDay:   float64(heat.MeltKgPerDay(quantity.Watt(mean.GainW()), heat.DrainCelsius)),
			SunKWhM2Day:   float64(ice.world.ground.Months[m].Sun),
			SolarWhPerDay: box.SunWh(m),
			HouseWhPerDay: 24 * box.Power.HouseW,
			SmallWhPerDay: float64(s.DayWh()), SmallRunShare: s.RunShare, SmallHeldC: float64(s.Held),
			LargerWhPerDay: float64(l.DayWh()), LargerRunShare: l.RunShare, LargerHeldC: float64(l.Held),
		})
	}
	return out
}
