package economics

import (
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/economics/season"
)

// icing prepares the ice of a future.
func (p *proposal) icing(f *Future) season.Icing {
	ice := p.boat.Ice
	// The answers are checked before any reckoning: no kind is unknown here.
	bulk, _ := heat.BulkDensity(ice.Kind)
	lump, _ := heat.LumpDensity(ice.Kind)
	out := season.Icing{
		FilmWPerM2K:  heat.IceFilm().Range.Typical * f.Film,
		LumpKgPerM3:  lump.Range.Typical,
		BulkKgPerL:   bulk.Range.Typical,
		RoomKg:       p.iceCapacityKg(),
		PortionKg:    float64(ice.UnitSize),
		CarryKg:      float64(ice.CarryLimit),
		FirstCarryKg: float64(ice.FirstCarry),
		CarryLoss:    float64(ice.CarryLoss),
		FoundShare:   float64(ice.FoundAtStops),
		WaterKept:    p.boat.Box.Drain == heat.NoDrain,
		Runs:         ice.Runs == quantity.Yes && !p.fit.NoIceRuns,
		Precooled:    p.fit.ColdStart || p.boat.Cruising.BeforeTrip == Precooled,
	}
	if ice.FirstLoad == FromHome {
		out.HomeKg = float64(ice.HomeFreezer)
	}
	return out
}

// SeesShore tells whether the boat is ever on shore power, so that a box can be
// cooled there before a trip; else it is left running on its own sun.
func (b Boat) SeesShore() bool { return b.Cruising.ShorePowerShare > 0 }

// refrigerator prepares the unit of a future.
func (p *proposal) refrigerator(f *Future) season.Refrigerator {
	r := season.Refrigerator{Cycle: p.compressor(f).Cycle(), SeaCooled: p.unit.CooledBy == energy.Seawater}
	if p.quoted != nil && !p.quoted.PlateSize.Zero() && !p.freeStanding() {
		r.Cycle.Plate = energy.FlatPlate(p.quoted.PlateSize.Length, p.quoted.PlateSize.Width)
	}
	switch {
	case p.boat.Cruising.BeforeTrip == Precooled, p.fit.ColdStart && p.boat.SeesShore():
		r.Start = season.StartOnShore
	case p.boat.Cruising.BeforeTrip == Running, p.fit.ColdStart:
		r.Start = season.StartOnOwnSun
	}
	r.ByDay = p.fit.ByDay
	if p.fit.Bottles {
		r.Bottles = season.Bottles{StoreKJ: bottlesKg * float64(heat.FusionKJPerKg), WPerK: bottlesM2 * heat.IceFilm().Range.Typical * f.Film}
	}
	r.Cycle = p.freezing(r.Cycle)
	if p.unit.Plate == energy.Eutectic {
		r.StoreKJ = energy.EutecticMass().Typical * energy.EutecticLatent().Typical * energy.EutecticUsable().Typical
	}
	return r
}

// Water in bottles that a unit freezes by day: six of a litre, upright against
// the plate, with the room they take. Engineering judgement, from memory.
const bottlesKg, bottlesM2, bottlesL = 6, 0.36, 7

// compressor gives the unit itself: as told, or as the maker's average current
// and box size let one infer.
func (p *proposal) compressor(f *Future) energy.Unit {
	u := energy.Unit{RatedW: p.unit.RatedCooling, Eta: energy.Eta().Typical, CooledBy: p.condenser(), Plate: p.unit.Plate}
	if p.rating != nil {
		u.RatedW = quantity.Watt(p.rating.Cooling.Typical)
		u.Eta = p.rating.Eta.Typical
	}
	if p.freeStanding() {
		u.Eta = energy.ChestEta().Typical
	}
	u.RatedW *= quantity.Watt(f.Capacity)
	u.Eta *= f.Eta
	return u
}

// aYear is what an average year aboard takes and gives, over the years simulated.
type aYear struct {
	nights, coldDays       float64
	coldShare, coolShare   float64 // of days aboard
	keptShare              float64 // of the two, the one that the owner goes by
	warmDays               float64 // that fail that exam
	hoursOver5             float64
	medicineKept           bool    // 2 to 8 °C in every hour
	longestOff             float64 // hours, of any year
	warmestC               float64 // passed in warmShare of the hours
	iceBoughtKg, iceLostKg float64 // lost: the part of it that never cooled the box
	errands                float64
	unitWh                 float64 // electricity the unit took
	shoreKWh, engineKWh    float64 // because of the option
	wearKWh, addedWearKWh  float64 // likewise, through the battery aboard today and through added ones
	lowestShare            float64 // of the usable charge, at the emptiest
	months                 [12]MonthKept
}

// warmShare is the part of the hours that may be warmer than the warmest food
// which cautions judge by.
const warmShare = 0.02

// average reads a tally of so many years; base is the boat's electricity in the
// same years without cooling, which is all there is of it without a unit.
func (p *proposal) average(t, base *season.Tally, years, usableWh float64) aYear {
	own := base
	if p.unit != nil {
		own = t
	}
	y := aYear{
		nights:       float64(t.Nights) / years,
		coldDays:     float64(t.ColdDays) / years,
		coldShare:    t.ColdShare(),
		coolShare:    t.CoolShare(),
		hoursOver5:   float64(t.HoursOver5) / years,
		longestOff:   float64(t.LongestOff),
		iceBoughtKg:  t.IceBoughtKg / years,
		iceLostKg:    t.IceBoughtLostKg / years,
		errands:      float64(t.Errands) / years,
		medicineKept: t.MedicineHoursOutside == 0,
		unitWh:       t.UnitWh / years,
		shoreKWh:     max(0, own.ShoreWh-base.ShoreWh+t.PullDownShoreWh) / years / 1000,
		engineKWh:    max(0, own.EngineWh-base.EngineWh) / years / 1000,
	}
	// What is drawn beyond the boat's own need wears old and added batteries by
	// their size.
	drawn := max(0, own.DrawnWh-base.DrawnWh) / years / 1000
	added := 0.0
	if all := p.boat.Power.Battery + p.fit.Battery; all > 0 {
		added = float64(p.fit.Battery / all)
	}
	y.wearKWh, y.addedWearKWh = drawn*(1-added), drawn*added
	y.keptShare = y.coldShare
	if p.boat.CoolDecides() {
		y.keptShare = y.coolShare
	}
	y.warmDays = y.nights * (1 - y.keptShare)
	if usableWh > 0 {
		y.lowestShare = own.LowestWh / usableWh
	}
	y.warmestC, _ = t.WarmestC(warmShare)
	for m, nights := range t.NightsBy {
		if nights > 0 {
			y.months[m] = MonthKept{Cold: float64(t.ColdDaysBy[m]) / float64(nights), Cool: float64(t.CoolDaysBy[m]) / float64(nights)}
		}
	}
	return y
}
