package wizard

import (
	"fmt"
	"math"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

// hottest gives the hottest month with nights aboard.
func hottest(r *economics.Reckoning) (economics.MonthFigures, bool) {
	var hot economics.MonthFigures
	for i, m := range r.Months {
		if i == 0 || m.CabinC > hot.CabinC {
			hot = m
		}
	}
	return hot, len(r.Months) > 0
}

// aDay names a day of a month: "a July day", "an August day".
func aDay(month int) string {
	name := questions.MonthName(month)
	if strings.ContainsAny(name[:1], "AO") {
		return "an " + name + " day"
	}
	return "a " + name + " day"
}

// tellBox says what the box's walls melt, and which memory of ice does not count.
func (t *conversation) tellBox() error {
	r, err := t.figures()
	if err != nil {
		return err
	}
	m, ok := hottest(r)
	if !ok || r.Box.Leak <= 0 {
		return nil
	}
	for _, note := range r.Box.SetAside {
		t.Prompter.Say(note)
	}
	melt := func(leak quantity.WattPerKelvin) string {
		w := quantity.Watt(m.LeakW * float64(leak/r.Box.Leak))
		return wholeMass(quantity.Kilogram(heat.MeltKgPerDay(w, heat.DrainCelsius)), r.Boat.Units)
	}
	t.Prompter.Say(fmt.Sprintf("On %s the walls alone melt about %s of ice.",
		aDay(m.Month), quantity.Span(melt(r.Box.LeakLow), melt(r.Box.LeakHigh))))
	return nil
}

// tellPower says what the sun gives and what a small unit would take.
func (t *conversation) tellPower() error {
	r, err := t.figures()
	if err != nil {
		return err
	}
	m, ok := hottest(r)
	if !ok || m.HeatGainW <= 0 || r.Boat.Power.Volts <= 0 {
		return nil
	}
	charge := func(wh float64) string {
		return quantity.FormatCharge(quantity.AmpHour(math.Round(wh / float64(r.Boat.Power.Volts))))
	}
	with := func(leak quantity.WattPerKelvin) string {
		gain := m.HeatGainW + m.LeakW*(float64(leak/r.Box.Leak)-1)
		return charge(m.SmallWhPerDay * gain / m.HeatGainW)
	}
	need := quantity.Span(with(r.Box.LeakLow), with(r.Box.LeakHigh))
	sun := quantity.Exactly(1)
	for _, in := range r.Futures.Inputs {
		if in.Name == "sun" {
			sun = in.Factor
		}
	}
	if m.SolarWhPerDay <= 0 {
		t.Prompter.Say(fmt.Sprintf("A small unit wants %s on %s, from engine or shore.", need, aDay(m.Month)))
		return nil
	}
	t.Prompter.Say(fmt.Sprintf("On %s your panel gives %s. A small unit wants %s, all else about %s.",
		aDay(m.Month), quantity.Span(charge(m.SolarWhPerDay*sun.Low), charge(m.SolarWhPerDay*sun.High)), need, charge(m.HouseWhPerDay)))
	return nil
}

// wholeMass prints a mass without decimals: a range needs none.
func wholeMass(m quantity.Kilogram, sys quantity.System) string {
	unit := quantity.Kilogram(1)
	if sys == quantity.US {
		unit = quantity.Pound
	}
	return quantity.FormatMass(unit*quantity.Kilogram(math.Max(1, math.Round(float64(m/unit)))), sys)
}
