// Package season runs a boat's nights aboard, hour by hour, for one year.
//
// It answers: with this box, this climate and these habits, how cold does the
// food stay, and what does that take in ice or electricity? A year's totals
// could not tell: a box is warmed by its owner's days and a battery lasts or
// fails by the hour, in the dull week and not in the mean one.
//
// One set of hours serves every way of cooling: the weather of each day, the
// heat that reaches the box, the boat's sun, battery and loads. A compressor
// unit (Unit), loads of ice (Ice) or nothing at all (Stores) is put against it,
// and a Tally says what came of it. In every hour three balances hold:
//
//	food      heat capacity · its rise = heat in - heat taken out
//	ice       mass melted · heat to melt = heat taken out
//	battery   its rise = charge efficiency · surplus, or - shortfall
//
// To use it: NewPlan lays out the nights, Plan.Draw their weather, Plan.FillAir
// the air of their hours; a Setup with that plan then runs Unit, Ice or Stores
// as often as there are proposals to try.
//
//	plan.go       nights, trips and their weather (Plan, Weather)
//	air.go        what each hour brings whatever stands in the box (Air)
//	setup.go      the boat (Setup), the exams, and the fixed hours of its day
//	goods.go      food and drink that go in
//	bank.go       the battery's hour, and the walk through trips and days
//	unit.go       a season on a compressor unit
//	icing.go      how ice is bought (Icing, IcePlan)
//	ice.go        a season on ice
//	lasts.go      how long a load of ice lasts
//	mean.go       a month's mean day, without weather
//	tally.go      what a season came to (Tally), and its hours one by one (Trace)
//
// Left out: clouds within a day, the heat of people in the cabin, layers of warm
// and cold inside the box, frost on the plate, a battery that charges more
// slowly when nearly full, and months without nights aboard.
//
// # Calendar
//
// The nights of each month, rounded, stand in the middle of that month. Nights
// follow each other in the order of the year, starting after a month without
// nights where there is one, and are cut into trips of the stated length,
// rounded; a trip runs on across months, and ends where a month without nights
// follows. A trip of n nights is 24 n hours from noon; each of its n days runs
// from noon to noon. An hour belongs to the month of its night. Weather changes
// at midnight, so a trip sees n + 1 days of weather. Months without nights are
// not simulated.
//
// # The hour
//
// Clock hour h (12 at a trip's start) means the hour from h to h + 1; sun
// and air are taken at half past. In this order:
//
//  1. Weather. Outdoor air = month mean + half the mean daily range times
//     cos(2 pi (h + 0.5 - 15) / 24) + the day's offset. Cabin = outdoor air +
//     the owner's offset. Sun = the day's irradiation times the share of the
//     hour in the month's middle day.
//  2. Gain = leak by neighbour + lid openings (7 to 21 h, evenly: the box's own
//     air, saturated at its temperature at the start of the hour, falls out and
//     as much dry air of the cabin's comes in, which holds the month's water, at
//     most saturated) + perishables (bought at noon of shop days for the days
//     until the next, the trip's end or the seventh, stowed over six hours, each
//     chilled from the temperature they come at to the box as it is in that
//     hour) + drinks (evenly over the day, from the cabin's temperature). While
//     the engine runs for any part of an hour its space is warm for all of it.
//  3. Cooling, by option; see Unit and Ice.
//  4. Battery: sun, engine (from 9 h; of the last hour its part) and shore
//     against house loads and unit. A trip starts with a full bank. At the
//     bottom the unit is cut off until an hour ends at the restart level, or with
//     the engine running: a cut-out goes by volts, which are then those of charging
//     (common practice, no source).
//     Shore power on a night connects from 18 h to 6 h, carries what sun and
//     engine leave of every load, ends a cut-off, and fills the bank evenly, so
//     that it is full at 6 h. Night i of the plan, from 0, is on shore where
//     round((i+1) share) > round(i share).
//
// # A trip's start
//
// The heat capacity of the box is one constant, the mean of the perishables
// aboard and a day's drinks in it. A box starts warm, at the cabin's temperature
// with all that lives in it and a day's drinks, or cooled beforehand. No other
// drinks go in before the second noon. The first perishables wait in their bag,
// which has ice of its own, until the box has reached the limit, at most six
// hours, and are stowed in the six hours after; the hours of waiting do not
// count for the exams. Where the box is at its limit from the start they follow
// at once, and those six hours do not count.
//
// # Ice
//
// An owner knows his box, its use and its ice, and plans by them, on a day that
// is 2.5 K warmer than the month's mean, the sea and the sun as ever; he does not
// know the weather to come, nor which stops sell. He wants aboard, at the rate
// of the day's month,
//
//	melt    1.2 times what the days until the stop that he plans to melt, box at
//	        2 °C, all the goods of an average day going in
//	floor   the ice that holds the deciding limit less 0.5 K at 15 h, at which an
//	        hour's drinks and a sixth of the day's perishables go in; no more
//	        than fits
//	chill   at a warm start, what cooling the box from noon's cabin to 2 °C
//	        melts; and melt and floor are then no less than the ice whose surface
//	        brings the box to the floor's temperature in six hours, against leak
//	        and lid of 15 h, at the logarithmic mean of the two temperatures
//
// less what is left. The stop he plans to is the first by which the chance of
// having met no ice is 1 in 10 or less, but no later than the third, or the last
// within seven days; nor than the trip's end. At a start ice from home comes
// first, all of it that fits and can be carried; what is still wanted is bought
// in whole bags, of which he counts on nine tenths coming aboard: as many as
// are wanted and fit, the last by a quarter at least, but one where less than the
// floor is aboard; and can be carried, one at least where nothing comes from home.
// Of the last bag he loads what fits.
//
// A trip's first stop sells, a later one where its number (Weather.Stops) is
// under the share found. On other noons an owner who does so goes for a run if
// less is left than he wants for one day, and buys as at the stop before.
//
// # Exams
//
// Food temperature is that of the hour's end. A cold day (noon to noon) is one
// on which it was above 5 °C for no more than two hours (tolerance 0.01 K), a
// cool day the same with the limit of a cool day; see Limits. Both are counted
// in every run, and the hours in which medicine would be under 2 or over 8 °C.
package season
