package heat_test

import (
	"fmt"
	"strings"
	"time"

	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// A box of 90 L, an inch of damp foam all round, in a cabin of 27 °C.
func ExampleSpec_Conductance() {
	spec := heat.Spec{Inside: heat.CubeLike(90), Lid: heat.TopLid, Seal: heat.PoorSeal, LidPerimeter: 1.4, Drain: heat.OpenDrain}
	for i, side := range heat.Sides {
		foam := heat.Layer{Material: heat.OldPolyurethane, State: heat.Damp, Thickness: 0.025}
		spec.Faces[i] = heat.FaceSpec{Side: side, Layers: []heat.Layer{foam}, Neighbour: heat.Cabin}
	}
	leak, err := spec.Conductance()
	if err != nil {
		fmt.Println(err)
		return
	}
	gain := leak.GainW(4, 27, 15, false)
	fmt.Printf("leaks %.1f W/K, lets in %.0f W, melts %.1f kg of ice a day\n", leak.Total(), gain, heat.MeltKgPerDay(gain, heat.DrainCelsius))
	// Output: leaks 1.8 W/K, lets in 41 W, melts 10.3 kg of ice a day
}

// Eight kilograms melt in a day while the cabin is at 24 °C.
func ExampleIceTest_Estimate() {
	test := heat.IceTest{Melted: 8, Hours: 24, IceMass: 10, Out: 24, In: 2}
	leak, err := test.Estimate()
	fmt.Printf("%.2f W/K, error %v\n", leak.UA, err)

	test.Hours = 0
	_, err = test.Estimate()
	fmt.Println(err)
	// Output:
	// 1.40 W/K, error <nil>
	// the ice test ran 0 h; want more than 0
}

// A drawing and a weighed test, which says more.
func ExampleCombine() {
	c := heat.Combine(heat.Estimate{Source: heat.FromDrawing, UA: 1.9, LogSD: 0.45}, heat.Estimate{Source: heat.FromIceTest, UA: 1.4, LogSD: 0.15})
	r := c.Range()
	fmt.Printf("%.1f W/K, eight times in ten from %.1f to %.1f\n", r.Typical, r.Low, r.High)
	// Output: 1.4 W/K, eight times in ten from 1.2 to 1.7
}

// Two purchases in the log of an owner of the metric system, in ounces.
func ExampleParseLog() {
	const log = "date,ice (oz)\n2025-07-14 09:00,352\n2025-07-16 09:00,176\n"
	rows, err := heat.ParseLog(strings.NewReader(log), quantity.Metric)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, stay := range heat.IceLoads(rows) {
		fmt.Printf("%.1f kg lasted %v\n", stay.Ice, stay.To.Sub(stay.From).Round(time.Hour))
	}
	// Output: 10.0 kg lasted 48h0m0s
}
