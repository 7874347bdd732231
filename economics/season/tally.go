package season

// Tally is what one or more simulated years aboard came to. The zero value is
// ready for use; runs add to it. What ends in By is by month, January first.
type Tally struct {
	Years    int // simulated into this tally
	Nights   int
	NightsBy [12]int
	// Days that passed the exams of a cold and of a cool day.
	ColdDays, CoolDays     int
	ColdDaysBy, CoolDaysBy [12]int
	Hours                  int // reckoned
	HoursOver5             int // with food over 5 °C, of those that count for the exams
	MedicineHoursOutside   int // with food under 2 or over 8 °C, likewise
	HoursOff, LongestOff   int // hours without any cooling, and the longest run of them
	WorstRun               int // longest run of days that fail the exam that decides
	GainWhBy               [12]float64
	UnitWhBy               [12]float64 // electricity taken by the unit
	RunHoursBy             [12]float64 // hours the unit ran
	MeltKgBy               [12]float64
	IceBoughtKg            float64 // billed
	IceHomeKg              float64 // frozen at home
	// Left at trips' ends, melted on the way, or bought and not loaded; and the
	// part of it that was bought.
	IceLostKg, IceBoughtLostKg float64
	ChilledKg                  float64 // melted the day before a trip, beside MeltKgBy
	Errands                    int     // trips for ice alone: runs, and purchases the day before a trip
	Runs                       int     // of those, the ones on days aboard, whether they found ice or not
	SunWh, SpillWh             float64 // what the panel gave, and what of it found no place
	ShoreWh, EngineWh          float64 // into bank and loads
	DrawnWh                    float64 // out of the bank
	HouseUnmetWh               float64 // called for when the bank was empty
	LowestWh                   float64 // least charge above the cut-off
	PullDownShoreWh            float64 // shore electricity that pre-cooled the box, beside ShoreWh and UnitWh

	// The heat balance: gained = cooled + stored, kJ. Stored is what the box
	// and its contents have warmed by.
	GainKJ, CooledKJ, StoredKJ float64
	// The energy balance: sun + engine + shore + unmet = unit + house + lost +
	// stored + spilled, Wh. Lost is what charging costs, stored what the bank
	// holds more at trips' ends than at their starts.
	UnitWh, HouseWh, LostWh, StoredWh float64

	food         [foodBins]uint32 // hours by food temperature, of those that count for the exams
	off          int              // hours without cooling up to now
	warmRun      int              // days failed up to now
	over5, overC int              // hours of this day above 5 °C, and above coolC
	coolC        float64
	coolDecides  bool
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
	t.coolC, t.coolDecides = s.CoolLimitC, s.LimitC > coldLimitC
}

// ColdShare gives the share of days that were cold; 0 without nights.
func (t *Tally) ColdShare() float64 { return t.share(t.ColdDays) }

// CoolShare gives the share of days that were cool; 0 without nights.
func (t *Tally) CoolShare() float64 { return t.share(t.CoolDays) }

func (t *Tally) share(days int) float64 {
	if t.Nights == 0 {
		return 0
	}
	return float64(days) / float64(t.Nights)
}

// WarmestC gives the food temperature passed in a share of the hours aboard
// that count for the exams. It reads the upper edge of a bin of 0.25 K. share is 0 to under 1; without hours ok is false.
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

// hour books one hour's food temperature; counted tells whether it counts for
// the exams.
func (t *Tally) hour(foodC float64, cooled, counted bool) {
	if counted {
		t.examine(foodC, 1)
	}
	if cooled {
		t.off = 0
		return
	}
	t.off++
	t.HoursOff++
	t.LongestOff = max(t.LongestOff, t.off)
}

// held books hours of cooled food at one temperature, of which some count for
// the exams.
func (t *Tally) held(foodC float64, hours, counted int) {
	if hours > 0 {
		t.off = 0
		t.examine(foodC, counted)
	}
}

// examine books hours that count for the exams, with food at one temperature.
func (t *Tally) examine(foodC float64, hours int) {
	if foodC > coldLimitC+examToleranceK {
		t.over5 += hours
		if foodC > t.coolC+examToleranceK {
			t.overC += hours
		}
		if foodC > medicineToC+examToleranceK {
			t.MedicineHoursOutside += hours
		}
	} else if foodC < medicineFromC-examToleranceK {
		t.MedicineHoursOutside += hours
	}
	t.food[max(0, min(foodBins-1, int((foodC-foodFloorC)/foodBinK)))] += uint32(hours)
}

// endNight counts a night of the month.
func (t *Tally) endNight(month int) {
	t.Nights++
	t.NightsBy[month]++
}

