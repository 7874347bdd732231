package season

// Tally is what one or more simulated years aboard came to. The zero value is
// ready for use; runs add to it. What ends in By is by month, January first.
type Tally struct {
	Years                int     // simulated into this tally
	Nights, ColdDays     int     // nights spent, and days of them that passed the exam
	NightsBy, ColdDaysBy [12]int // the same
	Hours, HoursOver5    int     // hours reckoned, and hours with food over 5 °C
	HoursOff, LongestOff int     // hours without any cooling, and the longest run of them
	WorstRun             int     // longest run of days that fail the exam
	GainWhBy             [12]float64
	UnitWhBy             [12]float64 // electricity taken by the unit
	RunHoursBy           [12]float64 // hours the unit ran
	MeltKgBy             [12]float64
	IceBoughtKg          float64 // billed
	IceHomeKg            float64 // frozen at home
	IceLostKg            float64 // left at trips' ends or melted on the way
	ChilledKg            float64 // melted the day before a trip, beside MeltKgBy
	Errands              int     // purchases of ice
	SunWh, SpillWh       float64 // what the panel gave, and what of it found no place
	ShoreWh, EngineWh    float64 // into bank and loads
	DrawnWh              float64 // out of the bank
	HouseUnmetWh         float64 // called for when the bank was empty
	LowestWh             float64 // least charge above the cut-off
	PullDownShoreWh      float64 // shore electricity that pre-cooled the box, beside ShoreWh and UnitWh

	// The heat balance: gained = cooled + stored, kJ. Stored is what the box
	// and its contents have warmed by.
	GainKJ, CooledKJ, StoredKJ float64
	// The energy balance: sun + engine + shore + unmet = unit + house + lost +
	// stored + spilled, Wh. Lost is what charging costs, stored what the bank
	// holds more at trips' ends than at their starts.
	UnitWh, HouseWh, LostWh, StoredWh float64

	food      [foodBins]uint32 // hours by food temperature, first day of each longer trip left out
	off       int              // hours without cooling up to now
	warmRun   int              // days failed up to now
	overInDay int              // hours of this day above the limit
}

// Food temperatures are counted in bins from -10 to 55 °C; colder and warmer
// hours count in the outermost.
const (
	foodBins   = 260
	foodBinK   = 0.25
	foodFloorC = -10
)

// begin readies the tally for a year of the setup; years add up.
func (t *Tally) begin(s *Setup) {
	if t.Years == 0 {
		t.LowestWh = float64(s.Power.Bank.FullWh)
	}
	t.Years++
}

// ColdShare gives the share of days that passed the exam; 0 without nights.
func (t *Tally) ColdShare() float64 {
	if t.Nights == 0 {
		return 0
	}
	return float64(t.ColdDays) / float64(t.Nights)
}

// WarmestC gives the food temperature passed in a share of the hours aboard,
// the first day of each trip left out where trips are longer. It reads the
// upper edge of a bin of 0.25 K. share is 0 to under 1; without hours ok is false.
func (t *Tally) WarmestC(share float64) (c float64, ok bool) {
	var total uint64
	for _, n := range t.food {
		total += uint64(n)
	}
	if total == 0 {
		return 0, false
	}
	left := uint64(share * float64(total))
	for i := foodBins - 1; i >= 0; i-- {
		if uint64(t.food[i]) > left {
			return foodFloorC + foodBinK*float64(i+1), true
		}
		left -= uint64(t.food[i])
	}
	return foodFloorC, true
}

// hour books one hour's food temperature.
func (t *Tally) hour(foodC, limitC float64, cooled, settled bool) {
	t.Hours++
	if foodC > limitC+examToleranceK {
		t.overInDay++
	}
	if foodC > safetyLimitC+examToleranceK {
		t.HoursOver5++
	}
	if settled {
		t.food[max(0, min(foodBins-1, int((foodC-foodFloorC)/foodBinK)))]++
	}
	if cooled {
		t.off = 0
		return
	}
	t.off++
	t.HoursOff++
	t.LongestOff = max(t.LongestOff, t.off)
}

// endNight counts a night of the month.
func (t *Tally) endNight(month int) {
	t.Nights++
	t.NightsBy[month]++
}

// endDay closes a noon-to-noon day of the month and examines it.
func (t *Tally) endDay(month int) {
	t.endNight(month)
	if t.overInDay <= examHours {
		t.ColdDays++
		t.ColdDaysBy[month]++
		t.warmRun = 0
	} else {
		t.warmRun++
		t.WorstRun = max(t.WorstRun, t.warmRun)
	}
	t.overInDay = 0
}

// endTrip forgets runs that do not reach over a stay at home.
func (t *Tally) endTrip() { t.off, t.warmRun = 0, 0 }

// Hour is one row of a trace.
type Hour struct {
	Trip, Hour                  int     // index of the trip, and of the hour in it from its first noon
	Clock, Month                int     // hour of the day, 0 to 23; 0 for January
	CabinC, FoodC               float64 // at half past; at the hour's end
	GainW, CooledW              float64 // heat into the box, and taken out of it
	EvaporatorC, CapacityW, COP float64 // how a unit would work in this hour (energy.Work); zero for ice
	SunW, UnitW, ShoreW         float64 // from the panel, into the unit, from shore
	ChargeWh                    float64 // above the cut-off, at the hour's end
	IceKg                       float64 // at the hour's end
}

// Trace collects hours; a nil *Trace collects nothing.
type Trace struct{ Hours []Hour }

func (tr *Trace) add(h Hour) {
	if tr != nil {
		tr.Hours = append(tr.Hours, h)
	}
}
