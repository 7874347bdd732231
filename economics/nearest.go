package economics

import (
	"math"
	"slices"
)

// nearest answers where no way reaches.
func (a *answerer) nearest() Answer {
	out := Answer{Case: NoneReaches}
	best, room := -1, true
	for _, id := range cold {
		i := slices.Index(Options[:], id)
		o := &a.r.Options[i]
		room = room && o.Fitted.Fails(Room)
		if best < 0 || a.nearer(o, &a.r.Options[best]) {
			best = i
		}
	}
	o := &a.r.Options[best]
	out.Ways, out.ReachOf100 = []OptionID{o.ID}, o.WorksOf100
	switch {
	case room:
		out.Case = NoRoomAtAll
	case a.r.Cool != nil && a.r.Cool.WorksOf100 >= nearlyOf100:
		out.Case, out.Ways, out.ReachOf100 = CoolOnly, []OptionID{a.r.Cool.ID}, a.r.Cool.WorksOf100
	}
	a.price(&out, o.ID)
	return out
}

// nearer tells which of two ways that do not reach fails by less.
func (a *answerer) nearer(x, y *OptionFigures) bool {
	if fx, fy := x.Fitted.Fails(Hazard), y.Fitted.Fails(Hazard); fx != fy {
		return fy
	}
	if x.WorksOf100 != y.WorksOf100 {
		return x.WorksOf100 > y.WorksOf100
	}
	return x.KeptDays.Typical > y.KeptDays.Typical
}

// NearlyAsShe gives a cold way that, without any work, works nearly as often as
// is asked for at a yearly cost of less than two thirds of the leader's. The
// search asks for nine futures of ten and passes it by; who would spend should
// hear of it. "" where there is none.
func (r *Reckoning) NearlyAsShe() OptionID {
	way := r.Answer.Way()
	if way == "" {
		return ""
	}
	most := muchLess * r.Of(way).Fitted.Yearly
	for _, id := range cold {
		o := r.Of(id)
		if o.Fit.Cools() && o.AsToldWorksOf100 >= nearlyOf100 && !o.AsTold.Fails(Hazard) && o.AsTold.Yearly < most {
			return id
		}
	}
	return ""
}

// limit holds the leader against the owner's limit.
func (a *answerer) limit(out *Answer, weighed []OptionID) {
	b := &a.r.Boat
	o := a.r.Of(out.Way())
	out.AsShe = len(o.Fit.Items) == 0
	if !b.Told("money.budget") || b.Money.Budget <= 0 {
		return
	}
	limit := float64(b.Money.Budget)
	out.OverLimit = max(0, o.Fitted.First-limit)
	if out.OverLimit == 0 {
		return
	}
	least := math.Inf(1)
	for _, id := range weighed {
		if w := a.r.Of(id); id != out.Way() && w.Fitted.First <= limit && !w.Fitted.Fails(Hazard) && w.PriceOfCold.Typical < least {
			out.Within, least = id, w.PriceOfCold.Typical
		}
	}
}

// steps are the sizes in which a person would say a sum, up to a bound.
var sayings = [...]struct{ upTo, step float64 }{{2, 0.25}, {6, 0.5}, {16, 1}, {40, 2}, {math.Inf(1), 5}}

func sayingStep(v float64) float64 {
	for _, s := range sayings {
		if v <= s.upTo {
			return s.step
		}
	}
	return 5
}

// SayDown rounds a sum of 0 or more down to one that a person would say.
func SayDown(v float64) float64 {
	if math.IsInf(v, 1) {
		return v
	}
	s := sayingStep(v)
	return math.Floor(v/s+1e-9) * s
}

// Say rounds a sum of 0 or more to the nearer one that a person would say.
func Say(v float64) float64 {
	if down, up := SayDown(v), SayUp(v); v-down < up-v {
		return down
	}
	return SayUp(v)
}

// SayUp rounds a sum of 0 or more up to one that a person would say.
func SayUp(v float64) float64 {
	if math.IsInf(v, 1) {
		return v
	}
	s := sayingStep(v)
	return math.Ceil(v/s-1e-9) * s
}
