package words

import (
	"fmt"

	"coldreckon/economics"
)

// Overtakes says how the payments for the answer and its rival run over the
// years: who is dearer at first, and from when no longer.
func (v Voice) Overtakes() string {
	d := v.r.Verdict
	if !d.HasRunner {
		return fmt.Sprintf("What is paid over %s.", v.years())
	}
	a, b := v.paid(d.Option), v.paid(d.Runner)
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
		return fmt.Sprintf("By every year's end %s %s cost less than %s.", In(d.Option), has(d.Option), In(d.Runner))
	case cheaper && dearFirst:
		return fmt.Sprintf("%s cost%s more at first than %s, and less in all from year %d on.", The(d.Option), s(d.Option), In(d.Runner), since)
	case cheaper:
		return fmt.Sprintf("From year %d on %s %s cost less in all than %s.", since, In(d.Option), has(d.Option), In(d.Runner))
	case since == 0:
		return fmt.Sprintf("By every year's end %s %s cost less than %s at typical figures.", In(d.Runner), has(d.Runner), In(d.Option))
	}
	return fmt.Sprintf("From year %d on %s %s cost less in all than %s at typical figures.", since, In(d.Runner), has(d.Runner), In(d.Option))
}

func has(id economics.OptionID) string {
	if id == economics.DryStores {
		return "have"
	}
	return "has"
}

// paid gives what an option has typically cost by each year's end.
func (v Voice) paid(id economics.OptionID) []float64 {
	var out []float64
	for i, other := range economics.Options {
		if other == id {
			for _, r := range v.r.Futures.Paid[i] {
				out = append(out, r.Typical)
			}
		}
	}
	return out
}

// TurnsWhere says what the plane of nights and ice price shows.
func (v Voice) TurnsWhere(winner economics.OptionID, turns bool) string {
	if !turns {
		return fmt.Sprintf("%s cost%s least at any number of nights and any price of ice shown here.", The(winner), s(winner))
	}
	return fmt.Sprintf("At %.0f nights a year and %s for ice, %s cost%s least.", v.Nights(), v.icePrice(), In(winner), s(winner))
}

func (v Voice) icePrice() string {
	return v.Value(economics.Input{Unit: "money/kg"}, float64(v.r.Boat.Ice.Price))
}
