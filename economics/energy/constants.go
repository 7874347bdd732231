package energy

import "coldreckon/economics/quantity"

// Figure is a constant of the ledger that is known only roughly: its range,
// its unit, and where it comes from. Ranges run from the 10th to the 90th
// percentile.
type Figure struct {
	Key   string // its name in lists of assumptions; one for all variants of a figure
	Label string // in plain words
	Unit  string
	quantity.Range
	Source string
}

// or gives another label and range where that holds.
func (f Figure) or(is bool, label string, r quantity.Range) Figure {
	if is {
		f.Label, f.Range = label, r
	}
	return f
}

// Where figures without a better source come from.
const judged = "engineering judgement, from memory"

// The unit. Figures that enter every hour are constants of their own, so that
// the compiler can fold them; their ranges are below. Ceiling and floor leave at
// least 25 K between plate and condenser, so that the efficiency stays finite.
const (
	plateCeilingC    = 5.0    // the compressor's controls and motor limit the suction pressure; judged
	condenserFloorC  = 30.0   // head pressure that a capillary needs to feed the plate; judged
	ratingPlateC     = -10.0  // EN 12900 medium rating point, from memory
	ratingCondenserC = 45.0   // the same
	capacityGrowth   = 0.045  // per kelvin of plate temperature
	capacityFall     = 0.008  // per kelvin of condensing temperature
	eutecticC        = -10.0  // freezing point of the plate's solution
	kelvinAt0C       = 273.15 // by definition of the Celsius scale
)

// Eta is the share of Carnot's efficiency that a small direct-current unit
// reaches between its saturation temperatures, motor and electronics included.
func Eta() Figure {
	return Figure{"unit_eta", "share of the ideal efficiency", "", quantity.Range{Low: 0.26, Typical: 0.33, High: 0.42},
		judged + "; Ramalingam's handbook example allows 0.3, household cabinets of 1980 and 1993 come to 0.36 and 0.50 (US EPA-430-R-93-010)"}
}

// PlateConductance is the heat that passes from box air to the evaporator per
// kelvin between them, of a unit rated at plateRatedW or less. A larger unit
// brings a plate that is larger in proportion: see Unit.Cycle.
func PlateConductance(p Plate) Figure {
	return Figure{"plate_conductance", "heat into a thin plate per degree", "W/K", quantity.Range{Low: 3.5, Typical: 5, High: 7},
		judged + "; natural convection 5 to 10 W/m²K on the plate's area"}.
		or(p == Eutectic, "heat into a cold-storing plate per degree", quantity.Range{Low: 5, Typical: 8, High: 11})
}

// plateRatedW is the rated cooling up to which PlateConductance holds. Engineering judgement, from memory.
const plateRatedW = 50.0

// CondenserRise is how far the condensing temperature lies above the cabin's
// air or the water that takes its heat. A kind that is not known counts as LockerFan.
func CondenserRise(c Condenser) Figure {
	f := Figure{"condenser_rise", "condenser above the cabin, fan in its locker", "K", quantity.Range{Low: 11, Typical: 15, High: 20}, judged}
	return f.or(c == Fins, "condenser above the cabin, no fan, in a shut locker", quantity.Range{Low: 15, Typical: 20, High: 27}).
		or(c == Fan, "condenser above the air a duct brings", quantity.Range{Low: 8, Typical: 12, High: 15}).
		or(c == Seawater, "condenser above the sea", quantity.Range{Low: 4, Typical: 6, High: 8})
}

// CondenserPower is what moves the coolant while the compressor runs: a fan,
// a pump (none at all for a keel cooler), or nothing for bare fins. A kind that
// is not known counts as LockerFan.
func CondenserPower(c Condenser) Figure {
	f := Figure{"condenser_power", "fan in its locker while running", "W", quantity.Range{Low: 2, Typical: 3, High: 5}, judged}
	return f.or(c == Fan, "ducted fan while running", f.Range).
		or(c == Fins, "nothing moves the air", quantity.Exactly(0)).
		or(c == Seawater, "pump while running", quantity.Range{Low: 0, Typical: 3, High: 12})
}

// ChestEta is Eta of a free-standing 12 V chest, whose compressor, condenser
// and controls are the least that will do. Nine chests of 35 to 50 L measured
// in a laboratory fit it together with heat.ChestFoam.
func ChestEta() Figure {
	return Figure{"chest_eta", "share of the ideal efficiency, free-standing chest", "", quantity.Range{Low: 0.20, Typical: 0.25, High: 0.32}, judged}
}

