package figures

import (
	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Source is one way for heat into the box, on a mean day.
type Source struct {
	Name  string  // in plain words
	Leak  float64 // W/K; 0 for openings and goods
	HeatW float64 // W, mean of the day; below 0 when heat goes out
}

// HeatBySource parts the heat gain of the hottest month aboard by its ways in,
// box as told and at its target; false when there are no nights aboard. The
// sources add up to the month's gain: edges and corners, which border on
// several neighbours, take what the faces, seal and drain leave of the leak.
func HeatBySource(r *economics.Reckoning) (economics.MonthFigures, []Source, bool) {
	if len(r.Months) == 0 {
		return economics.MonthFigures{}, nil, false
	}
	month := r.Months[0]
	for _, m := range r.Months {
		if m.HeatGainW > month.HeatGainW {
			month = m
		}
	}
	box := &r.Boat.Box
	lid := heat.Top
	if box.Lid == heat.FrontDoor {
		lid = heat.Inboard
	}
	scale := 1.0
	if total := r.Box.Drawn.Total(); total > 0 {
		scale = float64(r.Box.Leak / total)
	}
	motoring := r.Boat.Power.EngineHoursPerDay / 24
	through := func(leak float64, beside heat.Neighbour) float64 {
		ua := quantity.WattPerKelvin(leak)
		one := map[heat.Neighbour]heat.Conductance{
			heat.Cabin: {Cabin: ua}, heat.Sea: {Sea: ua}, heat.Engine: {Engine: ua}, heat.Deck: {Deck: ua},
		}[beside]
		gain := func(on bool) float64 {
			return float64(one.GainW(r.Boat.Food.Target, quantity.Celsius(month.CabinC), quantity.Celsius(month.SeaC), on))
		}
		return (1-motoring)*gain(false) + motoring*gain(true)
	}
	var sources []Source
	rest, left := Source{Name: "edges and corners"}, month.LeakW
	for _, part := range r.Box.Drawn.Parts {
		leak := scale * float64(part.UA)
		name, beside := "", heat.Cabin
		switch part.Name {
		case heat.FacePart:
			name, beside = string(part.Side)+" wall", box.Faces[part.Side].Neighbour
			switch part.Side {
			case heat.Top, heat.Bottom:
				name = string(part.Side)
			}
			if part.Side == lid {
				name += ", with the lid"
			}
		case heat.SealPart:
			name, beside = "lid seal", box.Faces[lid].Neighbour
		case heat.DrainPart:
			name = "drain"
		default:
			rest.Leak += leak
			continue
		}
		if leak == 0 {
			continue
		}
		s := Source{name, leak, through(leak, beside)}
		left -= s.HeatW
		sources = append(sources, s)
	}
	rest.HeatW = left
	sources = append(sources, rest, Source{"opening the lid", 0, month.OpeningsW}, Source{"food brought aboard", 0, month.GoodsW})
	return month, sources, true
}
