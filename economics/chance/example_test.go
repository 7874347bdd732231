package chance_test

import (
	"fmt"

	"coldreckon/economics/chance"
	"coldreckon/economics/quantity"
)

// The price of ice, known roughly, in a thousand futures.
func ExampleFit() {
	price := chance.Fit(quantity.Range{Low: 0.7, Typical: 1.1, High: 2})
	places := chance.LatinHypercube(1000, 1, 1)
	var prices []quantity.MoneyPerKg
	for future := range 1000 {
		prices = append(prices, quantity.MoneyPerKg(price.Quantile(places.U(future, 0))))
	}
	mean, _ := chance.Mean(prices)
	fmt.Printf("median %.2f, one in ten above %.2f, mean %.2f\n", price.Quantile(0.5), price.Quantile(0.9), mean)
	// Output: median 1.10, one in ten above 2.00, mean 1.26
}

// Ice of 50 to 170 a year, or a unit that costs 100 a year and saves it: which
// of the two, and what it would be worth to know before deciding.
func ExampleOutcomes_Judge() {
	const futures = 1000
	table := chance.NewOutcomes(futures, []quantity.Money{0, 800})
	for f := range futures {
		ice := quantity.Money(50 + 120*(float64(f)+0.5)/futures)
		table.Set(f, 0, ice)
		table.Set(f, 1, 100)
	}
	j := table.Judge()
	fmt.Printf("option %d; knowing is worth %.1f a year\n", j.Preferred, j.EVPI)
	// Output: option 1; knowing is worth 10.4 a year
}

// One in ten of the futures lies below the low mark of a range, however they
// are drawn.
func ExampleLatinHypercube() {
	price := chance.Fit(quantity.Range{Low: 0.5, Typical: 1.1, High: 2})
	futures := chance.LatinHypercube(1000, 1, 1)
	cheap := 0
	for future := range 1000 {
		if price.Quantile(futures.U(future, 0)) < 0.5 {
			cheap++
		}
	}
	fmt.Println(cheap, "of 1000 futures have ice below its low price")
	// Output: 100 of 1000 futures have ice below its low price
}

// A hundred kilograms of ice a year, or a unit for 140 a year: what it is worth
// to know the price of ice before deciding, and at which price the choice turns.
// By hand: at 1.40, and the mean of what is above it, of a log-normal price, 16.5.
func ExampleJudgement_SwitchingValue() {
	const futures, kgAYear = 1000, 100
	price := chance.Fit(quantity.Range{Low: 0.5, Typical: 1.1, High: 2})
	places := chance.LatinHypercube(futures, 1, 1)
	table := chance.NewOutcomes(futures, []quantity.Money{0, 800})
	prices := make([]float64, futures)
	for f := range futures {
		prices[f] = price.Quantile(places.U(f, 0))
		table.Set(f, 0, quantity.Money(kgAYear*prices[f]))
		table.Set(f, 1, 140)
	}
	j := table.Judge()
	s, _ := j.SwitchingValue(prices)
	fmt.Printf("knowing the price is worth %.0f a year; a unit pays above %.1f a kilogram\n", j.EVPPI(prices), s.At)
	// Output: knowing the price is worth 16 a year; a unit pays above 1.4 a kilogram
}