// EtaOf is ChestEta for a free-standing chest, else Eta.
func EtaOf(chest bool) Figure {
	if chest {
		return ChestEta()
	}
	return Eta()
}

// Standby is what thermostat and electronics take all day.
func Standby() Figure {
	return Figure{"standby", "thermostat and electronics", "W", quantity.Range{Low: 0.05, Typical: 0.1, High: 0.3}, judged}
}

// CapacityGrowth is the relative growth of cooling capacity per kelvin of
// plate temperature.
func CapacityGrowth() Figure {
	return Figure{"capacity_growth", "more cooling per degree of warmer plate", "1/K", quantity.Range{Low: 0.038, Typical: capacityGrowth, High: 0.057},
		judged + "; the refrigerating effect per volume of R134a vapour grows by 0.041 to 0.046 per kelvin (Mechanical Engineers' Handbook), a small compressor's published table by 0.047 at -12 °C and 0.056 from -25 °C"}
}

// CapacityFall is the relative loss of cooling capacity per kelvin of
// condensing temperature, referred to 45 °C.
func CapacityFall() Figure {
	return Figure{"capacity_fall", "less cooling per degree of warmer condenser", "1/K", quantity.Range{Low: 0.005, Typical: capacityFall, High: 0.013},
		judged + "; the refrigerating effect of R134a falls by 0.012 per kelvin, a suction line that cools the liquid takes part of it back"}
}

// EutecticPoint is the freezing point of a cold-storing plate's solution.
func EutecticPoint() Figure {
	return Figure{"eutectic_point", "freezing point of a cold-storing plate", "°C", quantity.Range{Low: -11, Typical: eutecticC, High: -6.5},
		judged + "; potassium chloride 19.5 % freezes at -10.7 °C, zinc sulphate 27 % at -6.5 °C"}
}

// EutecticLatent is the heat that melts a kilogram of the plate's solution.
func EutecticLatent() Figure {
	return Figure{"eutectic_latent", "heat to melt the plate's solution", "kJ/kg", quantity.Range{Low: 253, Typical: 268, High: 283},
		"potassium chloride 19.5 %, two reviews of phase-change salts that disagree, from memory"}
}

// EutecticUsable is the share of the solution that really freezes and melts
// in a cycle.
func EutecticUsable() Figure {
	return Figure{"eutectic_usable", "part of the solution that freezes", "", quantity.Range{Low: 0.8, Typical: 0.85, High: 0.9}, judged}
}

// EutecticMass is the solution in a small boat's cold-storing plate, where the
// owner does not know it.
func EutecticMass() Figure {
	return Figure{"eutectic_mass", "solution in a cold-storing plate", "kg", quantity.Range{Low: 4, Typical: 8, High: 15}, judged}
}

// The panel.
const (
	ratedIrradiance = 1000.0 // W/m², standard test conditions (IEC 60904-3)
	ratedCellC      = 25.0   // the same
	noctIrradiance  = 800.0  // W/m², definition of the nominal operating cell temperature
	noctAirC        = 20.0   // the same
)

// Shade is the share of unshaded sun that reaches a panel under the rig.
func Shade(m Mounting) Figure {
	f := Figure{"shade", "sun left on deck under rig and boom", "", quantity.Range{Low: 0.65, Typical: 0.75, High: 0.85}, judged}
	return f.or(m == Arch, "sun left on a stern arch", quantity.Range{Low: 0.90, Typical: 0.92, High: 0.95}).
		or(m == Bimini, "sun left on a bimini", quantity.Range{Low: 0.80, Typical: 0.85, High: 0.90})
}

// ControllerShare is the share of the panel's power that its controller
// passes on. A plain controller's marks are battery over panel voltage for 36
// cells at 25, 45 and 65 °C (13.2 V over 18 V less 0.4 % a kelvin).
func ControllerShare(c Controller) Figure {
	return Figure{"controller", "power passed by a plain controller", "", quantity.Range{Low: 0.73, Typical: 0.80, High: 0.87}, judged}.
		or(c == Tracking, "power passed by a tracking controller", quantity.Range{Low: 0.95, Typical: 0.96, High: 0.98})
}

// SoilAndWire is what salt, birds, mismatch, wire and joints leave.
func SoilAndWire() Figure {
	return Figure{"soil_and_wire", "left after salt, birds and wire", "", quantity.Range{Low: 0.90, Typical: 0.94, High: 0.96},
		judged + "; soiling 2 %, mismatch 2 %, wiring 2 %, joints 0.5 % (Dobos 2014, NREL/TP-6A20-62641)"}
}

