package season

import (
	"math"

	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Icing is how ice is bought and what it does in the box.
type Icing struct {
	Surface    heat.Surface // of a full load, and how it shrinks
	PortionKg  float64      // one bag or block, over 0; purchases are whole ones
	CarryKg    float64      // most that can be fetched at one stop
	CarryLoss  float64      // share melted on the way, 0 or more and under 1
	FoundShare float64      // share of stops that sell it, 0 to 1
	FromHome   bool         // a trip's first load is frozen at home, at -18 °C, and not billed
	WaterKept  bool         // meltwater stays and warms with the food; else it leaves at 2 °C
	// ColdStart has the first load put in the day before: the box is at its
	// target when the trip starts, and the ice has paid for it.
	ColdStart  bool
	MeltKgADay [12]float64 // what the owner reckons with, by month, January first
	FloorKg    [12]float64 // least ice that still holds the exam's limit, likewise
	PullDownKg [12]float64 // what a warm box melts at a trip's start, likewise
}

// purchaseMargin is what an owner buys over what the gap is reckoned to melt.
// Engineering judgement, from memory.
const purchaseMargin = 1.2

// Ice runs the season on ice, adds it to t, and writes its hours to trace
// unless that is nil.
//
// Ice cools by its surface's conductance times the food's temperature, so food
// warms as the ice shrinks. Gain, ice and what the contents store balance in
// every hour at the food temperature of the hour's end; the pull-down of a warm
// box is thus paid in ice and takes its hours. Without ice the box drifts.
//
// At each stop that sells ice the owner buys 1.2 times what the days to the
// next such stop are reckoned to melt, plus the load below which the food
// would pass the limit, less what is left, all at the rate of the day's month,
// and at a trip's start what the warm box melts: so many whole portions that
// this is aboard after the loss on the way, no more than fit or can be carried.
// The first load of a trip is always to be had; from home it is carried and
// loses the same. Of the year's later stops the share that sells ice is spread
// evenly, as nights on shore are.
func (s *Setup) Ice(air *Air, ice Icing, t *Tally, trace *Trace) {
	t.begin(s)
	s.eachTrip(air, func(tr *tripRun) { s.iceTrip(tr, &ice, t, trace) })
}

func (s *Setup) iceTrip(tr *tripRun, ice *Icing, t *Tally, trace *Trace) {
	b, walls := s.Power.fullBank(), s.walls()
	foodC := tr.hours[0].cabinC
	heatKJPerK, leakWPerK := s.Box.HeatKJPerK, float64(s.Box.Leak.Total())
	var iceKg, coldKJ float64 // ice left, and the cold of a load below freezing
	for day := range tr.nights {
		d := tr.day(day)
		iceKg, coldKJ = s.buy(tr, day, d.month, iceKg, coldKJ, ice, t)
		if day == 0 && ice.ColdStart {
			foodC, iceKg, coldKJ = s.chill(foodC, iceKg, coldKJ, t)
		}
		var gainWh, meltKg float64
		for i := range d.hours {
			a, h := &d.hours[i], clock(i)
			// Openings are reckoned at the last hour's food; the rest at this one's.
			goods := 0.0
			if i < stowHours {
				goods = d.stowWPerK
			}
			slope := leakWPerK + goods
			fixedW := walls.leakW(a, d.seaC, 0) + goods*a.cabinC + walls.openingW(a, foodC)
			wasC := foodC

			cooledKJ, meltedKg := 0.0, 0.0
			if iceKg > 0 {
				surface := float64(ice.Surface.WPerK(quantity.Kilogram(iceKg)))
				foodC = (heatKJPerK*wasC + 3.6*fixedW) / (heatKJPerK + 3.6*(slope+surface))
				leavesC := heat.DrainCelsius
				if ice.WaterKept {
					leavesC = quantity.Celsius(max(0, foodC))
				}
				perKgKJ := heat.MeltKJPerKg(leavesC)
				if foodC > 0 {
					cooledKJ = 3.6 * surface * foodC
				}
				meltKJ := cooledKJ
				if coldKJ > 0 {
					meltKJ = max(0, cooledKJ-coldKJ)
					coldKJ -= cooledKJ - meltKJ
				}
				meltedKg = meltKJ / perKgKJ
				if meltedKg > iceKg-1e-9 {
					// The last of the ice: the box takes the rest of the hour's heat.
					cooledKJ -= (meltedKg - iceKg) * perKgKJ
					meltedKg = iceKg
				}
				iceKg -= meltedKg
			}
			// The balance of the hour decides where the food really ends.
			foodC = (heatKJPerK*wasC + 3.6*fixedW - cooledKJ) / (heatKJPerK + 3.6*slope)
			gainW := fixedW - slope*foodC
			t.CooledKJ += cooledKJ
			t.StoredKJ += heatKJPerK * (foodC - wasC)
			gainWh += gainW
			meltKg += meltedKg

			sup := s.Power.supplyAt(a, h, d.shore)
			shoreW := b.step(sup, 0, t)
			t.hour(foodC, s.LimitC, iceKg > 0, d.settled)
			if trace != nil {
				trace.add(Hour{Trip: tr.index, Hour: 24*day + i, Clock: h, Month: d.month, CabinC: a.cabinC, FoodC: foodC,
					GainW: gainW, CooledW: cooledKJ / 3.6, SunW: sup.sunW, ShoreW: shoreW, ChargeWh: b.wh, IceKg: iceKg})
			}
		}
		t.GainWhBy[d.month] += gainWh
		t.MeltKgBy[d.month] += meltKg
		t.GainKJ += 3.6 * gainWh
		b.closeDay(s.Power.HouseW, 0, t)
		t.endDay(d.month)
	}
	t.IceLostKg += iceKg
	t.endTrip()
}

// chill has the first load bring the box to its target before the trip, as far
// as it goes.
func (s *Setup) chill(foodC, iceKg, coldKJ float64, t *Tally) (c, kg, kJ float64) {
	perKgKJ := heat.MeltKJPerKg(heat.DrainCelsius)
	cooledKJ := min(s.Box.HeatKJPerK*max(0, foodC-s.TargetC), coldKJ+iceKg*perKgKJ)
	fromCold := min(coldKJ, cooledKJ)
	melted := (cooledKJ - fromCold) / perKgKJ
	t.CooledKJ += cooledKJ
	t.StoredKJ -= cooledKJ
	t.ChilledKg += melted
	return foodC - cooledKJ/s.Box.HeatKJPerK, iceKg - melted, coldKJ - fromCold
}

// buy books what is bought at noon of the trip's given day.
func (s *Setup) buy(tr *tripRun, day, month int, iceKg, coldKJ float64, ice *Icing, t *Tally) (kg, kJ float64) {
	if !ice.sells(tr, day) {
		return iceKg, coldKJ
	}
	gap := 1
	for day+gap < tr.nights && !ice.sells(tr, day+gap) {
		gap++
	}
	want := purchaseMargin*float64(gap)*ice.MeltKgADay[month] + ice.FloorKg[month] - iceKg
	if day == 0 {
		want += ice.PullDownKg[month]
	}
	keeps := 1 - ice.CarryLoss
	most := min(ice.CarryKg*keeps, float64(ice.Surface.FullKg)-iceKg)
	portions := math.Ceil(min(want, most)/(ice.PortionKg*keeps) - 1e-9)
	if portions*ice.PortionKg*keeps > most {
		portions = math.Floor(most/(ice.PortionKg*keeps) + 1e-9)
	}
	if portions <= 0 {
		return iceKg, coldKJ
	}
	fetched := portions * ice.PortionKg
	aboard := fetched * keeps
	t.IceLostKg += fetched - aboard
	if day == 0 && ice.FromHome {
		t.IceHomeKg += fetched
		return iceKg + aboard, coldKJ + float64(heat.FreezerBonusKJ(quantity.Kilogram(aboard), heat.FreezerCelsius))
	}
	t.IceBoughtKg += fetched
	t.Errands++
	return iceKg + aboard, coldKJ
}

// sells tells whether the stop on a trip's day sells ice: the first always,
// later ones on shop days, spread evenly over the year to the stated share.
func (ice *Icing) sells(tr *tripRun, day int) bool {
	shopEvery := tr.s.Goods.ShopEveryDays
	if day == 0 {
		return true
	}
	if day%shopEvery != 0 {
		return false
	}
	stop := float64(tr.stops + day/shopEvery)
	return math.Floor(stop*ice.FoundShare+0.5) > math.Floor((stop-1)*ice.FoundShare+0.5)
}
