package season

import (
	"math"

	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
)

// IceLasts gives the hours from a trip's first noon until less than leftShare,
// over 0 and under 1, of a load of kg, over 0, is left, in the mean weather of a
// month, 0 for January, without end where that takes longer than mostHours, over
// 0, or than the month. It is the season's own loop, with nothing bought later.
// ice tells how the box starts and what the ice is; with HomeKg over 0 all of it
// is from home.
func (s *Setup) IceLasts(month int, ice Icing, kg, leftShare, mostHours float64) float64 {
	// So many nights that food is stowed to the end as on a longer trip.
	nights := min(float64(climate.DaysIn(month+1)), math.Ceil(mostHours/24)+float64(min(s.Goods.ShopEveryDays, mostStowedDays)))
	alone, by := *s, [12]float64{}
	by[month] = nights
	alone.Plan = NewPlan(by, nights)
	// No sun and no offset: the bank is of no interest, the weather is the mean.
	days := int(nights)
	w := Weather{SunKWh: make([]float64, days+1), AirK: make([]float64, days+1), Stops: make([]float64, days)}
	var air Air
	alone.Plan.FillAir(&air, &w, s.Months, s.CabinOffset, energy.Chain{}, s.Power.EngineHours)

	// All of the load is wanted and fits, and no later stop sells any.
	if ice.HomeKg > 0 {
		ice.HomeKg = kg
	}
	ice.RoomKg, ice.PortionKg, ice.FirstCarryKg, ice.CarryLoss, ice.FoundShare, ice.Runs = kg, kg/1000, 0, 0, 0, false
	plan := alone.IcePlan(ice)
	plan.FloorKg[month] = kg
	var t Tally
	trace := Trace{Hours: make([]Hour, 0, 24*days)}
	alone.Ice(&air, &plan, &t, &trace)
	gone := leftShare * kg
	for i, h := range trace.Hours {
		if h.IceKg < gone {
			if hours := float64(i) + 1 - (gone-h.IceKg)/h.MeltedKg; hours <= mostHours {
				return hours
			}
			break
		}
	}
	return math.Inf(1)
}
