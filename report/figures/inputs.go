package figures

import (
	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Inputs echoes the boat that was reckoned, defaults filled in.
type Inputs struct {
	Cruising CruisingInputs        `json:"cruising"`
	Box      BoxInputs             `json:"box"`
	Evidence EvidenceInputs        `json:"evidence"`
	Food     FoodInputs            `json:"food"`
	Ice      IceInputs             `json:"ice"`
	Power    PowerInputs           `json:"power"`
	Money    MoneyInputs           `json:"money"`
	Units    map[string]UnitInputs `json:"units_considered"` // small, larger
	Safety   SafetyInputs          `json:"safety"`
	// Known maps a key of the answers file to how its value is known:
	// unsure, told or measured. A key that is absent was assumed.
	Known map[string]quantity.How `json:"known"`
}

// CruisingInputs is where, when and with whom.
type CruisingInputs struct {
	Ground     string     `json:"ground"`
	Nights     [12]Number `json:"nights_by_month"` // January first
	TripNights Number     `json:"trip_nights"`
	ShopEvery  Number     `json:"shop_every_days"`
	ShoreShare Number     `json:"shore_power_share"`
	BeforeTrip string     `json:"before_trip"`
	Crew       Number     `json:"crew_people"`
}

// BoxInputs is the ice box.
type BoxInputs struct {
	VolumeL     Number                `json:"volume_l"`
	InsideMm    *[3]Number            `json:"inside_mm"` // length, width, height; null when only a volume is known
	OpensPerDay Number                `json:"opens_per_day"`
	Lid         string                `json:"lid"`
	LidSeal     string                `json:"lid_seal"`
	LidOpening  *[2]Number            `json:"lid_opening_mm"` // null when not told
	Drain       string                `json:"drain"`
	Faces       map[string]FaceInputs `json:"faces"`
	FittedUnit  string                `json:"fitted_unit"`
	FoamThere   string                `json:"foam_there"`
	Cover       string                `json:"cover"`
	ChestFits   string                `json:"chest_fits"`
	OffsetK     Number                `json:"cabin_offset_k"`
}

// FaceInputs is one face of the box.
type FaceInputs struct {
	FoamMm    Number `json:"foam_mm"`
	Material  string `json:"material"`
	State     string `json:"state"`
	Neighbour string `json:"neighbour"`
	Reachable string `json:"reachable"`
}

// EvidenceInputs counts what the box has shown of itself; the estimates stand
// in the sheet's box.
type EvidenceInputs struct {
	IceTests   int `json:"ice_tests"`
	JugTests   int `json:"jug_tests"`
	IceHistory int `json:"ice_history"`
	Logs       int `json:"logs"`
}

// FoodInputs is what must be kept cold.
type FoodInputs struct {
	TargetC    Number `json:"target_c"`
	KgPerDay   Number `json:"kg_per_person_day"`
	ColdShare  Number `json:"must_be_cold_share"`
	Wanted     Number `json:"cold_days_wanted_share"`
	Drinks     Number `json:"drinks_per_person_day"`
	CoolEnough string `json:"cool_is_enough"`
	DryPremium Number `json:"dry_premium_per_person_night"`
	Medicine   string `json:"medicine"`
	Vulnerable string `json:"vulnerable"`
}

// IceInputs is how ice is bought.
type IceInputs struct {
	PricePerKg Number `json:"price_per_kg"`
	Kind       string `json:"kind"`
	UnitKg     Number `json:"unit_size_kg"`
	Found      Number `json:"found_at_stops_share"`
	FirstLoad  string `json:"first_load"`
	HomeKg     Number `json:"home_freezer_kg"`
	Runs       string `json:"ice_runs"`
	FirstCarry Number `json:"first_carry_kg"` // null: what fits
	TripCost   Number `json:"trip_cost"`
	CarryKg    Number `json:"carry_limit_kg"`
	CarryLoss  Number `json:"carry_loss_share"`
	BoxShare   Number `json:"share_of_box"`
}

// PowerInputs is the electrical system.
type PowerInputs struct {
	Volts       Number `json:"volts"`
	BatteryAh   Number `json:"battery_ah"`
	BatteryAgeY Number `json:"battery_age_years"`
	Chemistry   string `json:"chemistry"`
	SolarWp     Number `json:"solar_wp"`
	Mounting    string `json:"mounting"`
	Controller  string `json:"controller"`
	OtherAh     Number `json:"other_loads_ah_per_day"`
	EngineHours Number `json:"engine_hours_per_day"`
	EngineAmps  Number `json:"engine_a"`
	MaxPanelWp  Number `json:"max_panel_wp"`
	CableRunM   Number `json:"cable_run_m"`
	CableMm2    Number `json:"cable_size_mm2"` // null when not known
}

// MoneyInputs is the owner's terms.
type MoneyInputs struct {
	Budget       Number `json:"budget"` // null when no limit was told
	Years        Number `json:"years"`
	WillSell     string `json:"will_sell"`
	Discount     Number `json:"discount"`
	ColdDayWorth Number `json:"cold_day_worth"`    // null when not told
	WorthTo      Number `json:"cold_day_worth_to"` // the upper end; null unless a range was told
	FittedBy     string `json:"fitted_by"`
}

// UnitInputs is a unit under consideration.
type UnitInputs struct {
	Form     string `json:"form"`
	Price    Number `json:"price"`
	Fitting  Number `json:"fitting"`
	CoolingW Number `json:"rated_cooling_w"`
	Amps     Number `json:"rated_a"`     // null when not told
	BoxL     Number `json:"rated_box_l"` // null when not told
	CooledBy string `json:"cooled_by"`
	Plate    string `json:"plate"`
	LifeY    Number `json:"life_years"`
	Upkeep   Number `json:"upkeep_per_year"`
	ChestL   Number `json:"chest_volume_l"` // null unless free-standing
}

// SafetyInputs is the answers to the questions that are always asked.
type SafetyInputs struct {
	FuelVapour string `json:"fuel_vapour_space"`
	COAlarm    string `json:"co_alarm"`
	Lithium    string `json:"lithium"`
	DrainTo    string `json:"drain_to"`
	Children   string `json:"children"`
	Latch      string `json:"latch_opens_inside"`
	DryIce     string `json:"dry_ice"`
	Fish       string `json:"fish"`
	Eggs       string `json:"eggs"`
	Wiring     string `json:"wiring_known"`
	Unattended string `json:"left_unattended"`
}

func millimetre(m quantity.Metre) Number { return Number(1000 * m) }

// told gives a figure that counts only when it is above zero.
func told[T ~float64](x T) Number { return when(x > 0, float64(x)) }

func inputsOf(b *economics.Boat) Inputs {
	c, p, m, s := b.Cruising, b.Power, b.Money, b.Safety
	out := Inputs{
		Cruising: CruisingInputs{Ground: c.Ground, TripNights: Number(c.TripNights), ShopEvery: Number(c.ShopEveryDays),
			ShoreShare: Number(c.ShorePowerShare), BeforeTrip: string(c.BeforeTrip), Crew: Number(c.Crew)},
		Box:      boxInputs(b.Box),
		Evidence: EvidenceInputs{len(b.Evidence.IceTests), len(b.Evidence.JugTests), len(b.Evidence.IceHistory), len(b.Evidence.Logs)},
		Food: FoodInputs{Number(b.Food.Target), Number(b.Food.KgPerPersonDay), Number(b.Food.MustBeColdShare), Number(b.Food.ColdDaysWanted), Number(b.Food.DrinksADay),
			string(b.Food.CoolIsEnough), Number(b.Food.DryPremium),
			string(b.Food.Medicine), string(b.Food.Vulnerable)},
		Ice: IceInputs{Number(b.Ice.Price), string(b.Ice.Kind), Number(b.Ice.UnitSize), Number(b.Ice.FoundAtStops), string(b.Ice.FirstLoad),
			Number(b.Ice.HomeFreezer), string(b.Ice.Runs), told(b.Ice.FirstCarry),
			Number(b.Ice.TripCost), Number(b.Ice.CarryLimit), Number(b.Ice.CarryLoss), Number(b.Ice.ShareOfBox)},
		Power: PowerInputs{Volts: Number(p.Volts), BatteryAh: Number(p.Battery), BatteryAgeY: Number(p.BatteryAge), Chemistry: string(p.Chemistry),
			SolarWp: Number(p.SolarWp), Mounting: string(p.Mounting), Controller: string(p.Controller), OtherAh: Number(p.OtherLoads),
			EngineHours: Number(p.EngineHoursPerDay), EngineAmps: Number(p.EngineAmps), MaxPanelWp: Number(p.MaxPanelWp),
			CableRunM: Number(p.CableRun), CableMm2: told(p.CableSize)},
		Money: MoneyInputs{told(m.Budget), Number(m.Years), string(m.WillSell), Number(m.Discount),
			when(b.Known["money.cold_day_worth"] == quantity.Told, float64(m.ColdDayWorth)), told(m.ColdDayWorthTo), string(m.FittedBy)},
		Units: map[string]UnitInputs{"small": unitInputs(b.Small), "larger": unitInputs(b.Larger)},
		Safety: SafetyInputs{string(s.FuelVapourSpace), string(s.COAlarm), string(s.Lithium), string(s.DrainTo), string(s.Children),
			string(s.LatchOpensInside), string(s.DryIce), string(s.Fish), string(s.Eggs), string(s.WiringKnown), string(s.LeftUnattended)},
		Known: b.Known,
	}
	for i, n := range c.Nights {
		out.Cruising.Nights[i] = Number(n)
	}
	if out.Known == nil {
		out.Known = map[string]quantity.How{}
	}
	return out
}

func boxInputs(b economics.Box) BoxInputs {
	out := BoxInputs{VolumeL: Number(b.Volume), OpensPerDay: Number(b.OpensPerDay), Lid: string(b.Lid), LidSeal: string(b.LidSeal),
		Drain: string(b.Drain), Faces: map[string]FaceInputs{}, FittedUnit: string(b.FittedUnit),
		FoamThere: string(b.FoamThere), Cover: string(b.Cover), ChestFits: string(b.ChestFits), OffsetK: Number(b.CabinOffset)}
	if d := b.Inside; !d.Zero() {
		out.InsideMm = &[3]Number{millimetre(d.Length), millimetre(d.Width), millimetre(d.Height)}
	}
	if d := b.LidOpening; !d.Zero() {
		out.LidOpening = &[2]Number{millimetre(d.Length), millimetre(d.Width)}
	}
	for _, side := range heat.Sides {
		f := b.Faces[side]
		out.Faces[string(side)] = FaceInputs{millimetre(f.Foam), string(f.Material), string(f.State), string(f.Neighbour), string(f.Reach)}
	}
	return out
}

func unitInputs(u economics.Unit) UnitInputs {
	return UnitInputs{string(u.Form), Number(u.Price), Number(u.Fitting), Number(u.RatedCooling), told(u.RatedAmps), told(u.RatedBox),
		string(u.CooledBy), string(u.Plate), Number(u.Life), Number(u.Upkeep), when(u.Form == economics.FreeStanding, float64(u.ChestVolume))}
}
