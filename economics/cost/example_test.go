package cost_test

import (
	"fmt"

	"coldreckon/economics/cost"
)

// Ice for 180 a year, or a unit for 900 with a new compressor every eight
// years and 20 a year of upkeep, over ten years at a real 3 %. Three quarters of
// the new compressor are unused by then.
func ExampleCompare() {
	ice := []cost.Line{{Name: "Ice", Yearly: 180}}
	unit := []cost.Line{{Name: "Unit", First: 900, Life: 8, Renewal: 400}, {Name: "Upkeep", Yearly: 20}}
	c := cost.Compare(ice, unit, 10, 0.03)
	fmt.Printf("more to own %.0f, saved %.0f, in all %.0f\n", c.ExtraInvestment, c.OperatingSavings, c.NetSavings())
	if years, ok := c.DiscountedPayback(); ok {
		fmt.Printf("paid back after %.1f years\n", years)
	}
	// Output:
	// more to own 993, saved 1365, in all 372
	// paid back after 6.3 years
}

// The same ice as one sum today and as an even sum a year.
func ExampleFlows_YearlyEquivalent() {
	flows := cost.Schedule([]cost.Line{{Yearly: 180}, {First: 60}}, 10, nil)
	fmt.Printf("%.0f today, %.2f a year\n", flows.PresentCost(0.03), flows.YearlyEquivalent(0.03))
	// Output: 1595 today, 187.03 a year
}
