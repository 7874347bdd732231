// Package cost is the third ledger: money.
//
// Ice costs little today and something every week; a unit costs much today,
// little in a year, and wears out. To compare them, the payments of each over
// the same years are brought back to today, for money paid later is worth less:
//
//	worth today of a payment in year n   payment / (1 + rate)^n
//	present cost                         the sum of all payments' worth today
//	a year                               the even payment with that present cost
//
// The package turns the price lines of one option into a flow of yearly
// payments, brings the flow back to today, spreads it evenly over the years,
// and sets it beside the flow of another option.
//
//	factors.go     present value factors (SPV, UPV, CRF)
//	schedule.go    from price lines to payments by year (Line, Schedule)
//	flows.go       present cost, and the even payment a year (Flows)
//	compare.go     one option beside another: savings, return, payback
//	breakeven.go   where a difference turns (Crossing)
//
// The conventions are those of life-cycle costing in constant prices:
//
//   - today is year 0, the base date; first costs fall there
//   - every other payment falls at the end of its year, 1 to the horizon
//   - costs are positive, money received is negative
//   - prices carry no inflation and the discount rate is real: a
//     bank's rate D under inflation I is (1+D)/(1+I) - 1
//   - all options share one base date, one horizon and one rate
//   - money already spent counts for nothing
//
// Left out: taxes, loans, and prices that rise faster than others.
//
// Sources: NIST Handbook 135 (Fuller and Petersen, 1995) and ASTM E917 for
// the life-cycle cost and its factors, ASTM E1074 for net savings, ASTM E964
// for savings-to-investment, ASTM E1057 for the adjusted rate of return, ASTM
// E1121 for payback; 10 CFR 436 subpart A states the same measures in law.
// The handbook and the ASTM practices are cited from memory.
package cost
