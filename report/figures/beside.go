package figures

import (
	"math"

	"coldreckon/economics"
)

// Beside is what stands beside the four ways and joins none of their counts.
type Beside struct {
	Cooler     *Cooler    `json:"cooler"`        // ice in a passive cooler; null where it has no place
	Drinks     *Drinks    `json:"drinks_cooler"` // null where the drinks are in the box
	Freezing   []Freezing `json:"freezing"`
	ByDay      *ByDay     `json:"by_day"`            // null where no unit would be run by day only
	SunWhPerWp Number     `json:"sun_wh_per_wp_day"` // hottest month aboard; null without nights aboard
	WhyNot     *WhyNot    `json:"why_not"`           // null without nights aboard
	Alarm      *Alarm     `json:"alarm"`             // null where no food must be kept cold
}

// Alarm is a thermometer with an alarm, against the food that it saves.
type Alarm struct {
	PriceLow  Number `json:"price_low"`
	Price     Number `json:"price_typical"`
	PriceHigh Number `json:"price_high"`
	FoodKg    Number `json:"food_aboard_kg"`
	FoodWorth Number `json:"food_worth"`
	Stops     Number `json:"pays_after_stops"`
}

// Cooler is ice in a passive cooler in place of the box.
type Cooler struct {
	Stands       string    `json:"stands"`
	VolumeL      Number    `json:"volume_l"`
	WallMm       Number    `json:"wall_mm"`
	Price        Number    `json:"price"`
	UA           Number    `json:"ua_w_per_k"`
	LoadKg       Number    `json:"load_kg"`
	LastsDays    Number    `json:"load_lasts_days"` // null beyond three weeks
	BoxLoadKg    Number    `json:"box_load_kg"`
	BoxLastsDays Number    `json:"box_load_lasts_days"`
	Works        int       `json:"works_of_100"`
	ColdShare    Number    `json:"cold_share"`
	CoolShare    Number    `json:"cool_share"`
	IceKg        Number    `json:"ice_bought_kg"` // a year
	First        Number    `json:"first_cost"`
	PerYear      Number    `json:"per_year"`
	Yearly       Number    `json:"yearly_equivalent"`
	Price100     Price     `json:"price_of_cold"`
	Pieces       []FitWork `json:"pieces"`
}

// Drinks is a cooler for the drinks beside any way, counted in none of them.
type Drinks struct {
	OpensFewer Number         `json:"box_opens_fewer_per_day"`
	UA         Number         `json:"ua_w_per_k"`
	Price      Number         `json:"price"`
	IceKg      Number         `json:"ice_bought_kg"` // a year
	IceCost    Number         `json:"ice_per_year"`
	CoolShare  Number         `json:"cool_share"`
	Works      map[string]int `json:"works_of_100"` // by way, over a part of the futures
	Together   map[string]int `json:"with_drinks_in_box_works_of_100"`
}

// FitWork is a piece of work or a habit by its id and size.
type FitWork struct {
	ID   string `json:"id"`
	Size Number `json:"size"`
}

// Freezing is what a wish for something frozen takes with a unit, steady, in the
// hottest month aboard.
type Freezing struct {
	Option   string `json:"option"`
	Wish     string `json:"wish"`
	AhPerDay Number `json:"ah_per_day"`
	MoreAh   Number `json:"more_ah_per_day"`
	RunShare Number `json:"run_share"`
	PlateC   Number `json:"plate_c"`
	CornerL  Number `json:"corner_l"`
	PanelWp  Number `json:"panel_wp"`
}

// ByDay is in how many of 100 futures the small unit works with its work.
type ByDay struct {
	Always  int `json:"always_works_of_100"`
	Alone   int `json:"by_day_works_of_100"`
	Bottles int `json:"with_bottles_works_of_100"`
}

