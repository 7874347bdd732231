package energy

import "coldreckon/economics/quantity"

// Bank is the battery that would feed a unit.
type Bank struct {
	Nominal   quantity.AmpHour // as sold
	Volts     quantity.Volt    // of the system: 12 or 24
	Chemistry Chemistry        // anything unknown counts as Lead
	Age       quantity.Year    // 0 for new
}

// MeanVolts is the bank's mean voltage while it is drawn down.
func (b Bank) MeanVolts() quantity.Volt {
	return b.Volts / nominalVolts * quantity.Volt(BankVolts(b.Chemistry).Typical)
}

// FullWh is the energy between full and cut-off: the usable share of what age
// has left. A battery of which age has left nothing holds nothing.
func (b Bank) FullWh() quantity.WattHour {
	left := max(0, 1-AgeLoss(b.Chemistry).Typical*float64(b.Age))
	return quantity.WattHour(float64(b.Nominal) * float64(b.MeanVolts()) * UsableShare(b.Chemistry).Typical * left)
}

// EngineW is what an alternator of a stated current brings to the bank's
// terminals while the engine runs.
func (b Bank) EngineW(stated quantity.Ampere) quantity.Watt {
	return quantity.Watt(float64(stated) * EngineCharge().Typical * float64(b.MeanVolts()))
}

// Energy converts a charge drawn from the bank, such as a day's house load.
func (b Bank) Energy(charge quantity.AmpHour) quantity.WattHour {
	return quantity.WattHour(float64(charge) * float64(b.MeanVolts()))
}

// Store gives the bank's numbers at their typical values.
func (b Bank) Store() Store {
	full := b.FullWh()
	return Store{FullWh: full, RestartWh: restartShare * full, ChargeEfficiency: quantity.Fraction(ChargeEfficiency(b.Chemistry).Typical)}
}

// Store is a bank as numbers, ready for use hour after hour. Energies are
// counted from the cut-off up.
type Store struct {
	FullWh           quantity.WattHour // 0 or more
	RestartWh        quantity.WattHour // what must be in it before a unit that was cut off starts again
	ChargeEfficiency quantity.Fraction // of what is put in, the share that can be drawn; over 0
}
