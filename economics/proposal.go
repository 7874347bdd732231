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
	thinPlateL, eutecticPlateL = 5, 12
	// Room a kilogram of stowed food or drink needs, L. Engineering judgement, from memory.
	stowageLPerKg = 2.0
	// Room taken by what lives in a box: jars, bottles, L per L of the box as
	// told. Engineering judgement, from memory.
	residentShare = 0.2
	// A can of drink with what it holds, kg: 12 US fl oz and the tin.
	canKg = 0.35
	// Perishables are so warm when they are stowed, °C: from a shop's cold shelf
	// or a fridge at home. Engineering judgement, from memory.
	stowedC = 8
	// Perishables are stowed for so many days at most; past that the crew eats
	// what keeps. US FDA Food Code 3-501.17: seven days.
	mostDaysStowed = 7
)

// proposal is one option on one boat with one fit-out: what futures are put to.
type proposal struct {
	boat   *Boat
	book   *Book
	world  *world
	option OptionID
	fit    FitOut
	fitted bool // whether this is the fitted case, for the facts

	unit   *Unit  // nil for ice and dry stores
	quoted *Offer // the offer that the unit is; nil when it is none
	// walls by what turns out to be behind the liner, see FoamCase.
	walls     [foamCases]heat.Conductance
	volumeL   float64 // of the cold space
	toldL     float64 // of the cold space before any work
	leakScale float64 // measured over drawn
	foamM2    float64
	swap      float64         // part of the free air that one opening exchanges
	use       float64         // of food, drinks and openings: what logs have shown over what the answers say
	rating    *energy.Meaning // what the maker's words mean; nil when not told
}

// newProposal prepares an option. It fails when the foam leaves no box.
func newProposal(b *Boat, book *Book, w *world, leakScale float64, option OptionID, fit FitOut) (*proposal, error) {
	p := &proposal{boat: b, book: book, world: w, option: option, fit: fit, unit: b.unit(option), leakScale: leakScale, use: b.Evidence.Use().Typical}
	if p.unit != nil {
		p.rating, p.quoted = p.readRating(), p.offer()
	}
	p.toldL = float64(b.Box.shape().Volume())
	lid := b.Box.Lid
	if p.freeStanding() {
		lid, p.leakScale, p.toldL = heat.TopLid, 1, float64(p.unit.ChestVolume)
	}
	swap, err := heat.SwapShare(lid)
	if err != nil {
		return nil, err
	}
	p.swap = swap.Range.Typical
	if fit.Cover || b.Box.Cover == quantity.Yes && !p.freeStanding() {
		p.swap *= coverSwap
	}
	for foam := range p.walls {
		if foam > 0 && !b.mayBeUnlined() {
			p.walls[foam] = p.walls[FoamAsTold]
			continue
		}
		box := b.Box.turningOut(FoamCase(foam))
		spec, foamM2, err := fit.apply(box)
		if p.freeStanding() {
			spec, foamM2, err = chestSpec(p.unit.ChestVolume), 0, nil
		}
		if err != nil {
			return nil, err
		}
		walls, err := spec.Conductance()
		if err != nil {
			return nil, err
		}
		walls.Parts = nil // futures scale the whole, again and again
		p.walls[foam] = walls.Scale(p.leakScale)
		p.foamM2, p.volumeL = foamM2, float64(spec.Inside.Volume())
	}
	return p, nil
}

// with gives the proposal with the other work that does not touch the box.
func (p *proposal) with(other FitOut) *proposal {
	q := *p
	q.fit = p.fit.with(other)
	return &q
}

func (p *proposal) freeStanding() bool { return p.unit != nil && p.unit.Form == FreeStanding }

// leak is what the cold space leaks with its foam as told.
func (p *proposal) leak() *heat.Conductance { return &p.walls[FoamAsTold] }

