package words

import (
	"fmt"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// Freezing says what freezing would take with the unit that matters more, or
// what it does take where it is wanted; none without nights aboard.
func (v Voice) Freezing() []string {
	var out []string
	for _, f := range v.r.Freezing {
		if f.Option != v.Unit() {
			continue
		}
		wish := "A tray of ice cubes a day"
		if f.Wish == economics.FreezesMeals {
			wish = "A few meals kept frozen"
		}
		takes := "would take"
		if f.Wish == v.r.Boat.Food.Freeze {
			wish, takes = wish+", as you want,", "takes"
		}
		if f.RunShare > 1 {
			out = append(out, fmt.Sprintf("%s %s more than %s can do in your hottest month, even with the work.", wish, takes, In(f.Option)))
			continue
		}
		text := fmt.Sprintf("%s %s %s %s a day in all with the work, %s more than with nothing frozen", wish, takes, In(f.Option), Charge(f.AhPerDay), Charge(f.MoreAh))
		if f.PanelWp > 0 {
			text += fmt.Sprintf(", or %s of panel", power(f.PanelWp))
		}
		out = append(out, fmt.Sprintf("%s. It runs %d %% of the time, its plate at %s or colder, and %s of the box are its corner.",
			text, share100(f.RunShare), v.wholeDegrees(f.PlateC), v.Volume(f.CornerL)))
	}
	return out
}

// ByDay says how a small unit does that is off at night; empty where none would be.
func (v Voice) ByDay() string {
	d := v.r.ByDay
	if d == nil {
		return ""
	}
	return fmt.Sprintf("A small unit that is off from sunset to sunrise keeps the food %s as often as you want in %s futures; with %s of water in bottles that it freezes by day, in %s; running as it likes, in %s.",
		v.ColdOrCool(), of100(d.Alone), v.Volume(6), of100(d.Bottles), of100(d.Always))
}

// Charge prints a charge to two significant digits.
func Charge(ah float64) string { return quantity.FormatCharge(quantity.AmpHour(Round(ah))) }
