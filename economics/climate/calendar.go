package climate

// daysIn are the lengths of the months of a common year.
var daysIn = [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// DaysIn gives the number of days of a month, 1 to 12, in a year of 365.
func DaysIn(month int) int { return daysIn[month-1] }

// FirstDay gives the day of the year, from 1, on which a month, 1 to 12, begins.
func FirstDay(month int) int {
	day := 1
	for _, days := range daysIn[:month-1] {
		day += days
	}
	return day
}

// MidMonthDay gives the day of the year of the 15th of a month, 1 to 12: the
// day for which FAO-56 tabulates its months (Annex 2, tables 2.6 and 2.7).
func MidMonthDay(month int) int { return FirstDay(month) + 14 }
