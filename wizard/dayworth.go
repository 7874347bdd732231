package wizard

import (
	"fmt"
	"math"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

// worthKey is the answer that tells what a day with cold food is worth.
const worthKey = "money.cold_day_worth"

// askWorth asks what a day with cold food is worth, once its price is known: two
// offers round the price, or any sum or range. It gives the text of the worth.
func (t *conversation) askWorth(row questions.Row) (string, error) {
	r, err := t.figures()
	if err != nil {
		return "", err
	}
	boat := t.File.Told()
	money := func(v float64) string { return quantity.FormatMoney(quantity.Money(v), r.Boat.Currency) }
	q := Question{Text: t.wording(row) + " Count the dearer food it spares you.", Help: row.Help, Enter: "if you don't know: the answer stays a rule"}
	if price := t.outlook(r).price; price > 0 && !math.IsInf(price, 1) {
		low, high := handy(price/1.6), handy(price*1.6)
		q.Text = fmt.Sprintf("A day with %s food would cost you about %s, for all of you. What would you pay for it, against a day on food that keeps? "+
			"Count the dearer food it spares you. Would %s be right, or %s? A sum of your own or a range will do.", coldOrCool(&boat), money(handy(price)), money(low), money(high))
	}
	return t.typed(row, q, func(text string) error { return t.refuse(row.Key, text) })
}

// handy rounds an amount to one that people think in: 1, 1.5, 2, 3, 4, 5, 6 or
// 8 of some power of ten, and a half at least.
func handy(amount float64) float64 {
	if !(amount > 0.5) {
		return 0.5
	}
	power := math.Pow(10, math.Floor(math.Log10(amount)))
	best := 10 * power
	for _, step := range []float64{1, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8} {
		if v := step * power; math.Abs(math.Log(amount/v)) < math.Abs(math.Log(amount/best)) {
			best = v
		}
	}
	return best
}

// coldOrCool names the days that an owner goes by.
func coldOrCool(b *economics.Boat) string {
	if b.CoolDecides() {
		return "cool"
	}
	return "cold"
}

// wording is the question of a row, of the days that the owner goes by.
func (t *conversation) wording(row questions.Row) string {
	boat := t.File.Told()
	if row.Key == worthKey || row.Key == "food.cold_days_wanted" {
		return strings.Replace(row.Ask, "cold", coldOrCool(&boat), 1)
	}
	return row.Ask
}
