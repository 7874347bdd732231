package economics

import (
	"math"
	"testing"
)

// unitYear gives the average year of the small unit as told.
func unitYear(t *testing.T, b Boat) aYear {
	t.Helper()
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	w, book := newWorld(&b, ground), testBook()
	p, err := newProposal(&b, &book, &w, 1, SmallUnit, FitOut{})
	if err != nil {
		t.Fatal(err)
	}
	var air weatherYears
	var base baseLoads
	air.fill(&b, &w, &Typical, stream{1, 0}, typicalYears)
	return p.live(&Typical, &air, &base, nil)
}

// A unit is billed for its own electricity, not for the lights: with shore
// power every night and no other source, the shore gives what the unit takes
// and what charging loses of it (lead-acid, 0.85), and the battery passes on
// no more than the unit takes. The house takes 12 Ah a day besides.
func TestUnitPaysForItsOwnElectricityOnly(t *testing.T) {
	b := dunlin()
	b.Cruising.ShorePowerShare, b.Power.SolarWp, b.Power.EngineHoursPerDay = 1, 0, 0
	y := unitYear(t, b)
	unitKWh := y.unitWh / 1000
	if share := y.shoreKWh / unitKWh; share < 0.95 || share > 1/0.85+0.03 {
		t.Errorf("the shore gives %.2f kWh for a unit that takes %.2f", y.shoreKWh, unitKWh)
	}
	if y.wearKWh > unitKWh || y.wearKWh < 0.2*unitKWh {
		t.Errorf("%.2f kWh through the battery for a unit that takes %.2f", y.wearKWh, unitKWh)
	}
	dark := b
	dark.Power.OtherLoads = 0
	if alone := unitYear(t, dark); math.Abs(alone.wearKWh-y.wearKWh) > 0.1*alone.wearKWh || math.Abs(alone.shoreKWh-y.shoreKWh) > 0.1*alone.shoreKWh {
		t.Errorf("%.2f kWh through the battery and %.2f from the shore; %.2f and %.2f aboard without lights", y.wearKWh, y.shoreKWh, alone.wearKWh, alone.shoreKWh)
	}
	if y.engineKWh != 0 {
		t.Errorf("%.2f kWh from an engine that never runs", y.engineKWh)
	}

	b.Cruising.ShorePowerShare, b.Power.EngineHoursPerDay = 0, 3
	y = unitYear(t, b)
	unitKWh = y.unitWh / 1000
	if share := y.engineKWh / unitKWh; share < 0.7 || share > 1/0.85+0.03 {
		t.Errorf("the engine gives %.2f kWh for a unit that takes %.2f", y.engineKWh, unitKWh)
	}
	if y.shoreKWh != 0 {
		t.Errorf("%.2f kWh from a shore that is never there", y.shoreKWh)
	}
}

// The air of the fixture's lid openings in August, by hand: 40 % of 90 L is
// ice, half of the other 54 L is air, an opening from above exchanges 0.3 of it:
//
//	10 × 0.3 × 0.5 × 54 L            = 81 L a day, at 1.263 kg/m³ of dry air in saturated air of 4 °C 0.102 kg
//
// Cabin air by day, 23.2 °C with 11.8 g of water a kilogram, holds 53.5 kJ/kg;
// that at 4 °C and saturated 16.7 (ASHRAE Fundamentals, moist air, from memory):
//
//	0.102 kg × (53.5 - 16.7) kJ/kg   = 3.8 kJ a day = 0.043 W
//
// A cover over the contents halves it (engineering judgement, from memory).
func TestOpeningsByHand(t *testing.T) {
	b, book := dunlin(), testBook()
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	w := newWorld(&b, ground)
	open := func(fit FitOut) float64 {
		p, err := newProposal(&b, &book, &w, 1, IceOnly, fit)
		if err != nil {
			t.Fatal(err)
		}
		s := p.setup(&Typical)
		return s.Mean(7, 4).OpeningsW
	}
	if got := open(FitOut{}); math.Abs(got-0.043) > 0.003 {
		t.Errorf("%.4f W through the lid; by hand 0.043", got)
	}
	if got, want := open(FitOut{Cover: true}), open(FitOut{})/2; math.Abs(got-want) > 1e-9 {
		t.Errorf("%v W past a cover; half is %v", got, want)
	}
}
