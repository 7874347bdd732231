// Package climate holds the cruising grounds: the air, the sea and the sun of
// a year, month by month, and from them the weather of single days.
//
// A Ground is twelve months of means, read from embedded tables (Find) or
// estimated from a latitude and a range of temperatures (Estimated). A Sky
// turns a ground's monthly sun into the sun of each day of the year, dull or
// clear; Days draws how one day follows another.
//
// The sun of a day is reckoned from above the atmosphere down:
//
//	above the air   from latitude and day of the year (FAO-56)
//	clearness       the share that reaches the ground; a month's mean by table
//	of one day      dull or clear by a normal score, drawn after the day before
//	of one hour     the day's sun times that hour's share
//
//	ground.go, provenance.go   grounds, their months, where each figure is from
//	load.go, alike.go          reading and checking the tables; mistyped ids
//	estimate.go                a ground from its latitude and temperatures
//	humidity.go, calendar.go   water in the air; days of the year
//	sun.go, hours.go           the sun above the atmosphere, and by the hour
//	clearness.go, scores.go    how daily sun scatters about its month's mean
//	sky.go, weather.go         a ground's days: their sun (Sky), their run (Days)
//
// Left out: wind, rain and tides; years unlike the usual one, but for the sun
// of a whole year (YearSunSD); warm air with a clear sky, as sun and air are
// drawn apart.
//
// Units: temperatures in °C, irradiation on a level surface in kWh/m² a day
// at the borders and in MJ/m² a day inside the formulas, as in their source
// (1 kWh = 3.6 MJ), humidity in kg of water per kg of dry air, angles in
// degrees at the borders and in radians inside. Months count from 1, days of
// the year from 1 to 365; leap days are left out. Hours are solar time.
//
// Sources, named again beside each formula:
//   - Allen, Pereira, Raes and Smith 1998, FAO Irrigation and Drainage Paper
//     56 (FAO-56): sun above the atmosphere, day length, sun from temperatures.
//   - Collares-Pereira and Rabl 1979, Solar Energy 22: hours of the day.
//   - Bendt, Collares-Pereira and Rabl 1981, Solar Energy 27; Hollands and
//     Huget 1983, Solar Energy 30: clear and dull days within a month.
//   - Graham, Hollands and Brunger 1988, Solar Energy 40: runs of dull days.
//
// The tables' own origins are in data/SOURCES.md.
package climate
