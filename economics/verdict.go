package economics

// Verdict is what to do, in two steps: refrigerate or not, then which way.
// The report words it; here it is figures.
type Verdict struct {
	// Refrigerate is the first step's answer, Option the second's, both by the
	// options with their fit-out.
	Refrigerate bool
	Option      OptionID
	// Works is false when nothing works in enough futures; Option then is what
	// fails by least.
	Works bool
	// AsToldWorks tells whether Option works without any work, in nine of ten
	// futures.
	AsToldWorks bool
	// StepOf100 is in how many of 100 futures the first step's side is best,
	// WayOf100 in how many Option is.
	StepOf100, WayOf100 int
	// SureOfStep and SureOfWay tell whether these counts name a winner, with 60
	// or more; else it is too close to call.
	SureOfStep, SureOfWay bool
	Runner                OptionID // best next most often; counts only when HasRunner
	HasRunner             bool
	// ByWorth tells that the worth of a cold day was told and decided; else
	// the money alone did.
	ByWorth bool
	// TurnWorth is the worth of a cold day, in money, at which the answer by
	// typical money alone turns from the cheapest way to TurnTo, which has more
	// cold days; they count only when TurnKnown.
	TurnWorth float64
	TurnTo    OptionID
	TurnKnown bool
}

// sureOf100 is the count of futures that names a winner. Engineering
// judgement, from memory.
const sureOf100 = 60

func isUnit(id OptionID) bool { return id == SmallUnit || id == LargerUnit }

// decide answers from the counts of futures. First step: unit or none, by the
// side that is best more often; second: the best option on that side. Equal
// counts go to the lower first cost.
func decide(b *Boat, options *[4]OptionFigures, f *FuturesFigures) Verdict {
	v := Verdict{ByWorth: b.told("money.cold_day_worth")}
	without := 100 - f.NoneWorksOf100 - f.RefrigerateOf100
	v.Refrigerate = f.RefrigerateOf100 > without
	v.StepOf100 = max(f.RefrigerateOf100, without)
	v.SureOfStep = v.StepOf100 >= sureOf100
	best, next := -1, -1
	before := func(i, j int) bool {
		a, c := &options[i], &options[j]
		if a.BestOf100 != c.BestOf100 {
			return a.BestOf100 > c.BestOf100
		}
		return a.Fitted.First < c.Fitted.First
	}
	for i := range options {
		if options[i].WorkableOf100 == 0 {
			continue
		}
		if isUnit(options[i].ID) == v.Refrigerate && (best < 0 || before(i, best)) {
			best = i
		}
	}
	if best < 0 || f.NoneWorksOf100 >= sureOf100 {
		best = leastFailing(options)
		v.Refrigerate = isUnit(options[best].ID) && options[best].Fitted.Works()
	} else {
		v.Works = true
	}
	for i := range options {
		if i != best && options[i].WorkableOf100 > 0 && (next < 0 || before(i, next)) {
			next = i
		}
	}
	o := &options[best]
	v.Option, v.WayOf100, v.SureOfWay = o.ID, o.BestOf100, o.BestOf100 >= sureOf100
	v.AsToldWorks = o.AsToldWorksOf100 >= int(100*fitShare)
	if next >= 0 {
		v.Runner, v.HasRunner = options[next].ID, true
	}
	v.turn(options)
	return v
}

// leastFailing gives the option that comes nearest: works most often, then
// fails fewest criteria, then gives most cold days.
func leastFailing(options *[4]OptionFigures) int {
	best := 0
	for i := range options {
		a, b := &options[i], &options[best]
		switch {
		case a.WorkableOf100 != b.WorkableOf100:
			if a.WorkableOf100 > b.WorkableOf100 {
				best = i
			}
		case len(a.Fitted.Failing) != len(b.Fitted.Failing):
			if len(a.Fitted.Failing) < len(b.Fitted.Failing) {
				best = i
			}
		case a.Fitted.ColdDays > b.Fitted.ColdDays:
			best = i
		}
	}
	return best
}

// turn finds the worth of a cold day at which the cheapest working way gives
// up its place to one with more cold days.
func (v *Verdict) turn(options *[4]OptionFigures) {
	cheapest := -1
	for i := range options {
		if o := &options[i].Fitted; o.Works() && (cheapest < 0 || o.Yearly < options[cheapest].Fitted.Yearly) {
			cheapest = i
		}
	}
	if cheapest < 0 {
		return
	}
	base := &options[cheapest].Fitted
	for i := range options {
		o := &options[i].Fitted
		if !o.Works() || o.ColdDays-base.ColdDays < 0.5 {
			continue
		}
		worth := (o.Yearly - base.Yearly) / (o.ColdDays - base.ColdDays)
		if !v.TurnKnown || worth < v.TurnWorth {
			v.TurnWorth, v.TurnTo, v.TurnKnown = worth, options[i].ID, true
		}
	}
}
