package wizard

import (
	"fmt"

	"coldreckon/economics"
)

// outlook is what a conversation needs of a reckoning.
type outlook struct {
	way   economics.OptionID // that leads
	words string             // the answer, as a sentence that begins in the middle
	of100 int                // of 100 futures that speak for it; 0 where none is counted
	price float64            // of a cold day by that way, 0 where it has none
}

// ways names the options as things to do.
var ways = map[economics.OptionID]string{
	economics.IceOnly:    "keep to ice",
	economics.DryStores:  "live on food that keeps, with neither ice nor refrigeration",
	economics.SmallUnit:  "fit a small refrigerating unit",
	economics.LargerUnit: "fit a larger refrigerating unit",
}

// names names the options as things.
var names = map[economics.OptionID]string{
	economics.IceOnly:    "ice",
	economics.DryStores:  "food that keeps",
	economics.SmallUnit:  "a small unit",
	economics.LargerUnit: "a larger unit",
}

// outlookOf reads a reckoning.
func outlookOf(r *economics.Reckoning) outlook {
	v := r.Verdict
	o := outlook{way: v.Option, of100: v.WayOf100, words: wording(v)}
	if v.TurnKnown {
		o.price = v.TurnWorth
	}
	return o
}

// wording puts a verdict in words, and how sure it is.
func wording(v economics.Verdict) string {
	if !v.Works {
		return fmt.Sprintf("nothing does all you want. The nearest is to %s.", ways[v.Option])
	}
	s := ways[v.Option]
	switch {
	case !v.SureOfWay && v.HasRunner:
		s += fmt.Sprintf(", but it is close: best in %d of 100 ways things may turn out; %s may be better.", v.WayOf100, names[v.Runner])
	default:
		s += fmt.Sprintf(". How sure: best in %d of 100 ways things may turn out.", v.WayOf100)
	}
	if !v.AsToldWorks {
		s += " It needs some work on box or boat; the report lists it."
	}
	return s
}

// worthOf gives what knowing an uncertain figure is worth, as a present cost.
func worthOf(in economics.InputFigures) float64 { return in.EVPPI }

// leastWorth is the worth of an answer below which it is unlikely to change the
// choice: a hundredth of what the chosen way costs over the years. Engineering
// judgement, from memory.
func leastWorth(r *economics.Reckoning) float64 {
	return max(1, 0.01*abs(r.Of(r.Verdict.Option).Fitted.Present))
}

func abs(v float64) float64 { return max(v, -v) }

// leastRegret gives the index of the option that loses least on average
// against the best in each future, of those that work in any.
func leastRegret(r *economics.Reckoning) int {
	best := -1
	for i, o := range r.Options {
		if o.WorkableOf100 > 0 && (best < 0 || o.ExpectedRegret < r.Options[best].ExpectedRegret) {
			best = i
		}
	}
	return max(0, best)
}

// unitInPlay names the unit that the answer turns on.
func unitInPlay(r *economics.Reckoning) string {
	if v := r.Verdict; v.Option == economics.LargerUnit || v.Option != economics.SmallUnit && v.HasRunner && v.Runner == economics.LargerUnit {
		return "larger"
	}
	return "small"
}
