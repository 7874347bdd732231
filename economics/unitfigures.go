package economics

import (
	"coldreckon/economics/energy"
	"coldreckon/economics/quantity"
)

// UnitFigures is what a unit does in its box as told, at typical inputs, in
// the hottest month aboard.
type UnitFigures struct {
	ID            OptionID
	VolumeL       float64 // of the box, or of a free-standing unit's own chest
	LeakWPerK     float64 // of the same
	RatedW        float64 // cooling reckoned with, at -10 °C plate and 45 °C condenser
	Eta           float64 // share of the ideal efficiency, 0 to 1
	CapacityW     float64 // cooling while it runs
	COP           float64 // heat moved for each unit of electricity
	PlateC        float64
	CondenserC    float64
	RunningA      float64 // current while it runs
	RunShare      float64 // of the time; over 1 it cannot hold the target
	HeldC         float64 // box temperature really held
	WhPerDay      float64
	AhPerDay      float64
	PullDownHours float64 // from a box as warm as the cabin to the target
	PullDownWh    float64 // electricity for it
	// PullDownReached is false when the unit cannot bring the box down at all.
	PullDownReached bool
	HoldOverHours   float64           // of a cold-storing plate, unit off; 0 for a thin one
	SetPoints       []energy.SetPoint // what other box temperatures would cost
	// Rating is what the maker's average current and box size mean; nil when
	// they were not told.
	Rating *energy.Meaning
	Cable  CableFigures
}

// CableFigures is the cable from battery to unit. Without a run all but CutOutV
// are 0; SizeMm2, DropShare and LeastV are 0 unless the size was told.
type CableFigures struct {
	Known     bool    // whether the size was told
	RunM      float64 // one way
	SizeMm2   float64
	DropShare float64 // of the system's voltage lost while the unit runs, 0 to 1
	LeastV    float64 // at the unit, bank at the bottom of its usable share
	CutOutV   float64 // at which a unit usually switches itself off
	// NeedMm2 keeps the drop to 3 % over RunM; MetricMm2 and AWG are the next
	// sizes sold, FuseA the largest fuse that protects the gauge. 0 or "" where
	// none is large enough.
	NeedMm2   float64
	MetricMm2 float64
	AWG       string
	FuseA     float64
}

// unitFigures works a unit out.
func (p *proposal) unitFigures() UnitFigures {
	s, r, month := p.setup(&Typical), p.refrigerator(&Typical), p.world.aboard
	cold := quantity.Celsius(s.TargetC)
	mean := s.Mean(month, s.TargetC)
	coolant := quantity.Celsius(r.CoolantC(mean.CabinC, mean.SeaC))
	gain := s.Gain(month, s.TargetC)
	duty := r.Cycle.Duty(gain, cold, coolant)
	volts := float64(p.boat.Power.Bank().MeanVolts())
	f := UnitFigures{
		ID: p.option, VolumeL: p.volumeL, LeakWPerK: float64(p.leak().Total()),
		RatedW: float64(r.Cycle.Rated), Eta: r.Cycle.Eta,
		CapacityW: float64(duty.Working.CapacityW), COP: duty.Working.COP,
		PlateC: float64(duty.Working.Te), CondenserC: float64(duty.Working.Tc),
		RunningA: float64(r.Cycle.PowerW(duty.Working)) / volts,
		RunShare: duty.RunShare, HeldC: float64(duty.Held),
		WhPerDay: float64(duty.DayWh()), AhPerDay: float64(duty.DayWh()) / volts,
		Rating: p.rating,
	}
	down := r.Cycle.PullDown(quantity.KilojoulePerKelvin(s.Box.HeatKJPerK), quantity.Celsius(mean.CabinC), cold, gain.At, coolant)
	f.PullDownHours, f.PullDownWh, f.PullDownReached = down.Hours, float64(down.Energy), down.Reached
	if r.StoreKJ > 0 {
		store := energy.ColdStore{
			Mass: quantity.Kilogram(energy.EutecticMass().Typical), Latent: energy.EutecticLatent().Typical,
			Usable: quantity.Fraction(energy.EutecticUsable().Typical), Freezing: quantity.Celsius(energy.EutecticPoint().Typical),
			Plate: r.Cycle.Plate,
		}
		if hours, ok := store.HoldOver(gain, cold); ok && gain.At(cold) > 0 {
			f.HoldOverHours = hours
		}
	}
	points := r.Cycle.SetPoints(gain, coolant)
	f.SetPoints = points[:]
	f.Cable = p.cable(quantity.Ampere(f.RunningA))
	return f
}

// readRating reads the maker's words, where told.
func (p *proposal) readRating() *energy.Meaning {
	u := p.unit
	if u.RatedAmps <= 0 || u.RatedBox <= 0 {
		return nil
	}
	plate := energy.RatingPlate{
		Amps: u.RatedAmps, Volts: p.boat.Power.Volts, BoxUpTo: u.RatedBox,
		Box: energy.MakerBox, Ambient: energy.MakerAmbient().Range,
		CooledBy: u.CooledBy, Plate: u.Plate, Size: energy.Small,
	}
	if p.option == LargerUnit {
		plate.Size = energy.Larger
	}
	if p.boat.Told(p.key("rated_cooling")) {
		plate.Cooling = u.RatedCooling
	}
	m := plate.Meaning()
	return &m
}

// key gives the answers key of one of the unit's figures.
func (p *proposal) key(name string) string {
	return "units_considered." + string(p.option) + "." + name
}

func (p *proposal) cable(running quantity.Ampere) CableFigures {
	pw := p.boat.Power
	c := CableFigures{RunM: float64(pw.CableRun), CutOutV: float64(energy.CutOut(pw.Volts))}
	if pw.CableRun <= 0 {
		return c
	}
	need := energy.SizeFor(running, pw.CableRun, pw.Volts, energy.CompressorDrop)
	c.NeedMm2 = float64(need)
	if metric, ok := energy.NextMetric(need); ok {
		c.MetricMm2 = float64(metric.Size)
	}
	if gauge, ok := energy.NextGauge(need); ok {
		c.AWG = gauge.AWG
		if fuse, ok := gauge.LargestFuse(); ok {
			c.FuseA = float64(fuse)
		}
	}
	if pw.CableSize > 0 && p.boat.Told("power.cable_size") {
		cable := energy.Cable{Run: pw.CableRun, Size: pw.CableSize}
		c.Known, c.SizeMm2 = true, float64(pw.CableSize)
		c.DropShare = float64(cable.DropShare(running, pw.Volts))
		bank := energy.Bank{Nominal: pw.Battery, Volts: pw.Volts, Chemistry: pw.Chemistry, Age: pw.BatteryAge}
		c.LeastV = float64(bank.LeastVolts(cable, running))
	}
	return c
}
