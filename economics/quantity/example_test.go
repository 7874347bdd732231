package quantity_test

import (
	"fmt"

	"coldreckon/economics/quantity"
)

// An owner's words become a typed figure, and are printed back in either system.
func ExampleParseVolume() {
	for _, text := range []string{"90 L", "3.2 cu ft", "2*30+28,5", "90 kg"} {
		volume, err := quantity.ParseVolume(text, quantity.Metric)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(quantity.FormatVolume(volume, quantity.Metric), "or", quantity.FormatVolume(volume, quantity.US))
	}
	// Output:
	// 90 L or 3.2 cu ft
	// 91 L or 3.2 cu ft
	// 88 L or 3.1 cu ft
	// "90 kg" is a mass. Give a volume, such as 90 L.
}

// A figure without a unit takes the one usual in the owner's system.
func ExampleParseLength() {
	for _, system := range []quantity.System{quantity.Metric, quantity.US} {
		thickness, err := quantity.ParseLength("2", system)
		fmt.Printf("%s: %.4f m, error %v\n", system, thickness, err)
	}
	// Output:
	// metric: 0.0020 m, error <nil>
	// us: 0.0508 m, error <nil>
}

// The price of a bag of ice, per kilogram and as printed for each system.
func ExampleParsePricePerMass() {
	price, err := quantity.ParsePricePerMass("$3.50 per 10 lb bag", "$", quantity.US, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(quantity.FormatPricePerMass(price, "$", quantity.US), quantity.FormatPricePerMass(price, "$", quantity.Metric))
	// Output: $0.35/lb $0.77/kg
}

func ExampleSpan() {
	low, high := quantity.FormatMass(2.5, quantity.Metric), quantity.FormatMass(4, quantity.Metric)
	fmt.Println(quantity.Span(low, high))
	// Output: 2.5 to 4 kg
}