// perishableKgPerDay gives the food of the whole crew that spoils without cooling.
func (b *Boat) perishableKgPerDay() float64 {
	return b.Cruising.Crew * float64(b.Food.KgPerPersonDay) * float64(b.Food.MustBeColdShare)
}

// drinksKgPerDay gives what the whole crew drinks cold out of the box.
func (b *Boat) drinksKgPerDay() float64 {
	if b.drinksApart() {
		return 0
	}
	return b.Cruising.Crew * b.Food.DrinksADay * canKg
}

func (b *Boat) shopEvery() int { return max(1, int(math.Round(b.Cruising.ShopEveryDays))) }

// gapDays gives the days for which perishables are stowed at once.
func (b *Boat) gapDays() float64 {
	return min(float64(b.shopEvery()), max(1, math.Round(b.Cruising.TripNights)), mostDaysStowed)
}

// perishablesKg gives the mean of what is aboard between two stops.
func (b *Boat) perishablesKg() float64 { return b.perishableKgPerDay() * b.gapDays() / 2 }

// goesInL gives the room that has to be left beside ice or plate: for the food
// of one gap, a day's drinks and what lives in the box.
func (p *proposal) goesInL() float64 {
	b := p.boat
	litres := stowageLPerKg * (b.perishableKgPerDay()*b.gapDays() + b.drinksKgPerDay())
	if !p.freeStanding() { // the old box stays a cupboard for what keeps
		litres += residentShare * p.toldL
	}
	return litres
}

// takenL gives the room that ice or plate takes from the food.
func (p *proposal) takenL() float64 {
	switch {
	case p.option == IceOnly:
		return p.volumeL * float64(p.iceShare())
	case p.unit == nil:
		return 0
	case p.fit.Bottles:
		return thinPlateL + bottlesL + p.corner().litres
	case p.freeStanding():
		return p.corner().litres
	case p.unit.Plate == energy.Eutectic:
		return eutecticPlateL + p.corner().litres
	}
	return thinPlateL + p.corner().litres
}

// iceShare gives the part of the box given to ice.
func (p *proposal) iceShare() quantity.Fraction {
	if p.fit.IceShare > 0 {
		return p.fit.IceShare
	}
	return p.boat.Ice.ShareOfBox
}

// hasRoom tells whether all that has to go in goes in.
func (p *proposal) hasRoom() bool { return p.volumeL-p.takenL() >= p.goesInL()-1e-6 }

func (p *proposal) condenser() energy.Condenser {
	if p.fit.Vent {
		return energy.Fan
	}
	return p.unit.CooledBy
}

// setup prepares the season of a future.
func (p *proposal) setup(f *Future) season.Setup {
	b := p.boat
	use := p.use * f.Use
	goods := season.Goods{
		PerishableKgPerDay: b.perishableKgPerDay() * use, DrinksKgPerDay: b.drinksKgPerDay() * p.use * f.Drinks,
		ShopEveryDays: b.shopEvery(), StowedC: stowedC,
	}
	stowed := heat.StowedKJPerK(quantity.Litre(p.volumeL), quantity.Litre(p.toldL), f.Stow)
	perishables := goods.MeanPerishablesKg(max(1, int(math.Round(b.Cruising.TripNights))))
	leak := p.walls[f.Foam]
	leak.Cabin += quantity.WattPerKelvin(p.cornerWPerK())
	limitC, coolC := season.Limits(b.Food.Target, b.CoolDecides())
	return season.Setup{
		Plan:        p.world.plan,
		Months:      &p.world.months,
		CabinOffset: b.Box.CabinOffset + quantity.Kelvin(f.CabinK),
		Box: season.Box{
			Leak:        leak.Scale(f.Leak),
			OpensPerDay: b.opensPerDay() * use,
			SwappedL:    p.swap * airShare * max(0, p.volumeL-p.takenL()),
			HeatKJPerK:  float64(heat.InUseKJPerK(stowed, quantity.Kilogram(perishables), quantity.Kilogram(goods.DrinksKgPerDay))),
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
	bank := pw.Bank()
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
