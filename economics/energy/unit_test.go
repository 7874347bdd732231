package energy

import (
	"fmt"
	"math"
	"testing"

	"coldreckon/economics/quantity"
)

func unit(rated quantity.Watt, cooledBy Condenser, plate Plate) Unit {
	return Unit{RatedW: rated, Eta: Eta().Typical, CooledBy: cooledBy, Plate: plate}
}

func TestSmoke(t *testing.T) {
	for _, r := range []quantity.Watt{25, 40, 80, 200} {
		for _, b := range []quantity.Celsius{-10, 4, 10, 30} {
			w := unit(r, Fan, Thin).Working(b, 25)
			fmt.Println(r, b, w, math.Round(float64(unit(r, Fan, Thin).Cycle().PowerW(w))))
		}
	}
	c := unit(40, Fan, Thin).Cycle()
	fmt.Printf("%+v\n", c.Duty(Gain{Leak: .65, Out: 20}, 5, 20))
	fmt.Printf("%+v\n", c.Duty(Gain{Leak: 2.65, Out: 30}, 4, 30))
	fmt.Println(c.PullDown(150, 28, 4, Gain{Leak: 1, Out: 28}.At, 28))
	fmt.Println(c.PullDown(150, 28, 4, Gain{Leak: 3, Out: 28}.At, 28))
}

func BenchmarkWorkingFrom(b *testing.B) {
	c := unit(40, Fan, Thin).Cycle()
	w := c.Working(4, 25)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		w = c.WorkingFrom(w.Te, 4+quantity.Celsius(i%3)*.1, 25+quantity.Celsius(i%5))
	}
}
func BenchmarkWorking(b *testing.B) {
	c := unit(40, Fan, Thin).Cycle()
	for i := 0; b.Loop(); i++ {
		c.Working(4+quantity.Celsius(i%3)*.1, 25+quantity.Celsius(i%5))
	}
}