// CellLoss is the panel's relative loss of power per kelvin over 25 °C.
func CellLoss() Figure {
	return Figure{"cell_loss", "power lost per degree of cell", "1/K", quantity.Range{Low: 0.0035, Typical: 0.004, High: 0.0045}, "crystalline silicon, from memory"}
}

// CellTemperature is the nominal operating cell temperature of a panel: of
// the cells at 800 W/m² in air of 20 °C. Laid on deck, with no air behind
// it, it is 18 K more.
func CellTemperature(m Mounting) Figure {
	f := Figure{"cell_temperature", "cells of a panel laid on deck", "°C", quantity.Range{Low: 55, Typical: 63, High: 66},
		"18 K for a gap under half an inch (Gilman et al. 2018, NREL/TP-6A20-67399)"}
	if m == Arch || m == Bimini {
		f.Label, f.Range = "cells of a panel with air behind it", quantity.Range{Low: 43, Typical: 45, High: 48}
		f.Source = "usual data-sheet value, from memory"
	}
	return f
}

// The battery.
const (
	nominalVolts = 12.0 // per block: voltages below are those of a 12 V bank
	restartShare = 0.10 // of the usable part: the controller switches on again this far above its cut-off; judged
)

// BankVolts is the mean voltage of a 12 V bank while it is drawn down.
func BankVolts(c Chemistry) Figure {
	return Figure{"bank_volts", "mean voltage of a 12 V lead battery", "V", quantity.Range{Low: 12.2, Typical: 12.3, High: 12.4}, "usual discharge curves, from memory"}.
		or(c == Lithium, "mean voltage of a 12 V lithium iron phosphate battery", quantity.Range{Low: 13.0, Typical: 13.1, High: 13.2})
}

// lowVolts is the voltage of a 12 V bank under load at the bottom of its
// usable share.
func lowVolts(c Chemistry) Figure {
	return Figure{"low_volts", "lead battery at half charge, under load", "V", quantity.Range{Low: 11.5, Typical: 11.8, High: 12.1}, judged}.
		or(c == Lithium, "lithium battery at a fifth of its charge", quantity.Range{Low: 12.4, Typical: 12.8, High: 13.0})
}

// UsableShare is the part of a battery that is planned to be used day by day.
func UsableShare(c Chemistry) Figure {
	return Figure{"usable_share", "usable part of a lead battery", "", quantity.Range{Low: 0.4, Typical: 0.5, High: 0.6},
		"planning depth, IEEE 1013 and 1361, from memory"}.
		or(c == Lithium, "usable part of a lithium battery", quantity.Range{Low: 0.7, Typical: 0.8, High: 0.9})
}

// AgeLoss is the share of its first capacity that a battery loses each year.
func AgeLoss(c Chemistry) Figure {
	return Figure{"age_loss", "capacity a lead battery loses each year", "1/year", quantity.Range{Low: 0.02, Typical: 0.04, High: 0.07}, judged}.
		or(c == Lithium, "capacity a lithium battery loses each year", quantity.Range{Low: 0.01, Typical: 0.02, High: 0.04})
}

// ChargeEfficiency is the share of energy put into a battery that comes out.
func ChargeEfficiency(c Chemistry) Figure {
	return Figure{"charge_efficiency", "energy a lead battery gives back", "", quantity.Range{Low: 0.80, Typical: 0.85, High: 0.92},
		"charge returned, IEEE 1013 and 1361, from memory"}.
		or(c == Lithium, "energy a lithium battery gives back", quantity.Range{Low: 0.92, Typical: 0.96, High: 0.98})
}

// EngineCharge is the share of its stated current that an alternator brings
// into the bank, averaged over a motoring spell.
func EngineCharge() Figure {
	return Figure{"engine_charge", "alternator current that reaches the battery", "", quantity.Range{Low: 0.5, Typical: 0.7, High: 0.85}, judged}
}

// HouseLoad is what lights, instruments and pumps take in a day, where the
// owner does not say.
func HouseLoad() Figure {
	return Figure{"house_load", "lights, instruments and pumps", "Ah/day", quantity.Range{Low: 8, Typical: 15, High: 30}, judged}
}

// cutOutVolts is the terminal voltage at which a 12 V compressor's electronics
// switch it off, where its maker does not say.
func cutOutVolts() Figure {
	return Figure{"cut_out_volts", "voltage at which the unit switches off", "V", quantity.Range{Low: 9.6, Typical: 10.4, High: 11.1}, judged}
}
