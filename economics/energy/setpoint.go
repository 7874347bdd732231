package energy

import "coldreckon/economics/quantity"

// setPoints are the box temperatures whose energy is compared: three for
// chilled food, then two for drinks, butter and vegetables only.
var setPoints = [...]quantity.Celsius{3, 4, 5, 7, 10}

// chilledLimit is the highest temperature for perishable food (US FDA Food
// Code 3-501.16: 41 °F).
const chilledLimit quantity.Celsius = 5

// SetPoint is what one box temperature costs.
type SetPoint struct {
	Box         quantity.Celsius
	Duty        Duty
	Growth      float64 // of listeria, as a multiple of that at 5 °C; see listeriaGrowth
	Perishables bool    // whether chilled food may be kept there
}

// SetPoints gives the steady day at 3, 4, 5, 7 and 10 °C, in this order. The use
// in the gain is taken as the same at each.
func (c Cycle) SetPoints(g Gain, coolant quantity.Celsius) [len(setPoints)]SetPoint {
	var trade [len(setPoints)]SetPoint
	for i, box := range setPoints {
		trade[i] = SetPoint{Box: box, Duty: c.Duty(g, box, coolant), Growth: listeriaGrowth(box), Perishables: box <= chilledLimit}
	}
	return trade
}

// listeriaGrowth gives how many times as fast listeria grows in chilled food
// at a temperature as at 5 °C: ((T + 1.18) / 6.18)², none at -1.18 °C or
// below (FDA/USDA-FSIS 2003 risk assessment; the form is Ratkowsky's, 1982).
// Valid to 20 °C. It compares two temperatures and never makes a number of
// safe days: food, load and lag change the rate itself more than tenfold.
func listeriaGrowth(food quantity.Celsius) float64 {
	const none, reference = -1.18, 5
	if food <= none {
		return 0
	}
	ratio := float64(food-none) / (reference - none)
	return ratio * ratio
}
