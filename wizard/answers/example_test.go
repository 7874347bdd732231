package answers_test

import (
	"fmt"
	"os"
	"strings"

	"coldreckon/economics"
	"coldreckon/wizard/answers"
)

// One answer is changed; the owner's comments and units stay.
func ExampleFile_Set() {
	file, faults := answers.Read("boat.yaml", strings.NewReader("units: us\nbox:\n  volume: 3 cu ft # by bucket\n"))
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	if err := file.Set("box.volume", "90 L"); err != nil {
		fmt.Println(err)
	}
	if err := file.Set("box.volume", "90 kg"); err != nil {
		fmt.Println(err)
	}
	file.Write(os.Stdout)
	boat, _ := file.Boat(economics.Book{})
	fmt.Printf("%.0f L, the rest assumed\n", boat.Box.Volume)
	// Output:
	// box.volume: "90 kg" is a mass. Give a volume, such as 3.2 cu ft.
	// units: us
	// box:
	//   volume: 90 L # by bucket
	// 90 L, the rest assumed
}

func ExampleRead() {
	_, faults := answers.Read("boat.yaml", strings.NewReader("box:\n  volume: 4.4 L\n  lid: side\n"))
	for _, f := range faults {
		fmt.Println(f)
		if f.Hint != "" {
			fmt.Println("hint:", f.Hint)
		}
	}
	// Output:
	// boat.yaml:2:11: box.volume: "4.4 L" is too little. Give 0.36 to 42 cu ft.
	// hint: did you mean 4.4 cu ft?
	// boat.yaml:3:8: box.lid: "side" is not one of the choices. Give one of: top, front.
}
