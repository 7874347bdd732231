// Package measured sets the two ledgers of heat and electricity beside what
// others have measured: ice melted in boxes and chests, electricity taken by
// chests, cabinets and boats, compressors on the test stand.
//
// Every point carries its source, the figure measured, and what had to be
// assumed to predict it, each assumption with a range from the 10th to the 90th
// percentile. The prediction calls the ledgers' own formulas with their own
// ranges: heat.Drawing for a leak, energy.Eta, energy.UsualCooling and
// energy.CondenserRise for a unit. Nothing is fitted point by point.
//
//	points.csv   the points, to be read and added to
//	inputs.go    reading a point's assumptions
//	models.go    what is predicted, from which assumptions
//	points.go    points and families of points
//
// Makes, shops and people's names stay out: a point is "a 42 L chest, 2003".
package measured
