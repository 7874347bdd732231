// Package cost is the third ledger: money.
//
// It turns the price lines of one option into a flow of yearly payments,
// brings the flow back to today, spreads it evenly over the years, and sets
// it beside the flow of another option.
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
// Sources: NIST Handbook 135 (Fuller and Petersen, 1995) and ASTM E917 for
// the life-cycle cost and its factors, ASTM E1074 for net savings, ASTM E964
// for savings-to-investment, ASTM E1057 for the adjusted rate of return, ASTM
// E1121 for payback; 10 CFR 436 subpart A states the same measures in law.
// The handbook and the ASTM practices are cited from memory.
package cost
