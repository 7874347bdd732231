// Package energy is the second ledger, kept in watt-hours: what a compressor
// unit needs to pump the heat out of a cold box, what a panel and an engine
// give, and what a battery can hold in between.
//
// A unit moves heat out of the box by evaporating a refrigerant in a plate
// inside, and sheds it where a condenser lets it liquefy again. The colder the
// plate and the hotter the condenser, the less heat it moves and the more
// electricity each watt of it costs:
//
//	efficiency  COP = eta · te / (tc - te)         in kelvin; eta, the share of Carnot's, about a third
//	capacity    W   = rated · e^(0.045 (te + 10)) · (1 - 0.008 (tc - 45))
//	plate       te  = box - W / conductance        at most 5 °C
//	condenser   tc  = air or water + rise          at least 30 °C
//	electricity W / COP + fan or pump              while running; standby all day
//
// te is the temperature at which the refrigerant evaporates, tc that at which
// it condenses; -10 and 45 °C are the rating point at which makers state the
// capacity. Capacity and plate depend on each other and are solved together.
// The rest is bookkeeping: the share of the day that a unit runs, the
// temperature that one too small really holds, the hours to pull a warm box
// down, the hours a frozen plate holds it.
//
//	unit.go, omega.go   the cycle at one moment (Cycle.Working)
//	duty.go             a steady day, a pull-down, a frozen plate
//	setpoint.go         what a colder or warmer box costs
//	rating.go           what a rating plate says of a unit
//	panel.go            solar panel and controller
//	battery.go          battery and alternator
//	cable.go            the cable to the unit, and its fuse
//	terms.go            the owner's words
//	constants.go        every figure, with its range and source
//
// An owner's words (a fan, an arch, a lead battery) are turned into numbers
// once: Unit.Cycle, Panel.Chain and Bank.Store. The methods of those three are
// pure and allocate nothing, so that a season can be run hour by hour. Their
// fields are the uncertain figures, which a future may replace by a draw from
// the range that the matching function in constants.go gives.
//
// Left out: starting and stopping (a unit that runs a third of an hour counts
// a third), speed control, frost on the plate, panels that are tilted or follow
// the sun, and batteries that charge more slowly when nearly full.
package energy
