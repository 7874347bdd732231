// Package energy is the second ledger, kept in watt-hours: what a compressor
// unit needs to pump the heat out of a cold box, what a panel and an engine
// give, and what a battery can hold in between.
//
// A unit is a refrigeration cycle between two saturation temperatures. Its
// efficiency is a fixed share of Carnot's; its capacity follows the plate's
// temperature, and the plate's temperature follows its capacity, so the two
// are solved together. Everything else is bookkeeping: run share, average
// current, watt-hours a day, the temperature a unit too small really holds,
// hours to pull a warm box down, hours a frozen plate holds it.
//
// An owner's words (a fan, an arch, a lead battery) are turned into numbers
// once: Unit.Cycle, Panel.Chain and Bank.Store. The methods of those three are
// pure and allocate nothing, so that a season can be run hour by hour. Their
// fields are the uncertain figures, which a future may replace by a draw from
// the range that the matching function in constants.go gives.
package energy
