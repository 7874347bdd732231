package figures

import (
	"math"

	"coldreckon/economics"
	"coldreckon/economics/energy"
	"coldreckon/economics/quantity"
)

// Unit is what a unit does in its box as told, in the hottest month aboard.
type Unit struct {
	Option     string     `json:"option"`
	BoxL       Number     `json:"box_volume_l"`
	UA         Number     `json:"ua_w_per_k"`
	RatedW     Number     `json:"rated_cooling_w"`
	Eta        Number     `json:"eta"`
	CapacityW  Number     `json:"capacity_w"`
	COP        Number     `json:"cop"`
	PlateC     Number     `json:"plate_c"`
	CondenserC Number     `json:"condenser_c"`
	RunningA   Number     `json:"running_a"`
	RunShare   Number     `json:"run_share"`
	HeldC      Number     `json:"held_c"`
	WhPerDay   Number     `json:"wh_per_day"`
	AhPerDay   Number     `json:"ah_per_day"`
	PullDownH  Number     `json:"pull_down_h"`  // null when it never gets there
	PullDownWh Number     `json:"pull_down_wh"` // likewise
	HoldOverH  Number     `json:"hold_over_h"`  // null for a thin plate
	SetPoints  []SetPoint `json:"set_points"`
	Rating     *Rating    `json:"rating_plate"` // null when nothing was told of it
	Cable      Cable      `json:"cable"`
}

// SetPoint is what one box temperature costs.
type SetPoint struct {
	BoxC        Number `json:"box_c"`
	WhPerDay    Number `json:"wh_per_day"`
	RunShare    Number `json:"run_share"`
	Growth      Number `json:"listeria_growth_against_5_c"`
	Perishables bool   `json:"perishables"`
}

// Rating is what the maker's plate means: the cooling and efficiency behind it,
// and the box in which its average current comes true.
type Rating struct {
	CoolingW    Range `json:"cooling_w"`
	Eta         Range `json:"eta"`
	ImpliedUA   Range `json:"implied_ua_w_per_k"`
	ImpliedBoxL Range `json:"implied_box_l"`
	Fits        bool  `json:"fits"` // whether its current and its largest box go together
}

// Range is a figure with its 10th and 90th percentiles.
type Range struct {
	Low     Number `json:"low"`
	Typical Number `json:"typical"`
	High    Number `json:"high"`
}

// Cable is the run from battery to unit. Drop and least voltage are null when
// the run or the size is not known, sizes and fuse when there is none to give.
type Cable struct {
	Known     bool   `json:"known"`
	RunM      Number `json:"run_m"`
	SizeMm2   Number `json:"size_mm2"`
	DropShare Number `json:"drop_share"`
	LeastV    Number `json:"least_v"`
	CutOutV   Number `json:"cut_out_v"`
	NeedMm2   Number `json:"need_mm2"`
	MetricMm2 Number `json:"next_metric_mm2"`
	AWG       string `json:"next_awg"`
	FuseA     Number `json:"largest_fuse_a"`
}

// Fortnight is the warmest spell of an option's typical years, hour by hour
// from noon, rounded to what a drawing shows.
type Fortnight struct {
	Days    int      `json:"days"`
	Month   int      `json:"month"`
	LimitC  Number   `json:"limit_c"`
	FullWh  Number   `json:"battery_full_wh"` // above the cut-off
	FoodC   []Number `json:"food_c"`
	Battery []Number `json:"battery_wh"`
	SunW    []Number `json:"sun_w"`
	IceKg   []Number `json:"ice_kg"`
}

func rangeOf(r quantity.Range) Range { return Range{Number(r.Low), Number(r.Typical), Number(r.High)} }

func unitsOf(r *economics.Reckoning) []Unit {
	out := []Unit{}
	for _, u := range r.Units {
		c := u.Cable
		row := Unit{
			Option: string(u.ID), BoxL: Number(u.VolumeL), UA: Number(u.LeakWPerK), RatedW: Number(u.RatedW), Eta: Number(u.Eta),
			CapacityW: Number(u.CapacityW), COP: Number(u.COP), PlateC: Number(u.PlateC), CondenserC: Number(u.CondenserC),
			RunningA: Number(u.RunningA), RunShare: Number(u.RunShare), HeldC: Number(u.HeldC), WhPerDay: Number(u.WhPerDay), AhPerDay: Number(u.AhPerDay),
			PullDownH: when(u.PullDownReached, u.PullDownHours), PullDownWh: when(u.PullDownReached, u.PullDownWh), HoldOverH: told(u.HoldOverHours),
			SetPoints: []SetPoint{},
			Cable: Cable{c.Known, Number(c.RunM), when(c.Known, c.SizeMm2), when(c.Known, c.DropShare), when(c.Known, c.LeastV), Number(c.CutOutV),
				told(c.NeedMm2), told(c.MetricMm2), c.AWG, told(c.FuseA)},
		}
		for _, p := range u.SetPoints {
			row.SetPoints = append(row.SetPoints, setPointOf(p))
		}
		if m := u.Rating; m != nil {
			row.Rating = &Rating{rangeOf(m.Cooling), rangeOf(m.Eta), rangeOf(m.ImpliedLeak), rangeOf(m.ImpliedBox), m.Fits}
		}
		out = append(out, row)
	}
	return out
}

func setPointOf(p energy.SetPoint) SetPoint {
	return SetPoint{Number(p.Box), Number(p.Duty.DayWh()), Number(p.Duty.RunShare), Number(p.Growth), p.Perishables}
}

func fortnightOf(o *economics.OptionFigures) *Fortnight {
	f := o.Fortnight
	if len(f.Hours) == 0 {
		return nil
	}
	out := &Fortnight{Days: f.Days, Month: f.Month, LimitC: Number(f.LimitC), FullWh: Number(f.FullWh)}
	for _, h := range f.Hours {
		out.FoodC = append(out.FoodC, drawn(h.FoodC))
		out.Battery = append(out.Battery, drawn(h.ChargeWh))
		out.SunW = append(out.SunW, drawn(h.SunW))
		out.IceKg = append(out.IceKg, drawn(h.IceKg))
	}
	return out
}

// drawn rounds to a hundredth.
func drawn(x float64) Number { return Number(math.Round(100*x) / 100) }
