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

// Ice, or a unit that costs 100 a year and saves ice of 50 to 170 a year: how
// often which is best, and what it would be worth to know before deciding.
func ExampleOutcomes_Judge() {
	const futures = 1000
	table := chance.NewOutcomes(futures, []quantity.Money{0, 800})
	for f := range futures {
		ice := quantity.Money(50 + 120*(float64(f)+0.5)/futures)
		table.Set(f, 0, chance.Outcome{Loss: ice, Works: true})
		table.Set(f, 1, chance.Outcome{Loss: 100, Works: true})
	}
	j := table.Judge()
	fmt.Printf("best in %v of 100 futures; knowing is worth %.1f a year\n", j.BestOf100, j.EVPI)
	// Output: best in [42 58] of 100 futures; knowing is worth 10.4 a year
}
