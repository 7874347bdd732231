package compare

import (
	"fmt"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/climate"
	"coldreckon/economics/quantity"
	"coldreckon/report/words"
)

// Terms are what one buyer wants of every boat.
type Terms struct {
	Line  string  // in one line; empty where each boat brings her own
	Worth float64 // of a cold day, in the table's currency; 0 where untold
}

// TermsOf gives a buyer's terms from his answers, filled in. Worth and limit are
// named only where he told them.
func TermsOf(buyer economics.Boat, ground climate.Ground) Terms {
	nights := 0.0
	for _, n := range buyer.Cruising.Nights {
		nights += n
	}
	told := func(key string) bool { return buyer.Known[key] == quantity.Told }
	sum := func(m quantity.Money) string { return quantity.FormatMoney(m, buyer.Currency) }
	days := "cold"
	if buyer.CoolDecides() {
		days = "cool"
	}
	parts := []string{
		fmt.Sprintf("%s, %s a year in trips of %s, %s aboard", ground.Name, words.Plural(nights, "night"),
			quantity.FormatNumber(buyer.Cruising.TripNights), quantity.FormatNumber(buyer.Cruising.Crew)),
		fmt.Sprintf("shops every %s", words.Plural(buyer.Cruising.ShopEveryDays, "day")),
		fmt.Sprintf("food %s %s of days", days, quantity.FormatShare(buyer.Food.ColdDaysWanted)),
	}
	out := Terms{}
	if told("money.cold_day_worth") {
		low, high := buyer.Money.ColdDayWorth, buyer.Money.ColdDayWorthTo
		parts = append(parts, fmt.Sprintf("a %s day worth %s", days, quantity.FormatMoneySpan(low, high, buyer.Currency)))
		out.Worth = float64(low+max(low, high)) / 2
	}
	if told("money.budget") && buyer.Money.Budget > 0 {
		parts = append(parts, "limit "+sum(buyer.Money.Budget))
	}
	out.Line = strings.Join(append(parts, "over "+quantity.FormatYears(buyer.Money.Years)), " · ")
	return out
}
