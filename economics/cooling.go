package economics

import (
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/economics/season"
)

// icing prepares the ice of a future.
func (p *proposal) icing() season.Icing {
	ice := p.boat.Ice
	// The answers are checked before any reckoning: no kind is unknown here.
	bulk, _ := heat.BulkDensity(ice.Kind)
	lump, _ := heat.LumpDensity(ice.Kind)
	out := season.Icing{
		FilmWPerM2K: heat.IceFilm().Range.Typical,
		LumpKgPerM3: lump.Range.Typical,
		BulkKgPerL:  bulk.Range.Typical,
		RoomKg:      p.iceCapacityKg(),
		PortionKg:   float64(ice.UnitSize),
		CarryKg:     float64(ice.CarryLimit),
		CarryLoss:   float64(ice.CarryLoss),
		FoundShare:  float64(ice.FoundAtStops),
		WaterKept:   p.boat.Box.Drain == heat.NoDrain,
		Precooled:   p.fit.Habit || p.boat.Cruising.BeforeTrip != Warm,
	}
	if ice.FirstLoad == FromHome {
		out.HomeKg = homeFreezerKg
	}
	return out
}

// homeFreezerKg is what a home freezer gives a trip. Engineering judgement, from memory.
const homeFreezerKg = 10

// SeesShore tells whether the boat is ever on shore power, so that a box can be
// cooled there before a trip; else it is left running on its own sun.
func (b Boat) SeesShore() bool { return b.Cruising.ShorePowerShare > 0 }

// refrigerator prepares the unit of a future.
func (p *proposal) refrigerator(f *Future) season.Refrigerator {
	r := season.Refrigerator{Cycle: p.compressor(f).Cycle(), SeaCooled: p.unit.CooledBy == energy.Seawater}
	switch {
	case p.boat.Cruising.BeforeTrip == Precooled, p.fit.Habit && p.boat.SeesShore():
		r.Start = season.StartOnShore
	case p.boat.Cruising.BeforeTrip == Running, p.fit.Habit:
		r.Start = season.StartOnOwnSun
	}
	if p.unit.Plate == energy.Eutectic {
		r.StoreKJ = energy.EutecticMass().Typical * energy.EutecticLatent().Typical * energy.EutecticUsable().Typical
	}
	return r
}

// compressor gives the unit itself: as told, or as the maker's average current
// and box size let one infer.
func (p *proposal) compressor(f *Future) energy.Unit {
	u := energy.Unit{RatedW: p.unit.RatedCooling, Eta: energy.Eta().Typical, CooledBy: p.condenser(), Plate: p.unit.Plate}
	if p.rating != nil {
		u.RatedW = quantity.Watt(p.rating.Cooling.Typical)
		u.Eta = p.rating.Eta.Typical
	}
	u.RatedW *= quantity.Watt(f.Capacity)
	u.Eta *= f.Eta
	return u
}

// aYear is what an average year aboard takes and gives, over the years simulated.
type aYear struct {
	nights, coldDays, warmDays   float64
	coldShare                    float64 // of days aboard
	hoursOver5                   float64
	longestOff                   float64 // hours, of any year
	warmestC                     float64 // passed in warmShare of the hours
	iceBoughtKg                  float64
	errands                      float64
	unitWh                       float64 // electricity the unit took
	shoreKWh, engineKWh, wearKWh float64 // because of the option
	lowestShare                  float64 // of the usable charge, at the emptiest
}

// warmShare is the part of the hours that may be warmer than the warmest food
// which cautions judge by.
const warmShare = 0.02

// average reads a tally of so many years; base is the same years without cooling.
func (p *proposal) average(t, base *season.Tally, years, usableWh float64) aYear {
	y := aYear{
		nights:      float64(t.Nights) / years,
		coldDays:    float64(t.ColdDays) / years,
		coldShare:   t.ColdShare(),
		hoursOver5:  float64(t.HoursOver5) / years,
		longestOff:  float64(t.LongestOff),
		iceBoughtKg: t.IceBoughtKg / years,
		errands:     float64(t.Errands) / years,
		unitWh:      t.UnitWh / years,
		shoreKWh:    max(0, t.ShoreWh-base.ShoreWh+t.PullDownShoreWh) / years / 1000,
		engineKWh:   max(0, t.EngineWh-base.EngineWh) / years / 1000,
		wearKWh:     max(0, t.DrawnWh-base.DrawnWh) / years / 1000,
	}
	y.warmDays = y.nights - y.coldDays
	if usableWh > 0 {
		y.lowestShare = t.LowestWh / usableWh
	}
	y.warmestC, _ = t.WarmestC(warmShare)
	return y
}
