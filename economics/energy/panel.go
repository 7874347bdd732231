package energy

import "coldreckon/economics/quantity"

// Panel is a solar panel laid flat, with its controller.
type Panel struct {
	Wp         quantity.Watt // at standard test conditions
	Mounting   Mounting      // anything unknown counts as OnDeck
	Controller Controller    // anything unknown counts as Plain
}

// Chain gives the panel's numbers at their typical values.
func (p Panel) Chain() Chain {
	return Chain{
		Wp:       p.Wp,
		Passed:   quantity.Fraction(Shade(p.Mounting).Typical * ControllerShare(p.Controller).Typical * SoilAndWire().Typical),
		NOCT:     quantity.Celsius(CellTemperature(p.Mounting).Typical),
		CellLoss: CellLoss().Typical,
	}
}

// Chain is a panel's yield as numbers, ready for use hour after hour: every
// step from the sun to the battery's terminals.
type Chain struct {
	Wp       quantity.Watt     // at standard test conditions: 1,000 W/m², cells at 25 °C
	Passed   quantity.Fraction // what shade, controller, soil and wire leave
	NOCT     quantity.Celsius  // nominal operating cell temperature: of cells at 800 W/m² in air of 20 °C
	CellLoss float64           // of power, per kelvin of cells over 25 °C
}

// PowerW gives the power that reaches the battery's terminals under a global
// horizontal irradiance, W/m², 0 to 1400, in air of a temperature.
//
// P = Wp · G/1000 · passed · (1 - loss · (cells - 25)), with the cells at
// air + (NOCT - 20) · G/800 (Dobos 2014, NREL/TP-6A20-62641; NOCT as defined
// in IEC 61215).
func (c Chain) PowerW(irradianceW float64, air quantity.Celsius) quantity.Watt {
	cell := float64(air) + (float64(c.NOCT)-noctAirC)*irradianceW/noctIrradiance
	warm := 1 - c.CellLoss*(cell-ratedCellC)
	return quantity.Watt(float64(c.Wp) * irradianceW / ratedIrradiance * float64(c.Passed) * warm)
}

// DayWh gives the yield of a day whose irradiation falls in the hours by a
// shape, shares that sum to 1, in air of the hours' temperatures.
func (c Chain) DayWh(day quantity.KWhPerM2Day, shape [24]float64, air [24]quantity.Celsius) quantity.WattHour {
	var sum quantity.WattHour
	for hour, share := range shape {
		sum += quantity.WattHour(c.PowerW(1000*float64(day)*share, air[hour]))
	}
	return sum
}