// endDay closes a noon-to-noon day of the month and examines it.
func (t *Tally) endDay(month int) {
	t.endNight(month)
	t.Hours += 24
	cold, cool := t.over5 <= examHours, t.overC <= examHours
	if cold {
		t.ColdDays++
		t.ColdDaysBy[month]++
	}
	if cool {
		t.CoolDays++
		t.CoolDaysBy[month]++
	}
	if cold || cool && t.coolDecides {
		t.warmRun = 0
	} else {
		t.warmRun++
		t.WorstRun = max(t.WorstRun, t.warmRun)
	}
	t.HoursOver5 += t.over5
	t.over5, t.overC = 0, 0
}

// endTrip forgets runs that do not reach over a stay at home, and counts as often
// the nights of a trip that stand for more than themselves.
func (t *Tally) endTrip(tr *tripRun) {
	t.off, t.warmRun = 0, 0
	if 0 < tr.alone && tr.alone < tr.nights {
		t.repeat(tr.before, partEach)
	}
}

// repeat counts what has been added since an earlier state so many times. What is
// longest, least or warmest stays.
func (t *Tally) repeat(since *Tally, times int) {
	for _, n := range [...][2]*int{
		{&t.Nights, &since.Nights}, {&t.ColdDays, &since.ColdDays}, {&t.CoolDays, &since.CoolDays}, {&t.Hours, &since.Hours},
		{&t.HoursOver5, &since.HoursOver5}, {&t.MedicineHoursOutside, &since.MedicineHoursOutside}, {&t.HoursOff, &since.HoursOff},
		{&t.Errands, &since.Errands}, {&t.Runs, &since.Runs},
	} {
		*n[0] += (times - 1) * (*n[0] - *n[1])
	}
	more := float64(times - 1)
	for _, v := range [...][2]*float64{
		{&t.IceBoughtKg, &since.IceBoughtKg}, {&t.IceHomeKg, &since.IceHomeKg}, {&t.IceLostKg, &since.IceLostKg},
		{&t.IceBoughtLostKg, &since.IceBoughtLostKg}, {&t.SunWh, &since.SunWh}, {&t.SpillWh, &since.SpillWh}, {&t.ShoreWh, &since.ShoreWh},
		{&t.EngineWh, &since.EngineWh}, {&t.DrawnWh, &since.DrawnWh}, {&t.HouseUnmetWh, &since.HouseUnmetWh}, {&t.GainKJ, &since.GainKJ},
		{&t.CooledKJ, &since.CooledKJ}, {&t.StoredKJ, &since.StoredKJ}, {&t.UnitWh, &since.UnitWh}, {&t.HouseWh, &since.HouseWh},
		{&t.LostWh, &since.LostWh}, {&t.StoredWh, &since.StoredWh}, {&t.ChilledKg, &since.ChilledKg}, {&t.PullDownShoreWh, &since.PullDownShoreWh},
	} {
		*v[0] += more * (*v[0] - *v[1])
	}
	for m := range 12 {
		t.NightsBy[m] += (times - 1) * (t.NightsBy[m] - since.NightsBy[m])
		t.ColdDaysBy[m] += (times - 1) * (t.ColdDaysBy[m] - since.ColdDaysBy[m])
		t.CoolDaysBy[m] += (times - 1) * (t.CoolDaysBy[m] - since.CoolDaysBy[m])
		t.GainWhBy[m] += more * (t.GainWhBy[m] - since.GainWhBy[m])
		t.UnitWhBy[m] += more * (t.UnitWhBy[m] - since.UnitWhBy[m])
		t.RunHoursBy[m] += more * (t.RunHoursBy[m] - since.RunHoursBy[m])
		t.MeltKgBy[m] += more * (t.MeltKgBy[m] - since.MeltKgBy[m])
	}
	for i := range t.food {
		t.food[i] += uint32(times-1) * (t.food[i] - since.food[i])
	}
}

// Hour is one row of a trace.
type Hour struct {
	Trip, Hour                  int     // index of the trip, and of the hour in it from its first noon
	Clock, Month                int     // hour of the day, 0 to 23; 0 for January
	CabinC, FoodC               float64 // at half past; at the hour's end
	GainW, CooledW              float64 // heat into the box, and taken out of it
	EvaporatorC, CapacityW, COP float64 // how a unit would work in this hour (energy.Work); zero for ice
	SunW, UnitW, ShoreW         float64 // from the panel, into the unit, from shore
	ChargeWh                    float64 // above the cut-off, at the hour's end
	IceKg, WaterKg              float64 // ice, and meltwater kept aboard, at the hour's end
	MeltedKg                    float64 // in the hour
	Counted                     bool    // for the exams
}

// Trace collects hours; a nil *Trace collects nothing.
type Trace struct{ Hours []Hour }

func (tr *Trace) add(h Hour) {
	if tr != nil {
		tr.Hours = append(tr.Hours, h)
	}
}
