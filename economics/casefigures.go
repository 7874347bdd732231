package economics

import (
	"fmt"

	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// CaseFigures is the box and the boat of an option, as told or with its work, at
// typical inputs: what a drawing of her needs.
type CaseFigures struct {
	Box     heat.Spec // its walls; of a free-standing unit its own
	VolumeL float64
	Room    RoomFigures
	Month   int          // the hottest with nights aboard, 1 to 12
	Heat    []HeatSource // that month's mean heat by its ways in, box at its target
	HeatW   float64      // their sum
	Power   []PowerFigures
}

// HeatSource is one way for heat into the box.
type HeatSource struct {
	Part  string    // of heat.Part; or EdgesPart, OpeningsPart, GoodsPart
	Side  heat.Side // of a face
	Lid   bool      // whether the lid is in that face
	Leak  float64   // W/K; 0 for openings and goods
	HeatW float64   // mean of the day; below 0 where heat goes out
}

// The parts that no single wall has.
const (
	EdgesPart    = "edges and corners"
	OpeningsPart = "openings"
	GoodsPart    = "goods"
)

// Name is the source in plain words.
func (s HeatSource) Name() string {
	name := ""
	switch s.Part {
	case heat.FacePart:
		name = string(s.Side)
		if s.Side != heat.Top && s.Side != heat.Bottom {
			name += " wall"
		}
	case heat.SealPart:
		name = "lid seal"
	case OpeningsPart:
		name = "opening the lid"
	case GoodsPart:
		name = "food brought aboard"
	default:
		name = s.Part
	}
	if s.Lid {
		name += ", with the lid"
	}
	return name
}

// RoomFigures is what fills a box, L, each 0 or more: together its volume, and
// with Board that of the box as told. Where not all goes in, the ice or the
// plate and the food come first, and Short is what is left out.
type RoomFigures struct {
	Cooling float64 // ice or plate
	Food    float64 // of one gap between shops
	Drinks  float64 // of a day
	Lives   float64 // jars and bottles
	Free    float64
	Board   float64 // taken by foam put in from inside
	Short   float64
}

// PowerFigures is a unit's need on a mean day of a month aboard, Wh a day.
type PowerFigures struct {
	Month, Nights int
	NeedWh        float64
	SunWh         float64 // that the panel leaves after the boat's other loads, 0 or more
}

// Case gives the box and the boat of one of the reckoning's options, or of Cool,
// as told or fitted. An option that is none of Options is an error.
func (r *Reckoning) Case(o *OptionFigures, fitted bool) (CaseFigures, error) {
	p, err := r.proposal(o, fitted)
	if err != nil {
		return CaseFigures{}, err
	}
	out := CaseFigures{VolumeL: p.volumeL, Room: p.room(), Month: p.world.aboard + 1}
	if p.freeStanding() {
		out.Box = chestSpec(p.unit.ChestVolume)
	} else if out.Box, _, err = p.fit.apply(r.Boat.Box); err != nil {
		return CaseFigures{}, err
	}
	if out.Heat, out.HeatW, err = p.heatSources(out.Box); err != nil {
		return CaseFigures{}, err
	}
	if p.unit != nil {
		out.Power = p.powerByMonth()
	}
	return out, nil
}

// proposal prepares an option anew as it was reckoned.
func (r *Reckoning) proposal(o *OptionFigures, fitted bool) (*proposal, error) {
	if r.Of(o.ID) == nil {
		return nil, fmt.Errorf("option %q is not known", o.ID)
	}
	w, fit := newWorld(&r.Boat, r.Ground), FitOut{}
	if fitted {
		fit = o.Fit.Out
	}
	return newProposal(&r.Boat, nil, &w, r.Box.leakScale(), o.ID, fit)
}

// heatSources parts the heat of the hottest month aboard by its ways in. Edges
// and corners, which border on several neighbours, take what the faces, seal and
// drain leave of the leak.
func (p *proposal) heatSources(box heat.Spec) ([]HeatSource, float64, error) {
	drawn, err := box.Conductance()
	if err != nil {
		return nil, 0, err
	}
	s := p.setup(&Typical)
	mean := s.Mean(p.world.aboard, s.TargetC)
	motoring := s.Power.EngineHours / 24
	beside := map[heat.Side]heat.Neighbour{}
	for _, f := range box.Faces {
		beside[f.Side] = f.Neighbour
	}
	lid := Box{Lid: box.Lid}.LidSide()
	through := func(leak float64, n heat.Neighbour) float64 {
		ua := quantity.WattPerKelvin(leak)
		one := map[heat.Neighbour]heat.Conductance{heat.Cabin: {Cabin: ua}, heat.Sea: {Sea: ua}, heat.Engine: {Engine: ua}, heat.Deck: {Deck: ua}}[n]
		gain := func(on bool) float64 {
			return float64(one.GainW(quantity.Celsius(s.TargetC), quantity.Celsius(mean.CabinC), quantity.Celsius(mean.SeaC), on))
		}
		return (1-motoring)*gain(false) + motoring*gain(true)
	}
	var out []HeatSource
	rest := HeatSource{Part: EdgesPart, HeatW: mean.LeakW}
	for _, part := range drawn.Parts {
		source := HeatSource{Part: part.Name, Side: part.Side, Leak: p.leakScale * float64(part.UA)}
		switch part.Name {
		case heat.FacePart:
			source.Lid = part.Side == lid
			source.HeatW = through(source.Leak, beside[part.Side])
		case heat.SealPart:
			source.HeatW = through(source.Leak, beside[lid])
		case heat.DrainPart:
			source.HeatW = through(source.Leak, heat.Cabin)
		default:
			rest.Leak += source.Leak
			continue
		}
		if source.Leak > 0 {
			out = append(out, source)
			rest.HeatW -= source.HeatW
		}
	}
	return append(out, rest, HeatSource{Part: OpeningsPart, HeatW: mean.OpeningsW},
		HeatSource{Part: GoodsPart, HeatW: mean.GoodsW + mean.DrinksW}), mean.GainW(), nil
}

// room shares out the inside of the box.
func (p *proposal) room() RoomFigures {
	b := p.boat
	left := p.volumeL
	take := func(wanted float64) float64 {
		got := min(wanted, left)
		left -= got
		return got
	}
	var r RoomFigures
	r.Cooling = take(p.takenL())
	r.Food = take(stowageLPerKg * b.perishableKgPerDay() * b.gapDays())
	r.Drinks = take(stowageLPerKg * b.drinksKgPerDay())
	if !p.freeStanding() {
		r.Lives = take(residentShare * p.toldL)
	}
	r.Free, r.Board = left, max(0, p.toldL-p.volumeL)
	r.Short = max(0, p.goesInL()-r.Food-r.Drinks-r.Lives)
	return r
}

// powerByMonth sets a unit's need against the sun, for the months aboard.
func (p *proposal) powerByMonth() []PowerFigures {
	var out []PowerFigures
	s, unit := p.setup(&Typical), p.refrigerator(&Typical)
	for m := range 12 {
		if nights := p.world.plan.NightsIn(m); nights > 0 {
			out = append(out, PowerFigures{Month: m + 1, Nights: nights,
				NeedWh: float64(s.Duty(m, unit, s.TargetC).DayWh()), SunWh: max(0, s.SunWh(m)-24*s.Power.HouseW)})
		}
	}
	return out
}
