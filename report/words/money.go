package words

import (
	"fmt"
	"slices"

	"coldreckon/economics"
)

// Rival gives the way that the answer is set beside: the next of those that
// lead or were weighed, else the cold way of the least price, "" where the
// answer names no way.
func (v Voice) Rival() economics.OptionID {
	a := &v.r.Answer
	way := a.Way()
	if way == "" {
		return ""
	}
	if len(a.Ways) > 1 {
		return a.Ways[1]
	}
	var best economics.OptionID
	for _, id := range [3]economics.OptionID{economics.IceOnly, economics.SmallUnit, economics.LargerUnit} {
		if id == way {
			continue
		}
		if best == "" || v.r.Of(id).BestOf100 > v.r.Of(best).BestOf100 ||
			v.r.Of(id).BestOf100 == v.r.Of(best).BestOf100 && v.r.Of(id).PriceOfCold.Typical < v.r.Of(best).PriceOfCold.Typical {
			best = id
		}
	}
	return best
}

// Overtakes says how the payments for the answer and its rival run over the
// years: who is dearer at first, and from when no longer.
func (v Voice) Overtakes() string {
	way, rival := v.r.Answer.Way(), v.Rival()
	a, b := v.paid(way), v.paid(rival)
	if len(a) == 0 || len(a) != len(b) {
		return fmt.Sprintf("What is paid over %s.", v.years())
	}
	last := len(a) - 1
	dearFirst := a[0] > b[0]
	since := last // the year from which the order at the end holds
	for since > 0 && (a[since-1] <= b[since-1]) == (a[last] <= b[last]) {
		since--
	}
	switch cheaper := a[last] <= b[last]; {
	case cheaper && since == 0:
		return fmt.Sprintf("By every year's end %s has cost less than %s.", In(way), In(rival))
	case cheaper && dearFirst:
		return fmt.Sprintf("%s costs more at first than %s, and less in all from year %d on.", the(way), In(rival), since)
	case cheaper:
		return fmt.Sprintf("From year %d on %s has cost less in all than %s.", since, In(way), In(rival))
	case since == 0:
		return fmt.Sprintf("By every year's end %s has cost less than %s at typical figures.", In(rival), In(way))
	}
	return fmt.Sprintf("From year %d on %s has cost less in all than %s at typical figures.", since, In(rival), In(way))
}

// paid gives what an option has typically cost by each year's end.
func (v Voice) paid(id economics.OptionID) []float64 {
	at := slices.Index(economics.Options[:], id)
	if at < 0 {
		return nil
	}
	var out []float64
	for _, r := range v.r.Futures.Paid[at] {
		out = append(out, r.Typical)
	}
	return out
}
