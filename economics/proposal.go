package economics

import (
	"math"

	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/economics/season"
)

const (
	// Part of the box, beside ice or plate, that is air when it is stowed.
	// Engineering judgement, from memory.
	airShare = 0.5
	// An insulating cover over the contents halves the air that an opening
	// exchanges. Engineering judgement, from memory.
	coverSwap = 0.5
	// Room that plate and lines take, L. Engineering judgement, from memory.
	thinPlateL, eutecticPlateL = 4, 12
	// Room a kilogram of stowed food needs, L. Engineering judgement, from memory.
	stowageLPerKg = 2.0
	// Drinks wanted cold, three cans of 12 oz a person a day, and how warm
	// perishables are when they are stowed, °C. Engineering judgement, from memory.
	drinksKgPerPersonDay = 3 * 0.35
	stowedC              = 8
)

// proposal is one option on one boat with one fit-out: what futures are put to.
type proposal struct {
	boat   *Boat
	book   *Book
	world  *world
	option OptionID
	fit    FitOut
	fitted bool // whether this is the fitted case, for the facts

	unit      *Unit // nil for ice and dry stores
	walls     heat.Conductance
	volumeL   float64
	leakScale float64 // measured over drawn
	foamM2    float64
	swap      float64         // part of the free air that one opening exchanges
	use       float64         // of food and openings: what logs have shown over what the answers say
	rating    *energy.Meaning // what the maker's words mean; nil when not told
}

// newProposal prepares an option. It fails when the foam leaves no room.
func newProposal(b *Boat, book *Book, w *world, leakScale float64, option OptionID, fit FitOut) (*proposal, error) {
	p := &proposal{boat: b, book: book, world: w, option: option, fit: fit, leakScale: leakScale, use: b.Evidence.Use().Typical}
	switch option {
	case SmallUnit:
		p.unit = &b.Small
	case LargerUnit:
		p.unit = &b.Larger
	}
	if p.unit != nil {
		p.rating = p.readRating()
	}
	spec, foamM2, err := fit.apply(b.Box)
	if err != nil {
		return nil, err
	}
	p.foamM2 = foamM2
	lid := b.Box.Lid
	if p.freeStanding() {
		spec, p.leakScale, p.foamM2, lid = chestSpec(p.unit.ChestVolume), 1, 0, heat.TopLid
	}
	swap, err := heat.SwapShare(lid)
	if err != nil {
		return nil, err
	}
	p.swap = swap.Range.Typical
	if p.walls, err = spec.Conductance(); err != nil {
		return nil, err
	}
	p.walls.Parts = nil // futures scale the whole, again and again
	p.walls = p.walls.Scale(p.leakScale)
	p.volumeL = float64(spec.Inside.Volume())
	return p, nil
}

func (p *proposal) freeStanding() bool { return p.unit != nil && p.unit.Form == FreeStanding }

// coldKgPerDay gives the food of the whole crew that goes into the cold space.
func (p *proposal) coldKgPerDay() float64 {
	f := p.boat.Food
	return p.boat.Cruising.Crew * float64(f.KgPerPersonDay) * float64(f.MustBeColdShare)
}

func (p *proposal) shopEvery() int { return max(1, int(math.Round(p.boat.Cruising.ShopEveryDays))) }

// takenL gives the room that ice or plate takes from the food.
func (p *proposal) takenL() float64 {
	switch {
	case p.option == IceOnly:
		return p.volumeL * float64(p.boat.Ice.ShareOfBox)
	case p.unit == nil || p.freeStanding():
		return 0
	case p.unit.Plate == energy.Eutectic:
		return eutecticPlateL
	}
	return thinPlateL
}

func (p *proposal) condenser() energy.Condenser {
	if p.fit.Vent && p.unit.CooledBy == energy.Fins {
		return energy.Fan
	}
	return p.unit.CooledBy
}

// setup prepares the season of a future.
func (p *proposal) setup(f *Future) season.Setup {
	b := p.boat
	swap := p.swap
	if p.fit.Cover {
		swap *= coverSwap
	}
	use := p.use * f.Use
	goods := season.Goods{
		PerishableKgPerDay: p.coldKgPerDay() * use, DrinksKgPerDay: b.Cruising.Crew * drinksKgPerPersonDay * use,
		ShopEveryDays: p.shopEvery(), StowedC: stowedC,
	}
	trip := max(1, int(math.Round(b.Cruising.TripNights)))
	stowed := heat.StowedKJPerK(quantity.Litre(p.volumeL), b.Box.shape().Volume(), 1)
	limitC, coolC := season.Limits(b.Food.Target, false)
	return season.Setup{
		Plan:        p.world.plan,
		Months:      &p.world.months,
		CabinOffset: b.Box.CabinOffset + quantity.Kelvin(f.CabinK),
		Box: season.Box{
			Leak:        p.walls.Scale(f.Leak),
			OpensPerDay: b.Box.OpensPerDay * use,
			SwappedL:    swap * airShare * max(0, p.volumeL-p.takenL()),
			HeatKJPerK: float64(heat.InUseKJPerK(stowed, quantity.Kilogram(goods.MeanPerishablesKg(trip)),
				quantity.Kilogram(goods.DrinksKgPerDay))),
		},
		Goods:      goods,
		TargetC:    float64(b.Food.Target),
		LimitC:     limitC,
		CoolLimitC: coolC,
		Power:      p.power(f),
	}
}

// bank gives the boat's battery, additions included, in a future.
func (p *proposal) bank(f *Future) energy.Store {
	pw := p.boat.Power
	old := energy.Bank{Nominal: pw.Battery, Volts: pw.Volts, Chemistry: pw.Chemistry, Age: pw.BatteryAge}.Store()
	added := energy.Bank{Nominal: p.fit.Battery, Volts: pw.Volts, Chemistry: pw.Chemistry}.Store()
	left := quantity.WattHour(f.Battery)
	return energy.Store{
		FullWh:           old.FullWh*left + added.FullWh,
		RestartWh:        old.RestartWh*left + added.RestartWh,
		ChargeEfficiency: old.ChargeEfficiency,
	}
}

func (p *proposal) power(f *Future) season.Power {
	pw := p.boat.Power
	bank := energy.Bank{Volts: pw.Volts, Chemistry: pw.Chemistry}
	panel := energy.Panel{Wp: pw.SolarWp + p.fit.PanelWp, Mounting: pw.Mounting, Controller: pw.Controller}
	panel.Wp *= quantity.Watt(f.Sun)
	return season.Power{
		Panel:       panel.Chain(),
		Bank:        p.bank(f),
		HouseW:      float64(bank.Energy(pw.OtherLoads)) / 24 * f.House,
		EngineW:     float64(bank.EngineW(pw.EngineAmps)),
		EngineHours: pw.EngineHoursPerDay,
		ShoreShare:  float64(p.boat.Cruising.ShorePowerShare),
	}
}
