package economics

import (
	"math"
	"sort"
	"time"

	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// iceLoad is a load of ice with what it went through.
type iceLoad struct {
	heat.IceLoad
	spell      heat.Spell
	pullDownKJ float64 // taken off what melted
	read       bool    // whether cabin or box were read in it
}

func (p *proposal) drainCelsius() quantity.Celsius {
	if p.boat.Box.Drain == heat.NoDrain {
		return p.boat.Food.Target
	}
	return heat.DrainCelsius
}

// loadReader tells what a load of ice went through.
type loadReader struct {
	p           *proposal
	rows        []heat.LogRow
	openings    [12]float64 // W, by month
	drinks      float64     // W per kelvin of cabin over food
	perishables float64     // W per kelvin of stowedC over food
	stowedC     float64
	heatKJPerK  float64 // of the box in use
	sea         [12]float64
	cabin       [12][24]float64
	ice         heat.Surface
}

func (p *proposal) loadReader(rows []heat.LogRow) *loadReader {
	r := &loadReader{p: p, rows: rows}
	s := p.setup(&Typical)
	ice := p.icing(&Typical)
	r.ice = heat.NewSurface(ice.FilmWPerM2K, ice.LumpKgPerM3)
	for m := range 12 {
		mean := s.Mean(m, s.TargetC)
		r.openings[m], r.sea[m] = mean.OpeningsW, mean.SeaC
		for h := range 24 {
			r.cabin[m][h] = s.Months[m].OutdoorC[h] + float64(s.CabinOffset)
		}
	}
	r.drinks = s.Goods.DrinksKgPerDay * heat.WaterKJPerKgK / 86.4
	r.perishables = s.Goods.PerishableKgPerDay * heat.PerishableKJPerKgK / 86.4
	r.stowedC, r.heatKJPerK = s.Goods.StowedC, s.Box.HeatKJPerK
	return r
}

func (r *loadReader) cabinAt(t time.Time) float64 { return r.cabin[t.Month()-1][t.Hour()] }

// read gives what a load went through. The climate says how warm the cabin was,
// corrected by what was read of it; where the box was not read, the ice in it
// says how warm the food was. The first load of a trip pays for a warm box and
// what stands in it, a day's drinks too, and starts from the freezer when the
// ice does.
func (r *loadReader) read(s heat.IceLoad, first bool) iceLoad {
	b := r.p.boat
	warmer, food, cabins, boxes := 0.0, 0.0, 0, 0
	from := sort.Search(len(r.rows), func(i int) bool { return !r.rows[i].At.Before(s.From) })
	for _, row := range r.rows[from:] {
		if row.At.After(s.To) {
			break
		}
		if row.CabinRead {
			warmer += float64(row.Cabin) - r.cabinAt(row.At)
			cabins++
		}
		if row.BoxRead {
			food += float64(row.Box)
			boxes++
		}
	}
	warmer /= float64(max(1, cabins))
	drinks, perishables := r.drinks, r.perishables
	if s.Shut {
		drinks, perishables = 0, 0
	}

	spell := heat.Spell{Hours: s.To.Sub(s.From).Hours()}
	outside, beside := 0.0, 0.0 // means of the air outside, and of food beside ice that dwindles evenly
	goods := 0.0                // mean exchange of what goes in, W per kelvin of food
	steps := max(1, int(math.Round(spell.Hours)))
	for i := range steps {
		gone := (float64(i) + 0.5) / float64(steps)
		t := s.From.Add(time.Duration(gone * float64(s.To.Sub(s.From))))
		m := int(t.Month()) - 1
		out := r.p.leak().OutsideC(quantity.Celsius(r.cabinAt(t)+warmer), quantity.Celsius(r.sea[m]), false)
		left := s.Ice - quantity.Kilogram(gone)*s.Melted()
		outside += float64(out) / float64(steps)
		target, use := float64(b.Food.Target), quantity.Watt(0)
		if !s.Shut {
			drunk := drinks
			if first && t.Sub(s.From) < 24*time.Hour {
				drunk = 0
			}
			goods += (drunk + perishables) / float64(steps)
			use = quantity.Watt(max(0, r.openings[m]+drunk*(r.cabinAt(t)+warmer-target)+perishables*(r.stowedC-target)))
		}
		beside += float64(r.ice.FoodCelsius(left, r.p.leak().Total(), out, use)) / float64(steps)
		spell.Use += use / quantity.Watt(steps)
	}
	if boxes > 0 {
		food /= float64(boxes)
	} else {
		food = beside
	}
	spell.Difference = quantity.Kelvin(outside - food)
	spell.Use = max(0, spell.Use-quantity.Watt(goods*(food-float64(b.Food.Target))))
	out := iceLoad{IceLoad: s, read: cabins+boxes > 0}
	freezerKJ := 0.0
	if first && b.Ice.FirstLoad == FromHome {
		freezerKJ = float64(heat.FreezerBonusKJ(min(s.Ice, b.Ice.HomeFreezer), heat.FreezerCelsius))
	}
	if first && b.Cruising.BeforeTrip == Warm {
		out.pullDownKJ = r.heatKJPerK * max(0, r.cabinAt(s.From)+warmer-food)
	}
	spell.Melted = max(0, s.Melted()+quantity.Kilogram((freezerKJ-out.pullDownKJ)/heat.MeltKJPerKg(r.p.drainCelsius())))
	out.spell = spell
	return out
}