// WhyNot is what ways that are not weighed would take, in the hottest month aboard.
type WhyNot struct {
	HouseholdWh    Number `json:"household_fridge_wh_per_day"`
	InverterIdleWh Number `json:"inverter_idle_wh_per_day"`
	ThermoA        Number `json:"thermoelectric_a"`
	ThermoAh       Number `json:"thermoelectric_ah_per_day"`
	ThermoC        Number `json:"thermoelectric_box_c"`
	IceMakerKg     Number `json:"ice_maker_kg_per_day"`
	IceMakerWh     Number `json:"ice_maker_wh_per_day"`
	EngineHours    Number `json:"engine_plates_hours_per_day"`
	EngineYear     Number `json:"engine_plates_hours_per_year"`
	DryIceKg       Number `json:"dry_ice_kg_per_day"`
	DryIceGas      Number `json:"dry_ice_gas_m3_per_day"`
}

func besideOf(r *economics.Reckoning, book economics.Book) Beside {
	out := Beside{Freezing: []Freezing{}, SunWhPerWp: when(len(r.Months) > 0, r.SunWhPerWp)}
	if c := r.Cooler; c != nil {
		b, o := r.Boat.Cooler, &c.Ice
		days := func(x float64) Number { return when(!math.IsInf(x, 0), x) }
		kg, _ := o.Fitted.IceBoughtKg()
		out.Cooler = &Cooler{
			Stands: string(b.Stands), VolumeL: Number(b.Volume), WallMm: Number(1000 * b.Wall), Price: Number(b.Price), UA: Number(c.LeakW),
			LoadKg: Number(c.LoadKg), LastsDays: days(c.LastsDays), BoxLoadKg: Number(c.BoxLoadKg), BoxLastsDays: days(c.BoxLastsDays),
			Works: o.WorksOf100, ColdShare: fact(&o.Fitted, "cold_share"), CoolShare: fact(&o.Fitted, "cool_share"), IceKg: Number(kg),
			First: Number(o.Fitted.First), PerYear: Number(o.Fitted.PerYear), Yearly: Number(o.Fitted.Yearly),
			Price100: Price{Number(o.PriceOfCold.Low), Number(o.PriceOfCold.Typical), Number(o.PriceOfCold.High)}, Pieces: []FitWork{},
		}
		for _, item := range o.Fit.Items {
			out.Cooler.Pieces = append(out.Cooler.Pieces, FitWork{string(item.Piece), Number(item.Size)})
		}
	}
	if d := r.Drinks; d != nil {
		out.Drinks = &Drinks{Number(d.OpensFewer), Number(d.LeakW), Number(r.Boat.Cooler.Price), Number(d.IceKg), Number(d.IceCost), Number(d.CoolShare), map[string]int{}, map[string]int{}}
		for i, id := range economics.Options {
			out.Drinks.Works[string(id)], out.Drinks.Together[string(id)] = d.Apart[i], d.Together[i]
		}
	}
	for _, f := range r.Freezing {
		out.Freezing = append(out.Freezing, Freezing{string(f.Option), string(f.Wish), Number(f.AhPerDay), Number(f.MoreAh), Number(f.RunShare),
			Number(f.PlateC), Number(f.CornerL), when(f.PanelWp > 0, f.PanelWp)})
	}
	if d := r.ByDay; d != nil {
		out.ByDay = &ByDay{d.Always, d.Alone, d.Bottles}
	}
	if a, ok := r.Alarm(book); ok {
		out.Alarm = &Alarm{Number(a.Price.Low), Number(a.Price.Typical), Number(a.Price.High), Number(a.FoodKg), Number(a.FoodWorth.Typical), Number(a.Stops)}
	}
	if w, ok := r.WhyNot(); ok {
		out.WhyNot = &WhyNot{Number(w.HouseholdWhPerDay), Number(w.InverterIdleWhPerDay), Number(w.ThermoelectricA), Number(w.ThermoelectricAhPerDay),
			Number(w.ThermoelectricBoxC), Number(w.IceMakerKgPerDay), Number(w.IceMakerWhPerDay), Number(w.EngineHoursPerDay), Number(w.EngineHoursPerYear),
			Number(w.DryIceKgPerDay), Number(w.DryIceGasM3PerDay)}
	}
	return out
}
