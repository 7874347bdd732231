package measured

import (
	"math"

	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// model reckons one figure, above 0, from a point's inputs. prepare adds the
// ranges that the ledgers themselves state, where the point tells none.
type model func(x *inputs) float64

type kind struct {
	unit    string
	prepare []func(x *inputs) error
	reckon  model
}

var (
	ofBox  = []func(*inputs) error{assumeLeak}
	ofUnit = []func(*inputs) error{assumeLeak, assumeUnit}
)

// kinds are the figures that can be predicted.
var kinds = map[string]kind{
	"u":            {"W/m²K", ofBox, func(x *inputs) float64 { return leak(x) / insideM2(x) }},
	"fao_k":        {"kg/h·°C", ofBox, faoK},
	"melt":         {"kg/day", ofBox, meltKgPerDay},
	"melt_density": {"lb/cu ft·day", ofBox, func(x *inputs) float64 { return meltKgPerDay(x) / 0.45359237 / x.need("volume_l") * 28.316847 }},
	"hours":        {"h", ofBox, hours},
	"food_c":       {"°C", []func(*inputs) error{assumeLeak, assumeFilm}, foodC},
	"seal_share":   {"share", nil, sealShare},
	"foam_added":   {"share left", nil, foamAdded},
	"wh":           {"Wh/day", ofUnit, whPerDay},
	"wh_of_ramp":   {"Wh/day", ofUnit, whOfRamp},
	"ah":           {"Ah/day", ofUnit, func(x *inputs) float64 { return whPerDay(x) / x.need("volts") }},
	"amps":         {"A", []func(*inputs) error{assumeUnit}, runningAmps},
	"growth":       {"ratio", []func(*inputs) error{assumeGrowth}, growth},
	"cop":          {"COP", []func(*inputs) error{assumeEta}, cop},
}

// inside gives the box's shape: as told, else that of a box of which only the volume is known.
func inside(x *inputs) quantity.Dimensions {
	if x.or("length_m", 0) > 0 {
		return quantity.Dimensions{Length: quantity.Metre(x.need("length_m")), Width: quantity.Metre(x.need("width_m")), Height: quantity.Metre(x.need("height_m"))}
	}
	return heat.CubeLike(quantity.Litre(x.need("volume_l")))
}

func insideM2(x *inputs) float64 {
	d := inside(x)
	return 2 * float64(d.Length*d.Width+d.Width*d.Height+d.Height*d.Length)
}

// box is the box all round in foam, its lid in lid_foam times as much.
func box(x *inputs) heat.Conductance {
	d := inside(x)
	s := heat.Spec{Inside: d, Lid: heat.Lid(x.word("lid", string(heat.TopLid))), Seal: heat.Seal(x.word("seal", string(heat.GoodSeal))),
		Drain: heat.Drain(x.word("drain", string(heat.NoDrain))), LidPerimeter: 2 * (d.Length + d.Width)}
	if s.Lid == heat.FrontDoor {
		s.LidPerimeter = 2 * (d.Length + d.Height)
	}
	material, state := heat.Material(x.word("foam", string(heat.Polyurethane))), heat.State(x.word("state", string(heat.Dry)))
	for i, side := range heat.Sides {
		mm := x.need("foam_mm")
		if side == heat.Top && s.Lid == heat.TopLid {
			mm *= x.or("lid_foam", 1)
		}
		s.Faces[i] = heat.FaceSpec{Side: side, Neighbour: heat.Cabin,
			Layers: []heat.Layer{{Material: material, State: state, Thickness: quantity.Metre(mm / 1000)}}}
	}
	c, err := s.Conductance()
	if err != nil { // a word that is not known, or a figure that cannot be
		x.lacks = append(x.lacks, err.Error())
	}
	return c
}

// leak is the box's conductance, W/K, by a factor that stands for all that a drawing does not tell.
func leak(x *inputs) float64 { return float64(box(x).Total()) * x.or("leak_factor", 1) }

// assumeLeak takes the spread that the heat ledger states for a drawing whose
// foam is known; where it is not, the point tells a range of foam.
func assumeLeak(x *inputs) error {
	drawn := box(x)
	x.assume("leak_factor", heat.Drawing(drawn, true).Range().Scale(1/float64(drawn.Total())))
	return nil
}

func assumeEta(x *inputs) error {
	x.assume("eta", energy.EtaOf(x.word("unit", "built_in") == "chest").Range)
	return nil
}

func assumeUnit(x *inputs) error {
	if err := assumeEta(x); err != nil {
		return err
	}
	x.assume("rated_w", energy.UsualCooling(energy.Small).Range)
	x.assume("rise_k", energy.CondenserRise(condenser(x)).Range)
	return nil
}

func assumeFilm(x *inputs) error {
	x.assume("film_w_per_m2k", heat.IceFilm().Range)
	return nil
}

func assumeGrowth(x *inputs) error {
	x.assume("growth_per_k", energy.CapacityGrowth().Range)
	return nil
}

func condenser(x *inputs) energy.Condenser {
	return energy.Condenser(x.word("cooled_by", string(energy.LockerFan)))
}

// useW is what openings and warm goods bring in: openings a day, and kilograms
// of food and drink a day from the air outside.
func useW(x *inputs) float64 {
	out, in := quantity.Celsius(x.need("out_c")), quantity.Celsius(x.need("in_c"))
	kJ := x.or("stowed_kg", 0) * heat.WaterKJPerKgK * float64(out-in)
	if n := x.or("openings", 0); n > 0 {
		swap, err := heat.SwapShare(heat.Lid(x.word("lid", string(heat.TopLid))))
		if err != nil {
			x.lacks = append(x.lacks, err.Error())
		}
		freeM3 := float64(inside(x).Volume()) / 2 / 1000
		perKg := heat.EnthalpyKJ(out, heat.HumidityRatio(out, quantity.Fraction(x.or("humidity", 0.7)))) - heat.SaturatedEnthalpyKJ(in)
		kJ += n * swap.Range.Typical * freeM3 * heat.ColdAirDensity(in) * perKg
	}
	return kJ / 86.4
}

func meltKgPerDay(x *inputs) float64 {
	gain := leak(x)*(x.need("out_c")-x.need("in_c")) + useW(x)
	return float64(heat.MeltKgPerDay(quantity.Watt(gain), heat.DrainCelsius))
}

// faoK is FAO's melt per degree between the air outside and melting ice.
func faoK(x *inputs) float64 {
	return leak(x) / float64(heat.FromFAO(1)) * (x.need("out_c") - x.need("in_c")) / x.need("out_c")
}

// hours is how long ice holds a shut box until its water, and other water put
// in with it, has come to end_c.
func hours(x *inputs) float64 {
	ice, water, end := x.need("ice_kg"), x.or("water_kg", 0), x.or("end_c", 0)
	kJ := ice*(heat.FusionKJPerKg+heat.WaterKJPerKgK*end) + float64(heat.FreezerBonusKJ(quantity.Kilogram(ice), quantity.Celsius(x.or("ice_c", 0)))) +
		water*heat.WaterKJPerKgK*(end-x.or("water_c", 0)) +
		float64(heat.BareKJPerK(inside(x).Volume()))*(end-x.or("liner_c", 0))
	return kJ / 3.6 / leak(x) / (x.need("out_c") - x.need("in_c"))
}

// foodC is how warm the food beside ice of a mass comes to be.
func foodC(x *inputs) float64 {
	lump, err := heat.LumpDensity(heat.IceKind(x.word("ice", string(heat.Cubes))))
	if err != nil {
		x.lacks = append(x.lacks, err.Error())
	}
	surface := heat.NewSurface(x.need("film_w_per_m2k"), lump.Range.Typical)
	return float64(surface.FoodCelsius(quantity.Kilogram(x.need("ice_kg")), quantity.WattPerKelvin(leak(x)), quantity.Celsius(x.need("out_c")), quantity.Watt(useW(x))))
}

// sealShare is the part of a shut cabinet's heat that passes its gasket.
func sealShare(x *inputs) float64 {
	c := box(x)
	for _, p := range c.Parts {
		if p.Name == heat.SealPart {
			return float64(p.UA) * x.or("seal_factor", 1) / (float64(c.Total()) + float64(p.UA)*(x.or("seal_factor", 1)-1))
		}
	}
	return 0
}

// foamAdded is what is left of the heat through a side wall when foam is added
// to it.
func foamAdded(x *inputs) float64 {
	wall := func(addedMM float64) float64 {
		s := heat.Spec{Inside: heat.CubeLike(300), Lid: heat.FrontDoor, Seal: heat.GoodSeal, Drain: heat.NoDrain}
		for i, side := range heat.Sides {
			s.Faces[i] = heat.FaceSpec{Side: side, Neighbour: heat.Cabin, Layers: []heat.Layer{
				{Material: heat.Polyurethane, State: heat.Dry, Thickness: quantity.Metre(x.need("foam_mm") / 1000)},
				{Material: heat.EPS, State: heat.Dry, Thickness: quantity.Metre(addedMM / 1000)}}}
		}
		c, err := s.Conductance()
		if err != nil {
			x.lacks = append(x.lacks, err.Error())
			return 1
		}
		return float64(c.Parts[2].UA)
	}
	return wall(x.need("added_mm")) / wall(0)
}

func cycle(x *inputs) energy.Cycle {
	c := energy.Unit{RatedW: quantity.Watt(x.need("rated_w")), Eta: x.need("eta"), CooledBy: condenser(x), Plate: energy.Plate(x.word("plate", string(energy.Thin)))}.Cycle()
	c.Rise = quantity.Kelvin(x.need("rise_k"))
	return c
}

// whPerDay is what a unit takes in a steady day, air outside at out_c.
func whPerDay(x *inputs) float64 {
	return dayAt(x, cycle(x), leak(x), useW(x), quantity.Celsius(x.need("out_c")))
}

func dayAt(x *inputs, c energy.Cycle, leakWPerK, use float64, out quantity.Celsius) float64 {
	g := energy.Gain{Leak: quantity.WattPerKelvin(leakWPerK), Out: out, Use: quantity.Watt(use)}
	return float64(c.Duty(g, quantity.Celsius(x.need("in_c")), out).DayWh())
}

// whOfRamp is the same over a day that stands at peak_c for two hours and at
// base_c at other times but for a straight ramp of ramp_h before and after. A
// mean of the air would come out lower: heat and lift grow together.
func whOfRamp(x *inputs) float64 {
	base, peak, ramp := x.need("base_c"), x.need("peak_c"), x.need("ramp_h")
	c, leakWPerK := cycle(x), leak(x)
	const steps = 96
	var sum float64
	for i := range steps {
		fromPeak := max(0, math.Abs(24*(float64(i)+0.5)/steps-12)-1)
		air := peak - (peak-base)*min(1, fromPeak/ramp)
		sum += dayAt(x, c, leakWPerK, 0, quantity.Celsius(air)) / steps
	}
	return sum
}

func runningAmps(x *inputs) float64 {
	c := cycle(x)
	return float64(c.PowerW(c.Working(quantity.Celsius(x.need("in_c")), quantity.Celsius(x.need("out_c"))))) / x.need("volts")
}

// growth is the cooling at one evaporating temperature over that at another.
func growth(x *inputs) float64 {
	return math.Exp(x.need("growth_per_k") * (x.need("te_c") - x.need("from_c")))
}

func cop(x *inputs) float64 {
	return x.need("eta") * energy.Carnot(quantity.Celsius(x.need("te_c")), quantity.Celsius(x.need("tc_c")))
}
