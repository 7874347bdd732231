package season

// Tally is what one or more simulated years aboard came to. The zero value is ready for use;
// Reset makes one ready again without allocating.
type Tally struct {
	Years                int // simulated into this tally
	Nights, ColdDays     int
	NightsBy, ColdDaysBy [12]int
	Hours, HoursOver5    int
	HoursOff, LongestOff int // hours without any cooling, and the longest run of them
	WorstRun             int // longest run of days that fail the exam
	GainWhBy             [12]float64
	UnitWhBy             [12]float64 // electricity taken by the unit
	RunHoursBy           [12]float64 // hours the unit ran
	MeltKgBy             [12]float64
	IceBoughtKg          float64 // billed
	IceHomeKg            float64 // frozen at home
	IceLostKg            float64 // left at trips' ends or melted on the way
	ChilledKg            float64 // melted the day before a trip, beside MeltKgBy
	Errands              int     // purchases of ice
	SunWh, SpillWh       float64
	ShoreWh, EngineWh    float64 // into bank and loads
	DrawnWh              float64 // out of the bank
	HouseUnmetWh         float64
	LowestWh             float64 // least charge above the cut-off
	PullDownShoreWh      float64 // shore electricity that pre-cooled the box

	// The heat balance: gained = cooled + stored, kJ.
	GainKJ, CooledKJ, StoredKJ float64
	// The energy balance: in = used + lost + stored, Wh.
	UnitWh, HouseWh, LostWh, StoredWh float64

	food      [foodBins]uint32 // hours by food temperature, first day of each trip left out
	off       int
	warmRun   int
	overInDay int
}

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
// upper edge of a 0.25 K bin; NaN never leaves: without hours it gives ok false.
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
	CabinC, FoodC               float64 // mean of the hour; at its end
	GainW, CooledW              float64 // heat into the box, and taken out of it
	EvaporatorC, CapacityW, COP float64 // a unit's; zero for ice
	SunW, UnitW, ShoreW         float64
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
